"""From a class list to sheets, from answers to marks, from a practical to a sample certificate."""

import json
import tracemalloc
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from generator import VERSION, curriculum
from generator.commands import class_sheets
from generator.commands.main import run
from generator.commands.sheets import slug
from generator.exercises import Person, Record, make_set, to_json
from generator.problems import ExitCode
from tests.commands.course_copy import tree
from tests.three_modules import ROOT

SMALL_COURSE = True
NAMES = "name,language\nAsha Devi,\nBir Singh,hi\nसीता कुमारी,hi\n"


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A printed set of three learners."""
    home = tmp_path_factory.mktemp("class")
    (home / "names.csv").write_text(NAMES, "utf-8")
    arguments = ["sheets", "--for", str(home / "names.csv"), "--module", "frame", "--seed", "monday"]
    assert run([*arguments, "--output", str(home)]) == ExitCode.GOOD
    return next((home / "sheets").iterdir())


def right_answers(record: dict[str, Any]) -> list[tuple[int, int, str]]:
    """Answers that earn every point, read off the record as a trainer would read them off the key."""
    rows = []
    for learner in record["learners"]:
        label = 0
        for item in learner["items"]:
            for part in item.get("parts", [item]):
                label += 1
                rows.append((learner["number"], label, right_answer(part)))
    return rows


def right_answer(item: dict[str, Any]) -> str:
    """What stands in the key: a number, a letter, or letters in order."""
    letters = "ABCDEFGH"
    if item["kind"] == "number":
        return str(item["shown_key"])
    if item["kind"] == "choice":
        return " ".join(letters[place] for place, i in enumerate(item["order"]) if i in item["right"])
    if item["kind"] == "spot":
        return " ".join(item["areas"][place]["letter"] for place in item["right"])
    if item["kind"] == "spoken":
        return right_answer(item["answer"])
    if item["kind"] == "order":
        return " ".join(letters[item["order"].index(i)] for i in range(len(item["steps"])))
    return " ".join(f"{i + 1}{letters[item['order'].index(i)]}" for i in range(len(item["left"])))


def marked(folder: Path, answers: str, capsys: pytest.CaptureFixture[str], *more: str) -> dict[str, Any]:
    """The marks of typed answers, as a program reads them."""
    (folder.parent.parent / "answers.csv").write_text(answers, "utf-8")
    capsys.readouterr()
    arguments = ["mark", str(folder / "record.json"), str(folder.parent.parent / "answers.csv"), "--json", *more]
    assert run(arguments) == ExitCode.GOOD
    found: dict[str, Any] = json.loads(capsys.readouterr().out)
    return found


def test_a_class_gets_sheets_a_key_and_a_record(folder: Path) -> None:
    files = tree(folder)
    assert sorted(files) == ["key.pdf", "marking-strips.pdf", "record.json", "worksheets.pdf"]
    record = json.loads(files["record.json"])
    assert record["format"] == 1
    assert [learner["name"] for learner in record["learners"]] == ["Asha Devi", "Bir Singh", "सीता कुमारी"]
    assert len(PdfReader(BytesIO(files["worksheets.pdf"])).pages) >= 3
    givens = [json.dumps(learner["items"][0]["givens"]) for learner in record["learners"]]
    assert len(set(givens)) > 1


def test_the_same_seed_gives_the_same_bytes(folder: Path, tmp_path: Path) -> None:
    (tmp_path / "names.csv").write_text(NAMES, "utf-8")
    arguments = ["sheets", "--for", str(tmp_path / "names.csv"), "--module", "frame", "--seed", "monday"]
    assert run([*arguments, "--output", str(tmp_path)]) == ExitCode.GOOD
    assert tree(next((tmp_path / "sheets").iterdir())) == tree(folder)


def test_right_answers_earn_every_point_and_a_pass(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    record = json.loads((folder / "record.json").read_text("utf-8"))
    rows = "".join(f'{who},{question},"{answer}"\n' for who, question, answer in right_answers(record))
    seen = "learner,practical,step,seen\n"
    loaded = curriculum.load(ROOT)
    assert loaded.content is not None
    for step in loaded.content.practicals["close-a-ring"].steps:
        seen += f"1,close-a-ring,{step.id},done\n"
        seen += f"2,close-a-ring,{step.id},{'not done' if step.critical else 'done'}\n"
    (tmp_path / "seen.csv").write_text(seen, "utf-8")
    asked = {item["competency"] for item in record["learners"][0]["items"] if "competency" in item}
    skills = sorted(asked & set(loaded.content.schemes["frame-hand"].critical_competencies))
    talks = "".join(f"1,{turn},right,{skill}\n" for skill in skills for turn in (1, 2))
    (tmp_path / "talks.csv").write_text(f"learner,question,answer,competency\n{talks}", "utf-8")
    both = ["--practical", str(tmp_path / "seen.csv")] * 2
    more = ["--scheme", "frame-hand", *both, "--oral", str(tmp_path / "talks.csv")]
    more += ["--certificates", str(tmp_path / "c")]
    found = marked(folder, "learner,question,answer\n" + rows, capsys, *more)
    for learner in found["learners"]:
        assert learner["points"] == learner["most"] > 15
    passed = [learner["decision"]["passed"] for learner in found["learners"]]
    assert passed == [True, False, False]
    assert not found["learners"][0]["decision"]["signed"]
    missing = [reason for reason in found["learners"][1]["decision"]["reasons"] if not reason["met"]]
    assert {reason["requirement"] for reason in missing} >= {"critical_step"}
    certificates = tree(tmp_path / "c")
    assert [Path(path).name for path in certificates] == ["001-asha-devi.pdf"]
    text = PdfReader(BytesIO(next(iter(certificates.values())))).pages[0].extract_text()
    assert "Asha Devi" in text
    assert "Unsigned sample" in text
    assert "12 m" in text


def test_a_wrong_idea_is_named_with_what_it_does_on_the_hill(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    record = json.loads((folder / "record.json").read_text("utf-8"))
    item = record["learners"][0]["items"][0]
    name, value = next(iter(item["wrong"].items()))
    found = marked(folder, f"learner,question,answer\nAsha Devi,1,{value:.3f}\n", capsys)
    answer = found["learners"][0]["answers"][0]
    assert answer["verdict"] == "not_yet"
    assert answer["misconceptions"] == [name]
    assert len(answer["reasons"]) >= 3


@pytest.mark.parametrize(
    ("names", "message"),
    [
        (b"nam\nAsha\n", "names.csv:1:1: "),
        (b"name\nAsha\nAsha\n", "names.csv:3:1: "),
        (b"name\n\n", "names.csv:"),
        ("name\nसीता\n".encode("utf-16"), "names.csv:1:1: "),
        (b"name\nAsha\x00\n", "names.csv:2:"),
        (b"x" * 10_000_000, "names.csv:"),
        (b"name,language\nAsha,xx\n", "names.csv:2:6: "),
        (b"", "names.csv:"),
    ],
)
def test_a_bad_class_list_is_named_line_by_line_and_nothing_is_written(
    names: bytes, message: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "names.csv").write_bytes(names)
    arguments = ["sheets", "--for", str(tmp_path / "names.csv"), "--module", "frame", "--output", str(tmp_path / "out")]
    assert run(arguments) == ExitCode.PROBLEMS
    assert message in capsys.readouterr().err
    assert not (tmp_path / "out").exists()


def test_a_byte_order_mark_and_semicolons_from_a_spreadsheet_are_read(tmp_path: Path) -> None:
    (tmp_path / "names.csv").write_bytes("\ufeffname;language\r\nAsha;hi\r\n".encode())
    arguments = ["sheets", "--for", str(tmp_path / "names.csv"), "--module", "frame", "--questions", "3"]
    assert run([*arguments, "--output", str(tmp_path / "out")]) == ExitCode.GOOD


@pytest.mark.parametrize(
    ("answers", "message"),
    [
        ("learner,question\n1,1\n", "answers.csv:1:"),
        ("learner,question,answer\nNobody,1,3\n", "answers.csv:2:1: "),
        ("learner,question,answer\n1,999,3\n", "answers.csv:2:3: "),
        ("learner,question,answer\n1,1,3\n1,1,4\n", "answers.csv:3:"),
        ("", "answers.csv:"),
    ],
)
def test_a_bad_answer_file_is_named_line_by_line(
    answers: str, message: str, folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "answers.csv").write_text(answers, "utf-8")
    assert run(["mark", str(folder / "record.json"), str(tmp_path / "answers.csv")]) == ExitCode.PROBLEMS
    assert message in capsys.readouterr().err


def test_text_for_a_number_and_a_decimal_comma_are_verdicts_and_not_faults(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    record = json.loads((folder / "record.json").read_text("utf-8"))
    key = record["learners"][0]["items"][0]["shown_key"]
    comma = key.rstrip("0").replace(".", ",")
    found = marked(folder, f'learner,question,answer\n1,1,"{comma}"\n1,2,about a hand\n', capsys)
    verdicts = [answer["verdict"] for answer in found["learners"][0]["answers"][:2]]
    assert verdicts[0] in ("right", "ask_back")
    assert verdicts[1] == "ask_back"


@pytest.mark.parametrize("data", [b"", b"{", b"[]", b'{"format": 2}', b"\xff\xfe", b'{"format": 1}'])
def test_a_broken_or_newer_record_is_refused_in_words(
    data: bytes, folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "record.json").write_bytes(data)
    (tmp_path / "answers.csv").write_text("learner,question,answer\n", "utf-8")
    assert run(["mark", str(tmp_path / "record.json"), str(tmp_path / "answers.csv")]) == ExitCode.PROBLEMS
    assert "record.json:" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (["sheets"], "--for names.csv"),
        (["sheets", "no-such-sheet"], "--list"),
        (["sheets", "frame-card", "--language", "xx"], "only en, hi"),
        (["mark", "a", "b", "--scheme", "frame-hand"], "needs both"),
        (["mark", "a", "b", "--certificates", "c"], "needs a decision"),
        (["mark", "a", "b", "--scheme", "x", "--practical", "y"], "no scheme 'x'"),
    ],
)
def test_a_call_that_can_t_be_meant_is_explained(
    arguments: list[str], message: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(arguments) == ExitCode.USAGE
    assert message in capsys.readouterr().err


def test_named_sheets_are_listed_and_written(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["sheets", "--list"]) == ExitCode.GOOD
    listed = capsys.readouterr().out
    assert "close-a-ring" in listed
    assert "ready-reckoner" in listed
    names = ["close-a-ring", "frame-card", "ready-reckoner"]
    assert run(["sheets", *names, "--language", "hi", "--output", str(tmp_path)]) == ExitCode.GOOD
    assert sorted(tree(tmp_path)) == [f"sheets/{name}-hi.pdf" for name in names]


@pytest.mark.parametrize(
    ("name", "expected"), [("Asha Devi", "asha-devi"), ("सीता", ""), ("../../etc", "etc"), ("O'Neil  2", "o-neil-2")]
)
def test_a_name_becomes_a_safe_part_of_a_file_name(name: str, expected: str) -> None:
    assert slug(name) == expected


def test_a_workshop_gets_its_pack_and_every_sheet_alone(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    text = (ROOT / "docs" / "examples" / "workshop.yaml").read_text("utf-8")
    file = tmp_path / "days.yaml"
    file.write_text(text.replace("group: 12", "group: 2").replace("questions: 6", "questions: 2"), "utf-8")
    (tmp_path / "names.csv").write_text("name\nAsha Devi\nBir Singh\n", "utf-8")
    arguments = ["sheets", "--workshop", str(file), "--for", str(tmp_path / "names.csv"), "--output", str(tmp_path)]
    assert run([*arguments, "--json"]) == ExitCode.GOOD
    files = [Path(name) for name in json.loads(capsys.readouterr().out)["files"]]
    assert all(path.stat().st_size for path in files)
    assert {"pack.pdf", "programme.pdf", "record-frame.json", "marking-strips-frame.pdf"} <= {p.name for p in files}
    text = "".join(page.extract_text() for page in PdfReader(files[0]).pages)
    assert "Asha Devi" in text
    assert "Bir Singh" in text


def test_a_workshop_is_printed_in_another_language_than_its_file_where_that_is_asked_for(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Beside what was printed in its own language; a language that the program only speaks changes nothing."""
    text = (ROOT / "docs" / "examples" / "workshop-taster.yaml").read_text("utf-8")
    file = tmp_path / "taster.yaml"
    short = text.replace("group: 15", "group: 1").replace("why-thin-walls, ", "")
    file.write_text(short.replace("questions: 4", "questions: 1"), "utf-8")
    monkeypatch.setenv("TANKSCHOOL_LANGUAGE", "hi")
    folders = {}
    for asked, language in ((["--language", "hi"], "hi"), (["--language", "en"], "en"), ([], "en")):
        arguments = ["sheets", "--workshop", str(file), "--output", str(tmp_path), "--json"]
        assert run([*arguments, *asked]) == ExitCode.GOOD
        (pack, *_) = files = [Path(name) for name in json.loads(capsys.readouterr().out)["files"]]
        assert PdfReader(pack).trailer["/Root"]["/Lang"] == language
        record = next(path for path in files if path.name.startswith("record-"))
        assert {learner["language"] for learner in json.loads(record.read_bytes())["learners"]} == {language}
        folders[language] = pack.parent.name
    assert folders["hi"] == folders["en"] + "-hi"


