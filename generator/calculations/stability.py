"""An empty tank in the wind and in ground water: tipping, sliding, floating.

The factor for a round body in wind and the usual safety numbers are recalled and not read in print: they may warn, they
never decide that a tank is safe. Earthquake, snow and frost enter as a stricter band, see `bands`.
"""

from math import pi

from generator.calculations._book import BOOK
from generator.calculations.ring_strength import WATER_WEIGHT
from generator.calculations.roof import MORTAR_WEIGHT
from generator.calculations.setting_out import MILLIMETRES_IN_METRE
from generator.formula import Constant, common_practice, derived, from_memory

ROUND_BODY = Constant(0.8, "", from_memory("drag of a low round tank, 0.7 to 0.8"))
WIND_SAFETY_USUAL = Constant(1.5, "", from_memory("safety against tipping and sliding"))
UPLIFT_SAFETY_USUAL = Constant(1.2, "", from_memory("safety against floating"))

BOOK.given(
    "wind_pressure",
    symbol="q_wd",
    unit="kN/m**2",
    low=0.3,
    high=2.5,
    step=0.1,
    source=derived("from a sheltered valley to a storm on a ridge; the local code or an engineer says which"),
)

BOOK.given(
    "ground_friction",
    symbol="u_wd",
    unit="",
    low=0.3,
    high=0.5,
    step=0.05,
    source=common_practice("share of the weight that the ground holds: clay 0.3, gravel 0.5"),
)

BOOK.given(
    "ground_water_height",
    symbol="y_gw",
    unit="m",
    low=0.05,
    high=2.4,
    step=0.05,
    source=derived("from a wet base to a tank sunk to its rim"),
)


@BOOK.quantity(
    symbol="W_wd",
    unit="kN",
    places=1,
    low=1,
    high=640,
    source=derived("mortar of the wall and concrete of the base; the roof is left out: it may not be there yet"),
)
def empty_weight(wall_mortar_volume: float, base_concrete_volume: float) -> float:
    """Weight of the empty tank without its roof; the base counts only where starters tie the wall to it.

    Args:
        wall_mortar_volume: mortar in the wall [m**3], 0.02 to 4.6.
        base_concrete_volume: concrete in the base [m**3], 0.03 to 21.

    Returns:
        Weight [kN], 1 to 640.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(empty_weight(wall_mortar_volume=0.85, base_concrete_volume=1.05), 1)
        '45.6'
    """
    return MORTAR_WEIGHT * (wall_mortar_volume + base_concrete_volume)


@BOOK.quantity(
    symbol="F_wd",
    unit="kN",
    places=2,
    low=0.04,
    high=42,
    source=from_memory("pressure x width x height x 0.8 for a round body; the 0.8 is recalled, so this may warn only"),
)
def wind_force(wind_pressure: float, outside_diameter: float, wall_height: float) -> float:
    """Push of the wind on the tank.

    Args:
        wind_pressure: wind pressure at the place [kN/m**2], 0.3 to 2.5.
        outside_diameter: outside diameter [m], 0.6 to 8.2.
        wall_height: height of the wall [m], 0.4 to 2.4.

    Returns:
        Force [kN], 0.04 to 42.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(wind_force(wind_pressure=0.8, outside_diameter=3.3, wall_height=1.9), 2)
        '4.01'
    """
    return ROUND_BODY * wind_pressure * outside_diameter * wall_height


@BOOK.quantity(
    symbol="S_wo",
    unit="",
    places=1,
    low=0,
    high=25000,
    source=from_memory("weight x half the base / (wind x half the height)"),
)
def overturning_safety(empty_weight: float, base_diameter: float, wind_force: float, wall_height: float) -> float:
    """How many times the empty tank's weight outdoes the wind that would tip it; 1.5 is usual.

    Args:
        empty_weight: weight of the empty tank [kN], 1 to 640.
        base_diameter: diameter of the base [m], 0.8 to 9.4.
        wind_force: push of the wind [kN], 0.04 to 42.
        wall_height: height of the wall [m], 0.4 to 2.4.

    Returns:
        Ratio [-], 0 to 25000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(overturning_safety(empty_weight=45.6, base_diameter=3.7, wind_force=4, wall_height=1.9), 1)
        '22.2'
    """
    return empty_weight * base_diameter / (wind_force * wall_height)


@BOOK.quantity(symbol="S_ws", unit="", places=1, low=0, high=1000, source=from_memory("grip of the ground / wind"))
def sliding_safety(empty_weight: float, ground_friction: float, wind_force: float) -> float:
    """How many times the ground's grip outdoes the wind that would slide the empty tank; 1.5 is usual.

    Args:
        empty_weight: weight of the empty tank [kN], 1 to 640.
        ground_friction: grip of the ground, as a share of weight [-], 0.3 to 0.5.
        wind_force: push of the wind [kN], 0.04 to 42.

    Returns:
        Ratio [-], 0 to 1000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(sliding_safety(empty_weight=45.6, ground_friction=0.4, wind_force=4), 1)
        '4.6'
    """
    return empty_weight * ground_friction / wind_force


