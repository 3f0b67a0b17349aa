"""Items: questions with their numbers, options and texts settled, in one language; what is printed, shown and marked.

An item holds all that marking needs, so that a saved set can be marked years later without the bank it came from. The
page makes the same shapes in `marker.js`.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

from generator.exercises.tolerance import Tolerance


class Frozen(BaseModel):
    """Base of the items: frozen and strict, without infinities."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True, allow_inf_nan=False)


class ItemBase(Frozen):
    """What all items share; `text` is as the learner reads it."""

    id: str
    competency: str
    text: str


class NumberItem(ItemBase):
    """A number to work out; also one part of a scenario.

    `asks`, `unit` and `places` describe the quantity; `low` and `high` are the range it may have; `givens` are the
    numbers in the text; `key` is the right answer, `rounded` the one of someone who rounds every step as printed;
    `wrong` holds the answer of each targeted misconception; an answer fits a value within the larger of `absolute` and
    `relative` times the value.
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

    @property
    def tolerance(self) -> Tolerance:
        """How far off is still right."""
        return Tolerance(self.absolute, self.relative)


class ChoiceItem(ItemBase):
    """Options to choose from; `right` and `order` hold positions in `options`, `order` as they are shown."""

    kind: Literal["choice"] = "choice"
    several: bool
    options: tuple[str, ...]
    right: tuple[int, ...]
    why: tuple[str, ...]
    """For each option what would happen on the hill; empty where the author says nothing."""
    order: tuple[int, ...]


class OrderItem(ItemBase):
    """Steps to put in order; `steps` stand in the right order, `order` holds the positions as they are shown."""

    kind: Literal["order"] = "order"
    steps: tuple[str, ...]
    why: str
    order: tuple[int, ...]


class MatchItem(ItemBase):
    """Pairs to find: `left[i]` belongs to `right[i]`; `order` holds the positions of the right side as it is shown."""

    kind: Literal["match"] = "match"
    left: tuple[str, ...]
    right: tuple[str, ...]
    why: str
    order: tuple[int, ...]


class ScenarioItem(Frozen):
    """Linked parts on one place; a part's answer feeds the later ones by the name of its quantity."""

    kind: Literal["scenario"] = "scenario"
    id: str
    title: str
    text: str
    givens: Mapping[str, float]
    parts: tuple[NumberItem, ...]


Item = Annotated[NumberItem | ChoiceItem | OrderItem | MatchItem | ScenarioItem, Field(discriminator="kind")]
QuestionItem = NumberItem | ChoiceItem | OrderItem | MatchItem
