"""The site's products of a whole course: what goes into each, so that only what changed is made again."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import partial
from pathlib import Path

from generator.calculations import BOOK
from generator.curriculum import CourseContent
from generator.exercises import practice_script, readings_script
from generator.exercises.page_data import marker_script, page_data
from generator.exercises.set_data import printed_set_script
from generator.figures import stylesheet
from generator.plans import Reckoner, make_reckoner
from generator.site.bank import BANK_SCRIPT, bank_script
from generator.site.check_page import CertificateCheck
from generator.site.fonts import font_files
from generator.site.licences import TRAVELLING, licences
from generator.site.markup import formula, formula_words
from generator.site.mkdocs_run import SHARED_SETTINGS, SiteSettings, run_mkdocs, search_worker, theme_scripts
from generator.site.one_file import OneFileParts, one_file
from generator.site.packing import as_json, packed
from generator.site.pages import build_pages, settings
from generator.site.planner_page import planner_names
from generator.site.products import Products, key_of, machine_key, versions_key
from generator.site.progress import Progress, silent
from generator.site.stick import LanguageParts, Print
from generator.words import FOR_ONE, Words

_ASSETS = Path(__file__).parent / "assets"
_FORMULA_SCRIPT = Path(__file__).parents[1] / "formula" / "formula.js"
_STYLES = ("fonts.css", "common.css", "theme.css", "looks.css", "looks.js", "mark.svg")
_SCRIPTS_AFTER = (
    "page.js", "progress.js", "code.js", "learner.js", "card.js", "scenario.js", "mock.js", "path.js", "pictures.js",
    "planner.js", "sheet-maker.js", "practice-page.js", "readings-page.js",
)  # fmt: skip
_FAMILIES = ("page", "exercise", "practice", "quantity", "unit", FOR_ONE)
"""Words that travel into the browser."""
_SELDOM_FAMILIES = ("misconception",)
"""Words that a page wants only after a wrong answer: they travel packed."""
_RENDERERS = ("mkdocs", "mkdocs-material", "markdown", "jinja2", "pymdown-extensions", "pygments")
_PLANNERS = ("numpy", "scipy")
_FONT_MAKERS = ("fontpkg-mukta", "fonttools", "brotli")


def styles() -> dict[str, bytes]:
    """The pages' looks, and what must run before a page is drawn, by name."""
    return {
        **{name: (_ASSETS / name).read_bytes() for name in _STYLES},
        "figures.css": stylesheet().encode("utf-8"),
    }


def course_script(content: CourseContent, language: str) -> bytes:
    """`course.js`: the words and formulas that the pages' scripts need, in one language."""
    words = content.words[language]
    asked = sorted({name for module in content.modules for name in page_data(content, module, language)["formulas"]})
    data = {
        "language": language,
        "title": content.course.title[language],
        "questions": _kept_ids(content),
        "words": _travelling_words(words, _FAMILIES),
        "seldomWords": packed(as_json(_travelling_words(words, _SELDOM_FAMILIES))),
        "formulas": packed(as_json({name: formula(name, words) for name in asked})),
    }
    formulas = BOOK.javascript(sorted({*asked, *planner_names()}), word=formula_words(words))
    return f'Tankschool.course = {as_json(data)};\nTankschool.run("{packed(formulas)}");\n'.encode()


def _kept_ids(content: CourseContent) -> list[str]:
    """Ids under which progress is kept, in a fixed order: questions, and parts of scenarios."""
    parts = [f"{one.id}.{part.id}" for one in content.scenarios.values() if not one.retired for part in one.parts]
    return sorted([question.id for module in content.modules for question in content.questions_of(module)] + parts)


def _travelling_words(words: Words, families: Sequence[str]) -> dict[str, object]:
    return {
        key: text if isinstance(text, str) else dict(text) for family in families for key, text in words.family(family)
    }


