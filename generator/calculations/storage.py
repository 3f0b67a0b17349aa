"""How much water a place needs and gets: people, animals, spring, roof, and the days that a tank bridges.

A tank is as large as what is missing on each day, times the days. Where the spring stops, nothing comes and the whole
need is missing (`dry_season_need`); where it runs on, only the shortfall is stored. Inflow that changes from month to
month is no sum for the hand: `reservoir` runs the record. Measure the spring at the end of the dry season, and take the
rain of a dry year, not of a mean one.

Water from a spring or a roof is not safe to drink by being stored: keep it covered, and treat it.

References:
    .. [1] Sphere, water supply standard 1 (2.5 to 3 L a day to drink and eat, 7.5 to 15 L to live on; a can of 20 L in
       at most 3 minutes).
    .. [2] FAO Training, water for freshwater fish culture, section 3: bucket and watch, for springs below 5 L/s.
    .. [3] Rainwater Reservoirs above Ground Structures for Roof Catchment, GTZ/GATE 1989: mm x m2 x runoff share.
"""

from collections.abc import Sequence
from math import isfinite

from generator.calculations._book import BOOK
from generator.calculations.mortar import PERCENT
from generator.calculations.volumes import LITRES_IN_CUBIC_METRE, LITRES_READ_WRONG
from generator.formula import (
    ASK,
    Constant,
    OutOfRangeError,
    common_practice,
    derived,
    from_memory,
    published,
    whole_down,
)

SECONDS_IN_DAY = Constant(86400, "s/day", derived("24 x 60 x 60 seconds"))
LITRES_OF_ONE_MILLIMETRE = Constant(1, "L/(mm*m**2)", derived("1 mm of water on 1 m2 is 1 L"))
NO_FLOW = Constant(0, "L/day", derived("a spring that gives enough leaves nothing missing"))
NO_WATER = Constant(0, "L", derived("a roof never takes water away"))
LEAST_FLOW = Constant(0.001, "L/day", derived("keeps a tank that loses or gains nothing from lasting endless days"))
WHOLE_YEAR = Constant(365, "day", derived("the longest time that is told: a year, or more"))
SECONDS_IN_MINUTE = Constant(60, "s/min", derived("a minute taken for a second"))
MINUTES_IN_DAY = Constant(1440, "s/day", derived("24 x 60: minutes taken for the seconds of a day"))
SECONDS_OF_DAYLIGHT = Constant(43200, "s/day", derived("12 hours, as if a spring slept at night"))
FOUR_WEEKS = Constant(28 / 30, "", derived("days of four weeks / days of a month"))
ONE_DAY = Constant(1, "day", derived("a single day"))
DAYS_IN_MONTH = Constant(30, "day", derived("one month, whatever the dry season is"))
MEAN_YEAR = Constant(1.5, "", from_memory("a mean year brings about half as much again as a dry year; shows a mistake"))
SLOPE_OF_A_ROOF = Constant(1.15, "", derived("length along a roof of 30 degrees / length on the ground"))
MILLIMETRES_IN_CENTIMETRE = Constant(10, "", derived("a millimetre taken for a centimetre"))
TIMINGS = 3
"""Fewest timings of a spring, after FAO Training."""

