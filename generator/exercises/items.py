"""Items: questions with their numbers, options and texts settled, in one language; what is printed, shown and marked.

An item holds all that marking needs, so that a saved set can be marked years later without the bank it came from. The
page makes the same shapes in `marker.js`. A field that came later has a default, so that older records still load.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field, model_validator

from generator.exercises.rounding import Rule
from generator.exercises.tolerance import Tolerance

LEAST_GRAIN = 1e-9


class Frozen(BaseModel):
    """Base of the items: frozen and strict, without infinities."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True, allow_inf_nan=False)


def _permuted(order: tuple[int, ...], count: int) -> None:
    """Refuse an order in which something is missing or stands twice: a damaged file would stop the marking."""
    if sorted(order) != list(range(count)):
        raise ValueError(f"the order {list(order)} does not hold each of {count} positions once")


def _as_long(count: int, *others: tuple[object, ...]) -> None:
    if any(len(other) != count for other in others):
        raise ValueError(f"lists that belong together differ in length: {count} and {[len(other) for other in others]}")


def _positions(places: tuple[int, ...], count: int) -> None:
    if any(not 0 <= place < count for place in places):
        raise ValueError(f"{list(places)} are not all positions of {count}")


class ItemBase(Frozen):
    """What all items share; `text` is as the learner reads it."""

    id: str
    competency: str
    text: str


class NumberItem(ItemBase):
    """A number to work out; also one part of a scenario.

    `asks`, `unit` and `places` describe the quantity; `low` and `high` are the range it may have; `givens` are the
    numbers in the text; `key` is the right answer, `rounded` the one of someone who rounds every step as printed;
    `wrong` holds the answer of each targeted misconception and `also` of the others on the way; an answer fits a value
    within the larger of `absolute` and `relative` times the value.

    `aids` says what may be used; `units` the units to choose from; `rule` and `grain` how the answer has to be rounded,
    and `exact` is the right answer before that; `steps` are the lines on the way that earn a point each.
    """

    kind: Literal["number"] = "number"
    asks: str
    unit: str
    places: int
    low: float
    high: float
    givens: Mapping[str, float]
    key: float
    shown_key: str
    rounded: float
    absolute: float
    relative: float
    wrong: Mapping[str, float]
    also: Mapping[str, float] = {}
    aids: tuple[str, ...] = ()
    units: tuple[str, ...] = ()
    rule: Rule = ""
    grain: float = 0.0
    exact: float | None = None
    steps: tuple[NumberItem, ...] = ()

    @model_validator(mode="after")
    def _grain_with_its_rule(self) -> NumberItem:
        if self.rule and not LEAST_GRAIN <= self.grain <= 1 / LEAST_GRAIN:
            raise ValueError(f"a rounding rule needs a multiple of {LEAST_GRAIN} or more")
        return self

    @property
    def tolerance(self) -> Tolerance:
        """How far off is still right."""
        return Tolerance(self.absolute, self.relative)


class ChoiceItem(ItemBase):
    """Options to choose from; `right` and `order` hold positions in `options`, `order` as they are shown.

    Where the options are numbers that were worked out, `mistakes` holds the misconception behind each (empty for the
    right one), and `asks` and `givens` lead to the worked solution.
    """

    kind: Literal["choice"] = "choice"
    several: bool
    options: tuple[str, ...]
    right: tuple[int, ...]
    why: tuple[str, ...]
    """For each option what would happen on the hill; empty where the author says nothing."""
    order: tuple[int, ...]
    mistakes: tuple[str, ...] = ()
    asks: str = ""
    givens: Mapping[str, float] = {}

    @model_validator(mode="after")
    def _whole(self) -> ChoiceItem:
        count = len(self.options)
        _permuted(self.order, count)
        _as_long(count, self.why, *([self.mistakes] if self.mistakes else []))
        _positions(self.right, count)
        return self


class OrderItem(ItemBase):
    """Steps to put in order; `steps` stand in the right order, `order` holds the positions as they are shown."""

    kind: Literal["order"] = "order"
    steps: tuple[str, ...]
    why: str
    order: tuple[int, ...]

    @model_validator(mode="after")
    def _whole(self) -> OrderItem:
        _permuted(self.order, len(self.steps))
        return self


class MatchItem(ItemBase):
    """Pairs to find: `left[i]` belongs to `right[i]`; `order` holds the positions of the right side as it is shown."""

    kind: Literal["match"] = "match"
    left: tuple[str, ...]
    right: tuple[str, ...]
    why: str
    order: tuple[int, ...]

    @model_validator(mode="after")
    def _whole(self) -> MatchItem:
        _as_long(len(self.left), self.right)
        _permuted(self.order, len(self.left))
        return self


class Area(Frozen):
    """One hot area of a figure: the letter that the drawing shows there, and the figure's own name for the place."""

    letter: Annotated[str, Field(pattern="^[A-H]$")]
    name: str


class SpotItem(ItemBase):
    """A fault to find in a drawing. `areas` come from the figure; `labels`, `right` and `why` stand in their order."""

    kind: Literal["spot"] = "spot"
    figure: str
    several: bool
    areas: tuple[Area, ...]
    labels: tuple[str, ...]
    """What is to be seen at each area, for whoever answers by key or hears the page."""
    right: tuple[int, ...]
    why: tuple[str, ...]

    @model_validator(mode="after")
    def _whole(self) -> SpotItem:
        _as_long(len(self.areas), self.labels, self.why)
        _positions(self.right, len(self.areas))
        return self


class SpokenItem(ItemBase):
    """A question that a helper reads aloud: `script` line by line, with the marks for pauses and pointing.

    `text` is the same without marks. The answer is a letter that is picked or a number that is said.
    """

    kind: Literal["spoken"] = "spoken"
    script: tuple[str, ...]
    answer: Annotated[NumberItem | ChoiceItem, Field(discriminator="kind")]


class ScenarioItem(Frozen):
    """Linked parts on one place; a part's answer feeds the later ones by the name of its quantity."""

    kind: Literal["scenario"] = "scenario"
    id: str
    title: str
    text: str
    givens: Mapping[str, float]
    parts: tuple[NumberItem, ...]


Item = Annotated[
    NumberItem | ChoiceItem | OrderItem | MatchItem | SpotItem | SpokenItem | ScenarioItem,
    Field(discriminator="kind"),
]
QuestionItem = NumberItem | ChoiceItem | OrderItem | MatchItem | SpotItem | SpokenItem
