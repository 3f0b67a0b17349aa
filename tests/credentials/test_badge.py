"""Badges: the shape that Open Badges asks for, beyond what the W3C's schema sees; and JSON that is read strictly."""

from __future__ import annotations

import copy
import json
from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from generator.credentials import (
    NotAcceptedError,
    Note,
    Outcome,
    Status,
    Verdict,
    WithdrawnList,
    badge_text,
    list_text,
    make_badge,
    mark_stolen,
    proof,
    sign_list,
    stolen_entry,
    use_list,
    verify_badge,
)
from generator.credentials.badge import badge_faults
from generator.credentials.jcs import canonical, strict_json
from generator.problems import RefusedError
from tests.credentials.issuer import ISSUER, KEYS, NOW, RING, STRANGER, certificate, fixed, listed, number

ACHIEVEMENT = {"name": "Frame hand", "description": "Ties the frame.", "criteria": "Paper and practical."}


def badge(**changes: object) -> dict[str, Any]:
    return make_badge(certificate(**changes), ACHIEVEMENT, ISSUER, RING.current, NOW)  # type: ignore[arg-type]


def verdict(
    document: Any, signed_list: str | None = None, keys: Any = KEYS, now: Any = NOW, seen: Any = None
) -> Verdict:
    return verify_badge(badge_text(document), keys, use_list(signed_list, keys, now, seen), now)


def test_it_is_accepted_and_the_same_input_gives_the_same_bytes() -> None:
    assert badge_text(badge()) == badge_text(badge())
    found = verdict(badge(), listed())
    assert (found.outcome, found.number) == (Outcome.GENUINE, number(7))
    assert badge()["issuer"]["id"] in badge()["proof"]["verificationMethod"]
    assert "12000 L" in badge()["credentialSubject"]["narrative"]


def test_days_lists_and_odd_names_count_as_for_a_certificate() -> None:
    assert verdict(badge(), listed(numbers={number(7): Status.WITHDRAWN})).outcome is Outcome.WITHDRAWN
    assert verdict(badge(), now=NOW + timedelta(days=3000)).outcome is Outcome.EXPIRED
    assert verdict(badge(), now=NOW - timedelta(days=300)).outcome is Outcome.NOT_YET
    assert verdict(badge(), listed(NOW - timedelta(days=9)), seen=NOW).reason == "old_list"
    assert Note("mixed_scripts") in verdict(badge(name="Аsha Devi")).warnings


def test_only_the_readers_own_keys_count() -> None:
    other = make_badge(certificate(), ACHIEVEMENT, ISSUER, STRANGER.current, NOW)
    assert verdict(other).reason == "unknown_key"
    posing = {key: value for key, value in other.items() if key != "proof"}
    posing["issuer"] = badge()["issuer"]
    forged = proof.add_proof(posing, STRANGER.current.private, "2027-06-15T00:00:00Z")
    assert verdict(forged).reason == "unknown_key"
    forged["proof"]["verificationMethod"] = badge()["proof"]["verificationMethod"]
    assert verdict(forged).reason == "signature"


def test_a_stolen_key_counts_only_for_badges_that_the_list_knows() -> None:
    robbed = mark_stolen(RING, RING.current.kid, NOW.date(), NOW, fixed("next"))
    keys = robbed.public()
    assert verdict(badge(), None, keys).reason == "stolen_key"
    entry = stolen_entry(RING.current.kid, NOW.date(), [canonical(badge())])
    signed_list = list_text(sign_list(WithdrawnList(NOW, {}, {entry.kid: entry}), robbed.current, keys))
    assert verdict(badge(), signed_list, keys).outcome is Outcome.GENUINE
    assert verdict(badge(name="Kamal"), signed_list, keys).reason == "stolen_key"


CHANGES: list[tuple[str, Callable[[dict[str, Any]], object]]] = [
    ("@context", lambda d: d.pop("@context")), ("@context", lambda d: d["@context"].reverse()),
    ("@context", lambda d: d["@context"].pop()), ("@context", lambda d: d["@context"].append({"x": "y"})),
    ("@context", lambda d: d.update({"@context": "https://www.w3.org/ns/credentials/v2"})),
    ("@context", lambda d: d["@context"].__setitem__(1, "https://purl.example/ob/v3p0/context-3.0.3.json")),
    ("id", lambda d: d.pop("id")), ("id", lambda d: d.update(id="no uri")), ("type", lambda d: d["type"].pop()),
    ("type", lambda d: d["type"].pop(0)), ("type", lambda d: d.update(type="VerifiableCredential")),
    ("issuer", lambda d: d.pop("issuer")), ("issuer", lambda d: d["issuer"].pop("id")),
    ("issuer", lambda d: d["issuer"].pop("type")),
    ("issuer", lambda d: d.update(issuer=7)), ("validFrom", lambda d: d.pop("validFrom")),
    ("validFrom", lambda d: d.update(validFrom="2027-01-10")),
    ("validFrom", lambda d: d.update(validFrom="2027-01-10T00:00:00")),
    ("validFrom", lambda d: d.update(validFrom="2027-02-30T00:00:00Z")),
    ("validUntil", lambda d: d.update(validUntil="2020-01-01T00:00:00Z")),
    ("validUntil", lambda d: d.update(validUntil=None)),
    ("credentialSubject", lambda d: d.pop("credentialSubject")),
    ("credentialSubject", lambda d: d.update(credentialSubject=[d["credentialSubject"]])),
    ("credentialSubject", lambda d: d["credentialSubject"].pop("type")),
    ("identifier", lambda d: d["credentialSubject"].pop("identifier")),
    ("identifier", lambda d: d["credentialSubject"].update(identifier=[])),
    ("identifier", lambda d: d["credentialSubject"]["identifier"][0].pop("identityHash")),
    ("identifier", lambda d: d["credentialSubject"]["identifier"][0].update(hashed="no")),
    ("licenseNumber", lambda d: d["credentialSubject"].pop("licenseNumber")),
    ("achievement", lambda d: d["credentialSubject"].pop("achievement")),
    ("achievement", lambda d: d["credentialSubject"]["achievement"].pop("id")),
    ("achievement.name", lambda d: d["credentialSubject"]["achievement"].pop("name")),
    ("achievement.description", lambda d: d["credentialSubject"]["achievement"].update(description=" ")),
    ("achievement.criteria", lambda d: d["credentialSubject"]["achievement"].pop("criteria")),
    ("achievement.criteria", lambda d: d["credentialSubject"]["achievement"].update(criteria={})),
]  # fmt: skip


