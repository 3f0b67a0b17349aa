"""The order in which props leave: all wedges eased first, then from the middle of the roof to the wall."""

from __future__ import annotations

from collections.abc import Mapping

from generator.figures.ink import Ink
from generator.figures.panels import Names, Panel, earth
from generator.figures.people import arrow
from generator.figures.poses import STANDING, posed
from generator.figures.scene import Group, Scene
from generator.figures.view import View
from generator.words import Words

NEEDS = ()

_HALF, _WALL, _THICK, _ROOF, _BOARD, _JOIST = 2.0, 1.95, 0.07, 0.09, 0.04, 0.1
"""A tank as drawn, metres; no numbers of the course."""
_PROPS = (-1.7, -0.85, 0.0, 0.85, 1.7)
_ORDER = (3, 2, 1, 2, 3)
_PROP, _SOLE, _WEDGE = 0.045, 0.05, 0.07


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing; it is the same for every tank.

    Args:
        values: not needed.
        words: language of its texts.
    """
    del values
    names = Names(words, lambda part: words.say_one_of("figure.prop-removal", part))
    roof = _WALL + _BOARD + _JOIST

    def order(view: View) -> None:
        _tank(view)
        for x, number in zip(_PROPS, _ORDER, strict=True):
            _prop(view, x)
            view.page.disc(number, *view.paper(x, 1.05))

    def out(view: View) -> None:
        unit = view.scale * view.page.unit
        _tank(view)
        for x in _PROPS:
            if x:
                _prop(view, x)
        fallen = view.shape((-0.62, 0.0), (0.62, 0.0), (0.62, 2 * _PROP), (-0.62, 2 * _PROP), ink=Ink.WOOD)
        hand = (-1.02, 0.86)
        view.page.add(
            Group("prop taken out", (fallen,)),
            Group("rope", (view.path(hand, (-0.55, 2 * _PROP), ink=Ink.CROSS),)),
            posed(view, (-1.32, 0.0), 1.0, STANDING, [hand]),
            arrow(view.all_at((0.55, 0.36), (-0.35, 0.36)), 0.05 * unit),
        )

    sides = (-_HALF - 0.25, -0.2, _HALF + 0.25, roof + _ROOF + 0.04)
    return names.stacked(
        [
            Panel(
                *sides,
                order,
                heading=names.text("order"),
                above=[names.of("roof", (-0.4, roof + 0.5 * _ROOF), 110), names.of("middle", (0.03, 1.2), 140)],
                below=[names.of("wedges", (-1.66, _SOLE + 0.03), 150), names.of("wall", (1.73, 0.9), 140)],
                sky=6,
            ),
            Panel(
                *sides,
                out,
                heading=names.text("out"),
                below=[names.of("stand", (-1.3, 0.03), 150), names.of("free", (0.5, 0.7), 140)],
            ),
        ],
        note="note",
        numbered=False,
    )


def _tank(view: View) -> None:
    outer, top = _HALF + _THICK, _WALL + _BOARD + _JOIST
    view.page.add(
        *earth(view, [(-outer - 0.18, -0.1), (outer + 0.18, -0.1)], 0.09),
        Group("base", (view.box(-outer - 0.12, -0.1, outer + 0.12, 0.0, Ink.CONCRETE),)),
        Group("wall", view.cut_box(-outer, 0.0, -_HALF, top)),
        Group("wall", view.cut_box(_HALF, 0.0, outer, top)),
        Group("joist", (view.box(-_HALF + 0.04, _WALL, _HALF - 0.04, _WALL + _JOIST, Ink.WOOD),)),
        Group("boards", (view.box(-_HALF + 0.01, _WALL + _JOIST, _HALF - 0.01, top, Ink.WOOD),)),
        Group("roof", view.cut_box(-outer, top, outer, top + _ROOF)),
    )


def _prop(view: View, x: float) -> None:
    """A prop on its pair of wedges and its board."""
    foot = _SOLE + _WEDGE
    view.page.add(
        Group("prop", (view.box(x - _PROP, foot, x + _PROP, _WALL, Ink.WOOD),)),
        Group("sole", (view.box(x - 0.17, 0.0, x + 0.17, _SOLE, Ink.WOOD),)),
        Group(
            "wedges",
            (
                view.shape((x - 0.13, _SOLE), (x + 0.1, _SOLE), (x + 0.1, foot), ink=Ink.THING),
                view.shape((x + 0.13, foot), (x - 0.1, foot), (x - 0.1, _SOLE), ink=Ink.THING),
            ),
        ),
    )
