"""How things look: inks of lines and surfaces, letters, marks of earth, mortar and water.

Made for a cheap black and white printer first. Steel is solid black or thickly outlined, mortar is dots, earth is
slanted strokes, water is short level strokes; colour only repeats what the marks say.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from generator.figures.fonts import BOLD, REGULAR


class Ink(StrEnum):
    """What a line or a surface stands for."""

    STEEL = "steel"
    """Bars and hoops: solid."""
    STEEL_EDGE = "steel-edge"
    """Steel drawn so near that both its edges show."""
    WIRE = "wire"
    WIRE_SOLID = "wire-solid"
    FACE = "face"
    """Where the mortar ends."""
    MORTAR = "mortar"
    GROUND = "ground"
    GROUND_MARK = "ground-mark"
    WATER = "water"
    THING = "thing"
    """A hand, a foot or a bucket that gives the size."""
    THING_LINE = "thing-line"
    BREAK = "break"
    """Where the drawing ends and the thing goes on."""
    MEASURE = "measure"
    ARROW = "arrow"
    LEADER = "leader"
    NUMBER_DISC = "number-disc"


class HatchKind(StrEnum):
    """What a marked surface is."""

    GROUND = "ground"
    MORTAR = "mortar"
    WATER = "water"


class Letter(StrEnum):
    """What a text is."""

    NAME = "name"
    VALUE = "value"
    HEADING = "heading"
    NOTE = "note"
    DISC = "disc"


@dataclass(frozen=True, slots=True)
class Pen:
    """Look of an ink: stroke and fill colour (`none` for neither), width of the line and dashes in paper units."""

    stroke: str
    fill: str
    width: float
    dash: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Hand:
    """Look of a text: font, height of the em in paper units, colour."""

    font: str
    size: float
    colour: str


_BLACK, _PAPER = "#141414", "#ffffff"
_MEASURED = "#0d4f5a"

PENS: dict[Ink, Pen] = {
    Ink.STEEL: Pen("none", _BLACK, 0.0),
    Ink.STEEL_EDGE: Pen(_BLACK, "#dfe3e4", 1.5),
    Ink.WIRE: Pen(_BLACK, "none", 1.5),
    Ink.WIRE_SOLID: Pen(_BLACK, "#b5713d", 1.2),
    Ink.FACE: Pen(_BLACK, "none", 1.3),
    Ink.MORTAR: Pen("none", "#5a5347", 0.0),
    Ink.GROUND: Pen(_BLACK, "none", 1.8),
    Ink.GROUND_MARK: Pen("#5b4630", "none", 1.0),
    Ink.WATER: Pen("#1d6a86", "none", 1.1),
    Ink.THING: Pen("#3a3128", "#f3e6d3", 1.2),
    Ink.THING_LINE: Pen("#3a3128", "none", 1.2),
    Ink.BREAK: Pen("#4c4c4c", "none", 1.0),
    Ink.MEASURE: Pen(_MEASURED, "none", 0.9),
    Ink.ARROW: Pen("none", _MEASURED, 0.0),
    Ink.LEADER: Pen("#4c4c4c", "none", 0.9),
    Ink.NUMBER_DISC: Pen("none", _BLACK, 0.0),
}

HANDS: dict[Letter, Hand] = {
    Letter.NAME: Hand(REGULAR, 14.0, _BLACK),
    Letter.VALUE: Hand(BOLD, 14.5, _BLACK),
    Letter.HEADING: Hand(BOLD, 14.5, _BLACK),
    Letter.NOTE: Hand(REGULAR, 13.0, "#333333"),
    Letter.DISC: Hand(BOLD, 14.0, _PAPER),
}
