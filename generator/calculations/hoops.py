"""Hoops: how many, how long to cut, how many bars to buy, and what they weigh.

One hoop at the foot, one at the top, the rest shared out evenly. Hoops stand outside the upright bars and carry the
pull of the water, so each must be closed by a full lap.
"""

from math import pi

from generator.calculations._book import BOOK
from generator.calculations.conversions import MM_PER_M
from generator.formula import Constant, common_practice, derived, published, whole_down, whole_up

BAR_MASS_RULE = Constant(
    162,
    "mm**2*m/kg",
    published("rule for round steel bars in public steel tables: mass per metre is d x d / 162, with d in mm"),
)
SIX_MM = Constant(6, "mm", common_practice("the bar that every mason knows"))
CENTIMETRES_READ_AS_MILLIMETRES = Constant(10, "", derived("10 mm to the centimetre"))
CENTIMETRES_READ_AS_INCHES = Constant(2.54, "", derived("2.54 cm to the inch"))

BOOK.given(
    "wall_height", symbol="H", unit="m", low=0.4, high=2.4, step=0.05,
    source=derived("deepest water that this course allows, 2.2 m, and room above it"),
)  # fmt: skip
BOOK.given(
    "hoop_diameter", symbol="d_h", unit="mm", low=4, high=12, step=2,
    source=common_practice("sizes of wire and bar that the shops of a hill town sell for this work"),
)  # fmt: skip
BOOK.given(
    "hoop_spacing", symbol="x_h", unit="m", low=0.05, high=0.2, step=0.005,
    source=common_practice("hoops further apart leave too little steel at the foot"),
)  # fmt: skip
BOOK.given(
    "lap_diameters", symbol="k", unit="", low=50, high=80, step=5,
    source=common_practice("40 to 50 bar diameters are usual; hoops are pulled straight, so here 50 is the least"),
)  # fmt: skip
BOOK.given(
    "stock_length", symbol="L_s", unit="m", low=4, high=12, step=0.5,
    source=published("steel tables: bars are sold 9 m or 12 m long; shorter where they are cut for a porter"),
)  # fmt: skip


@BOOK.quantity(
    symbol="g_h", unit="", places=0, low=2, high=48,
    source=derived("round up, so that no gap is larger than the plan says"),
)  # fmt: skip
def hoop_gaps(wall_height: float, hoop_spacing: float) -> float:
    """Number of gaps between hoops, from the foot of the wall to its top.

    Args:
        wall_height: floor to the top of the wall [m], 0.4 to 2.4.
        hoop_spacing: largest gap between hoops, centre to centre [m], 0.05 to 0.2.

    Returns:
        Whole gaps [-], 2 to 48.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(hoop_gaps(wall_height=1.4, hoop_spacing=0.12), 0)
        '12'
    """
    return whole_up(wall_height / hoop_spacing)


@BOOK.quantity(
    symbol="n_h", unit="", places=0, low=3, high=49, source=derived("a row with both ends has one more than its gaps")
)
def hoop_count(hoop_gaps: float) -> float:
    """Number of hoops: one at the foot, one at the top, the rest between.

    Args:
        hoop_gaps: gaps between hoops [-], 2 to 48.

    Returns:
        Whole hoops [-], 3 to 49.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(hoop_count(hoop_gaps=12), 0)
        '13'
    """
    return hoop_gaps + 1


@BOOK.quantity(symbol="s_h", unit="m", places=3, low=0.03, high=0.2, source=derived("the height in equal parts"))
def hoop_spacing_closing(wall_height: float, hoop_gaps: float) -> float:
    """Distance from hoop to hoop that closes exactly at the top.

    Args:
        wall_height: floor to the top of the wall [m], 0.4 to 2.4.
        hoop_gaps: gaps between hoops [-], 2 to 48.

    Returns:
        Centre to centre [m], 0.03 to 0.2.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(hoop_spacing_closing(wall_height=1.4, hoop_gaps=12), 3)
        '0.117'
    """
    return wall_height / hoop_gaps


@BOOK.quantity(
    symbol="D_h", unit="m", places=3, low=1.0, high=6.8,
    source=derived("geometry: half an upright bar and half a hoop lie between the two centre lines, twice"),
)  # fmt: skip
def hoop_circle_diameter(frame_diameter: float, bar_diameter: float, hoop_diameter: float) -> float:
    """Diameter of a hoop from steel centre to steel centre: it lies on the outside of the upright bars.

    Args:
        frame_diameter: bar centre to bar centre [m], 1 to 6.7.
        bar_diameter: upright bar [mm], 6 to 12.
        hoop_diameter: hoop bar [mm], 4 to 12.

    Returns:
        Hoop centre to hoop centre [m], 1 to 6.8.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(hoop_circle_diameter(frame_diameter=3.436, bar_diameter=8, hoop_diameter=8), 3)
        '3.452'
    """
    return frame_diameter + (bar_diameter + hoop_diameter) / MM_PER_M


