"""The report's charts: plain scenes in paper units, drawn by the writers that draw everything else."""

from __future__ import annotations

import math
import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass, field

from generator.assessment.analysis import Analysis
from generator.assessment.borderline import BORDERLINE, Regression
from generator.assessment.simulate import Share
from generator.figures import Scene
from generator.figures.fonts import Anchor, shaped_width
from generator.figures.ink import HANDS, Ink, Letter
from generator.figures.scene import VIEW, Circle, Element, Label, Line, Polyline, Rect
from generator.formula import show
from generator.problems import MachineError
from generator.words import Words

ROWS = 18
"""Rows of one chart; more go into the next, so that each fits a page."""
_ROW = 21.0
_EDGE = 8.0
_LETTER = HANDS[Letter.NOTE]
_CAPITAL = 0.33 * _LETTER.size
_DOT = 4.0
_BARS = 24


@dataclass
class _Plot:
    """A frame with an axis to the right and one up; values of both go linearly onto the paper.

    Args:
        height: of the whole chart, paper units.
        left: where the frame starts.
        x: lowest and highest value to the right.
        y: lowest and highest value up.
        foot: room below the frame.
        head: room above it.
        right: room right of it.
    """

    height: float
    left: float
    x: tuple[float, float]
    y: tuple[float, float]
    foot: float = 40.0
    head: float = 8.0
    right: float = 16.0
    elements: list[Element] = field(default_factory=list)

    def at(self, x: float, y: float) -> tuple[float, float]:
        wide, high = VIEW - self.left - self.right, self.height - self.foot - self.head
        return (
            self.left + wide * (x - self.x[0]) / (self.x[1] - self.x[0]),
            self.foot + high * (y - self.y[0]) / (self.y[1] - self.y[0]),
        )

    def frame(self) -> None:
        low, high = self.at(self.x[0], self.y[0]), self.at(self.x[1], self.y[1])
        self.elements.append(Line(low, (high[0], low[1]), Ink.FACE))
        self.elements.append(Line(low, (low[0], high[1]), Ink.FACE))

    def ticks_right(self, values: Sequence[float], name: str, words: Words) -> None:
        for value in values:
            x, y = self.at(value, self.y[0])
            self.elements.append(Line((x, y), (x, y - 4), Ink.FACE))
            self.text((x, y - 6 - _LETTER.size * 0.75), words.number(show(value, 0)), "middle")
        self.text((VIEW - self.right, 4.0), name, "end")

    def ticks_up(self, values: Sequence[float], name: str, words: Words) -> None:
        for value in values:
            x, y = self.at(self.x[0], value)
            self.elements.append(Line((x - 4, y), (x, y), Ink.FACE))
            self.text((x - 7, y - _CAPITAL), words.number(show(value, 0)), "end")
        self.text((_EDGE, self.height - _LETTER.size), name, "start")

    def line(self, points: Sequence[tuple[float, float]], ink: Ink) -> None:
        self.elements.append(Polyline(tuple(self.at(*point) for point in points), ink))

    def dot(self, x: float, y: float, *, full: bool = True) -> None:
        self.elements.append(Circle(self.at(x, y), _DOT, Ink.NUMBER_DISC if full else Ink.HOLE))

    def text(self, point: tuple[float, float], text: str, anchor: Anchor) -> None:
        self.elements.append(Label(point, text, anchor, Letter.NOTE))

    def scene(self, title: str, told: str, words: Words) -> Scene:
        return Scene(VIEW, self.height, tuple(self.elements), title, told, words.language)


def _short(text: str, number: int, room: float) -> str:
    """A text that fits, cut between letters with an ellipsis where it must.

    A name that the font can't write gives way to its number: a chart must not take the whole report with it.
    """
    try:
        if shaped_width(text, _LETTER.font, _LETTER.size) <= room:
            return text
        while text and shaped_width(f"{text}…", _LETTER.font, _LETTER.size) > room:
            text = _without_last(text)
    except MachineError:
        return str(number)
    return f"{text}…"


def _without_last(text: str) -> str:
    """The text without its last letter, with the marks and half letters that belong to it."""
    end = len(text) - 1
    while end > 0 and unicodedata.category(text[end]).startswith("M"):
        end -= 1
    return text[:end].rstrip("\u094d ")


def question_charts(analysis: Analysis, words: Words) -> tuple[Scene, ...]:
    """A dot for the share right of each question, with a line over its interval; easy ones to the right."""
    charts = []
    questions = [question for question in analysis.questions if question.asked]
    for start in range(0, len(questions), ROWS):
        rows = questions[start : start + ROWS]
        plot = _Plot(len(rows) * _ROW + 56.0, 158.0, (0, 100), (0, len(rows)))
        plot.frame()
        plot.ticks_right((0, 25, 50, 75, 100), words.say("analyse.chart.right"), words)
        for place, question in enumerate(rows):
            y = len(rows) - place - 0.5
            left, base = plot.at(0, y)
            plot.text((left - 8, base - _CAPITAL), _short(question.name, start + place + 1, left - 16), "end")
            plot.line(((100 * question.low, y), (100 * question.high, y)), Ink.MEASURE)
            plot.dot(100 * question.difficulty, y)
        charts.append(
            plot.scene(words.say("analyse.chart.questions"), words.say("analyse.chart.questions_told"), words)
        )
    return tuple(charts)


