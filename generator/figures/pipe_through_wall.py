"""A pipe through the wall: put in before the plaster, with a flange in the mortar and doubled mesh round it."""

from __future__ import annotations

from collections.abc import Mapping

from generator.figures.ink import HatchKind, Ink
from generator.figures.panels import Names, Panel, earth
from generator.figures.scene import Circle, Element, Group, Scene
from generator.figures.shown import shown
from generator.figures.site_things import stones
from generator.figures.view import View
from generator.words import Words

NEEDS = ("wall_thickness", "mesh_cover", "hoop_diameter", "outlet_bore")

_PIPE_WALL = 0.004
_FLANGE, _FLANGE_THICK = 0.04, 0.008
"""How far the flange reaches from the pipe, and its thickness, as drawn, metres."""
_THICKER, _SLOPE = 0.035, 0.05
"""How much thicker the wall is round the pipe, and how gently it gets thicker, as drawn, metres."""
_ROUND = 0.12
"""How far the doubled mesh reaches from the pipe, as drawn, metres."""
_OUT, _IN = 0.24, 0.13


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one tank.

    Args:
        values: numbers of the tank, by the names in `NEEDS`.
        words: language of its texts.
    """
    names = Names(words, lambda part: words.say_one_of("figure.pipe-through-wall", part))
    wall = values["wall_thickness"] / 1000
    radius = values["outlet_bore"] / 2000 + _PIPE_WALL
    reach = radius + _ROUND
    high = reach + _SLOPE + 0.06
    ground = -high - 0.02

    def section(view: View) -> None:
        view.page.add(
            view.marks((-_IN, -high), (0, -high), (0, high), (-_IN, high), kind=HatchKind.WATER),
            *earth(view, [(wall + 0.05, ground), (wall + _OUT, ground)], 0.03),
            stones(view, wall + 0.12, wall + _OUT - 0.02, ground, -radius - ground),
        )
        view.page.add(*pipe_in_wall(view, values))
        view.page.add(view.measure((0, high), (wall, high), 10))

    return names.stacked(
        [
            Panel(
                -_IN,
                ground - 0.03,
                wall + _OUT,
                high + 0.05,
                section,
                above=[
                    names.of("inside", (-0.06, 0.6 * high), 86),
                    names.of("wall", (0.5 * wall, high + 0.5 * 10 / 600), 90, shown("wall_thickness", values, words)),
                    names.of("flange", (wall / 2 + _FLANGE_THICK / 2, radius + 0.5 * _FLANGE), 120),
                ],
                below=[
                    names.of("collar", (wall + 0.4 * _THICKER, -0.6 * reach), 125),
                    names.of("support", (wall + _OUT - 0.05, -radius - 0.03), 100),
                ],
                beside=[
                    names.beside("pipe", (wall + 0.12, 0.0), 88, shown("outlet_bore", values, words)),
                    names.beside("thicker", (wall + _THICKER, 0.55 * reach), 88),
                ],
                column=90,
                most_high=260,
            )
        ],
        note="note",
    )


def frame_of(values: Mapping[str, float]) -> tuple[float, float, float]:
    """Left and right edge and half the height of what `pipe_in_wall` draws, metres."""
    return (
        -_IN,
        values["wall_thickness"] / 1000 + _OUT,
        values["outlet_bore"] / 2000 + _PIPE_WALL + _ROUND + _SLOPE + 0.06,
    )


def pipe_in_wall(view: View, values: Mapping[str, float], *, flange: bool = True) -> list[Element]:
    """The cut wall with its pipe; the middle of the pipe at the inside face is the zero point.

    Args:
        view: the picture.
        values: numbers of the tank.
        flange: whether the pipe has its flange.
    """
    wall, cover = values["wall_thickness"] / 1000, values["mesh_cover"] / 1000
    hoop = values["hoop_diameter"] / 1000
    radius = values["outlet_bore"] / 2000 + _PIPE_WALL
    reach = radius + _ROUND
    high = reach + _SLOPE + 0.06
    unit = view.scale * view.page.unit
    boss = ((wall, -reach - _SLOPE), (wall + _THICKER, -reach), (wall + _THICKER, reach), (wall, reach + _SLOPE))
    found: list[Element] = [Group("wall", view.cut((0, -high), (wall, -high), *boss, (wall, high), (0, high)))]
    outer = wall - cover
    for side in (-1.0, 1.0):
        first, last = side * (radius + 0.012), side * high
        for x, end, ink in (
            (cover, last, Ink.WIRE),
            (outer, last, Ink.WIRE),
            (cover + 0.006, side * reach, Ink.SCREEN),
            (outer + 0.8 * _THICKER, side * reach, Ink.SCREEN),
        ):
            found.append(Group("mesh", (view.line((x, first), (x, end), ink),)))
        for level in (radius + 0.045, radius + 0.105):
            found.append(Group("hoop", (Circle(view.at(0.5 * wall + hoop, side * level), hoop / 2 * unit, Ink.STEEL),)))
    pipe = [
        view.box(-0.05, -radius, wall + _OUT - 0.02, radius, Ink.STEEL_EDGE),
        view.box(-0.05, -radius + _PIPE_WALL, wall + _OUT - 0.02, radius - _PIPE_WALL, Ink.BODY),
    ]
    if flange:
        middle = 0.5 * wall
        half = _FLANGE_THICK / 2
        pipe += [
            view.box(middle - half, radius, middle + half, radius + _FLANGE, Ink.STEEL),
            view.box(middle - half, -radius - _FLANGE, middle + half, -radius, Ink.STEEL),
        ]
    return [*found, Group("pipe", tuple(pipe))]
