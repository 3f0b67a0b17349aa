"""The whole walk of a cohort, on both kinds of database."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.exercises import mark_set, read_answers
from generator.registry import (
    NewPerson,
    add_photo,
    audit,
    audit_backup,
    backup,
    chain_head,
    change_status,
    close_complaint,
    cohort_report,
    competency_report,
    decide_appeal,
    erase_complaint_text,
    erase_person,
    expiring_soon,
    file_appeal,
    file_complaint,
    holders,
    import_answers,
    import_class_list,
    import_observations,
    pass_rates,
    read_certificate,
    read_papers,
    record_leak_test,
    restore,
    sign_hold_point,
    tank_report,
)
from generator.registry.tables import HOLD_POINTS
from tests.assessment.small_scheme import PRACTICALS
from tests.exercises import small as questions
from tests.registry.server import new_database
from tests.registry.small import DAY, START, Office, failing, open_at, small_marker, typed_right


def walk(office: Office) -> dict[str, object]:
    """Everything once; returns what the checks want to know."""
    registry, boss = office.registry, office.boss
    listed = b"name,language\nDorje,en\nEsther,hi\nAsha,\n"
    made = import_class_list(
        registry, office.cohort, "class.csv", listed, languages=["en", "hi"], by=boss, now=office.tick()
    )
    assert (made.new, made.same) == (2, 1)
    sitting = office.sit()
    typed = typed_right(office.record())
    found = import_answers(registry, sitting, "answers.csv", typed, by=boss, now=office.tick(), marker=small_marker)
    assert (found.new, found.same) == (39, 0)
    seen = b"learner,practical,step,seen\nAsha,close-a-fence,gloves,done\nBir,close-a-fence,gloves,not done\n"
    observed = import_observations(
        registry, office.cohort, "seen.csv", seen, practicals=PRACTICALS, observer=office.ids["Farida"],
        observed_on=DAY, now=office.tick(),
    )  # fmt: skip
    assert observed.new == 2
    tank = office.tank()
    built, _checked = office.crew(tank)
    not_yet = office.decide("Cheptoo", failing())
    appeal = file_appeal(registry, not_yet, "The wire was read wrongly.", by=boss, now=office.tick())
    decide_appeal(registry, appeal, "set_aside", "It was.", by=office.ids["Joseph"], now=office.tick())
    third = office.certify("Cheptoo")
    change_status(registry, third.number, "suspend", reason="asked to pause", by=boss, now=office.tick())
    change_status(registry, third.number, "reinstate", reason="back at work", by=boss, now=office.tick())
    bir = office.ids["Bir"]
    for point in HOLD_POINTS:
        if point == "leak_test":
            record_leak_test(registry, tank, hours=48, drop_mm=1.5, tight=True, by=bir, now=office.tick())
        sign_hold_point(registry, tank, point, "good", by=bir, now=office.tick())
    add_photo(registry, tank, "ab" * 32, "cage", point="cage_before_mortar", by=bir, now=office.tick())
    complaint = file_complaint(registry, "damp at the foot", tank=tank, by=boss, now=office.tick())
    return {"tank": tank, "built": built, "complaint": complaint, "third": third, "sitting": sitting}


def test_a_cohort_from_class_list_to_complaint(any_office: Office) -> None:
    office = any_office
    registry = office.registry
    made = walk(office)
    assert audit(registry) == ()
    assert [(h.name, h.part) for h in holders(registry, complaint=made["complaint"])] == [  # type: ignore[arg-type]
        ("Asha", "built"), ("Bir", "checked"),
    ]  # fmt: skip
    cohort = cohort_report(registry, office.cohort)
    assert [row[1] for row in cohort.rows] == ["Asha", "Bir", "Cheptoo", "Dorje", "Esther"]
    asha = dict(zip(cohort.columns, cohort.rows[0], strict=True))
    assert asha["papers"] == 1
    answers = read_answers("answers.csv", typed_right(office.record()), office.record())
    alone = mark_set(office.record(), answers, questions.BOOK).learners[0]
    assert (asha["points"], asha["most"]) == (alone.points, alone.most)
    assert 7 <= alone.points < 13
    assert (asha["steps_done"], asha["steps_seen"], asha["decision"], asha["status"]) == (1, 1, "passed", "active")
    assert cohort.rows[3][3:] == (0, 0, 0, 0, 0, None, None, None, None)
    (pens,) = [row for row in competency_report(registry, office.cohort).rows if row[0] == "pens"]
    assert pens[1] == 39
    assert pens[3] == pens[2] / pens[1]
    assert pens[4] == 3
    assert pass_rates(registry).rows == (("Upper Terrace", "fence-hand", 2, 4, 3, 0.75, 3, 2),)
    assert expiring_soon(registry, now=office.now, days=90).rows == ()
    assert len(expiring_soon(registry, now=office.now, days=1001).rows) == 3
    (tank,) = tank_report(registry).rows
    assert tank[5:9] == (7, 7, None, True)
    assert tank[-2:] == (1, 1)
    assert tank[9] == made["built"].number  # type: ignore[attr-defined]


def test_after_erasures_everything_still_verifies(any_office: Office) -> None:
    office = any_office
    registry, boss = office.registry, office.boss
    made = walk(office)
    close_complaint(registry, made["complaint"], "mended", by=boss, now=office.tick())  # type: ignore[arg-type]
    erase_complaint_text(registry, made["complaint"], by=boss, reason="names people", now=office.tick())  # type: ignore[arg-type]
    number = made["third"].number  # type: ignore[attr-defined]
    change_status(registry, number, "withdraw", reason="own wish", by=boss, now=office.tick())
    erase_person(registry, office.ids["Cheptoo"], by=boss, reason="own wish", now=office.tick())
    assert audit(registry) == ()
    certificate, changes = read_certificate(registry, number)
    assert (certificate.name, certificate.signed, certificate.status) == (None, None, "withdrawn")
    assert [change.becomes for change in changes] == ["active", "suspended", "active", "withdrawn"]
    assert [paper.name for paper in read_papers(registry, made["sitting"])] == ["Asha", "Bir", None]  # type: ignore[arg-type]
    assert pass_rates(registry).rows[0][3:5] == (4, 3)


def test_a_backup_comes_back_the_same_on_either_kind(
    any_office: Office, tmp_path: Path, servers: str, request: pytest.FixtureRequest
) -> None:
    office = any_office
    walk(office)
    head = chain_head(office.registry)
    kept = tmp_path / "kept.zip"
    made = backup(office.registry, kept, now=office.tick(), sign=lambda words: words[::-1])
    assert made.head == head
    assert audit_backup(kept, lambda words, signature: signature == words[::-1]) == ()
    name = f"restored_{request.node.callspec.id}"
    for place in (tmp_path / "other" / "registry.sqlite", new_database(servers, name)):
        restore(kept, place, now=office.tick())
        with open_at(place) as again:
            assert audit(again, heads=[head]) == ()
            assert again.code == office.registry.code
            assert cohort_report(again, office.cohort) == cohort_report(office.registry, office.cohort)
            assert tank_report(again) == tank_report(office.registry)
            other = Office(again, office.now, office.ids, office.cohort)
            assert "-T001001-" in other.tank()  # one was given before, and none is given again
            assert audit(again, heads=[head]) == ()


def test_the_same_time_and_salts_make_the_same_registry(tmp_path: Path) -> None:
    heads = []
    for name in ("one", "two"):
        with open_at(tmp_path / name) as registry:
            walk(Office(registry).fill())
            heads.append(chain_head(registry))
    assert heads[0] == heads[1]
    assert Office(registry).tick(hours=1) > START
    assert NewPerson("Asha").consent_on is None
