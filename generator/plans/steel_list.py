"""Every piece of steel, and from which bar it is cut: hoops and their laps, uprights, starters, base and roof."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import asin, pi, sqrt

from generator.calculations.cutting import CuttingList, Piece, cutting_list
from generator.formula import whole_up
from generator.plans.footing import Footing
from generator.plans.hoops import bar_mass
from generator.plans.refused import NoPlanError
from generator.plans.roofing import COLUMN_WIDTH, RIB_SPACING, Roof, RoofKind
from generator.plans.shape import Shape
from generator.plans.shop import Angle, Bar
from generator.plans.wall import Wall

STEP = 0.05
"""Pieces are cut to the next step [m]."""
EDGE = 0.10
"""How far roof bars reach into the wall's top [m]."""
DOME_RADIALS = 0.40
"""Widest distance between the radial bars of a dome or a cone, at its edge [m]."""
COLUMN_BARS = 4
COLUMN_ENDS = 0.5
"""Of a column's bars, in its pad and in the roof [m]."""


@dataclass(frozen=True, slots=True)
class SteelPiece:
    """Pieces of one kind.

    Args:
        name: key of its words.
        bar: what they are cut from.
        length: of one [m].
        count: how many.
        whole: of how many pieces one whole thing is made: 2 where a hoop needs two bars.
    """

    name: str
    bar: Bar
    length: float
    count: int
    whole: int = 1


@dataclass(frozen=True, slots=True)
class BarList:
    """How the bars of one kind are cut.

    Args:
        bar: the bar.
        pieces: what is cut from it.
        cuts: the list.
        mass: of the bars to buy [kg].
    """

    bar: Bar
    pieces: tuple[SteelPiece, ...]
    cuts: CuttingList
    mass: float


@dataclass(frozen=True, slots=True)
class AngleList:
    """How the angles are cut.

    Args:
        angle: the angle.
        length: of one [m].
        count: how many.
        cuts: the list.
        mass: of the angles to buy [kg].
    """

    angle: Angle
    length: float
    count: int
    cuts: CuttingList
    mass: float


def pieces_of(
    shape: Shape, wall: Wall, footing: Footing, roof: Roof, values: Mapping[str, float]
) -> tuple[SteelPiece, ...]:
    """All pieces of bar.

    Args:
        shape: of the tank.
        wall: its hoops and uprights.
        footing: its starters and the ring in the base.
        roof: its steel.
        values: what the calculation module says about the tank.

    Raises:
        NoPlanError: a bar of the shop is too short for a piece that can't be lapped.
    """
    laps = values["lap_diameters"]
    found = [
        *_wall_pieces(wall, values, laps), *_foot_pieces(footing, values, laps), *_roof_pieces(shape, roof, laps),
    ]  # fmt: skip
    return tuple(piece for piece in found if piece.count > 0)


def bar_lists(pieces: tuple[SteelPiece, ...]) -> tuple[BarList, ...]:
    """The cutting list of each kind of bar, with the fewest bars.

    Raises:
        NoPlanError: a piece longer than the bar that the shop sells.
    """
    lists = []
    for bar in dict.fromkeys(piece.bar for piece in sorted(pieces, key=lambda piece: piece.bar.diameter)):
        mine = tuple(piece for piece in pieces if piece.bar == bar)
        cuts = _cut([Piece(piece.name, piece.length, piece.count) for piece in mine], bar.length)
        lists.append(BarList(bar, mine, cuts, cuts.bars * bar.length * bar_mass(bar.diameter)))
    return tuple(lists)


def angle_list(angle: Angle, length: float, count: int, mass_of_a_metre: float) -> AngleList:
    """The cutting list of the angles.

    Args:
        angle: as sold.
        length: of one [m].
        count: how many.
        mass_of_a_metre: [kg/m].

    Raises:
        NoPlanError: the angle as sold is too short.
    """
    cuts = _cut([Piece("angle", length, count)], angle.length)
    return AngleList(angle, length, count, cuts, cuts.bars * angle.length * mass_of_a_metre)


def _cut(pieces: list[Piece], stock_length: float) -> CuttingList:
    longest = max((piece.length for piece in pieces if piece.count), default=0.0)
    if longest > stock_length:
        raise NoPlanError("bar_too_short", piece=f"{longest:.2f}", length=f"{stock_length:g}")
    return cutting_list(pieces, stock_length)


def _up(length: float) -> float:
    return round(float(whole_up(length / STEP)) * STEP, 4)


