"""A small invented book of formulas that uses every part of the subset. No engineering is in it."""

from math import pi, sin

from generator.formula import Book, Constant, derived, interpolate, pick, whole_down, whole_up

INVENTED = derived("made up for the tests")
TEST_BOOK = Book()

NEWTON_PER_KILONEWTON = Constant(1000, "N/kN", INVENTED)
ONE_LAYER = Constant(45, "mm**2/m", INVENTED)
ROWS = (1.0, 2.0, 4.0)
ROOTS = (0.0, 1.0, 4.0)

TEST_BOOK.given("basin_width", symbol="B", unit="m", low=1, high=6, step=0.1, source=INVENTED)
TEST_BOOK.given("basin_depth", symbol="h", unit="m", low=1, high=3, step=0.1, source=INVENTED)
TEST_BOOK.given("wire_stress", symbol="f", unit="N/mm**2", low=100, high=170, step=10, source=INVENTED)


@TEST_BOOK.quantity(symbol="R_b", unit="m", places=3, low=0.5, high=3, source=INVENTED)
def basin_radius(basin_width: float) -> float:
    return basin_width / 2


@TEST_BOOK.quantity(symbol="T", unit="kN/m", places=1, low=1, high=100, source=INVENTED)
def pull(basin_depth: float, basin_radius: float) -> float:
    return 9.81 * basin_depth * basin_radius


@TEST_BOOK.quantity(symbol="A", unit="mm**2/m", places=1, low=1, high=2000, source=INVENTED)
def steel(pull: float, wire_stress: float) -> float:
    return pull * NEWTON_PER_KILONEWTON / wire_stress


@TEST_BOOK.quantity(symbol="n", unit="", places=0, low=2, high=60, source=INVENTED)
def layers(steel: float) -> float:
    return max(2, whole_up(steel / ONE_LAYER))


@TEST_BOOK.quantity(symbol="q", unit="", places=2, low=-100, high=100, source=INVENTED)
def everything(basin_depth: float, basin_radius: float, layers: float) -> float:
    half = basin_depth / 2 - (basin_radius - 1)
    table_row = interpolate(basin_depth, ROWS, ROOTS) + pick(layers, ROWS)
    wave = sin(pi * half) ** 2 if 1 < basin_depth <= 2 and not basin_radius > 2 else -half
    return (table_row - (wave - half)) / -(1 + abs(half)) * 2.0 + whole_down(basin_radius)


@TEST_BOOK.misconception(of="basin_radius")
def width_taken_for_radius(basin_width: float) -> float:
    return basin_width


@TEST_BOOK.misconception(of="basin_depth")
def depth_read_in_tenths(basin_depth: float) -> float:
    return basin_depth / 10


@TEST_BOOK.misconception(of="pull")
def half_the_pull(pull: float) -> float:
    return pull / 2
