"""Buying: how old a bag of cement is, what bars and mesh must weigh, how much sand a truck really brings.

What is bought is measured where it is handed over. Bars that are rolled thin look alike and weigh less; damp sand fills
a truck with air between its grains; a bag tells its age by the week that is printed on it.

Caution: a weight that agrees is no proof of good steel, and an age that agrees no proof of good cement. Bars that are
short in weight, and cement with lumps that a finger does not crush, go back to the shop.
"""

from math import sqrt

from generator.calculations._book import BOOK
from generator.calculations.hoops import BAR_MASS_DIVISOR, MILLIMETRES_IN_CENTIMETRE, THIN_BAR
from generator.calculations.labour import ONE_DAY
from generator.calculations.mortar import PERCENT
from generator.calculations.setting_out import MILLIMETRES_IN_METRE
from generator.formula import Constant, common_practice, derived

WEEKS_IN_YEAR = Constant(52, "", derived("whole weeks of a year; the few days more do not change an age that counts"))
DAYS_IN_WEEK = Constant(7, "", derived("days of a week"))
ONE_METRE = Constant(1, "m", derived("a misreading: any piece on the scale is taken for a metre"))
PERCENT_OF_KILOGRAM = Constant(1, "%/kg", derived("a misreading: kilograms taken for percent"))

BOOK.given(
    "printed_week",
    symbol="t_bp",
    unit="",
    low=1,
    high=52,
    step=1,
    source=common_practice("week of packing that is printed on the bag, beside the year"),
)
BOOK.given(
    "week_today",
    symbol="t_bh",
    unit="",
    low=1,
    high=52,
    step=1,
    source=common_practice("week of the year on the day when the bag is bought or opened"),
)
BOOK.given(
    "bars_bought",
    symbol="n_bb",
    unit="",
    low=1,
    high=200,
    step=1,
    source=common_practice("bars of one thickness in one purchase"),
)
BOOK.given(
    "weighed_steel",
    symbol="m_bw",
    unit="kg",
    low=1,
    high=5000,
    step=0.5,
    source=common_practice("what the scale says for all bars of one thickness"),
)
BOOK.given(
    "piece_mass",
    symbol="m_bp",
    unit="kg",
    low=0.1,
    high=3,
    step=0.01,
    source=common_practice("a short cut piece of bar on a kitchen scale"),
)
BOOK.given(
    "piece_length",
    symbol="L_bp",
    unit="m",
    low=0.5,
    high=2,
    step=0.05,
    source=common_practice("length of the cut piece that lies on the scale"),
)
BOOK.given(
    "bed_length",
    symbol="L_bt",
    unit="m",
    low=1.5,
    high=6,
    step=0.05,
    source=common_practice("length of the truck's or trailer's bed, measured inside"),
)
BOOK.given(
    "bed_width",
    symbol="w_bt",
    unit="m",
    low=1,
    high=2.5,
    step=0.05,
    source=common_practice("width of the truck's or trailer's bed, measured inside"),
)
BOOK.given(
    "sand_depth",
    symbol="h_bt",
    unit="mm",
    low=100,
    high=1200,
    step=10,
    source=common_practice("depth of the levelled sand: a rod pushed down at five places, the mean of them"),
)


@BOOK.quantity(
    symbol="t_ba", unit="day", places=0, low=0, high=357, source=derived("weeks from packing to today, seven days each")
)
def cement_age(week_today: float, printed_week: float) -> float:
    """Age of a bag that is less than a year old. A smaller week today than the printed one means: last year's bag.

    Caution: after about three months in a village store a bag is doubtful (usual practice). The finger decides: lumps
    that do not crush are set. An old bag is not used in a wall that holds water.

    Args:
        week_today: week of the year today [-], 1 to 52.
        printed_week: week of packing on the bag [-], 1 to 52.

    Returns:
        Age [day], 0 to 357.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> cement_age(week_today=5, printed_week=48)
        63.0
    """
    return (week_today - printed_week + (WEEKS_IN_YEAR if week_today < printed_week else 0)) * DAYS_IN_WEEK * ONE_DAY


