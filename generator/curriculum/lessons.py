"""Lessons and handouts: Markdown split into prose and the blocks that site and sheets draw in their own way."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import chain, islice
from typing import TypeAlias

from generator.curriculum.calls import BLOCKS, IN_TEXTS, LINE_MARKS, MOST_ROWS, SHEET_BLOCKS, Call, Fault, calls
from generator.curriculum.line_marks import Kept, without_marks
from generator.curriculum.signs import dandas_behind_digits
from generator.curriculum.texts import Filler
from generator.curriculum.trade_numbers import typed_by_hand
from generator.problems import MOST_REPORTED
from generator.problems.plain_errors import did_you_mean

ALL_CALLS = (*IN_TEXTS, *BLOCKS, *SHEET_BLOCKS, *LINE_MARKS)


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
    """A quantity worked out with the numbers of a place: its last `steps` steps, or as many as are usual (0)."""

    quantity: str
    place: str
    steps: int = 0


@dataclass(frozen=True, slots=True)
class ExerciseBlock:
    """A question to try at this point of the lesson."""

    question: str


@dataclass(frozen=True, slots=True)
class TableBlock:
    """A section of the plan of a place: its sentences and its table."""

    section: str
    place: str


@dataclass(frozen=True, slots=True)
class LogBlock:
    """A ruled table to write in, with the columns that the handout's file names."""

    log: str
    rows: int


@dataclass(frozen=True, slots=True)
class RulerBlock:
    """Strips of paper in true size with the marks of a tank."""

    ruler: str
    place: str


@dataclass(frozen=True, slots=True)
class FaultBlock:
    """One fault of the course's album: its drawing, the letter that stands at it, and what to know about it."""

    fault: str


@dataclass(frozen=True, slots=True)
class LinesBlock:
    """Empty lines to write on."""

    count: int


@dataclass(frozen=True, slots=True)
class CardBlock:
    """Here a card begins that is cut out: two on a page."""


Block: TypeAlias = Prose | FigureBlock | CautionBlock | FormulaBlock | WorkedBlock | ExerciseBlock
"""What lessons and handouts hold."""
SheetBlock: TypeAlias = Block | TableBlock | LogBlock | RulerBlock | FaultBlock | LinesBlock | CardBlock
"""What handouts hold."""
Text: TypeAlias = tuple[Block, ...]
SheetText: TypeAlias = tuple[SheetBlock, ...]


@dataclass(frozen=True, slots=True)
class Surroundings:
    """What a lesson's calls may name.

    Args:
        place: whose numbers count where a call names none.
        cautions: ids of the module's cautions.
        questions: ids of all questions.
        figures: by key, the quantities that a drawing needs.
        sheet: what only a handout's calls may name; None in a lesson.
    """

    place: str
    cautions: Sequence[str]
    questions: Sequence[str]
    figures: Mapping[str, Sequence[str]]
    sheet: SheetNames | None = None


@dataclass(frozen=True, slots=True)
class SheetNames:
    """What a handout's calls may name beside what lessons name.

    Args:
        logs: keys of the logs in its file.
        rulers: by key, the quantities that a ruler needs.
        faults: ids of the course's album of faults.
        sections: the sections of the plan of a place, by its id; None where the handout has the place's numbers.
        of_hoops: by key of a drawing, the needs that it does without where a tank has no hoops.
    """

    logs: Sequence[str]
    rulers: Mapping[str, Sequence[str]]
    faults: Sequence[str] = ()
    sections: Callable[[str], Sequence[str]] | None = None
    of_hoops: Mapping[str, Sequence[str]] = field(default_factory=dict)


def split(text: str, language: str, around: Surroundings, filler: Filler) -> tuple[Text, tuple[Fault, ...]]:
    """Split a lesson's Markdown into blocks and fill its numbers.

    Args:
        text: the file's text.
        language: language code.
        around: what the calls may name.
        filler: gives the numbers.

    Returns:
        The blocks in order, and everything wrong, by place.
    """
    blocks, faults = split_sheet(text, language, around, filler)
    return tuple(block for block in blocks if isinstance(block, Block)), faults


def split_sheet(text: str, language: str, around: Surroundings, filler: Filler) -> tuple[SheetText, tuple[Fault, ...]]:
    """The same for a handout, which may hold what only paper has.

    Args:
        text: the file's text.
        language: language code.
        around: what the calls may name.
        filler: gives the numbers.

    Returns:
        The blocks in order, and everything wrong, by place.
    """
    faults = list(islice(chain(typed_by_hand(text), dandas_behind_digits(text)), MOST_REPORTED + 1))
    blocks: list[SheetBlock] = []
    prose: list[str] = []
    end = 0
    asked = list(calls(text, ALL_CALLS if around.sheet is not None else (*IN_TEXTS, *BLOCKS)))
    known = filler.values.get(around.place, {})
    kept = Kept(text, [call for call in asked if isinstance(call, Call)], lambda name: known.get(name, 0) > 0)
    for call in asked:
        if len(faults) > MOST_REPORTED:
            break
        if isinstance(call, Fault):
            faults.append(call)
            continue
        prose.append(kept.words(end, call.start))
        end = call.end
        if call.name in LINE_MARKS or not kept.holds(call.start):
            faults += _without_tank(call, text, around, filler, language)
            continue
        if call.name in IN_TEXTS:
            said = filler.said(call, text, around.place, language)
            faults += [said] if isinstance(said, Fault) else []
            prose.append(said if isinstance(said, str) else "")
            continue
        faults += _block_faults(call, text, around, filler)
        blocks += [*_prose(prose), _block(call, around.place, filler)]
        prose = []
    blocks += _prose([*prose, kept.words(end, len(text))])
    return tuple(blocks), tuple(sorted(faults, key=lambda fault: fault.start))


