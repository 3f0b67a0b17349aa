"""Money: what the tank costs in the shop's and the crew's own prices, for a cubic metre, a litre and a year.

Every price is the learner's own: ask three shops, write the date. A tank is compared by what a cubic metre of water
costs in a year of its life, with carrying, work and upkeep, and never by the price on a sticker. Examples count in
coins, a made-up money. Steel, mortar or curing are never made less to save money: a burst tank is the dearest of all.
"""

from generator.calculations._book import BOOK
from generator.calculations.mortar import BAG
from generator.formula import Constant, common_practice, derived

KILOGRAMS_IN_A_BAG = Constant(50, "", derived("a misreading: 50 kg, each at the price of a bag"))
ONE_YEAR = Constant(1, "year", derived("a life left out"))
LITRES = Constant(1000, "L/m**3", derived("1 m3 is 1000 L"))

_OWN = "the user's own price; ask three shops and write the date: "
BOOK.given(
    "bag_price",
    symbol="P_wb",
    unit="coin/bag",
    low=1,
    high=5000,
    step=0.5,
    source=common_practice(_OWN + "a bag of 50 kg"),
)
BOOK.given(
    "mason_wage",
    symbol="P_wm",
    unit="coin/day",
    low=1,
    high=10000,
    step=0.5,
    source=common_practice(_OWN + "a mason's day, food counted in"),
)
BOOK.given(
    "labourer_wage",
    symbol="P_wl",
    unit="coin/day",
    low=1,
    high=10000,
    step=0.5,
    source=common_practice(_OWN + "a labourer's day; unpaid work of neighbours has its price too"),
)
BOOK.given(
    "load_price",
    symbol="P_we",
    unit="coin",
    low=0,
    high=2000,
    step=0.1,
    source=common_practice(_OWN + "one load up the path; 0 where the village carries"),
)
BOOK.given(
    "other_cost",
    symbol="P_wo",
    unit="coin",
    low=0,
    high=5000000,
    step=1,
    source=common_practice(_OWN + "sand, stone, bars, mesh, wire, pipes, boards, tools"),
)
BOOK.given(
    "tank_life",
    symbol="d_wy",
    unit="year",
    low=1,
    high=80,
    step=1,
    source=common_practice("years that the tank is expected to serve: the user's own guess; try a shorter one too"),
)
BOOK.given(
    "yearly_upkeep",
    symbol="P_wu",
    unit="coin/year",
    low=0,
    high=500000,
    step=0.5,
    source=common_practice(_OWN + "patching, wash, taps and cleaning in a year"),
)


@BOOK.quantity(
    symbol="K_wc", unit="coin", places=1, low=1, high=500000, source=derived("whole bags times the price of a bag")
)
def cost_of_cement(cement_bags: float, bag_price: float) -> float:
    """Money for the cement of the mortar: whole bags.

    Args:
        cement_bags: bags of cement [bag], 1 to 100.
        bag_price: price of a bag [coin/bag], 1 to 5000.

    Returns:
        Money [coin], 1 to 500000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(cost_of_cement(cement_bags=17, bag_price=8.5), 1)
        '144.5'
    """
    return cement_bags * bag_price


@BOOK.quantity(
    symbol="K_ww",
    unit="coin",
    places=1,
    low=0,
    high=7600000,
    source=derived("days here times the wages, each kind apart"),
)
def cost_of_wages(
    mason_days: float, labourer_days: float, short_day_factor: float, mason_wage: float, labourer_wage: float
) -> float:
    """Money for wages from the digging to the plaster. Short days are paid as days.

    Args:
        mason_days: person-days of those who know a trade [day], 0 to 95.
        labourer_days: person-days of labourers [day], 0 to 280.
        short_day_factor: days here for one printed day [-], 0.8 to 2.
        mason_wage: a mason's day [coin/day], 1 to 10000.
        labourer_wage: a labourer's day [coin/day], 1 to 10000.

    Returns:
        Money [coin], 0 to 7600000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> cost = cost_of_wages(
        ...     mason_days=8, labourer_days=21, short_day_factor=1.25, mason_wage=12, labourer_wage=7
        ... )
        >>> show(cost, 1)
        '303.8'
    """
    return (mason_days * mason_wage + labourer_days * labourer_wage) * short_day_factor


