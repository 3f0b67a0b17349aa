"""`verify`: text, file, badge, picture, number; exit codes; what is remembered; both languages; no network."""

from __future__ import annotations

import json
import socket
import sys
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from io import BytesIO
from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from generator.commands.main import run
from generator.credentials import (
    Status,
    badge_text,
    make_badge,
    mark_stolen,
    public_file,
    qr_of,
)
from tests.credentials.issuer import ISSUER, RING, STRANGER, WORDS, certificate, fixed, listed, number, text

TODAY = datetime.now(UTC)
FIRST, LAST = (TODAY - timedelta(days=100)).date(), (TODAY + timedelta(days=1000)).date()
GOOD = text(valid_from=FIRST, valid_to=LAST)
Run = Callable[..., tuple[int, str, str]]


@pytest.fixture
def data(tmp_path: Path) -> Path:
    folder = tmp_path / "data"
    folder.mkdir()
    (folder / "public-keys.json").write_text(public_file(RING), "utf-8")
    return folder


@pytest.fixture
def verify(capsys: pytest.CaptureFixture[str], data: Path, monkeypatch: pytest.MonkeyPatch) -> Run:
    def no_network(*_: object, **__: object) -> None:
        raise AssertionError("asked outside")

    monkeypatch.setattr(socket.socket, "connect", no_network)

    def call(*arguments: str) -> tuple[int, str, str]:
        code = run(["verify", "--data", str(data), *arguments])
        said = capsys.readouterr()
        return code, said.out, said.err

    return call


def write(folder: Path, name: str, content: str) -> str:
    path = folder / name
    path.write_text(content, "utf-8")
    return str(path)


def picture(*texts: str) -> bytes:
    codes = [
        np.kron(np.pad(1 - np.array(qr_of(each).matrix), 6, constant_values=1) * 255, np.ones((4, 4))) for each in texts
    ]
    tallest = max(code.shape[0] for code in codes)
    row = np.hstack([np.pad(code, ((0, tallest - code.shape[0]), (0, 40)), constant_values=255) for code in codes])
    out = BytesIO()
    Image.fromarray(row.astype(np.uint8)).save(out, "PNG")
    return out.getvalue()


@pytest.mark.parametrize("language", ["en", "hi"])
def test_a_good_text_is_told_with_all_that_was_and_was_not_checked(language: str, verify: Run, tmp_path: Path) -> None:
    words = WORDS[language]
    code, out, _ = verify(GOOD, "--list", write(tmp_path, "list.txt", listed(TODAY)), "--language", language)
    assert code == 0
    assert out.startswith(words.say_one_of("certificate.outcome", "genuine"))
    for expected in (
        "Asha Devi", number(7), ISSUER, words.say("certificate.compare_key"),
        words.say_one_of("certificate.open", "holder"),
        words.say_one_of("certificate.check", "list"),
    ):  # fmt: skip
        assert expected in out


def test_data_for_a_program(verify: Run) -> None:
    code, out, _ = verify(GOOD, "--json")
    found = json.loads(out)
    assert code == 0
    assert (found["format"], found["outcome"], found["list_dated"]) == (1, "genuine", None)
    assert found["certificate"]["scope"] == {"role": "helper", "litres": 12_000, "wall_cm": 190, "roof": "none"}
    assert found["unchecked"] == ["holder", "paper", "no_list"]
    code, out, _ = verify(text(by=STRANGER), "--json")
    assert (code, json.loads(out)["reason"], json.loads(out)["certificate"]) == (3, "unknown_key", None)


def test_everything_but_genuine_ends_with_3(verify: Run, tmp_path: Path) -> None:
    signed_list = write(tmp_path, "list.txt", listed(TODAY, {number(7): Status.WITHDRAWN}))
    past, coming = (TODAY - timedelta(days=1)).date(), (TODAY + timedelta(days=2)).date()
    for made in (
        text(valid_from=FIRST, valid_to=past), text(valid_from=coming, valid_to=LAST),
        GOOD[:-1], "TSC2:AAAA", "hello", "",
        text(by=STRANGER), listed(),
    ):  # fmt: skip
        code, out, _ = verify(made)
        assert code == 3
        assert out
    code, out, _ = verify(GOOD, "--list", signed_list)
    assert code == 3
    assert out.startswith("WITHDRAWN")


def test_a_picture_a_file_and_a_badge(verify: Run, tmp_path: Path) -> None:
    photo = tmp_path / "photo.png"
    photo.write_bytes(picture(GOOD))
    assert verify("--image", str(photo))[0] == 0
    assert verify("--file", write(tmp_path, "c.txt", f"\ufeff{GOOD}\n"))[0] == 0
    achievement = {"name": "Frame hand", "description": "Ties the frame.", "criteria": "Paper and practical."}
    badge = make_badge(certificate(valid_from=FIRST, valid_to=LAST), achievement, ISSUER, RING.current, TODAY)
    code, out, _ = verify("--file", write(tmp_path, "badge.json", badge_text(badge)))
    assert code == 0
    assert number(7) in out
    badge["credentialSubject"]["narrative"] = "largest tank: 50000 L"
    assert verify("--file", write(tmp_path, "badge.json", badge_text(badge)))[0] == 3


