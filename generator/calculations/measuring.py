"""Measuring on the site: square corners, pegs at one level, drawings to scale, buckets, and feet with inches.

The corner is Pythagoras' rule, which masons know as 3-4-5. A hose full of water has its two surfaces at one level, so
the ground is lower where the water stands higher over it. A bucket narrows downward: its middle width stands for it.
"""

from math import pi, sqrt

from generator.calculations._book import BOOK
from generator.calculations.conversions import (
    FEET_IN_METRE_READ_WRONG,
    HUNDREDTHS,
    INCHES_IN_FOOT,
    METRES_IN_FOOT,
    METRES_IN_INCH,
    TENTHS,
    TWO_FIGURES_FROM,
)
from generator.calculations.setting_out import MILLIMETRES_IN_METRE
from generator.calculations.volumes import LITRES_IN_CUBIC_METRE
from generator.formula import Constant, common_practice, derived

ALWAYS_FIVE = Constant(5, "m", derived("the 5 of 3-4-5, taken for a corner of any size"))
MILLIMETRES_FOR_A_METRE = Constant(1, "mm/m", derived("a misreading: 1 to 20 taken as 20 mm for a metre"))
USUAL_SCALE = Constant(10, "", derived("a habit: one centimetre on paper for ten on the site"))
MILLIMETRES_IN_CENTIMETRE = Constant(10, "", derived("a misreading: millimetres called centimetres"))
INCHES_IN_METRE_AS_A_YARD = Constant(36, "inch/m", derived("a metre taken for a yard of 36 inches"))
INCHES_IN_METRE_BY_TWOS = Constant(50, "inch/m", derived("an inch taken for two centimetres"))

BOOK.given(
    "corner_side",
    symbol="a_uc",
    unit="m",
    low=0.3,
    high=8,
    step=0.05,
    source=common_practice("sides that are marked along two strings from a corner peg"),
)
BOOK.given(
    "corner_other_side",
    symbol="b_uc",
    unit="m",
    low=0.3,
    high=8,
    step=0.05,
    source=common_practice("sides that are marked along two strings from a corner peg"),
)
BOOK.given(
    "upper_hose_reading",
    symbol="h_uu",
    unit="m",
    low=0.2,
    high=1.2,
    step=0.01,
    source=common_practice("height at which a crew holds the water over the higher ground"),
)
BOOK.given(
    "lower_hose_reading",
    symbol="h_ul",
    unit="m",
    low=1.2,
    high=2.2,
    step=0.01,
    source=common_practice("as high over the lower ground as a standing person can read"),
)
BOOK.given(
    "mark_height",
    symbol="h_um",
    unit="m",
    low=0.05,
    high=1,
    step=0.05,
    source=common_practice("mark on a peg at the higher ground, for a base or a floor"),
)
BOOK.given(
    "scale_parts",
    symbol="n_us",
    unit="",
    low=5,
    high=100,
    step=1,
    source=common_practice("scales of site drawings, from a detail to a whole yard"),
)
BOOK.given(
    "site_length",
    symbol="L_us",
    unit="m",
    low=0.1,
    high=15,
    step=0.01,
    source=common_practice("from a box to the yard round a tank"),
)
BOOK.given(
    "paper_reading",
    symbol="l_ur",
    unit="mm",
    low=5,
    high=700,
    step=1,
    source=common_practice("what a ruler reads on a sheet of paper"),
)
BOOK.given(
    "bucket_top_width",
    symbol="D_ut",
    unit="m",
    low=0.2,
    high=0.4,
    step=0.005,
    source=common_practice("buckets on sites, inside at the rim"),
)
BOOK.given(
    "bucket_bottom_width",
    symbol="D_ud",
    unit="m",
    low=0.15,
    high=0.35,
    step=0.005,
    source=common_practice("buckets on sites, inside at the bottom"),
)
BOOK.given(
    "bucket_depth",
    symbol="h_ud",
    unit="m",
    low=0.15,
    high=0.45,
    step=0.005,
    source=common_practice("buckets on sites, inside, straight down"),
)
BOOK.given(
    "whole_feet",
    symbol="n_uf",
    unit="foot",
    low=1,
    high=40,
    step=1,
    source=common_practice("feet of a length that is told in feet and inches"),
)
BOOK.given(
    "extra_inches",
    symbol="n_ui",
    unit="inch",
    low=0,
    high=11.5,
    step=0.5,
    source=common_practice("inches over the whole feet"),
)
BOOK.given(
    "centre_pipe_width",
    symbol="d_up",
    unit="mm",
    low=25,
    high=150,
    step=5,
    source=common_practice("pipes, posts and pegs that a ring is swung round"),
)


