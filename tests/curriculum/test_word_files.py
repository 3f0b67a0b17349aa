"""The words files: the same keys and slots in every language, plural forms complete, nothing without a word."""

from pathlib import Path

from tests.curriculum.made_up import FILES, loaded, said

WORDS = "course/words/en.yaml"
WORDS_HI = "course/words/hi.yaml"


def test_faults_of_both_files_are_told_at_once(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (WORDS, "home: Welcome", "home_page: Welcome"),
        (WORDS, "m: m, ", "m: 12, "),
        (WORDS_HI, 'other: "{count} बकरियाँ"', "many: x"),
        (WORDS_HI, "दुगुना।", '""'),
    ) == [
        "wrong-type course/words/en.yaml:2:11: the word 'unit.m' is no text "
        "(fix: write a text; put a number or true in quotes)",
        "missing-word course/words/en.yaml:12:1: the word 'page.home' is missing in language 'en' "
        "(fix: add it; course/words/hi.yaml has it)",
        "wrong-type course/words/hi.yaml:8:29: the word 'misconception.puddle_doubled.mistake' is no text "
        "(fix: write a text; put a number or true in quotes)",
        "missing-word course/words/hi.yaml:12:1: the word 'page.home_page' is missing in language 'hi' "
        "(fix: add it; course/words/en.yaml has it)",
        "missing-plural-form course/words/hi.yaml:14:3: 'page.goats' lacks the plural form 'other' "
        "(fix: add a line 'other: ...')",
        "unknown-plural-form course/words/hi.yaml:14:32: unknown plural form 'many' of 'page.goats' "
        "(fix: choose one of: one, other)",
    ]


def test_slots_differ_or_are_none(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (WORDS_HI, "{place} में", "{site} में"),
        (WORDS_HI, '"{count} बकरी"', '"{गिनती} बकरी"'),
        (WORDS_HI, '"{count} बकरियाँ"', '"बकरियाँ"'),
    ) == [
        "different-slots course/words/hi.yaml:13:9: 'page.home' has the slots {site} here and {place} in "
        "course/words/en.yaml (fix: use the same slots in every language)",
        "different-slots course/words/hi.yaml:14:10: 'page.goats' has the slots none here and {count} in "
        "course/words/en.yaml (fix: use the same slots in every language)",
        "unknown-slot course/words/hi.yaml:14:10: '{गिनती}' in the word 'page.goats' is no slot "
        "(fix: name a slot with small Latin letters and underlines: {count})",
    ]


def test_everything_that_the_book_and_the_drawings_show_has_its_word(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (WORDS, ", puddle: puddle}", "}"),
        (WORDS_HI, ", puddle: पानी}", "}"),
        (WORDS, ", mm: mm}", "}"),
        (WORDS_HI, ", mm: मिमी}", "}"),
        (WORDS, "mistake: Doubled., ", ""),
        (WORDS_HI, "mistake: दुगुना।, ", ""),
        (WORDS, "title: Puddle, ", ""),
        (WORDS_HI, "title: पानी, ", ""),
        (WORDS, ", depth: depth of the rain", ""),
        (WORDS_HI, ", depth: बारिश की गहराई", ""),
    ) == [
        "missing-word course/words/en.yaml:2:1: there is no word for the unit 'mm' "
        "(fix: add 'unit.mm' in every language)",
        "missing-word course/words/en.yaml:4:1: there is no word for the quantity 'puddle' "
        "(fix: add 'quantity.puddle' in every language)",
        "missing-word course/words/en.yaml:8:3: there is no word for the misconception 'puddle_doubled' "
        "(fix: add 'misconception.puddle_doubled.mistake' in every language)",
        "missing-word course/words/en.yaml:11:3: there is no word for the figure 'puddle-plan' "
        "(fix: add 'figure.puddle-plan.title' in every language)",
        "missing-word course/words/en.yaml:15:1: there is no word for the in_formula 'depth' "
        "(fix: add 'in_formula.depth' in every language)",
    ]


def test_a_words_file_needs_its_format(tmp_path: Path) -> None:
    assert said(tmp_path, (WORDS, "format: 1\n", ""), (WORDS_HI, "format: 1", "format: 2")) == [
        "wrong-value course/words/en.yaml:1:1: the words file needs 'format: 1' "
        "(fix: write 'format: 1' as the first line)",
        "newer-format course/words/hi.yaml:1:9: format 2 is newer than this tool reads "
        "(fix: use a newer version of the tool)",
    ]


def test_units_with_signs_are_plain_keys(tmp_path: Path) -> None:
    content = loaded(
        tmp_path,
        add={
            WORDS: FILES[WORDS].replace("mm: mm", 'mm: mm, "kg/m**3": kg/m³'),
            WORDS_HI: FILES[WORDS_HI].replace("mm: मिमी", 'mm: मिमी, "kg/m**3": किलो/मी³'),
        },
    ).content
    assert content is not None
    assert content.words["en"].say_one_of("unit", "kg/m**3") == "kg/m³"
