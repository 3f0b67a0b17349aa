"""Curing: how fast wind and sun take the water, how long a wall is kept wet, and how much water that costs.

A tank is never allowed to dry: this course keeps it wet for twice as long as print asks of ordinary concrete, and then
fills it. A thin coat that dries early cracks and leaks, and no later wetting makes it good. Props stay until their
date: people have died under a roof that was struck early.

Temperatures are in degrees Celsius. The evaporation formula is good to about 40 %: it warns early and decides nothing
finely.

References:
    .. [1] Uno, ACI Materials Journal 95-M34 (1998), read at second hand: evaporation from fresh concrete.
    .. [2] IS 456:2000, read at second hand: least days of wet curing; days until props are struck.
    .. [3] Rainwater Reservoirs above Ground Structures for Roof Catchment, GTZ/GATE 1989: never dry for 28 days.
"""

from math import pi, sqrt

from generator.calculations._book import BOOK
from generator.calculations.labour import ONE_DAY
from generator.calculations.mortar import PERCENT
from generator.formula import Constant, common_practice, derived, published, whole_down, whole_up

_UNO = "Uno 1998, read at second hand"
_CURING = "IS 456:2000, read at second hand: "
_PROPS = "IS 456:2000, clause 11.3.1, read at second hand: "
UNO_FACTOR = Constant(0.000005, "kg/(m**2*hour*delta_degC**2.5*(km/hour))", published(_UNO + ": 5 / 1 000 000"))
UNO_SHIFT = Constant(18, "delta_degC", published(_UNO + ": 18 is added to both temperatures"))
UNO_WIND = Constant(4, "km/hour", published(_UNO + ": 4 is added to the wind"))
NO_EVAPORATION = Constant(0, "kg/m**2/hour", derived("below nothing, dew falls and nothing dries"))
FAHRENHEIT_STEP = Constant(1.8, "", derived("a degree Celsius is 1.8 degrees Fahrenheit"))
FAHRENHEIT_START = Constant(32, "delta_degC", derived("water freezes at 32 degrees Fahrenheit"))
PLAIN_DAYS = Constant(7, "day", published(_CURING + "ordinary cement, 7 days"))
HARDER_DAYS = Constant(10, "day", published(_CURING + "blended cement, or dry and hot weather, 10 days"))
HARDEST_DAYS = Constant(14, "day", published(_CURING + "blended cement in dry and hot weather, 14 days"))
TANK_FACTOR = Constant(
    2, "", derived("policy of this course: a thin wall that must be tight is kept wet twice as long as house concrete")
)
COATING_DAYS = Constant(3, "day", common_practice("from the first coat to the last"))
ONE_SPRINKLING = Constant(1, "L/m**2/day", common_practice("what stays on an upright face when it is wetted once"))
WEEK = Constant(7, "day", derived("a week"))
SHORT_SPAN = Constant(4.5, "m", published(_PROPS + "the limit between the two spans of a slab"))
SHORT_SPAN_DAYS = Constant(7, "day", published(_PROPS + "props of slabs up to 4.5 m, 7 days"))
LONG_SPAN_DAYS = Constant(14, "day", published(_PROPS + "props of slabs over 4.5 m, 14 days"))
SOFFIT_DAYS = Constant(3, "day", published(_PROPS + "forms under a slab, 3 days, the props left in"))
WARM_ENOUGH = Constant(15, "delta_degC", published(_PROPS + "the days hold for 15 degrees and over"))
COLD_FACTOR = Constant(2, "", published(_PROPS + "twice as long at 5 degrees; this course doubles below 15"))
DATUM = Constant(0, "delta_degC", published("worked page on ASTM C1074: nothing hardens at 0 degrees"))
HOURS_IN_DAY = Constant(24, "hour/day", derived("1 day is 24 hours"))
HOUR_FOR_DAY = Constant(1, "hour/day", derived("a mistake: a day taken for one hour"))

