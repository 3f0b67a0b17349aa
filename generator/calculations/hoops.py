"""Hoops: how many, how far apart, how long, how heavy. They carry the push of the water.

Hoops are pulled along their whole length, so their ends must lap far enough to hand the pull over: 50 bar diameters or
more is usual, and enough only because the hoop's stress is held low. Laps are staggered, never all on one upright line.
"""

from math import pi

from generator.calculations._book import BOOK
from generator.calculations.setting_out import MILLIMETRES_IN_METRE
from generator.formula import Constant, common_practice, derived, published, whole_down, whole_up

BAR_MASS_DIVISOR = Constant(
    162, "mm**2*m/kg", published("public steel tables; 0.12 % above a round bar of steel with 7850 kg/m3")
)
THIN_BAR = Constant(6, "mm", derived("the bar that a mason knows the mass of"))
INCHES_IN_TENTH_METRE = Constant(2.54, "", derived("a spacing in centimetres read in inches"))
MILLIMETRES_IN_CENTIMETRE = Constant(10, "", derived("a length in millimetres read in centimetres"))

BOOK.given(
    "wall_height",
    symbol="H_w",
    unit="m",
    low=0.4,
    high=2.4,
    step=0.05,
    source=derived("the deepest water of this course, 2.2 m, and room above it"),
)
BOOK.given(
    "hoop_spacing",
    symbol="s_h",
    unit="m",
    low=0.05,
    high=0.2,
    step=0.005,
    source=common_practice("widest distance from hoop to hoop"),
)
BOOK.given(
    "lap_diameters",
    symbol="k",
    unit="",
    low=50,
    high=80,
    step=5,
    source=common_practice(
        "45 to 69 bar diameters stand on public pages; a hoop is pulled straight, so 50 is the least here"
    ),
)
BOOK.given(
    "stock_length",
    symbol="L_s",
    unit="m",
    low=4,
    high=12,
    step=0.5,
    source=published("steel tables: bars are sold 9 m or 12 m long; they are cut shorter for carrying"),
)


@BOOK.quantity(symbol="g_h", unit="", places=0, low=2, high=48, source=derived("spaces, rounded up"))
def hoop_gaps(wall_height: float, hoop_spacing: float) -> float:
    """Spaces between hoops from the foot to the top.

    Args:
        wall_height: height of the wall [m], 0.4 to 2.4.
        hoop_spacing: widest distance from hoop to hoop [m], 0.05 to 0.2.

    Returns:
        Number of spaces [-], 2 to 48.

    Raises:
        OutOfRangeError: a given outside its range.

    Example:
        >>> hoop_gaps(wall_height=1.40, hoop_spacing=0.12)
        12.0
    """
    return whole_up(wall_height / hoop_spacing)


@BOOK.quantity(symbol="n_h", unit="", places=0, low=3, high=49, source=derived("one hoop more than spaces in a row"))
def hoop_count(hoop_gaps: float) -> float:
    """Hoops in the wall: one at the foot, one at the top, the rest between.

    Args:
        hoop_gaps: spaces between hoops [-], 2 to 48.

    Returns:
        Number of hoops [-], 3 to 49.

    Raises:
        OutOfRangeError: the number is outside its range.

    Example:
        >>> hoop_count(hoop_gaps=12)
        13
    """
    return hoop_gaps + 1


@BOOK.quantity(symbol="s_e", unit="m", places=3, low=0.03, high=0.2, source=derived("the height shared out evenly"))
def hoop_spacing_closing(wall_height: float, hoop_gaps: float) -> float:
    """Distance from hoop to hoop that comes out even from foot to top.

    Args:
        wall_height: height of the wall [m], 0.4 to 2.4.
        hoop_gaps: spaces between hoops [-], 2 to 48.

    Returns:
        Distance [m], 0.03 to 0.2.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(hoop_spacing_closing(wall_height=1.40, hoop_gaps=12), 3)
        '0.117'
    """
    return wall_height / hoop_gaps


