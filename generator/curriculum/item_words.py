"""What the rules for writing items need to know of a language, and texts as they are heard: words and sentences."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True)
class ItemLanguage:
    """The turns of one language that spoil an item.

    Args:
        whole_list: an option that stands for all the others or for none of them.
        which: words that ask for one out of several.
        negative: words that turn such a question round.
        clue: an ending of the question that fits only some of the options.
        among: words that point at the options, so that the question says nothing without them.
    """

    whole_list: re.Pattern[str]
    which: re.Pattern[str]
    negative: re.Pattern[str]
    clue: re.Pattern[str] | None = None
    among: re.Pattern[str] | None = None


ITEM_LANGUAGES: Mapping[str, ItemLanguage] = {
    "en": ItemLanguage(
        re.compile(
            r"\b(all|none|neither|both|any) of the (above|other (options|answers))\b"
            r"|^\W*(all|none|neither|both) of (these|those|them)\W*$",
            re.IGNORECASE,
        ),
        re.compile(r"\b(which|what|who|whom|where)\b", re.IGNORECASE),
        re.compile(r"\b(not|never|no|nobody|nowhere|except|but not)\b|n['\u2019]t\b", re.IGNORECASE),
        re.compile(r"\ban?\W*$", re.IGNORECASE),
        re.compile(r"\b(of these|of the following|of them is)\b", re.IGNORECASE),
    ),
    "hi": ItemLanguage(
        re.compile(r"उपरोक्त|^\W*(ऊपर के|ऊपर वाले|इनमें से|ये) (सभी|सब|तीनों|दोनों|कोई नहीं|कोई भी नहीं)\W*$"),
        re.compile(r"(?<![\u0900-\u097f])(कौन|किस|किसे|किसको|किसमें|किसका|किसकी|किन|कहाँ)(?![\u0900-\u097f])"),
        re.compile(r"(?<![\u0900-\u097f])(नहीं|मत|न|ना|छोड़कर|अलावा)(?![\u0900-\u097f])"),
        among=re.compile(r"(?<![\u0900-\u097f])(इनमें|नीचे लिखे)(?![\u0900-\u097f])"),
    ),
}
"""By language; a course in another language is spared the rules that need it."""

_PLAIN = re.compile(r"\{\{\s*plain\(\"([^\"]*)\"\)\s*\}\}")
_CALL = re.compile(r"\{\{.*?\}\}|\{[a-z0-9_]+\}")
_SCRIPT_MARKS = re.compile(r"\[2x\]|#|/+")
_QUOTED = re.compile(r"[\"“][^\"”]*[\"”]")
_SENTENCE_END = re.compile(r"(?<=[.!?:।])[\"”’')]*(?=\s|$)|[\n/]")
_WORD = re.compile(r"[\w\u0900-\u0963\u0970-\u097f'’½.-]*[\w\u0900-\u0963\u0970-\u097f½]")


def spoken(text: str) -> str:
    """A text without the marks of a script, with the number 5 for every number that is drawn or worked out."""
    return " ".join(_SCRIPT_MARKS.sub("\n", _CALL.sub("5", _PLAIN.sub(r"\1", text))).split(" "))


def sentences(text: str) -> list[str]:
    """The sentences of a text; each line of a script is one."""
    return [part.strip() for part in _SENTENCE_END.split(spoken(text)) if part and _WORD.search(part)]


def words_of(text: str) -> list[str]:
    """The words of a text in lower case, without marks.

    Example:
        >>> words_of("Dig, then ram {stone_thickness}.")
        ['dig', 'then', 'ram', '5']
    """
    return [word.casefold() for word in _WORD.findall(spoken(text))]


def questions_in(text: str) -> list[str]:
    """The sentences that ask, without what they quote."""
    return [_QUOTED.sub("", sentence) for sentence in sentences(text) if "?" in sentence]
