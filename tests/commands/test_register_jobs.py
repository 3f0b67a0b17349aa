"""The jobs of `register` as a script calls them: what they refuse, what they never write, and how each failure ends."""

from __future__ import annotations

import csv
import io
import json
import sqlite3
import subprocess
import sys
from datetime import timedelta
from pathlib import Path
from typing import get_args

import click
import pytest

from generator.assessment import Decision, Reason, Requirement
from generator.commands import register_issue
from generator.commands.main import run
from generator.commands.register import HOMES
from generator.commands.register_issue import last_day
from generator.commands.register_menu import command_at
from generator.commands.tool import ROOT
from generator.credentials import Role, Roof
from generator.curriculum.models import Scope
from generator.problems import MachineError
from generator.registry import open_registry, record_decision
from tests.commands.register_office import Office, answers, course, new_office

STRANGE = {
    "=HYPERLINK(1)": True, "आशा देवी": True, "O'Brien-Smith": True, "<b>Asha</b>": True,
    "Asha\u202e": False, "a\u200fb": False, "A" * 91: False, "x" * 10_000: False, "123": False, "  ": False,
}  # fmt: skip


@pytest.fixture
def office(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Office:
    return new_office(tmp_path, monkeypatch, capsys)


def leaves() -> list[str]:
    found = []
    for name in HOMES:
        command = command_at(name)
        found += [f"{name} {own}" for own in command.commands] if isinstance(command, click.Group) else [name]
    return found


@pytest.mark.parametrize("job", leaves())
def test_every_job_has_help_with_an_example(job: str, office: Office) -> None:
    shown = " ".join(office.good(*job.split(" "), "--help").split())
    assert f"Example: python3 tankschool.py register {job}" in shown
    assert "--registry" in shown


def test_a_mistyped_job_says_what_there_is(office: Office) -> None:
    code, _, err = office("poeple")
    assert (code, "Did you mean 'people'?" in err) == (2, True)
    assert office("people", "add", "Asha", "--language", "xx")[0] == 2
    assert not (office.home / "tankschool").exists()


@pytest.mark.parametrize(("name", "good"), STRANGE.items())
def test_names(name: str, good: bool, office: Office) -> None:
    office.good("people", "first", "Meera")
    code, _, err = office("people", "add", "--", name)
    assert (code == 0) is good
    assert good or "name" in err
    assert len(office.data("people", "list")["rows"]) == 1 + good


def test_a_registry_is_never_begun_by_a_slip_nor_within_the_project(office: Office) -> None:
    code, _, err = office("people", "list", "--registry", str(office.home / "slip.sqlite"))
    assert (code, "people first" in err) == (3, True)
    assert not (office.home / "slip.sqlite").exists()
    code, _, err = office("people", "first", "Meera", "--registry", str(ROOT / "output" / "r.sqlite"))
    assert (code, "project" in err) == (3, True)
    code, _, err = office("people", "list", "--registry", "ftp://server/x")
    assert code == 3
    office.good("people", "first", "Meera")
    assert office("people", "first", "Joseph")[0] == 3
    assert office.good("--registry", str(office.home / "tankschool" / "registry.sqlite"), "people", "list")


def test_a_course_that_can_not_be_read_stops_a_job_before_it_writes(office: Office) -> None:
    office.good("people", "first", "Meera")
    broken = office.home / "broken"
    (broken / "course").mkdir(parents=True)
    assert office("people", "add", "Asha", "--content", str(broken))[0] == 1
    assert len(office.data("people", "list")["rows"]) == 1


def test_a_hindi_name_is_the_same_however_its_letters_are_composed(office: Office) -> None:
    """Some keyboards give the letter with its dot as one sign, others as two; both look the same."""
    one, two = "बड\u093cे लाल", "ब\u095cे लाल"
    office.staff()
    office.class_list(two)
    record = office.exam([two])
    office.good("marks", "import", "1", office.write("a.csv", answers(record)), "--by", "1")
    for name in (one, two):
        office.both_saw(office.write("s.csv", office.practise(name)))
    office.cut()
    office.good("decide", "1", "frame-hand", "--by", "1", "--oral", office.talks(one))
    office.keys()
    office.issue()
    code, _, err = office("cohorts", "import", "1", office.write("t.csv", f"name\n{one}\n{two}\n"), "--by", "1")
    assert (code, "stands already" in err) == (1, True)


def test_two_coordinators_have_to_say_who_they_are(office: Office) -> None:
    office.staff()
    code, _, err = office("people", "add", "Asha")
    assert (code, "--by" in err) == (2, True)
    assert office("people", "add", "Asha", "--by", "3")[0] == 3
    office.good("people", "add", "Asha", "--by", "2")


def test_a_newer_database_and_one_that_is_none(office: Office) -> None:
    office.good("people", "first", "Meera")
    place = office.home / "tankschool" / "registry.sqlite"
    with sqlite3.connect(place) as raw:
        raw.execute("update alembic_version set version_num = 'from_the_future'")
    raw.close()
    code, _, err = office("people", "list")
    assert (code, "newer" in err) == (3, True)
    code, _, err = office("people", "list", "--registry", office.write("notes.txt", "these are notes, no database"))
    assert code in (3, 4)
    assert "Traceback" not in err


def test_all_problems_of_an_import_at_once_and_nothing_of_it_is_written(office: Office) -> None:
    office.staff()
    bad = office.write("class.csv", "name,language\nAsha,xx\n12,en\nBir,en\nbir,hi\n")
    code, _, err = office("cohorts", "import", "1", bad, "--by", "1")
    assert code == 1
    assert all(word in err for word in (":2:", ":3:", ":5:", "3 problems."))
    assert len(office.data("people", "list")["rows"]) == 4


def test_a_person_sees_all_that_is_held_and_is_erased(office: Office) -> None:
    office.decided()
    office.keys()
    number = office.issue()
    held = json.loads(office.good("people", "show", "5"))
    assert held["people"][0]["name"] == "Asha"
    assert {"answers", "observations", "decisions", "certificates", "papers"} <= held.keys()
    code, _, err = office("people", "erase", "5", "--reason", "own wish", "--by", "1")
    assert (code, number in err) == (3, True)
    office.good("status", "withdraw", number, "--reason", "own wish", "--by", "1")
    office.good("people", "erase", "5", "--reason", "own wish", "--by", "1")
    assert json.loads(office.good("people", "show", "5"))["people"][0]["name"] is None
    assert office.data("audit")["findings"] == []
    code, _, err = office("reprint", number)
    assert (code, "erased" in err) == (3, True)
    assert "Asha" not in (office.good("certificates", "list") + office.good("certificates", "show", number))


# ------------------------------------------------------------------------------------------------------ deciding


def decide(office: Office, *more: str) -> dict[str, object]:
    found = office.data("decide", "1", "frame-hand", "--by", "1", *more)
    return {row["name"]: row["passed"] for row in found["decisions"]} | {
        row["name"]: row["why"] for row in found["left_out"]
    }


def test_whoever_trained_a_candidate_decides_only_with_a_recorded_exception(office: Office) -> None:
    office.decided()
    office.good("people", "role", "3", "coordinator", "--by", "1")
    again = ("decide", "1", "frame-hand", "--by", "3", "--json", "--oral", office.talks("Asha", "Bir"))
    code, _, err = office(*again)
    assert (code, "trained" in err) == (3, True)
    office.good(*again, "--exception", "nobody else can cross the river")
    assert "cross the river" not in office.good("decisions", "list")
    office.keys()
    assert office("issue", "1", "--by", "3")[0] == 3


def test_without_a_cut_a_provisional_scheme_issues_nothing(office: Office) -> None:
    office.staff()
    office.class_list("Asha")
    record = office.exam(["Asha"])
    assert decide(office) == {"Asha": "no_marks"}
    office.good("marks", "import", "1", office.write("a.csv", answers(record)), "--by", "1")
    assert decide(office) == {"Asha": "no_observations"}
    assert office.data("decisions", "list")["rows"] == []
    seen = office.write("s.csv", office.practise("Asha"))
    day = office.now.date().isoformat()
    office.good("observations", "import", "1", seen, "--observer", "4", "--observed-on", day, "--by", "1")
    assert decide(office) == {"Asha": "one_observer"}
    office.both_saw(seen)
    assert decide(office) == {"Asha": "talk_to_come"}
    assert office.data("decisions", "list")["rows"] == []
    job = ("decide", "1", "frame-hand", "--by", "1", "--oral", office.talks("Asha"))
    assert "provisional" in office.good(*job, "--dry-run")
    assert office.data("decisions", "list")["rows"] == []
    office.good(*job)
    office.keys()
    code, _, err = office("issue", "1", "--by", "1")
    assert (code, "panel" in err) == (3, True)


def test_a_question_without_an_answer_counts_as_blank(office: Office) -> None:
    """Whoever's table holds only the questions that went well has not passed by that."""
    office.staff()
    office.class_list("Asha")
    record = office.exam(["Asha"])
    office.cut()
    lines = answers(record).splitlines()
    few = "\n".join(lines[:4]) + "\n"
    office.good("marks", "import", "1", office.write("a.csv", few), "--by", "1")
    seen = office.write("s.csv", office.practise("Asha"))
    office.both_saw(seen)
    job = ("decide", "1", "frame-hand", "--by", "1", "--oral", office.talks("Asha"))
    found = office.data(*job)["decisions"][0]
    written = next(reason for reason in found["reasons"] if reason["requirement"] == "written")
    assert (written["have"], written["most"], found["passed"]) == (3, len(lines) - 1, False)


def test_near_the_cut_the_oral_recheck_decides(office: Office) -> None:
    office.staff()
    office.class_list("Asha", "Bir")
    record = office.exam(["Asha", "Bir"])
    most = len(list(record.learners[0].labelled()))
    office.good(
        "cut", "frame-hand", "--written", "0.5", "--practical-share", "0.8", "--judges", "5", "--method", "a guess",
        "--by", "1",
    )  # fmt: skip
    need = -(-most // 2)
    typed = answers(record, blank=[1, 2], most=most - need)
    office.good("marks", "import", "1", office.write("a.csv", typed), "--by", "1")
    seen = office.write("s.csv", office.practise("Asha", "Bir"))
    office.both_saw(seen)
    assert decide(office) == {"Asha": "oral_to_come", "Bir": "oral_to_come"}
    rows = [f"Asha,{number},right," for number in range(1, 8)] + [f"Bir,{number},wrong," for number in range(1, 4)]
    asked = office.talks("Asha", "Bir", more="\n".join(rows) + "\n")
    found = office.data("decide", "1", "frame-hand", "--by", "1", "--oral", asked)
    met = {row["name"]: [r["met"] for r in row["reasons"] if r["requirement"] == "oral"] for row in found["decisions"]}
    assert met == {"Asha": [True], "Bir": [False]}
    code, _, err = office("decide", "1", "frame-hand", "--by", "1", "--panel", asked)
    assert (code, "sample panel" in err) == (3, True)


def test_trying_again_waits_as_the_scheme_says_and_the_newest_sitting_counts(office: Office) -> None:
    office.staff()
    office.class_list("Asha")
    record = office.exam(["Asha"])
    office.cut()
    office.good("marks", "import", "1", office.write("a.csv", answers(record, blank=[1])), "--by", "1")
    assert decide(office, "--person", "5") == {"Asha": False}
    free = (office.now + timedelta(days=14)).date().isoformat()
    _, archive = office.drawn(["Asha"], "second", attempt=2)
    code, _, err = office(*archive)
    assert (code, f"Asha (person 5) may try again from {free} on" in err) == (3, True)
    office.now += timedelta(days=15)
    second = office.exam(["Asha"], "second", attempt=2)
    office.good("marks", "import", "2", office.write("b.csv", answers(second)), "--by", "1")
    office.watched("Asha")
    assert decide(office, "--sitting", "1") == {}
    assert decide(office, "--oral", office.talks("Asha")) == {"Asha": True}


def test_a_recorded_exception_lets_someone_sit_again_at_once(office: Office) -> None:
    office.staff()
    office.class_list("Asha")
    record = office.exam(["Asha"])
    office.cut()
    office.good("marks", "import", "1", office.write("a.csv", answers(record, blank=[1])), "--by", "1")
    assert decide(office, "--person", "5") == {"Asha": False}
    second = office.exam(["Asha"], "second", 2, ("--exception", "the lamp went out in the first exam"))
    office.good("marks", "import", "2", office.write("b.csv", answers(second)), "--by", "1")
    office.watched("Asha")
    assert decide(office, "--oral", office.talks("Asha")) == {"Asha": True}
    kept = json.loads(office.good("people", "show", "5"))
    assert len(kept["papers"]) == 2
    assert office.data("audit")["findings"] == []


def test_a_paper_given_out_before_the_first_one_was_decided_waits_at_its_own_decision(office: Office) -> None:
    """The second paper was given out before the first one was decided, so nothing stood against it then."""
    office.staff()
    office.class_list("Asha")
    first = office.exam(["Asha"])
    office.cut()
    office.now += timedelta(days=15)
    second = office.exam(["Asha"], "second", attempt=2)
    office.good("marks", "import", "1", office.write("a.csv", answers(first, blank=[1])), "--by", "1")
    office.watched("Asha")
    with open_registry(office.home / "tankschool" / "registry.sqlite", now=office.tick()) as registry:
        record_decision(
            registry, 1, 5, Decision("frame-hand", 2, (Reason(Requirement.WRITTEN, False, "", 0, 9, 16),)),
            scheme_status="provisional", papers_read=[1], by=1, now=office.tick(),
        )  # fmt: skip
    office.good("marks", "import", "2", office.write("b.csv", answers(second)), "--by", "1")
    code, _, err = office("decide", "1", "frame-hand", "--by", "1")
    assert (code, "may try again from" in err) == (3, True)


def test_a_critical_step_that_one_observer_saw_is_not_shown(office: Office) -> None:
    office.staff()
    office.class_list("Asha")
    office.good("marks", "import", "1", office.write("a.csv", answers(office.exam(["Asha"]))), "--by", "1")
    office.cut()
    seen, day = office.write("s.csv", office.practise("Asha")), office.now.date().isoformat()
    for observer, passed in (("4", False), ("2", True)):
        office.good("observations", "import", "1", seen, "--observer", observer, "--observed-on", day, "--by", "1")
        job = ("decide", "1", "frame-hand", "--by", "1", "--dry-run", "--oral", office.talks("Asha"))
        found = office.data(*job, "--person", "5")["decisions"][0]  # named: decided on though the second is missing
        unmet = {reason["requirement"] for reason in found["reasons"] if not reason["met"]}
        assert (found["passed"], "critical_step" in unmet) == (passed, not passed)


def test_an_appeal_is_heard_by_somebody_else(office: Office) -> None:
    office.decided()
    office.good("appeal", "file", "2", "--grounds", "question 4 was smudged", "--by", "1")
    closing = ("appeal", "close", "1", "set_aside", "--reasons", "it was smudged")
    assert office(*closing, "--by", "1")[0] == 3
    office.good(*closing, "--by", "2")
    office.keys()
    code, _, err = office("issue", "2", "--by", "1")
    assert (code, "set aside" in err) == (3, True)
    assert office.data("appeal", "list")["rows"][0]["outcome"] == "set_aside"


def test_practice_decides_nothing(office: Office) -> None:
    office.staff()
    office.class_list("Asha")
    names = office.write("n.csv", "name\nAsha\n")
    assert run(["sheets", "--for", names, "--module", "frame", "--seed", "x", "--output", str(office.home)]) == 0
    record = str(next((office.home / "sheets").rglob("record.json")))
    archive = ("sittings", "archive", "1", record, "--held-on", office.now.date().isoformat(), "--by", "1")
    code, _, err = office(*archive, "--scheme", "frame-hand")
    assert (code, "not drawn as an exam" in err) == (3, True)
    office.good(*archive)
    assert decide(office) == {"Asha": "no_paper"}
    assert office("decide", "1", "frame-hand", "--sitting", "1", "--by", "1")[0] == 3


# ------------------------------------------------------------------------------------------- keys and certificates


def test_missing_keys_and_a_wrong_passphrase_write_nothing(office: Office, monkeypatch: pytest.MonkeyPatch) -> None:
    office.decided()
    code, _, err = office("issue", "1", "--by", "1")
    assert (code, "keys new" in err) == (3, True)
    office.keys()
    monkeypatch.setenv("TANKSCHOOL_PASSPHRASE", "not the right words")
    for job in (("issue", "1", "--by", "1"), ("list",), ("keys", "rotate"), ("backup", str(office.home / "b.zip"))):
        code, _, err = office(*job)
        assert (code, "passphrase is wrong" in err) == (3, True)
    assert office.data("certificates", "list")["rows"] == []
    assert not (office.home / "b.zip").exists()
    code, _, err = office("keys", "new", "Another")
    assert (code, "never written over" in err) == (3, True)
    monkeypatch.setenv("TANKSCHOOL_PASSPHRASE", "short")
    code, _, err = office(
        "keys", "new", "Another", "--keys", str(office.home / "k"), "--public", str(office.home / "p")
    )
    assert (code, "too short" in err) == (3, True)
    assert not (office.home / "k").exists()


def test_where_the_paper_can_not_be_written_no_certificate_is_issued(
    office: Office, monkeypatch: pytest.MonkeyPatch
) -> None:
    office.decided()
    office.keys()

    def full(*_: object, **__: object) -> None:
        raise MachineError("'x' could not be written: No space left on device")

    with monkeypatch.context() as patch:
        patch.setattr(register_issue, "save", full)
        code, _, err = office("issue", "1", "--by", "1")
    assert (code, "No space left" in err) == (4, True)
    assert office.data("certificates", "list")["rows"] == []
    assert office.issue().split("-")[1] == "C000001"


def test_a_name_that_no_font_has_is_refused_before_anything_is_kept(office: Office) -> None:
    office.decided()
    office.keys()
    office.good("people", "change", "5", "--name", "Asha 🐐", "--by", "1")
    code, _, err = office("issue", "1", "--by", "1")
    assert (code, "Refused" in err) == (3, True)
    assert office.data("certificates", "list")["rows"] == []
    assert list((office.home / "tankschool").rglob("*.pdf")) == []


def test_status_renewal_expiry_and_printing_again(office: Office) -> None:
    office.decided()
    office.keys()
    number = office.issue()
    slip = number.replace("C000001", "C000007")
    assert office("status", "suspend", slip, "--reason", "x")[0] == 2
    office.good("status", "suspend", number.lower(), "--reason", "the tank leaks", "--by", "1")
    code, _, err = office("reprint", number)
    assert (code, "suspended" in err) == (3, True)
    office.good("status", "reinstate", number, "--reason", "mended", "--by", "1")
    before = (office.home / "tankschool" / "certificates" / f"{number}.pdf").read_bytes()
    elsewhere = office.home / "again"
    office.good("reprint", number, "--folder", str(elsewhere))
    assert (elsewhere / f"{number}.pdf").read_bytes() == before
    assert office.data("status", "expire", "--by", "1")["expired"] == []
    assert office.data("report", "expiring", "--days", "3000")["rows"][0]["certificate"] == number
    office.now += timedelta(days=3 * 366 + 5)
    assert office.data("status", "expire", "--by", "1")["expired"] == [number]
    history = office.data("certificates", "show", number)["changes"]
    assert [change["becomes"] for change in history] == ["active", "suspended", "active", "expired"]
    code, _, err = office("status", "renew", number, "1", "--by", "1")
    assert (code, "one decision, one certificate" in err) == (3, True)


def test_keys_are_rotated_copied_and_stolen(office: Office) -> None:
    office.decided()
    office.keys()
    shown = office.data("keys", "show")
    first = office.data("issue", "1", "--by", "1")
    office.good("keys", "copy", str(office.home / "copy.json"))
    rotated = office.data("keys", "rotate")
    assert (len(rotated["keys"]), rotated["words"] == shown["words"]) == (2, False)
    data = str(office.home / "tankschool")
    assert run(["verify", first["signed"], "--data", data]) == 0
    old = rotated["keys"][0]["key"]
    office.good("keys", "stolen", "--since", office.now.date().isoformat(), "--key", old)
    assert run(["verify", first["signed"], "--data", data]) == 3
    office.good("list")
    assert run(["verify", first["signed"], "--data", data]) == 0
    assert office("keys", "stolen", "--since", "2999-01-01")[0] == 2
    assert office("keys", "stolen", "--since", "2026-01-01", "--key", "zz")[0] == 2
    code, _, err = office("keys", "stolen", "--since", "2026-01-01", "--key", "00000000")
    assert (code, "no key" in err) == (3, True)


def test_the_codes_of_a_scope_are_those_that_a_signature_has() -> None:
    fields = Scope.model_fields
    roles, roofs = (get_args(get_args(fields[name].annotation)[0]) for name in ("role_code", "roof_code"))
    assert (roles, roofs) == (tuple(map(str, Role)), tuple(map(str, Roof)))
    assert all(scheme.scope.role_code and scheme.scope.roof_code for scheme in course().schemes.values())


def test_the_last_day_is_the_one_before(office: Office) -> None:
    day = office.now.date()
    assert last_day(day, 1) + timedelta(days=1) == day.replace(year=day.year + 1)


# ------------------------------------------------------------------------------------------------ reports, keeping


def test_reports_as_table_csv_and_page(office: Office) -> None:
    office.decided()
    office.good("people", "change", "5", "--name", "=1+1", "--by", "1")
    office.good("people", "change", "6", "--name", "<script>Bir", "--by", "1")
    table, page = office.home / "t.csv", office.home / "t.html"
    jobs = (("cohort", "1"), ("competency",), ("passes",), ("expiring",), ("tanks",))
    for job in jobs:
        assert "rows" in office.data("report", *job)
        office.good("report", *job, "--csv", str(table), "--html", str(page), "--language", "hi")
        assert list(csv.reader(io.StringIO(table.read_bytes().decode("utf-8-sig"))))
        text = page.read_text("utf-8")
        assert "<script" not in text
        assert 'lang="hi"' in text
    office.good("report", "cohort", "1", "--csv", str(table), "--html", str(page))
    assert "'=1+1" in table.read_text("utf-8-sig")
    text = page.read_text("utf-8")
    assert "&lt;script&gt;Bir" in text
    assert "<svg role=" in text
    assert "http://" not in text.replace("http://www.w3.org/2000/svg", "")


def test_damage_is_told_with_exit_code_1(office: Office) -> None:
    office.decided()
    backup = str(office.home / "b.zip")
    office.good("backup", backup, "--unsigned")
    place = office.home / "tankschool" / "registry.sqlite"
    raw = sqlite3.connect(place)
    raw.execute("update cuts set written = 0.1")
    raw.commit()
    raw.close()
    code, out, err = office("audit")
    assert (code, "cuts:1" in err) == (1, True)
    office.keys()
    code, _, err = office("restore", backup, "--registry", str(office.home / "r.sqlite"))
    assert (code, "signature" in err) == (3, True)
    office.good("restore", backup, "--registry", str(office.home / "r.sqlite"), "--unchecked")
    code, _, err = office("restore", str(place), "--registry", str(office.home / "q.sqlite"), "--unchecked")
    assert (code, "no whole backup" in err) == (3, True)
    code, _, err = office("backup", str(place / "below" / "b.zip"), "--unsigned")
    assert code in (3, 4)
    assert out


def test_a_clock_that_was_wrong_is_noted(office: Office) -> None:
    office.good("people", "first", "Meera")
    office.now += timedelta(days=900)
    office.good("people", "add", "Asha")
    office.now -= timedelta(days=900)
    code, _, err = office("people", "add", "Bir")
    assert (code, "clock" in err) == (3, True)
    office.good("clock", "--reason", "the battery was empty")
    office.good("people", "add", "Bir")


def test_a_plan_that_is_none_or_a_refusal_makes_no_tank(office: Office) -> None:
    office.good("people", "first", "Meera")
    add = ("tank", "add", "Lower Terrace")
    for text, code in (
        ("no json", 1), ("[]", 1), ('{"format": 2}', 1), ('{"format": 1, "result": "village", "tank": {}}', 1),
        ('{"format": 1, "result": "refused"}', 3),
    ):  # fmt: skip
        assert office(*add, office.write("p.json", text), "--started-on", "2026-02-02")[0] == code
    engineer = {"format": 1, "result": "engineer", "tank": {"volume_m3": 23.7, "wall_height_m": 1.93}}
    code, _, err = office(*add, office.write("p.json", json.dumps(engineer)), "--started-on", "2099-02-02")
    assert (code, "look at the year" in err) == (2, True)
    assert office.data("tank", "list")["rows"] == []
    found = office.data(*add, office.write("p.json", json.dumps(engineer)), "--started-on", "2026-02-02")
    assert found["engineer"] is True


def test_other_commands_start_without_the_database() -> None:
    code = "import sys, generator.commands.main, generator.commands.register; print('sqlalchemy' in sys.modules)"
    found = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=True)
    assert found.stdout.strip() == "False"
