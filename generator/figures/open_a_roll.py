"""A roll of mesh is opened by two, its end under stones; alone it springs into the face."""

from __future__ import annotations

import math
from collections.abc import Mapping

from generator.figures.ink import Ink
from generator.figures.panels import Names, Panel, cross, earth
from generator.figures.poses import LIFTING, STOOPING, posed
from generator.figures.scene import Group, Point, Polyline, Scene, on_circle
from generator.figures.site_things import stones
from generator.figures.view import View
from generator.words import Words

NEEDS = ()

_ROLL = 0.17
"""Half across of the roll as drawn, metres."""
_LEFT, _RIGHT = -1.9, 1.9
_FLAT = -1.05
"""Where the open end of the mesh lies, metres."""


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing; it is the same for every tank.

    Args:
        values: not needed.
        words: language of its texts.
    """
    del values
    names = Names(words, lambda part: words.say_one_of("figure.open-a-roll", part))

    def right(view: View) -> None:
        _ground(view)
        view.page.add(
            Group("mesh", (*_coil(view, 0.45), view.path((_FLAT, 0.02), (0.45, 0.02), ink=Ink.WIRE))),
            stones(view, _FLAT + 0.02, _FLAT + 0.3, 0.03, 0.13, "end"),
            posed(
                view, (_FLAT - 0.35, 0.0), 1.0, LIFTING, [(_FLAT + 0.36, 0.06)], gloves=True, goggles=True, step=0.09
            ),
            posed(view, (1.2, 0.0), -1.0, LIFTING, [(0.66, 0.3), (0.62, 0.24)], gloves=True, goggles=True, step=0.09),
        )

    def wrong(view: View) -> None:
        _ground(view)
        wild = [(0.45, 0.02), (0.72, 0.12), (0.86, 0.4), (0.82, 0.72), (0.62, 0.94), (0.36, 1.0), (0.2, 0.9)]
        view.page.add(
            posed(view, (-0.55, 0.0), 1.0, STOOPING, [(0.3, 0.25)]),
            Group("mesh", (*_coil(view, 0.45), view.path(*wild, ink=Ink.WIRE))),
            cross(view, 1.3, 0.6, 0.28),
        )

    return names.stacked(
        [
            Panel(
                _LEFT,
                -0.1,
                _RIGHT,
                1.25,
                right,
                heading=names.text("right"),
                above=[
                    names.of("holds", (_FLAT - 0.3, 0.8), 110),
                    names.of("cuts", (1.12, 0.8), 120),
                ],
                below=[names.of("stones", (_FLAT + 0.16, 0.06), 120), names.of("roll", (0.45, 0.1), 120)],
                most_high=140,
                sky=4,
            ),
            Panel(
                _LEFT,
                -0.1,
                _RIGHT,
                1.15,
                wrong,
                heading=names.text("wrong"),
                below=[names.of("springs", (0.85, 0.5), 190)],
                most_high=130,
                sky=4,
            ),
        ],
        note="note",
    )


def _coil(view: View, x: float) -> tuple[Polyline, ...]:
    """A roll seen from its end: turn within turn."""
    places = [on_circle((x, _ROLL), _ROLL * math.sqrt(step / 96), 270 + 15 * step) for step in range(4, 97)]
    return (view.path(*places, ink=Ink.WIRE),)


def _ground(view: View) -> None:
    line: list[Point] = [(_LEFT, 0.0), (_RIGHT, 0.0)]
    view.page.add(*earth(view, line, 0.08))
