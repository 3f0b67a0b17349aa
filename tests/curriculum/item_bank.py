"""The bank of the made-up course with other questions in it: for the tests of the rules of writing items."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import yaml

from generator.curriculum import warnings
from tests.curriculum.made_up import FILES, loaded

BANK = "quizzes/banks/fence.yaml"


def texts(english: str, hindi: str = "") -> dict[str, str]:
    return {"en": english, "hi": hindi or "कैसे करें?"}


def choice(name: str, stem: str, *options: str, hindi: str = "", **more: Any) -> dict[str, Any]:
    """A choice whose first option is right; an option is 'English | Hindi', else its Hindi is of one length."""
    made = []
    for position, option in enumerate(options):
        english, _, said = option.partition(" | ")
        made.append({"text": texts(english, said or f"जवाब {'कखगघ'[position]}"), "right": position == 0})
    return {
        "id": name, "competency": "counting", "kind": "choice", "text": texts(stem, hindi), "options": made, **more
    }  # fmt: skip


def number(name: str, stem: str, **more: Any) -> dict[str, Any]:
    return {
        "id": name, "competency": "counting", "kind": "number", "asks": "post_count",
        "given": {"side": {"from": 2, "to": 4, "step": 0.5}, "gap": 0.5},
        "misconceptions": ["one_side_only"], "text": texts(stem, "भुजा {side}, दूरी {gap}। कितने?"), **more,
    }  # fmt: skip


def written(*questions: dict[str, Any]) -> str:
    """The bank's file: the questions, after the one that the lesson asks for."""
    first, _, _ = FILES[BANK].partition("- id: gate")
    return first + yaml.safe_dump(list(questions), allow_unicode=True)


def problems(folder: Path, *questions: dict[str, Any]) -> list[tuple[str, str]]:
    """Code and sentence of each problem of a course with these questions."""
    return [(one.code, one.what) for one in loaded(folder, add={BANK: written(*questions)}).problems]


def warned(folder: Path, *questions: dict[str, Any]) -> list[tuple[str, str]]:
    """Code and sentence of each warning, without what the lesson's own question is told."""
    content = loaded(folder, add={BANK: written(*questions)}).content
    assert content is not None
    return [(one.code, one.what) for one in warnings(content) if "'posts' can" not in one.what]
