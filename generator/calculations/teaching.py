"""A workshop in numbers: who shares a work place, how long each holds the tool, what is talked, watched and agreed.

All of it is counting and sharing. None of it says that someone may build: that is decided by what was seen.
"""

from generator.calculations._book import BOOK
from generator.calculations.mortar import PERCENT
from generator.formula import common_practice, derived, whole_down, whole_up

BOOK.given(
    "learners",
    symbol="N_il",
    unit="",
    low=1,
    high=40,
    step=1,
    source=common_practice("people who learn at one time; with more than fifteen most trainers make two groups"),
)
BOOK.given(
    "work_places",
    symbol="n_iw",
    unit="",
    low=1,
    high=20,
    step=1,
    source=common_practice("frames, panels or heaps at which people work at the same time"),
)
BOOK.given(
    "talk_minutes",
    symbol="T_it",
    unit="minute",
    low=0,
    high=240,
    step=5,
    source=common_practice("a day's talk and questions"),
)
BOOK.given(
    "show_minutes",
    symbol="T_is",
    unit="minute",
    low=0,
    high=240,
    step=5,
    source=common_practice("a day's showing"),
)
BOOK.given(
    "hand_minutes",
    symbol="T_ih",
    unit="minute",
    low=5,
    high=480,
    step=5,
    source=common_practice("a day's work with hands"),
)
BOOK.given(
    "watched_at_once",
    symbol="n_io",
    unit="",
    low=1,
    high=10,
    step=1,
    source=common_practice("learners who are watched at the same time, each by two observers"),
)
BOOK.given(
    "watch_minutes",
    symbol="T_iw",
    unit="minute",
    low=5,
    high=120,
    step=5,
    source=common_practice("time that a practical takes a learner"),
)
BOOK.given(
    "change_minutes",
    symbol="T_ic",
    unit="minute",
    low=0,
    high=30,
    step=5,
    source=common_practice("washing up, new material and the next learner's dress"),
)
BOOK.given(
    "steps_watched",
    symbol="n_is",
    unit="",
    low=5,
    high=40,
    step=1,
    source=derived("steps on one checklist, or on a few of them"),
)
BOOK.given(
    "differing_steps",
    symbol="x_is",
    unit="",
    low=0,
    high=20,
    step=1,
    source=derived("steps that two observers marked differently, counted when both sheets are full"),
)


@BOOK.quantity(
    symbol="n_ip", unit="", places=0, low=1, high=40, source=derived("learners / work places, every learner somewhere")
)
def learners_at_place(learners: float, work_places: float) -> float:
    """How many share one work place where the fullest is: nobody is left standing beside.

    Args:
        learners: learners [-], 1 to 40.
        work_places: work places [-], 1 to 20.

    Returns:
        Learners [-], 1 to 40.

    Raises:
        OutOfRangeError: a given outside its range.

    Example:
        >>> learners_at_place(learners=13, work_places=4)
        4.0
    """
    return whole_up(learners / work_places)


@BOOK.quantity(
    symbol="T_ip", unit="minute", places=0, low=0.1, high=480, source=derived("time for hands / learners at the place")
)
def turn_minutes(hand_minutes: float, learners_at_place: float) -> float:
    """How long each learner holds the tool, if they take turns of equal length.

    Args:
        hand_minutes: time for hands [minute], 5 to 480.
        learners_at_place: who share a place [-], 1 to 40.

    Returns:
        Time [minute], 0.1 to 480.

    Raises:
        OutOfRangeError: a given outside its range.

    Example:
        >>> turn_minutes(hand_minutes=120, learners_at_place=3)
        40.0
    """
    return hand_minutes / learners_at_place


@BOOK.quantity(symbol="p_it", unit="%", places=0, low=0, high=99, source=derived("talk / all minutes of teaching"))
def talk_share(talk_minutes: float, show_minutes: float, hand_minutes: float) -> float:
    """Share of the teaching in which the trainer talks.

    Args:
        talk_minutes: talk and questions [minute], 0 to 240.
        show_minutes: showing [minute], 0 to 240.
        hand_minutes: work with hands [minute], 5 to 480.

    Returns:
        Share [%], 0 to 99.

    Raises:
        OutOfRangeError: a given outside its range.

    Example:
        >>> talk_share(talk_minutes=30, show_minutes=60, hand_minutes=210)
        10.0
    """
    return PERCENT * talk_minutes / (talk_minutes + show_minutes + hand_minutes)


