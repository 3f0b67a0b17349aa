"""The learner's path on the home page: where to start, where to go on, what comes before what, what is learned already.

Without a script it is a list with links; the page's script adds what this learner did.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Sequence
from html import escape

from generator.curriculum import CourseContent
from generator.curriculum.models import Module
from generator.site.markup import block
from generator.site.pictures_page import minutes, pictures_name
from generator.site.stick import Print
from generator.words import Words


def first_steps(content: CourseContent, modules: Sequence[Module], language: str, *, sheets: bool, about: str) -> str:
    """What stands below the home page's title: start, go on, and the ways to the rest of the page.

    Args:
        content: the course.
        modules: those that are taught, in order.
        language: language code.
        sheets: whether the page lists sheets to print.
        about: name of the page about the stick.
    """
    words = content.words[language]
    titles = {module.id: module.title[language] for module in modules}
    titles |= {
        pictures_name(module): words.say("page.pictures.title", module=module.title[language])
        for module in modules
        if module.cards
    }
    drawn = [module for module in modules if module.cards]
    start = next((module for module in drawn if not module.needs), drawn[0] if drawn else None)
    parts = []
    if start is not None:
        label = words.say("page.path.start", minutes=minutes(start))
        parts.append(f"<p>{_go(f'{pictures_name(start)}.html', label)}</p>")
        told = words.say("page.path.start_about", module=start.title[language])
        parts.append(f'<p class="ts-note">{escape(told, quote=False)}</p>')
    elif modules:
        parts.append(f"<p>{_go(f'{modules[0].id}.html', words.say('page.path.start_lesson'))}</p>")
    parts.append('<p class="ts-continue" hidden></p>')
    links = [("#can-do", words.say("page.path.can"))]
    links += [("#prints", words.say("page.prints"))] if sheets else []
    links.append((f"{about}.html", words.say("page.about")))
    ways = " ".join(f'<a href="{address}">{escape(label, quote=False)}</a>' for address, label in links)
    named = escape(json.dumps(titles, ensure_ascii=False, sort_keys=True), quote=True)
    return block(f'<div class="ts-path" data-titles="{named}">{"".join(parts)}<p class="ts-ways">{ways}</p></div>')


def can_do(content: CourseContent, modules: Sequence[Module], language: str) -> str:
    """What the learner can do already: outcomes whose exercises were all right at least once."""
    words = content.words[language]
    items = []
    for module in modules:
        for outcome in module.outcomes:
            ids = [one.id for one in content.questions_of(module.id) if one.competency == outcome.competency]
            if ids:
                text = escape(outcome.text[language], quote=False)
                items.append(f'<li data-right="{" ".join(ids)}" hidden>{text}</li>')
    none = escape(words.say("page.path.can_none"), quote=False)
    return block(
        f'<div class="ts-can"><p class="ts-can-none">{none}</p><ul class="ts-can-list">{"".join(items)}</ul></div>'
    )


def look_up(words: Words, pages: Iterable[tuple[str, str]]) -> str:
    """Ways to the pages to look something up in.

    Args:
        words: the page's language.
        pages: name and title of each.
    """
    items = " ".join(f"<li>{_go(f'{name}.html', title)}</li>" for name, title in pages)
    return block(f'<p>{escape(words.say("page.path.look_up_about"), quote=False)}</p><ul class="ts-shelf">{items}</ul>')


def needs_line(content: CourseContent, module: Module, language: str) -> str:
    """What to finish before a module, and room for what the script finds."""
    words = content.words[language]
    links = ", ".join(
        f'<a href="{need}.html">{escape(content.modules[need].title[language], quote=False)}</a>'
        for need in module.needs
    )
    text = links or escape(words.say("page.nothing_needed"), quote=False)
    label = escape(words.say("page.needs"), quote=False)
    return f'<p>{label}: {text}</p><p class="ts-module-state" role="status"></p>'


def ways_of_module(content: CourseContent, module: Module, language: str, prints: Sequence[Print]) -> str:
    """A module's ways to its pictures and to its printed sheets.

    Args:
        content: the course.
        module: one of its modules.
        language: language code.
        prints: PDFs of this language.
    """
    words = content.words[language]
    own = [item for item in prints if belongs(content, module, item)]
    parts = [f'<span class="ts-stop" hidden data-stop="{module.id}"></span>']
    if module.cards:
        parts.append(f"<p>{_go(f'{pictures_name(module)}.html', words.say('page.path.pictures'))}</p>")
    if own:
        items = "".join(
            f'<li><a href="../../pdf/{language}/{item.name}.pdf">{escape(item.title, quote=False)}</a></li>'
            for item in own
        )
        parts.append(f"<p>{escape(words.say('page.path.sheets'), quote=False)}</p><ul>{items}</ul>")
    return block("".join(parts))


def pictures_link(module: Module, words: Words, language: str) -> str:
    """The way to a module's pictures, as it stands beside others: named in full for people who hear it."""
    label = escape(words.say("page.path.pictures"), quote=False)
    title = escape(module.title[language], quote=False)
    spoken = f'<span class="ts-hidden">: {title}</span>'
    return f'<a class="ts-go ts-quiet" href="{pictures_name(module)}.html">{label}{spoken}</a>'


def belongs(content: CourseContent, module: Module, item: Print) -> bool:
    """Whether a sheet is one of a module's own: its handouts, its practicals, its worksheets and keys."""
    handouts = [name for name, handout in content.handouts.items() if handout.module == module.id]
    return item.name in (*handouts, *module.practicals) or item.name.startswith(f"{module.id}-")


def _go(address: str, label: str) -> str:
    return f'<a class="ts-go" href="{address}">{escape(label, quote=False)}</a>'
