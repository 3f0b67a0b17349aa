"""What is taught, practised and asked where: for whoever plans a workshop or answers for a certificate."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from html import escape
from itertools import groupby

from generator.curriculum import CourseContent, Prose
from generator.curriculum.coverage import CoveredOutcome, coverage
from generator.curriculum.models import Module, WorkedQuestion
from generator.site.headings import heading_ids
from generator.site.markup import block
from generator.words import Words

COVERAGE = "what-is-covered"
"""Name of the page."""


def coverage_page(content: CourseContent, language: str) -> str:
    """The page as Markdown: a table for each module.

    Args:
        content: the course.
        language: language code.
    """
    words = content.words[language]
    covered = coverage(content, language)
    parts = [
        f"# {words.say('page.coverage.title')} {{#{COVERAGE}}}",
        words.say("page.coverage.about"),
        _sums(covered, words),
    ]
    for name, group in groupby(covered, key=lambda one: one.module.id):
        rows = list(group)
        parts.append(f"## {rows[0].module.title[language]} {{#covered-{name}}}")
        parts.append(block(_table(content, rows, language)))
    return "\n\n".join(part.strip() for part in parts) + "\n"


def coverage_link(words: Words) -> str:
    """The way to the page from the trainers' part of the home page."""
    return block(f'<p><a class="ts-go" href="{COVERAGE}.html">{_plain(words.say("page.coverage.open"))}</a></p>')


def _sums(covered: Sequence[CoveredOutcome], words: Words) -> str:
    told = words.say(
        "page.coverage.sums",
        taught=sum(one.taught for one in covered),
        practised=sum(one.practised for one in covered),
        hands=sum(bool(one.steps) for one in covered),
        assessed=sum(one.assessed for one in covered),
        schemes=sum(bool(one.schemes) for one in covered),
    )
    return f"{words.say('page.coverage.all', count=len(covered))} {told}"


def _table(content: CourseContent, rows: Sequence[CoveredOutcome], language: str) -> str:
    words = content.words[language]
    names = ("outcome", "taught", "practised", "assessed")
    head = " ".join(f'<th scope="col">{_plain(words.say_one_of("page.coverage", name))}</th>' for name in names)
    body = " ".join(_row(content, one, language) for one in rows)
    label = _plain(rows[0].module.title[language])
    return (
        f'<div class="ts-scroll" tabindex="0" role="region" aria-label="{label}"><table class="ts-table ts-covered">'
        f"<thead><tr>{head}</tr></thead> <tbody>{body}</tbody></table></div>"
    )


def _row(content: CourseContent, one: CoveredOutcome, language: str) -> str:
    words = content.words[language]
    critical = content.competencies[one.outcome.competency].critical
    mark = f' <span class="ts-critical">({_plain(words.say("page.coverage.critical"))})</span>' if critical else ""
    cells = (_taught(content, one), _practised(one, language, words), _assessed(one, language, words))
    names = (words.say_one_of("page.coverage", name) for name in ("taught", "practised", "assessed"))
    told = " ".join(
        f'<td data-label="{escape(name)}">{_list(cell, words)}</td>' for name, cell in zip(names, cells, strict=True)
    )
    return f'<tr><th scope="row">{_plain(one.outcome.text[language])}{mark}</th> {told}</tr>'


def _taught(content: CourseContent, one: CoveredOutcome) -> list[str]:
    ids = _section_ids(content, one.module)
    return [f'<a href="{one.module.id}.html#{ids[at.number]}">{_plain(at.title)}</a>' for at in one.sections]


def _section_ids(content: CourseContent, module: Module) -> tuple[str, ...]:
    """Ids of the lesson's headings: named after the first language, as on the module's page."""
    first = content.lessons[module.id, content.course.languages[0]]
    return heading_ids([part.markdown for part in first if isinstance(part, Prose)], "lesson")


def _practised(one: CoveredOutcome, language: str, words: Words) -> list[str]:
    told = []
    critical = words.say("page.coverage.step_critical")
    for practical, steps in groupby(one.steps, key=lambda pair: pair[0]):
        texts = [f"{step.text[language]} ({critical})" if step.critical else step.text[language] for _, step in steps]
        told.append(_named(words.say("page.coverage.hands"), practical.title[language], "; ".join(texts)))
    for key, pairs in (("jobs", one.parts), ("decisions", one.decisions)):
        for scenario in dict.fromkeys(pair[0].id for pair in pairs):
            title = next(pair[0].title[language] for pair in pairs if pair[0].id == scenario)
            count = sum(pair[0].id == scenario for pair in pairs)
            told.append(_named(words.say_one_of("page.coverage", key), f"{title} ({count})"))
    if one.in_lesson:
        told.append(_plain(words.say("page.coverage.in_lesson", count=len(one.in_lesson))))
    return told


def _assessed(one: CoveredOutcome, language: str, words: Words) -> list[str]:
    if not one.questions:
        return []
    numbers = sum(isinstance(question, WorkedQuestion) for question in one.questions)
    told = [_plain(words.say("page.coverage.questions", count=len(one.questions)))]
    if numbers:
        told[0] += ", " + _plain(words.say("page.coverage.numbers", count=numbers))
    told += [
        _plain(words.say("page.coverage.scheme", count=count, title=scheme.title[language]))
        for scheme, count in one.schemes
    ]
    return told


def _named(what: str, title: str, rest: str = "") -> str:
    return f"<strong>{_plain(what)}</strong>: {_plain(title)}" + (f"<br>{_plain(rest)}" if rest else "")


def _list(lines: Iterable[str], words: Words) -> str:
    items = " ".join(f"<li>{line}</li>" for line in lines)
    return f"<ul>{items}</ul>" if items else _plain(words.say("page.coverage.missing"))


def _plain(text: str) -> str:
    return escape(text, quote=False)