BOOK.given(
    "air_temperature",
    symbol="T_va",
    unit="delta_degC",
    low=5,
    high=40,
    step=1,
    source=published("ready-mix guideline on IS 7861: under 5 and over 40 degrees is special work; wait"),
)
BOOK.given(
    "concrete_temperature",
    symbol="T_vc",
    unit="delta_degC",
    low=5,
    high=40,
    step=1,
    source=published(
        "ready-mix guideline: keep the fresh mix at 35 degrees or under; up to 40 only to see what it costs"
    ),
)
BOOK.given(
    "humidity",
    symbol="r_v",
    unit="%",
    low=5,
    high=100,
    step=5,
    source=derived("from desert wind to fog"),
)
BOOK.given(
    "wind_speed",
    symbol="u_v",
    unit="km/hour",
    low=0,
    high=40,
    step=1,
    source=published(_UNO + ": measured half a metre over the surface; in more wind, wait"),
)
BOOK.given(
    "curing_litres_per_area",
    symbol="w_va",
    unit="L/m**2/day",
    low=5,
    high=10,
    step=0.5,
    source=derived("a wet face dries at about 0.4 kg/m2 in the hour; under wet sacks about half of that"),
)
BOOK.given(
    "blended_cement",
    symbol="k_vb",
    unit="",
    low=0,
    high=1,
    step=1,
    source=derived("0: ordinary cement; 1: cement with fly ash or slag (PPC, PSC on the bag)"),
)
BOOK.given(
    "hot_dry",
    symbol="k_vh",
    unit="",
    low=0,
    high=1,
    step=1,
    source=derived("0: ordinary weather; 1: hot and dry weather"),
)
BOOK.given(
    "propped_span",
    symbol="L_vp",
    unit="m",
    low=0.6,
    high=8,
    step=0.1,
    source=derived("from a lid to the widest roof of this course"),
)
BOOK.given(
    "mortar_age",
    symbol="T_vd",
    unit="day",
    low=1,
    high=28,
    step=1,
    source=derived("from the first day to the day of the strength test"),
)


@BOOK.quantity(
    symbol="E_v",
    unit="kg/m**2/hour",
    places=2,
    low=0,
    high=6,
    source=published("Uno, ACI Materials Journal 95-M34 (1998), read at second hand; good to about 40 %"),
)
def evaporation_rate(concrete_temperature: float, air_temperature: float, humidity: float, wind_speed: float) -> float:
    """Water that a fresh wet face loses. From 0.5 on, shade it and break the wind; at 1.0 stop.

    The power of 2.5 in print is written as square times root: a pocket calculator has keys for these.

    Args:
        concrete_temperature: temperature of the fresh mortar [delta_degC], 5 to 40.
        air_temperature: temperature of the air in the shade [delta_degC], 5 to 40.
        humidity: relative humidity [%], 5 to 100.
        wind_speed: wind half a metre over the face [km/hour], 0 to 40.

    Returns:
        Rate [kg/m**2/hour], 0 to 6.

    Raises:
        OutOfRangeError: a given outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(evaporation_rate(concrete_temperature=30, air_temperature=35, humidity=30, wind_speed=20), 2)
        '1.18'
    """
    warmth_of_mortar = concrete_temperature + UNO_SHIFT
    warmth_of_air = air_temperature + UNO_SHIFT
    damp_of_mortar = warmth_of_mortar * warmth_of_mortar * sqrt(warmth_of_mortar)
    damp_of_air = humidity / PERCENT * warmth_of_air * warmth_of_air * sqrt(warmth_of_air)
    return max(NO_EVAPORATION, UNO_FACTOR * (damp_of_mortar - damp_of_air) * (wind_speed + UNO_WIND))


