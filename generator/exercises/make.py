"""Making items: a question or scenario with its numbers drawn, its options shuffled and its texts filled."""

from __future__ import annotations

from collections.abc import Mapping

from generator.calculations import BOOK
from generator.curriculum.models import (
    ChoiceQuestion,
    MatchQuestion,
    NumberQuestion,
    OrderQuestion,
    Question,
    Scenario,
    ScenarioPart,
)
from generator.exercises.draw import Recipe
from generator.exercises.fill import fill, fill_text
from generator.exercises.items import ChoiceItem, MatchItem, NumberItem, OrderItem, QuestionItem, ScenarioItem
from generator.exercises.tolerance import tolerance_of
from generator.exercises.variants import Variant, of_givens, seed_text, variant
from generator.formula import Book, Stream
from generator.words import Words


def make_item(question: Question, seed: str, words: Words, book: Book = BOOK) -> QuestionItem:
    """A question as one learner gets it.

    Args:
        question: of the bank.
        seed: the learner's; the question's id is added to it.
        words: of the learner's language.
        book: where the quantities live.

    Raises:
        NoVariantError: a number question without fair numbers.
    """
    language = words.language
    text = question.text[language]
    if isinstance(question, NumberQuestion):
        drawn = variant(question, seed, book)
        filled = fill(question, drawn.givens, words, book)
        return _number(drawn, question.asks, question.competency, filled, drawn.givens, book)
    stream = Stream(seed_text(seed, question.id))
    if isinstance(question, ChoiceQuestion):
        return ChoiceItem(
            id=question.id,
            competency=question.competency,
            text=text,
            several=question.several,
            options=tuple(option.text[language] for option in question.options),
            right=tuple(i for i, option in enumerate(question.options) if option.right),
            why=tuple(option.why[language] if option.why else "" for option in question.options),
            order=tuple(stream.shuffle(range(len(question.options)))),
        )
    if isinstance(question, OrderQuestion):
        return OrderItem(
            id=question.id,
            competency=question.competency,
            text=text,
            steps=tuple(step[language] for step in question.steps),
            why=question.why[language],
            order=_mixed(stream, len(question.steps)),
        )
    return _match(question, stream, language)


def _match(question: MatchQuestion, stream: Stream, language: str) -> MatchItem:
    return MatchItem(
        id=question.id,
        competency=question.competency,
        text=question.text[language],
        left=tuple(pair.left[language] for pair in question.pairs),
        right=tuple(pair.right[language] for pair in question.pairs),
        why=question.why[language],
        order=_mixed(stream, len(question.pairs)),
    )


def _mixed(stream: Stream, count: int) -> tuple[int, ...]:
    """A drawn order that is not the right one: left as it stands, it must not be an answer."""
    right = list(range(count))
    while (mixed := stream.shuffle(right)) == right:
        pass
    return tuple(mixed)


def make_scenario(scenario: Scenario, place: Mapping[str, float], words: Words, book: Book = BOOK) -> ScenarioItem:
    """A scenario on its place.

    Args:
        scenario: of `quizzes/scenarios/`.
        place: the place's values by name.
        words: of the learner's language.
        book: where the quantities live.

    Raises:
        OutOfRangeError: a number of the place leads outside a range.
    """
    language = words.language
    givens = {name: place[name] for name in scenario.given}
    parts = []
    for part in scenario.parts:
        drawn = of_givens(part_recipe(part, book), givens)
        filled = fill_text(part.text[language], givens, words, book)
        parts.append(_number(drawn, part.asks, part.competency, filled, {}, book))
    return ScenarioItem(
        id=scenario.id,
        title=scenario.title[language],
        text=fill_text(scenario.text[language], givens, words, book),
        givens=givens,
        parts=tuple(parts),
    )


def part_recipe(part: ScenarioPart, book: Book = BOOK) -> Recipe:
    """What working out and marking a scenario's part needs.

    Raises:
        ValueError: an unknown quantity, or a tolerance that can't be read.
    """
    quantity = book.quantities.get(part.asks)
    if quantity is None:
        raise ValueError(f"'{part.asks}' is not a quantity that can be asked for")
    return Recipe(book, part.id, part.asks, (), tolerance_of(part.answer, quantity), part.misconceptions)


def _number(
    drawn: Variant, asks: str, competency: str, text: str, givens: Mapping[str, float], book: Book
) -> NumberItem:
    quantity = book.quantities[asks]
    return NumberItem(
        id=drawn.question_id,
        competency=competency,
        text=text,
        asks=asks,
        unit=quantity.unit,
        places=quantity.places,
        low=float(quantity.low),
        high=float(quantity.high),
        givens=dict(givens),
        key=drawn.key,
        shown_key=drawn.shown_key,
        rounded=drawn.rounded,
        absolute=drawn.tolerance.absolute,
        relative=drawn.tolerance.relative,
        wrong=dict(drawn.wrong),
    )
