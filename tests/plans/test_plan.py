"""Whole plans: every size gives a plan, an engineer's plan or a refusal; what is recommended passes; sums agree."""

from collections import defaultdict
from dataclasses import fields, is_dataclass
from math import isfinite
from typing import Any

import pytest

from generator.calculations.bands import Band, RefusedGround
from generator.calculations.calendar import Slot
from generator.plans import Bar, Plan, Refusal, RoofKind, Shop, Site, Wish, Zone, make_plan
from generator.plans.shop import USUAL_SHOP, Mesh


def planned(wish: Wish) -> Plan:
    found = make_plan(wish)
    assert isinstance(found, Plan), found
    return found


def refused(wish: Wish) -> Refusal:
    found = make_plan(wish)
    assert isinstance(found, Refusal)
    return found


def numbers(value: Any) -> list[float]:
    """All the numbers in a plan."""
    if isinstance(value, bool):
        return []
    if isinstance(value, int | float):
        return [float(value)]
    if isinstance(value, dict):
        return [number for each in value.values() for number in numbers(each)]
    if isinstance(value, tuple | list):
        return [number for each in value for number in numbers(each)]
    if is_dataclass(value):
        return [number for each in fields(value) for number in numbers(getattr(value, each.name))]
    return []


@pytest.fixture(scope="module")
def every_size() -> dict[int, Plan | Refusal]:
    """Every size from 500 L to 100 m3 by 100 L."""
    return {litres: make_plan(Wish(float(litres))) for litres in range(500, 100_001, 100)}


def test_every_size_is_planned_signed_or_refused_with_a_smaller_offer(every_size: dict[int, Plan | Refusal]) -> None:
    for litres, found in every_size.items():
        if isinstance(found, Plan):
            assert found.judgement.band is (Band.VILLAGE if litres <= 12_000 else Band.ENGINEER)
            assert found.shape.volume * 1000 >= litres - 1e-6
        else:
            assert litres > 50_000
            assert found.reason.key == "too_large"
            assert found.offers
            for offer in found.offers:
                assert offer.tanks * offer.litres >= litres
                assert offer.band <= Band.ENGINEER


def test_no_number_of_any_plan_is_negative_or_none_at_all(every_size: dict[int, Plan | Refusal]) -> None:
    for litres, found in every_size.items():
        if isinstance(found, Plan):
            for number in numbers(found):
                assert isfinite(number), litres
                assert number >= -1e-9, litres


def test_every_check_of_a_recommended_tank_is_met(every_size: dict[int, Plan | Refusal]) -> None:
    for litres, found in every_size.items():
        if isinstance(found, Plan):
            assert all(check.good for check in found.checks if check.decides), litres
            if found.judgement.band is Band.VILLAGE:
                assert found.warnings == (), litres


def test_a_larger_tank_of_the_same_kind_never_needs_less(every_size: dict[int, Plan | Refusal]) -> None:
    before: dict[Any, tuple[int, dict[str, float]]] = {}
    for litres, found in every_size.items():
        if not isinstance(found, Plan):
            continue
        kind = (found.wall.hoops is None, found.wall.angle is None, found.roof.kind)
        now = {
            "steel in the tank": sum(piece.length * piece.count * piece.bar.diameter**2 for piece in found.pieces),
            "steel bought": found.materials.steel,
            "bags": found.materials.bags,
            "mesh bought": found.materials.mesh,
            "tonnes": found.materials.tonnes,
        }
        if kind in before:
            smaller, least = before[kind]
            for name, amount in now.items():
                assert amount >= least[name] - 1e-6, (name, smaller, litres)
        before[kind] = litres, now


def test_steel_bought_covers_every_piece(every_size: dict[int, Plan | Refusal]) -> None:
    for litres in range(500, 50_001, 2500):
        found = every_size[litres]
        assert isinstance(found, Plan)
        for each in found.bars:
            cut: dict[str, int] = defaultdict(int)
            for way in each.cuts.cuts:
                used = sum(count * piece.length for count, piece in zip(way.pieces, each.pieces, strict=True))
                assert used <= each.bar.length + 1e-6
                for count, piece in zip(way.pieces, each.pieces, strict=True):
                    cut[piece.name] += count * way.bars
            assert cut == {piece.name: piece.count for piece in each.pieces}


# ----------------------------------------------------------------------------------------- tanks worked by hand

