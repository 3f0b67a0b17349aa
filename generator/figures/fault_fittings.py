"""Faults to find at the fittings: a pipe without its flange, an overflow at the foot, a manhole that nobody locked."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from generator.figures.fault_cells import Frame, fixed, four
from generator.figures.ink import HatchKind, Ink
from generator.figures.panels import earth, stick
from generator.figures.pipe_through_wall import frame_of, pipe_in_wall
from generator.figures.scene import Arc, Group, Point
from generator.figures.view import View

_PIPE_NEEDS = ("wall_thickness", "mesh_cover", "hoop_diameter", "outlet_bore")


def _pipe_frame(values: Mapping[str, float]) -> Frame:
    left, right, high = frame_of(values)
    return Frame(left, -high, right, high)


def _wall(view: View, values: Mapping[str, float], *, flange: bool = True) -> float:
    """Water, wall and pipe; returns the half height of the pipe."""
    left, _, high = frame_of(values)
    view.page.add(view.marks((left, -high), (0, -high), (0, high), (left, high), kind=HatchKind.WATER))
    view.page.add(*pipe_in_wall(view, values, flange=flange))
    return values["outlet_bore"] / 2000 + 0.004


def _no_flange(view: View, values: Mapping[str, float]) -> None:
    radius = _wall(view, values, flange=False)
    _, right, _ = frame_of(values)
    view.page.add(Group("cap", (view.box(right - 0.03, -radius - 0.004, right - 0.012, radius + 0.004, Ink.WOOD),)))


def _with_flange(view: View, values: Mapping[str, float]) -> None:
    _wall(view, values)


def _with_plug(view: View, values: Mapping[str, float]) -> None:
    radius = _wall(view, values)
    _, right, _ = frame_of(values)
    view.page.add(Group("cap", (view.box(right - 0.03, -radius - 0.004, right - 0.012, radius + 0.004, Ink.WOOD),)))


def _with_screen(view: View, values: Mapping[str, float]) -> None:
    radius = _wall(view, values)
    view.page.add(Group("screen", (view.line((-0.052, -radius), (-0.052, radius), Ink.SCREEN),)))


BARE_PIPE = four(
    "fault-bare-pipe",
    _PIPE_NEEDS,
    _pipe_frame,
    {"no-flange": _no_flange, "flange": _with_flange, "flange-and-plug": _with_plug, "flange-and-screen": _with_screen},
)

_TANK, _HIGH, _GROUND = 0.75, 1.25, 0.16
_OUTLET = 1.06
_END = 2.05
"""Right edge of a picture of the overflow, metres."""


def _tank(view: View, ground: Sequence[Point]) -> None:
    """The right half of a tank on its base, and the ground beside it."""
    view.page.add(
        *earth(view, [(-_TANK, -0.1), (0.16, -0.1), *ground], _GROUND - 0.02),
        Group("base", (view.box(-_TANK, -0.1, 0.16, 0, Ink.CONCRETE),)),
        Group("wall", (view.box(-_TANK, 0, 0, _HIGH, Ink.WALL_FACE),)),
        Group("roof", (view.box(-_TANK, _HIGH, 0.05, _HIGH + 0.08, Ink.CONCRETE),)),
    )


def _falls(view: View, x: float, top: float, low: float) -> None:
    """Water that falls from a mouth."""
    view.page.add(
        Group("water", (stick(view, ((x, top), (x + 0.05, top - 0.12), (x + 0.07, low)), 0.07, Ink.WATER_BODY),))
    )


def _channel(view: View, left: float) -> tuple[Point, ...]:
    """The line of the ground with a lined channel in it."""
    view.page.add(
        Group(
            "lining",
            (view.path((left, -0.1), (left + 0.1, -0.2), (left + 0.35, -0.2), (left + 0.45, -0.1), ink=Ink.LINED),),
        )
    )
    return (left, -0.1), (left + 0.1, -0.2), (left + 0.35, -0.2), (left + 0.45, -0.1), (_END, -0.1)


def _at_the_foot(view: View, values: Mapping[str, float]) -> None:
    """A short pipe: the water falls beside the base and has washed a hollow below its edge."""
    del values
    hollow = ((0.10, -0.2), (0.18, -0.3), (0.34, -0.3), (0.5, -0.18), (0.7, -0.1), (_END, -0.1))
    _tank(view, hollow)
    view.page.add(Group("pipe", (stick(view, ((0.0, _OUTLET), (0.2, _OUTLET)), 0.09, Ink.STEEL_EDGE),)))
    _falls(view, 0.2, _OUTLET, -0.28)


def _far_pipe(view: View, values: Mapping[str, float]) -> None:
    del values
    _tank(view, _channel(view, 1.1))
    view.page.add(Group("pipe", (stick(view, ((0.0, _OUTLET), (1.22, _OUTLET - 0.06)), 0.09, Ink.STEEL_EDGE),)))
    view.page.add(Group("post", (view.box(0.86, -0.12, 0.94, _OUTLET - 0.1, Ink.WOOD),)))
    _falls(view, 1.22, _OUTLET - 0.06, -0.18)


def _down_pipe(view: View, values: Mapping[str, float]) -> None:
    del values
    _tank(view, _channel(view, 0.95))
    bend = ((0.0, _OUTLET), (0.13, _OUTLET), (0.13, 0.12), (0.3, 0.06), (1.0, 0.0))
    view.page.add(Group("pipe", (stick(view, bend, 0.09, Ink.STEEL_EDGE),)))
    _falls(view, 1.0, 0.0, -0.18)


def _to_trough(view: View, values: Mapping[str, float]) -> None:
    """The overflow fills a trough well away from the tank."""
    del values
    _tank(view, ((_END, -0.1),))
    view.page.add(
        Group(
            "trough", (view.box(1.1, -0.1, 1.8, 0.35, Ink.CONCRETE), view.box(1.16, 0.05, 1.74, 0.29, Ink.WATER_BODY))
        ),
        Group("pipe", (stick(view, ((0.0, _OUTLET), (0.13, _OUTLET), (1.3, 0.62)), 0.09, Ink.STEEL_EDGE),)),
    )
    _falls(view, 1.3, 0.62, 0.27)


WASHED_FOOT = four(
    "fault-washed-foot",
    (),
    fixed(-_TANK, -0.46, _END, _HIGH + 0.1),
    {"at-the-foot": _at_the_foot, "far-pipe": _far_pipe, "down-pipe": _down_pipe, "to-trough": _to_trough},
)

_CLEAR, _RIM, _RIM_HIGH, _LID = 0.3, 0.06, 0.12, 0.02
_ROOF = 0.08


def _manhole(view: View, handles: Sequence[float]) -> None:
    """Roof, raised rim and lid, cut through, with its handles."""
    for side in (-1, 1):
        edges = sorted((side * _CLEAR, side * 0.62))
        rim = sorted((side * _CLEAR, side * (_CLEAR + _RIM)))
        view.page.add(
            Group("roof", view.cut_box(edges[0], -_ROOF, edges[1], 0.0)),
            Group("rim", view.cut_box(rim[0], 0.0, rim[1], _RIM_HIGH)),
        )
    out = _CLEAR + _RIM + 0.02
    lid = (
        (-out - _LID, _RIM_HIGH - 0.06), (-out - _LID, _RIM_HIGH + _LID), (out + _LID, _RIM_HIGH + _LID),
        (out + _LID, _RIM_HIGH - 0.06), (out, _RIM_HIGH - 0.06), (out, _RIM_HIGH), (-out, _RIM_HIGH),
        (-out, _RIM_HIGH - 0.06),
    )  # fmt: skip
    view.page.add(Group("lid", (view.shape(*lid, ink=Ink.STEEL_EDGE),)))
    top = _RIM_HIGH + _LID
    for x in handles:
        handle = ((x - 0.07, top), (x - 0.05, top + 0.06), (x + 0.05, top + 0.06), (x + 0.07, top))
        view.page.add(Group("handle", (view.path(*handle, ink=Ink.STEEL_LINE),)))


def _padlock(view: View, x: float, top: float) -> None:
    """A padlock that hangs from an eye at this point."""
    unit = view.scale * view.page.unit
    view.page.add(
        Group(
            "lock",
            (
                Arc(view.at(x, top - 0.045), 0.035 * unit, 0.0, 180.0, Ink.STEEL_LINE),
                view.box(x - 0.055, top - 0.13, x + 0.055, top - 0.04, Ink.STEEL),
            ),
        )
    )


def _hasp(view: View, side: float) -> float:
    """A strip of steel from the lid down to an eye in the rim; returns where it hangs."""
    x = side * (_CLEAR + _RIM + 0.02 + _LID)
    ends = sorted((x, x + side * 0.05))
    view.page.add(Group("hasp", (view.box(ends[0], _RIM_HIGH - 0.02, ends[1], _RIM_HIGH + _LID, Ink.STEEL_EDGE),)))
    return x + side * 0.06


def _open_lid(view: View, values: Mapping[str, float]) -> None:
    del values
    _manhole(view, (-0.18, 0.18))
    _hasp(view, 1.0)


def _right_lock(view: View, values: Mapping[str, float]) -> None:
    del values
    _manhole(view, (-0.18, 0.18))
    _padlock(view, _hasp(view, 1.0), _RIM_HIGH + 0.02)


def _left_lock(view: View, values: Mapping[str, float]) -> None:
    del values
    _manhole(view, (-0.18, 0.18))
    _padlock(view, _hasp(view, -1.0), _RIM_HIGH + 0.02)


def _bar_lock(view: View, values: Mapping[str, float]) -> None:
    """A bar across the lid, held in the roof at both ends, with its lock on top."""
    del values
    _manhole(view, (0.0,))
    top = _RIM_HIGH + _LID + 0.07
    bar = ((-0.5, 0.0), (-0.5, top), (0.5, top), (0.5, 0.0))
    view.page.add(Group("bar", (stick(view, bar, 0.025, Ink.STEEL_EDGE),)))
    _padlock(view, 0.5, top - 0.01)


OPEN_LID = four(
    "fault-open-lid",
    (),
    fixed(-0.62, -_ROOF - 0.02, 0.62, 0.36),
    {"no-lock": _open_lid, "lock-right": _right_lock, "lock-left": _left_lock, "lock-on-bar": _bar_lock},
)
