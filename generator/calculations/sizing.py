"""From the water that is wanted to a tank: diameter, height of the wall, and what column and floor take away.

What is wanted is rounded up to what a mason sets out, never down: a diameter rounded down loses twice its share of the
water. The overflow and not the wall says how deep the water is, and what lies below the tap can't be drawn.

References:
    .. [1] Volume of a round tank with a column, less freeboard; the diameter solved from it (derived, see the tests).
    .. [2] Ferrocement action sheet: washout at the lowest point, tap outlet above it.
"""

from math import atan, pi, sqrt

from generator.calculations._book import BOOK
from generator.calculations.mortar import PERCENT
from generator.calculations.ring_strength import LEAST_DEPTH
from generator.calculations.volumes import LITRES_IN_CUBIC_METRE, LITRES_READ_WRONG
from generator.formula import Constant, common_practice, derived, published, whole_down, whole_up

BUILDING_STEP = Constant(0.05, "m", derived("diameters and walls are set out in steps of 5 cm"))
METRES_IN_CENTIMETRE = Constant(0.01, "m/cm", derived("1 cm is 0.01 m"))
NOTHING_DRAWN = Constant(0, "m**3", derived("a tap above the water draws nothing"))
ONE_METRE_OF_WATER = Constant(1, "m/cm", derived("a metre taken for a centimetre"))
ONE_DAY = Constant(1, "day", derived("what an animal drinks is told for a day"))

BOOK.given(
    "column_width",
    symbol="w_q",
    unit="m",
    low=0,
    high=0.4,
    step=0.01,
    source=derived("0 for no column; wider takes too much of a small tank"),
)
BOOK.given(
    "dead_storage_height",
    symbol="h_qd",
    unit="m",
    low=0,
    high=0.3,
    step=0.01,
    source=published("ferrocement action sheet: the tap outlet stands above the washout; 0 for a tap at the floor"),
)
BOOK.given(
    "floor_dip",
    symbol="f_qb",
    unit="m",
    low=0,
    high=0.3,
    step=0.01,
    source=common_practice("a floor falls to its washout; deeper floors are another building"),
)
BOOK.given(
    "trough_rim_gap",
    symbol="g_qt",
    unit="m",
    low=0,
    high=0.15,
    step=0.01,
    source=derived("from a trough full to the rim to the radius of the smallest one"),
)


@BOOK.quantity(
    symbol="A_qn", unit="m**2", places=2, low=0.15, high=51, source=derived("floor less the foot of the column")
)
def net_floor_area(floor_area: float, column_width: float) -> float:
    """Floor that water stands on: the column's foot is taken off.

    Args:
        floor_area: area of the floor [m**2], 0.25 to 51.
        column_width: width across the round column, 0 for none [m], 0 to 0.4.

    Returns:
        Area [m**2], 0.15 to 51.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(net_floor_area(floor_area=7.07, column_width=0.3), 2)
        '7.00'
    """
    return floor_area - pi / 4 * column_width**2


@BOOK.quantity(symbol="V_qc", unit="m**3", places=3, low=0, high=0.28, source=derived("a round column up to the water"))
def column_volume(column_width: float, water_depth: float) -> float:
    """Room that the column takes from the water: up to the overflow, not to the roof.

    Args:
        column_width: width across the round column, 0 for none [m], 0 to 0.4.
        water_depth: depth of the water [m], 0.1 to 2.2.

    Returns:
        Volume [m**3], 0 to 0.28.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(column_volume(column_width=0.3, water_depth=1.25), 3)
        '0.088'
    """
    return pi / 4 * column_width**2 * water_depth


@BOOK.quantity(
    symbol="V_qn", unit="m**3", places=3, low=0.05, high=50, source=derived("pi/4 x (D x D - c x c) x depth")
)
def net_tank_volume(tank_volume: float, column_volume: float) -> float:
    """Water in the full tank, less the column.

    Args:
        tank_volume: water in the full tank, column not taken off [m**3], 0.1 to 50.
        column_volume: volume [m**3], 0 to 0.28.

    Returns:
        Volume [m**3], 0.05 to 50.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(net_tank_volume(tank_volume=6.64, column_volume=0.088), 3)
        '6.552'
    """
    return tank_volume - column_volume


@BOOK.quantity(
    symbol="V_qd",
    unit="m**3",
    places=3,
    low=0,
    high=15.1,
    source=derived("floor without column times height of the tap"),
)
def dead_volume(net_floor_area: float, dead_storage_height: float, water_depth: float) -> float:
    """Water below the tap: silt settles in it, and nobody can draw it.

    Args:
        net_floor_area: area [m**2], 0.15 to 51.
        dead_storage_height: tap outlet above the floor [m], 0 to 0.3.
        water_depth: depth of the water [m], 0.1 to 2.2.

    Returns:
        Volume [m**3], 0 to 15.1.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(dead_volume(net_floor_area=7, dead_storage_height=0.1, water_depth=1.25), 3)
        '0.700'
    """
    return net_floor_area * min(dead_storage_height, water_depth)


