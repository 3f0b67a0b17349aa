"""What is kept is given back only for the same inputs."""

import os
from pathlib import Path

from generator.site.products import Products, key_of, machine_key, versions_key


def test_the_same_inputs_are_made_once_and_other_inputs_anew(tmp_path: Path) -> None:
    products = Products(tmp_path)
    first = products.get("site-en", key_of("a"), lambda: {"page.html": b"one", "assets/x.js": b"two"})
    again = products.get("site-en", key_of("a"), lambda: {"page.html": b"never made"})
    assert first == again == {"page.html": b"one", "assets/x.js": b"two"}
    other = products.get("site-en", key_of("b"), lambda: {"page.html": b"new"})
    assert other == {"page.html": b"new"}
    assert products.made == ["site-en", "site-en"]
    assert [path.name for path in tmp_path.iterdir()] == ["site-en.zip"]


def test_kept_bytes_do_not_depend_on_when_they_were_kept(tmp_path: Path) -> None:
    for name in ("a", "b"):
        Products(tmp_path / name).keep("site", key_of("k"), {"page.html": b"one"})
    assert (tmp_path / "a" / "site.zip").read_bytes() == (tmp_path / "b" / "site.zip").read_bytes()


def test_a_damaged_product_is_made_again(tmp_path: Path) -> None:
    products = Products(tmp_path)
    products.keep("site", key_of("k"), {"page.html": b"one" * 100})
    stored = tmp_path / "site.zip"
    data = bytearray(stored.read_bytes())
    data[60] ^= 0xFF
    stored.write_bytes(data)
    assert products.get("site", key_of("k"), lambda: {"page.html": b"made again"}) == {"page.html": b"made again"}
    stored.write_bytes(b"junk")
    assert products.kept("site", key_of("k")) is None


def test_a_file_time_changes_no_key_and_a_byte_does(tmp_path: Path) -> None:
    page = tmp_path / "page.html"
    page.write_bytes(b"one")
    before = key_of({"page.html": page.read_bytes()})
    os.utime(page, (1, 1))
    assert key_of({"page.html": page.read_bytes()}) == before
    assert key_of({"page.html": b"onE"}) != before
    assert key_of({"page.htm": b"lone"}) != key_of({"page.html": b"one"})


def test_a_room_and_the_whole_house_have_keys_of_their_own() -> None:
    assert machine_key("words") != machine_key("words", "problems") != machine_key()
    assert versions_key(["mkdocs"]).startswith("mkdocs 1.")
