"""The wall: mesh on both faces, uprights, angles where the tank is large, hoops outside; its thickness follows."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from math import pi
from types import MappingProxyType

import numpy as np

from generator.calculations import BOOK
from generator.calculations.angles import angle_for
from generator.calculations.bands import mesh_only_allowed
from generator.calculations.foot import ARM_SHARE
from generator.calculations.ring_levels import allowed_steel_stress
from generator.calculations.ring_strength import WATER_WEIGHT
from generator.calculations.shell import shape_number, wall_forces
from generator.formula import whole_up
from generator.plans.hoops import Hoops, bar_area, bar_mass, bears, each_hoops, hoops_for, is_tight, uniform_hoops
from generator.plans.refused import NoPlanError
from generator.plans.shape import Shape
from generator.plans.shop import Angle, Bar, Mesh, Shop

MESH_COVER = 5.0
"""Mortar over the mesh on each face [mm]: the most of the usual 2 to 5, so that bars lie 8 mm deep or more."""
UPRIGHT_SPACINGS = (0.20, 0.15, 0.10)
ANGLE_SPACING = 0.80
THINNEST_UPRIGHT, THICKEST_UPRIGHT = 6.0, 12.0
THINNEST_MESH_WALL = 30.0
LEAST_UPRIGHTS = 8


@dataclass(frozen=True, slots=True)
class MeshFace:
    """The mesh of one face.

    Args:
        mesh: of the shop.
        layers: how many.
    """

    mesh: Mesh
    layers: int

    @property
    def thickness(self) -> float:
        """All layers, as tied [mm]."""
        return self.mesh.thickness * self.layers


@dataclass(frozen=True, slots=True)
class Wall:
    """A wall that passes, or the one that someone asked to have judged.

    Args:
        inside: mesh on the water side.
        outside: mesh on the outside.
        thickness: of the finished wall [mm].
        hoops: none in a tank of mesh alone.
        upright: bar of the uprights, none in a tank of mesh alone.
        upright_spacing: widest distance between uprights [m].
        angle: none where the tank is too small to need angles.
        mesh_steel: in a tank of mesh alone, steel along the ring [mm2/m].
        others: hoops of the shop's other bars that bear as well, least steel first.
    """

    inside: MeshFace
    outside: MeshFace
    thickness: float
    hoops: Hoops | None = None
    upright: Bar | None = None
    upright_spacing: float = 0.0
    angle: Angle | None = None
    mesh_steel: float = 0.0
    others: tuple[Hoops, ...] = ()


def mesh_faces(shop: Shop) -> tuple[MeshFace, MeshFace]:
    """Mesh for both faces: square mesh on the water side where the shop has it, the finer one outside.

    Raises:
        NoPlanError: the shop has no mesh.
    """
    if not shop.meshes:
        raise NoPlanError("no_mesh")
    thin = min(shop.meshes, key=lambda mesh: (mesh.thickness, mesh.opening))
    square = [mesh for mesh in shop.meshes if mesh.square]
    inside = min(square, key=lambda mesh: (mesh.opening, mesh.thickness)) if square else thin
    return MeshFace(inside, 1 if square else 2), MeshFace(thin, 1)


def mesh_only_wall(shape: Shape, shop: Shop) -> Wall | None:
    """A wall of mesh alone, for the smallest tanks; none if the tank is too large, or the shop's mesh too weak for it.

    Only square mesh is counted: its wires that lie round the tank, at the working stress of plain steel. What netting
    with six-sided openings bears is known from memory only, and memory does not decide.
    """
    if not mesh_only_allowed(shape.counted, shape.water_depth, shape.inside_diameter / 2):
        return None
    pull = float(WATER_WEIGHT) * shape.water_depth * shape.inside_diameter / 2
    for mesh in sorted((m for m in shop.meshes if m.square), key=lambda m: (m.thickness, m.opening)):
        for layers in (1, 2):
            steel = 2 * layers * ring_steel(mesh)
            thickness = max(
                THINNEST_MESH_WALL, float(whole_up((2 * MESH_COVER + (2 * layers + 1) * mesh.thickness) / 5)) * 5
            )
            if pull * 1000 / steel <= allowed_steel_stress(ribbed=False) and thickness <= 50:
                face = MeshFace(mesh, layers)
                return Wall(face, face, thickness, mesh_steel=steel)
    return None


def ring_steel(mesh: Mesh) -> float:
    """Wires of one layer of square mesh that lie round the tank [mm2/m]."""
    return 1000 * pi * mesh.wire**2 / 4 / mesh.opening


def wall_for(
    shape: Shape, shop: Shop, wished: tuple[Bar, float] | None = None, place: Mapping[str, float] = MappingProxyType({})
) -> tuple[Wall, Hoops | None]:
    """The wall with the least steel that passes.

    Args:
        shape: of the tank.
        shop: what may be chosen from.
        wished: a hoop and one spacing that someone would like to build.
        place: givens that are fixed already: uprights, mesh and angles are taken from them and not chosen.

    Returns:
        The wall, and the wished hoops if they do not bear; if they do, they are in the wall.

    Raises:
        NoPlanError: nothing in the shop passes: an honest no, which names what is missing.
    """
    inside, outside = _faces(shop, place)
    if wished is None:
        mesh_only = mesh_only_wall(shape, shop)
        if mesh_only is not None:
            return mesh_only, None
    angle = _angle(shape, shop, place.get("angle_leg"))
    wanting = None
    found: list[tuple[tuple[bool, float, float], Wall]] = []
    passing: dict[float, tuple[Hoops, ...]] = {}
    for upright, spacing in _uprights(shop, place):
        thickness_with = _thickness_with(inside, outside, upright, angle)
        choices = passing.get(upright.diameter)
        if choices is None:  # how far apart the uprights stand changes no hoop
            choices = passing[upright.diameter] = hoops_for(shape, shop.bars, thickness_with)
        if wished is not None:
            judged = uniform_hoops(shape, *wished, thickness_with(wished[0]))
            if bears(judged):
                choices = (judged,)
            else:
                wanting = judged
        for hoops in choices:
            if _uprights_bear(shape, hoops.wall_thickness, upright, spacing, inside):
                steel = hoops.mass_of_a_metre + shape.wall_height / spacing * bar_mass(upright.diameter)
                others = tuple(other for other in choices if other.bar != hoops.bar)
                wall = Wall(inside, outside, hoops.wall_thickness, hoops, upright, spacing, angle, others=others)
                found.append(((is_tight(hoops), round(steel, 6), upright.diameter), wall))
    if found:
        return min(found, key=lambda choice: choice[0])[1], wanting
    raise _what_is_missing(shape, shop)


def can_be_walled(shape: Shape, shop: Shop) -> bool:
    """Whether `wall_for` would find a wall: the first one that passes is enough.

    Args:
        shape: of the tank.
        shop: what may be chosen from.

    Raises:
        NoPlanError: the shop has no mesh, or no angle where the tank needs them.
    """
    inside, outside = mesh_faces(shop)
    if mesh_only_wall(shape, shop) is not None:
        return True
    angle = _angle(shape, shop, None)
    return any(
        _uprights_bear(shape, hoops.wall_thickness, upright, spacing, inside)
        for upright, spacing in _uprights(shop, {})
        for hoops in each_hoops(shape, shop.bars, _thickness_with(inside, outside, upright, angle))
    )


def _thickness_with(inside: MeshFace, outside: MeshFace, upright: Bar, angle: Angle | None) -> Callable[[Bar], float]:
    """Thickness of the finished wall [mm] with a hoop of a bar."""
    leg = None if angle is None else angle.leg
    return lambda hoop: _thickness(inside.thickness, outside.thickness, upright.diameter, hoop.diameter, leg)


def _what_is_missing(shape: Shape, shop: Shop) -> NoPlanError:
    if not any(THINNEST_UPRIGHT <= bar.diameter <= THICKEST_UPRIGHT for bar in shop.bars):
        return NoPlanError("no_bar")
    return NoPlanError("hoops_too_weak", depth=f"{shape.water_depth:.2f}", width=f"{shape.inside_diameter:.2f}")


def _faces(shop: Shop, place: Mapping[str, float]) -> tuple[MeshFace, MeshFace]:
    """The mesh of both faces, as thick as the place says."""
    inside, outside = mesh_faces(shop)
    return _as_thick(inside, place.get("inside_mesh_thickness")), _as_thick(
        outside, place.get("outside_mesh_thickness")
    )


def _as_thick(face: MeshFace, thickness: float | None) -> MeshFace:
    if thickness is None:
        return face
    return MeshFace(face.mesh.model_copy(update={"thickness": thickness / face.layers}), face.layers)


def _uprights(shop: Shop, place: Mapping[str, float]) -> list[tuple[Bar, float]]:
    """Uprights from the thinnest and widest apart, plain before ribbed; a place's own bar and spacing stand alone."""
    if "bar_diameter" in place:
        bar = Bar(diameter=place["bar_diameter"], length=place.get("stock_length", 12.0))
        return [(bar, place.get("bar_spacing_limit", UPRIGHT_SPACINGS[0]))]
    bars = {bar.diameter: bar for bar in sorted(shop.bars, key=lambda bar: (not bar.ribbed, bar.length))}
    thin = [bars[size] for size in sorted(bars) if THINNEST_UPRIGHT <= size <= THICKEST_UPRIGHT]
    return [(bar, spacing) for bar in thin for spacing in UPRIGHT_SPACINGS]


