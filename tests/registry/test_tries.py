from __future__ import annotations

from datetime import date, timedelta

import pytest

from generator.problems import RefusedError
from generator.registry import archive_set, audit, decide_appeal, erase_person, excepted, file_appeal
from tests.registry.small import DAY, Office, failing, passing, printed_set, scalar

LATER = DAY + timedelta(days=14)


def test_whoever_sat_waits_as_the_scheme_says_until_a_named_day(any_office: Office) -> None:
    office = any_office
    office.sit_again(("Asha", "Bir"), "first", DAY)
    with pytest.raises(RefusedError) as caught:
        office.sit_again(("Asha", "Bir", "Cheptoo"), "second", LATER - timedelta(days=1))
    for part in ("Asha (person 5) may try again from 2031-05-18 on", "Bir (person 6) may try again", "exception"):
        assert part in str(caught.value)
    assert "Cheptoo" not in str(caught.value)
    assert scalar(office.registry, "select count(*) from sittings") == 1
    office.sit_again(("Cheptoo",), "third", DAY)
    office.sit_again(("Asha", "Bir"), "second", LATER)
    assert audit(office.registry) == ()


def test_the_wait_goes_from_the_day_of_the_decision(office: Office) -> None:
    office.sit_again(("Asha",), "first", DAY)
    office.tick(days=3)
    office.decide("Asha", failing(), papers_read=[1])
    with pytest.raises(RefusedError, match="from 2031-05-21 on"):
        office.sit_again(("Asha",), "second", LATER)


def test_when_the_tries_are_used_up_no_date_ends_that(office: Office) -> None:
    office.sit_again(("Asha",), "first", DAY)
    office.sit_again(("Asha",), "second", LATER)
    with pytest.raises(RefusedError, match="has tried 2 times, and the scheme allows 2: no date ends that"):
        office.sit_again(("Asha",), "third", date(2035, 1, 1))


def test_an_exception_is_kept_with_the_papers_that_needed_it_and_goes_with_the_person(any_office: Office) -> None:
    office = any_office
    office.sit_again(("Asha",), "first", DAY)
    office.sit_again(("Asha", "Bir"), "second", DAY, "the lamp went out")
    assert excepted(office.registry) == {2: "the lamp went out"}
    erase_person(office.registry, office.ids["Asha"], by=office.boss, reason="own wish", now=office.tick())
    assert excepted(office.registry) == {2: ""}
    assert audit(office.registry) == ()


def test_a_pass_begins_anew_and_a_decision_set_aside_is_no_try(office: Office) -> None:
    office.sit_again(("Asha", "Bir"), "first", DAY)
    office.decide("Asha", passing(), papers_read=[1])
    key = office.decide("Bir", failing(), papers_read=[2])
    appeal = file_appeal(office.registry, key, "smudged", by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match=r"Bir .* may try again"):
        office.sit_again(("Bir",), "second", DAY)
    decide_appeal(office.registry, appeal, "set_aside", "it was", by=office.ids["Joseph"], now=office.tick())
    office.sit_again(("Asha", "Bir"), "second", DAY)


def test_practice_and_schemes_without_the_rule_wait_for_nothing(office: Office) -> None:
    for seed in ("first", "second"):
        record = printed_set(("Asha",), seed)
        archive_set(office.registry, office.cohort, record, held_on=DAY, by=office.boss, now=office.tick())
    office.sit()
    office.sit_again(("Asha",), "third", LATER)
