"""An office of invented people at Tamarisk Ridge that works with `register` as typed, with a clock of its own."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest

from generator.assessment.paper_draw import Exam, draw_papers
from generator.commands import register_common
from generator.commands.main import run
from generator.commands.tool import ROOT
from generator.credentials import keyring
from generator.curriculum import CourseContent
from generator.exercises import Person, Record, mark_typed, to_json

START = datetime.now(UTC).replace(hour=0, minute=0, second=0, microsecond=0) - timedelta(days=40)
"""Some weeks ago, so that `verify`, which has the real clock, finds what is issued in force."""
PASSPHRASE = "goat lantern spring ladle"  # noqa: S105 (of invented keys)
SECRET = b"a secret of the ridge, for tests!"


def course() -> CourseContent:
    return register_common.course_of(ROOT)


@dataclass
class Office:
    """A data folder, a clock, and what was printed."""

    home: Path
    capsys: pytest.CaptureFixture[str]
    now: datetime = START

    def tick(self) -> datetime:
        """The time, a minute later than before."""
        self.now += timedelta(minutes=1)
        return self.now

    def __call__(self, *arguments: str) -> tuple[int, str, str]:
        """Exit code, output, errors of a job."""
        self.capsys.readouterr()
        code = run(["register", *arguments])
        told = self.capsys.readouterr()
        return code, told.out, told.err

    def good(self, *arguments: str) -> str:
        """The output of a job that has to go well."""
        code, out, err = self(*arguments)
        assert code == 0, (arguments, out, err)
        return out

    def data(self, *arguments: str) -> dict[str, Any]:
        """What a job says to a program."""
        found = json.loads(self.good(*arguments, "--json"))
        assert found["format"] == 1
        assert isinstance(found, dict)
        return found

    def write(self, name: str, text: str | bytes) -> str:
        """A file, and its name as it is typed."""
        path = self.home / name
        path.write_bytes(text if isinstance(text, bytes) else text.encode())
        return str(path)

    def staff(self) -> None:
        """Two coordinators (1, 2; 2 observes too), a trainer (3), an observer (4), a cohort (1)."""
        self.good("people", "first", "Meera")
        for name, role in (("Joseph", "coordinator"), ("Tenzin", "trainer"), ("Farida", "observer")):
            key = str(self.data("people", "add", name, "--by", "1")["person"])
            self.good("people", "role", key, role, "--by", "1")
        self.good("cohorts", "add", "Upper Terrace", "--starts-on", "2026-01-05", "--by", "1")
        self.good("people", "role", "2", "observer", "--by", "1")
        self.good("cohorts", "join", "1", "3", "trainer", "--by", "1")

    def class_list(self, *names: str) -> None:
        """Candidates, from 5 on, who agreed to be in the register."""
        rows = "".join(f"{name},en\n" for name in names)
        self.good("cohorts", "import", "1", self.write("class.csv", f"name,language\n{rows}"), "--by", "1")
        for key in range(5, 5 + len(names)):
            self.good("people", "change", str(key), "--consent-on", self.now.date().isoformat(), "--by", "1")

    def exam(self, names: Sequence[str], name: str = "first", attempt: int = 1, more: Sequence[str] = ()) -> Record:
        """An exam of the shipped scheme, archived."""
        record, archive = self.drawn(names, name, attempt)
        self.good(*archive, *more)
        return record

    def drawn(self, names: Sequence[str], name: str = "first", attempt: int = 1) -> tuple[Record, tuple[str, ...]]:
        """An exam of the shipped scheme, and the job that archives it."""
        content = course()
        exam = Exam(content.schemes["frame-hand"], name, SECRET, attempt)
        record = draw_papers(content, exam, [Person(one, "en") for one in names], "en", tool="test 1").record
        path = self.write(f"{name}.json", to_json(record))
        held = self.now.date().isoformat()
        archive = ("sittings", "archive", "1", path, "--held-on", held, "--scheme", "frame-hand", "--by", "1")
        return record, archive

    def watched(self, *names: str, missing: Sequence[tuple[str, str]] = ()) -> None:
        """Farida (4) and Joseph (2) have watched everyone's practical today, and saw the same."""
        self.both_saw(self.write("seen.csv", self.practise(*names, missing=missing)))

    def both_saw(self, table: str) -> None:
        """Both observers saw today what the table says."""
        day = self.now.date().isoformat()
        for observer in ("4", "2"):
            self.good("observations", "import", "1", table, "--observer", observer, "--observed-on", day, "--by", "1")

    def talks(self, *names: str, more: str = "") -> str:
        """A table of talks in which everyone answered well, and of other lines."""
        rows = "".join(
            f"{name},{turn},right,{skill}\n"
            for name in names
            for skill in course().schemes["frame-hand"].critical_competencies
            for turn in (1, 2)
        )
        return self.write("talks.csv", f"learner,question,answer,competency\n{rows}{more}")

    def practise(self, *names: str, missing: Sequence[tuple[str, str]] = ()) -> str:
        """A table of everyone doing every step, but for some."""
        rows = ["learner,practical,step,seen"]
        for name in names:
            for practical in course().schemes["frame-hand"].practicals:
                for step in course().practicals[practical].steps:
                    seen = "not done" if (name, step.id) in missing else "done"
                    rows.append(f"{name},{practical},{step.id},{seen}")
        return "\n".join(rows) + "\n"

    def decided(self) -> None:
        """Asha (5) and Bir (6) have passed by a recorded cut: decisions 1 and 2."""
        self.staff()
        self.class_list("Asha", "Bir")
        record = self.exam(["Asha", "Bir"])
        self.good("marks", "import", "1", self.write("a.csv", answers(record)), "--by", "1")
        self.watched("Asha", "Bir")
        self.cut()
        self.good("decide", "1", "frame-hand", "--by", "1", "--oral", self.talks("Asha", "Bir"))

    def cut(self) -> None:
        """A panel's cut."""
        self.good(
            "cut", "frame-hand", "--written", "0.7", "--practical-share", "0.8", "--judges", "5",
            "--method", "each judge guessed", "--by", "1",
        )  # fmt: skip

    def keys(self) -> None:
        """The issuer's keys."""
        self.good("keys", "new", "Tamarisk Ridge Builders' Circle")

    def issue(self, decision: int = 1) -> str:
        """The number of a new certificate."""
        return str(self.data("issue", str(decision), "--by", "1")["number"])