@BOOK.quantity(symbol="D_h", unit="m", places=3, low=0.6, high=8.2, source=derived("hoops lie outside the bars"))
def hoop_circle_diameter(frame_diameter: float, bar_diameter: float, hoop_diameter: float) -> float:
    """Across the hoop, measured on its centre line; hoops lie on the outside of the upright bars.

    Args:
        frame_diameter: across the frame ring [m], 0.6 to 8.1.
        bar_diameter: upright bars [mm], 4 to 16.
        hoop_diameter: hoops [mm], 3 to 16.

    Returns:
        Diameter [m], 0.6 to 8.2.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(hoop_circle_diameter(frame_diameter=3.436, bar_diameter=8, hoop_diameter=8), 3)
        '3.452'
    """
    return frame_diameter + (bar_diameter + hoop_diameter) / MILLIMETRES_IN_METRE


@BOOK.quantity(symbol="L_lap", unit="m", places=2, low=0.15, high=1.3, source=derived("lap in bar diameters"))
def lap_length(lap_diameters: float, hoop_diameter: float) -> float:
    """How far the ends of a hoop lie side by side.

    Args:
        lap_diameters: lap in bar diameters [-], 50 to 80.
        hoop_diameter: hoops [mm], 3 to 16.

    Returns:
        Length of the lap [m], 0.15 to 1.3.

    Raises:
        OutOfRangeError: a given outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(lap_length(lap_diameters=50, hoop_diameter=8), 2)
        '0.40'
    """
    return lap_diameters * hoop_diameter / MILLIMETRES_IN_METRE


@BOOK.quantity(symbol="L_h", unit="m", places=2, low=2.0, high=27.1, source=derived("once round and one lap"))
def hoop_length(hoop_circle_diameter: float, lap_length: float) -> float:
    """Length to cut for a hoop of one piece. A hoop longer than a bar needs more laps: see `hoop_laps`.

    Args:
        hoop_circle_diameter: across the hoop's centre line [m], 0.6 to 8.2.
        lap_length: length of the lap [m], 0.15 to 1.3.

    Returns:
        Cut length [m], 2 to 27.1.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(hoop_length(hoop_circle_diameter=3.05, lap_length=0.40), 2)
        '9.98'
    """
    return pi * hoop_circle_diameter + lap_length


@BOOK.quantity(
    symbol="n_lap",
    unit="",
    places=0,
    low=1,
    high=10,
    source=derived("each piece closes its length less one lap; round up"),
)
def hoop_laps(hoop_circle_diameter: float, lap_length: float, stock_length: float) -> float:
    """Laps in one hoop, and the pieces it is made of: 1 where one bar goes round.

    Args:
        hoop_circle_diameter: across the hoop's centre line [m], 0.6 to 8.2.
        lap_length: length of the lap [m], 0.15 to 1.3.
        stock_length: length of a bar as sold [m], 4 to 12.

    Returns:
        Number of laps [-], 1 to 10.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> hoop_laps(hoop_circle_diameter=3.452, lap_length=0.40, stock_length=6)
        2.0
    """
    return whole_up(pi * hoop_circle_diameter / (stock_length - lap_length))


@BOOK.quantity(symbol="L_e", unit="m", places=2, low=2.0, high=39, source=derived("once round, and every lap"))
def hoop_steel_length(hoop_circle_diameter: float, lap_length: float, hoop_laps: float) -> float:
    """Steel in one hoop, of one piece or of several.

    Args:
        hoop_circle_diameter: across the hoop's centre line [m], 0.6 to 8.2.
        lap_length: length of the lap [m], 0.15 to 1.3.
        hoop_laps: laps in one hoop [-], 1 to 10.

    Returns:
        Length of all its pieces [m], 2 to 39.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(hoop_steel_length(hoop_circle_diameter=3.452, lap_length=0.40, hoop_laps=2), 2)
        '11.64'
    """
    return pi * hoop_circle_diameter + hoop_laps * lap_length


