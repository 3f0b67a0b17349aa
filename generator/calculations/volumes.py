"""Volumes: water in the tank and the trough, mortar in the wall, concrete in the base.

The overflow sets how much water the tank holds, not the height of the wall.
"""

from math import pi

from generator.calculations._book import BOOK
from generator.calculations.setting_out import MILLIMETRES_IN_METRE
from generator.formula import Constant, common_practice, derived

LITRES_IN_CUBIC_METRE = Constant(1000, "L/m**3", derived("1 m3 is 1000 L"))
LITRES_READ_WRONG = Constant(100, "L/m**3", derived("a cubic metre taken for a hundred litres"))

BOOK.given(
    "overflow_drop",
    symbol="e",
    unit="m",
    low=0.05,
    high=0.5,
    step=0.01,
    source=common_practice(
        "the overflow must run before water reaches the roof; more than half a metre is wall wasted"
    ),
)
BOOK.given(
    "wanted_volume",
    symbol="V_n",
    unit="m**3",
    low=0.5,
    high=50,
    step=0.5,
    source=derived("above 50 m3 this course builds two or three smaller tanks"),
)
BOOK.given(
    "base_concrete_thickness",
    symbol="t_c",
    unit="mm",
    low=75,
    high=300,
    step=5,
    source=common_practice("thinner concrete on the ground breaks under feet"),
)
BOOK.given(
    "trough_radius",
    symbol="r_t",
    unit="m",
    low=0.15,
    high=0.6,
    step=0.01,
    source=common_practice("half-round troughs for goats and cattle"),
)
BOOK.given(
    "trough_length",
    symbol="L_t",
    unit="m",
    low=0.5,
    high=6,
    step=0.1,
    source=common_practice("one trough without a joint"),
)


@BOOK.quantity(symbol="A_f", unit="m**2", places=2, low=0.25, high=51, source=derived("area of a circle"))
def floor_area(inside_radius: float) -> float:
    """Area of the floor inside the wall.

    Args:
        inside_radius: centre to wet face [m], 0.3 to 4.

    Returns:
        Area [m**2], 0.25 to 51.

    Raises:
        OutOfRangeError: the radius is outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(floor_area(inside_radius=1.3), 2)
        '5.31'
    """
    return pi * inside_radius**2


@BOOK.quantity(symbol="h", unit="m", places=2, low=0.1, high=2.2, source=derived("up to the overflow"))
def water_depth(wall_height: float, overflow_drop: float) -> float:
    """Depth of the water when the tank is full: up to the overflow.

    Args:
        wall_height: height of the wall [m], 0.4 to 2.4.
        overflow_drop: overflow below the top of the wall [m], 0.05 to 0.5.

    Returns:
        Depth [m], 0.1 to 2.2.

    Raises:
        OutOfRangeError: a given outside its range, or an overflow at the floor.

    Example:
        >>> from generator.formula import show
        >>> show(water_depth(wall_height=1.40, overflow_drop=0.15), 2)
        '1.25'
    """
    return wall_height - overflow_drop


@BOOK.quantity(symbol="V", unit="m**3", places=2, low=0.1, high=50, source=derived("floor times depth"))
def tank_volume(floor_area: float, water_depth: float) -> float:
    """Water in the full tank.

    Args:
        floor_area: area of the floor [m**2], 0.25 to 51.
        water_depth: depth of the water [m], 0.1 to 2.2.

    Returns:
        Volume [m**3], 0.1 to 50.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(tank_volume(floor_area=5.31, water_depth=1.25), 2)
        '6.64'
    """
    return floor_area * water_depth


@BOOK.quantity(symbol="V_L", unit="L", places=0, low=100, high=50000, source=derived("1 m3 is 1000 L"))
def tank_litres(tank_volume: float) -> float:
    """Water in the full tank, in litres.

    Args:
        tank_volume: water in the full tank [m**3], 0.1 to 50.

    Returns:
        Volume [L], 100 to 50000.

    Raises:
        OutOfRangeError: the volume is outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(tank_litres(tank_volume=6.64), 0)
        '6640'
    """
    return tank_volume * LITRES_IN_CUBIC_METRE


