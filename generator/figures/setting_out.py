"""A circle drawn on the ground with a peg and a stick, from above and from the side."""

from __future__ import annotations

from collections.abc import Mapping

from generator.figures.ink import Ink
from generator.figures.panels import Names, Panel, earth, stick
from generator.figures.poses import STOOPING, posed
from generator.figures.scene import Arc, Circle, Group, Scene, on_circle
from generator.figures.shown import shown
from generator.figures.things import feet
from generator.figures.view import View
from generator.words import Words

NEEDS = ("base_diameter",)

_TURN = 20.0
"""Where the stick has got to, degrees; the circle is drawn from there all the way round but for a piece."""
_LEFT_OPEN = 70.0
_STICK = 1.7
"""Length of the stick from nail to nail in the second picture, metres."""
_PEG = 0.2


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one tank.

    Args:
        values: numbers of the tank, by the names in `NEEDS`.
        words: language of its texts.
    """
    names = Names(words, lambda part: words.say_one_of("figure.setting-out", part))
    half = values["base_diameter"] / 2
    nail = on_circle((0, 0), half, _TURN)

    def above(view: View) -> None:
        unit = view.scale * view.page.unit
        view.page.add(
            Group("circle", (Arc(view.at(0, 0), half * unit, _TURN + _LEFT_OPEN, 360 - _LEFT_OPEN, Ink.GROUND),)),
            Group("stick", (stick(view, ((0, 0), nail), 0.035 * half),)),
            Group("peg", (Circle(view.at(0, 0), 0.045 * half * unit, Ink.WOOD),)),
            Circle(view.at(0, 0), 0.018 * half * unit, Ink.STEEL),
            Circle(view.at(*nail), 0.02 * half * unit, Ink.STEEL),
            feet(view.at(1.12 * half + 0.12, nail[1] - 0.3), 0.26 * unit),
            view.measure((-half, -1.04 * half), (half, -1.04 * half), -12),
        )

    def side(view: View) -> None:
        view.page.add(*earth(view, [(-0.5, 0.0), (_STICK + 1.3, 0.0)], 0.1))
        peg = ((-0.045, _PEG), (0.045, _PEG), (0.045, -0.2), (0.0, -0.32), (-0.045, -0.2))
        view.page.add(
            Group("peg", (view.shape(*peg, ink=Ink.WOOD),)),
            Group("stick", (view.box(-0.08, _PEG + 0.02, _STICK + 0.22, _PEG + 0.065, Ink.WOOD),)),
            Group(
                "nail",
                (
                    view.box(-0.01, 0.02, 0.01, _PEG + 0.12, Ink.STEEL),
                    view.box(_STICK - 0.01, -0.02, _STICK + 0.01, _PEG + 0.1, Ink.STEEL),
                ),
            ),
            posed(view, (_STICK + 0.52, 0.0), -1.0, STOOPING, [(_STICK + 0.16, _PEG + 0.09)]),
        )

    return names.stacked(
        [
            Panel(
                -half * 1.1,
                -half * 1.04 - 0.12 * half,
                half * 1.12 + 0.5,
                half * 1.05,
                above,
                heading=names.text("from_above"),
                above=[names.of("peg", (0.0, 0.0), 120), names.of("line", on_circle((0, 0), half, 130), 150)],
                below=[names.of("across", (0.0, -1.1 * half), 220, shown("base_diameter", values, words))],
                most_high=210,
            ),
            Panel(
                -0.5,
                -0.34,
                _STICK + 1.3,
                1.25,
                side,
                heading=names.text("from_side"),
                above=[names.of("half", (0.5 * _STICK, _PEG + 0.065), 170)],
                below=[names.of("nail_peg", (0.0, 0.02), 110), names.of("nail_end", (_STICK, -0.01), 150)],
                sky=6,
            ),
        ],
        note="note",
    )
