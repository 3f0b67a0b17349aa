"""The newer kinds of question as cards in the browser: units, steps, drawings to point at, scripts, help in steps."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Locator, Page, expect
from pydantic import TypeAdapter

from generator.curriculum.models import Question
from generator.exercises import NumberItem, SpotItem, make_item
from generator.exercises.page_data import page_data
from generator.figures import draw, svg
from generator.formula import show
from generator.site.assemble import scripts
from generator.site.cards import PAGE_SEED, card, numbered
from generator.site.markup import data_script
from generator.words import Words
from tests.exercises.small import both
from tests.site.course_stick import course

pytestmark = pytest.mark.browser

RING = {"frame_diameter": {"from": 1.8, "to": 3.4, "step": 0.1}}
FAULT = "fault-shadow-cracks"
QUESTIONS: list[dict[str, Any]] = [
    {"id": "cut", "kind": "number", "asks": "ring_length", "given": RING, "units": ["m", "cm"], "aids": ["tape"],
     "rounding": {"rule": "up", "to": 0.1}, "hint": both("A bit over three."), "text": both("{frame_diameter}: cut?")},
    {"id": "steps", "kind": "number", "asks": "frame_radius", "credit": ["frame_diameter"], "answer": "within 2 mm",
     "given": {"inside_diameter": 2.3, "mesh_cover": 5, "inside_mesh_thickness": 7, "bar_diameter": 8},
     "text": both("{inside_diameter} {mesh_cover} {inside_mesh_thickness} {bar_diameter}")},
    {"id": "pick", "kind": "choice", "asks": "ring_length", "given": RING, "text": both("{frame_diameter}: how far?"),
     "misconceptions": ["ring_as_three_diameters", "radius_taken_for_diameter_in_ring"]},
    {"id": "spot", "kind": "spot", "figure": FAULT, "text": both("Where?"),
     "areas": [{"name": "mesh-cracks", "right": True}, {"name": "chalk-line", "why": both("Chalk washes off.")}]},
    {"id": "said", "kind": "spoken", "asks": "ring_length", "given": RING, "answer": "within 2 %",
     "text": both("It is {frame_diameter}. //\nHow far round? #")},
]  # fmt: skip
_READ: TypeAdapter[Any] = TypeAdapter(Question)
ASKED = tuple(_READ.validate_python({"competency": "rings", **data}) for data in QUESTIONS)
WORDS: Words = course().words["en"]


@pytest.fixture
def page(browser: Browser, tmp_path: Path) -> Iterator[Page]:
    content = replace(course(), asked={**course().asked, "frame": ASKED}, scenarios={})
    drawing = svg(draw(FAULT, content.values("hill-school"), WORDS), "spot")
    cards = "".join(
        card(one, WORDS, drawing if one.question.id == "spot" else "") for one in numbered(ASKED, WORDS).values()
    )
    code = ""
    for name, data in scripts(content, "en").items():
        (tmp_path / name).write_bytes(data)
        code += f'<script src="{name}"></script>'
    head = '<!doctype html><html lang="en"><meta charset="utf-8"><title>cards</title><main><h1>cards</h1><h2>all</h2>'
    file = tmp_path / "cards.html"
    file.write_text(f"{head}{cards}</main>{data_script(page_data(content, 'frame', 'en'))}{code}", encoding="utf-8")
    context = browser.new_context()
    made = context.new_page()
    faults: list[str] = []
    made.on("pageerror", lambda error: faults.append(str(error)))
    made.goto(file.as_uri())
    yield made
    context.close()
    assert faults == []


def of(page: Page, question_id: str) -> Locator:
    return page.locator(f'[data-question="{question_id}"]')


def check(place: Locator) -> None:
    place.get_by_role("button", name=WORDS.say("page.card.check")).click()


def item(question_id: str) -> Any:
    question = next(one for one in ASKED if one.id == question_id)
    return make_item(question, PAGE_SEED, WORDS)


def test_a_unit_is_chosen_the_rounding_told_and_help_opens_in_steps(page: Page) -> None:
    made, place = item("cut"), of(page, "cut")
    assert isinstance(made, NumberItem)
    expect(place).to_contain_text(WORDS.say_one_of("exercise.aid", "tape"))
    names = [WORDS.say("page.card.hint"), WORDS.say("page.card.formula"), WORDS.say("page.card.worked")]
    hint, formula, worked = (place.get_by_role("button", name=name, exact=True) for name in names)
    expect(hint).to_be_visible()
    expect(formula).to_be_visible()
    expect(worked).to_be_hidden()
    field = place.get_by_label(WORDS.say("page.card.your_answer"), exact=True)
    field.fill(f"{made.exact:.3f}")
    check(place)
    expect(place).to_contain_text(WORDS.say("exercise.ask.unit_missing"))
    expect(worked).to_be_hidden()
    place.get_by_label(WORDS.say("page.card.unit")).select_option("m")
    field.fill(f"{made.exact:.2f}")
    check(place)
    expect(place).to_contain_text(WORDS.say("exercise.slip.not_rounded"))
    expect(worked).to_be_visible()
    assert made.exact is not None
    exact, key = (WORDS.with_unit(show(value, made.places), made.unit) for value in (made.exact, made.key))
    place.get_by_label(WORDS.say("page.card.unit")).select_option("cm")
    field.fill(f"{made.key * 100:.0f}")
    check(place)
    expect(place.locator(".ts-feedback")).to_have_class("ts-feedback ts-right")
    worked.click()
    expect(place).to_contain_text(WORDS.say("exercise.rounded", exact=exact, answer=key))


def test_steps_on_the_way_earn_credit_and_the_first_line_can_be_seen(page: Page) -> None:
    made, place = item("steps"), of(page, "steps")
    assert isinstance(made, NumberItem)
    first = place.get_by_role("button", name=WORDS.say("page.card.first_line"))
    expect(first).to_be_hidden()
    inputs = place.locator("input[type=text]")
    assert inputs.count() == 2
    inputs.nth(0).fill(made.steps[0].shown_key)
    inputs.nth(1).fill("9")
    check(place)
    expect(place).to_contain_text(WORDS.say("exercise.step_credit", have=1, most=1))
    first.click()
    assert place.locator(".ts-more:visible li").count() == 1
    inputs.nth(1).fill(made.shown_key)
    check(place)
    expect(place.locator(".ts-feedback")).to_have_class("ts-feedback ts-right")


def test_a_wrong_number_that_was_picked_is_explained(page: Page) -> None:
    made, place = item("pick"), of(page, "pick")
    place.get_by_label(made.options[1], exact=True).check()
    check(place)
    expect(place).to_contain_text(WORDS.say("misconception.ring_as_three_diameters.hill"))
    place.get_by_label(made.options[0], exact=True).check()
    check(place)
    expect(place.locator(".ts-feedback")).to_have_class("ts-feedback ts-right")


def test_a_place_in_a_drawing_is_chosen_by_click_by_key_or_in_the_list(page: Page) -> None:
    made, place = item("spot"), of(page, "spot")
    assert isinstance(made, SpotItem)
    letters = {area.name: area.letter for area in made.areas}
    place.locator(f'[data-area="{letters["chalk-line"]}"]').dispatch_event("click")
    check(place)
    expect(place).to_contain_text("Chalk washes off.")
    place.get_by_label(letters["pipe"], exact=True).locator("visible=true").last.check()
    right = place.locator(f'[data-area="{letters["mesh-cracks"]}"]')
    right.focus()
    page.keyboard.press("Enter")
    check(place)
    expect(place.locator(".ts-feedback")).to_have_class("ts-feedback ts-right")


def test_a_script_is_shown_to_the_helper_on_demand_and_the_number_is_marked(page: Page) -> None:
    made, place = item("said"), of(page, "said")
    expect(place).to_contain_text(WORDS.say("exercise.read_aloud"))
    expect(place).not_to_contain_text("//")
    place.get_by_role("button", name=WORDS.say("page.card.script"), exact=True).click()
    expect(place).to_contain_text(made.script[0])
    place.locator("input[type=text]").fill(made.answer.shown_key)
    check(place)
    expect(place.locator(".ts-feedback")).to_have_class("ts-feedback ts-right")


def test_the_cards_can_be_used_by_everyone(page: Page) -> None:
    found = Axe().run(page, options={"runOnly": ["wcag2a", "wcag2aa"]})
    assert [violation["id"] for violation in found.response["violations"]] == []