@BOOK.quantity(
    symbol="A_vc", unit="m**2", places=1, low=2, high=230, source=derived("both faces, the floor and a flat roof's top")
)
def curing_area(
    plaster_area_outside: float, plaster_area_inside: float, floor_area: float, outside_diameter: float
) -> float:
    """All that must stay wet: both faces of the wall, the floor, and the top of the roof.

    Args:
        plaster_area_outside: outer face of the wall [m**2], 0.8 to 62.
        plaster_area_inside: inner face of the wall [m**2], 0.7 to 61.
        floor_area: area of the floor [m**2], 0.25 to 51.
        outside_diameter: outer face to outer face [m], 0.6 to 8.2.

    Returns:
        Area [m**2], 2 to 230.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(curing_area(plaster_area_outside=14, plaster_area_inside=13, floor_area=7, outside_diameter=3.2), 1)
        '42.0'
    """
    return plaster_area_outside + plaster_area_inside + floor_area + pi / 4 * outside_diameter**2


@BOOK.quantity(symbol="W_vd", unit="L/day", places=0, low=10, high=2300, source=derived("area x water for each m2"))
def curing_water_daily(curing_area: float, curing_litres_per_area: float) -> float:
    """Water for one day of curing.

    Args:
        curing_area: all that must stay wet [m**2], 2 to 230.
        curing_litres_per_area: water for each square metre [L/m**2/day], 5 to 10.

    Returns:
        Water [L/day], 10 to 2300.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(curing_water_daily(curing_area=42, curing_litres_per_area=7), 0)
        '294'
    """
    return curing_area * curing_litres_per_area


@BOOK.quantity(
    symbol="n_vk", unit="", places=0, low=1, high=460, source=derived("water of a day over a can, the last can whole")
)
def curing_cans(curing_water_daily: float, can_litres: float) -> float:
    """Cans that are carried to the tank each day, as long as it is kept wet.

    Args:
        curing_water_daily: water for one day [L/day], 10 to 2300.
        can_litres: what one can holds [L], 5 to 50.

    Returns:
        Number of cans for each day [-], 1 to 460.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> curing_cans(curing_water_daily=294, can_litres=18)
        17.0
    """
    return whole_up(curing_water_daily * ONE_DAY / can_litres)


@BOOK.quantity(
    symbol="d_v",
    unit="day",
    places=0,
    low=14,
    high=28,
    source=derived("policy of this course: twice the days that IS 456:2000 asks of ordinary concrete, then fill"),
)
def curing_days(blended_cement: float, hot_dry: float) -> float:
    """Days of unbroken wetting, counted from the last coat. The tank is then filled, and is never dry for 28 days.

    Print asks 7 days of ordinary concrete, 10 for blended cement or in hot dry weather, 14 for both. A thin wall that
    must hold water gets twice as long: 14, 20, 20 and 28 days.

    Args:
        blended_cement: 1 for cement with fly ash or slag [-], 0 to 1.
        hot_dry: 1 for hot and dry weather [-], 0 to 1.

    Returns:
        Days [day], 14 to 28.

    Raises:
        OutOfRangeError: a given outside its range.

    Example:
        >>> curing_days(blended_cement=1, hot_dry=0)
        20.0
    """
    return TANK_FACTOR * (
        PLAIN_DAYS if blended_cement + hot_dry < 1 else HARDER_DAYS if blended_cement + hot_dry < 2 else HARDEST_DAYS
    )


@BOOK.quantity(symbol="W_vc", unit="L", places=0, low=100, high=65000, source=derived("water of a day x days"))
def curing_water(curing_water_daily: float, curing_days: float) -> float:
    """Water for all days of curing. It is carried before the first coat is begun, or it will not be there.

    Args:
        curing_water_daily: water for one day [L/day], 10 to 2300.
        curing_days: days of unbroken wetting [day], 14 to 28.

    Returns:
        Water [L], 100 to 65000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> curing_water(curing_water_daily=294, curing_days=20)
        5880
    """
    return curing_water_daily * curing_days


