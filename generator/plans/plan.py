"""From a wish to a tank that a builder can build, to one that an engineer signs first, or to a no with its reason."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from generator.calculations import BOOK
from generator.calculations.bands import ENGINEER_VOLUME, Band, Judgement, judge
from generator.calculations.bill import Bill, Comparison
from generator.formula import OutOfRangeError, whole_up
from generator.plans.checks import Check, all_checks
from generator.plans.footing import Footing, footing_for
from generator.plans.given import OVERFLOW_DROP, refuse_outside, tank_givens
from generator.plans.hoops import Hoops
from generator.plans.materials import Materials, materials_for, roof_area
from generator.plans.mesh_list import MeshList, mesh_for
from generator.plans.money import bill_for, compared
from generator.plans.refused import NoPlanError, from_calculation
from generator.plans.roofing import COLUMN_WIDTH, Roof, RoofKind, roof_for, usual_roof
from generator.plans.shape import LEAST_LITRES, Shape, shape_for
from generator.plans.steel_list import AngleList, BarList, SteelPiece, angle_list, bar_lists, pieces_of
from generator.plans.wall import Wall, can_be_walled, wall_for
from generator.plans.wish import Wish
from generator.plans.work import Work, work_for

OFFER_STEP = 100.0
MOST_SMALLER = 3


@dataclass(frozen=True, slots=True)
class Offer:
    """Several smaller tanks in the place of one.

    Args:
        tanks: how many.
        litres: of each.
        band: of each, on the same site.
    """

    tanks: int
    litres: float
    band: Band


@dataclass(frozen=True, slots=True)
class Plan:
    """A whole tank.

    Args:
        wish: what was asked for.
        judgement: the band that holds, and why. In band 2 an engineer signs before anything is bought.
        shape: room for the water.
        wall: mesh, uprights, hoops and thickness.
        judged: hoops that someone wished, where they were not good enough.
        footing: what ties the wall to the base.
        roof: of the tank.
        values: everything that the calculation module says about the tank, by name.
        checks: with demand, capacity, ratio, source and status.
        pieces: all pieces of bar.
        bars: cutting lists of the bars.
        angles: cutting list of the angles.
        mesh: of wall, floor, base and roof.
        materials: to buy and to bring.
        work: people, days, loads.
        bill: on the user's own prices; none without prices.
        comparison: with the tanks that the price list names.
        smaller: village tanks in the place of one that an engineer must sign.
    """

    wish: Wish
    judgement: Judgement
    shape: Shape
    wall: Wall
    judged: Hoops | None
    footing: Footing
    roof: Roof
    values: Mapping[str, float]
    checks: tuple[Check, ...]
    pieces: tuple[SteelPiece, ...]
    bars: tuple[BarList, ...]
    angles: AngleList | None
    mesh: MeshList
    materials: Materials
    work: Work
    bill: Bill | None
    comparison: tuple[Comparison, ...]
    smaller: tuple[Offer, ...]

    @property
    def warnings(self) -> tuple[Check, ...]:
        """Checks that are not met and do not decide."""
        return tuple(check for check in self.checks if not check.good)


@dataclass(frozen=True, slots=True)
class Refusal:
    """No plan.

    Args:
        wish: what was asked for.
        reason: why, in words of any language.
        judgement: the band, where it came so far.
        failed: checks that were not met.
        offers: smaller tanks that this course plans on the same site.
    """

    wish: Wish
    reason: NoPlanError
    judgement: Judgement | None = None
    failed: tuple[Check, ...] = ()
    offers: tuple[Offer, ...] = ()


def make_plan(wish: Wish) -> Plan | Refusal:
    """Plan a tank.

    Args:
        wish: what is wanted.

    Returns:
        A plan whose deciding checks are all met, or a refusal with its reason and, where there is one, a smaller offer.

    Example:
        >>> plan = make_plan(Wish(4000))
        >>> isinstance(plan, Plan) and plan.judgement.band.name
        'VILLAGE'
    """
    try:
        return _plan(wish)
    except _NoBuildError as no:
        offers = () if no.judgement is not None and no.judgement.refused else _offers(wish, Band.ENGINEER)
        return Refusal(wish, no.reason, no.judgement, no.failed, offers)
    except OutOfRangeError as error:
        return Refusal(wish, from_calculation(error), offers=_offers(wish, Band.ENGINEER))


class _NoBuildError(Exception):
    def __init__(self, reason: NoPlanError, judgement: Judgement | None, failed: tuple[Check, ...] = ()) -> None:
        super().__init__(str(reason))
        self.reason = reason
        self.judgement = judgement
        self.failed = failed


def _plan(wish: Wish) -> Plan:
    judgement = _ground(wish)
    if judgement is not None:
        raise _NoBuildError(NoPlanError("refused"), judgement)
    if wish.litres > float(ENGINEER_VOLUME) * 1000:
        raise NoPlanError("too_large", litres=f"{wish.litres:g}", most=f"{float(ENGINEER_VOLUME) * 1000:g}")
    kind, shape = _shape(wish)
    wall, judged = wall_for(shape, wish.shop, wish.wished_hoops, wish.place)
    if wish.width_limit is not None and shape.inside_diameter + wall.thickness / 500 > wish.width_limit + 1e-9:
        kind, shape = _shape(wish, wall.thickness)
        wall, judged = wall_for(shape, wish.shop, wish.wished_hoops, wish.place)
    judgement = _judge(wish, shape, kind, mesh_only=wall.hoops is None)
    if judgement.band is Band.NO_BUILD_SHEET:
        raise _NoBuildError(NoPlanError("refused" if judgement.refused else "no_build_sheet"), judgement)
    footing = footing_for(shape, wall, wish.shop)
    roof = roof_for(shape, wish.shop, kind)
    seeds = tank_givens(wish, shape, wall, footing, roof)
    values = BOOK.work_out(seeds, None, check=False)
    refuse_outside(values, _fixed(seeds))
    checks = all_checks(shape, wall, footing, roof, values, wish.site)
    failed = tuple(check for check in checks if check.decides and not check.good)
    if failed:
        raise _NoBuildError(NoPlanError("check_failed"), judgement, failed)
    return _built(wish, judgement, shape, wall, judged, footing, roof, values, checks)


_PLANNED = ("tank_volume", "tank_litres", "net_tank_volume", "usable_volume")
"""Water of a tank that is rounded up to the tape: its band was judged by what was asked for."""


def _fixed(seeds: Mapping[str, float]) -> dict[str, float]:
    return dict.fromkeys((*_PLANNED, *(name for name in seeds if name in BOOK.quantities)), 0.0)


def _ground(wish: Wish) -> Judgement | None:
    """Ground on which nothing is built, whatever the tank."""
    if not wish.site.ground:
        return None
    return judge(volume=1, water_depth=1, inside_radius=0.5, ground=wish.site.ground)


def _shape(wish: Wish, wall_thickness: float = 40.0) -> tuple[RoofKind, Shape]:
    """Shape and kind of roof; a column takes room from the water."""
    place = wish.place
    drop = place.get("overflow_drop", OVERFLOW_DROP)
    if "inside_diameter" in place and "wall_height" in place:
        diameter, depth = place["inside_diameter"], place["wall_height"] - drop
        kind = wish.roof or usual_roof(diameter)
        column = COLUMN_WIDTH if kind is RoofKind.COLUMN else 0.0
        return kind, Shape(diameter, depth, drop, column, wish.litres / 1000)
    column = COLUMN_WIDTH if wish.roof is RoofKind.COLUMN else 0.0
    widest = None if wish.width_limit is None else wish.width_limit - wall_thickness / 500
    shape = shape_for(
        wish.litres / 1000, drop, column_width=column, most_diameter=widest, most_height=wish.height_limit
    )
    return wish.roof or usual_roof(shape.inside_diameter), shape


def _judge(wish: Wish, shape: Shape, kind: RoofKind, *, mesh_only: bool = False) -> Judgement:
    flat = shape.inside_diameter if kind in (RoofKind.FLAT, RoofKind.RIBS) else 0.0
    return judge(
        volume=shape.counted,
        water_depth=shape.water_depth,
        inside_radius=shape.inside_diameter / 2,
        flat_span=flat,
        mesh_only=mesh_only,
        conditions=wish.site.conditions,
        ground=wish.site.ground,
    )


def _built(
    wish: Wish,
    judgement: Judgement,
    shape: Shape,
    wall: Wall,
    judged: Hoops | None,
    footing: Footing,
    roof: Roof,
    values: Mapping[str, float],
    checks: tuple[Check, ...],
) -> Plan:
    """Everything that follows once a tank is good: lists, people, days, money."""
    pieces = pieces_of(shape, wall, footing, roof, values)
    bars = bar_lists(pieces)
    angles = None
    if wall.angle is not None:
        count = round(values["angle_count"])
        angles = angle_list(wall.angle, values["angle_length"], count, values["angle_mass_per_metre"])
    mesh = mesh_for(wall, values, roof_area(shape, roof, values["floor_area"]))
    materials = materials_for(shape, roof, values, bars, angles, mesh)
    work = work_for(shape, roof, values, materials, wish.crew)
    bill: Bill | None = None
    comparison: tuple[Comparison, ...] = ()
    if wish.prices is not None:
        bill = bill_for(materials, bars, angles, mesh, work, values, wish.prices)
        comparison = compared(bill, wish.prices, shape.volume)
    smaller = _offers(wish, Band.VILLAGE) if judgement.band is Band.ENGINEER else ()
    return Plan(
        wish, judgement, shape, wall, judged, footing, roof, values, checks, pieces, bars, angles, mesh, materials,
        work, bill, comparison, smaller,
    )  # fmt: skip


def _offers(wish: Wish, worst: Band) -> tuple[Offer, ...]:
    """Two or three smaller tanks on the same site, each at most so strict; the fewest tanks first."""
    found = []
    for tanks in range(2, MOST_SMALLER + 1):
        litres = float(whole_up(wish.litres / tanks / OFFER_STEP)) * OFFER_STEP
        if litres < LEAST_LITRES:
            continue
        smaller = replace(wish, litres=litres, place={}, wished_hoops=None)
        try:
            kind, shape = _shape(smaller)
            judgement = _judge(smaller, shape, kind)
            if judgement.band > worst or not can_be_walled(shape, wish.shop):
                continue
            roof_for(shape, wish.shop, kind)
        except OutOfRangeError:
            continue
        found.append(Offer(tanks, litres, judgement.band))
    return tuple(found)
