"""Plastering day: faces to cover, hands to cover them, and mortar that is fresh when it reaches the wall.

Once started, the first coat goes round without a break; so the crew is chosen for the area, and not the area for the
crew. Mortar that has lain too long is thrown away, never softened with water. How much one mason covers is from memory:
it plans a crew and only warns. Plaster from trestles, never from the cage.

References:
    .. [1] Rainwater Reservoirs above Ground Structures for Roof Catchment, GTZ/GATE 1989, chapter 3.
"""

from math import pi

from generator.calculations._book import BOOK
from generator.calculations.mortar import PERCENT
from generator.calculations.setting_out import MILLIMETRES_IN_METRE
from generator.formula import Constant, common_practice, derived, from_memory, published, whole_down, whole_up

WORKING_DAY = Constant(8, "hour/day", published("tabulated Indian labour constants: days of 8 hours"))
MINUTES_IN_HOUR = Constant(60, "minute/hour", derived("1 hour is 60 minutes"))
HOUSE_PLASTER_RATE = Constant(
    10, "m**2/day", published("tabulated Indian labour constants: house plaster of 12 mm, 100 m2 in 10 mason-days")
)

BOOK.given(
    "mason_day_area",
    symbol="A_om",
    unit="m**2/day",
    low=3,
    high=5,
    step=0.5,
    source=from_memory("one face of a mesh wall by one mason in a day: 3 to 5 m2"),
)
BOOK.given(
    "coat_days",
    symbol="T_oc",
    unit="day",
    low=0.5,
    high=1,
    step=0.25,
    source=published("GTZ/GATE 1989, chapter 3: the first coat goes round without a break, so never over a day"),
)
BOOK.given(
    "coat_faces",
    symbol="k_of",
    unit="",
    low=1,
    high=2,
    step=1,
    source=derived("the wall has an outside and an inside"),
)
BOOK.given(
    "batch_minutes",
    symbol="T_ob",
    unit="minute",
    low=5,
    high=30,
    step=1,
    source=common_practice("one pair mixes one batch: dry until one colour, then wet"),
)
BOOK.given(
    "placing_minutes",
    symbol="T_op",
    unit="minute",
    low=15,
    high=30,
    step=5,
    source=published("plaster note: small batches, used up in 30 minutes; less in heat"),
)


@BOOK.quantity(symbol="A_oo", unit="m**2", places=1, low=0.8, high=62, source=derived("way round x height"))
def plaster_area_outside(outside_diameter: float, wall_height: float) -> float:
    """Outer face of the wall.

    Args:
        outside_diameter: outer face to outer face [m], 0.6 to 8.2.
        wall_height: height of the wall [m], 0.4 to 2.4.

    Returns:
        Area [m**2], 0.8 to 62.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(plaster_area_outside(outside_diameter=3.2, wall_height=1.4), 1)
        '14.1'
    """
    return pi * outside_diameter * wall_height


@BOOK.quantity(symbol="A_oi", unit="m**2", places=1, low=0.7, high=61, source=derived("way round x height"))
def plaster_area_inside(inside_diameter: float, wall_height: float) -> float:
    """Inner face of the wall, the floor not counted.

    Args:
        inside_diameter: across the water [m], 0.6 to 8.
        wall_height: height of the wall [m], 0.4 to 2.4.

    Returns:
        Area [m**2], 0.7 to 61.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(plaster_area_inside(inside_diameter=3.1, wall_height=1.4), 1)
        '13.6'
    """
    return pi * inside_diameter * wall_height


@BOOK.quantity(
    symbol="A_oc", unit="m**2", places=1, low=0.8, high=123, source=derived("one face, or both on the same day")
)
def coat_area(plaster_area_outside: float, plaster_area_inside: float, coat_faces: float) -> float:
    """What must be covered between one morning and its evening: the outer face, or both faces.

    Args:
        plaster_area_outside: outer face of the wall [m**2], 0.8 to 62.
        plaster_area_inside: inner face of the wall [m**2], 0.7 to 61.
        coat_faces: faces that are plastered on the same day [-], 1 to 2.

    Returns:
        Area [m**2], 0.8 to 123.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(coat_area(plaster_area_outside=14, plaster_area_inside=13, coat_faces=2), 1)
        '27.0'
    """
    return plaster_area_outside + plaster_area_inside * (coat_faces - 1)


@BOOK.quantity(
    symbol="n_om",
    unit="",
    places=0,
    low=1,
    high=82,
    source=from_memory("area / what one mason covers, rounded up; that figure is recalled, so it only plans a crew"),
)
def masons_needed(coat_area: float, mason_day_area: float, coat_days: float) -> float:
    """Masons who close a coat in its time, rounded up. A tank that needs more than the village has is built smaller.

    Args:
        coat_area: what must be covered [m**2], 0.8 to 123.
        mason_day_area: what one mason covers in a day [m**2/day], 3 to 5.
        coat_days: time that the coat may take [day], 0.5 to 1.

    Returns:
        Number of masons [-], 1 to 82.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> masons_needed(coat_area=14.1, mason_day_area=4, coat_days=1)
        4.0
    """
    return whole_up(coat_area / (mason_day_area * coat_days))


@BOOK.quantity(
    symbol="n_oc", unit="", places=0, low=1, high=200, source=derived("mortar of the coat with its loss over a batch")
)
def coat_batches(coat_area: float, coat_thickness: float, mortar_waste: float, batch_volume: float) -> float:
    """Batches for one coat, with what is lost on the way: whole batches, rounded up.

    Args:
        coat_area: what must be covered [m**2], 0.8 to 123.
        coat_thickness: thickness of the coat [mm], 6 to 40.
        mortar_waste: mortar that is lost [%], 0 to 20.
        batch_volume: mortar that comes out of one batch [m**3], 0.03 to 0.24.

    Returns:
        Number of batches [-], 1 to 200.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> coat_batches(coat_area=14, coat_thickness=20, mortar_waste=10, batch_volume=0.08)
        4.0
    """
    return whole_up(coat_area * coat_thickness / MILLIMETRES_IN_METRE * (1 + mortar_waste / PERCENT) / batch_volume)


