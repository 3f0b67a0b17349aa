"""Two pegs brought to one level with a clear hose full of water, and why there must be no bubble in it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from generator.figures.ink import Ink
from generator.figures.panels import Names, Panel, cross, earth, stick
from generator.figures.poses import STANDING, posed
from generator.figures.scene import Group, Point, Scene
from generator.figures.view import View
from generator.words import Words

NEEDS = ()

_LEVEL = 0.72
"""Height of the water in the hose, metres above the ground at the left."""
_SINK = 0.45
"""How much lower the ground is at the right, as drawn."""
_PEG = 1.7
_HOSE = 0.085
_TOP = 0.3
"""How far the hose goes on above the water."""


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing; it is the same for every tank.

    Args:
        values: not needed.
        words: language of its texts.
    """
    del values
    names = Names(words, lambda part: words.say_one_of("figure.hose-level", part))

    def right(view: View) -> None:
        _site(view, (_LEVEL, _LEVEL))
        view.page.add(view.line((-_PEG, _LEVEL), (_PEG, _LEVEL), Ink.STRING))

    def wrong(view: View) -> None:
        _site(view, (_LEVEL + 0.1, _LEVEL - 0.14), bubble=True)
        view.page.add(cross(view, 0.0, 0.85, 0.2))

    return names.stacked(
        [
            Panel(
                -2.5,
                -_SINK - 0.14,
                2.5,
                1.62,
                right,
                heading=names.text("right"),
                above=[
                    names.of("open", (-_PEG + 0.17, _LEVEL + _TOP), 100),
                    names.of("same", (0.0, _LEVEL), 110),
                    names.of("mark", (_PEG, _LEVEL), 110),
                ],
                below=[names.of("hose", (-0.4, -0.02), 160), names.of("peg", (_PEG, -0.3), 120)],
                sky=6,
            ),
            Panel(
                -2.5,
                -_SINK - 0.14,
                2.5,
                1.62,
                wrong,
                heading=names.text("wrong"),
                below=[names.of("bubble", (0.35, -0.2), 230)],
                sky=6,
            ),
        ],
        note="note",
    )


def _site(view: View, levels: tuple[float, float], *, bubble: bool = False) -> None:
    """Sloping ground, two pegs, a hose between them, and a person at each end.

    Args:
        view: the picture.
        levels: of the water at the left and at the right end.
        bubble: whether air hangs in the hose.
    """
    ground = [(-2.5, 0.0), (-1.3, 0.0), (1.2, -_SINK), (2.5, -_SINK)]
    view.page.add(*earth(view, ground, 0.12))
    for x, foot in ((-_PEG, 0.0), (_PEG, -_SINK)):
        peg = ((x - 0.05, 1.0), (x + 0.05, 1.0), (x + 0.05, foot - 0.12), (x, foot - 0.22), (x - 0.05, foot - 0.12))
        view.page.add(Group("peg", (view.shape(*peg, ink=Ink.WOOD),)))
        level = levels[0 if x < 0 else 1]
        view.page.add(view.line((x - 0.05, level), (x + 0.05, level), Ink.CROSS))
    inside = 1.0 - _SINK
    near, far = -_PEG + 0.14, _PEG - 0.14
    down: Sequence[Point] = (
        (near, 0.35), (near + 0.14, 0.14), (-0.9, 0.0), (0.0, -0.1), (1.0, -0.28), (far - 0.12, -0.3),
        (far, inside - 0.6),
    )  # fmt: skip
    whole = ((near, max(levels) + _TOP), *down, (far, max(levels) + _TOP))
    water = ((near, levels[0]), *down, (far, levels[1]))
    parts = [stick(view, whole, _HOSE, Ink.SHEET), stick(view, water, 0.6 * _HOSE, Ink.WATER_BODY)]
    if bubble:
        parts.append(stick(view, ((0.1, -0.118), (0.6, -0.208)), _HOSE, Ink.HOLE))
    view.page.add(Group("hose", tuple(parts)))
    view.page.add(
        posed(view, (near - 0.6, 0.0), 1.0, STANDING, [(near, levels[0] + 0.16)]),
        posed(view, (far + 0.6, -_SINK), -1.0, STANDING, [(far, levels[1] + 0.16)]),
    )