BOOK.given(
    "people",
    symbol="N_qp",
    unit="",
    low=0,
    high=500,
    step=1,
    source=derived("more than 500 people need more than a tank of 50 m3"),
)
BOOK.given(
    "litres_each",
    symbol="q_qp",
    unit="L/day",
    low=2.5,
    high=100,
    step=0.5,
    source=published(
        "Sphere water standard 1: 2.5 L to drink and eat, 7.5 to 15 to live on; WHO: 50 to 100 for all basic needs"
    ),
)
BOOK.given(
    "dry_days",
    symbol="n_qd",
    unit="day",
    low=1,
    high=365,
    step=1,
    source=derived("from a day to a whole year without enough water"),
)
BOOK.given(
    "large_animals",
    symbol="N_qa",
    unit="",
    low=0,
    high=100,
    step=1,
    source=derived("a village herd; none is allowed"),
)
BOOK.given(
    "litres_per_large_animal",
    symbol="q_qa",
    unit="L/day",
    low=10,
    high=80,
    step=1,
    source=published("farmer-advice tables: donkey 10 to 25, horse 24 to 36, dairy cattle 30 to 80"),
)
BOOK.given(
    "small_animals",
    symbol="N_qs",
    unit="",
    low=0,
    high=500,
    step=1,
    source=derived("a village flock; none is allowed"),
)
BOOK.given(
    "litres_per_small_animal",
    symbol="q_qs",
    unit="L/day",
    low=4,
    high=20,
    step=0.5,
    source=published("farmer-advice tables: sheep and goats 5 to 20; veterinary note: 4 as an average"),
)
BOOK.given(
    "bucket_litres",
    symbol="b_q",
    unit="L",
    low=5,
    high=25,
    step=0.5,
    source=common_practice("a bucket that two hands hold level; its mark is measured, not believed"),
)
BOOK.given(
    "bucket_seconds",
    symbol="t_qb",
    unit="s",
    low=5,
    high=1200,
    step=1,
    source=published("FAO Training, section 3: mean of at least three timings, for less than 5 L/s"),
)
BOOK.given(
    "spring_share_kept",
    symbol="k_qs",
    unit="%",
    low=0,
    high=100,
    step=5,
    source=derived("a share of the whole; 0 for a place without a spring or one that stops"),
)
BOOK.given(
    "can_litres",
    symbol="c_qc",
    unit="L",
    low=5,
    high=50,
    step=1,
    source=common_practice("cans that people carry; 20 L is the usual one"),
)
BOOK.given(
    "rain_depth",
    symbol="r_q",
    unit="mm",
    low=0,
    high=3000,
    step=1,
    source=derived("no rain at all, to the season of a rain forest; of a dry year, from the nearest gauge"),
)
BOOK.given(
    "roof_area",
    symbol="A_qr",
    unit="m**2",
    low=1,
    high=1000,
    step=1,
    source=derived("a hut to a row of school roofs; measured on the ground below, not along the slope"),
)
BOOK.given(
    "runoff_coefficient",
    symbol="C_q",
    unit="",
    low=0.5,
    high=0.95,
    step=0.05,
    source=published(
        "rainwater lesson: 0.5 to 0.9 by roof and slope; other pages: metal 0.8 to 0.95, tile 0.75 to 0.9"
    ),
)
BOOK.given(
    "first_flush_depth",
    symbol="f_q",
    unit="mm",
    low=0,
    high=5,
    step=0.5,
    source=common_practice("the first millimetres carry dust and droppings and are let away"),
)
BOOK.given(
    "first_flushes",
    symbol="n_qf",
    unit="",
    low=0,
    high=100,
    step=1,
    source=derived("once for each rain that comes after dry days"),
)


@BOOK.quantity(symbol="U_qp", unit="L/day", places=1, low=0, high=50000, source=derived("people times litres"))
def people_need(people: float, litres_each: float) -> float:
    """What all the people draw in a day.

    Args:
        people: people who draw water [-], 0 to 500.
        litres_each: water that one person draws [L/day], 2.5 to 100.

    Returns:
        Water for the people [L/day], 0 to 50000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(people_need(people=7, litres_each=20), 1)
        '140.0'
    """
    return people * litres_each


@BOOK.quantity(
    symbol="U_qa", unit="L/day", places=1, low=0, high=18000, source=derived("head times litres, large and small apart")
)
def animal_need(
    large_animals: float, litres_per_large_animal: float, small_animals: float, litres_per_small_animal: float
) -> float:
    """What all the animals drink in a day; camels and donkeys drink it at once, so the trough must hold that.

    Args:
        large_animals: cattle, horses, donkeys [-], 0 to 100.
        litres_per_large_animal: water that one large animal drinks [L/day], 10 to 80.
        small_animals: sheep and goats [-], 0 to 500.
        litres_per_small_animal: water that one small animal drinks [L/day], 4 to 20.

    Returns:
        Water for the animals [L/day], 0 to 18000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> given = dict(large_animals=3, litres_per_large_animal=30, small_animals=20, litres_per_small_animal=5)
        >>> show(animal_need(**given), 1)
        '190.0'
    """
    return large_animals * litres_per_large_animal + small_animals * litres_per_small_animal


