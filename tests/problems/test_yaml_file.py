"""Strict YAML: the old traps do not bite, and every fault has its line, column and fix."""

import pytest
import yaml

from generator.problems import ProblemsError, read_yaml, yaml_file


def said(text: str) -> list[str]:
    with pytest.raises(ProblemsError) as refusal:
        read_yaml("course/made-up.yaml", text.encode())
    return [f"{problem.code} {str(problem).removeprefix('course/made-up.yaml:')}" for problem in refusal.value.problems]


@pytest.mark.parametrize(
    ("typed", "read"),
    [
        ("no", "no"), ("yes", "yes"), ("on", "on"), ("Off", "Off"), ("y", "y"), ("True", "True"),
        ("true", True), ("false", False), ("null", None), ("~", None), ("", None),
        ("012", "012"), ("0", 0), ("-12", -12), ("+3", 3), ("0o14", "0o14"), ("0x1F", "0x1F"), ("1_000", "1_000"),
        ("12:30", "12:30"), ("1:2.5", "1:2.5"), ("2026-01-31", "2026-01-31"), ("1,5", "1,5"),
        ("1e3", 1000.0), ("1.0e-3", 0.001), ("0.125", 0.125), (".5", 0.5), ("5.", 5.0), ("00.5", "00.5"),
        (".inf", ".inf"), (".nan", ".nan"), ("1.2.3", "1.2.3"), ("=", "="), ("<<", "<<"), ("'7'", "7"),
        ("!!str 7", "7"),
    ],
)  # fmt: skip
def test_only_true_false_null_and_decimal_numbers_are_not_text(typed: str, read: object) -> None:
    value = read_yaml("a.yaml", f"key: {typed}".encode()).value["key"]
    assert value == read
    assert type(value) is type(read)


def test_keys_are_always_texts() -> None:
    assert read_yaml("a.yaml", b"no: 1\n12: 2\ntrue: 3\nnull: 4").value == {"no": 1, "12": 2, "true": 3, "null": 4}


def test_merge_key_is_an_ordinary_key() -> None:
    assert read_yaml("a.yaml", b"<<: {a: 1}").value == {"<<": {"a": 1}}


def test_pure_parser_reads_the_same(monkeypatch: pytest.MonkeyPatch) -> None:
    text = "a: [1, {b: no}]\nहिंदी: |\n  एक\n  दो\nc: 'it''s'\n".encode()
    quick = read_yaml("a.yaml", text)
    monkeypatch.setattr(yaml_file, "_LOADER", yaml_file._strict(yaml.SafeLoader))
    pure = read_yaml("a.yaml", text)
    assert (pure.value, pure.keys) == (quick.value, quick.keys)
    with pytest.raises(ProblemsError, match="nested deeper"):
        read_yaml("a.yaml", b"[" * 5000)


def test_lines_and_columns_of_keys_values_and_pieces_of_text() -> None:
    file = read_yaml("a.yaml", "list:\n  - हिंदी: {b: 1}\n    text: >\n      एक {x}\n      दो {x}\n".encode())
    assert file.line_and_column(("list", 0)) == (2, 5)
    assert file.line_and_column(("list", 0, "हिंदी", "b")) == (2, 13)
    assert file.value_line_and_column(("list", 0, "हिंदी", "b")) == (2, 16)
    assert file.line_and_column(("list", 0, "हिंदी", "missing", "deeper")) == (2, 5)
    assert file.snippet_line_and_column(("list", 0, "text"), "{x}") == (4, 10)
    assert file.snippet_line_and_column(("list", 0, "text"), "{x}", 1) == (5, 10)
    assert file.snippet_line_and_column(("list", 0, "text"), "not there") == (3, 11)


def test_duplicate_keys_are_all_told() -> None:
    assert said("a: 1\nb:\n  c: 1\n  c: 2\na: 3\n") == [
        "duplicate-key 4:3: the key 'c' stands twice; the first is on line 3 (fix: keep one of them)",
        "duplicate-key 5:1: the key 'a' stands twice; the first is on line 1 (fix: keep one of them)",
    ]


