"""The shipped words, for tests of what is said in both languages."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

import yaml

from generator.words import Words


def _flat(tree: Mapping[str, Any], start: str = "") -> dict[str, Any]:
    texts: dict[str, Any] = {}
    for key, value in tree.items():
        plural = isinstance(value, dict) and "other" in value
        texts.update(
            _flat(value, f"{start}{key}.") if isinstance(value, dict) and not plural else {f"{start}{key}": value}
        )
    return texts


_FOLDER = Path(__file__).parents[2] / "course" / "words"
WORDS = {
    language: Words(language, _flat(yaml.safe_load((_FOLDER / f"{language}.yaml").read_text(encoding="utf-8"))))
    for language in ("en", "hi")
}
