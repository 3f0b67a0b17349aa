"""What a mock test draws from: a scheme's blueprint, practice questions only."""

import json
import re
from dataclasses import replace
from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from generator.site.mock_page import MINUTES_A_QUESTION, MOST_QUESTIONS, mock_data, shares
from generator.site.one_file import opened
from generator.site.packing import unpacked
from tests.site.course_stick import built_once, course

NAMES = [f"competency-{letter}" for letter in "abcdefghijkl"]


@given(points=st.dictionaries(st.sampled_from(NAMES), st.integers(1, 60), min_size=1), most=st.integers(12, 40))
def test_shares_follow_the_points_and_leave_no_competency_out(points: dict[str, int], most: int) -> None:
    found = shares(points, most)
    total = sum(points.values())
    assert list(found) == list(points)
    assert all(1 <= found[name] <= points[name] for name in points)
    assert sum(found.values()) <= total
    if total <= most:
        assert found == points
    else:
        raised = sum(1 for one in points.values() if one * most / total < 1)
        assert most - 1 <= sum(found.values()) <= most + raised
        assert all(abs(found[name] - points[name] * most / total) <= 1 for name in points)


def test_a_test_asks_what_the_schemes_blueprint_asks_and_nothing_else() -> None:
    content = course()
    for language in content.course.languages:
        for scheme, found in zip(content.schemes.values(), mock_data(content, language)["schemes"], strict=True):
            known = {one.id: one for module in scheme.modules for one in content.questions_of(module)}
            for part in found["parts"]:
                ids = [key for draw in part["draws"] for key in draw["questions"]]
                assert {known[key].kind for key in ids} <= {"number", "choice", "order", "match", "spot"}
                assert {known[key].competency for key in ids} == {part["competency"]}
                wanted = sum(cell.count for cell in scheme.blueprint if cell.competency == part["competency"])
                assert part["count"] == wanted
                assert part["critical"] == (part["competency"] in scheme.critical_competencies)
            assert {part["competency"] for part in found["parts"]} == {cell.competency for cell in scheme.blueprint}
            assert (found["cut"], found["minutes"]) == (scheme.rule.written, scheme.minutes)


def test_a_scheme_without_a_blueprint_draws_from_everything_that_its_modules_ask() -> None:
    content = course()
    bare = {key: one.model_copy(update={"blueprint": (), "minutes": 0}) for key, one in content.schemes.items()}
    found = mock_data(replace(content, schemes=bare), "en")["schemes"][0]
    count = sum(part["count"] for part in found["parts"])
    assert 10 <= count <= MOST_QUESTIONS
    assert found["minutes"] == count * MINUTES_A_QUESTION


def test_a_cell_with_too_few_questions_asks_those_that_there_are() -> None:
    content = course()
    scheme = next(iter(content.schemes.values()))
    cell = scheme.blueprint[0].model_copy(update={"count": 20})
    changed = {scheme.id: scheme.model_copy(update={"blueprint": (cell,)})}
    (found,) = mock_data(replace(content, schemes=changed), "en")["schemes"]
    (draw,) = found["parts"][0]["draws"]
    assert draw["count"] == len(draw["questions"]) < 20


def test_in_the_one_file_the_test_asks_the_modules_own_questions_and_carries_none_itself() -> None:
    question = course().questions_of("frame")[0]
    for part in built_once().parts.values():
        text = opened(part.one_file)
        assert "site-only" not in text
        assert question.id in carried(article(text, "frame"))["questions"]
        own = carried(article(text, "mock-test"))
        assert set(own) == {"mock"}
        assert question.id in str(own["mock"])
        assert 'src="assets/bank.js"' in part.site["mock-test.html"].decode("utf-8")
        script = part.site["assets/bank.js"].decode("ascii")
        assert question.id in json.loads(unpacked(script.split('"')[1]))["questions"]


def article(text: str, name: str) -> str:
    """A part of the one file."""
    start = text.index(f'<article id="{name}"')
    return text[start : text.index("</article>", start)]


def carried(markup: str) -> dict[str, Any]:
    """What the one data block of a part carries."""
    (block,) = re.findall(r'<script type="([^"]+)" class="ts-data"[^>]*>([^<]*)</script>', markup)
    found: dict[str, Any] = json.loads(unpacked(block[1]) if block[0] == "text/plain" else block[1])
    return found