@BOOK.quantity(
    symbol="d_vp",
    unit="day",
    places=0,
    low=7,
    high=28,
    source=published("IS 456:2000, clause 11.3.1, read at second hand; doubled below 15 degrees by this course"),
)
def prop_days(propped_span: float, air_temperature: float) -> float:
    """Days until the props of a flat roof are taken out. Nobody stands under it before, or while props come out.

    Args:
        propped_span: clear span of the roof [m], 0.6 to 8.
        air_temperature: temperature of the air on the coldest of these days [delta_degC], 5 to 40.

    Returns:
        Days [day], 7 to 28.

    Raises:
        OutOfRangeError: a given outside its range.

    Example:
        >>> prop_days(propped_span=3.4, air_temperature=12)
        14.0
    """
    return (SHORT_SPAN_DAYS if propped_span <= SHORT_SPAN else LONG_SPAN_DAYS) * (
        COLD_FACTOR if air_temperature < WARM_ENOUGH else 1
    )


@BOOK.quantity(
    symbol="M_v",
    unit="delta_degC*hour",
    places=0,
    low=120,
    high=27000,
    source=published("pages on ASTM C1074: (temperature - datum) x hours; the datum of 0 degrees from the worked one"),
)
def maturity(concrete_temperature: float, mortar_age: float) -> float:
    """Warmth that mortar of one steady temperature has gathered. It compares ages; it never shortens wet curing.

    Args:
        concrete_temperature: temperature of the mortar [delta_degC], 5 to 40.
        mortar_age: age of the mortar [day], 1 to 28.

    Returns:
        Degree hours [delta_degC*hour], 120 to 27000.

    Raises:
        OutOfRangeError: a given outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(maturity(concrete_temperature=20, mortar_age=7), 0)
        '3360'
    """
    return (concrete_temperature - DATUM) * mortar_age * HOURS_IN_DAY


@BOOK.quantity(
    symbol="W_vb", unit="L", places=0, low=200, high=118000, source=derived("mixing, curing and one filling to test")
)
def build_water(mixing_water: float, curing_water: float, tank_litres: float) -> float:
    """Water that the build needs: to mix the wall's mortar, to cure, and to fill the tank once for the leak test.

    Washing tools and hands, rinsing fills and drinking come on top.

    Args:
        mixing_water: water for mixing [L], 2 to 2500.
        curing_water: water for all days of curing [L], 100 to 65000.
        tank_litres: water in the full tank [L], 100 to 50000.

    Returns:
        Water [L], 200 to 118000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> build_water(mixing_water=230, curing_water=5880, tank_litres=9300)
        15410
    """
    return mixing_water + curing_water + tank_litres


@BOOK.misconception(of="evaporation_rate")
def humidity_turned_round(
    concrete_temperature: float, air_temperature: float, humidity: float, wind_speed: float
) -> float:
    """Damp air was taken for dry air."""
    warmth_of_mortar = concrete_temperature + UNO_SHIFT
    warmth_of_air = air_temperature + UNO_SHIFT
    damp_of_mortar = warmth_of_mortar * warmth_of_mortar * sqrt(warmth_of_mortar)
    damp_of_air = (1 - humidity / PERCENT) * warmth_of_air * warmth_of_air * sqrt(warmth_of_air)
    return max(NO_EVAPORATION, UNO_FACTOR * (damp_of_mortar - damp_of_air) * (wind_speed + UNO_WIND))


@BOOK.misconception(of="evaporation_rate")
def fahrenheit_put_in_for_celsius(
    concrete_temperature: float, air_temperature: float, humidity: float, wind_speed: float
) -> float:
    """Degrees Fahrenheit were put in where degrees Celsius belong."""
    warmth_of_mortar = concrete_temperature * FAHRENHEIT_STEP + FAHRENHEIT_START + UNO_SHIFT
    warmth_of_air = air_temperature * FAHRENHEIT_STEP + FAHRENHEIT_START + UNO_SHIFT
    damp_of_mortar = warmth_of_mortar * warmth_of_mortar * sqrt(warmth_of_mortar)
    damp_of_air = humidity / PERCENT * warmth_of_air * warmth_of_air * sqrt(warmth_of_air)
    return max(NO_EVAPORATION, UNO_FACTOR * (damp_of_mortar - damp_of_air) * (wind_speed + UNO_WIND))


