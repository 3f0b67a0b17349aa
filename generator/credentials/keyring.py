"""The issuer's secrets: the signing keys and the secret of the exams' draws, in one file under a passphrase.

What a command for keys calls:

- `new_ring(issuer, now, entropy)` makes a ring with one key and one exam secret.
- `lock(ring, passphrase, entropy)` gives the bytes of the file, `unlock(data, passphrase)` the ring again.
- `save(path, data)` writes a file whole or not at all, readable by its owner only; never over another file unless told.
- `copy_checked(source, target, passphrase)` makes a backup and proves that it opens.
- `rotate(ring, now, entropy)` puts the current key away and makes a new one; old signatures stay good.
- `mark_stolen(ring, kid, since, now, entropy)` says that a key is in wrong hands, and makes a new one if it was the
  current. Then sign and spread a new list that holds `stolen_entry(...)`, and a new file of public keys.
- `public_file(ring)` is the text of the file of public keys; `ring.public()` the same as data.

Lost passphrase or file: nothing opens it again. Certificates stay verifiable; new ones need a new ring, whose
fingerprint has to be printed and told anew.
"""

from __future__ import annotations

import json
import os
import unicodedata
from base64 import b64decode, b64encode
from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import date, datetime
from functools import cached_property
from pathlib import Path
from typing import Any

from cryptography.exceptions import InvalidTag
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey
from cryptography.hazmat.primitives.ciphers.aead import AESGCM
from cryptography.hazmat.primitives.kdf.scrypt import Scrypt

from generator.credentials import fingerprint
from generator.credentials.jcs import canonical, strict_json
from generator.credentials.keys import PURPOSE, PublicKey, PublicKeys, unsigned_file
from generator.credentials.refused import NotAcceptedError
from generator.problems import MachineError, RefusedError

KIND = "tankschool secret keys"
SHORTEST_PASSPHRASE = 12
SCRYPT_COST, SCRYPT_BLOCK, SCRYPT_LANES = 2**17, 8, 1
"""128 MB and about half a second for each try, for whoever guesses as well as for us. They belong to format 1 and are
not read from the file, so nobody can make a file that costs less, or that eats the machine."""
_SALT, _NONCE, _SECRET = 16, 12, 32
_LARGEST_FILE = 200_000
Entropy = Callable[[int], bytes]


@dataclass(frozen=True)
class SigningKey:
    """A key that signs; its seed is never shown.

    Args:
        seed: 32 secret bytes.
        made: the day it was made.
        retired: the day it was put away.
        stolen: the day from which someone else may have had it.
    """

    seed: bytes = field(repr=False)
    made: date
    retired: date | None = None
    stolen: date | None = None

    @cached_property
    def private(self) -> Ed25519PrivateKey:
        """The key as the library takes it."""
        return Ed25519PrivateKey.from_private_bytes(self.seed)

    @cached_property
    def public(self) -> bytes:
        """The 32 bytes that everyone may see."""
        return self.private.public_key().public_bytes_raw()

    @cached_property
    def kid(self) -> bytes:
        """The four bytes by which signatures name it."""
        return fingerprint.key_id(self.public)


@dataclass(frozen=True)
class KeyRing:
    """All the secrets of an issuer, its keys oldest first; the last one signs."""

    issuer: str
    keys: tuple[SigningKey, ...]
    exam_secret: bytes = field(repr=False)

    @property
    def current(self) -> SigningKey:
        """The key that signs."""
        return self.keys[-1]

    def public(self) -> PublicKeys:
        """What everyone may see."""
        return PublicKeys(
            self.issuer, tuple(PublicKey(key.public, key.made, key.retired, key.stolen) for key in self.keys)
        )


def new_ring(issuer: str, now: datetime, entropy: Entropy = os.urandom) -> KeyRing:
    """A ring with one key.

    Args:
        issuer: name of the organisation, as verifiers will see it.
        now: the time.
        entropy: gives so many random bytes.

    Raises:
        RefusedError: the issuer has no name.
    """
    if not issuer.strip():
        raise RefusedError("an issuer needs a name: whoever verifies a certificate sees it")
    return KeyRing(issuer.strip(), (SigningKey(entropy(_SECRET), now.date()),), entropy(_SECRET))


def rotate(ring: KeyRing, now: datetime, entropy: Entropy = os.urandom) -> KeyRing:
    """The current key put away and a new one in its place; what the old one signed stays good."""
    old = ring.current
    retired = old if old.stolen else replace(old, retired=now.date())
    fresh = SigningKey(entropy(_SECRET), now.date())
    if any(fresh.kid == key.kid for key in ring.keys):
        return rotate(ring, now, entropy)  # one in four thousand million: draw again
    return replace(ring, keys=(*ring.keys[:-1], retired, fresh))


def mark_stolen(ring: KeyRing, kid: bytes, since: date, now: datetime, entropy: Entropy = os.urandom) -> KeyRing:
    """A key marked as stolen; if it was the current one, a new one is in its place.

    Args:
        ring: the ring.
        kid: id of the key.
        since: the first day on which someone else may have had it.
        now: the time.
        entropy: gives so many random bytes.

    Raises:
        RefusedError: the ring has no such key.
    """
    if kid not in {key.kid for key in ring.keys}:
        raise RefusedError(f"the ring has no key {kid.hex()}")
    keys = tuple(replace(key, stolen=since) if key.kid == kid else key for key in ring.keys)
    marked = replace(ring, keys=keys)
    return rotate(marked, now, entropy) if ring.current.kid == kid else marked


