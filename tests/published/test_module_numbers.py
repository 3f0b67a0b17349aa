"""Keys of the modules' number questions, held to values out of print and to short sums that do without the book.

The givens below are those that a learner is handed; the sum beside each key was worked apart from the calculation
module, with the document named where its numbers come from.
"""

from __future__ import annotations

from math import ceil, pi, sqrt
from pathlib import Path

import pytest

from generator.calculations import BOOK
from generator.curriculum import load
from generator.curriculum.models import NumberQuestion
from generator.formula import Quantity

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def questions():
    content = load(ROOT).content
    assert content is not None
    return content.questions


def key(questions, name: str, **given: float) -> float:
    """What a question takes for right with these numbers; the numbers must be just those that it hands out."""
    question = questions[name]
    assert isinstance(question, NumberQuestion)
    assert set(given) == set(question.given), "the question's own givens"
    return BOOK.evaluate(given, [question.asks])[question.asks]


def printed(questions, name: str) -> float:
    """Half a unit of the last decimal that the question's answer shows."""
    quantity = BOOK.entry(questions[name].asks)
    assert isinstance(quantity, Quantity)
    return 0.5 * 10.0**-quantity.places


# ------------------------------------------------------------------------------------------------ how much water


def test_water_of_the_dry_days(questions):
    """Rainwater lesson, demand side: 6 people x 20 L x 25 days = 3000 L; animals none."""
    found = key(questions, "water-of-the-dry-days", people=6, litres_each=20, animal_need=0, dry_days=25)
    assert found == pytest.approx(3000, abs=printed(questions, "water-of-the-dry-days"))


@pytest.mark.parametrize(("litres", "seconds", "flow"), [(20, 25, 0.80), (10, 38, 0.263)])
def test_bucket_and_watch(questions, litres: float, seconds: float, flow: float):
    """FAO Training, section 3, gives the method (means of 25 s, and of 36, 40 and 38 s; flows derived)."""
    found = key(questions, "bucket-and-watch", bucket_litres=litres, bucket_seconds=seconds)
    assert found == pytest.approx(flow, abs=5e-4)


@pytest.mark.parametrize(("litres", "seconds", "daily"), [(20, 25, 69_100), (10, 38, 22_700)])
def test_spring_in_a_day(questions, litres: float, seconds: float, daily: float):
    """The same two springs, printed as 69.1 and 22.7 m3 in a day, all of it counted on."""
    found = key(questions, "spring-in-a-day", bucket_litres=litres, bucket_seconds=seconds, spring_share_kept=100)
    assert found == pytest.approx(daily, abs=50)


def test_rain_on_the_roof(questions):
    """Rainwater Reservoirs above Ground Structures, GTZ/GATE 1989: 450 mm x 120 m2 x 0.9 = 48.6 m3."""
    found = key(questions, "rain-on-the-roof", rain_depth=450, roof_area=120, runoff_coefficient=0.9)
    assert found == pytest.approx(48_600, abs=50)


def test_roof_water_that_is_kept(questions):
    """Apart from the book: 48,600 L less 20 times the first 2 mm of 120 m2, which is 240 L each."""
    given = {"roof_yield": 48_600.0, "first_flush_depth": 2.0, "roof_area": 120.0, "first_flushes": 20.0}
    assert key(questions, "roof-water-that-is-kept", **given) == pytest.approx(48_600 - 20 * 240)


def test_water_to_the_overflow(questions):
    """Public-health page of India: 785 x D x D x h litres in a round tank; print keeps three figures of pi/4."""
    found = key(questions, "water-to-the-overflow", inside_diameter=2.6, wall_height=1.4, overflow_drop=0.15)
    assert found == pytest.approx(785 * 2.6 * 2.6 * 1.25, rel=1e-3)


def test_how_wide_and_how_high(questions):
    """Apart from the book: the tank found so holds the water, and one that is 5 cm smaller does not."""
    wide = key(questions, "how-wide", wanted_volume=8.5, wall_height=1.45, overflow_drop=0.15, column_width=0.25)
    holds = [pi / 4 * (across**2 - 0.25**2) * 1.3 for across in (wide - 0.05, wide)]
    assert holds[0] < 8.5 <= holds[1]
    assert wide == pytest.approx(ceil(sqrt(4 * 8.5 / pi / 1.3 + 0.0625) * 20) / 20)
    high = key(questions, "how-high-a-wall", wanted_volume=8.5, net_floor_area=6.25, overflow_drop=0.15)
    assert high - 0.05 < 8.5 / 6.25 + 0.15 <= high