def _angle(shape: Shape, shop: Shop, leg: float | None) -> Angle | None:
    """The lightest angle of the shop that is stiff enough, or the place's own; none where the tank needs none.

    Raises:
        NoPlanError: the tank needs angles and the shop has none that is large enough.
    """
    wanted = angle_for(shape.inside_diameter, shape.wall_height)
    if leg is not None and (wanted is None or leg >= wanted.leg):
        return next((angle for angle in shop.angles if angle.leg == leg), Angle(leg=leg, thickness=3))
    if wanted is None:
        return None
    good = [angle for angle in shop.angles if angle.leg >= wanted.leg and angle.thickness >= wanted.thickness]
    if not good:
        raise NoPlanError(
            "no_angle", leg=f"{wanted.leg:g}", thickness=f"{wanted.thickness:g}", width=f"{shape.inside_diameter:.2f}"
        )
    return min(good, key=lambda angle: (angle.leg, angle.thickness))


@lru_cache(maxsize=1 << 10)
def _thickness(inside: float, outside: float, upright: float, hoop: float, leg: float | None) -> float:
    """Thickness of the finished wall [mm], from that of its meshes, its bars and the leg of its angles [mm].

    Raises:
        OutOfRangeError: its parts don't find room in the thickest wall of this course.
    """
    given = {
        "mesh_cover": MESH_COVER,
        "inside_mesh_thickness": inside,
        "outside_mesh_thickness": outside,
        "bar_diameter": upright,
        "hoop_diameter": hoop,
    }
    return BOOK.evaluate(wall_seeds(given, leg), ["wall_thickness"])["wall_thickness"]


