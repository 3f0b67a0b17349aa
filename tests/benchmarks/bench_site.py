"""A site of 60 pages: our own work on it, against MkDocs' own time on the same pages.

The pages are copies of the real module, 30 with those that every course has, in two languages. Ours: the Markdown of
all pages, the scripts, both one-file editions and the list of the files with their sums. The baseline: MkDocs, both
languages at the same time. The font and the licence texts are left out on both sides: they change only when a package
does.
"""

from __future__ import annotations

import tempfile
import time
from dataclasses import replace
from functools import cache
from pathlib import Path

from generator.curriculum import CourseContent, load
from generator.site.assemble import scripts, styles
from generator.site.fonts import font_files
from generator.site.mkdocs_run import run_mkdocs, search_worker, theme_scripts
from generator.site.one_file import OneFileParts, one_file
from generator.site.pages import build_pages, settings
from generator.site.stick import LanguageParts, stick_files
from tests.benchmarks import Result

COPIES = 27
"""With the home page, the ready reckoner and the page about the stick: 30 pages a language."""
LIMIT = 0.5


def many_modules() -> CourseContent:
    """The real course with its module many times over."""
    return copies(COPIES)


@cache
def copies(count: int) -> CourseContent:
    """The real course with its module so many times over."""
    loaded = load(Path(__file__).parents[2])
    assert loaded.content is not None, loaded.problems
    content = loaded.content
    module = content.modules["frame"]
    ids = [f"{module.id}-{number}" for number in range(count)]
    return replace(
        content,
        modules={name: module.model_copy(update={"id": name}) for name in ids},
        lessons={
            (name, lang): text for name in ids for (key, lang), text in content.lessons.items() if key == module.id
        },
        asked=dict.fromkeys(ids, content.questions_of(module.id)),
    )


def results(runs: int = 2) -> list[Result]:
    """The comparison; the best time of each of some runs."""
    content, fonts = many_modules(), font_files()
    best = [float("inf"), float("inf")]
    for _ in range(runs):
        start = time.perf_counter()
        made = {
            language: (
                settings(content, language),
                {
                    **build_pages(content, language),
                    **{f"assets/{name}": data for name, data in styles().items()},
                    **{f"assets/{name}": data for name, data in scripts(content, language).items()},
                    **{f"assets/fonts/{name}": data for name, data in fonts.items()},
                    "assets/search-worker.js": search_worker(theme_scripts(), language),
                },
            )
            for language in content.course.languages
        }
        ours = time.perf_counter() - start
        with tempfile.TemporaryDirectory() as folder:
            start = time.perf_counter()
            sites = run_mkdocs(made, Path(folder))
            theirs = time.perf_counter() - start
        start = time.perf_counter()
        parts = {
            language: LanguageParts(
                found.title,
                content.words[language],
                sites[language],
                one_file(OneFileParts(found, content.words[language], sites[language], scripts(content, language))),
            )
            for language, (found, _) in made.items()
        }
        stick_files(parts, b"")
        ours += time.perf_counter() - start
        best = [min(best[0], ours), min(best[1], theirs)]
    pages = sum(path.endswith(".html") for site in sites.values() for path in site)
    return [Result(f"site of {pages} pages, our own work against MkDocs", best[0], best[1], LIMIT)]
