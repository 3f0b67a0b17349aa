"""Certificates: what can be signed, one row of bytes for one certificate, and what the strict reader refuses."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import Any

import cbor2
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.credentials import (
    NotAcceptedError,
    Role,
    Roof,
    Scope,
    certificate_text,
    cose,
    rotate,
    scope_of,
    sign_certificate,
)
from generator.credentials.certificate import PURPOSE, Certificate, payload_of, read_payload
from generator.credentials.packed import packed, unpacked
from generator.credentials.text_form import CERTIFICATE, LIST, as_text, from_text
from generator.problems import RefusedError
from tests.credentials.issuer import NOW, RING, certificate, text

_IDS = st.text("0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-", min_size=1, max_size=20)
_DAYS = st.dates(date(1970, 1, 1), date(2199, 12, 31))


@given(
    _IDS, st.sampled_from(["Asha", "कमला देवी", "O'Neil-Śarmā", "W" * 90]), _IDS.map(str.lower),
    st.integers(1, 10**6),
    st.sampled_from(Role), st.integers(1, 10**6), st.integers(1, 1000), st.sampled_from(Roof),
    st.tuples(_DAYS, _DAYS),
)  # fmt: skip
def test_what_is_signed_is_read_again(
    number: str,
    name: str,
    scheme: str,
    version: int,
    role: Role,
    litres: int,
    wall: int,
    roof: Roof,
    days: tuple[date, date],
) -> None:
    first, last = sorted(days)
    made = Certificate(number, name, scheme, version, Scope(role, litres, wall, roof), first, last)
    assert read_payload(payload_of(made)) == made


def test_the_same_certificate_gives_the_same_text_and_it_is_short() -> None:
    assert text() == text()
    assert len(text()) < 250
    assert text().startswith("TSC1:")
    assert set(text()) <= set("TSC1:ABCDEFGHIJKLMNOPQRSTUVWXYZ234567")


@given(_IDS)
def test_ids_are_packed_in_one_way(made: str) -> None:
    assert unpacked(packed(made)) == made
    with pytest.raises(NotAcceptedError):
        unpacked(b"\0" + packed(made))


@given(st.binary(max_size=45))
def test_no_bytes_are_an_id_in_two_ways(data: bytes) -> None:
    try:
        found = unpacked(data)
    except NotAcceptedError:
        return
    assert packed(found) == data


@given(st.binary(min_size=1, max_size=300))
def test_text_and_bytes_go_both_ways_and_blanks_and_capitals_do_not_matter(data: bytes) -> None:
    made = as_text(data, CERTIFICATE)
    assert from_text(made, CERTIFICATE) == data
    typed = " \n".join(made[at : at + 7].lower() for at in range(0, len(made), 7))
    assert from_text(f"\ufeff{typed}\r\n", CERTIFICATE) == data


@pytest.mark.parametrize(
    ("typed", "code"),
    [
        ("", "not_ours"), ("hello", "not_ours"), ("TSC1ABC", "not_ours"), ("TSC2:MFRGG", "newer"),
        ("TSC12:MFRGG", "newer"),
        ("TSL1:MFRGG", "other_kind"), ("TSC1:MFRG0", "sign"), ("TSC1:MFR=", "sign"), ("TSC1:MFRGGé", "sign"),
        ("TSC1:", "cut_off"),
        ("TSC1:MFRGGA", "cut_off"), ("TSC1:MFRGGZB", "cut_off"), ("TSC1:" + "A" * 701, "too_long"),
        ("A" * 10**6, "too_long"),
    ],
)  # fmt: skip
def test_text_that_is_none_is_refused_with_its_reason(typed: str, code: str) -> None:
    with pytest.raises(NotAcceptedError) as caught:
        from_text(typed, CERTIFICATE)
    assert caught.value.code == code


def test_a_huge_text_for_a_list_is_not_even_decoded() -> None:
    with pytest.raises(NotAcceptedError, match="too_long"):
        from_text("TSL1:" + "A" * 20_000_000, LIST)


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        ({"name": "क" * 31}, "93 bytes, and a certificate's code has room for 90: ask the person which"),
        ({"name": ""}, "can't be signed as it is"),
        ({"name": " Asha"}, "can't be signed as it is"),
        ({"name": "Asha  Devi"}, "can't be signed as it is"),
        ({"name": "Asha\nDevi"}, "can't be signed as it is"),
        ({"name": "Asha\u202eiveD"}, "can't be signed as it is"),
        ({"name": "Asha\u200bDevi"}, "can't be signed as it is"),
        ({"name": "Asha\u00a0Devi"}, "can't be signed as it is"),
        ({"name": "Ne\u0301"}, "can't be signed as it is"),
        ({"name": "A\ud800"}, "can't be signed as it is"),
        ({"number": "wklp"}, "is no id"),
        ({"number": ""}, "is no id"),
        ({"number": "9" * 41}, "is no id"),
        ({"scheme": "Frame"}, "has capitals"),
        ({"scheme": "ढाँचा"}, "is no id"),
        ({"version": 0}, "makes no sense"),
        ({"valid_from": date(2031, 1, 1)}, "makes no sense"),
        ({"valid_to": date(2300, 1, 1)}, "makes no sense"),
        ({"scope": Scope(Role.LEAD, 0, 190, Roof.FLAT)}, "largest tank in litres"),
        ({"scope": Scope(Role.LEAD, 12_000, 1001, Roof.FLAT)}, "highest wall in centimetres"),
        (
            {"name": "W" * 90, "scheme": "a-scheme-with-a-name-without-end-really"},
            "bytes too long for a code that prints well",
        ),
    ],
)
def test_what_can_not_be_signed_is_refused_with_what_to_do(changes: dict[str, Any], message: str) -> None:
    with pytest.raises(RefusedError, match=message):
        sign_certificate(certificate(**changes), RING.current)


GOOD_SCOPE = {"role": "lead", "largest_volume": 12.5, "largest_wall_height": "1.9", "roof": "dome"}


def test_a_scope_comes_from_the_register_in_its_own_units() -> None:
    assert scope_of(GOOD_SCOPE) == Scope(Role.LEAD, 12_500, 190, Roof.DOME)


@pytest.mark.parametrize(
    "change",
    [
        {"role": "king"}, {"roof": None}, {"largest_volume": "much"}, {"largest_volume": float("inf")},
        {"largest_volume": 1.00005}, {"largest_wall_height": 1.955},
    ],
)  # fmt: skip
def test_a_scope_that_can_not_be_signed_exactly_is_refused(change: dict[str, Any]) -> None:
    with pytest.raises(RefusedError, match=r"helper, mason, lead"):
        scope_of({**GOOD_SCOPE, **change})
    with pytest.raises(RefusedError, match=r"to the litre"):
        scope_of({key: value for key, value in GOOD_SCOPE.items() if key not in change})


def test_a_joiner_inside_a_hindi_name_is_correct_spelling() -> None:
    assert read_payload(payload_of(certificate(name="क्\u200dष"))).name == "क्\u200dष"


def test_a_key_that_was_put_away_signs_nothing() -> None:
    old = rotate(RING, NOW).keys[0]
    with pytest.raises(RefusedError, match="put away"):
        sign_certificate(certificate(), old)
    with pytest.raises(RefusedError, match="put away"):
        sign_certificate(certificate(), replace(old, retired=None, stolen=NOW.date()))


def _payloads() -> list[bytes]:
    good: dict[int, Any] = cbor2.loads(payload_of(certificate()))
    wrong: list[Any] = [
        {**good, 11: 1}, {key: good[key] for key in range(1, 10)}, list(good.values()), b"", 7,
        *({**good, 5: value} for value in (0, len(Role) + 1, True, "helper", 1.0, None, 2**70)),
        *({**good, 8: value} for value in (0, len(Roof) + 1, False)),
        *({**good, 6: value} for value in (0, -1, 10**6 + 1)), *({**good, 7: value} for value in (0, 1001)),
        *({**good, 4: value} for value in (0, -3)), {**good, 9: good[10] + 1}, {**good, 10: 84_007},
        {**good, 9: -1},
        *({**good, 2: value} for value in ("", " A", "W" * 91, "A\u202e", b"Asha", "A\u0301")),
        *({**good, 1: value} for value in (b"", b"\0\1", "WKLP", b"\xff" * 41, (38).to_bytes(1, "big"))),
        *({**good, 3: value} for value in (b"", "frame")),
        {**good, 2: cbor2.CBORTag(0, "2027-01-01T00:00:00Z")}, {**good, 6: cbor2.CBORTag(2, b"\1")},
    ]  # fmt: skip
    return [cbor2.dumps(value, canonical=True) for value in wrong]


@pytest.mark.parametrize("payload", _payloads(), ids=lambda payload: payload[:12].hex() + f"-{len(payload)}")
def test_a_payload_that_makes_no_sense_is_refused_even_with_a_good_signature(payload: bytes) -> None:
    with pytest.raises(NotAcceptedError):
        read_payload(payload)


@pytest.mark.parametrize(
    "data",
    [
        b"\xa2\x01\x01\x01\x02", b"\xa2\x02\x01\x01\x01", b"\xa1\x18\x01\x01", b"\xbf\x01\x01\xff",
        b"\xa1\x01\x01\x00",
        b"\x1b\x00\x00\x00\x00\x00\x00\x00\x01", b"\x5f\x41a\xff", b"\xfb\x3f\xf0\x00\x00\x00\x00\x00\x00",
        b"\x81", b"",
        b"\x9a\xff\xff\xff\xff", b"\x5b\x7f\xff\xff\xff\xff\xff\xff\xff", b"\x81" * 5000, b"\xff", b"\x62\xff\xff",
    ],
)  # fmt: skip
def test_only_deterministic_cbor_is_read(data: bytes) -> None:
    with pytest.raises(NotAcceptedError):
        cose.strictly(data)


def test_the_signature_tells_a_certificate_from_everything_else() -> None:
    message = cose.unpack(from_text(text(), CERTIFICATE))
    public = RING.public().newest.library_key
    assert cose.is_signed(message, public, PURPOSE)
    assert not cose.is_signed(message, public, b"")
    assert not cose.is_signed(message, public, PURPOSE + b"0")
    assert certificate_text(cose.pack(message)) == text()
