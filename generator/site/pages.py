"""The course as plain Markdown pages, one set for each language, with the same addresses in all of them.

Everything that needs more than Markdown is one raw HTML block; every heading has an ASCII id of its own, so that a link
from outside holds in every language and after every edit.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from html import escape

from generator.curriculum import (
    Block,
    CautionBlock,
    CourseContent,
    ExerciseBlock,
    FigureBlock,
    FormulaBlock,
    Prose,
    WorkedBlock,
)
from generator.curriculum.models import Module, Practical, Question
from generator.exercises import make_scenario
from generator.exercises.page_data import page_data
from generator.plans import Reckoner, make_reckoner
from generator.problems import Problem
from generator.site import path
from generator.site.cards import Numbered, answers, card, numbered, scenario_card
from generator.site.check_page import CHECK, CertificateCheck, check_page
from generator.site.coverage_page import COVERAGE, coverage_link, coverage_page
from generator.site.faults_page import ALBUM, faults_page
from generator.site.formulas_page import FORMULAS, formulas_page
from generator.site.glossary_page import GLOSSARY, glossary_page
from generator.site.headings import heading_ids, with_ids
from generator.site.markup import block, caution, data_script, figure, formula, paragraphs, worked
from generator.site.mkdocs_run import SiteSettings
from generator.site.mock_page import MOCK_TEST, mock_page
from generator.site.pictures_page import pictures_name, pictures_page, sound_files
from generator.site.planner_page import PLANNER, planner_page
from generator.site.practice_page import PRACTICE, practice_page
from generator.site.readings_page import READINGS, readings_page
from generator.site.reckoner_page import RECKONER, reckoner_page
from generator.site.sheet_maker_page import SHEET_MAKER, sheet_maker_page
from generator.site.stick import LONGEST_NAME, Print, one_file_name
from generator.words import Words

HOME = "index"
ABOUT = "about-this-stick"
NOT_MODULES = frozenset(
    {
        HOME,
        ABOUT,
        ALBUM,
        CHECK,
        COVERAGE,
        FORMULAS,
        GLOSSARY,
        MOCK_TEST,
        PLANNER,
        PRACTICE,
        READINGS,
        RECKONER,
        SHEET_MAKER,
    }
    | {"assets", "search", "sound"}
)
"""Names in a site's folder that no module may take."""


@dataclass(frozen=True)
class _Page:
    """What all pieces of one page need."""

    content: CourseContent
    language: str

    @property
    def words(self) -> Words:
        return self.content.words[self.language]


def _modules(content: CourseContent) -> list[Module]:
    """The modules that are taught, in teaching order."""
    return [module for module in content.modules.values() if not module.retired]


def check(content: CourseContent) -> list[Problem]:
    """Modules whose id is the name of another page, and sheets whose id is the name of another sheet."""
    pages = [("module", name, "the site has a page") for name in content.modules if name in NOT_MODULES]
    sheets = [
        (kind, RECKONER, "there is a sheet")
        for kind, found in (("handout", content.handouts), ("practical", content.practicals))
        if RECKONER in found
    ]
    with_cards = {pictures_name(module): module.id for module in content.modules.values() if module.cards}
    pages += [("module", name, "the site has a page") for name in content.modules if name in with_cards]
    taken = [
        content.problem(kind, name, ("id",), "taken-name", f"{what} '{name}' already", "choose another id")
        for kind, name, what in (*pages, *sheets)
    ]
    return taken + [
        content.problem(
            "module",
            module,
            ("id",),
            "long-name",
            f"the page of its pictures, '{name}', has a name of more than {LONGEST_NAME} letters with its ending",
            "choose a shorter id",
        )
        for name, module in with_cards.items()
        if len(name) + len(".html") > LONGEST_NAME
    ]


