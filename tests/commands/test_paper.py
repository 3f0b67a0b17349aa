"""From a class list to an archived exam, back from the archive, and from answers of every form to a decision."""

from __future__ import annotations

import json
import shutil
from collections.abc import Sequence
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest

from generator import curriculum
from generator import registry as reg
from generator.assessment.paper_results import check_letters, checksum
from generator.commands.main import run
from generator.commands.paper import packed, unpacked
from generator.problems import ExitCode, MachineError
from generator.registry.listing import people_list
from tests.commands.course_copy import course_copy, tree
from tests.commands.test_sheets_and_mark import right_answer
from tests.three_modules import ROOT

NAMES = "name,language\nAsha Devi,\nBir Singh,hi\n"
SECRET = bytes(range(40))
SKILLS = ("ring-and-diameter", "hoop-count", "lap", "safe-steel-work")


class Place:
    """A folder with all that a run needs."""

    def __init__(self, home: Path) -> None:
        self.home = home
        self.names = home / "names.csv"
        self.names.write_text(NAMES, "utf-8")
        self.secret = home / "secret"
        self.secret.write_bytes(SECRET)
        self.registry = home / "registry.sqlite"

    def paper(self, *more: str, names: Path | None = None) -> int:
        """Run the command with everything that it always needs."""
        return run(
            [
                "paper", "--scheme", "frame-hand", "--for", str(names or self.names), "--exam", "spring",
                "--secret-file", str(self.secret), "--registry", str(self.registry), "--by", "Chanda",
                "--output", str(self.home / "out"), *more,
            ]
        )  # fmt: skip

    @property
    def folder(self) -> Path:
        """Where the papers lie."""
        papers = sorted((self.home / "out" / "papers").glob("frame-hand-????????"))
        return papers[0]

    @property
    def record(self) -> dict[str, Any]:
        """The record."""
        found: dict[str, Any] = json.loads((self.folder / "record.json").read_text("utf-8"))
        return found

    @property
    def set_id(self) -> str:
        """What is printed on the papers."""
        return self.folder.name.rsplit("-", 1)[1]


@pytest.fixture(scope="module")
def place(tmp_path_factory: pytest.TempPathFactory) -> Place:
    """An exam in all three forms."""
    found = Place(tmp_path_factory.mktemp("exam"))
    forms = ["--form", "print", "--form", "screen", "--form", "spoken"]
    assert found.paper(*forms, "--more-time", "Bir Singh=30") == ExitCode.GOOD
    return found


def seen_by(*, not_done: tuple[str, ...] = ()) -> str:
    loaded = curriculum.load(ROOT)
    assert loaded.content is not None
    steps = loaded.content.practicals["close-a-ring"].steps
    rows = [
        f"{who},close-a-ring,{s.id},{'not done' if s.id in not_done and who == 1 else 'done'}"
        for who in (1, 2)
        for s in steps
    ]
    return "learner,practical,step,seen\n" + "\n".join(rows) + "\n"


def answers(record: dict[str, Any], wrong: int = 0) -> dict[int, dict[str, str]]:
    """Right answers of both, but for the last `wrong` of the first learner."""
    found: dict[int, dict[str, str]] = {}
    for learner in record["learners"]:
        given = {str(place): right_answer(item) for place, item in enumerate(learner["items"], start=1)}
        if learner["number"] == 1:
            given |= dict.fromkeys(list(given)[len(given) - wrong :], "")
        found[learner["number"]] = given
    return found


def table(given: dict[int, dict[str, str]]) -> str:
    rows = [f'{who},{label},"{text}"' for who, texts in given.items() for label, text in texts.items()]
    return "learner,question,answer\n" + "\n".join(rows) + "\n"


def marked(place: Place, tmp_path: Path, capsys: pytest.CaptureFixture[str], given: str, *more: str) -> dict[str, Any]:
    (tmp_path / "answers.csv").write_text(given, "utf-8")
    capsys.readouterr()
    assert (
        run(["mark", str(place.folder / "record.json"), str(tmp_path / "answers.csv"), "--json", *more])
        == ExitCode.GOOD
    )
    found: dict[str, Any] = json.loads(capsys.readouterr().out)
    return found


def test_each_candidate_gets_every_form(place: Place) -> None:
    files = tree(place.folder)
    assert {name for name in files if name.startswith("001")} == {
        "001-print.pdf", "001-screen.html", "001-spoken.pdf",
    }  # fmt: skip
    assert {"key.pdf", "record.json", "all-print.pdf"} < set(files)
    assert '"minutes": 120' in files["002-screen.html"].decode()
    assert '"minutes": 90' in files["001-screen.html"].decode()


