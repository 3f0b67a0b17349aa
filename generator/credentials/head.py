"""The signature over the head of a registry's log: who has it can show later that nothing before it was changed."""

from __future__ import annotations

from collections.abc import Callable

from cryptography.exceptions import InvalidSignature

from generator.credentials.keyring import SigningKey
from generator.credentials.keys import PublicKeys
from generator.problems import RefusedError

PURPOSE = b"tankschool registry head 1\n"
_KID = 4


def head_signer(key: SigningKey) -> Callable[[bytes], bytes]:
    """What signs a head: four bytes that name the key, and its signature.

    Args:
        key: the ring's current key.

    Raises:
        RefusedError: the key was put away or stolen.
    """
    if key.retired is not None or key.stolen is not None:
        raise RefusedError("this key was put away: sign with the current one")
    return lambda data: key.kid + key.private.sign(PURPOSE + data)


def head_checker(keys: PublicKeys) -> Callable[[bytes, bytes], bool]:
    """What tells whether a head was signed with one of an issuer's keys that was not stolen."""

    def ours(data: bytes, signature: bytes) -> bool:
        key = keys.by_kid.get(signature[:_KID])
        if key is None or key.stolen is not None:
            return False
        try:
            key.library_key.verify(signature[_KID:], PURPOSE + data)
        except InvalidSignature:
            return False
        return True

    return ours
