"""A scene as SVG inside a page: text stays text, ids carry a prefix, looks are classes with plain defaults."""

from __future__ import annotations

import re
from functools import cache
from html import escape
from itertools import groupby

from generator.figures.ink import HANDS, PENS, Ink, Letter
from generator.figures.page import DISC
from generator.figures.parts import shapes
from generator.figures.scene import (
    VIEW,
    Arc,
    Area,
    Circle,
    Hatch,
    Label,
    Line,
    Point,
    Polyline,
    Rect,
    Scene,
    Shape,
    on_circle,
)

_NAMESPACE = ' xmlns="http://www.w3.org/2000/svg"'
_FAMILY = ' font-family="Mukta, sans-serif"'
_HEAVY = (Letter.VALUE, Letter.HEADING, Letter.DISC)
_LOOKS = re.compile(r'<g (class="fig-[^<>]*)>')


def svg(scene: Scene, prefix: str, *, live: bool = True) -> str:
    """The drawing as one line of markup.

    Looks are given as attributes and as classes (`fig-steel`, `fig-name` ...), so a style sheet may change them and
    nothing is lost without one.

    An area that can be pointed at is a button of its own, reached with the keyboard too. It says its letter and
    nothing else; `data-area` holds the letter for the page's script.

    Args:
        scene: what to draw.
        prefix: start of its ids; different for every drawing of a page.
        live: whether areas are buttons; without a question beside the drawing they only have their letters.
    """
    height = scene.height / scene.unit
    title, description = f"{prefix}-title", f"{prefix}-desc"
    writer = _Writer(scene)
    groups = (
        f"<g {_look(kind)}>{''.join(map(writer.shape, members))}</g>"
        for kind, members in groupby(shapes(scene), key=_kind)
    )
    buttons = "".join(map(writer.area, scene.areas)) if live else ""
    role = "group" if buttons else "img"  # what stands inside an image can't be reached
    return (
        f'<svg{_NAMESPACE} viewBox="0 0 {_number(VIEW)} {_number(height)}" role="{role}"'
        f' aria-labelledby="{title} {description}" lang="{scene.language}" class="fig"'
        f'{_FAMILY}><title id="{title}">{escape(scene.title, quote=False)}</title>'
        f'<desc id="{description}">{escape(scene.description, quote=False)}</desc>{"".join(groups)}{buttons}</svg>'
    )


def _kind(shape: Shape) -> Ink | Letter:
    """What decides the look of a shape."""
    if isinstance(shape, Label):
        return shape.letter
    if isinstance(shape, Hatch):
        raise TypeError("a hatch is drawn as its marks")
    return shape.ink


@cache
def _look(kind: Ink | Letter) -> str:
    """Class and plain attributes of a look."""
    if isinstance(kind, Letter):
        hand = HANDS[kind]
        weight = ' font-weight="700"' if kind in _HEAVY else ""
        return f'class="fig-{kind}" font-size="{_number(hand.size)}" fill="{hand.colour}"{weight}'
    pen = PENS[kind]
    stroke = f' stroke-width="{_number(pen.width)}"' if pen.stroke != "none" else ""
    dash = f' stroke-dasharray="{" ".join(map(_number, pen.dash))}"' if pen.dash else ""
    return f'class="fig-{kind}" stroke="{pen.stroke}" fill="{pen.fill}"{stroke}{dash} stroke-linejoin="round"'


@cache
def looks() -> dict[str, str]:
    """The rule of each look, by its class."""
    rules = {}
    for letter, hand in HANDS.items():
        weight = ";font-weight:700" if letter in _HEAVY else ""
        rules[f"fig-{letter}"] = f"font-size:{_number(hand.size)}px;fill:{hand.colour}{weight}"
    for ink, pen in PENS.items():
        width = f";stroke-width:{_number(pen.width)}px" if pen.stroke != "none" else ""
        dash = f";stroke-dasharray:{' '.join(map(_number, pen.dash))}" if pen.dash else ""
        rules[f"fig-{ink}"] = f"stroke:{pen.stroke};fill:{pen.fill}{width}{dash};stroke-linejoin:round"
    return {name: f".{name}{{{rule}}}" for name, rule in rules.items()}


