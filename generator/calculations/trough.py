"""Half-round trough: pull and bending of its shell, its end walls, and the bed or the ties that keep it from cracking.

A thin half-round shell that lies on its lowest line carries all the water on that line: it bends, and cracks along its
belly. A firm bed over an angle leaves only the sides free; ties across the top keep the rims from moving out. Animals
that lean on the rim are not in these sums: the rim gets a bar of its own.
"""

from math import cos, pi, sin

from generator.calculations._book import BOOK
from generator.calculations.mortar import PERCENT
from generator.calculations.ring_strength import NEWTONS_IN_KILONEWTON, ONE_METRE, WATER_WEIGHT
from generator.formula import Constant, common_practice, derived

HALF_TURN = Constant(180, "degree", derived("half a turn is pi, and 180 degrees"))

BOOK.given(
    "trough_wall_thickness",
    symbol="t_tt",
    unit="mm",
    low=25,
    high=75,
    step=1,
    source=derived("mesh, a thin bar and cover; above 75 mm a trough is not thin work any more"),
)

BOOK.given(
    "trough_bed_angle",
    symbol="b_tt",
    unit="degree",
    low=0,
    high=120,
    step=10,
    source=derived("from a bare line of support to a bed a third of the round"),
)

BOOK.given(
    "trough_tie_spacing",
    symbol="s_tt",
    unit="m",
    low=0.3,
    high=2,
    step=0.1,
    source=common_practice("ties across the top stand where animals still get their heads in"),
)


@BOOK.quantity(
    symbol="N_tt", unit="kN/m", places=2, low=0.1, high=1.8, source=derived("water weight x radius squared / 2")
)
def trough_pull(trough_radius: float) -> float:
    """Pull round the lowest line of a half-round trough full of water.

    Args:
        trough_radius: radius of the trough: half across the rim [m], 0.15 to 0.6.

    Returns:
        Pull of a metre of length [kN/m], 0.1 to 1.8.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(trough_pull(trough_radius=0.35), 2)
        '0.60'
    """
    return WATER_WEIGHT * trough_radius**2 / 2


@BOOK.quantity(
    symbol="M_tt", unit="kN*m/m", places=3, low=0.01, high=1.1, source=derived("water weight x radius cubed / 2")
)
def trough_line_moment(trough_radius: float) -> float:
    """Moment at the lowest line of a trough that lies on that line, tension on the water face.

    Args:
        trough_radius: radius of the trough: half across the rim [m], 0.15 to 0.6.

    Returns:
        Moment of a metre of length [kN*m/m], 0.01 to 1.1.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(trough_line_moment(trough_radius=0.35), 3)
        '0.210'
    """
    return WATER_WEIGHT * trough_radius**3 / 2


@BOOK.quantity(
    symbol="p_tb",
    unit="%",
    places=0,
    low=0,
    high=100,
    source=derived("the shell above the bed as a curved bracket; closed form held to a numerical sum"),
)
def trough_bed_share(trough_bed_angle: float) -> float:
    """Share of the bending of a trough on a line that is left at the edge of a firm bed.

    Args:
        trough_bed_angle: width of the bed under the trough, as an angle [degree], 0 to 120.

    Returns:
        Share [%], 0 to 100.

    Raises:
        OutOfRangeError: an angle outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(trough_bed_share(trough_bed_angle=90), 0)
        '15'
    """
    half = trough_bed_angle * pi / HALF_TURN / 2
    return PERCENT * (cos(half) - sin(half) * (pi / 2 - half))


@BOOK.quantity(
    symbol="M_tb", unit="kN*m/m", places=3, low=0, high=1.1, source=derived("bending on a line x what the bed leaves")
)
def trough_bedded_moment(trough_line_moment: float, trough_bed_share: float) -> float:
    """Moment at the edge of a firm bed that holds the trough over an angle.

    Args:
        trough_line_moment: bending at the bottom, trough on a line [kN*m/m], 0.01 to 1.1.
        trough_bed_share: share of the bending that the bed leaves [%], 0 to 100.

    Returns:
        Moment of a metre of length [kN*m/m], 0 to 1.1.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(trough_bedded_moment(trough_line_moment=0.21, trough_bed_share=15), 3)
        '0.032'
    """
    return trough_line_moment * trough_bed_share / PERCENT


@BOOK.quantity(
    symbol="M_tr",
    unit="kN*m/m",
    places=3,
    low=0,
    high=0.55,
    source=derived("rims that ties keep from moving out: half the moment; held to a numerical solution"),
)
def trough_tied_moment(trough_line_moment: float) -> float:
    """Moment at the lowest line if ties across the top keep the rims from moving out.

    Args:
        trough_line_moment: bending at the bottom, trough on a line [kN*m/m], 0.01 to 1.1.

    Returns:
        Moment of a metre of length [kN*m/m], 0 to 0.55.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(trough_tied_moment(trough_line_moment=0.21), 3)
        '0.105'
    """
    return trough_line_moment / 2


