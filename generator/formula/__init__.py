"""Formula: how a quantity is declared, evaluated, shown and translated.

A quantity is one plain Python function. Calling it is the scalar value; numpy arrays, the page's JavaScript, MathML,
plain text, printed boxes and worked solutions are all made from the same source text.
"""

from generator.formula.arrays import NUMPY_NAMES, Array, recompiled
from generator.formula.book import Book, Step
from generator.formula.boxes import Box, DrawingOperation, Glyphs, Role, Stroke, boxes
from generator.formula.mathml import mathml
from generator.formula.numbers import interpolate, pick, show, show_full, whole_down, whole_up
from generator.formula.plain import plain_text
from generator.formula.registry import (
    ASK,
    Given,
    Misconception,
    OutOfRangeError,
    OutsideRangeError,
    Quantity,
    Registry,
    UnknownNameError,
)
from generator.formula.seed import Stream
from generator.formula.source import Constant, Source, Status, common_practice, derived, from_memory, published
from generator.formula.tree import FormulaError, parse

__all__ = [
    "ASK",
    "GUARD_DIGITS",
    "NUMPY_NAMES",
    "Array",
    "Book",
    "Box",
    "Constant",
    "DrawingOperation",
    "FormulaError",
    "Given",
    "Glyphs",
    "Misconception",
    "OutOfRangeError",
    "OutsideRangeError",
    "Quantity",
    "Registry",
    "Role",
    "Source",
    "Status",
    "Step",
    "Stream",
    "Stroke",
    "UnknownNameError",
    "boxes",
    "common_practice",
    "derived",
    "from_memory",
    "interpolate",
    "mathml",
    "parse",
    "pick",
    "plain_text",
    "published",
    "recompiled",
    "show",
    "show_full",
    "whole_down",
    "whole_up",
]
