"""The square code: the same modules as the library's, no finer than cheap printers can take."""

from __future__ import annotations

from itertools import groupby

import numpy as np
import pytest
import segno
import zxingcpp

from generator.credentials import LEAST_MODULE, certificate_text, least_width, module_size, qr_of, sign_certificate
from generator.credentials.qr_fill import ALPHANUMERIC, Bits, fill
from generator.formula import Stream
from generator.problems import RefusedError
from tests.credentials.issuer import RING, certificate


def drawn(length: int, draw: Stream) -> str:
    """A text that needs the alphanumeric mode."""
    return "".join(ALPHANUMERIC[draw.below(45)] for _ in range(length - 1)) + "Q"


def ends_on_a_byte(length: int, version: int) -> bool:
    """Where bits and terminator fill whole bytes, the library pads with one byte more than the standard says."""
    bits = 4 + (9 if version < 10 else 11) + length // 2 * 11 + length % 2 * 6
    return (bits + 4) % 8 == 0


def read(modules: Bits) -> list[str]:
    picture = np.kron(np.pad(1 - modules, 4, constant_values=1) * 255, np.ones((3, 3))).astype(np.uint8)
    return [code.text for code in zxingcpp.read_barcodes(picture)]


def test_every_length_up_to_the_largest_version_is_filled_as_the_library_fills_it() -> None:
    draw = Stream("qr lengths")
    versions, compared = set(), 0
    for length in range(1, 367):
        text = drawn(length, draw)
        found = fill(text)
        assert found is not None
        version, mask, modules = found
        versions.add(version)
        if length % 3 == 0 or ends_on_a_byte(length, version):
            assert read(modules) == [text]
        if length % 4 == 0 and not ends_on_a_byte(length, version):
            made = segno.make(text, error="m", boost_error=False, micro=False, mask=mask, mode="alphanumeric")
            assert made.version == version
            assert modules.tolist() == [list(row) for row in made.matrix]
            compared += 1
    assert versions == set(range(1, 12))
    assert compared > 60


def penalty(rows: list[list[int]]) -> int:
    """The four rules of ISO/IEC 18004, written as they are said."""
    side = len(rows)
    lines = rows + [list(column) for column in zip(*rows, strict=True)]
    found = 0
    for line in lines:
        found += sum(size - 2 for size in (len(list(run)) for _, run in groupby(line)) if size >= 5)
        told = "".join(map(str, line))
        found += 40 * sum(told[at : at + 11] in ("10111010000", "00001011101") for at in range(side - 10))
    squares = (
        rows[y][x] + rows[y + 1][x] + rows[y][x + 1] + rows[y + 1][x + 1]
        for y in range(side - 1)
        for x in range(side - 1)
    )
    found += 3 * sum(square in (0, 4) for square in squares)
    dark = 100 * sum(map(sum, rows)) / side**2
    return found + 10 * int(abs(dark - 50) / 5)


@pytest.mark.parametrize("length", [12, 31, 118, 203, 290])
def test_the_mask_with_the_least_penalty_is_taken(length: int) -> None:
    text = drawn(length, Stream(f"qr mask {length}"))
    found = fill(text)
    assert found is not None
    assert not ends_on_a_byte(length, found[0])
    all_masks = [
        segno.make(text, error="m", boost_error=False, micro=False, mask=mask, mode="alphanumeric") for mask in range(8)
    ]
    penalties = [penalty([list(row) for row in made.matrix]) for made in all_masks]
    assert found[1] == penalties.index(min(penalties))


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
