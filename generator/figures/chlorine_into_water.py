"""Chlorine powder goes into water, never water onto powder; eyes and hands are covered."""

from __future__ import annotations

from collections.abc import Mapping

from generator.figures.ink import Ink
from generator.figures.panels import Names, Panel, cross, earth, stick
from generator.figures.people import arrow
from generator.figures.poses import STANDING, posed
from generator.figures.scene import Circle, Element, Group, Scene
from generator.figures.site_things import cut_bucket
from generator.figures.view import View
from generator.words import Words

NEEDS = ()

_BLOCK = 0.42
_BUCKET = 0.4
_LEFT, _RIGHT, _HIGH = -1.5, 1.6, 1.72


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing; it is the same for every tank.

    Args:
        values: not needed.
        words: language of its texts.
    """
    del values
    names = Names(words, lambda part: words.say_one_of("figure.chlorine-into-water", part))

    def right(view: View) -> None:
        unit = view.scale * view.page.unit
        _ground(view)
        view.page.add(cut_bucket(view, 0.0, _BLOCK, _BUCKET, 0.3))
        spoon = (0.06, _BLOCK + _BUCKET + 0.2)
        view.page.add(
            stick(view, ((-0.3, spoon[1] + 0.02), (0.0, spoon[1])), 0.022),
            Group(
                "spoon",
                (
                    view.shape(
                        (-0.05, spoon[1] - 0.02),
                        (0.04, spoon[1] - 0.05),
                        (0.07, spoon[1] + 0.03),
                        (-0.05, spoon[1] + 0.03),
                        ink=Ink.STEEL_EDGE,
                    ),
                ),
            ),
            Group("powder", tuple(_grains(view, 0.06, spoon[1] - 0.06, 0.16))),
            posed(view, (-0.62, 0.0), 1.0, STANDING, [(-0.24, spoon[1] + 0.01)], gloves=True, goggles=True),
            arrow(view.all_at((-1.42, 1.3), (-1.0, 1.3)), 0.045 * unit),
            cut_bucket(view, 1.15, 0.0, 0.36, 0.3),
        )

    def wrong(view: View) -> None:
        _ground(view)
        view.page.add(cut_bucket(view, 0.0, _BLOCK, _BUCKET, 0.0))
        heap = view.shape(
            (-0.12, _BLOCK + 0.01), (0.12, _BLOCK + 0.01), (0.05, _BLOCK + 0.09), (-0.04, _BLOCK + 0.1), ink=Ink.HOLE
        )
        can = view.shape((-0.22, 1.12), (0.0, 1.2), (0.08, 1.02), (-0.14, 0.94), ink=Ink.THING)
        stream = stick(view, ((0.08, 1.04), (0.05, 0.8), (0.03, _BLOCK + 0.1)), 0.03, Ink.WATER_BODY)
        splash: list[Element] = [
            stick(view, ((0.0, _BLOCK + 0.12), (x / 2, y - 0.16), (x, y)), 0.018, Ink.WATER_BODY)
            for x, y in ((-0.42, 1.32), (-0.36, 1.0), (0.3, 1.25), (0.4, 1.0))
        ]
        view.page.add(
            Group("powder", (heap,)),
            Group("can", (can,)),
            Group("stream", (stream,)),
            posed(view, (-0.62, 0.0), 1.0, STANDING, [(-0.18, 1.06)]),
            Group("splash", tuple(splash)),
            cross(view, 1.0, 0.95, 0.28),
        )

    return names.stacked(
        [
            Panel(
                _LEFT,
                -0.12,
                _RIGHT,
                _HIGH,
                right,
                heading=names.text("right"),
                above=[
                    names.of("wind", (-1.2, 1.33), 96),
                    names.of("goggles", (-0.5, 1.46), 84),
                    names.of("gloves", (-0.27, 1.05), 80),
                ],
                below=[names.of("water", (0.0, _BLOCK + 0.1), 130), names.of("rinse", (1.15, 0.1), 140)],
                beside=(),
                sky=4,
            ),
            Panel(
                _LEFT,
                -0.12,
                _RIGHT,
                _HIGH,
                wrong,
                heading=names.text("wrong"),
                below=[names.of("splash", (0.0, _BLOCK + 0.13), 280)],
                sky=4,
            ),
        ],
        note="note",
    )


def _ground(view: View) -> None:
    """Open ground with a block to stand the bucket on."""
    view.page.add(
        *earth(view, [(_LEFT, 0.0), (_RIGHT, 0.0)], 0.1),
        Group("block", (view.box(-0.26, 0.0, 0.26, _BLOCK, Ink.STONE),)),
    )


def _grains(view: View, x: float, top: float, deep: float) -> list[Element]:
    """Powder that falls."""
    unit = view.scale * view.page.unit
    return [
        Circle(view.at(x - 0.03 + 0.02 * (step % 4), top - deep * step / 12), 0.008 * unit, Ink.HOLE)
        for step in range(12)
    ]
