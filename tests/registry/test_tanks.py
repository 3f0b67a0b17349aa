from __future__ import annotations

from typing import Any

import pytest

from generator.problems import RefusedError
from generator.registry import (
    HOLD_POINTS,
    NewTank,
    add_holder,
    add_photo,
    add_tank,
    audit,
    chain_head,
    change_status,
    close_complaint,
    file_complaint,
    give_role,
    holders,
    is_number,
    record_leak_test,
    sign_hold_point,
    tank_report,
)
from tests.registry.small import DAY, Office


def signed(office: Office, tank: str, point: str, verdict: str = "good", by: str = "Bir", note: str = "seen") -> None:
    sign_hold_point(office.registry, tank, point, verdict, note=note, by=office.ids[by], now=office.tick())


def test_tanks_are_numbered_one_after_the_other(any_office: Office) -> None:
    office = any_office
    first, second = office.tank(), office.tank()
    assert is_number(first)
    assert "-T000001-" in first
    assert "-T000002-" in second
    assert audit(office.registry) == ()


@pytest.mark.parametrize(
    "wrong", [{"place": " "}, {"plan": {}}, {"volume": 0.0}, {"wall_height": float("inf")}, {"volume": float("nan")}]
)
def test_a_tank_has_a_place_a_plan_and_a_size(office: Office, wrong: dict[str, Any]) -> None:
    given: dict[str, Any] = {
        "place": "Lower Terrace", "plan": {"a": 1}, "plan_version": "1", "volume": 7.3, "wall_height": 1.83,
        "started_on": DAY, **wrong,
    }  # fmt: skip
    head = chain_head(office.registry)
    with pytest.raises(RefusedError, match="a tank"):
        add_tank(office.registry, NewTank(**given), by=office.boss, now=office.tick())
    assert chain_head(office.registry) == head


def test_only_active_holders_within_their_scope_build(any_office: Office) -> None:
    office = any_office
    tank, large, high = office.tank(), office.tank(volume=12.7), office.tank(wall_height=2.07)
    number = office.certify("Asha").number
    add = {"by": office.boss, "now": office.tick()}
    with pytest.raises(RefusedError, match=r"covers tanks up to 12 m3 of water, and this one has 12.7"):
        add_holder(office.registry, large, number, "built", **add)  # type: ignore[arg-type]
    with pytest.raises(RefusedError, match=r"up to 2 m of wall, and this one has 2.07"):
        add_holder(office.registry, high, number, "built", **add)  # type: ignore[arg-type]
    with pytest.raises(RefusedError, match="not 'watched'"):
        add_holder(office.registry, tank, number, "watched", **add)  # type: ignore[arg-type]
    add_holder(office.registry, tank, number, "built", by=office.boss, now=office.tick())
    add_holder(office.registry, tank, number, "built", by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match="nobody checks their own work"):
        add_holder(office.registry, tank, number, "checked", by=office.boss, now=office.tick())
    assert len(holders(office.registry, tank=tank)) == 1
    change_status(office.registry, number, "suspend", reason="leak", by=office.boss, now=office.tick())
    other = office.tank()
    with pytest.raises(RefusedError, match="is suspended: only active holders"):
        add_holder(office.registry, other, number, "built", by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match="no tank 'nowhere'"):
        add_holder(office.registry, "nowhere", number, "built", by=office.boss, now=office.tick())


def test_a_certificate_whose_days_are_over_builds_nothing(office: Office) -> None:
    tank, number = office.tank(), office.certify("Asha", valid_to=DAY).number
    office.tick(days=1)
    with pytest.raises(RefusedError, match="is over since 2031-05-04"):
        add_holder(office.registry, tank, number, "built", by=office.boss, now=office.tick())


def test_hold_points_come_in_order_and_stop_the_work(any_office: Office) -> None:
    office = any_office
    tank = office.tank()
    office.crew(tank)
    with pytest.raises(RefusedError, match="'ground' comes before 'first_batch' and is not good yet"):
        signed(office, tank, "first_batch")
    signed(office, tank, "ground", "not_good")
    with pytest.raises(RefusedError, match="'ground' comes before"):
        signed(office, tank, "base_steel_and_starters")
    signed(office, tank, "ground")
    with pytest.raises(RefusedError, match="is signed already"):
        signed(office, tank, "ground", "not_good")
    for point in HOLD_POINTS[1:4]:
        signed(office, tank, point)
    signed(office, tank, "before_roof_pour", "does_not_apply", note="a sheet roof")
    signed(office, tank, "curing_day_7")
    assert tank_report(office.registry).rows[0][5:8] == (6, 7, "leak_test")
    assert audit(office.registry) == ()


