"""`register keys`: the issuer's secret keys in one file under a passphrase, and the public keys for everyone."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable
from datetime import date
from pathlib import Path

import click

from generator.commands.issuer_files import KEYS_FILE
from generator.commands.register_common import DAY, FILE_OUT, TEXT, Desk, Function, data_folder, job
from generator.credentials import (
    KeyRing,
    NotAcceptedError,
    PublicKeys,
    copy_checked,
    in_digits,
    in_words,
    lock,
    mark_stolen,
    new_ring,
    public_file,
    read_public_keys,
    rotate,
    save,
    unlock,
)
from generator.problems import ExitCode, RefusedError

SECRET_FILE = "secret-keys.json"  # noqa: S105 (the name of a file)
PASSPHRASE = "TANKSCHOOL_PASSPHRASE"  # noqa: S105 (the name of a variable)


def keys_option(function: Function) -> Function:
    """`--keys`: the file of secret keys."""
    return click.option("--keys", type=FILE_OUT, envvar="TANKSCHOOL_KEYS",
                        help=f"File of the secret keys; else {SECRET_FILE} in the data folder.")(function)  # fmt: skip


def public_option(function: Function) -> Function:
    """`--public`: the file of public keys."""
    return click.option("--public", type=FILE_OUT, envvar="TANKSCHOOL_PUBLIC_KEYS",
                        help=f"File of the public keys; else {KEYS_FILE} in the data folder.")(function)  # fmt: skip


def secret_place(keys: Path | None) -> Path:
    """Where the secret keys are."""
    return keys if keys is not None else data_folder() / SECRET_FILE


def public_place(public: Path | None) -> Path:
    """Where the public keys are."""
    return public if public is not None else data_folder() / KEYS_FILE


def passphrase(desk: Desk, *, new: bool = False) -> str:
    """The passphrase: out of the environment, or asked for without showing it; from a pipe, the next line.

    Args:
        desk: for its words.
        new: ask twice where it is typed.

    Raises:
        RefusedError: two different ones were typed.
    """
    given = os.environ.get(PASSPHRASE)
    if given is not None:
        return given
    first = _asked(desk.words.say("register.passphrase"))
    if new and _asked(desk.words.say("register.passphrase_again")) != first:
        raise RefusedError("the two passphrases are not the same: nothing was written")
    return first


def _asked(text: str) -> str:
    if sys.stdin.isatty():
        typed = click.prompt(text, hide_input=True, err=True, default="", show_default=False)
        return str(typed)
    click.echo(text, err=True)
    line = sys.stdin.readline()
    if not line:
        raise click.exceptions.Abort
    return line.rstrip("\r\n")


def ring_of(desk: Desk, keys: Path | None) -> KeyRing:
    """The secret keys, opened.

    Raises:
        RefusedError: there are none; the passphrase is wrong.
    """
    place = secret_place(keys)
    if not place.is_file():
        raise RefusedError(
            f"there are no secret keys at '{place}': look at --keys, or make them once with 'register keys new ISSUER'"
        )
    data = place.read_bytes()
    return unlock(data, passphrase(desk))


def public_keys(public: Path | None) -> PublicKeys:
    """The public keys.

    Raises:
        RefusedError: there are none; the file is damaged.
    """
    place = public_place(public)
    if not place.is_file():
        raise RefusedError(
            f"there are no public keys at '{place}': look at --public, or write them: 'register keys public'"
        )
    try:
        return read_public_keys(place.read_text("utf-8", "replace"))
    except NotAcceptedError as error:
        raise RefusedError(f"'{place}' is no whole file of public keys ({error.code}): write it anew") from None


@click.group("keys")
def keys_jobs() -> None:
    """Make and keep the keys that sign certificates."""


@keys_jobs.command("new")
@click.argument("issuer", type=TEXT)
@keys_option
@public_option
@job
def new(desk: Desk, issuer: str, keys: Path | None, public: Path | None) -> int:
    """Make the secret keys of an ISSUER, once, under a passphrase of at least 12 signs. Back them up at once.

    Example: python3 tankschool.py register keys new "Tamarisk Ridge Builders' Circle"
    """
    place, shown = secret_place(keys), public_place(public)
    for path in (place, shown):
        if path.exists():
            raise RefusedError(f"'{path}' is there already: keys are never written over")
    ring = new_ring(issuer, desk.now)
    save(place, lock(ring, passphrase(desk, new=True)))
    save(shown, public_file(ring).encode())
    return _told(desk, ring.public(), desk.words.say("register.done.keys", file=place, public=shown))


@keys_jobs.command("show")
@public_option
@job
def show(desk: Desk, public: Path | None) -> int:
    """Show the fingerprint of the public keys: what stands on paper, and is compared by phone.

    Example: python3 tankschool.py register keys show
    """
    return _told(desk, public_keys(public), "")


@keys_jobs.command("public")
@keys_option
@public_option
@job
def written(desk: Desk, keys: Path | None, public: Path | None) -> int:
    """Write the file of public keys anew from the secret ones.

    Example: python3 tankschool.py register keys public
    """
    ring = ring_of(desk, keys)
    place = public_place(public)
    save(place, public_file(ring).encode(), replace_old=True)
    return _told(desk, ring.public(), desk.words.say("register.done.wrote", file=place))


@keys_jobs.command("rotate")
@keys_option
@public_option
@job
def rotated(desk: Desk, keys: Path | None, public: Path | None) -> int:
    """Put the current key away and make a new one; what the old one signed stays good.

    Example: python3 tankschool.py register keys rotate
    """
    ring = _changed(desk, keys, public, lambda ring: rotate(ring, desk.now))
    return _told(desk, ring.public(), desk.words.say("register.done.rotated"))


@keys_jobs.command("stolen")
@click.option("--since", type=DAY, required=True, help="First day on which someone else may have had it.")
@click.option("--key", "kid", metavar="ID", help="Which key, by its 8 letters and digits; else the current one.")
@keys_option
@public_option
@job
def stolen(desk: Desk, since: date, kid: str | None, keys: Path | None, public: Path | None) -> int:
    """Say that a key is in wrong hands, and make a new one; then sign and spread a new list at once.

    Example: python3 tankschool.py register keys stolen --since 2031-05-04
    """
    if since > desk.now.date():
        raise click.UsageError(f"{since} is still to come.")
    try:
        named = None if kid is None else bytes.fromhex(kid)
    except ValueError:
        raise click.UsageError(f"'{kid[:20] if kid else ''}' is no key's id: 8 letters and digits.") from None
    ring = _changed(desk, keys, public, lambda ring: mark_stolen(ring, named or ring.current.kid, since, desk.now))
    return _told(desk, ring.public(), desk.words.say("register.done.stolen"))


@keys_jobs.command("copy")
@click.argument("target", type=FILE_OUT)
@keys_option
@job
def copied(desk: Desk, target: Path, keys: Path | None) -> int:
    """Back up the secret keys to TARGET, best on another drive, and prove that the copy opens.

    Example: python3 tankschool.py register keys copy /media/stick/secret-keys.json
    """
    place = secret_place(keys)
    if not place.is_file():
        raise RefusedError(f"there are no secret keys at '{place}': look at --keys")
    copy_checked(place, target, passphrase(desk))
    return desk.done(desk.words.say("register.done.wrote", file=target), file=str(target))


def _changed(desk: Desk, keys: Path | None, public: Path | None, change: Callable[[KeyRing], KeyRing]) -> KeyRing:
    """The ring after a change, kept: the secret file first, so that a public key never stands alone."""
    place = secret_place(keys)
    if not place.is_file():
        raise RefusedError(f"there are no secret keys at '{place}': look at --keys")
    phrase = passphrase(desk)
    ring = change(unlock(place.read_bytes(), phrase))
    save(place, lock(ring, phrase), replace_old=True)
    save(public_place(public), public_file(ring).encode(), replace_old=True)
    return ring


def _told(desk: Desk, keys: PublicKeys, first: str) -> int:
    """What was done, and the fingerprint."""
    newest = keys.newest
    if desk.as_json:
        rows = [
            {"key": key.kid.hex(), "made": key.made.isoformat(),
             "retired": None if key.retired is None else key.retired.isoformat(),
             "stolen": None if key.stolen is None else key.stolen.isoformat()}
            for key in keys.keys
        ]  # fmt: skip
        return desk.done(
            "", issuer=keys.issuer, words=in_words(newest.public, desk.language), digits=in_digits(newest.public),
            keys=rows,
        )  # fmt: skip
    for line in (first, keys.issuer, in_words(newest.public, desk.language), in_digits(newest.public)):
        if line:
            click.echo(line)
    return ExitCode.GOOD
