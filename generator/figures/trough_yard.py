"""The yard of a trough: fence and gate before the water, stones round it, a grown-up; and a trough without them."""

from __future__ import annotations

import math
from collections.abc import Mapping

from generator.figures.ink import HatchKind, Ink
from generator.figures.panels import Names, Panel, cross, earth, stick
from generator.figures.people import goat
from generator.figures.poses import STANDING, STOOPING, posed
from generator.figures.scene import Group, Scene, on_circle
from generator.figures.site_things import stones
from generator.figures.view import View
from generator.words import Words

NEEDS = ()

_RADIUS, _WALL, _RIM = 0.25, 0.04, 0.38
"""A trough cut across, as drawn, metres; no numbers of the course."""
_WATER = 0.31
_LEFT, _RIGHT = -1.75, 2.45
_FENCE = (0.95, 1.2, 1.45)
"""Posts of the fence, metres from the middle of the trough."""
_FENCE_HIGH = 1.05
_CHILD = 0.85
"""Height of a child that walks but can't read, metres."""


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing; it is the same for every trough.

    Args:
        values: not needed.
        words: language of its texts.
    """
    del values
    names = Names(words, lambda part: words.say_one_of("figure.trough-yard", part))

    def right(view: View) -> None:
        _ground(view)
        view.page.add(stones(view, _LEFT + 0.05, -0.3, 0.0, 0.09, "left"), stones(view, 0.3, 0.85, 0.0, 0.09, "right"))
        _trough(view)
        view.page.add(goat(view.at(-1.3, 0.09)))
        _fence(view)
        hold = (1.92, 0.62)
        view.page.add(
            posed(view, (2.14, 0.0), -1.0, STANDING, [hold]),
            posed(view, (1.74, 0.0), -1.0, STANDING, [hold], height=_CHILD),
        )

    def wrong(view: View) -> None:
        _ground(view)
        _trough(view)
        view.page.add(
            posed(view, (0.5, 0.0), -1.0, STOOPING, [(0.16, _WATER + 0.02)], height=_CHILD),
            cross(view, 1.5, 0.6, 0.28),
        )

    return names.stacked(
        [
            Panel(
                _LEFT,
                -0.1,
                _RIGHT,
                1.66,
                right,
                heading=names.text("right"),
                above=[
                    names.of("goats", (-0.75, 0.7), 90),
                    names.of("fence", (_FENCE[1], 0.9), 100),
                    names.of("grown", (2.14, 1.5), 100),
                ],
                below=[names.of("stones", (-0.9, 0.04), 120), names.of("water", (0.05, 0.22), 120)],
                sky=4,
            ),
            Panel(
                _LEFT,
                -0.1,
                _RIGHT,
                0.95,
                wrong,
                heading=names.text("wrong"),
                below=[names.of("leans", (0.4, 0.45), 150), names.of("nobody", (1.5, 0.05), 130)],
                sky=4,
            ),
        ],
        note="note",
    )


def _ground(view: View) -> None:
    view.page.add(*earth(view, [(_LEFT, 0.0), (_RIGHT, 0.0)], 0.07))


def _trough(view: View) -> None:
    """Half a log cut across, on its bed, with water in it."""
    outer = _RADIUS + _WALL
    inside = [on_circle((0.0, _RIM), _RADIUS, 180 + 180 * step / 24) for step in range(25)]
    outside = [on_circle((0.0, _RIM), outer, 360 - 180 * step / 24) for step in range(25)]
    rest = [on_circle((0.0, _RIM), outer, 225 + 90 * step / 12) for step in range(13)]
    half = math.sqrt(_RADIUS**2 - (_RIM - _WATER) ** 2)
    begin = math.degrees(math.atan2(_WATER - _RIM, -half)) % 360
    wet = [on_circle((0.0, _RIM), _RADIUS, begin + (540 - 2 * begin) * step / 20) for step in range(21)]
    view.page.add(
        Group("bed", view.cut((-0.26, 0.0), *rest, (0.26, 0.0))),
        Group("trough", view.cut(*inside, *outside)),
        Group("water", (view.marks(*wet, kind=HatchKind.WATER),)),
        view.line((-half, _WATER), (half, _WATER), Ink.WATER_LINE),
    )


def _fence(view: View) -> None:
    posts = [stick(view, ((x, 0.0), (x, _FENCE_HIGH)), 0.05) for x in _FENCE]
    rails = [
        stick(view, ((_FENCE[0] - 0.06, y), (_FENCE[-1] + 0.06, y)), 0.035) for y in (0.12, 0.34, 0.56, 0.78, 0.98)
    ]
    view.page.add(Group("fence", (*rails, *posts)))
