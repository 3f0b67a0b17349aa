"""The English words of everything that people read, and which of them nobody has looked at yet.

No word list from elsewhere is needed. A word is known if the course says it often: a slip is seldom made five times.
It is known too if it stands in the list of words that were looked at, or if it is a regular form of such a word.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import Any

import yaml

OFTEN = 5
"""A word that stands this often is known."""

_WORD = re.compile(r"[A-Za-z]+(?:['\u2019][A-Za-z]+)*")
_NO_PROSE = re.compile(
    r"\{\{.*?\}\}|\{#?[a-zA-Z0-9_-]*\}|`[^`]*`|\]\([^)]*\)|https?://\S+|\b[\w-]+\.(?:yaml|md|html|csv|jpg|mp3)\b"
)
_TWICE = re.compile(r"\b([A-Za-z]+)[ \n]+\1\b", re.IGNORECASE)
_DOUBLING = re.compile(r"[^aeiou]*[aeiou][^aeiouwxy]")
"""A word of one short sound, whose last letter comes twice before an ending."""


def texts(root: Path) -> Iterator[tuple[str, str]]:
    """Every English text of a content folder with the name of its file; calls and slots stand as `…`.

    Args:
        root: folder that holds `course/`, `quizzes/` and `handouts/`.
    """
    for folder in ("course", "quizzes", "handouts"):
        for path in sorted((root / folder).rglob("*")):
            name = path.relative_to(root).as_posix()
            if path.name.endswith(".en.md"):
                yield name, _prose(path.read_text("utf-8"))
            elif path.suffix == ".yaml":
                data = yaml.load(path.read_text("utf-8"), yaml.CSafeLoader)
                if path.parent.name == "words":
                    found = _strings(data) if path.stem == "en" else iter(())
                else:
                    found = _english(data)
                yield from ((name, _prose(text)) for text in found)


def _prose(text: str) -> str:
    return _NO_PROSE.sub(" … ", text)


def _english(node: Any) -> Iterator[str]:
    """The texts under a key `en`."""
    if isinstance(node, dict):
        for key, value in node.items():
            yield from _strings(value) if key == "en" else _english(value)
    elif isinstance(node, list):
        for value in node:
            yield from _english(value)


def _strings(node: Any) -> Iterator[str]:
    if isinstance(node, str):
        yield node
    elif isinstance(node, dict | list):
        for value in node.values() if isinstance(node, dict) else node:
            yield from _strings(value)


def words(text: str) -> list[str]:
    """The words of a text in small letters, without an owner's 's.

    Example:
        >>> words("The mason's bucket isn't full.")
        ['the', 'mason', 'bucket', "isn't", 'full']
    """
    found = (word.lower().replace("\u2019", "'") for word in _WORD.findall(text))
    return [word.removesuffix("'s") for word in found]


def forms(word: str) -> Iterator[str]:
    """The regular forms of a word: plural, third person, past, -ing, -er, -est, -ly.

    Example:
        >>> list(forms("ram"))
        ['rams', 'rammed', 'ramming', 'rammer', 'rammest', 'ramly']
    """
    if re.search(r"[^aeiou]y$", word):
        stem = word[:-1] + "i"
        yield from (stem + "es", stem + "ed", word + "ing", stem + "er", stem + "est", stem + "ly")
        return
    yield word + ("es" if re.search(r"(s|x|z|ch|sh)$", word) else "s")
    stem = word + word[-1] if _DOUBLING.fullmatch(word) else word.removesuffix("e")
    yield from (stem + "ed", stem + "ing", stem + "er", stem + "est", word + "ly")


def known(counted: Counter[str], reviewed: Iterable[str]) -> set[str]:
    """All words that count as right: the frequent, the reviewed, and their regular forms."""
    base = {word for word, count in counted.items() if count >= OFTEN} | set(reviewed)
    return base | {form for word in base for form in forms(word)}


def unknown(root: Path, reviewed: Iterable[str]) -> dict[str, str]:
    """Words that nobody has looked at, each with the first file that says it."""
    counted: Counter[str] = Counter()
    first: dict[str, str] = {}
    for name, text in texts(root):
        for word in words(text):
            counted[word] += 1
            first.setdefault(word, name)
    right = known(counted, reviewed)
    return {word: name for word, name in sorted(first.items()) if word not in right}


def doubled(root: Path) -> list[str]:
    """Where a word stands twice in a row, as nobody means it."""
    return [f"{name}: {match[0]}" for name, text in texts(root) for match in _TWICE.finditer(text)]
