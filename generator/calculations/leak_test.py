"""The first filling and the leak test: in stages, then soaking, then days of reading beside a control bucket.

A tank without a lid loses 5 to 10 mm a day to hot dry air, more than any limit for a leak. A wide bucket of the same
water, standing open in the tank at the same level, loses as much: what the tank loses beyond the bucket is the leak.
`leak_judgement` says whether the tank has passed and what to watch.

Cautions: nobody stands or sleeps downhill of a tank that is being filled for the first time. A test-filled open tank
drowns children: cover it, guard it, take the ladder away. Nobody goes into the tank to read a mark.
"""

from math import pi

from generator.calculations._book import BOOK
from generator.calculations.leak_judgement import PASS_FALL, PASS_SHARE
from generator.calculations.mortar import PERCENT
from generator.calculations.setting_out import MILLIMETRES_IN_METRE
from generator.formula import Constant, common_practice, derived, from_memory, published

NO_FALL = Constant(0, "mm", derived("a tank that leaks nothing falls no more than its bucket"))
HAIR_CRACK = Constant(0.1, "mm", from_memory("water-retaining practice: up to here a crack soaks shut sooner"))
SHORT_SOAK = Constant(7, "day", from_memory("water-retaining practice: soak for cracks up to 0.1 mm"))
LONG_SOAK = Constant(21, "day", from_memory("water-retaining practice: soak for cracks up to 0.2 mm"))
GUESSED_EVAPORATION = Constant(5, "mm/day", derived("the low end of 5 to 10 mm a day, taken without looking"))
HUNDREDTHS_OF_A_DAY = Constant(100, "day", derived("one percent a day"))
TENS_READ_WRONG = Constant(10, "", derived("millimetres taken for centimetres"))

BOOK.given(
    "tank_fall",
    symbol="h_xt",
    unit="mm",
    low=0,
    high=100,
    step=0.5,
    source=derived("fall of the water's mark over all the days; read to 0.5 mm, at the same hour"),
)
BOOK.given(
    "control_fall",
    symbol="h_xc",
    unit="mm",
    low=0,
    high=100,
    step=0.5,
    source=published("evaporation by a bucket in the water, as printed for pools: same water, same level, open"),
)
BOOK.given(
    "test_days",
    symbol="t_xd",
    unit="day",
    low=5,
    high=21,
    step=1,
    source=published("joint committee report of 1978: read over at least 5 days"),
)
BOOK.given(
    "stage_count",
    symbol="n_xs",
    unit="",
    low=4,
    high=12,
    step=1,
    source=derived("a whole number of stages for the first filling; see `leak_judgement.stages_needed`"),
)
BOOK.given(
    "stage_wait",
    symbol="t_xw",
    unit="day",
    low=1,
    high=3,
    step=1,
    source=published("village tank manual: about 300 mm a day, so at least a day to each stage"),
)
BOOK.given(
    "hair_crack_width",
    symbol="w_xh",
    unit="mm",
    low=0,
    high=0.2,
    step=0.05,
    source=common_practice("widest still crack on a crack card; wider than 0.2 mm is for an engineer"),
)


@BOOK.quantity(
    symbol="h_xf", unit="mm", places=1, low=0, high=100, source=derived("what the tank fell beyond its bucket")
)
def corrected_fall(tank_fall: float, control_fall: float) -> float:
    """Fall of the water that is not evaporation.

    Nothing means: the bucket fell as much or more. If it fell clearly more, a reading is wrong: read both again.

    Args:
        tank_fall: fall of the water in the tank [mm], 0 to 100.
        control_fall: fall of the water in the control bucket [mm], 0 to 100.

    Returns:
        Fall [mm], 0 to 100.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(corrected_fall(tank_fall=36.5, control_fall=31), 1)
        '5.5'
    """
    return max(tank_fall - control_fall, NO_FALL)


