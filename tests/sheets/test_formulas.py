from __future__ import annotations

import pytest

from generator.calculations import BOOK
from generator.curriculum import CourseContent, first_taught, taught
from generator.sheets.formulas import formulas_pdf
from generator.sheets.page import A4
from tests.sheets.layout_checks import faults
from tests.sheets.recorder import recording


@pytest.mark.parametrize("language", ["en", "hi"])
def test_every_quantity_that_is_taught_stands_on_it_once_and_nothing_overflows(
    language: str, content: CourseContent
) -> None:
    with recording() as made:
        data = formulas_pdf(language, content)
    assert faults(made, *A4) == []
    text = "".join(made.text().split())
    names = [name for _, some in first_taught(content, content.modules.values()) for name in some]
    assert len(names) == len(set(names)) > 100
    for name in names:
        assert "".join(content.words[language].say_one_of("quantity", name).split()) in text, name
    assert made.pages < len(names) / 6
    assert formulas_pdf(language, content) == data


def test_one_module_has_all_that_it_teaches_even_if_another_does_before(content: CourseContent) -> None:
    with recording() as made:
        formulas_pdf("en", content, ["curing"])
    text = "".join(made.text().split())
    own = [name for name in taught(content, content.modules["curing"]) if name in BOOK.quantities]
    assert own
    for name in own:
        assert "".join(content.words["en"].say_one_of("quantity", name).split()) in text, name
    assert made.pages <= 3
