"""Drawings of site work: each measures what its numbers say, and shows as many things as there are to count."""

from __future__ import annotations

import math
from collections.abc import Mapping
from itertools import pairwise

import pytest

from generator.calculations.props import prop_grid
from generator.figures import FIGURES, Scene, draw
from generator.figures.callouts import Callout, right_column, row_above
from generator.figures.layout import Block, NoRoomError
from generator.figures.page import Page
from generator.figures.parts import shapes
from generator.figures.people import limb
from generator.figures.scene import Circle, Dimension, Group, Label, Line, Point, Polyline
from generator.formula import show
from tests.figures.tanks import LANGUAGES, made_up, place, words
from tests.figures.test_drawings import collisions

PLACES = ("hill-school", "lower-terrace-herders")
SITE = (
    "cut-platform",
    "roof-flat-props",
    "roof-dome-props",
    "roof-column",
    "fittings",
    "manhole",
    "trough",
    "gauge-box",
    "cover-gauge",
    "batching-row",
    "plastering-order",
    "curing-cover",
)


def tanks(key: str, count: int = 25) -> list[Mapping[str, float]]:
    return [*(place(name) for name in PLACES), *made_up(count, key)]


def measured(scene: Scene) -> list[float]:
    return [element.length for element in scene.all_elements() if isinstance(element, Dimension)]


def points(group: Group) -> list[Point]:
    found: list[Point] = []
    for element in group.elements:
        if isinstance(element, Polyline):
            found += element.points
        elif isinstance(element, Line):
            found += [element.start, element.end]
    return found


def lowest(group: Group) -> float:
    return min(y for _, y in points(group))


def texts(scene: Scene) -> list[str]:
    return [shape.text for shape in shapes(scene) if isinstance(shape, Label)]


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("key", SITE)
def test_texts_keep_apart_in_any_tank(key: str, language: str) -> None:
    for values in made_up(500, key)[LANGUAGES.index(language) :: 2]:
        assert collisions(draw(key, values, words(language))) == [], {name: values[name] for name in FIGURES[key].needs}


def test_the_platform_measures_its_numbers() -> None:
    for values in tanks("cut-platform"):
        names = ["platform_width", "working_room", "ditch_setback"]
        names += ["cut_height"] if values["cut_height"] > 0.02 else []
        scene = draw("cut-platform", values, words("en"))
        assert measured(scene) == pytest.approx([values[name] for name in names], rel=1e-9)


def test_the_whole_base_stands_on_cut_ground() -> None:
    for values in tanks("cut-platform"):
        scene = draw("cut-platform", values, words("en"))
        (base,), (ground,) = scene.named("base"), scene.named("ground")
        surface = points(ground)
        assert lowest(base) == pytest.approx(surface[1][1])
        (left, right) = min(x for x, _ in points(base)), max(x for x, _ in points(base))
        assert surface[1][0] < left < right < surface[2][0]
        room = values["working_room"]
        assert [left - surface[1][0], surface[2][0] - right] == pytest.approx([room, room])
        assert surface[3][1] - surface[2][1] == pytest.approx(
            (values["platform_width"] + values["cut_back_width"]) * math.tan(math.radians(values["ground_slope"]))
        )


def test_the_bank_is_laid_back_by_its_batter() -> None:
    for values in tanks("cut-platform"):
        (ground,) = draw("cut-platform", values, words("en")).named("ground")
        foot, top = points(ground)[2:4]
        assert top[0] - foot[0] == pytest.approx(values["cut_batter"] * (top[1] - foot[1]), abs=1e-9)


def test_fill_is_crossed_out_in_words_too() -> None:
    for language in LANGUAGES:
        scene = draw("cut-platform", place("hill-school"), words(language))
        assert len(scene.named("cross")) == len(scene.named("fill")) == 1
        assert words(language).say("figure.part.wrong_word") in texts(scene)


@pytest.mark.parametrize("key", ["roof-flat-props", "roof-dome-props"])
def test_props_stand_as_far_apart_as_they_are_counted(key: str) -> None:
    for values in tanks(key):
        scene = draw(key, values, words("en"))
        row = [x for x, y in prop_grid(values["inside_diameter"], values["prop_spacing"]) if y == 0]
        props, boards = scene.named("prop"), scene.named("joist")
        assert len(props) == len(row)
        assert len(scene.named("brace")) == len(row) - 1
        lengths = [values["prop_spacing"]] if len(row) > 1 else []
        lengths += [values["roof_rise"]] if key == "roof-dome-props" else []
        assert measured(scene) == pytest.approx(lengths, rel=1e-9)
        top = max(y for _, y in points(boards[0]))
        assert all(max(y for _, y in points(prop)) < top for prop in props)  # every prop ends below its joist's top
        assert len(scene.named("person")) == 1
        watcher = max(x for x, _ in points(scene.named("person")[0]))
        assert watcher < min(x for wall in scene.named("wall") for x, _ in points(wall))  # and stands outside