@BOOK.quantity(symbol="U_qd", unit="L/day", places=1, low=0, high=68000, source=derived("people and animals"))
def daily_need(people_need: float, animal_need: float) -> float:
    """What people and animals need in a day.

    Args:
        people_need: water for the people [L/day], 0 to 50000.
        animal_need: water for the animals [L/day], 0 to 18000.

    Returns:
        Water for a day [L/day], 0 to 68000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(daily_need(people_need=140, animal_need=190), 1)
        '330.0'
    """
    return people_need + animal_need


@BOOK.quantity(
    symbol="S_qd",
    unit="L",
    places=1,
    low=0,
    high=24820000,
    source=derived("need of a day times days; nothing comes in"),
)
def dry_season_need(daily_need: float, dry_days: float) -> float:
    """What is needed over the dry days. A tank must hold this only where nothing comes in.

    Args:
        daily_need: water for a day [L/day], 0 to 68000.
        dry_days: days that the tank must bridge [day], 1 to 365.

    Returns:
        Water for the dry days [L], 0 to 24820000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(dry_season_need(daily_need=330, dry_days=40), 1)
        '13200.0'
    """
    return daily_need * dry_days


@BOOK.quantity(
    symbol="Q_qs",
    unit="L/s",
    places=4,
    low=0.004,
    high=5,
    source=published("FAO Training, section 3: Q = volume / time, the most exact way below 5 L/s"),
)
def spring_flow(bucket_litres: float, bucket_seconds: float) -> float:
    """Flow of the spring by bucket and watch, at the end of the dry season.

    Args:
        bucket_litres: water in the bucket at its mark [L], 5 to 25.
        bucket_seconds: seconds to fill the bucket, mean of at least three [s], 5 to 1200.

    Returns:
        Flow [L/s], 0.004 to 5.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(spring_flow(bucket_litres=15, bucket_seconds=50), 4)
        '0.3000'
    """
    return bucket_litres / bucket_seconds


@BOOK.quantity(
    symbol="t_qc",
    unit="s",
    places=0,
    low=1,
    high=12000,
    source=derived("litres over flow; Sphere asks for at most 180 s with a can of 20 L"),
)
def can_fill_time(can_litres: float, spring_flow: float) -> float:
    """Time to fill one can straight from the spring; more than 3 minutes for 20 L makes a queue.

    Args:
        can_litres: water in one can [L], 5 to 50.
        spring_flow: flow [L/s], 0.004 to 5.

    Returns:
        Time [s], 1 to 12000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(can_fill_time(can_litres=18, spring_flow=0.3), 0)
        '60'
    """
    return can_litres / spring_flow


@BOOK.quantity(
    symbol="Y_qs",
    unit="L/day",
    places=1,
    low=0,
    high=432000,
    source=derived("flow times the seconds of a day, times the share counted on"),
)
def spring_daily_yield(spring_flow: float, spring_share_kept: float) -> float:
    """What the spring gives in a day and a night, with something left off for a worse year.

    Args:
        spring_flow: flow [L/s], 0.004 to 5.
        spring_share_kept: share of the measured flow that is counted on [%], 0 to 100.

    Returns:
        Water from the spring [L/day], 0 to 432000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(spring_daily_yield(spring_flow=0.3, spring_share_kept=75), 1)
        '19440.0'
    """
    return spring_flow * SECONDS_IN_DAY * spring_share_kept / PERCENT


@BOOK.quantity(
    symbol="U_qm", unit="L/day", places=1, low=0, high=68000, source=derived("need less yield, never below nothing")
)
def daily_shortfall(daily_need: float, spring_daily_yield: float) -> float:
    """What is missing each day; nothing where the spring gives enough.

    Args:
        daily_need: water for a day [L/day], 0 to 68000.
        spring_daily_yield: water from the spring [L/day], 0 to 432000.

    Returns:
        Water that is missing [L/day], 0 to 68000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(daily_shortfall(daily_need=330, spring_daily_yield=250), 1)
        '80.0'
    """
    return max(NO_FLOW, daily_need - spring_daily_yield)