@BOOK.quantity(
    symbol="T_tt",
    unit="kN",
    places=2,
    low=0.01,
    high=1.8,
    source=derived("water weight x radius squared / 4, for the length that a tie serves"),
)
def trough_tie_pull(trough_radius: float, trough_tie_spacing: float) -> float:
    """Pull in one tie across the top.

    Args:
        trough_radius: radius of the trough: half across the rim [m], 0.15 to 0.6.
        trough_tie_spacing: distance between ties across the top [m], 0.3 to 2.

    Returns:
        Pull [kN], 0.01 to 1.8.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(trough_tie_pull(trough_radius=0.35, trough_tie_spacing=0.8), 2)
        '0.24'
    """
    return WATER_WEIGHT * trough_radius**2 / 4 * trough_tie_spacing


@BOOK.quantity(
    symbol="F_tt", unit="kN", places=2, low=0.02, high=1.5, source=derived("water weight x 2/3 of the radius cubed")
)
def trough_end_force(trough_radius: float) -> float:
    """Push of the water on one end wall of the full trough.

    Args:
        trough_radius: radius of the trough: half across the rim [m], 0.15 to 0.6.

    Returns:
        Force [kN], 0.02 to 1.5.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(trough_end_force(trough_radius=0.35), 2)
        '0.28'
    """
    return WATER_WEIGHT * 2 * trough_radius**3 / 3


@BOOK.quantity(symbol="z_tt", unit="m", places=3, low=0.08, high=0.36, source=derived("3 pi / 16 of the radius"))
def trough_end_depth(trough_radius: float) -> float:
    """How deep below the rim that push acts.

    Args:
        trough_radius: radius of the trough: half across the rim [m], 0.15 to 0.6.

    Returns:
        Depth [m], 0.08 to 0.36.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(trough_end_depth(trough_radius=0.35), 3)
        '0.206'
    """
    return 3 * pi * trough_radius / 16


@BOOK.quantity(
    symbol="f_tt", unit="MPa", places=2, low=0, high=11, source=derived("6 M / t^2 + N / t of a shell without cracks")
)
def trough_line_stress(trough_line_moment: float, trough_pull: float, trough_wall_thickness: float) -> float:
    """Tension at the water face of a trough that lies on a line. Above 1.2 it may crack.

    Args:
        trough_line_moment: bending at the bottom, trough on a line [kN*m/m], 0.01 to 1.1.
        trough_pull: pull round the bottom of the trough [kN/m], 0.1 to 1.8.
        trough_wall_thickness: thickness of the trough's shell [mm], 25 to 75.

    Returns:
        Tension [MPa], 0 to 11.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(trough_line_stress(trough_line_moment=0.21, trough_pull=0.6, trough_wall_thickness=35), 2)
        '1.05'
    """
    return (
        6 * trough_line_moment * NEWTONS_IN_KILONEWTON / trough_wall_thickness**2 + trough_pull / trough_wall_thickness
    )


@BOOK.quantity(
    symbol="f_tb", unit="MPa", places=2, low=0, high=11, source=derived("6 M / t^2 + N / t of a shell without cracks")
)
def trough_bedded_stress(trough_bedded_moment: float, trough_pull: float, trough_wall_thickness: float) -> float:
    """Tension at the water face of a bedded trough. Allowed: 1.2.

    Args:
        trough_bedded_moment: bending of the bedded trough [kN*m/m], 0 to 1.1.
        trough_pull: pull round the bottom of the trough [kN/m], 0.1 to 1.8.
        trough_wall_thickness: thickness of the trough's shell [mm], 25 to 75.

    Returns:
        Tension [MPa], 0 to 11.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(trough_bedded_stress(trough_bedded_moment=0.032, trough_pull=0.6, trough_wall_thickness=35), 2)
        '0.17'
    """
    return (
        6 * trough_bedded_moment * NEWTONS_IN_KILONEWTON / trough_wall_thickness**2
        + trough_pull / trough_wall_thickness
    )


