"""Counts that find sentences too long or too hard for the people who read the lessons.

Own counters, because the usual ones want word lists out of the network. They are used only to find bad sentences, not
to prove a text good: a formula knows nothing of the reader.
"""

from __future__ import annotations

import re

TRADE_WORDS = frozenset(
    {"angle", "angles", "bar", "bars", "hoop", "hoops", "ring", "rings", "frame", "mesh", "mortar", "lap", "laps",
     "tie", "ties", "tied", "wire", "steel", "plaster", "cover", "cage", "radius", "diameter", "diameters", "plumb",
     "centre", "engineer", "code", "inside", "outside", "usual", "practice", "trainer", "plan"}
)  # fmt: skip
"""Words that the course itself teaches, left out of the syllable count: every mason knows them or learns them here."""

_DIRECTIVE_LINE = re.compile(r"^\{\{.*?\}\}\s*$", re.MULTILINE)
_DIRECTIVE = re.compile(r"\{\{.*?\}\}")
_MARKS = re.compile(r"[*_`#>]+")
_LIST = re.compile(r"^\s*(?:[-+]|\d+\.)\s+", re.MULTILINE)
_CONJUNCT = re.compile("\u094d[\u0915-\u0939]")
_AKSHARA = re.compile("[\u0904-\u0914]|(?<!\u094d)[\u0915-\u0939\u0958-\u095f]")


def plain(markdown: str) -> str:
    """The text as it is read: no directives, marks or list numbers; a value counts as the number 5."""
    text = _DIRECTIVE_LINE.sub("", markdown)
    return _MARKS.sub("", _LIST.sub("", _DIRECTIVE.sub("5", text)))


def sentences(markdown: str) -> list[list[str]]:
    """The sentences as lists of words; each line ends a sentence too, since list items need no full stop."""
    found = []
    for line in plain(markdown).splitlines():
        for sentence in re.split(r"(?<=[.!?:।])(?=\s|$)", line):
            words = re.findall(r"[\w\u0900-\u0963\u0970-\u097f'½-]+", sentence)
            if words:
                found.append(words)
    return found


def syllables(word: str) -> int:
    """Vowel groups of an English word, without the silent e at its end.

    Example:
        >>> [syllables(word) for word in ("hoop", "plumb", "water", "measure", "able", "tied")]
        [1, 1, 2, 2, 2, 1]
    """
    word = word.lower()
    groups = len(re.findall(r"[aeiouy]+", word))
    silent = re.search(r"[^aeiouyl]e$|[^aeiouydt]ed$|[^aeiouysxzlch]es$", word)
    return max(1, groups - (1 if silent else 0))


def grade(markdown: str) -> float:
    """School grade of an English text by the Flesch-Kincaid formula; trade words add no syllables."""
    found = sentences(markdown)
    words = [word for sentence in found for word in sentence]
    counted = [word for word in words if word.lower() not in TRADE_WORDS]
    return 0.39 * len(words) / len(found) + 11.8 * sum(map(syllables, counted)) / len(counted) - 15.59


def average_length(markdown: str) -> float:
    """Words a sentence, all together."""
    found = sentences(markdown)
    return sum(map(len, found)) / len(found)


def too_long(markdown: str, most: int) -> list[str]:
    """The sentences of more than `most` words."""
    return [" ".join(words) for words in sentences(markdown) if len(words) > most]


def aksharas(word: str) -> int:
    """Written syllables of a Hindi word.

    Example:
        >>> [aksharas(word) for word in ("रिंग", "दीवार", "लोहा", "मिस्त्री")]
        [2, 3, 2, 2]
    """
    return len(_AKSHARA.findall(word))


def conjuncts(word: str) -> int:
    """Joined letters of a Hindi word.

    Example:
        >>> conjuncts("मिस्त्री"), conjuncts("पानी")
        (2, 0)
    """
    return len(_CONJUNCT.findall(word))


def hindi_words(markdown: str) -> list[str]:
    """The Hindi words of a text."""
    return [word for sentence in sentences(markdown) for word in sentence if re.search("[\u0904-\u0939]", word)]
