"""Cleaning inside: every opening open, a rope round the chest, and two outside who hold it and never leave."""

from __future__ import annotations

from collections.abc import Mapping

from generator.figures.ink import Ink
from generator.figures.panels import Names, Panel, cross, earth, stick
from generator.figures.people import arrow
from generator.figures.poses import STANDING, posed
from generator.figures.scene import Group, Scene
from generator.figures.view import View
from generator.words import Words

NEEDS = ()

_HALF, _WALL, _THICK, _ROOF = 1.5, 1.25, 0.07, 0.07
"""A village tank as drawn, metres; no numbers of the course."""
_OPEN = (-1.25, -0.65)
"""The manhole in the roof, metres from the middle."""
_VENT = (0.85, 1.0)
"""The pipe of the vent, wider than it is."""
_LEFT, _RIGHT, _HIGH = -3.3, 1.95, 1.85
_WATCHERS = (-_HALF - 0.52, -_HALF - 1.25)
"""The two outside: one looks in, the other holds the rope with him."""
_BENT = ((-0.05, 0.40), (0.16, 0.56))
"""Hip and shoulder of someone who works bent under a low roof."""


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing; it is the same for every tank.

    Args:
        values: not needed.
        words: language of its texts.
    """
    del values
    names = Names(words, lambda part: words.say_one_of("figure.cleaning-watch", part))
    roof = _WALL + _ROOF

    def right(view: View) -> None:
        unit = view.scale * view.page.unit
        _tank(view, closed=False)
        _ladder(view)
        view.page.add(*_worker(view))
        lid = ((_OPEN[1] + 0.02, roof + 0.02), (_OPEN[1] + 0.2, roof + 0.5))
        view.page.add(Group("lid", (stick(view, lid, 0.04, Ink.STEEL_EDGE),)))
        hatch, vent = (_OPEN[0] + _OPEN[1]) / 2 + 0.1, (_VENT[0] + _VENT[1]) / 2
        for way in (((hatch, roof + 0.42), (hatch, roof + 0.02)), ((vent, roof + 0.2), (vent, roof + 0.5))):
            view.page.add(arrow(view.all_at(*way), 0.05 * unit))
        near, far = _WATCHERS
        hands = (-1.62, 1.46), (far + 0.42, 1.3)
        rope = (hands[1], hands[0], (-1.18, roof + 0.06), (-1.1, roof), (-0.42, 0.86))
        view.page.add(
            Group("step", (view.box(far - 0.28, -0.1, near + 0.28, 0.12, Ink.STONE),)),
            posed(view, (far, 0.12), 1.0, STANDING, [hands[1]]),
            Group("rope", (view.path(*rope, ink=Ink.CROSS),)),
            posed(view, (near, 0.12), 1.0, STANDING, [hands[0]]),
        )

    def wrong(view: View) -> None:
        _tank(view, closed=True)
        view.page.add(*_worker(view), cross(view, -2.3, 0.7, 0.28))

    return names.stacked(
        [
            Panel(
                _LEFT,
                -0.2,
                _RIGHT,
                _HIGH,
                right,
                heading=names.text("right"),
                above=[
                    names.of("watcher", (-1.98, 1.5), 118),
                    names.of("lids", (-0.55, roof + 0.35), 90),
                    names.of("air", (_VENT[1], roof + 0.12), 110),
                ],
                below=[names.of("rope", (-0.62, 1.0), 130), names.of("worker", (-0.1, 0.6), 150)],
                sky=4,
            ),
            Panel(
                _LEFT,
                -0.2,
                _RIGHT,
                _WALL + 0.25,
                wrong,
                heading=names.text("wrong"),
                below=[names.of("nobody", (-2.3, 0.05), 150), names.of("closed", (0.4, _WALL + _ROOF), 130)],
                sky=4,
            ),
        ],
        note="note",
    )


def _tank(view: View, *, closed: bool) -> None:
    roof = _WALL + _ROOF
    outer = _HALF + _THICK
    view.page.add(
        *earth(view, [(_LEFT, -0.1), (_RIGHT, -0.1)], 0.09),
        Group("base", (view.box(-outer - 0.14, -0.1, outer + 0.14, 0.0, Ink.CONCRETE),)),
        Group("wall", view.cut_box(-outer, 0.0, -_HALF, _WALL)),
        Group("wall", view.cut_box(_HALF, 0.0, outer, _WALL)),
    )
    (a, b), (c, d) = _OPEN, _VENT
    for left, right in ((-outer, a), (b, c), (d, outer)):
        view.page.add(Group("roof", view.cut_box(left, _WALL, right, roof)))
    for x in _OPEN:
        view.page.add(Group("rim", (view.box(x - 0.03, _WALL, x + 0.03, roof + 0.07, Ink.CONCRETE),)))
    for x in _VENT:
        view.page.add(Group("vent", (view.box(x - 0.015, _WALL, x + 0.015, roof + 0.16, Ink.STEEL_EDGE),)))
    if closed:
        for left, right, low in ((a - 0.06, b + 0.06, 0.07), (c - 0.05, d + 0.05, 0.16)):
            view.page.add(Group("lid", (view.box(left, roof + low, right, roof + low + 0.04, Ink.STEEL_EDGE),)))


def _ladder(view: View) -> None:
    """A ladder stays in the opening as long as anybody is inside."""
    low, high = (-0.78, 0.0), (-0.98, _WALL + 0.5)
    parts = []
    for shift in (0.0, -0.22):
        parts.append(view.line((low[0] + shift, low[1]), (high[0] + shift, high[1]), Ink.GROUND))
    for step in range(1, 7):
        share = step / 7
        x, y = low[0] + (high[0] - low[0]) * share, high[1] * share
        parts.append(view.line((x, y), (x - 0.22, y), Ink.GROUND))
    view.page.add(Group("ladder", tuple(parts)))


def _worker(view: View) -> tuple[Group, Group]:
    """Someone bent under the roof with a long brush."""
    brush = Group(
        "brush",
        (
            stick(view, ((0.02, 0.62), (0.75, 0.06)), 0.028),
            view.shape((0.68, 0.02), (0.92, 0.02), (0.88, 0.1), (0.72, 0.1), ink=Ink.WOOD),
        ),
    )
    return brush, posed(view, (-0.35, 0.0), 1.0, _BENT, [(0.06, 0.59), (0.24, 0.46)])
