from __future__ import annotations

import pytest

from generator.sheets.flow import Box, Column, Grid, Row, Space, Text
from generator.sheets.page import laid_out, sheet_pdf
from generator.sheets.styles import BODY, Style
from tests.sheets.invented import ABOUT, part
from tests.sheets.layout_checks import faults
from tests.sheets.recorder import recording

WIDTH = 300.0


def test_text_under_9_points_is_refused() -> None:
    with pytest.raises(ValueError, match="too small"):
        Style(size=8.5)


def test_column_adds_heights_and_the_larger_of_two_spaces() -> None:
    one, other = Text("goats", BODY.but(after=4.0)), Text("wall", BODY.but(before=9.0, after=0.0))
    column = Column([one, other])
    assert column.fit(WIDTH) == one.height + 9.0 + other.height


def test_column_can_not_be_cut() -> None:
    assert Column([Space(100), Space(100)]).cut(WIDTH, 120.0) is None


def test_box_is_as_high_as_its_piece_and_its_padding() -> None:
    assert Box(Space(40), padding=6).fit(WIDTH) == 52
    assert Box(Space(40), padding=6, least=90).fit(WIDTH) == 90


def test_open_cells_share_what_fixed_cells_leave() -> None:
    first, second = Space(10), Space(20)
    row = Row([(40.0, Space(5)), (None, first), (None, second)], gap=10)
    assert row.fit(WIDTH) == 20
    assert first.width == second.width == 120


def test_text_is_cut_with_two_lines_on_each_side() -> None:
    text = Text("goat " * 60)
    text.fit(WIDTH)
    halves = text.cut(WIDTH, 2.5 * text.leading)
    assert halves is not None
    upper, rest = halves
    assert upper.fit(WIDTH) == pytest.approx(2 * text.leading)
    assert upper.height + rest.fit(WIDTH) == pytest.approx(text.height)
    assert text.cut(WIDTH, 1.5 * text.leading) is None
    assert Text("goat\ngoat\ngoat").cut(WIDTH, 2.5 * text.leading) is None


def test_table_is_cut_between_rows_and_repeats_its_head() -> None:
    rows = [[Text(f"row {number}"), Text("goat")] for number in range(80)]
    table = Grid(rows, (1, 3), [Text("Number"), Text("Animal")])
    with recording() as made:
        sheet_pdf(ABOUT, [part([table])])
    assert made.pages > 1
    for number in range(1, made.pages + 1):
        assert made.text(number).startswith("Number\nAnimal") or "\nNumber\nAnimal\n" in made.text(number)
    assert [line for line in made.text().splitlines() if line.startswith("row ")] == [f"row {n}" for n in range(80)]
    assert faults(made, *ABOUT.size) == []


def test_the_head_of_a_table_never_stands_alone() -> None:
    table = Grid([[Space(50)] for _ in range(6)], (1,), [Space(20)])
    table.fit(WIDTH)
    assert table.cut(WIDTH, 180.0) is None
    assert table.cut(WIDTH, 210.0) is not None


def rows_of(count: int) -> Grid:
    return Grid([[Space(20.0)] for _ in range(count)], [1.0], [Text("Day")])


def test_a_table_keeps_three_rows_together_on_each_side_of_a_cut() -> None:
    cuts = 0
    for room in range(20, 320, 5):
        halves = rows_of(10).cut(WIDTH, float(room))
        if halves is not None:
            sizes = [len(half._rows) for half in halves if isinstance(half, Grid)]
            assert min(sizes) >= 3
            assert sum(sizes) == 10
            cuts += 1
    assert cuts > 20
    assert rows_of(5).cut(WIDTH, 100.0) is None
    assert rows_of(10).first_height(WIDTH) == pytest.approx(rows_of(3).fit(WIDTH))
    assert rows_of(4).first_height(WIDTH) == pytest.approx(rows_of(4).fit(WIDTH))


def test_a_table_higher_than_a_page_is_cut_wherever_it_must() -> None:
    high = Grid([[Space(400.0)] for _ in range(3)], [1.0])
    assert len(laid_out([high], WIDTH, 750.0, 50.0)) == 3
    halves = rows_of(25).cut(WIDTH, 24 * 28.0 + 20.0)
    assert halves is not None
    assert [len(half._rows) for half in halves if isinstance(half, Grid)] == [22, 3]
