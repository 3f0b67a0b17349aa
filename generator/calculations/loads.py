"""Carrying: how heavy the material is, how many loads that makes, and how many days they take on the path.

A tank goes up the hill on backs. Sand is the most of it; water is forgotten most often. Loads are whole, and each is
weighed: take the mean of five. Where a car can come near, whole trips of the pickup come before the path.

Caution: nobody carries a bag of 50 kg alone. Two people share it, or it is poured over into smaller dry sacks. Children
carry nothing; a load that one must be helped up with is too heavy.

References:
    .. [1] Working-animal guidance (read at second hand): donkey up to 50 kg, pack mule at most a fifth of its body.
    .. [2] NIOSH lifting guide: ideal maximum 23 kg; United Kingdom regulator's filter of about 25 kg.
"""

from generator.calculations._book import BOOK
from generator.calculations.labour import ONE_DAY
from generator.calculations.mortar import BAG, WATER_DENSITY
from generator.formula import Constant, common_practice, derived, published, whole_down, whole_up

SAND_DENSITY = Constant(
    1600, "kg/m**3", published("site handbooks (second hand): loose sand 1450 to 1750 kg/m3, 1600 for planning loads")
)
SAND_AS_WATER = Constant(1000, "kg/m**3", derived("a misreading: sand taken to be as heavy as water"))
ONE_BAG = Constant(1, "bag", derived("bags are carried one by one"))

BOOK.given(
    "load_mass",
    symbol="m_el",
    unit="kg",
    low=10,
    high=200,
    step=1,
    source=common_practice("10 to 30 kg on a back, a donkey up to 50, a mule up to 80 or 90; 200 kg only on wheels"),
)
BOOK.given(
    "trips_per_day",
    symbol="n_et",
    unit="",
    low=1,
    high=20,
    step=1,
    source=common_practice("walks up with a load and back in a day, rests counted: walk it once with a watch"),
)
BOOK.given(
    "carriers",
    symbol="n_ec",
    unit="",
    low=1,
    high=60,
    step=1,
    source=common_practice("people or animals that carry on the same day"),
)
BOOK.given(
    "carried_water",
    symbol="V_ew",
    unit="L",
    low=0,
    high=20000,
    step=10,
    source=common_practice("water that must be carried for mixing, curing and the crew; 0 where it runs to the site"),
)
BOOK.given(
    "carry_mass",
    symbol="m_ec",
    unit="kg",
    low=0,
    high=60000,
    step=5,
    source=common_practice("everything else that goes up: stone, bars, mesh, boards, pipes, tools"),
)
BOOK.given(
    "pickup_load",
    symbol="m_ep",
    unit="kg",
    low=300,
    high=9000,
    step=50,
    source=common_practice("what the vehicle's papers allow, less on a bad track"),
)


@BOOK.quantity(
    symbol="M_es",
    unit="kg",
    places=0,
    low=10,
    high=15200,
    source=derived("damp sand by volume, 1600 kg for a cubic metre"),
)
def sand_mass(sand_volume_damp: float) -> float:
    """Weight of the sand for the mortar. Print has 1450 to 1750 kg for a cubic metre: weigh a full box of yours.

    Args:
        sand_volume_damp: damp sand for the mortar [m**3], 0.01 to 9.5.

    Returns:
        Mass [kg], 10 to 15200.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(sand_mass(sand_volume_damp=1.3), 0)
        '2080'
    """
    return sand_volume_damp * SAND_DENSITY


@BOOK.quantity(symbol="M_eb", unit="kg", places=0, low=50, high=5000, source=derived("whole bags of 50 kg"))
def bought_cement_mass(cement_bags: float) -> float:
    """Weight of the cement that is carried: whole bags, also the one that is only begun.

    Args:
        cement_bags: bags of cement [bag], 1 to 100.

    Returns:
        Mass [kg], 50 to 5000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(bought_cement_mass(cement_bags=17), 0)
        '850'
    """
    return cement_bags * BAG


