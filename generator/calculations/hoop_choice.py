"""Hoops that bear the ring tension: their steel and stress, how far apart they may stand, and another bar instead.

Safety: a hoop is never swapped for a thinner one at the old spacing: a bar a quarter thinner has little more than half
the steel.
"""

from math import pi

from generator.calculations._book import BOOK
from generator.calculations.ring_strength import (
    LEAST_STEEL,
    NEWTONS_IN_KILONEWTON,
    TAPE_STEP,
    THIN_HOOP,
    WIDEST_HOOPS,
)
from generator.calculations.setting_out import MILLIMETRES_IN_METRE
from generator.formula import Constant, common_practice, derived, whole_down, whole_up

CENTIMETRES_IN_METRE = Constant(100, "mm/m", derived("a misreading: millimetres taken for centimetres"))
ONE_SPACING = Constant(1, "m**2", derived("a spacing multiplied where it should divide"))

BOOK.given(
    "other_hoop_diameter",
    symbol="d_st",
    unit="mm",
    low=3,
    high=16,
    step=1,
    source=common_practice("bars and wires that a village shop sells"),
)


@BOOK.quantity(symbol="A_st", unit="mm**2", places=1, low=7, high=202, source=derived("area of a circle"))
def hoop_area(hoop_diameter: float) -> float:
    """Steel in the cut face of one hoop.

    Args:
        hoop_diameter: thickness of the hoop bar [mm], 3 to 16.

    Returns:
        Area [mm**2], 7 to 202.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(hoop_area(hoop_diameter=8), 1)
        '50.3'
    """
    return pi * hoop_diameter**2 / 4


@BOOK.quantity(symbol="A_sg", unit="mm**2/m", places=1, low=35, high=4030, source=derived("one hoop in every space"))
def hoop_steel_given(hoop_area: float, hoop_spacing: float) -> float:
    """Hoop steel in a metre of height.

    Args:
        hoop_area: cut face of one hoop [mm**2], 7 to 202.
        hoop_spacing: largest gap between hoops [m], 0.05 to 0.2.

    Returns:
        Steel [mm**2/m], 35 to 4030.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(hoop_steel_given(hoop_area=50.3, hoop_spacing=0.12), 1)
        '419.2'
    """
    return hoop_area / hoop_spacing


@BOOK.quantity(symbol="f_sh", unit="MPa", places=1, low=0, high=2500, source=derived("ring tension / hoop steel"))
def hoop_stress(ring_tension_held: float, hoop_steel_given: float) -> float:
    """Stress in the hoops at a level. Allowed: 115 in plain bars, 130 in ribbed bars.

    Args:
        ring_tension_held: ring pull at the level [kN/m], 0 to 87.
        hoop_steel_given: hoop steel that a metre of wall has [mm**2/m], 35 to 4030.

    Returns:
        Stress [MPa], 0 to 2500.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(hoop_stress(ring_tension_held=20, hoop_steel_given=419), 1)
        '47.7'
    """
    return ring_tension_held * NEWTONS_IN_KILONEWTON / hoop_steel_given


@BOOK.quantity(
    symbol="f_sf", unit="MPa", places=1, low=0, high=2500, source=derived("ring tension of a free foot / hoop steel")
)
def hoop_stress_free(ring_tension_free: float, hoop_steel_given: float) -> float:
    """Stress in the hoops at a level if the foot could slide; shown beside the other one.

    Args:
        ring_tension_free: ring pull at the level, foot free [kN/m], 0 to 87.
        hoop_steel_given: hoop steel that a metre of wall has [mm**2/m], 35 to 4030.

    Returns:
        Stress [MPa], 0 to 2500.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(hoop_stress_free(ring_tension_free=18.8, hoop_steel_given=419), 1)
        '44.9'
    """
    return ring_tension_free * NEWTONS_IN_KILONEWTON / hoop_steel_given


