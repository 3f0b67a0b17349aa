"""All questions, scenarios and drawings of a language in one packed script, for the pages that ask across all modules.

The practice page, the mock test and the sheet maker load it; a module's own page carries its own questions, and so the
one file has them all already.
"""

from __future__ import annotations

from generator.curriculum import CourseContent
from generator.exercises.page_data import page_data
from generator.site.markup import figure
from generator.site.packing import as_json, packed
from generator.site.slim_svg import slim
from generator.words import Words

BANK_SCRIPT = "bank.js"
"""Name of the script among the site's assets."""
BANK = f'<!--site-only--><script src="assets/{BANK_SCRIPT}"></script><!--/site-only-->'
"""What a page of the site that asks across all modules carries."""


def bank_script(content: CourseContent, language: str) -> bytes:
    """The script that gives such pages their questions.

    Args:
        content: the course.
        language: of the questions.
    """
    return f'Tankschool.bank = "{packed(as_json(bank_data(content, language)))}";\n'.encode("ascii")


def bank_data(content: CourseContent, language: str) -> dict[str, dict[str, object]]:
    """By kind (`questions`, `scenarios`, `drawings`, `drawing_of`) and id, all that is taught."""
    found: dict[str, dict[str, object]] = {"questions": {}, "scenarios": {}}
    modules = [module.id for module in content.modules.values() if not module.retired]
    for module in modules:
        made = page_data(content, module, language)
        for kind, entries in found.items():
            entries |= made[kind]
    return found | _drawings(content, modules, content.words[language])


def _drawings(content: CourseContent, modules: list[str], words: Words) -> dict[str, dict[str, object]]:
    """The questions' drawings, each told once, and which question has which."""
    drawing_of: dict[str, object] = {}
    drawn: dict[str, object] = {}
    for module in modules:
        for question in content.questions_of(module):
            if question.figure and not question.retired:
                place = content.modules[module].place
                name = f"{question.figure}-{place}"
                drawing_of[question.id] = name
                if name not in drawn:
                    drawn[name] = slim(figure(question.figure, content.values(place), words, name))
    return {"drawings": drawn, "drawing_of": drawing_of}
