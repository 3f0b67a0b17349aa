"""The ready reckoner: tanks from 1 to 50 m3 planned beforehand, one a row.

Bars stand in it only for tanks that a trained crew builds. A larger one has its sizes, bags and tonnes, and the words
that an engineer signs first: whoever reads bars off a wall buys them.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache

from pydantic import BaseModel, ConfigDict

from generator.calculations.bands import Band
from generator.plans.plan import Plan, make_plan
from generator.plans.sections import CAUTIONS
from generator.plans.shop import Angle, Bar, Mesh
from generator.plans.tell import Section, Tell
from generator.plans.wish import Wish
from generator.words import Words

VILLAGE_SIZES = tuple(range(1, 13))
LARGER_SIZES = (15, 20, 25, 30, 40, 50)
"""Water in the tank [m3]."""
_STRICTER = ("people_below", "strong_earthquake", "snow_or_frost", "steep_platform")
_NEVER = ("fill", "peat", "black_cotton", "shrinkable_clay", "flood_way")
_SAME = 1e-6


class _Frozen(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)


class HoopRun(_Frozen):
    """Hoops that stand equally far apart.

    Args:
        count: hoops; the one at the foot of the wall counts in the lowest run.
        spacing: from hoop to hoop [m].
    """

    count: int
    spacing: float


class BarSchedule(_Frozen):
    """Bars of a tank that a trained crew builds.

    Args:
        hoop: bar of the hoops; none where mesh alone bears.
        runs: hoops from the foot of the wall up.
        lap: of a hoop's ends, in bar thicknesses.
        upright: bar of the uprights; none where mesh alone bears.
        uprights: how many.
        angle: none where the frame needs none.
        angles: how many.
        starter: bar of the starters.
        starters: how many.
        starter_spacing: widest distance between them [m].
        mesh: on the water side.
        mesh_layers: on each face, where mesh alone bears; else 0.
    """

    hoop: Bar | None
    runs: tuple[HoopRun, ...]
    lap: float
    upright: Bar | None
    uprights: int
    angle: Angle | None
    angles: int
    starter: Bar
    starters: int
    starter_spacing: float
    mesh: Mesh
    mesh_layers: int


class ReckonerRow(_Frozen):
    """One tank.

    Args:
        cubic_metres: of water that it must hold at least.
        inside_diameter: wet face to wet face [m].
        outside_diameter: of the finished wall [m].
        water_depth: [m].
        wall_height: [m].
        wall_thickness: [mm].
        bags: of cement.
        tonnes: all that goes up the hill, water left out [t].
        bars: none where an engineer signs first.
    """

    cubic_metres: int
    inside_diameter: float
    outside_diameter: float
    water_depth: float
    wall_height: float
    wall_thickness: float
    bags: int
    tonnes: float
    bars: BarSchedule | None


class Reckoner(_Frozen):
    """All the rows, the smallest tank first."""

    rows: tuple[ReckonerRow, ...]

    @property
    def village(self) -> tuple[ReckonerRow, ...]:
        """Tanks that a trained crew builds."""
        return tuple(row for row in self.rows if row.bars is not None)

    @property
    def larger(self) -> tuple[ReckonerRow, ...]:
        """Tanks that an engineer signs first."""
        return tuple(row for row in self.rows if row.bars is None)


@cache
def make_reckoner() -> Reckoner:
    """The reckoner of tanks with the usual shop's steel, on firm and level ground with nobody below.

    Raises:
        ValueError: a size that this course can't plan (a fault of the list of sizes).
    """
    rows = []
    for size in (*VILLAGE_SIZES, *LARGER_SIZES):
        plan = make_plan(Wish(1000.0 * size))
        if not isinstance(plan, Plan):
            raise ValueError(f"a tank of {size} m3 can't be planned: {plan.reason}")
        rows.append(_row(size, plan))
    return Reckoner(rows=tuple(rows))


def _row(size: int, plan: Plan) -> ReckonerRow:
    shape = plan.shape
    return ReckonerRow(
        cubic_metres=size,
        inside_diameter=shape.inside_diameter,
        outside_diameter=plan.values["outside_diameter"],
        water_depth=shape.water_depth,
        wall_height=shape.wall_height,
        wall_thickness=plan.wall.thickness,
        bags=plan.materials.bags,
        tonnes=plan.materials.tonnes,
        bars=_bars(plan) if plan.judgement.band is Band.VILLAGE else None,
    )


def _bars(plan: Plan) -> BarSchedule:
    wall, values, alone = plan.wall, plan.values, plan.wall.hoops is None
    return BarSchedule(
        hoop=None if wall.hoops is None else wall.hoops.bar,
        runs=_runs(plan),
        lap=values["lap_diameters"],
        upright=wall.upright,
        uprights=0 if alone else round(values["bar_count"]),
        angle=wall.angle,
        angles=0 if wall.angle is None else round(values["angle_count"]),
        starter=plan.footing.bar,
        starters=round(values["starter_count"]),
        starter_spacing=plan.footing.spacing,
        mesh=wall.inside.mesh,
        mesh_layers=wall.inside.layers if alone else 0,
    )


def _runs(plan: Plan) -> tuple[HoopRun, ...]:
    """Zones with the same spacing as one run; the hoop at the foot belongs to the lowest."""
    runs: list[HoopRun] = []
    for zone in () if plan.wall.hoops is None else plan.wall.hoops.zones:
        if runs and abs(runs[-1].spacing - zone.spacing) < _SAME:
            runs[-1] = HoopRun(count=runs[-1].count + zone.gaps, spacing=zone.spacing)
        else:
            runs.append(HoopRun(count=zone.gaps + (not runs), spacing=zone.spacing))
    return tuple(runs)


def reckoner_sections(reckoner: Reckoner, words: Words) -> tuple[Section, ...]:
    """The reckoner told in sections: how it is read, where it does not hold, the tables, the cautions.

    The first line of the first one says that this is no code, and who decides.

    Args:
        reckoner: from `make_reckoner`.
        words: of the reader's language.
    """
    tell = Tell(words)
    return (
        _use(words),
        Section("stricter", words.say("plan.reckoner.stricter"), _reasons(_STRICTER, words)),
        Section("never", words.say("plan.reckoner.never"), _reasons(_NEVER, words)),
        _sizes("village", words.say("plan.reckoner.village"), (), reckoner.village, tell),
        _schedule(reckoner.village, tell),
        _sizes(
            "larger", words.say("plan.reckoner.larger"), (words.say("plan.reckoner.no_bars"),), reckoner.larger, tell
        ),
        Section(
            "cautions",
            words.say("plan.section.cautions"),
            tuple(words.say_one_of("plan.caution", name) for name in CAUTIONS),
        ),
    )


def _use(words: Words) -> Section:
    lines = (
        words.say("band.policy"), words.say("plan.reckoner.assumed"), words.say("plan.reckoner.next_row"),
        words.say("plan.three_diameters"), words.say("plan.reckoner.own_plan"),
    )  # fmt: skip
    return Section("use", words.say("plan.reckoner.use"), lines)


def _reasons(names: Sequence[str], words: Words) -> tuple[str, ...]:
    return tuple(words.say_one_of("band.reason", name) for name in names)


def _sizes(key: str, heading: str, lines: tuple[str, ...], rows: Sequence[ReckonerRow], tell: Tell) -> Section:
    words = tell.words
    head = (
        words.say("plan.reckoner.head.water"), words.say("plan.reckoner.head.inside"),
        words.say("plan.reckoner.head.depth"), words.say("plan.reckoner.head.height"),
        words.say("plan.reckoner.head.thickness"), words.say("plan.reckoner.head.outside"),
        words.say("plan.count.bags"), words.say("plan.count.tonnes"),
    )  # fmt: skip
    cells = tuple(
        (
            tell.sized(row.cubic_metres, 0, "m**3"), tell.sized(row.inside_diameter, 2, "m"),
            tell.sized(row.water_depth, 2, "m"), tell.sized(row.wall_height, 2, "m"),
            tell.sized(row.wall_thickness, 0, "mm"), tell.sized(row.outside_diameter, 2, "m"), tell.number(row.bags),
            words.say("plan.tonnes", tonnes=tell.number(row.tonnes, 1)),
        )
        for row in rows
    )  # fmt: skip
    return Section(key, heading, lines, head, cells)


def _schedule(rows: Sequence[ReckonerRow], tell: Tell) -> Section:
    words = tell.words
    head = (
        words.say("plan.reckoner.head.water"), words.say("plan.size.angle"), words.say("plan.size.hoop_bar"),
        words.say("plan.reckoner.head.runs"), words.say("plan.count.uprights"), words.say("plan.size.starters"),
    )  # fmt: skip
    bars = [(row, row.bars) for row in rows if row.bars is not None]
    cells = tuple((tell.sized(row.cubic_metres, 0, "m**3"), *_bar_cells(found, tell)) for row, found in bars)
    laps = dict.fromkeys(found.lap for _, found in bars)
    lines = (
        words.say("plan.reckoner.runs_note"),
        *(words.say("plan.reckoner.lap", lap=tell.number(lap)) for lap in laps),
        words.say("plan.why_staggered"),
    )
    return Section("schedule", words.say("plan.reckoner.schedule"), lines, head, cells)


def _bar_cells(bars: BarSchedule, tell: Tell) -> tuple[str, ...]:
    words, none = tell.words, "–"

    def of(count: int, what: str) -> str:
        return words.say("plan.reckoner.of", count=tell.number(count), what=what)

    runs = "; ".join(
        words.say("plan.reckoner.run", count=tell.number(run.count), spacing=tell.sized(run.spacing, 3, "m")).replace(
            " ", "\u00a0"
        )
        for run in bars.runs
    )
    if bars.mesh_layers:
        runs = words.say("plan.reckoner.mesh_alone", count=bars.mesh_layers, mesh=tell.mesh(bars.mesh))
    return (
        none if bars.angle is None else of(bars.angles, tell.angle(bars.angle)),
        none if bars.hoop is None else tell.bar(bars.hoop),
        runs,
        none if bars.upright is None else of(bars.uprights, tell.bar(bars.upright)),
        f"{of(bars.starters, tell.bar(bars.starter))}, {tell.sized(bars.starter_spacing, 2, 'm')}",
    )