@BOOK.quantity(
    symbol="n_s", unit="", places=0, low=1, high=490, source=derived("whole pieces from a bar, then whole bars")
)
def hoop_stock_bars(hoop_count: float, hoop_laps: float, stock_length: float, hoop_steel_length: float) -> float:
    """Bars to buy for the hoops alone; their left-over ends are not joined, since each joint needs one more lap.

    Args:
        hoop_count: hoops in the wall [-], 3 to 49.
        hoop_laps: laps in one hoop, and its pieces [-], 1 to 10.
        stock_length: length of a bar as sold [m], 4 to 12.
        hoop_steel_length: steel in one hoop [m], 2 to 39.

    Returns:
        Number of bars [-], 1 to 490.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> hoop_stock_bars(hoop_count=13, hoop_laps=1, stock_length=12, hoop_steel_length=11.24)
        13.0
    """
    from_one_bar = whole_down(stock_length * hoop_laps / hoop_steel_length)
    return whole_up(hoop_count * hoop_laps / from_one_bar)


@BOOK.quantity(symbol="T_h", unit="m", places=1, low=6, high=1330, source=derived("every hoop has one length"))
def hoop_total_length(hoop_count: float, hoop_length: float) -> float:
    """Steel in all the hoops, each of one piece. It is not what to buy: short ends are left of every bar.

    Args:
        hoop_count: hoops in the wall [-], 3 to 49.
        hoop_length: cut length of one [m], 2 to 27.1.

    Returns:
        Length [m], 6 to 1330.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(hoop_total_length(hoop_count=13, hoop_length=11.24), 1)
        '146.1'
    """
    return hoop_count * hoop_length


@BOOK.quantity(
    symbol="w_h", unit="kg/m", places=3, low=0.05, high=1.6, source=published("public steel tables: d x d / 162")
)
def hoop_mass_per_metre(hoop_diameter: float) -> float:
    """Mass of a metre of hoop bar: diameter times itself, over 162 (0.12 % high).

    Args:
        hoop_diameter: hoops [mm], 3 to 16.

    Returns:
        Mass [kg/m], 0.05 to 1.6.

    Raises:
        OutOfRangeError: the diameter is outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(hoop_mass_per_metre(hoop_diameter=8), 3)
        '0.395'
    """
    return hoop_diameter**2 / BAR_MASS_DIVISOR


@BOOK.quantity(
    symbol="w_b", unit="kg/m", places=3, low=0.09, high=1.6, source=published("public steel tables: d x d / 162")
)
def bar_mass_per_metre(bar_diameter: float) -> float:
    """Mass of a metre of upright bar: diameter times itself, over 162 (0.12 % high).

    Args:
        bar_diameter: upright bars [mm], 4 to 16.

    Returns:
        Mass [kg/m], 0.09 to 1.6.

    Raises:
        OutOfRangeError: the diameter is outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(bar_mass_per_metre(bar_diameter=10), 3)
        '0.617'
    """
    return bar_diameter**2 / BAR_MASS_DIVISOR


@BOOK.quantity(symbol="M_h", unit="kg", places=1, low=0.3, high=3000, source=derived("length times mass of a metre"))
def hoop_mass(hoop_count: float, hoop_steel_length: float, hoop_mass_per_metre: float) -> float:
    """Mass of all the hoops in the wall with all their laps, left-over ends not counted.

    Args:
        hoop_count: hoops in the wall [-], 3 to 49.
        hoop_steel_length: steel in one hoop [m], 2 to 39.
        hoop_mass_per_metre: mass of a metre [kg/m], 0.05 to 1.6.

    Returns:
        Mass [kg], 0.3 to 3000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(hoop_mass(hoop_count=13, hoop_steel_length=11.24, hoop_mass_per_metre=0.395), 1)
        '57.7'
    """
    return hoop_count * hoop_steel_length * hoop_mass_per_metre


