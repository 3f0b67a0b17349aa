"""The mock test's page: practice questions as a scheme's blueprint asks for them; its script runs the test.

It decides nothing: the questions are those of the practice banks, and a certificate needs a paper and watched work.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from generator.curriculum import CourseContent
from generator.curriculum.models import Question, Scheme
from generator.exercises import blueprint_of
from generator.exercises.practice import Card
from generator.site.bank import BANK
from generator.site.markup import block, data_script, paragraphs

MOCK_TEST = "mock-test"
"""Name of the page."""
MOST_QUESTIONS = 20
"""Questions of one test: about an hour, the longest that our learners sit still for."""
MINUTES_A_QUESTION = 3
"""Time to begin with; everyone may take more."""


def shares(points: Mapping[str, int], most: int = MOST_QUESTIONS) -> dict[str, int]:
    """How many questions of each competency a test of at most `most` has, in proportion to a blueprint's points.

    Every competency keeps one question, so that none goes unasked; what is left goes by the largest remainder.

    Args:
        points: points by competency; each at least 1.
        most: questions of the test; at least as many as there are competencies, else each gets one.

    Example:
        >>> shares({"lap": 6, "hoop-count": 3, "safe-steel-work": 1}, 5)
        {'lap': 3, 'hoop-count': 1, 'safe-steel-work': 1}
    """
    total = sum(points.values())
    if total <= most:
        return dict(points)
    exact = {name: one * most / total for name, one in points.items()}
    counts = {name: max(1, int(one)) for name, one in exact.items()}
    for name in sorted(points, key=lambda name: (counts[name] - exact[name], name)):
        if sum(counts.values()) >= most:
            break
        counts[name] += 1
    return counts


def _askable(content: CourseContent, scheme: Scheme) -> list[Question]:
    """Practice questions of a scheme's modules; those that a helper reads aloud need a second person."""
    return [one for module in scheme.modules for one in content.questions_of(module) if one.kind != "spoken"]


def _draws(scheme: Scheme, asked: Sequence[Question]) -> dict[str, list[dict[str, Any]]]:
    """By competency, from which questions how many are drawn: the scheme's own cells, or shares of all it has."""
    found: dict[str, list[dict[str, Any]]] = {}
    for cell in scheme.blueprint:
        fit = [
            one.id
            for one in asked
            if one.competency == cell.competency
            and cell.kind in (None, one.kind)
            and cell.difficulty in (None, one.difficulty)
        ]
        if fit:
            found.setdefault(cell.competency, []).append({"questions": fit, "count": min(cell.count, len(fit))})
    if not scheme.blueprint:
        points = blueprint_of(scheme, [Card(one.id, one.competency, one.difficulty) for one in asked]).points
        for name, count in shares(points).items():
            found[name] = [{"questions": [one.id for one in asked if one.competency == name], "count": count}]
    return found


def mock_data(content: CourseContent, language: str) -> dict[str, Any]:
    """The tests that can be taken, as the page's script takes them.

    Args:
        content: the course.
        language: of the names.

    Returns:
        `schemes`: its id, title, cut and minutes, and for each competency its name, its module, whether it is critical,
        how many questions there are of it, and from which they are drawn.
    """
    schemes = []
    for scheme in content.schemes.values():
        draws = _draws(scheme, _askable(content, scheme))
        home = {
            question.competency: module
            for module in reversed(scheme.modules)
            for question in content.questions_of(module)
        }
        parts = [
            {
                "competency": name,
                "name": content.competencies[name].text[language],
                "module": home[name],
                "critical": name in scheme.critical_competencies,
                "count": sum(draw["count"] for draw in found),
                "draws": found,
            }
            for name, found in draws.items()
        ]
        if parts:
            about = {"id": scheme.id, "title": scheme.title[language], "cut": scheme.rule.written}
            count = sum(draw["count"] for found in draws.values() for draw in found)
            schemes.append(about | {"minutes": scheme.minutes or count * MINUTES_A_QUESTION, "parts": parts})
    return {"schemes": schemes}


def mock_page(content: CourseContent, language: str) -> str:
    """The page as Markdown.

    Args:
        content: the course.
        language: of the page.
    """
    words = content.words[language]
    return "\n\n".join(
        [
            f"# {words.say('page.mock.title')} {{#{MOCK_TEST}}}",
            words.say("page.mock.about"),
            words.say("page.mock.rules"),
            block(f"<noscript>{paragraphs(words.say('page.mock.script_off'), 'ts-invented')}</noscript>"),
            block(
                f'<div class="ts-mock" data-search-exclude="">{data_script({"mock": mock_data(content, language)})}'
                f'<div class="ts-body"></div>{BANK}</div>'
            ),
            "",
        ]
    )
