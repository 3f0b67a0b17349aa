"""The drawings that a course can ask for by name."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from generator.figures import (
    angle_foot,
    base_layers,
    batching_row,
    cement_store,
    chlorine_into_water,
    cleaning_watch,
    cover_gauge,
    crew_and_days,
    curing_cover,
    cut_platform,
    fittings,
    frame_elevation,
    gauge_box,
    hoop_lap,
    hoop_zones,
    hose_level,
    leak_test,
    lift_together,
    manhole,
    mesh_lap,
    open_a_roll,
    pipe_through_wall,
    plastering_order,
    plumb_and_round,
    prop_removal,
    push_and_board,
    ring_plan,
    roof_column,
    roof_dome_props,
    roof_flat_props,
    sample_panel,
    sand_jar,
    setting_out,
    seven_hold_points,
    tank_plan,
    tank_section,
    tape_two_sides,
    trough,
    trough_yard,
    wall_build_up,
    wall_floor_joint,
    water_pushes,
    who_stands_below,
    work_in_threes,
)
from generator.figures.areas import SEED, Spot
from generator.figures.faults import FAULTS
from generator.figures.scene import Scene
from generator.words import Words


@dataclass(frozen=True, slots=True)
class FigureKind:
    """A drawing that is made anew for every tank.

    Args:
        needs: names of the givens and quantities that it is drawn from.
        draw: makes the scene from these numbers and a language.
        spot: for a drawing with a fault to find, what stands at its letters.
        of_hoops: which of its needs a drawing does without where the tank has no hoops: it then shows mesh alone.
    """

    needs: tuple[str, ...]
    draw: Callable[[Mapping[str, float], Words], Scene]
    spot: Spot | None = None
    of_hoops: tuple[str, ...] = ()


FIGURES: Mapping[str, FigureKind] = {
    "ring-plan": FigureKind(ring_plan.NEEDS, ring_plan.draw),
    "frame-elevation": FigureKind(frame_elevation.NEEDS, frame_elevation.draw),
    "hoop-lap": FigureKind(hoop_lap.NEEDS, hoop_lap.draw),
    "cut-platform": FigureKind(cut_platform.NEEDS, cut_platform.draw),
    "roof-flat-props": FigureKind(roof_flat_props.NEEDS, roof_flat_props.draw),
    "roof-dome-props": FigureKind(roof_dome_props.NEEDS, roof_dome_props.draw),
    "roof-column": FigureKind(roof_column.NEEDS, roof_column.draw),
    "tank-section": FigureKind(tank_section.NEEDS, tank_section.draw),
    "tank-plan": FigureKind(tank_plan.NEEDS, tank_plan.draw),
    "wall-build-up": FigureKind(wall_build_up.NEEDS, wall_build_up.draw),
    "hoop-zones": FigureKind(hoop_zones.NEEDS, hoop_zones.draw),
    "mesh-lap": FigureKind(mesh_lap.NEEDS, mesh_lap.draw),
    "angle-foot": FigureKind(angle_foot.NEEDS, angle_foot.draw),
    "wall-floor-joint": FigureKind(
        wall_floor_joint.NEEDS, wall_floor_joint.draw, of_hoops=("hoop_diameter", "hoop_spacing_closing")
    ),
    "base-layers": FigureKind(base_layers.NEEDS, base_layers.draw),
    **{key: FigureKind(spot.needs, spot.draw, spot) for key, spot in FAULTS.items()},
    "fittings": FigureKind(fittings.NEEDS, fittings.draw),
    "manhole": FigureKind(manhole.NEEDS, manhole.draw),
    "trough": FigureKind(trough.NEEDS, trough.draw),
    "gauge-box": FigureKind(gauge_box.NEEDS, gauge_box.draw),
    "cover-gauge": FigureKind(cover_gauge.NEEDS, cover_gauge.draw, of_hoops=("hoop_diameter",)),
    "batching-row": FigureKind(batching_row.NEEDS, batching_row.draw),
    "plastering-order": FigureKind(plastering_order.NEEDS, plastering_order.draw),
    "curing-cover": FigureKind(curing_cover.NEEDS, curing_cover.draw),
    "water-pushes": FigureKind(water_pushes.NEEDS, water_pushes.draw),
    "tape-two-sides": FigureKind(tape_two_sides.NEEDS, tape_two_sides.draw),
    "hose-level": FigureKind(hose_level.NEEDS, hose_level.draw),
    "setting-out": FigureKind(setting_out.NEEDS, setting_out.draw),
    "sand-jar": FigureKind(sand_jar.NEEDS, sand_jar.draw),
    "cement-store": FigureKind(cement_store.NEEDS, cement_store.draw),
    "lift-together": FigureKind(lift_together.NEEDS, lift_together.draw),
    "sample-panel": FigureKind(sample_panel.NEEDS, sample_panel.draw, of_hoops=("hoop_diameter",)),
    "pipe-through-wall": FigureKind(pipe_through_wall.NEEDS, pipe_through_wall.draw),
    "push-and-board": FigureKind(push_and_board.NEEDS, push_and_board.draw),
    "leak-test": FigureKind(leak_test.NEEDS, leak_test.draw),
    "chlorine-into-water": FigureKind(chlorine_into_water.NEEDS, chlorine_into_water.draw),
    "cleaning-watch": FigureKind(cleaning_watch.NEEDS, cleaning_watch.draw),
    "seven-hold-points": FigureKind(seven_hold_points.NEEDS, seven_hold_points.draw),
    "crew-and-days": FigureKind(crew_and_days.NEEDS, crew_and_days.draw),
    "who-stands-below": FigureKind(who_stands_below.NEEDS, who_stands_below.draw),
    "prop-removal": FigureKind(prop_removal.NEEDS, prop_removal.draw),
    "plumb-and-round": FigureKind(plumb_and_round.NEEDS, plumb_and_round.draw),
    "open-a-roll": FigureKind(open_a_roll.NEEDS, open_a_roll.draw),
    "trough-yard": FigureKind(trough_yard.NEEDS, trough_yard.draw),
    "work-in-threes": FigureKind(work_in_threes.NEEDS, work_in_threes.draw),
}
"""Drawings by the name that content uses."""


def hot_areas(seed: int = 0) -> Mapping[str, Mapping[str, str]]:
    """By drawing with a fault to find: for each letter the name of what stands there.

    Args:
        seed: the same as for `draw`.
    """
    return {key: kind.spot.letters(seed) for key, kind in FIGURES.items() if kind.spot}


def draw(key: str, values: Mapping[str, float], words: Words, seed: int = 0) -> Scene:
    """A drawing for one tank.

    Args:
        key: name of the drawing, one of `FIGURES`.
        values: numbers of the tank by name; at least those that the drawing needs.
        words: language of its texts.
        seed: where the fault is, in a drawing with a fault to find.

    Raises:
        KeyError: no drawing has this name, or a number is missing.
        MachineError: a text can't be shaped, printed or placed.
    """
    return FIGURES[key].draw({**values, SEED: seed} if seed else values, words)
