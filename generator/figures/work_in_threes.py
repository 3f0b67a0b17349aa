"""Practice in threes: one does, one tells the steps, one measures; then all move on."""

from __future__ import annotations

from collections.abc import Mapping

from generator.figures.ink import Ink
from generator.figures.panels import Names, Panel, cross, earth, stick
from generator.figures.poses import STANDING, posed
from generator.figures.scene import Group, Scene
from generator.figures.view import View
from generator.words import Words

NEEDS = ()

_LEFT, _RIGHT, _HIGH = -1.9, 1.9, 1.72
_FRAME = (-0.3, 0.55, 0.3, 1.1)
"""A small frame on a stand, as drawn: left, low, right and high, metres."""


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing; it is the same for every tank.

    Args:
        values: not needed.
        words: language of its texts.
    """
    del values
    names = Names(words, lambda part: words.say_one_of("figure.work-in-threes", part))

    def right(view: View) -> None:
        _ground(view)
        _frame(view)
        view.page.add(
            posed(view, (-0.78, 0.0), 1.0, STANDING, [(-0.24, 0.86), (-0.26, 0.74)], gloves=True, goggles=True),
            posed(view, (-1.45, 0.0), 1.0, STANDING, [(-1.0, 1.18)], goggles=True),
            posed(view, (0.86, 0.0), -1.0, STANDING, [(0.34, 0.82)], gloves=True, goggles=True),
            Group("ruler", (stick(view, ((0.3, 0.64), (0.3, 1.0)), 0.035),)),
        )

    def wrong(view: View) -> None:
        _ground(view)
        _frame(view)
        view.page.add(
            posed(view, (-0.78, 0.0), 1.0, STANDING, [(-0.24, 0.86), (-0.26, 0.74)], gloves=True, goggles=True),
            posed(view, (0.95, 0.0), 1.0, STANDING),
            posed(view, (1.5, 0.0), -1.0, STANDING),
            cross(view, -1.5, 0.8, 0.26),
        )

    return names.stacked(
        [
            Panel(
                _LEFT,
                -0.1,
                _RIGHT,
                _HIGH,
                right,
                heading=names.text("right"),
                above=[
                    names.of("tells", (-1.42, 1.6), 100),
                    names.of("does", (-0.75, 1.6), 90),
                    names.of("checks", (0.84, 1.6), 110),
                ],
                most_high=150,
                sky=4,
            ),
            Panel(
                _LEFT,
                -0.1,
                _RIGHT,
                _HIGH,
                wrong,
                heading=names.text("wrong"),
                below=[names.of("look", (1.2, 1.0), 150)],
                most_high=140,
                sky=4,
            ),
        ],
        note="note",
    )


def _ground(view: View) -> None:
    view.page.add(*earth(view, [(_LEFT, 0.0), (_RIGHT, 0.0)], 0.08))


def _frame(view: View) -> None:
    """Half of it is full of mortar, above it is bare mesh."""
    left, low, right, high = _FRAME
    middle = 0.5 * (low + high)
    corners = (left, low), (left, high), (right, high), (right, low), (left, low)
    wires = [view.line((x, middle), (x, high), Ink.WIRE) for x in (left + 0.1 * step for step in range(1, 6))]
    wires += [view.line((left, y), (right, y), Ink.WIRE) for y in (middle + 0.07, middle + 0.14, middle + 0.21)]
    legs = [stick(view, ((x, 0.0), (x, low)), 0.05) for x in (left + 0.05, right - 0.05)]
    view.page.add(
        Group("stand", tuple(legs)),
        Group("mortar", view.cut((left, low), (right, low), (right, middle), (left, middle))),
        Group("mesh", tuple(wires)),
        Group("frame", (view.path(*corners, ink=Ink.GROUND),)),
    )