def stylesheet() -> str:
    """The looks as a style sheet: where it lies beside the drawings, `bare` leaves them out of each."""
    return "\n".join([".fig{font-family:Mukta,sans-serif}", *looks().values()]) + "\n"


def bare(markup: str) -> str:
    """Drawings without what `stylesheet` says of them all."""
    plain = markup.replace(_NAMESPACE, "").replace(_FAMILY, "")
    return _LOOKS.sub(lambda group: f"<g {_bare_looks().get(group[1], group[1])}>", plain)


@cache
def _bare_looks() -> dict[str, str]:
    return {_look(kind): f'class="fig-{kind}"' for kind in (*HANDS, *PENS)}


class _Writer:
    """Turns metres with y up into paper units with y down."""

    def __init__(self, scene: Scene) -> None:
        self._unit = scene.unit
        self._height = scene.height

    def _x(self, x: float) -> str:
        return _number(x / self._unit)

    def _y(self, y: float) -> str:
        return _number((self._height - y) / self._unit)

    def _points(self, points: tuple[Point, ...]) -> list[str]:
        unit, height = self._unit, self._height
        return [f"{_number(x / unit)},{_number((height - y) / unit)}" for x, y in points]

    def area(self, area: Area) -> str:
        """A clear button over an area and its letter."""
        x, y = area.mark
        return (
            f'<g class="fig-area" data-area="{area.letter}" role="button" tabindex="0" aria-label="{area.letter}"'
            f' fill="#fff" fill-opacity="0" stroke="none"><polygon points="{" ".join(self._points(area.outline))}"/>'
            f'<circle cx="{self._x(x)}" cy="{self._y(y)}" r="{_number(DISC)}"/></g>'
        )

    def shape(self, shape: Shape) -> str:
        unit, height = self._unit, self._height
        if isinstance(shape, Line):  # most shapes are: the others find their way through the patterns
            (x1, y1), (x2, y2) = shape.start, shape.end
            return (
                f'<line x1="{_number(x1 / unit)}" y1="{_number((height - y1) / unit)}"'
                f' x2="{_number(x2 / unit)}" y2="{_number((height - y2) / unit)}"/>'
            )
        match shape:
            case Polyline(points=points, closed=closed):
                kind = "polygon" if closed else "polyline"
                return f'<{kind} points="{" ".join(self._points(points))}"/>'
            case Rect(corner=(x, y), width=width, height=high):
                return (
                    f'<rect x="{self._x(x)}" y="{self._y(y + high)}" width="{self._x(width)}"'
                    f' height="{self._x(high)}"/>'
                )
            case Circle(centre=(x, y), radius=radius):
                middle = f'cx="{_number(x / unit)}" cy="{_number((height - y) / unit)}"'
                return f'<circle {middle} r="{_number(radius / unit)}"/>'
            case Arc(centre=centre, radius=radius, start=start, sweep=sweep):
                first, last = self._points((on_circle(centre, radius, start), on_circle(centre, radius, start + sweep)))
                large = int(sweep > 180)
                return f'<path d="M{first} A{self._x(radius)} {self._x(radius)} 0 {large} 0 {last}"/>'
            case Label(point=(x, y), text=text, anchor=anchor):
                at = "" if anchor == "start" else f' text-anchor="{anchor}"'
                return f'<text x="{self._x(x)}" y="{self._y(y)}"{at}>{escape(text, quote=False)}</text>'
            case _:
                raise TypeError(f"no markup for a {type(shape).__name__}")


def _number(value: float) -> str:
    """At most two decimals and no trailing zero: finer than any screen, and the same on every machine."""
    text = f"{value:.2f}"
    if text[-1] != "0":
        return text
    text = text.rstrip("0").rstrip(".")
    return "0" if text == "-0" else text
