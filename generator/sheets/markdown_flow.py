"""The Markdown of lessons and handouts as pieces: headings, paragraphs, bold, lists, tables, quotes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from xml.etree.ElementTree import Element

import markdown

from generator.problems import MachineError, RefusedError
from generator.sheets.flow import Box, Column, Grid, Piece, Row, Space, Text
from generator.sheets.styles import BODY, CELL, HEADING, SUBHEADING, TIGHT, TITLE, Style
from generator.sheets.text import Run

_BULLET = "•"
_MARKER = 20.0
"""Points that a list's bullets and numbers take."""
_WIDEST, _WRITTEN, _TO_WRITE = 180.0, 80.0, 15.0
"""Points: most that a text asks for in a table; width and height that are left free to write in."""
_HEADINGS: Mapping[str, Style] = {"h1": TITLE, "h2": HEADING, "h3": SUBHEADING, "h4": SUBHEADING}
_SIMPLE = ("a", "code", "span")
"""Inline elements that print shows as plain text."""


def pieces_of(text: str) -> list[Piece]:
    """A Markdown text as pieces, in order.

    Args:
        text: Markdown whose values are filled in. HTML in it is printed as it stands.

    Raises:
        RefusedError: an element that a sheet can't show, such as a picture.
    """
    return list(_blocks(_tree(text), BODY))


def _tree(text: str) -> Element:
    reader = markdown.Markdown(extensions=["tables", "sane_lists"], output_format="xhtml")
    reader.preprocessors.deregister("html_block")
    for pattern in ("html", "entity"):
        reader.inlinePatterns.deregister(pattern)
    lines = text.split("\n")
    for preprocessor in reader.preprocessors:
        lines = preprocessor.run(lines)
    root = reader.parser.parseDocument(lines).getroot()
    if root is None:
        raise MachineError("the Markdown library gave no text back")
    for step in reader.treeprocessors:
        changed = step.run(root)
        root = root if changed is None else changed
    return root


def _blocks(parent: Element, style: Style) -> Iterator[Piece]:
    for element in parent:
        yield from _block(element, style)


def _block(element: Element, style: Style) -> Iterator[Piece]:
    name = element.tag
    if name in _HEADINGS:
        heading = Text(_runs(element), _HEADINGS[name])
        heading.outline = heading.plain()
        yield heading
    elif name == "p":
        yield Text(_runs(element), style)
    elif name in ("ul", "ol"):
        yield from _list(element, style)
    elif name == "table":
        yield _table(element)
    elif name == "blockquote":
        yield Box(Column(list(_blocks(element, TIGHT))), bar=4.0, before=4.0, after=7.0)
    elif name == "hr":
        yield Space(8.0)
    else:
        raise RefusedError(
            f"a printed sheet can't show the Markdown of '<{name}>'; write headings, paragraphs, bold, lists or tables"
        )


def _list(element: Element, style: Style) -> Iterator[Piece]:
    first = int(element.get("start", "1"))
    for number, item in enumerate(element):
        marker = f"{first + number}." if element.tag == "ol" else _BULLET
        last = number == len(element) - 1
        column = Column(list(_item(item)))
        yield Row([(_MARKER, Text(marker, TIGHT)), (None, column)], gap=0, after=style.after if last else TIGHT.after)


def _item(item: Element) -> Iterator[Piece]:
    """A list item: its own text, then the paragraphs and lists in it."""
    own = list(_inline(item, bold=False, stop=("p", "ul", "ol")))
    if any(run.text.strip() for run in own):
        yield Text(own, TIGHT)
    for child in item:
        if child.tag in ("p", "ul", "ol"):
            yield from _block(child, TIGHT)


def _table(element: Element) -> Grid:
    """Columns as wide as their cells want; a cell of four underlines or more is left free to write in."""
    rows = [list(row) for row in element.iter("tr")]
    cells = [[Text(_runs(cell), CELL.but(bold=cell.tag == "th")) for cell in row] for row in rows]
    head = cells.pop(0) if rows and rows[0][0].tag == "th" else []
    everything = [head, *cells] if head else cells
    columns = len(everything[0])
    widths = [max(_wanted(row[i]) + 2 * Grid.sides for row in everything) for i in range(columns)]
    return Grid([[Space(_TO_WRITE) if _free(cell) else cell for cell in row] for row in cells], widths, head)


def _free(cell: Text) -> bool:
    text = cell.plain().strip()
    return len(text) >= 4 and not text.strip("_")


def _wanted(cell: Text) -> float:
    return _WRITTEN if _free(cell) else min(cell.natural_width(), _WIDEST)


def _runs(element: Element) -> list[Run]:
    runs = list(_inline(element, bold=False))
    if runs:
        runs[0] = Run(runs[0].text.lstrip(), runs[0].bold)
        runs[-1] = Run(runs[-1].text.rstrip(), runs[-1].bold)
    return runs


def _inline(element: Element, *, bold: bool, stop: tuple[str, ...] = ()) -> Iterator[Run]:
    if element.text:
        yield Run(_joined(element.text), bold)
    for child in element:
        if child.tag in ("strong", "em"):
            yield from _inline(child, bold=True)
        elif child.tag == "br":
            yield Run("\n", bold)
        elif child.tag in _SIMPLE:
            yield from _inline(child, bold=bold)
        elif child.tag not in stop:
            raise RefusedError(
                f"a printed sheet can't show '<{child.tag}>' inside a line; write plain words or bold ones"
            )
        if child.tail:
            yield Run(_joined(child.tail), bold)


def _joined(text: str) -> str:
    """A line break in the file is a space in print."""
    return text.replace("\n", " ")