@BOOK.quantity(
    symbol="T_io", unit="minute", places=0, low=5, high=6000, source=derived("rounds of watching, each with its change")
)
def watching_time(learners: float, watched_at_once: float, watch_minutes: float, change_minutes: float) -> float:
    """How long it takes until every learner has been watched once.

    Args:
        learners: who are watched [-], 1 to 40.
        watched_at_once: in one round [-], 1 to 10.
        watch_minutes: of one practical [minute], 5 to 120.
        change_minutes: between two rounds [minute], 0 to 30.

    Returns:
        Time [minute], 5 to 6000.

    Raises:
        OutOfRangeError: a given outside its range.

    Example:
        >>> watching_time(learners=11, watched_at_once=2, watch_minutes=40, change_minutes=10)
        300.0
    """
    return whole_up(learners / watched_at_once) * (watch_minutes + change_minutes)


@BOOK.quantity(
    symbol="p_ia", unit="%", places=0, low=0, high=100, source=derived("steps marked alike / steps on the sheets")
)
def step_agreement(steps_watched: float, differing_steps: float) -> float:
    """How well two observers agree: what they marked alike. It judges how they look, and not the learner.

    Args:
        steps_watched: on both sheets [-], 5 to 40.
        differing_steps: marked differently [-], 0 to 20.

    Returns:
        Share [%], 0 to 100.

    Raises:
        OutOfRangeError: a given outside its range.

    Example:
        >>> step_agreement(steps_watched=20, differing_steps=3)
        85.0
    """
    return PERCENT * (steps_watched - min(differing_steps, steps_watched)) / steps_watched


@BOOK.misconception(of="learners_at_place")
def last_learner_left_over(learners: float, work_places: float) -> float:
    """The rest of the division was dropped, though it is a person."""
    return max(whole_down(learners / work_places), 1)


@BOOK.misconception(of="learners_at_place")
def work_places_shared_by_learners(learners: float, work_places: float) -> float:
    """The work places were divided by the learners."""
    return whole_up(work_places / learners)


@BOOK.misconception(of="turn_minutes")
def each_gets_all_the_time(hand_minutes: float) -> float:
    """The whole time was promised to everyone, as if they did not share."""
    return hand_minutes


@BOOK.misconception(of="turn_minutes")
def all_wait_at_one_place(hand_minutes: float, learners: float) -> float:
    """The time was shared among all learners, as if there were one work place."""
    return hand_minutes / learners


@BOOK.misconception(of="talk_share")
def talk_held_against_hands(talk_minutes: float, hand_minutes: float) -> float:
    """Talk was divided by the time of the hands, and not by all of it."""
    return PERCENT * talk_minutes / hand_minutes


@BOOK.misconception(of="talk_share")
def showing_taken_for_talk(talk_minutes: float, show_minutes: float, hand_minutes: float) -> float:
    """Showing was counted as talk."""
    return PERCENT * (talk_minutes + show_minutes) / (talk_minutes + show_minutes + hand_minutes)


@BOOK.misconception(of="watching_time")
def last_round_left_out(learners: float, watched_at_once: float, watch_minutes: float, change_minutes: float) -> float:
    """The last round was left out because it is not full."""
    return max(whole_down(learners / watched_at_once), 1) * (watch_minutes + change_minutes)


@BOOK.misconception(of="watching_time")
def change_between_left_out(learners: float, watched_at_once: float, watch_minutes: float) -> float:
    """No time was planned between two rounds."""
    return whole_up(learners / watched_at_once) * watch_minutes


@BOOK.misconception(of="step_agreement")
def differing_called_agreement(steps_watched: float, differing_steps: float) -> float:
    """The steps that differ were given as the answer."""
    return PERCENT * min(differing_steps, steps_watched) / steps_watched


@BOOK.misconception(of="step_agreement")
def differing_against_alike(steps_watched: float, differing_steps: float) -> float:
    """The steps that differ were divided by those marked alike."""
    return PERCENT * (1 - differing_steps / max(steps_watched - differing_steps, 1))