def wall_seeds(given: Mapping[str, float], leg: float | None) -> dict[str, float]:
    """The wall's givens with the leg of its angles [mm]; without angles the lap decides its thickness alone."""
    if leg is not None:
        return {**given, "angle_leg": leg}
    lap = BOOK.evaluate(given, ["wall_build_up_at_lap"])["wall_build_up_at_lap"]
    return {**given, "wall_build_up_at_angle": max(lap, 30.0)}


def bending_of_uprights(shape: Shape, wall_thickness: float) -> float:
    """Largest bending above the foot that pulls at the dry face [kN.m per metre of girth]: of a hinged foot."""
    return _bending(shape.water_depth, shape.inside_diameter, wall_thickness)


@lru_cache(maxsize=1 << 10)
def _bending(depth: float, diameter: float, thickness: float) -> float:
    moments = wall_forces(shape_number(depth, diameter, thickness / 1000), np.linspace(0, 1, 101), "hinged").moment
    return float(moments.max()) * float(WATER_WEIGHT) * depth**3


def upright_stress(shape: Shape, wall_thickness: float, upright: Bar, spacing: float, inside: MeshFace) -> float:
    """Stress in the uprights under that bending, mesh and mortar tension left out [MPa]."""
    depth = MESH_COVER + inside.thickness + upright.diameter / 2
    steel = bar_area(upright) / spacing
    return bending_of_uprights(shape, wall_thickness) * 1e6 / (steel * float(ARM_SHARE) * depth)


def _uprights_bear(shape: Shape, wall_thickness: float, upright: Bar, spacing: float, inside: MeshFace) -> bool:
    stress = upright_stress(shape, wall_thickness, upright, spacing, inside)
    return stress <= allowed_steel_stress(upright.ribbed) + 1e-9
