"""The ground under a tank: the platform that is cut for it, the earth that is dug, the pressure that it must bear.

The whole platform stands in cut ground. What was dug is never spread under the tank: half on fill is how tanks on hills
fail. A cut bank can fall without a sound and buries whoever stands under it: nobody stands or sits below an unsupported
bank over 1.2 m (common practice; the local law decides), earth lies a metre back from its edge, and nobody digs alone,
in rain or under a bank that has cracks or weeps.

References:
    .. [1] IS 1904 as printed in a geotechnical textbook, p. 544, with the picket test.
"""

from math import atan, pi, sin, tan

from generator.calculations._book import BOOK
from generator.calculations.mortar import PERCENT
from generator.calculations.ring_strength import WATER_WEIGHT
from generator.calculations.trough import HALF_TURN
from generator.calculations.volumes import LITRES_IN_CUBIC_METRE
from generator.formula import Constant, common_practice, derived, published, whole_down, whole_up

LOOSE_PICKET = Constant(
    200, "mm", published("bearing tables after IS 1904: a picket of 50 x 50 mm that goes in deeper shows loose ground")
)
UNSUPPORTED_BANK = Constant(
    1.2, "m", common_practice("nobody stands below a higher bank that is not held or laid back; the local law decides")
)
PERCENT_AS_DEGREES = Constant(100, "degree", derived("a misreading: the drop in a hundred, called degrees"))
DEGREES_READ_WRONG = Constant(0.01, "1/degree", derived("a degree taken for a percent"))

BOOK.given(
    "ground_slope",
    symbol="a_g",
    unit="degree",
    low=0,
    high=30,
    step=1,
    source=derived("from level ground to a slope where a person hardly stands; over 15 degrees the band is stricter"),
)
BOOK.given(
    "working_room",
    symbol="w_g",
    unit="m",
    low=0.4,
    high=1.2,
    step=0.05,
    source=common_practice("room for a mason, a pan and a scaffold leg between the base and the bank"),
)
BOOK.given(
    "cut_batter",
    symbol="b_g",
    unit="",
    low=0,
    high=1.5,
    step=0.05,
    source=common_practice("how far a bank is laid back for each metre of its height; loose earth needs the most"),
)
BOOK.given(
    "spoil_swell",
    symbol="s_g",
    unit="%",
    low=5,
    high=60,
    step=5,
    source=common_practice("dug earth takes a tenth to half more room than it had, broken rock more"),
)
BOOK.given(
    "spoil_load_volume",
    symbol="v_g",
    unit="L",
    low=10,
    high=80,
    step=5,
    source=common_practice("from a head basket to a full wheelbarrow; fill five and measure"),
)
BOOK.given(
    "ditch_setback",
    symbol="c_g",
    unit="m",
    low=0.5,
    high=2,
    step=0.1,
    source=common_practice("a ditch at the very edge soaks the bank and brings it down"),
)
BOOK.given(
    "picket_depth",
    symbol="d_g",
    unit="mm",
    low=0,
    high=600,
    step=10,
    source=published("bearing tables after IS 1904: picket of 50 x 50 mm, pushed in by a person of 70 kg or more"),
)
BOOK.given(
    "slope_run",
    symbol="x_gs",
    unit="m",
    low=1,
    high=3,
    step=0.05,
    source=common_practice("length of a straight board that is held level down the steepest way"),
)
BOOK.given(
    "slope_drop",
    symbol="y_gs",
    unit="m",
    low=0.01,
    high=1.5,
    step=0.005,
    source=common_practice("from the board's free end straight down to the ground, along a plumb line"),
)


@BOOK.quantity(
    symbol="a_gs", unit="degree", places=1, low=0.1, high=57, source=derived("drop over level length is the tangent")
)
def slope_angle(slope_drop: float, slope_run: float) -> float:
    """Slope of the ground, measured with a level board and a plumb line, at the steepest place of the platform.

    Caution: over 15 degrees a platform makes the tank stricter, over 30 nothing is built from this course.

    Args:
        slope_drop: from the board's free end down to the ground [m], 0.01 to 1.5.
        slope_run: length of the level board [m], 1 to 3.

    Returns:
        Slope [degree], 0.1 to 57.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(slope_angle(slope_drop=0.5, slope_run=2), 1)
        '14.0'
    """
    return atan(slope_drop / slope_run) * HALF_TURN / pi