@BOOK.quantity(symbol="q_h", unit="", places=0, low=0, high=6, source=derived("whole hoops in one bar, rounded down"))
def hoops_from_one_bar(stock_length: float, hoop_length: float) -> float:
    """Whole hoops that one bar gives; 0 means that a hoop needs more than one bar and one more lap.

    Args:
        stock_length: length of a bar as sold [m], 4 to 12.
        hoop_length: cut length of one hoop [m], 2 to 27.1.

    Returns:
        Number of hoops [-], 0 to 6.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> hoops_from_one_bar(stock_length=12, hoop_length=11.24)
        1.0
    """
    return whole_down(stock_length / hoop_length)


@BOOK.misconception(of="hoop_count")
def spaces_counted_not_hoops(hoop_gaps: float) -> float:
    """The spaces were counted, and the hoop at the foot or at the top was forgotten."""
    return hoop_gaps


@BOOK.misconception(of="hoop_count")
def hoops_at_both_ends_forgotten(hoop_gaps: float) -> float:
    """Only the hoops between foot and top were counted."""
    return hoop_gaps - 1


@BOOK.misconception(of="hoop_spacing")
def spacing_read_in_inches(hoop_spacing: float) -> float:
    """The centimetres of the spacing were read on the inch side of the tape."""
    return hoop_spacing * INCHES_IN_TENTH_METRE


@BOOK.misconception(of="hoop_spacing_closing")
def height_divided_by_hoops(wall_height: float, hoop_gaps: float) -> float:
    """The height was divided by the hoops, and not by the spaces."""
    return wall_height / (hoop_gaps + 1)


@BOOK.misconception(of="lap_length")
def lap_given_to_both_ends(lap_length: float) -> float:
    """Each end of the hoop got the whole lap, though both lie in the same one."""
    return lap_length + lap_length


@BOOK.misconception(of="lap_length")
def lap_in_centimetres(lap_diameters: float, hoop_diameter: float) -> float:
    """The bar's millimetres were taken for centimetres."""
    return lap_diameters * hoop_diameter * MILLIMETRES_IN_CENTIMETRE / MILLIMETRES_IN_METRE


@BOOK.misconception(of="hoop_length")
def lap_forgotten(hoop_circle_diameter: float) -> float:
    """The hoop was cut to once round."""
    return pi * hoop_circle_diameter


@BOOK.misconception(of="hoop_length")
def lap_counted_at_both_ends(hoop_circle_diameter: float, lap_length: float) -> float:
    """A whole lap was added at each end of the bar."""
    return pi * hoop_circle_diameter + 2 * lap_length


@BOOK.misconception(of="hoop_mass_per_metre")
def bar_twice_as_thick_twice_as_heavy(hoop_diameter: float) -> float:
    """The mass was thought to grow like the thickness: a bar of 6 mm was known, the others scaled from it."""
    return THIN_BAR * hoop_diameter / BAR_MASS_DIVISOR


@BOOK.misconception(of="hoops_from_one_bar")
def hoops_from_a_bar_rounded_up(stock_length: float, hoop_length: float) -> float:
    """A left-over end that is too short was counted as a hoop."""
    return whole_up(stock_length / hoop_length)


@BOOK.misconception(of="hoop_spacing")
def centimetres_read_as_millimetres(hoop_spacing: float) -> float:
    """The centimetres of the spacing were set as millimetres."""
    return hoop_spacing / MILLIMETRES_IN_CENTIMETRE


@BOOK.misconception(of="hoop_gaps")
def spaces_rounded_down(wall_height: float, hoop_spacing: float) -> float:
    """The part of a space that was left over was forgotten."""
    return whole_down(wall_height / hoop_spacing)


@BOOK.misconception(of="hoop_circle_diameter")
def inside_taken_for_hoop_diameter(inside_diameter: float) -> float:
    """The hoop was worked out from the circle where the water stands."""
    return inside_diameter


@BOOK.misconception(of="hoop_stock_bars")
def total_length_shared_by_bars(hoop_count: float, hoop_steel_length: float, stock_length: float) -> float:
    """All the steel was divided by one bar, as if left-over ends made hoops."""
    return whole_up(hoop_count * hoop_steel_length / stock_length)
