"""Faults to find on the plastered face of a wall: mesh cracks, running rust, a leaking foot, a strip left dry."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping

from generator.figures.areas import Spot, add_area
from generator.figures.fault_parts import (
    chalk_line,
    drop,
    finished,
    float_marks,
    ground,
    line,
    mesh_cracks,
    mud,
    paper,
    pipe_end,
    puddle,
    rect,
    rust_run,
    sack,
    slots,
    task,
    task_height,
    torn,
)
from generator.figures.ink import HatchKind, Ink
from generator.figures.page import DISC, MARGIN, Page
from generator.figures.scene import VIEW, Element, Group, Hatch, Scene
from generator.figures.things import BUCKET_HEIGHT, bucket, hand
from generator.words import Words

_FACE_WIDTH = 0.9
"""Piece of wall that is shown near, metres."""
_CELL = 100.0
_PIPE = 0.025
"""Radius of a pipe end, metres."""

Painter = Callable[[Page, float, float, float, float], None]


def _face(key: str, items: Mapping[str, Painter]) -> Callable[[Mapping[str, float], Words, tuple[str, ...]], Scene]:
    """A face with five things on it in two rows, and a hand in the sixth place."""

    def paint(values: Mapping[str, float], words: Words, order: tuple[str, ...]) -> Scene:
        del values
        lines = task(words)
        foot = MARGIN + 2 * _CELL
        page = Page(_FACE_WIDTH / (VIEW - 2 * MARGIN), foot + 4 + task_height(lines))
        page.add(rect(page, MARGIN, MARGIN, VIEW - MARGIN, foot, Ink.WALL_FACE))
        cells = [(left, MARGIN + row * _CELL, right) for row in (0, 1) for left, right in slots(3)]
        for name, (left, top, right) in zip(order, cells, strict=False):
            items[name](page, left + 8, top + 8, right - 8, top + _CELL - 8)
            box = paper(page, left + 2 * DISC + 6, top + 4, right - 4, top + _CELL - 4)
            add_area(page, name, box, (left + DISC + 4, top + DISC + 4))
        left, top, right = cells[5]
        page.add(hand(page.at((left + right) / 2, top + _CELL - 22), forearm=0.28))
        return finished(page, key, lines, words)

    return paint


def _middle(left: float, right: float) -> float:
    return (left + right) / 2 + DISC


def _mesh_cracks(page: Page, left: float, top: float, right: float, foot: float) -> None:
    page.add(mesh_cracks(page, _middle(left, right), (top + foot) / 2, (right - left) / 2 - DISC, (foot - top) / 2))


def _float_marks(page: Page, left: float, top: float, right: float, foot: float) -> None:
    page.add(float_marks(page, _middle(left, right), (top + foot) / 2 - 4, 66.0))


def _sack(page: Page, left: float, top: float, right: float, foot: float) -> None:
    page.add(sack(page, left + 2 * DISC + 4, top, right, foot - 8))


def _pipe(page: Page, left: float, top: float, right: float, foot: float) -> None:
    page.add(pipe_end(page, _middle(left, right), (top + foot) / 2, _PIPE / page.unit))


def _chalk(page: Page, left: float, top: float, right: float, foot: float) -> None:
    page.add(chalk_line(page, left + 2 * DISC + 2, right, (top + foot) / 2 + 6))


def _rust(page: Page, left: float, top: float, right: float, foot: float) -> None:
    page.add(rust_run(page, left + 2 * DISC + 2, right - 2, top + 16, foot - top - 18))


def _mud(page: Page, left: float, top: float, right: float, foot: float) -> None:
    page.add(mud(page, _middle(left, right), foot, (right - left) - 2 * DISC))


def _spot(key: str, items: Mapping[str, Painter]) -> Spot:
    return Spot(key, (), tuple(items), _face(key, items))


SHADOW_CRACKS = _spot(
    "fault-shadow-cracks",
    {"mesh-cracks": _mesh_cracks, "float-marks": _float_marks, "wet-sack": _sack, "pipe": _pipe, "chalk-line": _chalk},
)
RUST_RUN = _spot(
    "fault-rust-run",
    {"rust-run": _rust, "wet-sack": _sack, "mud-splash": _mud, "pipe": _pipe, "chalk-line": _chalk},
)


# ---------------------------------------------------------------------------------------- along the foot of a wall

_FOOT_WIDTH = 1.75
_WALL_SHOWN = 0.62
"""Height of the wall above its foot that is shown, metres."""
_GROUND = 15.0


def _foot_places(page: Page, order: tuple[str, ...], top: float, foot: float) -> list[tuple[str, float, float]]:
    """Makes each place along a foot choosable, its letter below, and tells where it is."""
    places = []
    for name, (left, right) in zip(order, slots(len(order)), strict=True):
        add_area(page, name, paper(page, left + 2, top, right - 2, foot), ((left + right) / 2, foot + DISC + 4))
        places.append((name, left, right))
    return places


def _leaking(values: Mapping[str, float], words: Words, order: tuple[str, ...]) -> Scene:
    lines = task(words)
    unit = _FOOT_WIDTH / (VIEW - 2 * MARGIN)
    slab = values["base_concrete_thickness"] / 1000 / unit
    foot = MARGIN + _WALL_SHOWN / unit
    base = foot + slab
    low = base + _GROUND
    page = Page(unit, low + 2 * DISC + 8 + task_height(lines))
    page.add(
        rect(page, MARGIN, MARGIN, VIEW - MARGIN, foot, Ink.WALL_FACE),
        rect(page, MARGIN, foot, VIEW - MARGIN, base, Ink.CONCRETE),
        *ground(page, MARGIN, base, VIEW - MARGIN, low),
    )
    for name, left, right in _foot_places(page, order, MARGIN + 4, low):
        x = (left + right) / 2
        if name == "leak-at-the-foot":
            _leak(page, x, foot, base)
        elif name == "plugged-pipe":
            page.add(pipe_end(page, x, foot - 26, 0.04 / unit, plugged=True))
        elif name == "bucket":
            page.add(bucket(page.at(x, base), BUCKET_HEIGHT))
        elif name == "wet-sack":
            page.add(sack(page, left + 8, MARGIN + 4, right - 8, foot - 0.2 / unit))
    return finished(page, "fault-leaking-joint", lines, words)


def _leak(page: Page, x: float, foot: float, base: float) -> None:
    """A damp patch above the joint, water that comes out of it and down the base, a puddle in front."""
    patch = [
        (-31, 0),
        (-27, -7),
        (-20, -9),
        (-15, -15),
        (-6, -13),
        (1, -19),
        (9, -14),
        (17, -16),
        (22, -8),
        (28, -6),
        (31, 0),
    ]
    damp = [(x + across, foot + up) for across, up in patch]
    runs = []
    for off, wide in ((-19, 3.0), (-8, 4.5), (5, 3.4), (16, 4.2)):
        run = [(x + off - 0.5 * wide, foot), (x + off + 0.5 * wide, foot), (x + off + wide, base + 2)]
        runs.append(line(page, [*run, (x + off - wide, base + 2)], Ink.WATER_BODY, closed=True))
    slit = [(x - 27, foot - 1.2), (x + 27, foot - 1.2), (x + 27, foot + 1.2), (x - 27, foot + 1.2)]
    parts: tuple[Element, ...] = (
        Hatch(tuple(page.at(*point) for point in damp), HatchKind.WATER),
        line(page, damp, Ink.WATER),
        *runs,
        line(page, slit, Ink.WATER_BODY, closed=True),
        puddle(page, x, base + 5.5, 31, 6.5),
    )
    page.add(Group("leak", parts))


LEAKING_JOINT = Spot(
    "fault-leaking-joint",
    ("base_concrete_thickness",),
    ("leak-at-the-foot", "plugged-pipe", "bucket", "wet-sack", "dry-foot"),
    _leaking,
)


# ------------------------------------------------------------------------------------------------- while it cures

_SACK_WIDTH, _SACK_HEIGHT = 0.55, 0.8


def _curing(values: Mapping[str, float], words: Words, order: tuple[str, ...]) -> Scene:
    lines = task(words)
    unit = len(order) * _SACK_WIDTH / (VIEW - 2 * MARGIN)
    top, high = MARGIN + 6, values["wall_height"] / unit
    foot = top + high
    low = foot + _GROUND
    page = Page(unit, low + 2 * DISC + 8 + task_height(lines))
    page.add(
        rect(page, MARGIN, top, VIEW - MARGIN, foot, Ink.WALL_FACE),
        *ground(page, MARGIN, foot, VIEW - MARGIN, low),
    )
    for name, left, right in _foot_places(page, order, top - 4, low):
        if name == "dry-strip":
            _fallen(page, (left + right) / 2, foot)
        elif name == "plastic":
            _plastic(page, left, top - 5, right, foot)
        else:
            rows = max(1, math.ceil(high / (_SACK_HEIGHT / unit)))
            tall = (high - 6) / rows
            for row in reversed(range(rows)):
                page.add(sack(page, left + 1, top - 4 + row * tall, right - 1, top + (row + 1) * tall))
    page.add(line(page, [(MARGIN, top - 1), (VIEW - MARGIN, top - 1)], Ink.GROUND))
    page.add(torn(page, MARGIN, top, foot), torn(page, VIEW - MARGIN, top, foot))
    return finished(page, "fault-dry-strip", lines, words)


def _fallen(page: Page, x: float, foot: float) -> None:
    """A sack that has slipped down and lies in a heap before the bare wall."""
    heap = [(x - 30, foot), (x - 26, foot - 8), (x - 14, foot - 13), (x - 2, foot - 10), (x + 12, foot - 15)]
    heap += [(x + 24, foot - 9), (x + 30, foot)]
    folds = [
        line(page, [(x - 22, foot - 3), (x - 8, foot - 8)], Ink.THING_LINE),
        line(page, [(x - 2, foot - 3), (x + 12, foot - 10)], Ink.THING_LINE),
    ]
    page.add(line(page, heap, Ink.CLOTH, closed=True), *folds)


def _plastic(page: Page, left: float, top: float, right: float, foot: float) -> None:
    """A sheet tied down with a string, shining, with drops on its inside."""
    page.add(rect(page, left + 2, top, right - 2, foot - 2, Ink.SHEET))
    high, wide = foot - top, right - left
    for at in (0.2, 0.45, 0.7):
        start = (left + wide * at, top + 0.12 * high)
        page.add(line(page, [start, (start[0] + 0.12 * wide, start[1] + 0.3 * high)], Ink.BREAK))
    for row in (0.52, 0.66, 0.8):
        page.add(*(drop(page, left + wide * at, top + row * high, 5) for at in (0.25, 0.5, 0.75)))
    for row in (0.3, 0.9):
        page.add(line(page, [(left + 1, top + row * high), (right - 1, top + row * high)], Ink.STRING))


DRY_STRIP = Spot(
    "fault-dry-strip",
    ("wall_height",),
    ("dry-strip", "wet-sacks-1", "wet-sacks-2", "wet-sacks-3", "plastic"),
    _curing,
)
