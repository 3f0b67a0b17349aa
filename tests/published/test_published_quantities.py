"""Material and work of whole tanks as printed or worked out apart from the book: bands to be sane in, not targets.

Printed lists for "10 m3" differ by more than 2 to 1 in cement, for some count roof and floor and some do not. So only
the order of size is held here: a book that left the band would have lost a factor, not a bag.

Sources: FAO training manual, plate 17-IV (11 m3, netting and wire: 13 bags, sand 1.5 m3, labour 3.5 days each of mason,
helper and labourer); a Latin American leaflet (10 m3, wall of 40 to 60 mm: 20 sacks above ground, 17 buried, sand
2.5 m3); Ferrocement Water Tanks and their Construction, Intermediate Technology 1978, at second hand (10 m3 over a
mould: one builder and five helpers, three days). A whole build of 50 m3 was weighed apart from the book: 28 t.
"""

from math import pi

import pytest

from generator.calculations import BOOK
from generator.calculations.build_jobs import BuildSizes, build_jobs
from generator.calculations.calendar import calendar
from generator.calculations.lifting import HEAD_SHARE, IDEAL_LIFT, Material, loads_of, people_to_lift

PRINTED_BAGS = (13, 20)
PRINTED_SAND = (1.5, 2.5)
PRINTED_PERSON_DAYS = (3 * 3.5, 6 * 3)


def wall(diameter: float, height: float, thickness: float) -> dict[str, float]:
    """Mortar and its parts for a wall: 1 : 2.5, dry factor 1.30, loss 10 %, sand bulked by 20 %."""
    volume = pi * (diameter + thickness / 1000) * thickness / 1000 * height
    seeds = {"wall_mortar_volume": volume, "mortar_waste": 10, "dry_volume_factor": 1.3, "sand_parts": 2.5,
             "sand_bulking": 20}  # fmt: skip
    return BOOK.evaluate(seeds, ["cement_bags", "sand_volume_damp", "bought_cement_mass", "sand_mass"])


def test_cement_and_sand_of_a_ten_cubic_metre_wall_lie_under_the_printed_lists() -> None:
    """The lists hold the floor and mostly the roof too: the wall takes from a third of the least to the most."""
    found = wall(2.7, 1.95, 40)
    assert PRINTED_BAGS[0] / 3 < found["cement_bags"] <= PRINTED_BAGS[1]
    assert PRINTED_SAND[0] / 3 < found["sand_volume_damp"] <= PRINTED_SAND[1]


def test_nobody_may_scale_bags_by_the_volume_of_water() -> None:
    """The two lists print 1.2 and 2.0 bags for a cubic metre of water; the thickness of the wall alone does as much."""
    thin, thick = wall(2.7, 1.95, 40)["cement_bags"], wall(2.7, 1.95, 60)["cement_bags"]
    assert thick / thin > 1.4
    assert (PRINTED_BAGS[1] / 10) / (PRINTED_BAGS[0] / 11) > 1.4


def test_work_of_a_ten_cubic_metre_tank_is_more_than_print_claims_for_a_wall_alone() -> None:
    """Printed 10.5 and 18 person-days hold no cage of bars and a ready mould; with digging, cage and two faces more."""
    outside, inside = pi * 2.79 * 1.95, pi * 2.7 * 1.95
    seeds = {"excavation_volume": 2.3, "base_concrete_volume": 0.75, "cage_steel_mass": 70, "mesh_day_area": 8,
             "plaster_area_outside": outside, "plaster_area_inside": inside, "mason_day_area": 4}  # fmt: skip
    found = BOOK.evaluate(seeds, ["labour_total"])["labour_total"]
    assert PRINTED_PERSON_DAYS[1] < found < 3 * PRINTED_PERSON_DAYS[1]
    # a frame-type tank with its roof is remembered at 30 to 45 person-days without carrying
    assert found < 45


def test_a_fifty_cubic_metre_build_is_more_than_nine_hundred_loads() -> None:
    """Weighed apart from the book: about 28 t, more than 900 loads of 30 kg."""
    by_weight = BOOK.evaluate({"material_mass": 28000, "load_mass": 30}, ["load_count"])["load_count"]
    assert by_weight == 934
    parts = [Material("cement", 82 * 50, piece=50), Material("sand", 10400), Material("stone", 13500)]
    table = loads_of(parts, 30)
    assert table.mass == 28000
    assert table.loads > by_weight


@pytest.mark.parametrize(("bags", "cubic_metres"), [(20, 0.625)])
def test_a_pickup_of_a_tonne_takes_twenty_bags_or_five_eighths_of_sand(bags: float, cubic_metres: float) -> None:
    assert BOOK.evaluate({"cement_bags": bags}, ["bought_cement_mass"])["bought_cement_mass"] == 1000
    assert BOOK.evaluate({"sand_volume_damp": cubic_metres}, ["sand_mass"])["sand_mass"] == pytest.approx(1000)


def test_printed_lifting_numbers() -> None:
    """NIOSH: 51 lb; United Kingdom: a filter of about 25 kg. A bag of 50 kg is a lift for two."""
    assert pytest.approx(51 * 0.45359237, abs=0.5) == IDEAL_LIFT
    assert HEAD_SHARE == 25
    assert people_to_lift(50) == 2


def test_a_ten_cubic_metre_build_takes_the_weeks_that_are_remembered() -> None:
    """Worked apart from the book: 5 to 8 weeks, with 7 to 28 days of wetting, a week of soaking and a week of test."""
    sizes = BuildSizes(2.5, 0.85, 75, 33, 16.6, 6.2, 6.9, 1.6, 1.75, 14, 7, roof=True, masons=4, labourers=6)
    end = max(slot.end for slot in calendar(build_jobs(sizes)))
    assert 5 * 7 < end <= 10 * 7