@BOOK.quantity(
    symbol="V_qu",
    unit="m**3",
    places=3,
    low=0,
    high=50,
    source=derived("water in the tank less what lies below the tap"),
)
def usable_volume(net_tank_volume: float, dead_volume: float) -> float:
    """Water that can be drawn.

    Args:
        net_tank_volume: volume [m**3], 0.05 to 50.
        dead_volume: volume [m**3], 0 to 15.1.

    Returns:
        Volume [m**3], 0 to 50.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(usable_volume(net_tank_volume=6.552, dead_volume=0.7), 3)
        '5.852'
    """
    return max(NOTHING_DRAWN, net_tank_volume - dead_volume)


@BOOK.quantity(symbol="v_q", unit="L/cm", places=1, low=1, high=510, source=derived("1 cm on 1 m2 is 10 L"))
def volume_per_centimetre(net_floor_area: float) -> float:
    """What one centimetre on the gauge stick stands for.

    Args:
        net_floor_area: area [m**2], 0.15 to 51.

    Returns:
        Water in a centimetre [L/cm], 1 to 510.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(volume_per_centimetre(net_floor_area=7), 1)
        '70.0'
    """
    return net_floor_area * METRES_IN_CENTIMETRE * LITRES_IN_CUBIC_METRE


@BOOK.quantity(
    symbol="D_q",
    unit="m",
    places=2,
    low=0.5,
    high=8,
    source=derived("square root of 4 V / (pi h) + c x c, rounded up to 5 cm"),
)
def diameter_for_volume(wanted_volume: float, water_depth: float, column_width: float) -> float:
    """Inside diameter that holds the wanted water at a depth, rounded up to 5 cm.

    Args:
        wanted_volume: water that is wanted [m**3], 0.5 to 50.
        water_depth: depth of the water [m], 0.1 to 2.2.
        column_width: width across the round column, 0 for none [m], 0 to 0.4.

    Returns:
        Inside diameter [m], 0.5 to 8.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(diameter_for_volume(wanted_volume=6.5, water_depth=1.25, column_width=0.3), 2)
        '2.60'
    """
    return (
        whole_up(sqrt(4 * wanted_volume / (pi * max(water_depth, LEAST_DEPTH)) + column_width**2) / BUILDING_STEP)
        * BUILDING_STEP
    )


@BOOK.quantity(
    symbol="h_qn", unit="m", places=3, low=0.005, high=2.2, source=derived("volume over the floor without the column")
)
def water_depth_needed(wanted_volume: float, net_floor_area: float) -> float:
    """Depth of water that the wanted volume takes on this floor, beside the column.

    Args:
        wanted_volume: water that is wanted [m**3], 0.5 to 50.
        net_floor_area: area [m**2], 0.15 to 51.

    Returns:
        Depth [m], 0.005 to 2.2.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(water_depth_needed(wanted_volume=6.5, net_floor_area=7), 3)
        '0.929'
    """
    return wanted_volume / net_floor_area


@BOOK.quantity(
    symbol="H_q",
    unit="m",
    places=2,
    low=0.1,
    high=2.4,
    source=derived("depth and the drop of the overflow, rounded up to 5 cm"),
)
def wall_height_needed(water_depth_needed: float, overflow_drop: float) -> float:
    """Wall that the wanted volume asks for: up to the overflow and on to the top, rounded up to 5 cm.

    Args:
        water_depth_needed: depth [m], 0.005 to 2.2.
        overflow_drop: overflow below the top of the wall [m], 0.05 to 0.5.

    Returns:
        Height of the wall [m], 0.1 to 2.4.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(wall_height_needed(water_depth_needed=0.929, overflow_drop=0.15), 2)
        '1.10'
    """
    return whole_up((water_depth_needed + overflow_drop) / BUILDING_STEP) * BUILDING_STEP


@BOOK.quantity(
    symbol="V_qb", unit="m**3", places=3, low=0, high=7.6, source=derived("part of a ball: pi f (3 a a + f f) / 6")
)
def bowl_floor_volume(inside_radius: float, floor_dip: float) -> float:
    """Water in a bowl-shaped floor, below the foot of the wall; it is not in the volume of the tank.

    Args:
        inside_radius: centre to wet face [m], 0.3 to 4.
        floor_dip: middle of the floor below the foot of the wall [m], 0 to 0.3.

    Returns:
        Volume [m**3], 0 to 7.6.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(bowl_floor_volume(inside_radius=1.3, floor_dip=0.1), 3)
        '0.266'
    """
    return pi * floor_dip * (3 * inside_radius**2 + floor_dip**2) / 6


