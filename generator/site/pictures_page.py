"""A module in pictures: one drawing and one short sentence at a time, with a trainer's voice where there is one.

Without a script the cards stand below each other, numbered, to be read and printed; the page's script shows one at a
time, with big targets, and lets a browser that knows the language read the sentence aloud.
"""

from __future__ import annotations

from html import escape

from generator.curriculum import CourseContent
from generator.curriculum.models import Card, Module
from generator.figures import draw, svg
from generator.site.faults_page import ALBUM, fault_anchor
from generator.site.markup import block
from generator.words import Words

MINUTES_A_CARD = 2
"""To look, to say what is seen, to hear the sentence, and to look again."""


def pictures_name(module: Module) -> str:
    """Name of a module's picture page."""
    return f"{module.id}-pictures"


def minutes(module: Module) -> int:
    """How long a learner takes for a module's pictures."""
    return MINUTES_A_CARD * len(module.cards)


def sound_files(content: CourseContent, language: str) -> dict[str, bytes]:
    """The recordings that travel beside the pages of one language, by path.

    Args:
        content: the course.
        language: language code.
    """
    return {
        _sound_path(module, card, recording.ending): recording.data
        for (module, card, said), recording in sorted(content.recordings.items())
        if said == language
    }


def _sound_path(module: str, card: str, ending: str) -> str:
    return f"sound/{module}/{card}.{ending}"


def pictures_page(content: CourseContent, module: Module, language: str) -> str:
    """The page as Markdown.

    Args:
        content: the course.
        module: with cards.
        language: language code.
    """
    words = content.words[language]
    title = words.say("page.pictures.title", module=module.title[language])
    cards = "".join(_card(content, module, card, number, language) for number, card in enumerate(module.cards, start=1))
    parts = [
        f"# {title} {{#{pictures_name(module)}}}",
        words.say("page.pictures.about"),
        block(f'<ol class="ts-pics" data-stop="{pictures_name(module)}">{cards}</ol>'),
        block(
            f'<p><a class="ts-go" href="{module.id}.html">{escape(words.say("page.pictures.module"), quote=False)}'
            f'<span class="ts-hidden">: {escape(module.title[language], quote=False)}</span></a></p>'
        ),
    ]
    return "\n\n".join(part.strip() for part in parts) + "\n"


def _card(content: CourseContent, module: Module, card: Card, number: int, language: str) -> str:
    words = content.words[language]
    scene = draw(card.figure, content.values(module.place), words)
    inside = [
        f'<p class="ts-pic-number" aria-hidden="true">{number}</p>',
        f'<div class="ts-pic-drawing">{svg(scene, f"card-{card.id}")}</div>',
        f'<p class="ts-pic-text">{escape(card.text[language], quote=False)}</p>',
    ]
    if card.caution:
        inside.append(
            f'<p class="ts-pic-care"><strong>{escape(words.say("page.caution"), quote=False)}</strong> '
            f"<span>{escape(card.caution[language], quote=False)}</span></p>"
        )
    album = content.fault_album
    inside += [
        f'<p class="ts-pic-more"><a href="{ALBUM}.html#{fault_anchor(fault)}">'
        f"{escape(words.say('page.pictures.answer'), quote=False)}</a></p>"
        for fault in (album.faults if album else ())
        if fault.figure == card.figure
    ]
    inside.append(_sound(content, module, card, language, words))
    return f'<li class="ts-pic" id="card-{card.id}">{"".join(inside)}</li>'


def _sound(content: CourseContent, module: Module, card: Card, language: str, words: Words) -> str:
    recording = content.recordings.get((module.id, card.id, language))
    if recording is None:
        return ""
    label = escape(words.say("page.pictures.recorded"))
    path = _sound_path(module.id, card.id, recording.ending)
    return f'<audio class="ts-pic-sound" controls preload="none" aria-label="{label}" src="{path}"></audio>'
