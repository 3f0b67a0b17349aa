"""Ways in and out of an exam: applications by experience, result files, two typists, rechecks, decisions that last."""

from __future__ import annotations

import json
from datetime import timedelta
from pathlib import Path

import pytest

from generator.assessment.paper_results import check_letters, checksum
from generator.exercises import Record
from tests.commands.register_office import Office, answers, course, new_office, typed
from tests.commands.test_register_jobs import decide

FILED = ("application", "file", "1", "5", "frame-hand", "--by", "1", "--evidence", "two letters, seen on 4 May")


@pytest.fixture
def office(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Office:
    return new_office(tmp_path, monkeypatch, capsys)


def untaught(office: Office) -> None:
    """The same people, in a cohort without a trainer."""
    office.good("people", "first", "Meera")
    for name, role in (("Joseph", "coordinator"), ("Ravi", "coordinator"), ("Farida", "observer")):
        key = str(office.data("people", "add", name, "--by", "1")["person"])
        office.good("people", "role", key, role, "--by", "1")
    office.good("people", "role", "2", "observer", "--by", "1")
    office.good("cohorts", "add", "Goat herders", "--starts-on", "2026-01-05", "--by", "1")
    office.class_list("Asha")


def passed_everything(office: Office) -> None:
    record = office.exam(["Asha"])
    office.cut()
    office.good("marks", "import", "1", office.write("a.csv", answers(record)), "--by", "1")
    office.watched("Asha")


# ---------------------------------------------------------------------------------------- the experience route


@pytest.mark.parametrize(
    ("more", "said"),
    [
        (("--tanks", "1", "--witness", "Ravi", "--witness", "Bina"), "tanks 1 of 2"),
        (("--tanks", "2", "--witness", "Ravi"), "witnesses 1 of 2"),
        (("--tanks", "2", "--witness", "Ravi", "--witness", "ravi"), "counts once"),
        (("--tanks", "2", "--witness", "Asha", "--witness", "Bina"), "their own work"),
    ],
)
def test_an_application_that_does_not_meet_the_route_is_refused(
    office: Office, more: tuple[str, ...], said: str
) -> None:
    untaught(office)
    code, _, err = office(*FILED, *more)
    assert (code, said in err) == (3, True)
    assert office.data("application", "list")["rows"] == []


def test_whoever_comes_by_experience_is_let_in_by_an_accepted_application_that_the_decision_shows(
    office: Office,
) -> None:
    untaught(office)
    application = (*FILED, "--tanks", "3", "--witness", "Ravi", "--witness", "Bina of the mill")
    office.good(*application)
    assert office.data(*application)["application"] == 1  # once more is the same one
    _, archive = office.drawn(["Asha"])
    code, _, err = office(*archive)
    assert (code, "application 1 of person 5 is open" in err) == (3, True)
    accept = ("application", "close", "1", "accepted", "--reasons", "both letters name the tanks")
    code, _, err = office(*accept, "--by", "3")
    assert (code, "is a witness" in err) == (3, True)
    office.good(*accept, "--by", "2")
    passed_everything(office)
    job = ("decide", "1", "frame-hand", "--by", "1", "--oral", office.talks("Asha"))
    found = office.data(*job)["decisions"][0]
    assert (found["passed"], found["reasons"][0]["requirement"], found["reasons"][0]["subject"]) == (
        True,
        "route",
        "1/2",
    )
    assert "on 3 tanks elsewhere; needed 2. Application 1, accepted by person 2." in office.good(
        "decisions", "show", "1"
    )
    assert "कहीं और 3 टंकियों" in office.good("decisions", "show", "1", "--language", "hi")
    told = office.data("decisions", "show", "1")
    assert told["inputs"]["way"] == {"by": "experience", "application": 1, "accepted_by": 2, "tanks": 3}
    assert "Bina of the mill" in office.good("people", "show", "5")
    assert office.data("audit")["findings"] == []


def test_a_refused_application_leaves_only_the_course(office: Office) -> None:
    untaught(office)
    passed_everything(office)
    assert "No way to the exam is recorded for Asha" in office.good(
        "decide", "1", "frame-hand", "--by", "1", "--dry-run", "--oral", office.talks("Asha")
    )
    office.good(*FILED, "--tanks", "2", "--witness", "Ravi", "--witness", "Bina")
    assert decide(office) == {"Asha": "application_open"}
    office.good("application", "close", "1", "refused", "--reasons", "one letter is of a trough", "--by", "2")
    assert decide(office) == {"Asha": "application_refused"}
    code, _, err = office("decide", "1", "frame-hand", "--by", "1", "--person", "5")
    assert (code, "application 1 of person 5 is refused" in err) == (3, True)
    office.good("people", "add", "Tenzin", "--by", "1")
    office.good("cohorts", "join", "1", "6", "trainer", "--by", "1")
    assert decide(office, "--oral", office.talks("Asha")) == {"Asha": True}


def test_an_erased_person_s_evidence_is_gone_and_the_chain_verifies(office: Office) -> None:
    untaught(office)
    office.good(*FILED, "--tanks", "2", "--witness", "Ravi", "--witness", "Bina of the mill")
    office.good("people", "erase", "5", "--reason", "own wish", "--by", "1")
    assert "Bina" not in office.good("people", "show", "5")
    assert office.data("audit")["findings"] == []


# ----------------------------------------------------------------------------- result files, copied lists, typists


def result_file(record: Record, number: int = 1, exam: str = "first") -> bytes:
    """What the screen saves: a body, and a checksum against damage."""
    learner = record.learners[number - 1]
    body = {
        "exam": exam, "set": record.set_id, "number": learner.number, "name": learner.name,
        "language": learner.language, "form": "screen",
        "answers": {label: typed(item) for label, item, _ in learner.labelled()},
        "minutes_allowed": 120, "seconds_used": 3000, "more_time": [{"minutes": 10, "who": "Farida"}], "opened": 2,
        "ended_by_time": False, "kept": True,
    }  # fmt: skip
    return json.dumps({"format": 1, "kind": "exam-result", "body": body, "checksum": checksum(body)}).encode()


def test_result_files_go_into_the_registry_and_damage_does_not(office: Office) -> None:
    office.staff()
    office.class_list("Asha", "Bir")
    record = office.exam(["Asha", "Bir"])
    folder = office.home / "results"
    folder.mkdir()
    (folder / "1.json").write_bytes(result_file(record).replace(b"3000", b"3001"))
    code, _, err = office("marks", "import", "1", str(folder), "--by", "1")
    assert (code, "checksum" in err) == (1, True)
    for number in (1, 2):
        (folder / f"{number}.json").write_bytes(result_file(record, number))
    told = office.good("marks", "import", "1", str(folder), "--by", "1")
    count = sum(len(list(learner.labelled())) for learner in record.learners)
    assert f"{count} new" in told
    assert "Farida" in told  # who gave ten minutes more
    assert office.data("marks", "import", "1", str(folder / "1.json"), "--by", "1")["new"] == 0


def test_a_list_copied_from_the_screen_is_held_against_its_letters(office: Office) -> None:
    office.staff()
    office.class_list("Asha")
    record = office.exam(["Asha"])
    rows = []
    for label, item, _ in record.learners[0].labelled():
        rows.append([label, typed(item), check_letters(record.set_id, 1, label, typed(item))])
    text = "learner,question,answer,check\n" + "".join(f'1,{a},"{b}",{c}\n' for a, b, c in rows)
    slip = text.replace(f",{rows[0][2]}\n", ",XX\n", 1)
    code, _, err = office("marks", "import", "1", office.write("a.csv", slip), "--by", "1")
    assert (code, "check letters 'XX'" in err) == (1, True)
    assert office.data("marks", "import", "1", office.write("a.csv", text), "--by", "1")["new"] == len(rows)


def test_two_typists_have_to_agree_before_anything_is_marked(office: Office) -> None:
    office.staff()
    office.class_list("Asha")
    record = office.exam(["Asha"])
    first, other = answers(record), answers(record, blank=[1], most=1)
    one, two = office.write("a.csv", first), office.write("b.csv", other)
    code, _, err = office("marks", "import", "1", one, "--second", two, "--by", "1")
    assert (code, "Asha, question 1: first" in err) == (1, True)
    assert decide(office) == {"Asha": "no_marks"}
    office.good("marks", "import", "1", one, "--second", office.write("b.csv", first), "--by", "1")
    assert decide(office) == {"Asha": "no_observations"}


# ------------------------------------------------------------------------------------ observers and decisions


def critical_step() -> str:
    return next(step.id for step in course().practicals["close-a-ring"].steps if step.critical)


def test_a_critical_step_is_shown_once_more_and_stays_in_the_log(office: Office) -> None:
    office.staff()
    office.class_list("Asha")
    record = office.exam(["Asha"])
    office.cut()
    office.good("marks", "import", "1", office.write("a.csv", answers(record)), "--by", "1")
    office.watched("Asha", missing=[("Asha", critical_step())])
    assert decide(office, "--dry-run", "--oral", office.talks("Asha")) == {"Asha": False}
    day = office.now.date().isoformat()
    row = "learner,practical,step,seen\nAsha,close-a-ring,{},{}\n"
    again = ("observations", "recheck", "1", office.write("again.csv", row.format(critical_step(), "done")),
             "--observer", "4", "--by", "1")  # fmt: skip
    office.now += timedelta(days=1)
    code, _, err = office(*again, "--observed-on", office.now.date().isoformat())
    assert (code, "nothing to recheck" in err) == (1, True)  # immediate: on the same day
    assert office.data(*again, "--observed-on", day)["new"] == 1
    assert office.data(*again, "--observed-on", day)["new"] == 0
    office.write("again.csv", row.format(critical_step(), "not done"))
    code, _, err = office(*again, "--observed-on", day)
    assert (code, "rechecked already" in err) == (1, True)
    assert decide(office, "--dry-run", "--oral", office.talks("Asha")) == {"Asha": "one_observer"}
    office.write("again.csv", row.format(critical_step(), "done"))
    second = (*again[:-3], "2", *again[-2:])
    assert office.data(*second, "--observed-on", day)["new"] == 1
    assert decide(office, "--oral", office.talks("Asha")) == {"Asha": True}
    shown = office.good("decisions", "show", "1")
    for person in ("2", "4"):
        assert f"shown once more: close-a-ring/{critical_step()}, done, watched by person {person}" in shown
    assert office.data("audit")["findings"] == []


def test_one_file_is_not_typed_by_two(office: Office) -> None:
    table = office.write("a.csv", "learner,question,answer\n1,1,5\n")
    code, _, err = office("marks", "import", "1", table, "--second", table, "--by", "1")
    assert (code, "same file once more" in err) == (2, True)


def test_two_observers_are_compared(office: Office) -> None:
    office.staff()
    office.class_list("Asha")
    assert "nothing can be compared" in office.good("observations", "compare", "1")
    day = office.now.date().isoformat()
    seen = office.write("seen.csv", office.practise("Asha"))
    office.good("observations", "import", "1", seen, "--observer", "4", "--observed-on", day, "--by", "1")
    other = office.write("other.csv", office.practise("Asha", missing=[("Asha", critical_step())]))
    office.good("observations", "import", "1", other, "--observer", "2", "--observed-on", day, "--by", "1")
    found = office.data("observations", "compare", "1")
    steps = len(course().practicals["close-a-ring"].steps)
    assert found["observers"]["pairs"] == steps
    assert found["observers"]["percent"] == pytest.approx((steps - 1) / steps)
    assert found["differ"] == [["Asha (1) [2, 4]", "close-a-ring", critical_step()]]
    told = office.good("observations", "compare", "1")
    assert "AC1" in told
    assert critical_step() in told


def test_a_decision_tells_years_later_what_it_rests_on_and_how_sure_it_is(office: Office) -> None:
    office.decided()
    told = office.good("decisions", "show", "1")
    for part in (
        "Asha (person 5)", "frame-hand, version 3", "Decided by Meera (person 1)", "set by 5 judges: written 0.7",
        "Paper 1, content", "Observed by person 4", "The chance that the skill reaches the cut",
    ):  # fmt: skip
        assert part in told, part
    found = office.data("decisions", "show", "1")
    inputs = found["inputs"]
    assert inputs["rule"] == {"written": 0.7, "practical": 0.8}
    assert len(inputs["papers"][0]["answers"][0]) == 64
    assert inputs["uncertainty"]["sure"] > 0.9
    assert found["cut"]["judges"] == 5
    assert "हुनर के पास-रेखा तक होने की संभावना" in office.good("decisions", "show", "1", "--language", "hi")
    assert office("decisions", "show", "9")[0] == 3