def scripts(content: CourseContent, language: str, check: CertificateCheck | None = None) -> dict[str, bytes]:
    """The page's scripts by name, in the order in which they must run."""
    return {
        "unpack.js": (_ASSETS / "unpack.js").read_bytes(),
        "formula.js": _FORMULA_SCRIPT.read_bytes(),
        "marker.js": marker_script().encode("utf-8"),
        "practice.js": practice_script().encode("utf-8"),
        "readings.js": readings_script().encode("utf-8"),
        "printed-set.js": printed_set_script().encode("utf-8"),
        "course.js": course_script(content, language),
        **{name: (_ASSETS / name).read_bytes() for name in _SCRIPTS_AFTER},
        "check.js": check.script.encode("utf-8") if check else b"",
        "start.js": (_ASSETS / "start.js").read_bytes(),
    }


def site_files(
    content: CourseContent,
    products: Products,
    prints: Mapping[str, Sequence[Print]],
    progress: Progress = silent,
    checks: Mapping[str, CertificateCheck] | None = None,
) -> dict[str, LanguageParts]:
    """The site and the one-file edition of every language; only what changed is made again.

    Args:
        content: the course.
        products: what earlier runs made.
        prints: language code -> its PDFs.
        progress: told what is done.
        checks: language code -> the means to check certificates; None for a stick without keys.

    Returns:
        Language code -> what it brings to the stick.
    """
    reckoner = kept_reckoner(products)
    fonts = products.get("fonts", key_of(versions_key(_FONT_MAKERS), machine_key("site")), font_files)
    runs: dict[str, tuple[SiteSettings, dict[str, bytes]]] = {}
    made_scripts = {
        language: scripts(content, language, (checks or {}).get(language)) for language in content.course.languages
    }
    for language in content.course.languages:
        check = (checks or {}).get(language)
        runs[language] = (
            settings(content, language),
            {
                **build_pages(content, language, prints.get(language, ()), reckoner, check),
                **{f"assets/{name}": data for name, data in styles().items()},
                **{f"assets/{name}": data for name, data in made_scripts[language].items()},
                f"assets/{BANK_SCRIPT}": bank_script(content, language),
                **{f"assets/fonts/{name}": data for name, data in fonts.items()},
                "assets/search-worker.js": search_worker(theme_scripts(), language),
            },
        )
        progress("pages", language)
    machine = (versions_key(_RENDERERS), machine_key("site"), SHARED_SETTINGS.read_bytes())
    keys = {language: key_of(repr(found), docs, *machine) for language, (found, docs) in runs.items()}
    sites = {language: products.kept(f"site-{language}", key) for language, key in keys.items()}
    missing = {language: runs[language] for language, site in sites.items() if site is None}
    for language, site in run_mkdocs(missing, products.work_folder, progress).items() if missing else ():
        products.keep(f"site-{language}", keys[language], site)
        sites[language] = site
    parts = {}
    for language, (found, _) in runs.items():
        site = sites[language] or {}
        words = content.words[language]
        made = OneFileParts(found, words, site, made_scripts[language])
        edition_key = key_of(keys[language], machine_key("site"))
        edition = products.get(f"one-file-{language}", edition_key, partial(_edition, made))
        progress("one-file", language)
        parts[language] = LanguageParts(found.title, words, site, edition["page"], tuple(prints.get(language, ())))
    return parts


def kept_reckoner(products: Products) -> Reckoner:
    """The ready reckoner, planned again only when the program or a package that it reckons with changed.

    Args:
        products: what earlier runs made.
    """
    key = key_of(machine_key("plans", "calculations", "formula"), versions_key(_PLANNERS))
    data = products.get("reckoner", key, lambda: {"rows": make_reckoner().model_dump_json().encode("utf-8")})
    return Reckoner.model_validate_json(data["rows"])


def _edition(parts: OneFileParts) -> dict[str, bytes]:
    return {"page": one_file(parts)}


def licence_file(own: str, products: Products) -> bytes:
    """`LICENCES.txt`, made again only when a package or our own licence changed."""
    key = key_of(own, versions_key(TRAVELLING), machine_key("site"))
    return products.get("licences", key, lambda: {"text": licences(own)})["text"]
