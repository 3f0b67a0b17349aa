"""Text files that people write: what is read, and what each refusal says."""

from pathlib import Path

import pytest

from generator.problems import ProblemsError, decode, read_bytes, read_text


def said(data: bytes, limit: int = 1000) -> list[str]:
    with pytest.raises(ProblemsError) as refusal:
        decode("names.csv", data, limit)
    return [f"{problem.code} {problem}" for problem in refusal.value.problems]


def test_byte_order_mark_is_dropped_and_line_ends_are_made_one() -> None:
    assert decode("names.csv", "\ufeffनाम\r\nआशा\rb\n".encode()) == "नाम\nआशा\nb\n"


def test_joiners_that_hindi_needs_are_kept() -> None:
    assert decode("names.csv", "क्\u200dष\u200c".encode()) == "क्\u200dष\u200c"


def test_wrong_encoding_names_line_and_column_of_the_first_bad_byte() -> None:
    assert said("नाम\r\nJosé\n".encode()[:-3] + b"\xe9\n") == [
        "not-utf-8 names.csv:2:4: the file is not UTF-8 text: byte E9 is no letter in it "
        "(fix: save it again as UTF-8; a spreadsheet program calls this 'CSV UTF-8')"
    ]


def test_column_of_a_bad_byte_is_counted_without_the_byte_order_mark() -> None:
    assert said(b"\xef\xbb\xbfab\xff")[0].startswith("not-utf-8 names.csv:1:3:")


@pytest.mark.parametrize("encoding", ["utf-16", "utf-16-be"])
def test_utf_16_is_refused_in_words(encoding: str) -> None:
    data = "name\nAsha\n".encode(encoding)
    data = data if data[:2] == b"\xff\xfe" else b"\xfe\xff" + data
    assert said(data) == [
        "not-utf-8 names.csv:1:1: the file is UTF-16 text, which is not read here "
        "(fix: save it again as UTF-8; a spreadsheet program calls this 'CSV UTF-8')"
    ]


def test_spreadsheet_saved_under_a_csv_name_is_told() -> None:
    assert said(b"PK\x03\x04\x14\x00") == [
        "not-a-text names.csv:0:0: this is a spreadsheet or a zip file, not a text file "
        "(fix: save it as plain text; from a spreadsheet program as 'CSV UTF-8')"
    ]


def test_all_unseen_characters_are_told_at_once() -> None:
    again = "(fix: delete it and type the text again)"
    assert said("a\x00\nb\x07\n\u202ec\n�\n".encode()) == [
        f"unseen-character names.csv:1:2: a character that can't be seen (U+0000) {again}",
        f"unseen-character names.csv:2:2: a character that can't be seen (U+0007) {again}",
        f"unseen-character names.csv:3:1: a character that can't be seen (U+202E) {again}",
        "lost-letter names.csv:4:1: a letter was lost here when the file was saved (U+FFFD) "
        "(fix: type the letter again and save as UTF-8)",
    ]


def test_a_file_of_unseen_characters_gives_twenty_problems_and_no_more() -> None:
    assert len(said(b"\x00" * 900)) == 20


def test_too_many_bytes_are_refused_in_words() -> None:
    assert said(b"x" * 2_500_000, limit=1_000_000) == [
        "file-too-large names.csv:0:0: the file has 2.5 MB, and at most 1.0 MB are read "
        "(fix: check that it is the right file, or split it)"
    ]


def test_a_large_file_is_refused_before_it_is_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    big = tmp_path / "big.csv"
    big.write_bytes(b"x" * 5000)
    monkeypatch.setattr(Path, "read_bytes", lambda self: pytest.fail("it was read"))
    with pytest.raises(ProblemsError, match="file has"):
        read_bytes(big, "big.csv", limit=4999)


def test_missing_file_and_folder_are_told_apart(tmp_path: Path) -> None:
    with pytest.raises(ProblemsError) as missing:
        read_text(tmp_path / "a.csv", "a.csv")
    assert str(missing.value) == "a.csv:0:0: there is no such file (fix: check the name and the folder)"
    with pytest.raises(ProblemsError) as folder:
        read_text(tmp_path, "b.csv")
    assert folder.value.problems[0].code == "file-unreadable"
