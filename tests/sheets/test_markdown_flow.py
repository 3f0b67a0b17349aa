from __future__ import annotations

import pytest

from generator.problems import RefusedError
from generator.sheets.flow import Box, Grid, Text
from generator.sheets.markdown_flow import pieces_of
from generator.sheets.page import sheet_pdf
from tests.sheets.invented import ABOUT, part
from tests.sheets.layout_checks import faults
from tests.sheets.recorder import Recording, recording

SAMPLE = """## Water

The goats drink **twice**
a day, so *measure*.

- trough
- spring
    1. first
    2. second

3. three
4. four

| Animal | Litres |
|---|---|
| **goat** | 6 |
| बकरी | 6 |

> Nobody drinks from the trough.
"""


def printed(text: str) -> Recording:
    with recording() as made:
        sheet_pdf(ABOUT, [part(pieces_of(text))])
    assert faults(made, *ABOUT.size) == []
    return made


def test_every_word_is_printed_in_order() -> None:
    text = " ".join(printed(SAMPLE).text().split())
    assert text.startswith(
        "Water The goats drink twice a day, so measure . • trough • spring 1. first 2. second 3. three 4. four "
        "Animal Litres goat 6 बकरी 6 Nobody drinks from the trough."
    )


def test_bold_words_are_set_in_the_bold_font() -> None:
    fonts = {string.typed: string.font for string in printed("plain and **bold** words").strings}
    assert fonts["bold"] != fonts["plain and"] == fonts["words"]


def test_headings_are_in_the_outline_and_stay_with_their_text() -> None:
    (heading, _) = pieces_of("## Water\n\nText.")
    assert isinstance(heading, Text)
    assert heading.outline == "Water"
    assert heading.keep


def test_tables_and_quotes() -> None:
    kinds = [type(piece) for piece in pieces_of(SAMPLE)]
    assert Grid in kinds
    assert Box in kinds


def test_html_is_printed_and_not_obeyed() -> None:
    text = printed('Less <b>is</b> more & 3 < 4 <font size="1">x</font>').text()
    assert 'Less <b>is</b> more & 3 < 4 <font size="1">x</font>' in " ".join(text.split("\n"))


def test_a_picture_is_refused_in_words() -> None:
    with pytest.raises(RefusedError, match="can't show '<img>'"):
        pieces_of("![goat](goat.png)")