def _without_tank(call: Call, text: str, around: Surroundings, filler: Filler, language: str) -> Iterator[Fault]:
    """What is wrong with a mark, or with a call on a line that this tank has not: all but what the tank lacks."""
    found: Iterable[str | Fault | None]
    if call.name in LINE_MARKS:
        found = [filler.unknown(call, text, around.place)]
    elif call.name in IN_TEXTS:
        found = [filler.said(call, text, around.place, language)]
    else:
        found = _block_faults(call, text, around, filler)
    yield from (each for each in found if isinstance(each, Fault) and each.code != "not-at-place")


def _prose(parts: Sequence[str]) -> Iterator[Prose]:
    markdown = "".join(parts).strip("\n")
    if markdown.strip():
        yield Prose(markdown + "\n")


def _block(call: Call, place: str, filler: Filler) -> SheetBlock:
    at = call.place or place
    match call.name:
        case "table":
            return TableBlock(call.argument, at)
        case "log":
            return LogBlock(call.argument, call.rows or filler.rows(call, at))
        case "ruler":
            return RulerBlock(call.argument, at)
        case "fault":
            return FaultBlock(call.argument)
        case "lines":
            return LinesBlock(call.rows)
        case "card":
            return CardBlock()
        case "figure":
            return FigureBlock(call.argument, at)
        case "caution":
            return CautionBlock(call.argument)
        case "formula":
            return FormulaBlock(call.argument)
        case "worked":
            return WorkedBlock(call.argument, at, call.rows)
        case _:
            return ExerciseBlock(call.argument)


def _block_faults(call: Call, text: str, around: Surroundings, filler: Filler) -> Iterator[Fault]:
    typed = text[call.start : call.end]

    def fault(code: str, what: str, fix: str) -> Fault:
        return Fault(call.start, typed, code, what, fix)

    line_start = text.rfind("\n", 0, call.start) + 1
    line_end = text.find("\n", call.end)
    line = text[line_start : line_end if line_end >= 0 else len(text)]
    if without_marks(line).strip() != typed or line.startswith(("    ", "\t")):
        yield fault(
            "block-not-alone",
            f"'{call.name}' stands among words",
            "give it a line of its own, with empty lines around it",
        )
    if call.name in ("lines", "card"):
        return
    at = call.place or around.place
    sheet = around.sheet
    if call.name == "table" and (sheet is None or sheet.sections is None):
        fix = "write 'numbers: plan' into the handout's file, or ask for values one by one"
        yield fault("no-plan", "this handout has the place's numbers and no plan to take a table from", fix)
        return
    known: Mapping[str, Sequence[str]] = {
        "caution": around.cautions,
        "exercise": around.questions,
        "figure": list(around.figures),
        "formula": list(filler.book.quantities),
        "worked": list(filler.book.quantities),
    }
    if sheet is not None:
        sections = sheet.sections(at) if sheet.sections is not None and call.name == "table" else ()
        known = {**known, "log": sheet.logs, "ruler": list(sheet.rulers), "fault": sheet.faults, "table": sections}
    names = known[call.name]
    nouns = {"exercise": "question", "formula": "quantity", "worked": "quantity", "table": "section"}
    noun = nouns.get(call.name, call.name)
    if call.name == "table" and not names:
        if call.place is not None and filler.all_places and at not in filler.values:
            yield fault("unknown-place", f"unknown place '{at}'", did_you_mean(at, [*filler.values]))
        return  # the place can't be planned, which has its own problem
    if call.argument not in names:
        yield fault(f"unknown-{noun}", f"unknown {noun} '{call.argument}'", did_you_mean(call.argument, list(names)))
        return
    if call.name == "worked" or call.rows_of:
        unknown = filler.unknown(call, text, around.place)
        if unknown is not None:
            yield unknown
        elif call.rows_of and filler.rows(call, at) > MOST_ROWS:
            yield fault("bad-call", f"'{call.rows_of}' asks for {filler.rows(call, at)} rows", f"at most {MOST_ROWS}")
    if call.name in ("figure", "ruler"):
        if at not in filler.values:
            if call.place is not None and filler.all_places:
                yield fault("unknown-place", f"unknown place '{at}'", did_you_mean(at, [*filler.values]))
            return
        needs = around.figures if call.name == "figure" or sheet is None else sheet.rulers
        what = "drawing" if call.name == "figure" else "ruler"
        bare = sheet is not None and call.name == "figure" and filler.values[at].get("hoop_count") == 0
        spared = sheet.of_hoops.get(call.argument, ()) if sheet is not None and bare else ()
        for need in (need for need in needs[call.argument] if need not in spared):
            if filler.values[at] and need not in filler.values[at]:
                yield fault(
                    "not-at-place", f"the {what} needs '{need}', which is not known at '{at}'", filler.needed(need, at)
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
    for call in calls(second, ALL_CALLS):
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
    found = calls(text, ALL_CALLS)
    return Counter(_typed(call) for call in found if isinstance(call, Call) and call.name != "plain")


def _typed(call: Call) -> str:
    place = f', place="{call.place}"' if call.place else ""
    if call.name == "card":
        return "{{ card }}"
    if call.name == "lines":
        return f"{{{{ lines({call.rows}) }}}}"
    if call.name == "log":
        rows = f'"{call.rows_of}"' if call.rows_of else call.rows
        return f'{{{{ log("{call.argument}", rows={rows}) }}}}'
    steps = f", steps={call.rows}" if call.rows else ""
    return f'{{{{ {call.name}("{call.argument}"{place}{steps}) }}}}'


def _is_block(typed: str) -> bool:
    return not typed.startswith(("{{ value(", *(f"{{{{ {mark}(" for mark in LINE_MARKS)))
