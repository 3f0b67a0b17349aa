"""The practice page: one question after the other, each with the reason why it comes now, and how ready someone is.

What to ask follows from the learner's dated answers alone (`generator/exercises/practice.py`); it decides nothing.
"""

from __future__ import annotations

from html import escape

from generator.curriculum import CourseContent
from generator.exercises import blueprint_of, pool_data, pool_of
from generator.exercises.practice import MOST_POINTS
from generator.site.bank import BANK
from generator.site.markup import block, data_script, paragraphs

PRACTICE = "practice"
"""Name of the page."""


def practice_page(content: CourseContent, language: str, home: str) -> str:
    """The page as Markdown.

    Args:
        content: the course.
        language: of the page.
        home: address of the page where the learner is chosen.
    """
    words = content.words[language]
    data = data_script({"practice": practice_data(content, language)})
    parts = [
        f"# {words.say('page.practice.title')} {{#{PRACTICE}}}",
        words.say("page.practice.about"),
        block(f"<noscript>{paragraphs(words.say('page.practice.script_off'), 'ts-invented')}</noscript>"),
        block(f'<div class="ts-learner" data-home="{escape(home)}"></div>'),
        block(f'<div class="ts-practice">{data}<div class="ts-body" data-search-exclude=""></div>{BANK}</div>'),
    ]
    return "\n\n".join(part.strip() for part in parts) + "\n"


def practice_data(content: CourseContent, language: str) -> dict[str, object]:
    """What the page's script reads beside the questions: what needs what, and what each paper asks."""
    modules = [module for module in content.modules.values() if not module.retired]
    pool = pool_of(content)
    return {
        "pool": pool_data(pool),
        "names": {one.id: one.text[language] for one in content.competencies.values()},
        "modules": [
            {"title": module.title[language], "questions": asked}
            for module in modules
            if (asked := [card.question for card in pool_of(content, [module.id]).cards])
        ],
        "schemes": [_scheme(content, name, language) for name in content.schemes],
    }  # fmt: skip


def _scheme(content: CourseContent, name: str, language: str) -> dict[str, object]:
    scheme = content.schemes[name]
    paper = blueprint_of(scheme, pool_of(content, scheme.modules).cards)
    most = sum(paper.points.values())
    share = min(1.0, MOST_POINTS / most) if most else 1.0  # a bank is larger than a paper: the shares stay
    points = [[competency, max(1, int(count * share))] for competency, count in paper.points.items()]
    return {
        "title": scheme.title[language],
        "points": points,
        "cut": paper.cut,
        "critical": [one for one in paper.critical if one in paper.points],
    }