@BOOK.quantity(
    symbol="f_tr", unit="MPa", places=2, low=0, high=6, source=derived("6 M / t^2 + N / t of a shell without cracks")
)
def trough_tied_stress(trough_tied_moment: float, trough_pull: float, trough_wall_thickness: float) -> float:
    """Tension at the water face of a tied trough. Allowed: 1.2.

    Args:
        trough_tied_moment: bending of the tied trough [kN*m/m], 0 to 0.55.
        trough_pull: pull round the bottom of the trough [kN/m], 0.1 to 1.8.
        trough_wall_thickness: thickness of the trough's shell [mm], 25 to 75.

    Returns:
        Tension [MPa], 0 to 6.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(trough_tied_stress(trough_tied_moment=0.105, trough_pull=0.6, trough_wall_thickness=35), 2)
        '0.53'
    """
    return (
        6 * trough_tied_moment * NEWTONS_IN_KILONEWTON / trough_wall_thickness**2 + trough_pull / trough_wall_thickness
    )


@BOOK.misconception(of="trough_radius")
def trough_radius_from_whole_width(trough_radius: float) -> float:
    """The whole width was taken where half of it belongs."""
    return trough_radius * 2


@BOOK.misconception(of="trough_line_moment")
def trough_moment_by_radius_squared(trough_radius: float) -> float:
    """The radius was multiplied by itself once, not twice."""
    return WATER_WEIGHT * trough_radius**2 / 2 * ONE_METRE


@BOOK.misconception(of="trough_bed_angle")
def bed_angle_taken_for_half(trough_bed_angle: float) -> float:
    """The half angle on each side was taken for the whole bed."""
    return trough_bed_angle / 2


@BOOK.misconception(of="trough_bedded_moment")
def line_support_thought_a_bed(trough_line_moment: float) -> float:
    """The trough was set on a line of stones and thought bedded."""
    return trough_line_moment


@BOOK.misconception(of="trough_end_depth")
def end_push_at_half_depth(trough_radius: float) -> float:
    """The push was set at half the depth."""
    return trough_radius / 2


@BOOK.misconception(of="trough_end_force")
def end_wall_taken_for_a_rectangle(trough_radius: float) -> float:
    """The end wall was taken for a rectangle as wide as the trough."""
    return WATER_WEIGHT * trough_radius**3


@BOOK.misconception(of="trough_tie_pull")
def tie_for_a_metre_only(trough_radius: float) -> float:
    """The tie was worked out for one metre, whatever its spacing."""
    return WATER_WEIGHT * trough_radius**2 / 4 * ONE_METRE


@BOOK.misconception(of="trough_pull")
def trough_pull_as_in_a_round_tank(trough_radius: float) -> float:
    """The pull was worked out as in a round tank: water weight x depth x radius."""
    return WATER_WEIGHT * trough_radius * trough_radius


@BOOK.misconception(of="trough_line_stress")
def bending_left_out_of_the_trough(trough_pull: float, trough_wall_thickness: float) -> float:
    """Only the pull was counted; the bending, which is far larger, was left out."""
    return trough_pull / trough_wall_thickness


@BOOK.misconception(of="trough_tied_moment")
def ties_thought_useless(trough_line_moment: float) -> float:
    """Ties across the top were thought to change nothing."""
    return trough_line_moment


@BOOK.misconception(of="trough_line_stress")
def six_forgotten_in_the_trough(trough_line_moment: float, trough_pull: float, trough_wall_thickness: float) -> float:
    """The six was left out: the moment was shared by the thickness squared alone."""
    return trough_line_moment * NEWTONS_IN_KILONEWTON / trough_wall_thickness**2 + trough_pull / trough_wall_thickness


@BOOK.misconception(of="trough_pull")
def trough_pull_from_whole_width(trough_radius: float) -> float:
    """The whole width was put in where half of it belongs."""
    return WATER_WEIGHT * (2 * trough_radius) ** 2 / 2


@BOOK.misconception(of="trough_line_moment")
def trough_moment_from_whole_width(trough_radius: float) -> float:
    """The whole width was put in where half of it belongs."""
    return WATER_WEIGHT * (2 * trough_radius) ** 3 / 2


@BOOK.misconception(of="trough_end_force")
def end_pushed_as_at_its_bottom(trough_radius: float) -> float:
    """The whole end was pushed as hard as its lowest point."""
    return WATER_WEIGHT * trough_radius * pi * trough_radius**2 / 2


@BOOK.misconception(of="trough_end_depth")
def end_push_as_on_an_upright_wall(trough_radius: float) -> float:
    """The push was set at two thirds of the depth, as on a wall of even width."""
    return 2 * trough_radius / 3


@BOOK.misconception(of="trough_tie_pull")
def tie_given_the_pull_of_the_belly(trough_pull: float, trough_tie_spacing: float) -> float:
    """The tie was given all the pull of the belly; the water hangs half of it there."""
    return trough_pull * trough_tie_spacing
