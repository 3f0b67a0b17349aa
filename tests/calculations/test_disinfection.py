"""Disinfection. Examples are proportions, worked by hand; printed doses stand in `tests/published`."""

from pathlib import Path

import pytest
import yaml
from hypothesis import given

from generator.calculations import BOOK
from generator.calculations.disinfection import (
    HALF_WEAK_PH,
    PH_OF_NO_MORTAR,
    PH_READY,
    chlorine_warnings,
    flushes_done,
    ready_for_chlorine,
)
from generator.formula import OutOfRangeError
from generator.words import Words
from tests.calculations.worked import Example, givens, read_wrong, shown

BY_HAND: list[Example] = [
    ("tank_chlorine", {"tank_litres": 6400, "chlorine_dose": 15}, "96.0"),  # 96 000 mg
    ("chlorine_product_mass", {"tank_chlorine": 96, "available_chlorine": 30}, "320.0"),  # 96 / 0.30
    ("chlorine_liquid_volume", {"tank_chlorine": 96, "liquid_chlorine": 8}, "1200"),  # 8 g in 100 mL
    (
        "service_dose_mass", {"tank_litres": 6400, "service_dose": 1.5, "available_chlorine": 30}, "32.0",
    ),  # 9.6 g / 0.30
    ("thiosulfate_mass", {"tank_chlorine": 96}, "182"),  # 96 x 1.9 = 182.4
    ("stock_powder", {"stock_strength": 0.6, "available_chlorine": 30}, "20.0"),  # 6 g of chlorine / 0.30
    ("dilution_parts", {"liquid_chlorine": 8, "wash_strength": 0.2}, "39"),  # 40 times weaker
    ("flush_water", {"tank_litres": 6400, "flush_count": 3}, "19200"),
    ("strong_chlorine_share", {"water_ph": 8.5}, "9.1"),  # 100 / (1 + 10)
]  # fmt: skip
TANK_PART = {"chlorine_dose": 23.0, "service_dose": 1.3, "available_chlorine": 27.0, "liquid_chlorine": 9.5,
             "stock_strength": 0.7, "wash_strength": 0.13, "water_ph": 8.7, "flush_count": 3.0}  # fmt: skip
AFTER_PART = {"tank_chlorine", "chlorine_product_mass", "chlorine_liquid_volume", "service_dose_mass",
              "thiosulfate_mass", "flush_water"}  # fmt: skip
WARN_ONLY = {"strong_chlorine_share"}
WARN_ONLY_VALUES = [HALF_WEAK_PH, PH_READY, PH_OF_NO_MORTAR]


@pytest.mark.parametrize(("name", "values", "result"), BY_HAND)
def test_sums_done_by_hand(name: str, values: dict[str, float], result: str) -> None:
    assert shown(name, values) == result


@given(values=givens("chlorine_dose", "available_chlorine"))
def test_the_chlorine_in_the_product_is_the_chlorine_wanted(values: dict[str, float]) -> None:
    """Independent: counted back from the powder to milligrams in a litre."""
    found = BOOK.evaluate({**values, "tank_litres": 7300}, ["chlorine_product_mass"])
    chlorine = found["chlorine_product_mass"] * values["available_chlorine"] / 100
    assert chlorine * 1000 / 7300 == pytest.approx(values["chlorine_dose"])


@given(values=givens("liquid_chlorine", "wash_strength"))
def test_one_part_and_its_water_hold_the_wanted_strength(values: dict[str, float]) -> None:
    parts = BOOK.evaluate(values, ["dilution_parts"])["dilution_parts"]
    assert values["liquid_chlorine"] / (1 + parts) == pytest.approx(values["wash_strength"])


def test_wrong_doses_are_wrong_by_what_was_forgotten() -> None:
    values = {"tank_litres": 6400, "chlorine_dose": 15, "available_chlorine": 25, "service_dose": 1.5}
    assert shown("chlorine_product_mass", {"tank_chlorine": 96, "available_chlorine": 25}) == "384.0"
    wrong = {
        "grams_in_a_litre_for_milligrams": 384_000, "product_taken_as_pure_chlorine": 96,
        "old_powder_taken_as_fresh": 290.9, "dose_of_a_millilitre": 384_000,
    }  # fmt: skip
    for name, answer in wrong.items():
        assert read_wrong(name, values, "chlorine_product_mass") == pytest.approx(answer, abs=0.05)
    stock = {"stock_strength": 0.6, "available_chlorine": 30}
    assert read_wrong("percent_read_as_a_gram", stock, "stock_powder") == pytest.approx(2)  # 0.6 g of chlorine / 0.30
    assert read_wrong("first_dose_for_every_dose", values, "service_dose_mass") == 384


def test_on_fresh_mortar_next_to_no_chlorine_works() -> None:
    fresh = {"water_ph": 11.5}
    assert shown("strong_chlorine_share", fresh) == "0.0"
    assert read_wrong("chlorinated_before_the_mortar_was_flushed", fresh, "strong_chlorine_share") > 70


@pytest.mark.parametrize(
    ("ph", "warnings"),
    [(12, ("flush_first",)), (8.5, ("flush_first",)), (8.4, ()), (6.5, ()), (6.4, ("read_ph_again",))],
)
def test_warnings_before_chlorine(ph: float, warnings: tuple[str, ...]) -> None:
    assert ready_for_chlorine(ph) == warnings


@pytest.mark.parametrize("ph", [-0.1, 14.1, float("nan")])
def test_what_is_no_ph_is_refused(ph: float) -> None:
    with pytest.raises(OutOfRangeError, match="read again"):
        ready_for_chlorine(ph)


def test_flushing_is_counted_by_the_paper() -> None:
    assert flushes_done((12, 11, 9, 8.3, 8.1)) == 4
    assert flushes_done(()) == 0


@pytest.mark.parametrize("language", ["en", "hi"])
def test_warnings_have_words(language: str) -> None:
    path = Path(__file__).parents[2] / f"course/words/{language}.yaml"
    texts = yaml.safe_load(path.read_text(encoding="utf-8"))["proving"]["chlorine"]
    words = Words(language, {f"proving.chlorine.{key}": text for key, text in texts.items()})
    assert chlorine_warnings(11.9, words) == (texts["flush_first"],)
    assert chlorine_warnings(5, words) == (texts["read_ph_again"],)
