from __future__ import annotations

import csv
import io
from datetime import timedelta

import pytest

from generator.problems import RefusedError
from generator.registry import (
    Report,
    change_status,
    cohort_report,
    competency_report,
    expiring_soon,
    import_answers,
    pass_rates,
    tank_report,
)
from tests.registry.small import Office, failing, small_marker


def test_an_empty_registry_has_empty_reports(any_office: Office) -> None:
    office = any_office
    reports = [
        competency_report(office.registry), pass_rates(office.registry), tank_report(office.registry),
        expiring_soon(office.registry, now=office.now),
    ]  # fmt: skip
    assert [report.rows for report in reports] == [()] * 4
    for report in (cohort_report, competency_report):
        with pytest.raises(RefusedError, match="no cohort 917"):
            report(office.registry, 917)


def test_competencies_are_counted_by_hand(any_office: Office) -> None:
    """Three answers to one scenario part each: 10.05 is right, 9.6 is not; the other parts are blank."""
    office = any_office
    sitting = office.sit()
    data = b"learner,question,answer\n1,10,10.05\n2,10,9.6\n3,10,10.05\n"
    import_answers(office.registry, sitting, "a.csv", data, by=office.boss, now=office.tick(), marker=small_marker)
    expected = (("pens", 12, 2, 2 / 12, 3),)
    assert competency_report(office.registry, office.cohort).rows == expected
    assert competency_report(office.registry).rows == expected
    rows = cohort_report(office.registry, office.cohort).rows
    assert [row[3:6] for row in rows] == [(1, 1, 4), (1, 0, 4), (1, 1, 4)]


def test_pass_rates_tell_first_attempts_apart(office: Office) -> None:
    office.decide("Asha", failing())
    office.decide("Asha")
    office.decide("Bir")
    assert pass_rates(office.registry).rows == (("Upper Terrace", "fence-hand", 2, 3, 2, 2 / 3, 2, 1),)


def test_soon_is_counted_in_days(office: Office) -> None:
    today = office.now.date()
    first = office.certify("Asha", valid_to=today + timedelta(days=30)).number
    second = office.certify("Bir", valid_to=today + timedelta(days=31)).number
    third = office.certify("Cheptoo", valid_to=today + timedelta(days=5)).number
    found = expiring_soon(office.registry, now=office.now, days=30)
    assert [row[0] for row in found.rows] == [third, first]
    change_status(office.registry, third, "withdraw", reason="r", by=office.boss, now=office.tick())
    found = expiring_soon(office.registry, now=office.now, days=31)
    assert [row[0] for row in found.rows] == [first, second]


def test_every_report_goes_out_as_csv(full_office: Office) -> None:
    reports = [
        cohort_report(full_office.registry, full_office.cohort), competency_report(full_office.registry),
        pass_rates(full_office.registry), expiring_soon(full_office.registry, now=full_office.now, days=2000),
        tank_report(full_office.registry),
    ]  # fmt: skip
    for report in reports:
        assert report.rows
        head, *body = csv.reader(io.StringIO(report.as_csv().decode("utf-8-sig"), newline=""))
        assert tuple(head) == report.columns
        assert len(body) == len(report.rows)
        assert all(len(row) == len(report.columns) for row in report.rows)


def test_a_row_goes_out_as_a_spreadsheet_keeps_it() -> None:
    report = Report("r", ("name", "points", "good", "left"), (("=HYPERLINK(1)", -3, True, None),))
    assert report.as_csv() == b"\xef\xbb\xbfname,points,good,left\r\n'=HYPERLINK(1),-3,yes,\r\n"