@BOOK.quantity(symbol="S_q", unit="L", places=1, low=0, high=24820000, source=derived("shortfall times days"))
def storage_needed(daily_shortfall: float, dry_days: float) -> float:
    """What the tank must hold to bridge the dry days while the spring runs on.

    Args:
        daily_shortfall: water that is missing [L/day], 0 to 68000.
        dry_days: days that the tank must bridge [day], 1 to 365.

    Returns:
        Storage [L], 0 to 24820000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(storage_needed(daily_shortfall=80, dry_days=40), 1)
        '3200.0'
    """
    return daily_shortfall * dry_days


@BOOK.quantity(symbol="V_qs", unit="m**3", places=2, low=0, high=24820, source=derived("1 m3 is 1000 L"))
def storage_needed_volume(storage_needed: float) -> float:
    """The storage in cubic metres; more than 50 is for two or three tanks, or for an engineer.

    Args:
        storage_needed: storage [L], 0 to 24820000.

    Returns:
        Storage [m**3], 0 to 24820.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(storage_needed_volume(storage_needed=3200), 2)
        '3.20'
    """
    return storage_needed / LITRES_IN_CUBIC_METRE


@BOOK.quantity(
    symbol="Y_qr",
    unit="L",
    places=1,
    low=0,
    high=2850000,
    source=published("GTZ/GATE 1989: rain x roof in plan x runoff share"),
)
def roof_yield(rain_depth: float, roof_area: float, runoff_coefficient: float) -> float:
    """What a roof gives in a season.

    Args:
        rain_depth: rain of the season, in a dry year [mm], 0 to 3000.
        roof_area: roof, measured on the ground below it [m**2], 1 to 1000.
        runoff_coefficient: share of the rain that reaches the gutter's end [-], 0.5 to 0.95.

    Returns:
        Water from the roof [L], 0 to 2850000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(roof_yield(rain_depth=300, roof_area=40, runoff_coefficient=0.75), 1)
        '9000.0'
    """
    return rain_depth * roof_area * runoff_coefficient * LITRES_OF_ONE_MILLIMETRE


@BOOK.quantity(symbol="V_qf", unit="L", places=1, low=0, high=5000, source=derived("depth times roof"))
def first_flush_volume(first_flush_depth: float, roof_area: float) -> float:
    """Dirty water that one washing of the roof lets away: the size of the pipe or barrel that catches it.

    Args:
        first_flush_depth: rain that washes the roof [mm], 0 to 5.
        roof_area: roof, measured on the ground below it [m**2], 1 to 1000.

    Returns:
        Water that is let away once [L], 0 to 5000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(first_flush_volume(first_flush_depth=1.5, roof_area=40), 1)
        '60.0'
    """
    return first_flush_depth * roof_area * LITRES_OF_ONE_MILLIMETRE


@BOOK.quantity(
    symbol="Y_qk",
    unit="L",
    places=1,
    low=0,
    high=2850000,
    source=derived("yield less every first flush, never below nothing"),
)
def roof_yield_kept(roof_yield: float, first_flush_volume: float, first_flushes: float) -> float:
    """What of the roof's water reaches the tank.

    Args:
        roof_yield: water from the roof [L], 0 to 2850000.
        first_flush_volume: water that is let away once [L], 0 to 5000.
        first_flushes: times that the roof is washed in the season [-], 0 to 100.

    Returns:
        Water that is kept [L], 0 to 2850000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(roof_yield_kept(roof_yield=9000, first_flush_volume=60, first_flushes=12), 1)
        '8280.0'
    """
    return max(NO_WATER, roof_yield - first_flushes * first_flush_volume)


@BOOK.quantity(
    symbol="n_qt",
    unit="day",
    places=1,
    low=0,
    high=365,
    source=derived("litres over shortfall; a year stands for a year and more"),
)
def days_of_water(tank_litres: float, daily_shortfall: float) -> float:
    """How long a full tank lasts with the spring running on; 365 says: a year or more.

    Args:
        tank_litres: litres in the full tank [L], 100 to 50000.
        daily_shortfall: water that is missing [L/day], 0 to 68000.

    Returns:
        Days [day], 0 to 365.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(days_of_water(tank_litres=6640, daily_shortfall=80), 1)
        '83.0'
    """
    return min(WHOLE_YEAR, tank_litres / max(daily_shortfall, LEAST_FLOW))


