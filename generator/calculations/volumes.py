"""Volumes: water in a tank and in a trough, mortar in a wall, concrete in a base."""

from math import pi

from generator.calculations._book import BOOK
from generator.calculations.conversions import LITRES_PER_CUBIC_METRE, MM_PER_M
from generator.formula import Constant, common_practice, derived

LITRES_BY_HUNDREDS = Constant(100, "L/m**3", derived("a mistake, never to be used: a cubic metre is 1000 L"))

BOOK.given(
    "overflow_drop", symbol="u", unit="m", low=0.05, high=0.5, step=0.01,
    source=common_practice("water must leave by the overflow before it reaches the roof"),
)  # fmt: skip
BOOK.given(
    "wanted_volume", symbol="V_w", unit="m**3", low=0.5, high=50, step=0.5,
    source=derived("a tank above 50 m3 is not built from this course"),
)  # fmt: skip
BOOK.given(
    "base_concrete_thickness", symbol="t_c", unit="mm", low=75, high=200, step=5,
    source=common_practice("thinner concrete on ground breaks when it is walked on"),
)  # fmt: skip
BOOK.given(
    "trough_radius", symbol="R_t", unit="m", low=0.15, high=0.6, step=0.01,
    source=common_practice("an animal must reach the water at the bottom"),
)  # fmt: skip
BOOK.given(
    "trough_length", symbol="L_t", unit="m", low=0.5, high=6, step=0.1,
    source=common_practice("a longer trough is built as two"),
)  # fmt: skip


@BOOK.quantity(symbol="A", unit="m**2", places=2, low=0.78, high=33.3, source=derived("geometry: area of a circle"))
def floor_area(inside_radius: float) -> float:
    """Area of the floor inside the wall.

    Args:
        inside_radius: centre to the wet face [m], 0.5 to 3.25.

    Returns:
        The wet floor [m**2], 0.78 to 33.3.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(floor_area(inside_radius=1.7), 2)
        '9.08'
    """
    return pi * inside_radius**2


@BOOK.quantity(
    symbol="h", unit="m", places=2, low=0.2, high=2.2,
    source=derived("water leaves at the overflow; above 2.2 m of water this course stops"),
)  # fmt: skip
def water_depth(wall_height: float, overflow_drop: float) -> float:
    """Deepest that water can stand: up to the overflow, not up to the top of the wall.

    Args:
        wall_height: floor to the top of the wall [m], 0.4 to 2.4.
        overflow_drop: top of the wall to the overflow [m], 0.05 to 0.5.

    Returns:
        Floor to overflow [m], 0.2 to 2.2.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(water_depth(wall_height=1.4, overflow_drop=0.15), 2)
        '1.25'
    """
    return wall_height - overflow_drop


@BOOK.quantity(
    symbol="V", unit="m**3", places=2, low=0.15, high=50, source=derived("geometry: floor area times depth of water")
)
def tank_volume(floor_area: float, water_depth: float) -> float:
    """Water in a full tank.

    Args:
        floor_area: floor inside the wall [m**2], 0.78 to 33.3.
        water_depth: floor to the overflow [m], 0.2 to 2.2.

    Returns:
        Water up to the overflow [m**3], 0.15 to 50.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(tank_volume(floor_area=9.08, water_depth=1.25), 2)
        '11.35'
    """
    return floor_area * water_depth


@BOOK.quantity(symbol="V_L", unit="L", places=0, low=150, high=50000, source=derived("1000 litres in a cubic metre"))
def tank_litres(tank_volume: float) -> float:
    """Water in a full tank, in litres.

    Args:
        tank_volume: water in a full tank [m**3], 0.15 to 50.

    Returns:
        Water up to the overflow [L], 150 to 50000.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(tank_litres(tank_volume=11.35), 0)
        '11350'
    """
    return tank_volume * LITRES_PER_CUBIC_METRE


