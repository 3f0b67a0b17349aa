"""Lessons and handouts: Markdown split into prose and the blocks that site and sheets draw in their own way."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import chain, islice
from typing import TypeAlias

from generator.curriculum.calls import BLOCKS, IN_TEXTS, Call, Fault, calls
from generator.curriculum.signs import dandas_behind_digits
from generator.curriculum.texts import Filler
from generator.curriculum.trade_numbers import typed_by_hand
from generator.problems import MOST_REPORTED
from generator.problems.plain_errors import did_you_mean


@dataclass(frozen=True, slots=True)
class Prose:
    """Markdown with all numbers in place."""

    markdown: str


@dataclass(frozen=True, slots=True)
class FigureBlock:
    """A drawing with the numbers of a place."""

    figure: str
    place: str


@dataclass(frozen=True, slots=True)
class CautionBlock:
    """One of the module's cautions."""

    caution: str


@dataclass(frozen=True, slots=True)
class FormulaBlock:
    """A quantity's formula in symbols."""

    quantity: str


@dataclass(frozen=True, slots=True)
class WorkedBlock:
    """A quantity worked out step by step with the numbers of a place."""

    quantity: str
    place: str


@dataclass(frozen=True, slots=True)
class ExerciseBlock:
    """A question to try at this point of the lesson."""

    question: str


Block: TypeAlias = Prose | FigureBlock | CautionBlock | FormulaBlock | WorkedBlock | ExerciseBlock
Text: TypeAlias = tuple[Block, ...]


@dataclass(frozen=True, slots=True)
class Surroundings:
    """What a lesson's calls may name.

    Args:
        place: whose numbers count where a call names none.
        cautions: ids of the module's cautions.
        questions: ids of all questions.
        figures: by key, the quantities that a drawing needs.
    """

    place: str
    cautions: Sequence[str]
    questions: Sequence[str]
    figures: Mapping[str, Sequence[str]]


def split(text: str, language: str, around: Surroundings, filler: Filler) -> tuple[Text, tuple[Fault, ...]]:
    """Split Markdown into blocks and fill its numbers.

    Args:
        text: the file's text.
        language: language code.
        around: what the calls may name.
        filler: gives the numbers.

    Returns:
        The blocks in order, and everything wrong, by place.
    """
    faults = list(islice(chain(typed_by_hand(text), dandas_behind_digits(text)), MOST_REPORTED + 1))
    blocks: list[Block] = []
    prose: list[str] = []
    end = 0
    for call in calls(text, (*IN_TEXTS, *BLOCKS)):
        if len(faults) > MOST_REPORTED:
            break
        if isinstance(call, Fault):
            faults.append(call)
            continue
        prose.append(text[end : call.start])
        end = call.end
        if call.name in IN_TEXTS:
            said = filler.said(call, text, around.place, language)
            faults += [said] if isinstance(said, Fault) else []
            prose.append(said if isinstance(said, str) else "")
            continue
        faults += _block_faults(call, text, around, filler)
        blocks += [*_prose(prose), _block(call, around.place)]
        prose = []
    blocks += _prose([*prose, text[end:]])
    return tuple(blocks), tuple(sorted(faults, key=lambda fault: fault.start))


def _prose(parts: Sequence[str]) -> Iterator[Prose]:
    markdown = "".join(parts).strip("\n")
    if markdown.strip():
        yield Prose(markdown + "\n")


def _block(call: Call, place: str) -> Block:
    at = call.place or place
    match call.name:
        case "figure":
            return FigureBlock(call.argument, at)
        case "caution":
            return CautionBlock(call.argument)
        case "formula":
            return FormulaBlock(call.argument)
        case "worked":
            return WorkedBlock(call.argument, at)
        case _:
            return ExerciseBlock(call.argument)


def _block_faults(call: Call, text: str, around: Surroundings, filler: Filler) -> Iterator[Fault]:
    typed = text[call.start : call.end]

    def fault(code: str, what: str, fix: str) -> Fault:
        return Fault(call.start, typed, code, what, fix)

    line_start = text.rfind("\n", 0, call.start) + 1
    line_end = text.find("\n", call.end)
    line = text[line_start : line_end if line_end >= 0 else len(text)]
    if line.strip() != typed or line.startswith(("    ", "\t")):
        yield fault(
            "block-not-alone",
            f"'{call.name}' stands among words",
            "give it a line of its own, with empty lines around it",
        )
    known: Mapping[str, Sequence[str]] = {
        "caution": around.cautions,
        "exercise": around.questions,
        "figure": list(around.figures),
        "formula": list(filler.book.quantities),
        "worked": list(filler.book.quantities),
    }
    names = known[call.name]
    noun = {"exercise": "question", "formula": "quantity", "worked": "quantity"}.get(call.name, call.name)
    if call.argument not in names:
        yield fault(f"unknown-{noun}", f"unknown {noun} '{call.argument}'", did_you_mean(call.argument, list(names)))
        return
    if call.name == "worked":
        unknown = filler.unknown(call, text, around.place)
        if unknown is not None:
            yield unknown
    if call.name == "figure":
        at = call.place or around.place
        if at not in filler.values:
            if call.place is not None and filler.all_places:
                yield fault("unknown-place", f"unknown place '{at}'", did_you_mean(at, [*filler.values]))
            return
        for need in around.figures[call.argument]:
            if filler.values[at] and need not in filler.values[at]:
                yield fault(
                    "not-at-place", f"the drawing needs '{need}', which is not known at '{at}'", filler.needed(need, at)
                )


def differences(first: str, second: str) -> tuple[tuple[str, ...], tuple[Fault, ...]]:
    """What two languages of one lesson ask for differently.

    Args:
        first: text in the course's first language.
        second: text in another.

    Returns:
        Calls of the first that the second lacks, as a person types them, and calls of the second that the first lacks.
        Blocks count one by one; a value may stand more often in one language than in the other.
    """
    ours, theirs = _asked(first), _asked(second)
    missing: list[str] = []
    for typed, count in ours.items():
        missing += [typed] * (count - theirs.get(typed, 0)) if _is_block(typed) else [typed] * (typed not in theirs)
    extra: list[Fault] = []
    seen: Counter[str] = Counter()
    for call in calls(second, (*IN_TEXTS, *BLOCKS)):
        if isinstance(call, Fault) or call.name == "plain":
            continue
        typed = _typed(call)
        seen[typed] += 1
        if seen[typed] > ours[typed] if _is_block(typed) else (typed not in ours and seen[typed] == 1):
            fix = "remove it here, or add it to the other language"
            extra.append(
                Fault(
                    call.start,
                    second[call.start : call.end],
                    "lesson-differs",
                    f"{typed} stands only in this language",
                    fix,
                )
            )
    return tuple(missing), tuple(extra)


def _asked(text: str) -> Counter[str]:
    found = calls(text, (*IN_TEXTS, *BLOCKS))
    return Counter(_typed(call) for call in found if isinstance(call, Call) and call.name != "plain")


def _typed(call: Call) -> str:
    place = f', place="{call.place}"' if call.place else ""
    return f'{{{{ {call.name}("{call.argument}"{place}) }}}}'


def _is_block(typed: str) -> bool:
    return not typed.startswith("{{ value(")
