"""`register report`: tables of a cohort, competencies, pass rates, certificates that end soon, and tanks."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import click

from generator.commands.register_common import COHORT, FILE_OUT, Desk, Function, job
from generator.commands.register_page import Bar, report_page
from generator.credentials import save
from generator.problems import ExitCode
from generator.registry import (
    HOLD_POINTS,
    Report,
    cohort_report,
    competency_report,
    expiring_soon,
    pass_rates,
    tank_report,
)


@click.group("report")
def report_jobs() -> None:
    """Tables and plots: as text, for spreadsheets (--csv), or as a page (--html)."""


def written_option(function: Function) -> Function:
    """`--csv` and `--html`: files beside the table."""
    function = click.option("--html", type=FILE_OUT, help="Write a page with plots to this file.")(function)
    return click.option("--csv", "csv_file", type=FILE_OUT, help="Write the table to this file.")(function)


def _given(desk: Desk, report: Report, bars: list[Bar], csv_file: Path | None, html: Path | None) -> int:
    """Print the report, or write it to the files that were named."""
    if csv_file is None and html is None:
        return desk.table(report)
    files = []
    if csv_file is not None:
        save(csv_file, report.as_csv(), replace_old=True)
        files.append(csv_file)
    if html is not None:
        page = report_page(report, bars, desk.words, desk.now.date())
        save(html, page.encode("utf-8"), replace_old=True)
        files.append(html)
    for path in files:
        if not desk.as_json:
            click.echo(desk.words.say("register.done.wrote", file=path))
    if desk.as_json:
        desk.done("", files=[str(path) for path in files])
    return ExitCode.GOOD


@report_jobs.command("cohort")
@click.argument("cohort", type=COHORT)
@written_option
@job
def of_cohort(desk: Desk, cohort: int, csv_file: Path | None, html: Path | None) -> int:
    """Each candidate of a COHORT: points, steps shown, decision, certificate.

    Example: python3 tankschool.py register report cohort 1 --csv cohort.csv
    """
    with desk.registry() as registry:
        report = cohort_report(registry, cohort)
    bars = [Bar(str(row[1]), row[4] / row[5] if row[5] else 0.0, f"{row[4]} / {row[5]}") for row in report.rows]
    return _given(desk, report, bars, csv_file, html)


@report_jobs.command("competency")
@click.option("--cohort", type=COHORT, help="Only this cohort.")
@written_option
@job
def of_competencies(desk: Desk, cohort: int | None, csv_file: Path | None, html: Path | None) -> int:
    """Each competency: how many answers, and how many of them right.

    Example: python3 tankschool.py register report competency --html competencies.html
    """
    with desk.registry() as registry:
        report = competency_report(registry, cohort)
    named = desk.course.competencies
    titles = {key: named[key].text[desk.language] for key in named}
    bars = [Bar(titles.get(row[0], row[0]), row[3], f"{row[2]} / {row[1]}") for row in report.rows]
    return _given(desk, report, bars, csv_file, html)


@report_jobs.command("passes")
@written_option
@job
def of_passes(desk: Desk, csv_file: Path | None, html: Path | None) -> int:
    """Each cohort and scheme: how many decisions, and how many passes.

    Example: python3 tankschool.py register report passes
    """
    with desk.registry() as registry:
        report = pass_rates(registry)
    bars = [Bar(f"{row[0]}, {row[1]} {row[2]}", row[5], f"{row[4]} / {row[3]}") for row in report.rows]
    return _given(desk, report, bars, csv_file, html)


@report_jobs.command("expiring")
@click.option("--days", type=click.IntRange(0, 3660), default=90, show_default=True, help="From today.")
@written_option
@job
def of_expiring(desk: Desk, days: int, csv_file: Path | None, html: Path | None) -> int:
    """Certificates in force whose last day is near or over.

    Example: python3 tankschool.py register report expiring --days 180
    """
    with desk.registry() as registry:
        report = expiring_soon(registry, now=desk.now, days=days)
    today = desk.now.date()
    left = [(row, max(0, (date.fromisoformat(row[5]) - today).days)) for row in report.rows]
    bars = [Bar(f"{row[0]}  {row[2] or '–'}", gone / max(days, 1), row[5]) for row, gone in left]
    return _given(desk, report, bars, csv_file, html)


@report_jobs.command("tanks")
@written_option
@job
def of_tanks(desk: Desk, csv_file: Path | None, html: Path | None) -> int:
    """Each tank: place, size, hold points, leak test, who built and checked, complaints.

    Example: python3 tankschool.py register report tanks --csv tanks.csv
    """
    with desk.registry() as registry:
        report = tank_report(registry)
    most = len(HOLD_POINTS)
    bars = [Bar(f"{row[0]}  {row[1]}", row[5] / most, f"{row[5]} / {most}") for row in report.rows]
    return _given(desk, report, bars, csv_file, html)
