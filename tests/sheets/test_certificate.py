from __future__ import annotations

from io import BytesIO

import pytest
from pypdf import PdfReader

from generator.assessment import Decision, Reason, Requirement
from generator.curriculum import CourseContent
from generator.problems import RefusedError
from generator.sheets import certificate_pdf
from generator.sheets.page import A4
from tests.sheets.conftest import LONGEST_NAMES
from tests.sheets.layout_checks import faults
from tests.sheets.recorder import recording

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
    assert made.pages == 1
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