@BOOK.quantity(
    symbol="M_em", unit="kg", places=0, low=60, high=101000, source=derived("sum of all that goes up to the site")
)
def material_mass(bought_cement_mass: float, sand_mass: float, carried_water: float, carry_mass: float) -> float:
    """Weight of everything that goes up to the site.

    Args:
        bought_cement_mass: cement, in whole bags [kg], 50 to 5000.
        sand_mass: sand for the mortar [kg], 10 to 15200.
        carried_water: water that must be carried [L], 0 to 20000.
        carry_mass: everything else that goes up [kg], 0 to 60000.

    Returns:
        Mass [kg], 60 to 101000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(material_mass(bought_cement_mass=850, sand_mass=2080, carried_water=600, carry_mass=3050), 0)
        '6580'
    """
    return bought_cement_mass + sand_mass + carried_water * WATER_DENSITY + carry_mass


@BOOK.quantity(
    symbol="n_el",
    unit="",
    places=0,
    low=1,
    high=10100,
    source=derived("weight over a load, the last load counted whole"),
)
def load_count(material_mass: float, load_mass: float) -> float:
    """Loads for everything together. Materials do not share a sack, so a few loads more come on top.

    Args:
        material_mass: weight of everything [kg], 60 to 101000.
        load_mass: weight of one load [kg], 10 to 200.

    Returns:
        Number of loads [-], 1 to 10100.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> load_count(material_mass=6580, load_mass=28)
        235.0
    """
    return whole_up(material_mass / load_mass)


@BOOK.quantity(
    symbol="n_ed", unit="", places=0, low=1, high=1200, source=derived("every carrier walks each trip with one load")
)
def loads_per_day(carriers: float, trips_per_day: float) -> float:
    """Loads that come up in a day.

    Args:
        carriers: people or animals that carry [-], 1 to 60.
        trips_per_day: walks up and back in a day [-], 1 to 20.

    Returns:
        Number of loads [-], 1 to 1200.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> loads_per_day(carriers=8, trips_per_day=3)
        24
    """
    return carriers * trips_per_day


@BOOK.quantity(
    symbol="d_el", unit="day", places=0, low=1, high=10100, source=derived("loads over loads of a day, whole days")
)
def carrying_days(load_count: float, loads_per_day: float) -> float:
    """Days of carrying, whole days.

    Args:
        load_count: loads for everything [-], 1 to 10100.
        loads_per_day: loads that come up in a day [-], 1 to 1200.

    Returns:
        Whole days [day], 1 to 10100.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> carrying_days(load_count=235, loads_per_day=24)
        10.0
    """
    return whole_up(load_count / loads_per_day) * ONE_DAY


@BOOK.quantity(
    symbol="n_ep", unit="", places=0, low=1, high=337, source=derived("weight over what a vehicle takes, whole trips")
)
def pickup_trips(material_mass: float, pickup_load: float) -> float:
    """Trips of a vehicle to the road head.

    Caution: an overloaded vehicle on a hill track goes over the edge; nobody rides on the load.

    Args:
        material_mass: weight of everything [kg], 60 to 101000.
        pickup_load: what the vehicle may take [kg], 300 to 9000.

    Returns:
        Number of trips [-], 1 to 337.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> pickup_trips(material_mass=6580, pickup_load=900)
        8.0
    """
    return whole_up(material_mass / pickup_load)


@BOOK.quantity(
    symbol="n_eb", unit="", places=0, low=1, high=5, source=derived("a bag in equal parts, none above the load")
)
def bag_parts(load_mass: float) -> float:
    """Parts into which a bag is split, so that no part is above the load; or people who bear it together.

    Args:
        load_mass: weight of one load [kg], 10 to 200.

    Returns:
        Number of parts [-], 1 to 5.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> bag_parts(load_mass=28), bag_parts(load_mass=64)
        (2.0, 1.0)
    """
    return whole_up(BAG * ONE_BAG / load_mass)