@BOOK.quantity(symbol="B_g", unit="m", places=2, low=1.5, high=12.5, source=derived("working room on both sides"))
def platform_width(base_diameter: float, working_room: float) -> float:
    """Width of the level platform, the same both ways; all of it is cut ground, nothing of it is fill.

    Args:
        base_diameter: across the base [m], 0.8 to 9.4.
        working_room: room beside the base [m], 0.4 to 1.2.

    Returns:
        Width [m], 1.5 to 12.5.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(platform_width(base_diameter=6.4, working_room=0.6), 2)
        '7.60'
    """
    return base_diameter + 2 * working_room


@BOOK.quantity(
    symbol="H_g",
    unit="m",
    places=2,
    low=0,
    high=3,
    source=derived("width x tangent of the slope; over 3 m refused: policy of this course, not a code"),
)
def cut_height(platform_width: float, ground_slope: float) -> float:
    """Height of the cut at the uphill edge, when the downhill edge just meets the ground.

    Caution: a bank falls without warning. Nobody stands below an unsupported bank over 1.2 m (common practice; the
    local law decides): lay it back, step it or have it held.

    Args:
        platform_width: width of the platform [m], 1.5 to 12.5.
        ground_slope: slope of the ground [degree], 0 to 30.

    Returns:
        Height [m], 0 to 3.

    Raises:
        OutOfRangeError: a value outside its range; a higher bank is an engineer's.

    Example:
        >>> from generator.formula import show
        >>> show(cut_height(platform_width=7.6, ground_slope=20), 2)
        '2.77'
    """
    return platform_width * tan(ground_slope * pi / HALF_TURN)


@BOOK.quantity(
    symbol="x_g",
    unit="m",
    places=2,
    low=0,
    high=35,
    source=derived("the laid-back bank meets ground that goes on rising: height x batter / (1 - batter x tangent)"),
)
def cut_back_width(cut_height: float, cut_batter: float, ground_slope: float) -> float:
    """How far the top of the laid-back bank lies behind the platform, measured level.

    Caution: a batter that stood for a year can fall in the first long rain; wet or cracked ground needs a flatter one.

    Args:
        cut_height: height of the cut at the uphill edge [m], 0 to 3.
        cut_batter: how far the bank is laid back for a metre of height [-], 0 to 1.5.
        ground_slope: slope of the ground [degree], 0 to 30.

    Returns:
        Width [m], 0 to 35.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(cut_back_width(cut_height=1.5, cut_batter=0.5, ground_slope=15), 2)
        '0.87'
    """
    return cut_height * cut_batter / (1 - cut_batter * tan(ground_slope * pi / HALF_TURN))


@BOOK.quantity(
    symbol="V_g",
    unit="m**3",
    places=1,
    low=0,
    high=400,
    source=derived("triangle of platform, bank and slope, as long as the platform is wide; the two ends stand upright"),
)
def cut_volume(platform_width: float, cut_height: float, cut_back_width: float) -> float:
    """Earth in the ground that is cut away for a square platform and its laid-back bank.

    Args:
        platform_width: width of the platform [m], 1.5 to 12.5.
        cut_height: height of the cut at the uphill edge [m], 0 to 3.
        cut_back_width: from the platform back to the top of the bank [m], 0 to 35.

    Returns:
        Volume [m**3], 0 to 400.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(cut_volume(platform_width=5, cut_height=1.5, cut_back_width=1), 1)
        '22.5'
    """
    return platform_width * cut_height * (platform_width + cut_back_width) / 2


@BOOK.quantity(
    symbol="V_gs", unit="m**3", places=1, low=0, high=700, source=derived("what is dug, and the room that it swells by")
)
def spoil_volume(cut_volume: float, excavation_volume: float, spoil_swell: float) -> float:
    """Loose earth that must be carried away and laid where rain can't wash it onto a path, a field or a spring.

    Caution: spoil tipped down the hill slides on in the rains. Never build or walk below a loose heap.

    Args:
        cut_volume: earth cut away for the platform [m**3], 0 to 400.
        excavation_volume: earth dug out under the base [m**3], 0.05 to 60.
        spoil_swell: how much more room dug earth takes [%], 5 to 60.

    Returns:
        Volume [m**3], 0 to 700.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(spoil_volume(cut_volume=22.5, excavation_volume=2.5, spoil_swell=30), 1)
        '32.5'
    """
    return (cut_volume + excavation_volume) * (1 + spoil_swell / PERCENT)


@BOOK.quantity(symbol="n_g", unit="", places=0, low=1, high=70000, source=derived("volume / one load, rounded up"))
def spoil_loads(spoil_volume: float, spoil_load_volume: float) -> float:
    """Baskets or barrows of loose earth to carry away.

    Args:
        spoil_volume: loose earth to carry away [m**3], 0 to 700.
        spoil_load_volume: earth in one load [L], 10 to 80.

    Returns:
        Number of loads [-], 1 to 70000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> spoil_loads(spoil_volume=3.25, spoil_load_volume=30)
        109.0
    """
    return whole_up(spoil_volume * LITRES_IN_CUBIC_METRE / spoil_load_volume)


