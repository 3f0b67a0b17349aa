"""Readings of a built panel: drawn by a seed, or the learner's own; asked about, marked, and judged within limits."""

from __future__ import annotations

from generator.exercises.readings import DRAWN
from generator.site.markup import block, caution, data_script, paragraphs
from generator.words import Words

READINGS = "panel-readings"
"""Name of the page."""


def readings_page(words: Words) -> str:
    """The page as Markdown, in the language of the words."""
    data = data_script({"readings": {"drawn": DRAWN}})
    parts = [
        f"# {words.say('page.readings.title')} {{#{READINGS}}}",
        words.say("page.readings.about"),
        block(caution(words.say("page.readings.caution"), words)),
        block(f"<noscript>{paragraphs(words.say('page.readings.script_off'), 'ts-invented')}</noscript>"),
        block(f'<div class="ts-readings">{data}<div class="ts-body" data-search-exclude=""></div></div>'),
        f"## {words.say('page.readings.limits')} {{#limits}}",
        words.say("page.readings.limits_text"),
    ]
    return "\n\n".join(part.strip() for part in parts) + "\n"
