"""Ground held against a tank: what is allowed, what water halves, what is refused whatever a table prints."""

from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations.bands import RefusedGround
from generator.calculations.soils import (
    BEARING,
    Family,
    FieldSign,
    Soil,
    describe_soil,
    explain_ground,
    is_loose,
    judge_ground,
    stay_out_below,
)
from generator.formula import OutOfRangeError, Status
from generator.words import Words

REASONS = {
    "pressure_too_high", "picket_too_deep", "water_halves", "wet_clay_look_again", "clay_settles", "look_for_uneven",
}  # fmt: skip


def test_every_kind_of_ground_has_a_row_out_of_print() -> None:
    assert set(BEARING) == set(Soil)
    assert all(row.value.source.status is Status.PUBLISHED for row in BEARING.values())
    assert {row.sign for row in BEARING.values()} - {None} == set(FieldSign)


@pytest.mark.parametrize("ground", list(RefusedGround))
@pytest.mark.parametrize("wet", [False, True])
def test_refused_ground_never_has_a_value(ground: RefusedGround, wet: bool) -> None:
    found = judge_ground(ground, wet=wet, pressure=0.1)
    assert found.refused
    assert found.allowed is None
    assert found.ratio is None
    assert found.reasons == (ground.value,)


@pytest.mark.parametrize("soil", list(Soil))
def test_water_halves_sand_and_gravel_and_nothing_else(soil: Soil) -> None:
    dry, wet = (judge_ground(soil, wet=wet, pressure=15) for wet in (False, True))
    assert dry.allowed is not None
    assert wet.allowed is not None
    halves = BEARING[soil].family is Family.GRAIN
    assert wet.allowed == dry.allowed * (0.5 if halves else 1)
    assert ("water_halves" in wet.reasons) is halves
    assert ("wet_clay_look_again" in wet.reasons) is (BEARING[soil].family is Family.CLAY)
    assert "water_halves" not in dry.reasons
    assert "wet_clay_look_again" not in dry.reasons


def test_wet_sand_taken_for_dry_would_pass_what_is_refused() -> None:
    """Derived: 60 kN/m2 is under the 100 of dry loose sand and over the 50 of the same sand in ground water."""
    assert not judge_ground(Soil.LOOSE_FINE_SAND, wet=False, pressure=60).refused
    wet = judge_ground(Soil.LOOSE_FINE_SAND, wet=True, pressure=60)
    assert wet.refused
    assert wet.ratio == pytest.approx(1.2)
    assert wet.reasons == ("pressure_too_high", "water_halves", "look_for_uneven")


def test_the_limit_itself_is_allowed_and_a_little_more_is_not() -> None:
    assert not judge_ground(Soil.VERY_SOFT_CLAY, wet=False, pressure=50).refused
    assert judge_ground(Soil.VERY_SOFT_CLAY, wet=False, pressure=50.1).refused


def test_a_deep_picket_contradicts_packed_ground_but_not_ground_that_is_called_loose() -> None:
    packed = judge_ground(Soil.COMPACT_GRAVEL, wet=False, pressure=20, picket_depth=220)
    assert packed.refused
    assert packed.reasons[0] == "picket_too_deep"
    assert not judge_ground(Soil.COMPACT_GRAVEL, wet=False, pressure=20, picket_depth=200).refused
    assert not judge_ground(Soil.LOOSE_GRAVEL, wet=False, pressure=20, picket_depth=260).refused


def test_a_bank_is_warned_of_above_the_height_of_a_chest() -> None:
    assert not stay_out_below(1.2)
    assert stay_out_below(1.25)


@pytest.mark.parametrize("bad", [-1.0, float("nan"), float("inf")])
def test_nonsense_is_refused_with_who_to_ask(bad: float) -> None:
    with pytest.raises(OutOfRangeError, match="licensed engineer"):
        judge_ground(Soil.SOFT_ROCK, wet=False, pressure=bad)
    with pytest.raises(OutOfRangeError, match="licensed engineer"):
        judge_ground(RefusedGround.PEAT, wet=False, pressure=10, picket_depth=bad)
    with pytest.raises(OutOfRangeError, match="licensed engineer"):
        is_loose(bad)
    with pytest.raises(OutOfRangeError, match="licensed engineer"):
        stay_out_below(bad)


def test_a_tank_without_weight_is_no_tank() -> None:
    with pytest.raises(OutOfRangeError, match="above 0"):
        judge_ground(Soil.SOFT_ROCK, wet=False, pressure=0)


@given(soil=st.sampled_from(Soil), wet=st.booleans(), pressure=st.floats(0.1, 60), more=st.floats(0, 4000))
def test_more_pressure_never_makes_ground_good(soil: Soil, wet: bool, pressure: float, more: float) -> None:
    light, heavy = (judge_ground(soil, wet=wet, pressure=load) for load in (pressure, pressure + more))
    assert light.refused <= heavy.refused
    assert light.allowed == heavy.allowed
    assert heavy.allowed is not None
    assert heavy.refused == (pressure + more > heavy.allowed + 1e-9)
    assert light.reasons[-1] == heavy.reasons[-1] == "look_for_uneven"


@pytest.mark.parametrize("language", ["en", "hi"])
def test_every_ground_sign_and_reason_has_words(language: str) -> None:
    texts = yaml.safe_load((Path(__file__).parents[2] / f"course/words/{language}.yaml").read_text(encoding="utf-8"))
    assert set(texts["ground"]["soil"]) == set(Soil)
    assert set(texts["ground"]["sign"]) == set(FieldSign)
    assert set(texts["ground"]["reason"]) == REASONS
    family = {f"ground.reason.{key}": text for key, text in texts["ground"]["reason"].items()}
    family |= {f"band.reason.{key}": text for key, text in texts["band"]["reason"].items()}
    words = Words(language, family)
    said = explain_ground(judge_ground(Soil.SOFT_CLAY, wet=True, pressure=120), words)
    assert said == tuple(
        texts["ground"]["reason"][code]
        for code in ("pressure_too_high", "wet_clay_look_again", "clay_settles", "look_for_uneven")
    )
    kinds = {f"ground.{part}.{key}": text for part in ("soil", "sign") for key, text in texts["ground"][part].items()}
    named = Words(language, kinds)
    assert describe_soil(Soil.HARD_ROCK, named) == (texts["ground"]["soil"]["hard_rock"],)
    clay = describe_soil(Soil.MEDIUM_CLAY, named)
    assert clay == (texts["ground"]["soil"]["medium_clay"], texts["ground"]["sign"]["thumb_nail"])
    assert explain_ground(judge_ground(RefusedGround.PEAT, wet=False, pressure=9), words) == (
        texts["band"]["reason"]["peat"],
    )
