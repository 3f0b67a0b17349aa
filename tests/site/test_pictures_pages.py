"""Pictures, words, faults, formulas and the learner's path, as the built course has them and as a small course may."""

from __future__ import annotations

import base64
import re
from dataclasses import replace

import pytest

from generator.calculations import BOOK
from generator.curriculum import CourseContent, FormulaBlock, WorkedBlock, taught
from generator.curriculum.models import ChoiceQuestion, WorkedQuestion
from generator.curriculum.recordings import Recording
from generator.figures import FIGURES, hot_areas
from generator.site import OneFileParts, Print, build_pages, check, one_file, settings
from generator.site.assemble import scripts
from generator.site.faults_page import ALBUM, fault_anchor
from generator.site.formulas_page import FORMULAS
from generator.site.glossary_page import GLOSSARY
from generator.site.one_file import opened
from generator.site.path import belongs
from tests.site.course_stick import Built, built_once, course

LANGUAGES = ("en", "hi")
CARDS = "frame-pictures.html"
LINK = re.compile(r'href="([a-z0-9-]+)\.html')


@pytest.fixture
def built() -> Built:
    return built_once()


def page(built: Built, language: str, name: str) -> str:
    """The body of a built page."""
    text = built.parts[language].site[name].decode("utf-8")
    return text[text.index("<article") : text.index("</article>")]


def with_sound() -> CourseContent:
    """The course with one recording of the first card, in Hindi."""
    content = course()
    card = content.modules["frame"].cards[0]
    return replace(content, recordings={("frame", card.id, "hi"): Recording("ogg", b"OggS of a trainer")})


@pytest.mark.parametrize("language", LANGUAGES)
def test_without_a_script_all_cards_stand_below_each_other(built: Built, language: str) -> None:
    text = page(built, language, CARDS)
    cards = built.content.modules["frame"].cards
    assert re.findall(r'<li class="ts-pic" id="card-([a-z-]+)"', text) == [card.id for card in cards]
    assert text.count("<svg ") == len(cards)
    for card in cards:
        assert card.text[language] in text
        assert card.caution is None or card.caution[language] in text
    assert "<audio" not in text


def test_a_recording_travels_beside_its_languages_pages_and_inside_the_one_file(built: Built) -> None:
    content = with_sound()
    card = content.modules["frame"].cards[0]
    pages = {language: build_pages(content, language) for language in LANGUAGES}
    assert pages["hi"][f"sound/frame/{card.id}.ogg"] == b"OggS of a trainer"
    assert not any(path.startswith("sound/") for path in pages["en"])
    assert f'src="sound/frame/{card.id}.ogg"' in pages["hi"]["frame-pictures.md"].decode("utf-8")
    site = dict(built.parts["hi"].site)
    audio = f'<audio class="ts-pic-sound" controls src="sound/frame/{card.id}.ogg"></audio></article>'
    site[CARDS] = site[CARDS].replace(b"</article>", audio.encode("utf-8"))
    site[f"sound/frame/{card.id}.ogg"] = b"OggS of a trainer"
    parts = OneFileParts(settings(content, "hi"), content.words["hi"], site, scripts(content, "hi"))
    inside = base64.b64encode(b"OggS of a trainer").decode("ascii")
    text = opened(one_file(parts))
    assert f'src="data:audio/ogg;base64,{inside}"' in text
    assert 'src="sound/' not in text


def test_every_page_is_three_steps_from_home_at_most(built: Built) -> None:
    for language in LANGUAGES:
        names = {path.removesuffix(".html") for path in built.parts[language].site if path.endswith(".html")}
        reached, edge = {"index"}, {"index"}
        for _ in range(3):
            edge = {to for name in edge for to in LINK.findall(page(built, language, f"{name}.html"))} - reached
            reached |= edge
        assert names <= reached
        menu = {path.removesuffix(".md") for _, path in settings(built.content, language).navigation}
        assert menu == names


@pytest.mark.parametrize("language", LANGUAGES)
def test_home_starts_with_where_to_start(built: Built, language: str) -> None:
    text = page(built, language, "index.html")
    modules = [module for module in built.content.modules.values() if module.cards]
    first = next((module for module in modules if not module.needs), modules[0])
    start = text.index(f'href="{first.id}-pictures.html"')
    assert text.index("<h1") < start < text.index("<h2")
    minutes = 2 * len(first.cards)
    assert built.content.words[language].say("page.path.start", minutes=minutes) in text
    for outcome in built.content.modules["frame"].outcomes:
        assert outcome.text[language] in text


def test_a_module_after_another_names_it_at_home() -> None:
    content = course()
    frame = content.modules["frame"]
    later = frame.model_copy(update={"id": "mesh", "needs": ("frame",), "cards": (), "practicals": (), "scenarios": ()})
    lessons = {**content.lessons, **{("mesh", language): () for language in LANGUAGES}}
    two = replace(content, modules={"frame": frame, "mesh": later}, lessons=lessons)
    home = build_pages(two, "en")["index.md"].decode("utf-8")
    assert 'data-module="mesh" data-needs="frame" data-asks=""' in home
    entry = home[home.index('data-module="mesh"') :]
    assert f'<a href="frame.html">{frame.title["en"]}</a>' in entry[: entry.index("</li>")]


def test_a_module_shows_its_own_sheets_and_no_others() -> None:
    content = course()
    frame = content.modules["frame"]
    own = ("frame-card", "close-a-ring", "frame-worksheet")
    prints = [Print(name, f"Sheet {name}", b"") for name in (*own, "ready-reckoner")]
    assert [item.name for item in prints if belongs(content, frame, item)] == list(own)
    text = build_pages(content, "en", prints)["frame.md"].decode("utf-8")
    assert re.findall(r'href="\.\./\.\./pdf/en/([a-z-]+)\.pdf"', text) == list(own)
    assert 'href="frame-pictures.html"' in text


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_caution_stands_once_where_the_danger_is(built: Built, language: str) -> None:
    text = page(built, language, "frame.html")
    for caution in built.content.modules["frame"].cautions:
        assert text.count(caution.text[language]) == 1, caution.id


