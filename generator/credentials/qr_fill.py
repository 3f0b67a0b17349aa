"""Filling a square code with letters and digits, quickly: a class's certificates are drawn in seconds, not minutes.

The skeleton (finders, timing, format and version) comes from the QR library, once for each version and mask. What
changes with the text (ISO/IEC 18004: bits, Reed-Solomon blocks, masks and their penalties) is done here on arrays; with
the same mask the library gives the same modules, which a test holds; but where the bits end on a whole byte it pads
with one byte too many.
"""

from __future__ import annotations

from functools import cache
from typing import TypeAlias

import numpy as np
import segno
from numpy.typing import NDArray
from segno import consts

Bits: TypeAlias = NDArray[np.uint8]

ALPHANUMERIC = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:"
_VALUE = {sign: value for value, sign in enumerate(ALPHANUMERIC)}
_PAIRS = {a + b: f"{45 * x + y:011b}" for a, x in _VALUE.items() for b, y in _VALUE.items()}
_BLOCKS: dict[int, tuple[int, tuple[int, ...]]] = {
    1: (10, (16,)), 2: (16, (28,)), 3: (26, (44,)), 4: (18, (32,) * 2), 5: (24, (43,) * 2), 6: (16, (27,) * 4),
    7: (18, (31,) * 4), 8: (22, (38,) * 2 + (39,) * 2), 9: (22, (36,) * 3 + (37,) * 2), 10: (26, (43,) * 4 + (44,)),
    11: (30, (50,) + (51,) * 4),
}  # fmt: skip
"""By version, at error correction M: check bytes of each block, and data bytes of the blocks."""
_DATA = (consts.TYPE_DATA_LIGHT, consts.TYPE_DATA_DARK)


def fill(text: str) -> tuple[int, int, Bits] | None:
    """Version, mask and modules (1 for dark) of a text at error correction M.

    Args:
        text: of capitals, digits and the signs of the alphanumeric mode.

    Returns:
        None where the text has other signs or needs a version beyond 11.
    """
    if not set(text) <= _VALUE.keys():
        return None
    for version in _BLOCKS:
        data = _data(text, version)
        if data is not None:
            break
    else:
        return None
    skeletons, places, masks = _frame(version)
    bits = np.unpackbits(_interleaved(data, version))
    filled = skeletons.copy()
    filled.reshape(8, -1)[:, places[: len(bits)]] = bits
    filled ^= masks
    mask = int(np.argmin(_penalties(filled)))
    return version, mask, filled[mask]


