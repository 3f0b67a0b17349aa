"""The words of the trade with pictures: each drawing once, below it the words for what it shows, in all languages."""

from __future__ import annotations

from html import escape

from generator.curriculum import CourseContent
from generator.curriculum.reference import Glossary, Term
from generator.figures import draw, svg
from generator.site.markup import block

GLOSSARY = "words-in-pictures"
"""Name of the page."""


def glossary_page(content: CourseContent, glossary: Glossary, language: str) -> str:
    """The page as Markdown.

    Args:
        content: the course.
        glossary: its words.
        language: language code.
    """
    words = content.words[language]
    by_figure: dict[str, list[Term]] = {}
    for term in glossary.terms:
        by_figure.setdefault(term.figure or "", []).append(term)
    without = by_figure.pop("", [])
    in_order = sorted(glossary.terms, key=lambda term: term.term[language].casefold())
    links = " ".join(
        f'<li><a href="#word-{term.id}">{escape(term.term[language], quote=False)}</a></li>' for term in in_order
    )
    parts = [
        f"# {words.say('page.glossary.title')} {{#{GLOSSARY}}}",
        words.say("page.glossary.about"),
        f"## {words.say('page.glossary.all')} {{#all-words}}",
        block(f'<ul class="ts-word-list">{links}</ul>'),
    ]
    values = content.values(glossary.place)
    for figure, terms in by_figure.items():
        scene = draw(figure, values, words)
        parts += [
            f"## {scene.title} {{#words-{figure}}}",
            block(f'<div class="ts-figure ts-word-figure">{svg(scene, f"word-{figure}")}</div>'),
            block(_terms(content, terms, language)),
        ]
    if without:
        parts += [
            f"## {words.say('page.glossary.without')} {{#words-without-a-picture}}",
            block(_terms(content, without, language)),
        ]
    return "\n\n".join(part.strip() for part in parts) + "\n"


def _terms(content: CourseContent, terms: list[Term], language: str) -> str:
    return f'<dl class="ts-words">{" ".join(_term(content, term, language) for term in terms)}</dl>'


def _term(content: CourseContent, term: Term, language: str) -> str:
    others = "".join(
        f'<dd class="ts-other" lang="{other}"><strong>{escape(term.term[other], quote=False)}</strong> '
        f"{escape(term.meaning[other], quote=False)}</dd>"
        for other in content.course.languages
        if other != language
    )
    return (
        f'<div><dt id="word-{term.id}">{escape(term.term[language], quote=False)}</dt>'
        f"<dd>{escape(term.meaning[language], quote=False)}</dd>{others}</div>"
    )
