"""Marks the answers of many papers at once: plain numbers as arrays, all else one by one."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import accumulate, chain, pairwise, repeat
from typing import Any

import numpy as np
import numpy.typing as npt

from generator.exercises import Verdict
from generator.registry.chain import sha256
from generator.registry.marker import Marked
from generator.registry.marking_key import LEFT, PLAIN, MarkingKey, Outcome, around, batch_arrays
from generator.registry.plain_numbers import EMPTY, plain_numbers

Row = tuple[Any, ...]
MarkByContent = Callable[[Mapping[int, str]], Sequence[Marked]]

_CODES = (Verdict.NOT_YET, Verdict.RIGHT, Verdict.BLANK)
_VERDICTS = np.array([str(verdict) for verdict in _CODES], object)
_ENDS = np.array([f"\x1f{verdict}\x1f{int(verdict is Verdict.RIGHT)}\x1f1\x1f" for verdict in _CODES], object)


@dataclass(frozen=True, slots=True)
class Labels:
    """The printed numbers of the questions that were answered, one after the other."""

    numbers: tuple[int, ...]
    places: npt.NDArray[np.int64]


@dataclass(frozen=True, slots=True)
class Sheet:
    """The answers of one paper.

    Args:
        paper: its id.
        key: what marks it.
        labels: which questions.
        answers: as typed, in that order.
        by_content: marks what the key leaves to the content.
    """

    paper: int
    key: MarkingKey
    labels: Labels
    answers: Sequence[str]
    by_content: MarkByContent


def labels_of(questions: Iterable[str]) -> Labels | None:
    """The column `question` of one paper, where it holds printed numbers that only rise; most do."""
    return _labels_of("\n".join(questions))  # one text is looked up sooner than forty


@lru_cache(maxsize=1000)
def _labels_of(column: str) -> Labels | None:
    questions = column.split("\n")
    if not all(text.isascii() and text.isdigit() and text[0] != "0" and len(text) < 6 for text in questions):
        return None
    numbers = [int(text) for text in questions]
    return labelled(numbers) if all(a < b for a, b in pairwise(numbers)) else None


def labelled(numbers: Iterable[int]) -> Labels:
    """Printed numbers that rise, as labels."""
    found = tuple(numbers)
    return Labels(found, np.array(found, np.int64) - 1)


@dataclass(frozen=True, slots=True)
class Marks:
    """The marks of some papers, answer after answer.

    Args:
        counts: answers of each paper.
        answers: as typed.
        verdicts: words of `Verdict`.
        points: earned.
        most: that could be earned.
        misconceptions: with spaces between.
        ends: how the line of each answer ends, for the digest of a batch.
    """

    counts: Sequence[int]
    answers: Sequence[str]
    verdicts: Sequence[str]
    points: Sequence[int]
    most: Sequence[int]
    misconceptions: Sequence[str]
    ends: Sequence[str]


def marked(sheets: Sequence[Sheet]) -> Marks:
    """Mark the answers of some papers."""
    counts = [len(sheet.labels.numbers) for sheet in sheets]
    answers = list(chain.from_iterable(sheet.answers for sheet in sheets))
    codes, ideas, look = _compared(sheets, counts, answers)
    verdicts: list[str] = _VERDICTS[codes].tolist()
    ends: list[str] = _ENDS[codes].tolist()
    points: list[int] = (codes == 1).astype(int).tolist()
    most = [1] * len(answers)
    misconceptions = [""] * len(answers)
    for at, name in ideas.items():
        misconceptions[at] = name
        ends[at] += name
    for at, (verdict, own, largest, names) in _looked_at(sheets, counts, look):
        verdicts[at], points[at], most[at], misconceptions[at] = verdict, own, largest, names
        ends[at] = f"\x1f{verdict}\x1f{own}\x1f{largest}\x1f{names}"
    return Marks(counts, answers, verdicts, points, most, misconceptions, ends)


def rows_of(sheets: Sequence[Sheet], marks: Marks, event: int) -> list[Row]:
    """The rows of marked papers as the table of answers takes them, under the number of the event that seals them."""
    return list(
        zip(
            chain.from_iterable(repeat(sheet.paper, count) for sheet, count in zip(sheets, marks.counts, strict=True)),
            chain.from_iterable(sheet.labels.numbers for sheet in sheets),
            repeat(event), _of_all(sheets, "items"), _of_all(sheets, "competencies"), marks.answers, marks.verdicts,
            marks.points, marks.most, marks.misconceptions,
        )
    )  # fmt: skip


def digests_of(sheets: Sequence[Sheet], marks: Marks, salts: Sequence[str]) -> list[str]:
    """A digest of each paper's rows, behind its salt."""
    lines = [""] * (3 * len(marks.answers))
    lines[::3], lines[1::3], lines[2::3] = _of_all(sheets, "starts"), marks.answers, marks.ends
    digests, start = [], 0
    for salt, count in zip(salts, marks.counts, strict=True):
        digests.append(sha256(salt + "".join(lines[start : start + 3 * count])))
        start += 3 * count
    return digests


