from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from generator.assessment import Seen
from generator.problems import ProblemsError, RefusedError
from generator.registry import (
    Imported,
    audit,
    chain_head,
    give_role,
    import_observations,
    import_rechecks,
    seen_by_name,
)
from tests.assessment.small_scheme import PRACTICALS
from tests.registry.small import DAY, Office

HEAD = b"learner,practical,step,seen\n"
GLOVES = b"Asha,close-a-fence,gloves,"


def seen(office: Office, data: bytes, **other: Any) -> Imported:
    given: dict[str, Any] = {
        "practicals": PRACTICALS, "observer": office.ids["Farida"], "observed_on": DAY, "now": office.tick(), **other,
    }  # fmt: skip
    return import_observations(office.registry, office.cohort, "seen.csv", HEAD + data, **given)


def test_a_table_can_be_read_again_and_grows(any_office: Office) -> None:
    office = any_office
    data = GLOVES + b"done\n2,close-a-fence,tight,not done\n"
    assert seen(office, data) == Imported(2, 0, True)
    head = chain_head(office.registry)
    assert seen(office, data) == Imported(0, 2, True)
    assert chain_head(office.registry) == head
    assert seen(office, data + b"Bir,close-a-fence,tidy,done\n") == Imported(1, 2, True)
    assert seen_by_name(office.registry, office.cohort) == {
        ("Asha", "close-a-fence", "gloves"): Seen.DONE,
        ("Bir", "close-a-fence", "tight"): Seen.NOT_DONE,
        ("Bir", "close-a-fence", "tidy"): Seen.DONE,
    }
    assert audit(office.registry) == ()


def test_a_dry_run_keeps_nothing(office: Office) -> None:
    assert seen(office, GLOVES + b"done\n", dry_run=True) == Imported(1, 0, False)
    assert seen_by_name(office.registry, office.cohort) == {}


def test_what_was_recorded_is_not_changed_but_shown_again(office: Office) -> None:
    seen(office, GLOVES + b"not done\n")
    head = chain_head(office.registry)
    with pytest.raises(ProblemsError, match="recorded already as 'not done'"):
        seen(office, GLOVES + b"done\nBir,close-a-fence,gloves,done\n")
    assert chain_head(office.registry) == head
    seen(office, GLOVES + b"done\n", attempt=2)
    assert seen_by_name(office.registry, office.cohort) == {("Asha", "close-a-fence", "gloves"): Seen.DONE}


def test_where_two_observers_differ_a_step_is_not_shown(office: Office) -> None:
    give_role(office.registry, office.ids["Joseph"], "observer", by=office.boss, now=office.tick())
    seen(office, GLOVES + b"done\n")
    seen(office, GLOVES + b"not seen\n", observer=office.ids["Joseph"])
    assert seen_by_name(office.registry, office.cohort) == {("Asha", "close-a-fence", "gloves"): Seen.NOT_SEEN}


def test_what_two_have_to_see_is_not_seen_by_one_alone(office: Office) -> None:
    """At the newest attempt; a step that one saw not done stays not done, and other steps need one."""
    give_role(office.registry, office.ids["Joseph"], "observer", by=office.boss, now=office.tick())
    both, joseph = [("close-a-fence", "gloves")], office.ids["Joseph"]
    place, tidy = ("Asha", "close-a-fence", "gloves"), ("Asha", "close-a-fence", "tidy")
    seen(office, GLOVES + b"done\nAsha,close-a-fence,tidy,done\n")
    assert seen_by_name(office.registry, office.cohort, both) == {place: Seen.NOT_SEEN, tidy: Seen.DONE}
    seen(office, GLOVES + b"done\n", observer=joseph)
    assert seen_by_name(office.registry, office.cohort, both)[place] is Seen.DONE
    seen(office, GLOVES + b"done\n", attempt=2)
    assert seen_by_name(office.registry, office.cohort, both)[place] is Seen.NOT_SEEN
    seen(office, GLOVES + b"not done\n", attempt=3)
    assert seen_by_name(office.registry, office.cohort, both)[place] is Seen.NOT_DONE