def settings(content: CourseContent, language: str) -> SiteSettings:
    """What the site of one language is called and how its pages follow each other."""
    words = content.words[language]
    return SiteSettings(
        language=language,
        title=content.course.title[language],
        footer=words.say("page.not_design"),
        navigation=(
            (words.say("page.home"), f"{HOME}.md"),
            *_module_pages(content, language),
            (words.say("page.practice.title"), f"{PRACTICE}.md"),
            (words.say("page.readings.title"), f"{READINGS}.md"),
            (words.say("page.mock.title"), f"{MOCK_TEST}.md"),
            (words.say("page.sheets.title"), f"{SHEET_MAKER}.md"),
            (words.say("page.planner.title"), f"{PLANNER}.md"),
            (words.say("page.reckoner"), f"{RECKONER}.md"),
            *((title, f"{name}.md") for name, title in _look_up_pages(content, language)),
            (words.say("page.coverage.short"), f"{COVERAGE}.md"),
            (words.say("page.check.title"), f"{CHECK}.md"),
            (words.say("page.about"), f"{ABOUT}.md"),
        ),
        others=tuple(
            (other, content.words[other].say_one_of("language", other))
            for other in content.course.languages
            if other != language
        ),
    )


def _module_pages(content: CourseContent, language: str) -> Iterable[tuple[str, str]]:
    """Title and file of each module's pages."""
    for module in _modules(content):
        yield module.title[language], f"{module.id}.md"
        if module.cards:
            title = content.words[language].say("page.pictures.title", module=module.title[language])
            yield title, f"{pictures_name(module)}.md"


def _look_up_pages(content: CourseContent, language: str) -> Iterable[tuple[str, str]]:
    """Name and title of each page to look something up in."""
    words = content.words[language]
    if content.glossary is not None:
        yield GLOSSARY, words.say("page.glossary.title")
    if content.fault_album is not None:
        yield ALBUM, words.say("page.faults.title")
    yield FORMULAS, words.say("page.formulas.title")


def build_pages(
    content: CourseContent,
    language: str,
    prints: Sequence[Print] = (),
    reckoner: Reckoner | None = None,
    check: CertificateCheck | None = None,
) -> dict[str, bytes]:
    """All pages of one language.

    Args:
        content: the course.
        language: language code.
        prints: PDFs of this language that travel on the stick, to be listed.
        reckoner: the ready reckoner; None makes it.
        check: the means to check certificates; None for a stick without keys.

    Returns:
        Markdown files and recordings by path.
    """
    page = _Page(content, language)
    pages = {
        f"{HOME}.md": _home(page, prints),
        f"{MOCK_TEST}.md": mock_page(content, language),
        f"{PRACTICE}.md": practice_page(content, language, f"{HOME}.html"),
        f"{READINGS}.md": readings_page(page.words),
        f"{SHEET_MAKER}.md": sheet_maker_page(content, language, f"{HOME}.html"),
        f"{PLANNER}.md": planner_page(page.words, f"{HOME}.html"),
        f"{RECKONER}.md": reckoner_page(reckoner or make_reckoner(), page.words),
        f"{CHECK}.md": check_page(page.words, check),
        f"{COVERAGE}.md": coverage_page(content, language),
        f"{ABOUT}.md": _about(page),
    }
    for module in _modules(content):
        pages[f"{module.id}.md"] = _module(page, module, prints)
        if module.cards:
            pages[f"{pictures_name(module)}.md"] = pictures_page(content, module, language)
    if content.glossary is not None:
        pages[f"{GLOSSARY}.md"] = glossary_page(content, content.glossary, language)
    if content.fault_album is not None:
        pages[f"{ALBUM}.md"] = faults_page(content, content.fault_album, language)
    pages[f"{FORMULAS}.md"] = formulas_page(content, _modules(content), language)
    return {name: text.encode("utf-8") for name, text in pages.items()} | sound_files(content, language)


# -------------------------------------------------------------------------------------------------- home