@BOOK.quantity(
    symbol="n_qv",
    unit="day",
    places=1,
    low=0,
    high=365,
    source=derived("litres over what is left each day; a year stands for a year, more or never"),
)
def filling_days(tank_litres: float, spring_daily_yield: float, daily_need: float) -> float:
    """How long an empty tank takes to fill while everybody draws; 365 says: a year, more, or never.

    Args:
        tank_litres: litres in the full tank [L], 100 to 50000.
        spring_daily_yield: water from the spring [L/day], 0 to 432000.
        daily_need: water for a day [L/day], 0 to 68000.

    Returns:
        Days [day], 0 to 365.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(filling_days(tank_litres=6640, spring_daily_yield=500, daily_need=330), 1)
        '39.1'
    """
    return min(WHOLE_YEAR, tank_litres / max(spring_daily_yield - daily_need, LEAST_FLOW))


@BOOK.quantity(
    symbol="N_qv",
    unit="",
    places=0,
    low=0,
    high=250000,
    source=derived("spring and a day's part of the tank, less the animals, over litres each; rounded down"),
)
def people_served(
    spring_daily_yield: float, tank_litres: float, dry_days: float, animal_need: float, litres_each: float
) -> float:
    """How many people spring and tank carry through the dry days, once the animals have drunk.

    Args:
        spring_daily_yield: water from the spring [L/day], 0 to 432000.
        tank_litres: litres in the full tank [L], 100 to 50000.
        dry_days: days that the tank must bridge [day], 1 to 365.
        animal_need: water for the animals [L/day], 0 to 18000.
        litres_each: water that one person draws [L/day], 2.5 to 100.

    Returns:
        People [-], 0 to 250000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> given = dict(spring_daily_yield=250, tank_litres=6640, dry_days=40, animal_need=190, litres_each=20)
        >>> show(people_served(**given), 0)
        '11'
    """
    return whole_down(max(NO_FLOW, spring_daily_yield + tank_litres / dry_days - animal_need) / litres_each)


@BOOK.misconception(of="people_need")
def litres_of_one_for_all(litres_each: float) -> float:
    """One person's water was taken for all."""
    return litres_each


@BOOK.misconception(of="animal_need")
def small_animals_forgotten(large_animals: float, litres_per_large_animal: float) -> float:
    """Only the large animals were counted."""
    return large_animals * litres_per_large_animal


@BOOK.misconception(of="animal_need")
def goats_drink_like_cattle(large_animals: float, small_animals: float, litres_per_large_animal: float) -> float:
    """Every animal was given what a large one drinks."""
    return (large_animals + small_animals) * litres_per_large_animal


@BOOK.misconception(of="daily_need")
def animals_forgotten(people_need: float) -> float:
    """Only the people were counted."""
    return people_need


@BOOK.misconception(of="dry_season_need")
def one_month_for_the_dry_season(daily_need: float) -> float:
    """A month was taken, whatever the dry season is."""
    return daily_need * DAYS_IN_MONTH


@BOOK.misconception(of="spring_flow")
def litres_a_minute_for_a_second(bucket_litres: float, bucket_seconds: float) -> float:
    """Litres in a minute were written as litres in a second."""
    return bucket_litres / bucket_seconds * SECONDS_IN_MINUTE


@BOOK.misconception(of="spring_flow")
def seconds_over_litres(bucket_litres: float, bucket_seconds: float) -> float:
    """Seconds were divided by litres."""
    return bucket_seconds / bucket_litres


@BOOK.misconception(of="can_fill_time")
def can_times_flow(can_litres: float, spring_flow: float) -> float:
    """The can was multiplied by the flow."""
    return can_litres * spring_flow


@BOOK.misconception(of="spring_daily_yield")
def spring_never_falls(spring_flow: float) -> float:
    """The whole measured flow was counted on, as if no year were worse."""
    return spring_flow * SECONDS_IN_DAY


@BOOK.misconception(of="spring_daily_yield")
def minutes_for_the_seconds_of_a_day(spring_flow: float, spring_share_kept: float) -> float:
    """24 x 60 was taken for the seconds of a day."""
    return spring_flow * MINUTES_IN_DAY * spring_share_kept / PERCENT


