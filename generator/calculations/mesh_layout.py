"""Cutting layout of mesh: which strip stands where, where it laps, and how many rolls that takes.

Strips are wrapped round, each of one piece where the roll is long enough. Hexagonal netting too is wrapped round and
never hung upright: along its roll it carries half as much again as across, and the tank pulls round. Laps of
neighbours never stand above each other: two laps in one place leave a weak stripe where no mortar gets through.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations
from math import isfinite

from generator.calculations.cutting import bars_for
from generator.calculations.ring_strength import WATER_WEIGHT
from generator.formula import Constant, OutOfRangeError, common_practice, from_memory, whole_up

LAPS_APART = Constant(1.3, "", common_practice("laps of neighbours stand this many lap lengths apart, start to start"))
TURNS_OF_ROWS = 3
"""After this many strips the laps may come back to the same place."""
NETTING_ROUND = Constant(0.45, "", from_memory("share of hexagonal wire that works along the roll"))
NETTING_UPRIGHT = Constant(0.30, "", from_memory("share of hexagonal wire that works across the roll"))
NETTING_STRESS = Constant(186, "MPa", from_memory("0.6 of a yield of 310 MPa; weigh and test your own netting"))
STEEL_DENSITY = 7.85
"""A square metre of steel 1 mm thick [kg]."""
_HAIR = 1e-9


@dataclass(frozen=True, slots=True)
class Strip:
    """One strip of one layer.

    Args:
        layer: from 0, the first that is hung.
        row: from 0 at the foot.
        height: of its lower edge above the foot [m].
        width: [m]; less than the roll's where it is slit lengthwise.
        piece: length to cut for each piece [m].
        laps: where its laps begin, measured round from the first angle [m].
    """

    layer: int
    row: int
    height: float
    width: float
    piece: float
    laps: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class MeshLayout:
    """The whole layout.

    Args:
        strips: every strip, layer by layer from the foot up.
        rolls: rolls to buy.
        laps_apart: least distance round the tank between laps of neighbours, start to start [m].
        edges_apart: least distance in height between lapped edges of neighbouring layers [m]; the lap itself counted
            off, so that nothing or less means that they lie over each other; none where no edge is lapped.
        staggered: whether laps of neighbours stand far enough apart, round the tank and in height.
        waste: share of the bought mesh that is neither in the wall nor in its laps.
    """

    strips: tuple[Strip, ...]
    rolls: int
    laps_apart: float
    edges_apart: float | None
    staggered: bool
    waste: float


def mesh_layout(
    round_length: float,
    height: float,
    roll_width: float,
    roll_length: float,
    lap: float,
    layers: int,
) -> MeshLayout:
    """Lay strips out for all the layers of a wall.

    Edges of neighbouring layers can only be moved apart by what the strips are wider than the wall is high. Where that
    is less than a lap, `staggered` is false: take another roll's width.

    Args:
        round_length: once round the tank, without lap [m].
        height: of the wall [m].
        roll_width: [m].
        roll_length: [m].
        lap: at the ends and along the edges [m].
        layers: of both faces together.

    Raises:
        OutOfRangeError: sizes that lay out no mesh.

    Example:
        >>> plan = mesh_layout(10.8, 1.65, roll_width=1.1, roll_length=30, lap=0.15, layers=2)
        >>> plan.rolls, plan.staggered, [round(strip.width, 2) for strip in plan.strips]
        (2, True, [1.1, 0.7, 0.7, 1.1])
    """
    sizes = (round_length, height, roll_width, roll_length, lap)
    if not (all(isfinite(size) and size > 0 for size in sizes) and layers >= 1):
        raise OutOfRangeError(
            "a tank, a roll and a lap are longer than nothing, and there is at least one layer; measure again"
        )
    if lap >= min(roll_width, roll_length, round_length) / 2:
        raise OutOfRangeError(f"a lap of {lap:g} m is half a strip or more: ask the shop for a larger roll")
    pieces = int(whole_up(round_length / (roll_length - lap)))
    piece = round_length / pieces + lap
    rows = max(1, int(whole_up((height - lap) / (roll_width - lap))))
    strips = tuple(
        Strip(layer, row, low, wide, piece, _laps(layer, row, rows, layers, pieces, round_length))
        for layer in range(layers)
        for row, (low, wide) in enumerate(_edges(layer, rows, layers, height, roll_width, lap))
    )
    rolls = bars_for(piece, len(strips) * pieces, roll_length)
    around = _laps_apart(strips, round_length)
    edges = _edges_apart(strips, lap) if rows > 1 and layers > 1 else None
    used = sum(strip.width * strip.piece * pieces for strip in strips)
    return MeshLayout(
        strips=strips,
        rolls=rolls,
        laps_apart=around,
        edges_apart=edges,
        staggered=around >= LAPS_APART * lap - _HAIR and (edges is None or edges >= -_HAIR),
        waste=1 - used / (rolls * roll_length * roll_width),
    )


def _edges(
    layer: int, rows: int, layers: int, height: float, roll_width: float, lap: float
) -> Iterator[tuple[float, float]]:
    """Lower edge and width of each strip of a layer; the slack of the widths moves the edges from layer to layer."""
    if rows == 1:
        yield 0.0, height
        return
    slack = rows * roll_width - (rows - 1) * lap - height
    places = min(layers, 1 + int(slack / lap + _HAIR))
    slit = slack * (layer % places) / (places - 1) if places > 1 else slack * (layer % 2)
    low, wide = 0.0, roll_width - slit
    for row in range(rows):
        yield low, wide
        low += wide - lap
        wide = roll_width if row < rows - 2 else height - low


def _laps(layer: int, row: int, rows: int, layers: int, pieces: int, round_length: float) -> tuple[float, ...]:
    """Where the laps of a strip begin: shared out over the layers, and moved on from row to row."""
    turns = min(rows, TURNS_OF_ROWS)
    share = round_length / pieces
    start = share * (layer + row % turns / turns) / layers
    return tuple(start + share * piece for piece in range(pieces))


def _laps_apart(strips: Sequence[Strip], round_length: float) -> float:
    """Least distance between any two laps of one strip, of strips above each other and of neighbouring rows [m]."""
    least = round_length
    laps = [(strip.row, lap) for strip in strips for lap in strip.laps]
    for (row, one), (other, two) in combinations(laps, 2):
        if abs(row - other) <= 1:
            way = abs(one - two)
            least = min(least, way, round_length - way)
    return least


def _edges_apart(strips: Sequence[Strip], lap: float) -> float:
    """Least height between lapped edges of neighbouring layers, the lap counted off [m]."""
    edges = [(strip.layer, strip.height) for strip in strips if strip.row > 0]
    return min(abs(one - two) for (a, one), (b, two) in combinations(edges, 2) if abs(a - b) == 1) - lap


def netting_pull(mass_per_area: float, layers: int, wrapped: bool = True) -> float:
    """A warning: the pull that hexagonal netting may bear, from memory. It never decides that a wall is safe.

    Args:
        mass_per_area: of one layer, weighed [kg/m2].
        layers: how many.
        wrapped: wrapped round the tank; false where it hangs upright.

    Returns:
        Pull round the tank [kN/m].

    Raises:
        OutOfRangeError: nothing was weighed.

    Example:
        >>> round(netting_pull(0.45, 2), 1), round(netting_pull(0.45, 2, wrapped=False), 1)
        (9.6, 6.4)
    """
    if not (isfinite(mass_per_area) and mass_per_area > 0 and layers >= 1):
        raise OutOfRangeError("weigh a square metre of the netting, and count at least one layer")
    share = NETTING_ROUND if wrapped else NETTING_UPRIGHT
    return layers * 1000 * mass_per_area / STEEL_DENSITY * share * NETTING_STRESS / 1000


def netting_depth_times_radius(mass_per_area: float, layers: int, wrapped: bool = True) -> float:
    """A warning: water depth times radius above which netting alone is in doubt; by numbers from memory.

    Args:
        mass_per_area: of one layer, weighed [kg/m2].
        layers: how many.
        wrapped: wrapped round the tank; false where it hangs upright.

    Returns:
        Depth times radius [m2].

    Raises:
        OutOfRangeError: nothing was weighed.

    Example:
        >>> round(netting_depth_times_radius(0.45, 2), 2)
        0.98
    """
    return netting_pull(mass_per_area, layers, wrapped) / float(WATER_WEIGHT)
