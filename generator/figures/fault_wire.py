"""Faults to find in mesh and wire: a lap that is too short, a tail of tie wire that stands out."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from generator.figures.fault_cells import Frame, fixed, four
from generator.figures.ink import Ink
from generator.figures.scene import Circle, Element, Group, Point
from generator.figures.view import View

_SHORT = 0.28
"""Part of its lap that the short one has."""
_SQUARES = 9
"""Openings of the mesh in one lap, as drawn."""
_TIE_STEP = 3


def _lap_frame(values: Mapping[str, float]) -> Frame:
    lap = values["mesh_lap"]
    return Frame(-1.25 * lap, -0.62 * lap, 1.25 * lap, 0.55 * lap)


def _lap(part: float) -> Callable[[View, Mapping[str, float]], None]:
    """Two strips of mesh that lie over each other by a part of the lap, and a stick as long as the lap."""

    def paint(view: View, values: Mapping[str, float]) -> None:
        lap = values["mesh_lap"]
        over, half, gap = part * lap, 0.5 * lap, lap / _SQUARES
        _strip(view, (-1.25 * lap, over / 2), half, gap, Ink.WIRE)
        _strip(view, (-over / 2, 1.25 * lap), half, gap, Ink.WIRE_SECOND, shift=0.4 * gap)
        ties: list[Element] = []
        unit = view.scale * view.page.unit
        for side in (-1, 1):
            for step in range(-1, 2):
                x, y = side * max(0.0, over / 2 - 0.5 * gap), step * _TIE_STEP * gap
                ties.append(Circle(view.at(x, y), 0.28 * gap * unit, Ink.TIE))
        view.page.add(Group("tie", tuple(ties)))
        view.page.add(Group("stick", (view.box(-lap / 2, -0.61 * lap, lap / 2, -0.55 * lap, Ink.WOOD),)))

    return paint


def _strip(view: View, ends: tuple[float, float], half: float, gap: float, ink: Ink, shift: float = 0.0) -> None:
    """One strip of square mesh; its wires begin at the end that lies in the lap."""
    left, right = ends
    wires: list[Element] = []
    count = int((right - left) / gap)
    for step in range(count + 1):
        x = right - step * gap if ink is Ink.WIRE else left + step * gap
        wires.append(view.line((x, -half), (x, half), ink))
    y = -half + shift
    while y <= half + 1e-9:
        wires.append(view.line((left, y), (right, y), ink))
        y += gap
    view.page.add(Group("mesh", tuple(wires)))


SHORT_LAP = four(
    "fault-short-lap",
    ("mesh_lap",),
    _lap_frame,
    {"short-lap": _lap(_SHORT), "lap-1": _lap(1.0), "lap-2": _lap(1.12), "lap-3": _lap(1.25)},
)

_BAR, _HOOP = 0.012, 0.011
"""Half thickness of bar and hoop as drawn, metres."""
_MESH, _FACE = 0.05, 0.062
"""Where the mesh and the face to come stand, metres from the middle of the bar."""
_TALL = 0.075


def _tied(tail: Sequence[Point]) -> Callable[[View, Mapping[str, float]], None]:
    """Bar, hoop and mesh from the side; the wire is twisted, and its tail goes where the points say."""

    def paint(view: View, values: Mapping[str, float]) -> None:
        del values
        unit = view.scale * view.page.unit
        hoop = _BAR + _HOOP
        view.page.add(
            Group("bar", (view.box(-_BAR, -_TALL, _BAR, _TALL, Ink.STEEL_EDGE),)),
            Group("hoop", (Circle(view.at(hoop, 0.0), _HOOP * unit, Ink.STEEL),)),
        )
        wires: list[Element] = [view.line((_MESH, -_TALL), (_MESH, _TALL), Ink.WIRE)]
        wires += [Circle(view.at(_MESH, 0.016 * step), 0.0022 * unit, Ink.STEEL) for step in range(-4, 5)]
        around = (
            (-_BAR - 0.003, 0.006), (-_BAR - 0.003, -0.004), (hoop, -_HOOP - 0.004), (hoop + _HOOP + 0.003, 0.0),
            (hoop, _HOOP + 0.004), (-_BAR - 0.003, 0.006),
        )  # fmt: skip
        view.page.add(
            Group("mesh", tuple(wires)),
            Group(
                "tie",
                (view.path(*around, ink=Ink.TIE_LINE), view.path((hoop, _HOOP + 0.004), *tail, ink=Ink.STEEL_LINE)),
            ),
            Group("face to come", (view.line((_FACE, -_TALL), (_FACE, _TALL), Ink.STRING),)),
        )

    return paint


TIE_TAIL = four(
    "fault-tie-tail",
    (),
    fixed(-0.05, -_TALL, 0.11, _TALL),
    {
        "tail-out": _tied(((0.034, 0.026), (0.06, 0.03), (0.088, 0.036))),
        "tail-down": _tied(((0.036, 0.022), (0.04, 0.005), (0.038, -0.022))),
        "tail-up": _tied(((0.026, 0.024), (0.021, 0.04), (0.018, 0.056))),
        "tail-in": _tied(((0.02, 0.026), (0.002, 0.03), (-0.022, 0.028))),
    },
)
