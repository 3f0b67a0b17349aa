"""Trade numbers typed by hand: a number with a unit, where the calculation module should have been asked.

A number in a lesson that nobody works out goes stale in silence when the place or a formula changes. So a number with a
unit is written as ``{{ value("hoop_length") }}``; one that belongs to no quantity, such as a distance to keep from a
saw, as ``{{ plain("2 m") }}``. Counts of people, steps and tools have no unit and are left alone, and so are minutes.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from generator.curriculum.calls import Fault, without_calls

# A boundary behind a word: no letter, no digit and, in Devanagari, no vowel sign.
_END = r"(?![\w\u0900-\u0963\u0970-\u097f])"
_DIGITS = r"[0-9\u0966-\u096f]"
_NUMBER = (
    rf"(?:{_DIGITS}+(?:[.,]{_DIGITS}+)*(?:\s?[½¼¾])?|[½¼¾])"
    rf"(?:\s?(?:-|–|to|से|x|×|/)\s?{_DIGITS}+(?:[.,]{_DIGITS}+)*)?"
)
_GAP = r"[\s\u00a0-]*"

_SHORT = "mm|cm|dm|m|km|mm2|cm2|m2|m3|mm²|cm²|m²|m³|kg|g|t|L|l|ml|mL|kN|N|MPa|ft|sq|cu|yd|lb"
_SHORT_HINDI = "मि[.॰]?\\s?मी|मिमी|एम\\.?एम|सें?[.॰]?\\s?मी|सेमी|मी|कि[.॰]?\\s?मी|किमी|कि[.॰]?\\s?ग्रा|किग्रा|ली"
_LONG = (
    "millimet(?:re|er)s?|centimet(?:re|er)s?|kilomet(?:re|er)s?|met(?:re|er)s?|(?:square|cubic)\\s(?:met(?:re|er)|foot|feet)s?|"
    "inch(?:es)?|foot|feet|lit(?:re|er)s?|kilograms?|kilos?|grams?|tonnes?|"
    "मिलीमीटर|सेंटीमीटर|सेंटी|किलोमीटर|मीटर|घन\\s(?:मीटर|फुट)|वर्ग\\s(?:मीटर|फुट)|किलोग्राम|किलो|ग्राम|लीटर|इंच|फुट|फीट|सूत"
)
_COUNTED = (
    "bags?|barrows?|buckets?|days?|weeks?|degrees?|percent|per\\scent|"
    "बोरी|बोरियाँ|बोरियां|बोरियों|कट्टा|कट्टे|कट्टों|बाल्टी|बाल्टियाँ|दिन|दिनों|हफ़्ते|हफ्ते|हफ़्ता|हफ्ता|डिग्री|प्रतिशत|फीसदी"
)
_SIGNS = "%|°|″|′"
_NOT_A_BODY = "(?!foot|feet)"  # "stand on two feet" is no measure
_NUMBER_WORDS = (
    "half\\sa|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fifteen|twenty|thirty|fifty|hundred|"
    "आधा|आधे|आधी|डेढ़|ढाई|दो|तीन|चार|पाँच|पांच|छह|छः|सात|आठ|नौ|दस|बारह|पंद्रह|बीस|पच्चीस|तीस|पचास|सौ"
)

_TWO_SPELLINGS = (("ढ़", "\u095d"), ("फ़", "\u095e"))
"""Letters with a dot below that a keyboard may send as one sign or as two."""


def _either_spelling(pattern: str) -> str:
    for two, one in _TWO_SPELLINGS:
        pattern = pattern.replace(two, f"(?:{two}|{one})")
    return pattern


_TYPED = re.compile(
    _either_spelling(
        rf"(?<![\w.,\u0900-\u097f]){_NUMBER}{_GAP}(?:(?:{_SHORT}|(?:{_SHORT_HINDI})[.॰]?|{_LONG}|{_COUNTED}){_END}|(?:{_SIGNS}))"
        rf"|(?<![\w\u0900-\u097f])(?:{_NUMBER_WORDS})[\s\u00a0-]+{_NOT_A_BODY}(?:{_LONG}){_END}"
    ),
    re.IGNORECASE,
)


def typed_by_hand(text: str) -> Iterator[Fault]:
    """Every number with a unit in a text, outside its calls.

    Args:
        text: Markdown, or one text of a YAML file, in English or Hindi.

    Example:
        >>> [fault.snippet for fault in typed_by_hand('Cut 4.5 m, {{ value("lap") }} of it lap. दो मीटर। 3 people.')]
        ['4.5 m', 'दो मीटर']
    """
    for match in _TYPED.finditer(without_calls(text)):
        yield Fault(
            match.start(),
            match[0],
            "typed-number",
            f"'{match[0]}' is typed by hand",
            f'ask for it: {{{{ value("...") }}}}; or, if no quantity gives it, {{{{ plain("{match[0]}") }}}}',
        )
