"""What the registry keeps of somebody's needs is used by `paper`; an option goes before it, and both are recorded."""

from __future__ import annotations

import json
import re
import sqlite3
from pathlib import Path

import pytest

from generator.commands.main import run
from generator.problems import ExitCode
from generator.registry import Accommodation, read_accommodation
from tests.commands.register_office import Office, new_office

CLASS = "name,language\nAsha,\nBir,en\nCheptoo,\n"


@pytest.fixture
def office(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Office:
    return new_office(tmp_path, monkeypatch, capsys)


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("", Accommodation()),
        ("questions read aloud", Accommodation(note="questions read aloud")),
        ("more time: 30; form: spoken; larger print", Accommodation(30, "spoken", "larger print")),
        ("larger print; near the door; more time: 5", Accommodation(5, "", "larger print; near the door")),
        ("more time: 999; form: sung", Accommodation(note="more time: 999; form: sung")),
    ],
)
def test_what_is_kept_is_read_again(text: str, found: Accommodation) -> None:
    assert read_accommodation(text) == found
    assert read_accommodation(found.text) == found


def exam(office: Office, *more: str) -> tuple[int, str, Path]:
    """Make the papers; exit code, what was said, and their folder."""
    office.write("class.csv", CLASS)
    office.write("secret", b"a secret of the ridge, for tests!")
    office.capsys.readouterr()
    code = run([
        "paper", "--scheme", "frame-hand", "--for", str(office.home / "class.csv"), "--exam", "spring",
        "--secret-file", str(office.home / "secret"), "--registry", str(office.home / "own.sqlite"), "--by", "Meera",
        "--cohort", "Upper Terrace", "--output", str(office.home / "out"), "--form", "print", *more,
    ])  # fmt: skip
    told = office.capsys.readouterr()
    folders = list((office.home / "out" / "papers").glob("*")) if (office.home / "out").exists() else []
    return code, told.out + told.err, folders[0] if folders else office.home


def people(office: Office) -> None:
    """A cohort of three: Asha needs time and a reader, Bir nothing, Cheptoo reads Hindi."""
    place = ("--registry", str(office.home / "own.sqlite"))
    office.good("people", "first", "Meera", *place)
    office.good("people", "add", "Asha", "--more-time", "30", "--exam-form", "spoken", "--by", "1", *place)
    office.good("people", "add", "Bir", "--by", "1", *place)
    office.good("people", "add", "Cheptoo", "--reads", "hi", "--help-in-exam", "by the window", "--by", "1", *place)
    office.good("cohorts", "add", "Upper Terrace", "--starts-on", "2026-01-05", "--by", "1", *place)
    for person in ("2", "3", "4"):
        office.good("cohorts", "join", "1", person, "candidate", "--by", "1", *place)


def kept(office: Office) -> dict[str, object]:
    """What the archive says of the ways in which the papers were sat."""
    with sqlite3.connect(office.home / "own.sqlite") as connection:
        (about,) = connection.execute("select about from sittings").fetchone()
    found = json.loads(about).get("accommodations", {})
    assert isinstance(found, dict)
    return found


def test_time_form_and_language_come_from_the_registry(office: Office) -> None:
    people(office)
    code, said, folder = exam(office)
    assert code == ExitCode.GOOD, said
    names = {path.name for path in folder.iterdir()}
    assert {"001-spoken.pdf", "002-print.pdf", "003-print.pdf"} < names
    assert "001-print.pdf" not in names
    assert "Asha sits another way, as the registry says: 120 minutes, read aloud, with pictures, English." in said
    assert "For Cheptoo the registry also says: by the window." in said
    record = json.loads((folder / "record.json").read_text("utf-8"))
    assert [learner["language"] for learner in record["learners"]] == ["en", "en", "hi"]
    assert kept(office) == {"1": {"minutes": 120, "forms": ["spoken"], "by": "registry"}}


def test_the_screens_timer_has_the_minutes(office: Office) -> None:
    people(office)
    place = ("--registry", str(office.home / "own.sqlite"))
    office.good("people", "change", "2", "--exam-form", "screen", "--by", "1", *place)
    office.good("people", "change", "3", "--exam-form", "screen", "--by", "1", *place)
    _, _, folder = exam(office)
    pages = [(folder / f"00{number}-screen.html").read_text("utf-8") for number in (1, 2)]
    assert [re.findall(r'"minutes": ?([0-9]+)', page) for page in pages] == [["120"], ["90"]]


def test_an_option_goes_before_the_registry_and_is_recorded(office: Office) -> None:
    people(office)
    code, said, folder = exam(office, "--more-time", "Asha=0", "--form-for", "Asha=print", "--more-time", "Bir=15")
    assert code == ExitCode.GOOD, said
    assert not list(folder.glob("*spoken*"))
    assert (
        "Asha sits another way, as this command says, whatever the registry says: 90 minutes, on paper, English."
        in said
    )
    assert kept(office) == {
        "1": {"minutes": 90, "forms": ["print"], "by": "command"},
        "2": {"minutes": 105, "forms": ["print"], "by": "command"},
    }


def test_a_change_takes_away_what_it_names_and_keeps_the_rest(office: Office) -> None:
    people(office)
    place = ("--registry", str(office.home / "own.sqlite"))
    office.good("people", "change", "2", "--more-time", "0", "--help-in-exam", "near the door", "--by", "1", *place)
    held = json.loads(office.good("people", "show", "2", *place))["people"][0]["accommodations"]
    assert held == "form: spoken; near the door"
    office.good("people", "change", "2", "--exam-form", "usual", "--by", "1", *place)
    held = json.loads(office.good("people", "show", "2", *place))["people"][0]["accommodations"]
    assert held == "near the door"


@pytest.mark.parametrize(
    ("option", "value", "said"),
    [
        ("--form-for", "Zed=print", "write a name of the class list"),
        ("--form-for", "Asha=sung", "the forms are print, screen, spoken"),
        ("--more-time", "Asha", "Asha Devi=30"),
    ],
)
def test_a_mistake_is_told(office: Office, option: str, value: str, said: str) -> None:
    code, told, _ = exam(office, option, value)
    assert code == ExitCode.USAGE
    assert said in told
