"""Signatures, canonical JSON and proofs against published vectors (`standards/README.md` says where they come from)."""

from __future__ import annotations

import copy
import json
import struct
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey, Ed25519PublicKey

from generator.credentials import NotAcceptedError, base58, cose, make_badge, proof
from generator.credentials.jcs import canonical, strict_json
from tests.credentials.issuer import ISSUER, NOW, RING, certificate

STANDARDS = Path(__file__).parent / "standards"
EDDSA = STANDARDS / "w3c-vc-di-eddsa" / "TestVectors"
JCS = EDDSA / "eddsa-jcs-2022"
SCHEMA = json.loads((STANDARDS / "w3c-vc-data-model-2.0" / "verifiable-credential-schema.json").read_text("utf-8"))


def test_cose_working_groups_ed25519_example() -> None:
    """COSE working group, `eddsa-sig-01.json`."""
    vector = json.loads((STANDARDS / "cose-ed25519" / "eddsa-sig-01.json").read_text("utf-8"))
    data = bytes.fromhex(vector["output"]["cbor"])
    key = vector["input"]["sign0"]["key"]
    assert len(data) == 100
    message = cose.unpack(data)
    assert message.payload == b"This is the content."
    expected = bytes.fromhex(vector["intermediates"]["ToBeSign_hex"])
    assert cose.to_be_signed(message.protected, message.payload) == expected
    assert cose.pack(message) == data
    public = Ed25519PublicKey.from_public_bytes(bytes.fromhex(key["x_hex"]))
    assert cose.is_signed(message, public)
    assert not cose.is_signed(message, public, b"tankschool certificate 1")
    private = Ed25519PrivateKey.from_private_bytes(bytes.fromhex(key["d_hex"]))
    assert private.sign(expected) == message.signature
    with pytest.raises(NotAcceptedError):  # well made, but not in the one way in which certificates are
        cose.kid_of(message)


@pytest.mark.parametrize("name", ["arrays", "structures", "unicode", "values"])
def test_canonical_json_of_rfc_8785(name: str) -> None:
    """RFC 8785's author's `testdata`."""
    folder = STANDARDS / "rfc8785-jcs-testdata"
    value = strict_json((folder / "input" / f"{name}.json").read_text("utf-8"))
    expected = (folder / "canonical" / f"{name}.json").read_bytes()
    assert canonical(value) == expected
    assert canonical(strict_json(expected.decode())) == expected


@pytest.mark.parametrize(
    ("bits", "shown"),
    [
        ("0000000000000000", "0"), ("8000000000000000", "0"), ("0000000000000001", "5e-324"),
        ("8000000000000001", "-5e-324"), ("7fefffffffffffff", "1.7976931348623157e+308"),
        ("4340000000000000", "9007199254740992"), ("4430000000000000", "295147905179352830000"),
        ("44b52d02c7e14af5", "9.999999999999997e+22"), ("44b52d02c7e14af6", "1e+23"),
        ("44b52d02c7e14af7", "1.0000000000000001e+23"), ("444b1ae4d6e2ef4e", "999999999999999700000"),
        ("444b1ae4d6e2ef4f", "999999999999999900000"), ("444b1ae4d6e2ef50", "1e+21"),
        ("3eb0c6f7a0b5ed8c", "9.999999999999997e-7"), ("3eb0c6f7a0b5ed8d", "0.000001"),
        ("41b3de4355555553", "333333333.3333332"), ("becbf647612f3696", "-0.0000033333333333333333"),
        ("43143ff3c1cb0959", "1424953923781206.2"),
    ],
)  # fmt: skip
def test_numbers_of_rfc_8785(bits: str, shown: str) -> None:
    """RFC 8785, appendix B."""
    (value,) = struct.unpack(">d", bytes.fromhex(bits))
    assert canonical(value).decode() == shown


def w3c(name: str) -> Any:
    text = (JCS / name).read_text("utf-8")
    return json.loads(text) if name.endswith(".json") else text.strip()


def test_w3c_eddsa_jcs_2022_step_by_step() -> None:
    """W3C Data Integrity EdDSA Cryptosuites, `TestVectors/eddsa-jcs-2022`."""
    signed = w3c("signedJCS.json")
    unsigned = json.loads((EDDSA / "unsigned.json").read_text("utf-8"))
    options = w3c("proofConfigJCS.json")
    assert canonical(unsigned).decode() == w3c("canonDocJCS.txt")
    assert canonical(options).decode() == w3c("proofCanonJCS.txt")
    both = proof.hashed(unsigned, options).hex()
    assert both == w3c("combinedHashJCS.txt") == w3c("proofHashJCS.txt") + w3c("docHashJCS.txt")
    keys = json.loads((EDDSA / "keyPair.json").read_text("utf-8"))
    seed = base58.decode(keys["privateKeyMultibase"][1:])
    private = Ed25519PrivateKey.from_private_bytes(seed[2:])
    public = private.public_key()
    assert base58.multikey(public.public_bytes_raw()) == keys["publicKeyMultibase"]
    assert private.sign(bytes.fromhex(both)).hex() == w3c("sigHexJCS.txt")
    assert "z" + base58.encode(bytes.fromhex(w3c("sigHexJCS.txt"))) == w3c("sigBTC58JCS.txt")
    assert proof.add_proof(unsigned, private, options["created"]) == signed
    proof.check_proof(signed, public)


def test_w3c_vector_with_one_letter_changed_is_refused() -> None:
    signed = w3c("signedJCS.json")
    public = Ed25519PublicKey.from_public_bytes(
        base58.decode(json.loads((EDDSA / "keyPair.json").read_text("utf-8"))["publicKeyMultibase"][1:])[2:]
    )
    changes: list[tuple[tuple[str, ...], str]] = [
        (("name",), "Alumni credential"), (("credentialSubject", "alumniOf"), "The school of Examples"),
        (("proof", "created"), "2023-02-24T23:36:39Z"), (("proof", "proofPurpose"), "authentication"),
        (("proof", "cryptosuite"), "eddsa-rdfc-2022"), (("proof", "type"), "Ed25519Signature2020"),
        (("proof", "verificationMethod"), "did:key:z6Mk"), (("validFrom",), "2023-01-01T00:00:00.0Z"),
    ]  # fmt: skip
    for path, value in changes:
        bent = copy.deepcopy(signed)
        inside = bent
        for step in path[:-1]:
            inside = inside[step]
        assert inside[path[-1]] != value
        inside[path[-1]] = value
        with pytest.raises(NotAcceptedError):
            proof.check_proof(bent, public)
    with pytest.raises(NotAcceptedError):
        proof.check_proof(signed, RING.current.private.public_key())


def test_a_badge_fits_the_w3cs_schema_of_credentials() -> None:
    """W3C Verifiable Credentials Data Model 2.0, JSON Schema; it asks for no `id` and `validFrom`, our checks do."""
    achievement = {"name": "Frame hand", "description": "Ties the frame.", "criteria": "Paper and practical."}
    badge = make_badge(certificate(), achievement, ISSUER, RING.current, NOW)
    jsonschema.validate(badge, SCHEMA, cls=jsonschema.Draft202012Validator)
    for name in ("@context", "type", "issuer", "credentialSubject"):
        with pytest.raises(jsonschema.ValidationError):
            jsonschema.validate({key: value for key, value in badge.items() if key != name}, SCHEMA)
    for name in ("id", "validFrom"):
        jsonschema.validate({key: value for key, value in badge.items() if key != name}, SCHEMA)
