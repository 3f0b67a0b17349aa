"""The bands: each limit on both sides, each condition one band stricter, ground that is refused, and the words."""

from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations.bands import (
    Band,
    Condition,
    RefusedGround,
    conditions_of_slope,
    explain,
    judge,
    mesh_only_allowed,
)
from generator.formula import OutOfRangeError
from generator.words import Words

SMALL = {"volume": 5.0, "water_depth": 1.4, "inside_radius": 1.0, "flat_span": 2.0}
LIMITS = [
    ("volume", 12.0, 12.1, 50.0, 50.1), ("water_depth", 2.0, 2.01, 2.2, 2.21),
    ("inside_radius", 2.5 / 1.4, 1.79, 6.5 / 1.4, 4.65), ("flat_span", 2.5, 2.51, 4.2, 4.21),
]  # fmt: skip


@pytest.mark.parametrize(("name", "village", "over", "most", "beyond"), LIMITS)
def test_each_measure_alone_decides_at_its_limit(
    name: str, village: float, over: float, most: float, beyond: float
) -> None:
    bands = [judge(**{**SMALL, name: size}).band for size in (village, over, most, beyond)]
    assert bands == [Band.VILLAGE, Band.ENGINEER, Band.ENGINEER, Band.NO_BUILD_SHEET]


@pytest.mark.parametrize("condition", list(Condition))
def test_each_condition_is_one_band_stricter(condition: Condition) -> None:
    found = judge(**SMALL, conditions=[condition, condition])
    assert found.band is Band.ENGINEER
    assert found.reasons == (condition.value,)
    assert judge(**{**SMALL, "volume": 20}, conditions=[condition]).band is Band.NO_BUILD_SHEET


@pytest.mark.parametrize("ground", list(RefusedGround))
def test_bad_ground_refuses_the_smallest_tank(ground: RefusedGround) -> None:
    found = judge(**SMALL, ground=[ground])
    assert found.refused
    assert found.reasons == (ground.value,)


def test_mesh_alone_bears_only_the_smallest_tanks() -> None:
    assert mesh_only_allowed(2.0, 1.0, 0.85)
    assert not mesh_only_allowed(2.01, 1.0, 0.8)
    assert not mesh_only_allowed(1.9, 1.0, 0.86)
    assert judge(**SMALL, mesh_only=True).reasons == ("mesh_only_too_large",)


def test_a_slope_counts_only_above_fifteen_degrees_and_where_it_is_cut() -> None:
    assert conditions_of_slope(15, cut=True) == conditions_of_slope(30, cut=False) == ()
    assert conditions_of_slope(15.5, cut=True) == (Condition.STEEP_PLATFORM,)


@pytest.mark.parametrize("bad", [0.0, -1.0, float("nan"), float("inf")])
def test_a_tank_without_a_size_is_refused(bad: float) -> None:
    with pytest.raises(OutOfRangeError, match="licensed engineer"):
        judge(**{**SMALL, "volume": bad})


SIZES = st.tuples(st.floats(0.1, 120), st.floats(0.1, 4), st.floats(0.2, 8), st.floats(0, 9))


@given(sizes=SIZES, more=SIZES, conditions=st.sets(st.sampled_from(Condition)))
def test_a_larger_tank_never_gets_a_milder_band(
    sizes: tuple[float, ...], more: tuple[float, ...], conditions: set[Condition]
) -> None:
    names = ("volume", "water_depth", "inside_radius", "flat_span")
    small = judge(**dict(zip(names, sizes, strict=True)))  # type: ignore[arg-type]
    large = judge(
        **dict(zip(names, map(max, sizes, more), strict=True)),
        conditions=conditions,  # type: ignore[arg-type]
    )
    assert small.band <= large.band
    assert {Condition(code) for code in large.reasons if code in list(Condition)} == conditions


@pytest.mark.parametrize("language", ["en", "hi"])
def test_every_reason_has_words(language: str) -> None:
    texts = yaml.safe_load((Path(__file__).parents[2] / f"course/words/{language}.yaml").read_text(encoding="utf-8"))
    codes = {
        f"{m}_over_{b}" for m in ("volume", "depth", "depth_times_radius", "flat_span") for b in ("village", "engineer")
    }
    codes |= {*Condition, *RefusedGround, "mesh_only_too_large"}
    assert set(texts["band"]["reason"]) == codes
    family = {f"band.{part}.{key}": text for part in ("name", "reason") for key, text in texts["band"][part].items()}
    said = explain(judge(**SMALL, conditions=list(Condition)), Words(language, family | {"band.policy": "policy"}))
    assert said[0] == texts["band"]["name"]["no_build_sheet"]
    assert len(said) == 2 + len(Condition)
    assert set(texts["band"]["name"]) == {"village", "engineer", "no_build_sheet", "refused"}