def _data(text: str, version: int) -> Bits | None:
    """The data bytes, padded; None where they do not fit."""
    size = 8 * sum(_BLOCKS[version][1])
    counter = 9 if version < 10 else 11
    if len(text) >= 1 << counter or 4 + counter + len(text) * 11 // 2 > size:
        return None
    even = len(text) // 2 * 2
    pieces = [f"0010{len(text):0{counter}b}", *(_PAIRS[text[at : at + 2]] for at in range(0, even, 2))]
    if even < len(text):
        pieces.append(f"{_VALUE[text[-1]]:06b}")
    bits = "".join(pieces)
    if len(bits) > size:
        return None
    bits += "0" * min(4, size - len(bits))
    bits += "0" * (-len(bits) % 8)
    whole = int(bits, 2).to_bytes(len(bits) // 8, "big")
    spare = size // 8 - len(whole)
    return np.frombuffer(whole + (b"\xec\x11" * spare)[:spare], np.uint8)


def _interleaved(data: Bits, version: int) -> Bits:
    """Data and check bytes in the order in which they are placed."""
    checks, sizes = _BLOCKS[version]
    table, starts = _check_table(version)
    found = np.bitwise_xor.reduceat(table[np.arange(len(data)), data], starts, axis=0)
    found_bytes = found.view(np.uint8).reshape(len(sizes), -1)[:, :checks]
    return np.concatenate([data, found_bytes.ravel()])[_order(version)]


@cache
def _order(version: int) -> NDArray[np.intp]:
    checks, sizes = _BLOCKS[version]
    starts = np.cumsum([0, *sizes])
    order = [int(starts[block]) + at for at in range(max(sizes)) for block, size in enumerate(sizes) if at < size]
    total = sum(sizes)
    order += [total + block * checks + at for at in range(checks) for block in range(len(sizes))]
    return np.array(order, np.intp)


@cache
def _field() -> tuple[list[int], list[int]]:
    """Powers and logarithms of 2 in the field of 256 elements with the polynomial 0x11d."""
    powers, logs, value = [0] * 510, [0] * 256, 1
    for power in range(255):
        powers[power] = powers[power + 255] = value
        logs[value] = power
        value = value << 1 ^ (0x11D if value & 0x80 else 0)
    return powers, logs


@cache
def _check_table(version: int) -> tuple[NDArray[np.uint64], NDArray[np.intp]]:
    """What each value of each data byte adds to the check bytes of its block, eight at a time; where blocks start."""
    checks, sizes = _BLOCKS[version]
    powers, logs = _field()

    def times(a: int, b: int) -> int:
        return powers[logs[a] + logs[b]] if a and b else 0

    generator = [1]
    for power in range(checks):
        longer = [*generator, 0]
        for at, each in enumerate(generator):
            longer[at + 1] ^= times(each, powers[power])
        generator = longer
    rest = generator[1:]
    rows = [rest]
    for _ in range(max(sizes) - 1):
        first = rows[-1][0]
        rows.append([a ^ times(first, b) for a, b in zip([*rows[-1][1:], 0], rest, strict=True)])
    by_row = np.zeros((len(rows), 256, -checks % 8 + checks), np.uint8)
    for at, row in enumerate(rows):
        by_row[at, :, :checks] = [[times(value, each) for each in row] for value in range(256)]
    order = [size - 1 - at for size in sizes for at in range(size)]
    return by_row[order].view(np.uint64), np.cumsum([0, *sizes[:-1]]).astype(np.intp)


@cache
def _frame(version: int) -> tuple[Bits, NDArray[np.intp], Bits]:
    """The skeleton for each mask, the places of the bits in their order, and the masks."""
    side = 4 * version + 17
    made = [segno.make("A", version=version, error="m", mask=mask, boost_error=False, micro=False) for mask in range(8)]
    kinds = np.array([list(row) for row in made[0].matrix_iter(border=0, verbose=True)])
    free = np.isin(kinds, _DATA)
    free[8, side - 9] = True  # the library counts this one as format, and fills it with data all the same
    skeletons = np.array([[list(row) for row in each.matrix] for each in made], np.uint8)
    skeletons[:, free] = 0
    places = []
    for step, right in enumerate([*range(side - 1, 6, -2), *range(5, 0, -2)]):
        rows = range(side) if step % 2 else range(side - 1, -1, -1)
        places += [row * side + column for row in rows for column in (right, right - 1) if free[row, column]]
    i, j = np.indices((side, side))
    rules = (
        (i + j) % 2, i % 2, j % 3, (i + j) % 3, (i // 2 + j // 3) % 2, i * j % 2 + i * j % 3,
        (i * j % 2 + i * j % 3) % 2, ((i + j) % 2 + i * j % 3) % 2,
    )  # fmt: skip
    masks = np.array([(rule == 0) & free for rule in rules], np.uint8)
    return skeletons, np.array(places, np.intp), masks


def _penalties(filled: Bits) -> NDArray[np.int64]:
    """The penalty of each of the eight: runs, blocks, what looks like a finder, and more dark than light.

    A row or column is one whole number of 64 bits, its first module the highest bit.
    """
    side = filled.shape[1]
    lines = np.zeros((8, 2 * side, 64), np.uint8)
    lines[:, :side, :side] = filled
    lines[:, side:, :side] = filled.transpose(0, 2, 1)
    dark = np.packbits(lines, axis=2).view(">u8")[:, :, 0].astype(np.uint64)
    width = _ONES << np.uint64(64 - side)
    same = ~(dark ^ _left(dark, 1)) & _ONES << np.uint64(65 - side)
    five = same & _left(same, 1) & _left(same, 2) & _left(same, 3)
    runs = _count(five) + 2 * _count(five & ~(five >> np.uint64(1)))
    rows = dark[:, :side]
    blocks = same[:, 1:side] & same[:, : side - 1] & ~(rows[:, 1:] ^ rows[:, :-1])
    light = ~dark & width
    core = dark & _left(light, 1) & _left(dark, 2) & _left(dark, 3) & _left(dark, 4) & _left(light, 5) & _left(dark, 6)
    four = light & _left(light, 1) & _left(light, 2) & _left(light, 3)
    finders = _count(core & _left(four, 7)) + _count(core & four >> np.uint64(4))
    off = np.abs(_count(rows) * 100 / side**2 - 50) // 5
    found: NDArray[np.int64] = runs + 3 * _count(blocks) + 40 * finders + 10 * off.astype(np.int64)
    return found


_ONES = np.uint64(2**64 - 1)


def _left(lines: NDArray[np.uint64], count: int) -> NDArray[np.uint64]:
    return lines << np.uint64(count)


def _count(found: NDArray[np.uint64]) -> NDArray[np.int64]:
    """The bits that are set, for each of the eight."""
    counted: NDArray[np.int64] = np.bitwise_count(found).sum(axis=1, dtype=np.int64)
    return counted
