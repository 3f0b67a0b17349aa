"""Faults to find round the work: cement on the ground, sand with much silt, a prop on bare soil."""

from __future__ import annotations

from collections.abc import Mapping

from generator.figures.fault_cells import fixed, four
from generator.figures.ink import Ink
from generator.figures.panels import earth
from generator.figures.sand_jar import settled_jar
from generator.figures.scene import Circle, Group
from generator.figures.site_things import BAG_HIGH, BAG_LONG, BLOCK, PLANK, planks, sheet, stack, stones
from generator.figures.view import View

_WIDE = 2
_EDGE = _WIDE * BAG_LONG / 2
"""Half width of a stack, metres."""


def _stack(view: View, foot: float, rows: int) -> None:
    """Bags and the sheet over them."""
    stack(view, -_EDGE, foot, _WIDE, rows)
    top = foot + rows * BAG_HIGH
    cover = ((-_EDGE - 0.09, foot), (-_EDGE - 0.05, top), (-_EDGE + 0.2, top + 0.05), (_EDGE - 0.2, top + 0.05))
    view.page.add(sheet(view, (*cover, (_EDGE + 0.05, top), (_EDGE + 0.09, foot))))


def _soil(view: View, half: float, deep: float) -> None:
    view.page.add(*earth(view, [(-half, 0.0), (half, 0.0)], deep))


def _on_ground(view: View, values: Mapping[str, float]) -> None:
    del values
    _soil(view, 0.86, 0.13)
    _stack(view, 0.0, 5)


def _on_planks(view: View, values: Mapping[str, float]) -> None:
    del values
    _soil(view, 0.86, 0.13)
    view.page.add(planks(view, -_EDGE - 0.06, _EDGE + 0.06, 0.0))
    _stack(view, BLOCK + PLANK, 5)


def _few_on_planks(view: View, values: Mapping[str, float]) -> None:
    del values
    _soil(view, 0.86, 0.13)
    view.page.add(planks(view, -_EDGE - 0.06, _EDGE + 0.06, 0.0))
    _stack(view, BLOCK + PLANK, 3)


def _on_poles(view: View, values: Mapping[str, float]) -> None:
    """Round poles with planks across."""
    del values
    _soil(view, 0.86, 0.13)
    unit = view.scale * view.page.unit
    radius = BLOCK / 2
    for x in (-0.5, -0.17, 0.17, 0.5):
        view.page.add(Group("pole", (Circle(view.at(x, radius), radius * unit, Ink.WOOD),)))
    view.page.add(Group("planks", (view.box(-_EDGE - 0.06, BLOCK, _EDGE + 0.06, BLOCK + PLANK, Ink.WOOD),)))
    _stack(view, BLOCK + PLANK, 4)


BAGS_ON_GROUND = four(
    "fault-bags-on-ground",
    (),
    fixed(-0.86, -0.13, 0.86, BLOCK + PLANK + 5 * BAG_HIGH + 0.1),
    {"on-ground": _on_ground, "on-planks": _on_planks, "few-on-planks": _few_on_planks, "on-poles": _on_poles},
)


def _jar(view: View, sand: float, silt: float) -> None:
    settled_jar(view, sand, silt)


SILTED_SAND = four(
    "fault-silted-sand",
    (),
    fixed(-0.1, -0.006, 0.1, 0.245),
    {
        "much-silt": lambda view, _: _jar(view, 0.096, 0.016),
        "little-silt": lambda view, _: _jar(view, 0.1, 0.003),
        "less-silt": lambda view, _: _jar(view, 0.11, 0.002),
        "some-silt": lambda view, _: _jar(view, 0.104, 0.004),
    },
)

_PROP, _SOLE, _WEDGE = 0.045, 0.05, 0.07


def _prop(view: View, foot: float, *, wedged: bool = True) -> None:
    """The lower end of a prop, with its pair of wedges."""
    top = foot + (_WEDGE if wedged else 0.0)
    view.page.add(Group("prop", (view.box(-_PROP, top, _PROP, 0.82, Ink.WOOD),)))
    if wedged:
        view.page.add(
            view.shape((-0.14, foot), (0.11, foot), (0.11, top), ink=Ink.THING),
            view.shape((0.14, top), (-0.11, top), (-0.11, foot), ink=Ink.THING),
        )


def _sole(view: View, half: float, low: float = 0.0) -> float:
    """A board under the prop; returns its upper face."""
    view.page.add(Group("sole", (view.box(-half, low, half, low + _SOLE, Ink.WOOD),)))
    return low + _SOLE


def _bare_prop(view: View, values: Mapping[str, float]) -> None:
    """No board: the prop stands on the soil and has begun to sink in."""
    del values
    ground = [(-0.6, 0.0), (-0.2, 0.0), (-0.12, -0.03), (0.12, -0.03), (0.2, 0.0), (0.6, 0.0)]
    view.page.add(*earth(view, ground, 0.13))
    _prop(view, -0.03)


def _one_board(view: View, values: Mapping[str, float]) -> None:
    del values
    _soil(view, 0.6, 0.16)
    _prop(view, _sole(view, 0.24))


def _two_boards(view: View, values: Mapping[str, float]) -> None:
    del values
    _soil(view, 0.6, 0.16)
    _prop(view, _sole(view, 0.18, _sole(view, 0.32)))


def _board_on_stones(view: View, values: Mapping[str, float]) -> None:
    del values
    _soil(view, 0.6, 0.16)
    view.page.add(stones(view, -0.34, 0.34, 0.0, 0.1, "prop"))
    _prop(view, _sole(view, 0.26, 0.1))


BARE_PROP = four(
    "fault-bare-prop",
    (),
    fixed(-0.6, -0.16, 0.6, 0.82),
    {"bare-prop": _bare_prop, "one-board": _one_board, "two-boards": _two_boards, "board-on-stones": _board_on_stones},
)
