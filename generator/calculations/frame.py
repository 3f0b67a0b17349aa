"""The frame: angles on the ring, and the upright bars between them.

Spacing along the ring (the arc) and spacing by a straight tape (the chord) differ; with few angles the difference
shows. On a closed ring there are as many spaces as angles; between two angles there is one bar less than spaces.
"""

from math import pi, sin

from generator.calculations._book import BOOK
from generator.formula import common_practice, derived, whole_down, whole_up

BOOK.given(
    "angle_spacing_limit",
    symbol="s_a",
    unit="m",
    low=0.3,
    high=1.0,
    step=0.05,
    source=common_practice("widest distance between angles along the ring"),
)
BOOK.given(
    "bar_spacing_limit",
    symbol="s_b",
    unit="m",
    low=0.08,
    high=0.3,
    step=0.01,
    source=common_practice("bars further apart let the mesh sag between them"),
)


@BOOK.quantity(symbol="n_a", unit="", places=0, low=4, high=86, source=derived("spaces of a closed ring, rounded up"))
def angle_count(ring_length: float, angle_spacing_limit: float) -> float:
    """Angles on the ring: as many as spaces. Fewer than 4 make no ring.

    Args:
        ring_length: once round the frame ring [m], 1.9 to 25.5.
        angle_spacing_limit: widest distance along the ring [m], 0.3 to 1.

    Returns:
        Number of angles [-], 4 to 86.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> angle_count(ring_length=10.795, angle_spacing_limit=0.75)
        15.0
    """
    return whole_up(ring_length / angle_spacing_limit)


@BOOK.quantity(symbol="s_r", unit="m", places=3, low=0.2, high=1.0, source=derived("the ring shared out evenly"))
def angle_spacing(ring_length: float, angle_count: float) -> float:
    """Distance from angle to angle along the ring, so that the last space is like the first.

    Args:
        ring_length: once round the frame ring [m], 1.9 to 25.5.
        angle_count: angles on the ring [-], 4 to 86.

    Returns:
        Distance along the ring [m], 0.2 to 1.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(angle_spacing(ring_length=10.795, angle_count=15), 3)
        '0.720'
    """
    return ring_length / angle_count


@BOOK.quantity(symbol="s_c", unit="m", places=3, low=0.2, high=1.0, source=derived("chord of a circle"))
def angle_chord(frame_diameter: float, angle_count: float) -> float:
    """Distance from angle to angle by a straight tape.

    Args:
        frame_diameter: across the frame ring [m], 0.6 to 8.1.
        angle_count: angles on the ring [-], 4 to 86.

    Returns:
        Straight distance [m], 0.2 to 1.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(angle_chord(frame_diameter=3.436, angle_count=15), 3)
        '0.714'
    """
    return frame_diameter * sin(pi / angle_count)


@BOOK.quantity(symbol="n_b", unit="", places=0, low=0, high=12, source=derived("one bar less than spaces"))
def bars_between(angle_spacing: float, bar_spacing_limit: float) -> float:
    """Upright bars between two angles.

    Args:
        angle_spacing: distance along the ring from angle to angle [m], 0.2 to 1.
        bar_spacing_limit: widest distance between bars [m], 0.08 to 0.3.

    Returns:
        Number of bars in each space [-], 0 to 12.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> bars_between(angle_spacing=0.72, bar_spacing_limit=0.25)
        2.0
    """
    return whole_up(angle_spacing / bar_spacing_limit) - 1


@BOOK.quantity(symbol="s_u", unit="m", places=3, low=0.04, high=0.3, source=derived("the space shared out evenly"))
def bar_spacing(angle_spacing: float, bars_between: float) -> float:
    """Distance between neighbouring uprights along the ring, angles counted in.

    Args:
        angle_spacing: distance along the ring from angle to angle [m], 0.2 to 1.
        bars_between: bars between two angles [-], 0 to 12.

    Returns:
        Distance along the ring [m], 0.04 to 0.3.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(bar_spacing(angle_spacing=0.72, bars_between=2), 3)
        '0.240'
    """
    return angle_spacing / (bars_between + 1)


@BOOK.quantity(symbol="N_b", unit="", places=0, low=0, high=350, source=derived("every space has its bars"))
def bar_count(angle_count: float, bars_between: float) -> float:
    """All upright bars of the frame.

    Args:
        angle_count: angles on the ring [-], 4 to 86.
        bars_between: bars between two angles [-], 0 to 12.

    Returns:
        Number of bars [-], 0 to 350.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> bar_count(angle_count=15, bars_between=2)
        30
    """
    return angle_count * bars_between


@BOOK.misconception(of="angle_count")
def one_angle_more_as_in_a_row(angle_count: float) -> float:
    """A ring was counted like a fence: one post more than spaces."""
    return angle_count + 1


@BOOK.misconception(of="angle_count")
def angles_rounded_down(ring_length: float, angle_spacing_limit: float) -> float:
    """The part of a space that was left over was forgotten."""
    return whole_down(ring_length / angle_spacing_limit)


@BOOK.misconception(of="angle_chord")
def arc_taped_as_chord(angle_spacing: float) -> float:
    """The distance along the ring was set with a straight tape."""
    return angle_spacing


@BOOK.misconception(of="bars_between")
def spaces_counted_not_bars(bars_between: float) -> float:
    """The spaces between two angles were counted as bars."""
    return bars_between + 1


@BOOK.misconception(of="bar_spacing")
def space_divided_by_bars(angle_spacing: float, bars_between: float) -> float:
    """The space was divided by the bars, and not by the gaps."""
    return angle_spacing / bars_between


@BOOK.misconception(of="bar_count")
def bars_of_one_space_forgotten(angle_count: float, bars_between: float) -> float:
    """The ring was counted like a row: its last space got no bars."""
    return (angle_count - 1) * bars_between
