"""An upright checked with a plumb line, and the ring of uprights checked with a stick from the middle."""

from __future__ import annotations

from collections.abc import Mapping

from generator.figures.ink import Ink
from generator.figures.panels import Names, Panel, earth, stick
from generator.figures.poses import STANDING, posed
from generator.figures.scene import Circle, Group, Scene, on_circle
from generator.figures.shown import shown
from generator.figures.view import View
from generator.words import Words

NEEDS = ("frame_radius", "angle_count", "wall_height")

_GAP, _POST, _BOB = 0.16, 0.025, 0.06
"""Gap from upright to line, half thickness of the upright, and half width of the bob, as drawn, metres."""
_SPOKES = 8


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one tank.

    Args:
        values: numbers of the tank, by the names in `NEEDS`.
        words: language of its texts.
    """
    names = Names(words, lambda part: words.say_one_of("figure.plumb-and-round", part))
    wall, radius, count = values["wall_height"], values["frame_radius"], round(values["angle_count"])
    low = 0.12
    line = _POST + _GAP
    high = max(wall, 1.5)

    def plumb(view: View) -> None:
        unit = view.scale * view.page.unit
        view.page.add(
            *earth(view, [(-1.0, -0.1), (1.4, -0.1)], 0.08),
            Group("base", (view.box(-1.0, -0.1, 0.32, 0, Ink.CONCRETE),)),
            Group("upright", (view.box(-_POST, 0, _POST, wall, Ink.STEEL_EDGE),)),
            Group("arm", (view.box(-0.05, wall, line + 0.06, wall + 0.04, Ink.WOOD),)),
            Group("line", (view.line((line, wall), (line, low), Ink.STRING),)),
            Group(
                "bob",
                (
                    view.shape(
                        (line - 0.03, low),
                        (line + 0.03, low),
                        (line + 0.025, low - 0.07),
                        (line, low - 0.11),
                        (line - 0.025, low - 0.07),
                        ink=Ink.STEEL,
                    ),
                ),
            ),
        )
        for level in (0.9 * wall, low + 0.08):
            view.page.add(view.line((_POST, level), (line, level), Ink.CROSS))
        view.page.add(
            posed(view, (0.95, -0.1), -1.0, STANDING, [(line + 0.06, min(0.9 * wall, 1.2))]),
            Group("stay", (stick(view, ((-0.95, 0.0), (-_POST, 0.8 * wall)), 0.04),)),
        )
        del unit

    def ring(view: View) -> None:
        unit = view.scale * view.page.unit
        size = 0.03 * radius
        view.page.add(Group("ring", (Circle(view.at(0, 0), radius * unit, Ink.FRAME_LINE),)))
        for spoke in range(_SPOKES):
            end = on_circle((0, 0), 0.9 * radius, 360 * spoke / _SPOKES + 12)
            view.page.add(view.line(on_circle((0, 0), 0.09 * radius, 360 * spoke / _SPOKES + 12), end, Ink.BREAK))
        for number in range(count):
            x, y = on_circle((0, 0), radius, 360 * number / count)
            view.page.add(Group("angle", (view.box(x - size, y - size, x + size, y + size, Ink.STEEL),)))
        view.page.add(
            Group("stick", (stick(view, ((0.0, 0.0), (radius - size, 0.0)), 0.03 * radius),)),
            Group("post", (Circle(view.at(0, 0), 0.05 * radius * unit, Ink.STEEL_EDGE),)),
            Circle(view.at(0, 0), 0.015 * radius * unit, Ink.STEEL),
            view.measure((0, -0.06 * radius), (radius, -0.06 * radius), -12),
        )

    return names.stacked(
        [
            Panel(
                -1.0,
                -0.18,
                1.4,
                high + 0.06,
                plumb,
                heading=names.text("plumb"),
                beside=[
                    names.beside("top", (line, 0.9 * wall), 130),
                    names.beside("foot", (line, low + 0.08), 130),
                    names.beside("bob", (line + 0.02, low - 0.05), 130),
                ],
                column=132,
                most_high=165,
            ),
            Panel(
                -1.06 * radius,
                -1.06 * radius,
                1.06 * radius,
                1.06 * radius,
                ring,
                heading=names.text("round"),
                above=[
                    names.of("post", (0.0, 0.03 * radius), 130),
                    names.of("spokes", on_circle((0, 0), 0.6 * radius, 57), 150),
                ],
                below=[
                    names.of(
                        "stick",
                        (0.35 * radius, -0.06 * radius - 12 / 100 * radius),
                        220,
                        shown("frame_radius", values, words),
                    )
                ],
                most_high=215,
            ),
        ],
        note="note",
        measured=1,
    )