def test_what_is_given_out_holds_nothing_of_the_key(place: Place) -> None:
    course = curriculum.load(ROOT).content
    assert course is not None
    record = place.record
    ids = {item["id"] for learner in record["learners"] for item in learner["items"]}
    asks = {item["asks"] for learner in record["learners"] for item in learner["items"] if item.get("asks")}
    figures = {course.questions[name].figure for name in ids} - {None}
    for name, data in tree(place.folder).items():
        if name.startswith("00") and name.endswith(".html"):
            text = data.decode()
            hidden = [word for word in {*ids, *asks, *figures, SECRET.hex(), record["formulas"]} if str(word) in text]
            assert hidden == []
            assert "Tankschool." not in text


def test_the_archive_gives_the_papers_back_byte_for_byte(place: Place, tmp_path: Path) -> None:
    arguments = [
        "paper",
        "--reprint",
        f"{place.set_id}-2",
        "--registry",
        str(place.registry),
        "--output",
        str(tmp_path),
    ]
    assert run(arguments) == ExitCode.GOOD
    found = {Path(name).name: data for name, data in tree(tmp_path).items()}
    made = tree(place.folder)
    assert found == {name: made[f"002-{name}"] for name in ("print.pdf", "screen.html", "spoken.pdf")}


def test_the_same_run_again_changes_nothing(place: Place) -> None:
    before = tree(place.folder)
    forms = ["--form", "print", "--form", "screen", "--form", "spoken"]
    assert place.paper(*forms, "--more-time", "Bir Singh=30") == ExitCode.GOOD
    assert tree(place.folder) == before
    with reg.open_registry(place.registry, now=reg_now()) as opened:
        assert reg.audit(opened) == ()
        assert len(reg.read_papers(opened, 1)) == 2


def reg_now() -> datetime:
    return datetime.now(UTC) + timedelta(seconds=1)


def test_other_forms_of_an_archived_exam_are_refused(place: Place, capsys: pytest.CaptureFixture[str]) -> None:
    before = tree(place.folder)
    assert place.paper("--form", "print", "--more-time", "Bir Singh=30") == ExitCode.REFUSED
    assert "with other papers, times or forms" in capsys.readouterr().err
    assert tree(place.folder) == before


def test_other_times_of_an_archived_exam_are_refused(place: Place, capsys: pytest.CaptureFixture[str]) -> None:
    before = tree(place.folder)
    assert place.paper("--form", "print", "--form", "screen", "--form", "spoken") == ExitCode.REFUSED
    assert "with other papers, times or forms" in capsys.readouterr().err
    assert tree(place.folder) == before