def again(office: Office, word: bytes, **other: Any) -> Imported:
    given: dict[str, Any] = {
        "practicals": PRACTICALS, "observer": office.ids["Farida"], "observed_on": DAY, "now": office.tick(), **other,
    }  # fmt: skip
    return import_rechecks(office.registry, office.cohort, "again.csv", HEAD + GLOVES + word + b"\n", **given)


def test_a_recheck_that_two_have_to_see_counts_when_both_say_so(any_office: Office) -> None:
    office = any_office
    give_role(office.registry, office.ids["Joseph"], "observer", by=office.boss, now=office.tick())
    give_role(office.registry, office.ids["Tenzin"], "observer", by=office.boss, now=office.tick())
    both, place = [("close-a-fence", "gloves")], ("Asha", "close-a-fence", "gloves")
    joseph, tenzin = office.ids["Joseph"], office.ids["Tenzin"]
    for observer in (office.ids["Farida"], joseph):
        seen(office, GLOVES + b"not done\n", observer=observer)
    assert again(office, b"done") == Imported(1, 0, True)
    assert seen_by_name(office.registry, office.cohort)[place] is Seen.DONE
    assert seen_by_name(office.registry, office.cohort, both)[place] is Seen.NOT_SEEN
    assert again(office, b"done", observer=joseph, dry_run=True) == Imported(1, 0, False)
    assert again(office, b"done", observer=joseph) == Imported(1, 0, True)
    assert seen_by_name(office.registry, office.cohort, both)[place] is Seen.DONE
    head = chain_head(office.registry)
    assert again(office, b"done", observer=joseph) == Imported(0, 1, True)
    for word, observer in ((b"not done", joseph), (b"not done", office.ids["Farida"]), (b"done", tenzin)):
        with pytest.raises(ProblemsError, match="rechecked already"):
            again(office, word, observer=observer)
    assert chain_head(office.registry) == head
    assert audit(office.registry) == ()


def test_a_recheck_on_which_two_differ_is_not_done(office: Office) -> None:
    give_role(office.registry, office.ids["Joseph"], "observer", by=office.boss, now=office.tick())
    seen(office, GLOVES + b"not done\n")
    again(office, b"done")
    again(office, b"not done", observer=office.ids["Joseph"])
    for both in ([], [("close-a-fence", "gloves")]):
        found = seen_by_name(office.registry, office.cohort, both)
        assert found == {("Asha", "close-a-fence", "gloves"): Seen.NOT_DONE}


def test_a_recheck_by_two_counts_also_where_one_saw_the_first_try(office: Office) -> None:
    give_role(office.registry, office.ids["Joseph"], "observer", by=office.boss, now=office.tick())
    seen(office, GLOVES + b"not done\n")
    again(office, b"done")
    again(office, b"done", observer=office.ids["Joseph"])
    found = seen_by_name(office.registry, office.cohort, [("close-a-fence", "gloves")])
    assert found == {("Asha", "close-a-fence", "gloves"): Seen.DONE}


def test_only_observers_observe_and_nobody_themselves(office: Office) -> None:
    with pytest.raises(RefusedError, match="only an observer"):
        seen(office, GLOVES + b"done\n", observer=office.ids["Tenzin"])
    give_role(office.registry, office.ids["Asha"], "observer", by=office.boss, now=office.tick())
    with pytest.raises(RefusedError, match="own observer"):
        seen(office, GLOVES + b"done\n", observer=office.ids["Asha"])


@pytest.mark.parametrize("other", [{"attempt": 0}, {"observed_on": date(2031, 5, 5)}])
def test_days_to_come_and_attempt_nought_are_refused(office: Office, other: dict[str, Any]) -> None:
    with pytest.raises(RefusedError, match=r"attempts count from 1|is still to come"):
        seen(office, GLOVES + b"done\n", **other)


def test_all_problems_come_at_once(office: Office) -> None:
    with pytest.raises(ProblemsError) as caught:
        seen(office, b"Zed,close-a-fence,gloves,done\nAsha,swim,gloves,done\nAsha,close-a-fence,gloves,maybe\n")
    assert [problem.line for problem in caught.value.problems] == [2, 3, 4]
    assert seen_by_name(office.registry, office.cohort) == {}
