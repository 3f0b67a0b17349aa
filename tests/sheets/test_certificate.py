from __future__ import annotations

from dataclasses import replace
from datetime import date
from io import BytesIO

import pytest
from pypdf import PdfReader

from generator.assessment import Decision, Reason, Requirement
from generator.curriculum import CourseContent
from generator.problems import RefusedError
from generator.sheets import Signed, certificate_pdf
from generator.sheets.certificate import CARD_HEIGHT, CARD_WIDTH, PanelCut
from generator.sheets.page import A4
from generator.sheets.qr_flow import LEAST_MODULE, QUIET, SquareCode
from tests.sheets.conftest import LONGEST_NAMES
from tests.sheets.layout_checks import faults
from tests.sheets.recorder import Recording, recording

SIDEWAYS = (A4[1], A4[0])


def decision(content: CourseContent, *, met: bool = True, version: int = 0) -> Decision:
    """One that holds all that the scheme asks for, with every competency of the course as a critical one."""
    scheme = content.schemes["frame-hand"]
    practical = content.practicals["close-a-ring"]
    reasons = [
        Reason(Requirement.WRITTEN, met, "", 15, 10, 17),
        Reason(Requirement.PRACTICAL, True, practical.id, 11, 9, 12),
        *(
            Reason(Requirement.CRITICAL_STEP, True, f"{practical.id}/{step.id}", 1, 1, 1)
            for step in practical.steps
            if step.critical
        ),
        *(Reason(Requirement.CRITICAL_COMPETENCY, True, name, 3, 2, 3) for name in scheme.critical_competencies),
    ]
    return Decision(scheme.id, version or scheme.version, tuple(reasons))


@pytest.mark.parametrize("language", ["en", "hi"])
@pytest.mark.parametrize("name", [*LONGEST_NAMES, "Jo", "कमला देवी थापा"])
def test_fits_on_one_page_lying_on_its_long_side(name: str, language: str, content: CourseContent) -> None:
    with recording() as made:
        data = certificate_pdf(decision(content), name, language, content)
    assert made.pages == 2
    assert faults(made, *SIDEWAYS) == []
    box = PdfReader(BytesIO(data)).pages[0].mediabox
    assert (float(box.width), float(box.height)) == pytest.approx(SIDEWAYS, abs=0.1)
    assert certificate_pdf(decision(content), name, language, content) == data


@pytest.mark.parametrize("language", ["en", "hi"])
def test_says_who_for_what_how_far_and_that_it_is_a_sample(language: str, content: CourseContent) -> None:
    with recording() as made:
        certificate_pdf(decision(content), "Asha Devi", language, content)
    text = " ".join(made.text().split())
    scheme, words = content.schemes["frame-hand"], content.words[language]
    for expected in (
        "Asha Devi",
        words.say("sheet.unsigned_sample"),
        words.say("sheet.not_approval"),
        scheme.title[language],
        scheme.scope.role[language],
        scheme.scope.roof[language],
        words.with_unit("12", "m**3").replace("\u00a0", " "),
        words.with_unit("2", "m").replace("\u00a0", " "),
        words.say("sheet.scheme", scheme=scheme.id, version=scheme.version),
        scheme.rule.cut_from[language],
        *(content.competencies[name].text[language] for name in scheme.critical_competencies),
    ):
        assert " ".join(expected.split()) in text


@pytest.mark.parametrize("language", ["en", "hi"])
@pytest.mark.parametrize("scheme", ["frame-hand", "plaster-hand", "lead-mason", "trainer-observer"])
def test_every_scheme_fits_with_all_that_it_asks_for(scheme: str, language: str, content: CourseContent) -> None:
    """Where there are many critical skills they are counted, and their modules are named."""
    rule, words = content.schemes[scheme], content.words[language]
    watched = [content.practicals[name] for name in rule.practicals]
    reasons = [Reason(Requirement.WRITTEN, True, "", 36, 30, 40)]
    reasons += [Reason(Requirement.PRACTICAL, True, one.id, 9, 8, 10) for one in watched]
    reasons += [
        Reason(Requirement.CRITICAL_STEP, True, f"{one.id}/{step.id}", 1, 1, 1) for one in watched for step in one.steps
    ]
    reasons += [Reason(Requirement.TALK, True, name, 2, 2, 2) for name in rule.critical_competencies]
    with recording() as made:
        certificate_pdf(Decision(scheme, rule.version, tuple(reasons)), "Asha Devi", language, content)
    assert made.pages == 2
    assert faults(made, *SIDEWAYS) == []
    text = " ".join(made.text().split())
    skills = [content.competencies[name].text[language] for name in rule.critical_competencies]
    if len(skills) > 5:
        titles = "; ".join(content.modules[name].title[language] for name in rule.modules)
        skills = [words.say("sheet.shown_skills", count=len(skills), modules=titles)]
    assert all(" ".join(one.split()) in text for one in skills)


def test_no_pass_no_certificate(content: CourseContent) -> None:
    with pytest.raises(RefusedError, match="not a pass yet"):
        certificate_pdf(decision(content, met=False), "Asha", "en", content)


def test_a_decision_by_another_version_of_the_scheme_is_refused(content: CourseContent) -> None:
    with pytest.raises(RefusedError, match="version 99"):
        certificate_pdf(decision(content, version=99), "Asha", "en", content)


