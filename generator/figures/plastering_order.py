"""The order of plastering: a board outside, mortar pressed in from inside, strip after strip, then the other face."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from generator.figures.callouts import Callout, left_column, row_above, row_below, row_height
from generator.figures.ink import HANDS, HatchKind, Ink, Letter
from generator.figures.layout import LINE, Block, wrap
from generator.figures.page import MARGIN, Page
from generator.figures.people import PERSON_HEIGHT, arrow, limb, person, squatting
from generator.figures.scene import VIEW, Circle, Element, Group, Label, Point, Scene
from generator.figures.shown import shown
from generator.figures.view import View
from generator.words import Words

NEEDS = ("wall_height", "coat_thickness")

_WIDTH = 3.2
"""Least width of the picture, metres."""
_MOST_HIGH = 150.0
_THINNEST = 5.0
_BAND, _BASE = 8.0, 0.1
_BOARD_HIGH, _BOARD = 0.45, 0.025
"""Backing board and its thickness as drawn, metres."""
_STANDING = 0.80
"""Lower work than this is done squatting, metres."""
_REACH, _SQUAT_REACH = 0.44, 0.54
"""From the wall to the feet of who works at it, standing or squatting, metres."""
_HOOPS = 0.12
_STRIPS = 3
_LEFT = 62.0
_SLANT = 14.0


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one wall.

    Args:
        values: numbers of the wall, by the names in `NEEDS`.
        words: language of its texts.
    """
    return _PlasteringOrder(values, words).scene()


