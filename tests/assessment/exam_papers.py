"""A paper with one question of every kind, whose hidden parts are words that can be looked for in what is given out."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from generator import curriculum
from generator.curriculum import CourseContent
from generator.exercises import (
    Area,
    ChoiceItem,
    Learner,
    MatchItem,
    NumberItem,
    OrderItem,
    QuestionItem,
    Record,
    SpokenItem,
    SpotItem,
)
from generator.figures import Scene, draw, hot_areas

ROOT = Path(__file__).parents[2]
SPOT = "fault-lap-too-short"
HIDDEN = (
    "hidden-", "hidden_quantity", "hidden_mistake", "77.31", "77.29", "0.0417", "because of the hidden reason",
    "secret-seed", SPOT,
)  # fmt: skip
"""Ids, names of quantities, misconceptions and places, keys, tolerances, reasons, the seed, the drawing's key."""


@cache
def course() -> CourseContent:
    """The shipped course."""
    loaded = curriculum.load(ROOT)
    assert loaded.content is not None, loaded.problems[:5]
    return loaded.content


def number(id_: str, text: str, **more: object) -> NumberItem:
    """A number question with a key that no text holds."""
    values: dict[str, object] = {
        "id": f"hidden-{id_}", "competency": "lap", "text": text, "asks": "hidden_quantity", "unit": "m", "places": 2,
        "low": 0.0, "high": 100.0, "givens": {"hidden_given": 3.0}, "key": 77.31, "shown_key": "77.31",
        "rounded": 77.29, "absolute": 0.0417, "relative": 0.0, "wrong": {"hidden_mistake": 12.0},
    }  # fmt: skip
    return NumberItem.model_validate(values | more)


def choice(id_: str, *, several: bool = False) -> ChoiceItem:
    return ChoiceItem(
        id=f"hidden-{id_}", competency="tying", text="Which wire?", several=several,
        options=("thin wire", "bare wire", "thick wire"), right=(1,),
        why=("because of the hidden reason", "", ""), order=(2, 0, 1),
    )  # fmt: skip


def spot_key() -> str:
    """A drawing with a fault to find."""
    return next(iter(hot_areas()))


def items() -> tuple[QuestionItem, ...]:
    """One of every kind."""
    key = spot_key()
    letters = hot_areas(7)[key]
    return (
        number("plain", "How long is the wire?"),
        number("with-units", "How long is the rope?", unit="m", units=("m", "cm")),
        number("with-steps", "How long in all?", steps=(number("step", "the first part"),), aids=("tape",)),
        choice("one"),
        choice("some", several=True),
        OrderItem(
            id="hidden-order", competency="tying", text="What comes first?", steps=("cut", "bend", "tie"),
            why="because of the hidden reason", order=(2, 0, 1),
        ),
        MatchItem(
            id="hidden-match", competency="tying", text="What belongs together?", left=("hook", "saw"),
            right=("ties", "cuts"), why="because of the hidden reason", order=(1, 0),
        ),
        SpotItem(
            id="hidden-spot", competency="lap", text="Where is the fault?", figure=key, several=False,
            areas=tuple(Area(letter=letter, name=name) for letter, name in letters.items()),
            labels=("",) * len(letters), right=(0,), why=("because of the hidden reason",) * len(letters),
        ),
        SpokenItem(
            id="hidden-spoken", competency="lap", text="How many now?",
            script=("How many now? /", "Say the number. #"), answer=number("said", "How many now?"),
        ),
    )  # fmt: skip


def learner(name: str = "Asha Devi", language: str = "en", number_: int = 1) -> Learner:
    return Learner(number=number_, name=name, language=language, items=items())


def figures(language: str = "en") -> dict[str, Scene]:
    """The drawing of the question with a fault to find, which is the eighth."""
    made = course()
    place = next(iter(made.places))
    return {"8": draw(spot_key(), made.values(place), made.words[language], 7)}


def record(*learners: Learner) -> Record:
    """A record of these papers."""
    return Record(
        format=1, tool="test", course="tankschool", course_version="1", module="frame",
        seed="exam|frame-hand|2|1|0123456789abcdef|spring", questions=9, language="en", texts={},
        formulas="", learners=learners or (learner(),),
    )  # fmt: skip