def test_whoever_sat_waits_and_an_exception_stays_in_the_registry(
    place: Place, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    own = tmp_path / "registry.sqlite"
    shutil.copyfile(place.registry, own)
    names = tmp_path / "one.csv"
    names.write_text("name\nAsha Devi\n", "utf-8")
    again = ["--exam", "summer", "--attempt", "2", "--registry", str(own), "--output", str(tmp_path)]
    assert place.paper(*again, names=names) == ExitCode.REFUSED  # a cohort of its own would count her tries anew
    assert "Asha Devi (person 2)" in capsys.readouterr().err
    again += ["--cohort", "spring"]
    assert place.paper(*again, names=names) == ExitCode.REFUSED
    free = datetime.now(UTC).date() + timedelta(days=14)
    assert f"Asha Devi (person 2) may try again from {free} on" in capsys.readouterr().err
    assert not list(tmp_path.glob("papers/*"))
    assert place.paper(*again, "--exception", "the lamp went out", names=names) == ExitCode.GOOD
    with reg.open_registry(own, now=reg_now()) as opened:
        assert list(reg.excepted(opened).values()) == ["the lamp went out"]
        assert reg.audit(opened) == ()


@pytest.mark.parametrize(
    ("names", "more", "said"),
    [
        ("Asha Devi", ["--cohort", "sprng"], "no cohort called 'sprng'; it has: spring"),
        ("Asha Debi", ["--cohort", "spring"], "'Asha Debi' (is it Asha Devi?) is no candidate"),
        ("Asha Devi\nZed\nYak", ["--cohort", "spring"], "nor are 1 more of the list"),
    ],
)
def test_a_slip_in_a_name_enters_nobody_anew(
    place: Place, tmp_path: Path, names: str, more: list[str], said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    own = tmp_path / "registry.sqlite"
    shutil.copyfile(place.registry, own)
    listed = tmp_path / "names.csv"
    listed.write_text(f"name\n{names}\n", "utf-8")
    again = ["--exam", "summer", "--registry", str(own), "--output", str(tmp_path), *more]
    assert place.paper(*again, names=listed) == ExitCode.REFUSED
    assert said in capsys.readouterr().err
    assert not list(tmp_path.glob("papers/*"))
    with reg.open_registry(own, now=reg_now()) as opened, reg.open_registry(place.registry, now=reg_now()) as before:
        assert people_list(opened).rows == people_list(before).rows


def test_the_coordinator_may_be_named_by_number(
    place: Place, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setenv("TANKSCHOOL_REGISTRY", str(place.registry))
    assert place.paper("--by", "2", "--exam", "other") == ExitCode.REFUSED
    assert "only a coordinator may do this, and person 2" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("number", "code", "said"),
    [("zzz", ExitCode.USAGE, "1a2b3c4d-7"), ("00000000-1", ExitCode.REFUSED, "holds no paper")],
)
def test_a_wrong_number_is_refused(
    place: Place, number: str, code: ExitCode, said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(["paper", "--reprint", number, "--registry", str(place.registry)]) == code
    assert said in capsys.readouterr().err


def test_reprint_makes_no_registry(tmp_path: Path) -> None:
    nowhere = tmp_path / "none.sqlite"
    assert run(["paper", "--reprint", "00000000-1", "--registry", str(nowhere)]) == ExitCode.REFUSED
    assert not nowhere.exists()


@pytest.mark.parametrize(
    ("more", "code", "said"),
    [
        (["--scheme", "none"], ExitCode.USAGE, "frame-hand"),
        (["--more-time", "Zed=10"], ExitCode.USAGE, "Asha Devi=30"),
        (["--more-time", "Asha Devi"], ExitCode.USAGE, "Asha Devi=30"),
        (["--exam", "Spring Exam"], ExitCode.USAGE, "small letters"),
        (["--attempt", "9"], ExitCode.REFUSED, "allows 3 tries"),
        (["--by", "Somebody", "--exam", "other"], ExitCode.REFUSED, "no coordinator called 'Somebody'"),
        (["--oral", "Zed"], ExitCode.USAGE, "not on the class list"),
    ],
)
def test_a_mistake_is_told_and_nothing_is_written(
    place: Place, more: list[str], code: ExitCode, said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    before = tree(place.home / "out")
    assert place.paper(*more) == code
    assert said in capsys.readouterr().err
    assert tree(place.home / "out") == before


def test_bad_lists_are_problems(place: Place, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "seats.csv").write_text("learner,row,seat\nAsha Devi,1,1\nBir Singh,1,1\n", "utf-8")
    assert place.paper("--seats", str(tmp_path / "seats.csv")) == ExitCode.PROBLEMS
    assert "seats.csv:3:" in capsys.readouterr().err
    (tmp_path / "names.csv").write_text("name\nAsha\nAsha\n", "utf-8")
    assert place.paper(names=tmp_path / "names.csv") == ExitCode.PROBLEMS
    assert "names.csv:3:1:" in capsys.readouterr().err
    (tmp_path / "secret").write_bytes(b"short")
    assert place.paper("--secret-file", str(tmp_path / "secret")) == ExitCode.PROBLEMS
    assert "needs 32" in capsys.readouterr().err


def test_a_rehearsal_is_not_archived(tmp_path: Path) -> None:
    found = Place(tmp_path)
    assert found.paper("--rehearsal") == ExitCode.GOOD
    assert not found.registry.exists()


def test_own_secret_and_registry_lie_in_the_users_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    (tmp_path / "names.csv").write_text("name\nAsha\n", "utf-8")
    arguments = ["paper", "--scheme", "frame-hand", "--for", str(tmp_path / "names.csv"), "--by", "Chanda"]
    assert run([*arguments, "--output", str(tmp_path / "out")]) == ExitCode.GOOD
    files = {path.name: path for path in (tmp_path / "data" / "tankschool").iterdir()}
    assert {"exam-secret.bin", "registry.sqlite"} <= set(files)
    assert files["exam-secret.bin"].stat().st_mode & 0o077 == 0


def test_a_draft_makes_no_papers(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    home = course_copy(tmp_path / "course")
    path = home / "quizzes" / "schemes" / "frame-hand.yaml"
    path.write_text(path.read_text("utf-8").replace("status: provisional", "status: draft"), "utf-8")
    assert Place(tmp_path).paper("--content", str(home)) == ExitCode.REFUSED
    assert "is a draft" in capsys.readouterr().err


def by_two(folder: Path) -> list[str]:
    """Two observers who saw the same."""
    (folder / "seen.csv").write_text(seen_by(), "utf-8")
    return ["--scheme", "frame-hand", *["--practical", str(folder / "seen.csv")] * 2]


def talks(folder: Path, more: str = "", skills: Sequence[str] = SKILLS) -> str:
    """Talks in which both candidates answered well, and other lines."""
    rows = "".join(f"{who},{turn},right,{skill}\n" for who in (1, 2) for skill in skills for turn in (1, 2))
    (folder / "talks.csv").write_text(f"learner,question,answer,competency\n{rows}{more}", "utf-8")
    return str(folder / "talks.csv")


def test_a_talk_that_is_to_come_or_went_badly_is_no_pass(
    place: Place, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    given = table(answers(place.record))
    badly = "1,1,wrong,lap\n1,2,wrong,lap\n"
    for more, skills, asked in (("", SKILLS[1:], 0), (badly, [one for one in SKILLS if one != "lap"], 2)):
        oral = talks(tmp_path, more, skills)
        found = marked(place, tmp_path, capsys, given, *by_two(tmp_path), "--oral", oral)
        reasons = found["learners"][0]["decision"]["reasons"]
        not_met = [reason for reason in reasons if not reason["met"]]
        assert [(reason["requirement"], reason["most"]) for reason in not_met] == [("talk", asked)]


def test_one_observer_where_the_scheme_wants_two_is_refused(
    place: Place, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "a.csv").write_text(table(answers(place.record)), "utf-8")
    arguments = ["mark", str(place.folder / "record.json"), str(tmp_path / "a.csv"), *by_two(tmp_path)[:-2]]
    assert run(arguments) == ExitCode.REFUSED
    assert "wants two observers" in capsys.readouterr().err


def test_right_answers_pass(place: Place, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    more = [*by_two(tmp_path), "--oral", talks(tmp_path), "--feedback", str(tmp_path / "f.pdf")]
    found = marked(place, tmp_path, capsys, table(answers(place.record)), *more)
    assert [learner["decision"]["passed"] for learner in found["learners"]] == [True, True]
    assert (tmp_path / "f.pdf").read_bytes().startswith(b"%PDF")


def test_near_the_cut_the_oral_recheck_decides(
    place: Place, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    record = place.record
    critical = set(SKILLS)
    given = answers(record)
    free = [str(n) for n, item in enumerate(record["learners"][0]["items"], 1) if item["competency"] not in critical]
    given[1] |= dict.fromkeys(free[:5], "")  # 25 - 5 = 20 points: the cut is 19, and near is 17 to 20
    more = by_two(tmp_path)
    before = marked(place, tmp_path, capsys, table(given), *more, "--oral", talks(tmp_path))
    assert [learner["decision"]["passed"] for learner in before["learners"]] == [False, True]
    for word, passed in (("right", True), ("wrong", False)):
        count = 7 if passed else 3  # .85 against .60: seven straight right, or three straight wrong
        rows = "".join(f"1,{n},{word},\n" for n in range(1, count + 1))
        found = marked(place, tmp_path, capsys, table(given), *more, "--oral", talks(tmp_path, rows))
        assert found["learners"][0]["decision"]["passed"] is passed


def test_two_observers_and_one_logged_recheck(place: Place, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "one.csv").write_text(seen_by(), "utf-8")
    (tmp_path / "two.csv").write_text(seen_by(not_done=("ring-is-round",)), "utf-8")
    (tmp_path / "again.csv").write_text("learner,practical,step,seen\n1,close-a-ring,ring-is-round,done\n", "utf-8")
    both = ["--practical", str(tmp_path / "one.csv"), "--practical", str(tmp_path / "two.csv")]
    given = table(answers(place.record))
    both += ["--oral", talks(tmp_path)]
    found = marked(place, tmp_path, capsys, given, "--scheme", "frame-hand", *both)
    assert not found["learners"][0]["decision"]["passed"]
    assert found["observers_differ"] == [["Asha Devi", "close-a-ring", "ring-is-round"]]
    assert found["observers"]["percent"] == pytest.approx(21 / 22)
    more = [*both, "--recheck", str(tmp_path / "again.csv")]
    found = marked(place, tmp_path, capsys, given, "--scheme", "frame-hand", *more)
    assert found["learners"][0]["decision"]["passed"]
    assert found["rechecked"] == [["Asha Devi", "close-a-ring", "ring-is-round"]]


def test_results_tables_and_lists_copied_by_hand_go_together(
    place: Place, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    given = answers(place.record)
    body = {
        "exam": "spring", "set": place.set_id, "number": 1, "name": "Asha Devi", "language": "en", "form": "screen",
        "answers": given[1], "minutes_allowed": 90, "seconds_used": 9, "opened": 2, "ended_by_time": False,
        "more_time": [{"minutes": 5, "who": "Chanda"}], "kept": True,
    }  # fmt: skip
    whole = {"format": 1, "kind": "exam-result", "body": body, "checksum": checksum(body)}
    (tmp_path / "results").mkdir()
    (tmp_path / "results" / "a.json").write_text(json.dumps(whole), "utf-8")
    rows = [f'2,{label},"{text}",{check_letters(place.set_id, 2, label, text)}' for label, text in given[2].items()]
    copied = "learner,question,answer,check\n" + "\n".join(rows) + "\n"
    found = marked(place, tmp_path, capsys, copied, str(tmp_path / "results"))
    assert [learner["points"] for learner in found["learners"]] == [25, 25]
    assert found["results"][0]["more_time"] == [{"minutes": 5.0, "who": "Chanda"}]


def test_double_entry_lists_every_difference(place: Place, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    given = answers(place.record)
    (tmp_path / "one.csv").write_text(table(given), "utf-8")
    given[2]["3"] = "Z"
    (tmp_path / "two.csv").write_text(table(given), "utf-8")
    arguments = ["mark", str(place.folder / "record.json"), str(tmp_path / "one.csv")]
    assert run([*arguments, "--second", str(tmp_path / "one.csv")]) == ExitCode.GOOD
    capsys.readouterr()
    assert run([*arguments, "--second", str(tmp_path / "two.csv")]) == ExitCode.PROBLEMS
    told = capsys.readouterr()
    assert "Bir Singh, question 3" in told.err
    assert told.out == ""


def test_an_empty_folder_of_results_is_a_problem(
    place: Place, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(["mark", str(place.folder / "record.json"), str(tmp_path)]) == ExitCode.PROBLEMS
    assert "no result file" in capsys.readouterr().err


def test_papers_of_another_version_are_refused(
    place: Place, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    home = course_copy(tmp_path / "course")
    path = home / "quizzes" / "schemes" / "frame-hand.yaml"
    path.write_text(path.read_text("utf-8").replace("version: 3", "version: 4", 1), "utf-8")
    (tmp_path / "a.csv").write_text(table(answers(place.record)), "utf-8")
    (tmp_path / "seen.csv").write_text(seen_by(), "utf-8")
    more = ["--scheme", "frame-hand", "--practical", str(tmp_path / "seen.csv"), "--content", str(home)]
    assert run(["mark", str(place.folder / "record.json"), str(tmp_path / "a.csv"), *more]) == ExitCode.REFUSED
    assert "version 3, and not 'frame-hand', version 4" in capsys.readouterr().err


def test_the_sheets_of_what_is_asked_aloud_are_made_alone(place: Place) -> None:
    before = tree(place.folder)
    assert place.paper("--oral", "asha devi") == ExitCode.GOOD
    assert sorted(tree(place.folder.with_name(f"{place.folder.name}-oral"))) == ["001-oral.pdf", "001-talks.pdf"]
    assert tree(place.folder) == before


@pytest.mark.parametrize(
    "files", [{"print.pdf": b"%PDF-1"}, {"screen.html": b"<!DOCTYPE"}, {"print.pdf": b"%PDF", "screen.html": b"<"}]
)
def test_what_is_packed_comes_out_again(files: dict[str, bytes]) -> None:
    assert packed(files) == packed(dict(reversed(files.items())))
    assert list(unpacked(packed(files)).values()) == list(files.values())


def test_a_damaged_box_is_said() -> None:
    with pytest.raises(MachineError, match="damaged"):
        unpacked(b"PK\x03\x04 nothing")
