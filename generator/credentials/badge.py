"""A certificate as an Open Badges 3.0 document with a Data Integrity proof, for whoever collects badges.

Tested: the shape against the W3C's JSON Schema of verifiable credentials and against our own list of what Open Badges
asks for beyond it; canonical form and proof against published vectors. No conformance is claimed: nobody has certified
this, and no other program has read these badges.
"""

from __future__ import annotations

import json
import re
import uuid
from collections.abc import Mapping
from datetime import UTC, datetime
from typing import Any

from generator.credentials import proof
from generator.credentials.certificate import Certificate
from generator.credentials.jcs import canonical, strict_json
from generator.credentials.keyring import SigningKey
from generator.credentials.keys import PublicKey, PublicKeys
from generator.credentials.letters import looks_like_another
from generator.credentials.refused import NotAcceptedError
from generator.credentials.verify import ListInUse, Note, Outcome, Verdict, effective_day
from generator.credentials.withdrawn import known_hash
from generator.problems import RefusedError

CONTEXTS = (
    "https://www.w3.org/ns/credentials/v2",
    "https://purl.imsglobal.org/spec/ob/v3p0/context-3.0.3.json",
)
_OB_CONTEXT = re.compile(r"https://purl\.imsglobal\.org/spec/ob/v3p0/context(-3\.\d\.\d)*\.json")
_MOMENT = re.compile(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{1,6})?(Z|[+-]\d\d:\d\d)", re.ASCII)
_URI = re.compile(r"[a-z][a-z0-9+.-]*:[!-~]+")
_BADGES = {"AchievementCredential", "OpenBadgeCredential"}


def make_badge(
    certificate: Certificate, achievement: Mapping[str, str], issuer: str, key: SigningKey, now: datetime
) -> dict[str, Any]:
    """A signed badge; the same input gives the same document.

    Args:
        certificate: what it says.
        achievement: `name`, `description` and `criteria`, in the words of the scheme.
        issuer: name of the organisation.
        key: the ring's current key.
        now: the time.

    Raises:
        RefusedError: the key was put away, a text is empty, or the time has no zone.
    """
    if key.retired is not None or key.stolen is not None:
        raise RefusedError("this key was put away: sign with the current one")
    if now.tzinfo is None or any(not achievement.get(name, "").strip() for name in ("name", "description", "criteria")):
        raise RefusedError("a badge needs a time with its zone, and name, description and criteria of the achievement")
    did = proof.did_key(key.public)
    scope = certificate.scope
    document = {
        "@context": list(CONTEXTS),
        "id": _urn(f"{did}/{certificate.number}"),
        "type": ["VerifiableCredential", "OpenBadgeCredential"],
        "issuer": {"id": did, "type": ["Profile"], "name": issuer},
        "validFrom": f"{certificate.valid_from.isoformat()}T00:00:00Z",
        "validUntil": f"{certificate.valid_to.isoformat()}T23:59:59Z",
        "name": achievement["name"],
        "credentialSubject": {
            "type": ["AchievementSubject"],
            "identifier": [
                {"type": "IdentityObject", "hashed": False, "identityHash": certificate.name, "identityType": "name"}
            ],
            "licenseNumber": certificate.number,
            "narrative": f"role: {scope.role}; largest tank: {scope.litres} L; highest wall: {scope.wall} cm; "
            f"roof: {scope.roof}",
            "achievement": {
                "id": _urn(f"{did}/{certificate.scheme}/{certificate.version}"),
                "type": ["Achievement"],
                "name": achievement["name"],
                "description": achievement["description"],
                "criteria": {"narrative": achievement["criteria"]},
            },
        },
    }
    return proof.add_proof(document, key.private, now.astimezone(UTC).strftime("%Y-%m-%dT%H:%M:%SZ"))


def badge_text(badge: Mapping[str, Any]) -> str:
    """A badge as the text of its file."""
    return json.dumps(badge, ensure_ascii=False, indent=2) + "\n"


def verify_badge(text: str, keys: PublicKeys, listed: ListInUse, now: datetime) -> Verdict:
    """The verdict on a badge's text. Never raises for what stands in the text.

    Args:
        text: of the file.
        keys: the keys that count, pinned by the reader; a key inside a badge never does.
        listed: the list in use.
        now: the time.
    """
    day = effective_day(listed, now)
    dated = listed.withdrawn.dated if listed.withdrawn is not None else None
    try:
        document = strict_json(text)
        number, name, start, end = badge_faults(document)
        key = _key(document, keys)
        proof.check_proof(document, key.library_key)
        _refuse_stolen(document, key, listed)
    except NotAcceptedError as error:
        return Verdict(
            Outcome.REFUSED, day, error.code, tuple(sorted(error.values.items())), unchecked=("content",),
            warnings=listed.warnings, listed=dated,
        )  # fmt: skip
    status = listed.withdrawn.numbers.get(number) if listed.withdrawn is not None else None
    moment = max(now, listed.newest) if listed.newest is not None else now
    reason = ""
    if status is not None:
        outcome = Outcome(status.value)
    elif end is not None and moment > end:
        outcome = Outcome.EXPIRED
    elif moment < start:
        outcome = Outcome.NOT_YET
    elif listed.replayed:
        outcome, reason = Outcome.REFUSED, "old_list"
    else:
        outcome = Outcome.GENUINE
    has_list = listed.withdrawn is not None
    return Verdict(
        outcome, day, reason, number=number, key=key,
        checked=("signature", "days", "list") if has_list else ("signature", "days"),
        unchecked=("holder", "paper", "since_list" if has_list else "no_list"),
        warnings=(*listed.warnings, *([Note("mixed_scripts")] if looks_like_another(name) else [])), listed=dated,
    )  # fmt: skip


