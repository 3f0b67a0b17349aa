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
    RUST = "rust"
    CRACK = "crack"
    EARTH_DROP = "earth-drop"
    """Mud on a wall."""
    WALL_FACE = "wall-face"
    """A plastered face seen from the front."""
    WATER_BODY = "water-body"
    """Running and standing water, drops."""
    SHEET = "sheet"
    """Clear plastic."""
    HOLE = "hole"
    """Where mortar should be and is none."""
    HOOP_LINE = "hoop-line"
    LOOSE = "loose"
    """Loose earth."""
    STRING = "string"
    BODY = "body"
    """Something cut through that hides what lies behind it; its hatch says what it is of."""
    WOOD = "wood"
    CLOTH = "cloth"
    """Sacks and clothes."""
    PLASTIC = "plastic"
    """Plastic sheet."""
    SCREEN = "screen"
    """Gauze or mesh so fine that its wires can't be drawn."""
    LINED = "lined"
    """A channel lined with stones or mortar."""
    CROSS = "cross"
    """Over what is wrong; the word stands beside it."""
    STONE = "stone"
    CONCRETE = "concrete"
    GRAVEL = "gravel"
    """Corners of stones in concrete."""
    MORTAR_CUT = "mortar-cut"
    """Mortar cut through, so thin that dots alone would not show it."""
    WATER_LINE = "water-line"
    """The level of the water."""
    WIRE_SECOND = "wire-second"
    """Wire of a second strip, told from the first also in black and white because it is thinner."""
    EDGE_LINE = "edge-line"
    """Mesh seen along its edge."""
    EDGE_SECOND = "edge-second"
    MESH_TURNED = "mesh-turned"
    """Mesh of the floor, told from the wall's own."""
    JOINT = "joint"
    """Between two days of work: rough."""
    TIE = "tie"
    TIE_LINE = "tie-line"
    PULL = "pull"
    """How much something pulls: the wider, the more."""
    FRAME_LINE = "frame-line"
    """The middle of the bars, where no single bar is drawn."""
    STEEL_LINE = "steel-line"
    """Bent sheet or a thin rod, as a line of its own."""
    PAPER = "paper"
    """Behind a text that stands on marks."""
    LEADER_DOT = "leader-dot"


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
    Ink.RUST: Pen("#4a1c0a", "#8a3d14", 0.8),
    Ink.CRACK: Pen(_BLACK, "none", 0.7),
    Ink.EARTH_DROP: Pen("#5b4630", "#b9a78e", 0.8),
    Ink.WALL_FACE: Pen(_BLACK, "#f1efea", 1.1),
    Ink.WATER_BODY: Pen("#1d6a86", "#bfe0ec", 1.0),
    Ink.SHEET: Pen("#1d6a86", "#eef6f9", 1.1),
    Ink.HOLE: Pen(_BLACK, _PAPER, 1.4),
    Ink.HOOP_LINE: Pen(_BLACK, "none", 3.0),
    Ink.LOOSE: Pen("#5b4630", _PAPER, 1.0),
    Ink.STRING: Pen("#8c1a1a", "none", 1.0),
    Ink.BODY: Pen(_BLACK, _PAPER, 1.3),
    Ink.WOOD: Pen("#3a3128", "#e6d0a8", 1.0),
    Ink.CLOTH: Pen("#3a3128", "#cfd8d6", 1.1),
    Ink.PLASTIC: Pen("#3d4a52", "#eef3f6", 1.3),
    Ink.SCREEN: Pen(_BLACK, "none", 2.2, (1.6, 1.4)),
    Ink.LINED: Pen("#5a5347", "none", 3.2),
    Ink.CROSS: Pen("#8c1a1a", "none", 2.6),
    Ink.STONE: Pen("#3a3128", "#e4dccd", 1.0),
    Ink.CONCRETE: Pen(_BLACK, "#cbc8c2", 1.1),
    Ink.GRAVEL: Pen("#4a453c", "none", 0.8),
    Ink.MORTAR_CUT: Pen(_BLACK, "#dcd5c6", 1.1),
    Ink.WATER_LINE: Pen("#1d6a86", _PAPER, 1.4),
    Ink.WIRE_SECOND: Pen("#7a4a1e", "none", 0.8),
    Ink.EDGE_LINE: Pen(_BLACK, "none", 2.6),
    Ink.EDGE_SECOND: Pen("#7a4a1e", "none", 2.6, (5.0, 2.0)),
    Ink.MESH_TURNED: Pen("#7a4a1e", "none", 2.4, (4.0, 2.0)),
    Ink.JOINT: Pen(_BLACK, "none", 2.2),
    Ink.TIE: Pen(_BLACK, "#e3a869", 1.3),
    Ink.TIE_LINE: Pen(_BLACK, "none", 1.5),
    Ink.PULL: Pen(_BLACK, "#7fb3c0", 1.1),
    Ink.FRAME_LINE: Pen(_BLACK, "none", 1.2, (5.0, 2.5)),
    Ink.STEEL_LINE: Pen(_BLACK, "none", 2.0),
    Ink.PAPER: Pen("none", _PAPER, 0.0),
    Ink.LEADER_DOT: Pen("none", "#4c4c4c", 0.0),
}

HANDS: dict[Letter, Hand] = {
    Letter.NAME: Hand(REGULAR, 14.0, _BLACK),
    Letter.VALUE: Hand(BOLD, 14.5, _BLACK),
    Letter.HEADING: Hand(BOLD, 14.5, _BLACK),
    Letter.NOTE: Hand(REGULAR, 13.0, "#333333"),
    Letter.DISC: Hand(BOLD, 14.0, _PAPER),
}
