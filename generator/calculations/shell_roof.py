"""Domes and cones: their shape, their load, and the ring that holds their edge together.

A curved roof presses down and out at its edge. The wall can't hold the outward push: a ring of steel in the edge does.

References:
    .. [1] Statics of shells of revolution: the edge ring bears load x cot(slope) / (2 pi); derived.
"""

from math import acos, cos, pi, sqrt

from generator.calculations._book import BOOK
from generator.calculations.ring_strength import NEWTONS_IN_KILONEWTON
from generator.calculations.roof import MORTAR_WEIGHT
from generator.calculations.setting_out import MILLIMETRES_IN_METRE
from generator.formula import Constant, OutOfRangeError, derived

HUNDRED = Constant(100, "", derived("parts of a hundred"))

BOOK.given(
    "roof_rise_parts",
    symbol="n_ro",
    unit="",
    low=5,
    high=10,
    step=1,
    source=derived("a dome flatter than 51.8 degrees at its edge is pressed all over; rise of a fifth stays under it"),
)


@BOOK.quantity(symbol="h_ro", unit="m", places=2, low=0.06, high=1.6, source=derived("span divided by the parts"))
def roof_rise(inside_diameter: float, roof_rise_parts: float) -> float:
    """How much higher the crown of a dome or the tip of a cone stands than its edge.

    Args:
        inside_diameter: inside diameter [m], 0.6 to 8.0.
        roof_rise_parts: roof rise: the span divided by [-], 5 to 10.

    Returns:
        Rise [m], 0.06 to 1.6.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(roof_rise(inside_diameter=3.2, roof_rise_parts=7), 2)
        '0.46'
    """
    return inside_diameter / roof_rise_parts


@BOOK.quantity(
    symbol="R_ro", unit="m", places=2, low=0.4, high=10.5, source=derived("circle through the edge and the crown")
)
def dome_sphere_radius(inside_radius: float, roof_rise: float) -> float:
    """Radius of the ball that the dome is cut from: the length of the string that shapes it.

    Args:
        inside_radius: inside radius: centre to the wall's wet face [m], 0.3 to 4.0.
        roof_rise: rise of the roof [m], 0.06 to 1.6.

    Returns:
        Radius [m], 0.4 to 10.5.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(dome_sphere_radius(inside_radius=1.6, roof_rise=0.46), 2)
        '3.01'
    """
    return (inside_radius**2 + roof_rise**2) / (2 * roof_rise)


@BOOK.quantity(
    symbol="A_rd",
    unit="m**2",
    places=2,
    low=0.2,
    high=60,
    source=derived("area of a cap: pi x (radius squared + rise squared)"),
)
def dome_area(inside_radius: float, roof_rise: float) -> float:
    """Area of the dome, one face.

    Args:
        inside_radius: inside radius: centre to the wall's wet face [m], 0.3 to 4.0.
        roof_rise: rise of the roof [m], 0.06 to 1.6.

    Returns:
        Area [m**2], 0.2 to 60.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(dome_area(inside_radius=1.6, roof_rise=0.46), 2)
        '8.71'
    """
    return pi * (inside_radius**2 + roof_rise**2)


@BOOK.quantity(
    symbol="W_rd",
    unit="kN",
    places=1,
    low=0.3,
    high=400,
    source=derived("mortar over the cap, people over the ground plan"),
)
def dome_weight(dome_area: float, roof_thickness: float, roof_live_load: float, inside_radius: float) -> float:
    """Load that the dome brings to its edge.

    Args:
        dome_area: area of the dome [m**2], 0.2 to 60.
        roof_thickness: thickness of the roof [mm], 30 to 100.
        roof_live_load: load of people on the roof [kN/m**2], 0.75 to 5.
        inside_radius: inside radius: centre to the wall's wet face [m], 0.3 to 4.0.

    Returns:
        Load [kN], 0.3 to 400.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(dome_weight(dome_area=8.71, roof_thickness=40, roof_live_load=1, inside_radius=1.6), 1)
        '16.4'
    """
    return MORTAR_WEIGHT * roof_thickness / MILLIMETRES_IN_METRE * dome_area + roof_live_load * pi * inside_radius**2


@BOOK.quantity(symbol="T_rd", unit="kN", places=2, low=0, high=160, source=derived("load x slope's cotangent / (2 pi)"))
def dome_edge_pull(dome_weight: float, dome_sphere_radius: float, roof_rise: float, inside_radius: float) -> float:
    """Pull in the ring round the edge of the dome.

    Args:
        dome_weight: load of the dome [kN], 0.3 to 400.
        dome_sphere_radius: radius of the dome's ball [m], 0.4 to 10.5.
        roof_rise: rise of the roof [m], 0.06 to 1.6.
        inside_radius: inside radius: centre to the wall's wet face [m], 0.3 to 4.0.

    Returns:
        Pull [kN], 0 to 160.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(dome_edge_pull(dome_weight=16.4, dome_sphere_radius=3.01, roof_rise=0.46, inside_radius=1.6), 2)
        '4.16'
    """
    return dome_weight * (dome_sphere_radius - roof_rise) / inside_radius / (2 * pi)


