from __future__ import annotations

import json
from typing import Any

import pytest

from generator.assessment import Decision
from generator.problems import RefusedError
from generator.registry import (
    audit,
    chain_head,
    change_status,
    decide_appeal,
    file_appeal,
    give_role,
    join_cohort,
    pass_rates,
    read_papers,
    record_cut,
)
from generator.registry.listing import decision_record
from tests.registry.small import SCHEME, Office, failing, passing, scalar


def test_a_decision_keeps_its_reasons(any_office: Office) -> None:
    office = any_office
    sitting = office.sit()
    paper = read_papers(office.registry, sitting)[0].id
    key = office.decide("Asha", failing(), papers_read=[paper])
    (reason,) = json.loads(scalar(office.registry, "select reasons from decisions where id = :key", key=key))
    assert reason == {"requirement": "written", "met": False, "subject": "", "have": 5, "need": 7, "most": 10}
    assert scalar(office.registry, "select papers from decisions") == f"[{paper}]"
    assert not scalar(office.registry, "select passed from decisions")
    assert audit(office.registry) == ()


def test_the_same_decision_again_is_the_same_one(any_office: Office) -> None:
    office = any_office
    key = office.decide("Asha", failing())
    head = chain_head(office.registry)
    assert office.decide("Asha", failing()) == key
    assert chain_head(office.registry) == head
    assert office.decide("Asha", passing()) != key
    assert scalar(office.registry, "select max(attempt) from decisions") == 2


@pytest.mark.parametrize(
    ("who", "given", "words"),
    [
        ("Asha", {"decision": Decision(SCHEME, 2, ())}, "without reasons"),
        ("Asha", {"status": "approved?"}, "not 'approved\\?'"),
        ("Asha", {"papers_read": [917]}, "paper 917 is not one of person"),
        ("Joseph", {}, "is no candidate"),
    ],
)
def test_a_decision_that_can_not_be_is_refused(office: Office, who: str, given: dict[str, Any], words: str) -> None:
    head = chain_head(office.registry)
    with pytest.raises(RefusedError, match=words):
        office.decide(who, **given)
    assert chain_head(office.registry) == head


def test_nobody_decides_on_themselves_nor_on_whom_they_trained(any_office: Office) -> None:
    office = any_office
    for name in ("Tenzin", "Asha"):
        give_role(office.registry, office.ids[name], "coordinator", by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match="nobody decides on themselves"):
        office.decide("Asha", by=office.ids["Asha"], exception="nobody else is here")
    with pytest.raises(RefusedError, match=r"trained person .* in 'Upper Terrace' and can't decide"):
        office.decide("Asha", by=office.ids["Tenzin"])
    with pytest.raises(RefusedError, match="can't decide"):
        office.decide("Asha", by=office.ids["Tenzin"], exception="  ")
    key = office.decide("Asha", by=office.ids["Tenzin"], exception="the other coordinator is away until winter")
    assert scalar(office.registry, "select exception from decisions where id = :key", key=key).startswith("the other")
    with pytest.raises(RefusedError, match="can't decide"):
        office.certify("Asha", key, by=office.ids["Tenzin"])
    assert audit(office.registry) == ()


def test_training_in_another_cohort_counts_too(office: Office) -> None:
    from generator.registry import add_cohort

    other = add_cohort(office.registry, "Lower Terrace", starts_on=office.now.date(), by=office.boss, now=office.tick())
    join_cohort(office.registry, other, office.boss, "trainer", by=office.boss, now=office.tick())
    join_cohort(office.registry, other, office.ids["Asha"], "candidate", by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match="in 'Lower Terrace'"):
        office.decide("Asha")
    assert office.decide("Bir")


def test_an_exception_is_only_noted_where_it_was_needed(office: Office) -> None:
    key = office.decide("Asha", exception="just in case")
    assert scalar(office.registry, "select exception from decisions where id = :key", key=key) is None


@pytest.mark.parametrize(
    "wrong", [{"written": 0.0}, {"practical": 1.2}, {"written": float("nan")}, {"judges": 0}, {"method": " "}]
)
def test_a_cut_is_a_share_set_by_a_panel(office: Office, wrong: dict[str, Any]) -> None:
    given: dict[str, Any] = {
        "method": "m", "written": 0.7, "practical": 0.8, "judges": 5, "by": office.boss, "now": office.tick(), **wrong,
    }  # fmt: skip
    with pytest.raises(RefusedError, match="a cut"):
        record_cut(office.registry, SCHEME, 2, **given)
    assert scalar(office.registry, "select count(*) from cuts") == 0