@BOOK.quantity(
    symbol="K_we", unit="coin", places=1, low=0, high=21000000, source=derived("whole loads times the price of a load")
)
def cost_of_carrying(load_count: float, load_price: float) -> float:
    """Money for carrying everything up.

    Args:
        load_count: loads for everything [-], 1 to 10100.
        load_price: price of one load [coin], 0 to 2000.

    Returns:
        Money [coin], 0 to 21000000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(cost_of_carrying(load_count=235, load_price=0.4), 1)
        '94.0'
    """
    return load_count * load_price


@BOOK.quantity(symbol="K_wt", unit="coin", places=1, low=1, high=34000000, source=derived("sum of all that is paid"))
def cost_of_tank(cost_of_cement: float, cost_of_wages: float, cost_of_carrying: float, other_cost: float) -> float:
    """Money for the whole tank.

    Args:
        cost_of_cement: cement for the mortar [coin], 1 to 500000.
        cost_of_wages: wages [coin], 0 to 7600000.
        cost_of_carrying: carrying [coin], 0 to 21000000.
        other_cost: everything else that is bought [coin], 0 to 5000000.

    Returns:
        Money [coin], 1 to 34000000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> found = cost_of_tank(cost_of_cement=144.5, cost_of_wages=303.8, cost_of_carrying=94, other_cost=410)
        >>> show(found, 1)
        '952.3'
    """
    return cost_of_cement + cost_of_wages + cost_of_carrying + other_cost


@BOOK.quantity(
    symbol="K_wv", unit="coin/m**3", places=1, low=0.01, high=350000000, source=derived("money over the water it holds")
)
def cost_per_cubic_metre(cost_of_tank: float, tank_volume: float) -> float:
    """Money for each cubic metre of water that the full tank holds.

    Args:
        cost_of_tank: money for the whole tank [coin], 1 to 34000000.
        tank_volume: water in the full tank [m**3], 0.1 to 50.

    Returns:
        Money for a cubic metre [coin/m**3], 0.01 to 350000000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(cost_per_cubic_metre(cost_of_tank=952.3, tank_volume=8.4), 1)
        '113.4'
    """
    return cost_of_tank / tank_volume


@BOOK.quantity(
    symbol="K_wl",
    unit="coin/L",
    places=3,
    low=0.00001,
    high=340000,
    source=derived("1 m3 is 1000 L: a thousandth of it"),
)
def cost_per_litre(cost_per_cubic_metre: float) -> float:
    """Money for each litre that the full tank holds.

    Args:
        cost_per_cubic_metre: money for a cubic metre [coin/m**3], 0.01 to 350000000.

    Returns:
        Money for a litre [coin/L], 0.00001 to 340000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(cost_per_litre(cost_per_cubic_metre=113.4), 3)
        '0.113'
    """
    return cost_per_cubic_metre / LITRES


@BOOK.quantity(
    symbol="K_wy",
    unit="coin/year",
    places=1,
    low=0.01,
    high=35000000,
    source=derived("money over its life, and upkeep"),
)
def cost_per_year(cost_of_tank: float, tank_life: float, yearly_upkeep: float) -> float:
    """Money for each year of the tank's life; interest is not counted.

    Args:
        cost_of_tank: money for the whole tank [coin], 1 to 34000000.
        tank_life: years that it serves [year], 1 to 80.
        yearly_upkeep: upkeep in a year [coin/year], 0 to 500000.

    Returns:
        Money for a year [coin/year], 0.01 to 35000000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(cost_per_year(cost_of_tank=952.3, tank_life=25, yearly_upkeep=6), 1)
        '44.1'
    """
    return cost_of_tank / tank_life + yearly_upkeep


