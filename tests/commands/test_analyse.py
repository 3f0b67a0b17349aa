"""`analyse` as a person types it: text, data, page and sheet; what does not go together; every fault at once."""

from __future__ import annotations

import json
from io import BytesIO
from pathlib import Path

import numpy as np
import pytest
from pypdf import PdfReader

from generator.commands.main import run
from generator.problems import ExitCode
from tests.assessment.answer_files import GROUPS, JUDGES, LETTERS, OBSERVERS, RATINGS


@pytest.fixture(name="folder")
def files_of_a_class(tmp_path: Path) -> Path:
    (tmp_path / "answers.csv").write_bytes(LETTERS)
    (tmp_path / "judges.csv").write_bytes(JUDGES)
    for name, text in (("ratings", RATINGS), ("groups", GROUPS), ("observers", OBSERVERS)):
        (tmp_path / f"{name}.csv").write_text(text, "utf-8")
    return tmp_path


def test_text_says_first_what_to_change(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["analyse", str(folder / "answers.csv"), "--cut", "1"]) == ExitCode.GOOD
    lines = capsys.readouterr().out.splitlines()
    assert lines[0] == "What to change first"
    assert "Only 3 learners" in lines[2]
    assert run(["analyse", str(folder / "answers.csv"), "--language", "hi"]) == ExitCode.GOOD
    assert capsys.readouterr().out.startswith("पहले क्या बदलें")


def test_everything_at_once_as_data_page_and_sheet(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    arguments = ["analyse", str(folder / "answers.csv"), "--scheme", "frame-hand", "--json"]
    for name in ("judges", "ratings", "groups", "observers"):
        arguments += [f"--{name}", str(folder / f"{name}.csv")]
    arguments += ["--html", str(folder / "out" / "r.html"), "--pdf", str(folder / "out" / "r.pdf")]
    assert run(arguments) == ExitCode.GOOD
    found = json.loads(capsys.readouterr().out)
    assert found["format"] == 1
    line = np.polyfit([1, 2, 2, 3, 3, 4, 4, 5, 5], [5, 8, 9, 11, 12, 15, 14, 18, 17], 1)
    assert found["analysis"]["regression"]["value"] == pytest.approx(float(np.polyval(line, 2)))
    assert found["analysis"]["decisions"]["cut"] == 2  # three fifths of two questions, rounded up
    assert found["files"] == [str(folder / "out" / "r.html"), str(folder / "out" / "r.pdf")]
    assert "font/woff2" in (folder / "out" / "r.html").read_text("utf-8")
    assert len(PdfReader(BytesIO((folder / "out" / "r.pdf").read_bytes())).pages) >= 2
    assert not list((folder / "out").glob("*.part"))


def test_made_up_masons_go_through_a_scheme(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["analyse", "--scheme", "frame-hand", "--masons", "--json"]) == ExitCode.GOOD
    found = json.loads(capsys.readouterr().out)["masons"]
    assert [name for name, _ in found["rows"]] == ["plain", "observers", "recheck", "talk", "oral", "retest"]
    assert all(0 <= gates["strong"]["wrong"] <= 1 for _, gates in found["rows"])
    assert found["plain"][0]["share"] <= found["plain"][-1]["share"]


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        ([], "Give a file of results"),
        (["--masons"], "--masons needs a scheme"),
        (["ANSWERS", "--cut", "1", "--scheme", "frame-hand"], "Say one of"),
        (["ANSWERS", "--scheme", "no-such"], "There is no scheme"),
        (["ANSWERS", "--cut", "3"], "more than the 2 questions"),
        (["ANSWERS", "--record", "a", "--record", "b"], "Give one record for each"),
        (["ANSWERS", "--answers", "a"], "Give typed answers for each"),
        (["ANSWERS", "--language", "xx"], "There is no language"),
    ],
)
def test_what_does_not_go_together_is_said(
    arguments: list[str], message: str, folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    words = [str(folder / "answers.csv") if word == "ANSWERS" else word for word in arguments]
    assert run(["analyse", *words]) == ExitCode.USAGE
    assert message in capsys.readouterr().err


def test_faults_of_all_files_are_told_at_once_and_nothing_is_written(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (folder / "bad.csv").write_text("learner,q1\nAsha,7\n", "utf-8")
    (folder / "judges.csv").write_text("judge,q1\nOld mason,200\n", "utf-8")
    out = folder / "r.html"
    arguments = [
        "analyse",
        str(folder / "bad.csv"),
        str(folder / "missing.csv"),
        "--judges",
        str(folder / "judges.csv"),
    ]
    assert run([*arguments, "--html", str(out)]) == ExitCode.PROBLEMS
    told = capsys.readouterr().err
    assert "bad.csv:2:6:" in told
    assert "judges.csv:2:11:" in told
    assert "missing.csv:0:0:" in told
    assert "3 problems." in told
    assert not out.exists()


def test_a_single_judge_is_refused(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (folder / "judges.csv").write_text("judge,q1\nOld mason,60\n", "utf-8")
    assert run(["analyse", "--judges", str(folder / "judges.csv")]) == ExitCode.REFUSED
    assert "no panel" in capsys.readouterr().err