def test_the_leak_test_point_wants_a_leak_test_that_was_passed(office: Office) -> None:
    tank = office.tank()
    office.crew(tank)
    for point in HOLD_POINTS[:-1]:
        signed(office, tank, point)
    for verdict in ("good", "does_not_apply"):
        with pytest.raises(RefusedError, match="no leak test that it passed"):
            signed(office, tank, "leak_test", verdict)
    test = {"by": office.ids["Bir"], "hours": 48.0}
    record_leak_test(office.registry, tank, drop_mm=31, tight=False, now=office.tick(), **test)  # type: ignore[arg-type]
    with pytest.raises(RefusedError, match="no leak test that it passed"):
        signed(office, tank, "leak_test")
    record_leak_test(office.registry, tank, drop_mm=1, tight=True, now=office.tick(), **test)  # type: ignore[arg-type]
    signed(office, tank, "leak_test")
    assert tank_report(office.registry).rows[0][5:9] == (7, 7, None, True)
    for hours, drop, told in ((48.0, 2.5, "the water fell 1.2 mm a day"), (5.0, 0.0, "5 hours are too short")):
        with pytest.raises(RefusedError, match=told):
            record_leak_test(
                office.registry, tank, hours=hours, drop_mm=drop, tight=True, by=office.ids["Bir"], now=office.tick()
            )
    for hours, drop in ((0.0, 1.0), (float("nan"), 1.0), (24.0, float("inf"))):
        with pytest.raises(RefusedError, match="hours above 0"):
            record_leak_test(
                office.registry, tank, hours=hours, drop_mm=drop, tight=True, by=office.ids["Bir"], now=office.tick()
            )


def test_nobody_signs_their_own_work_or_a_strangers(office: Office) -> None:
    tank = office.tank()
    office.crew(tank)
    with pytest.raises(RefusedError, match=r"built .* and can't sign"):
        signed(office, tank, "ground", by="Asha")
    with pytest.raises(RefusedError, match=r"neither checks .* nor coordinates"):
        signed(office, tank, "ground", by="Cheptoo")
    signed(office, tank, "ground", by="Joseph")
    with pytest.raises(RefusedError, match="needs a note"):
        signed(office, tank, "base_steel_and_starters", "not_good", note=" ")
    with pytest.raises(RefusedError, match="a hold point is ground"):
        signed(office, tank, "paint")


def test_photos_are_noted_by_their_hash(office: Office) -> None:
    tank = office.tank()
    for _ in range(2):
        add_photo(office.registry, tank, "0a" * 32, "ground", point="ground", by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match="SHA-256"):
        add_photo(office.registry, tank, "0A" * 32, "ground", by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match="a hold point or none"):
        add_photo(office.registry, tank, "0a" * 32, "ground", point="paint", by=office.boss, now=office.tick())
    assert audit(office.registry) == ()


def test_a_complaint_leads_from_the_tank_to_the_holders(any_office: Office) -> None:
    office = any_office
    registry, tank = office.registry, office.tank()
    built, checked = office.crew(tank)
    complaint = file_complaint(registry, "it leaks", tank=tank, by=office.boss, now=office.tick())
    assert [(h.certificate, h.part, h.status) for h in holders(registry, complaint=complaint)] == [
        (built.number, "built", "active"), (checked.number, "checked", "active"),
    ]  # fmt: skip
    other = file_complaint(registry, "came drunk", certificate=built.number, by=office.boss, now=office.tick())
    assert [(h.name, h.part) for h in holders(registry, complaint=other)] == [("Asha", "holds")]
    give_role(registry, office.ids["Bir"], "coordinator", by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match="another coordinator has to close it"):
        close_complaint(registry, complaint, "fine", by=office.ids["Bir"], now=office.tick())
    with pytest.raises(RefusedError, match="with what was found"):
        close_complaint(registry, complaint, " ", by=office.boss, now=office.tick())
    close_complaint(registry, complaint, "cove was missing", by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match="no open complaint"):
        close_complaint(registry, complaint, "again", by=office.boss, now=office.tick())
    assert audit(registry) == ()


def test_a_complaint_names_what_it_is_about(office: Office) -> None:
    file = {"by": office.boss, "now": office.tick()}
    with pytest.raises(RefusedError, match="names a tank or a certificate"):
        file_complaint(office.registry, "it leaks", **file)  # type: ignore[arg-type]
    with pytest.raises(RefusedError, match="no tank 'x'"):
        file_complaint(office.registry, "it leaks", tank="x", **file)  # type: ignore[arg-type]
    with pytest.raises(RefusedError, match="says what is wrong"):
        file_complaint(office.registry, " ", tank=office.tank(), by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match="no complaint 917"):
        holders(office.registry, complaint=917)
    with pytest.raises(RefusedError, match="no tank"):
        holders(office.registry)