WORKED = (
    # common practice, no source: tanks worked by hand. Diameter, wall, drop, hoop and its length, hoops, mesh, bags
    (2.90, 1.70, 0.15, 6, 9.55, 13, 15.7, 16, 7),
    (4.20, 2.02, 0.20, 8, 14.17, 15, 27.0, 36, 13),
    (5.70, 2.17, 0.20, 8, 18.90, 16, 39.3, 60, 22),
)


@pytest.mark.parametrize(("across", "wall", "drop", "hoop", "length", "count", "mesh", "mortar", "base"), WORKED)
def test_tanks_worked_by_hand_come_out_alike(
    across: float, wall: float, drop: float, hoop: float, length: float, count: int, mesh: float, mortar: int, base: int
) -> None:
    place = {
        "inside_diameter": across, "wall_height": wall, "overflow_drop": drop, "lap_diameters": 50, "stock_length": 12,
        "dry_volume_factor": 1.3, "sand_parts": 2.5, "mortar_waste": 10,
    }  # fmt: skip
    litres = 785.4 * across**2 * (wall - drop)
    wished = (Bar(diameter=hoop), 0.15)
    found = planned(Wish(min(litres, 50_000.0), place=place, wished_hoops=wished))
    judged = found.judged or found.wall.hoops
    assert judged is not None
    assert judged.count == pytest.approx(count, abs=1)
    circle = found.values["frame_diameter"] + 0.014
    assert circle * 3.1416 + 50 * hoop / 1000 * (1 if length < 12 else 2) == pytest.approx(length, rel=0.03)
    assert found.values["mesh_wall_area"] == pytest.approx(mesh, rel=0.03)
    assert found.materials.mortar_bags == pytest.approx(mortar, rel=0.25)  # the roof of the hand's sum is flat
    assert found.materials.concrete_bags == pytest.approx(base, rel=0.25)


@pytest.mark.parametrize("litres", [25_000, 50_000])
def test_thin_hoops_far_apart_are_bettered_and_the_plan_says_why(litres: int) -> None:
    found = planned(Wish(float(litres), wished_hoops=(Bar(diameter=6), 0.15)))
    assert found.judged is not None
    assert max(found.judged.zones[0].stress, found.judged.zones[0].stress_free) > found.judged.allowed
    assert found.wall.hoops is not None
    assert all(zone.stress_free <= found.wall.hoops.allowed for zone in found.wall.hoops.zones)


def test_wished_hoops_that_bear_are_kept() -> None:
    found = planned(Wish(4000.0, wished_hoops=(Bar(diameter=8), 0.12)))
    assert found.judged is None
    assert found.wall.hoops is not None
    assert found.wall.hoops.bar.diameter == 8
    assert len(found.wall.hoops.zones) == 1


# ------------------------------------------------------------------------------------------------- the site


def test_each_condition_makes_a_tank_one_band_stricter() -> None:
    for site in (
        Site(people_below=True),
        Site(slope=18),
        Site(zones=(Zone.STRONG_EARTHQUAKE,)),
        Site(zones=(Zone.SNOW_OR_FROST,)),
    ):
        assert planned(Wish(6000.0, site)).judgement.band is Band.ENGINEER
        assert refused(Wish(20_000.0, site)).reason.key == "no_build_sheet"
    assert refused(Wish(6000.0, Site(people_below=True, slope=18))).reason.key == "no_build_sheet"


def test_a_cut_up_to_fifteen_degrees_stays_a_village_build() -> None:
    found = planned(Wish(6000.0, Site(slope=15)))
    assert found.judgement.band is Band.VILLAGE
    assert found.values["cut_height"] > 0.9
    assert found.work.sizes.excavation > planned(Wish(6000.0)).work.sizes.excavation + 5


@pytest.mark.parametrize("ground", list(RefusedGround))
def test_bad_ground_is_refused_and_no_smaller_tank_is_offered(ground: RefusedGround) -> None:
    found = refused(Wish(2000.0, Site(ground=(ground,))))
    assert found.offers == ()
    assert found.judgement is not None
    assert found.judgement.reasons == (ground.value,)


def test_soil_that_is_named_is_checked_and_soft_soil_shows_it() -> None:
    checked = {check.name: check for check in planned(Wish(9000.0, Site(soil="very_soft_clay"))).checks}
    assert checked["ground_pressure"].decides
    assert 0.2 < checked["ground_pressure"].ratio < 0.5
    assert "ground_pressure" not in {check.name for check in planned(Wish(9000.0)).checks}


