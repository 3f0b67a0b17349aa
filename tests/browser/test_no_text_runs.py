"""Whatever an author or a learner writes stays text: nothing of it becomes an element or runs, in any kind of card."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from html import escape
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser
from pydantic import TypeAdapter

from generator.curriculum import CourseContent
from generator.curriculum.models import Question
from generator.exercises.page_data import page_data
from generator.site.assemble import scripts
from generator.site.cards import answers, card, numbered
from generator.site.markup import data_script
from generator.words import Words
from tests.site.course_stick import course

pytestmark = pytest.mark.browser

HOSTILE = (
    "<img src=x onerror='window.ran=1'><script>window.ran=2</script></script><svg onload=window.ran=3>"
    '&lt;script&gt;]]> " onmouseover="window.ran=4" \' javascript:window.ran=5 '
)
TYPED = [HOSTILE, "<b>5</b>", "5<script>window.ran=6</script>", "5 <img/src=x onerror=window.ran=7>", "__proto__"]


def hostile(data: Any) -> Any:
    """The same data with every text that people read made hostile."""
    if isinstance(data, Mapping):
        if set(data) == {"en", "hi"}:
            return {language: f"{HOSTILE}{text}" for language, text in data.items()}
        return {key: hostile(value) for key, value in data.items()}
    return [hostile(value) for value in data] if isinstance(data, list | tuple) else data


def both(text: str) -> dict[str, str]:
    return {"en": text, "hi": text}


def more() -> list[dict[str, Any]]:
    """The kinds that the frame's bank does not hold."""
    base = {"competency": "hoops", "given": {"frame_diameter": {"from": 1.8, "to": 3.4, "step": 0.1}}}
    areas = [{"name": "foot", "text": both("foot"), "right": True}, {"name": "top", "text": both("top")}]
    options = [{"text": both("a"), "right": True}, {"text": both("b"), "why": both("c")}]
    text = both("{frame_diameter}")
    return [
        {**base, "id": "n", "kind": "number", "asks": "ring_length", "units": ["m", "cm"], "aids": ["tape"],
         "text": text},
        {"id": "p", "competency": "hoops", "kind": "spot", "figure": "ring-plan", "text": both("where"),
         "areas": areas},
        {"id": "s", "competency": "hoops", "kind": "spoken", "text": both("say #"), "options": options},
        {**base, "id": "t", "kind": "spoken", "asks": "ring_length", "text": text},
    ]  # fmt: skip


def hostile_course() -> CourseContent:
    """The course with one module of hostile questions and words."""
    content = course()
    reader: TypeAdapter[Any] = TypeAdapter(Question)
    shipped = [question.model_dump(by_alias=True, exclude_none=True) for question in content.questions_of("frame")]
    questions = tuple(reader.validate_python(hostile(each)) for each in [*shipped, *more()])
    words = {
        language: Words(
            language,
            {
                key: f"{text}{HOSTILE}"
                if isinstance(text, str)
                else {form: f"{one}{HOSTILE}" for form, one in text.items()}
                for key, text in spoken.texts.items()
            },
        )
        for language, spoken in content.words.items()
    }
    return replace(content, words=words, asked={**content.asked, "frame": questions}, scenarios={})


PRESS = """texts => {
  for (const text of texts) {
    document.querySelectorAll(".ts-card input[type=text]").forEach(field => { field.value = text; });
    document.querySelectorAll(".ts-card input[type=radio], .ts-card input[type=checkbox]").forEach(one => one.click());
    document.querySelectorAll(".ts-main").forEach(button => { if (!button.hidden) button.click(); });
  }
  document.querySelectorAll("button[aria-expanded=false]").forEach(button => { if (!button.hidden) button.click(); });
  const all = document.querySelectorAll(".ts-card button");
  all.forEach(button => { if (!button.hidden && !button.disabled) button.click(); });
  document.querySelectorAll("*").forEach(one => one.dispatchEvent(new Event("mouseover")));
}"""


@pytest.mark.parametrize("language", ["en", "hi"])
def test_nothing_that_is_written_runs_or_becomes_an_element(browser: Browser, tmp_path: Path, language: str) -> None:
    content = hostile_course()
    words = content.words[language]
    exercises = numbered(content.questions_of("frame"), words)
    assert {one.question.kind for one in exercises.values()} == {"number", "choice", "order", "match", "spot", "spoken"}
    cards = "".join(card(one, words) for one in exercises.values()) + answers(list(exercises.values()), (), words)
    code = "".join(
        f'<script src="{name}"></script>'
        for name, data in scripts(content, language).items()
        if (tmp_path / name).write_bytes(data)
    )
    data = data_script(page_data(content, "frame", language))
    page_text = f'<!doctype html><meta charset="utf-8"><title>t</title><body>{cards}{data}{code}</body>'
    file = tmp_path / "hostile.html"
    file.write_text(page_text, encoding="utf-8")
    context = browser.new_context()
    page = context.new_page()
    faults: list[str] = []
    page.on("pageerror", lambda error: faults.append(str(error)))
    page.on("dialog", lambda dialog: faults.append(dialog.message))
    page.goto(file.as_uri())
    page.evaluate(PRESS, TYPED)
    page.wait_for_timeout(200)
    assert faults == []
    assert page.evaluate("typeof window.ran") == "undefined"
    assert (
        page.locator(".ts-card img, .ts-card script, .ts-card svg, .ts-card [onload], .ts-card [onerror]").count() == 0
    )
    assert page.locator(".ts-card [onmouseover]").count() == 0
    shown = page.locator(".ts-card").first.inner_text()
    assert "<script>window.ran=2</script>" in shown
    page.evaluate("text => document.body.insertAdjacentHTML('beforeend', text)", HOSTILE)
    page.wait_for_function("window.ran !== undefined")  # put in as markup it does run: the test would see it
    context.close()


@pytest.mark.parametrize("language", ["en", "hi"])
def test_without_scripts_it_is_text_too(language: str) -> None:
    content = hostile_course()
    words = content.words[language]
    exercises = numbered(content.questions_of("frame"), words)
    markup = "".join(card(one, words) for one in exercises.values()) + answers(list(exercises.values()), (), words)
    for piece in ("<img", "<script", "onload=window.ran=3>"):
        assert piece not in markup.replace(escape("<img"), "").replace(escape("onload=window.ran=3>"), "")
    assert escape("<script>", quote=False) in markup
