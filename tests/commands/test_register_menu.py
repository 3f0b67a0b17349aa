"""The guided menu, fed with answers as from a pipe: both languages, back and stop, the end of input, Ctrl-C."""

from __future__ import annotations

import io
import json
from collections.abc import Callable
from pathlib import Path

import click
import pytest

from generator.commands import register_menu
from generator.commands.main import run
from generator.commands.register_ask import HIDDEN
from generator.commands.register_menu import SECTIONS, arguments_of, command_at, key_of
from tests.commands.register_office import Office, course, new_office

Feed = Callable[..., tuple[int, str]]


@pytest.fixture
def office(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Office:
    return new_office(tmp_path, monkeypatch, capsys)


@pytest.fixture
def feed(office: Office, monkeypatch: pytest.MonkeyPatch) -> Feed:
    """Type lines into the menu; the input ends after them."""

    def call(*lines: str, language: str = "en") -> tuple[int, str]:
        monkeypatch.setattr("sys.stdin", io.StringIO("".join(f"{line}\n" for line in lines)))
        office.capsys.readouterr()
        code = run(["register", "--language", language])
        told = office.capsys.readouterr()
        return code, told.out + told.err

    return call


ALL = ["people first", *(job for jobs in SECTIONS.values() for job in jobs)]


@pytest.mark.parametrize("job", ALL)
def test_every_job_has_its_words_in_both_languages(job: str) -> None:
    for words in course().words.values():
        assert words.say_one_of("register.job", key_of(job))
        for param in command_at(job).params:
            if param.name not in HIDDEN:
                assert f"register.ask.{param.name}" in words, param.name
            if isinstance(param.type, click.Choice):
                for value in param.type.choices:
                    assert f"register.choice.{value}" in words


def test_the_menu_leads_to_every_job_but_the_first_one() -> None:
    found = set()
    for name in register_menu.register.list_commands(click.Context(register_menu.register)):
        command = command_at(name)
        found |= {f"{name} {own}" for own in command.commands} if isinstance(command, click.Group) else {name}
    assert found == set(ALL)


@pytest.mark.parametrize(("language", "stop"), [("en", "stop"), ("hi", "बस")])
def test_a_registry_is_started_and_a_person_entered(language: str, stop: str, office: Office, feed: Feed) -> None:
    words = course().words[language]
    code, out = feed("1", "Meera", "", "1", stop, language=language)
    assert (code, words.say("register.menu.bye") in out) == (0, True)
    # people, enter: name, reads hi, agreed on, public name, no help in exams, yes
    code, out = feed("1", "2", "आशा देवी", "2", "2026-01-05", "", "", "", "", "१", stop, language=language)
    assert code == 0
    rows = office.data("people", "list")["rows"]
    assert [row["name"] for row in rows] == ["Meera", "आशा देवी"]
    assert (rows[1]["language"], rows[1]["consent_on"]) == ("hi", "2026-01-05")
    assert words.say("register.menu.do_it") in out


def test_wrong_answers_are_told_at_once_and_asked_again(office: Office, feed: Feed) -> None:
    office.good("people", "first", "Meera")
    words = course().words["en"]
    code, out = feed("9 o'clock", "99", "1", "2", "", "x" * 10_000, "a\u202eb", "12", "Asha", "xx", "3", "1",
                     "04/05/2026", "2026-02-30", "2026-01-05", "", "", "", "", "1", "stop")  # fmt: skip
    assert code == 0
    assert out.count(words.say("register.wrong.choice", count=9)) == 2
    assert out.count(words.say("register.wrong.empty")) == 1
    assert out.count(words.say_one_of("register.wrong", "name")) == 3
    assert out.count(words.say_one_of("register.wrong", "unknown")) == 2
    assert out.count(words.say_one_of("register.wrong", "day")) == 2
    assert [row["name"] for row in office.data("people", "list")["rows"]] == ["Meera", "Asha"]


def test_back_goes_one_question_back_and_what_was_answered_is_kept(office: Office, feed: Feed) -> None:
    office.good("people", "first", "Meera")
    # cohort's name, then back from the day, Enter keeps the name, day, yes
    code, out = feed("2", "2", "Upper Terrace", "back", "", "2026-03-02", "1", "stop")
    assert code == 0
    assert course().words["en"].say("register.menu.keep", value="Upper Terrace") in out
    assert office.data("cohorts", "list")["rows"] == [{"cohort": 1, "name": "Upper Terrace", "starts_on": "2026-03-02"}]


@pytest.mark.parametrize("language", ["en", "hi"])
def test_a_job_on_what_is_not_there_yet_says_so_at_once(language: str, office: Office, feed: Feed) -> None:
    office.good("people", "first", "Meera")
    words = course().words[language]
    code, out = feed("7", "1", "stop", language=language)
    assert code == 0
    assert words.say("register.menu.none_yet") in out
    assert words.say("register.menu.failed", why="") not in out


def test_a_list_to_choose_from_is_in_the_readers_language(office: Office, feed: Feed) -> None:
    office.good("people", "first", "Meera")
    words = course().words["hi"]
    _, out = feed("1", "3", "1", "", "", "", "", "", "", "", "back", "stop", language="hi")
    assert "coordinator" not in out
    assert words.say_one_of("register.choice", "coordinator") in out
    assert words.say("register.menu.may_stay") in out
    assert words.say("register.menu.may_be_empty") not in out


@pytest.mark.parametrize(
    "lines", [("1", "2"), ("1", "2", "Asha"), ("1", "2", "Asha", "1", "2026-01-05", "", "", "", "")]
)
def test_input_that_ends_within_a_job_writes_nothing_of_it(lines: tuple[str, ...], office: Office, feed: Feed) -> None:
    office.good("people", "first", "Meera")
    before = office.data("audit")
    code, out = feed(*lines)
    assert (code, course().words["en"].say("register.menu.bye") in out) == (2, True)
    assert len(office.data("people", "list")["rows"]) == 1
    assert office.data("audit") == before
    for end in ("back", "stop", "0"):
        assert feed(*lines, end)[0] in (0, 2)
        assert len(office.data("people", "list")["rows"]) == 1


def test_ctrl_c_keeps_what_was_agreed_to_and_nothing_else(
    office: Office, monkeypatch: pytest.MonkeyPatch, feed: Feed
) -> None:
    office.good("people", "first", "Meera")
    lines = iter(["1", "2", "Asha", "", "", "", "", "", "", "1", "2", "Bir"])

    def read(_: str) -> str:
        for line in lines:
            return line
        raise KeyboardInterrupt

    monkeypatch.setattr(register_menu, "typed", read)
    code, out = feed()
    assert (code, course().words["en"].say("register.menu.interrupted") in out) == (2, True)
    assert [row["name"] for row in office.data("people", "list")["rows"]] == ["Meera", "Asha"]


def test_a_refused_job_keeps_its_answers_to_be_changed(office: Office, feed: Feed) -> None:
    office.staff()
    office.class_list("Asha", "Bir")
    # Joseph (2) works; change person 6's name to one that the cohort has; then another one
    code, out = feed("2", "1", "3", "6", "Asha", *[""] * 6, "1", "1", "", "Asha of the hill", *[""] * 6, "1",
                     "stop")  # fmt: skip
    assert code == 0
    assert "of the same cohort has this name" in out
    assert course().words["en"].say("register.menu.refused") in out
    assert office.data("people", "list")["rows"][5]["name"] == "Asha of the hill"


def test_an_import_is_tried_before_it_is_asked_whether_to_write_it(office: Office, feed: Feed) -> None:
    office.staff()
    path = office.write("class.csv", "name,language\nAsha,en\nBir,hi\n")
    words = course().words["en"]
    code, out = feed("1", "2", "4", "1", path, "3", "stop")
    assert (code, words.say("register.done.would_import", new=2, same=0) in out) == (0, True)
    assert len(office.data("people", "list")["rows"]) == 4
    code, out = feed("1", "2", "4", "1", "no-such-file.csv", path, "1", "stop")
    assert (code, words.say("register.done.imported", new=2, same=0) in out) == (0, True)
    assert words.say_one_of("register.wrong", "file") in out
    bad = office.write("bad.csv", "name,language\nCheptoo,xx\n")
    code, out = feed("1", "2", "4", "1", bad, "2", "stop")
    assert (code, "the course has no language 'xx'" in out) == (0, True)


@pytest.mark.parametrize("language", ["en", "hi"])
def test_an_application_names_its_witnesses_with_commas_between(language: str, office: Office, feed: Feed) -> None:
    office.staff()
    office.class_list("Asha")
    words = course().words[language]
    scheme = str(list(course().schemes).index("frame-hand") + 1)
    answers = ("1", "5", scheme, "2", "Ravi of the mill, Bina", "two letters, seen on 4 May", "1")
    stop = words.say("register.menu.stop_word")
    code, out = feed("1", "3", "3", *answers, stop, language=language)
    assert (code, words.say("register.done.application", application=1, person=5) in out) == (0, True)
    assert "'--witness=Ravi of the mill' --witness=Bina" in out
    assert office.data("application", "list")["rows"][0]["witnesses"] == 2


def test_somebody_else_takes_over_and_the_same_job_is_shown_as_a_command(office: Office, feed: Feed) -> None:
    office.staff()
    code, out = feed("1", "9", "2", "2", "2", "Lower Terrace", "2026-04-01", "1", "stop")
    assert code == 0
    assert "register cohorts add --starts-on=2026-04-01 -- 'Lower Terrace'" in out
    events = json.loads(office.good("people", "show", "2"))
    assert events["people"][0]["name"] == "Joseph"


def test_answers_become_the_words_that_one_types() -> None:
    given = {"name": "-Okello", "consent_on": "2026-01-05", "help_in_exam": "--dry-run"}
    found = list(arguments_of(command_at("people add"), given))
    assert found == ["--consent-on=2026-01-05", "--help-in-exam=--dry-run", "--", "-Okello"]
    leak = {"tank": "T", "tight": False, "hours": 4.5}
    assert list(arguments_of(command_at("tank leak-test"), leak)) == ["--hours=4.5", "--not-tight", "--", "T"]
    assert list(arguments_of(command_at("decide"), {"sittings": (1, 3), "cohort": 2})) == [
        "--sitting=1", "--sitting=3", "--", "2",
    ]  # fmt: skip


def test_a_passphrase_comes_out_of_the_same_pipe(office: Office, feed: Feed, monkeypatch: pytest.MonkeyPatch) -> None:
    office.good("people", "first", "Meera")
    monkeypatch.delenv("TANKSCHOOL_PASSPHRASE")
    phrase = "kettle stair moss button"
    code, out = feed("8", "6", "Tamarisk Ridge", "1", phrase, phrase, "7", office.write("x", "")[:-1] + "copy.json",
                     "1", "wrong words here now", "2", "stop")  # fmt: skip
    assert (code, "does not open" in out) == (0, True)
    assert phrase not in out
    assert (office.home / "tankschool" / "secret-keys.json").is_file()
    assert not (office.home / "copy.json").exists()