@BOOK.quantity(
    symbol="K_wm",
    unit="coin/m**3/year",
    places=2,
    low=0.0002,
    high=350000000,
    source=derived("money of a year over the water it holds"),
)
def cost_per_cubic_metre_year(cost_per_year: float, tank_volume: float) -> float:
    """What a cubic metre costs in a year: the number by which kinds of tank are compared.

    Args:
        cost_per_year: money for a year [coin/year], 0.01 to 35000000.
        tank_volume: water in the full tank [m**3], 0.1 to 50.

    Returns:
        Money for a cubic metre and a year [coin/m**3/year], 0.0002 to 350000000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(cost_per_cubic_metre_year(cost_per_year=44.1, tank_volume=8.4), 2)
        '5.25'
    """
    return cost_per_year / tank_volume


@BOOK.misconception(of="cost_of_cement")
def bag_price_as_kilogram_price(cement_bags: float, bag_price: float) -> float:
    """The price of a bag was taken for the price of a kilogram."""
    return cement_bags * bag_price * KILOGRAMS_IN_A_BAG


@BOOK.misconception(of="cost_of_cement")
def cement_paid_by_the_kilogram(cement_mass: float, bag_price: float) -> float:
    """Parts of a bag were priced; the shop sells whole ones."""
    return cement_mass / BAG * bag_price


@BOOK.misconception(of="cost_of_wages")
def short_days_not_paid(mason_days: float, labourer_days: float, mason_wage: float, labourer_wage: float) -> float:
    """Print's days of eight hours were paid, though the crew comes for more days."""
    return mason_days * mason_wage + labourer_days * labourer_wage


@BOOK.misconception(of="cost_of_wages")
def all_paid_as_labourers(
    mason_days: float, labourer_days: float, short_day_factor: float, labourer_wage: float
) -> float:
    """The masons were reckoned with the wage of labourers."""
    return (mason_days + labourer_days) * labourer_wage * short_day_factor


@BOOK.misconception(of="cost_of_carrying")
def empty_walk_paid_too(load_count: float, load_price: float) -> float:
    """The walk down was paid as a second load."""
    return 2 * load_count * load_price


@BOOK.misconception(of="cost_of_tank")
def carrying_thought_free(cost_of_cement: float, cost_of_wages: float, other_cost: float) -> float:
    """The carrying was left out of the sum."""
    return cost_of_cement + cost_of_wages + other_cost


@BOOK.misconception(of="cost_of_tank")
def own_work_thought_free(cost_of_cement: float, cost_of_carrying: float, other_cost: float) -> float:
    """Work was left out of the sum, as if nobody's day had a price."""
    return cost_of_cement + cost_of_carrying + other_cost


@BOOK.misconception(of="cost_per_cubic_metre")
def shared_by_wanted_water(cost_of_tank: float, wanted_volume: float) -> float:
    """The cost was shared by the water that was wanted, and not by what the tank holds."""
    return cost_of_tank / wanted_volume


@BOOK.misconception(of="cost_per_litre")
def litres_as_hundredths(cost_per_cubic_metre: float) -> float:
    """A cubic metre was taken for a hundred litres."""
    return cost_per_cubic_metre / LITRES * 10


@BOOK.misconception(of="cost_per_year")
def upkeep_of_all_years_in_one(cost_of_tank: float, tank_life: float, yearly_upkeep: float) -> float:
    """The upkeep of all years was charged to one year."""
    return cost_of_tank / tank_life + yearly_upkeep * tank_life / ONE_YEAR


@BOOK.misconception(of="cost_per_year")
def upkeep_forgotten(cost_of_tank: float, tank_life: float) -> float:
    """Upkeep was left out, as if a tank needed none."""
    return cost_of_tank / tank_life


@BOOK.misconception(of="cost_per_cubic_metre_year")
def life_forgotten(cost_per_cubic_metre: float) -> float:
    """The price of a cubic metre was compared, whatever the tank's life."""
    return cost_per_cubic_metre / ONE_YEAR