@BOOK.quantity(
    symbol="L_lap", unit="m", places=3, low=0.2, high=1.0, source=derived("bar diameters, turned into metres")
)
def lap_length(lap_diameters: float, hoop_diameter: float) -> float:
    """Length over which two ends of a hoop lie side by side.

    Args:
        lap_diameters: lap in hoop diameters [-], 50 to 80.
        hoop_diameter: hoop bar [mm], 4 to 12.

    Returns:
        One lap [m], 0.2 to 1.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(lap_length(lap_diameters=50, hoop_diameter=8), 3)
        '0.400'
    """
    return lap_diameters * hoop_diameter / MM_PER_M


@BOOK.quantity(
    symbol="n_lap", unit="", places=0, low=1, high=8,
    source=derived("each piece closes its own length less one lap; round up, so that no piece is longer than a bar"),
)  # fmt: skip
def hoop_laps(hoop_circle_diameter: float, lap_length: float, stock_length: float) -> float:
    """Number of laps in one hoop, which is also the number of pieces it is made of.

    A hoop that fits one bar has one piece and one lap.

    Args:
        hoop_circle_diameter: hoop centre to hoop centre [m], 1 to 6.8.
        lap_length: one lap [m], 0.2 to 1.
        stock_length: bar as the shop sells it [m], 4 to 12.

    Returns:
        Whole laps [-], 1 to 8.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(hoop_laps(hoop_circle_diameter=3.452, lap_length=0.4, stock_length=12), 0)
        '1'
    """
    return whole_up(pi * hoop_circle_diameter / (stock_length - lap_length))


@BOOK.quantity(
    symbol="L_h", unit="m", places=2, low=3.3, high=29.1, source=derived("geometry: once round, and the laps")
)
def hoop_length(hoop_circle_diameter: float, lap_length: float, hoop_laps: float) -> float:
    """Steel in one hoop, its laps included: the length to cut where it is one piece.

    Args:
        hoop_circle_diameter: hoop centre to hoop centre [m], 1 to 6.8.
        lap_length: one lap [m], 0.2 to 1.
        hoop_laps: laps in one hoop [-], 1 to 8.

    Returns:
        Once round and the laps [m], 3.3 to 29.1.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(hoop_length(hoop_circle_diameter=3.452, lap_length=0.4, hoop_laps=1), 2)
        '11.24'
    """
    return pi * hoop_circle_diameter + hoop_laps * lap_length


@BOOK.quantity(symbol="L_all", unit="m", places=1, low=9, high=1430, source=derived("hoops times length"))
def hoop_total_length(hoop_count: float, hoop_length: float) -> float:
    """Steel in all hoops together.

    Args:
        hoop_count: hoops [-], 3 to 49.
        hoop_length: one hoop with its laps [m], 3.3 to 29.1.

    Returns:
        All hoops [m], 9 to 1430.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(hoop_total_length(hoop_count=13, hoop_length=11.25), 1)
        '146.3'
    """
    return hoop_count * hoop_length


@BOOK.quantity(
    symbol="n_p", unit="", places=0, low=1, high=3, source=derived("round down: a hoop is not made of short ends")
)
def hoop_pieces_per_bar(stock_length: float, hoop_length: float, hoop_laps: float) -> float:
    """Number of equal hoop pieces that one bar from the shop gives.

    Args:
        stock_length: bar as the shop sells it [m], 4 to 12.
        hoop_length: one hoop with its laps [m], 3.3 to 29.1.
        hoop_laps: laps in one hoop [-], 1 to 8.

    Returns:
        Whole pieces [-], 1 to 3.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(hoop_pieces_per_bar(stock_length=12, hoop_length=11.25, hoop_laps=1), 0)
        '1'
    """
    return whole_down(stock_length * hoop_laps / hoop_length)


@BOOK.quantity(symbol="n_s", unit="", places=0, low=1, high=392, source=derived("pieces shared out to bars, round up"))
def hoop_stock_bars(hoop_count: float, hoop_laps: float, hoop_pieces_per_bar: float) -> float:
    """Number of bars to buy for the hoops.

    The ends that are left over are not counted: more joints would need more laps.

    Args:
        hoop_count: hoops [-], 3 to 49.
        hoop_laps: laps in one hoop [-], 1 to 8.
        hoop_pieces_per_bar: pieces from one bar [-], 1 to 3.

    Returns:
        Whole bars [-], 1 to 392.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(hoop_stock_bars(hoop_count=13, hoop_laps=1, hoop_pieces_per_bar=1), 0)
        '13'
    """
    return whole_up(hoop_count * hoop_laps / hoop_pieces_per_bar)


