"""Units that meet on a building site: metres, millimetres, inches, feet and litres."""

from generator.calculations._book import BOOK
from generator.formula import Constant, derived, published, whole_down

MM_PER_M = Constant(1000, "mm/m", derived("definition of the millimetre"))
LITRES_PER_CUBIC_METRE = Constant(1000, "L/m**3", derived("definition of the litre: a cube of 0.1 m"))
WHOLE = Constant(100, "%", derived("definition of the percent sign"))
METRES_PER_INCH = Constant(0.0254, "m/inch", published("workshop tables of units: 1 inch = 25.4 mm"))
METRES_PER_FOOT = Constant(0.3048, "m/foot", published("workshop tables of units: 1 foot = 304.8 mm"))
ROUND_FOOT = Constant(0.3, "m/foot", derived("304.8 mm cut down to one figure: a mistake, never to be used"))
INCHES_PER_FOOT = Constant(12, "inch/foot", derived("definition of the foot"))
TWO_FIGURE_INCHES = Constant(9.5, "inch", derived("10 and 11 inches are written with two figures"))
ONE_FIGURE = Constant(10, "inch/foot", derived("what a first decimal would be worth"))
TWO_FIGURES = Constant(100, "inch/foot", derived("what two decimals would be worth"))

BOOK.given(
    "length_in_inches", symbol="L_in", unit="inch", low=0.25, high=120, step=0.25,
    source=derived("what a tape of 3 m can show"),
)  # fmt: skip
BOOK.given(
    "length_in_feet", symbol="L_ft", unit="foot", low=0.5, high=30, step=0.25,
    source=derived("every part of a tank that this course builds is shorter"),
)  # fmt: skip


@BOOK.quantity(symbol="L_mi", unit="m", places=3, low=0.005, high=3.1, source=derived("25.4 mm to the inch, exactly"))
def metres_from_inches(length_in_inches: float) -> float:
    """A length given in inches, in metres.

    Args:
        length_in_inches: the length [inch], 0.25 to 120.

    Returns:
        The same length [m], 0.005 to 3.1.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(metres_from_inches(length_in_inches=4), 3)
        '0.102'
    """
    return length_in_inches * METRES_PER_INCH


@BOOK.quantity(symbol="L_mf", unit="m", places=3, low=0.15, high=9.2, source=derived("304.8 mm to the foot, exactly"))
def metres_from_feet(length_in_feet: float) -> float:
    """A length given in feet and parts of a foot, in metres: 5 ft 6 in is 5.5 feet.

    Args:
        length_in_feet: the length, with parts of a foot as decimals [foot], 0.5 to 30.

    Returns:
        The same length [m], 0.15 to 9.2.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(metres_from_feet(length_in_feet=5.5), 3)
        '1.676'
    """
    return length_in_feet * METRES_PER_FOOT


@BOOK.misconception(of="length_in_feet")
def inches_written_as_decimal_feet(length_in_feet: float) -> float:
    """5 ft 6 in is typed 5.6, and 5 ft 10 in is typed 5.10."""
    feet = whole_down(length_in_feet)
    inches = (length_in_feet - feet) * INCHES_PER_FOOT
    return feet + (inches / ONE_FIGURE if inches < TWO_FIGURE_INCHES else inches / TWO_FIGURES)


@BOOK.misconception(of="metres_from_feet")
def foot_taken_as_thirty_centimetres(length_in_feet: float) -> float:
    """A foot is 304.8 mm; 300 mm is handy and too short."""
    return length_in_feet * ROUND_FOOT