@BOOK.quantity(symbol="V_qk", unit="m**3", places=3, low=0, high=5.1, source=derived("a third of floor x fall"))
def funnel_floor_volume(floor_area: float, floor_dip: float) -> float:
    """Water in a funnel-shaped floor, below the foot of the wall; it is not in the volume of the tank.

    Args:
        floor_area: area of the floor [m**2], 0.25 to 51.
        floor_dip: middle of the floor below the foot of the wall [m], 0 to 0.3.

    Returns:
        Volume [m**3], 0 to 5.1.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(funnel_floor_volume(floor_area=5.31, floor_dip=0.1), 3)
        '0.177'
    """
    return floor_area * floor_dip / 3


@BOOK.quantity(
    symbol="p_qt",
    unit="%",
    places=0,
    low=0,
    high=100,
    source=derived("part of a half-round log below the water: r r acos(g/r) - g sqrt(r r - g g), of half the round"),
)
def trough_fill_share(trough_radius: float, trough_rim_gap: float) -> float:
    """Share of a half-round trough that is filled when its overflow lies below the rim.

    Args:
        trough_radius: half across at the rim [m], 0.15 to 0.6.
        trough_rim_gap: water below the rim of the trough [m], 0 to 0.15.

    Returns:
        Share [%], 0 to 100.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(trough_fill_share(trough_radius=0.35, trough_rim_gap=0.05), 0)
        '82'
    """
    angle = 2 * atan(sqrt((trough_radius - trough_rim_gap) / (trough_radius + trough_rim_gap)))
    triangle = trough_rim_gap * sqrt(trough_radius**2 - trough_rim_gap**2)
    return PERCENT * (trough_radius**2 * angle - triangle) / (pi / 2 * trough_radius**2)


@BOOK.quantity(
    symbol="V_qt", unit="m**3", places=3, low=0, high=3.5, source=derived("the full trough x the share that is filled")
)
def trough_water_volume(trough_volume: float, trough_fill_share: float) -> float:
    """Water in a half-round trough whose overflow lies below the rim.

    Args:
        trough_volume: water to the rim [m**3], 0.01 to 3.5.
        trough_fill_share: share that is filled up to the overflow [%], 0 to 100.

    Returns:
        Volume [m**3], 0 to 3.5.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(trough_water_volume(trough_volume=0.385, trough_fill_share=82), 3)
        '0.316'
    """
    return trough_volume * trough_fill_share / PERCENT


@BOOK.quantity(
    symbol="n_qg",
    unit="",
    places=0,
    low=0,
    high=875,
    source=derived("litres of one filling shared by the litres of one goat, whole goats only"),
)
def goats_from_one_filling(trough_water_volume: float, litres_per_small_animal: float) -> float:
    """Goats or sheep that one filling of a trough waters for a day, if nothing runs in while they drink.

    Args:
        trough_water_volume: water in the trough up to its overflow [m**3], 0 to 3.5.
        litres_per_small_animal: litres a small animal drinks in a day [L/day], 4 to 20.

    Returns:
        Count [-], 0 to 875.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(goats_from_one_filling(trough_water_volume=0.315, litres_per_small_animal=4), 0)
        '78'
    """
    return whole_down(trough_water_volume * LITRES_IN_CUBIC_METRE / ONE_DAY / litres_per_small_animal)


@BOOK.misconception(of="net_floor_area")
def column_added_to_the_floor(floor_area: float, column_width: float) -> float:
    """The column's foot was added."""
    return floor_area + pi / 4 * column_width**2


@BOOK.misconception(of="column_volume")
def column_to_the_top_of_the_wall(column_width: float, wall_height: float) -> float:
    """The column was taken to the top of the wall, not to the water."""
    return pi / 4 * column_width**2 * wall_height


@BOOK.misconception(of="column_volume")
def column_width_for_its_radius(column_width: float, water_depth: float) -> float:
    """The whole width of the column was taken where half belongs."""
    return pi * column_width**2 * water_depth


@BOOK.misconception(of="net_tank_volume")
def column_forgotten(tank_volume: float) -> float:
    """The column was forgotten."""
    return tank_volume


@BOOK.misconception(of="net_tank_volume")
def tank_full_to_the_top_of_the_wall(net_floor_area: float, wall_height: float) -> float:
    """The water was taken up to the top of the wall."""
    return net_floor_area * wall_height