@pytest.mark.parametrize(("part", "change"), CHANGES, ids=[f"{at}-{part}" for at, (part, _) in enumerate(CHANGES)])
def test_a_badge_that_lacks_a_part_is_refused_even_with_a_good_signature(
    part: str, change: Callable[[Any], object]
) -> None:
    document = copy.deepcopy({key: value for key, value in badge().items() if key != "proof"})
    change(document)
    signed = proof.add_proof(document, RING.current.private, "2027-06-15T00:00:00Z")
    found = verdict(signed)
    assert (found.outcome, found.reason, dict(found.values)) == (Outcome.REFUSED, "not_badge", {"part": part})


def test_other_shapes_that_the_standard_allows_are_read() -> None:
    document = badge()
    document["credentialSubject"]["achievement"]["criteria"] = {"id": "https://tamarisk.example/criteria"}
    document["issuer"] = document["issuer"]["id"]
    document["type"][1] = "AchievementCredential"
    document["validFrom"] = "2027-01-10T05:30:00.5+05:30"
    del document["validUntil"]
    assert badge_faults(document)[3] is None
    subject = document["credentialSubject"]
    subject["id"] = "urn:uuid:00000000-0000-4000-8000-000000000000"
    del subject["identifier"]
    del document["proof"]
    assert verdict(proof.add_proof(document, RING.current.private, "2027-06-15T00:00:00Z")).outcome is Outcome.GENUINE


@pytest.mark.parametrize("name", ["type", "cryptosuite", "created", "verificationMethod", "proofPurpose", "proofValue"])
def test_a_proof_without_a_part_or_with_more_is_refused(name: str) -> None:
    document = badge()
    del document["proof"][name]
    assert verdict(document).outcome is Outcome.REFUSED
    document = badge()
    document["proof"] = [document["proof"]]
    assert verdict(document).outcome is Outcome.REFUSED
    document = badge()
    document["proof"]["domain"] = "x"
    assert verdict(document).reason == "no_proof"
    document = badge()
    document["proof"]["@context"] = document["proof"]["@context"][:1]
    assert verdict(document).reason == "no_proof"


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ('{"a": 1, "a": 1}', "doubled"), ('{"a": {"b": 1, "b": 2}}', "doubled"), ("{", "not_json"),
        ("NaN", "not_json"),
        ("[Infinity]", "not_json"), ("9007199254740993", "number"), ("1e999", "number"), ("1" * 5000, "number"),
        ('"\\ud800"', "not_json"), ("[" * 60 + "]" * 60, "not_json"), ("[" * 100_000, "not_json"),
        (" " * 1_000_001, "too_long"),
    ],
)  # fmt: skip
def test_json_that_two_readers_could_read_differently_is_refused(text: str, code: str) -> None:
    with pytest.raises(NotAcceptedError) as caught:
        strict_json(text)
    assert caught.value.code == code


def test_what_json_can_not_hold_is_not_written() -> None:
    for value in (2**53 + 1, float("nan"), float("inf"), {1, 2}, b"x"):
        with pytest.raises(ValueError, match=r"JSON|beyond"):
            canonical(value)
    assert canonical({"\ufb33": 1, "\U0001f600": 2}) == '{"\U0001f600":2,"\ufb33":1}'.encode()


def test_a_badge_needs_its_texts_and_a_living_key() -> None:
    for changed in ({**ACHIEVEMENT, "criteria": " "}, {"name": "x"}):
        with pytest.raises(RefusedError, match="criteria"):
            make_badge(certificate(), changed, ISSUER, RING.current, NOW)
    with pytest.raises(RefusedError, match="put away"):
        make_badge(certificate(), ACHIEVEMENT, ISSUER, replace(RING.current, retired=NOW.date()), NOW)
    assert json.loads(badge_text(badge())) == badge()