@BOOK.quantity(
    symbol="F_gw",
    unit="kN",
    places=1,
    low=0.2,
    high=1320,
    source=derived("weight of the ground water that base and tank push aside"),
)
def uplift_force(
    ground_water_height: float, base_diameter: float, outside_diameter: float, base_concrete_thickness: float
) -> float:
    """Lift of ground water under a sunk empty tank.

    Args:
        ground_water_height: ground water above the underside of the base [m], 0.05 to 2.4.
        base_diameter: diameter of the base [m], 0.8 to 9.4.
        outside_diameter: outside diameter [m], 0.6 to 8.2.
        base_concrete_thickness: thickness of the base concrete [mm], 75 to 300.

    Returns:
        Force [kN], 0.2 to 1320.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(
        ...     uplift_force(
        ...         ground_water_height=0.5, base_diameter=3.7,
        ...         outside_diameter=3.3, base_concrete_thickness=100,
        ...     ),
        ...     1,
        ... )
        '44.1'
    """
    base = pi * base_diameter**2 / 4 * min(ground_water_height, base_concrete_thickness / MILLIMETRES_IN_METRE)
    body = pi * outside_diameter**2 / 4 * max(ground_water_height - base_concrete_thickness / MILLIMETRES_IN_METRE, 0)
    return WATER_WEIGHT * (base + body)


@BOOK.quantity(symbol="S_gw", unit="", places=2, low=0, high=500, source=derived("weight of the empty tank / lift"))
def uplift_safety(empty_weight: float, uplift_force: float) -> float:
    """How many times the empty tank's weight outdoes the lift of ground water; 1.2 is usual. Under 1 it floats.

    Args:
        empty_weight: weight of the empty tank [kN], 1 to 640.
        uplift_force: lift of the ground water [kN], 0.2 to 1320.

    Returns:
        Ratio [-], 0 to 500.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(uplift_safety(empty_weight=45.6, uplift_force=44.1), 2)
        '1.03'
    """
    return empty_weight / uplift_force


@BOOK.misconception(of="empty_weight")
def full_tank_stands_in_the_wind(wall_mortar_volume: float, base_concrete_volume: float, tank_volume: float) -> float:
    """The water was counted as weight that holds the tank."""
    return MORTAR_WEIGHT * (wall_mortar_volume + base_concrete_volume) + WATER_WEIGHT * tank_volume


@BOOK.misconception(of="wind_force")
def wind_on_the_whole_round(wind_pressure: float, outside_diameter: float, wall_height: float) -> float:
    """The whole girth was taken for the width that faces the wind."""
    return ROUND_BODY * wind_pressure * pi * outside_diameter * wall_height


@BOOK.misconception(of="empty_weight")
def only_the_wall_weighs(wall_mortar_volume: float) -> float:
    """The base was forgotten."""
    return MORTAR_WEIGHT * wall_mortar_volume


@BOOK.misconception(of="uplift_force")
def ground_water_from_the_floor(
    ground_water_height: float, outside_diameter: float, base_concrete_thickness: float
) -> float:
    """The ground water was measured from the floor and not from the underside of the base."""
    return (
        WATER_WEIGHT
        * pi
        * outside_diameter**2
        / 4
        * max(ground_water_height - base_concrete_thickness / MILLIMETRES_IN_METRE, 0)
    )


@BOOK.misconception(of="overturning_safety")
def wind_tips_at_full_height(empty_weight: float, base_diameter: float, wind_force: float, wall_height: float) -> float:
    """The wind was set at the top of the wall and not at half its height."""
    return empty_weight * base_diameter / (2 * wind_force * wall_height)


@BOOK.misconception(of="sliding_safety")
def slides_only_if_heavier_than_wind(empty_weight: float, wind_force: float) -> float:
    """The whole weight was taken for grip."""
    return empty_weight / wind_force


@BOOK.misconception(of="uplift_force")
def uplift_of_the_base_alone(ground_water_height: float, base_diameter: float, base_concrete_thickness: float) -> float:
    """Only the base was thought to push water aside."""
    return (
        WATER_WEIGHT
        * pi
        * base_diameter**2
        / 4
        * min(ground_water_height, base_concrete_thickness / MILLIMETRES_IN_METRE)
    )


@BOOK.misconception(of="uplift_safety")
def floating_ratio_upside_down(empty_weight: float, uplift_force: float) -> float:
    """The lift was divided by the weight."""
    return uplift_force / empty_weight