@BOOK.quantity(symbol="L_uc", unit="m", places=3, low=0.42, high=11.4, source=derived("rule of Pythagoras"))
def corner_diagonal(corner_side: float, corner_other_side: float) -> float:
    """Straight from the end of one side to the end of the other, where the corner is square.

    Args:
        corner_side: marked along one string from the corner [m], 0.3 to 8.
        corner_other_side: marked along the other string from the corner [m], 0.3 to 8.

    Returns:
        The diagonal [m], 0.42 to 11.4.

    Raises:
        OutOfRangeError: a side is outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(corner_diagonal(corner_side=3, corner_other_side=4), 3)
        '5.000'
    """
    return sqrt(corner_side**2 + corner_other_side**2)


@BOOK.misconception(of="corner_diagonal")
def diagonal_from_added_sides(corner_side: float, corner_other_side: float) -> float:
    """The way round by the corner was taken for the way straight across."""
    return corner_side + corner_other_side


@BOOK.misconception(of="corner_diagonal")
def diagonal_always_five(corner_side: float) -> float:
    """The 5 of 3-4-5 was taken, though the sides were not 3 and 4."""
    return ALWAYS_FIVE + 0 * corner_side


@BOOK.quantity(symbol="L_uk", unit="m", places=3, low=0.2, high=4.1, source=derived("the radius starts in the middle"))
def stick_from_pipe(frame_radius: float, centre_pipe_width: float) -> float:
    """Length of the stick that is swung round a pipe and touches its face.

    Args:
        frame_radius: from the middle of the pipe to the ring of the bars [m], 0.3 to 4.05.
        centre_pipe_width: width of the pipe in the middle [mm], 25 to 150.

    Returns:
        Length of the stick, from the face of the pipe to the ring [m], 0.2 to 4.1.

    Raises:
        OutOfRangeError: a size is outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(stick_from_pipe(frame_radius=1.2, centre_pipe_width=60), 3)
        '1.170'
    """
    return frame_radius - centre_pipe_width / 2 / MILLIMETRES_IN_METRE


@BOOK.misconception(of="stick_from_pipe")
def pipe_forgotten_at_the_stick(frame_radius: float) -> float:
    """The whole radius was measured from the face of the pipe."""
    return frame_radius


@BOOK.misconception(of="stick_from_pipe")
def whole_pipe_taken_off_the_stick(frame_radius: float, centre_pipe_width: float) -> float:
    """The whole width of the pipe was taken off."""
    return frame_radius - centre_pipe_width / MILLIMETRES_IN_METRE


@BOOK.quantity(symbol="x_ug", unit="m", places=2, low=0, high=2, source=derived("water in a hose stands at one level"))
def ground_drop(lower_hose_reading: float, upper_hose_reading: float) -> float:
    """How much lower the ground is at one end of a water hose than at the other.

    Args:
        lower_hose_reading: from the lower ground up to the water [m], 1.2 to 2.2.
        upper_hose_reading: from the higher ground up to the water [m], 0.2 to 1.2.

    Returns:
        The drop of the ground [m], 0 to 2.

    Raises:
        OutOfRangeError: a reading is outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(ground_drop(lower_hose_reading=1.35, upper_hose_reading=1.1), 2)
        '0.25'
    """
    return lower_hose_reading - upper_hose_reading


@BOOK.misconception(of="ground_drop")
def hose_readings_added(lower_hose_reading: float, upper_hose_reading: float) -> float:
    """The two readings were added."""
    return lower_hose_reading + upper_hose_reading


@BOOK.misconception(of="ground_drop")
def drop_read_at_one_end(lower_hose_reading: float) -> float:
    """The reading at the lower end was taken for the drop."""
    return lower_hose_reading


