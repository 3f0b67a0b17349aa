"""What the drawings of work on the site say is true: pushes grow with depth, lines of a tape stand in place."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest

from generator.calculations.conversions import metres_from_feet, metres_from_inches
from generator.calculations.labour import BASE_SETS, ONE_DAY, POUR_AND_COATS
from generator.calculations.materials_limits import SiltAdvice, silt_verdict
from generator.figures import Scene, draw
from generator.figures.layout import segments
from generator.figures.scene import Circle, Dimension, Group, Line, Point, Polyline
from tests.figures.tanks import made_up, place, words


def points(group: Group) -> list[Point]:
    return [point for element in group.elements for segment in segments(element, 1.0) for point in segment]


def spread(group: Group) -> tuple[float, float, float, float]:
    """Left, right, low and high."""
    xs, ys = zip(*points(group), strict=True)
    return min(xs), max(xs), min(ys), max(ys)


def measured(scene: Scene) -> list[float]:
    return [element.length for element in scene.all_elements() if isinstance(element, Dimension)]


def drawn(key: str) -> list[tuple[dict[str, float], Scene]]:
    tanks = [place(name) for name in ("hill-school", "lower-terrace-herders", "upper-terrace-spring")]
    return [(dict(tank), draw(key, tank, words("en"))) for tank in (*tanks, *made_up(12, key))]


MEASURED = {
    "water-pushes": {"water_depth": 1.0},
    "setting-out": {"base_diameter": 1.0},
    "pipe-through-wall": {"wall_thickness": 0.001},
    "push-and-board": {"wall_thickness": 0.001},
    "leak-test": {"water_depth": 1.0},
    "plumb-and-round": {"frame_radius": 1.0},
}


@pytest.mark.parametrize("key", MEASURED)
def test_what_is_measured_is_as_long_as_its_number(key: str) -> None:
    for values, scene in drawn(key):
        assert measured(scene) == pytest.approx([values[name] * part for name, part in MEASURED[key].items()], rel=1e-9)


def test_the_push_of_water_grows_as_the_depth_does() -> None:
    for values, scene in drawn("water-pushes"):
        wall = spread(scene.named("wall")[0])
        pushes = scene.named("push")[0].elements
        reached = []
        for push in pushes:
            assert isinstance(push, Polyline)
            tip = push.points[3]
            tail = (push.points[0][1] + push.points[-1][1]) / 2
            assert tip[0] == pytest.approx(wall[0])  # it ends at the wall's face
            depth = wall[2] + values["water_depth"] - tail
            reached.append((tip[0] - push.points[0][0]) / depth)
        assert reached == pytest.approx([reached[0]] * len(reached))


def test_centimetres_and_inches_of_the_tape_stand_at_their_true_places() -> None:
    scene = draw("tape-two-sides", {}, words("en"))
    (tape, _), (hook, _) = scene.named("tape"), scene.named("hook")
    start = spread(tape)[0]
    assert spread(hook)[1] == pytest.approx(start)
    for name, step in (("centimetre lines", 0.005), ("inch lines", metres_from_inches(1) / 2)):
        lines = [line for line in scene.named(name)[0].elements if isinstance(line, Line)]
        assert [line.start[0] - start for line in lines] == pytest.approx(
            [step * (number + 1) for number in range(len(lines))]
        )
    inches = scene.named("inch lines")[0].elements
    twelfth = inches[23]
    assert isinstance(twelfth, Line)
    assert twelfth.start[0] - start == pytest.approx(metres_from_feet(1))


def test_both_marks_of_the_hose_are_level_without_a_bubble_and_not_with_one() -> None:
    scene = draw("hose-level", {}, words("en"))
    marks = [line for line in scene.elements if isinstance(line, Line) and line.ink == "cross"]
    levels = [mark.start[1] for mark in marks]
    assert levels[0] == pytest.approx(levels[1])
    assert levels[2] != pytest.approx(levels[3], rel=1e-3)


def test_the_nail_is_on_the_circle_it_scratches() -> None:
    for values, scene in drawn("setting-out"):
        pegs = [element for element in scene.named("peg")[0].elements if isinstance(element, Circle)]
        nails = [element for element in scene.elements if isinstance(element, Circle) and element.ink == "steel"]
        assert math.dist(nails[0].centre, pegs[0].centre) == pytest.approx(0.0, abs=1e-9)
        assert math.dist(nails[1].centre, pegs[0].centre) == pytest.approx(values["base_diameter"] / 2)


def test_sand_and_silt_are_measured_as_high_as_they_lie() -> None:
    for values, scene in drawn("sand-jar"):
        wanted = [values["sand_height"] / 1000] + ([values["silt_height"] / 1000] if values["silt_height"] else [])
        assert measured(scene) == pytest.approx(wanted)
        sand, silt = spread(scene.named("sand")[0]), spread(scene.named("silt")[0])
        assert silt[2] == pytest.approx(sand[3])


def test_the_flange_lies_wholly_in_the_mortar_and_stands_out_from_the_pipe() -> None:
    for _, scene in drawn("pipe-through-wall"):
        wall, (pipe,) = spread(scene.named("wall")[0]), scene.named("pipe")
        tube, _, *flange = pipe.elements
        outside = spread(Group("tube", (tube,)))
        for part in flange:
            edges = spread(Group("flange", (part,)))
            assert wall[0] < edges[0] < edges[1] < wall[1]
            assert edges[2] < outside[2] - 0.02 or edges[3] > outside[3] + 0.02
        assert len(flange) == 2


def test_the_board_stands_at_the_outside_of_the_wall() -> None:
    for values, scene in drawn("push-and-board"):
        mortar, board = spread(scene.named("mortar")[0]), spread(scene.named("board")[0])
        assert board[0] == pytest.approx(mortar[1])
        bars = [spread(group) for group in scene.named("bar")]
        assert board[0] - bars[0][0] < values["wall_thickness"] / 1000
        assert len(scene.named("board")) == 1  # none in the wrong one
        assert scene.named("hole")


def test_the_control_bucket_stands_below_the_lid_and_holds_water_as_high_as_the_tank() -> None:
    for values, scene in drawn("leak-test"):
        first, last = scene.named("bucket")
        lid = spread(scene.named("lid")[0])
        assert lid[0] < spread(first)[0]
        assert spread(first)[1] < lid[1]
        floor = spread(scene.named("stand")[0])[2]
        surface = first.elements[3]
        assert isinstance(surface, Line)
        assert surface.start[1] - floor == pytest.approx(values["water_depth"])
        assert spread(first)[3] > surface.start[1]
        _, mark, own = scene.named("mark")
        lowered = last.elements[3]
        assert isinstance(lowered, Line)
        assert lowered.start[1] < spread(own)[2]
        assert spread(mark)[2] == pytest.approx(spread(own)[2])


def test_bars_are_as_long_as_their_days_and_follow_each_other() -> None:
    for values, scene in drawn("crew-and-days"):
        work = [spread(group) for group in (*scene.named("work"), *scene.named("waiting"))]
        days = [values["digging_duration"], ONE_DAY + BASE_SETS, values["cage_duration"], POUR_AND_COATS - ONE_DAY]
        days += [values[name] for name in ("curing_days", "first_filling_days", "water_soak_days", "test_days")]
        days = [day for day in days if day > 0]
        one = (work[-1][1] - work[0][0]) / sum(days)
        assert [right - left for left, right, *_ in work] == pytest.approx([day * one for day in days])
        for (_, end, *_), (start, *_) in pairwise(work):
            assert start == pytest.approx(end)
        assert len(scene.named("masons")) == values["crew_masons"]
        assert len(scene.named("labourers")) == values["crew_labourers"]


def test_the_middle_prop_leaves_first_and_nobody_stands_under_its_place() -> None:
    scene = draw("prop-removal", {}, words("en"))
    props = [spread(group) for group in scene.named("prop")]
    assert len(props) == 5 + 4
    first, later = props[:5], props[5:]
    gone = [prop for prop in first if not any(other[0] == pytest.approx(prop[0]) for other in later)]
    assert len(gone) == 1
    (middle,) = gone
    between = [other[0] for other in later]
    left = max(x for x in between if x < middle[0])
    (person,) = scene.named("person")
    assert spread(person)[1] < left + 0.9 * (middle[0] - left)
    feet = min(point[0] for point in points(person)), max(point[0] for point in points(person))
    assert (feet[0] + feet[1]) / 2 < left


def test_uprights_stand_on_the_ring_and_the_stick_reaches_them() -> None:
    for values, scene in drawn("plumb-and-round"):
        (ring,) = scene.named("ring")
        circle = ring.elements[0]
        assert isinstance(circle, Circle)
        assert circle.radius == pytest.approx(values["frame_radius"])
        angles = scene.named("angle")
        assert len(angles) == values["angle_count"]
        for angle in angles:
            left, right, low, high = spread(angle)
            middle = ((left + right) / 2, (low + high) / 2)
            assert math.dist(middle, circle.centre) == pytest.approx(circle.radius)


def test_only_one_person_is_inside_and_two_outside_hold_the_rope() -> None:
    scene = draw("cleaning-watch", {}, words("en"))
    assert len(scene.named("person")) == 4  # one inside and two outside; in the wrong picture one inside alone
    assert len(scene.named("rope")) == 1
    assert len(scene.named("ladder")) == 1
    bases = [spread(base) for base in scene.named("base")]
    inside = [
        [base[0] < spread(person)[0] and spread(person)[1] < base[1] for base in bases]
        for person in scene.named("person")
    ]
    assert [any(place) for place in inside].count(True) == 2


def test_the_fence_stands_between_the_water_and_the_child_whose_hand_is_held() -> None:
    scene = draw("trough-yard", {}, words("en"))
    (fence,) = scene.named("fence")
    grown, held, alone = (spread(person) for person in scene.named("person"))
    left, right, low, high = spread(fence)
    assert spread(scene.named("trough")[0])[1] < left
    assert right < min(held[0], grown[0])
    assert held[3] - held[2] < high - low < grown[3] - grown[2]
    assert alone[0] < spread(scene.named("trough")[1])[1]  # without a fence the child is over the rim
    assert spread(scene.named("goat")[0])[1] < left


def test_two_open_a_roll_and_one_of_them_is_at_its_end() -> None:
    scene = draw("open-a-roll", {}, words("en"))
    first, second, alone = (spread(person) for person in scene.named("person"))
    mesh, sprung = (spread(group) for group in scene.named("mesh"))
    stones = spread(scene.named("stones")[0])
    assert first[0] < mesh[0] < stones[0]
    assert second[1] > mesh[1]
    assert sprung[3] > alone[2] + 0.5 * (alone[3] - alone[2])  # it reaches the face


def test_in_threes_everyone_is_at_the_frame() -> None:
    scene = draw("work-in-threes", {}, words("en"))
    people = scene.named("person")
    assert len(people) == 2 * 3
    assert len(scene.named("ruler")) == 1


@pytest.mark.parametrize("seed", range(4))
def test_only_the_fault_has_a_shorter_lap_than_the_stick(seed: int) -> None:
    for values in (place("hill-school"), *made_up(6, "fault-short-lap")):
        scene = draw("fault-short-lap", values, words("en"), seed)
        strips, sticks = scene.named("mesh"), scene.named("stick")
        for number, area in enumerate(scene.areas):
            one, other = (spread(strip) for strip in strips[2 * number : 2 * number + 2])
            stick = spread(sticks[number])
            assert stick[1] - stick[0] == pytest.approx(values["mesh_lap"])
            assert (one[1] - other[0] < values["mesh_lap"] - 1e-9) == (area.name == "short-lap")


@pytest.mark.parametrize("seed", range(4))
def test_only_the_fault_has_a_tail_beyond_the_face(seed: int) -> None:
    scene = draw("fault-tie-tail", {}, words("en"), seed)
    for area, tie, face in zip(scene.areas, scene.named("tie"), scene.named("face to come"), strict=True):
        assert (spread(tie)[1] > spread(face)[1]) == (area.name == "tail-out")


@pytest.mark.parametrize("seed", range(4))
def test_only_the_fault_is_without_flange_or_lock_or_board(seed: int) -> None:
    pipes = draw("fault-bare-pipe", place("hill-school"), words("en"), seed)
    for area, pipe in zip(pipes.areas, pipes.named("pipe"), strict=True):
        assert (len(pipe.elements) == 2) == (area.name == "no-flange")
    for key, missing, fault in (
        ("fault-open-lid", "lock", "no-lock"),
        ("fault-bare-prop", "sole", "bare-prop"),
        ("fault-bags-on-ground", "planks", "on-ground"),
    ):
        scene = draw(key, {}, words("en"), seed)
        for area in scene.areas:
            left, right = area.outline[0][0], area.outline[1][0]
            low, high = area.outline[0][1], area.outline[2][1]
            here = [
                group
                for group in scene.named(missing)
                if left < spread(group)[0] and spread(group)[1] < right and low < spread(group)[2] < high
            ]
            assert (not here) == (area.name == fault)


@pytest.mark.parametrize("seed", range(4))
def test_only_the_fault_has_more_silt_than_the_course_lets_pass(seed: int) -> None:
    scene = draw("fault-silted-sand", {}, words("en"), seed)
    for area, sand, silt in zip(scene.areas, scene.named("sand"), scene.named("silt"), strict=True):
        heights = [spread(group)[3] - spread(group)[2] for group in (sand, silt)]
        assert (silt_verdict(100 * heights[1] / heights[0]) is not SiltAdvice.USE) == (area.name == "much-silt")
