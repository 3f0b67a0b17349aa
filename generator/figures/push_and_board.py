"""Mortar pressed through the mesh against a board, cut through; and what happens without the board."""

from __future__ import annotations

from collections.abc import Mapping

from generator.figures.fault_parts import Uneven
from generator.figures.ink import Ink
from generator.figures.panels import Names, Panel, cross, stick
from generator.figures.people import arrow
from generator.figures.poses import gloved_fist
from generator.figures.scene import Circle, Element, Group, Point, Scene
from generator.figures.shown import shown
from generator.figures.view import View
from generator.words import Words

NEEDS = (
    "wall_thickness",
    "mesh_cover",
    "inside_mesh_thickness",
    "outside_mesh_thickness",
    "bar_diameter",
    "hoop_diameter",
)

_BOARD = 0.02
_LOW, _HIGH = -0.16, 0.14
_HOOPS = (-0.115, 0.005, 0.125)
_GAP, _WIRE = 0.016, 0.0012
_LEFT, _RIGHT = 0.19, 0.15
_FULL = 0.02
"""How far the mortar has come up, as drawn, metres."""


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one wall.

    Args:
        values: numbers of the wall, by the names in `NEEDS`.
        words: language of its texts.
    """
    names = Names(words, lambda part: words.say_one_of("figure.push-and-board", part))
    wall = values["wall_thickness"] / 1000

    def right(view: View) -> None:
        fill = ((0, _LOW), (wall, _LOW), (wall, _FULL + 0.01), (0.4 * wall, _FULL), (-0.004, _FULL - 0.03))
        view.page.add(
            Group("board", (view.box(wall, _LOW, wall + _BOARD, _HIGH - 0.02, Ink.WOOD),)),
            Group("mortar", view.cut(*fill)),
        )
        view.page.add(*_cage(view, values))
        unit = view.scale * view.page.unit
        view.page.add(
            Group("trowel", tuple(_trowel(view, _FULL - 0.02))),
            gloved_fist(view.at(-0.085, _FULL - 0.055), view.at(-0.17, _FULL - 0.14), 0.05 * unit),
            arrow(view.all_at((-0.05, _FULL + 0.02), (-0.05, _FULL + 0.09)), 0.008 * unit),
            gloved_fist(view.at(wall + _BOARD + 0.024, 0.035), view.at(wall + _RIGHT - 0.005, -0.03), 0.05 * unit),
            view.measure((0, _LOW), (wall, _LOW), -9),
        )

    def wrong(view: View) -> None:
        uneven = Uneven("no board")
        edge: list[Point] = [
            (wall + uneven.between(-0.012, 0.014), _LOW + (0.02 - _LOW) * step / 8) for step in range(9)
        ]
        fill = ((0.0, _LOW), *edge, (0.4 * wall, _FULL), (-0.004, _FULL - 0.03))
        view.page.add(Group("mortar", view.cut(*fill)))
        unit = view.scale * view.page.unit
        hoop, bar, cover = (values[name] / 1000 for name in ("hoop_diameter", "bar_diameter", "mesh_cover"))
        back = cover + values["inside_mesh_thickness"] / 1000 + bar + hoop
        for level in (-0.115, -0.05, 0.0):
            hole = [
                (back + 0.006 + 0.011 * a * uneven.between(0.8, 1.2), level + 0.018 * b * uneven.between(0.8, 1.2))
                for a, b in ((1, 0), (0.5, 0.8), (-0.5, 0.9), (-1, 0.1), (-0.6, -0.8), (0.4, -0.9))
            ]
            view.page.add(Group("hole", (view.shape(*hole, ink=Ink.HOLE),)))
        view.page.add(*_cage(view, values))
        lumps = [
            Circle(
                view.at(wall + 0.03 + 0.017 * step, -0.03 - 0.045 * (step % 3)),
                (0.006 + 0.002 * (step % 2)) * unit,
                Ink.MORTAR_CUT,
            )
            for step in range(5)
        ]
        view.page.add(Group("lumps", tuple(lumps)), cross(view, -0.09, -0.02, 0.045))

    low, inside = values["mesh_cover"] / 1000, values["inside_mesh_thickness"] / 1000
    return names.stacked(
        [
            Panel(
                -_LEFT,
                _LOW - 0.03,
                wall + _RIGHT,
                _HIGH,
                right,
                most_high=230,
                heading=names.text("right"),
                above=[
                    names.of("press", (-0.03, _FULL), 100),
                    names.of("bare", (low + 0.5 * inside, _HIGH - 0.02), 80),
                    names.of("board", (wall + 0.5 * _BOARD, _HIGH - 0.04), 130),
                ],
                below=[
                    names.of("full", (0.3 * wall, -0.1), 150),
                    names.of("wall", (0.8 * wall, _LOW - 0.016), 100, shown("wall_thickness", values, words)),
                ],
            ),
            Panel(
                -_LEFT,
                _LOW,
                wall + _RIGHT,
                _HIGH,
                wrong,
                most_high=200,
                heading=names.text("wrong"),
                below=[names.of("hole", (wall - 0.014, -0.12), 130), names.of("falls", (wall + 0.07, -0.08), 130)],
            ),
        ],
        note="note",
    )


def _cage(view: View, values: Mapping[str, float]) -> list[Element]:
    """Mesh, upright bar, hoops and mesh, from the inside face outward."""
    cover, inside, bar, hoop, outside = (
        values[name] / 1000
        for name in ("mesh_cover", "inside_mesh_thickness", "bar_diameter", "hoop_diameter", "outside_mesh_thickness")
    )
    wall, unit = values["wall_thickness"] / 1000, view.scale * view.page.unit
    first = cover + inside
    found: list[Element] = [Group("bar", (view.box(first, _LOW, first + bar, _HIGH, Ink.STEEL_EDGE),))]
    for level in _HOOPS:
        found.append(Group("hoop", (Circle(view.at(first + bar + hoop / 2, level), hoop / 2 * unit, Ink.STEEL),)))
    for x in (cover + inside / 2, min(first + bar + hoop + outside / 2, wall - 0.002)):
        wires: list[Element] = [view.line((x, _LOW), (x, _HIGH), Ink.WIRE)]
        level = _LOW + _GAP / 2
        while level < _HIGH - _WIRE:
            wires.append(Circle(view.at(x, level), _WIRE * unit, Ink.STEEL))
            level += _GAP
        found.append(Group("mesh", tuple(wires)))
    return found


def _trowel(view: View, level: float) -> list[Element]:
    """A trowel whose blade presses against the face, its handle towards the mason."""
    blade = view.shape(
        (-0.004, level + 0.035),
        (-0.008, level + 0.036),
        (-0.02, level - 0.05),
        (-0.012, level - 0.052),
        ink=Ink.STEEL_EDGE,
    )
    return [blade, stick(view, ((-0.013, level - 0.012), (-0.05, level - 0.02), (-0.11, level - 0.045)), 0.012)]
