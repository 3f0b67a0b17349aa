"""The stick's names, its list of sums, and that it is only written when something changed."""

import hashlib
from pathlib import Path

import pytest

from generator.problems import MachineError
from generator.site.stick import LanguageParts, Print, name_faults, stick_files, write_stick
from generator.words import Words

TEXTS = {
    "page.stick.open": "Open the course",
    "page.stick.phone": "For a phone: <one> file",
    "page.stick.prints": "To print",
    "page.stick.copy": "Copy it on.",
    "page.stick.read_me": "Open START-HERE.html\nThat is all.",
}
HINDI = {**TEXTS, "page.stick.read_me": "शुरू यहाँ से"}


def parts() -> dict[str, LanguageParts]:
    prints = (Print("frame-card", "The frame on a card", b"%PDF-1"),)
    return {
        "en": LanguageParts("Tanks & troughs", Words("en", TEXTS), {"index.html": b"hello"}, b"one", prints),
        "hi": LanguageParts("टंकी", Words("hi", HINDI), {"index.html": b"namaste"}, b"ek"),
    }


@pytest.mark.parametrize(
    "path",
    [
        "site/en/Page.html",
        "site/con.html",
        "aux",
        "a b.html",
        "हिन्दी.html",
        "a?.html",
        "trailing.",
        "x" * 41,
        "a" + "/bcd" * 30,
    ],
)
def test_a_name_that_would_break_on_a_stick_is_named(path: str) -> None:
    faults = name_faults([path])
    assert faults
    assert path in faults[0]


def test_names_that_differ_only_in_capitals_are_named() -> None:
    assert any("capital" in fault for fault in name_faults(["site/a.html", "site/A.html"]))


def test_good_names_have_no_fault() -> None:
    assert name_faults(["START-HERE.html", "site/en/assets/bundle.a5f9.min.js", "phone/tankschool-en.html"]) == ()


def test_the_stick_has_a_start_page_that_needs_no_script_and_escapes_names() -> None:
    files = stick_files(parts(), b"licences")
    page = files["START-HERE.html"].decode("utf-8")
    assert "<script" not in page
    assert "Tanks &amp; troughs" in page
    assert "&lt;one&gt;" in page
    for link in ("site/en/index.html", "site/hi/index.html", "phone/tankschool-en.html", "pdf/en/frame-card.pdf"):
        assert f'href="{link}"' in page
        assert link in files


def test_the_read_me_is_plain_ascii_with_windows_line_ends() -> None:
    read_me = stick_files(parts(), b"licences")["READ-ME.txt"]
    assert read_me == b"Open START-HERE.html\r\nThat is all.\r\n"


def test_the_sums_cover_every_other_file() -> None:
    files = stick_files(parts(), b"licences")
    lines = files["SHA256SUMS.txt"].decode("ascii").splitlines()
    assert lines == [
        f"{hashlib.sha256(files[name]).hexdigest()}  {name}" for name in sorted(files) if "SUMS" not in name
    ]


def test_a_bad_file_name_stops_the_stick() -> None:
    bad = {**parts()}
    bad["en"] = LanguageParts("T", Words("en", TEXTS), {"Index.HTML": b""}, b"")
    with pytest.raises(MachineError, match=r"Index\.HTML"):
        stick_files(bad, b"")


def test_a_stick_that_is_already_right_is_left_alone(tmp_path: Path) -> None:
    target = tmp_path / "stick"
    files = stick_files(parts(), b"licences")
    assert write_stick(files, target)
    before = target.stat().st_ino
    assert not write_stick(files, target)
    assert target.stat().st_ino == before
    (target / "READ-ME.txt").write_bytes(b"touched")
    assert write_stick(files, target)
    assert (target / "READ-ME.txt").read_bytes() == files["READ-ME.txt"]


def test_what_is_alike_in_all_languages_lies_once_beside_them() -> None:
    page = b'<img src="assets/mark.svg"><script src="assets/course.js"></script><image href="assets/drawings/a.svg"/>'
    alike = {"index.html": page, "assets/mark.svg": b"m", "assets/drawings/a.svg": b"a", "search/x.js": b"same"}
    both = {
        language: LanguageParts(part.title, part.words, alike | {"assets/course.js": language.encode()}, b"")
        for language, part in parts().items()
    }
    files = stick_files(both, b"licences")
    assert files["site/assets/mark.svg"] == b"m"
    assert files["site/assets/drawings/a.svg"] == b"a"
    for language in both:
        assert f"site/{language}/assets/mark.svg" not in files
        assert files[f"site/{language}/assets/course.js"] == language.encode()
        assert files[f"site/{language}/search/x.js"] == b"same"
        text = files[f"site/{language}/index.html"].decode("utf-8")
        assert 'src="../assets/mark.svg"' in text
        assert 'href="../assets/drawings/a.svg"' in text
        assert 'src="assets/course.js"' in text
    alone = stick_files({"en": both["en"]}, b"licences")
    assert alone["site/en/index.html"] == page
    assert "site/assets/mark.svg" not in alone