def test_pictures_that_do_not_help_are_told_with_what_to_do(
    verify: Run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    blank = tmp_path / "blank.png"
    Image.new("L", (200, 200), 200).save(blank)
    code, _, err = verify("--image", str(blank))
    assert code == 1
    assert WORDS["en"].say("certificate.command.no_code") in err
    two = tmp_path / "two.png"
    two.write_bytes(picture(GOOD, text(8)))
    code, _, err = verify("--image", str(two))
    assert code == 1
    assert WORDS["en"].say("certificate.command.two_codes", count=2) in err
    with_another = tmp_path / "other.png"
    with_another.write_bytes(picture(GOOD, "HTTPS://TAMARISK.EXAMPLE"))
    assert verify("--image", str(with_another))[0] == 0
    code, _, err = verify("--image", write(tmp_path, "text.png", "no picture"))
    assert code == 1
    assert "no picture" in err
    monkeypatch.setitem(sys.modules, "zxingcpp", None)
    code, _, err = verify("--image", str(two))
    assert code == 4
    assert "zxing-cpp" in err


def test_a_number_against_the_list(verify: Run, tmp_path: Path) -> None:
    signed_list = write(tmp_path, "list.txt", listed(TODAY))
    code, out, _ = verify("--number", number(7).lower(), "--list", signed_list)
    assert code == 0
    assert out.startswith(WORDS["en"].say_one_of("certificate.outcome", "not_listed"))
    assert WORDS["en"].say_one_of("certificate.open", "signature") in out
    code, out, _ = verify("--number", number(3), "--list", signed_list)
    assert code == 3
    assert out.startswith("WITHDRAWN")
    slip = number(3).replace("3-", "8-")
    code, out, _ = verify("--number", slip, "--list", signed_list)
    assert code == 3
    assert WORDS["en"].say_one_of("certificate.refused", "number_slip") in out
    code, _, err = verify("--number", number(3))
    assert code == 2
    assert "--list" in err


def test_an_old_list_is_noticed_here_even_after_the_newer_one_is_gone(verify: Run, tmp_path: Path, data: Path) -> None:
    new, old = listed(TODAY - timedelta(days=1)), listed(TODAY - timedelta(days=40), {})
    (data / "withdrawn.txt").write_text(new, "utf-8")
    assert verify("--number", number(3))[0] == 3
    (data / "withdrawn.txt").write_text(old, "utf-8")
    code, out, _ = verify("--number", number(3), "--json")
    assert (code, json.loads(out)["reason"]) == (3, "old_list")
    assert json.loads(out)["warnings"][0]["code"] == "list_replayed"
    assert verify(GOOD)[0] == 3
    (data / "lists-seen.json").write_text("damaged", "utf-8")
    assert verify(GOOD)[0] == 0


def test_the_age_of_a_list_is_warned_of(verify: Run, tmp_path: Path) -> None:
    signed_list = write(tmp_path, "list.txt", listed(TODAY - timedelta(days=20)))
    for age, warned in (("10", ["list_old"]), ("30", [])):
        code, out, _ = verify(GOOD, "--list", signed_list, "--max-age", age, "--json")
        assert code == 0
        assert [note["code"] for note in json.loads(out)["warnings"]] == warned


def test_a_memory_that_can_not_be_written_is_told_and_stops_nothing(verify: Run, tmp_path: Path, data: Path) -> None:
    (data / "lists-seen.json").mkdir()
    code, out, _ = verify(GOOD, "--list", write(tmp_path, "list.txt", listed(TODAY)))
    assert code == 0
    assert WORDS["en"].say_one_of("certificate.warning", "not_remembered") in out


def test_false_keys_and_lists_are_problems_of_the_input(verify: Run, tmp_path: Path) -> None:
    robbed = mark_stolen(RING, RING.current.kid, TODAY.date(), TODAY, fixed("next"))
    keys = write(tmp_path, "keys.json", public_file(robbed))
    false_list = write(tmp_path, "false.txt", listed(TODAY, by=STRANGER))
    code, _, err = verify(GOOD, "--list", false_list)
    assert code == 1
    assert f"{false_list}:0:0" in err
    bent = write(tmp_path, "bent.json", public_file(RING).replace(ISSUER, "Somebody"))
    for given in (bent, write(tmp_path, "junk.json", "junk"), str(tmp_path / "none.json")):
        code, _, err = verify(GOOD, "--keys", given)
        assert code == 1
        assert "fix:" in err
    code, out, _ = verify(GOOD, "--keys", keys)
    assert code == 3
    assert WORDS["en"].say_one_of("certificate.refused", "stolen_key") in out


def test_one_way_in(verify: Run) -> None:
    for arguments in ((), (GOOD, "--number", number(3)), (GOOD, "--language", "xx"), (GOOD, "--max-age", "0")):
        assert verify(*arguments)[0] == 2


def test_a_number_or_a_file_in_the_place_of_the_text_is_told_its_option(verify: Run, tmp_path: Path) -> None:
    """`not accepted` would be said of a good certificate."""
    photo = write(tmp_path, "card.jpg", "no text")
    for given, told in ((number(3).lower(), f"--number {number(3).lower()}"), (photo, f"--image {photo}")):
        code, _, err = verify(given)
        assert (code, told in err) == (2, True)


def test_words_are_all_that_it_needs_of_a_course(verify: Run, tmp_path: Path) -> None:
    words = tmp_path / "course" / "words"
    words.mkdir(parents=True)
    shipped = Path(__file__).parents[2] / "course" / "words" / "hi.yaml"
    (words / "hi.yaml").write_bytes(shipped.read_bytes())
    code, out, _ = verify(GOOD, "--content", str(tmp_path), "--language", "hi")
    assert code == 0
    assert out.startswith(WORDS["hi"].say_one_of("certificate.outcome", "genuine"))
    assert verify(GOOD, "--content", str(tmp_path))[0] == 2
    (words / "en.yaml").write_text("format: 2\n", "utf-8")
    code, _, err = verify(GOOD, "--content", str(tmp_path))
    assert code == 1
    assert "en.yaml" in err