@BOOK.misconception(of="evaporation_rate")
def wind_left_out(concrete_temperature: float, air_temperature: float, humidity: float) -> float:
    """Heat was watched, and the wind was not."""
    warmth_of_mortar = concrete_temperature + UNO_SHIFT
    warmth_of_air = air_temperature + UNO_SHIFT
    damp_of_mortar = warmth_of_mortar * warmth_of_mortar * sqrt(warmth_of_mortar)
    damp_of_air = humidity / PERCENT * warmth_of_air * warmth_of_air * sqrt(warmth_of_air)
    return max(NO_EVAPORATION, UNO_FACTOR * (damp_of_mortar - damp_of_air) * UNO_WIND)


@BOOK.misconception(of="curing_area")
def only_the_outer_face_wetted(plaster_area_outside: float) -> float:
    """Only the face that everyone sees was counted."""
    return plaster_area_outside


@BOOK.misconception(of="curing_water_daily")
def sprinkled_once_a_day(curing_area: float) -> float:
    """One sprinkling a day was planned; it is dry again within hours."""
    return curing_area * ONE_SPRINKLING


@BOOK.misconception(of="curing_cans")
def cans_rounded_down(curing_water_daily: float, can_litres: float) -> float:
    """The last can was left at the spring, since it was not full."""
    return whole_down(curing_water_daily * ONE_DAY / can_litres)


@BOOK.misconception(of="curing_days")
def house_curing_for_a_tank(blended_cement: float, hot_dry: float) -> float:
    """The printed least days of house concrete were taken for a tank."""
    reasons = blended_cement + hot_dry
    return PLAIN_DAYS if reasons < 1 else HARDER_DAYS if reasons < 2 else HARDEST_DAYS


@BOOK.misconception(of="curing_days")
def days_counted_from_first_coat(curing_days: float) -> float:
    """Days were counted from the first coat; the last coat got fewer."""
    return curing_days - COATING_DAYS


@BOOK.misconception(of="curing_water")
def water_for_one_week_only(curing_water_daily: float) -> float:
    """Water was carried for one week."""
    return curing_water_daily * WEEK


@BOOK.misconception(of="prop_days")
def props_taken_with_the_boards(air_temperature: float) -> float:
    """Props were taken out with the boards."""
    return SOFFIT_DAYS * (COLD_FACTOR if air_temperature < WARM_ENOUGH else 1)


@BOOK.misconception(of="prop_days")
def cold_days_counted_as_warm(propped_span: float) -> float:
    """Cold days were counted like warm ones."""
    return SHORT_SPAN_DAYS if propped_span <= SHORT_SPAN else LONG_SPAN_DAYS


@BOOK.misconception(of="prop_days")
def cold_days_added_by_half(propped_span: float, air_temperature: float) -> float:
    """Days that count half were made up by half as many more; it takes as many again."""
    days = SHORT_SPAN_DAYS if propped_span <= SHORT_SPAN else LONG_SPAN_DAYS
    return whole_up(days * 1.5) if air_temperature < WARM_ENOUGH else days


@BOOK.misconception(of="maturity")
def warmth_in_fahrenheit(concrete_temperature: float, mortar_age: float) -> float:
    """The thermometer was read on its Fahrenheit side."""
    return (concrete_temperature * FAHRENHEIT_STEP + FAHRENHEIT_START - DATUM) * mortar_age * HOURS_IN_DAY


@BOOK.misconception(of="maturity")
def degrees_times_days(concrete_temperature: float, mortar_age: float) -> float:
    """Degrees were multiplied by days, and a day has twenty-four hours."""
    return (concrete_temperature - DATUM) * mortar_age * HOUR_FOR_DAY


@BOOK.misconception(of="build_water")
def only_mixing_water_planned(mixing_water: float) -> float:
    """Only the water in the mortar was planned."""
    return mixing_water
