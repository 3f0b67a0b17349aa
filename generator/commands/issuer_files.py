"""What an issuer gives out to whoever checks: the file of public keys, and the list of numbers that were taken back."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

from generator.commands.course import file_bytes
from generator.credentials import MAX_AGE, ListInUse, NotAcceptedError, PublicKeys, read_public_keys, use_list
from generator.problems import Problem, ProblemsError
from generator.words import Words

KEYS_FILE = "public-keys.json"
LIST_FILE = "withdrawn.txt"


def problem(path: Path | str, code: str, what: str, fix: str) -> ProblemsError:
    """What is wrong with a whole file."""
    return ProblemsError([Problem(str(path), 0, 0, code, what, fix)])


def text_at(path: Path) -> str:
    """A file's text, however it was saved.

    Raises:
        ProblemsError: it can't be read.
    """
    return file_bytes(path).decode("utf-8", "replace").removeprefix("\ufeff")


def keys_at(path: Path, words: Words) -> PublicKeys:
    """The keys that count.

    Raises:
        ProblemsError: there are none, or the file was changed.
    """
    if not path.is_file():
        raise problem(
            path, "no-keys", "there is no file of public keys", f"give one with --keys, or put it there as {KEYS_FILE}"
        )
    try:
        return read_public_keys(text_at(path))
    except NotAcceptedError as error:
        what = words.say_one_of("certificate.refused", error.code, **error.values)
        raise problem(path, "bad-keys", what, "take the file anew from the issuer") from None


def list_at(
    path: Path | None,
    keys: PublicKeys,
    now: datetime,
    words: Words,
    seen: datetime | None = None,
    max_age: int = MAX_AGE,
) -> ListInUse:
    """The list of numbers that were taken back, held against its signature.

    Args:
        path: of the list; None for none.
        keys: the issuer's.
        now: the time, with its zone.
        words: of the reader.
        seen: date of the newest list that was seen before.
        max_age: days after which a list is called old.

    Raises:
        ProblemsError: it is not this issuer's, or was changed.
    """
    try:
        return use_list(None if path is None else text_at(path), keys, now, seen, max_age)
    except NotAcceptedError as error:
        what = words.say_one_of("certificate.refused", error.code, **error.values)
        raise problem(path or "", "bad-list", what, "take the list anew from the issuer") from None
