from __future__ import annotations

from datetime import date

import pytest

from generator.problems import ProblemsError, RefusedError
from generator.registry import (
    Imported,
    NewPerson,
    add_cohort,
    add_person,
    audit,
    chain_head,
    cohort_report,
    import_class_list,
    join_cohort,
)
from tests.registry.small import DAY, Office


def listed(office: Office, data: bytes, **other: bool) -> Imported:
    return import_class_list(
        office.registry, office.cohort, "class.csv", data, languages=["en", "hi"], by=office.boss, now=office.tick(),
        **other,
    )  # fmt: skip


def names(office: Office) -> list[str]:
    return [row[1] for row in cohort_report(office.registry, office.cohort).rows]


def test_the_same_cohort_again_is_the_same(any_office: Office) -> None:
    office = any_office
    again = add_cohort(office.registry, " Upper  Terrace", starts_on=DAY, by=office.boss, now=office.tick())
    assert again == office.cohort
    with pytest.raises(RefusedError, match="give this one another name"):
        add_cohort(office.registry, "Upper Terrace", starts_on=date(2032, 1, 1), by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match="needs a name"):
        add_cohort(office.registry, " ", starts_on=DAY, by=office.boss, now=office.tick())


def test_nobody_is_trained_by_themselves(office: Office) -> None:
    join = {"by": office.boss, "now": office.tick()}
    with pytest.raises(RefusedError, match="trainer and candidate"):
        join_cohort(office.registry, office.cohort, office.ids["Tenzin"], "candidate", **join)  # type: ignore[arg-type]
    with pytest.raises(RefusedError, match="trainer and candidate"):
        join_cohort(office.registry, office.cohort, office.ids["Asha"], "trainer", **join)  # type: ignore[arg-type]
    with pytest.raises(RefusedError, match="not 'king'"):
        join_cohort(office.registry, office.cohort, office.ids["Asha"], "king", **join)  # type: ignore[arg-type]
    with pytest.raises(RefusedError, match="no cohort 917"):
        join_cohort(office.registry, 917, office.ids["Asha"], "candidate", **join)  # type: ignore[arg-type]


def test_two_candidates_of_one_name_are_told_apart(office: Office) -> None:
    other = add_person(office.registry, NewPerson("ASHA"), by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match="add a village"):
        join_cohort(office.registry, office.cohort, other, "candidate", by=office.boss, now=office.tick())


def test_a_class_list_can_be_read_again_and_again(any_office: Office) -> None:
    office = any_office
    data = b"name,language\nAsha,\nDorje,en\nEsther,hi\n"
    assert listed(office, data) == Imported(2, 1, True)
    head = chain_head(office.registry)
    assert listed(office, data) == Imported(0, 3, True)
    assert chain_head(office.registry) == head
    assert listed(office, data + b"Farah,\n") == Imported(1, 3, True)
    assert names(office) == ["Asha", "Bir", "Cheptoo", "Dorje", "Esther", "Farah"]
    assert audit(office.registry) == ()


def test_a_dry_run_says_what_would_happen_and_keeps_nothing(any_office: Office) -> None:
    office = any_office
    head = chain_head(office.registry)
    assert listed(office, b"name\nDorje\nAsha\n", dry_run=True) == Imported(1, 1, False)
    assert chain_head(office.registry) == head
    assert names(office) == ["Asha", "Bir", "Cheptoo"]


def test_all_problems_come_at_once_and_nobody_is_entered(office: Office) -> None:
    head = chain_head(office.registry)
    with pytest.raises(ProblemsError) as caught:
        listed(office, b"name,language\nDorje,fr\n12,\nEsther,en\nesther,\n")
    assert {problem.code for problem in caught.value.problems} == {
        "unknown-language",
        "name-is-number",
        "duplicate-name",
    }
    with pytest.raises(ProblemsError, match="reads 'hi', not 'en'"):
        listed(office, b"name,language\nDorje,en\nAsha,en\n")
    assert chain_head(office.registry) == head


def test_names_that_a_spreadsheet_takes_for_formulas_come_and_go(office: Office) -> None:
    listed(office, b"name\n'-Okello\n+Meera\n'=1+1\n")
    assert names(office)[3:] == ["-Okello", "+Meera", "=1+1"]
    sent = cohort_report(office.registry, office.cohort).as_csv().decode("utf-8-sig")
    assert ",'-Okello," in sent
    assert ",'+Meera," in sent
    assert listed(office, b"name\n'-Okello\n'+Meera\n") == Imported(0, 2, True)