@BOOK.quantity(
    symbol="q_h", unit="kg/m", places=3, low=0.09, high=0.9,
    source=published("public steel tables: d x d / 162; 0.12 % above pi/4 x d x d x 7850 kg/m3"),
)  # fmt: skip
def hoop_mass_per_metre(hoop_diameter: float) -> float:
    """Mass of one metre of hoop bar.

    Args:
        hoop_diameter: hoop bar [mm], 4 to 12.

    Returns:
        Mass of a metre [kg/m], 0.09 to 0.9.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(hoop_mass_per_metre(hoop_diameter=8), 3)
        '0.395'
    """
    return hoop_diameter**2 / BAR_MASS_RULE


@BOOK.quantity(
    symbol="q_b", unit="kg/m", places=3, low=0.22, high=0.9,
    source=published("public steel tables: d x d / 162; 0.12 % above pi/4 x d x d x 7850 kg/m3"),
)  # fmt: skip
def bar_mass_per_metre(bar_diameter: float) -> float:
    """Mass of one metre of upright bar.

    Args:
        bar_diameter: upright bar [mm], 6 to 12.

    Returns:
        Mass of a metre [kg/m], 0.22 to 0.9.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(bar_mass_per_metre(bar_diameter=10), 3)
        '0.617'
    """
    return bar_diameter**2 / BAR_MASS_RULE


@BOOK.quantity(symbol="M_h", unit="kg", places=1, low=0.9, high=1280, source=derived("length times mass per metre"))
def hoop_mass(hoop_total_length: float, hoop_mass_per_metre: float) -> float:
    """Mass of all hoops together.

    Args:
        hoop_total_length: all hoops with their laps [m], 9 to 1430.
        hoop_mass_per_metre: one metre of hoop bar [kg/m], 0.09 to 0.9.

    Returns:
        All hoops [kg], 0.9 to 1280.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(hoop_mass(hoop_total_length=146.2, hoop_mass_per_metre=0.395), 1)
        '57.7'
    """
    return hoop_total_length * hoop_mass_per_metre


@BOOK.misconception(of="hoop_count")
def spaces_counted_not_hoops(hoop_gaps: float) -> float:
    """The gaps are counted; the hoop at the end is forgotten."""
    return hoop_gaps


@BOOK.misconception(of="hoop_gaps")
def hoop_gaps_rounded_down(wall_height: float, hoop_spacing: float) -> float:
    """The part of a gap that is left over is dropped."""
    return whole_down(wall_height / hoop_spacing)


@BOOK.misconception(of="hoop_spacing")
def centimetres_read_as_millimetres(hoop_spacing: float) -> float:
    """12 cm is set as 12 mm."""
    return hoop_spacing / CENTIMETRES_READ_AS_MILLIMETRES


@BOOK.misconception(of="hoop_spacing")
def spacing_read_in_inches(hoop_spacing: float) -> float:
    """The number of centimetres is set on the inch side of the tape."""
    return hoop_spacing * CENTIMETRES_READ_AS_INCHES


@BOOK.misconception(of="hoop_spacing_closing")
def height_shared_by_hoops(wall_height: float, hoop_count: float) -> float:
    """The height is shared out among the hoops; there is one gap fewer than hoops."""
    return wall_height / hoop_count


@BOOK.misconception(of="hoop_circle_diameter")
def hoop_on_inside_diameter(inside_diameter: float) -> float:
    """The hoop is worked out from the inside diameter."""
    return inside_diameter


@BOOK.misconception(of="hoop_length")
def lap_forgotten(hoop_circle_diameter: float) -> float:
    """The hoop is cut to the way round, with nothing to tie."""
    return pi * hoop_circle_diameter


@BOOK.misconception(of="hoop_length")
def two_laps_for_one(hoop_circle_diameter: float, lap_length: float, hoop_laps: float) -> float:
    """A lap is added for each end of the bar; two ends share one lap."""
    return pi * hoop_circle_diameter + 2 * hoop_laps * lap_length


@BOOK.misconception(of="hoop_stock_bars")
def total_length_shared_by_bars(hoop_total_length: float, stock_length: float) -> float:
    """All the steel is divided by one bar, as if short ends could be joined without laps."""
    return whole_up(hoop_total_length / stock_length)


@BOOK.misconception(of="hoop_mass_per_metre")
def mass_taken_as_diameter(hoop_diameter: float) -> float:
    """Twice as thick is taken as twice as heavy: the 6 mm bar's mass is scaled, without the second diameter."""
    return hoop_diameter * SIX_MM / BAR_MASS_RULE