class _PlasteringOrder:
    def __init__(self, values: Mapping[str, float], words: Words) -> None:
        self._values = values
        self._words = words
        self._wall = values["wall_height"]
        self._high = max(self._wall, PERSON_HEIGHT - _BASE) + 0.05
        self._unit = max(_WIDTH / (VIEW - 2 * MARGIN), self._high / _MOST_HIGH)
        self._thick = _THINNEST * self._unit
        self._done = min(0.55 * self._wall, 1.05)
        """How high the first coat has come, metres."""

    def scene(self) -> Scene:
        words, unit = self._words, self._unit
        heads = tuple(
            wrap(words.say_one_of("figure.plastering-order", name), Letter.HEADING, VIEW - 2 * MARGIN)
            for name in ("first", "strips", "second")
        )
        line = LINE * HANDS[Letter.HEADING].size
        tall = [len(head) * line + 4 for head in heads]
        above, below = self._above(), self._below()
        slant = self._block("wet_edge", most=150)
        high = self._high / unit
        foot = _BASE / unit + _BAND
        tops = [MARGIN]
        first = tops[0] + tall[0] + row_height(above) + 12 + high
        row = first + foot + 10
        tops.append(row + row_height(below) + 8)
        second = tops[1] + tall[1] + 6 + self._wall / unit
        slant_row = second + _BAND + 12
        tops.append(slant_row + slant.height() + 8)
        third_above = [Callout(self._block("outside", most=200), (0.0, 0.0))]
        third = tops[2] + tall[2] + row_height(third_above) + 10 + high
        self._page = page = Page(unit, third + foot + MARGIN)
        for head, top in zip(heads, tops, strict=True):
            self._heading(head, top)
        views = [View(page, VIEW / 2, level, 1 / unit) for level in (first, second, third)]
        self._draw_first(views[0])
        placed = [Callout(one.block, views[0].paper(*one.target)) for one in above]
        row_above(page, placed, tops[0] + tall[0] + row_height(above))
        row_below(page, [Callout(one.block, views[0].paper(*one.target)) for one in below], row)
        self._draw_strips(views[1])
        edge = _LEFT + (VIEW - MARGIN - _LEFT) * 2 / _STRIPS + 0.4 * _SLANT
        row_below(page, [Callout(slant, (edge - 0.5 * _SLANT, second - 0.3 * self._wall / unit))], slant_row)
        wall = Block.of(
            words.say("figure.plastering-order.height"),
            shown("wall_height", self._values, words),
            most=_LEFT - 16,
            anchor="end",
        )
        middle = second - 0.5 * self._wall / unit
        left_column(page, [Callout(wall, (_LEFT - 8, middle))], _LEFT - 14, tops[1] + tall[1] - 2, slant_row + 30)
        self._draw_second(views[2])
        hand = views[2].paper(-self._thick / 2 - self._coat(), 0.6 * self._done)
        row_above(page, [Callout(third_above[0].block, hand)], tops[2] + tall[2] + row_height(third_above))
        return page.scene(
            words.say("figure.plastering-order.title"), words.say("figure.plastering-order.description"), words
        )

    def _block(self, name: str, value: str = "", most: float = 100.0) -> Block:
        number = shown(value, self._values, self._words) if value else ""
        return Block.of(self._words.say_one_of("figure.plastering-order", name), number, most=most)

    def _heading(self, lines: Sequence[str], top: float) -> None:
        size = HANDS[Letter.HEADING].size
        for number, text in enumerate(lines):
            base = top + (0.95 + number * LINE) * size
            self._page.add(Label(self._page.at(MARGIN, base), text, "start", Letter.HEADING))

    def _above(self) -> list[Callout]:
        """Names above the first picture; places in metres from the wall's foot."""
        return [
            Callout(self._block("helper", most=112), self._head(-1, self._board_low() + 0.5 * _BOARD_HIGH)),
            Callout(self._block("bare", most=70), (0.0, 0.5 * (self._done + self._wall) + 0.05 * self._wall)),
            Callout(self._block("inside", most=124), self._head(1, self._done)),
        ]

    def _below(self) -> list[Callout]:
        return [Callout(self._block("coat", "coat_thickness", most=180), (0.0, 0.3 * self._done))]

    def _coat(self) -> float:
        """Thickness of a coat as drawn."""
        return max(self._values["coat_thickness"] / 1000, 0.4 * self._thick)

    def _ground(self, view: View) -> None:
        half = (VIEW / 2 - MARGIN) * self._unit
        band = _BASE + _BAND * self._unit
        view.page.add(
            view.marks((-half, -_BASE), (half, -_BASE), (half, -band), (-half, -band), kind=HatchKind.GROUND),
            view.line((-half, -_BASE), (half, -_BASE), Ink.GROUND),
        )

    def _cage(self, view: View, low: float) -> Iterator[Element]:
        """Mesh on both faces and hoops between, where no mortar is yet."""
        half, top = self._thick / 2, self._wall
        for x in (-half, half):
            yield view.line((x, low), (x, top), Ink.SCREEN)
        count = max(2, round(top / _HOOPS))
        for number in range(count + 1):
            level = top * number / count
            if level >= low:
                yield Circle(view.at(0.0, level), max(0.004, 1.2 * self._unit), Ink.STEEL)

    def _stand(self, side: float, level: float) -> float:
        return side * (self._thick / 2 + (_REACH if level >= _STANDING else _SQUAT_REACH))

    def _head(self, side: float, level: float) -> Point:
        """Top of the head of who works at a level."""
        ahead, up = (0.015, 0.98) if level >= _STANDING else (0.10, 0.665)
        return self._stand(side, level) - side * ahead * PERSON_HEIGHT, up * PERSON_HEIGHT - _BASE

    def _board_low(self) -> float:
        return max(0.0, min(self._done - 0.6 * _BOARD_HIGH, self._wall - _BOARD_HIGH))

    def _worker(self, view: View, side: float, level: float, grip: float, *, tool: bool) -> Iterator[Element]:
        """Someone who faces the wall: with a trowel on it, or pressing a board against it."""
        stand = self._stand(side, level)
        hands = [view.at(side * grip, level - 0.04), view.at(side * grip, level + 0.03)]
        if tool:
            hands[0] = view.at(side * (grip + 0.16), level - 0.16)
        draw_person = person if level >= _STANDING else squatting
        yield draw_person(view.at(stand, -_BASE), -side, hands)

    def _base(self, view: View, left: float, right: float) -> Group:
        return Group("base", view.cut_box(left, -_BASE, right, 0.0))

    def _draw_first(self, view: View) -> None:
        """Left the outside with the board, right the inside with the trowel; the mortar has risen half way."""
        half, done = self._thick / 2, self._done
        self._ground(view)
        page = view.page
        page.add(self._base(view, -0.25, 0.95), Group("mesh", tuple(self._cage(view, done - 0.02))))
        page.add(Group("first coat", view.cut_box(-half, 0.0, half, done)))
        low = self._board_low()
        board = view.box(-half - _BOARD, low, -half, low + _BOARD_HIGH, Ink.WOOD)
        page.add(*self._worker(view, -1, low + 0.5 * _BOARD_HIGH, half + _BOARD + 0.04, tool=False))
        page.add(Group("board", (board,)))
        page.add(*self._trowel_and_hawk(view, 1.0, half, done))

    def _trowel_and_hawk(self, view: View, side: float, face: float, level: float) -> Iterator[Element]:
        """A person with a trowel at the face and a hawk of mortar below it."""
        grip = face + 0.09
        yield from self._worker(view, side, level, grip, tool=True)
        blade = view.shape(
            (side * face, level - 0.10), (side * (face + 0.015), level - 0.10), (side * (face + 0.015), level + 0.12),
            (side * face, level + 0.12), ink=Ink.STEEL,
        )  # fmt: skip
        handle = limb(view.all_at((side * (face + 0.015), level), (side * grip, level)), 0.02, Ink.WOOD)
        ends = sorted((side * (face + 0.12), side * (face + 0.36)))
        hawk = view.box(ends[0], level - 0.11, ends[1], level - 0.09, Ink.WOOD)
        heap_at = side * (face + 0.24)
        heap = view.cut(
            (heap_at - 0.09, level - 0.09),
            (heap_at + 0.09, level - 0.09),
            (heap_at + 0.03, level - 0.01),
            (heap_at - 0.04, level - 0.01),
        )
        yield Group("trowel", (blade, handle))
        yield Group("hawk", (hawk, *heap))

    def _draw_strips(self, view: View) -> None:
        """The wall from inside, laid flat: strip after strip, each over the slanted edge of the last."""
        page, wall, unit = view.page, self._wall, self._unit
        left, right = (_LEFT - VIEW / 2) * unit, (VIEW / 2 - MARGIN) * unit
        wide = (right - left) / _STRIPS
        slant = _SLANT * unit
        band = _BAND * unit
        page.add(
            view.marks((left, 0), (right, 0), (right, -band), (left, -band), kind=HatchKind.GROUND),
            view.line((left, 0), (right, 0), Ink.GROUND),
        )
        count = max(2, round(wall / _HOOPS))
        for number in range(count + 1):
            level = wall * number / count
            if level > 0.55 * wall:
                page.add(view.line((right - wide, level), (right, level), Ink.WIRE))
        tops = (wall, wall, 0.55 * wall)
        for number in reversed(range(_STRIPS)):
            start, end = left + number * wide - slant * (number > 0), left + (number + 1) * wide
            high = tops[number]
            lean = slant * high / wall
            end_low, end_high = (end, end) if number == _STRIPS - 1 else (end + slant / 2, end + slant / 2 - lean)
            outline = ((start, 0.0), (end_low, 0.0), (end_high, high), (start, high))
            page.add(Group("strip", view.cut(*outline)))
        for number in range(_STRIPS):
            middle = left + (number + 0.5) * wide
            x, low = view.paper(middle, 0.0)
            page.disc(number + 1, x - 14, low - 0.27 * wall / unit)
            first, last = 0.1 * wall, (0.85 if number < _STRIPS - 1 else 0.62) * tops[number] + 0.0
            page.add(arrow(view.all_at((middle + 12 * unit, first), (middle + 12 * unit, last)), 4 * unit))
        page.add(view.measure((left, 0.0), (left, wall), 8))

    def _draw_second(self, view: View) -> None:
        """Next day: the wall stands full of mortar, and the outside gets its coat, again from the foot up."""
        half, done, coat = self._thick / 2, self._done, self._coat()
        self._ground(view)
        page = view.page
        page.add(self._base(view, -0.25, 0.95), Group("first coat", view.cut_box(-half, 0.0, half, self._wall)))
        page.add(Group("second coat", view.cut_box(-half - coat, 0.0, -half, done)))
        page.add(*self._trowel_and_hawk(view, -1.0, half + coat, done))