@BOOK.quantity(
    symbol="L_gd",
    unit="m",
    places=1,
    low=4,
    high=120,
    source=derived("three sides round the cut: behind the bank and down both ends to the platform's outer edge"),
)
def drain_ditch_length(platform_width: float, cut_back_width: float, ditch_setback: float) -> float:
    """Length of the ditch that keeps the hill's water off bank and tank, measured level.

    It runs behind the bank and down both ends, and lets its water out on stones, away from the outer edge.

    Args:
        platform_width: width of the platform [m], 1.5 to 12.5.
        cut_back_width: from the platform back to the top of the bank [m], 0 to 35.
        ditch_setback: from the edge of the cut to the ditch [m], 0.5 to 2.

    Returns:
        Length [m], 4 to 120.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(drain_ditch_length(platform_width=5, cut_back_width=1, ditch_setback=0.5), 1)
        '19.0'
    """
    return (platform_width + 2 * ditch_setback) + 2 * (platform_width + cut_back_width + ditch_setback)


@BOOK.quantity(
    symbol="R_g", unit="", places=2, low=0, high=3, source=published("bearing tables after IS 1904: loose over 200 mm")
)
def picket_ratio(picket_depth: float) -> float:
    """How far the picket goes, against the 200 mm of sound ground. Over 1 the ground is loose: dig deeper or move.

    Push it at eight points of the circle: one soft corner tilts the tank.

    Args:
        picket_depth: how deep a pushed picket goes at the softest point [mm], 0 to 600.

    Returns:
        Ratio [-], 0 to 3.

    Raises:
        OutOfRangeError: the depth is outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(picket_ratio(picket_depth=130), 2)
        '0.65'
    """
    return picket_depth / LOOSE_PICKET


@BOOK.quantity(
    symbol="q_g",
    unit="kN/m**2",
    places=1,
    low=1,
    high=60,
    source=derived("weight of water, wall, base and roof over the area of the base"),
)
def ground_pressure_full(
    tank_volume: float, empty_weight: float, roof_load: float, outside_diameter: float, base_diameter: float
) -> float:
    """Pressure of the full tank on the ground, with people on a flat roof; floor mortar adds less than 3 more.

    Sound ground bears many times this. What breaks tanks is ground that gives unevenly: fill, a soft corner, an edge
    that rain has washed hollow.

    Args:
        tank_volume: water in the full tank [m**3], 0.1 to 50.
        empty_weight: weight of wall and base [kN], 1 to 640.
        roof_load: load on a square metre of roof [kN/m**2], 1.4 to 7.5.
        outside_diameter: across the finished tank [m], 0.6 to 8.2.
        base_diameter: across the base [m], 0.8 to 9.4.

    Returns:
        Pressure [kN/m**2], 1 to 60.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(
        ...     ground_pressure_full(
        ...         tank_volume=14, empty_weight=41, roof_load=1.6, outside_diameter=3.1, base_diameter=3.4
        ...     ),
        ...     1,
        ... )
        '21.0'
    """
    roof = roof_load * pi * outside_diameter**2 / 4
    return (WATER_WEIGHT * tank_volume + empty_weight + roof) / (pi * base_diameter**2 / 4)


@BOOK.quantity(
    symbol="q_ge",
    unit="kN/m**2",
    places=1,
    low=1,
    high=45,
    source=derived("weight of wall and base over the area of the base; the roof is left out"),
)
def ground_pressure_empty(empty_weight: float, base_diameter: float) -> float:
    """Pressure of the empty tank without its roof on the ground.

    Args:
        empty_weight: weight of wall and base [kN], 1 to 640.
        base_diameter: across the base [m], 0.8 to 9.4.

    Returns:
        Pressure [kN/m**2], 1 to 45.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(ground_pressure_empty(empty_weight=41, base_diameter=3.4), 1)
        '4.5'
    """
    return empty_weight / (pi * base_diameter**2 / 4)


@BOOK.misconception(of="slope_angle")
def slope_percent_called_degrees(slope_drop: float, slope_run: float) -> float:
    """The drop in a hundred was called degrees."""
    return slope_drop / slope_run * PERCENT_AS_DEGREES


@BOOK.misconception(of="slope_angle")
def slope_turned_round(slope_drop: float, slope_run: float) -> float:
    """The length was divided by the drop."""
    return atan(slope_run / slope_drop) * HALF_TURN / pi