@BOOK.misconception(of="dead_volume")
def tap_height_from_the_water(net_floor_area: float, dead_storage_height: float, water_depth: float) -> float:
    """The water above the tap was taken for the water below it."""
    return net_floor_area * (water_depth - dead_storage_height)


@BOOK.misconception(of="usable_volume")
def water_below_the_tap_counted(net_tank_volume: float) -> float:
    """The water below the tap was counted."""
    return net_tank_volume


@BOOK.misconception(of="volume_per_centimetre")
def metre_for_a_centimetre(net_floor_area: float) -> float:
    """A metre of water was taken for a centimetre."""
    return net_floor_area * ONE_METRE_OF_WATER * LITRES_IN_CUBIC_METRE


@BOOK.misconception(of="diameter_for_volume")
def diameter_rounded_down(wanted_volume: float, water_depth: float, column_width: float) -> float:
    """The diameter was rounded down."""
    return (
        whole_down(sqrt(4 * wanted_volume / (pi * max(water_depth, LEAST_DEPTH)) + column_width**2) / BUILDING_STEP)
        * BUILDING_STEP
    )


@BOOK.misconception(of="diameter_for_volume")
def radius_given_as_diameter(wanted_volume: float, water_depth: float) -> float:
    """The radius that holds the water was given as the diameter."""
    return whole_up(sqrt(wanted_volume / (pi * max(water_depth, LEAST_DEPTH))) / BUILDING_STEP) * BUILDING_STEP


@BOOK.misconception(of="diameter_for_volume")
def diameter_from_the_wall_height(wanted_volume: float, wall_height: float, column_width: float) -> float:
    """The height of the wall was taken for the depth of the water."""
    return (
        whole_up(sqrt(4 * wanted_volume / (pi * max(wall_height, LEAST_DEPTH)) + column_width**2) / BUILDING_STEP)
        * BUILDING_STEP
    )


@BOOK.misconception(of="water_depth_needed")
def depth_from_a_square_floor(wanted_volume: float, inside_diameter: float) -> float:
    """The floor was taken for a square."""
    return wanted_volume / inside_diameter**2


@BOOK.misconception(of="wall_height_needed")
def wall_only_as_high_as_the_water(water_depth_needed: float) -> float:
    """The wall was made as high as the water; no room for the overflow."""
    return whole_up(water_depth_needed / BUILDING_STEP) * BUILDING_STEP


@BOOK.misconception(of="wall_height_needed")
def wall_height_rounded_down(water_depth_needed: float, overflow_drop: float) -> float:
    """The height was rounded down."""
    return whole_down((water_depth_needed + overflow_drop) / BUILDING_STEP) * BUILDING_STEP


@BOOK.misconception(of="bowl_floor_volume")
def bowl_taken_for_a_flat_floor(floor_area: float, floor_dip: float) -> float:
    """The floor was taken to be as deep everywhere as in the middle."""
    return floor_area * floor_dip


@BOOK.misconception(of="funnel_floor_volume")
def funnel_taken_for_half(floor_area: float, floor_dip: float) -> float:
    """Half of the full depth was taken; a funnel holds a third."""
    return floor_area * floor_dip / 2


@BOOK.misconception(of="trough_water_volume")
def trough_full_to_the_rim(trough_volume: float) -> float:
    """The trough was filled to its rim."""
    return trough_volume


@BOOK.misconception(of="trough_water_volume")
def missing_slice_taken_for_the_water(trough_volume: float, trough_fill_share: float) -> float:
    """The slice above the overflow was taken, and not what lies below it."""
    return trough_volume * (PERCENT - trough_fill_share) / PERCENT


@BOOK.misconception(of="trough_water_volume")
def trough_water_shared_by_depth(trough_volume: float, trough_radius: float, trough_rim_gap: float) -> float:
    """The water was shared out by depth, as if the sides stood upright."""
    return trough_volume * (trough_radius - trough_rim_gap) / trough_radius


@BOOK.misconception(of="goats_from_one_filling")
def last_goat_counted_as_whole(trough_water_volume: float, litres_per_small_animal: float) -> float:
    """The count was rounded up: the last goat gets less than its share."""
    return whole_up(trough_water_volume * LITRES_IN_CUBIC_METRE / ONE_DAY / litres_per_small_animal)


@BOOK.misconception(of="goats_from_one_filling")
def goats_of_a_hundred_litres(trough_water_volume: float, litres_per_small_animal: float) -> float:
    """A cubic metre was taken for a hundred litres."""
    return whole_down(trough_water_volume * LITRES_READ_WRONG / ONE_DAY / litres_per_small_animal)
