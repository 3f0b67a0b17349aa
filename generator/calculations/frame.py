"""Upright steel: angle irons round the ring, and bars that fill the gaps between them.

A ring closes: it has as many gaps as uprights. A row between two angles does not: it has one bar fewer than gaps.
"""

from math import pi, sin

from generator.calculations._book import BOOK
from generator.formula import common_practice, derived, whole_down, whole_up

BOOK.given(
    "angle_spacing_limit", symbol="x_a", unit="m", low=0.3, high=1.0, step=0.05,
    source=common_practice("angles up to about a long step apart keep a cage round while it is plastered"),
)  # fmt: skip
BOOK.given(
    "bar_spacing_limit", symbol="x_b", unit="m", low=0.08, high=0.3, step=0.01,
    source=common_practice("bars further apart let the mesh sag between them"),
)  # fmt: skip
BOOK.given(
    "bar_diameter", symbol="d_b", unit="mm", low=6, high=12, step=2,
    source=common_practice("sizes of bar that the shops of a hill town sell for this work"),
)  # fmt: skip


@BOOK.quantity(
    symbol="n_a", unit="", places=0, low=4, high=71,
    source=derived("a ring has as many gaps as angles; round up, so that no gap is larger than the plan says"),
)  # fmt: skip
def angle_count(ring_length: float, angle_spacing_limit: float) -> float:
    """Number of angle irons round the ring.

    Args:
        ring_length: once round the frame ring [m], 3.1 to 21.1.
        angle_spacing_limit: largest gap between angles, along the ring [m], 0.3 to 1.

    Returns:
        Whole angles [-], 4 to 71.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(angle_count(ring_length=10.79, angle_spacing_limit=0.75), 0)
        '15'
    """
    return whole_up(ring_length / angle_spacing_limit)


@BOOK.quantity(symbol="s_a", unit="m", places=3, low=0.2, high=1.0, source=derived("the ring in equal parts"))
def angle_spacing(ring_length: float, angle_count: float) -> float:
    """Distance from angle to angle, along the ring.

    Args:
        ring_length: once round the frame ring [m], 3.1 to 21.1.
        angle_count: angles in the ring [-], 4 to 71.

    Returns:
        Along the ring, centre to centre [m], 0.2 to 1.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(angle_spacing(ring_length=10.79, angle_count=15), 3)
        '0.719'
    """
    return ring_length / angle_count


@BOOK.quantity(symbol="c_a", unit="m", places=3, low=0.2, high=1.0, source=derived("geometry: chord of a circle"))
def angle_chord(frame_diameter: float, angle_count: float) -> float:
    """Distance from angle to angle as a straight tape reads it.

    A tape cuts across the bend of the ring, so it reads less than the ring is long.

    Args:
        frame_diameter: bar centre to bar centre [m], 1 to 6.7.
        angle_count: angles in the ring [-], 4 to 71.

    Returns:
        Straight from angle to angle [m], 0.2 to 1.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(angle_chord(frame_diameter=3.436, angle_count=15), 3)
        '0.714'
    """
    return frame_diameter * sin(pi / angle_count)


@BOOK.quantity(
    symbol="n_g", unit="", places=0, low=0, high=12,
    source=derived("a row between two angles has one bar fewer than gaps; round the gaps up"),
)  # fmt: skip
def bars_between(angle_spacing: float, bar_spacing_limit: float) -> float:
    """Number of upright bars between one angle and the next.

    Args:
        angle_spacing: angle to angle along the ring [m], 0.2 to 1.
        bar_spacing_limit: largest gap between uprights, along the ring [m], 0.08 to 0.3.

    Returns:
        Whole bars in one gap [-], 0 to 12.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(bars_between(angle_spacing=0.72, bar_spacing_limit=0.25), 0)
        '2'
    """
    return whole_up(angle_spacing / bar_spacing_limit) - 1


@BOOK.quantity(symbol="s_b", unit="m", places=3, low=0.04, high=0.3, source=derived("one gap in equal parts"))
def bar_spacing(angle_spacing: float, bars_between: float) -> float:
    """Distance from upright to upright, along the ring.

    Args:
        angle_spacing: angle to angle along the ring [m], 0.2 to 1.
        bars_between: bars between two angles [-], 0 to 12.

    Returns:
        Along the ring, centre to centre [m], 0.04 to 0.3.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(bar_spacing(angle_spacing=0.72, bars_between=2), 3)
        '0.240'
    """
    return angle_spacing / (bars_between + 1)


@BOOK.quantity(symbol="n_b", unit="", places=0, low=0, high=300, source=derived("as many gaps as angles in a ring"))
def bar_count(angle_count: float, bars_between: float) -> float:
    """Number of upright bars in the whole ring, without the angles.

    Args:
        angle_count: angles in the ring [-], 4 to 71.
        bars_between: bars between two angles [-], 0 to 12.

    Returns:
        Whole bars [-], 0 to 300.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(bar_count(angle_count=15, bars_between=2), 0)
        '30'
    """
    return angle_count * bars_between


@BOOK.misconception(of="angle_count")
def one_angle_too_many_in_a_ring(angle_count: float) -> float:
    """One more angle than gaps: right for a row, but the ends of a ring are the same angle."""
    return angle_count + 1


@BOOK.misconception(of="angle_count")
def angles_rounded_down(ring_length: float, angle_spacing_limit: float) -> float:
    """The part of a gap that is left over is dropped."""
    return whole_down(ring_length / angle_spacing_limit)


@BOOK.misconception(of="angle_spacing")
def gap_left_as_the_plan_says(angle_spacing_limit: float) -> float:
    """The largest gap that is allowed is marked out; the last gap does not close."""
    return angle_spacing_limit


@BOOK.misconception(of="angle_chord")
def chord_taped_as_arc(angle_spacing: float) -> float:
    """The distance along the ring is marked with a straight tape."""
    return angle_spacing


@BOOK.misconception(of="bars_between")
def bar_spaces_counted_as_bars(bars_between: float) -> float:
    """The gaps between two angles are counted as bars."""
    return bars_between + 1


@BOOK.misconception(of="bar_spacing")
def bar_gap_shared_by_bars(angle_spacing: float, bars_between: float) -> float:
    """The gap is shared out among the bars; there is one space more than bars."""
    return angle_spacing / bars_between


@BOOK.misconception(of="bar_count")
def angles_counted_as_bars(angle_count: float, bars_between: float) -> float:
    """The angles are counted among the bars."""
    return angle_count * (bars_between + 1)


@BOOK.misconception(of="bar_count")
def last_gap_forgotten(angle_count: float, bars_between: float) -> float:
    """The gap from the last angle back to the first gets no bars."""
    return (angle_count - 1) * bars_between
