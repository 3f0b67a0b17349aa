"""Making items: a question or scenario with its numbers drawn, its options shuffled and its texts filled."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace

from generator.calculations import BOOK
from generator.curriculum.models import (
    ChoiceQuestion,
    MatchQuestion,
    NumberChoiceQuestion,
    NumberQuestion,
    Option,
    OrderQuestion,
    Question,
    Scenario,
    ScenarioPart,
    SpokenChoiceQuestion,
    SpokenNumberQuestion,
    SpotQuestion,
)
from generator.exercises.draw import Recipe, recipe, touching
from generator.exercises.fill import fill, fill_text
from generator.exercises.items import (
    Area,
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
from generator.exercises.spoken import script_lines, unmarked
from generator.exercises.tolerance import tolerance_of
from generator.exercises.variants import Variant, of_givens, seed_text, variant
from generator.figures import FIGURES, hot_areas
from generator.formula import Book, Stream, show
from generator.words import Words

FigureAreas = Mapping[str, Mapping[str, str]]
"""The hot areas that figures name, by figure: for each letter in the drawing the name of what stands there."""
DEALS = 24
"""In so many ways a drawing's letters are dealt to its places on the sheets of a class."""


def make_item(
    question: Question, seed: str, words: Words, book: Book = BOOK, areas: FigureAreas | None = None
) -> QuestionItem:
    """A question as one learner gets it.

    Args:
        question: of the bank.
        seed: the learner's; the question's id is added to it.
        words: of the learner's language.
        book: where the quantities live.
        areas: of the figures that letter their own areas, those of their usual drawing if nothing is given; for other
            figures the letters follow the question's order.

    Raises:
        NoVariantError: a number question without fair numbers.
        ValueError: a figure without an area that the question names.
    """
    language = words.language
    text = question.text[language]
    match question:
        case NumberQuestion():
            return _number_item(question, seed, words, book)
        case NumberChoiceQuestion():
            return _numbers_to_choose(question, seed, words, book)
        case SpokenNumberQuestion():
            return _spoken_number(question, seed, words, book)
        case ChoiceQuestion():
            return _choice(question, question.options, text, seed, language)
        case SpokenChoiceQuestion():
            answer = _choice(question, question.options, unmarked(text), seed, language)
            return _spoken(question, text, answer)
        case SpotQuestion():
            return _spot(question, language, (hot_areas() if areas is None else areas).get(question.figure))
        case OrderQuestion():
            return OrderItem(
                id=question.id,
                competency=question.competency,
                text=text,
                steps=tuple(step[language] for step in question.steps),
                why=question.why[language],
                order=_mixed(Stream(seed_text(seed, question.id)), len(question.steps)),
            )
        case MatchQuestion():
            return _match(question, Stream(seed_text(seed, question.id)), language)


def dealt_areas(question: Question, seed: str) -> FigureAreas | None:
    """The letters of a learner's own drawing, dealt to its places anew; None where no drawing letters itself.

    Args:
        question: of the bank.
        seed: the learner's; the question's id is added to it.
    """
    kind = FIGURES.get(question.figure) if isinstance(question, SpotQuestion) else None
    if kind is None or kind.spot is None or question.figure is None:
        return None
    deal = 1 + Stream(f"{seed_text(seed, question.id)}|areas").below(DEALS)
    return {question.figure: kind.spot.letters(deal)}


def _number_item(question: NumberQuestion, seed: str, words: Words, book: Book) -> NumberItem:
    made = recipe(question, book)
    drawn = variant(question, seed, book)
    filled = fill(question, drawn.givens, words, book)
    item = _number(drawn, made, question.competency, filled, drawn.givens)
    steps = [
        _number(of_givens(part, drawn.givens), part, question.competency, words.say_one_of("quantity", part.asks), {})
        for part in credit_parts(made, question.given)
    ]
    return item.model_copy(update={"aids": question.aids, "units": question.units, "steps": tuple(steps)})


def credit_parts(made: Recipe, given: Collection[str]) -> tuple[Recipe, ...]:
    """What marking each step that earns a point needs.

    Args:
        made: of the question.
        given: names of what the question gives.
    """
    book, parts = made.book, []
    for name in made.credit:
        near = touching(book, name, given, ())
        aims = tuple(mistake for mistake in made.misconceptions if mistake in near)
        parts.append(
            replace(
                made,
                id=f"{made.id}.{name.replace('_', '-')}",
                asks=name,
                tolerance=tolerance_of("exact", book.quantities[name]),
                misconceptions=aims,
                also=tuple(mistake for mistake in near if mistake not in aims),
                rule="",
                grain=0.0,
            )
        )
    return tuple(parts)


def _numbers_to_choose(question: NumberChoiceQuestion, seed: str, words: Words, book: Book) -> ChoiceItem:
    drawn = variant(question, seed, book)
    quantity = book.quantities[question.asks]
    answers = {"": drawn.key, **drawn.wrong}
    stream = Stream(seed_text(seed, f"{question.id}|options"))
    return ChoiceItem(
        id=question.id,
        competency=question.competency,
        text=fill(question, drawn.givens, words, book),
        several=False,
        options=tuple(words.with_unit(option(value, quantity.places), quantity.unit) for value in answers.values()),
        right=(0,),
        why=("",) * len(answers),
        # Not from the least up: a mistake mostly lies on one side of the right number, so its place would give it away.
        order=tuple(stream.shuffle(range(len(answers)))),
        mistakes=tuple(answers),
        asks=question.asks,
        givens=dict(drawn.givens),
    )


