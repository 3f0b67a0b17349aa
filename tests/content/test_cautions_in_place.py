"""Each danger of the work is named where it waits: in the lesson, on a picture, at the practical, on the sheet.

A lesson counts only where the caution stands among its text; a word in the notes of a trainer does not. The lists below
say where each danger is met; a text of the right place must name it in both languages.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path

import pytest

from generator.curriculum import CautionBlock, CourseContent, load

ROOT = Path(__file__).parents[2]


@dataclass(frozen=True)
class Danger:
    """A danger of the work.

    Args:
        named: what names it, as a pattern in English and in Hindi.
        guarded: what a short card or a step says in its place: what is worn or done against it.
        lessons: modules in whose lesson a caution names it.
        cards: modules of which a picture names it.
        practicals: checklists of which a caution or a step names it.
        sheet: name of the plan's caution that names it.
        handouts: printed sheets that carry this caution.
    """

    named: tuple[str, str]
    guarded: tuple[str, str]
    lessons: str
    cards: str
    practicals: str
    sheet: str
    handouts: str


NONE = ("(?!)", "(?!)")
DANGERS = {
    "wet cement burns": Danger(
        (r"(cement|concrete|mortar|plaster|it)\b.*burns?", r"(सीमेंट|कंक्रीट|मसाल|प्लास्टर|गारा).*जल"),
        (r"gloves.*(goggles|mortar|cement|boots)", r"दस्ताने"),
        "base mortar plastering roof troughs people-and-money care", "base mortar plastering roof troughs",
        "mix-one-batch plaster-a-panel bed-a-trough", "wet_cement", "batch-card cover-gauge sample-panel step-cards",
    ),
    "dust": Danger(
        (r"dust.*lungs", r"धूल.*फेफड़|फेफड़.*धूल"), (r"mask", r"मास्क"),
        "materials mortar care", "mortar", "mix-one-batch receive-a-delivery plan-the-loads",
        "dust", "batch-card step-cards",
    ),
    "cut wire and steel": Danger(
        (
            r"(wire|steel|mesh|bar|ends?|starters|tips?|rim)\b.*(cut|spring|whip|jump|flies|stab|prick|sharp|spear)",
            r"(तार|सरिय|जाली|नोक|सिर[ेों]|पूँछ|किनार|लोह).*(चुभ|कट|काट|उछल|आँख|तेज|खुल|बरछ|भाल|गिर)",
        ),
        (r"goggles|cap on every|without a cap|bare hand|sharp", r"चश्मा|टोपी|दस्तान|तेज"),
        "materials base frame mesh-and-fittings plastering troughs",
        "materials base frame mesh-and-fittings plastering troughs checking",
        "close-a-ring mesh-a-panel plaster-a-panel check-a-cage set-out-a-base receive-a-delivery",
        "cut_steel", "cutting-list mesh-layout sample-panel site-checklist stick step-cards",
    ),
    "roof props": Danger(
        (r"(prop|roof).*(below|under|crush|tonnes)|(below|under).*(prop|roof)", r"(बल्ल|छत).*नीचे|नीचे.*(बल्ल|छत)|बल्ल.*टन"),
        (r"nobody below|from below|below once|below before", r"नीचे"),
        "roof curing", "roof curing", "set-four-props wrap-and-wet",
        "props", "curing-log hold-point-register step-cards",
    ),
    "height": Danger(
        (r"climb|fall (onto|from)|falls? (from|in)|ladder|trestle", r"चढ़|गिर|सीढ़ी|घोड़ी"), (r"knee height", r"घुटने"),
        "how-much-water measuring frame plastering roof care", "measuring frame plastering roof",
        "close-a-ring set-four-props", "height", "hold-point-register site-checklist step-cards",
    ),
    "air of a closed tank": Danger(
        (
            r"(air|gas)\b.*(kill|burn|closed)|nobody.*alone|caught|rule of the care module",
            r"(हवा|गैस).*(जान|मार|मर|जल)|जान.*हवा|अकेल|फँस|देखभाल",
        ),
        (r"no fire|\brope|nobody goes|does not climb in|never alone", r"आग|रस्सी|अंदर न"),
        "mesh-and-fittings plastering roof curing first-filling care checking", "plastering roof curing care",
        "plaster-a-panel set-four-props wrap-and-wet care-round",
        "confined", "curing-log disinfection-card leak-test-log maintenance-calendar site-checklist step-cards",
    ),
    "chlorine: powder into water only": Danger(
        (r"powder (goes )?(in)?to (the )?water|water onto (the )?powder|water goes onto powder",
         r"(पाउडर|दवा).*पानी|पानी.*(पाउडर|दवा)"),
        NONE,
        "first-filling care", "first-filling care", "read-a-leak",
        "chlorine", "disinfection-card maintenance-calendar step-cards",
    ),
    "drowning": Danger(
        (r"drown|children and goats fall in", r"डूब|बच्चे.*गिर"),
        (r"small child|\blid\b|toddler|empties", r"बच्च|ढक्कन|खाली"),
        "why-thin-walls how-much-water measuring base plastering curing first-filling troughs care",
        "how-much-water roof curing first-filling troughs",
        "show-the-pull test-a-spring measure-and-draw read-a-leak bed-a-trough wrap-and-wet",
        "drowning", "curing-log first-filling-card leak-test-log maintenance-calendar step-cards",
    ),
    "lifting": Danger(
        (
            r"two (people )?(lift|carry|hold)|in (two|pairs)|lift for two|two people for|two for|as much as several",
            r"दो.*(उठा|पकड़|मिल|लोग)|दो-दो|आध|कई (लोग|आदमी)",
        ),
        (r"alone|half a bag|two people move|by two people|in two", r"अकेल|आध|दो"),
        "materials base frame mortar people-and-money troughs", "materials base frame mortar people-and-money",
        "receive-a-delivery mix-one-batch plan-the-loads close-a-ring bed-a-trough",
        "lifting", "cutting-list step-cards",
    ),
    "the place, and who is below": Danger(
        (r"\bbelow\b|in its way|in that way", r"नीचे|रास्ते"), (r"takes a house", r"घर"),
        "why-thin-walls how-much-water the-place first-filling care checking",
        "why-thin-walls how-much-water the-place first-filling care",
        "show-the-pull test-a-spring judge-a-place read-a-leak",
        "ground", "hold-point-register site-checklist",
    ),
    "a cut bank": Danger(
        (r"\bbank\b", r"कटान|कटी|किनार"), (r"edge of the cut", r"कटान"),
        "the-place base measuring", "the-place base checking", "judge-a-place", "cut_bank", "step-cards",
    ),
    "a tank that fills": Danger(
        (r"(fill|tears).*below|below.*(fill|tears)|nobody below", r"(भर|फट).*नीचे|नीचे.*(भर|फट|न रहे)"),
        (r"takes a house|people below", r"घर|नीचे"),
        "first-filling", "first-filling", "read-a-leak",
        "filling", "first-filling-card leak-test-log hold-point-register step-cards",
    ),
    "what touches drinking water": Danger(
        (r"drinking|drunk|no lead", r"पीने|पिया|सीसा"), NONE,
        "how-much-water mesh-and-fittings care", "mesh-and-fittings", "mesh-a-panel",
        "drinking", "maintenance-calendar mesh-layout",
    ),
}  # fmt: skip
LANGUAGES = ("en", "hi")
Texts = Callable[[str], Iterable[Mapping[str, str]]]
MEETS = list(DANGERS.items())


@pytest.fixture(scope="module")
def content() -> CourseContent:
    found = load(ROOT).content
    assert found is not None
    return found


def says(danger: Danger, language: str, text: str, *, short: bool) -> bool:
    """Whether a text names the danger, or, where it is short, what guards against it."""
    patterns = [pair[LANGUAGES.index(language)] for pair in (danger.named, danger.guarded)[: 1 + short]]
    return any(re.search(pattern, " ".join(text.lower().split())) for pattern in patterns)


def missing(places: str, texts: Texts, danger: Danger, *, short: bool = False) -> list[str]:
    """The places of which no text names the danger, by language."""
    return [
        f"{place} ({language})"
        for place in places.split()
        for language in LANGUAGES
        if not any(says(danger, language, text[language], short=short) for text in texts(place))
    ]


@pytest.mark.parametrize(("name", "danger"), MEETS, ids=DANGERS)
def test_the_lesson_names_it_among_its_text(content: CourseContent, name: str, danger: Danger) -> None:
    def placed(module: str):
        shown = {
            language: {part.caution for part in content.lessons[module, language] if isinstance(part, CautionBlock)}
            for language in LANGUAGES
        }
        assert shown["en"] == shown["hi"]
        return [one.text for one in content.modules[module].cautions if one.id in shown["en"]]

    assert missing(danger.lessons, placed, danger) == [], name


@pytest.mark.parametrize(("name", "danger"), MEETS, ids=DANGERS)
def test_a_picture_names_it(content: CourseContent, name: str, danger: Danger) -> None:
    def told(module: str):
        cards = [one for one in content.modules[module].cards if one.caution is not None]
        return [*(one.caution for one in cards if one.caution is not None), *(one.text for one in cards)]

    assert missing(danger.cards, told, danger, short=True) == [], name


@pytest.mark.parametrize(("name", "danger"), MEETS, ids=DANGERS)
def test_the_practical_names_it(content: CourseContent, name: str, danger: Danger) -> None:
    def told(practical: str):
        found = content.practicals[practical]
        return [*found.cautions, *(step.text for step in found.steps)]

    assert missing(danger.practicals, told, danger, short=True) == [], name


@pytest.mark.parametrize(("name", "danger"), MEETS, ids=DANGERS)
def test_the_sheets_carry_it(content: CourseContent, name: str, danger: Danger) -> None:
    for language in LANGUAGES:
        said = content.words[language].say_one_of("plan.caution", danger.sheet)
        assert says(danger, language, said, short=False), f"{name} ({language})"
        asked = f'{{{{ caution("{danger.sheet.replace("_", "-")}") }}}}'
        sheets = {
            one: (ROOT / "handouts" / f"{one}.{language}.md").read_text("utf-8") for one in danger.handouts.split()
        }
        assert [one for one, text in sheets.items() if asked not in text] == [], name


def test_a_place_without_its_caution_is_noticed(content: CourseContent) -> None:
    """The glossary of dangers can fail: scale drawing on paper burns nobody."""
    texts = [one.text for one in content.modules["measuring"].cautions]
    danger = DANGERS["what touches drinking water"]
    assert missing("measuring", lambda _: texts, danger) == ["measuring (en)", "measuring (hi)"]


def test_every_danger_of_a_module_stands_in_its_lesson(content: CourseContent) -> None:
    for module in content.modules.values():
        for language in LANGUAGES:
            parts = content.lessons[module.id, language]
            placed = {part.caution for part in parts if isinstance(part, CautionBlock)}
            assert {one.id for one in module.cautions} == placed, f"{module.id} ({language})"
