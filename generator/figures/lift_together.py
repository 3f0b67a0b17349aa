"""A heavy bag is lifted by two, with bent knees and straight backs; alone with a bent back it breaks the back."""

from __future__ import annotations

from collections.abc import Mapping

from generator.figures.panels import Names, Panel, cross, earth
from generator.figures.poses import CARRYING, LIFTING, STOOPING, posed
from generator.figures.scene import Scene
from generator.figures.site_things import bag
from generator.figures.view import View
from generator.words import Words

NEEDS = ()

_LONG, _HIGH = 0.7, 0.2
"""A cement bag as drawn, metres."""
_HALF = _LONG / 2


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing; it is the same for every tank.

    Args:
        values: not needed.
        words: language of its texts.
    """
    del values
    names = Names(words, lambda part: words.say_one_of("figure.lift-together", part))

    def low(view: View) -> None:
        _ground(view)
        view.page.add(bag(view, 0.0, 0.1, _LONG, _HIGH))
        for side in (-1.0, 1.0):
            grip = (side * (_HALF - 0.03), 0.13)
            view.page.add(posed(view, (side * 0.66, 0.0), -side, LIFTING, [grip], step=0.09))

    def carried(view: View) -> None:
        _ground(view)
        view.page.add(bag(view, 0.0, 0.72, _LONG, _HIGH))
        for side in (-1.0, 1.0):
            grip = (side * (_HALF - 0.03), 0.75)
            view.page.add(posed(view, (side * 0.62, 0.0), -side, CARRYING, [grip]))

    def alone(view: View) -> None:
        _ground(view)
        view.page.add(
            bag(view, 0.18, 0.12, _LONG, _HIGH),
            posed(view, (-0.3, 0.0), 1.0, STOOPING, [(0.05, 0.3), (0.2, 0.3)]),
            cross(view, 1.0, 0.75, 0.3),
        )

    sides = (-1.75, -0.1, 1.75)
    return names.stacked(
        [
            Panel(
                *sides,
                1.25,
                low,
                heading=names.text("right"),
                above=[names.of("back", (-0.72, 0.66), 105), names.of("close", (0.33, 0.2), 120)],
                below=[names.of("knees", (-0.5, 0.42), 110), names.of("feet", (0.7, 0.02), 130)],
                most_high=130,
                sky=4,
            ),
            Panel(
                *sides,
                1.65,
                carried,
                heading=names.text("carry"),
                below=[names.of("say", (0.0, 0.8), 300)],
                most_high=140,
                sky=4,
            ),
            Panel(
                *sides,
                1.2,
                alone,
                heading=names.text("wrong"),
                below=[names.of("bent", (-0.25, 0.85), 250)],
                most_high=120,
            ),
        ],
        note="note",
    )


def _ground(view: View) -> None:
    view.page.add(*earth(view, [(-1.75, 0.0), (1.75, 0.0)], 0.09))
