"""The tank planner: the page works out what the calculation module and `plan` do, and no counts beyond limits."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page

from generator import curriculum
from generator.calculations import BOOK
from generator.calculations.bands import Condition, judge
from generator.formula import OutOfRangeError, Stream
from generator.plans import Plan, Wish, given_values, hoops_of_place, litres_of_place, make_plan, shape_ladder
from generator.site.assemble import scripts
from generator.site.planner_page import HIDDEN, INPUTS, OUTPUTS, planner_page
from generator.words import Words

pytestmark = pytest.mark.browser

ROOT = Path(__file__).parents[2]
COUNT = 10_000
DATA = 'Tankschool.carried(document.querySelector("script.ts-data")).planner'
NAMES = [*(name for group in OUTPUTS.values() for name in group), *(name for name in HIDDEN if name != "level_height")]


@pytest.fixture(scope="module")
def planners(tmp_path_factory: pytest.TempPathFactory) -> dict[str, str]:
    """A page with nothing but the planner, in each language."""
    content = curriculum.load(ROOT).content
    assert content is not None
    folder = tmp_path_factory.mktemp("planner")
    css = (ROOT / "generator/site/assets/common.css").read_text("utf-8")
    found = {}
    for language in content.course.languages:
        words = content.words[language]
        body = next(line for line in planner_page(words, "index.html").splitlines() if 'class="ts-planner"' in line)
        code = [
            f"<script>{text.decode('utf-8')}</script>"
            for name, text in scripts(content, language).items()
            if name in ("unpack.js", "formula.js", "marker.js", "course.js", "page.js", "planner.js")
        ]
        begin = '<script>Tankschool.planner.start(document.querySelector(".ts-planner"))</script>'
        page = (
            f'<!doctype html><html lang="{language}"><meta charset="utf-8"><title>planner</title>'
            f'<meta name="viewport" content="width=device-width"><style>{css}</style><main><h1>planner</h1>'
            f"{body}</main>{''.join(code)}{begin}</html>"
        )
        path = folder / f"planner-{language}.html"
        path.write_text(page, encoding="utf-8")
        found[language] = path.as_uri()
    return found


@pytest.fixture
def planner(kept_page: Page, planners: dict[str, str]) -> Page:
    kept_page.goto(planners["en"])
    return kept_page


def data(page: Page) -> dict[str, Any]:
    found: dict[str, Any] = page.evaluate(DATA)
    return found


@pytest.mark.parametrize("language", ["en", "hi"])
def test_the_page_says_a_unit_after_its_number_as_print_does(
    kept_page: Page, planners: dict[str, str], language: str
) -> None:
    kept_page.goto(planners[language])
    words = Words(language, kept_page.evaluate("Tankschool.course.words"))
    units = [key.removeprefix("unit.") for key, _ in words.family("unit")]
    asked = [(shown, unit) for unit in units for shown in ("0", "0.5", "1", "1.0", "2", "1500")]
    said = kept_page.evaluate("asked => asked.map(one => Tankschool.page.withUnit(one[0], one[1]))", asked)
    assert said == [words.with_unit(shown, unit) for shown, unit in asked]


def random_givens() -> Iterator[dict[str, float]]:
    """Tanks from the whole of the ranges, on the tape's own steps."""
    stream = Stream("planner")
    for _ in range(COUNT):
        tank = {}
        for name in (name for group in INPUTS.values() for name in group):
            given = BOOK.givens[name]
            steps = int((given.high - given.low) / given.step + 1e-9)
            tank[name] = round(given.low + given.step * stream.below(steps + 1), 6)
        yield tank


def test_ten_thousand_tanks_come_out_as_in_python_or_are_refused_as_there(planner: Page) -> None:
    tanks = list(random_givens())
    found = planner.evaluate(
        f"""tanks => {{ const data = {DATA};
        return tanks.map(tank => {{ const made = Tankschool.planner.workedOut(data, tank);
          return [made.outside, made.values]; }}); }}""",
        tanks,
    )
    good = 0
    for tank, (outside, values) in zip(tanks, found, strict=True):
        try:
            right = BOOK.evaluate({**tank, "level_height": 0.0}, NAMES)
        except OutOfRangeError:
            assert outside is not None
            continue
        assert outside is None
        good += 1
        for name in NAMES:
            assert values[name] == pytest.approx(right[name], rel=1e-9, abs=1e-9), name
    assert good > 300


