"""Cards, words in pictures, the fault album and trainers' recordings: read, checked, and told with their place."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.curriculum import CourseContent, Machine, load
from generator.curriculum.check_pictures import MOST_WORDS
from generator.curriculum.recordings import MOST_BYTES
from generator.figures import FIGURES
from tests.curriculum.made_up import BOOK, FILES, write

MACHINE = Machine(BOOK, {"pen-plan": ("side",), "puddle-plan": ("puddle",), "fault-gap": ()})
MODULE = "course/modules/01-fence/module.yaml"
WORDS = {
    "course/words/en.yaml": ("figure:\n", "figure:\n  fault-gap: {title: Four fences, description: One is wrong}\n"),
    "course/words/hi.yaml": ("figure:\n", "figure:\n  fault-gap: {title: चार बाड़, description: एक गलत है}\n"),
}
CARDS = """\
cards:
- id: look
  figure: pen-plan
  text: {en: 'A pen has four sides of {{ value("side") }}.', hi: 'बाड़े की चार भुजाएँ, हर एक {{ value("side") }}।'}
  caution: {en: Mind the thorns. Wear gloves., hi: काँटों से बचें। दस्ताने पहनें।}
- id: gap
  figure: fault-gap
  text: {en: Find the gap., hi: खाली जगह ढूँढें।}
"""
GLOSSARY = """\
format: 1
place: lower-pen
terms:
- id: post
  figure: pen-plan
  term: {en: post, hi: खंभा}
  meaning: {en: It holds the wire., hi: वह तार थामता है।}
- id: gate
  term: {en: gate, hi: फाटक}
  meaning: {en: The way in., hi: अंदर जाने का रास्ता।}
"""
ALBUM = """\
format: 1
place: lower-pen
faults:
- id: gap
  figure: fault-gap
  what: {en: A gap., hi: खाली जगह।}
  why: {en: Haste., hi: जल्दी।}
  hill: {en: Goats walk out., hi: बकरियाँ निकलती हैं।}
  do: {en: Close it., hi: बंद करें।}
