from __future__ import annotations

from typing import Any

import pytest

from generator.problems import RefusedError
from generator.registry import applications_for, audit, close_application, erase_person, give_role, taught
from tests.assessment.small_scheme import SCHEME
from tests.registry.small import Office, scalar


def close(office: Office, key: int, outcome: str = "accepted", by: str = "Joseph", **other: Any) -> None:
    close_application(office.registry, key, outcome, "seen", by=office.ids[by], now=office.tick(), **other)


def test_an_application_is_entered_once_and_accepted_by_somebody(any_office: Office) -> None:
    office = any_office
    key = office.apply()
    assert office.apply() == key
    assert applications_for(office.registry, SCHEME.id)[office.ids["Cheptoo"]].outcome is None
    close(office, key)
    found = applications_for(office.registry, SCHEME.id)[office.ids["Cheptoo"]]
    assert (found.id, found.tanks, found.outcome, found.decided_by) == (key, 2, "accepted", office.ids["Joseph"])
    assert audit(office.registry) == ()


@pytest.mark.parametrize(
    ("other", "words"),
    [
        ({"tanks": 1}, "tanks 1 of 2"),
        ({"tanks": 0, "witnesses": ["Ravi"]}, "tanks 0 of 2, witnesses 1 of 2"),
        ({"witnesses": ["Ravi", " RAVI"]}, "counts once"),
        ({"witnesses": ["Ravi", "cheptoo"]}, "their own work"),
        ({"witnesses": ["Ravi", ""]}, "needs a name"),
        ({"evidence": " "}, "needs its evidence"),
        ({"name": "Tenzin"}, "no candidate"),
        ({"by": 3}, "only a coordinator"),
    ],
)
def test_an_application_that_can_not_be_is_refused(office: Office, other: dict[str, Any], words: str) -> None:
    with pytest.raises(RefusedError, match=words):
        office.apply(**other)
    assert scalar(office.registry, "select count(*) from applications") == 0


def test_two_are_never_open_at_once(office: Office) -> None:
    key = office.apply()
    with pytest.raises(RefusedError, match=f"application {key} of person .* is open"):
        office.apply(tanks=3)
    close(office, key, "refused")
    assert office.apply(tanks=3) == key + 1


def test_whoever_saw_the_work_or_taught_or_is_the_person_does_not_accept(office: Office) -> None:
    key = office.apply(witnesses=["joseph", "Ravi"])
    with pytest.raises(RefusedError, match="is a witness"):
        close(office, key)
    for name, words in (("Tenzin", "can't decide on them"), ("Cheptoo", "nobody decides on themselves")):
        give_role(office.registry, office.ids[name], "coordinator", by=office.boss, now=office.tick())
        with pytest.raises(RefusedError, match=words):
            close(office, key, by=name)
    close(office, key, by="Tenzin", exception="nobody else can cross the river")
    with pytest.raises(RefusedError, match="no open application"):
        close(office, key)
    kept = scalar(office.registry, "select exception from applications")
    assert kept == "nobody else can cross the river"


def test_a_scheme_without_the_route_takes_no_application(office: Office) -> None:
    from generator.registry import file_application

    plain = SCHEME.model_copy(update={"experience_route": None})
    with pytest.raises(RefusedError, match="has no experience route"):
        file_application(
            office.registry, office.cohort, office.ids["Asha"], plain, tanks=9, witnesses=["Ravi", "Bina"],
            evidence="letters", by=office.boss, now=office.tick(),
        )  # fmt: skip


def test_the_words_of_an_application_go_with_the_person(any_office: Office) -> None:
    office = any_office
    office.apply()
    assert office.ids["Cheptoo"] in taught(office.registry)
    erase_person(office.registry, office.ids["Cheptoo"], by=office.boss, reason="own wish", now=office.tick())
    assert scalar(office.registry, "select evidence from applications") is None
    assert audit(office.registry) == ()