@BOOK.quantity(
    symbol="s_st",
    unit="m",
    places=3,
    low=0,
    high=0.2,
    source=derived("one hoop / steel needed, rounded down to 5 mm and never wider than hoops may stand"),
)
def hoop_spacing_allowed(hoop_area: float, hoop_steel_needed: float) -> float:
    """Widest distance from hoop to hoop at a level, in steps of 5 mm. Nothing means: a thicker hoop is needed.

    Args:
        hoop_area: cut face of one hoop [mm**2], 7 to 202.
        hoop_steel_needed: hoop steel that a metre of wall needs [mm**2/m], 0 to 1100.

    Returns:
        Distance [m], 0 to 0.2.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(hoop_spacing_allowed(hoop_area=28.3, hoop_steel_needed=174), 3)
        '0.160'
    """
    return min(WIDEST_HOOPS, whole_down(hoop_area / max(hoop_steel_needed, LEAST_STEEL) / TAPE_STEP) * TAPE_STEP)


@BOOK.quantity(
    symbol="s_so",
    unit="m",
    places=3,
    low=0,
    high=0.2,
    source=derived("equal steel: spacing x the square of the thicknesses' ratio, rounded down to 5 mm"),
)
def other_hoop_spacing(hoop_spacing: float, hoop_diameter: float, other_hoop_diameter: float) -> float:
    """Spacing of another bar that gives as much steel, in steps of 5 mm; nothing means: too thin.

    Args:
        hoop_spacing: largest gap between hoops [m], 0.05 to 0.2.
        hoop_diameter: thickness of the hoop bar [mm], 3 to 16.
        other_hoop_diameter: thickness of the hoop that the shop has [mm], 3 to 16.

    Returns:
        Distance [m], 0 to 0.2.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(other_hoop_spacing(hoop_spacing=0.12, hoop_diameter=8, other_hoop_diameter=6), 3)
        '0.065'
    """
    return min(
        WIDEST_HOOPS, whole_down(hoop_spacing * other_hoop_diameter**2 / hoop_diameter**2 / TAPE_STEP) * TAPE_STEP
    )


@BOOK.quantity(
    symbol="n_so",
    unit="",
    places=0,
    low=3,
    high=481,
    source=derived("spaces of the other bar rounded up, and one more"),
)
def other_hoop_count(wall_height: float, other_hoop_spacing: float) -> float:
    """Hoops of the other bar, from foot to top. A bar that is far too thin would need one in every 5 mm: no wall.

    Args:
        wall_height: height of the wall [m], 0.4 to 2.4.
        other_hoop_spacing: spacing of the other bar that gives as much steel [m], 0 to 0.2.

    Returns:
        Number of hoops [-], 3 to 481.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> other_hoop_count(wall_height=1.40, other_hoop_spacing=0.065)
        23.0
    """
    return whole_up(wall_height / max(other_hoop_spacing, TAPE_STEP)) + 1


@BOOK.misconception(of="other_hoop_count")
def other_spaces_counted_not_hoops(other_hoop_count: float) -> float:
    """The spaces were counted; the last hoop is missing."""
    return other_hoop_count - 1


@BOOK.quantity(
    symbol="L_so", unit="m", places=2, low=0.15, high=1.3, source=derived("lap in thicknesses of the other bar")
)
def other_lap_length(lap_diameters: float, other_hoop_diameter: float) -> float:
    """Lap of the other bar: as many of its own thicknesses.

    Args:
        lap_diameters: lap in bar diameters [-], 50 to 80.
        other_hoop_diameter: thickness of the hoop that the shop has [mm], 3 to 16.

    Returns:
        Length of its lap [m], 0.15 to 1.3.

    Raises:
        OutOfRangeError: a given outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(other_lap_length(lap_diameters=50, other_hoop_diameter=6), 2)
        '0.30'
    """
    return lap_diameters * other_hoop_diameter / MILLIMETRES_IN_METRE


