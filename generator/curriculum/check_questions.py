"""Whether a question can be asked: its numbers are in range, its answer can be worked out, its options are fair."""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Iterator, Mapping, Sequence

from generator.curriculum.files import Found, Reading
from generator.curriculum.models import (
    ChoiceQuestion,
    GivenRange,
    MatchQuestion,
    OneOf,
    Option,
    OrderQuestion,
    Place,
    Scenario,
    SpokenChoiceQuestion,
    SpotArea,
    SpotQuestion,
    Steps,
    WorkedQuestion,
)
from generator.formula import Book, OutOfRangeError, UnknownNameError, show_full
from generator.problems import Loc, Problem, few
from generator.problems.plain_errors import did_you_mean

MOST_CHOICES = 10_000
"""Numbers that one range may hold."""
_MOST_CORNERS = 64


def question_problems(reading: Reading, book: Book) -> Iterator[Problem]:
    """Everything that keeps a question from being asked.

    Args:
        reading: the files.
        book: the calculation module.
    """
    for _, number, found in reading.all("question", WorkedQuestion):
        yield from few(found.file.name, _number(number, found, book))
    for _, choice, found in reading.all("question", ChoiceQuestion):
        yield from _choice(choice, "options", choice.options, found)
    for _, said, found in reading.all("question", SpokenChoiceQuestion):
        yield from _choice(said, "options", said.options, found)
    for _, spot, found in reading.all("question", SpotQuestion):
        yield from _choice(spot, "areas", spot.areas, found)
        yield from _twice(found, "areas", "", [{"name": area.name} for area in spot.areas])
    for _, order, found in reading.all("question", OrderQuestion):
        yield from _twice(found, "steps", "", order.steps)
    for _, match, found in reading.all("question", MatchQuestion):
        yield from _twice(found, "pairs", "left", [pair.left for pair in match.pairs])
        yield from _twice(found, "pairs", "right", [pair.right for pair in match.pairs])


def place_values(reading: Reading, book: Book) -> tuple[dict[str, dict[str, float]], list[Problem]]:
    """Everything that can be worked out at each place; empty for a place with a wrong number.

    Args:
        reading: the files.
        book: the calculation module.
    """
    values: dict[str, dict[str, float]] = {name: {} for name in reading.ids.get("place", {})}
    problems: list[Problem] = []
    for name, place, found in reading.all("place", Place):
        drawn = {given: (value,) for given, value in place.given.items()}
        faults = few(found.file.name, _givens(found, ("given",), drawn, book))
        if not faults:
            try:
                values[name] = book.evaluate(place.given)
            except OutOfRangeError as error:
                faults = [
                    found.file.problem(("given",), "out-of-range", str(error), "change the numbers that lead to it")
                ]
        problems += faults
    return values, problems


def bounds(given: GivenRange) -> tuple[float, ...]:
    """The least and the largest number that a question can draw.

    Example:
        >>> bounds(Steps.model_validate({"from": 1.0, "to": 2.0, "step": 0.5}))
        (1.0, 2.0)
    """
    if isinstance(given, OneOf):
        return (min(given.one_of), max(given.one_of)) if len(set(given.one_of)) > 1 else (given.one_of[0],)
    if not isinstance(given, Steps):
        return (given,)
    whole = int((given.stop - given.start) / given.step + 1e-9)
    return (given.start, round(given.start + whole * given.step, 9)) if whole else (given.start,)


def _number(question: WorkedQuestion, found: Found, book: Book) -> Iterator[Problem]:
    file, at = found.file, found.loc
    faults = list(_ranges(question, found))
    good = {name: bounds(given) for name, given in question.given.items() if not _empty(given)}
    faults += _givens(found, (*at, "given"), {n: _all_drawn(question.given[n], good[n]) for n in good}, book)
    faults += _asks(found, book, question.asks, (*at, "asks"))
    for position, name in enumerate(question.misconceptions):
        if name not in book.misconceptions:
            what = f"unknown misconception '{name}'"
            loc = (*at, "misconceptions", position)
            faults.append(
                file.value_problem(loc, "unknown-misconception", what, did_you_mean(name, list(book.misconceptions)))
            )
    yield from faults
    if faults:
        return
    if question.asks in question.given:
        yield file.value_problem(
            (*at, "asks"), "asks-a-given", f"'{question.asks}' is given and asked for", "ask for something else"
        )
        return
    lacking = [name for name in book.needs(question.asks, question.given) if name not in question.given]
    if lacking:
        yield file.problem(
            (*at, "given"),
            "cannot-compute",
            f"'{question.asks}' can't be worked out without {' and '.join(lacking)}",
            f"give {' and '.join(lacking)}, or a quantity that stands in for it",
        )
        return
    for position, name in enumerate(question.misconceptions):
        yield from _misconception(found, book, question.asks, good, name, (*at, "misconceptions", position))
    for corner in _corners(good):
        try:
            book.evaluate(corner, [question.asks])
        except OutOfRangeError as error:
            drawn = ", ".join(f"{name} {show_full(value)}" for name, value in corner.items())
            yield file.problem((*at, "given"), "out-of-range", f"with {drawn}: {error}", "narrow the range of a given")
            return


