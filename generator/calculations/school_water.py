"""A school's water: drawn in school hours on school days, by a spring that runs all day, all night and all week.

A house draws every day; a school draws much in few hours and then rests. So the tank holds what the spring can't bring
while the pupils draw, and the nights and the weekend fill it again. Each school day takes a little more than the spring
brings, so the lowest water stands at the end of the last school day, before its night comes in. Whether the spring is
enough is asked of the whole week, not of a day.

Water is not safe to drink by being stored: keep it covered, and treat it.

References:
    .. [1] Sphere handbook, institutional needs: 3 L a pupil a day to drink and wash hands (from memory).
    .. [2] The sums are balances of litres: what is drawn less what comes in.
"""

from generator.calculations._book import BOOK
from generator.calculations.storage import NO_WATER, ONE_DAY
from generator.formula import Constant, derived, from_memory

HOURS_IN_DAY = Constant(24, "hour/day", derived("a spring runs day and night"))
DAYS_IN_WEEK = Constant(7, "day", derived("a spring runs at the weekend too"))

BOOK.given(
    "cool_litres_each",
    symbol="q_qw",
    unit="L/day",
    low=2.5,
    high=100,
    step=0.5,
    source=from_memory("Sphere, institutional needs: 3 L a pupil a day to drink and wash hands; more in heat"),
)
BOOK.given(
    "school_hours",
    symbol="t_qu",
    unit="hour",
    low=1,
    high=12,
    step=0.5,
    source=derived("from the first bell to the last: an hour to half a day"),
)
BOOK.given(
    "school_days",
    symbol="n_qu",
    unit="day",
    low=1,
    high=7,
    step=1,
    source=derived("days of school in a week; 7 for a boarding house"),
)


@BOOK.quantity(symbol="U_qw", unit="L/day", places=1, low=0, high=50000, source=derived("people times litres"))
def cool_season_need(people: float, cool_litres_each: float) -> float:
    """What all draw on a cool day; the tank is sized for the hot weeks, when the spring is weakest.

    Args:
        people: people who draw water [-], 0 to 500.
        cool_litres_each: water that one person draws on a cool day [L/day], 2.5 to 100.

    Returns:
        Water for a cool day [L/day], 0 to 50000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(cool_season_need(people=130, cool_litres_each=3), 1)
        '390.0'
    """
    return people * cool_litres_each


@BOOK.quantity(
    symbol="S_qu", unit="L", places=1, low=0, high=68000, source=derived("a day's need less the spring in school hours")
)
def school_day_storage(daily_need: float, spring_daily_yield: float, school_hours: float) -> float:
    """What the tank must give on one school day: the spring brings only its school hours before the last bell.

    Args:
        daily_need: water for a day [L/day], 0 to 68000.
        spring_daily_yield: water from the spring in a day and a night [L/day], 0 to 432000.
        school_hours: hours in which the water is drawn [hour], 1 to 12.

    Returns:
        Storage for one school day [L], 0 to 68000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(school_day_storage(daily_need=780, spring_daily_yield=600, school_hours=6), 1)
        '630.0'
    """
    return max(NO_WATER, daily_need * ONE_DAY - spring_daily_yield * school_hours / HOURS_IN_DAY)


@BOOK.quantity(
    symbol="S_qw",
    unit="L",
    places=1,
    low=0,
    high=476000,
    source=derived("one school day, and what is missing on each day before it"),
)
def school_week_storage(school_day_storage: float, daily_shortfall: float, school_days: float) -> float:
    """What a tank must hold that is full on the first morning, to reach the last bell of the week.

    Args:
        school_day_storage: storage for one school day [L], 0 to 68000.
        daily_shortfall: water that is missing [L/day], 0 to 68000.
        school_days: days of school in a week [day], 1 to 7.

    Returns:
        Storage for the school week [L], 0 to 476000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(school_week_storage(school_day_storage=630, daily_shortfall=180, school_days=5), 1)
        '1350.0'
    """
    return school_day_storage + daily_shortfall * (school_days - ONE_DAY)


@BOOK.quantity(
    symbol="S_qo",
    unit="L",
    places=1,
    low=0,
    high=3024000,
    source=derived("seven days of the spring less the school days' need, never below nothing"),
)
def school_week_spare(daily_need: float, spring_daily_yield: float, school_days: float) -> float:
    """What the spring has over in a whole week; nothing over says: no tank of any size makes this spring enough.

    Args:
        daily_need: water for a day [L/day], 0 to 68000.
        spring_daily_yield: water from the spring in a day and a night [L/day], 0 to 432000.
        school_days: days of school in a week [day], 1 to 7.

    Returns:
        Water that is over in a week [L], 0 to 3024000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(school_week_spare(daily_need=780, spring_daily_yield=600, school_days=5), 1)
        '300.0'
    """
    return max(NO_WATER, spring_daily_yield * DAYS_IN_WEEK - daily_need * school_days)


@BOOK.misconception(of="people_need")
def cool_season_for_the_hot(cool_season_need: float) -> float:
    """The water of a cool day was taken for the hot weeks."""
    return cool_season_need


@BOOK.misconception(of="school_day_storage")
def night_comes_in_by_day(daily_need: float, spring_daily_yield: float) -> float:
    """The whole day and night of the spring was counted before the last bell."""
    return max(NO_WATER, (daily_need - spring_daily_yield) * ONE_DAY)


@BOOK.misconception(of="school_day_storage")
def nothing_comes_in_by_day(daily_need: float) -> float:
    """The spring was left out while the pupils draw."""
    return daily_need * ONE_DAY


@BOOK.misconception(of="school_week_storage")
def last_night_counted_too(daily_shortfall: float, school_days: float) -> float:
    """The night after the last bell was counted as if it came before."""
    return daily_shortfall * school_days


@BOOK.misconception(of="school_week_storage")
def every_night_fills_the_tank(school_day_storage: float) -> float:
    """Each night was thought to fill the tank to the brim."""
    return school_day_storage


@BOOK.misconception(of="school_week_spare")
def week_of_the_spring_is_spare(spring_daily_yield: float) -> float:
    """Everything that the spring brings in a week was taken for what is over."""
    return spring_daily_yield * DAYS_IN_WEEK


@BOOK.misconception(of="school_week_spare")
def one_school_day_in_the_week(daily_need: float, spring_daily_yield: float) -> float:
    """One day's need was taken off for the whole week."""
    return max(NO_WATER, spring_daily_yield * DAYS_IN_WEEK - daily_need * ONE_DAY)
