"""Spreadsheets: the template, reading what was filled in, and the cell of every problem."""

from __future__ import annotations

import io
import zipfile
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from openpyxl import Workbook, load_workbook

from generator.commands.register_workbook import COLUMNS, LARGEST_FILE, read_sheet
from generator.problems import ProblemsError
from tests.commands.register_office import Office, answers, course, new_office


@pytest.fixture
def office(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Office:
    return new_office(tmp_path, monkeypatch, capsys)


def book(**sheets: list[list[Any]]) -> bytes:
    """A workbook of some sheets."""
    made = Workbook()
    assert made.active is not None
    made.remove(made.active)
    for name, rows in sheets.items():
        page = made.create_sheet(name)
        for row in rows:
            page.append(row)
    out = io.BytesIO()
    made.save(out)
    return out.getvalue()


def test_the_template_is_filled_in_and_read_again(office: Office) -> None:
    office.staff()
    path = office.home / "ridge.xlsx"
    office.good("template", str(path), "--language", "hi")
    made = load_workbook(path)
    assert made.sheetnames[1:] == list(COLUMNS)
    assert [cell.value for cell in made["marks"][1]] == ["learner", "question", "answer"]
    assert made["marks"]["C5"].number_format == "@"
    made["people"]["A2"], made["people"]["B2"] = "=Asha", "en"
    made["people"]["A2"].data_type = "s"
    made["people"]["A3"] = "बीर"
    made.save(path)
    assert office.data("cohorts", "import", "1", str(path), "--by", "1")["new"] == 2
    assert [row["name"] for row in office.data("people", "list")["rows"]][4:] == ["=Asha", "बीर"]
    code, _, err = office("template", str(path))
    assert (code, "already" in err) == (3, True)


def test_a_cohort_s_names_and_steps_stand_in_the_template(office: Office) -> None:
    office.staff()
    office.class_list("Asha", "Bir")
    record = office.exam(["Asha", "Bir"])
    path = office.home / "ridge.xlsx"
    office.good("template", str(path), "--cohort", "1", "--practical", "close-a-ring", "--by", "1")
    made = load_workbook(path)
    steps = len(course().practicals["close-a-ring"].steps)
    rows = list(made["observations"].iter_rows(min_row=2, max_row=2 * steps + 1))
    assert {row[0].value for row in rows} == {"Asha", "Bir"}
    for row in rows:
        row[3].value = "done"
    for number, line in enumerate(answers(record).splitlines()[1:], start=2):
        learner, label, text = line.replace('"', "").split(",")
        made["marks"].cell(number, 1, int(learner))
        made["marks"].cell(number, 2, label)
        made["marks"].cell(number, 3, float(text) if text.replace(".", "").isdigit() else text)
    made.save(path)
    day = office.now.date().isoformat()
    for observer in ("4", "2"):
        seen = ("observations", "import", "1", str(path), "--observer", observer, "--observed-on", day, "--by", "1")
        assert office.data(*seen)["new"] == 2 * steps
    office.good("marks", "import", "1", str(path), "--by", "1")
    office.cut()
    found = office.data("decide", "1", "frame-hand", "--by", "1", "--oral", office.talks("Asha", "Bir"))
    assert [row["passed"] for row in found["decisions"]] == [True, True]


def test_problems_name_the_cell(office: Office) -> None:
    office.staff()
    data = book(people=[["name", "language"], ["Asha", "xx"], [], ["Bir, of the hill", "en"], ["12", "en"]])
    code, _, err = office("cohorts", "import", "1", office.write("c.xlsx", data), "--by", "1")
    assert code == 1
    assert "c.xlsx people!B2" in err
    assert "c.xlsx people!A5" in err
    assert len(office.data("people", "list")["rows"]) == 4


@pytest.mark.parametrize(
    ("value", "said"),
    [("=1+1", "formula"), (date(2031, 3, 4), "a day or a time"), ("#N/A", "error")],
    ids=["formula", "day", "error"],
)
def test_what_a_spreadsheet_made_of_an_answer_is_told(value: Any, said: str) -> None:
    with pytest.raises(ProblemsError, match=said) as caught:
        read_sheet("m.xlsx", book(marks=[["learner", "question", "answer"], ["Asha", 1, value]]), "marks")
    assert caught.value.problems[0].file == "m.xlsx marks!C2"


def test_numbers_and_texts_stay_as_they_were_typed() -> None:
    rows = [["learner", "question", "answer"], [1, 2.0, 0.1 + 0.2], ["Asha", "3", 'a "b", c;d'], ["B\nC", 4, True]]
    found = read_sheet("m.xlsx", book(Marks=rows), "marks")
    assert found.data.decode().splitlines()[1:] == ["1,2,0.3", 'Asha,3,"a ""b"", c;d"', "B C,4,true"]
    assert [found.cell(3, column) for column in (1, 5, 6, 7, 8, 99)] == ["A3", "A3", "B3", "B3", "C3", "C3"]


def test_files_that_are_no_workbook_are_told() -> None:
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as file:
        file.writestr("xl/big.xml", b"0" * 201_000_000)
    for data, said in (
        (b"PK\x03\x04junk", "can't be read"),
        (b"PK\x03\x04" + b"0" * LARGEST_FILE, "are the most"),
        (packed.getvalue(), "packed so densely"),
        (book(other=[["x"]]), "no sheet 'people'"),
    ):
        with pytest.raises(ProblemsError, match=said):
            read_sheet("x.xlsx", data, "people")


def test_the_csv_template_is_guarded(office: Office) -> None:
    office.staff()
    office.class_list("=Asha", "Bir")
    path = office.home / "o.csv"
    office.good(
        "template", str(path), "--table", "observations", "--cohort", "1", "--practical", "close-a-ring", "--by", "1"
    )
    rows = path.read_text("utf-8-sig").splitlines()
    assert rows[1].startswith("1,close-a-ring,")
    assert office("template", str(office.home / "x.csv"))[0] == 2
    assert office("template", str(office.home / "x.pdf"))[0] == 2