def _ring(name: str, bar: Bar, diameter: float, rings: int, laps: float) -> SteelPiece:
    """Rings of one bar each, or of as many as it takes, every joint with a lap."""
    lap = laps * bar.diameter / 1000
    if bar.length <= lap:
        raise NoPlanError("bar_too_short", piece=f"{lap:.2f}", length=f"{bar.length:g}")
    each = int(whole_up(pi * diameter / (bar.length - lap)))
    return SteelPiece(name, bar, _up(pi * diameter / each + lap), rings * each, each)


def _wall_pieces(wall: Wall, values: Mapping[str, float], laps: float) -> Iterator[SteelPiece]:
    if wall.hoops is not None and wall.upright is not None:
        yield _ring("hoop", wall.hoops.bar, values["hoop_circle_diameter"], wall.hoops.count, laps)
        yield SteelPiece("upright", wall.upright, _up(values["bar_length"]), round(values["bar_count"]))


def _foot_pieces(footing: Footing, values: Mapping[str, float], laps: float) -> Iterator[SteelPiece]:
    yield SteelPiece("starter", footing.bar, _up(values["starter_length"]), round(values["starter_count"]))
    yield _ring("base_ring", footing.bar, values["outside_diameter"], footing.ring_bars, laps)


def _roof_pieces(shape: Shape, roof: Roof, laps: float) -> Iterator[SteelPiece]:
    diameter = shape.inside_diameter
    if roof.kind is RoofKind.FLAT:
        yield from _grid("roof_bar", roof.bar, diameter, roof.spacing, layers=2, laps=laps)
    elif roof.kind is RoofKind.COLUMN:
        yield from _grid("roof_bar", roof.bar, diameter, roof.spacing, layers=2, laps=laps)
        yield from _grid("roof_top_bar", roof.bar, diameter / 2, roof.spacing, layers=2, laps=laps)
        column = SteelPiece("column_bar", roof.bar, _up(shape.wall_height + COLUMN_ENDS), COLUMN_BARS)
        yield column
        binders = int(whole_up(shape.wall_height / 0.15))
        yield SteelPiece("column_binder", roof.bar, _up(pi * COLUMN_WIDTH), binders)
    elif roof.kind is RoofKind.RIBS:
        yield from _grid("rib_bar", roof.bar, diameter, RIB_SPACING, layers=roof.ring_bars, laps=laps)
    else:
        yield _ring("roof_ring", roof.bar, diameter + 2 * EDGE, roof.ring_bars, laps)
        radials = int(whole_up(pi * diameter / DOME_RADIALS / 2)) * 2
        yield _long("roof_radial", roof.bar, 2 * (_slope(shape, roof) + EDGE), radials // 2, laps)


def _slope(shape: Shape, roof: Roof) -> float:
    """From the roof's edge to its crown along the roof [m]."""
    radius, rise = shape.inside_diameter / 2, roof.values["roof_rise"]
    if roof.kind is RoofKind.CONE:
        return sqrt(radius**2 + rise**2)
    ball = (radius**2 + rise**2) / (2 * rise)
    return ball * asin(radius / ball)


def _long(name: str, bar: Bar, length: float, count: int, laps: float) -> SteelPiece:
    """A straight piece, lapped where the bar is too short for it."""
    lap = laps * bar.diameter / 1000
    each = 1 if length <= bar.length + 1e-9 else int(whole_up((length - lap) / (bar.length - lap)))
    return SteelPiece(name, bar, _up((length + (each - 1) * lap) / each), count * each, each)


def _grid(name: str, bar: Bar, width: float, spacing: float, layers: int, laps: float) -> Iterator[SteelPiece]:
    """Bars across a round roof, both ways where there are two layers, sorted into three lengths."""
    half = int(width / 2 / spacing)
    chords = [2 * sqrt(max(0.0, (width / 2) ** 2 - (step * spacing) ** 2)) for step in range(-half, half + 1)]
    longest = width + 2 * EDGE
    for share in (1.0, 0.85, 0.6):
        below = {1.0: 0.85, 0.85: 0.6, 0.6: 0.0}[share]
        count = sum(1 for chord in chords if below < (chord + 2 * EDGE) / longest <= share + 1e-9)
        if count:
            name_of = {1.0: name, 0.85: f"{name}_middle", 0.6: f"{name}_short"}[share]
            yield _long(name_of, bar, longest * share, count * layers, laps)