@BOOK.misconception(of="spring_daily_yield")
def spring_sleeps_at_night(spring_flow: float, spring_share_kept: float) -> float:
    """Only twelve hours were counted."""
    return spring_flow * SECONDS_OF_DAYLIGHT * spring_share_kept / PERCENT


@BOOK.misconception(of="daily_shortfall")
def spring_ignored(daily_need: float) -> float:
    """The spring was left out."""
    return daily_need


@BOOK.misconception(of="daily_shortfall")
def spring_taken_for_the_shortfall(spring_daily_yield: float) -> float:
    """What the spring gives was taken for what is missing."""
    return spring_daily_yield


@BOOK.misconception(of="storage_needed")
def months_of_four_weeks(daily_shortfall: float, dry_days: float) -> float:
    """Each month was counted as four weeks."""
    return daily_shortfall * dry_days * FOUR_WEEKS


@BOOK.misconception(of="storage_needed")
def storage_for_one_day(daily_shortfall: float) -> float:
    """One day's shortfall was taken for the storage."""
    return daily_shortfall * ONE_DAY


@BOOK.misconception(of="storage_needed_volume")
def hundred_litres_for_a_cubic_metre(storage_needed: float) -> float:
    """A cubic metre was taken for a hundred litres."""
    return storage_needed / LITRES_READ_WRONG


@BOOK.misconception(of="roof_yield")
def mean_year_for_a_dry_year(roof_yield: float) -> float:
    """The rain of a mean year was taken."""
    return roof_yield * MEAN_YEAR


@BOOK.misconception(of="roof_yield")
def every_drop_reaches_the_tank(rain_depth: float, roof_area: float) -> float:
    """Nothing was taken off for splash, wind and a hot roof."""
    return rain_depth * roof_area * LITRES_OF_ONE_MILLIMETRE


@BOOK.misconception(of="roof_yield")
def roof_measured_along_the_slope(roof_yield: float) -> float:
    """The roof was measured along its slope, as if it stood at 30 degrees."""
    return roof_yield * SLOPE_OF_A_ROOF


@BOOK.misconception(of="first_flush_volume")
def flush_in_centimetres(first_flush_volume: float) -> float:
    """The millimetres were read as centimetres."""
    return first_flush_volume * MILLIMETRES_IN_CENTIMETRE


@BOOK.misconception(of="roof_yield_kept")
def first_flush_forgotten(roof_yield: float) -> float:
    """Nothing was taken off for the dirty first water."""
    return roof_yield


@BOOK.misconception(of="roof_yield_kept")
def roof_washed_once(roof_yield: float, first_flush_volume: float) -> float:
    """The first flush was taken off once for the whole season."""
    return max(NO_WATER, roof_yield - first_flush_volume)


@BOOK.misconception(of="days_of_water")
def tank_over_the_whole_need(tank_litres: float, daily_need: float) -> float:
    """The tank was divided by the whole need; the spring was left out."""
    return min(WHOLE_YEAR, tank_litres / max(daily_need, LEAST_FLOW))


@BOOK.misconception(of="filling_days")
def nobody_draws_while_it_fills(tank_litres: float, spring_daily_yield: float) -> float:
    """Nobody was thought to draw while the tank fills."""
    return min(WHOLE_YEAR, tank_litres / max(spring_daily_yield, LEAST_FLOW))


@BOOK.misconception(of="people_served")
def people_before_the_animals_drink(
    spring_daily_yield: float, tank_litres: float, dry_days: float, litres_each: float
) -> float:
    """The animals' water was shared out to people."""
    return whole_down((spring_daily_yield + tank_litres / dry_days) / litres_each)


def mean_fill_time(seconds: Sequence[float]) -> float:
    """Mean of the times in which one bucket filled, for `bucket_seconds`.

    Args:
        seconds: one time for each filling, at least three [s].

    Raises:
        OutOfRangeError: fewer than three times, or a time that is not above 0.

    Example:
        >>> mean_fill_time([31, 34, 31])
        32.0
    """
    if len(seconds) < TIMINGS:
        raise OutOfRangeError(f"{len(seconds)} timings are too few; fill the bucket at least {TIMINGS} times")
    if not all(isfinite(time) and time > 0 for time in seconds):
        raise OutOfRangeError(f"a time is a number of seconds above 0; time the bucket again, or {ASK}")
    return sum(seconds) / len(seconds)
