"""The sheet maker's page: a pasted class list becomes personal worksheets and keys, printed from the browser.

Whoever has no tool at hand gets the same numbers as `sheets --for` gives, and a record that `mark` reads. What is
pasted stays in the page: nothing is sent, and no name is kept in the browser.
"""

from __future__ import annotations

from html import escape

from generator import VERSION
from generator.curriculum import CourseContent
from generator.curriculum.models import Module, SpotQuestion
from generator.exercises.set_data import set_data
from generator.site.bank import BANK
from generator.site.markup import block, data_script, figure, paragraphs
from generator.site.slim_svg import slim
from generator.words import Words

SHEET_MAKER = "sheet-maker"
"""Name of the page."""
_SHEET_WORDS = ("work", "answer", "choose_one", "choose_several", "put_in_order", "first", "last", "match", "scenario",
                "number", "day", "how", "not_a_design", "key", "key_only_for_trainers", "key_scenario", "script",
                "wrong_answer", "mistake", "hill")  # fmt: skip
_EXERCISE_WORDS = ("aids", "write_the_unit", "read_aloud")


def sheet_maker_page(content: CourseContent, language: str, home: str) -> str:
    """The page as Markdown.

    Args:
        content: the course.
        language: of the page.
        home: address of the page that leads here.
    """
    words = content.words[language]
    made = sheet_maker_data(content, language)
    del made["questions"], made["scenarios"]  # they are in the bank
    data = data_script({"sheet_maker": made})
    parts = [
        f"# {words.say('page.sheets.title')} {{#{SHEET_MAKER}}}",
        words.say("page.sheets.about"),
        words.say("page.sheets.private"),
        block(f"<noscript>{paragraphs(words.say('page.sheets.script_off'), 'ts-invented')}</noscript>"),
        block(
            f'<div class="ts-sheets" data-home="{escape(home)}">{data}'
            f'<div class="ts-body" data-search-exclude=""></div>{BANK}</div>'
        ),
    ]
    return "\n\n".join(part.strip() for part in parts) + "\n"


def sheet_maker_data(content: CourseContent, language: str) -> dict[str, object]:
    """What the page's script reads: the questions in all languages, and the words that sheets carry."""
    made = set_data(content, language, f"tankschool {VERSION}")
    modules = [module for module in content.modules.values() if module.id in made["modules"]]
    return made | {
        "titles": {
            other: {module.id: module.title[other] for module in modules} for other in content.course.languages
        },
        "competencies": {one.id: one.text[language] for one in content.competencies.values()},
        "shown": {module.id: _shown(content, module) for module in modules},
        "invented": {other: content.course.invented[other] for other in content.course.languages},
        "words": {other: _words(content.words[other]) for other in content.course.languages},
        "tongues": {
            other: content.words[other].say_one_of("language", other) for other in content.course.languages
        },
        "figures": _figures(content, modules),
    }  # fmt: skip


def _shown(content: CourseContent, module: Module) -> list[str]:
    """Competencies that the module's questions show, in their order."""
    asked = [question for question in content.questions_of(module.id) if not question.retired]
    return list(dict.fromkeys(question.competency for question in asked))


def _words(words: Words) -> dict[str, object]:
    wanted = {f"sheet.{name}" for name in _SHEET_WORDS} | {f"exercise.{name}" for name in _EXERCISE_WORDS}
    return {
        key: text
        for family in ("sheet", "exercise", "unit")
        for key, text in words.family(family)
        if key in wanted or key.startswith(("unit.", "exercise.aid."))
    }


def _figures(content: CourseContent, modules: list[Module]) -> dict[str, dict[str, str]]:
    """Drawings in which a fault is to be found, by question and language: without them there is nothing to answer."""
    return {
        question.id: {
            language: slim(figure(question.figure, content.values(module.place), content.words[language], question.id))
            for language in content.course.languages
        }
        for module in modules
        for question in content.questions_of(module.id)
        if isinstance(question, SpotQuestion) and not question.retired
    }