def badge_faults(document: Any) -> tuple[str, str, datetime, datetime | None]:
    """Number, name and days of a badge whose shape is right, beyond what the W3C's schema sees.

    Raises:
        NotAcceptedError: `not_badge`, with the part that is missing or strange.
    """
    _need(type(document) is dict, "object")
    context = document.get("@context")
    _need(type(context) is list and len(context) >= 2 and context[0] == CONTEXTS[0], "@context")
    _need(type(context[1]) is str and _OB_CONTEXT.fullmatch(context[1]), "@context")
    _need(all(type(each) is str for each in context), "@context")
    _need(_is_uri(document.get("id")), "id")
    types = document.get("type")
    _need(type(types) is list and "VerifiableCredential" in types and _BADGES & _texts(types), "type")
    issuer = document.get("issuer")
    if type(issuer) is dict:
        _need(_is_a(issuer, "Profile"), "issuer")
        issuer = issuer.get("id")
    _need(_is_uri(issuer), "issuer")
    start, end = _moment(document.get("validFrom")), None
    _need(start is not None, "validFrom")
    assert start is not None  # noqa: S101 (for the type checker)
    if "validUntil" in document:
        end = _moment(document["validUntil"])
        _need(end is not None and end >= start, "validUntil")
    subject = document.get("credentialSubject")
    _need(type(subject) is dict and _is_a(subject, "AchievementSubject"), "credentialSubject")
    name = _named(subject)
    _achievement(subject.get("achievement"))
    number = subject.get("licenseNumber")
    _need(type(number) is str and number, "licenseNumber")
    return number, name, start, end


def _named(subject: Mapping[str, Any]) -> str:
    """Who it is about, in the words of the badge."""
    if "identifier" not in subject:
        _need(_is_uri(subject.get("id")), "identifier")
        return ""
    identifiers = subject["identifier"]
    _need(type(identifiers) is list and identifiers, "identifier")
    name = ""
    for each in identifiers:
        _need(type(each) is dict and _is_a(each, "IdentityObject"), "identifier")
        _need(type(each.get("hashed")) is bool and type(each.get("identityHash")) is str, "identifier")
        _need(type(each.get("identityType")) is str, "identifier")
        if each["identityType"] == "name" and not each["hashed"]:
            name = each["identityHash"]
    return name


def _achievement(found: Any) -> None:
    _need(type(found) is dict and _is_a(found, "Achievement") and _is_uri(found.get("id")), "achievement")
    for name in ("name", "description"):
        _need(type(found.get(name)) is str and found[name].strip(), f"achievement.{name}")
    criteria = found.get("criteria")
    _need(type(criteria) is dict, "achievement.criteria")
    narrative = criteria.get("narrative")
    _need(_is_uri(criteria.get("id")) or (type(narrative) is str and narrative.strip()), "achievement.criteria")


def _key(document: Mapping[str, Any], keys: PublicKeys) -> PublicKey:
    """The reader's own key that the badge names, and that is its issuer's."""
    found = document.get("proof")
    named = found.get("verificationMethod") if type(found) is dict else None
    issuer = document["issuer"]["id"] if type(document["issuer"]) is dict else document["issuer"]
    for key in keys.keys:
        if named == proof.method(key.public) and issuer == proof.did_key(key.public):
            return key
    raise NotAcceptedError("no_proof" if named is None else "unknown_key")


def _refuse_stolen(document: Mapping[str, Any], key: PublicKey, listed: ListInUse) -> None:
    entry = listed.withdrawn.stolen.get(key.kid) if listed.withdrawn is not None else None
    known = entry is not None and known_hash(canonical(document)) in entry.known
    if (key.stolen is not None or entry is not None) and not known:
        raise NotAcceptedError("stolen_key")


def _urn(name: str) -> str:
    return f"urn:uuid:{uuid.uuid5(uuid.NAMESPACE_URL, name)}"


def _need(good: object, part: str) -> None:
    if not good:
        raise NotAcceptedError("not_badge", part=part)


def _texts(values: list[Any]) -> set[str]:
    return {value for value in values if type(value) is str}


def _is_a(found: Mapping[str, Any], kind: str) -> bool:
    kinds = found.get("type")
    return kinds == kind or (type(kinds) is list and kind in kinds)


def _is_uri(text: Any) -> bool:
    return type(text) is str and _URI.fullmatch(text) is not None


def _moment(text: Any) -> datetime | None:
    if type(text) is not str or not _MOMENT.fullmatch(text):
        return None
    try:
        return datetime.fromisoformat(text)
    except ValueError:
        return None
