"""The mesh to buy: the wall's two faces laid out roll by roll, floor and base and roof by their area."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from generator.calculations.mesh_layout import MeshLayout, mesh_layout
from generator.formula import whole_up
from generator.plans.hoops import bar_mass
from generator.plans.shop import Mesh
from generator.plans.wall import MeshFace, Wall

LAP = 0.20
"""Lap of mesh on mesh, round the tank and up it [m]."""
AREA_LAPS = 1.12
"""Laps of mesh laid flat, as a share of its area."""
TURN_UP = 0.30
ROOF_LAYERS = 2
TWIST = 1.1


@dataclass(frozen=True, slots=True)
class FaceMesh:
    """One face of the wall.

    Args:
        face: which mesh, how many layers.
        layout: its strips.
    """

    face: MeshFace
    layout: MeshLayout


@dataclass(frozen=True, slots=True)
class MeshList:
    """All the mesh.

    Args:
        inside: of the wall's water side.
        outside: of its outside.
        flat: mesh of base, floor and roof, and its area with laps [m2], by part.
        rolls: rolls to buy of each mesh.
        mass: of all rolls [kg].
    """

    inside: FaceMesh
    outside: FaceMesh
    flat: Mapping[str, tuple[Mesh, float]]
    rolls: tuple[tuple[Mesh, int], ...]
    mass: float

    @property
    def wall_area(self) -> float:
        """Mesh in the wall with its laps, all layers [m2]."""
        return sum(
            strip.width * strip.piece * len(strip.laps)
            for each in (self.inside, self.outside)
            for strip in each.layout.strips
        )


def mesh_for(wall: Wall, values: Mapping[str, float], roof_area: float) -> MeshList:
    """The mesh of a tank.

    Args:
        wall: with the mesh of its faces.
        values: what the calculation module says about the tank.
        roof_area: of the roof, one face [m2].

    Raises:
        OutOfRangeError: a roll that can't be laid round this tank.
    """
    height = values["wall_height"]
    inside = FaceMesh(wall.inside, _laid(wall.inside, values["ring_length"], height + TURN_UP))
    outside = FaceMesh(wall.outside, _laid(wall.outside, values["ring_length"], height))
    flat = {
        "base": (wall.inside.mesh, values["base_mesh_area"]),
        "floor": (wall.outside.mesh, values["floor_mesh_area"]),
        "roof": (wall.outside.mesh, ROOF_LAYERS * roof_area * AREA_LAPS),
    }
    rolls: dict[Mesh, int] = {}
    for each in (inside, outside):
        rolls[each.face.mesh] = rolls.get(each.face.mesh, 0) + each.layout.rolls
    areas: dict[Mesh, float] = {}
    for mesh, area in flat.values():
        areas[mesh] = areas.get(mesh, 0.0) + area
    for mesh, area in areas.items():
        rolls[mesh] = rolls.get(mesh, 0) + int(whole_up(area / (mesh.width * mesh.length)))
    mass = sum(count * mesh.width * mesh.length * mass_of_a_square_metre(mesh) for mesh, count in rolls.items())
    return MeshList(inside, outside, flat, tuple(rolls.items()), mass)


def _laid(face: MeshFace, round_length: float, height: float) -> MeshLayout:
    mesh = face.mesh
    return mesh_layout(round_length, height, mesh.width, mesh.length, LAP, face.layers)


def mass_of_a_square_metre(mesh: Mesh) -> float:
    """Mass of mesh, from the length of its wires [kg/m2]; weigh a roll where it matters.

    Args:
        mesh: square mesh has a wire each way at every opening; netting with six-sided openings has 8/3 m of wire for
            each opening's width, and a tenth more in its twists.
    """
    metres = 2 / mesh.opening if mesh.square else 8 / 3 / mesh.opening * TWIST
    return bar_mass(mesh.wire) * metres * 1000
