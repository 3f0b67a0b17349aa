"""A whole story: from a class list to a certificate that verifies, a tank, a complaint, a suspension, a restore."""

from __future__ import annotations

from pathlib import Path

import pytest
from pypdf import PdfReader

from generator.commands.main import run
from generator.registry import HOLD_POINTS
from tests.commands.register_office import Office, answers, new_office


@pytest.fixture
def office(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Office:
    return new_office(tmp_path, monkeypatch, capsys)


def test_from_a_class_list_to_a_certificate_a_tank_a_complaint_and_back_from_a_backup(office: Office) -> None:
    # a cohort of three: Asha and Bir do everything, Cheptoo forgets the gloves
    office.staff()
    office.class_list("Asha", "Bir", "Cheptoo")
    record = office.exam(["Asha", "Bir", "Cheptoo"])
    typed = office.write("answers.csv", answers(record))
    tried = office.data("marks", "import", "1", typed, "--dry-run", "--by", "1")
    done = office.data("marks", "import", "1", typed, "--by", "1")
    assert (tried["kept"], done["kept"]) == (False, True)
    assert tried["new"] == done["new"] == sum(len(list(learner.labelled())) for learner in record.learners)
    assert office.data("marks", "import", "1", typed, "--by", "1")["new"] == 0
    seen = office.write("s.csv", office.practise("Asha", "Bir", "Cheptoo", missing=[("Cheptoo", "gloves-and-goggles")]))
    office.both_saw(seen)
    day = office.now.date().isoformat()

    # the cut, the decisions
    office.cut()
    talks = office.talks("Asha", "Bir", "Cheptoo")
    found = office.data("decide", "1", "frame-hand", "--by", "1", "--oral", talks)
    assert [row["passed"] for row in found["decisions"]] == [True, True, False]
    unmet = [reason for reason in found["decisions"][2]["reasons"] if not reason["met"]]
    assert "close-a-ring/gloves-and-goggles" in {reason["subject"] for reason in unmet}

    # certificates that `verify` knows
    office.keys()
    first = office.data("issue", "1", "--by", "1")
    second = office.issue(2)
    pages = PdfReader(first["file"]).pages
    assert len(pages) == 2
    assert first["number"] in pages[0].extract_text()
    assert first["number"] in pages[1].extract_text()
    data = str(office.home / "tankschool")
    assert run(["verify", first["signed"], "--data", data]) == 0
    code, _, err = office("issue", "3", "--by", "1")
    assert (code, "not yet" in err) == (3, True)
    assert not list((office.home / "tankschool" / "certificates").glob(".*"))

    # a tank: Asha builds, Bir checks
    capsys = office.capsys
    capsys.readouterr()
    assert run(["plan", "--litres", "5200", "--json"]) == 0
    plan = office.write("plan.json", capsys.readouterr().out)
    tank = office.data("tank", "add", "Lower Terrace", plan, "--started-on", day, "--by", "1")["number"]
    office.good("tank", "holder", tank, first["number"], "built", "--by", "1")
    office.good("tank", "holder", tank, second, "checked", "--by", "1")
    code, _, err = office("tank", "hold-point", tank, "ground", "good", "--by", "5")
    assert (code, "built" in err) == (3, True)
    for point in HOLD_POINTS[:-1]:
        office.good("tank", "hold-point", tank, point, "good", "--by", "6")
    assert office("tank", "hold-point", tank, "leak_test", "good", "--by", "6")[0] == 3
    office.good("tank", "leak-test", tank, "--hours", "48", "--drop", "1.5", "--tight", "--by", "6")
    office.good("tank", "hold-point", tank, "leak_test", "good", "--by", "6")
    assert office("tank", "photo", tank, office.write("e.jpg", b""), "--caption", "the cage", "--by", "6")[0] == 3
    photo = office.write("cage.jpg", b"\xff\xd8 no people")
    hashed = office.data("tank", "photo", tank, photo, "--caption", "the cage", "--by", "6")["sha256"]
    assert len(hashed) == 64

    # before the trouble: a backup
    backup = str(office.home / "stick" / "backup.zip")
    office.good("backup", backup)

    # a complaint leads to both, and Asha is suspended
    told = office.data("complaint", "file", "--tank", tank, "--about", "wet at the foot", "--by", "1")
    assert [(row["name"], row["part"]) for row in told["holders"]] == [("Asha", "built"), ("Bir", "checked")]
    office.good("status", "suspend", first["number"], "--reason", "the tank is wet at the foot", "--by", "1")
    office.good("list", "--by", "1")
    capsys.readouterr()
    assert run(["verify", first["signed"], "--data", data]) == 3
    assert capsys.readouterr().out.startswith("SUSPENDED")
    assert run(["verify", "--number", second, "--data", data]) == 0
    assert office("complaint", "close", "1", "--finding", "a crack, mended", "--by", "5")[0] == 3
    office.good("complaint", "close", "1", "--finding", "a crack, mended", "--by", "1")
    office.good("status", "reinstate", first["number"], "--reason", "the tank is mended", "--by", "1")

    # an audit against the backup's head, and a restore elsewhere
    assert office.data("audit", "--against", backup)["findings"] == []
    other = str(office.home / "other.sqlite")
    office.good("restore", backup, "--registry", other)
    assert office.data("audit", "--registry", other)["findings"] == []
    back = office.data("certificates", "list", "--registry", other)["rows"]
    assert [row["status"] for row in back] == ["active", "active"]
    assert office.data("complaint", "list", "--registry", other)["rows"] == []
    code, _, err = office("restore", backup, "--registry", other)
    assert (code, "already" in err) == (3, True)
