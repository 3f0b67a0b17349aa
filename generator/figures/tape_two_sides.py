"""A tape with centimetres on one edge and inches on the other, at their true lengths."""

from __future__ import annotations

from collections.abc import Mapping

from generator.calculations.conversions import metres_from_feet, metres_from_inches
from generator.figures.ink import Ink, Letter
from generator.figures.panels import Names, Panel
from generator.figures.scene import Element, Group, Label, Scene
from generator.figures.view import View
from generator.words import Words

NEEDS = ()

_WIDE = 0.074
"""Width of the tape as drawn in the first picture, metres: wider than it is, so that its numbers can be read."""
_END = 0.325
_INCH = metres_from_inches(1)
_FOOT = metres_from_feet(1)
_INCHES = round(_FOOT / _INCH)
_NEAR = 0.108
"""What the second picture shows, metres."""
_PARTS = 8
"""Small lines of an inch on a builder's tape."""


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing; it is the same for every tank.

    Args:
        values: not needed.
        words: language of its texts.
    """
    del values
    names = Names(words, lambda part: words.say_one_of("figure.tape-two-sides", part))

    def whole(view: View) -> None:
        _tape(view, _END, _WIDE)
        _lines(view, 0.005, _END, _WIDE, down=True, long={10: 14, 2: 10, 1: 6})
        _lines(view, _INCH / 2, _END, 0.0, down=False, long={2: 12, 1: 7})
        for centimetre in range(5, 31, 5):
            _number(view, centimetre / 100, _WIDE, str(centimetre), down=True)
        for inch in range(1, _INCHES):
            _number(view, inch * _INCH, 0.0, str(inch), down=False)
        _number(view, _FOOT, 0.0, names.text("one_foot"), down=False)

    def near(view: View) -> None:
        wide = _WIDE * _NEAR / _END
        _tape(view, _NEAR, wide)
        _lines(view, 0.001, _NEAR, wide, down=True, long={10: 16, 5: 12, 1: 8})
        _lines(view, _INCH / _PARTS, _NEAR, 0.0, down=False, long={8: 16, 4: 12, 1: 8})
        for centimetre in range(1, 11):
            _number(view, centimetre / 100, wide, str(centimetre), down=True)
        for inch in range(1, int(_NEAR / _INCH) + 1):
            _number(view, inch * _INCH, 0.0, str(inch), down=False)

    return names.stacked(
        [
            Panel(
                -0.006,
                0.0,
                _END + 0.004,
                _WIDE,
                whole,
                heading=names.text("edges"),
                above=[names.of("hook", (-0.002, _WIDE), 90), names.of("centimetres", (0.15, _WIDE), 150)],
                below=[names.of("inches", (3.5 * _INCH, 0.0), 150), names.of("foot", (_FOOT, 0.0), 130)],
            ),
            Panel(
                -0.002,
                0.0,
                _NEAR + 0.001,
                _WIDE * _NEAR / _END,
                near,
                heading=names.text("near"),
                above=[names.of("millimetres", (0.045, _WIDE * _NEAR / _END), 240)],
                below=[names.of("eighths", (1.5 * _INCH, 0.0), 240)],
            ),
        ],
        note="note",
    )


def _tape(view: View, end: float, wide: float) -> None:
    """The blade, torn off at the right, with the hook at its beginning."""
    torn = [(end + (0.004 if step % 2 else 0.0) * end / _END, wide * step / 6) for step in range(7)]
    hook = 0.005 * end / _END
    view.page.add(
        Group("tape", (view.shape((0, wide), (0, 0), *torn, ink=Ink.SHEET),)),
        Group("hook", (view.box(-0.6 * hook, -hook, 0.0, wide + hook, Ink.STEEL_EDGE),)),
    )


def _lines(view: View, step: float, end: float, edge: float, *, down: bool, long: Mapping[int, float]) -> None:
    """Lines along an edge; every so many are longer, as `long` says, in paper units."""
    found: list[Element] = []
    for number in range(1, int(end / step + 1e-9) + 1):
        length = next(high for count, high in long.items() if number % count == 0) / view.scale
        x = number * step
        found.append(view.line((x, edge), (x, edge - length if down else edge + length), Ink.FACE))
    view.page.add(Group("centimetre lines" if down else "inch lines", tuple(found)))


def _number(view: View, x: float, edge: float, text: str, *, down: bool) -> None:
    """A number on the tape, beyond its line."""
    high = -31.0 if down else 24.0
    view.page.add(Label(view.at(x, edge + high / view.scale), text, "middle", Letter.NAME))
