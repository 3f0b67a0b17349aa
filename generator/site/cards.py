"""Exercises as they stand on a page without a script: the question, room for an answer, and the answers at the end.

The page's script puts a card that draws new numbers in the place of each; what is here is what it starts from.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from html import escape

from generator.calculations import BOOK
from generator.curriculum.models import Question, Scenario
from generator.exercises import aids_said, make_item, make_scenario, rounding_said
from generator.exercises.items import (
    ChoiceItem,
    MatchItem,
    NumberItem,
    OrderItem,
    QuestionItem,
    ScenarioItem,
    SpokenItem,
    SpotItem,
)
from generator.exercises.letters import LETTERS
from generator.site.markup import paragraphs, short_steps
from generator.words import Words

PAGE_SEED = "page"
"""The seed of the numbers that a page shows first; the page's script draws the next ones with ``page-1`` and so on."""


@dataclass(frozen=True)
class Numbered:
    """A question of a page with its number there."""

    number: int
    question: Question
    item: QuestionItem

    @property
    def anchor(self) -> str:
        """Id of its heading."""
        return f"exercise-{self.question.id}"


def numbered(questions: Sequence[Question], words: Words) -> dict[str, Numbered]:
    """The questions of a page, numbered in their order, with the numbers that the page shows first."""
    return {
        question.id: Numbered(number, question, make_item(question, PAGE_SEED, words))
        for number, question in enumerate(questions, start=1)
    }


def card(exercise: Numbered, words: Words, figure: str = "") -> str:
    """One exercise.

    Args:
        exercise: the question and its number.
        words: the page's language.
        figure: its drawing, ready made.
    """
    title = words.say("page.exercise_number", number=exercise.number)
    return (
        f'<div class="ts-card" role="group" aria-labelledby="{exercise.anchor}" data-question="{exercise.question.id}">'
        f'<h3 id="{exercise.anchor}">{escape(title, quote=False)}</h3>{figure}'
        f'<div class="ts-body">{paragraphs(exercise.item.text)}{_room(exercise.item, words)}</div></div>'
    )


def scenario_card(scenario: Scenario, place: Mapping[str, float], words: Words, figure: str = "") -> str:
    """A scenario with its parts."""
    item = make_scenario(scenario, place, words)
    parts = "".join(
        f'<div class="ts-part"><h3>{escape(words.say("page.part_number", number=number), quote=False)}</h3>'
        f"{paragraphs(part.text)}{_room(part, words)}</div>"
        for number, part in enumerate(item.parts, start=1)
    )
    return (
        f'<div class="ts-card" role="group" aria-labelledby="scenario-{scenario.id}" data-scenario="{scenario.id}">'
        f'{paragraphs(item.text)}{figure}<div class="ts-body">{parts}</div></div>'
    )


def _list(texts: Sequence[str], kind: str = "") -> str:
    items = "".join(f"<li>{escape(text, quote=False)}</li>" for text in texts)
    return f'<ol type="{kind}">{items}</ol>' if kind else f"<ol>{items}</ol>"


def _room(item: QuestionItem, words: Words) -> str:
    label = escape(words.say("page.answer_line"), quote=False)
    unit = (
        f" {escape(words.say_one_of('unit', item.unit), quote=False)}"
        if isinstance(item, NumberItem) and item.unit
        else ""
    )
    line = f'<p>{label}: <span class="ts-blank"></span>{unit}</p>'
    match item:
        case NumberItem():
            return "".join(f"<p>{escape(note, quote=False)}</p>" for note in _notes(item, words)) + line
        case SpotItem():
            told = [f"{area.letter}: {text}" for area, text in zip(item.areas, item.labels, strict=True) if text]
            return paragraphs("\n".join(told)) + line
        case SpokenItem():
            note = escape(words.say("exercise.read_aloud"), quote=False)
            return f"<p>{note}</p>{_room(item.answer, words)}"
        case ChoiceItem():
            return _list([item.options[place] for place in item.order], "A") + line
        case OrderItem():
            return _list([item.steps[place] for place in item.order], "A") + line
        case MatchItem():
            right = _list([item.right[place] for place in item.order], "A")
            return f'<div class="ts-pairs">{_list(item.left)}{right}</div>' + line


def _notes(item: NumberItem, words: Words) -> list[str]:
    """What may be used, whether the unit is part of the answer, and the steps that are asked for on the way."""
    notes = [aids_said(item, words)] if item.aids else []
    notes += [words.say("exercise.write_the_unit")] if item.units else []
    return notes + [f"{part.text}: ..." for part in item.steps]


def _letter(order: Sequence[int], place: int) -> str:
    return LETTERS[order.index(place)]


def answer(item: QuestionItem, words: Words, givens: Mapping[str, float] | None = None) -> str:
    """The answer of an exercise, with the way to it.

    Args:
        item: as the page shows it first.
        words: the page's language.
        givens: for a part of a scenario, the numbers of its place.
    """
    match item:
        case NumberItem():
            shown = escape(words.with_unit(item.shown_key, item.unit), quote=False)
            way = short_steps(BOOK.trace(item.asks, item.givens or givens or {}), words)
            return f"<p><strong>{shown}</strong></p>{way}{paragraphs(rounding_said(item, words))}"
        case ChoiceItem():
            letters = sorted(_letter(item.order, place) for place in item.right)
            reasons = [f"{_letter(item.order, place)}: {item.why[place]}" for place in item.order if item.why[place]]
            way = short_steps(BOOK.trace(item.asks, item.givens), words) if item.asks else ""
            return f"<p><strong>{', '.join(letters)}</strong></p>{paragraphs(chr(10).join(reasons))}{way}"
        case OrderItem():
            letters = [_letter(item.order, place) for place in range(len(item.steps))]
            return f"<p><strong>{' '.join(letters)}</strong></p>{paragraphs(item.why)}"
        case MatchItem():
            pairs = [f"{place + 1}{_letter(item.order, place)}" for place in range(len(item.left))]
            return f"<p><strong>{' '.join(pairs)}</strong></p>{paragraphs(item.why)}"
        case SpotItem():
            letters = [item.areas[place].letter for place in item.right]
            reasons = [f"{area.letter}: {why}" for area, why in zip(item.areas, item.why, strict=True) if why]
            return f"<p><strong>{', '.join(letters)}</strong></p>{paragraphs(chr(10).join(reasons))}"
        case SpokenItem():
            return answer(item.answer, words, givens)


def answers(exercises: Sequence[Numbered], scenarios: Sequence[ScenarioItem], words: Words) -> str:
    """All answers of a page, closed until someone asks for them."""
    entries = [
        f"<dt>{escape(words.say('page.exercise_number', number=exercise.number), quote=False)}</dt>"
        f"<dd>{answer(exercise.item, words)}</dd>"
        for exercise in exercises
    ]
    for scenario in scenarios:
        for number, part in enumerate(scenario.parts, start=1):
            title = f"{scenario.title} · {words.say('page.part_number', number=number)}"
            entries.append(f"<dt>{escape(title, quote=False)}</dt><dd>{answer(part, words, scenario.givens)}</dd>")
    return (
        '<details class="ts-answers" data-search-exclude="">'
        f"<summary>{escape(words.say('page.answers_show'), quote=False)}</summary>"
        f"{paragraphs(words.say('page.answers_about'))}<dl>{''.join(entries)}</dl></details>"
    )
