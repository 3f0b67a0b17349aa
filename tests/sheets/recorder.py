"""Records what a sheet draws: every string as typed with its font, size and place, every line and shape."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from io import BytesIO
from typing import Any
from unittest.mock import patch

from reportlab.pdfbase.pdfmetrics import stringWidth
from reportlab.pdfbase.ttfonts import shapeStr
from reportlab.pdfgen.canvas import Canvas

from generator.figures import Scene, pdf
from generator.figures.fonts import REGULAR, draw_text, shaped_width
from generator.sheets import figure_flow, formula_flow, once, page
from generator.sheets.flow import Text
from generator.sheets.text import Segment
from tests.sheets import plain_drawing

_DEVANAGARI = re.compile("[\u0900-\u097f]")
_SHAPES = ("rect", "circle", "line", "setLineWidth", "setLineJoin", "setDash")
_PLACES = ("saveState", "restoreState", "translate", "scale")


@dataclass(frozen=True)
class String:
    """A drawn string: its page from 1, left end and base line in points, what was typed, font, size, width."""

    page: int
    x: float
    y: float
    typed: str
    font: str
    size: float
    width: float


@dataclass
class Recording:
    """The operations of a document, in order, and the strings among them."""

    operations: list[tuple[str, tuple[Any, ...], dict[str, Any]]] = field(default_factory=list)
    strings: list[String] = field(default_factory=list)
    shapes: list[tuple[int, float, float, float, float]] = field(default_factory=list)
    """Page and the left, lower, right and upper end of each rectangle, circle and line."""
    pages: int = 0

    def text(self, number: int = 0) -> str:
        """All that was typed on a page, or on all of them, one string a line."""
        return "\n".join(string.typed for string in self.strings if number in (0, string.page))


class _Path:
    """A path that remembers its calls."""

    def __init__(self, real: Any) -> None:
        self.real = real
        self.calls: list[tuple[str, tuple[Any, ...]]] = []

    def __getattr__(self, name: str) -> Callable[..., Any]:
        method = getattr(self.real, name)

        def call(*args: Any) -> Any:
            self.calls.append((name, args))
            return method(*args)

        return call


@contextmanager
def recording() -> Iterator[Recording]:
    """Within it, every document that is made is also recorded."""
    found = Recording()
    origins = [(0.0, 0.0, 1.0)]

    muted: list[bool] = []

    class Recorder(Canvas):  # type: ignore[misc]
        def beginPath(self) -> _Path:  # noqa: N802 (ReportLab's name)
            return _Path(super().beginPath())

        def drawPath(self, path: Any, *args: Any, **kwargs: Any) -> None:  # noqa: N802
            if isinstance(path, _Path):
                if not muted:
                    found.operations.append(("path", tuple(path.calls), kwargs))
                path = path.real
            super().drawPath(path, *args, **kwargs)

        def showPage(self) -> None:  # noqa: N802
            found.operations.append(("showPage", (), {}))
            found.pages += 1
            super().showPage()

    def kept(name: str) -> Callable[..., Any]:
        method = getattr(Canvas, name)

        def call(self: Canvas, *args: Any, **kwargs: Any) -> Any:
            if muted:
                return method(self, *args, **kwargs)
            found.operations.append((name, args, kwargs))
            left, low, share = origins[-1]
            if name == "saveState":
                origins.append(origins[-1])
            elif name == "restoreState":
                origins.pop()
            elif name == "translate":
                origins[-1] = (left + args[0] * share, low + args[1] * share, share)
            elif name == "scale":
                origins[-1] = (left, low, share * args[0])
            extent = _extent(name, args)
            if extent:
                x1, y1, x2, y2 = (part * share for part in extent)
                found.shapes.append((found.pages + 1, x1 + left, y1 + low, x2 + left, y2 + low))
            return method(self, *args, **kwargs)

        return call

    for name in (*_SHAPES, *_PLACES):
        setattr(Recorder, name, kept(name))
    original = Text.paint

    def keep(x: float, y: float, typed: str, font: str, size: float, width: float) -> None:
        left, low, share = origins[-1]
        place = left + x * share, low + y * share
        found.strings.append(String(found.pages + 1, *place, typed, font, size * share, width * share))

    def paint(self: Text, canvas: Any, x: float, top: float) -> None:
        for left, y, segment in () if muted else self.strings(x, top):
            hand = segment.hand
            keep(left, y, segment.typed, hand.font, hand.size, width_of(segment))
            found.operations.append(("string", (left, y, segment.typed, hand.font, hand.size), {}))
        original(self, canvas, x, top)

    def label(
        canvas: Any, x: float, y: float, text: str, font: str = REGULAR, size: float = 12.0, anchor: str = "start"
    ) -> None:
        width = shaped_width(text, font, size)
        start = x - {"start": 0.0, "middle": 0.5, "end": 1.0}[anchor] * width
        keep(start, y, text, font, size, width)
        found.operations.append(("string", (start, y, text, font, size), {}))
        draw_text(canvas, x, y, text, font, size, anchor)  # type: ignore[arg-type]

    apart = Recorder(BytesIO())
    shown, stamped = once.shown, once.stamped

    def told(draw: once.Draw, x: float, y: float, share: float = 1.0) -> None:
        """Records what the document holds once, as it stands on this page."""
        apart.saveState()
        apart.translate(x, y)
        if share != 1.0:
            apart.scale(share, share)
        draw(apart)
        apart.restoreState()

    def form(canvas: Any, what: Any, box: once.Box, x: float, y: float, share: float, draw: once.Draw) -> None:
        muted.append(True)
        shown(canvas, what, box, x, y, share, draw)
        muted.pop()
        told(draw, x, y, share)

    def stamp(canvas: Any, what: Any, x: float, y: float, draw: once.Draw) -> None:
        muted.append(True)
        stamped(canvas, what, x, y, draw)
        muted.pop()
        told(draw, x, y)

    def scene(what: Scene, canvas: Any, x: float, y: float, width: float) -> None:
        (pdf if muted else plain_drawing.plain)(what, canvas, x, y, width)

    with (
        patch.object(page, "PdfCanvas", Recorder),
        patch.object(once, "shown", form),
        patch.object(once, "stamped", stamp),
        patch.object(figure_flow, "pdf", scene),
        patch.object(Text, "paint", paint),
        patch.object(plain_drawing, "draw_text", label),
        patch.object(formula_flow, "draw_text", label),
    ):
        yield found


def width_of(segment: Segment) -> float:
    """Width of a drawn string in points, by the library's own measures of what was typed.

    Hindi is measured word by word, and apart from a hyphen: in a mixed line the library takes the first word's script
    for all of them.
    """
    font, size = segment.hand.font, segment.hand.size
    width = float(stringWidth(" ", font, size) * segment.typed.count(" "))
    for word in re.split("(-)| ", segment.typed):  # a hyphen is drawn alone: it belongs to no script
        if not word:
            continue
        if _DEVANAGARI.search(word):
            glyphs = shapeStr(word, font, size, force=True)
            width += float(sum(glyph.x_advance for glyph in glyphs.__shapeData__) * size / 1000)
        else:
            width += float(stringWidth(word, font, size))
    return width


def _extent(name: str, args: tuple[Any, ...]) -> tuple[float, float, float, float] | None:
    match name:
        case "rect":
            x, y, width, height = args[:4]
            return x, y, x + width, y + height
        case "line":
            x1, y1, x2, y2 = args[:4]
            return min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2)
        case "circle":
            x, y, radius = args[:3]
            return x - radius, y - radius, x + radius, y + radius
    return None


def replay(made: Recording) -> bytes:
    """The same pages by plain calls of the library: every Hindi string shaped as it is drawn, every shape as it was."""
    out = BytesIO()
    canvas = Canvas(out, pagesize=page.A4, invariant=1, pageCompression=1, initialFontName=REGULAR)
    for name, args, kwargs in made.operations:
        if name == "string":
            x, y, typed, font, size = args
            if _DEVANAGARI.search(typed):
                pen = canvas.beginText(x, y)
                pen.setFont(font, size)
                pen.textOut(shapeStr(typed, font, size))
                canvas.drawText(pen)
            else:
                canvas.setFont(font, size)
                canvas.drawString(x, y, typed)
        elif name == "path":
            path = canvas.beginPath()
            for method, points in args:
                getattr(path, method)(*points)
            canvas.drawPath(path, **kwargs)
        else:
            getattr(canvas, name)(*args, **kwargs)
    canvas.save()
    return out.getvalue()