def public_file(ring: KeyRing) -> str:
    """The text of the file of public keys, signed with the current key."""
    data = unsigned_file(ring.public())
    data["signature"] = ring.current.private.sign(PURPOSE + canonical(data)).hex()
    return json.dumps(data, ensure_ascii=False, indent=2) + "\n"


def lock(ring: KeyRing, passphrase: str, entropy: Entropy = os.urandom) -> bytes:
    """The bytes of the ring's file.

    Args:
        ring: the secrets.
        passphrase: at least 12 signs; four or five words that have nothing to do with each other are good.
        entropy: gives so many random bytes.

    Raises:
        RefusedError: the passphrase is too short.
    """
    if len(_plain(passphrase)) < SHORTEST_PASSPHRASE:
        raise RefusedError(
            f"the passphrase is too short: at least {SHORTEST_PASSPHRASE} signs; four or five words that have nothing "
            "to do with each other are easy to keep in mind and hard to guess"
        )
    salt, nonce = entropy(_SALT), entropy(_NONCE)
    head: dict[str, Any] = {"format": 1, "kind": KIND, "salt": _base64(salt), "nonce": _base64(nonce)}
    sealed = AESGCM(_derived(passphrase, salt)).encrypt(nonce, canonical(_secrets(ring)), canonical(head))
    return (json.dumps({**head, "sealed": _base64(sealed)}, indent=2) + "\n").encode()


def unlock(data: bytes, passphrase: str) -> KeyRing:
    """The ring in a file. A wrong passphrase takes as long as the right one, and is not told from a damaged file.

    Raises:
        RefusedError: not such a file, of a newer edition, or it does not open.
    """
    head, salt, nonce, sealed = _outside(data)
    key = _derived(passphrase, salt)
    try:
        opened = AESGCM(key).decrypt(nonce, sealed, canonical(head))
    except InvalidTag:
        raise RefusedError(
            "the file of secret keys does not open: the passphrase is wrong, or the file was damaged; try once more, "
            "then take a backup"
        ) from None
    secrets = json.loads(opened)
    keys = tuple(
        SigningKey(b64decode(row["seed"]), *(date.fromisoformat(row[name]) if row[name] else None for name in _DAYS))  # type: ignore[arg-type]
        for row in secrets["keys"]
    )
    return KeyRing(secrets["issuer"], keys, b64decode(secrets["exam_secret"]))


_DAYS = ("made", "retired", "stolen")


def save(path: Path, data: bytes, *, replace_old: bool = False) -> None:
    """Write a file whole or not at all, readable by its owner only.

    Args:
        path: where.
        data: all of it.
        replace_old: whether a file of that name may be replaced.

    Raises:
        RefusedError: there is a file of that name.
        MachineError: the disk said no; what was there is as it was.
    """
    if path.exists() and not replace_old:
        raise RefusedError(f"'{path}' is there already, and is never written over: choose another name")
    part = path.with_name(f".{path.name}.part")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        part.unlink(missing_ok=True)
        with os.fdopen(os.open(part, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        part.replace(path)
    except OSError as error:
        part.unlink(missing_ok=True)
        raise MachineError(f"'{path}' could not be written: {error.strerror or error}") from None


def copy_checked(source: Path, target: Path, passphrase: str) -> None:
    """A backup that is known to open: the source is unlocked first, and what was written is read again.

    Raises:
        RefusedError: the passphrase is wrong, or the target is there already; nothing was written.
        MachineError: the disk said no, or did not keep what it was given.
    """
    data = source.read_bytes()
    unlock(data, passphrase)
    save(target, data)
    if target.read_bytes() != data:
        raise MachineError(f"'{target}' does not hold what was written to it: use another drive")


def _secrets(ring: KeyRing) -> dict[str, Any]:
    return {
        "issuer": ring.issuer,
        "exam_secret": _base64(ring.exam_secret),
        "keys": [
            {
                "seed": _base64(key.seed),
                "made": key.made.isoformat(),
                "retired": key.retired.isoformat() if key.retired else None,
                "stolen": key.stolen.isoformat() if key.stolen else None,
            }
            for key in ring.keys
        ],
    }


def _outside(data: bytes) -> tuple[dict[str, Any], bytes, bytes, bytes]:
    """What stands in a file before it is opened: header, salt, nonce, sealed bytes."""
    try:
        if len(data) > _LARGEST_FILE:
            raise ValueError
        head = strict_json(data.decode())
        if type(head) is not dict or head.get("kind") != KIND or type(head.get("format")) is not int:
            raise ValueError
        if head["format"] > 1:
            raise RefusedError("this file of secret keys was written by a newer edition: use that one")
        if set(head) != {"format", "kind", "salt", "nonce", "sealed"} or head["format"] != 1:
            raise ValueError
        parts = {name: b64decode(head[name], validate=True) for name in ("salt", "nonce", "sealed")}
        if (len(parts["salt"]), len(parts["nonce"])) != (_SALT, _NONCE):
            raise ValueError
        if any(_base64(part) != head[name] for name, part in parts.items()):
            raise ValueError
    except (ValueError, TypeError, NotAcceptedError):
        raise RefusedError("this is not a file of secret keys") from None
    del head["sealed"]
    return head, parts["salt"], parts["nonce"], parts["sealed"]


def _derived(passphrase: str, salt: bytes) -> bytes:
    kdf = Scrypt(salt=salt, length=32, n=SCRYPT_COST, r=SCRYPT_BLOCK, p=SCRYPT_LANES)
    return kdf.derive(_plain(passphrase).encode())


def _plain(passphrase: str) -> str:
    """The same passphrase typed on another keyboard: composed letters, single blanks."""
    return " ".join(unicodedata.normalize("NFKC", passphrase).split())


def _base64(data: bytes) -> str:
    return b64encode(data).decode("ascii")
