"""The key of a paper, from what the archive holds of it: marks typed answers, and remembers what it has marked."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from typing import Any, Protocol, TypeAlias

from generator.calculations import BOOK
from generator.exercises import Learner, Mark, QuestionItem, ScenarioItem, mark_scenario, mark_typed
from generator.exercises.printed_set import asked_of, formulas_hash
from generator.formula import Book
from generator.problems import RefusedError

Marked: TypeAlias = tuple[int, tuple[Any, ...], str]
"""A question's number; its item, competency, answer, verdict, points, most and misconceptions; the same as one line."""


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
    whole = {"number": 1, "name": "-", "language": "en", "items": data["items"]}
    learner = Learner.model_validate_json(json.dumps(whole))
    same = formulas_hash(book, asked_of([learner])) == json.loads(about).get("formulas")
    return ItemsKey(learner, book if same else None)


class ItemsKey:
    """Marks by the items of a paper.

    Args:
        learner: the paper.
        book: carries a learner's own numbers forward; None where the formulas are not those of the paper any more.
    """

    def __init__(self, learner: Learner, book: Book | None) -> None:
        self._book = book
        self._items: dict[int, QuestionItem] = {}
        self._scenario: dict[int, ScenarioItem] = {}
        self._known: dict[tuple[int, str], Marked] = {}
        self.labels: Mapping[str, int] = {}
        found: dict[str, int] = {}
        for label, item, scenario in learner.labelled():
            number = int(label)
            self._items[number] = item
            found[label] = number
            found[f"{scenario.id}/{item.id}" if scenario else item.id] = number
            if scenario is not None:
                self._scenario[number] = scenario
        self.labels = found
        self._linked = bool(self._scenario)

    def whole(self, typed: Mapping[int, str]) -> Mapping[int, str]:
        """The typed answers, with a blank one for each part of a scenario that is answered in part."""
        if not self._linked:
            return typed
        begun = {self._scenario[label].id for label in typed if label in self._scenario}
        parts = (label for label, scenario in self._scenario.items() if scenario.id in begun)
        return {**dict.fromkeys(parts, ""), **typed}

    def mark(self, typed: Mapping[int, str]) -> list[Marked]:
        """The marks, by the number of the question."""
        known = self._known
        found: list[Marked] = []
        linked: dict[str, Mapping[str, Mark]] = {}
        for label in sorted(typed):
            answer = typed[label]
            marked = known.get((label, answer))
            if marked is None:
                item, scenario = self._items[label], self._scenario.get(label)
                if scenario is not None and self._book is not None:
                    if scenario.id not in linked:
                        linked[scenario.id] = self._mark_linked(scenario, typed)
                    mark = linked[scenario.id][item.id]
                    marked = _marked(label, answer, mark)
                else:
                    marked = known[label, answer] = _marked(label, answer, mark_typed(item, answer, self._book))
            found.append(marked)
        return found

    def _mark_linked(self, scenario: ScenarioItem, typed: Mapping[int, str]) -> Mapping[str, Mark]:
        assert self._book is not None  # noqa: S101 (asked before)
        texts = {
            self._items[label].id: typed.get(label, "") for label, one in self._scenario.items() if one is scenario
        }
        return {mark.item: mark for mark in mark_scenario(scenario, texts, self._book)}


def _marked(label: int, answer: str, mark: Mark) -> Marked:
    row = (
        mark.item, mark.competency, answer, str(mark.verdict), mark.points, mark.most, " ".join(mark.misconceptions),
    )  # fmt: skip
    return label, row, "\x1f".join(map(str, (label, *row)))
