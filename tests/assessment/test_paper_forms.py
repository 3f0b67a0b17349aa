"""No form of a paper holds a key, tolerance, id, name of a quantity or place, reason, seed or key of a drawing."""

from __future__ import annotations

import json
import re
from io import BytesIO
from typing import Any

import pytest
from pypdf import PdfReader
from pypdf.generic import StreamObject

from generator.assessment.screen_exam import ScreenPaper, screen_page, shown
from generator.exercises import Learner
from generator.figures import hot_areas
from generator.sheets.paper import PrintedPaper, paper_pdf, spoken_pdf
from tests.assessment import exam_papers as made


def pdf_texts(data: bytes) -> str:
    """Everything that can be read out of a PDF: its bytes, every stream without its packing, the text of its pages."""
    reader = PdfReader(BytesIO(data))
    parts = [data.decode("latin-1"), str(reader.metadata)]
    for number in range(1, len(reader.xref[0]) + 1 if reader.xref.get(0) else 1):
        found: Any = reader.get_object(number)
        if isinstance(found, StreamObject):
            parts.append(found.get_data().decode("latin-1", "replace"))
    parts += [page.extract_text() for page in reader.pages]
    return "\n".join(parts)


def printed(language: str = "en", **more: Any) -> PrintedPaper:
    return PrintedPaper(made.learner(language=language), made.figures(language), "1a2b3c4d", "spring", 90, **more)


def screen(language: str = "en", **more: Any) -> str:
    who = made.learner(language=language)
    paper = ScreenPaper(who, made.figures(language), "1a2b3c4d", "spring", "Frame hand", "Pencil.", 90, **more)
    return screen_page(paper, made.course().words[language], {})


def forbidden() -> list[str]:
    names = [name for name in hot_areas(7)[made.spot_key()].values() if "-" in name or "_" in name]
    assert names
    return [*made.HIDDEN, *names, made.spot_key(), "cited_formula", "Tankschool.formula", "0123456789abcdef"]


@pytest.mark.parametrize("language", ["en", "hi"])
@pytest.mark.parametrize("form", [paper_pdf, spoken_pdf])
def test_a_printed_or_spoken_paper_gives_nothing_away(form: Any, language: str) -> None:
    text = pdf_texts(form([printed(language)], made.course().schemes["frame-hand"], made.course()))
    assert "1a2b3c4d-1" in text  # the reading works: what should be there is found
    assert [word for word in forbidden() if word in text] == []


@pytest.mark.parametrize("language", ["en", "hi"])
def test_a_screen_paper_gives_nothing_away(language: str) -> None:
    text = screen(language)
    assert "How long is the wire?" in text
    assert [word for word in forbidden() if word in text] == []


def test_what_a_candidate_sees_does_not_depend_on_what_is_right() -> None:
    words = made.course().words["en"]
    for item in made.items():
        changes: dict[str, object] = {"id": "another"}
        if hasattr(item, "right") and item.kind in ("choice", "spot"):
            changes["right"] = (len(getattr(item, "why", ())) - 1,)
        if item.kind == "number":
            changes |= {"key": 1.0, "shown_key": "1.00", "rounded": 1.0, "absolute": 0.5, "wrong": {}}
        other = item.model_copy(update=changes)
        assert shown("1", other, words, None) == shown("1", item, words, None)


def test_the_seed_of_a_drawing_stands_nowhere() -> None:
    data = json.loads(re.search(r'id="exam-data">(.*?)</script>', screen())[1])  # type: ignore[index]
    assert set(data) == {"exam", "set", "number", "name", "language", "minutes", "questions", "words"}
    keys = {key for question in data["questions"] for key in question}
    assert keys == {
        "label", "kind", "lines", "figure", "note", "unit", "units", "steps", "several", "options", "left",
    }  # fmt: skip


def test_all_three_forms_ask_the_same() -> None:
    page, script = screen(), pdf_texts(spoken_pdf([printed()], made.course().schemes["frame-hand"], made.course()))
    sheet = pdf_texts(paper_pdf([printed()], made.course().schemes["frame-hand"], made.course()))
    for text in ("How long is the wire?", "thick wire", "bend", "hook", "cuts"):
        assert text in page
        assert text in script
        assert text in sheet


def test_the_same_paper_has_the_same_bytes() -> None:
    scheme = made.course().schemes["frame-hand"]
    assert paper_pdf([printed()], scheme, made.course()) == paper_pdf([printed()], scheme, made.course())
    assert spoken_pdf([printed()], scheme, made.course()) == spoken_pdf([printed()], scheme, made.course())
    assert screen() == screen()


def test_a_name_can_not_break_out_of_the_page() -> None:
    name = "</script><script>alert(1)</script>"
    who = Learner(number=1, name=name, language="en", items=made.items())
    paper = ScreenPaper(who, {}, "1a2b3c4d", "spring", "T", "", 0)
    page = screen_page(paper, made.course().words["en"], {})
    assert "<script>alert" not in page


def test_a_rehearsal_says_so_on_every_form() -> None:
    scheme = made.course().schemes["frame-hand"]
    said = made.course().words["en"].say("paper.rehearsal")
    assert said in screen(rehearsal=True)
    assert said not in screen()
    for form in (paper_pdf, spoken_pdf):
        pages = PdfReader(BytesIO(form([printed(rehearsal=True)], scheme, made.course()))).pages
        assert said in " ".join(pages[0].extract_text().split())