@BOOK.quantity(
    symbol="n_ek", unit="", places=0, low=1, high=500, source=derived("whole bags on a load, or a bag in equal parts")
)
def cement_loads(cement_bags: float, load_mass: float, bag_parts: float) -> float:
    """Loads of cement: as many whole bags as a load takes; where it takes none, the parts of every bag.

    Args:
        cement_bags: bags of cement [bag], 1 to 100.
        load_mass: weight of one load [kg], 10 to 200.
        bag_parts: parts of a bag [-], 1 to 5.

    Returns:
        Number of loads [-], 1 to 500.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> cement_loads(cement_bags=17, load_mass=28, bag_parts=2)
        34.0
    """
    return (
        whole_up(cement_bags / ONE_BAG / max(1, whole_down(load_mass / BAG / ONE_BAG)))
        if bag_parts == 1
        else cement_bags / ONE_BAG * bag_parts
    )


@BOOK.quantity(
    symbol="d_er", unit="day", places=0, low=1, high=10100, source=derived("carriers walk while the crew digs")
)
def site_ready_day(digging_duration: float, carrying_days: float) -> float:
    """Day on whose evening the pit is dug and everything is up: the longer of the two, for they go on side by side.

    Args:
        digging_duration: days of digging with the crew [day], 0 to 80.
        carrying_days: days of carrying, by other people [day], 1 to 10100.

    Returns:
        Whole days [day], 1 to 10100.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> site_ready_day(digging_duration=2, carrying_days=10)
        10
    """
    return max(digging_duration, carrying_days)


@BOOK.misconception(of="material_mass")
def water_not_carried(bought_cement_mass: float, sand_mass: float, carry_mass: float) -> float:
    """The water was forgotten: nobody carries it in the head, everybody on the back."""
    return bought_cement_mass + sand_mass + carry_mass


@BOOK.misconception(of="material_mass")
def only_cement_carried(bought_cement_mass: float, carried_water: float, carry_mass: float) -> float:
    """The sand was thought to lie at the site."""
    return bought_cement_mass + carried_water * WATER_DENSITY + carry_mass


@BOOK.misconception(of="sand_mass")
def sand_as_light_as_water(sand_volume_damp: float) -> float:
    """A cubic metre of sand was taken for a tonne, as if it were water."""
    return sand_volume_damp * SAND_AS_WATER


@BOOK.misconception(of="bought_cement_mass")
def bag_taken_for_quintal(cement_bags: float) -> float:
    """A bag was taken for a quintal, twice its weight."""
    return cement_bags * BAG * 2


@BOOK.misconception(of="load_count")
def loads_rounded_down(material_mass: float, load_mass: float) -> float:
    """The last load was left at the road, for it was not a full one."""
    return whole_down(material_mass / load_mass)


@BOOK.misconception(of="loads_per_day")
def one_trip_counted(carriers: float) -> float:
    """One walk a day was counted, whatever the path."""
    return carriers


@BOOK.misconception(of="carrying_days")
def one_carrier_does_it_all(load_count: float, trips_per_day: float) -> float:
    """The loads were shared by the trips of one carrier."""
    return whole_up(load_count / trips_per_day) * ONE_DAY


@BOOK.misconception(of="pickup_trips")
def trips_rounded_down(material_mass: float, pickup_load: float) -> float:
    """The last trip was left out, for it was not a full one."""
    return whole_down(material_mass / pickup_load)


@BOOK.misconception(of="bag_parts")
def rest_of_the_bag_on_top(load_mass: float) -> float:
    """What was left of the bag was put on top of a full load."""
    return max(1, whole_down(BAG * ONE_BAG / load_mass))


@BOOK.misconception(of="cement_loads")
def one_man_one_bag(cement_bags: float) -> float:
    """Every bag was given to one back, whatever a back may bear."""
    return cement_bags / ONE_BAG


@BOOK.misconception(of="cement_loads")
def bags_mixed_by_weight(cement_bags: float, load_mass: float) -> float:
    """The cement was shared out by weight, as if bags could be cut anywhere."""
    return whole_up(cement_bags * BAG / load_mass)


@BOOK.misconception(of="site_ready_day")
def days_added_not_side_by_side(digging_duration: float, carrying_days: float) -> float:
    """Digging and carrying were put one after the other."""
    return digging_duration + carrying_days
