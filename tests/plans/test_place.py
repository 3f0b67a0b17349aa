"""A place's own tank: the plan takes its sizes and steel as they are, and agrees with the calculation module."""

from pathlib import Path

import pytest

from generator.calculations import BOOK
from generator.plans import NoPlanError, Plan, Wish, hoops_of_place, litres_of_place, make_plan, read_place
from generator.problems import ProblemsError

PLACES = Path(__file__).parents[2] / "course" / "places"
SAME = (
    "frame_diameter", "ring_length", "wall_thickness", "outside_diameter", "base_diameter", "water_depth", "hoop_count",
    "hoop_length", "lap_length", "angle_count", "bar_count", "wall_mortar_volume", "hoop_mass",
)  # fmt: skip


@pytest.mark.parametrize("path", sorted(PLACES.glob("*.yaml")), ids=lambda path: path.stem)
def test_a_plan_of_a_place_gives_the_numbers_that_its_lessons_give(path: Path) -> None:
    place = read_place(path.name, path.read_bytes())
    found = make_plan(Wish(litres_of_place(place), place=place, wished_hoops=hoops_of_place(place)))
    assert isinstance(found, Plan)
    taught = BOOK.evaluate(place)
    for name in SAME:
        assert found.values[name] == pytest.approx(taught[name]), name


def test_a_place_says_all_that_is_wrong_with_it_at_once() -> None:
    text = b"format: 1\ngiven:\n  inside_diametre: 3.4\n  wall_height: 14\n  mesh_cover: deep\n"
    with pytest.raises(ProblemsError) as found:
        read_place("place.yaml", text)
    assert [(problem.line, problem.code) for problem in found.value.problems] == [(5, "wrong-type")]
    with pytest.raises(ProblemsError) as found:
        read_place("place.yaml", text.replace(b"deep", b"5"))
    assert [(problem.line, problem.code) for problem in sorted(found.value.problems)] == [
        (3, "unknown-given"), (4, "number-out-of-range"),
    ]  # fmt: skip


def test_half_a_size_is_no_size() -> None:
    with pytest.raises(NoPlanError, match="place_incomplete"):
        litres_of_place({"inside_diameter": 3.4})
    assert litres_of_place({"wanted_volume": 3.5}) == 3500
