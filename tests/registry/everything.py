"""An office with something in every table of its registry."""

from __future__ import annotations

from generator.registry import (
    add_photo,
    change_status,
    close_application,
    decide_appeal,
    file_appeal,
    file_complaint,
    give_role,
    import_answers,
    import_observations,
    import_rechecks,
    record_leak_test,
    sign_hold_point,
)
from tests.assessment.small_scheme import PRACTICALS
from tests.registry.small import DAY, Office, failing, small_marker, typed_right


def fill_all(office: Office) -> Office:
    """Something in every table."""
    return fill_second_look(fill_ways(fill_first(office)))


def fill_first(office: Office) -> Office:
    """Something in every table of the first edition."""
    registry, boss = office.registry, office.boss
    sitting = office.sit(pdfs={1: b"%PDF"})
    typed = typed_right(office.record())
    import_answers(registry, sitting, "a.csv", typed, by=boss, now=office.tick(), marker=small_marker)
    seen = b"learner,practical,step,seen\nAsha,close-a-fence,gloves,not done\n"
    import_observations(
        registry, office.cohort, "s.csv", seen, practicals=PRACTICALS, observer=office.ids["Farida"], observed_on=DAY,
        now=office.tick(),
    )  # fmt: skip
    office.cut()
    tank = office.tank()
    _, second = office.crew(tank)
    bir = office.ids["Bir"]
    sign_hold_point(registry, tank, "ground", "not_good", note="wet", by=bir, now=office.tick())
    record_leak_test(registry, tank, hours=24, drop_mm=9, tight=False, by=bir, now=office.tick())
    add_photo(registry, tank, "ab" * 32, "cage", by=boss, now=office.tick())
    file_complaint(registry, "it leaks", tank=tank, by=boss, now=office.tick())
    appeal = file_appeal(registry, office.decide("Cheptoo", failing()), "too dark", by=boss, now=office.tick())
    decide_appeal(registry, appeal, "stands", "by day", by=office.ids["Joseph"], now=office.tick())
    change_status(registry, second.number, "withdraw", reason="own wish", by=boss, now=office.tick())
    return office


def fill_ways(office: Office) -> Office:
    """Something in the tables that came with the second edition's ways to an exam."""
    registry = office.registry
    again = b"learner,practical,step,seen\nAsha,close-a-fence,gloves,done\n"
    import_rechecks(
        registry, office.cohort, "r.csv", again, practicals=PRACTICALS, observer=office.ids["Farida"], observed_on=DAY,
        now=office.tick(),
    )  # fmt: skip
    office.sit_again(("Cheptoo",), "autumn", DAY, "the lamp went out")
    application = office.apply()
    close_application(registry, application, "accepted", "seen", by=office.ids["Joseph"], now=office.tick())
    office.decide("Cheptoo", inputs={"rule": {"written": 0.7}})
    return office


def fill_second_look(office: Office) -> Office:
    """What a second observer saw at a recheck."""
    give_role(office.registry, office.ids["Joseph"], "observer", by=office.boss, now=office.tick())
    again = b"learner,practical,step,seen\nAsha,close-a-fence,gloves,done\n"
    import_rechecks(
        office.registry, office.cohort, "r.csv", again, practicals=PRACTICALS, observer=office.ids["Joseph"],
        observed_on=DAY, now=office.tick(),
    )  # fmt: skip
    return office
