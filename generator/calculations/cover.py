"""Cover over steel: what must be planned so that no place is thin, and how little a few good readings prove.

Least over a bar or an angle is 5 mm, anywhere; so the plan aims at 8 mm or more. A mean says nothing about the thinnest
place, and ten good readings still leave room for a quarter of the wall to be thin. Patch a thin place while the wall is
green; a rusting bar is a repair from inside a tank, with all its dangers.

References:
    .. [1] IS 456:2000, clause 12.3.2 (read at second hand): cover may come out 10 mm more, and nothing less.
"""

from math import exp, log

from generator.calculations._book import BOOK
from generator.calculations.mortar import PERCENT
from generator.formula import Constant, common_practice, derived, whole_up

LEAST_BAR_COVER = Constant(5, "mm", common_practice("no reading over a bar or an angle is thinner than this"))
AIMED_BAR_COVER = Constant(8, "mm", common_practice("planned over bars and angles, so that no place falls under 5 mm"))
CHANCE_LEFT = Constant(0.05, "", derived("policy of this course: sure in 19 of 20 walls"))

BOOK.given(
    "readings_taken",
    symbol="n_y",
    unit="",
    low=5,
    high=300,
    step=1,
    source=derived("fewer than 5 show nothing, more than 300 are a day's work"),
)
BOOK.given(
    "thin_readings",
    symbol="x_y",
    unit="",
    low=0,
    high=20,
    step=1,
    source=derived("what a crew counts; more than a few and the face is done again"),
)
BOOK.given(
    "nominal_cover",
    symbol="c_y",
    unit="mm",
    low=5,
    high=25,
    step=1,
    source=common_practice("cover that the plan asks for over bars and angles"),
)
BOOK.given(
    "cover_tolerance",
    symbol="e_y",
    unit="mm",
    low=0,
    high=10,
    step=1,
    source=common_practice("how much less a crew puts on in places; measured on its own sample panel"),
)
BOOK.given(
    "thin_share_wanted",
    symbol="p_y",
    unit="%",
    low=1,
    high=50,
    step=1,
    source=derived("the share of the wall that may stay unknown; the owner and the engineer say how much"),
)
BOOK.given(
    "measured_thickness",
    symbol="t_y",
    unit="mm",
    low=20,
    high=100,
    step=1,
    source=derived("what a gauge can show in a wall of this course"),
)


@BOOK.quantity(symbol="L_y", unit="mm", places=0, low=0, high=25, source=derived("plan less what may be missing"))
def least_cover_expected(nominal_cover: float, cover_tolerance: float) -> float:
    """Thinnest cover to be expected where the plan is kept as well as this crew can.

    Args:
        nominal_cover: cover that the plan asks for [mm], 5 to 25.
        cover_tolerance: how much less there is in places [mm], 0 to 10.

    Returns:
        Cover, nothing where steel shows [mm], 0 to 25.

    Raises:
        OutOfRangeError: a given outside its range.

    Example:
        >>> least_cover_expected(nominal_cover=11, cover_tolerance=4)
        7
    """
    return max(nominal_cover - cover_tolerance, 0)


@BOOK.quantity(
    symbol="m_y", unit="mm", places=0, low=0, high=15, source=derived("least cover and tolerance, less the plan")
)
def cover_missing(nominal_cover: float, cover_tolerance: float) -> float:
    """Millimetres to add to the plan so that no place falls under 5 mm, and the plan not under 8 mm.

    Args:
        nominal_cover: cover that the plan asks for [mm], 5 to 25.
        cover_tolerance: how much less there is in places [mm], 0 to 10.

    Returns:
        What is missing; nothing where the plan is enough [mm], 0 to 15.

    Raises:
        OutOfRangeError: a given outside its range.

    Example:
        >>> cover_missing(nominal_cover=7, cover_tolerance=4)
        2.0
    """
    return max(max(LEAST_BAR_COVER + cover_tolerance, AIMED_BAR_COVER) - nominal_cover, 0)


@BOOK.quantity(symbol="S_y", unit="%", places=0, low=0, high=100, source=derived("thin readings / all readings"))
def thin_share_seen(thin_readings: float, readings_taken: float) -> float:
    """Share of the readings that were thin. One is enough to fail the wall; the share says how much to do again.

    Args:
        thin_readings: readings under the limit [-], 0 to 20.
        readings_taken: all readings [-], 5 to 300.

    Returns:
        Share [%], 0 to 100.

    Raises:
        OutOfRangeError: a given outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(thin_share_seen(thin_readings=3, readings_taken=40), 1)
        '7.5'
    """
    return PERCENT * min(thin_readings, readings_taken) / readings_taken


@BOOK.quantity(
    symbol="P_y",
    unit="%",
    places=1,
    low=0.9,
    high=46,
    source=derived("largest share that leaves one chance in twenty to find nothing in so many random places"),
)
def thin_share_possible(readings_taken: float) -> float:
    """Share of the wall that may still be thin when not one reading was: the readings are right with 95 % only.

    It holds for places picked by chance. Places picked by eye show less.

    Args:
        readings_taken: readings, none of them thin [-], 5 to 300.

    Returns:
        Share [%], 0.9 to 46.

    Raises:
        OutOfRangeError: a given outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(thin_share_possible(readings_taken=25), 1)
        '11.3'
    """
    return PERCENT * (1 - exp(log(CHANCE_LEFT) / readings_taken))


@BOOK.quantity(symbol="A_y", unit="m**2", places=1, low=0, high=30, source=derived("share times the area of the wall"))
def thin_area_possible(thin_share_possible: float, mesh_wall_area: float) -> float:
    """Wall that may still be thin when not one reading was.

    Args:
        thin_share_possible: share of the wall that may be thin [%], 0.9 to 46.
        mesh_wall_area: one face of the wall [m**2], 0.7 to 62.

    Returns:
        Area [m**2], 0 to 30.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(thin_area_possible(thin_share_possible=11.3, mesh_wall_area=17.8), 1)
        '2.0'
    """
    return thin_share_possible / PERCENT * mesh_wall_area


