"""What water does to a wall: it pushes more the deeper it is, and the hoops hold it by pulling round."""

from __future__ import annotations

from collections.abc import Mapping

from generator.figures.ink import HatchKind, Ink
from generator.figures.panels import Names, Panel
from generator.figures.people import arrow, fist
from generator.figures.scene import Arc, Group, Point, Scene, on_circle
from generator.figures.shown import shown
from generator.figures.view import View
from generator.words import Words

NEEDS = ("water_depth", "wall_height", "wall_thickness", "inside_diameter")

_PUSH = 0.62
"""Length of the push at the foot, in depths of water: the same for every level below the water."""
_LEVELS = (0.2, 0.4, 0.6, 0.8, 0.97)
_ROUND = tuple(range(12, 180, 26))
"""Directions of the push round the half ring, degrees."""


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one tank.

    Args:
        values: numbers of the tank, by the names in `NEEDS`.
        words: language of its texts.
    """
    names = Names(words, lambda part: words.say_one_of("figure.water-pushes", part))
    depth, wall, thick = values["water_depth"], values["wall_height"], values["wall_thickness"] / 1000
    wide, base = 1.05 * wall, 0.1 * wall

    def section(view: View) -> None:
        view.page.add(
            view.marks((-wide, 0), (0, 0), (0, depth), (-wide, depth), kind=HatchKind.WATER),
            view.line((-wide, depth), (0, depth), Ink.WATER_LINE),
            Group("base", (view.box(-wide, -base, thick + 0.16 * wall, 0, Ink.CONCRETE),)),
            Group("wall", view.cut_box(0, 0, thick, wall)),
            view.measure((-wide, 0), (-wide, depth), 10),
        )
        pushes = []
        for level in _LEVELS:
            y, long = depth * (1 - level), _PUSH * depth * level
            pushes.append(arrow(view.all_at((-long, y), (0, y)), min(0.03 * wall, 0.1 * depth) * _metres(view)))
        view.page.add(
            Group("push", tuple(pushes)),
            view.line((0, depth), (-_PUSH * depth, 0), Ink.MEASURE),
        )

    def ring(view: View) -> None:
        pool: list[Point] = [on_circle((0, 0), 0.97, degrees) for degrees in range(0, 181, 6)]
        unit = _metres(view)
        view.page.add(
            view.marks(*pool, kind=HatchKind.WATER),
            view.line((-0.97, 0), (0.97, 0), Ink.BREAK),
            Group("hoop", (Arc(view.at(0, 0), unit, 0, 180, Ink.HOOP_LINE),)),
        )
        pushes = (
            arrow(view.all_at(on_circle((0, 0), 0.5, turn), on_circle((0, 0), 0.96, turn)), 0.04 * unit)
            for turn in _ROUND
        )
        view.page.add(Group("push", tuple(pushes)))
        for side in (-1.0, 1.0):
            view.page.add(
                view.line((side, 0), (side, -0.24), Ink.HOOP_LINE),
                fist(view.at(side, -0.16), view.at(side, -0.62), 0.17 * unit),
            )

    return names.stacked(
        [
            Panel(
                -wide - 0.16 * wall,
                -base,
                thick + 0.16 * wall,
                wall,
                section,
                heading=names.text("section"),
                beside=[
                    names.beside("little", (-0.1 * _PUSH * depth, 0.8 * depth), 104),
                    names.beside("wall", (0.5 * thick, 0.52 * depth), 104),
                    names.beside("most", (-0.4 * _PUSH * depth, 0.03 * depth), 104),
                ],
                below=[names.of("depth", (-wide - 0.07 * wall, 0.0), 130, shown("water_depth", values, words))],
                column=106,
                most_high=165,
            ),
            Panel(
                -1.3,
                -0.68,
                1.3,
                1.06,
                ring,
                heading=names.text("ring"),
                above=[
                    names.of("push", on_circle((0, 0), 0.8, _ROUND[2]), 130),
                    names.of("across", (-0.5, 0.0), 110, shown("inside_diameter", values, words)),
                ],
                below=[names.of("hoop", (1.0, -0.3), 150), names.of("half", (-1.0, -0.3), 150)],
                most_high=165,
            ),
        ],
        note="note",
    )


def _metres(view: View) -> float:
    """Metres of the scene that one metre of a panel takes."""
    return view.scale * view.page.unit
