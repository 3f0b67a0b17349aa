"""All drawings side by side in every language, on one page and in one document: to look at after a change."""

from __future__ import annotations

import io
from collections.abc import Mapping, Sequence
from html import escape

from reportlab.pdfgen.canvas import Canvas

from generator.figures.fonts import BOLD, draw_text
from generator.figures.kinds import FIGURES, draw
from generator.figures.pdf import pdf, pdf_height
from generator.figures.scene import Scene
from generator.figures.svg import svg
from generator.words import Words

Row = tuple[str, tuple[Scene, ...]]

_WIDTH, _MARGIN, _HEAD = 360.0, 24.0, 22.0


def contact_scenes(values: Mapping[str, float], languages: Sequence[Words], seed: int = 0) -> tuple[Row, ...]:
    """Every drawing of `FIGURES`, by name, in each language.

    Args:
        values: numbers of the tank.
        languages: words of each language.
        seed: where faults are.
    """
    return tuple((key, tuple(draw(key, values, words, seed) for words in languages)) for key in FIGURES)


def contact_page(rows: Sequence[Row]) -> str:
    """One HTML page with every drawing as SVG.

    Args:
        rows: as `contact_scenes` gives them.
    """
    parts = []
    for key, scenes in rows:
        drawings = "".join(
            f"<figure>{svg(scene, f'{key}-{scene.language}')}<figcaption>{escape(scene.title)}</figcaption></figure>"
            for scene in scenes
        )
        parts.append(f'<section><h2 id="{key}">{key}</h2><div>{drawings}</div></section>')
    style = (
        "body{font:16px Mukta,sans-serif;margin:1em}div{display:flex;flex-wrap:wrap;gap:1em;align-items:flex-start}"
        "figure{margin:0;width:22.5em;border:1px solid #ccc}svg{display:block;width:100%}figcaption{padding:.3em}"
        ".fig-area:hover,.fig-area:focus{fill:#06c;fill-opacity:.15}"
    )
    return (
        '<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><title>All drawings</title>'
        f"<style>{style}</style></head><body>{''.join(parts)}</body></html>\n"
    )


def contact_document(rows: Sequence[Row]) -> bytes:
    """One PDF, a page for each drawing; the same rows give the same bytes.

    Args:
        rows: as `contact_scenes` gives them.
    """
    out = io.BytesIO()
    canvas = Canvas(out, invariant=1)
    for key, scenes in rows:
        wide = len(scenes) * (_WIDTH + _MARGIN) + _MARGIN
        high = max(pdf_height(scene, _WIDTH) for scene in scenes) + 2 * _MARGIN + _HEAD
        canvas.setPageSize((wide, high))
        draw_text(canvas, _MARGIN, high - _MARGIN - 6, key, BOLD, 12)
        for place, scene in enumerate(scenes):
            low = high - _MARGIN - _HEAD - pdf_height(scene, _WIDTH)
            pdf(scene, canvas, _MARGIN + place * (_WIDTH + _MARGIN), low, _WIDTH)
        canvas.showPage()
    canvas.save()
    return out.getvalue()
