"""How long each work takes with this crew: bars of days, one after the other, and who comes for them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from generator.calculations.labour import BASE_SETS, ONE_DAY, POUR_AND_COATS
from generator.figures.fault_parts import line, marks, rect
from generator.figures.ink import HatchKind, Ink, Letter
from generator.figures.layout import Block
from generator.figures.page import MARGIN, Page, heading_height, note_height, note_lines
from generator.figures.people import PERSON_HEIGHT, person
from generator.figures.scene import VIEW, Group, Label, Scene
from generator.figures.shown import shown
from generator.formula import show
from generator.words import Words

NEEDS = (
    "digging_duration",
    "cage_duration",
    "curing_days",
    "first_filling_days",
    "water_soak_days",
    "test_days",
    "crew_masons",
    "crew_labourers",
)

_ROW, _BAR, _TEXT = 37.0, 12.0, 19.0
"""Height of a row, of its bar, and of the text above the bar, paper units."""
_PERSON = 44.0
_WEEK = 7


@dataclass(frozen=True, slots=True)
class _Work:
    """One bar.

    Args:
        name: which text.
        days: its length.
        value: its length as it is written.
        waits: whether nobody builds, and the tank is only kept wet or watched.
    """

    name: str
    days: float
    value: str
    waits: bool = False


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one tank and one crew.

    Args:
        values: numbers of both, by the names in `NEEDS`.
        words: language of its texts.
    """
    works = _works(values, words)
    heads = (words.say("figure.crew-and-days.crew"), words.say("figure.crew-and-days.bars"))
    note = note_lines(words.say("figure.crew-and-days.note"))
    people = MARGIN + heading_height(heads[0])
    second = people + _PERSON + 26
    first = second + heading_height(heads[1]) + 2
    foot = first + len(works) * _ROW
    page = Page(PERSON_HEIGHT / _PERSON, foot + 10 + note_height(note) + MARGIN)
    page.heading(1, heads[0], MARGIN)
    page.heading(2, heads[1], second)
    _crew(page, values, words, people)
    scale = (VIEW - 2 * MARGIN) / sum(work.days for work in works)
    start = 0.0
    for number, work in enumerate(works):
        top = first + number * _ROW
        left, right = MARGIN + start * scale, MARGIN + (start + work.days) * scale
        text = words.say_one_of("figure.crew-and-days", work.name)
        wide = Block(((text, Letter.NAME),)).width() + 5 + Block(((work.value, Letter.VALUE),)).width()
        middle = min(max((left + right) / 2, MARGIN + wide / 2), VIEW - MARGIN - wide / 2)
        page.add(*page.row(text, work.value, middle, top + 13))
        bar = rect(page, left, top + _TEXT, right, top + _TEXT + _BAR, Ink.WATER_BODY if work.waits else Ink.WOOD)
        page.add(Group("waiting" if work.waits else "work", (bar,)))
        if work.waits:
            page.add(marks(page, left, top + _TEXT + 1, right, top + _TEXT + _BAR, HatchKind.WATER))
        start += work.days
    page.add(line(page, [(MARGIN, foot), (VIEW - MARGIN, foot)], Ink.FACE))
    weeks = int(start // _WEEK)
    if weeks * 4 < VIEW - 2 * MARGIN:
        for week in range(weeks + 1):
            x = MARGIN + week * _WEEK * scale
            page.add(line(page, [(x, foot), (x, foot + 5)], Ink.FACE))
    page.note(note, foot + 10)
    return page.scene(words.say("figure.crew-and-days.title"), words.say("figure.crew-and-days.description"), words)


def _works(values: Mapping[str, float], words: Words) -> list[_Work]:
    def counted(name: str, number: str, *, waits: bool = False) -> _Work:
        return _Work(name, values[number], shown(number, values, words), waits)

    def planned(name: str, days: float) -> _Work:
        return _Work(name, days, words.with_unit(show(days, 0), ONE_DAY.unit))

    works = [
        counted("digging", "digging_duration"),
        planned("base", ONE_DAY + BASE_SETS),
        counted("cage", "cage_duration"),
        planned("coats", POUR_AND_COATS - ONE_DAY),
        counted("curing", "curing_days", waits=True),
        counted("filling", "first_filling_days", waits=True),
        counted("soaking", "water_soak_days", waits=True),
        counted("test", "test_days", waits=True),
    ]
    return [work for work in works if work.days > 0]


def _crew(page: Page, values: Mapping[str, float], words: Words, top: float) -> None:
    """Masons and labourers side by side, and how many of each below them."""
    groups = [("masons", round(values["crew_masons"])), ("labourers", round(values["crew_labourers"]))]
    total = sum(count for _, count in groups)
    wide = VIEW - 2 * MARGIN - 2
    step = min(24.0, (wide - 14) / total, (wide - 110) / groups[1][1])
    room = max(110.0, groups[0][1] * step + 14)
    for left, (name, count) in zip((MARGIN, MARGIN + room), groups, strict=True):
        for number in range(count):
            foot = page.at(left + (number + 0.5) * step, top + _PERSON)
            hand = (foot[0] + 0.17, foot[1] + 0.75)
            figure = person(foot, 1.0, [hand])
            tool = _trowel(page, hand) if name == "masons" else ()
            page.add(Group(name, (figure, *tool)))
        text, value = words.say_one_of("figure.crew-and-days", name), words.number(show(count, 0))
        gap = Block(((text, Letter.NAME),)).width() + 5
        base = top + _PERSON + 17
        page.add(
            Label(page.at(left, base), text, "start", Letter.NAME),
            Label(page.at(left + gap, base), value, "start", Letter.VALUE),
        )


def _trowel(page: Page, hand: tuple[float, float]) -> tuple[Group, ...]:
    """A trowel in a mason's hand."""
    x, y = hand
    blade = ((x + 0.04, y), (x + 0.3, y + 0.07), (x + 0.26, y - 0.06))
    height = page.height * page.unit
    paper = [(a / page.unit, (height - b) / page.unit) for a, b in blade]
    return (Group("trowel", (line(page, paper, Ink.STEEL, closed=True),)),)
