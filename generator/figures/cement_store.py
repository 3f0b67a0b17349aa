"""Where cement keeps: off the ground, away from the wall, under a sheet; and where it turns to stone."""

from __future__ import annotations

from collections.abc import Mapping

from generator.figures.ink import Ink
from generator.figures.panels import Names, Panel, cross, earth
from generator.figures.poses import STANDING, posed
from generator.figures.scene import Group, Scene
from generator.figures.site_things import BAG_HIGH, BAG_LONG, BLOCK, PLANK, drops, planks, sheet, stack
from generator.figures.view import View
from generator.words import Words

NEEDS = ()

_GAP = 0.34
"""From the wall to the bags, as drawn, metres."""
_ROWS, _WIDE = 5, 3
_ROOF = 1.95
_RIGHT = 3.6


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing; it is the same for every tank.

    Args:
        values: not needed.
        words: language of its texts.
    """
    del values
    names = Names(words, lambda part: words.say_one_of("figure.cement-store", part))
    foot = BLOCK + PLANK
    end = _GAP + _WIDE * BAG_LONG
    top = foot + _ROWS * BAG_HIGH

    def right(view: View) -> None:
        _shed(view)
        view.page.add(planks(view, _GAP - 0.08, end + 0.08, 0.0))
        stack(view, _GAP, foot, _WIDE, _ROWS)
        cover = ((_GAP - 0.1, foot - 0.02), (_GAP - 0.06, top), (_GAP + 0.2, top + 0.05), (end - 0.2, top + 0.05))
        view.page.add(
            sheet(view, (*cover, (end + 0.06, top), (end + 0.1, foot - 0.02))),
            posed(view, (end + 0.5, 0.0), -1.0, STANDING, [(end + 0.12, top - 0.2)]),
        )

    def wrong(view: View) -> None:
        _shed(view)
        stack(view, 0.02, 0.0, _WIDE, _ROWS)
        places = [(0.9 + 0.32 * step, _ROOF - 0.12 - 0.17 * (step % 3)) for step in range(4)]
        puddle = view.shape((2.1, 0.0), (2.3, 0.025), (2.9, 0.025), (3.1, 0.0), ink=Ink.WATER_BODY)
        view.page.add(Group("puddle", (puddle,)), drops(view, places), cross(view, 2.6, 0.75, 0.28))

    return names.stacked(
        [
            Panel(
                -0.2,
                -0.12,
                _RIGHT,
                _ROOF + 0.12,
                right,
                heading=names.text("right"),
                above=[
                    names.of("gap", (0.17, 0.55), 105),
                    names.of("sheet", (_GAP + 0.9, top + 0.05), 110),
                    names.of("roof", (3.0, _ROOF + 0.03), 100),
                ],
                below=[names.of("planks", (_GAP + 0.8, BLOCK + 0.5 * PLANK), 150), names.of("oldest", (end, 0.4), 150)],
                sky=6,
            ),
            Panel(
                -0.2,
                -0.12,
                _RIGHT,
                _ROOF + 0.12,
                wrong,
                heading=names.text("wrong"),
                below=[names.of("damp", (0.7, 0.04), 170), names.of("drip", (1.54, _ROOF - 0.5), 120)],
                sky=6,
            ),
        ],
        note="note",
    )


def _shed(view: View) -> None:
    """Ground, a wall on the left, and a roof."""
    view.page.add(
        *earth(view, [(-0.2, 0.0), (_RIGHT, 0.0)], 0.1),
        Group("wall", view.cut_box(-0.14, 0.0, 0.0, _ROOF)),
        Group("roof", (view.box(-0.2, _ROOF, _RIGHT, _ROOF + 0.06, Ink.WOOD),)),
        Group("post", (view.box(_RIGHT - 0.1, 0.0, _RIGHT - 0.02, _ROOF, Ink.WOOD),)),
    )
