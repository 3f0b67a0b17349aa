"""The ways to disinfect a new tank: what was printed is printed, what is recalled only warns, and the words."""

from pathlib import Path

import pytest
import yaml

from generator.calculations import chlorine_methods
from generator.calculations.chlorine_methods import (
    METHODS,
    explain_holding,
    explain_method,
    holding_warnings,
    method_chlorine,
)
from generator.formula import Constant, OutOfRangeError, Status
from generator.words import Words

FULL, FACES, BOTTOM = METHODS


def test_concentrations_as_printed() -> None:
    """ANSI/AWWA C652-11, 4.3: 10 mg/L left in the full tank; 200 on the faces; 50 at the bottom, then 2 kept."""
    assert [method.dose for method in METHODS] == [10, 200, 50]
    assert (FULL.left, FACES.left, BOTTOM.left) == (10, None, 2)


def test_only_times_and_the_share_of_the_bottom_are_recalled() -> None:
    values = {name: value for name, value in vars(chlorine_methods).items() if isinstance(value, Constant)}
    recalled = {name for name, value in values.items() if value.source.status is Status.FROM_MEMORY}
    assert recalled == {"BOTTOM_SHARE", "DAY_OF_HOLDING", "FACES_HOLDING", "BOTTOM_HOLDING"}
    assert all(value.source.status.decides for name, value in values.items() if name not in recalled)


def test_chlorine_of_each_way() -> None:
    """By hand: 8600 L x 10 mg/L = 86 g; 5 % of it, 430 L x 50 mg/L = 21.5 g."""
    assert method_chlorine(FULL, 8600) == pytest.approx(86)
    assert method_chlorine(FACES, 8600) is None
    assert method_chlorine(BOTTOM, 8600) == pytest.approx(21.5)


@pytest.mark.parametrize(
    ("method", "hours", "left", "warnings"),
    [
        (FULL, 24, 10, ()),
        (FULL, 23.9, 10, ("too_short",)),
        (FULL, 24, 9.9, ("too_little_left",)),
        (FULL, 3, None, ("too_short", "not_measured")),
        (FACES, 0.5, None, ()),
        (FACES, 0.4, None, ("too_short",)),
        (BOTTOM, 6, 2, ()),
        (BOTTOM, 6, 0, ("too_little_left",)),
    ],
)
def test_warnings_at_the_end_of_a_holding(
    method: chlorine_methods.Method, hours: float, left: float | None, warnings: tuple[str, ...]
) -> None:
    assert holding_warnings(method, hours, left) == warnings


@pytest.mark.parametrize(("hours", "left"), [(-1, 5), (24, -1), (float("nan"), 5), (24, float("nan"))])
def test_what_is_no_reading_is_refused(hours: float, left: float) -> None:
    with pytest.raises(OutOfRangeError, match="measure again"):
        holding_warnings(FULL, hours, left)


@pytest.mark.parametrize("litres", [0, -5, 50_001, float("nan")])
def test_a_tank_outside_the_course_is_refused(litres: float) -> None:
    with pytest.raises(OutOfRangeError, match="licensed engineer"):
        method_chlorine(FULL, litres)


@pytest.mark.parametrize("language", ["en", "hi"])
def test_ways_and_warnings_have_words(language: str) -> None:
    path = Path(__file__).parents[2] / f"course/words/{language}.yaml"
    texts = yaml.safe_load(path.read_text(encoding="utf-8"))["proving"]
    words = Words(language, {f"proving.{part}.{key}": text for part in ("method", "holding")
                             for key, text in texts[part].items()})  # fmt: skip
    assert [explain_method(method, words) for method in METHODS] == list(texts["method"].values())
    keys = ("too_short", "not_measured", "too_little_left")
    assert explain_holding(keys, words) == tuple(texts["holding"][key] for key in keys)
    assert set(texts["holding"]) == set(keys)