@BOOK.quantity(
    symbol="v_xf", unit="mm/day", places=2, low=0, high=20, source=derived("corrected fall / days of the test")
)
def daily_fall(corrected_fall: float, test_days: float) -> float:
    """Corrected fall of one day and night; the course lets up to 1 mm pass, less in water under a metre deep.

    Args:
        corrected_fall: fall that is not evaporation [mm], 0 to 100.
        test_days: days and nights from the first to the last reading [day], 5 to 21.

    Returns:
        Fall of a day [mm/day], 0 to 20.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(daily_fall(corrected_fall=5.5, test_days=8), 2)
        '0.69'
    """
    return corrected_fall / test_days


@BOOK.quantity(
    symbol="v_xa",
    unit="mm/day",
    places=2,
    low=0.1,
    high=1,
    source=derived("policy between two printed limits: 1 mm a day, and at most 0.1 % of the water a day"),
)
def fall_allowed(water_depth: float) -> float:
    """Largest corrected fall of a day that the course lets pass. A spot that wets a dry hand fails all the same.

    Args:
        water_depth: depth of the water in the full tank [m], 0.1 to 2.2.

    Returns:
        Fall of a day [mm/day], 0.1 to 1.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(fall_allowed(water_depth=0.85), 2)
        '0.85'
    """
    return min(PASS_FALL, PASS_SHARE / PERCENT * water_depth * MILLIMETRES_IN_METRE)


@BOOK.quantity(
    symbol="L_xl", unit="L/day", places=1, low=0, high=1020, source=derived("1 mm of water on 1 m2 of floor is 1 L")
)
def leak_litres(daily_fall: float, floor_area: float) -> float:
    """Water that leaks away in a day and a night.

    Args:
        daily_fall: corrected fall of a day [mm/day], 0 to 20.
        floor_area: area of the floor [m**2], 0.25 to 51.

    Returns:
        Leak [L/day], 0 to 1020.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(leak_litres(daily_fall=0.69, floor_area=6.16), 1)
        '4.3'
    """
    return daily_fall * floor_area


@BOOK.quantity(
    symbol="p_xs", unit="%/day", places=3, low=0, high=25, source=derived("leak of a day / water in the full tank")
)
def leak_share(leak_litres: float, tank_litres: float) -> float:
    """Leak of a day as a share of the full tank: 0.1 % a day and 0.05 % a day stand in print as limits.

    Args:
        leak_litres: leak of a day [L/day], 0 to 1020.
        tank_litres: water in the full tank [L], 100 to 50000.

    Returns:
        Share [%/day], 0 to 25.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(leak_share(leak_litres=4.3, tank_litres=8900), 3)
        '0.048'
    """
    return leak_litres / tank_litres * PERCENT


@BOOK.quantity(
    symbol="h_xs", unit="m", places=2, low=0, high=0.6, source=derived("depth of the water shared by the stages")
)
def stage_height(water_depth: float, stage_count: float) -> float:
    """Water added in each stage of the first filling. About 0.3 m a day stands in print: if more, take more stages.

    Args:
        water_depth: depth of the water in the full tank [m], 0.1 to 2.2.
        stage_count: number of stages [-], 4 to 12.

    Returns:
        Height of a stage [m], 0 to 0.6.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(stage_height(water_depth=1.45, stage_count=5), 2)
        '0.29'
    """
    return water_depth / stage_count


@BOOK.quantity(symbol="t_xf", unit="day", places=0, low=4, high=36, source=derived("every stage has its wait"))
def first_filling_days(stage_count: float, stage_wait: float) -> float:
    """Days of the first filling: after each stage the tank stands and is looked at, after the last one too.

    Args:
        stage_count: number of stages [-], 4 to 12.
        stage_wait: wait after each stage [day], 1 to 3.

    Returns:
        Days [day], 4 to 36.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> first_filling_days(stage_count=5, stage_wait=2)
        10
    """
    return stage_count * stage_wait


