"""A verdict in words: what came out first, then what the certificate says, what was checked and what was not."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from generator.credentials import fingerprint
from generator.credentials.certificate import Certificate, as_data
from generator.credentials.verify import Verdict
from generator.formula import show_full
from generator.words import Words


def told(verdict: Verdict, issuer: str, words: Words) -> list[str]:
    """The verdict, one sentence or fact a line.

    Args:
        verdict: what came out.
        issuer: name of whoever the reader's keys belong to.
        words: of the language to speak.
    """
    found = [words.say_one_of("certificate.outcome", verdict.outcome)]
    if verdict.reason:
        found.append(words.say_one_of("certificate.refused", verdict.reason, **dict(verdict.values)))
    found += [words.say_one_of("certificate.warning", note.code, **dict(note.values)) for note in verdict.warnings]
    if verdict.certificate is not None:
        found += [f"  {label} {text}" for label, text in facts(verdict.certificate, words)]
    elif verdict.number:
        found.append(f"  {words.say('certificate.label.number')} {verdict.number}")
    if verdict.key is not None:
        found.append(f"  {words.say('certificate.label.issuer')} {issuer}")
        found.append(
            f"  {words.say('certificate.label.key')} {fingerprint.in_words(verdict.key.public, words.language)}"
        )
        found.append(f"  {' ' * len(words.say('certificate.label.key'))} {fingerprint.in_digits(verdict.key.public)}")
    found.append(f"  {words.say('certificate.label.day')} {verdict.day.isoformat()}")
    if verdict.listed is not None:
        found.append(f"  {words.say('certificate.label.list')} {verdict.listed.date().isoformat()}")
    return [*found, *_checks(verdict, words)]


def facts(certificate: Certificate, words: Words) -> tuple[tuple[str, str], ...]:
    """Labels and texts of what a certificate says."""
    scope = certificate.scope
    volume = words.with_unit(show_full(scope.litres / 1000), "m**3")
    height = words.with_unit(show_full(scope.wall / 100), "m")
    days = words.say(
        "certificate.days", first=certificate.valid_from.isoformat(), last=certificate.valid_to.isoformat()
    )
    return (
        (words.say("certificate.label.name"), certificate.name),
        (words.say("certificate.label.number"), certificate.number),
        (words.say("certificate.label.scheme"), f"{certificate.scheme} {certificate.version}"),
        (words.say("certificate.label.role"), words.say_one_of("certificate.role", scope.role)),
        (words.say("certificate.label.volume"), volume),
        (words.say("certificate.label.wall"), height),
        (words.say("certificate.label.roof"), words.say_one_of("certificate.roof", scope.roof)),
        (words.say("certificate.label.valid"), days),
    )


def verdict_data(verdict: Verdict, issuer: str) -> dict[str, Any]:
    """The verdict for a program to read."""
    return {
        "format": 1,
        "outcome": str(verdict.outcome),
        "reason": verdict.reason,
        "values": dict(verdict.values),
        "certificate": as_data(verdict.certificate) if verdict.certificate is not None else None,
        "number": verdict.number,
        "issuer": issuer if verdict.key is not None else None,
        "key": verdict.key.kid.hex() if verdict.key is not None else None,
        "checked": list(verdict.checked),
        "unchecked": list(verdict.unchecked),
        "warnings": [{"code": note.code, **dict(note.values)} for note in verdict.warnings],
        "day": verdict.day.isoformat(),
        "list_dated": verdict.listed.isoformat() if verdict.listed is not None else None,
    }


def _checks(verdict: Verdict, words: Words) -> Iterator[str]:
    if verdict.checked:
        yield words.say("certificate.was_checked")
        for code in verdict.checked:
            yield f"  - {words.say_one_of('certificate.check', code)}"
    if verdict.unchecked:
        yield words.say("certificate.not_checked")
        for code in verdict.unchecked:
            yield f"  - {words.say_one_of('certificate.open', code)}"