@BOOK.quantity(
    symbol="h_up", unit="m", places=2, low=0.05, high=3, source=derived("water in a hose stands at one level")
)
def peg_mark(mark_height: float, ground_drop: float) -> float:
    """How far above the lower ground the mark sits that is level with the mark on the higher ground.

    Args:
        mark_height: from the higher ground up to its mark [m], 0.05 to 1.
        ground_drop: how much lower the other ground is [m], 0 to 2.

    Returns:
        Height of the level mark over the lower ground [m], 0.05 to 3.

    Raises:
        OutOfRangeError: a length is outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(peg_mark(mark_height=0.2, ground_drop=0.25), 2)
        '0.45'
    """
    return mark_height + ground_drop


@BOOK.misconception(of="peg_mark")
def marks_equally_high_over_the_ground(mark_height: float) -> float:
    """Both marks were set equally high over their ground."""
    return mark_height


@BOOK.misconception(of="peg_mark")
def drop_taken_off_the_mark(mark_height: float, ground_drop: float) -> float:
    """The drop was taken off, as if the lower ground needed a lower mark."""
    return abs(ground_drop - mark_height)


@BOOK.quantity(symbol="L_up", unit="mm", places=1, low=1, high=3000, source=derived("1 to so much: divide by it"))
def paper_length(site_length: float, scale_parts: float) -> float:
    """How long something is drawn.

    Args:
        site_length: its true length [m], 0.1 to 15.
        scale_parts: the second number of the scale, 20 in 1 to 20 [-], 5 to 100.

    Returns:
        Its length on paper [mm], 1 to 3000.

    Raises:
        OutOfRangeError: the length or the scale is outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(paper_length(site_length=2.2, scale_parts=20), 1)
        '110.0'
    """
    return site_length * MILLIMETRES_IN_METRE / scale_parts


@BOOK.misconception(of="paper_length")
def scale_as_millimetres_for_a_metre(site_length: float, scale_parts: float) -> float:
    """1 to 20 was taken as 20 millimetres for each metre."""
    return site_length * scale_parts * MILLIMETRES_FOR_A_METRE


@BOOK.misconception(of="paper_length")
def drawn_at_the_usual_scale(site_length: float) -> float:
    """One centimetre was drawn for ten, out of habit."""
    return site_length * MILLIMETRES_IN_METRE / USUAL_SCALE


@BOOK.quantity(symbol="L_ur", unit="m", places=2, low=0.02, high=70, source=derived("1 to so much: times it"))
def length_from_paper(paper_reading: float, scale_parts: float) -> float:
    """How long something on a drawing is in truth.

    Args:
        paper_reading: what the ruler reads on the drawing [mm], 5 to 700.
        scale_parts: the second number of the scale, 20 in 1 to 20 [-], 5 to 100.

    Returns:
        Its true length [m], 0.02 to 70.

    Raises:
        OutOfRangeError: the reading or the scale is outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(length_from_paper(paper_reading=85, scale_parts=20), 2)
        '1.70'
    """
    return paper_reading * scale_parts / MILLIMETRES_IN_METRE


@BOOK.misconception(of="length_from_paper")
def paper_read_at_the_usual_scale(paper_reading: float) -> float:
    """Each centimetre of the drawing was taken for ten, out of habit."""
    return paper_reading * USUAL_SCALE / MILLIMETRES_IN_METRE


@BOOK.misconception(of="length_from_paper")
def paper_millimetres_called_centimetres(length_from_paper: float) -> float:
    """The millimetres of the ruler were called centimetres."""
    return length_from_paper * MILLIMETRES_IN_CENTIMETRE


@BOOK.quantity(
    symbol="D_um", unit="m", places=4, low=0.17, high=0.38, source=derived("the mean of two ends of a straight side")
)
def bucket_middle_width(bucket_top_width: float, bucket_bottom_width: float) -> float:
    """Width of a bucket halfway down.

    Args:
        bucket_top_width: inside, at the rim [m], 0.2 to 0.4.
        bucket_bottom_width: inside, at the bottom [m], 0.15 to 0.35.

    Returns:
        The width halfway down, inside [m], 0.17 to 0.38.

    Raises:
        OutOfRangeError: a width is outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(bucket_middle_width(bucket_top_width=0.3, bucket_bottom_width=0.22), 2)
        '0.26'
    """
    return (bucket_top_width + bucket_bottom_width) / 2


