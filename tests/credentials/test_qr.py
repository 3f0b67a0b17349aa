"""The square code: the same modules as the library's, no finer than cheap printers can take."""

from __future__ import annotations

import pytest
import segno

from generator.credentials import LEAST_MODULE, certificate_text, least_width, module_size, qr_of, sign_certificate
from generator.credentials.qr_fill import ALPHANUMERIC, fill
from generator.formula import Stream
from generator.problems import RefusedError
from tests.credentials.issuer import RING, certificate


def test_every_length_up_to_the_largest_version_is_filled_as_the_library_fills_it() -> None:
    draw = Stream("qr lengths")
    for length in (*range(1, 367, 7), 20, 38, 61, 90, 122, 154, 178, 221, 262, 311, 366):
        text = "".join(ALPHANUMERIC[draw.below(45)] for _ in range(length - 1)) + "A"
        text = text if not text.isdigit() else "A" * length
        found = fill(text)
        assert found is not None
        version, mask, modules = found
        made = segno.make(text, error="m", boost_error=False, micro=False, mask=mask, mode="alphanumeric")
        assert made.version == version
        assert modules.tolist() == [list(row) for row in made.matrix]


def test_the_mask_is_one_of_the_best_by_the_librarys_own_penalty() -> None:
    draw = Stream("qr masks")
    worse = 0
    for _ in range(12):
        text = "".join(ALPHANUMERIC[draw.below(36)] for _ in range(300))
        found = fill(text)
        assert found is not None
        best = segno.make(text, error="m", boost_error=False, micro=False).mask
        worse += found[1] != best
    assert worse <= 6


def test_the_longest_certificate_fits_at_the_least_module() -> None:
    longest = certificate(name="W" * 90, scheme="frame-hand-and-roof-x", version=99)
    code = qr_of(certificate_text(sign_certificate(longest, RING.current)))
    assert code.version == 11
    assert code.across == 69
    assert least_width(code) == pytest.approx(41.4)
    assert module_size(code, 48.3) == pytest.approx(0.7)
    with pytest.raises(RefusedError, match=r"at least 0.6 mm, so make it 41.4 mm"):
        module_size(code, 41.0)
    assert module_size(code, least_width(code)) == pytest.approx(LEAST_MODULE)


def test_a_usual_certificate_is_coarser() -> None:
    code = qr_of(certificate_text(sign_certificate(certificate(), RING.current)))
    assert code.version <= 9
    assert len(code.matrix) == len(code.matrix[0]) == 4 * code.version + 17


def test_text_beyond_version_11_is_refused() -> None:
    for text in ("A" * 367, "a" * 300, "A" * 5000):
        with pytest.raises(RefusedError):
            qr_of(text)
    assert qr_of("small letters too").version == 2