def option(value: float, places: int) -> str:
    """A worked-out option as print shows it: what would be a count but came out broken keeps two decimals.

    Example:
        >>> option(11.0, 0), option(10.5, 0), option(2.005, 2)
        ('11', '10.50', '2.01')
    """
    broken = places == 0 and abs(value - round(value)) > 1e-9
    return show(value, 2 if broken else places)


def _spoken_number(question: SpokenNumberQuestion, seed: str, words: Words, book: Book) -> SpokenItem:
    drawn = variant(question, seed, book)
    script = fill(question, drawn.givens, words, book)
    plain = fill_text(unmarked(question.text[words.language]), drawn.givens, words, book)
    answer = _number(drawn, recipe(question, book), question.competency, plain, drawn.givens)
    return _spoken(question, script, answer)


def _spoken(
    question: SpokenChoiceQuestion | SpokenNumberQuestion, script: str, answer: NumberItem | ChoiceItem
) -> SpokenItem:
    return SpokenItem(
        id=question.id,
        competency=question.competency,
        text=answer.text,
        script=script_lines(script),
        answer=answer,
    )


def _choice(
    question: ChoiceQuestion | SpokenChoiceQuestion, options: Sequence[Option], text: str, seed: str, language: str
) -> ChoiceItem:
    stream = Stream(seed_text(seed, question.id))
    return ChoiceItem(
        id=question.id,
        competency=question.competency,
        text=text,
        several=question.several,
        options=tuple(option.text[language] for option in options),
        right=tuple(i for i, option in enumerate(options) if option.right),
        why=tuple(option.why[language] if option.why else "" for option in options),
        order=tuple(stream.shuffle(range(len(options)))),
    )


def lettered(question: SpotQuestion, drawn: Mapping[str, str] | None) -> tuple[Area, ...]:
    """The areas that a learner chooses between, by their letters.

    Args:
        question: names the fault, and what is to be said of other areas.
        drawn: what the figure letters itself; None where it letters nothing.

    Raises:
        ValueError: the figure has no area of a name, or there is nothing to choose between.
    """
    if drawn is None:
        made = tuple(Area(letter=LETTERS[place], name=area.name) for place, area in enumerate(question.areas))
    else:
        made = tuple(Area(letter=letter, name=name) for letter, name in sorted(drawn.items()))
    names = [area.name for area in made]
    missing = [area.name for area in question.areas if area.name not in names]
    if missing:
        raise ValueError(
            f"the figure '{question.figure}' has no area '{missing[0]}'; it has {', '.join(sorted(names))}"
        )
    if len(made) < 2:
        raise ValueError("one area alone is no choice")
    return made


def _spot(question: SpotQuestion, language: str, drawn: Mapping[str, str] | None) -> SpotItem:
    areas = lettered(question, drawn)
    named = {area.name: area for area in question.areas}
    found = [named.get(area.name) for area in areas]
    return SpotItem(
        id=question.id,
        competency=question.competency,
        text=question.text[language],
        figure=question.figure,
        several=question.several,
        areas=areas,
        labels=tuple(area.text[language] if area and area.text else "" for area in found),
        right=tuple(place for place, area in enumerate(found) if area and area.right),
        why=tuple(area.why[language] if area and area.why else "" for area in found),
    )


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
    givens = scenario_givens(scenario, place, book)
    parts = []
    for part in scenario.parts:
        made = part_recipe(part, book, scenario.given)
        filled = fill_text(part.text[language], givens, words, book)
        item = _number(of_givens(made, givens), made, part.competency, filled, {})
        parts.append(item.model_copy(update={"aids": part.aids}))
    return ScenarioItem(
        id=scenario.id,
        title=scenario.title[language],
        text=fill_text(scenario.text[language], givens, words, book),
        givens=givens,
        parts=tuple(parts),
    )


def scenario_givens(scenario: Scenario, place: Mapping[str, float], book: Book = BOOK) -> dict[str, float]:
    """What a scenario tells. What the place works out itself is rounded as it is shown: learners reckon with that.

    Args:
        scenario: of `quizzes/scenarios/`.
        place: the place's values by name.
        book: where the quantities live.
    """
    return {
        name: round(place[name], book.quantities[name].places) if name in book.quantities else place[name]
        for name in scenario.given
    }


def part_recipe(part: ScenarioPart, book: Book = BOOK, given: Sequence[str] = ()) -> Recipe:
    """What working out and marking a scenario's part needs.

    Args:
        part: of the scenario.
        book: where the quantities live.
        given: what the scenario gives; with it, also the misconceptions that the part does not aim at are looked for.

    Raises:
        ValueError: an unknown quantity, or a tolerance that can't be read.
    """
    quantity = book.quantities.get(part.asks)
    if quantity is None:
        raise ValueError(f"'{part.asks}' is not a quantity that can be asked for")
    also = touching(book, part.asks, given, part.misconceptions) if given else ()
    return Recipe(book, part.id, part.asks, (), tolerance_of(part.answer, quantity), part.misconceptions, also)


def _number(drawn: Variant, made: Recipe, competency: str, text: str, givens: Mapping[str, float]) -> NumberItem:
    quantity = made.book.quantities[made.asks]
    return NumberItem(
        id=made.id,
        competency=competency,
        text=text,
        asks=made.asks,
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
        also=dict(drawn.also),
        rule=made.rule,
        grain=made.grain,
        exact=drawn.exact,
    )
