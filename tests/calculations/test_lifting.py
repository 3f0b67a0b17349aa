"""Loads are whole, a bag is for two, and what is only recalled warns and never says that a lift is safe."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations.lifting import (
    ANIMAL_MOST,
    HEAD_SHARE,
    IDEAL_LIFT,
    Animal,
    Material,
    animal_load,
    loads_of,
    people_to_lift,
    warn_of_lift,
)
from generator.formula import OutOfRangeError


@pytest.mark.parametrize(
    ("mass", "people"),
    [(50, 2), (25, 1), (25.5, 2), (23, 1), (75, 3), (100, 4)],
)
def test_nobody_has_more_than_a_share_in_the_hands(mass: float, people: int) -> None:
    assert people_to_lift(mass) == people
    assert mass / people <= HEAD_SHARE


@pytest.mark.parametrize("mass", [0, -3, 100.5, float("nan")])
def test_what_is_not_for_hands_is_refused_with_a_way_out(mass: float) -> None:
    with pytest.raises(OutOfRangeError, match="split it, or use rollers"):
        people_to_lift(mass)


def test_a_bag_alone_is_warned_of_in_every_posture() -> None:
    """Even the best lift of all gives 23 kg: a bag of 50 kg is 2.2 times that."""
    best = warn_of_lift(50, reach=20, hands=75, travel=10)
    assert best is not None
    assert best.limit == pytest.approx(IDEAL_LIFT)
    assert best.index == pytest.approx(50 / 23)


def test_a_bag_half_from_the_ground_held_away_is_too_much() -> None:
    """23 x 25/50 x (1 - .003 x 75) x (.82 + 4.5/50) x 1 = 23 x .5 x .775 x .91 = 8.1 kg."""
    warned = warn_of_lift(25, reach=50, hands=0, travel=50)
    assert warned is not None
    assert warned.limit == pytest.approx(8.11, abs=0.01)


@given(
    reach=st.floats(0, 63), hands=st.floats(0, 175), travel=st.floats(0, 175), turn=st.floats(0, 135),
    mass=st.floats(0.1, 60),
)  # fmt: skip
def test_no_posture_lifts_the_limit_over_the_best_lift(
    reach: float, hands: float, travel: float, turn: float, mass: float
) -> None:
    warned = warn_of_lift(mass, reach=reach, hands=hands, travel=travel, turn=turn)
    if warned is None:
        assert mass <= IDEAL_LIFT
    else:
        assert 0 < warned.limit <= IDEAL_LIFT
        assert warned.index > 1


@pytest.mark.parametrize(
    "posture",
    [
        {"reach": 64},
        {"hands": 176},
        {"travel": -1},
        {"turn": 136},
        {"often": 0},
        {"grip": 1.1},
        {"reach": float("nan")},
    ],
)
def test_a_posture_that_nobody_should_take_is_refused(posture: dict[str, float]) -> None:
    with pytest.raises(OutOfRangeError, match="second person"):
        warn_of_lift(10, **{"reach": 30, "hands": 70, "travel": 40, **posture})


def test_a_weight_must_be_a_weight() -> None:
    with pytest.raises(OutOfRangeError, match="weigh it first"):
        warn_of_lift(0, reach=30, hands=70, travel=40)


def test_a_small_mule_bears_a_fifth_of_itself_and_a_big_one_not_more_than_the_path_allows() -> None:
    assert animal_load(Animal.MULE, 300).mass == pytest.approx(60)
    assert animal_load(Animal.MULE, 500).mass == 80
    assert animal_load(Animal.DONKEY, 150).mass == pytest.approx(30)
    assert animal_load(Animal.DONKEY, 290).mass == 50


def test_what_is_only_recalled_of_an_animal_does_not_decide() -> None:
    assert animal_load(Animal.MULE, 300).decides
    assert not animal_load(Animal.PONY, 300).decides
    assert {animal for animal, most in ANIMAL_MOST.items() if not most.source.status.decides} == {Animal.PONY}


def test_an_animal_that_does_not_exist_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="knows animals"):
        animal_load(Animal.DONKEY, 20)


def test_a_bag_lighter_than_the_load_goes_whole_and_a_heavier_one_is_shared() -> None:
    bags = [Material("cement", 350, piece=50)]
    assert loads_of(bags, 110).lines[0].loads == 4  # two bags on a beast, seven bags: 3.5 beasts
    assert loads_of(bags, 50).lines[0].loads == 7
    shared = loads_of(bags, 20).lines[0]
    assert (shared.loads, shared.shared) == (21, 3)  # a bag in three parts of 16.7 kg


def test_every_material_starts_its_own_load() -> None:
    """By weight alone 31 + 31 kg are 3 loads of 30 kg; sand and stone apart are 4."""
    table = loads_of([Material("sand", 31), Material("stone", 31)], 30)
    assert [line.loads for line in table.lines] == [2, 2]
    assert (table.loads, table.mass) == (4, 62)


@given(
    masses=st.lists(st.tuples(st.floats(0, 5000), st.sampled_from([0.0, 7.0, 50.0])), min_size=1, max_size=5),
    load=st.integers(10, 200),
)
def test_the_loads_hold_everything(masses: list[tuple[float, float]], load: int) -> None:
    materials = [Material(str(i), mass, piece) for i, (mass, piece) in enumerate(masses)]
    table = loads_of(materials, load)
    for line in table.lines:
        assert line.loads * load >= line.mass - 1e-6
    assert table.loads == sum(line.loads for line in table.lines)


@pytest.mark.parametrize(
    ("materials", "load", "message"),
    [
        ([Material("sand", 10)], 9, "outside 10 to 200"),
        ([Material("sand", 10)], 201, "outside 10 to 200"),
        ([Material("sand", -1)], 30, "below nothing"),
        ([Material("sand", float("nan"))], 30, "below nothing"),
        ([Material("sand", 1, piece=-1)], 30, "below nothing"),
        ([Material("sand", 1), Material("sand", 2)], 30, "given twice"),
    ],
)
def test_impossible_loads_are_refused(materials: list[Material], load: float, message: str) -> None:
    with pytest.raises(OutOfRangeError, match=message):
        loads_of(materials, load)
