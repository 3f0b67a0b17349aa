"""The leak test: a mark in the tank, a control bucket beside it, and the two falls that are compared."""

from __future__ import annotations

from collections.abc import Mapping

from generator.figures.ink import HatchKind, Ink
from generator.figures.panels import Names, Panel, earth
from generator.figures.scene import Group, Scene
from generator.figures.shown import shown
from generator.figures.site_things import cut_bucket
from generator.figures.view import View
from generator.words import Words

NEEDS = ("water_depth", "wall_height", "inside_diameter", "wall_thickness")

_BUCKET = 0.32
_ABOVE = 0.06
"""How far the rim of the bucket stands above the water, metres."""
_ROOF, _BASE = 0.05, 0.1
_LID = 0.33
"""Half the lid: the bucket stands below it, because nobody goes in to read."""
_FALL, _OWN = 0.11, 0.035
"""Fall in the tank and in the bucket in the second picture, as drawn, metres."""


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one tank.

    Args:
        values: numbers of the tank, by the names in `NEEDS`.
        words: language of its texts.
    """
    names = Names(words, lambda part: words.say_one_of("figure.leak-test", part))
    depth, wall, thick = values["water_depth"], values["wall_height"], values["wall_thickness"] / 1000
    half = values["inside_diameter"] / 2
    high = min(_BUCKET, 0.7 * depth)
    at = -0.4 * half
    edge = half + thick + 0.06 * half

    def tank(view: View) -> None:
        view.page.add(
            *earth(view, [(-edge - 0.1, -_BASE), (edge + 0.1, -_BASE)], 0.06),
            Group("base", (view.box(-half - thick - 0.1, -_BASE, half + thick + 0.1, 0, Ink.CONCRETE),)),
            view.marks((-half, 0), (half, 0), (half, depth), (-half, depth), kind=HatchKind.WATER),
            view.line((-half, depth), (half, depth), Ink.WATER_LINE),
        )
        for side in (-1, 1):
            left, right = sorted((side * half, side * (half + thick)))
            view.page.add(Group("wall", view.cut_box(left, 0, right, wall)))
        foot = depth + min(_ABOVE, 0.3 * (wall - depth)) - high
        view.page.add(
            Group("roof", view.cut_box(-half - thick, wall, half + thick, wall + _ROOF)),
            Group("lid", (view.box(at - _LID, wall + _ROOF, at + _LID, wall + _ROOF + 0.05, Ink.STEEL_EDGE),)),
            Group("stand", (view.box(at - 0.4 * high, 0, at + 0.4 * high, foot, Ink.STONE),)),
            cut_bucket(view, at, foot, high, depth - foot),
            Group("mark", (view.line((half - 0.09 * half, depth), (half, depth), Ink.CROSS),)),
            view.measure((0.3 * half, depth), (0.3 * half, 0), 0),
        )

    def near(view: View) -> None:
        view.page.add(
            Group("wall", view.cut_box(-0.06, -0.2, 0.0, 0.24)),
            view.marks((0, -0.2), (0.34, -0.2), (0.34, -_FALL), (0, -_FALL), kind=HatchKind.WATER),
            view.line((0, -_FALL), (0.34, -_FALL), Ink.WATER_LINE),
            Group("mark", (view.line((0, 0), (0.34, 0), Ink.STRING),)),
            view.line((0.17, 0), (0.17, -_FALL), Ink.CROSS),
        )
        x, foot, tall = 0.68, -0.2, 0.36
        view.page.add(
            cut_bucket(view, x, foot, tall, 0.2 - _OWN),
            Group("mark", (view.line((x - 0.15, 0), (x + 0.15, 0), Ink.STRING),)),
            view.line((x, 0), (x, -_OWN), Ink.CROSS),
        )

    return names.stacked(
        [
            Panel(
                -edge - 0.1,
                -_BASE - 0.06,
                edge + 0.1,
                wall + _ROOF + 0.06,
                tank,
                heading=names.text("tank"),
                above=[
                    names.of("bucket", (at, depth), 110),
                    names.of("lid", (at + 0.2, wall + _ROOF + 0.03), 100),
                    names.of("mark", (half - 0.04 * half, depth), 100),
                ],
                below=[
                    names.of("stand", (at, 0.3 * max(0.1, depth - high)), 120),
                    names.of("depth", (0.3 * half, 0.2 * depth), 110, shown("water_depth", values, words)),
                ],
                most_high=170,
                foot=15,
            ),
            Panel(
                -0.06,
                -0.2,
                0.86,
                0.24,
                near,
                heading=names.text("days"),
                above=[names.of("mark_first", (0.1, 0.0), 130), names.of("mark_bucket", (0.62, 0.0), 130)],
                below=[names.of("fall", (0.17, -0.5 * _FALL), 150), names.of("own", (0.68, -0.5 * _OWN), 150)],
                most_high=150,
                sky=4,
            ),
        ],
        note="note",
    )
