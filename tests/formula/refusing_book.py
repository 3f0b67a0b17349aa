"""An invented book of functions that have no value somewhere. No engineering is in it."""

from math import atan, cos, exp, log, sqrt, tan

from generator.formula import Book, derived, pick, whole_down, whole_up

INVENTED = derived("made up for the tests")
REFUSING_BOOK = Book()
ROWS = (1.0, 2.0, 4.0)
WIDE = {"places": 3, "low": -1e308, "high": 1e308, "unit": "", "source": INVENTED}

REFUSING_BOOK.given("left", symbol="a", unit="", low=-1e308, high=1e308, step=1, source=INVENTED)
REFUSING_BOOK.given("right", symbol="b", unit="", low=-1e308, high=1e308, step=1, source=INVENTED)


@REFUSING_BOOK.quantity(symbol="q_a", **WIDE)
def quotient(left: float, right: float) -> float:
    return left / right


@REFUSING_BOOK.quantity(symbol="q_b", **WIDE)
def hidden_quotient(left: float, right: float) -> float:
    return min(5, left / right)


@REFUSING_BOOK.quantity(symbol="q_c", **WIDE)
def unused_quotient(left: float, right: float) -> float:
    share = left / (right - 1)
    return left if left < 2 else share


@REFUSING_BOOK.quantity(symbol="q_d", **WIDE)
def guarded_quotient(left: float, right: float) -> float:
    return (1 / left if left != 0 and not left < -2 else 3) * right


@REFUSING_BOOK.quantity(symbol="q_e", **WIDE)
def product(left: float, right: float) -> float:
    return left * right - right


@REFUSING_BOOK.quantity(symbol="r_a", **WIDE)
def root(left: float) -> float:
    return sqrt(left)


@REFUSING_BOOK.quantity(symbol="r_b", **WIDE)
def hidden_root(left: float, right: float) -> float:
    return max(1, sqrt(left - right))


@REFUSING_BOOK.quantity(symbol="p_a", **WIDE)
def power(left: float, right: float) -> float:
    return left**right


@REFUSING_BOOK.quantity(symbol="p_b", **WIDE)
def hidden_power(left: float, right: float) -> float:
    return min(7, left**right)


@REFUSING_BOOK.quantity(symbol="l_a", **WIDE)
def hidden_logarithm(left: float, right: float) -> float:
    return max(right, log(left))


@REFUSING_BOOK.quantity(symbol="e_a", **WIDE)
def hidden_growth(left: float, right: float) -> float:
    return min(right, exp(left))


@REFUSING_BOOK.quantity(symbol="w_a", **WIDE)
def hidden_whole_number(left: float, right: float) -> float:
    return min(9, whole_up(left * right)) + min(9, whole_down(right * left))


@REFUSING_BOOK.quantity(symbol="w_b", **WIDE)
def picked(left: float, right: float) -> float:
    return pick(left * right, ROWS) - -left


@REFUSING_BOOK.quantity(symbol="t_a", **WIDE)
def turned(left: float, right: float) -> float:
    return (cos(atan(left)) + tan(min(1, abs(right)))) / (1 if left <= right == 1 or left > 2 else right)
