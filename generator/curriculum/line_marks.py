"""Lines of a handout that only some tanks have: a mark on the line names the quantity that decides.

A small tank has no hoops, or no angles. Its sheets leave out what is said of them, and number their headings anew.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from generator.curriculum.calls import LINE_MARKS, Call

_HEADING = re.compile(r"^(#{1,6}) +(?:(\d+)\. )?", re.MULTILINE)
_CARD = re.compile(r"^\{\{ *card *\}\}", re.MULTILINE)
_MARK = re.compile(rf"\{{\{{ *(?:{'|'.join(LINE_MARKS)})\([^{{}}\n]*\}}\}}")


@dataclass(frozen=True, slots=True)
class Edit:
    """A piece of a text that is left out, or has other words in its place.

    Args:
        start: index of its first letter.
        end: index behind its last letter.
        words: what stands there instead.
    """

    start: int
    end: int
    words: str = ""


class Kept:
    """What is left of a text for one tank.

    Args:
        text: of the handout's file.
        asked: its calls.
        has: whether the tank has any of a quantity.
    """

    def __init__(self, text: str, asked: Sequence[Call], has: Callable[[str], bool]) -> None:
        self._text = text
        marks = [call for call in asked if call.name in LINE_MARKS]
        self._left_out = [Edit(*_reach(text, mark)) for mark in marks if has(mark.argument) != LINE_MARKS[mark.name]]
        edits = [*self._left_out, *(_alone(text, mark) for mark in marks), *self._numbers()]
        self._edits = sorted(edits, key=lambda edit: (edit.start, -edit.end))

    def holds(self, place: int) -> bool:
        """Whether what stands at an index is kept."""
        return not any(edit.start <= place < edit.end for edit in self._left_out)

    def words(self, start: int, end: int) -> str:
        """What is kept between two places of the text."""
        parts: list[str] = []
        for edit in self._edits:
            if edit.end <= start or edit.start >= end:
                continue
            parts += [self._text[start : max(start, edit.start)], edit.words]
            start = max(start, edit.end)
        return "".join([*parts, self._text[start:end]])

    def _numbers(self) -> Iterator[Edit]:
        """New numbers for numbered headings, where one of them is left out."""
        numbered = [match for match in _HEADING.finditer(self._text) if match[2]]
        if all(self.holds(match.start()) for match in numbered):
            return
        seen: Counter[str] = Counter()
        for match in numbered:
            if self.holds(match.start()):
                seen[match[1]] += 1
                yield Edit(match.start(2), match.end(2), str(seen[match[1]]))


def without_marks(line: str) -> str:
    """A line without its marks, to see what else stands on it."""
    return _MARK.sub("", line)


def _line(text: str, place: int) -> tuple[int, int]:
    end = text.find("\n", place)
    return text.rfind("\n", 0, place) + 1, end + 1 if end >= 0 else len(text)


def _reach(text: str, mark: Call) -> tuple[int, int]:
    """What a mark decides: its card, the section below its heading, or its line alone."""
    start, end = _line(text, mark.start)
    ends = [found.start() for found in _CARD.finditer(text, end)]
    if _CARD.match(text, start):
        return start, min([*ends, len(text)])
    heading = _HEADING.match(text, start)
    if heading is None:
        return start, end
    ends += [found.start() for found in _HEADING.finditer(text, end) if len(found[1]) <= len(heading[1])]
    return start, min([*ends, len(text)])


def _alone(text: str, mark: Call) -> Edit:
    """A mark, with the blanks that would be left over."""
    start, end = _line(text, mark.start)
    after = text[mark.end : end]
    if after.strip():
        return Edit(mark.start, mark.end + len(after) - len(after.lstrip(" ")))
    before = text[start : mark.start]
    return Edit(start + len(before.rstrip(" ")), mark.end)
