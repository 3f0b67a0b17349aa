"""Pages told shorter: white space and rows of formulas that nobody sees."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculations import BOOK
from generator.formula import mathml
from generator.site.slim_page import slim_math, slim_space

pieces = st.sampled_from(["<p>", "</p>", "a", "b ", " \n\n  ", "\t\n", " ", "\n"])


@given(st.lists(pieces).map("".join))
def test_the_words_and_tags_of_a_page_stay_in_their_order(page: str) -> None:
    slim = slim_space(page)
    assert slim.split() == page.split()
    assert [bool(gap) for gap in re.split(r"\S+", slim)] == [bool(gap) for gap in re.split(r"\S+", page)]
    assert "\n\n" not in slim


@pytest.mark.parametrize("tag", ["pre", "textarea", "script", "style"])
def test_what_shows_its_white_space_keeps_it(tag: str) -> None:
    kept = f"<{tag} class='x'>\n\n  a\n</{tag}>"
    assert slim_space(f"<p>a\n\n</p>{kept}\n\n<p>") == f"<p>a\n</p>{kept}\n<p>"


def shown(math: str) -> str:
    """What a formula says, without its rows."""
    return re.sub(r"</?mrow>", "", math)


def test_formulas_lose_rows_round_one_element_and_nothing_else() -> None:
    longer = shorter = 0
    for name in BOOK.quantities:
        whole = mathml(BOOK, name)
        slim = slim_math(whole)
        assert shown(slim) == shown(whole)
        assert slim.count("<mrow>") == slim.count("</mrow>")
        assert slim_math(slim) == slim
        fractions = re.findall(r"<mfrac>", whole)
        assert len(fractions) == slim.count("<mfrac>")
        longer, shorter = longer + len(whole), shorter + len(slim)
    assert shorter < 0.95 * longer


def test_a_row_round_text_or_many_stays() -> None:
    for math in (
        "<math><mrow>text</mrow></math>",
        "<math><mrow><mi>a</mi><mi>b</mi></mrow></math>",
        "<p><mrow><mi>a</mi></mrow></p>",
    ):
        assert slim_math(math) == math
