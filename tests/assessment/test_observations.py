from __future__ import annotations

import pytest

from generator.assessment import Observations, Seen, read_observations
from generator.problems import ProblemsError
from tests.assessment.small_scheme import PRACTICALS

HEAD = "learner,practical,step,seen\n"


def read(rows: str) -> Observations:
    return read_observations("seen.csv", (HEAD + rows).encode("utf-8"), ("Asha", "Bir"), PRACTICALS)


def problems(rows: str) -> list[str]:
    with pytest.raises(ProblemsError) as caught:
        read(rows)
    return [str(problem) for problem in caught.value.problems]


def test_what_was_seen_is_read() -> None:
    assert read(
        "Asha,close-a-fence,gloves,done\n2,close-a-fence,tight,Not  Done\nasha,close-a-fence,pegs,not seen\n"
    ) == {
        ("Asha", "close-a-fence", "gloves"): Seen.DONE,
        ("Bir", "close-a-fence", "tight"): Seen.NOT_DONE,
        ("Asha", "close-a-fence", "pegs"): Seen.NOT_SEEN,
    }


def test_every_fault_is_told_with_its_line_and_column() -> None:
    assert problems(
        "Ashaa,close-a-fence,gloves,done\nBir,close-fence,gloves,done\nBir,close-a-fence,glove,yes\n"
        "Bir,close-a-fence,pegs,done\nBir,close-a-fence,pegs,not done\n"
    ) == [
        "seen.csv:2:1: unknown learner 'Ashaa' (fix: did you mean 'Asha'?)",
        "seen.csv:3:5: unknown practical 'close-fence' (fix: did you mean 'close-a-fence'?)",
        "seen.csv:4:19: unknown step 'glove' (fix: did you mean 'gloves'?)",
        "seen.csv:4:25: unknown seen 'yes' (fix: write one of: done, not done, not seen)",
        "seen.csv:6:24: step 'pegs' of Bir is 'done' in line 5 (fix: keep the row that the observer signed)",
    ]


def test_the_same_row_twice_is_harmless() -> None:
    assert len(read("Asha,close-a-fence,gloves,done\n1,close-a-fence,gloves,done\n")) == 1
