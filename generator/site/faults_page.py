"""The fault album: look at each drawing first, then open what is wrong, why, what comes of it, and what to do."""

from __future__ import annotations

from html import escape

from generator.curriculum import CourseContent
from generator.curriculum.reference import AlbumFault, FaultAlbum
from generator.figures import draw, hot_areas, svg
from generator.figures.kinds import FIGURES
from generator.site.markup import block, caution
from generator.words import Words

ALBUM = "fault-album"
"""Name of the page."""


def fault_anchor(fault: AlbumFault) -> str:
    """Id of a fault's heading."""
    return f"fault-{fault.id}"


def faults_page(content: CourseContent, album: FaultAlbum, language: str) -> str:
    """The page as Markdown.

    Args:
        content: the course.
        album: its faults.
        language: language code.
    """
    words = content.words[language]
    parts = [
        f"# {words.say('page.faults.title')} {{#{ALBUM}}}",
        words.say("page.faults.about"),
        block(caution(words.say("page.faults.stop"), words)),
    ]
    values = content.values(album.place)
    for number, fault in enumerate(album.faults, start=1):
        scene = draw(fault.figure, values, words)
        heading = words.say("page.faults.look", number=number, title=scene.title)
        parts += [
            f"## {heading} {{#{fault_anchor(fault)}}}",
            block(f'<div class="ts-figure ts-look-figure">{svg(scene, f"album-{fault.id}")}</div>'),
            block(_answer(fault, number, words, language)),
        ]
    parts.append(block(f'<p class="ts-note">{escape(words.say("page.faults.source"), quote=False)}</p>'))
    return "\n\n".join(part.strip() for part in parts) + "\n"


def _answer(fault: AlbumFault, number: int, words: Words, language: str) -> str:
    spot = FIGURES[fault.figure].spot
    letters = hot_areas()[fault.figure].items() if spot else ()
    letter = next(letter for letter, name in letters if spot and name == spot.fault)
    rows = (
        (words.say("page.faults.where"), letter),
        (words.say("page.faults.what"), fault.what[language]),
        (words.say("page.faults.why"), fault.why[language]),
        (words.say("page.faults.hill"), fault.hill[language]),
        (words.say("page.faults.do"), fault.do[language]),
    )
    told = "".join(f"<dt>{escape(a, quote=False)}</dt><dd>{escape(b, quote=False)}</dd>" for a, b in rows)
    opener = escape(words.say("page.faults.open"), quote=False)
    which = escape(words.say("page.faults.number", number=number), quote=False)
    return (
        f'<details class="ts-look"><summary>{opener}<span class="ts-hidden">: {which}</span></summary>'
        f'<dl class="ts-told">{told}</dl></details>'
    )
