"""Who stands below a tank on a slope: the path that its water would take, and the houses in it."""

from __future__ import annotations

from collections.abc import Mapping

from generator.figures.ink import HatchKind, Ink
from generator.figures.panels import Names, Panel, earth
from generator.figures.people import arrow, person
from generator.figures.scene import Circle, Element, Group, Point, Scene
from generator.figures.view import View
from generator.words import Words

NEEDS = ()

_SLOPE: tuple[Point, ...] = (
    (0.0, 9.6), (2.2, 9.2), (3.0, 7.8), (6.6, 7.8), (8.0, 6.4), (12.0, 3.9), (15.4, 3.5), (17.2, 2.2), (20.4, 2.0),
    (24.0, 0.3),
)  # fmt: skip
"""The ground from the hill down, metres as drawn."""
_PATH: tuple[Point, ...] = (
    (-0.9, 8.3), (0.9, 8.3), (1.6, 6.0), (2.9, 3.4), (4.2, 0.2), (-3.6, 0.2), (-2.6, 3.4), (-1.4, 6.0),
)  # fmt: skip
_IN, _BESIDE = ((-1.5, 4.3), (2.2, 2.2), (-1.7, 0.9)), ((-6.6, 3.4), (6.6, 5.2))
"""Houses in the path and beside it, metres from the tank's middle line and up from the foot of the map."""
_HOUSE = 1.9


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing; it is the same for every tank.

    Args:
        values: not needed.
        words: language of its texts.
    """
    del values
    names = Names(words, lambda part: words.say_one_of("figure.who-stands-below", part))

    def side(view: View) -> None:
        unit = view.scale * view.page.unit
        view.page.add(*earth(view, _SLOPE, 0.8))
        view.page.add(
            Group("tank", (view.box(3.8, 7.9, 6.0, 9.6, Ink.WALL_FACE), view.box(3.7, 9.6, 6.1, 9.8, Ink.CONCRETE))),
            Group("base", (view.box(3.6, 7.8, 6.2, 7.95, Ink.CONCRETE),)),
            arrow(view.all_at((6.5, 8.3), (8.3, 6.8)), 0.32 * unit),
            arrow(view.all_at((8.9, 6.35), (11.6, 4.75)), 0.32 * unit),
            _house(view, 13.7, 3.7),
            person(view.at(15.1, 3.55), -1.0, height=1.6 * unit),
            _house(view, 18.8, 2.1),
        )

    def above(view: View) -> None:
        unit = view.scale * view.page.unit
        view.page.add(
            Group(
                "path of the water", (view.shape(*_PATH, ink=Ink.WATER_BODY), view.marks(*_PATH, kind=HatchKind.WATER))
            ),
            Group(
                "tank",
                (
                    Circle(view.at(0, 9.2), 1.1 * unit, Ink.WALL_FACE),
                    Circle(view.at(0, 9.2), 0.3 * unit, Ink.STEEL_EDGE),
                ),
            ),
            arrow(view.all_at((-0.1, 7.7), (-0.1, 6.3)), 0.3 * unit),
            arrow(view.all_at((0.7, 3.2), (1.0, 0.9)), 0.3 * unit),
        )
        for place in _IN:
            view.page.add(Group("house in the path", tuple(_roof(view, *place))))
        for place in _BESIDE:
            view.page.add(Group("house beside", tuple(_roof(view, *place))))

    return names.stacked(
        [
            Panel(
                0.0,
                -0.5,
                24.0,
                10.0,
                side,
                heading=names.text("side"),
                above=[names.of("tank", (4.9, 9.8), 100), names.of("runs", (10.2, 5.6), 140)],
                below=[names.of("first", (13.7, 4.0), 140), names.of("second", (18.8, 2.4), 130)],
                most_high=165,
                sky=4,
            ),
            Panel(
                -8.2,
                0.0,
                8.2,
                10.4,
                above,
                heading=names.text("above"),
                below=[
                    names.of("beside", (_BESIDE[0][0], _BESIDE[0][1] - 0.5), 100),
                    names.of("count", (_IN[2][0] - 0.3, _IN[2][1] - 0.3), 104),
                    names.of("path", (2.8, 0.9), 110),
                ],
                most_high=220,
            ),
        ],
        note="note",
    )


def _house(view: View, x: float, foot: float) -> Group:
    """A house from the side, standing on its terrace."""
    wall = view.box(x - 1.2, foot - 0.3, x + 1.2, foot + 1.7, Ink.WALL_FACE)
    roof = view.shape(
        (x - 1.5, foot + 1.7), (x + 1.5, foot + 1.7), (x + 1.0, foot + 2.7), (x - 1.0, foot + 2.7), ink=Ink.STONE
    )
    door = view.box(x - 0.3, foot - 0.3, x + 0.3, foot + 1.1, Ink.WOOD)
    return Group("house", (wall, roof, door))


def _roof(view: View, x: float, y: float) -> list[Element]:
    """A house from above: its roof with the ridge."""
    half, deep = _HOUSE / 2, 0.36 * _HOUSE
    return [
        view.box(x - half, y - deep, x + half, y + deep, Ink.STONE),
        view.line((x - half, y), (x + half, y), Ink.FACE),
    ]
