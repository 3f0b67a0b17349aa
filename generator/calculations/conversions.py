"""Feet and inches, as shops and old tapes still have them, to metres.

A length of 5 feet 6 inches is 5.5 feet and never 5.6: ask for feet and inches apart.
"""

from generator.calculations._book import BOOK
from generator.formula import Constant, common_practice, derived, published, whole_down

METRES_IN_INCH = Constant(0.0254, "m/inch", published("Hindi workshop tables of measures: 1 inch = 25.4 mm"))
METRES_IN_FOOT = Constant(0.3048, "m/foot", published("Hindi workshop tables of measures: 1 foot = 304.8 mm"))
INCHES_IN_METRE_READ_WRONG = Constant(0.01, "m/inch", derived("an inch taken for a centimetre"))
TWO_CENTIMETRES_FOR_AN_INCH = Constant(0.02, "m/inch", derived("an inch taken for two centimetres"))
FEET_IN_METRE_READ_WRONG = Constant(3, "foot/m", derived("a metre taken for three feet"))
FOOT_READ_WRONG = Constant(0.1, "m/foot", derived("a foot taken for ten centimetres"))
INCHES_IN_FOOT = Constant(12, "inch/foot", derived("1 foot is 12 inches"))
TWO_FIGURES_FROM = Constant(9.5, "inch", derived("10 and 11 inches are written with two figures"))
TENTHS = Constant(10, "inch/foot", derived("what one figure after the point is worth"))
HUNDREDTHS = Constant(100, "inch/foot", derived("what two figures after the point are worth"))

BOOK.given(
    "length_in_inches",
    symbol="x_in",
    unit="inch",
    low=0.25,
    high=120,
    step=0.25,
    source=common_practice("pipe sizes and short lengths on an inch tape"),
)
BOOK.given(
    "length_in_feet",
    symbol="x_ft",
    unit="foot",
    low=0.25,
    high=40,
    step=0.25,
    source=common_practice("openings and heights on a foot tape"),
)


@BOOK.quantity(symbol="L_in", unit="m", places=3, low=0.005, high=3.1, source=derived("1 inch is 25.4 mm"))
def metres_from_inches(length_in_inches: float) -> float:
    """A length in inches as metres.

    Args:
        length_in_inches: length on the inch tape [inch], 0.25 to 120.

    Returns:
        The same length [m], 0.005 to 3.1.

    Raises:
        OutOfRangeError: the length is outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(metres_from_inches(length_in_inches=10), 3)
        '0.254'
    """
    return length_in_inches * METRES_IN_INCH


@BOOK.quantity(symbol="L_ft", unit="m", places=3, low=0.05, high=12.5, source=derived("1 foot is 304.8 mm"))
def metres_from_feet(length_in_feet: float) -> float:
    """A length in feet as metres.

    Args:
        length_in_feet: length on the foot tape [foot], 0.25 to 40; half a foot is 6 inches.

    Returns:
        The same length [m], 0.05 to 12.5.

    Raises:
        OutOfRangeError: the length is outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(metres_from_feet(length_in_feet=5.5), 3)
        '1.676'
    """
    return length_in_feet * METRES_IN_FOOT


@BOOK.misconception(of="metres_from_inches")
def inch_taken_for_centimetre(length_in_inches: float) -> float:
    """The inch marks of the tape were read as centimetres."""
    return length_in_inches * INCHES_IN_METRE_READ_WRONG


@BOOK.misconception(of="metres_from_inches")
def two_centimetres_taken_for_an_inch(length_in_inches: float) -> float:
    """Each inch was counted as two centimetres."""
    return length_in_inches * TWO_CENTIMETRES_FOR_AN_INCH


@BOOK.misconception(of="metres_from_feet")
def foot_taken_for_a_third_of_a_metre(length_in_feet: float) -> float:
    """Three feet were taken for a metre."""
    return length_in_feet / FEET_IN_METRE_READ_WRONG


@BOOK.misconception(of="metres_from_feet")
def foot_taken_for_ten_centimetres(length_in_feet: float) -> float:
    """The feet were moved one decimal place, as if they were decimetres."""
    return length_in_feet * FOOT_READ_WRONG


@BOOK.misconception(of="length_in_feet")
def inches_written_as_decimal_feet(length_in_feet: float) -> float:
    """5 feet 6 inches was written 5.6, and 5 feet 10 inches was written 5.10."""
    feet = whole_down(length_in_feet)
    inches = (length_in_feet - feet) * INCHES_IN_FOOT
    return feet + (inches / TENTHS if inches < TWO_FIGURES_FROM else inches / HUNDREDTHS)
