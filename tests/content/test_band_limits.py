"""The limits of a village build that lessons say are those that the calculation module decides by."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.calculations.bands import VILLAGE_DEPTH, VILLAGE_PULL, VILLAGE_SPAN, VILLAGE_VOLUME
from generator.formula import show_full

MODULES = Path(__file__).parents[2] / "course" / "modules"
SAID = (
    (VILLAGE_VOLUME, ("m³", "घन मीटर")),
    (VILLAGE_DEPTH, ("m", "मीटर")),
    (VILLAGE_PULL, ("m²", "वर्ग मीटर")),
    (VILLAGE_SPAN, ("m", "मीटर")),
)
"""Each limit, and its unit as a sign or in words."""


@pytest.mark.parametrize("module", ["01-why-thin-walls", "02-how-much-water"])
@pytest.mark.parametrize("language", ["en", "hi"])
def test_the_typed_limits_are_those_of_the_policy(module: str, language: str) -> None:
    lesson = (MODULES / module / f"lesson.{language}.md").read_text(encoding="utf-8")
    for limit, units in SAID:
        assert any(f'plain("{show_full(float(limit))} {unit}")' in lesson for unit in units)