def test_days_that_a_tank_lasts(questions):
    """Apart from the book: each day the village draws 800 L, of which 520 come from the spring."""
    left, days = 7000.0, 0
    while left > 0:
        left -= 800 - 520
        days += 1
    found = key(questions, "days-that-a-tank-lasts", tank_litres=7000, daily_need=800, spring_daily_yield=520)
    assert found == pytest.approx(days, abs=printed(questions, "days-that-a-tank-lasts"))


# -------------------------------------------------------------------------------------------------------- mortar


def test_bulking_in_the_jar(questions):
    """Two civil laboratory pages on IS 2386-3: 200 mm damp, 160 mm flooded, 25 %."""
    assert key(questions, "bulking-in-the-jar", damp_height=200, flooded_height=160) == pytest.approx(25)


@pytest.mark.parametrize("sides", [(0.35, 0.25, 0.40), (1 / 3, 0.30, 0.35)])
def test_what_the_box_holds(questions, sides: tuple[float, float, float]):
    """Two site pages: boxes of 35 x 25 x 40 cm and 33.3 x 30 x 35 cm hold one bag, 35 L."""
    length, width, depth = sides
    found = key(questions, "what-the-box-holds", box_length=length, box_width=width, box_depth=depth)
    assert found == pytest.approx(35.0, abs=printed(questions, "what-the-box-holds"))


def test_water_from_the_can(questions):
    """Derived table: one bag at 0.45 takes 22.5 L; damp sand brings 4.4 of them, so 18.1 L are poured."""
    found = key(questions, "water-from-the-can", batch_bags=1, water_cement_ratio=0.45, water_in_sand=4.4)
    assert found == pytest.approx(18.1, abs=printed(questions, "water-from-the-can"))


def test_water_in_damp_sand(questions):
    """The same, from 111 kg of dry sand that holds 5 % of water, 1 % of it inside the grains."""
    given = {"batch_sand_dry": 111 / 1.6, "sand_density": 1600.0, "sand_moisture": 5.0, "sand_absorption": 1.0}
    found = key(questions, "water-in-damp-sand", batch_bags=1, water_cement_ratio=0.45, **given)
    assert found == pytest.approx(18.1, abs=printed(questions, "water-in-damp-sand"))


@pytest.mark.parametrize(("parts", "cement", "bags"), [(2, 0.4433, 13), (3, 0.3325, 10)])
def test_cement_and_bags_for_a_wall(questions, parts: float, cement: float, bags: int):
    """Site pages at a factor of 1.33: 1 : 2 and 1 : 3 take 0.443 and 0.3325 m3, 638 and 479 kg: 12.8 and 9.6 bags."""
    given = {"wall_mortar_volume": 1.0, "mortar_waste": 0.0, "dry_volume_factor": 1.33, "sand_parts": parts}
    assert key(questions, "cement-for-a-wall", **given) == pytest.approx(cement, abs=5e-4)
    assert key(questions, "bags-for-a-wall", **given) == bags


def test_damp_sand_for_a_batch_and_its_boxes(questions):
    """Site page: a box of 35 L is one part for a bag. Damp by a quarter more: 1 : 2 takes two and a half of them."""
    litres = key(questions, "damp-sand-for-a-batch", batch_bags=1, sand_parts=2, sand_bulking=25)
    assert litres == pytest.approx(2.5 * 35, rel=0.01)
    boxes = key(questions, "boxes-for-a-bag", batch_bags=1, sand_parts=2, sand_bulking=25, box_volume=35)
    assert boxes == pytest.approx(2.5, abs=printed(questions, "boxes-for-a-bag"))


def test_wall_from_one_batch(questions):
    """Derived table for 1 : 2 at a factor of 1.30: one bag makes 0.0801 m3, which covers 5.3 m2 at 15 mm."""
    given = {"batch_bags": 1.0, "sand_parts": 2.0, "mortar_absolute_volume": 0.0801, "coat_thickness": 15.0}
    found = key(questions, "wall-from-one-batch", **given)
    assert found == pytest.approx(5.3, abs=printed(questions, "wall-from-one-batch"))


def test_masons_and_batches_for_a_coat(questions):
    """Apart from the book: masons are added until the face is closed, and batches until the coat is full."""
    masons = next(count for count in range(1, 99) if count * 3.5 * 0.75 >= 16.5)
    assert key(questions, "masons-for-a-coat", coat_area=16.5, mason_day_area=3.5, coat_days=0.75) == masons
    given = {"coat_thickness": 25.0, "mortar_waste": 15.0, "batch_bags": 0.5, "sand_parts": 2.5}
    batches = next(count for count in range(1, 99) if count * 45 >= 18 * 25 * 1.15)
    found = key(questions, "batches-for-a-coat", coat_area=18, mortar_absolute_volume=0.09, **given)
    assert found == batches
