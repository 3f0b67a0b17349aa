from __future__ import annotations

from dataclasses import replace
from io import BytesIO

import pytest
from pypdf import PdfReader

from generator.problems import MachineError
from generator.sheets.flow import Column, Piece, Space, Text
from generator.sheets.page import content_hash, laid_out, sheet_pdf
from generator.sheets.styles import BODY, HEADING
from tests.sheets.invented import ABOUT, WORDS, part
from tests.sheets.layout_checks import faults
from tests.sheets.recorder import recording

A4 = (595.28, 841.89)


def goats(count: int) -> list[Piece]:
    return [Text("The goats come down to the trough at the slow spring. " * 4) for _ in range(count)]


def test_same_input_gives_the_same_bytes() -> None:
    assert sheet_pdf(ABOUT, [part(goats(3))]) == sheet_pdf(ABOUT, [part(goats(3))])


def test_what_was_drawn_before_does_not_change_the_bytes() -> None:
    """Joined letters get codes in the process; the codes must not follow the order in which letters turn up."""
    hindi = [Text("दीवार की ऊँचाई")]
    first = sheet_pdf(ABOUT, [part(hindi)])
    sheet_pdf(ABOUT, [part([Text("त्र्यक्ष द्वार श्रृंग ह्म ट्ठ")])])
    assert sheet_pdf(ABOUT, [part([Text("दीवार की ऊँचाई")])]) == first


def test_every_page_is_a4_with_number_name_version_and_hash() -> None:
    with recording() as made:
        data = sheet_pdf(ABOUT, [part(goats(30))])
    pages = PdfReader(BytesIO(data)).pages
    assert made.pages == len(pages) > 1
    for number, page in enumerate(pages, start=1):
        assert (float(page.mediabox.width), float(page.mediabox.height)) == pytest.approx(A4, abs=0.1)
        text = page.extract_text()
        assert f"Page {number} of {len(pages)}" in text
        assert "Goat card · version 1.2.3 · content 0123456789" in text
        assert "The same text is on the page The goats." in text
    assert faults(made, *ABOUT.size) == []


def test_a_sideways_page_is_a4_on_its_long_side() -> None:
    page = PdfReader(BytesIO(sheet_pdf(replace(ABOUT, sideways=True), [part(goats(1))]))).pages[0]
    assert (float(page.mediabox.height), float(page.mediabox.width)) == pytest.approx(A4, abs=0.1)


def test_parts_are_numbered_by_themselves() -> None:
    with recording() as made:
        sheet_pdf(ABOUT, [part(goats(30)), part(goats(1))])
    assert "Page 1 of 1" in made.text(made.pages)


def test_running_head_stands_on_all_pages_but_the_first() -> None:
    with recording() as made:
        sheet_pdf(ABOUT, [part(goats(30), head="Herd book")])
    assert "Herd book" not in made.text(1)
    assert all("Herd book" in made.text(number) for number in range(2, made.pages + 1))


def test_metadata_outline_and_accessible_version() -> None:
    heading = Text("Water", HEADING)
    heading.outline = "Water"
    reader = PdfReader(BytesIO(sheet_pdf(ABOUT, [part([heading, *goats(1)])])))
    assert reader.metadata is not None
    assert reader.metadata.title == "Goat card"
    assert reader.metadata.subject == WORDS.say("sheet.accessible", page="The goats")
    assert reader.trailer["/Root"]["/Lang"] == "en"
    goat, water = reader.outline
    assert goat["/Title"] == "Goats"
    assert water[0]["/Title"] == "Water"


def test_every_font_is_embedded() -> None:
    reader = PdfReader(BytesIO(sheet_pdf(ABOUT, [part([*goats(1), Text("टंकी", HEADING)])])))
    fonts = [font.get_object() for page in reader.pages for font in page["/Resources"]["/Font"].values()]
    assert fonts
    assert all("/FontFile2" in font["/FontDescriptor"] for font in fonts)


def test_a_heading_goes_to_the_next_page_with_its_text() -> None:
    heading = Text("Water", HEADING)
    pages = laid_out([Space(600.0), heading, Column([Space(100.0)])], 400.0, 750.0, 50.0)
    assert [len(page) for page in pages] == [1, 2]
    assert pages[1][0].piece is heading


def test_a_piece_that_can_not_be_cut_goes_to_the_next_page_whole() -> None:
    pages = laid_out([Space(600.0), Column([Space(60.0), Space(60.0)])], 400.0, 750.0, 50.0)
    assert [len(page) for page in pages] == [1, 1]


def test_a_piece_higher_than_a_page_stops_the_machine() -> None:
    with pytest.raises(MachineError, match="more than a page holds"):
        laid_out([Text("a"), Column([Space(900.0)])], 400.0, 750.0, 50.0)


def movable(height: float) -> Piece:
    piece = Space(height)
    piece.changes_place = True
    return piece


def placed(pieces: list[Piece]) -> list[list[int]]:
    """Pages of 700 points, with the places that their pieces had in the list."""
    pages = laid_out(pieces, 400.0, 750.0, 50.0)
    return [[next(n for n, piece in enumerate(pieces) if piece is one.piece) for one in page] for page in pages]


def test_what_fits_is_put_before_what_would_leave_much_of_a_page_empty() -> None:
    assert placed([movable(300.0), movable(600.0), movable(150.0), movable(150.0)]) == [[0, 2, 3], [1]]


def test_nothing_is_put_forward_where_little_would_stay_empty() -> None:
    assert placed([movable(540.0), movable(300.0), movable(150.0)]) == [[0], [1, 2]]


def test_nothing_is_put_before_or_past_a_piece_that_keeps_its_place() -> None:
    assert placed([movable(300.0), Space(600.0), movable(150.0)]) == [[0], [1], [2]]
    assert placed([movable(300.0), movable(600.0), Space(50.0), movable(150.0)]) == [[0], [1, 2], [3]]


def test_what_waits_stands_at_the_top_of_the_next_page() -> None:
    heights = [300.0, 600.0, 650.0, *[380.0] * 9]
    pages = placed([movable(height) for height in heights])
    assert pages[0] == [0, 3]
    assert pages[1:3] == [[1], [2]]


def waiting(height: float) -> Piece:
    piece = Space(height)
    piece.may_wait = True
    return piece


def test_what_may_wait_lets_the_next_words_fill_the_page_and_begins_the_next_one() -> None:
    """Two that may wait keep their order, though the second would fit, and nothing is lost where nothing follows."""
    assert placed([Space(400.0), waiting(500.0), waiting(50.0), Space(250.0), Space(300.0)]) == [[0, 3], [1, 2], [4]]
    assert placed([Space(400.0), waiting(500.0), Space(250.0)]) == [[0, 2], [1]]
    assert placed([Space(400.0), waiting(500.0)]) == [[0], [1]]


def test_nothing_waits_where_little_would_stay_empty() -> None:
    assert placed([Space(540.0), waiting(300.0), Space(150.0)]) == [[0], [1, 2]]


def test_a_long_text_runs_over_pages_without_loss() -> None:
    text = Text(" ".join(str(number) for number in range(3000)), BODY)
    with recording() as made:
        sheet_pdf(ABOUT, [part([text], head="")])
    words = [word for string in made.strings if string.size == BODY.size for word in string.typed.split()]
    assert words == [str(number) for number in range(3000)]


def test_content_hash_changes_with_names_and_bytes() -> None:
    hashes = {content_hash(parts) for parts in ({"a": b"1"}, {"a": b"2"}, {"b": b"1"}, {"a": b"1", "b": b""})}
    assert len(hashes) == 4