def _home(page: _Page, prints: Sequence[Print]) -> str:
    content, language, words = page.content, page.language, page.words
    modules = "".join(_module_entry(page, module) for module in _modules(content))
    listed = "".join(
        f'<li><a href="../../pdf/{language}/{item.name}.pdf">{escape(item.title)}</a></li>' for item in prints
    )
    parts = [
        _heading(1, content.course.title[language], HOME),
        path.first_steps(content, _modules(content), language, sheets=bool(listed), about=ABOUT),
        content.course.about[language],
        block(f'<div class="ts-invented">{paragraphs(content.course.invented[language])}</div>'),
        block(f"<noscript>{paragraphs(words.say('page.script_off'), 'ts-invented')}</noscript>"),
        _heading(2, words.say("page.modules"), "modules"),
        block(f'<ol class="ts-modules">{modules}</ol>'),
        _heading(2, words.say("page.path.can"), "can-do"),
        path.can_do(content, _modules(content), language),
        _heading(2, words.say("page.path.look_up"), "look-up"),
        path.look_up(words, _look_up_pages(content, language)),
        _heading(2, words.say("page.practice.title"), "practice"),
        words.say("page.practice.about"),
        block(
            f'<p><a class="ts-go" href="{PRACTICE}.html">{escape(words.say("page.practice.open"))}</a> '
            f'<a class="ts-go" href="{READINGS}.html">{escape(words.say("page.readings.open"))}</a></p>'
        ),
        _heading(2, words.say("page.sheets.title"), "sheets"),
        words.say("page.sheets.about"),
        block(f'<p><a class="ts-go" href="{SHEET_MAKER}.html">{escape(words.say("page.sheets.open"))}</a></p>'),
        _heading(2, words.say("page.mock.title"), "mock-test"),
        words.say("page.mock.home"),
        block(f'<p><a class="ts-go" href="{MOCK_TEST}.html">{escape(words.say("page.mock.open_page"))}</a></p>'),
        _heading(2, words.say("page.planner.title"), "planner"),
        words.say("page.planner.about"),
        block(f'<p><a class="ts-go" href="{PLANNER}.html">{escape(words.say("page.planner.open"))}</a></p>'),
        _heading(2, words.say("page.reckoner"), "reckoner"),
        words.say("page.reckoner_about"),
        block(f'<p><a class="ts-go" href="{RECKONER}.html">{escape(words.say("page.open_reckoner"))}</a></p>'),
        _heading(2, words.say("page.coverage.trainers"), "trainers"),
        words.say("page.coverage.trainers_about"),
        coverage_link(words),
        _heading(2, words.say("page.check.title"), "check"),
        words.say("page.check.about"),
        block(f'<p><a class="ts-go" href="{CHECK}.html">{escape(words.say("page.check.open"))}</a></p>'),
        _heading(2, words.say("page.progress.title"), "learner"),
        block('<div class="ts-learner" data-full="yes"></div>'),
    ]
    if listed:
        parts += [
            _heading(2, words.say("page.prints"), "prints"),
            words.say("page.prints_about"),
            block(f"<ul>{listed}</ul>"),
        ]
    parts += ["", f"[{words.say('page.about')}]({ABOUT}.md)"]
    return _joined(parts)


def _module_entry(page: _Page, module: Module) -> str:
    words, language = page.words, page.language
    ids = " ".join(question.id for question in _questions(page, module))
    progress = f'<p class="ts-module-progress" data-questions="{ids}"></p>' if ids else ""
    pictures = f" {path.pictures_link(module, words, language)}" if module.cards else ""
    return (
        f'<li data-module="{module.id}" data-needs="{" ".join(module.needs)}" data-asks="{ids}">'
        f"<h3>{escape(module.title[language], quote=False)}</h3>{paragraphs(module.summary[language])}"
        f"<p>{escape(words.say('page.time'), quote=False)}: {escape(_time(module, words), quote=False)}</p>"
        f"{path.needs_line(page.content, module, language)}{progress}"
        f'<p><a class="ts-go" href="{module.id}.html">{escape(words.say("page.open_module"), quote=False)}'
        f'<span class="ts-hidden">: {escape(module.title[language], quote=False)}</span></a>{pictures}</p></li>'
    )


def _time(module: Module, words: Words) -> str:
    minutes = module.minutes
    return words.say("page.time_of_module", talk=minutes.talk, show=minutes.show, do=minutes.do)


# ------------------------------------------------------------------------------------------------- about


def _about(page: _Page) -> str:
    words, course = page.words, page.content.course
    return _joined(
        [
            _heading(1, words.say("page.about"), "about"),
            _heading(2, words.say("page.about_page.what"), "what"),
            words.say("page.about_page.what_text"),
            course.invented[page.language],
            _heading(2, words.say("page.about_page.not"), "not"),
            words.say("page.about_page.not_text"),
            _heading(2, words.say("page.about_page.sources"), "sources"),
            words.say("page.about_page.sources_text"),
            _heading(2, words.say("page.about_page.keeping"), "keeping"),
            words.say("page.about_page.keeping_text"),
            _heading(2, words.say("page.about_page.phone"), "phone"),
            words.say("page.about_page.phone_text", file=one_file_name(page.language)),
            _heading(2, words.say("page.about_page.licences"), "licences"),
            words.say("page.about_page.licences_text"),
            f"{words.say('page.about_page.version')}: {course.version}",
        ]
    )


