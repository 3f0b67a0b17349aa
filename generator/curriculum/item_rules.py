"""Rules of writing one item: what gives its answer away, hides it, or asks for reading where the trade is meant.

They follow what research on writing items agrees on: one idea, asked for in full before the options; worded
positively; three options of one form; no option about the others; no clue from grammar. What makes an answer wrong or
worthless is a problem; what may have its reason is a warning.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from generator.curriculum.files import Found, Reading
from generator.curriculum.item_words import ITEM_LANGUAGES, questions_in, sentences, spoken, words_of
from generator.curriculum.models import (
    ChoiceQuestion,
    NumberQuestion,
    Option,
    QuestionBase,
    SpokenChoiceQuestion,
)
from generator.problems import Problem

MOST_WORDS = 18
"""Words of one sentence of an item. Twelve are better: that is what a bank's average is held against."""
OPTIONS = 3
"""As many options as tell as much as five do, with less to read."""
MOST_UNEVEN = 2.5
"""How often the shortest option may go into the longest, where they differ by more than a few letters."""
_FEW_LETTERS = 15
_ENDS = re.compile(r"[.?!।][\"”’')]*\s*$")
_RANGE = re.compile(r"(\d+(?:\.\d+)?)\s*(?:to|से|-|–)\s*(\d+(?:\.\d+)?)")


def item_problems(reading: Reading) -> Iterator[Problem]:
    """Items whose answer is wrong or worthless because of how they are written."""
    for _, question, found in reading.all("question", QuestionBase):
        if question.retired:
            continue
        for language, text in question.text.items():
            rules = ITEM_LANGUAGES.get(language)
            asked = questions_in(text) if rules is not None else []
            if rules is not None and any(rules.which.search(one) and rules.negative.search(one) for one in asked):
                what = "the question asks for what is not so, and who overlooks one word answers the opposite"
                fix = "ask for what is so: 'Which one is missing?', 'Which one do you refuse?'"
                yield found.file.value_problem((*found.loc, "text", language), "negative-question", what, fix)
        if isinstance(question, ChoiceQuestion | SpokenChoiceQuestion):
            yield from _option_problems(question, found)


def _option_problems(question: ChoiceQuestion | SpokenChoiceQuestion, found: Found) -> Iterator[Problem]:
    for language in question.text:
        rules = ITEM_LANGUAGES.get(language)
        said: dict[tuple[str, ...], int] = {}
        for position, option in enumerate(question.options):
            loc = (*found.loc, "options", position, "text", language)
            text = option.text.get(language)
            if text is None:  # told as a missing translation, once the course's languages are known
                continue
            if rules is not None and rules.whole_list.search(text):
                what = f"'{text}' is no answer of its own: who knows two of the options knows it"
                yield found.file.value_problem(loc, "option-about-options", what, "write what a learner could think")
            plain = tuple(words_of(text))
            first = said.setdefault(plain, position)
            if first != position and " ".join(text.split()).casefold() != _plain(question.options[first], language):
                line, _ = found.file.line_and_column((*found.loc, "options", first, "text", language))
                what = f"'{text}' says the same as the option in line {line}"
                yield found.file.value_problem(loc, "same-option", what, "change or remove one")


def _plain(option: Option, language: str) -> str:
    return " ".join(option.text[language].split()).casefold()


def item_warnings(reading: Reading) -> Iterator[Problem]:
    """Items that read harder, or give more away, than they need to."""
    for _, question, found in reading.all("question", QuestionBase):
        if question.retired:
            continue
        for language, text in question.text.items():
            for code, what, fix in _stem(text, language):
                yield found.file.value_problem((*found.loc, "text", language), code, what, fix)
        if isinstance(question, ChoiceQuestion | SpokenChoiceQuestion):
            yield from _option_warnings(question, found)
        if isinstance(question, NumberQuestion) and len(question.misconceptions) < 2:
            loc = (*found.loc, "misconceptions") if question.misconceptions else found.loc
            what = f"'{question.id}' can name fewer than two mistakes behind a wrong answer"
            fix = "add a misconception that learners have here"
            yield found.file.value_problem(loc, "few-misconceptions", what, fix)


def _stem(text: str, language: str) -> Iterator[tuple[str, str, str]]:
    rules = ITEM_LANGUAGES.get(language)
    longest = max((len(words_of(sentence)) for sentence in sentences(text)), default=0)
    if longest > MOST_WORDS:
        what = f"a sentence has {longest} words, and {MOST_WORDS} are the most that a slow reader holds"
        yield "long-sentence", what, "make two of it"
    if len(questions_in(text)) > 1:
        yield "two-questions", "two questions stand in one item", "ask one; make another item of the other"
    whole = spoken(text).strip()
    if not _ENDS.search(whole) or (rules is not None and rules.clue is not None and rules.clue.search(whole)):
        what = "the question is not whole before its options begin"
        yield "unfinished-question", what, "end it with a question mark or a full stop"


def _option_warnings(question: ChoiceQuestion | SpokenChoiceQuestion, found: Found) -> Iterator[Problem]:
    loc = (*found.loc, "options")
    if not question.several and len(question.options) != OPTIONS:
        what = f"{len(question.options)} options; {OPTIONS} tell as much as more, and two leave half to luck"
        yield found.file.value_problem(loc, "not-three-options", what, f"write {OPTIONS} that learners believe")
    for language in question.text:
        texts = [option.text[language] for option in question.options]
        if _uneven(texts):
            what = f"the options have not one form in '{language}': {' | '.join(texts)}"
            fix = "write all with or all without an end mark and a capital, and about equally long"
            yield found.file.value_problem(loc, "options-not-alike", what, fix)
        for one, other in _overlaps(texts):
            what = f"'{one}' and '{other}' can both be right"
            fix = "draw the line between them"
            yield found.file.value_problem(loc, "overlapping-options", what, fix)


def _uneven(texts: Sequence[str]) -> bool:
    lengths = [len(text) for text in texts]
    return (
        len({bool(_ENDS.search(text)) for text in texts}) > 1
        or len({text.lstrip("\"“'(")[:1].islower() for text in texts}) > 1
        or (max(lengths) > MOST_UNEVEN * min(lengths) and max(lengths) - min(lengths) > _FEW_LETTERS)
    )


def _overlaps(texts: Sequence[str]) -> Iterator[tuple[str, str]]:
    """Options one of which says all of the other, or whose ranges of numbers meet in more than one number."""
    plain = [f" {' '.join(words_of(text))} " for text in texts]
    ranges = [_RANGE.search(spoken(text)) for text in texts]
    for later, other in enumerate(texts):
        for earlier, one in enumerate(texts[:later]):
            a, b = ranges[earlier], ranges[later]
            inside = plain[earlier] != plain[later] and (
                plain[earlier] in plain[later] or plain[later] in plain[earlier]
            )
            met = a is not None and b is not None and _meet(a, b)
            if inside or met:
                yield one, other


def _meet(a: re.Match[str], b: re.Match[str]) -> bool:
    return min(float(a[2]), float(b[2])) > max(float(a[1]), float(b[1]))
