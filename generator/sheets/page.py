"""The base of every sheet: A4, margins, running head, footer, outline and metadata; laid out first, then written.

All pages of a part are laid out before the first is drawn, so that "page 2 of 3" is known. The same input gives the
same bytes: no clock, no random name, no file is asked.
"""

from __future__ import annotations

import hashlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from io import BytesIO

from reportlab import rl_config
from reportlab.lib.pagesizes import A4
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas as PdfCanvas

from generator.figures.fonts import REGULAR, fonts
from generator.problems import MachineError
from generator.sheets import once
from generator.sheets.flow import Canvas, Piece, Text
from generator.sheets.styles import FOOT, FOOTER, MARGIN, THIN
from generator.words import Words

HASH_LENGTH = 10
rl_config.useA85 = 0  # text form of compressed bytes: a quarter larger, slow to make, and no use since e-mail is clean
EMPTY = 0.25
"""Share of a page: where more would stay empty below, a later piece that may change its place is put there."""
_LOOKED_AT = 5
"""How many pieces, from the one that doesn't fit."""
_FOOT_LINE = FOOT - 3 * mm
_PAGE_NUMBER = FOOTER.but(bold=True, align="right")


def content_hash(parts: Mapping[str, bytes]) -> str:
    """Ten letters and digits that change with any byte of what a sheet was made from.

    Args:
        parts: the content by name.

    Example:
        >>> content_hash({"a": b"b"}) == content_hash({"ab": b""})
        False
    """
    total = hashlib.sha256()
    for name in sorted(parts):
        for piece in (name.encode("utf-8"), parts[name]):
            total.update(len(piece).to_bytes(8, "big") + piece)
    return total.hexdigest()[:HASH_LENGTH]


@dataclass(frozen=True, slots=True)
class About:
    """What a document says about itself, on every page and in its metadata.

    Args:
        name: what the document is called.
        language: main language code.
        version: of the course.
        content: hash of what it was made from.
        sideways: whether the page lies on its long side.
    """

    name: str
    language: str
    version: str
    content: str
    sideways: bool = False

    @property
    def size(self) -> tuple[float, float]:
        """Width and height in points."""
        width, height = A4
        return (height, width) if self.sideways else (width, height)


@dataclass(frozen=True, slots=True)
class Part:
    """Pages that are numbered together, such as one learner's sheet.

    Args:
        name: of the sheet, as people call it; on every page.
        page: name of the page that is its accessible version; empty where that is the plan told as text.
        title: entry in the outline.
        head: running head of the pages after the first; empty for none.
        words: of the language of the head and footer.
        pieces: what stands on the pages.
        told: where someone who can't read print finds the same, if that is neither a page nor the plan.
    """

    name: str
    page: str
    title: str
    head: str
    words: Words
    pieces: Sequence[Piece]
    told: str = ""


def _accessible(part: Part) -> str:
    """Where someone who can't read print finds the same."""
    if part.told:
        return part.told
    if not part.page:
        return part.words.say("sheet.accessible_plan")
    return part.words.say("sheet.accessible", page=part.page)


@dataclass(frozen=True, slots=True)
class _Placed:
    piece: Piece
    top: float


def sheet_pdf(about: About, parts: Sequence[Part]) -> bytes:
    """A document of one or more parts.

    Args:
        about: what it says about itself.
        parts: in order.

    Raises:
        MachineError: shaping is missing, a sign has no glyph, or a piece is higher than a page.
    """
    fonts()
    out = BytesIO()
    canvas = PdfCanvas(
        out,
        pagesize=about.size,
        invariant=1,
        pageCompression=1,
        initialFontName=REGULAR,  # the library's own first font would not be embedded
        lang=about.language,
    )
    canvas.setTitle(about.name)
    canvas.setAuthor("Tankschool")
    canvas.setCreator("Tankschool")
    canvas.setSubject(_accessible(parts[0]))
    canvas.setKeywords(f"version {about.version}, content {about.content}")
    canvas.setViewerPreference("DisplayDocTitle", "true")
    for number, part in enumerate(parts):
        _write(canvas, about, part, number)
    canvas.showOutline()
    canvas.save()
    return out.getvalue()


def _write(canvas: Canvas, about: About, part: Part, number: int) -> None:
    width, height = about.size
    head = _head(part, width)
    footer = _Footer(about, part)
    pages = part_pages(part, width, height)
    for count, page in enumerate(pages, start=1):
        if count == 1:
            _bookmark(canvas, f"part-{number}", part.title, 0, height)
        for place, placed in enumerate(page):
            if placed.piece.outline:
                _bookmark(canvas, f"part-{number}-{count}-{place}", placed.piece.outline, 1, placed.top)
            placed.piece.paint(canvas, MARGIN, placed.top)
        if head and count > 1:
            head.paint(canvas, MARGIN, height - MARGIN)
            canvas.setLineWidth(THIN)
            canvas.line(MARGIN, height - MARGIN - head.height - 2, width - MARGIN, height - MARGIN - head.height - 2)
        footer.paint(canvas, width, count, len(pages))
        canvas.showPage()


def part_pages(part: Part, width: float, height: float) -> list[list[_Placed]]:
    """The pages of a part, as they are drawn.

    Args:
        part: with its pieces.
        width: of the page, points.
        height: of the page, points.

    Raises:
        MachineError: a piece is higher than a page.
    """
    head = _head(part, width)
    return laid_out(part.pieces, width - 2 * MARGIN, height - MARGIN, FOOT, head.height + 8 if head else 0.0)