@pytest.mark.parametrize("language", LANGUAGES)
def test_words_stand_below_their_drawing_in_both_languages(built: Built, language: str) -> None:
    text = page(built, language, f"{GLOSSARY}.html")
    glossary = built.content.glossary
    assert glossary is not None
    other = "hi" if language == "en" else "en"
    for term in glossary.terms:
        assert f'<dt id="word-{term.id}">{term.term[language]}</dt>' in text
        assert f'<dd class="ts-other" lang="{other}"><strong>{term.term[other]}</strong> {term.meaning[other]}' in text
        assert f'href="#word-{term.id}"' in text
    figures = {term.figure for term in glossary.terms if term.figure}
    assert text.count("<svg ") == len(figures)


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_album_shows_every_fault_and_hides_what_it_is(built: Built, language: str) -> None:
    text = page(built, language, f"{ALBUM}.html")
    album = built.content.fault_album
    assert album is not None
    assert text.count("<details") == len(album.faults)
    opened = re.sub(r"<details.*?</details>", "", text, flags=re.DOTALL)
    for fault in album.faults:
        spot = FIGURES[fault.figure].spot
        assert spot is not None
        letters = [letter for letter, name in hot_areas()[fault.figure].items() if name == spot.fault]
        start = text.index(f'id="{fault_anchor(fault)}"')
        answer = re.search(r"<dl class=\"ts-told\">(.*?)</dl>", text[start:], re.DOTALL)
        assert answer is not None
        assert re.findall(r"<dd>([A-H])</dd>", answer[1]) == letters
        for told in (fault.what, fault.why, fault.hill, fault.do):
            assert told[language] in answer[1]
            assert told[language] not in opened


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_formula_sheet_has_every_quantity_that_is_taught(built: Built, language: str) -> None:
    content = built.content
    text = page(built, language, f"{FORMULAS}.html")
    frame = content.modules["frame"]
    names = {part.quantity for part in content.lessons["frame", "en"] if isinstance(part, FormulaBlock | WorkedBlock)}
    names |= {one.asks for one in content.questions_of("frame") if isinstance(one, WorkedQuestion)}
    names |= {part.asks for day in content.scenarios.values() if day.module == "frame" for part in day.parts}
    assert set(taught(content, frame)) == names
    for name in names:
        quantity = BOOK.quantities[name]
        start = text.index(f'id="formula-{name.replace("_", "-")}"')
        entry = text[start : text.find("<h3", start)]
        assert content.words[language].say_one_of("quantity", name) in entry
        assert "<math" in entry
        assert quantity.source.text.replace("&", "&amp;") in entry
        assert content.words[language].say_one_of("status", quantity.source.status.value) in entry
        warns = content.words[language].say("page.formulas.only_warns") in entry
        assert warns is not quantity.source.status.decides


def test_a_course_without_words_album_or_cards_has_no_such_pages() -> None:
    content = course()
    frame = content.modules["frame"].model_copy(update={"cards": ()})
    bare = replace(content, modules={"frame": frame}, glossary=None, fault_album=None)
    pages = build_pages(bare, "en")
    assert {f"{GLOSSARY}.md", f"{ALBUM}.md", "frame-pictures.md"} & set(pages) == set()
    assert f"{GLOSSARY}.md" not in {path for _, path in settings(bare, "en").navigation}
    home = pages["index.md"].decode("utf-8")
    assert 'href="frame.html"' in home
    assert "frame-pictures" not in home


def test_a_module_may_not_take_the_name_of_a_page() -> None:
    content = course()
    assert check(content) == []
    frame = content.modules["frame"]
    things = content.reading.things["module"]
    for name in (ALBUM, GLOSSARY, FORMULAS):
        reading = replace(content.reading, things={**content.reading.things, "module": {name: things["frame"]}})
        renamed = replace(content, modules={name: frame.model_copy(update={"id": name})}, reading=reading)
        assert [problem.code for problem in check(renamed)] == ["taken-name"]
    long = "a-module-with-quite-a-long-name-of-its-own"[:40].rstrip("-")
    reading = replace(content.reading, things={**content.reading.things, "module": {long: things["frame"]}})
    renamed = replace(content, modules={long: frame.model_copy(update={"id": long})}, reading=reading)
    assert [problem.code for problem in check(renamed)] == ["long-name"]
    other = frame.model_copy(update={"id": "frame-pictures"})
    reading = replace(
        content.reading, things={**content.reading.things, "module": {**things, "frame-pictures": things["frame"]}}
    )
    both = replace(content, modules={"frame": frame, "frame-pictures": other}, reading=reading)
    assert "taken-name" in [problem.code for problem in check(both)]


def test_decisions_of_a_day_stand_below_its_numbers_and_nowhere_else() -> None:
    content = course()
    scenario = content.scenarios["hill-school-frame"]
    placed = {part.question for part in content.lessons["frame", "en"] if hasattr(part, "question")}
    decision = next(
        one.id for one in content.questions_of("frame") if isinstance(one, ChoiceQuestion) and one.id not in placed
    )
    with_decision = scenario.model_copy(update={"decisions": (decision,)})
    changed = replace(content, scenarios={**content.scenarios, scenario.id: with_decision})
    text = build_pages(changed, "en")["frame.md"].decode("utf-8")
    assert text.count(f'data-question="{decision}"') == 1
    here = text.index(f'data-question="{decision}"')
    assert text.index(f"decisions-{scenario.id}") < here