def typed(item: Any) -> str:
    """A right answer, found as whoever types it would: a number, or letters."""
    if item.kind == "number":
        return str(item.shown_key)
    letters = "ABCDEFGH"
    if item.kind == "choice":
        return " ".join(letters[place] for place, i in enumerate(item.order) if i in item.right)
    if item.kind == "order":
        return " ".join(letters[item.order.index(i)] for i in range(len(item.steps)))
    if item.kind == "match":
        return " ".join(f"{i + 1}{letters[item.order.index(i)]}" for i in range(len(item.left)))
    if item.kind == "spot":
        return " ".join(item.areas[i].letter for i in item.right)
    assert item.kind == "spoken"
    return typed(item.answer)


def answers(record: Record, blank: Sequence[int] = (), most: int = 99) -> str:
    """Right answers of everyone, but for some papers, whose first questions are left blank."""
    rows = ["learner,question,answer"]
    for learner in record.learners:
        for label, item, _ in learner.labelled():
            text = typed(item)
            assert mark_typed(item, text).verdict.counts, (item.id, text)
            if learner.number in blank and int(label) <= most:
                text = ""
            rows.append(f'{learner.number},{label},"{text}"')
    return "\n".join(rows) + "\n"


def new_office(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Office:
    """An office in a folder; cheap passphrases, nothing outside the folder."""
    office = Office(tmp_path, capsys)
    for name in ("XDG_DATA_HOME", "APPDATA", "HOME"):
        monkeypatch.setenv(name, str(tmp_path))
    for name in ("TANKSCHOOL_BY", "TANKSCHOOL_REGISTRY", "TANKSCHOOL_LANGUAGE", "TANKSCHOOL_KEYS"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setenv("TANKSCHOOL_PASSPHRASE", PASSPHRASE)
    monkeypatch.setattr(keyring, "SCRYPT_COST", 2)
    monkeypatch.setattr(register_common, "today", office.tick)
    return office
