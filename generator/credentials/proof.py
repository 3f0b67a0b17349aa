"""Data Integrity proofs of the suite eddsa-jcs-2022 (W3C): RFC 8785, SHA-256, Ed25519, base58.

The signature covers the hash of the proof's own options and then the hash of the document without its proof.
"""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from typing import Any

from cryptography.exceptions import InvalidSignature
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey, Ed25519PublicKey

from generator.credentials import base58
from generator.credentials.jcs import canonical
from generator.credentials.refused import NotAcceptedError

SUITE = "eddsa-jcs-2022"
TYPE = "DataIntegrityProof"
PURPOSE = "assertionMethod"
FIELDS = {"type", "cryptosuite", "created", "verificationMethod", "proofPurpose", "proofValue"}


def did_key(public: bytes) -> str:
    """A key as a name that carries itself."""
    return f"did:key:{base58.multikey(public)}"


def method(public: bytes) -> str:
    """How a proof names its key."""
    return f"{did_key(public)}#{base58.multikey(public)}"


def hashed(document: Mapping[str, Any], options: Mapping[str, Any]) -> bytes:
    """The 64 bytes that are signed.

    Args:
        document: without its proof.
        options: the proof without its value.
    """
    return hashlib.sha256(canonical(options)).digest() + hashlib.sha256(canonical(document)).digest()


def add_proof(document: Mapping[str, Any], key: Ed25519PrivateKey, created: str) -> dict[str, Any]:
    """The document with its proof; the same input gives the same text.

    Args:
        document: without a proof.
        key: the private key.
        created: when, with a zone.
    """
    options: dict[str, Any] = {
        "type": TYPE,
        "cryptosuite": SUITE,
        "created": created,
        "verificationMethod": method(key.public_key().public_bytes_raw()),
        "proofPurpose": PURPOSE,
    }
    if "@context" in document:
        options["@context"] = document["@context"]
    value = "z" + base58.encode(key.sign(hashed(document, options)))
    return {**document, "proof": {**options, "proofValue": value}}


def check_proof(document: Mapping[str, Any], key: Ed25519PublicKey) -> None:
    """Whether the document's proof is this key's; the key is never taken from the document.

    Raises:
        NotAcceptedError: the proof is missing, of another kind or for another purpose, names another key, or is wrong.
    """
    proof = document.get("proof")
    if type(proof) is not dict:
        raise NotAcceptedError("no_proof")
    if not FIELDS <= set(proof) <= FIELDS | {"@context"}:
        raise NotAcceptedError("no_proof")
    if (proof["type"], proof["cryptosuite"], proof["proofPurpose"]) != (TYPE, SUITE, PURPOSE):
        raise NotAcceptedError("algorithm")
    if proof["verificationMethod"] != method(key.public_bytes_raw()):
        raise NotAcceptedError("unknown_key")
    if "@context" in proof and proof["@context"] != document.get("@context"):
        raise NotAcceptedError("no_proof")
    value = proof["proofValue"]
    if type(value) is not str or not value.startswith("z"):
        raise NotAcceptedError("no_proof")
    try:
        signature = base58.decode(value[1:])
    except ValueError:
        raise NotAcceptedError("no_proof") from None
    bare = {name: each for name, each in document.items() if name != "proof"}
    options = {name: each for name, each in proof.items() if name != "proofValue"}
    try:
        key.verify(signature, hashed(bare, options))
    except InvalidSignature:
        raise NotAcceptedError("signature") from None