@BOOK.quantity(
    symbol="t_xk",
    unit="day",
    places=0,
    low=7,
    high=21,
    source=from_memory("water-retaining practice: soak 7 days, or 21 where a crack of up to 0.2 mm was seen"),
)
def water_soak_days(hair_crack_width: float) -> float:
    """Days that the full tank soaks before the test: dry mortar drinks water, and hair cracks close in still water.

    Args:
        hair_crack_width: widest crack that was seen, 0 for none [mm], 0 to 0.2.

    Returns:
        Days [day], 7 to 21.

    Raises:
        OutOfRangeError: a wider crack: lower the water and ask a licensed engineer.

    Example:
        >>> from generator.formula import show
        >>> show(water_soak_days(hair_crack_width=0.15), 0)
        '21'
    """
    return SHORT_SOAK if hair_crack_width <= HAIR_CRACK else LONG_SOAK


@BOOK.quantity(symbol="t_xp", unit="day", places=0, low=16, high=78, source=derived("filling, soaking and testing"))
def proving_days(first_filling_days: float, water_soak_days: float, test_days: float) -> float:
    """Days from the first water to the last reading.

    Args:
        first_filling_days: days of the first filling [day], 4 to 36.
        water_soak_days: days of soaking [day], 7 to 21.
        test_days: days of the test [day], 5 to 21.

    Returns:
        Days [day], 16 to 78.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> proving_days(first_filling_days=10, water_soak_days=7, test_days=8)
        25
    """
    return first_filling_days + water_soak_days + test_days


@BOOK.misconception(of="corrected_fall")
def evaporation_counted_as_leak(tank_fall: float) -> float:
    """The whole fall of the tank was counted as leak."""
    return tank_fall


@BOOK.misconception(of="corrected_fall")
def guess_in_place_of_a_control(tank_fall: float, test_days: float) -> float:
    """No bucket was read: 5 mm a day were taken off as a guess."""
    return max(tank_fall - GUESSED_EVAPORATION * test_days, NO_FALL)


@BOOK.misconception(of="daily_fall")
def whole_fall_in_one_day(corrected_fall: float) -> float:
    """The fall of all the days was taken for the fall of one."""
    return corrected_fall


@BOOK.misconception(of="fall_allowed")
def larger_limit_taken(water_depth: float) -> float:
    """The larger of the two limits was taken."""
    return max(PASS_FALL, PASS_SHARE / PERCENT * water_depth * MILLIMETRES_IN_METRE)


@BOOK.misconception(of="fall_allowed")
def thousandth_read_as_hundredth(water_depth: float) -> float:
    """A hundredth of the depth was allowed in place of a thousandth."""
    return water_depth * MILLIMETRES_IN_METRE / HUNDREDTHS_OF_A_DAY


@BOOK.misconception(of="leak_litres")
def millimetres_of_fall_taken_as_centimetres(leak_litres: float) -> float:
    """Millimetres were taken for centimetres."""
    return leak_litres * TENS_READ_WRONG


@BOOK.misconception(of="leak_litres")
def wet_wall_taken_for_the_floor(daily_fall: float, inside_diameter: float, water_depth: float) -> float:
    """The fall was multiplied by the wet wall; the water that is gone stood on the floor."""
    return daily_fall * pi * inside_diameter * water_depth


@BOOK.misconception(of="leak_share")
def share_of_the_whole_test(leak_share: float, test_days: float) -> float:
    """The leak of all the days was held against the limit of one day."""
    return leak_share * test_days


@BOOK.misconception(of="stage_height")
def stages_up_to_the_rim(wall_height: float, stage_count: float) -> float:
    """The wall's height was shared, not the water's depth."""
    return wall_height / stage_count


@BOOK.misconception(of="stage_height")
def floor_counted_as_a_mark(water_depth: float, stage_count: float) -> float:
    """As many marks as stages were drawn, with one at the floor: that leaves one stage fewer."""
    return water_depth / (stage_count - 1)


@BOOK.misconception(of="first_filling_days")
def no_wait_after_a_stage(stage_count: float, stage_wait: float) -> float:
    """The next stage was let in as soon as the last one stood: all of it in the time of one wait."""
    return stage_wait


@BOOK.misconception(of="proving_days")
def soaking_left_out(first_filling_days: float, test_days: float) -> float:
    """The test was begun as soon as the tank was full."""
    return first_filling_days + test_days