@pytest.mark.parametrize("name", ["水田", "محمد", "Asha \ue000"])
def test_a_name_that_the_font_can_not_print_is_refused(name: str, content: CourseContent) -> None:
    with pytest.raises(RefusedError, match="can't be printed"):
        certificate_pdf(decision(content), name, "en", content)


def signed(side: int = 61, words: str = "kinom lopot zodof rujul kufaz sakar") -> Signed:
    """The largest square code that is allowed, dark like a chessboard."""
    matrix = [[(x + y) % 2 for x in range(side)] for y in range(side)]
    issuer, digits = "Builders' Circle of Tamarisk Ridge and both Terraces", "01177 25858 54330 83308 52479 90053"
    return Signed("WKLP-C000012-PM", date(2027, 1, 10), date(2030, 1, 9), issuer, words, digits, matrix)


@pytest.mark.parametrize("language", ["en", "hi"])
@pytest.mark.parametrize("name", [*LONGEST_NAMES, "Jo", "कमला देवी थापा"])
def test_signed_it_fits_too_and_is_no_sample(name: str, language: str, content: CourseContent) -> None:
    words = content.words[language]
    with recording() as made:
        data = certificate_pdf(decision(content), name, language, content, signed())
    assert made.pages == 2
    assert faults(made, *SIDEWAYS) == []
    assert certificate_pdf(decision(content), name, language, content, signed()) == data
    assert words.say("sheet.unsigned_sample") not in made.text()
    assert content.schemes["frame-hand"].status == "provisional"
    assert words.say("sheet.cut_of_panel") in " ".join(made.text().split())
    assert " ".join(content.schemes["frame-hand"].rule.cut_from[language].split()) not in " ".join(made.text().split())
    check = words.say("sheet.check_at", page=words.say("certificate.page.title"))
    text = " ".join(made.text(1).split())
    for expected in (
        check,
        "WKLP-C000012-PM",
        "2027-01-10",
        "2030-01-09",
        signed().issuer,
        signed().key_words,
        signed().key_digits,
    ):
        assert " ".join(expected.split()) in text


@pytest.mark.parametrize("language", ["en", "hi"])
def test_the_card_says_who_what_how_large_how_long_and_where_to_check(language: str, content: CourseContent) -> None:
    words, scheme = content.words[language], content.schemes["frame-hand"]
    with recording() as made:
        certificate_pdf(decision(content), "Asha Devi", language, content, signed())
    text = " ".join(made.text(2).split())
    for expected in (
        "Asha Devi", scheme.scope.role[language], scheme.scope.roof[language], words.with_unit("12", "m**3"),
        words.with_unit("2", "m"), "2027-01-10", "2030-01-09", "WKLP-C000012-PM",
        words.say("sheet.card_check", page=words.say("certificate.page.title")), signed().key_words,
    ):  # fmt: skip
        assert " ".join(expected.split()) in text
    assert card_faces(made) == 2


def card_faces(made: Recording) -> int:
    """Boxes of the size of a bank card on the second page."""
    sizes = [(right - left, top - low) for page, left, low, right, top in made.shapes if page == 2]
    return sum(size == pytest.approx((CARD_WIDTH, CARD_HEIGHT), abs=0.1) for size in sizes)


def test_the_sample_card_is_marked_on_both_faces_and_has_no_code(content: CourseContent) -> None:
    words = content.words["en"]
    with recording() as made:
        data = certificate_pdf(decision(content), "Asha", "en", content)
    assert made.text(2).count(words.say("sheet.unsigned_sample")) == 2
    assert card_faces(made) == 2
    with recording() as other:
        bare = certificate_pdf(decision(content), "Asha", "en", content, signed())
    assert len(bare) > len(data)
    assert other.text(2).count(words.say("sheet.unsigned_sample")) == 0


def test_a_code_is_never_finer_than_a_cheap_printer_can_draw(content: CourseContent) -> None:
    with pytest.raises(RefusedError, match=r"needs 43\.8 mm of width"):
        certificate_pdf(decision(content), "Asha", "en", content, signed(side=65))
    code = SquareCode([[1] * 61] * 61, (61 + 2 * QUIET) * LEAST_MODULE)
    assert code.module == pytest.approx(LEAST_MODULE)
    assert code.fit(500.0) == pytest.approx(69 * LEAST_MODULE)


@pytest.mark.parametrize("language", ["en", "hi"])
@pytest.mark.parametrize("judges", [1, 6])
def test_where_a_panel_set_the_cut_the_paper_no_longer_says_that_none_has(
    judges: int, language: str, content: CourseContent
) -> None:
    made_by = decision(content)
    scheme, words = content.schemes[made_by.scheme], content.words[language]
    cut = PanelCut(0.725, 0.8, judges, "2031-03-12")
    with recording() as made:
        certificate_pdf(made_by, "Asha", language, content, replace(signed(), panel=cut))
    assert faults(made, *SIDEWAYS) == []
    text = " ".join(made.text(1).split())
    assert words.say("sheet.panel_cut", count=judges, day=cut.day, written="72.5", practical="80") in text
    assert " ".join(scheme.rule.cut_from[language].split())[:60] not in text
