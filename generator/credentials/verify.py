"""Whether a certificate is what it says: what was checked, what was not, and what looks odd.

Nothing here reads a clock or a file: the time, the list and the newest date that was ever seen are handed in.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from enum import StrEnum

from generator.credentials import cose
from generator.credentials.certificate import PURPOSE, Certificate, read_payload
from generator.credentials.keys import PublicKey, PublicKeys
from generator.credentials.letters import looks_like_another
from generator.credentials.refused import NotAcceptedError
from generator.credentials.text_form import CERTIFICATE, from_text
from generator.credentials.withdrawn import Status, WithdrawnList, known_hash, read_list

MAX_AGE = 90
"""Days after which a list is called old."""
_CLOCK_SLACK = timedelta(days=1)


class Outcome(StrEnum):
    """What came out. Only `genuine` says yes."""

    GENUINE = "genuine"
    NOT_YET = "not_yet"
    EXPIRED = "expired"
    SUSPENDED = "suspended"
    WITHDRAWN = "withdrawn"
    RENEWED = "renewed"
    REFUSED = "refused"
    NOT_LISTED = "not_listed"
    """A number alone that does not stand on the list: nothing is proven."""


@dataclass(frozen=True, slots=True)
class Note:
    """A warning: its code, and what fills the slots of its words `certificate.warning.<code>`."""

    code: str
    values: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class ListInUse:
    """A list as the verifier has it.

    Args:
        withdrawn: the list; None where none was handed in.
        warnings: about it.
        replayed: whether a newer one was seen here before.
        newest: the newest date of a list that was ever seen here, this one counted.
    """

    withdrawn: WithdrawnList | None = None
    warnings: tuple[Note, ...] = ()
    replayed: bool = False
    newest: datetime | None = None


@dataclass(frozen=True, slots=True)
class Verdict:
    """All that can be said about a certificate or a number.

    Args:
        outcome: what came out.
        reason: where it was refused, the code of the reason.
        values: for the slots of the reason's words.
        certificate: what it says; only where the signature is good.
        number: the number, where only that was asked.
        key: the key that signed.
        checked: codes of what was checked.
        unchecked: codes of what was not.
        warnings: what looks odd.
        day: the day that counted as today.
        listed: date of the list.
    """

    outcome: Outcome
    day: date
    reason: str = ""
    values: tuple[tuple[str, str], ...] = ()
    certificate: Certificate | None = None
    number: str = ""
    key: PublicKey | None = None
    checked: tuple[str, ...] = ()
    unchecked: tuple[str, ...] = ()
    warnings: tuple[Note, ...] = ()
    listed: datetime | None = None


def use_list(
    text: str | None, keys: PublicKeys, now: datetime, newest_seen: datetime | None = None, max_age: int = MAX_AGE
) -> ListInUse:
    """A list made ready for use.

    Args:
        text: of the list; None where there is none.
        keys: the issuer's keys.
        now: the time.
        newest_seen: date of the newest list of this issuer that was ever seen here.
        max_age: days after which a list is called old.

    Raises:
        NotAcceptedError: the list is damaged, changed, or signed by nobody who may.
    """
    warnings: list[Note] = []
    withdrawn = None if text is None else read_list(text, keys)
    newest = newest_seen
    replayed = False
    if withdrawn is not None:
        dated = withdrawn.dated
        if newest_seen is not None and dated < newest_seen:
            replayed = True
            warnings.append(Note("list_replayed", _slots(seen=_day(newest_seen), dated=_day(dated))))
        elif now - dated > timedelta(days=max_age):
            warnings.append(Note("list_old", _slots(days=str((now - dated).days), dated=_day(dated))))
        newest = dated if newest_seen is None else max(dated, newest_seen)
    if newest is not None and newest - now > _CLOCK_SLACK:
        warnings.append(Note("clock", _slots(day=_day(now), dated=_day(newest))))
    return ListInUse(withdrawn, tuple(warnings), replayed, newest)


def verify_certificate(text: str, keys: PublicKeys, listed: ListInUse, now: datetime) -> Verdict:
    """The verdict on a certificate's text. Never raises for what stands in the text.

    Args:
        text: pasted, or read from a QR code.
        keys: the keys that count, pinned by the reader; a key inside a certificate never does.
        listed: the list in use.
        now: the time.
    """
    day = effective_day(listed, now)
    try:
        signed = from_text(text, CERTIFICATE)
        message = cose.unpack(signed)
        key = keys.by_kid.get(cose.kid_of(message))
        if key is None:
            raise NotAcceptedError("unknown_key")
        if not cose.is_signed(message, key.library_key, PURPOSE):
            raise NotAcceptedError("signature")
        certificate = read_payload(message.payload)
    except NotAcceptedError as error:
        return Verdict(
            Outcome.REFUSED, day, error.code, tuple(sorted(error.values.items())), unchecked=("content",),
            warnings=listed.warnings, listed=_dated(listed),
        )  # fmt: skip
    outcome, reason = _outcome(certificate, key, signed, listed, day)
    warnings = list(listed.warnings)
    if looks_like_another(certificate.name):
        warnings.append(Note("mixed_scripts"))
    if key.retired is not None and certificate.valid_from > key.retired:
        warnings.append(Note("retired_key", _slots(day=key.retired.isoformat())))
    has_list = listed.withdrawn is not None
    return Verdict(
        outcome,
        day,
        reason,
        certificate=certificate,
        key=key,
        checked=("signature", "days", "list") if has_list else ("signature", "days"),
        unchecked=("holder", "paper", "since_list" if has_list else "no_list"),
        warnings=tuple(warnings),
        listed=_dated(listed),
    )


def verify_number(number: str, listed: ListInUse, now: datetime) -> Verdict:
    """The verdict on a number alone: it may stand on the list; that it does not proves nothing.

    Args:
        number: in capitals.
        listed: the list in use.
        now: the time.

    Raises:
        ValueError: there is no list.
    """
    if listed.withdrawn is None:
        raise ValueError("a number can be held against a list only")
    status = listed.withdrawn.numbers.get(number)
    outcome = Outcome.NOT_LISTED if status is None else Outcome(status.value)
    verdict = Verdict(
        outcome, effective_day(listed, now), number=number, checked=("list",),
        unchecked=("signature", "days", "holder", "since_list"), warnings=listed.warnings, listed=_dated(listed),
    )  # fmt: skip
    return replace(verdict, outcome=Outcome.REFUSED, reason="old_list") if _blinded(outcome, listed) else verdict


def effective_day(listed: ListInUse, now: datetime) -> date:
    """Today, or the date of the newest list seen if that is later: a clock set back revives nothing."""
    return now.date() if listed.newest is None else max(now.date(), listed.newest.date())


def _outcome(
    certificate: Certificate, key: PublicKey, signed: bytes, listed: ListInUse, day: date
) -> tuple[Outcome, str]:
    withdrawn = listed.withdrawn
    entry = withdrawn.stolen.get(key.kid) if withdrawn is not None else None
    if (key.stolen is not None or entry is not None) and (entry is None or known_hash(signed) not in entry.known):
        return Outcome.REFUSED, "stolen_key"
    status: Status | None = withdrawn.numbers.get(certificate.number) if withdrawn is not None else None
    if status is not None:
        return Outcome(status.value), ""
    if day > certificate.valid_to:
        return Outcome.EXPIRED, ""
    if day < certificate.valid_from:
        return Outcome.NOT_YET, ""
    if _blinded(Outcome.GENUINE, listed):
        return Outcome.REFUSED, "old_list"
    return Outcome.GENUINE, ""


def _blinded(outcome: Outcome, listed: ListInUse) -> bool:
    """Whether a good outcome rests on an older list than was seen before: it may hide a withdrawal."""
    return listed.replayed and outcome in (Outcome.GENUINE, Outcome.NOT_LISTED)


def _dated(listed: ListInUse) -> datetime | None:
    return listed.withdrawn.dated if listed.withdrawn is not None else None


def _day(moment: datetime) -> str:
    return moment.date().isoformat()


def _slots(**values: str) -> tuple[tuple[str, str], ...]:
    return tuple(sorted(values.items()))
