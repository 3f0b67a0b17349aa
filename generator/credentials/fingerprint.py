"""A key's fingerprint as people compare it: six words that can be said in both languages, and thirty digits.

The words mean nothing. Each is consonant, vowel, consonant, vowel, consonant and stands for 16 bits of the SHA-256 of
the key; in Hindi the same sounds are written in Devanagari, so two people can compare them across languages by phone.
"""

from __future__ import annotations

import hashlib

CONSONANTS = "bdfghjklmnprstvz"
VOWELS = "aiou"
DEVANAGARI = {
    "b": "ब", "d": "द", "f": "फ़", "g": "ग", "h": "ह", "j": "ज", "k": "क", "l": "ल", "m": "म", "n": "न", "p": "प",
    "r": "र", "s": "स", "t": "त", "v": "व", "z": "ज़", "a": "ा", "i": "ी", "o": "ो", "u": "ू",
}  # fmt: skip
WORDS = 6
DIGITS = 30
_GROUP = 5


def digest(public: bytes) -> bytes:
    """SHA-256 of the 32 bytes of a public key."""
    return hashlib.sha256(public).digest()


def key_id(public: bytes) -> bytes:
    """The four bytes by which a signature names its key."""
    return digest(public)[:4]


def in_words(public: bytes, language: str) -> str:
    """Six words: the first 96 bits of the digest.

    Example:
        >>> in_words(bytes(32), "en")
        'kinom lopot zodof rujul kufaz sakar'
        >>> in_words(bytes(32), "hi").split()[0]
        'कीनोम'
    """
    data = digest(public)
    words = []
    for place in range(0, 2 * WORDS, 2):
        value = int.from_bytes(data[place : place + 2], "big")
        letters = (
            CONSONANTS[value >> 12], VOWELS[value >> 10 & 3], CONSONANTS[value >> 6 & 15], VOWELS[value >> 4 & 3],
            CONSONANTS[value & 15],
        )  # fmt: skip
        words.append("".join(DEVANAGARI[letter] if language == "hi" else letter for letter in letters))
    return " ".join(words)


def in_digits(public: bytes) -> str:
    """Thirty digits in groups of five: the last 16 bytes of the digest, which the words do not use, modulo 10^30.

    Example:
        >>> len(in_digits(bytes(32)))
        35
    """
    digits = f"{int.from_bytes(digest(public)[16:], 'big') % 10**DIGITS:0{DIGITS}}"
    return " ".join(digits[place : place + _GROUP] for place in range(0, DIGITS, _GROUP))