@BOOK.quantity(
    symbol="A_rg",
    unit="mm**2",
    places=1,
    low=0,
    high=2000,
    source=derived("pull / working stress; the mortar is not counted"),
)
def dome_ring_steel(dome_edge_pull: float, steel_working_stress: float) -> float:
    """Steel that the dome needs round its edge, in place before the mortar.

    Args:
        dome_edge_pull: pull in the dome's edge ring [kN], 0 to 160.
        steel_working_stress: working stress allowed in the steel [MPa], 80 to 130.

    Returns:
        Steel [mm**2], 0 to 2000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(dome_ring_steel(dome_edge_pull=4.16, steel_working_stress=115), 1)
        '36.2'
    """
    return dome_edge_pull * NEWTONS_IN_KILONEWTON / steel_working_stress


@BOOK.quantity(symbol="L_rc", unit="m", places=2, low=0.3, high=4.4, source=derived("long side of a right triangle"))
def cone_slope_length(inside_radius: float, roof_rise: float) -> float:
    """From the edge of a cone up its slope to the tip.

    Args:
        inside_radius: inside radius: centre to the wall's wet face [m], 0.3 to 4.0.
        roof_rise: rise of the roof [m], 0.06 to 1.6.

    Returns:
        Length [m], 0.3 to 4.4.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(cone_slope_length(inside_radius=1.6, roof_rise=0.46), 2)
        '1.66'
    """
    return sqrt(inside_radius**2 + roof_rise**2)


@BOOK.quantity(symbol="A_rc", unit="m**2", places=2, low=0.2, high=56, source=derived("pi x radius x slope"))
def cone_area(inside_radius: float, cone_slope_length: float) -> float:
    """Area of the cone, one face.

    Args:
        inside_radius: inside radius: centre to the wall's wet face [m], 0.3 to 4.0.
        cone_slope_length: slope of the cone, edge to tip [m], 0.3 to 4.4.

    Returns:
        Area [m**2], 0.2 to 56.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(cone_area(inside_radius=1.6, cone_slope_length=1.66), 2)
        '8.34'
    """
    return pi * inside_radius * cone_slope_length


@BOOK.quantity(
    symbol="W_rc",
    unit="kN",
    places=1,
    low=0.3,
    high=390,
    source=derived("mortar over the slope, people over the ground plan"),
)
def cone_weight(cone_area: float, roof_thickness: float, roof_live_load: float, inside_radius: float) -> float:
    """Load that the cone brings to its edge.

    Args:
        cone_area: area of the cone [m**2], 0.2 to 56.
        roof_thickness: thickness of the roof [mm], 30 to 100.
        roof_live_load: load of people on the roof [kN/m**2], 0.75 to 5.
        inside_radius: inside radius: centre to the wall's wet face [m], 0.3 to 4.0.

    Returns:
        Load [kN], 0.3 to 390.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(cone_weight(cone_area=8.37, roof_thickness=40, roof_live_load=1, inside_radius=1.6), 1)
        '16.1'
    """
    return MORTAR_WEIGHT * roof_thickness / MILLIMETRES_IN_METRE * cone_area + roof_live_load * pi * inside_radius**2


@BOOK.quantity(symbol="T_rc", unit="kN", places=2, low=0, high=320, source=derived("load x radius / (2 pi x rise)"))
def cone_edge_pull(cone_weight: float, inside_radius: float, roof_rise: float) -> float:
    """Pull in the ring round the edge of the cone: larger than a dome's.

    Args:
        cone_weight: load of the cone [kN], 0.3 to 390.
        inside_radius: inside radius: centre to the wall's wet face [m], 0.3 to 4.0.
        roof_rise: rise of the roof [m], 0.06 to 1.6.

    Returns:
        Pull [kN], 0 to 320.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(cone_edge_pull(cone_weight=16.1, inside_radius=1.6, roof_rise=0.46), 2)
        '8.91'
    """
    return cone_weight * inside_radius / (2 * pi * roof_rise)


@BOOK.quantity(
    symbol="A_rk",
    unit="mm**2",
    places=1,
    low=0,
    high=4000,
    source=derived("pull / working stress; the mortar is not counted"),
)
def cone_ring_steel(cone_edge_pull: float, steel_working_stress: float) -> float:
    """Steel that the cone needs round its edge, in place before the mortar.

    Args:
        cone_edge_pull: pull in the cone's edge ring [kN], 0 to 320.
        steel_working_stress: working stress allowed in the steel [MPa], 80 to 130.

    Returns:
        Steel [mm**2], 0 to 4000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(cone_ring_steel(cone_edge_pull=8.9, steel_working_stress=115), 1)
        '77.4'
    """
    return cone_edge_pull * NEWTONS_IN_KILONEWTON / steel_working_stress


