"""Sand shaken with water in a jar: sand lies below, silt on top of it, and both are measured."""

from __future__ import annotations

from collections.abc import Mapping

from generator.figures.fault_parts import Uneven
from generator.figures.ink import HatchKind, Ink
from generator.figures.panels import Names, Panel
from generator.figures.people import arrow, fist
from generator.figures.scene import Circle, Element, Group, Scene
from generator.figures.shown import shown
from generator.figures.view import View
from generator.words import Words

NEEDS = ("silt_height", "sand_height")

_HALF, _GLASS, _TALL = 0.045, 0.0025, 0.225
"""Half width inside, thickness and height of the jar as drawn, metres."""
_NECK = 0.032


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one test.

    Args:
        values: numbers of the test, by the names in `NEEDS`.
        words: language of its texts.
    """
    names = Names(words, lambda part: words.say_one_of("figure.sand-jar", part))
    sand, silt = values["sand_height"] / 1000, values["silt_height"] / 1000
    beside = [
        names.beside("water", (0.3 * _HALF, 0.9 * _TALL - 0.01), 112),
        names.beside("silt", (_HALF + 0.026, sand + silt / 2), 112, shown("silt_height", values, words)),
        names.beside("sand", (_HALF + 0.0115, sand / 2), 112, shown("sand_height", values, words)),
    ]

    def still(view: View) -> None:
        settled_jar(view, sand, silt)
        view.page.add(view.measure((_HALF, sand), (_HALF, 0.0), 9))
        if silt:
            view.page.add(view.measure((_HALF, sand + silt), (_HALF, sand), 21))

    def shaken(view: View) -> None:
        uneven = Uneven("shaken")
        view.page.add(*_glass(view), view.marks(*_inside(0.9 * _TALL), kind=HatchKind.WATER))
        unit = view.scale * view.page.unit
        grains = [
            Circle(
                view.at(uneven.between(-0.9, 0.9) * _HALF, uneven.between(0.02, 0.86) * _TALL),
                uneven.between(0.0008, 0.0016) * unit,
                Ink.STONE,
            )
            for _ in range(90)
        ]
        view.page.add(Group("grains", tuple(grains)))
        for x, y, elbow in ((0.0, _TALL + 0.018, 0.12), (0.0, -0.028, -0.12)):
            view.page.add(fist(view.at(x, y), view.at(x + 0.13, y + elbow * 0.3), 0.075 * unit))
        for x, ends in ((-0.085, (0.05, 0.17)), (-0.11, (0.17, 0.05))):
            view.page.add(arrow(view.all_at((x, ends[0]), (x, ends[1])), 0.006 * unit))

    return names.stacked(
        [
            Panel(-0.14, -0.085, 0.15, _TALL + 0.075, shaken, heading=names.text("shake"), most_high=150),
            Panel(
                -0.12,
                -0.004,
                0.085,
                _TALL + 0.02,
                still,
                heading=names.text("still"),
                beside=beside,
                column=114,
                most_high=230,
            ),
        ],
        note="note",
        measured=1,
    )


def settled_jar(view: View, sand: float, silt: float) -> None:
    """A jar that has stood still: sand below, silt on it, and clear water.

    Args:
        view: the picture; the middle of the jar's bottom is its zero point.
        sand: height of the sand, metres.
        silt: height of the silt, metres.
    """
    uneven = Uneven("settled")
    unit = view.scale * view.page.unit
    grains: list[Element] = [
        Circle(
            view.at(uneven.between(-0.94, 0.94) * _HALF, uneven.between(0.02, 0.97) * sand),
            uneven.between(0.0007, 0.0015) * unit,
            Ink.STONE,
        )
        for _ in range(220)
    ]
    view.page.add(
        *_glass(view),
        Group("sand", (view.box(-_HALF, 0, _HALF, sand, Ink.WOOD), *grains)),
        Group("silt", (view.box(-_HALF, sand, _HALF, sand + silt, Ink.RUST),)),
        view.marks(
            (-_HALF, sand + silt),
            (_HALF, sand + silt),
            (_HALF, 0.9 * _TALL),
            (-_HALF, 0.9 * _TALL),
            kind=HatchKind.WATER,
        ),
        view.line((-_HALF, 0.9 * _TALL), (_HALF, 0.9 * _TALL), Ink.WATER_LINE),
    )


def _inside(high: float) -> tuple[tuple[float, float], ...]:
    return (-_HALF, 0.0), (_HALF, 0.0), (_HALF, high), (-_HALF, high)


def _glass(view: View) -> tuple[Element, ...]:
    """A straight jar with a lid."""
    out = _HALF + _GLASS
    return (
        Group("jar", (view.box(-out, -_GLASS, out, _TALL, Ink.SHEET),)),
        Group("lid", (view.box(-_NECK - 0.012, _TALL, _NECK + 0.012, _TALL + 0.014, Ink.THING),)),
    )