"""
MP3 = b"ID3\x04" + bytes(40)


def course(
    root: Path, *edits: tuple[str, str, str], add: dict[str, str] | None = None, sounds: dict[str, bytes] | None = None
) -> Path:
    """The made-up course with cards, words and an album, and with edits."""
    texts = {MODULE: FILES[MODULE] + CARDS, "course/glossary.yaml": GLOSSARY, "course/faults.yaml": ALBUM}
    texts |= {path: FILES[path].replace(*change) for path, change in WORDS.items()}
    for path, old, new in edits:
        assert old in texts[path], f"{path} has no '{old}'"
        texts[path] = texts[path].replace(old, new)
    write(root, add=texts | (add or {}))
    for path, data in (sounds or {}).items():
        (root / path).parent.mkdir(parents=True, exist_ok=True)
        (root / path).write_bytes(data)
    return root


def said(root: Path, *edits: tuple[str, str, str], sounds: dict[str, bytes] | None = None) -> list[str]:
    """Code and text of every problem."""
    loaded = load(course(root, *edits, sounds=sounds), MACHINE)
    return [f"{problem.code} {problem}" for problem in loaded.problems]


def good(root: Path, sounds: dict[str, bytes] | None = None) -> CourseContent:
    """The content of the made-up course."""
    loaded = load(course(root, sounds=sounds), MACHINE)
    assert loaded.content is not None, loaded.problems
    return loaded.content


def sound(name: str) -> str:
    """Path of a recording of the module."""
    return f"course/modules/01-fence/audio/{name}"


def test_cards_words_and_album_come_with_their_numbers(tmp_path: Path) -> None:
    content = good(tmp_path)
    assert [card.id for card in content.modules["fence"].cards] == ["look", "gap"]
    assert content.modules["fence"].cards[0].text["en"] == "A pen has four sides of 4.5\u00a0m."
    assert content.glossary is not None
    assert [term.figure for term in content.glossary.terms] == ["pen-plan", None]
    assert content.fault_album is not None
    assert content.fault_album.faults[0].hill["hi"] == "बकरियाँ निकलती हैं।"
    assert content.recordings == {}


def test_a_course_without_any_of_them_still_loads(tmp_path: Path) -> None:
    content = load(write(tmp_path), Machine(BOOK, {"pen-plan": ("side",), "puddle-plan": ("puddle",)})).content
    assert content is not None
    assert content.modules["fence"].cards == ()
    assert content.glossary is None
    assert content.fault_album is None


def test_recordings_are_found_by_module_card_and_language(tmp_path: Path) -> None:
    content = good(tmp_path, {sound("look.en.mp3"): MP3, sound("gap.hi.ogg"): b"OggS" + bytes(9)})
    assert {key: found.ending for key, found in content.recordings.items()} == {
        ("fence", "look", "en"): "mp3",
        ("fence", "gap", "hi"): "ogg",
    }
    assert content.recordings["fence", "look", "en"].data == MP3


@pytest.mark.parametrize(
    ("data", "name"),
    [
        (MP3, "look.en.mp3"),
        (b"\xff\xfb\x90", "look.en.mp3"),
        (b"\x00\x00\x00\x18ftypM4A ", "look.en.m4a"),
        (b"RIFF\x00\x00\x00\x00WAVEfmt ", "look.en.wav"),
    ],
)
def test_each_kind_of_sound_is_taken(tmp_path: Path, data: bytes, name: str) -> None:
    assert said(tmp_path, sounds={sound(name): data}) == []


def test_recordings_that_say_nothing_or_too_much_are_told(tmp_path: Path) -> None:
    found = said(
        tmp_path,
        sounds={
            sound("look.mp3"): MP3,
            sound("look.hi.flac"): b"fLaC",
            sound("look.hi.mp3"): b"just text",
            sound("lok.en.mp3"): MP3,
            sound("gap.fr.mp3"): MP3,
            sound("gap.en.mp3"): MP3,
            sound("gap.en.ogg"): b"OggS",
            sound("look.en.wav"): b"RIFF0000WAVE" + bytes(MOST_BYTES),
        },
    )
    how = "name it card.language.ending, as in stand-the-angles.en.mp3; endings: mp3, m4a, ogg, wav"
    folder = "course/modules/01-fence/audio"
    assert found == [
        f"recorded-twice {folder}/gap.en.ogg:0:0: 'gap.en.mp3' is the same card in the same language "
        "(fix: keep one of them)",
        f"unknown-language {folder}/gap.fr.mp3:0:0: unknown language 'fr' (fix: the languages are en, hi)",
        f"unknown-card {folder}/lok.en.mp3:0:0: the module has no card 'lok' (fix: did you mean 'look'?)",
        f"file-too-large {folder}/look.en.wav:0:0: the file has 0.5 MB, and at most 0.5 MB are read "
        "(fix: check that it is the right file, or split it)",
        f"recording-name {folder}/look.hi.flac:0:0: the name does not say which card and language this is (fix: {how})",
        f"no-sound {folder}/look.hi.mp3:0:0: the file holds no sound of the kind 'mp3' "
        "(fix: record it again, or give it the ending of its kind)",
        f"recording-name {folder}/look.mp3:0:0: the name does not say which card and language this is (fix: {how})",
    ]


def test_a_card_with_an_unknown_or_undrawable_figure_is_told(tmp_path: Path) -> None:
    found = said(tmp_path, (MODULE, "figure: pen-plan\n  text", "figure: pen-plann\n  text"))
    assert found == [f"unknown-figure {MODULE}:18:11: unknown figure 'pen-plann' (fix: did you mean 'pen-plan'?)"]
    place = "course/places/lower-pen.yaml"
    dry = {place: FILES[place].replace("  rain: 20\n", "")}
    root = course(tmp_path, (MODULE, "figure: pen-plan\n  text", "figure: puddle-plan\n  text"), add=dry)
    found = [str(problem) for problem in load(root, MACHINE).problems if problem.code == "not-at-place"]
    assert (
        f"{MODULE}:18:11: the drawing needs 'puddle', which is not known at 'lower-pen' "
        "(fix: add rain to the givens of the place 'lower-pen')"
    ) in found


def test_a_card_says_one_short_sentence(tmp_path: Path) -> None:
    long = " ".join(["word"] * (MOST_WORDS + 1))
    found = said(tmp_path, (MODULE, "en: Find the gap.", f"en: {long}"))
    assert [line.partition(" (")[0] for line in found] == [
        f"long-sentence {MODULE}:23:14: a sentence of 16 words; a card takes at most 15"
    ]
    assert said(tmp_path, (MODULE, "en: Find the gap.", f"en: {long.removesuffix(' word')}")) == []
    found = said(tmp_path, (MODULE, "hi: खाली जगह ढूँढें।", "hi: रुकें। खाली जगह ढूँढें।"))
    assert [line.split(" ")[0] for line in found] == ["many-sentences"]
    found = said(tmp_path, (MODULE, "Mind the thorns.", "Stop. Mind the thorns."))
    assert [line.split(" ")[0] for line in found] == ["many-sentences"]


def test_a_number_in_a_sentence_counts_as_itself_and_its_unit(tmp_path: Path) -> None:
    words = " ".join(["word"] * (MOST_WORDS - 2))
    call = '{{ value("side") }}'
    assert said(tmp_path, (MODULE, "en: Find the gap.", f"en: '{words} {call}'")) == []
    found = said(tmp_path, (MODULE, "en: Find the gap.", f"en: '{words} word {call}'"))
    assert [line.split(" ")[0] for line in found] == ["long-sentence"]


def test_an_id_twice_and_a_typed_number_are_told_on_cards_too(tmp_path: Path) -> None:
    assert [line.split(" ")[0] for line in said(tmp_path, (MODULE, "- id: gap", "- id: look"))] == ["duplicate-id"]
    found = said(tmp_path, (MODULE, "en: Find the gap.", "en: Find the gap of 3 m."))
    assert [line.split(" ")[0] for line in found] == ["typed-number"]


def test_words_and_album_are_checked_like_all_content(tmp_path: Path) -> None:
    glossary, album = "course/glossary.yaml", "course/faults.yaml"
    found = said(
        tmp_path,
        (glossary, "lower-pen", "lower-pn"),
        (glossary, "- id: gate", "- id: post"),
        (glossary, "figure: pen-plan", "figure: plan"),
        (album, "figure: fault-gap", "figure: pen-plan"),
        (album, "en: Close it.", "en: Close it within 2 days."),
        (album, ", hi: जल्दी।", ""),
    )
    assert sorted(line.split(" ")[0] for line in found) == [
        "duplicate-id",
        "missing-translation",
        "unknown-figure",
        "unknown-place",
    ]
    found = said(
        tmp_path,
        (album, "figure: fault-gap", "figure: pen-plan"),
        (album, "en: Close it.", "en: Close it within 2 days."),
    )
    assert sorted(line.split(" ")[0] for line in found) == ["no-fault-figure", "typed-number"]
    twice = ALBUM.partition("faults:\n")[2].replace("- id: gap", "- id: gap-again")
    found = said(tmp_path, (album, ALBUM, ALBUM + twice))
    assert [line.split(" ")[0] for line in found] == ["drawn-twice"]


def test_the_shipped_course_has_cards_words_and_every_fault_in_its_album() -> None:
    content = load(Path(__file__).parents[2]).content
    assert content is not None
    assert 8 <= len(content.modules["frame"].cards) <= 12
    assert content.glossary is not None
    assert len(content.glossary.terms) >= 40
    assert content.fault_album is not None
    drawn = [fault.figure for fault in content.fault_album.faults]
    assert sorted(drawn) == sorted(key for key in FIGURES if key.startswith("fault-"))


def test_an_edited_word_leaves_the_modules_sheets_as_they_are(tmp_path: Path) -> None:
    sources = good(tmp_path).sources_of("fence")
    assert MODULE in sources
    assert "course/glossary.yaml" not in sources
    assert "course/faults.yaml" not in sources