def test_a_dome_rises_from_its_edge_by_its_rise() -> None:
    for values in tanks("roof-dome-props"):
        (roof,) = draw("roof-dome-props", values, words("en")).named("roof")
        outline = points(roof)
        lower = outline[1:42]
        assert max(y for _, y in lower) - lower[0][1] == pytest.approx(values["roof_rise"], rel=1e-9)
        assert lower[-1][0] - lower[0][0] == pytest.approx(values["inside_diameter"], rel=1e-9)


def test_the_steel_over_the_column_is_on_top() -> None:
    for values in tanks("roof-column"):
        scene = draw("roof-column", values, words("en"))
        (upper,), (lower,) = scene.named("top steel"), scene.named("bottom steel")
        assert lowest(upper) > max(y for _, y in points(lower))
        drawn = min(values["column_head_diameter"], values["inside_diameter"])
        assert measured(scene)[0] == pytest.approx(drawn, rel=1e-9)
        across = [x for x, _ in points(upper)]
        assert max(across) - min(across) > min(drawn, 0.9 * values["inside_diameter"])


def test_pipes_stand_where_they_belong() -> None:
    for values in tanks("fittings"):
        scene = draw("fittings", values, words("en"))
        (overflow,), (inlet,), (washout,), (outlet,) = map(scene.named, ("overflow", "inlet", "washout", "outlet"))
        floor = max(y for _, y in points(scene.named("base")[0]))
        pipe = overflow.elements[0]
        assert isinstance(pipe, Polyline)
        assert pipe.points[0][1] - floor > pipe.points[-1][1] - floor  # the upper edge comes first
        assert pipe.points[-1][1] - floor == pytest.approx(values["water_depth"], abs=1e-9)
        wide = pipe.points[0][1] - pipe.points[-1][1]
        drop = next(element for element in reversed(inlet.elements) if isinstance(element, Polyline))
        assert math.dist(drop.points[0], drop.points[-1]) < wide
        tap = outlet.elements[0]
        assert isinstance(tap, Polyline)
        dead = min(values["dead_storage_height"], values["water_depth"])
        assert min(y for _, y in tap.points) - floor == pytest.approx(dead, abs=1e-9)
        assert min(y for _, y in points(washout)) < floor
        assert measured(scene) == pytest.approx([dead] if dead > 0.03 else [])


def test_the_lid_turns_down_outside_the_rim() -> None:
    for values in tanks("manhole"):
        scene = draw("manhole", values, words("en"))
        (lid,), (lock,) = scene.named("lid"), scene.named("lock")
        rims = scene.named("roof")
        rim_top = max(y for roof in rims for _, y in points(roof))
        assert lowest(lid) < rim_top < max(y for _, y in points(lid))
        inner = [max(x for x, y in points(roof) if y == rim_top) for roof in rims]
        plate = lid.elements[0]
        assert isinstance(plate, Polyline)
        assert max(x for x, _ in plate.points) > max(inner)
        assert min(x for x, _ in points(lock)) > max(inner)


def test_the_trough_measures_its_numbers() -> None:
    for values in tanks("trough"):
        scene = draw("trough", values, words("en"))
        ties = scene.named("tie")
        wanted = [values["trough_radius"], values["trough_length"]]
        count = max(1, math.floor(values["trough_length"] / values["trough_tie_spacing"] + 1e-9))
        assert len(ties) == count + 1  # one of them in the cut
        wanted += [values["trough_tie_spacing"]] if count > 1 else []
        assert measured(scene) == pytest.approx(wanted, rel=1e-9)
        shell = scene.named("trough")[0].elements[0]
        assert isinstance(shell, Polyline)
        across = [x for x, _ in shell.points]
        outside = 2 * (values["trough_radius"] + values["trough_wall_thickness"] / 1000)
        assert max(across) - min(across) == pytest.approx(outside, rel=1e-9)


def test_the_box_measures_its_inside() -> None:
    for values in tanks("gauge-box"):
        names = ("box_length", "box_width", "box_depth")
        assert measured(draw("gauge-box", values, words("en"))) == pytest.approx([values[name] for name in names])


def test_each_nail_stops_with_its_own_mark_at_the_face() -> None:
    for values in tanks("cover-gauge"):
        scene = draw("cover-gauge", values, words("en"))
        depths = [values[name] / 1000 for name in ("mesh_cover", "bar_cover_inside", "wall_thickness")]
        assert measured(scene) == pytest.approx(depths, rel=1e-9)
        face = min(x for x, _ in points(scene.named("mortar")[0]))
        nails = scene.named("nail")
        assert len(nails) == len(depths)
        for number, (nail, depth) in enumerate(zip(nails, depths, strict=True)):
            body, _, *marks = nail.elements
            assert isinstance(body, Polyline)
            assert max(x for x, _ in body.points) - face == pytest.approx(depth, abs=1e-9)
            own = marks[number]
            assert isinstance(own, Polyline)
            assert own.points[0][0] == pytest.approx(face, abs=1e-9)