def test_plans_of_places_give_the_same_numbers(planner: Page) -> None:
    """The page with a plan's givens shows what that plan says, for tanks with one spacing of hoops."""
    for litres in range(6500, 12_000, 500):
        chosen = make_plan(Wish(float(litres)))
        assert isinstance(chosen, Plan)
        place = {name: given_values(chosen)[name] for group in INPUTS.values() for name in group}
        plan = make_plan(Wish(litres_of_place(place), place=place, wished_hoops=hoops_of_place(place)))
        assert isinstance(plan, Plan)
        values = planner.evaluate(
            f"tank => Tankschool.planner.workedOut({DATA}, tank).values",
            place,
        )
        same = {"starter_spacing", "steel_working_stress", "starter_steel_needed"}  # the plan chooses its own starters
        assert plan.judged is None
        for name in set(NAMES) - same:
            if name in plan.values:
                assert values[name] == pytest.approx(plan.values[name], rel=1e-9), (litres, name)


def test_the_band_is_the_one_of_python(planner: Page) -> None:
    conditions = [condition.value for condition in Condition]
    stream = Stream("bands")
    cases = []
    for _ in range(500):
        radius, depth = 0.4 + stream.below(360) / 100, 0.4 + stream.below(180) / 100
        cases.append(
            {
                "radius": radius, "depth": depth, "volume": 3.14159 * radius**2 * depth, "flat": bool(stream.below(2)),
                "conditions": [name for name in conditions if stream.below(4) == 0],
            }
        )  # fmt: skip
    found = planner.evaluate(
        f"""cases => {{ const data = {DATA};
        return cases.map(one => Tankschool.planner.judged(data,
          {{inside_radius: one.radius, water_depth: one.depth, tank_volume: one.volume}},
          {{flat: one.flat, conditions: one.conditions}})); }}""",
        cases,
    )
    for case, page_says in zip(cases, found, strict=True):
        right = judge(
            volume=case["volume"], water_depth=case["depth"], inside_radius=case["radius"],
            flat_span=2 * case["radius"] if case["flat"] else 0.0,
            conditions=[Condition(name) for name in case["conditions"]],
        )  # fmt: skip
        assert page_says == {"band": int(right.band), "reasons": list(right.reasons)}


def test_litres_lead_to_the_shape_that_plan_takes(planner: Page) -> None:
    found = planner.evaluate(
        f"litres => litres.map(one => Tankschool.planner.shapeFor({DATA}, one))",
        list(range(500, 50_001, 500)),
    )
    for litres, shape in zip(range(500, 50_001, 500), found, strict=True):
        plan = make_plan(Wish(float(litres)))
        assert isinstance(plan, Plan)
        assert shape == [plan.shape.inside_diameter, plan.shape.water_depth]
    assert [list(step) for step in shape_ladder()] == data(planner)["ladder"]


def test_proposing_filling_and_typing_change_the_counts_at_once(planner: Page) -> None:
    planner.get_by_label("Litres to keep").fill("9000")
    planner.get_by_role("button", name="Propose a tank").click()
    assert planner.locator(".ts-plan-result").get_by_text("9,052\u00a0L").first.is_visible()
    assert planner.locator("table").filter(has_text="NOT good").count() == 0
    planner.get_by_label("largest gap between hoops").or_(planner.locator("#ts-planner-hoop_spacing")).first.evaluate(
        "input => { input.value = '0.2'; input.dispatchEvent(new Event('input')); }"
    )
    assert planner.get_by_text("A check is not met").is_visible()
    planner.get_by_label("People live or go to school below").check()
    assert planner.get_by_text("An engineer signs before anything is bought.").is_visible()


@pytest.mark.parametrize("typed", ["", "much", "99", "-1", "1e9", "<script>", "5.6.7"])
def test_what_is_no_size_shows_no_counts_but_why(planner: Page, typed: str) -> None:
    planner.locator("#ts-planner-inside_diameter").fill(typed)
    assert planner.get_by_text("No counts for this tank").is_visible()
    assert planner.locator(".ts-plan-result table").count() == 0


@pytest.mark.parametrize("language", ["en", "hi"])
@pytest.mark.parametrize("width", [360, 1280])
def test_the_planner_has_no_known_barrier_and_does_not_scroll_sideways(
    kept_page: Page, planners: dict[str, str], language: str, width: int
) -> None:
    from axe_playwright_python.sync_playwright import Axe

    kept_page.set_viewport_size({"width": width, "height": 900})
    kept_page.goto(planners[language])
    kept_page.evaluate("document.querySelectorAll('details').forEach(one => { one.open = true; })")
    found = Axe().run(kept_page, options={"runOnly": ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa"]})
    assert found.violations_count == 0, found.generate_report()
    assert kept_page.evaluate("document.documentElement.scrollWidth <= window.innerWidth")