def score_chart(analysis: Analysis, words: Words) -> Scene:
    """A bar for each number of points, and the cut as a dashed line."""
    step = max(1, math.ceil((analysis.most + 1) / _BARS))
    counts = [0] * (analysis.most // step + 1)
    for total in analysis.totals:
        counts[int(total) // step] += 1
    top = max(counts)
    plot = _Plot(200.0, 46.0, (-0.5, analysis.most + step - 0.5), (0, top), head=26.0)
    for place, count in enumerate(counts):
        if count:
            (left, low), (right, high) = plot.at(place * step - 0.4, 0), plot.at(place * step + step - 0.6, count)
            plot.elements.append(Rect((left, low), right - left, high - low, Ink.CONCRETE))
    plot.frame()
    plot.ticks_right(_ticks(0, analysis.most), words.say("analyse.chart.points"), words)
    plot.ticks_up(_ticks(0, top), words.say("analyse.chart.learners"), words)
    if analysis.decisions is not None:
        at = analysis.decisions.cut - 0.5
        plot.line(((at, 0), (at, top)), Ink.FRAME_LINE)
        x, y = plot.at(at, top)
        plot.text((min(x + 4, VIEW - 40), y + 4), words.say("analyse.chart.cut"), "start")
    return plot.scene(words.say("analyse.chart.scores"), words.say("analyse.chart.scores_told"), words)


def _ticks(low: float, high: float) -> list[float]:
    """A few round whole numbers from low to high."""
    span = max(1.0, high - low)
    raw = span / 5
    size = 10 ** math.floor(math.log10(raw)) if raw >= 1 else 1
    step = max(1, next(size * factor for factor in (1, 2, 5, 10) if size * factor >= raw))
    first = math.ceil(low / step) * step
    return [float(value) for value in range(int(first), math.floor(high) + 1, int(step))]


def judge_chart(analysis: Analysis, words: Words) -> Scene:
    """Each judge's cut, open for the first round, full for the last; the panel's cut as a dashed line."""
    judges = list(dict.fromkeys(name for found in analysis.rounds for name in found.judges))[:ROWS]
    cuts = [cut for found in analysis.rounds for cut in found.cuts]
    low, high = math.floor(min(cuts)), math.ceil(max(cuts) + 1e-9)
    plot = _Plot(len(judges) * _ROW + 56.0, 120.0, (low, max(high, low + 1)), (0, len(judges)))
    mean = analysis.rounds[-1].mean
    plot.line(((mean, 0), (mean, len(judges))), Ink.FRAME_LINE)
    plot.frame()
    plot.ticks_right(_ticks(low, max(high, low + 1)), words.say("analyse.chart.points"), words)
    for place, judge in enumerate(judges):
        y = len(judges) - place - 0.5
        left, base = plot.at(plot.x[0], y)
        plot.text((left - 8, base - _CAPITAL), _short(judge, place + 1, left - 16), "end")
        own = [found.cuts[found.judges.index(judge)] for found in analysis.rounds if judge in found.judges]
        if len(own) > 1:
            plot.line(((own[0], y), (own[-1], y)), Ink.MEASURE)
            plot.dot(own[0], y, full=False)
        plot.dot(own[-1], y, full=len(analysis.rounds) == 1 or judge in analysis.rounds[-1].judges)
    title = words.say("analyse.chart.judges" if len(analysis.rounds) == 1 else "analyse.chart.judges_twice")
    return plot.scene(title, words.say("analyse.chart.judges_told"), words)


def borderline_chart(analysis: Analysis, line: Regression, words: Words) -> Scene:
    """Points against rating, the line, and where it meets rating 2."""
    rated = analysis.rated
    assert rated is not None  # noqa: S101 (a line comes of ratings)
    top = max(*rated.points, line.intercept + line.slope * 5)
    plot = _Plot(230.0, 46.0, (0.5, 5.5), (0, max(1.0, top)), head=26.0)
    plot.frame()
    plot.ticks_right((1, 2, 3, 4, 5), words.say("analyse.chart.rating"), words)
    plot.ticks_up(_ticks(0, top), words.say("analyse.chart.points"), words)
    start = max(1.0, -line.intercept / line.slope)
    plot.line(((start, line.intercept + line.slope * start), (5, line.intercept + line.slope * 5)), Ink.MEASURE)
    plot.line(((0.5, line.value), (BORDERLINE, line.value), (BORDERLINE, 0)), Ink.FRAME_LINE)
    for rating, points in dict.fromkeys(zip(rated.ratings, rated.points, strict=True)):
        plot.dot(rating, points)
    return plot.scene(words.say("analyse.chart.borderline"), words.say("analyse.chart.borderline_told"), words)


def mason_chart(plain: Sequence[Share], helped: Sequence[Share], words: Words) -> Scene:
    """Certified against known, by paper and practical alone and by the whole rule."""
    plot = _Plot(230.0, 46.0, (0, 100), (0, 100), head=26.0)
    plot.frame()
    plot.ticks_right((0, 25, 50, 75, 100), words.say("analyse.chart.known"), words)
    plot.ticks_up((0, 25, 50, 75, 100), words.say("analyse.chart.certified"), words)
    for found, ink in ((plain, Ink.FACE), (helped, Ink.FRAME_LINE)):
        plot.line([(100 * one.mason.mastery, 100 * one.share) for one in found], ink)
    for height, ink, text in (
        (92, Ink.FACE, words.say("analyse.chart.plain")),
        (78, Ink.FRAME_LINE, words.say("analyse.chart.helped")),
    ):
        plot.line(((4, height), (16, height)), ink)
        x, y = plot.at(19, height)
        plot.text((x, y - _CAPITAL), text, "start")
    return plot.scene(words.say("analyse.chart.masons"), words.say("analyse.chart.masons_told"), words)
