"""Reading a text file that a person wrote: UTF-8, of a sensible size, with nothing invisible in it."""

from __future__ import annotations

import re
from pathlib import Path

from generator.problems.problem import Problem, ProblemsError

LIMIT = 1_000_000
"""Most bytes that a file written by people may have; a long lesson has 30,000."""

_BYTE_ORDER_MARK = b"\xef\xbb\xbf"
_UTF_16_MARKS = (b"\xff\xfe", b"\xfe\xff")
_OTHER_KINDS = {
    b"PK\x03\x04": "a spreadsheet or a zip file",
    b"%PDF": "a PDF",
    b"\xd0\xcf\x11\xe0": "an old spreadsheet",
}
_MOST_REPORTED = 20

# What a keyboard never means to put into a text: control characters, the line ends that only some programs honour,
# marks that turn the direction of reading (what is seen is then not what is there), and the sign for a lost character.
_UNWANTED = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff\ufffd-\uffff]")

_SAVE_AS_UTF_8 = "save it again as UTF-8; a spreadsheet program calls this 'CSV UTF-8'"


def read_bytes(path: Path, name: str, limit: int = LIMIT) -> bytes:
    """The bytes of a file, refused before reading when there are too many.

    Args:
        path: where the file is.
        name: how problems name it: as the reader would type it.
        limit: most bytes.

    Raises:
        ProblemsError: no such file, it can't be opened, or it is too large.
    """
    try:
        size = path.stat().st_size
        if size > limit:
            raise ProblemsError([too_large(name, size, limit)])
        return path.read_bytes()
    except FileNotFoundError:
        raise ProblemsError(
            [Problem(name, 0, 0, "file-missing", "there is no such file", "check the name and the folder")]
        ) from None
    except OSError as error:
        reason = error.strerror or "unknown reason"
        raise ProblemsError(
            [
                Problem(
                    name,
                    0,
                    0,
                    "file-unreadable",
                    f"the file can't be read: {reason}",
                    "check that it is a file that you may open",
                )
            ]
        ) from None


def decode(name: str, data: bytes, limit: int = LIMIT) -> str:
    r"""The text of a file's bytes; a byte-order mark is dropped and every line ends in a plain newline.

    Args:
        name: how problems name the file.
        data: its bytes.
        limit: most bytes.

    Raises:
        ProblemsError: too large, not UTF-8 (with the line and column of the first bad byte), or with characters that
            can't be seen (the first 20 of them).

    Example:
        >>> decode("names.csv", b"\xef\xbb\xbfname\r\nAsha\r\n")
        'name\nAsha\n'
    """
    if len(data) > limit:
        raise ProblemsError([too_large(name, len(data), limit)])
    for start, kind in _OTHER_KINDS.items():
        if data.startswith(start):
            fix = "save it as plain text; from a spreadsheet program as 'CSV UTF-8'"
            raise ProblemsError([Problem(name, 0, 0, "not-a-text", f"this is {kind}, not a text file", fix)])
    if data.startswith(_UTF_16_MARKS):
        raise ProblemsError(
            [Problem(name, 1, 1, "not-utf-8", "the file is UTF-16 text, which is not read here", _SAVE_AS_UTF_8)]
        )
    data = data.removeprefix(_BYTE_ORDER_MARK)
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError as error:
        line, column = place_of(_plain_lines(data[: error.start].decode("utf-8")))
        what = f"the file is not UTF-8 text: byte {data[error.start]:02X} is no letter in it"
        raise ProblemsError([Problem(name, line, column, "not-utf-8", what, _SAVE_AS_UTF_8)]) from None
    text = _plain_lines(text)
    problems = list(_unseen(name, text))
    if problems:
        raise ProblemsError(problems)
    return text


def seen(data: bytes, instead: str) -> bytes:
    r"""The bytes of a text with a sign in the place of each character that can't be seen; the rest can then be judged.

    Args:
        data: UTF-8.
        instead: one character.

    Example:
        >>> seen(b"name\nA\x07sha\n", "_")
        b'name\nA_sha\n'
    """
    return _UNWANTED.sub(instead, _plain_lines(data.removeprefix(_BYTE_ORDER_MARK).decode("utf-8"))).encode("utf-8")


def read_text(path: Path, name: str, limit: int = LIMIT) -> str:
    """The text of a file: `read_bytes`, then `decode`."""
    return decode(name, read_bytes(path, name, limit), limit)


def place_of(before: str) -> tuple[int, int]:
    r"""Line and column, both counted from 1, of the character that follows a text.

    Example:
        >>> place_of("one\ntw")
        (2, 3)
    """
    return before.count("\n") + 1, len(before) - before.rfind("\n")


def too_large(name: str, size: int, limit: int) -> Problem:
    """The problem of a file with more bytes than anyone writes by hand."""
    what = f"the file has {size / 1e6:.1f} MB, and at most {limit / 1e6:.1f} MB are read"
    return Problem(name, 0, 0, "file-too-large", what, "check that it is the right file, or split it")


def _plain_lines(text: str) -> str:
    return text.replace("\r\n", "\n").replace("\r", "\n")


def _unseen(name: str, text: str) -> list[Problem]:
    problems: list[Problem] = []
    for match in _UNWANTED.finditer(text):
        if len(problems) == _MOST_REPORTED:
            break
        line, column = place_of(text[: match.start()])
        code = f"U+{ord(match[0]):04X}"
        if match[0] == "\ufffd":
            what = f"a letter was lost here when the file was saved ({code})"
            problems.append(Problem(name, line, column, "lost-letter", what, "type the letter again and save as UTF-8"))
        else:
            what = f"a character that can't be seen ({code})"
            problems.append(Problem(name, line, column, "unseen-character", what, "delete it and type the text again"))
    return problems