def dome_forces(load: float, sphere_radius: float, slope: float) -> tuple[float, float]:
    """Pressing forces in a dome under its own weight: down the slope and round the ring, per metre.

    Args:
        load: of a square metre of dome [kN/m2].
        sphere_radius: [m].
        slope: angle from the crown [radians], 0 to pi/2.

    Returns:
        Down the slope and round the ring [kN/m]; positive presses, negative pulls. The ring pulls beyond 51.8 degrees.

    Raises:
        OutOfRangeError: a slope outside the range.

    Example:
        >>> down, round_it = dome_forces(0.84, 2.725, 0.0)
        >>> round(down, 3) == round(round_it, 3) == 1.145
        True
    """
    if not 0 <= slope <= pi / 2:
        raise OutOfRangeError("a dome's slope lies between 0 and 90 degrees; ask a licensed engineer")
    down = load * sphere_radius / (1 + cos(slope))
    return down, load * sphere_radius * cos(slope) - down


def edge_slope(inside_radius: float, rise: float) -> float:
    """Slope of a dome at its edge [radians].

    Args:
        inside_radius: [m].
        rise: [m], up to the radius.

    Raises:
        OutOfRangeError: a rise that is not above 0 or is above the radius.

    Example:
        >>> from math import degrees
        >>> round(degrees(edge_slope(1.5, 0.45)), 2)
        33.4
    """
    if not 0 < rise <= inside_radius:
        raise OutOfRangeError("a dome rises by more than nothing and at most by its radius; ask a licensed engineer")
    sphere = (inside_radius**2 + rise**2) / (2 * rise)
    return acos((sphere - rise) / sphere)


@BOOK.misconception(of="roof_rise")
def rise_from_radius(inside_radius: float, roof_rise_parts: float) -> float:
    """Half the span was divided."""
    return inside_radius / roof_rise_parts


@BOOK.misconception(of="roof_rise")
def rise_part_read_as_hundredths(inside_diameter: float, roof_rise_parts: float) -> float:
    """A seventh was read as seven in a hundred."""
    return inside_diameter * roof_rise_parts / HUNDRED


@BOOK.misconception(of="dome_area")
def dome_area_as_flat(inside_radius: float) -> float:
    """The dome was taken for a flat circle."""
    return pi * inside_radius**2


@BOOK.misconception(of="dome_edge_pull")
def dome_pull_as_cone(dome_weight: float, inside_radius: float, roof_rise: float) -> float:
    """The dome's slope at the edge was taken for a straight line to the crown."""
    return dome_weight * inside_radius / (2 * pi * roof_rise)


@BOOK.misconception(of="cone_edge_pull")
def edge_ring_left_to_the_wall(cone_weight: float) -> float:
    """The edge was thought to press straight down, as a share of the load."""
    return cone_weight / (2 * pi)


@BOOK.misconception(of="cone_slope_length")
def cone_slope_as_radius(inside_radius: float) -> float:
    """The slope was taken as long as the radius."""
    return inside_radius


@BOOK.misconception(of="dome_weight")
def dome_live_load_forgotten(dome_area: float, roof_thickness: float) -> float:
    """Only the dome's own weight was counted."""
    return MORTAR_WEIGHT * roof_thickness / MILLIMETRES_IN_METRE * dome_area


@BOOK.misconception(of="dome_sphere_radius")
def dome_string_as_long_as_the_radius(inside_radius: float) -> float:
    """The string was taken as long as the tank's half width: that shapes half a ball."""
    return inside_radius


@BOOK.misconception(of="dome_ring_steel")
def dome_ring_halved_between_two_sides(dome_edge_pull: float, steel_working_stress: float) -> float:
    """The pull was halved, since a ring has two sides."""
    return dome_edge_pull * NEWTONS_IN_KILONEWTON / (2 * steel_working_stress)


@BOOK.misconception(of="cone_area")
def cone_area_as_flat(inside_radius: float) -> float:
    """The cone was taken for a flat circle."""
    return pi * inside_radius**2


@BOOK.misconception(of="cone_weight")
def cone_live_load_forgotten(cone_area: float, roof_thickness: float) -> float:
    """Only the cone's own weight was counted."""
    return MORTAR_WEIGHT * roof_thickness / MILLIMETRES_IN_METRE * cone_area


@BOOK.misconception(of="cone_ring_steel")
def cone_ring_taken_from_a_dome(dome_edge_pull: float, steel_working_stress: float) -> float:
    """The pull of a dome was taken for the cone's."""
    return dome_edge_pull * NEWTONS_IN_KILONEWTON / steel_working_stress
