"""Drawings told shorter for the one file: the same coordinates, to the tenth."""

from __future__ import annotations

import math
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.site.slim_svg import slim

hundredths = st.integers(-60_000, 60_000).map(lambda number: number / 100)
Points = list[tuple[float, float]]


def same_to_the_tenth(found: Points, wanted: Points) -> bool:
    """Whether no corner is further off than half a tenth, however long the way to it was."""
    return all(math.dist(one, other) <= 0.08 for one, other in zip(found, wanted, strict=True))


def shown(number: float) -> str:
    return f"{number:.2f}".rstrip("0").rstrip(".")


def walked(path: str) -> list[tuple[float, float]]:
    """The corners that a path goes through, read by a second hand."""
    x = y = 0.0
    found = []
    for command, text in re.findall(r"([MmlhvHVz])([^MmlhvHVz]*)", path):
        numbers = [float(one) for one in re.findall(r"-?(?:\d+\.?\d*|\.\d+)", text)]
        if command in "Mml":
            for place in range(0, len(numbers), 2):
                absolute = command == "M" and place == 0
                x = numbers[place] if absolute else x + numbers[place]
                y = numbers[place + 1] if absolute else y + numbers[place + 1]
                found.append((round(x, 2), round(y, 2)))
        elif command == "h":
            x += numbers[0]
            found.append((round(x, 2), round(y, 2)))
        elif command == "v":
            y += numbers[0]
            found.append((round(x, 2), round(y, 2)))
    return found


@given(
    points=st.lists(st.tuples(hundredths, hundredths), min_size=2, max_size=9),
    kind=st.sampled_from(["polygon", "polyline"]),
)
def test_corners_stay_where_they_are(points: list[tuple[float, float]], kind: str) -> None:
    text = " ".join(f"{shown(x)},{shown(y)}" for x, y in points)
    found = slim(f'<g class="fig-a" fill="#111"><{kind} points="{text}"/></g>')
    path = re.search(r'd="([^"]+)"', found)
    assert path is not None
    assert same_to_the_tenth(walked(path[1]), points)
    assert path[1].endswith("z") == (kind == "polygon")


@given(lines=st.lists(st.tuples(hundredths, hundredths, hundredths, hundredths), min_size=2, max_size=6))
def test_lines_stay_where_they_are(lines: list[tuple[float, float, float, float]]) -> None:
    text = "".join(f'<line x1="{shown(a)}" y1="{shown(b)}" x2="{shown(c)}" y2="{shown(d)}"/>' for a, b, c, d in lines)
    found = re.findall(r'd="([^"]+)"', slim(f'<g stroke="#111" fill="none">{text}</g>'))
    assert len(found) == 1
    assert same_to_the_tenth(walked(found[0]), [corner for a, b, c, d in lines for corner in ((a, b), (c, d))])


@given(dots=st.lists(st.tuples(hundredths, hundredths), min_size=2, max_size=8))
def test_dots_stay_where_they_are(dots: list[tuple[float, float]]) -> None:
    text = "".join(f'<circle cx="{shown(x)}" cy="{shown(y)}" r="0.75"/>' for x, y in dots)
    found = slim(f'<g class="fig-m" stroke="none" fill="#5a5347">{text}</g>')
    path = re.search(r'<path stroke="#5a5347" stroke-width="1.5" stroke-linecap="round" d="([^"]+)"/>', found)
    assert path is not None
    assert same_to_the_tenth(walked(path[1])[::2], dots)


@pytest.mark.parametrize(
    "markup",
    [
        '<g stroke="#111" fill="none"><circle cx="1" cy="2" r="3"/><circle cx="5" cy="2" r="3"/></g>',
        '<g stroke="none" fill="#111"><circle cx="1" cy="2" r="3"/></g>',
        '<g stroke="none" fill="#111"><circle cx="1" cy="2" r="3" id="a"/><circle cx="5" cy="2" r="3" id="b"/></g>',
        '<g stroke="#111"><line x1="1" y1="2" x2="3" y2="4"/></g>',
        '<g><text x="1">A</text></g><p><line x1="1" y1="2" x2="3" y2="4"/><line x1="1" y1="2" x2="3" y2="4"/></p>',
    ],
)
def test_what_can_not_be_told_shorter_is_left_alone(markup: str) -> None:
    assert slim(markup) == markup