@BOOK.quantity(
    symbol="M_bb", unit="kg", places=1, low=0.3, high=3800, source=derived("bars x length x weight of a metre")
)
def bought_bar_mass(bars_bought: float, stock_length: float, bar_mass_per_metre: float) -> float:
    """What the bought bars must weigh, by the printed weight of a metre.

    Args:
        bars_bought: bars of one thickness [-], 1 to 200.
        stock_length: length of a bar as sold [m], 4 to 12.
        bar_mass_per_metre: weight of a metre [kg/m], 0.09 to 1.6.

    Returns:
        Mass [kg], 0.3 to 3800.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(bought_bar_mass(bars_bought=25, stock_length=12, bar_mass_per_metre=0.395), 1)
        '118.5'
    """
    return bars_bought * stock_length * bar_mass_per_metre


@BOOK.quantity(
    symbol="S_bw", unit="%", places=1, low=0, high=100, source=derived("missing weight / weight that must be there")
)
def weight_missing(bought_bar_mass: float, weighed_steel: float) -> float:
    """How much of the bars' weight is missing; nothing where the scale says as much or more.

    Caution: a bar that is short in weight is thinner than its name, and a thin hoop opens. Send it back: no spacing on
    the drawing fits it.

    Args:
        bought_bar_mass: what the bars must weigh [kg], 0.3 to 3800.
        weighed_steel: what the scale says [kg], 1 to 5000.

    Returns:
        Missing share [%], 0 to 100.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(weight_missing(bought_bar_mass=118.5, weighed_steel=101), 1)
        '14.8'
    """
    return PERCENT * max(0, bought_bar_mass - weighed_steel) / bought_bar_mass


@BOOK.quantity(
    symbol="d_bp",
    unit="mm",
    places=1,
    low=2,
    high=32,
    source=derived("weight of a metre = d x d / 162, turned round"),
)
def piece_bar_diameter(piece_mass: float, piece_length: float) -> float:
    """How thick a bar really is, found from the weight of a piece. It needs no caliper, and ribs don't matter.

    Args:
        piece_mass: weight of the piece [kg], 0.1 to 3.
        piece_length: length of the piece [m], 0.5 to 2.

    Returns:
        Thickness [mm], 2 to 32.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(piece_bar_diameter(piece_mass=0.64, piece_length=2), 1)
        '7.2'
    """
    return sqrt(BAR_MASS_DIVISOR * piece_mass / piece_length)


@BOOK.quantity(
    symbol="M_bm", unit="kg", places=1, low=0.1, high=4200, source=derived("area of the roll x weight of its area")
)
def mesh_roll_mass(mesh_mass_per_area: float, mesh_roll_width: float, mesh_roll_length: float) -> float:
    """What one roll of square mesh must weigh.

    Args:
        mesh_mass_per_area: weight of a square metre [kg/m**2], 0.02 to 33.
        mesh_roll_width: width of the roll [m], 0.6 to 2.5.
        mesh_roll_length: length of the roll [m], 10 to 50.

    Returns:
        Mass [kg], 0.1 to 4200.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(mesh_roll_mass(mesh_mass_per_area=0.97, mesh_roll_width=0.9, mesh_roll_length=30), 1)
        '26.2'
    """
    return mesh_mass_per_area * mesh_roll_width * mesh_roll_length


@BOOK.quantity(symbol="V_bt", unit="m**3", places=2, low=0.15, high=18, source=derived("length x width x depth"))
def sand_delivered(bed_length: float, bed_width: float, sand_depth: float) -> float:
    """Sand in a truck, levelled off, as it lies there, damp or dry.

    Caution: nobody stands behind or below a truck that tips its load.

    Args:
        bed_length: length of the bed, inside [m], 1.5 to 6.
        bed_width: width of the bed, inside [m], 1 to 2.5.
        sand_depth: mean depth of the levelled sand [mm], 100 to 1200.

    Returns:
        Volume [m**3], 0.15 to 18.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(sand_delivered(bed_length=2.5, bed_width=1.6, sand_depth=400), 2)
        '1.60'
    """
    return bed_length * bed_width * sand_depth / MILLIMETRES_IN_METRE


