"""The certificate as paper: who, for which work and up to which size, by which scheme, what was shown; and its card.

Without a signature it is a sample and says so. With one it carries the square code, which alone can prove anything.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from reportlab.lib.units import mm

from generator.assessment import Decision, Reason, Requirement
from generator.curriculum import CourseContent
from generator.curriculum.models import Scheme
from generator.formula import show_full
from generator.problems import MachineError, RefusedError
from generator.sheets.flow import Box, Column, Piece, Row, Text
from generator.sheets.page import About, Part, content_hash, sheet_pdf
from generator.sheets.qr_flow import SquareCode
from generator.sheets.styles import BODY, MARGIN, NOTE, PAGE_HEIGHT, SMALLEST, SUBHEADING, TIGHT, TITLE, Style
from generator.sheets.text import Run
from generator.sheets.worksheet import refuse_unprintable
from generator.words import Words

_NAME_SIZES = (34.0, 30.0, 26.0, 22.0, 18.0, 15.0)
"""Points; the largest at which a name fits on one line is taken, or the smallest on two."""
_LABEL = 84.0
_CODE = 48.5 * mm
"""Side of the square code on the certificate, its quiet zone counted."""
_MOST_SKILLS = 5
"""More critical skills than these are counted and not named: the page has no room."""
CARD_WIDTH, CARD_HEIGHT = 85.6 * mm, 54.0 * mm
"""As bank cards have it; the card is folded out of two of them."""
_CARD_PADDING = 5.0
_CARD_CODE = 42.0 * mm
_CARD = Style(size=SMALLEST, after=0.5)
_CARD_SIZES = ((17.0, 11.0), (15.0, 10.5), (13.0, 10.0), (11.0, 9.5), (9.5, 9.0), (9.0, 9.0))
"""Points of the name and of the rest; the largest with which the name keeps to one line, or the smallest."""


@dataclass(frozen=True, slots=True)
class PanelCut:
    """The cut that a local panel set, by which the holder passed.

    Args:
        written: share of the written points.
        practical: share of the practical's steps.
        judges: how many sat on the panel.
        day: on which it was recorded.
    """

    written: float
    practical: float
    judges: int
    day: str


@dataclass(frozen=True, slots=True)
class Signed:
    """What a signature adds to the paper; name and scope of the paper must be those that were signed.

    Args:
        number: of the certificate.
        valid_from: first day.
        valid_to: last day.
        issuer: name of the organisation.
        key_words: fingerprint of its key in words of the paper's language.
        key_digits: the same key's fingerprint in digits.
        matrix: of the square code, rows from the top, 1 for dark.
        panel: whose cut stood in the place of the one that the scheme's writers proposed.
    """

    number: str
    valid_from: date
    valid_to: date
    issuer: str
    key_words: str
    key_digits: str
    matrix: Sequence[Sequence[int]]
    panel: PanelCut | None = None


def certificate_pdf(
    decision: Decision, name: str, language: str, content: CourseContent, signed: Signed | None = None
) -> bytes:
    """A certificate on one page lying on its long side, and a wallet card of it on the next.

    Args:
        decision: a passed one.
        name: of the person, in any script that the course's font has.
        language: language code.
        content: the course that holds the decision's scheme.
        signed: number, days and square code; without it the paper is an unsigned sample, and says so.

    Raises:
        RefusedError: the decision is not a pass or belongs to another version of the scheme, the name has signs that
            the font does not have, or the code would be too fine.
        MachineError: shaping is missing, or the texts are longer than a page or the card.
    """
    scheme = content.schemes[decision.scheme]
    if not decision.passed:
        raise RefusedError(f"no certificate for {name}: the decision by '{scheme.id}' is not a pass yet")
    if decision.version != scheme.version:
        raise RefusedError(
            f"no certificate for {name}: the decision is by version {decision.version} of '{scheme.id}', "
            f"and the course holds version {scheme.version}; decide again by the present one"
        )
    refuse_unprintable([name] if signed is None else [name, signed.issuer, signed.number])
    words = content.words[language]
    title = scheme.title[language]
    kind = words.say("sheet.certificate")
    page = content.modules[scheme.modules[0]].title[language]
    about = About(f"{kind} · {title}", language, content.course.version, content_hash(content.sources), sideways=True)
    parts = [
        Part(
            about.name, page, name, "", words, [Column(list(_pieces(decision, scheme, name, content, words, signed)))]
        ),
        Part(about.name, page, words.say("sheet.card"), "", words, [Column(_card(scheme, name, words, signed))]),
    ]
    return sheet_pdf(about, parts)


def _pieces(
    decision: Decision, scheme: Scheme, name: str, content: CourseContent, words: Words, signed: Signed | None
) -> Iterator[Piece]:
    language = words.language
    if signed is None:
        sample = Text(
            words.say("sheet.unsigned_sample"), SUBHEADING.but(size=16.0, align="center", before=0.0, after=1.0)
        )
        meaning = Text(words.say("sheet.unsigned_meaning"), TIGHT.but(align="center", after=0.0))
        yield Box(Column([sample, meaning]), line=2.4, padding=5.0, after=8.0)
    course = content.course.title[language] if signed is None else signed.issuer
    yield Text(course, BODY.but(align="center", before=6.0))
    yield Text(
        f"{words.say('sheet.certificate')}: {scheme.title[language]}",
        Style(size=22.0, bold=True, align="center", after=2.0),
    )
    yield _name(name)
    cells: list[tuple[float | None, Piece]] = [
        (None, _scope(scheme, words, signed)),
        (None, _shown(decision, content, words)),
    ]
    if signed is None:
        cells.append((_CODE, _code_place(words, _CODE)))
    else:
        number = Text(signed.number, TIGHT.but(bold=True, align="center", after=0.0))
        cells.append((_CODE, Column([SquareCode(signed.matrix, _CODE), number])))
    yield Row(cells, gap=16.0, after=12.0 if signed is None else 5.0)
    if signed is not None:
        yield Text(words.say("sheet.check_at", page=words.say("certificate.page.title")), NOTE)
        yield Text(f"{words.say('certificate.label.key')} {signed.key_words} · {signed.key_digits}", NOTE)
    version = words.say("sheet.scheme", scheme=scheme.id, version=scheme.version)
    status = words.say_one_of("sheet.scheme_status", scheme.status)
    yield Text([Run(f"{version} {status} ", bold=True), Run(_cut_said(scheme, words, signed))], NOTE)
    yield Text(words.say("sheet.not_approval"), BODY.but(bold=True))


def _cut_said(scheme: Scheme, words: Words, signed: Signed | None) -> str:
    """Whose cut it is: a provisional scheme's certificate is never issued without a local panel's."""
    if signed is None or (signed.panel is None and scheme.status != "provisional"):
        return scheme.rule.cut_from[words.language]
    if signed.panel is None:
        return words.say("sheet.cut_of_panel")
    panel = signed.panel
    written, practical = (show_full(round(100 * share, 6)) for share in (panel.written, panel.practical))
    return words.say("sheet.panel_cut", count=panel.judges, day=panel.day, written=written, practical=practical)


def _card(scheme: Scheme, name: str, words: Words, signed: Signed | None) -> list[Piece]:
    """The card, unfolded: what the holder may do on the left, the code on the right."""
    faces = [_front(scheme, name, words, signed), _back(words, signed)]
    for face in faces:
        if face.fit(CARD_WIDTH) > CARD_HEIGHT + 1e-6:
            raise MachineError(
                f"the card of {name} has more text than fits on it: shorten the scheme's texts for role and roof"
            )
    return [
        Text(words.say("sheet.card"), TITLE),
        Text(words.say("sheet.card_cut"), NOTE.but(after=10.0)),
        Row([(CARD_WIDTH, faces[0]), (CARD_WIDTH, faces[1])], gap=0.0, after=10.0),
    ]


def _front(scheme: Scheme, name: str, words: Words, signed: Signed | None) -> Piece:
    scope, language = scheme.scope, words.language
    head = f"{words.say('sheet.certificate')}: {scheme.title[language]}"
    if signed is None:
        head = f"{words.say('sheet.unsigned_sample')}. {head}"
    sizes = (
        f"{words.say('sheet.scope_volume')} {words.with_unit(show_full(scope.largest_volume), 'm**3')} · "
        f"{words.say('sheet.scope_height')} {words.with_unit(show_full(scope.largest_wall_height), 'm')}"
    )
    roof = f"{words.say('sheet.scope_roof')} {scope.roof[language]}"
    days = "" if signed is None else f"{words.say('certificate.label.valid')} {_days(signed, words)}"
    face: Piece = Column([])
    for size, rest in _CARD_SIZES:
        style = _CARD.but(size=rest)
        holder = Text(name, Style(size=size, bold=True, after=2.0))
        lines = [Text(head, style.but(bold=True)), holder, Text(scope.role[language], style)]
        lines += [Text(sizes, style.but(bold=True)), Text(roof, style)]
        if days:
            lines.append(Text(days, style))
        face = Box(Column(lines), padding=_CARD_PADDING, least=CARD_HEIGHT)
        if face.fit(CARD_WIDTH) <= CARD_HEIGHT + 1e-6 and len(holder.lines) == 1:
            break
    return face


def _back(words: Words, signed: Signed | None) -> Piece:
    check = Text(words.say("sheet.card_check", page=words.say("certificate.page.title")), _CARD.but(after=2.0))
    if signed is None:
        sample = Text(words.say("sheet.unsigned_sample"), _CARD.but(bold=True, after=2.0))
        row = Row([(_CARD_CODE, _code_place(words, _CARD_CODE)), (None, Column([sample, check]))], gap=4.0)
        return Box(row, padding=_CARD_PADDING, least=CARD_HEIGHT)
    lines = [
        Text(signed.number, _CARD.but(bold=True, after=2.0)),
        check,
        Text(signed.issuer, _CARD.but(after=2.0)),
        Text(f"{words.say('certificate.label.key')} {signed.key_words}", _CARD),
    ]
    row = Row([(_CARD_CODE, SquareCode(signed.matrix, _CARD_CODE)), (None, Column(lines))], gap=2.0)
    return Box(row, padding=_CARD_PADDING, least=CARD_HEIGHT)


def _code_place(words: Words, side: float) -> Piece:
    """Where the square code stands on a signed one: an empty square."""
    text = Text(words.say("sheet.code_place"), NOTE.but(align="center", after=0.0))
    return Box(text, padding=8.0, least=side)


def _days(signed: Signed, words: Words) -> str:
    return words.say("certificate.days", first=signed.valid_from.isoformat(), last=signed.valid_to.isoformat())


def _name(name: str) -> Piece:
    style = Style(size=_NAME_SIZES[-1], bold=True, align="center", before=8.0, after=14.0)
    width = PAGE_HEIGHT - 2 * MARGIN
    for size in _NAME_SIZES:
        if Text(name, style.but(size=size)).natural_width() <= width:
            return Text(name, style.but(size=size))
    return Text(name, style)


def _scope(scheme: Scheme, words: Words, signed: Signed | None) -> Piece:
    """The scope line: role, largest volume, wall height, roof; and the days, where it is signed."""
    scope, language = scheme.scope, words.language
    lines = [
        (words.say("sheet.scope_role"), scope.role[language]),
        (words.say("sheet.scope_volume"), words.with_unit(show_full(scope.largest_volume), "m**3")),
        (words.say("sheet.scope_height"), words.with_unit(show_full(scope.largest_wall_height), "m")),
        (words.say("sheet.scope_roof"), scope.roof[language]),
    ]
    if signed is not None:
        lines.append((words.say("certificate.label.valid"), _days(signed, words)))
    rows: list[Piece] = [Text(words.say("sheet.scope"), SUBHEADING.but(before=0.0))]
    for title, text in lines:
        rows.append(Row([(_LABEL, Text(title, TIGHT)), (None, Text(text, TIGHT.but(bold=True)))], gap=8.0, after=4.0))
    return Box(Column(rows), line=1.2)


def _shown(decision: Decision, content: CourseContent, words: Words) -> Piece:
    """What the decision rests on."""
    rows: list[Piece] = [Text(words.say("sheet.shown"), SUBHEADING.but(before=0.0))]
    for reason in decision.reasons:
        if reason.requirement in (Requirement.WRITTEN, Requirement.PRACTICAL):
            rows.append(Text(_counted(reason, content, words), TIGHT))
    steps = [reason for reason in decision.reasons if reason.requirement is Requirement.CRITICAL_STEP]
    rows.append(Text(words.say("sheet.shown_steps", count=len(steps)), TIGHT))
    skill = (Requirement.CRITICAL_COMPETENCY, Requirement.TALK)
    skills = dict.fromkeys(reason.subject for reason in decision.reasons if reason.requirement in skill)
    if len(skills) > _MOST_SKILLS:
        modules = content.schemes[decision.scheme].modules
        titles = "; ".join(content.modules[name].title[words.language] for name in modules)
        rows.append(Text(words.say("sheet.shown_skills", count=len(skills), modules=titles), TIGHT))
        return Box(Column(rows), line=1.2)
    for name in skills:
        text = content.competencies[name].text[words.language]
        rows.append(Row([(10.0, Text("•", TIGHT)), (None, Text(text, TIGHT))], gap=2.0, after=1.5))
    return Box(Column(rows), line=1.2)


def _counted(reason: Reason, content: CourseContent, words: Words) -> str:
    if reason.requirement is Requirement.WRITTEN:
        return words.say("sheet.shown_written", have=reason.have, most=reason.most)
    title = content.practicals[reason.subject].title[words.language]
    return words.say("sheet.shown_practical", practical=title, have=reason.have, most=reason.most)
