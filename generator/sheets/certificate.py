"""The certificate as paper: who, for which work and up to which size, by which scheme, and what was shown for it."""

from __future__ import annotations

from collections.abc import Iterator

from generator.assessment import Decision, Reason, Requirement
from generator.curriculum import CourseContent
from generator.curriculum.models import Scheme
from generator.formula import show_full
from generator.problems import RefusedError
from generator.sheets.flow import Box, Column, Piece, Row, Text
from generator.sheets.page import About, Part, content_hash, sheet_pdf
from generator.sheets.styles import BODY, MARGIN, NOTE, PAGE_HEIGHT, SUBHEADING, TIGHT, Style
from generator.sheets.text import Run
from generator.sheets.worksheet import refuse_unprintable
from generator.words import Words

_NAME_SIZES = (34.0, 30.0, 26.0, 22.0, 18.0, 15.0)
"""Points; the largest at which a name fits on one line is taken, or the smallest on two."""
_LABEL = 100.0


def certificate_pdf(decision: Decision, name: str, language: str, content: CourseContent) -> bytes:
    """A certificate on one page, lying on its long side. It carries no signature and says so.

    Args:
        decision: a passed one.
        name: of the person, in any script that the course's font has.
        language: language code.
        content: the course that holds the decision's scheme.

    Raises:
        RefusedError: the decision is not a pass or belongs to another version of the scheme, or the name has signs that
            the font does not have.
        MachineError: shaping is missing, or the texts are longer than a page.
    """
    scheme = content.schemes[decision.scheme]
    if not decision.passed:
        raise RefusedError(f"no certificate for {name}: the decision by '{scheme.id}' is not a pass yet")
    if decision.version != scheme.version:
        raise RefusedError(
            f"no certificate for {name}: the decision is by version {decision.version} of '{scheme.id}', "
            f"and the course holds version {scheme.version}; decide again by the present one"
        )
    refuse_unprintable([name])
    words = content.words[language]
    title = scheme.title[language]
    kind = words.say("sheet.certificate")
    page = content.modules[scheme.modules[0]].title[language]
    about = About(f"{kind} · {title}", language, content.course.version, content_hash(content.sources), sideways=True)
    pieces = [Column(list(_pieces(decision, scheme, name, content, words)))]
    return sheet_pdf(about, [Part(about.name, page, name, "", words, pieces)])


def _pieces(decision: Decision, scheme: Scheme, name: str, content: CourseContent, words: Words) -> Iterator[Piece]:
    language = words.language
    sample = Text(words.say("sheet.unsigned_sample"), SUBHEADING.but(size=16.0, align="center", before=0.0, after=1.0))
    meaning = Text(words.say("sheet.unsigned_meaning"), TIGHT.but(align="center", after=0.0))
    yield Box(Column([sample, meaning]), line=2.4, padding=5.0, after=8.0)
    course = content.course.title[language]
    yield Text(course, BODY.but(align="center", before=6.0))
    yield Text(
        f"{words.say('sheet.certificate')}: {scheme.title[language]}",
        Style(size=22.0, bold=True, align="center", after=2.0),
    )
    yield _name(name)
    yield Row([(None, _scope(scheme, words)), (None, _shown(decision, content, words))], gap=16.0, after=12.0)
    version = words.say("sheet.scheme", scheme=scheme.id, version=scheme.version)
    status = words.say_one_of("sheet.scheme_status", scheme.status)
    yield Text([Run(f"{version} {status} ", bold=True), Run(scheme.rule.cut_from[language])], NOTE)
    yield Text(words.say("sheet.not_approval"), BODY.but(bold=True))


def _name(name: str) -> Piece:
    style = Style(size=_NAME_SIZES[-1], bold=True, align="center", before=8.0, after=14.0)
    width = PAGE_HEIGHT - 2 * MARGIN
    for size in _NAME_SIZES:
        if Text(name, style.but(size=size)).natural_width() <= width:
            return Text(name, style.but(size=size))
    return Text(name, style)


def _scope(scheme: Scheme, words: Words) -> Piece:
    """The scope line: role, largest volume, wall height, roof."""
    scope, language = scheme.scope, words.language
    lines = [
        (words.say("sheet.scope_role"), scope.role[language]),
        (words.say("sheet.scope_volume"), words.with_unit(show_full(scope.largest_volume), "m**3")),
        (words.say("sheet.scope_height"), words.with_unit(show_full(scope.largest_wall_height), "m")),
        (words.say("sheet.scope_roof"), scope.roof[language]),
    ]
    rows: list[Piece] = [Text(words.say("sheet.scope"), SUBHEADING.but(before=0.0))]
    for label, text in lines:
        rows.append(Row([(_LABEL, Text(label, TIGHT)), (None, Text(text, TIGHT.but(bold=True)))], gap=8.0, after=4.0))
    return Box(Column(rows), line=1.2)


def _shown(decision: Decision, content: CourseContent, words: Words) -> Piece:
    """What the decision rests on."""
    rows: list[Piece] = [Text(words.say("sheet.shown"), SUBHEADING.but(before=0.0))]
    for reason in decision.reasons:
        if reason.requirement in (Requirement.WRITTEN, Requirement.PRACTICAL):
            rows.append(Text(_counted(reason, content, words), TIGHT))
    steps = [reason for reason in decision.reasons if reason.requirement is Requirement.CRITICAL_STEP]
    rows.append(Text(words.say("sheet.shown_steps", count=len(steps)), TIGHT))
    for reason in decision.reasons:
        if reason.requirement is Requirement.CRITICAL_COMPETENCY:
            text = content.competencies[reason.subject].text[words.language]
            rows.append(Row([(10.0, Text("•", TIGHT)), (None, Text(text, TIGHT))], gap=2.0, after=1.5))
    return Box(Column(rows), line=1.2)


def _counted(reason: Reason, content: CourseContent, words: Words) -> str:
    if reason.requirement is Requirement.WRITTEN:
        return words.say("sheet.shown_written", have=reason.have, most=reason.most)
    title = content.practicals[reason.subject].title[words.language]
    return words.say("sheet.shown_practical", practical=title, have=reason.have, most=reason.most)
