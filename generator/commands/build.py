"""`build`: checks the content, builds the stick in all languages and the standard sheets, says what to open."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING

import click

from generator import site
from generator.commands.course import course_at
from generator.commands.tool import ROOT, ProgressLine, content_option, json_option, output_option, say_json
from generator.problems import ExitCode

if TYPE_CHECKING:
    from generator.curriculum import CourseContent

SAMPLE_SEED = "stick"
"""The practice sheet on the stick is the same everywhere; a class gets its own by `sheets --for`."""
PRINTERS = ("reportlab", "uharfbuzz", "fontpkg-mukta")


@click.command()
@content_option
@output_option
@click.option("--keys", type=click.Path(dir_okay=False, path_type=Path),
              help="The issuer's file of public keys: the stick can then check certificates.")  # fmt: skip
@click.option("--list", "list_file", type=click.Path(dir_okay=False, path_type=Path),
              help="The signed list of withdrawn numbers, to travel with the keys.")  # fmt: skip
@json_option
def build(content: Path, output: Path, keys: Path | None, list_file: Path | None, as_json: bool) -> int:
    """Check the content, build the stick in all languages and the standard sheets, and say what to open.

    Example: python3 tankschool.py build        (an own course: build --content my-course --output my-output)

    With --keys public-keys.json --list withdrawn.txt the stick gets a page that checks certificates.
    """
    if list_file is not None and keys is None:
        raise click.UsageError("A list can be held only against its issuer's keys: give --keys FILE too.")
    progress = ProgressLine(quiet=as_json)
    progress("Reading and checking the content ...")
    course = course_at(content)
    checks = _certificate_checks(course, keys, list_file) if keys is not None else {}
    products = site.Products(output / "cache")
    prints = {language: standard_sheets(course, language, products, progress) for language in course.course.languages}
    parts = site.site_files(course, products, prints, lambda step, what: progress(f"{step}: {what}"), checks)
    licences = site.licence_file((ROOT / "LICENSE").read_text("utf-8"), products)
    files = site.stick_files(parts, licences)
    changed = site.write_stick(files, output / "stick", lambda step, what: progress(f"{step}: {what}"))
    _write_records(course, products, output)
    progress.done()
    start = output / "stick" / "START-HERE.html"
    if as_json:
        say_json({"format": 1, "open": str(start), "made": products.made, "changed": changed, "files": len(files)})
        return ExitCode.GOOD
    size = sum(map(len, files.values())) / 1_000_000
    click.echo(f"{len(files)} files, {size:.1f} MB{'' if changed else ', unchanged'}.")
    click.echo(f"Open {start}")
    click.echo(f"For a phone, copy one file from {output / 'stick' / 'phone'}")
    click.echo(f"To print, see {output / 'stick' / 'pdf'}")
    return ExitCode.GOOD


def _certificate_checks(
    course: CourseContent, keys: Path, list_file: Path | None
) -> Mapping[str, site.CertificateCheck]:
    """What the page needs to check certificates, by language.

    Raises:
        ProblemsError: the keys or the list are not whole, or the list is another issuer's.
    """
    from generator.commands.issuer_files import keys_at, list_at, text_at
    from generator.credentials import check_page

    first = course.words[course.course.languages[0]]
    pinned = keys_at(keys, first)
    list_at(list_file, pinned, datetime.now(UTC), first)
    listed = text_at(list_file) if list_file is not None else ""
    made = {language: check_page(pinned, listed, course.words[language]) for language in course.course.languages}
    return {language: site.CertificateCheck(page.body, page.script) for language, page in made.items()}


def standard_sheets(
    course: CourseContent, language: str, products: site.Products, progress: ProgressLine
) -> list[site.Print]:
    """The sheets that travel on the stick: each module's practice sheet with its key, checklists, handouts."""
    prints: list[site.Print] = []
    for module in course.modules.values():
        kept = _module_product(course, module.id, language, products, progress)
        titles = {practical.id: practical.title for practical in course.practicals.values()}
        words = course.words[language]
        for name, data in kept.items():
            if name.endswith(".pdf"):
                stem = name.removesuffix(".pdf")
                kind = stem.removeprefix(f"{module.id}-")
                title = (
                    titles[stem][language]
                    if stem in titles
                    else f"{words.say_one_of('sheet', kind)} · {module.title[language]}"
                )
                prints.append(site.Print(stem, title, data))
    prints += [
        site.Print(
            handout.id, handout.title[language], _handout_sheet(course, handout.id, language, products, progress)
        )
        for handout in course.handouts.values()
    ]
    title = course.words[language].say("plan.reckoner.title")
    return [*prints, site.Print(site.RECKONER, title, _reckoner_sheet(course, language, products, progress))]


def _handout_sheet(
    course: CourseContent, handout: str, language: str, products: site.Products, progress: ProgressLine
) -> bytes:
    sources = course.sources_of_handout(handout)
    key = site.key_of(handout, language, sources, site.versions_key(PRINTERS), site.machine_key())

    def make() -> dict[str, bytes]:
        from generator import sheets

        progress(f"sheets: {handout}, {language}")
        return {"sheet": sheets.handout_pdf(handout, language, course)}

    return products.get(f"sheets-{handout}-{language}", key, make)["sheet"]


def _reckoner_sheet(course: CourseContent, language: str, products: site.Products, progress: ProgressLine) -> bytes:
    words = course.sources[f"course/words/{language}.yaml"]
    key = site.key_of(language, words, course.course.version, site.versions_key(PRINTERS), site.machine_key())

    def make() -> dict[str, bytes]:
        from generator import sheets

        progress(f"sheets: {site.RECKONER}, {language}")
        return {
            "sheet": sheets.reckoner_pdf(site.kept_reckoner(products), course.words[language], course.course.version)
        }

    return products.get(f"sheets-{site.RECKONER}-{language}", key, make)["sheet"]


def _module_product(
    course: CourseContent, module: str, language: str, products: site.Products, progress: ProgressLine
) -> Mapping[str, bytes]:
    key = site.key_of(
        module, language, course.sources_of(module), site.versions_key(PRINTERS), site.machine_key()
    )  # fmt: skip

    def make() -> dict[str, bytes]:
        progress(f"sheets: {module}, {language}")
        return _make_sheets(course, module, language)

    return products.get(f"sheets-{module}-{language}", key, make)


def _make_sheets(course: CourseContent, module: str, language: str) -> dict[str, bytes]:
    from generator import VERSION, sheets
    from generator.exercises import Person, make_set, to_json

    words = course.words[language]
    people = [Person(words.say("sheet.practice_learner"))]
    record = make_set(course, module, people, SAMPLE_SEED, language, tool=f"tankschool {VERSION}")
    files = {
        f"{module}-worksheet.pdf": sheets.worksheet_pdf(record, course),
        f"{module}-key.pdf": sheets.key_pdf(record, course),
    }
    for practical in course.practicals.values():
        if practical.module == module and not practical.retired:
            files[f"{practical.id}.pdf"] = sheets.practical_pdf(practical.id, language, course)
    return {**files, "record.json": to_json(record)}


def _write_records(course: CourseContent, products: site.Products, output: Path) -> None:
    """The records of the practice sheets: beside the stick, since a trainer's laptop marks and the stick does not."""
    folder = output / "records"
    folder.mkdir(parents=True, exist_ok=True)
    for module in course.modules:
        for language in course.course.languages:
            kept = _module_product(course, module, language, products, ProgressLine(quiet=True))
            path = folder / f"{module}-{language}.json"
            if not path.is_file() or path.read_bytes() != kept["record.json"]:
                path.write_bytes(kept["record.json"])
