"""Verdicts: every outcome, what was checked and what was not, in both languages."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

import pytest

from generator.credentials import (
    ListInUse,
    Note,
    Outcome,
    PublicKeys,
    Status,
    Verdict,
    WithdrawnList,
    list_text,
    mark_stolen,
    newest_seen,
    remembered,
    rotate,
    sign_list,
    stolen_entry,
    told,
    use_list,
    verdict_data,
    verify_certificate,
    verify_number,
)
from generator.credentials.letters import looks_like_another, scripts
from generator.credentials.text_form import CERTIFICATE, from_text
from tests.credentials.issuer import ISSUER, KEYS, NOW, RING, STRANGER, WORDS, certificate, fixed, listed, number, text

NO_LIST = ListInUse()


def verdict(
    made: str,
    signed_list: str | None = None,
    keys: PublicKeys = KEYS,
    now: datetime = NOW,
    seen: datetime | None = None,
) -> Verdict:
    return verify_certificate(made, keys, use_list(signed_list, keys, now, seen), now)


def test_a_genuine_certificate_with_and_without_a_list() -> None:
    found = verdict(text(), listed())
    assert (found.outcome, found.certificate) == (Outcome.GENUINE, certificate())
    assert found.checked == ("signature", "days", "list")
    assert found.unchecked == ("holder", "paper", "since_list")
    found = verdict(text())
    assert found.outcome is Outcome.GENUINE
    assert found.unchecked == ("holder", "paper", "no_list")


@pytest.mark.parametrize("status", Status)
def test_a_number_on_the_list_says_so(status: Status) -> None:
    signed_list = listed(numbers={number(7): status})
    assert verdict(text(), signed_list).outcome == status.value
    assert verify_number(number(7), use_list(signed_list, KEYS, NOW), NOW).outcome == status.value


def test_first_and_last_day_belong_to_it() -> None:
    first, last = datetime(2027, 1, 10, tzinfo=UTC), datetime(2030, 1, 9, 23, 59, tzinfo=UTC)
    day = timedelta(days=1)
    outcomes = [verdict(text(), now=moment).outcome for moment in (first - day, first, last, last + day)]
    assert outcomes == [Outcome.NOT_YET, Outcome.GENUINE, Outcome.GENUINE, Outcome.EXPIRED]


def test_a_number_alone_proves_nothing_and_says_so() -> None:
    found = verify_number(number(7), use_list(listed(), KEYS, NOW), NOW)
    assert found.outcome is Outcome.NOT_LISTED
    assert "signature" in found.unchecked
    with pytest.raises(ValueError, match="list only"):
        verify_number(number(7), NO_LIST, NOW)


def test_an_old_list_is_warned_of_and_a_replayed_one_lets_nothing_pass() -> None:
    old = listed(NOW - timedelta(days=91))
    found = verdict(text(), old)
    assert found.outcome is Outcome.GENUINE
    assert [note.code for note in found.warnings] == ["list_old"]
    assert verdict(text(), listed(NOW - timedelta(days=90))).warnings == ()
    found = verdict(text(), old, seen=NOW - timedelta(days=2))
    assert (found.outcome, found.reason) == (Outcome.REFUSED, "old_list")
    assert [note.code for note in found.warnings] == ["list_replayed"]
    number_alone = verify_number(number(7), use_list(old, KEYS, NOW, NOW), NOW)
    assert (number_alone.outcome, number_alone.reason) == (Outcome.REFUSED, "old_list")
    assert verdict(text(3), old, seen=NOW).outcome is Outcome.WITHDRAWN


def test_a_clock_set_back_revives_nothing() -> None:
    signed_list = listed(datetime(2030, 6, 1, tzinfo=UTC))
    found = verdict(text(), signed_list)
    assert found.outcome is Outcome.EXPIRED
    assert [note.code for note in found.warnings] == ["clock"]
    assert found.day.isoformat() == "2030-06-01"
    remembered_only = verdict(text(), seen=datetime(2030, 6, 1, tzinfo=UTC))
    assert remembered_only.outcome is Outcome.EXPIRED


def test_an_old_key_still_verifies_and_a_late_start_is_warned_of() -> None:
    turned = rotate(RING, NOW - timedelta(days=20), fixed("next"))
    assert verdict(text(), keys=turned.public()).outcome is Outcome.GENUINE
    assert verdict(text(by=turned), keys=turned.public()).outcome is Outcome.GENUINE
    late = verdict(text(valid_from=NOW.date()), keys=turned.public())
    assert late.warnings == (Note("retired_key", (("day", "2027-05-26"),)),)
    assert verdict(text(by=turned)).reason == "unknown_key"


def test_what_a_stolen_key_signed_counts_only_if_the_list_knows_the_very_bytes() -> None:
    robbed = mark_stolen(RING, RING.current.kid, NOW.date(), NOW, fixed("next"))
    keys = robbed.public()
    entry = stolen_entry(RING.current.kid, NOW.date(), [from_text(text(), CERTIFICATE)])
    signed_list = list_text(sign_list(WithdrawnList(NOW, {}, {entry.kid: entry}), robbed.current, keys))
    assert verdict(text(), signed_list, keys).outcome is Outcome.GENUINE
    backdated = text(8, "Somebody Else")
    for found in (
        verdict(backdated, signed_list, keys),
        verdict(text(), None, keys),
        verdict(text(), listed(by=robbed), keys),
    ):
        assert (found.outcome, found.reason) == (Outcome.REFUSED, "stolen_key")
    # whoever has the new list with an older file of keys is warned as well
    unmarked = PublicKeys(keys.issuer, (KEYS.keys[0], keys.keys[1]))
    assert verdict(backdated, signed_list, unmarked).reason == "stolen_key"


@pytest.mark.parametrize(
    ("name", "odd"),
    [
        ("Asha Devi", False), ("O'Neil-Śarmā (b.)", False), ("कमला देवी", False), ("राम २", False),
        ("\u0410sha Devi", True),
        ("\u0410\u0455\u04bb\u0430", True), ("Asha देवी", True), ("Αsha", True), ("ﬁsh", True), ("Ａsha", True),
        ("水田", True),
    ],
)  # fmt: skip
def test_names_that_look_like_others_are_warned_of(name: str, odd: bool) -> None:
    assert looks_like_another(name) is odd
    assert (Note("mixed_scripts") in verdict(text(name=name)).warnings) is odd
    assert scripts("12 -") == frozenset()


@pytest.mark.parametrize("language", ["en", "hi"])
def test_every_verdict_is_told_in_words_with_what_was_checked_and_what_was_not(language: str) -> None:
    words = WORDS[language]
    signed_list = listed(numbers={number(4): Status.SUSPENDED})
    made = [text(), text(4), text(by=STRANGER), "TSC2:AA", "TSC1:0", text()[:-1], text(name="Аsha")]
    for each in made:
        for listing, seen in ((None, None), (signed_list, None), (listed(NOW - timedelta(days=300)), NOW)):
            found = verdict(each, listing, seen=seen)
            lines = told(found, ISSUER, words)
            assert lines[0] == words.say_one_of("certificate.outcome", found.outcome)
            assert words.say("certificate.not_checked") in lines
            assert not any("{" in line for line in lines)
            if found.outcome is Outcome.REFUSED and found.certificate is None:
                assert not any("Asha" in line or number(7) in line for line in lines)
            data = verdict_data(found, ISSUER)
            assert data["format"] == 1
            assert data["outcome"] == str(found.outcome)
    lines = told(verdict(text(), signed_list), ISSUER, words)
    assert any("Asha Devi" in line for line in lines)
    assert any(words.with_unit("1.9", "m") in line for line in lines)


def test_every_reason_and_warning_has_its_words() -> None:
    codes = {
        "too_long", "sign", "not_ours", "other_kind", "newer", "cut_off", "not_cbor", "not_cose", "algorithm",
        "unknown_key",
        "signature", "fields", "stolen_key", "retired_key", "old_list", "not_json", "doubled", "number", "not_keys",
        "keys_changed", "not_badge", "no_proof", "number_slip", "bad_list",
    }  # fmt: skip
    for words in WORDS.values():
        assert {key.rpartition(".")[2] for key, _ in words.family("certificate.refused")} == codes


def test_the_newest_list_is_remembered_for_each_issuer_and_damage_is_no_trap() -> None:
    first = remembered(None, "a", NOW)
    both = remembered(first, "b", NOW + timedelta(days=1))
    assert newest_seen(both, "a") == NOW
    assert newest_seen(both, "b") == NOW + timedelta(days=1)
    assert newest_seen(remembered(both, "a", NOW - timedelta(days=5)), "a") == NOW
    for damaged in (None, "", "{", "[]", '{"seen": 7}', '{"seen": {"a": 7}}', '{"seen": {"a": "x"}}', "[" * 10**5):
        assert newest_seen(damaged, "a") is None
        assert newest_seen(remembered(damaged, "a", NOW), "a") == NOW