def _all_drawn(given: GivenRange, ends: tuple[float, ...]) -> tuple[float, ...]:
    return given.one_of if isinstance(given, OneOf) else ends


def _empty(given: GivenRange) -> bool:
    return isinstance(given, Steps) and not 0 <= (given.stop - given.start) / given.step + 1e-9 < MOST_CHOICES


def _ranges(question: WorkedQuestion, found: Found) -> Iterator[Problem]:
    for name, given in question.given.items():
        loc = (*found.loc, "given", name)
        if not isinstance(given, Steps):
            continue
        if _empty(given):
            numbers = "no number" if given.stop < given.start else f"more than {MOST_CHOICES} numbers"
            yield found.file.problem(
                loc, "empty-range", f"the range of '{name}' holds {numbers}", "check from, to and step"
            )
            continue
        steps = (given.stop - given.start) / given.step
        if abs(steps - round(steps)) > 1e-6:
            what = f"the range of '{name}' never reaches {show_full(given.stop)} in steps of {show_full(given.step)}"
            yield found.file.value_problem(
                (*loc, "to"), "broken-step", what, f"write 'to: {show_full(bounds(given)[-1])}'"
            )


def _givens(found: Found, loc: Loc, drawn: Mapping[str, Sequence[float]], book: Book) -> Iterator[Problem]:
    """Names that the book doesn't know, and numbers outside their range."""
    for name, numbers in drawn.items():
        try:
            book.entry(name)
        except UnknownNameError:
            fix = did_you_mean(name, [*book.givens, *book.quantities])
            yield found.file.problem((*loc, name), "unknown-quantity", f"unknown quantity or given '{name}'", fix)
            continue
        for number in numbers:
            try:
                book.refuse_outside(name, number)
            except OutOfRangeError as error:
                yield found.file.value_problem(
                    (*loc, name), "out-of-range", str(error), "check the number and its unit"
                )


def _asks(found: Found, book: Book, asks: str, loc: Loc) -> list[Problem]:
    if asks in book.quantities:
        return []
    what = f"'{asks}' is a given: nothing is worked out" if asks in book.givens else f"unknown quantity '{asks}'"
    return [found.file.value_problem(loc, "unknown-quantity", what, did_you_mean(asks, list(book.quantities)))]


def _misconception(
    found: Found, book: Book, asks: str, good: Mapping[str, tuple[float, ...]], name: str, loc: Loc
) -> Iterator[Problem]:
    """A misconception has to touch the way to the answer, with nothing that the learner is not given."""
    of = book.misconceptions[name].of
    if of in good or of not in book.ancestors([asks], stop=good):
        what = f"'{name}' distorts '{of}', which is not worked out here"
        yield found.file.value_problem(
            loc, "misconception-without-effect", what, "choose one that touches this question"
        )
        return
    lacking = [
        need for need in book.ancestors([asks], stop=good, wrong=[name]) if need in book.givens and need not in good
    ]
    if lacking:
        what = f"'{name}' needs {' and '.join(lacking)}, which this question does not give"
        yield found.file.value_problem(loc, "cannot-compute", what, "give it, or choose another misconception")


def _corners(good: Mapping[str, tuple[float, ...]]) -> Iterator[dict[str, float]]:
    """Every least and largest number with every other; for very many givens, all least and all largest."""
    corners: Iterable[tuple[float, ...]] = itertools.islice(itertools.product(*good.values()), _MOST_CORNERS)
    for corner in corners:
        yield dict(zip(good, corner, strict=True))
    if 2 ** len(good) > _MOST_CORNERS:
        yield {name: ends[-1] for name, ends in good.items()}


