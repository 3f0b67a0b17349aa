"""`verify`: checks a certificate, offline: from its text, from a picture of its code, or its number against a list."""

from __future__ import annotations

import os
import sys
from datetime import UTC, datetime
from pathlib import Path

import click

from generator.commands.course import file_bytes
from generator.commands.issuer_files import KEYS_FILE, LIST_FILE, keys_at, list_at, problem, text_at
from generator.commands.tool import content_option, json_option, language_option, say_json
from generator.credentials import (
    MAX_AGE,
    ListInUse,
    Note,
    Outcome,
    PublicKeys,
    UnreadableImageError,
    Verdict,
    codes_in,
    effective_day,
    newest_seen,
    remembered,
    save,
    told,
    verdict_data,
    verify_badge,
    verify_certificate,
    verify_number,
)
from generator.credentials.seen import FILE as SEEN_FILE
from generator.curriculum.word_files import words_of
from generator.problems import ExitCode, MachineError
from generator.registry.numbers import is_number
from generator.registry.place import default_place
from generator.words import Words

_LONGEST_PATH = 200
"""A text of a certificate is longer."""


@click.command()
@click.argument("text", required=False)
@click.option("--image", type=click.Path(dir_okay=False, path_type=Path), help="A photo or scan of the square code.")
@click.option(
    "--file", "file", type=click.Path(dir_okay=False, path_type=Path), help="A file that holds the text, or a badge."
)
@click.option("--number", help="Only a number, held against the list.")
@click.option("--list", "list_file", type=click.Path(dir_okay=False, path_type=Path),
              help=f"The signed list of withdrawn numbers; else {LIST_FILE} in the data folder.")  # fmt: skip
@click.option("--keys", type=click.Path(dir_okay=False, path_type=Path),
              help=f"The issuer's file of public keys; else {KEYS_FILE} in the data folder.")  # fmt: skip
@click.option("--max-age", type=click.IntRange(1, 3660), default=MAX_AGE, show_default=True,
              help="Days after which a list is called old.")  # fmt: skip
@click.option("--data", type=click.Path(file_okay=False, path_type=Path), help="The data folder of this user.")
@language_option
@content_option
@json_option
def verify(
    text: str | None,
    image: Path | None,
    file: Path | None,
    number: str | None,
    list_file: Path | None,
    keys: Path | None,
    max_age: int,
    data: Path | None,
    language: str,
    content: Path,
    as_json: bool,
) -> int:
    """Check a certificate, without the internet: its TEXT, a picture of its code, or its number against a list.

    It says what was checked and what was not. Exit code 0: the signature is good and the certificate is in force, or a
    number is not on the list; 3: do not rely on it; 1: the input can't be read.

    Example: python3 tankschool.py verify --image card.jpg --keys public-keys.json --list withdrawn.txt
    """
    if sum(given is not None for given in (text, image, file, number)) != 1:
        raise click.UsageError("Say one of: TEXT, --image FILE, --file FILE, or --number NUMBER.")
    if text is not None and is_number(text.strip().upper()):
        raise click.UsageError(f"{text.strip()} is only a number, held against the list with: --number {text.strip()}.")
    if text is not None and len(text) < _LONGEST_PATH and Path(text).is_file():
        raise click.UsageError(f"'{text}' is a file: --image {text} for a photo or scan, --file {text} for text.")
    words = _words(content, language)
    now = datetime.now(UTC)
    folder = data or default_place(os.environ, Path.home(), sys.platform).parent
    pinned = keys_at(keys or folder / KEYS_FILE, words)
    listed = _listed(_list_path(list_file, folder), pinned, folder, now, max_age, words)
    if number is not None:
        verdict = _on_number(number, listed, now)
    else:
        given = _text(text, image, file, words)
        check = verify_badge if given.lstrip().startswith("{") else verify_certificate
        verdict = check(given, pinned, listed, now)
    if as_json:
        say_json(verdict_data(verdict, pinned.issuer))
    else:
        for line in told(verdict, pinned.issuer, words):
            click.echo(line)
        if verdict.key is not None:
            click.echo(words.say("certificate.compare_key"))
    return ExitCode.GOOD if verdict.outcome in (Outcome.GENUINE, Outcome.NOT_LISTED) else ExitCode.REFUSED


def _words(content: Path, language: str) -> Words:
    """The words alone: a certificate can be checked beside a course that is half written."""
    files = {path.stem: path for path in sorted((content / "course" / "words").glob("*.yaml"))}
    if language not in files:
        raise click.UsageError(f"There is no language '{language}'. There are: {', '.join(files) or 'none'}.")
    return words_of(str(files[language]), language, file_bytes(files[language]))


def _list_path(given: Path | None, folder: Path) -> Path | None:
    usual = folder / LIST_FILE
    return given if given is not None else usual if usual.is_file() else None


def _listed(path: Path | None, keys: PublicKeys, folder: Path, now: datetime, max_age: int, words: Words) -> ListInUse:
    """The list, held against the newest that was seen here; its date is kept."""
    memory = folder / SEEN_FILE
    known = text_at(memory) if memory.is_file() else None
    seen = newest_seen(known, keys.identity)
    listed = list_at(path, keys, now, words, seen, max_age)
    if listed.newest is not None and listed.newest != seen:
        try:
            save(memory, remembered(known, keys.identity, listed.newest).encode(), replace_old=True)
        except MachineError:
            warnings = (*listed.warnings, Note("not_remembered"))
            return ListInUse(listed.withdrawn, warnings, listed.replayed, listed.newest)
    return listed


def _text(text: str | None, image: Path | None, file: Path | None, words: Words) -> str:
    if text is not None:
        return text
    if file is not None:
        return text_at(file)
    assert image is not None  # noqa: S101 (one of them was given)
    try:
        found = codes_in(file_bytes(image))
    except UnreadableImageError as error:
        raise problem(image, "no-picture", str(error), "give a PNG or JPEG") from None
    ours = [each for each in found if each.lstrip().upper().startswith("TS")] or found
    if not ours:
        raise problem(image, "no-code", words.say("certificate.command.no_code"), "--image, or TEXT")
    if len(ours) > 1:
        what = words.say("certificate.command.two_codes", count=len(ours))
        raise problem(image, "two-codes", what, "--image, or TEXT")
    return ours[0]


def _on_number(number: str, listed: ListInUse, now: datetime) -> Verdict:
    plain = number.strip().upper()
    if listed.withdrawn is None:
        raise click.UsageError("A number alone can be held against a list only: give --list FILE.")
    if not is_number(plain):
        return Verdict(
            Outcome.REFUSED, effective_day(listed, now), "number_slip", number=plain[:60], unchecked=("signature",),
            warnings=listed.warnings, listed=listed.withdrawn.dated,
        )  # fmt: skip
    return verify_number(plain, listed, now)