def test_water_in_the_ground_is_checked_against_floating() -> None:
    found = planned(Wish(9000.0, Site(ground_water=0.3)))
    assert "uplift_safety" in {check.name for check in found.checks}


# ------------------------------------------------------------------------------------------------- the shop


def test_a_shop_with_only_thin_bars_gets_closer_hoops_or_an_honest_no() -> None:
    thin = USUAL_SHOP.model_copy(update={"bars": (Bar(diameter=6),)})
    found = planned(Wish(20_000.0, shop=thin))
    assert found.wall.hoops is not None
    assert found.wall.hoops.zones[0].spacing < 0.1
    wire = USUAL_SHOP.model_copy(update={"bars": (Bar(diameter=4),)})
    assert refused(Wish(20_000.0, shop=wire)).reason.key == "no_bar"


def test_a_shop_without_mesh_angles_or_bars_gets_a_no_that_names_it() -> None:
    for part, key in (("meshes", "no_mesh"), ("angles", "no_angle"), ("bars", "no_bar")):
        shop = USUAL_SHOP.model_copy(update={part: ()})
        assert refused(Wish(9000.0, shop=shop)).reason.key == key
    assert isinstance(make_plan(Wish(9000.0, shop=Shop())), Refusal)


def test_netting_alone_never_bears_a_tank_without_hoops() -> None:
    """What six-sided netting bears is known from memory only, and memory does not decide."""
    netting = Mesh(kind="hexagonal", wire=0.8, opening=12, thickness=4, width=0.9, length=30)
    found = planned(Wish(1500.0, shop=USUAL_SHOP.model_copy(update={"meshes": (netting,)})))
    assert found.wall.hoops is not None
    assert planned(Wish(1500.0)).wall.hoops is None


def test_short_bars_make_more_pieces_and_every_joint_has_its_lap() -> None:
    short, long = planned(Wish(9000.0, shop=USUAL_SHOP.cut_to(6))), planned(Wish(9000.0))
    hoop = {piece.name: piece for piece in short.pieces}["hoop"]
    assert hoop.whole == 2
    assert hoop.length * hoop.whole >= short.values["hoop_circle_diameter"] * 3.1416 + 2 * short.values["lap_length"]
    assert sum(each.cuts.bars * each.bar.length for each in short.bars) >= sum(
        each.cuts.bars * each.bar.length for each in long.bars
    )


# ---------------------------------------------------------------------------------------------- roofs, works


@pytest.mark.parametrize("kind", list(RoofKind))
def test_every_kind_of_roof_can_be_asked_for(kind: RoofKind) -> None:
    found = planned(Wish(8000.0, roof=kind))
    assert found.roof.kind is kind
    assert all(check.good for check in found.checks if check.decides)


def test_a_wide_flat_roof_makes_an_engineers_tank_and_a_wider_one_none() -> None:
    assert planned(Wish(9000.0, roof=RoofKind.FLAT)).judgement.band is Band.ENGINEER
    assert refused(Wish(30_000.0, roof=RoofKind.FLAT)).reason.key == "no_build_sheet"


def test_wet_sand_takes_more_boxes_and_less_water() -> None:
    dry, wet = (planned(Wish(9000.0, sand_moisture=moisture)).values for moisture in (2, 8))
    assert wet["boxes_of_sand"] > dry["boxes_of_sand"]
    assert wet["water_to_add"] < dry["water_to_add"]


def test_the_overflow_carries_what_the_inlet_brings() -> None:
    for inflow in (0.1, 0.5, 1.5, 3.0, 10.0):
        found = planned(Wish(9000.0, inflow=inflow))
        assert found.values["overflow_capacity"] >= inflow


def test_the_calendar_keeps_the_order_and_the_curing() -> None:
    found = planned(Wish(9000.0))
    days: dict[str, Slot] = {slot.name: slot for slot in found.work.slots}
    for before, after in (
        ("base_concrete", "frame_and_hoops"), ("frame_and_hoops", "first_coat"), ("floor_and_cove", "roof_pour"),
        ("roof_pour", "staged_filling"), ("staged_filling", "leak_test"), ("leak_test", "hand_over"),
    ):  # fmt: skip
        assert days[before].end < days[after].start
    assert days["finishing_wash"].start - days["roof_pour"].end >= found.values["curing_days"]
    assert found.work.days == days["hand_over"].end
    assert any(slot.decides for slot in found.work.slots if slot.name == "staged_filling")