@BOOK.misconception(of="bucket_middle_width")
def bucket_measured_at_the_rim(bucket_top_width: float) -> float:
    """The rim was measured, and the bucket taken for as wide all the way down."""
    return bucket_top_width


@BOOK.quantity(
    symbol="V_ud",
    unit="L",
    places=1,
    low=3.4,
    high=51,
    source=derived("round area at the middle times depth; of a usual bucket 1 part in 100 under the true cone frustum"),
)
def bucket_volume(bucket_middle_width: float, bucket_depth: float) -> float:
    """What a round bucket holds, full to the rim.

    Args:
        bucket_middle_width: width inside, halfway down [m], 0.17 to 0.38.
        bucket_depth: depth inside, straight down [m], 0.15 to 0.45.

    Returns:
        Its volume [L], 3.4 to 51.

    Raises:
        OutOfRangeError: a size is outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(bucket_volume(bucket_middle_width=0.26, bucket_depth=0.25), 1)
        '13.3'
    """
    return pi / 4 * bucket_middle_width**2 * bucket_depth * LITRES_IN_CUBIC_METRE


@BOOK.misconception(of="bucket_volume")
def bucket_taken_for_a_box(bucket_middle_width: float, bucket_depth: float) -> float:
    """Width times width was taken, as if the bucket were square."""
    return bucket_middle_width**2 * bucket_depth * LITRES_IN_CUBIC_METRE


@BOOK.quantity(
    symbol="L_uf", unit="m", places=3, low=0.3, high=12.5, source=derived("1 foot is 304.8 mm, 1 inch 25.4 mm")
)
def metres_from_feet_and_inches(whole_feet: float, extra_inches: float) -> float:
    """A length that was told in feet and inches, as metres.

    Args:
        whole_feet: the feet [foot], 1 to 40.
        extra_inches: the inches over them [inch], 0 to 11.5.

    Returns:
        The same length [m], 0.3 to 12.5.

    Raises:
        OutOfRangeError: feet or inches are outside their range.

    Example:
        >>> from generator.formula import show
        >>> show(metres_from_feet_and_inches(whole_feet=5, extra_inches=6), 3)
        '1.676'
    """
    return whole_feet * METRES_IN_FOOT + extra_inches * METRES_IN_INCH


@BOOK.misconception(of="metres_from_feet_and_inches")
def inches_as_tenths_of_a_foot(whole_feet: float, extra_inches: float) -> float:
    """5 feet 6 inches was worked out as 5.6 feet, and 5 feet 10 inches as 5.10 feet."""
    tenths = extra_inches / TENTHS if extra_inches < TWO_FIGURES_FROM else extra_inches / HUNDREDTHS
    return (whole_feet + tenths) * METRES_IN_FOOT


@BOOK.misconception(of="metres_from_feet_and_inches")
def three_feet_taken_for_a_metre(whole_feet: float, extra_inches: float) -> float:
    """Three feet were taken for a metre."""
    return (whole_feet + extra_inches / INCHES_IN_FOOT) / FEET_IN_METRE_READ_WRONG


@BOOK.quantity(symbol="L_ui", unit="inch", places=1, low=3.9, high=591, source=derived("1 inch is 25.4 mm"))
def inches_of_length(site_length: float) -> float:
    """A length in metres as inches.

    Args:
        site_length: the length [m], 0.1 to 15.

    Returns:
        The same length [inch], 3.9 to 591.

    Raises:
        OutOfRangeError: the length is outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(inches_of_length(site_length=1), 1)
        '39.4'
    """
    return site_length / METRES_IN_INCH


@BOOK.misconception(of="inches_of_length")
def metre_taken_for_a_yard(site_length: float) -> float:
    """A metre was taken for three feet, which is 36 inches."""
    return site_length * INCHES_IN_METRE_AS_A_YARD


@BOOK.misconception(of="inches_of_length")
def inch_taken_for_two_centimetres(site_length: float) -> float:
    """An inch was taken for two centimetres."""
    return site_length * INCHES_IN_METRE_BY_TWOS