def test_all_that_is_wrong_with_a_workshop_is_told_before_anything_is_written(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "days.yaml").write_text("format: 1\nname: X\nmodules: [frmae]\n", "utf-8")
    (tmp_path / "names.csv").write_text("name\nAsha\nASHA\n", "utf-8")
    arguments = ["sheets", "--workshop", str(tmp_path / "days.yaml"), "--for", str(tmp_path / "names.csv")]
    assert run([*arguments, "--output", str(tmp_path / "out")]) == ExitCode.PROBLEMS
    told = capsys.readouterr().err
    for word in ("unknown-module", "'dates' is missing", "'frame'", "names.csv:3"):
        assert word in told or word == "unknown-module"
    assert not (tmp_path / "out").exists()


def sheets_of(tmp_path: Path, names: str | bytes, *more: str) -> int:
    (tmp_path / "names.csv").write_bytes(names if isinstance(names, bytes) else names.encode("utf-8"))
    arguments = ["sheets", "--for", str(tmp_path / "names.csv"), "--module", "frame", "--seed", "s", "--questions", "1"]
    return run([*arguments, *more, "--output", str(tmp_path / "out")])


def test_every_fault_of_a_class_list_is_told_by_line_before_anything_is_written(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    names = "name,language\nAsha,\nASHA,\n=SUM(A1),\nதமிழ்,\n,hi\n12,\nBir,xx\n"
    assert sheets_of(tmp_path, b"\xef\xbb\xbf" + names.encode("utf-8")) == ExitCode.PROBLEMS
    told = capsys.readouterr().err
    for line in (3, 4, 5, 6, 7, 8):
        assert f"names.csv:{line}:" in told, line
    assert not (tmp_path / "out").exists()


def test_a_control_character_is_told_with_its_place(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert sheets_of(tmp_path, "name\nAsha\nBi\x07r\n") == ExitCode.PROBLEMS
    assert "names.csv:3:3" in capsys.readouterr().err
    assert not (tmp_path / "out").exists()


def test_personal_files_are_named_by_number_and_plain_letters(tmp_path: Path) -> None:
    assert sheets_of(tmp_path, "name\nJosé Núñez\nसीता कुमारी\n", "--personal") == ExitCode.GOOD
    names = sorted(path.name for path in next((tmp_path / "out" / "sheets").iterdir()).iterdir())
    assert [name for name in names if name.startswith("worksheets")] == [
        "worksheets-001-jose-nunez.pdf", "worksheets-002.pdf"
    ]  # fmt: skip
    assert all(name.isascii() for name in names)


def test_one_learners_sheet_is_the_one_of_the_whole_class(tmp_path: Path) -> None:
    assert sheets_of(tmp_path, "name\nAsha\nBir\nChaya\n") == ExitCode.GOOD
    folder = next((tmp_path / "out" / "sheets").iterdir())
    whole = [page.extract_text() for page in PdfReader(folder / "worksheets.pdf").pages]
    record = (folder / "record.json").read_bytes()
    assert sheets_of(tmp_path, "name\nAsha\nBir\nChaya\n", "--learner", "bir") == ExitCode.GOOD
    own = [page.extract_text() for page in PdfReader(folder / "worksheets.pdf").pages]
    assert own == [page for page in whole if page.startswith("The frame") and "\nBir\n" in page] != []
    assert (folder / "record.json").read_bytes() == record


def test_pictures_and_scenarios_of_a_module(tmp_path: Path) -> None:
    arguments = ["sheets", "--pictures", "--scenarios", "--module", "frame", "--language", "hi"]
    assert run([*arguments, "--output", str(tmp_path)]) == ExitCode.GOOD
    loaded = curriculum.load(ROOT)
    assert loaded.content is not None
    days = [name for name, day in loaded.content.scenarios.items() if day.module == "frame"]
    assert len(days) > 1
    assert sorted(path.name for path in (tmp_path / "sheets").iterdir()) == sorted(
        ["pictures-frame-hi.pdf", *(f"scenario-{name}-hi.pdf" for name in days)]
    )


def test_two_thousand_names_are_printed_in_files_of_two_hundred(tmp_path: Path) -> None:
    names = "name\n" + "".join(f"Goat herder {number:04d} of the ridge\n" for number in range(2000))
    assert sheets_of(tmp_path, names) == ExitCode.GOOD
    folder = next((tmp_path / "out" / "sheets").iterdir())
    files = sorted(path.name for path in folder.glob("worksheets*"))
    assert len(files) == 10
    assert files[0] == "worksheets-0001-0200.pdf"
    assert len(PdfReader(folder / files[-1]).pages) == 200
    assert len(json.loads((folder / "record.json").read_text("utf-8"))["learners"]) == 2000


def test_whatever_else_is_wrong_is_told_beside_what_cannot_be_seen(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    names = "name,language\nAsha\x07,\nAsha,\n  ASHA ,\n=1+1,\n,hi\n\u200bBir,\nChaya,xx\n王,\n" + "ऐ" * 40 + ",\n"
    assert sheets_of(tmp_path, b"\xef\xbb\xbf" + names.encode("utf-8")) == ExitCode.PROBLEMS
    told = capsys.readouterr().err
    lines = [int(line.split("names.csv:")[1].split(":")[0]) for line in told.splitlines() if "names.csv:" in line]
    assert sorted(set(lines)) == [2, 4, 5, 6, 7, 8, 9, 10]
    parts = (
        "U+0007", "already in line 3", "like a formula", "is empty", "U+200B", "no language 'xx'", "U+738B", "90 bytes",
    )  # fmt: skip
    for part in parts:
        assert part in told, part
    assert not (tmp_path / "out").exists()


def test_accents_that_were_saved_as_signs_of_their_own_are_printed(tmp_path: Path) -> None:
    assert sheets_of(tmp_path, "name\nJose\u0301 Nu\u0301n\u0303ez\nसीता शर्\u200dमा\n", "--personal") == ExitCode.GOOD
    folder = next((tmp_path / "out" / "sheets").iterdir())
    record = json.loads((folder / "record.json").read_text("utf-8"))
    assert [learner["name"] for learner in record["learners"]] == ["José Núñez", "सीता शर्\u200dमा"]
    assert (folder / "worksheets-001-jose-nunez.pdf").exists()


def test_the_record_of_a_class_that_is_made_part_by_part_is_that_of_the_whole(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """And so is the id on its sheets, which is the hash of the record."""
    monkeypatch.setattr(class_sheets, "MOST_IN_A_FILE", 2)
    names = ["Asha", "Bir", "Chaya", "Devi", "Ekta"]
    assert sheets_of(tmp_path, "name\n" + "\n".join(names)) == ExitCode.GOOD
    loaded = curriculum.load(ROOT)
    assert loaded.content is not None
    people = [Person(name) for name in names]
    whole = make_set(loaded.content, "frame", people, "s", "en", tool=f"tankschool {VERSION}", questions=1)
    folder = tmp_path / "out" / "sheets" / f"frame-{whole.set_id}"
    assert (folder / "record.json").read_bytes() == to_json(whole)
    files = sorted(path.name for path in folder.glob("worksheets*"))
    assert files == [f"worksheets-{part}.pdf" for part in ("0001-0002", "0003-0004", "0005-0005")]
    assert "Chaya" in PdfReader(folder / files[1]).pages[0].extract_text()


def test_numbers_of_personal_files_are_as_long_as_the_longest(tmp_path: Path) -> None:
    names = "name\n" + "".join(f"Goat herder {number} of the ridge\n" for number in range(1, 1001))
    assert sheets_of(tmp_path, names, "--personal", "--learner", "7", "--learner", "1000") == ExitCode.GOOD
    found = sorted(path.name for path in next((tmp_path / "out" / "sheets").iterdir()).glob("worksheets*"))
    assert found == ["worksheets-0007-goat-herder-7-of-the.pdf", "worksheets-1000-goat-herder-1000-of.pdf"]


def test_a_record_too_large_to_mark_from_is_refused_before_anything_is_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(class_sheets, "LARGEST_RECORD", 1000)
    assert sheets_of(tmp_path, "name\nAsha\nBir\n") == ExitCode.REFUSED
    assert "split the class list" in capsys.readouterr().err
    assert not (tmp_path / "out").exists()


def test_a_class_of_any_size_takes_the_memory_of_a_small_one(tmp_path: Path) -> None:
    """Until its sheets are printed: learners are kept on the disk, and the record is written as they come."""
    loaded = curriculum.load(ROOT)
    assert loaded.content is not None
    course = loaded.content

    def most(learners: int) -> tuple[float, int]:
        def parts() -> Iterator[Record]:
            for start in range(0, learners, 20):
                people = [Person(f"Goat herder {start + place}") for place in range(20)]
                yield make_set(course, "frame", people, "s", "en", tool="test", questions=4, first=start + 1)

        tracemalloc.start()
        kept = class_sheets._kept(parts(), tmp_path / "learners")
        kept.set_id()
        peak = tracemalloc.get_traced_memory()[1]
        tracemalloc.stop()
        return peak, kept.size

    most(20)
    (few, _), (many, size) = most(80), most(800)
    assert many - few < 0.5 * size, "the whole record in memory takes several times its size"
