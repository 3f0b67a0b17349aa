"""Rules of writing a bank: habits of its author that a clever guesser learns, and questions that say the same again."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence

from generator.curriculum.files import Found, Reading
from generator.curriculum.item_words import sentences, words_of
from generator.curriculum.models import (
    Bank,
    ChoiceQuestion,
    NumberQuestion,
    Question,
    QuestionBase,
    SpokenChoiceQuestion,
    WorkedQuestion,
)
from generator.problems import Problem

CLEARLY_LONGER = 1.1
"""A right option that is longer than every wrong one by less is not seen to be."""
MOST_LONGEST = 0.4
"""Share of a bank's choices whose right option may be the longest: of three alike it is one third by chance."""
_FEWEST_CHOICES = 8
MOST_WORDS_ON_AVERAGE = 12
"""Words of a sentence of a bank, all together."""
MOST_OF_ONE_SET = 4
"""Questions that may ask for the same from the same givens."""
NEARLY_THE_SAME = 0.5
"""Share of common pieces of three words above which two questions are the same one to whoever learns them by heart."""
_PIECE = 3
_FEWEST_PIECES = 4


def bank_warnings(reading: Reading) -> Iterator[Problem]:
    """Habits of a whole bank, and questions that are asked again in another place."""
    for _, bank, found in reading.all("bank", Bank):
        for language in reading.languages:
            yield from _right_is_longest(bank, found, language)
            yield from _long_sentences(bank, found, language)
    yield from _same_set(reading)
    for language in reading.languages:
        yield from _said_before(reading, language)


def _right_is_longest(bank: Bank, found: Found, language: str) -> Iterator[Problem]:
    choices = [
        question
        for question in bank.questions
        if isinstance(question, ChoiceQuestion | SpokenChoiceQuestion) and not question.retired and not question.several
    ]
    longest = [question.id for question in choices if _longest(question, language)]
    if len(choices) >= _FEWEST_CHOICES and len(longest) > MOST_LONGEST * len(choices):
        what = (
            f"the right option is clearly the longest in {len(longest)} of {len(choices)} choices in '{language}', and "
            f"who knows nothing ticks the longest: {', '.join(longest)}"
        )
        fix = "shorten the right ones, or say as much in a wrong one"
        yield found.file.value_problem(("questions",), "right-is-longest", what, fix)


def _longest(question: ChoiceQuestion | SpokenChoiceQuestion, language: str) -> bool:
    right = max((len(option.text[language]) for option in question.options if option.right), default=0)
    wrong = max((len(option.text[language]) for option in question.options if not option.right), default=0)
    return right > CLEARLY_LONGER * wrong


def _long_sentences(bank: Bank, found: Found, language: str) -> Iterator[Problem]:
    asked: Sequence[Question] = [question for question in bank.questions if not question.retired]
    lengths = [len(words_of(sentence)) for question in asked for sentence in sentences(question.text[language])]
    if lengths and sum(lengths) > MOST_WORDS_ON_AVERAGE * len(lengths):
        what = (
            f"a sentence has {sum(lengths) / len(lengths):.1f} words on average in '{language}', and "
            f"{MOST_WORDS_ON_AVERAGE} are enough"
        )
        yield found.file.value_problem(("questions",), "long-sentences", what, "make two of the long ones")


def _same_set(reading: Reading) -> Iterator[Problem]:
    sets: dict[tuple[str, frozenset[str]], list[str]] = defaultdict(list)
    for name, question, found in reading.all("question", NumberQuestion):
        if question.retired:
            continue
        same = sets[question.asks, frozenset(question.given)]
        same.append(name)
        if len(same) > MOST_OF_ONE_SET:
            what = f"'{question.asks}' is asked from the same givens by {', '.join(same[:-1])} already"
            fix = "ask for another step, give other numbers, or retire one"
            yield found.file.value_problem((*found.loc, "asks"), "same-set", what, fix)


def _said_before(reading: Reading, language: str) -> Iterator[Problem]:
    """Questions whose text is nearly that of an earlier one; all that share a piece are compared."""
    pieces: dict[str, frozenset[tuple[str, ...]]] = {}
    asked = {name: question.asks for name, question, _ in reading.all("question", WorkedQuestion)}
    holders: Mapping[tuple[str, ...], list[str]] = defaultdict(list)
    for name, question, found in reading.all("question", QuestionBase):
        if question.retired:
            continue
        words = words_of(question.text[language])
        mine = frozenset(tuple(words[at : at + _PIECE]) for at in range(len(words) - _PIECE + 1))
        common: dict[str, int] = defaultdict(int)
        for piece in mine:
            for other in holders[piece]:
                common[other] += 1
            holders[piece].append(name)
        pieces[name] = mine
        for other, count in sorted(common.items()):
            if asked.get(name) != asked.get(other):
                continue  # the same tank, and another quantity of it
            if count >= _FEWEST_PIECES and count > NEARLY_THE_SAME * len(mine | pieces[other]):
                what = f"the text is nearly that of '{other}' in '{language}'"
                fix = "ask something else, or retire one"
                yield found.file.value_problem((*found.loc, "text", language), "said-before", what, fix)