def _choice(
    question: ChoiceQuestion | SpokenChoiceQuestion | SpotQuestion,
    key: str,
    options: Sequence[Option | SpotArea],
    found: Found,
) -> Iterator[Problem]:
    right = sum(option.right for option in options)
    loc = (*found.loc, key)
    if right == 0:
        yield found.file.problem(
            loc, "no-right-option", "no option is right", "write 'right: true' below the right one"
        )
    if right > 1 and not question.several:
        yield found.file.problem(
            loc, "several-right-options", f"{right} options are right", "keep one, or write 'several: true'"
        )
    if right == len(options) and not isinstance(question, SpotQuestion):
        yield found.file.problem(
            loc, "no-wrong-option", "every option is right", "add one that a learner could take for right"
        )
    yield from _twice(found, key, "text", [option.text or {} for option in options])


def _twice(found: Found, key: str, below: str, texts: Sequence[Mapping[str, str]]) -> Iterator[Problem]:
    """The same words twice in one list: a learner could not tell which is meant."""
    first: dict[tuple[str, str], int] = {}
    for position, text in enumerate(texts):
        for language, words in text.items():
            plain = " ".join(words.split()).casefold()
            if first.setdefault((language, plain), position) != position:
                loc = (*found.loc, key, position, *([below] if below else []), language)
                line, _ = found.file.line_and_column((*found.loc, key, first[language, plain]))
                yield found.file.value_problem(
                    loc, "same-text-twice", f"'{words}' stands here and in line {line}", "change or remove one"
                )


def scenario_problems(reading: Reading, book: Book, values: Mapping[str, Mapping[str, float]]) -> Iterator[Problem]:
    """Whether a scenario's parts can be worked out from what it gives, each from the parts before it.

    Args:
        reading: the files.
        book: the calculation module.
        values: everything known at each place.
    """
    for _, scenario, found in reading.all("scenario", Scenario):
        here = values.get(scenario.place)
        faults: list[Problem] = []
        for position, name in enumerate(scenario.given):
            loc: Loc = ("given", position)
            if name not in book.givens and name not in book.quantities:
                fix = did_you_mean(name, [*book.givens, *book.quantities])
                faults.append(
                    found.file.value_problem(loc, "unknown-quantity", f"unknown quantity or given '{name}'", fix)
                )
            elif here and name not in here:
                what = f"'{name}' is not known at '{scenario.place}'"
                faults.append(
                    found.file.value_problem(loc, "not-at-place", what, "add what it needs to the place's givens")
                )
        known = set(scenario.given)
        for position, part in enumerate(scenario.parts):
            at: Loc = ("parts", position)
            wrong = _asks(found, book, part.asks, (*at, "asks"))
            for place, name in enumerate(part.misconceptions):
                if name not in book.misconceptions:
                    fix = did_you_mean(name, list(book.misconceptions))
                    wrong.append(
                        found.file.value_problem(
                            (*at, "misconceptions", place),
                            "unknown-misconception",
                            f"unknown misconception '{name}'",
                            fix,
                        )
                    )
            if not wrong and not faults:
                wrong = list(_part(scenario, position, found, book, known))
            faults += wrong
            known.add(part.asks)
        yield from faults


def _part(scenario: Scenario, position: int, found: Found, book: Book, known: set[str]) -> Iterator[Problem]:
    part, at = scenario.parts[position], ("parts", position)
    if part.asks in known:
        what = f"'{part.asks}' is already known: it is given, or an earlier part asks for it"
        yield found.file.value_problem((*at, "asks"), "asks-a-given", what, "ask for something else")
        return
    lacking = [name for name in book.needs(part.asks, known) if name not in known]
    if lacking:
        what = f"'{part.asks}' can't be worked out without {' and '.join(lacking)}"
        yield found.file.value_problem(
            (*at, "asks"), "cannot-compute", what, "add it to given, or ask for it in an earlier part"
        )
        return
    good = dict.fromkeys(known, (0.0,))
    for place, name in enumerate(part.misconceptions):
        yield from _misconception(found, book, part.asks, good, name, (*at, "misconceptions", place))
