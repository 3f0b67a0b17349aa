"""Reading the square code in a photo or a scan. The reader is an optional library; without it this says which."""

from __future__ import annotations

import importlib
from io import BytesIO
from typing import Any

from PIL import Image, ImageOps

from generator.problems import MachineError

LARGEST_FILE = 40_000_000
MOST_PIXELS = 80_000_000
LONG_SIDE = (1600, 1000, 2600)
"""Pixels to which a picture is shrunk, one try after the other: noise goes, and small codes stay."""
PACKAGE = "zxing-cpp"


class UnreadableImageError(Exception):
    """The file is no picture, or is too large to be looked at; the message says which."""


def codes_in(data: bytes) -> list[str]:
    """The texts of all square codes in a picture; none where none can be read.

    Args:
        data: bytes of a PNG, JPEG or another picture that Pillow reads.

    Raises:
        MachineError: the library that reads codes is not installed.
        UnreadableImageError: the bytes are no picture, or too large.
    """
    reader = _reader()
    if len(data) > LARGEST_FILE:
        raise UnreadableImageError(f"it is larger than {LARGEST_FILE // 1_000_000} MB")
    try:
        with Image.open(BytesIO(data)) as opened:
            if opened.width * opened.height > MOST_PIXELS:
                raise UnreadableImageError(f"it has more than {MOST_PIXELS // 1_000_000} million pixels")
            grey = ImageOps.exif_transpose(opened).convert("L")
    except UnreadableImageError:
        raise
    except Exception as error:  # Pillow raises many kinds for strange bytes; all mean the same here
        raise UnreadableImageError("it is no picture that can be read") from error
    for picture in _tries(grey):
        found = [str(code.text) for code in reader.read_barcodes(picture, formats=reader.BarcodeFormat.QRCode)]
        if found:
            return sorted(set(found))
    return []


def _tries(grey: Image.Image) -> list[Image.Image]:
    pictures = [grey]
    longest = max(grey.size)
    for side in LONG_SIDE:
        if side < longest:
            factor = side / longest
            size = (max(1, round(grey.width * factor)), max(1, round(grey.height * factor)))
            pictures.append(grey.resize(size, Image.Resampling.LANCZOS))
    if longest <= LONG_SIDE[0]:
        pictures.append(grey.resize((2 * grey.width, 2 * grey.height), Image.Resampling.LANCZOS))
    return pictures + [ImageOps.autocontrast(picture, cutoff=2) for picture in pictures]


def _reader() -> Any:
    try:
        return importlib.import_module("zxingcpp")
    except ImportError:
        raise MachineError(
            f"reading a code from a picture needs the package '{PACKAGE}' (pip install {PACKAGE}); or scan the code "
            "with a phone and give the text that it shows"
        ) from None