def test_aliases_are_refused_and_never_expanded() -> None:
    bomb = "a: &a [x, x]\n" + "".join(
        f"{now}: &{now} [*{before}, *{before}]\n"
        for before, now in zip("abcdefghijklmno", "bcdefghijklmnop", strict=True)
    )
    problems = said(bomb)
    assert problems[0] == (
        "yaml-alias 1:4: '&a' stands for text from elsewhere, which is not read here "
        "(fix: write the text out; put a text that starts with & in quotes)"
    )
    assert len(problems) == 46


def test_a_list_that_holds_itself_is_refused() -> None:
    assert [problem.split(" ")[0] for problem in said("a: &a [*a]")] == ["yaml-alias", "yaml-alias"]


def test_stars_and_ampersands_inside_texts_are_no_aliases() -> None:
    assert read_yaml("a.yaml", b"a: 2 * 3 & more\nb: '*bold*'\nc: |\n  *one*\n").value["b"] == "*bold*"


def test_tags_keys_and_numbers_that_are_not_read_here_are_told_at_once() -> None:
    assert said(
        "a: !!python/object:os.system x\n[b]: 1\nc: 1e999\nd: !mine {}\ne: 99999999999999999999\nf: !!int x\n"
    ) == [
        "yaml-tag 1:4: '!!python/object:os.system' is a tag, which is not read here (fix: remove it)",
        "key-not-text 2:1: a key has to be one word, not a list (fix: write 'key: value')",
        "number-too-large 3:4: 1e999 is too large to count with (fix: check the number)",
        "yaml-tag 4:4: '!mine' is a tag, which is not read here (fix: remove it)",
        "number-too-large 5:4: 99999999999999999999 is too large to count with (fix: check the number)",
        "yaml-tag 6:4: '!!int' is a tag, which is not read here (fix: remove it)",
    ]


@pytest.mark.parametrize(
    ("text", "problem"),
    [
        ("", "empty-file 0:0: the file is empty (fix: write its content, or delete it)"),
        ("# only a note\n", "empty-file 0:0: the file is empty (fix: write its content, or delete it)"),
        (
            "a: 1\nen: The wall: high\n",
            "not-yaml 2:13: a colon and a space stand where no new key can start "
            "(fix: put a text with a colon in quotes, or line the key up with its neighbours)",
        ),
        ("a:\n\t- b", "not-yaml 2:1: a tab stands where spaces are needed (fix: replace tabs by spaces)"),
        ("a: @x", "not-yaml 1:4: a text can't start with @ (fix: put the whole text in quotes)"),
        ("a: *x", "not-yaml 1:4: a text starts with * (fix: put the whole text in quotes)"),
        ("a: 'x\nb: 1\n", "not-yaml 1:4: a quote is opened and never closed (fix: close the quote)"),
        ("a: [1, 2", "not-yaml 1:4: a bracket is opened and never closed (fix: close it, or put the text in quotes)"),
        (
            "en: {wall_height} is high",
            "not-yaml 1:19: a text that starts with { is no text without quotes (fix: put the whole text in quotes)",
        ),
        (
            "a: |\n  text\nmore\n",
            "not-yaml 3:1: this line has no 'key: value' "
            "(fix: add the colon and a space, or indent the line as part of the text above)",
        ),
        (
            "- a\nb: 1",
            "not-yaml 2:1: a list ends here without its indentation "
            "(fix: start the line with '- ', or move it out of the list)",
        ),
        (
            "a: - b",
            "not-yaml 1:4: a list starts on the line of its key "
            "(fix: write the list below its key, each item after '- ')",
        ),
        ("a: 1\n---\nb: 1", "not-yaml 2:1: a second document starts here with '---' (fix: remove the line)"),
        ('a: "\\q"', "not-yaml 1:5: a backslash stands in double quotes (fix: use single quotes)"),
    ],
)  # fmt: skip
def test_a_file_that_is_not_yaml_is_told_in_plain_words(text: str, problem: str) -> None:
    assert said(text) == [problem]


def test_nesting_is_limited() -> None:
    assert said("a: " + "[" * 60 + "]" * 60) == [
        "too-deep 1:43: lists and keys are nested deeper than 40 levels (fix: nest them less)"
    ]
    assert said("[" * 5000)[0].endswith("lists and keys are nested too deep (fix: nest them less)")


def test_ten_megabytes_of_junk_are_refused() -> None:
    assert said("x: [" * 2_500_000) == [
        "file-too-large 0:0: the file has 10.0 MB, and at most 1.0 MB are read "
        "(fix: check that it is the right file, or split it)"
    ]
