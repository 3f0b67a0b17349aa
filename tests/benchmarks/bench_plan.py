"""A whole plan against its bare core, and the graph over a hundred thousand tanks against numpy written by hand.

A plan's core is one walk of the formulas over its own givens, and the search for its cutting lists. Everything else
that a plan does (choosing steel, checks, mesh, people, days, smaller tanks, the text) is ours. Each run starts with
nothing remembered from an earlier one.
"""

from __future__ import annotations

import time
from collections.abc import Callable
from functools import cache
from pathlib import Path

import numpy as np

from generator.calculations import BOOK, ring_levels
from generator.calculations.cutting import Piece, cutting_list
from generator.curriculum import load
from generator.formula import Array
from generator.plans import Plan, Wish, as_text, hoops, make_plan, wall
from generator.plans.given import tank_givens
from generator.words import Words
from tests.benchmarks import Result, compare

TANKS = {"a village": 9000.0, "an engineer's": 20_000.0}
"""Litres: with angles and hoops and no smaller offer; with a dome, an engineer and offers of smaller tanks."""
PLAN_LIMIT, GRAPH_LIMIT = 3.0, 1.5
COUNT = 100_000
SEED = 22
WANTED = (
    "tank_litres", "hoop_mass", "cement_bags", "sand_volume_damp", "mixing_water", "base_concrete_volume",
    "shape_number", "ring_tension_free",
)  # fmt: skip
"""What is asked of each tank; two dozen quantities stand between these and the givens."""
_REMEMBERING = (hoops._pulls, wall._thickness, wall._bending, ring_levels._whole_wall)


@cache
def words() -> Words:
    """English, as the course is shipped."""
    loaded = load(Path(__file__).parents[2])
    assert loaded.content is not None, loaded.problems
    return loaded.content.words["en"]


def planned(litres: float) -> Plan:
    """A tank that can be planned."""
    plan = make_plan(Wish(litres))
    assert isinstance(plan, Plan), f"{litres:g} L can't be planned"
    return plan


def forget() -> None:
    """Empties what plans remember."""
    for remembering in _REMEMBERING:
        remembering.cache_clear()


def ours(litres: float) -> str:
    """A plan and its text."""
    forget()
    return as_text(planned(litres), words())


def core_of(plan: Plan) -> Callable[[], tuple[int, ...]]:
    """The bare core of a plan: gives the bars of each cutting list."""
    seeds = tank_givens(plan.wish, plan.shape, plan.wall, plan.footing, plan.roof)
    lists = [
        ([Piece(piece.name, piece.length, piece.count) for piece in each.pieces], each.bar.length) for each in plan.bars
    ]
    if plan.angles is not None:
        lists.append(([Piece("angle", plan.angles.length, plan.angles.count)], plan.angles.angle.length))

    def core() -> tuple[int, ...]:
        forget()
        BOOK.work_out(seeds, None, check=False)
        return tuple(cutting_list(pieces, length).bars for pieces, length in lists)

    return core


@cache
def tanks(count: int) -> dict[str, Array]:
    """Givens of many tanks, anywhere in their ranges."""
    generator = np.random.default_rng(SEED)
    names = [name for name in BOOK.ancestors(WANTED) if name in BOOK.givens]
    return {name: generator.uniform(BOOK.givens[name].low, BOOK.givens[name].high, count) for name in names}


def by_arrays(givens: dict[str, Array]) -> dict[str, Array]:
    """The formulas' own way."""
    return BOOK.arrays(givens, WANTED)


def by_hand(givens: dict[str, Array]) -> dict[str, Array]:
    """The same quantities, typed in numpy by someone who knows the formulas."""
    edge = 1e-9
    diameter, height = givens["inside_diameter"], givens["wall_height"]
    bar, hoop = givens["bar_diameter"], givens["hoop_diameter"]
    inside_mesh, outside_mesh, cover = (
        givens["inside_mesh_thickness"], givens["outside_mesh_thickness"], givens["mesh_cover"],
    )  # fmt: skip
    radius = diameter / 2
    floor = np.pi * radius**2
    depth = height - givens["overflow_drop"]
    volume = floor * depth
    litres = volume * 1000
    pull = 9.81 * np.maximum(0, depth - givens["level_height"]) * radius
    frame = diameter + (2 * (cover + inside_mesh) + bar) / 1000
    circle = frame + (bar + hoop) / 1000
    lap = givens["lap_diameters"] * hoop / 1000
    laps = np.ceil(np.pi * circle / (givens["stock_length"] - lap) - edge)
    steel = np.pi * circle + laps * lap
    count = np.ceil(height / givens["hoop_spacing"] - edge) + 1
    hoop_mass = count * steel * (hoop**2 / 162)
    build_up = 2 * cover + inside_mesh + bar + hoop + outside_mesh
    at_lap = build_up + np.maximum(np.maximum(hoop, inside_mesh), outside_mesh)
    at_angle = build_up - bar + givens["angle_leg"]
    thickness = np.ceil(np.maximum(at_lap, at_angle) / 5 - edge) * 5
    shape = depth**2 / (diameter * thickness / 1000)
    base = diameter + 2 * thickness / 1000 + 2 * givens["base_projection"]
    concrete = np.pi / 4 * base**2 * givens["base_concrete_thickness"] / 1000
    metres = thickness / 1000
    mortar = np.pi * (diameter + metres) * metres * height
    dry = mortar * (1 + givens["mortar_waste"] / 100) * givens["dry_volume_factor"]
    cement = dry / (1 + givens["sand_parts"])
    mass = cement * 1440
    bags = np.ceil(mass / 50 - edge)
    damp = cement * givens["sand_parts"] * (1 + givens["sand_bulking"] / 100)
    water = mass * givens["water_cement_ratio"] / 1
    found = (litres, hoop_mass, bags, damp, water, concrete, shape, pull)
    return dict(zip(WANTED, found, strict=True))


def results(runs: int = 15) -> list[Result]:
    """The plans, then the graph."""
    found = [
        compare(
            f"plan and text of {name} tank of {litres:g} L against its formulas and its cutting lists alone",
            lambda litres=litres: ours(litres), core_of(planned(litres)), PLAN_LIMIT, runs, time.process_time,
        )
        for name, litres in TANKS.items()
    ]  # type: ignore[misc]  # fmt: skip
    givens = tanks(COUNT)
    name = f"{len(BOOK.ancestors(WANTED)) - len(givens)} quantities of {COUNT:,} tanks against numpy by hand"
    found.append(
        compare(name, lambda: by_arrays(givens), lambda: by_hand(givens), GRAPH_LIMIT, runs, time.process_time)
    )
    return found


if __name__ == "__main__":
    for result in results():
        print(result)  # noqa: T201 (this is what the benchmark is for)
