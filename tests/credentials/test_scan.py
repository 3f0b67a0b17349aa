"""Codes out of pictures: from the printed card, turned, blurred, small, badly compressed and unevenly lit."""

from __future__ import annotations

import shutil
import subprocess
import sys
from io import BytesIO
from pathlib import Path

import numpy as np
import pytest
from PIL import Image, ImageFilter

from generator.credentials import (
    UnreadableImageError,
    certificate_text,
    codes_in,
    in_digits,
    in_words,
    qr_of,
    sign_certificate,
)
from generator.curriculum import load
from generator.problems import MachineError
from generator.sheets import Signed, certificate_pdf
from tests.credentials.issuer import ISSUER, RING, certificate
from tests.sheets.test_certificate import decision

NAME = "Maharajadhiraja Wimmamwaramma of the Upper Terrace beside the slow spring of the goat ford"


@pytest.fixture(scope="module")
def printed(tmp_path_factory: pytest.TempPathFactory) -> tuple[str, Image.Image, Image.Image]:
    """A certificate's text, its page and its card as a printer would show them: the finest code that there is."""
    content = load(Path(__file__).parents[2]).content
    assert content is not None
    made = certificate(name=NAME, scheme="frame-hand")
    text = certificate_text(sign_certificate(made, RING.current))
    public = RING.current.public
    signed = Signed(
        made.number,
        made.valid_from,
        made.valid_to,
        ISSUER,
        in_words(public, "hi"),
        in_digits(public),
        qr_of(text).matrix,
    )
    folder = tmp_path_factory.mktemp("card")
    (folder / "c.pdf").write_bytes(certificate_pdf(decision(content), NAME, "hi", content, signed))
    program = shutil.which("pdftoppm")
    assert program, "pdftoppm is missing: `test` installs poppler-utils"
    subprocess.run([program, "-r", "200", "-gray", "-png", str(folder / "c.pdf"), str(folder / "c")], check=True)
    first, second = sorted(folder.glob("c-*.png"))
    return text, Image.open(first).convert("L"), Image.open(second).convert("L")


def jpeg(picture: Image.Image, quality: int) -> bytes:
    out = BytesIO()
    picture.convert("L").save(out, "JPEG", quality=quality)
    return out.getvalue()


def card_of(page: Image.Image) -> Image.Image:
    """The part of the page that holds the card."""
    return page.crop((80, 80, 1500, 800))


def shaded(picture: Image.Image) -> Image.Image:
    """Light from one side, and grain."""
    pixels = np.asarray(picture, np.float64)
    light = np.linspace(0.45, 1.0, pixels.shape[1])
    grain = np.random.default_rng(7).normal(0, 12, pixels.shape)
    return Image.fromarray(np.clip(pixels * light + grain + 20, 0, 255).astype(np.uint8))


@pytest.mark.parametrize("turn", [0, 7, 33, 90, 181, 270, 318])
def test_a_turned_blurred_badly_compressed_photo_of_the_card_is_read(
    turn: int, printed: tuple[str, Image.Image, Image.Image]
) -> None:
    text, _, page = printed
    photo = card_of(page).rotate(turn, expand=True, fillcolor=200, resample=Image.Resampling.BICUBIC)
    photo = photo.filter(ImageFilter.GaussianBlur(1.4))
    assert codes_in(jpeg(photo, 18)) == [text]


def test_a_small_shaded_grainy_photo_is_read(printed: tuple[str, Image.Image, Image.Image]) -> None:
    text, _, page = printed
    card = card_of(page)
    small = card.resize((round(card.width * 0.7), round(card.height * 0.7)), Image.Resampling.BILINEAR)
    assert codes_in(jpeg(shaded(small).rotate(4, expand=True, fillcolor=120), 35)) == [text]


def test_the_certificate_itself_is_read_and_a_worn_spot_does_no_harm(
    printed: tuple[str, Image.Image, Image.Image],
) -> None:
    text, page, card = printed
    assert codes_in(jpeg(page, 60)) == [text]
    dark = np.argwhere(np.asarray(card_of(card)) < 60)
    worn = card_of(card).copy()
    middle = dark[np.argmax(dark[:, 1] > 950)]
    before = np.asarray(worn).sum()
    worn.paste(255, (int(middle[1]), int(middle[0]) + 150, int(middle[1]) + 28, int(middle[0]) + 178))
    assert np.asarray(worn).sum() > before + 255 * 200  # the spot lies on dark modules
    assert codes_in(jpeg(worn, 60)) == [text]


def test_a_picture_without_a_code_gives_none(printed: tuple[str, Image.Image, Image.Image]) -> None:
    assert codes_in(jpeg(Image.new("L", (300, 200), 180), 80)) == []
    assert codes_in(jpeg(printed[2].crop((0, 0, 900, 400)), 80)) == []


@pytest.mark.parametrize("data", [b"", b"no picture", b"\x89PNG\r\n\x1a\n" + b"\0" * 90])
def test_what_is_no_picture_is_refused_in_words(data: bytes) -> None:
    with pytest.raises(UnreadableImageError, match="no picture"):
        codes_in(data)


def test_a_picture_of_too_many_pixels_is_not_looked_at() -> None:
    out = BytesIO()
    Image.new("1", (28_000, 3_000)).save(out, "PNG")
    with pytest.raises(UnreadableImageError, match="million pixels"):
        codes_in(out.getvalue())
    with pytest.raises(UnreadableImageError, match="MB"):
        codes_in(b"\0" * 40_000_001)


def test_without_the_library_it_says_which_package(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "zxingcpp", None)
    with pytest.raises(MachineError, match="'zxing-cpp'"):
        codes_in(jpeg(Image.new("L", (30, 30)), 80))
