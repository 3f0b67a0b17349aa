"""The key of a paper out of its whole content: marks what the short marking key leaves to it, and single answers."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import Any, Protocol, TypeAlias

from pydantic import TypeAdapter

from generator.calculations import BOOK
from generator.exercises import (
    Item,
    Learner,
    Mark,
    NumberItem,
    ScenarioItem,
    SpokenItem,
    mark_scenario,
    mark_typed,
)
from generator.exercises.printed_set import asked_of, formulas_hash
from generator.formula import Book
from generator.problems import RefusedError

Marked: TypeAlias = tuple[int, tuple[Any, ...]]
"""A question's number; its item, competency, answer, verdict, points, most and misconceptions."""


class PaperKey(Protocol):
    """What marks the papers of one content."""

    labels: Mapping[str, int]
    """What may stand in the column `question`, and the printed number that it means."""

    def whole(self, typed: Mapping[int, str]) -> Mapping[int, str]:
        """The typed answers, with a blank one for each part that has to be marked along."""

    def mark(self, typed: Mapping[int, str]) -> list[Marked]:
        """The marks of typed answers, in the order of the questions."""


Marker: TypeAlias = Callable[[str, str], PaperKey]
"""Makes a key from a paper's content and the sitting's `about`, both JSON."""


def items_marker(content: str, about: str, book: Book = BOOK) -> PaperKey:
    """The key of a paper that was made by `make_set`.

    Args:
        content: `{"format": 1, "items": [...]}`.
        about: what the set was made from; while its formulas are the book's, a learner's numbers are carried forward.
        book: where the quantities live.

    Raises:
        RefusedError: the paper was archived by a newer edition.
    """
    data = json.loads(content)
    if data.get("format") != 1 or "items" not in data:
        raise RefusedError("a paper of this sitting was archived by a newer edition: mark it with that one")
    return ItemsKey(data["items"], about, book)


_ITEM: TypeAdapter[Item] = TypeAdapter(Item)


@lru_cache(maxsize=256)
def _formulas(book: Book, asks: frozenset[str]) -> str:
    """The hash of a book's formulas; the papers of a sitting mostly ask for the same quantities."""
    return formulas_hash(book, asks)


@dataclass(frozen=True, slots=True)
class _Part:
    """Where a printed question comes from: the item's place, and the part's within a scenario (-1 for none)."""

    item: int
    part: int


class ItemsKey:
    """Marks by the items of a paper. What an answer does not need is not read: papers come by the ten thousand.

    Args:
        raw: the items as the archive holds them.
        about: what the set was made from.
        book: where the quantities live.
    """

    def __init__(self, raw: Sequence[Mapping[str, Any]], about: str, book: Book) -> None:
        self._raw, self._about, self._all = raw, about, book
        self._items: dict[int, Item] = {}
        self._parts: dict[int, _Part] = {}
        found: dict[str, int] = {}
        number = 0
        for place, item in enumerate(raw):
            linked = item["kind"] == "scenario"
            for part, own in enumerate(item["parts"] if linked else (item,)):
                number += 1
                self._parts[number] = _Part(place, part if linked else -1)
                found[str(number)] = number
                found[f"{item['id']}/{own['id']}" if linked else own["id"]] = number
        self.labels: Mapping[str, int] = found
        self._linked = {label for label, part in self._parts.items() if part.part >= 0}

    def whole(self, typed: Mapping[int, str]) -> Mapping[int, str]:
        """The typed answers, with a blank one for each part of a scenario that is answered in part."""
        if not self._linked:
            return typed
        begun = {self._parts[label].item for label in typed if label in self._linked}
        parts = (label for label in self._linked if self._parts[label].item in begun)
        return {**dict.fromkeys(parts, ""), **typed}

    def mark(self, typed: Mapping[int, str]) -> list[Marked]:
        """The marks, by the number of the question."""
        found: list[Marked] = []
        linked: dict[int, Mapping[str, Mark]] = {}
        for label in sorted(typed):
            answer = typed[label]
            part = self._parts[label]
            item = self._item(part.item)
            if not isinstance(item, ScenarioItem):
                asked = item.answer if isinstance(item, SpokenItem) else item
                steps = isinstance(asked, NumberItem) and asked.steps
                found.append(_marked(label, answer, mark_typed(item, answer, self._book if steps else None)))
                continue
            own = item.parts[part.part]
            if self._book is None:
                found.append(_marked(label, answer, mark_typed(own, answer)))
                continue
            if part.item not in linked:
                linked[part.item] = self._mark_linked(part.item, item, typed, self._book)
            found.append(_marked(label, answer, linked[part.item][own.id]))
        return found

    def _item(self, place: int) -> Item:
        if place not in self._items:
            self._items[place] = _ITEM.validate_json(json.dumps(self._raw[place]))
        return self._items[place]

    @cached_property
    def _book(self) -> Book | None:
        """Carries a learner's own numbers forward; None where its formulas are not those of the paper any more."""
        items = tuple(self._item(place) for place in range(len(self._raw)))
        learner = Learner(number=1, name="-", language="en", items=items)
        same = _formulas(self._all, asked_of([learner])) == json.loads(self._about).get("formulas")
        return self._all if same else None

    def _mark_linked(
        self, place: int, scenario: ScenarioItem, typed: Mapping[int, str], book: Book
    ) -> Mapping[str, Mark]:
        labels = [label for label in self._linked if self._parts[label].item == place]
        texts = {scenario.parts[self._parts[label].part].id: typed.get(label, "") for label in labels}
        return {mark.item: mark for mark in mark_scenario(scenario, texts, book)}


def _marked(label: int, answer: str, mark: Mark) -> Marked:
    row = (
        mark.item, mark.competency, answer, str(mark.verdict), mark.points, mark.most, " ".join(mark.misconceptions),
    )  # fmt: skip
    return label, row