@BOOK.quantity(
    symbol="h_w", unit="m", places=2, low=0.05, high=2.2,
    source=derived("geometry: volume over floor area; above 2.2 m of water this course stops"),
)  # fmt: skip
def water_depth_for_volume(wanted_volume: float, floor_area: float) -> float:
    """Depth of water that holds the volume that is wanted.

    Args:
        wanted_volume: water that is wanted [m**3], 0.5 to 50.
        floor_area: floor inside the wall [m**2], 0.78 to 33.3.

    Returns:
        Floor to water level [m], 0.05 to 2.2.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(water_depth_for_volume(wanted_volume=10, floor_area=9.08), 2)
        '1.10'
    """
    return wanted_volume / floor_area


@BOOK.quantity(
    symbol="V_m", unit="m**3", places=3, low=0.03, high=3.8,
    source=derived("geometry: middle of the wall, round; the steel in it, under 3 % of the volume, is not taken off"),
)  # fmt: skip
def wall_mortar_volume(inside_diameter: float, wall_thickness: float, wall_height: float) -> float:
    """Mortar in the finished wall, without floor and roof.

    Args:
        inside_diameter: wet face to wet face [m], 1 to 6.5.
        wall_thickness: plaster to plaster [mm], 30 to 75.
        wall_height: floor to the top of the wall [m], 0.4 to 2.4.

    Returns:
        Mortar in place [m**3], 0.03 to 3.8.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(wall_mortar_volume(inside_diameter=3.4, wall_thickness=60, wall_height=1.4), 3)
        '0.913'
    """
    thickness = wall_thickness / MM_PER_M
    return pi * (inside_diameter + thickness) * thickness * wall_height


@BOOK.quantity(
    symbol="V_c", unit="m**3", places=2, low=0.08, high=9.9, source=derived("geometry: area times thickness")
)
def base_concrete_volume(base_diameter: float, base_concrete_thickness: float) -> float:
    """Concrete in the base circle.

    Args:
        base_diameter: edge to edge of the base [m], 1.2 to 7.9.
        base_concrete_thickness: concrete of the base [mm], 75 to 200.

    Returns:
        Concrete in place [m**3], 0.08 to 9.9.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(base_concrete_volume(base_diameter=4.22, base_concrete_thickness=100), 2)
        '1.40'
    """
    return pi * (base_diameter / 2) ** 2 * base_concrete_thickness / MM_PER_M


@BOOK.quantity(
    symbol="V_t", unit="m**3", places=3, low=0.017, high=3.4, source=derived("geometry: half of a lying cylinder")
)
def trough_volume(trough_radius: float, trough_length: float) -> float:
    """Water in a half-round trough that is full to its rim.

    Args:
        trough_radius: half the width at the rim [m], 0.15 to 0.6.
        trough_length: inside length [m], 0.5 to 6.

    Returns:
        Water to the rim [m**3], 0.017 to 3.4.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(trough_volume(trough_radius=0.25, trough_length=2.4), 3)
        '0.236'
    """
    return pi * trough_radius**2 * trough_length / 2


@BOOK.misconception(of="floor_area")
def area_as_square(inside_diameter: float) -> float:
    """Across times across: that is the square around the circle."""
    return inside_diameter**2


@BOOK.misconception(of="floor_area")
def outside_diameter_for_water(outside_diameter: float) -> float:
    """Water is reckoned as if it stood inside the wall's mortar too."""
    return pi * (outside_diameter / 2) ** 2


@BOOK.misconception(of="water_depth")
def wall_height_for_water_depth(wall_height: float) -> float:
    """Water is reckoned up to the top of the wall."""
    return wall_height


@BOOK.misconception(of="tank_litres")
def litres_by_hundreds(tank_volume: float) -> float:
    """A cubic metre is taken as 100 litres."""
    return tank_volume * LITRES_BY_HUNDREDS


@BOOK.misconception(of="trough_volume")
def whole_cylinder_for_trough(trough_radius: float, trough_length: float) -> float:
    """The trough is reckoned as a whole pipe; it is half of one."""
    return pi * trough_radius**2 * trough_length


@BOOK.misconception(of="trough_radius")
def trough_width_for_radius(trough_radius: float) -> float:
    """The width across the top stands where half of it belongs."""
    return 2 * trough_radius


@BOOK.misconception(of="base_concrete_volume")
def base_as_square(base_diameter: float, base_concrete_thickness: float) -> float:
    """The base is reckoned as the square around the circle."""
    return base_diameter**2 * base_concrete_thickness / MM_PER_M
