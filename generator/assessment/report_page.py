"""The report as one page that needs nothing else: no script, no file beside it, no network."""

from __future__ import annotations

import base64
from collections.abc import Iterator, Mapping
from html import escape

from generator.assessment.report import Change, Chapter, Report
from generator.figures import svg
from generator.words import Words

_STYLE = """
:root{color-scheme:light}
body{font:1rem/1.6 Mukta,sans-serif;color:#141414;background:#fff;margin:0 auto;max-width:58rem;padding:1rem}
h1{font-size:1.7rem;line-height:1.3;margin:.4rem 0}
h2{font-size:1.25rem;line-height:1.35;margin:2rem 0 .4rem;border-bottom:2px solid #0d4f5a}
p{margin:.4rem 0}
.caution{border-left:.4rem solid #8c1a1a;padding:.3rem .7rem}
.first{border:2px solid #141414;padding:.4rem 1rem;margin:1rem 0}
.first h2{border:0;margin:.3rem 0}
.first ol{padding-left:1.6rem;margin:.4rem 0}
.first li{margin:.6rem 0}
.first strong{display:block}
.wide{overflow-x:auto;margin:.6rem 0}
.wide:focus-visible{outline:3px solid #0d4f5a}
table{border-collapse:collapse;min-width:100%}
th,td{border:1px solid #777;padding:.25rem .5rem;text-align:left;vertical-align:top}
th{background:#eef1f1}
figure{margin:1rem 0}
figure svg{max-width:30rem;width:100%;height:auto}
figcaption{font-size:.95rem}
@media print{.first{break-inside:avoid}.wide{overflow:visible}h2{break-after:avoid}figure,tr{break-inside:avoid}}
""".strip()
_WEIGHTS = {"mukta-regular.woff2": 400, "mukta-bold.woff2": 700}


def report_page(report: Report, words: Words, fonts: Mapping[str, bytes]) -> str:
    """The whole page.

    Args:
        report: what to say.
        words: of the reader's language.
        fonts: WOFF2 files by name; they travel inside the page, so that Hindi shows on any machine.
    """
    body = [f"<h1>{escape(report.title)}</h1>", *_first(report, words)]
    for number, chapter in enumerate(report.chapters):
        body += _chapter(chapter, number)
    faces = "".join(
        f"@font-face{{font-family:Mukta;font-weight:{weight};"
        f"src:url(data:font/woff2;base64,{base64.b64encode(fonts[name]).decode('ascii')}) format('woff2')}}"
        for name, weight in _WEIGHTS.items()
        if name in fonts
    )
    return (
        f'<!DOCTYPE html>\n<html lang="{words.language}">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{escape(report.title)}</title>\n<style>\n{faces}{_STYLE}\n</style>\n</head>\n<body>\n<main>\n"
        + "\n".join(body)
        + "\n</main>\n</body>\n</html>\n"
    )


def _first(report: Report, words: Words) -> Iterator[str]:
    yield '<section class="first">'
    yield f"<h2>{escape(words.say('analyse.heading.first'))}</h2>"
    for caution in report.cautions:
        yield f'<p class="caution">{escape(caution)}</p>'
    if report.changes:
        yield "<ol>"
        yield from (_change(change, words) for change in report.changes)
        yield "</ol>"
    else:
        yield f"<p>{escape(words.say('analyse.nothing_to_change'))}</p>"
    if report.more:
        yield f"<p>{escape(words.say('analyse.more'))}</p>"
    yield "</section>"


def _change(change: Change, words: Words) -> str:
    why = words.say("analyse.because", why=change.why)
    return f"<li><strong>{escape(change.sentence)}</strong> {escape(why)}</li>"


def _chapter(chapter: Chapter, number: int) -> Iterator[str]:
    section = chapter.section
    yield f'<section id="{section.key}">'
    yield f'<h2 id="{section.key}-head">{escape(section.heading)}</h2>'
    yield from (f"<p>{escape(line)}</p>" for line in section.lines)
    if section.head:
        yield f'<div class="wide" role="region" tabindex="0" aria-labelledby="{section.key}-head"><table>'
        cells = "".join(f'<th scope="col">{escape(cell)}</th>' for cell in section.head)
        yield f"<thead><tr>{cells}</tr></thead><tbody>"
        for row in section.rows:
            first, rest = escape(row[0]), "".join(f"<td>{escape(cell)}</td>" for cell in row[1:])
            yield f'<tr><th scope="row">{first}</th>{rest}</tr>'
        yield "</tbody></table></div>"
    for place, scene in enumerate(chapter.charts):
        drawn = svg(scene, f"chart-{number}-{place}", live=False)
        yield f"<figure>{drawn}<figcaption>{escape(scene.title)}</figcaption></figure>"
    yield "</section>"