# ------------------------------------------------------------------------------------------------- appeals


def test_an_appeal_needs_another_decider_and_ends_with_reasons(any_office: Office) -> None:
    office = any_office
    registry, joseph = office.registry, office.ids["Joseph"]
    decision = office.decide("Asha", failing())
    appeal = file_appeal(registry, decision, "The tape was read wrongly.", by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match="is open already"):
        file_appeal(registry, decision, "Again.", by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match="made the decision"):
        decide_appeal(registry, appeal, "stands", "No.", by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match="'stands' or 'set_aside'"):
        decide_appeal(registry, appeal, "maybe", "No.", by=joseph, now=office.tick())
    with pytest.raises(RefusedError, match="with reasons"):
        decide_appeal(registry, appeal, "stands", " ", by=joseph, now=office.tick())
    give_role(registry, office.ids["Tenzin"], "coordinator", by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match="can't decide"):
        decide_appeal(registry, appeal, "stands", "No.", by=office.ids["Tenzin"], now=office.tick())
    decide_appeal(registry, appeal, "stands", "The tape was right.", by=joseph, now=office.tick())
    with pytest.raises(RefusedError, match="no open appeal"):
        decide_appeal(registry, appeal, "set_aside", "No.", by=joseph, now=office.tick())
    assert audit(registry) == ()


def test_appeals_have_their_days(office: Office) -> None:
    decision = office.decide("Asha", failing())
    office.tick(days=30)
    with pytest.raises(RefusedError, match="could be filed until 2031-06-03"):
        file_appeal(office.registry, decision, "Late.", by=office.boss, now=office.tick())
    assert file_appeal(office.registry, decision, "Late.", by=office.boss, now=office.now, days=40) == 1
    with pytest.raises(RefusedError, match="no decision 917"):
        file_appeal(office.registry, 917, "What?", by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match="needs its grounds"):
        file_appeal(office.registry, decision, "", by=office.boss, now=office.tick())


def test_a_decision_set_aside_certifies_nobody_and_can_be_made_anew(office: Office) -> None:
    decision = office.decide("Asha")
    appeal = file_appeal(office.registry, decision, "I had help.", by=office.boss, now=office.tick())
    decide_appeal(office.registry, appeal, "set_aside", "True.", by=office.ids["Joseph"], now=office.tick())
    with pytest.raises(RefusedError, match="was set aside on appeal"):
        office.certify("Asha", decision)
    assert office.decide("Asha") != decision


def test_a_decision_under_a_certificate_in_force_is_not_set_aside(office: Office) -> None:
    decision = office.decide("Asha")
    number = office.certify("Asha", decision).number
    appeal = file_appeal(office.registry, decision, "I had help.", by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match=f"{number} rests on this decision: withdraw it first"):
        decide_appeal(office.registry, appeal, "set_aside", "True.", by=office.ids["Joseph"], now=office.tick())
    change_status(office.registry, number, "withdraw", reason="appeal", by=office.boss, now=office.tick())
    decide_appeal(office.registry, appeal, "set_aside", "True.", by=office.ids["Joseph"], now=office.tick())
    assert audit(office.registry) == ()


def test_a_cut_that_changes_no_number_still_makes_a_decision_that_can_issue(office: Office) -> None:
    """Whoever decided before the panel met decides again, and is not left with what can never issue."""
    first = office.decide("Asha", status="provisional")
    assert office.decide("Asha", status="provisional") == first
    with pytest.raises(RefusedError, match="a local panel has to set the cut"):
        office.certify("Asha", first)
    office.cut()
    again = office.decide("Asha", status="provisional")
    assert again != first
    assert office.decide("Asha", status="provisional") == again
    assert office.certify("Asha", again).status == "active"
    assert audit(office.registry) == ()


def test_to_decide_again_on_the_same_papers_is_no_new_try(office: Office) -> None:
    papers_read = [paper.id for paper in read_papers(office.registry, office.sit()) if paper.number == 1]
    first = office.decide("Asha", failing(), papers_read=papers_read)
    office.cut()
    again = office.decide("Asha", failing(), papers_read=papers_read)
    tries = [decision_record(office.registry, each).facts["attempt"] for each in (first, again)]
    assert (first != again, tries) == (True, [1, 1])
    assert [row[3:] for row in pass_rates(office.registry).rows] == [(1, 0, 0.0, 1, 0)]
