"""The English of the course is spelled right, and spelled in one way."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

from tests.content import english

ROOT = Path(__file__).parents[2]
LIST = Path(__file__).with_name("english-words.txt")
OTHER_SPELLINGS = frozenset(
    {
        "color", "colors", "center", "centers", "gray", "liter", "liters", "labor", "laborer", "neighbor", "mold",
        "molds", "plow", "aluminum", "fiber", "vapor", "traveled", "leveled", "leveling", "organize", "recognize",
        "analyze", "millimeter", "millimeters", "centimeter", "centimeters", "kilometer", "program", "draft", "tire",
    }
)  # fmt: skip
"""American spellings: the course keeps to British ones, as its readers learn them at school."""
MEANT = {"program": "of a computer", "draft": "the state of a scheme"}


def reviewed() -> list[str]:
    lines = LIST.read_text("utf-8").splitlines()
    return [word for line in lines if not line.startswith("#") for word in line.split()]


def test_every_word_was_looked_at() -> None:
    found = english.unknown(ROOT, reviewed())
    told = ", ".join(f"{word} ({name})" for word, name in found.items())
    assert not found, f"read each word; mend it, or put it into {LIST.name} where it is right: {told}"


def test_no_word_stands_twice_in_a_row() -> None:
    assert english.doubled(ROOT) == []


def test_words_are_spelled_the_british_way() -> None:
    said = {word for _, text in english.texts(ROOT) for word in english.words(text)}
    assert said & (OTHER_SPELLINGS - MEANT.keys()) == set()


def test_the_list_is_in_order_and_says_nothing_twice() -> None:
    assert reviewed() == sorted(set(reviewed()))


def test_a_slip_is_found_and_a_form_of_a_known_word_is_not(tmp_path: Path) -> None:
    (tmp_path / "course").mkdir()
    (tmp_path / "course" / "a.yaml").write_text(
        "text: {en: The the morter is rammed and ready., hi: morter}\nid: colom\n", "utf-8"
    )
    (tmp_path / "course" / "b.en.md").write_text('{{ value("wall_thicknes") }} Mortar is carried, `xyzq`.\n', "utf-8")
    right = ["the", "mortar", "is", "ram", "and", "ready", "carry"]
    assert english.unknown(tmp_path, right) == {"morter": "course/a.yaml"}
    assert english.doubled(tmp_path) == ["course/a.yaml: The the"]


def test_regular_forms_double_and_drop_letters() -> None:
    assert {"rammed", "ramming", "rams"} <= set(english.forms("ram"))
    assert {"carries", "carried", "carrying"} <= set(english.forms("carry"))
    assert {"brushes", "mixes", "taped", "taping"} <= {
        form for word in ("brush", "mix", "tape") for form in english.forms(word)
    }
    assert "raming" not in set(english.forms("ram"))
    assert english.known(Counter({"goat": english.OFTEN, "gaot": 1}), ["pen"]) >= {"goat", "goats", "pens"}
    assert "gaot" not in english.known(Counter({"goat": english.OFTEN, "gaot": 1}), ["pen"])