@BOOK.quantity(
    symbol="n_ot", unit="", places=0, low=8, high=96, source=derived("working time over the time of one batch")
)
def batches_in_time(coat_days: float, batch_minutes: float) -> float:
    """Batches that one mixing pair turns out while the coat is laid: whole ones, rounded down.

    Args:
        coat_days: time that the coat may take [day], 0.5 to 1.
        batch_minutes: time to mix one batch [minute], 5 to 30.

    Returns:
        Number of batches [-], 8 to 96.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> batches_in_time(coat_days=1, batch_minutes=25)
        19.0
    """
    return whole_down(coat_days * WORKING_DAY * MINUTES_IN_HOUR / batch_minutes)


@BOOK.quantity(
    symbol="n_op", unit="", places=0, low=1, high=25, source=derived("batches of the coat over those of one pair")
)
def mixing_crew(coat_batches: float, batches_in_time: float) -> float:
    """Pairs at the mixing place, so that the masons never wait: rounded up.

    Args:
        coat_batches: batches for one coat [-], 1 to 200.
        batches_in_time: batches that one pair turns out [-], 8 to 96.

    Returns:
        Number of pairs [-], 1 to 25.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> mixing_crew(coat_batches=21, batches_in_time=19)
        2.0
    """
    return whole_up(coat_batches / batches_in_time)


@BOOK.quantity(
    symbol="T_ol",
    unit="minute",
    places=0,
    low=0,
    high=6500,
    source=from_memory("area of a batch / what all masons cover; what one covers is recalled, so it only warns"),
)
def batch_placing_time(batch_cover_area: float, masons_needed: float, mason_day_area: float) -> float:
    """Time that all masons together need to lay one batch on.

    Args:
        batch_cover_area: wall that one batch covers [m**2], 0.7 to 40.
        masons_needed: masons on the wall [-], 1 to 82.
        mason_day_area: what one mason covers in a day [m**2/day], 3 to 5.

    Returns:
        Time [minute], 0 to 6500.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(batch_placing_time(batch_cover_area=4, masons_needed=4, mason_day_area=4), 0)
        '120'
    """
    return batch_cover_area / (masons_needed * mason_day_area) * WORKING_DAY * MINUTES_IN_HOUR


@BOOK.quantity(
    symbol="n_ol",
    unit="",
    places=0,
    low=1,
    high=440,
    source=from_memory("laying time of a batch / the time that wet mortar may lie; the laying time is recalled"),
)
def wet_lots(batch_placing_time: float, placing_minutes: float) -> float:
    """Lots in which a dry-mixed batch is wetted, each used up before it stiffens: rounded up.

    Args:
        batch_placing_time: time to lay one batch on [minute], 0 to 6500.
        placing_minutes: time that wet mortar may lie [minute], 15 to 30.

    Returns:
        Number of lots [-], 1 to 440.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> wet_lots(batch_placing_time=70, placing_minutes=30)
        3.0
    """
    return max(1, whole_up(batch_placing_time / placing_minutes))


@BOOK.misconception(of="plaster_area_outside")
def outer_face_from_half_the_width(outside_diameter: float, wall_height: float) -> float:
    """Half the way across was taken for the way round."""
    return pi * outside_diameter / 2 * wall_height


@BOOK.misconception(of="plaster_area_inside")
def round_wall_as_four_walls(inside_diameter: float, wall_height: float) -> float:
    """The round wall was taken for four straight ones."""
    return 4 * inside_diameter * wall_height


@BOOK.misconception(of="coat_area")
def other_face_forgotten(plaster_area_outside: float) -> float:
    """Only the outer face was counted."""
    return plaster_area_outside


@BOOK.misconception(of="masons_needed")
def house_plaster_rate_taken(coat_area: float, coat_days: float) -> float:
    """A mesh wall was thought to go as fast as a house wall."""
    return whole_up(coat_area / (HOUSE_PLASTER_RATE * coat_days))


@BOOK.misconception(of="masons_needed")
def masons_rounded_down(coat_area: float, mason_day_area: float, coat_days: float) -> float:
    """The last mason was left out."""
    return whole_down(coat_area / (mason_day_area * coat_days))


@BOOK.misconception(of="coat_batches")
def loss_of_the_coat_forgotten(coat_area: float, coat_thickness: float, batch_volume: float) -> float:
    """Nothing was added for mortar that falls."""
    return whole_up(coat_area * coat_thickness / MILLIMETRES_IN_METRE / batch_volume)


@BOOK.misconception(of="batches_in_time")
def half_day_mixed_as_a_whole(batch_minutes: float) -> float:
    """A whole day was counted, though the coat must close earlier."""
    return whole_down(WORKING_DAY * MINUTES_IN_HOUR / batch_minutes)


@BOOK.misconception(of="mixing_crew")
def mixing_pair_for_each_mason(masons_needed: float) -> float:
    """A pair was taken for each mason; one pair keeps several supplied."""
    return masons_needed


@BOOK.misconception(of="wet_lots")
def lots_rounded_down(batch_placing_time: float, placing_minutes: float) -> float:
    """The last lot was wetted together with the one before."""
    return max(1, whole_down(batch_placing_time / placing_minutes))