def _of_all(sheets: Sequence[Sheet], name: str) -> list[str]:
    """A column of the shapes, for the questions that were answered."""
    found: list[str] = []
    for sheet in sheets:
        whole: list[str] = getattr(sheet.key.shape, name)
        numbers = sheet.labels.numbers
        found += whole if len(numbers) == len(whole) else [whole[number - 1] for number in numbers]
    return found


def _compared(
    sheets: Sequence[Sheet], counts: Sequence[int], answers: Sequence[str]
) -> tuple[npt.NDArray[np.int64], dict[int, str], npt.NDArray[np.int64]]:
    """Every answer as a number against its key.

    Returns:
        A code for each answer; misconceptions by its place; the places of those that want another look.
    """
    keys = [sheet.key for sheet in sheets]
    numbers, pairs = batch_arrays(keys)
    key, rounded, absolute, relative, way = numbers.T
    starts = np.array([0, *accumulate(len(one.shape.questions) for one in keys)], np.int64)[:-1]
    place = np.concatenate([sheet.labels.places for sheet in sheets]) + np.repeat(starts, counts)
    read = plain_numbers(answers)
    typed = np.full(len(numbers), np.nan)
    typed[place] = np.where((read >= 0) & (way[place] == PLAIN), read, np.nan)
    right = np.abs(typed - key) <= around(key, absolute, relative)
    right |= np.abs(typed - rounded) <= around(rounded, absolute, relative)
    asked = pairs[:, 0].astype(np.int64) + np.repeat(starts, [len(one.shape.ideas) for one in keys])
    value = pairs[:, 1]
    fits = np.abs(typed[asked] - value) <= around(value, absolute[asked], relative[asked])
    hits = np.flatnonzero(fits & ~right[asked])
    answer_at = np.zeros(len(numbers), np.int64)
    answer_at[place] = np.arange(len(answers))
    names = list(chain.from_iterable(one.shape.ideas for one in keys))
    ideas: dict[int, str] = {}
    for at, hit in zip(answer_at[asked[hits]].tolist(), hits.tolist(), strict=True):
        ideas[at] = f"{ideas[at]} {names[hit]}" if at in ideas else names[hit]
    codes = np.where(read == EMPTY, 2, right[place].astype(np.int64))
    done = ((read >= 0) & (way[place] == PLAIN)) | ((read == EMPTY) & (way[place] != LEFT))
    return codes, ideas, np.flatnonzero(~done)


def _looked_at(
    sheets: Sequence[Sheet], counts: Sequence[int], look: npt.NDArray[np.int64]
) -> list[tuple[int, Outcome]]:
    """The outcomes of answers that are no plain numbers, by their places."""
    ends = np.array([*accumulate(counts)], np.int64)
    found: list[tuple[int, Outcome]] = []
    left: dict[int, list[int]] = {}
    for at, which in zip(look.tolist(), np.searchsorted(ends, look, "right").tolist(), strict=True):
        sheet = sheets[which]
        own = at - (int(ends[which]) - counts[which])
        label = sheet.labels.numbers[own]
        outcome = sheet.key.outcome(label, sheet.answers[own])
        if outcome is None:
            left.setdefault(which, []).append(at)
        else:
            found.append((at, outcome))
    for which, places in left.items():
        sheet = sheets[which]
        first = int(ends[which]) - counts[which]
        wanted = {sheet.labels.numbers[at - first] for at in places}
        typed = {
            label: answer for label, answer in zip(sheet.labels.numbers, sheet.answers, strict=True) if label in wanted
        }
        by_label = dict(sheet.by_content(typed))
        for at in places:
            _, _, _, verdict, points, most, names = by_label[sheet.labels.numbers[at - first]]
            found.append((at, (verdict, points, most, names)))
    return found