# ------------------------------------------------------------------------------------------------ module


def _questions(page: _Page, module: Module) -> list[Question]:
    return [question for question in page.content.questions_of(module.id) if not question.retired]


def _module(page: _Page, module: Module, prints: Sequence[Print]) -> str:
    content, language, words = page.content, page.language, page.words
    scenarios = [content.scenarios[key] for key in module.scenarios if not content.scenarios[key].retired]
    lesson = content.lessons[module.id, language]
    placed = [part.question for part in lesson if isinstance(part, ExerciseBlock)]
    met = {key: place for place, key in enumerate(placed)}  # numbers go up as a reader meets the exercises
    questions = sorted(_questions(page, module), key=lambda question: met.get(question.id, len(met)))
    exercises = numbered(questions, words)
    decided = [key for one in scenarios for key in one.decisions if key in exercises]
    rest = [exercise for key, exercise in exercises.items() if key not in placed and key not in decided]
    parts = [
        _heading(1, module.title[language], module.id),
        module.summary[language],
        path.ways_of_module(content, module, language, prints),
        block(_facts(page, module)),
        block(f'<div class="ts-learner" data-home="{HOME}.html"></div>'),
        _heading(2, words.say("page.outcomes"), "module-outcomes"),
        _bullets(outcome.text[language] for outcome in module.outcomes),
    ]
    if module.tools:
        parts += [
            _heading(2, words.say("page.tools"), "module-tools"),
            block(f'<div class="ts-columns"><ul>{_items(tool[language] for tool in module.tools)}</ul></div>'),
        ]
    in_lesson = {part.caution for part in lesson if isinstance(part, CautionBlock)}
    elsewhere = [one for one in module.cautions if one.id not in in_lesson]
    if elsewhere:  # the others stand in the lesson, where the danger is
        parts.append(_heading(2, words.say("page.cautions"), "module-cautions"))
        parts += [block(caution(one.text[language], words)) for one in elsewhere]
    parts += list(_lesson(page, module, lesson, exercises))
    if exercises:
        parts += [_heading(2, words.say("page.exercises"), "module-exercises"), words.say("page.exercises_about")]
        if placed:
            links = "".join(
                f'<li><a href="#{exercises[key].anchor}">'
                f"{escape(words.say('page.exercise_number', number=exercises[key].number), quote=False)}</a></li>"
                for key in placed
            )
            parts.append(block(f"<p>{escape(words.say('page.exercises_in_lesson'), quote=False)}</p><ul>{links}</ul>"))
        parts += [block(_card(page, module, exercise)) for exercise in rest]
    for one in scenarios:
        title = words.say("page.scenario", title=one.title[language])
        here = content.values(one.place)
        drawing = figure(one.figure, here, words, f"drawing-{one.id}") if one.figure else ""
        parts += [
            _heading(2, title, f"scenario-{one.id}"),
            block(scenario_card(one, here, words, drawing)),
        ]
        decisions = [exercises[key] for key in one.decisions if key in exercises]
        if decisions:
            parts += [
                _heading(3, words.say("page.decisions"), f"decisions-{one.id}"),
                words.say("page.decisions_about"),
            ]
            parts += [block(_card(page, module, exercise)) for exercise in decisions]
    for key in module.practicals:
        practical = content.practicals[key]
        if not practical.retired:
            parts += list(_practical(page, practical))
    if module.ask_a_trainer:
        parts += [
            _heading(2, words.say("page.ask"), "module-ask"),
            words.say("page.ask_about"),
            _bullets(text[language] for text in module.ask_a_trainer),
        ]
    if module.summary_card:
        lines = _items(text[language] for text in module.summary_card)
        parts += [
            _heading(2, words.say("page.summary"), "module-summary"),
            block(f'<div class="ts-summary"><ul>{lines}</ul></div>'),
        ]
    if exercises or scenarios:
        items = [make_scenario(one, content.values(one.place), words) for one in scenarios]
        parts += [
            _heading(2, words.say("page.answers"), "module-answers"),
            block(answers(list(exercises.values()), items, words)),
        ]
    parts.append(block(data_script(page_data(content, module.id, language))))
    return _joined(parts)