@BOOK.misconception(of="other_lap_length")
def lap_of_the_planned_bar_kept(lap_diameters: float, hoop_diameter: float) -> float:
    """The lap of the planned bar was kept."""
    return lap_diameters * hoop_diameter / MILLIMETRES_IN_METRE


@BOOK.misconception(of="other_lap_length")
def other_lap_in_centimetres(lap_diameters: float, other_hoop_diameter: float) -> float:
    """The thickness was taken for centimetres."""
    return lap_diameters * other_hoop_diameter / CENTIMETRES_IN_METRE


@BOOK.quantity(symbol="L_su", unit="m", places=2, low=2.0, high=27.1, source=derived("once round and one lap"))
def other_hoop_length(
    frame_diameter: float, bar_diameter: float, other_hoop_diameter: float, other_lap_length: float
) -> float:
    """Length to cut for one hoop of the other bar.

    Args:
        frame_diameter: across the frame ring [m], 0.6 to 8.1.
        bar_diameter: upright bars [mm], 4 to 16.
        other_hoop_diameter: thickness of the hoop that the shop has [mm], 3 to 16.
        other_lap_length: length of its lap [m], 0.15 to 1.3.

    Returns:
        Cut length [m], 2 to 27.1.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(other_hoop_length(frame_diameter=3, bar_diameter=8, other_hoop_diameter=6, other_lap_length=0.3), 2)
        '9.77'
    """
    return pi * (frame_diameter + (bar_diameter + other_hoop_diameter) / MILLIMETRES_IN_METRE) + other_lap_length


@BOOK.misconception(of="other_hoop_length")
def other_hoop_cut_without_lap(other_hoop_length: float, other_lap_length: float) -> float:
    """The lap was left off."""
    return other_hoop_length - other_lap_length


@BOOK.misconception(of="hoop_area")
def hoop_area_from_thickness(hoop_diameter: float) -> float:
    """The steel was thought to grow like the thickness: a bar of 6 mm was known, the others scaled from it."""
    return pi * THIN_HOOP * hoop_diameter / 4


@BOOK.misconception(of="hoop_area")
def hoop_area_from_the_whole_thickness(hoop_diameter: float) -> float:
    """The whole thickness was taken where half of it belongs."""
    return pi * hoop_diameter**2


@BOOK.misconception(of="other_hoop_spacing")
def hoops_swapped_one_for_one(hoop_spacing: float) -> float:
    """The other bar was set at the old spacing."""
    return hoop_spacing


@BOOK.misconception(of="other_hoop_spacing")
def hoops_swapped_by_thickness(hoop_spacing: float, hoop_diameter: float, other_hoop_diameter: float) -> float:
    """The spacing was changed like the thickness and not like its square."""
    return min(WIDEST_HOOPS, whole_down(hoop_spacing * other_hoop_diameter / hoop_diameter / TAPE_STEP) * TAPE_STEP)


@BOOK.misconception(of="hoop_steel_given")
def hoops_in_a_metre_multiplied_by_spacing(hoop_area: float, hoop_spacing: float) -> float:
    """The hoop was multiplied by its spacing and not divided."""
    return hoop_area * hoop_spacing / ONE_SPACING


@BOOK.misconception(of="hoop_stress")
def mortar_thought_to_pull_with_the_hoops(
    ring_tension_held: float, hoop_steel_given: float, wall_thickness: float
) -> float:
    """The mortar was counted as if it bore as much as steel."""
    return ring_tension_held * NEWTONS_IN_KILONEWTON / (hoop_steel_given + wall_thickness * MILLIMETRES_IN_METRE)


@BOOK.misconception(of="hoop_spacing_allowed")
def widest_spacing_forgotten(hoop_area: float, hoop_steel_needed: float) -> float:
    """Strength alone was asked, and not how far mesh and mortar can reach."""
    return whole_down(hoop_area / max(hoop_steel_needed, LEAST_STEEL) / TAPE_STEP) * TAPE_STEP
