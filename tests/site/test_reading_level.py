"""How hard the pages' own words are to read: a simple formula of ours for English, the length of sentences for Hindi.

The grade is the well-known one of words a sentence and syllables a word, with syllables counted as groups of vowels.
Trade words are what the course teaches, and numbers are read off, so both count as one easy word.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest

from tests.site.course_stick import course

FAMILIES = ("page", "practice")
GRADE_OF_A_TWELVE_YEAR_OLD = 6.5
LONGEST_ENGLISH = 18
MEAN_ENGLISH, MEAN_HINDI = 10.0, 11.0
LONGEST_HINDI = 18
TRADE = re.compile(
    r"\b(?:ready reckoner|reckoner|structural|engineer|certificates?|licensed|diameters?|litres?|spacing|cement|mortar|"
    r"angles?|concrete|misconceptions?|exercises?|computer|browser|competenc\w+|formulas?)\b",
    re.IGNORECASE,
)


def sentences(language: str) -> Iterator[str]:
    """All sentences of the interface with at least four words: shorter ones are labels."""
    words = course().words[language]
    for family in FAMILIES:
        for _, text in words.family(family):
            for one in (text,) if isinstance(text, str) else dict(text).values():
                plain = re.sub(r"\{[a-z_]+\}|\*\*|`", " ", one)
                for sentence in re.split(r"[.?!।:;]+(?:\s|$)|\n", plain):
                    spoken = [word for word in sentence.split() if re.search(r"\w", word)]
                    if len(spoken) >= 4:
                        yield " ".join(spoken)


def syllables(word: str) -> int:
    """Groups of vowels, a silent e at the end left out."""
    plain = re.sub(r"[^a-z]", "", word.lower())
    plain = re.sub(r"(?<=[^aeiouyl])e$|(?<=[^aeiouytd])ed$", "", plain) or plain
    return max(1, len(re.findall(r"[aeiouy]+", plain)))


def grade(texts: list[str]) -> float:
    """School grade that a text needs; grade 6 is read at about 12 years."""
    plain = [TRADE.sub("thing", text) for text in texts]
    words = [word for text in plain for word in text.split()]
    return 0.39 * len(words) / len(texts) + 11.8 * sum(map(syllables, words)) / len(words) - 15.59


def mean(texts: list[str]) -> float:
    return sum(len(text.split()) for text in texts) / len(texts)


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("The cat sat on the mat", -3.0, 1.0),
        ("Cut six bars and tie them to the ring with wire", -1.0, 4.0),
        ("Notwithstanding preceding considerations regarding reinforcement optimisation methodology", 20.0, 60.0),
    ],
)
def test_the_formula_tells_easy_from_hard(text: str, low: float, high: float) -> None:
    assert low < grade([text]) < high


def test_english_on_the_pages_is_for_twelve_years_and_older() -> None:
    found = list(sentences("en"))
    assert len(found) > 60
    assert grade(found) <= GRADE_OF_A_TWELVE_YEAR_OLD
    assert mean(found) <= MEAN_ENGLISH


def test_no_sentence_on_a_page_is_too_long() -> None:
    assert [one for one in sentences("en") if len(one.split()) > LONGEST_ENGLISH] == []
    assert [one for one in sentences("hi") if len(one.split()) > LONGEST_HINDI] == []


def test_hindi_sentences_are_short() -> None:
    found = list(sentences("hi"))
    assert len(found) > 60
    assert mean(found) <= MEAN_HINDI
