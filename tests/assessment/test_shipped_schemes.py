"""Every shipped scheme keeps its gates on made-up masons, and the page that says so is not stale."""

from __future__ import annotations

import re

import pytest
import yaml

from generator.assessment import simulate as sim
from generator.commands.tool import ROOT
from tests.benchmarks.masons_curve import COMMAND, course, files, told

SCHEMES = ("frame-hand", "lead-mason", "plaster-hand", "trainer-observer")


def test_these_are_the_shipped_schemes() -> None:
    assert tuple(sorted(course().schemes)) == SCHEMES


@pytest.mark.parametrize("scheme", SCHEMES)
def test_hardly_any_weak_mason_gets_through_and_hardly_any_strong_one_is_sent_back(scheme: str) -> None:
    """Even the worse end of each interval keeps its limit; the habits that are assumed are the reference's."""
    assert (sim.HABITS.slip, sim.HABITS.number_guess) == (0.05, 0.02)
    gates = told(scheme).gates
    assert gates.weak.high < 0.01
    assert gates.lacking.high < 0.01, gates.lacking.skill
    assert gates.strong.high < 0.05


@pytest.mark.parametrize("scheme", SCHEMES)
def test_less_than_weak_and_more_than_strong_stay_on_their_side(scheme: str) -> None:
    found = told(scheme)
    assert all(one.certified == 0 for one in found.curve if one.mason.mastery <= 0.45)
    assert all(one.share > 0.95 for one in found.sure if one.mason.mastery >= 0.90)


def apart(text: str) -> tuple[str, list[float]]:
    """The text without its measured numbers, and those numbers; what gets through most often is left out as well."""
    plain = re.sub(r"\) `[a-z/-]+`", ")", text)
    return re.sub(r"\d+\.\d+", "#", plain), [float(number) for number in re.findall(r"\d+\.\d+", plain)]


def test_the_page_on_made_up_masons_is_what_the_schemes_give_today() -> None:
    """Words, schemes, versions, lengths and cuts to the letter; shares to a point and a half, for a bank grows."""
    for name, text in files().items():
        path = ROOT / name
        have, want = apart(path.read_text("utf-8") if path.exists() else ""), apart(text)
        fresh = have[0] == want[0] and have[1] == pytest.approx(want[1], abs=1.5 if name.endswith(".md") else 4.0)
        assert fresh, f"{name} is stale: run `{COMMAND}` and look at what changed"


def test_a_stale_page_is_noticed() -> None:
    name, text = next(iter(files().items()))
    assert name == "docs/made-up-masons.md"
    plain, numbers = apart(text)
    assert len(numbers) > 300
    assert apart(text.replace("frame-hand 3 | 25, 19", "frame-hand 3 | 26, 20"))[0] != plain
    assert apart(text.replace("lead-mason 1 |", "lead-mason 2 |"))[0] != plain


@pytest.mark.parametrize("name", SCHEMES)
def test_what_the_experience_route_asks_for_stands_in_the_file_and_in_its_words(name: str) -> None:
    """An applicant reads the same numbers that the registry holds the application against."""
    raw = yaml.safe_load((ROOT / f"quizzes/schemes/{name}.yaml").read_text("utf-8"))
    assert set(raw["experience"]) == {"tanks", "witnesses"}
    said = raw["experience_route"]["en"].casefold()
    count = {2: "two"}
    tanks, witnesses = (count[raw["experience"][key]] for key in ("tanks", "witnesses"))
    assert re.search(rf"\b{tanks} tanks\b", said)
    assert re.search(rf"\b{witnesses} people\b", said)
