"""Figures: drawings to scale; one scene of real metres, written as SVG for pages and on the canvas for print."""

from generator.figures.kinds import FIGURES, FigureKind, draw, hot_areas
from generator.figures.marks import draw_asking
from generator.figures.pdf import pdf, pdf_height
from generator.figures.scene import Scene
from generator.figures.svg import bare, looks, stylesheet, svg

__all__ = [
    "FIGURES", "FigureKind", "Scene", "bare", "draw", "draw_asking", "hot_areas", "looks", "pdf", "pdf_height",
    "stylesheet", "svg",
]  # fmt: skip