def _facts(page: _Page, module: Module) -> str:
    content, language, words = page.content, page.language, page.words
    needs = ", ".join(content.modules[key].title[language] for key in module.needs)
    facts = [
        (words.say("page.time"), _time(module, words)),
        (words.say("page.place"), content.places[module.place].name[language]),
        (words.say("page.needs"), needs or words.say("page.nothing_needed")),
    ]
    rows = "".join(f"<dt>{escape(a, quote=False)}</dt><dd>{escape(b, quote=False)}</dd>" for a, b in facts)
    return f'<dl class="ts-facts">{rows}</dl>'


def _drawing(page: _Page, key: str, place: str, prefix: str) -> str:
    note = page.words.say("page.drawing_of_place", place=page.content.places[place].name[page.language])
    return figure(key, page.content.values(place), page.words, prefix, note)


def _card(page: _Page, module: Module, exercise: Numbered) -> str:
    key = exercise.question.figure
    drawing = _drawing(page, key, module.place, exercise.anchor) if key else ""
    return card(exercise, page.words, drawing)


def _lesson(page: _Page, module: Module, lesson: Sequence[Block], exercises: dict[str, Numbered]) -> Iterable[str]:
    content, language, words = page.content, page.language, page.words
    cautions = {one.id: one for one in module.cautions}
    first = content.lessons[module.id, content.course.languages[0]]
    ids = iter(heading_ids([part.markdown for part in first if isinstance(part, Prose)], "lesson"))
    if not (lesson and isinstance(lesson[0], Prose) and lesson[0].markdown.lstrip().startswith("## ")):
        yield _heading(2, words.say("page.lesson"), "module-lesson")
    for number, part in enumerate(lesson, start=1):
        match part:
            case Prose(markdown=markdown):
                yield with_ids(markdown, ids)
            case FigureBlock(figure=key, place=place):
                yield block(figure(key, content.values(place), words, f"lesson-{number}"))
            case CautionBlock(caution=key):
                yield block(caution(cautions[key].text[language], words))
            case FormulaBlock(quantity=name):
                yield block(formula(name, words))
            case WorkedBlock(quantity=name, place=place, steps=most):
                yield block(worked(name, content.values(place), words, most))
            case ExerciseBlock(question=key):
                yield block(_card(page, module, exercises[key]))


def _practical(page: _Page, practical: Practical) -> Iterable[str]:
    language, words = page.language, page.words
    title = words.say("page.practical", title=practical.title[language])
    yield _heading(2, title, f"practical-{practical.id}")
    yield practical.task[language]
    yield words.say("page.practical_about")
    if practical.tools:
        yield f"**{words.say('page.practical_tools')}**"
        yield block(f'<div class="ts-columns"><ul>{_items(tool[language] for tool in practical.tools)}</ul></div>')
    for text in practical.cautions:
        yield block(caution(text[language], words))
    steps = []
    for step in practical.steps:
        critical = f' <span class="ts-critical">({escape(words.say("page.critical"))})</span>' if step.critical else ""
        tolerance = f'<br><span class="ts-note">{escape(step.tolerance[language])}</span>' if step.tolerance else ""
        steps.append(f"<li>{escape(step.text[language], quote=False)}{critical}{tolerance}</li>")
    yield block(f'<ol class="ts-checklist">{"".join(steps)}</ol>')


# ----------------------------------------------------------------------------------------------- helpers


def _heading(level: int, text: str, anchor: str) -> str:
    return f"{'#' * level} {text} {{#{anchor}}}"


def _bullets(texts: Iterable[str]) -> str:
    return "\n".join(f"- {text}" for text in texts)


def _items(texts: Iterable[str]) -> str:
    return "".join(f"<li>{escape(text, quote=False)}</li>" for text in texts)


def _joined(parts: Iterable[str]) -> str:
    return "\n\n".join(part.strip() for part in parts if part.strip()) + "\n"
