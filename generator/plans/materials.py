"""What to buy and to bring: cement, sand, stone, steel, mesh, wire, lime and water, and what all of it weighs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import pi

from generator.calculations import BOOK
from generator.calculations.lifting import Material
from generator.calculations.loads import SAND_DENSITY
from generator.calculations.mortar import BAG
from generator.formula import Constant, common_practice, whole_up
from generator.plans.mesh_list import MeshList
from generator.plans.roofing import RIB_SPACING, Roof, RoofKind
from generator.plans.shape import Shape
from generator.plans.steel_list import AngleList, BarList

STONE_DENSITY = Constant(1500, "kg/m**3", common_practice("broken stone or gravel, loose"))
COVE = 0.075
"""Legs of the cove between wall and floor [m]."""
RIB_SHARE = 0.75
"""Mean length of a rib over the longest one, a little more than the mean chord of a circle is."""
PIECE = {"cement": 50.0, "lime": 20.0}
"""Mass of one piece that must be carried whole [kg]."""


@dataclass(frozen=True, slots=True)
class Materials:
    """Everything that goes up the hill, or runs down to it.

    Args:
        mortar: volume of wall, floor, cove and roof, as placed [m3], by part.
        mortar_bags: bags for the mortar.
        concrete_bags: bags for the base.
        finish_bags: bags for the neat coat inside and the wash.
        sand: damp, as it lies in the heap, mortar and concrete together [m3].
        stone: bed and concrete together [m3].
        lime: for the wash [kg].
        mixing_water: for mortar and concrete [L].
        curing_water: for all its days [L].
        test_water: of the full tank; it can be kept and drunk after the last flush [L].
        steel: bars and angles to buy [kg].
        mesh: rolls to buy [kg].
        wire: tying wire [kg].
        masses: by material [kg].
    """

    mortar: Mapping[str, float]
    mortar_bags: int
    concrete_bags: int
    finish_bags: int
    sand: float
    stone: float
    lime: float
    mixing_water: float
    curing_water: float
    test_water: float
    steel: float
    mesh: float
    wire: float
    masses: Mapping[str, float]

    @property
    def bags(self) -> int:
        """All the bags of cement."""
        return self.mortar_bags + self.concrete_bags + self.finish_bags

    @property
    def tonnes(self) -> float:
        """All that is carried, water left out [t]."""
        return sum(self.masses.values()) / 1000

    @property
    def water(self) -> float:
        """Water to build with, the tank's own filling left out [L]."""
        return self.mixing_water + self.curing_water

    def to_carry(self) -> tuple[Material, ...]:
        """The materials, as they are carried."""
        return tuple(Material(name, mass, PIECE.get(name, 0.0)) for name, mass in self.masses.items() if mass > 0)


def roof_area(shape: Shape, roof: Roof, floor_area: float) -> float:
    """One face of the roof [m2]."""
    if roof.kind in (RoofKind.DOME, RoofKind.CONE):
        return roof.values[f"{roof.kind.value}_area"]
    if roof.kind is RoofKind.RIBS:
        ribs = shape.inside_diameter / RIB_SPACING
        return floor_area + ribs * shape.inside_diameter * RIB_SHARE * roof.rib_depth / 1000
    return floor_area


def materials_for(
    shape: Shape,
    roof: Roof,
    values: Mapping[str, float],
    bars: tuple[BarList, ...],
    angles: AngleList | None,
    mesh: MeshList,
) -> Materials:
    """The materials of a tank.

    Args:
        shape: of the tank.
        roof: of the tank.
        values: what the calculation module says about it.
        bars: cutting lists of the bars.
        angles: cutting list of the angles.
        mesh: of the tank.

    Raises:
        OutOfRangeError: an amount outside what the calculation module stands for.
    """
    mortar = {
        "wall": values["wall_mortar_volume"],
        "floor": values["floor_mortar_volume"],
        "cove": COVE**2 / 2 * pi * shape.inside_diameter,
        "roof": roof_area(shape, roof, values["floor_area"]) * roof.thickness / 1000,
    }
    if shape.column_width:
        mortar["column"] = pi / 4 * shape.column_width**2 * shape.wall_height + roof.pad_side**2 * 0.2
    bought = BOOK.work_out(
        {
            "wall_mortar_volume": sum(mortar.values()),
            **{name: values[name] for name in ("mortar_waste", "dry_volume_factor", "sand_parts", "sand_bulking")},
            "water_cement_ratio": values["water_cement_ratio"],
        },
        ("cement_bags", "sand_volume_damp", "mixing_water"),
        check=False,  # the ranges are those of a wall alone
    )
    finish = int(whole_up((values["neat_cement_mass"] + values["wash_cement_mass"]) / float(BAG)))
    bags = round(bought["cement_bags"]) + round(values["concrete_cement_bags"]) + finish
    sand = bought["sand_volume_damp"] + values["concrete_sand_volume"]
    stone = values["stone_volume"] + values["concrete_stone_volume"]
    steel = sum(each.mass for each in bars) + (angles.mass if angles else 0.0)
    wire = max(1.0, float(whole_up(values["tying_wire_mass"])))
    concrete_water = values["concrete_cement_mass"] * CONCRETE_WATER
    masses = {
        "cement": bags * float(BAG), "sand": sand * float(SAND_DENSITY), "stone": stone * float(STONE_DENSITY),
        "steel": steel, "mesh": mesh.mass, "wire": wire, "lime": values["limewash_mass"],
    }  # fmt: skip
    return Materials(
        mortar, round(bought["cement_bags"]), round(values["concrete_cement_bags"]), finish, sand, stone,
        values["limewash_mass"], bought["mixing_water"] + concrete_water, values["curing_water"],
        shape.volume * 1000, steel, mesh.mass, wire, masses,
    )  # fmt: skip


CONCRETE_WATER = 0.55
"""Water over cement of the base, by mass."""
