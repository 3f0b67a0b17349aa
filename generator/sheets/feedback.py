"""Feedback sheets: what went well, what to practise, and what a mistake would do on the hill. No marks of others."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from generator.curriculum import CourseContent
from generator.exercises import LearnerMarks, Mark, messages
from generator.sheets.flow import Box, Column, Piece, Row, Text
from generator.sheets.page import About, Part, sheet_pdf
from generator.sheets.signs import Critical
from generator.sheets.styles import BODY, HEADING, NOTE, SUBHEADING, TIGHT, TITLE
from generator.sheets.worksheet import refuse_unprintable
from generator.words import Words


def feedback_pdf(
    marked: Sequence[LearnerMarks], set_id: str, content: CourseContent, reasons: Sequence[Sequence[str]] = ()
) -> bytes:
    """A sheet for each learner.

    Args:
        marked: the learners with their marks.
        set_id: of the papers.
        content: the course.
        reasons: for each learner the decision in words; empty where nothing was decided.

    Raises:
        RefusedError: a name that the course's font can't print.
        MachineError: shaping is missing.
    """
    refuse_unprintable([one.learner.name for one in marked])
    first = content.words[marked[0].learner.language]
    about = About(first.say("paper.feedback.title"), first.language, content.course.version, set_id)
    told = reasons or [()] * len(marked)
    return sheet_pdf(about, [_part(one, why, set_id, content) for one, why in zip(marked, told, strict=True)])


def _part(one: LearnerMarks, why: Sequence[str], set_id: str, content: CourseContent) -> Part:
    words = content.words[one.learner.language]
    name = words.say("paper.feedback.title")
    number = words.say("paper.number", number=f"{set_id}-{one.learner.number}")
    pieces: list[Piece] = [
        Text(name, TITLE),
        Text(one.learner.name, HEADING.but(before=0.0)),
        Text(f"{number} · {words.say('command.points', have=one.points, most=one.most)}", TIGHT.but(after=6.0)),
    ]
    if why:
        pieces.append(Box(Column([Text(line, TIGHT) for line in why]), after=6))
    groups = _groups(one)
    good = [name for name, marks in groups.items() if all(mark.verdict.counts for _, mark in marks)]
    if good:
        pieces.append(Text(words.say("paper.feedback.good"), HEADING))
        pieces += [Text(f"- {content.competencies[name].text[words.language]}", TIGHT.but(after=1.0)) for name in good]
    weak = [name for name in groups if name not in good]
    pieces.append(Text(words.say("paper.feedback.practise"), HEADING))
    if not weak:
        pieces.append(Text(words.say("paper.feedback.nothing"), BODY))
    for competency in weak:
        pieces += _practise(competency, groups[competency], content, words)
    pieces.append(Text(words.say("sheet.not_a_design"), NOTE.but(before=8.0)))
    return Part(
        name,
        "",
        f"{one.learner.number}. {one.learner.name}",
        f"{one.learner.name} · {number}",
        words,
        pieces,
        words.say("paper.read_this"),
    )


def _groups(one: LearnerMarks) -> dict[str, list[tuple[str, Mark]]]:
    found: dict[str, list[tuple[str, Mark]]] = {}
    for label, mark in one.marks:
        found.setdefault(mark.competency, []).append((label, mark))
    return found


def _practise(name: str, marks: Sequence[tuple[str, Mark]], content: CourseContent, words: Words) -> Iterator[Piece]:
    competency = content.competencies.get(name)
    title = Text(competency.text[words.language] if competency else name, SUBHEADING)
    if competency is not None and competency.critical:
        heading = Row([(Critical.side, Critical()), (None, title)], gap=6, middle=True)
        heading.keep = True
        yield heading
        yield Text(words.say("paper.feedback.critical"), NOTE.but(keep=True))
    else:
        yield title
    right = sum(mark.verdict.counts for _, mark in marks)
    yield Text(words.say("paper.feedback.share", have=right, most=len(marks)), TIGHT.but(keep=True))
    modules = [
        m.title[words.language] for m in content.modules.values() if any(o.competency == name for o in m.outcomes)
    ]
    if modules:
        yield Text(words.say("paper.feedback.modules", modules="; ".join(modules)), TIGHT.but(keep=True))
    seen: set[str] = set()
    for label, mark in marks:
        if mark.verdict.counts:
            continue
        lines = [line for line in messages(mark, words) if line not in seen]
        seen.update(lines[1:])
        yield Text(f"{label}. {_one_line(lines)}", TIGHT.but(indent=12.0, after=3.0))


def _one_line(lines: Sequence[str]) -> str:
    """What is said of an answer, one after the other; a verdict without a full stop leads on to its reason."""
    return " ".join(line if line[-1:] in ".?!:।" or line is lines[-1] else f"{line}:" for line in lines)