@BOOK.quantity(
    symbol="V_bd", unit="m**3", places=2, low=0.08, high=18, source=derived("damp sand over one and its bulking")
)
def sand_delivered_true(sand_delivered: float, sand_bulking: float) -> float:
    """Dry sand that a load of damp sand is worth.

    Args:
        sand_delivered: damp sand in the truck [m**3], 0.15 to 18.
        sand_bulking: room that damp sand takes more than dry [%], 0 to 45.

    Returns:
        Volume [m**3], 0.08 to 18.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(sand_delivered_true(sand_delivered=1.6, sand_bulking=25), 2)
        '1.28'
    """
    return sand_delivered / (1 + sand_bulking / PERCENT)


@BOOK.misconception(of="cement_age")
def turn_of_the_year_forgotten(week_today: float, printed_week: float) -> float:
    """The smaller week was taken from the larger, as if both lay in one year."""
    return abs(week_today - printed_week) * DAYS_IN_WEEK * ONE_DAY


@BOOK.misconception(of="cement_age")
def weeks_taken_for_days(week_today: float, printed_week: float) -> float:
    """The weeks were counted rightly and then called days."""
    return (week_today - printed_week + (WEEKS_IN_YEAR if week_today < printed_week else 0)) * ONE_DAY


@BOOK.misconception(of="bar_mass_per_metre")
def upright_twice_as_thick_twice_as_heavy(bar_diameter: float) -> float:
    """The weight was thought to grow like the thickness: a bar of 6 mm was known, the others scaled from it."""
    return THIN_BAR * bar_diameter / BAR_MASS_DIVISOR


@BOOK.misconception(of="bought_bar_mass")
def bars_weighed_as_one_metre_each(bars_bought: float, bar_mass_per_metre: float) -> float:
    """The weight of a metre was taken for the weight of a bar."""
    return bars_bought * bar_mass_per_metre * ONE_METRE


@BOOK.misconception(of="weight_missing")
def missing_share_of_the_scale(bought_bar_mass: float, weighed_steel: float) -> float:
    """The missing weight was held against what the scale said, and not against what must be there."""
    return PERCENT * max(0, bought_bar_mass - weighed_steel) / weighed_steel


@BOOK.misconception(of="weight_missing")
def kilograms_missing_read_as_percent(bought_bar_mass: float, weighed_steel: float) -> float:
    """The missing kilograms were called percent."""
    return max(0, bought_bar_mass - weighed_steel) * PERCENT_OF_KILOGRAM


@BOOK.misconception(of="piece_bar_diameter")
def piece_taken_for_a_metre(piece_mass: float) -> float:
    """The piece was weighed, but its length was left out."""
    return sqrt(BAR_MASS_DIVISOR * piece_mass / ONE_METRE)


@BOOK.misconception(of="piece_bar_diameter")
def piece_weight_grows_like_thickness(piece_mass: float, piece_length: float) -> float:
    """The thickness was scaled from a bar of 6 mm as if weight grew like thickness."""
    return BAR_MASS_DIVISOR * piece_mass / piece_length / THIN_BAR


@BOOK.misconception(of="mesh_roll_mass")
def roll_width_left_out(mesh_mass_per_area: float, mesh_roll_length: float) -> float:
    """A metre of the roll was taken for a square metre."""
    return mesh_mass_per_area * mesh_roll_length * ONE_METRE


@BOOK.misconception(of="sand_delivered")
def sand_depth_in_centimetres(bed_length: float, bed_width: float, sand_depth: float) -> float:
    """The millimetres of the rod were read as centimetres."""
    return bed_length * bed_width * sand_depth / MILLIMETRES_IN_METRE * MILLIMETRES_IN_CENTIMETRE


@BOOK.misconception(of="sand_delivered_true")
def damp_truck_paid_as_dry(sand_delivered: float) -> float:
    """The damp sand was taken for as much dry sand."""
    return sand_delivered


@BOOK.misconception(of="sand_delivered_true")
def bulking_taken_off_the_truck(sand_delivered: float, sand_bulking: float) -> float:
    """The percent were taken off the damp sand; they belong to the dry sand."""
    return sand_delivered * (1 - sand_bulking / PERCENT)
