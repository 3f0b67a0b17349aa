"""What a mock test draws from: a scheme's blueprint, practice questions only."""

from hypothesis import given
from hypothesis import strategies as st

from generator.site.mock_page import MOST_QUESTIONS, mock_data, shares
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


def test_a_test_asks_what_the_scheme_asks_and_nothing_else() -> None:
    content = course()
    for language in content.course.languages:
        for scheme, found in zip(content.schemes.values(), mock_data(content, language)["schemes"], strict=True):
            ids = [key for part in found["parts"] for key in part["questions"]]
            known = {one.id: one for module in scheme.modules for one in content.questions_of(module)}
            assert len(ids) == len(set(ids))
            assert {known[key].kind for key in ids} <= {"number", "choice", "order", "match", "spot"}
            assert all(
                known[key].competency == part["competency"] for part in found["parts"] for key in part["questions"]
            )
            critical = {part["competency"] for part in found["parts"] if part["critical"]}
            assert critical == set(scheme.critical_competencies)
            assert all(0 < part["count"] <= len(part["questions"]) for part in found["parts"])
            assert sum(part["count"] for part in found["parts"]) <= MOST_QUESTIONS
            assert found["cut"] == scheme.rule.written


def test_the_one_file_carries_each_question_once_though_the_test_asks_them_too() -> None:
    for language, part in built_once().parts.items():
        text = part.one_file.decode("utf-8")
        assert "site-only" not in text
        question = course().questions_of("frame")[0]
        data = text[text.index("<main") : text.index("<footer")]
        assert data.count(f'"id":"{question.id}"') == 1, language
        assert 'class="ts-mock"' in data