def rooms(part: Part, width: float, height: float) -> tuple[float, float]:
    """Height that is still free on a part's last page, and that of a page after it; points.

    Args:
        part: with its pieces.
        width: of the page, points.
        height: of the page, points.
    """
    last, head = part_pages(part, width, height)[-1][-1], _head(part, width)
    low = last.top - last.piece.height - last.piece.after
    return low - FOOT, height - MARGIN - FOOT - (head.height + 8 if head else 0.0)


def _head(part: Part, width: float) -> Text | None:
    if not part.head:
        return None
    head = Text(part.head, FOOTER.but(size=10.0))
    head.fit(width - 2 * MARGIN)
    return head


def _bookmark(canvas: Canvas, key: str, title: str, level: int, top: float) -> None:
    canvas.bookmarkHorizontal(key, 0, top)
    canvas.addOutlineEntry(title, key, level, closed=0)


def laid_out(
    pieces: Sequence[Piece], width: float, top: float, bottom: float, head: float = 0.0
) -> list[list[_Placed]]:
    """Pieces placed on pages, from the top down.

    Args:
        pieces: in order.
        width: of the text, points.
        top: where the first piece starts, points from the page's lower edge.
        bottom: where the last piece ends at the latest.
        head: room for the running head on all pages but the first.

    Raises:
        MachineError: a piece that can't be split is higher than a page.
    """
    pages: list[list[_Placed]] = [[]]
    y, space = top, 0.0
    todo = list(reversed(pieces))
    waiting: list[Piece] = []
    while todo or waiting:
        if waiting and (not todo or todo[-1].begins_page or not pages[-1]):
            todo += reversed(waiting)
            waiting = []
            if pages[-1]:
                pages.append([])
                y, space = top - head, 0.0
        piece = todo.pop()
        if piece.begins_page and pages[-1]:
            pages.append([])
            y, space = top - head, 0.0
        if waiting and piece.may_wait:
            waiting.append(piece)
            continue
        gap = max(space, piece.before) if pages[-1] else 0.0
        piece.fit(width)
        room = y - gap - bottom + 1e-6
        follow = _followers(piece, todo, width)
        if piece.height + follow <= room or (piece.height <= room and not pages[-1]):
            pages[-1].append(_Placed(piece, y - gap))
            y -= gap + piece.height
            space = piece.after
            continue
        halves = None if piece.height <= room else piece.cut(width, room)
        if halves is None and not pages[-1]:
            raise MachineError(f"a piece of the sheet is {piece.height / mm:.0f} mm high, more than a page holds")
        if halves is not None:
            upper, rest = halves
            upper.fit(width)
            pages[-1].append(_Placed(upper, y - gap))
            todo.append(rest)
        else:
            if piece.may_wait and todo and room > EMPTY * (top - bottom):
                waiting.append(piece)
                continue
            todo.append(piece)
            if room > EMPTY * (top - bottom) and _brought_forward(todo, width, room):
                continue
        pages.append([])
        y, space = top - head, 0.0
    return pages


def _brought_forward(todo: list[Piece], width: float, room: float) -> bool:
    """Put the first of the next pieces that fits into the room before those that don't, if all may change places.

    What has to wait stands at the top of the next page, so no piece moves by more than a page.
    """
    for place in range(len(todo) - 1, max(-1, len(todo) - 1 - _LOOKED_AT), -1):
        piece = todo[place]
        if not piece.changes_place:
            return False
        if max(piece.before, todo[-1].before) + piece.fit(width) <= room:
            todo.append(todo.pop(place))
            return True
    return False


def _followers(piece: Piece, todo: Sequence[Piece], width: float) -> float:
    """Height that must be free below a heading: the headings and the first lines or piece that it announces."""
    needed, place = 0.0, len(todo) - 1
    while piece.keep and place >= 0:
        after, piece = piece.after, todo[place]
        piece.fit(width)
        needed += max(after, piece.before)
        needed += piece.first_height(width)
        place -= 1
    return needed


class _Footer:
    """The sheet's name, version and hash, the page with the accessible version, and the page number."""

    number_width = 34 * mm

    def __init__(self, about: About, part: Part) -> None:
        words = self._words = part.words
        self._name = Text(
            words.say("sheet.footer", name=part.name, version=about.version, content=about.content), FOOTER
        )
        self._accessible = Text(_accessible(part), FOOTER)

    def paint(self, canvas: Canvas, width: float, page: int, pages: int) -> None:
        number = Text(self._words.say("sheet.page_of", page=page, pages=pages), _PAGE_NUMBER)
        number.fit(self.number_width)
        self._name.fit(width - 2 * MARGIN - self.number_width)
        self._accessible.fit(width - 2 * MARGIN)
        number.paint(canvas, width - MARGIN - self.number_width, _FOOT_LINE - 2)
        told = self._name.plain(), self._accessible.plain()
        box = 0.0, 0.0, round(width, 2), round(FOOT, 2)
        once.shown(canvas, told, box, 0.0, 0.0, 1.0, lambda pen: self._same(pen, width))

    def _same(self, canvas: Canvas, width: float) -> None:
        """What is the same on every page."""
        canvas.setLineWidth(THIN)
        canvas.line(MARGIN, _FOOT_LINE, width - MARGIN, _FOOT_LINE)
        self._name.paint(canvas, MARGIN, _FOOT_LINE - 2)
        self._accessible.paint(canvas, MARGIN, _FOOT_LINE - 2 - self._name.height)