@BOOK.quantity(
    symbol="N_y", unit="", places=0, low=5, high=300, source=derived("the same chance turned round, rounded up")
)
def readings_needed(thin_share_wanted: float) -> float:
    """Readings, none of them thin, after which no more than a wanted share of the wall may be thin.

    Args:
        thin_share_wanted: share that may stay unknown [%], 1 to 50.

    Returns:
        Number of readings [-], 5 to 300.

    Raises:
        OutOfRangeError: a given outside its range.

    Example:
        >>> readings_needed(thin_share_wanted=8)
        36.0
    """
    return whole_up(log(CHANCE_LEFT) / log(1 - thin_share_wanted / PERCENT))


@BOOK.quantity(
    symbol="a_y", unit="m**2", places=2, low=0, high=13, source=derived("the wall shared out over its readings")
)
def area_per_reading(mesh_wall_area: float, readings_taken: float) -> float:
    """Wall that one reading stands for.

    Args:
        mesh_wall_area: one face of the wall [m**2], 0.7 to 62.
        readings_taken: readings on this face [-], 5 to 300.

    Returns:
        Area [m**2], 0 to 13.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(area_per_reading(mesh_wall_area=17.8, readings_taken=25), 2)
        '0.71'
    """
    return mesh_wall_area / readings_taken


@BOOK.quantity(symbol="E_y", unit="mm", places=0, low=0, high=115, source=derived("measured against planned"))
def thickness_error(measured_thickness: float, wall_thickness: float) -> float:
    """How far the wall is off its planned thickness, too thick or too thin.

    Args:
        measured_thickness: thickness found with the gauge [mm], 20 to 100.
        wall_thickness: thickness that the plan asks for [mm], 30 to 75.

    Returns:
        Difference [mm], 0 to 115.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> thickness_error(measured_thickness=46, wall_thickness=55)
        9
    """
    return abs(measured_thickness - wall_thickness)


@BOOK.quantity(symbol="e_yt", unit="%", places=0, low=0, high=250, source=derived("difference / plan"))
def thickness_error_share(thickness_error: float, wall_thickness: float) -> float:
    """The difference as a share of the plan: a few millimetres are much of a thin wall.

    Args:
        thickness_error: difference between wall and plan [mm], 0 to 115.
        wall_thickness: thickness that the plan asks for [mm], 30 to 75.

    Returns:
        Share [%], 0 to 250.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(thickness_error_share(thickness_error=9, wall_thickness=55), 0)
        '16'
    """
    return PERCENT * thickness_error / wall_thickness


@BOOK.misconception(of="least_cover_expected")
def plan_taken_for_least_cover(nominal_cover: float) -> float:
    """What was planned was taken for the thinnest place; it is nearer to the mean."""
    return nominal_cover


@BOOK.misconception(of="least_cover_expected")
def tolerance_added_to_cover(nominal_cover: float, cover_tolerance: float) -> float:
    """The tolerance was added, though the thin side matters."""
    return nominal_cover + cover_tolerance


@BOOK.misconception(of="cover_missing")
def cover_planned_without_tolerance(nominal_cover: float) -> float:
    """The plan was held against the least reading, with nothing for the crew's spread."""
    return max(LEAST_BAR_COVER - nominal_cover, 0)


@BOOK.misconception(of="cover_missing")
def whole_tolerance_added(cover_tolerance: float) -> float:
    """The whole tolerance was put on top, though the plan held a part of it already."""
    return cover_tolerance


@BOOK.misconception(of="thin_share_seen")
def thin_against_good_readings(thin_readings: float, readings_taken: float) -> float:
    """Thin readings were divided by the good ones."""
    return PERCENT * thin_readings / max(readings_taken - thin_readings, 1)


@BOOK.misconception(of="thin_share_seen")
def thin_count_taken_for_percent(thin_readings: float) -> float:
    """The number of thin readings was called percent, whatever the number of all readings."""
    return PERCENT * thin_readings / PERCENT


@BOOK.misconception(of="thin_share_possible")
def good_readings_prove_the_whole_wall(readings_taken: float) -> float:
    """Not one reading was thin, so the whole wall was called good."""
    return PERCENT * 0 / readings_taken


@BOOK.misconception(of="thin_share_possible")
def one_reading_stands_for_its_share(readings_taken: float) -> float:
    """With twenty good readings at most a twentieth was thought to be thin."""
    return PERCENT / readings_taken


@BOOK.misconception(of="thin_area_possible")
def thin_area_of_one_reading(area_per_reading: float) -> float:
    """At most the wall round one reading was thought to be thin."""
    return area_per_reading


@BOOK.misconception(of="readings_needed")
def readings_as_one_over_share(thin_share_wanted: float) -> float:
    """For a share of one in ten, ten readings were thought to be enough."""
    return whole_up(PERCENT / thin_share_wanted)


@BOOK.misconception(of="readings_needed")
def readings_as_the_share(thin_share_wanted: float) -> float:
    """The share was taken for the number of readings."""
    return whole_up(thin_share_wanted)


@BOOK.misconception(of="thickness_error_share")
def error_shared_by_what_was_measured(thickness_error: float, measured_thickness: float) -> float:
    """The difference was divided by what was found, not by the plan."""
    return PERCENT * thickness_error / measured_thickness


@BOOK.misconception(of="thickness_error_share")
def millimetres_off_called_percent(thickness_error: float) -> float:
    """The millimetres that the wall is off were written as percent."""
    return thickness_error