@BOOK.quantity(symbol="h_n", unit="m", places=2, low=0.05, high=2.2, source=derived("volume over floor"))
def water_depth_for_volume(wanted_volume: float, floor_area: float) -> float:
    """Depth of water that gives a wanted volume.

    Args:
        wanted_volume: volume that is wanted [m**3], 0.5 to 50.
        floor_area: area of the floor [m**2], 0.25 to 51.

    Returns:
        Depth [m], 0.05 to 2.2.

    Raises:
        OutOfRangeError: a value outside its range; a depth over 4 m is no tank of this course.

    Example:
        >>> from generator.formula import show
        >>> show(water_depth_for_volume(wanted_volume=10, floor_area=9.08), 2)
        '1.10'
    """
    return wanted_volume / floor_area


@BOOK.quantity(symbol="V_w", unit="m**3", places=3, low=0.02, high=4.6, source=derived("a thin ring of wall"))
def wall_mortar_volume(inside_diameter: float, wall_thickness: float, wall_height: float) -> float:
    """Mortar in the finished wall; steel takes less than 3 % of it and is not taken off.

    Args:
        inside_diameter: across the water [m], 0.6 to 8.
        wall_thickness: finished wall [mm], 30 to 75.
        wall_height: height of the wall [m], 0.4 to 2.4.

    Returns:
        Volume [m**3], 0.02 to 4.6.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(wall_mortar_volume(inside_diameter=3.40, wall_thickness=65, wall_height=1.40), 3)
        '0.991'
    """
    return (
        pi
        * (inside_diameter + wall_thickness / MILLIMETRES_IN_METRE)
        * wall_height
        * wall_thickness
        / MILLIMETRES_IN_METRE
    )


@BOOK.quantity(symbol="V_c", unit="m**3", places=2, low=0.03, high=21, source=derived("a round slab"))
def base_concrete_volume(base_diameter: float, base_concrete_thickness: float) -> float:
    """Concrete in the base.

    Args:
        base_diameter: across the base [m], 0.8 to 9.4.
        base_concrete_thickness: concrete under floor and wall [mm], 75 to 300.

    Returns:
        Volume [m**3], 0.03 to 21.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(base_concrete_volume(base_diameter=3.3, base_concrete_thickness=100), 2)
        '0.86'
    """
    return pi / 4 * base_diameter**2 * base_concrete_thickness / MILLIMETRES_IN_METRE


@BOOK.quantity(symbol="V_t", unit="m**3", places=3, low=0.01, high=3.5, source=derived("half of a round log"))
def trough_volume(trough_radius: float, trough_length: float) -> float:
    """Water in a half-round trough, full to the rim.

    Args:
        trough_radius: half-across at the rim [m], 0.15 to 0.6.
        trough_length: inside length [m], 0.5 to 6.

    Returns:
        Volume [m**3], 0.01 to 3.5.

    Raises:
        OutOfRangeError: a given outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(trough_volume(trough_radius=0.40, trough_length=2.5), 3)
        '0.628'
    """
    return pi / 2 * trough_radius**2 * trough_length


@BOOK.misconception(of="floor_area")
def area_as_a_square(inside_radius: float) -> float:
    """Across times across: the square around the circle."""
    return (2 * inside_radius) ** 2


@BOOK.misconception(of="water_depth")
def wall_height_taken_for_water(wall_height: float) -> float:
    """The wall's height was taken for the water's depth."""
    return wall_height


@BOOK.misconception(of="tank_litres")
def cubic_metre_as_hundred_litres(tank_volume: float) -> float:
    """A cubic metre was taken for a hundred litres."""
    return tank_volume * LITRES_READ_WRONG


@BOOK.misconception(of="trough_volume")
def trough_as_a_whole_log(trough_radius: float, trough_length: float) -> float:
    """The whole round was taken, and not the half."""
    return pi * trough_radius**2 * trough_length


@BOOK.misconception(of="floor_area")
def outside_taken_for_water(outside_diameter: float) -> float:
    """The floor was worked out from outer face to outer face."""
    return pi * (outside_diameter / 2) ** 2


@BOOK.misconception(of="trough_volume")
def trough_as_a_box(trough_radius: float, trough_length: float) -> float:
    """The trough was taken for a box as wide and as deep."""
    return 2 * trough_radius * trough_radius * trough_length