def test_a_batch_shows_as_much_as_is_put_in() -> None:
    for values in tanks("batching-row"):
        scene = draw("batching-row", values, words("en"))
        boxes = float(show(values["boxes_of_sand"], 1))
        buckets = values["water_to_add"] / values["bucket_litres"]
        assert len(scene.named("cement bag")) == math.ceil(values["batch_bags"])
        assert len(scene.named("sand box")) == math.ceil(boxes - 0.04)
        assert len(scene.named("bucket")) == math.ceil(max(0.0, buckets - 0.04))
        assert show(values["boxes_of_sand"], 1) in texts(scene)
        filled = [box.elements[-2] for box in scene.named("sand box")]
        heights = []
        for sand in filled:
            assert isinstance(sand, Polyline)
            heights.append(max(y for _, y in sand.points) - min(y for _, y in sand.points))
        assert sum(heights) == pytest.approx(boxes * values["box_depth"], abs=0.04 * values["box_depth"])


def test_strips_are_filled_in_turn_each_over_the_edge_of_the_last() -> None:
    for values in tanks("plastering-order"):
        scene = draw("plastering-order", values, words("en"))
        assert measured(scene) == pytest.approx([values["wall_height"]], rel=1e-9)
        strips = sorted(scene.named("strip"), key=lambda strip: min(x for x, _ in points(strip)))
        for before, after in pairwise(strips):
            assert min(x for x, _ in points(after)) < max(x for x, _ in points(before))
        assert len(scene.named("board")) == 1
        assert len(scene.named("person")) == 3


def test_the_coats_rise_from_the_foot() -> None:
    for values in tanks("plastering-order"):
        scene = draw("plastering-order", values, words("en"))
        first, whole = scene.named("first coat")
        (second,) = scene.named("second coat")
        heights = [max(y for _, y in points(coat)) - min(y for _, y in points(coat)) for coat in (first, whole, second)]
        assert heights[0] < heights[1] == pytest.approx(values["wall_height"])
        assert heights[2] == pytest.approx(heights[0])


def test_there_is_a_box_for_every_day() -> None:
    for values in tanks("curing-cover"):
        scene = draw("curing-cover", values, words("en"))
        days = round(values["curing_days"])
        crossed = len(scene.named("crossed off"))
        assert len(scene.named("day")) == days
        assert [text for text in texts(scene) if text.isdigit() and len(text) < 3][-days + crossed :] == [
            str(day) for day in range(crossed + 1, days + 1)
        ]


def test_the_place_without_a_column_says_so_by_leaving_its_width_out() -> None:
    values = place("hill-school")
    with_column = {**values, "column_width": 0.2}
    without, shown = (draw("roof-column", tank, words("en")) for tank in ({**values, "column_width": 0.0}, with_column))
    assert len(measured(shown)) == len(measured(without)) + 1


def test_a_limb_keeps_its_thickness_round_a_bend() -> None:
    outline = limb(((0.0, 0.0), (2.0, 0.0), (2.0, 2.0)), 0.2).points
    left, right = outline[:3], outline[:2:-1]
    assert left[1] == pytest.approx((1.9, 0.1))
    assert right[1] == pytest.approx((2.1, -0.1))
    assert math.dist(left[0], right[0]) == pytest.approx(0.2)


def block(text: str) -> Block:
    return Block.of(text, most=80, anchor="start")


def test_lines_to_names_do_not_cross() -> None:
    page = Page(0.01, 300)
    names = [Callout(block(f"part {number}"), (40.0 + 60 * number, 250.0 - 20 * number)) for number in range(4)]
    right_column(page, names, 280, 6, 294)
    lines = [element for element in page.elements if isinstance(element, Line)]
    for number, one in enumerate(lines):
        for other in lines[number + 1 :]:
            assert not _cross(one, other)


def _cross(one: Line, other: Line) -> bool:
    def side(a: Point, b: Point, c: Point) -> float:
        return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])

    apart = side(one.start, one.end, other.start) * side(one.start, one.end, other.end) < 0
    return apart and side(other.start, other.end, one.start) * side(other.start, other.end, one.end) < 0


def test_names_that_are_too_many_for_a_row_are_refused() -> None:
    page = Page(0.01, 300)
    wide = [Callout(Block.of("a name of some length", most=200), (100.0, 200.0)) for _ in range(4)]
    with pytest.raises(NoRoomError):
        row_above(page, wide, 100)


def test_people_and_goats_have_a_head_and_feet_on_the_ground() -> None:
    scene = draw("trough", place("lower-terrace-herders"), words("en"))
    (goat,) = scene.named("goat")
    trough = scene.named("bed")[1]
    assert lowest(goat) == pytest.approx(lowest(trough))
    watcher = draw("fittings", place("hill-school"), words("en")).named("person")[0]
    heads = [element for element in watcher.elements if isinstance(element, Circle)]
    assert heads[0].centre[1] > max(y for _, y in points(watcher)) - 0.2