@BOOK.misconception(of="drain_ditch_length")
def ditch_at_the_edge(platform_width: float, cut_back_width: float) -> float:
    """The ditch was dug along the very edge of the cut, where it soaks the bank."""
    return platform_width + 2 * (platform_width + cut_back_width)


@BOOK.misconception(of="platform_width")
def working_room_on_one_side_only(base_diameter: float, working_room: float) -> float:
    """The working room was added once; the base has two sides."""
    return base_diameter + working_room


@BOOK.misconception(of="platform_width")
def working_room_forgotten(base_diameter: float) -> float:
    """The platform was cut as wide as the base."""
    return base_diameter


@BOOK.misconception(of="cut_height")
def slope_over_half_the_width(platform_width: float, ground_slope: float) -> float:
    """The slope was followed from the middle, over half the width."""
    return platform_width / 2 * tan(ground_slope * pi / HALF_TURN)


@BOOK.misconception(of="cut_height")
def degrees_taken_for_percent(platform_width: float, ground_slope: float) -> float:
    """A slope in degrees was read as a slope in percent."""
    return platform_width * ground_slope * DEGREES_READ_WRONG


@BOOK.misconception(of="cut_height")
def tape_laid_on_the_slope(platform_width: float, ground_slope: float) -> float:
    """The width was taped along the sloping ground and not level."""
    return platform_width * sin(ground_slope * pi / HALF_TURN)


@BOOK.misconception(of="cut_back_width")
def bank_laid_back_on_level_ground(cut_height: float, cut_batter: float) -> float:
    """The ground behind the cut was taken for level; it goes on rising."""
    return cut_height * cut_batter


@BOOK.misconception(of="cut_volume")
def half_the_platform_on_fill(platform_width: float, cut_height: float, cut_back_width: float) -> float:
    """Only the uphill half was cut, and the outer half heaped up from what was dug: half as high, half as wide."""
    return platform_width * (cut_height / 2) * (platform_width / 2 + cut_back_width / 2) / 2


@BOOK.misconception(of="cut_volume")
def cut_taken_for_a_box(platform_width: float, cut_height: float, cut_back_width: float) -> float:
    """The full height of the bank was taken over the whole platform; the cut is a wedge."""
    return platform_width * cut_height * (platform_width + cut_back_width)


@BOOK.misconception(of="cut_volume")
def bank_left_upright(platform_width: float, cut_height: float) -> float:
    """The earth of the laid-back bank was not counted."""
    return platform_width * cut_height * platform_width / 2


@BOOK.misconception(of="spoil_volume")
def spoil_not_swollen(cut_volume: float, excavation_volume: float) -> float:
    """Dug earth was thought to take as much room as it had in the ground."""
    return cut_volume + excavation_volume


@BOOK.misconception(of="spoil_volume")
def spoil_thought_to_shrink(cut_volume: float, excavation_volume: float, spoil_swell: float) -> float:
    """The swelling was taken off and not added."""
    return (cut_volume + excavation_volume) * (1 - spoil_swell / PERCENT)


@BOOK.misconception(of="spoil_loads")
def spoil_loads_rounded_down(spoil_volume: float, spoil_load_volume: float) -> float:
    """The last part of a load was left lying."""
    return whole_down(spoil_volume * LITRES_IN_CUBIC_METRE / spoil_load_volume)


@BOOK.misconception(of="drain_ditch_length")
def ditch_behind_the_bank_only(platform_width: float, ditch_setback: float) -> float:
    """The ditch ended behind the bank and let its water run down at both ends."""
    return platform_width + 2 * ditch_setback


@BOOK.misconception(of="ground_pressure_full")
def water_alone_presses(tank_volume: float, base_diameter: float) -> float:
    """Wall, base and roof were thought to weigh nothing."""
    return WATER_WEIGHT * tank_volume / (pi * base_diameter**2 / 4)


@BOOK.misconception(of="ground_pressure_full")
def pressure_over_base_as_a_square(
    tank_volume: float, empty_weight: float, roof_load: float, outside_diameter: float, base_diameter: float
) -> float:
    """The weight was shared over the square around the base."""
    return (WATER_WEIGHT * tank_volume + empty_weight + roof_load * pi * outside_diameter**2 / 4) / base_diameter**2


@BOOK.misconception(of="ground_pressure_empty")
def weight_shared_by_width(empty_weight: float, base_diameter: float) -> float:
    """The weight was divided by the width of the base and not by its area."""
    return empty_weight / base_diameter
