"""What a signature costs: drawing certificates with it against drawing samples, verifying against the bare check.

A thousand people, each with a name and number of their own: signed, put into a square code and drawn, against the same
thousand drawn as unsigned samples. Ten thousand certificates verified from their texts, with list and days, against the
library's bare check of the same signatures.
"""

from __future__ import annotations

import time
from functools import cache
from itertools import count, islice
from pathlib import Path

from generator.assessment import Decision, Reason, Requirement
from generator.credentials import (
    Outcome,
    certificate_text,
    cose,
    in_digits,
    in_words,
    qr_of,
    sign_certificate,
    use_list,
    verify_certificate,
)
from generator.credentials.certificate import PURPOSE
from generator.credentials.text_form import CERTIFICATE, from_text
from generator.curriculum import CourseContent, load
from generator.sheets import Signed, certificate_pdf
from tests.benchmarks import Result, compare
from tests.credentials.issuer import ISSUER, KEYS, NOW, RING, certificate, listed

ROUND, ROUNDS, VERIFIED = 200, 5, 10_000
DRAWN_LIMIT, VERIFIED_LIMIT = 1.3, 1.5
LANGUAGE = "hi"


@cache
def course() -> tuple[CourseContent, Decision]:
    """The shipped course, and a pass by its scheme."""
    content = load(Path(__file__).parents[2]).content
    assert content is not None
    scheme = content.schemes["frame-hand"]
    practical = content.practicals["close-a-ring"]
    reasons = [
        Reason(Requirement.WRITTEN, True, "", 15, 10, 17),
        Reason(Requirement.PRACTICAL, True, practical.id, 11, 9, 12),
    ]
    reasons += [Reason(Requirement.CRITICAL_COMPETENCY, True, name, 3, 2, 3) for name in scheme.critical_competencies]
    return content, Decision(scheme.id, scheme.version, tuple(reasons))


def name_of(serial: int) -> str:
    """A name of its own for each: no cache of another's helps."""
    return f"Kamala Devi of House {serial}, Upper Terrace"


def signed_one(serial: int) -> bytes:
    """One certificate, signed, coded and drawn."""
    content, decision = course()
    made = certificate(serial, name_of(serial))
    code = qr_of(certificate_text(sign_certificate(made, RING.current)))
    public = RING.current.public
    paper = Signed(
        made.number, made.valid_from, made.valid_to, ISSUER, in_words(public, LANGUAGE), in_digits(public), code.matrix
    )
    return certificate_pdf(decision, made.name, LANGUAGE, content, paper)


def sample_one(serial: int) -> bytes:
    """The same person's certificate as an unsigned sample."""
    content, decision = course()
    return certificate_pdf(decision, name_of(serial), LANGUAGE, content)


def drawn() -> Result:
    """Signed and drawn against drawn, in rounds by turns: each round is of other people."""
    signed_one(ROUND * ROUNDS + 1), sample_one(ROUND * ROUNDS + 2)
    signed, samples = count(1), count(1)
    return compare(
        f"{ROUND * ROUNDS} certificates and cards signed and drawn, against drawn as samples; best of {ROUNDS} rounds",
        lambda: [signed_one(serial) for serial in islice(signed, ROUND)],
        lambda: [sample_one(serial) for serial in islice(samples, ROUND)],
        DRAWN_LIMIT,
        ROUNDS,
        time.process_time,
    )


@cache
def texts(number: int) -> tuple[str, ...]:
    """Certificates of as many people."""
    return tuple(
        certificate_text(sign_certificate(certificate(serial, name_of(serial)), RING.current))
        for serial in range(100, 100 + number)
    )


def verify_all(number: int) -> int:
    """How many of them are genuine."""
    in_use = use_list(listed(), KEYS, NOW)
    return sum(verify_certificate(text, KEYS, in_use, NOW).outcome is Outcome.GENUINE for text in texts(number))


def verified(number: int = VERIFIED, runs: int = 3) -> Result:
    """All of verifying against the bare check."""
    messages = [cose.unpack(from_text(text, CERTIFICATE)) for text in texts(number)]
    bare = [(each.signature, cose.to_be_signed(each.protected, each.payload, PURPOSE)) for each in messages]
    key = KEYS.newest.library_key
    return compare(
        f"{number} certificates verified, against the library's bare checks of their signatures",
        lambda: verify_all(number),
        lambda: [key.verify(signature, data) for signature, data in bare],
        VERIFIED_LIMIT,
        runs,
        time.process_time,
    )


def results() -> list[Result]:
    """Both comparisons."""
    return [drawn(), verified()]


if __name__ == "__main__":
    for result in results():
        print(result)  # noqa: T201 (this is what the benchmark is for)
