"""A report as a page: a table and bars as inline SVG; no script, nothing fetched, readable in black and white."""

from __future__ import annotations

import base64
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from functools import cache
from html import escape
from textwrap import wrap

from generator.commands.register_common import cell_text
from generator.registry import Report
from generator.site.fonts import font_files
from generator.words import Words

_STYLE = """\
body{font:1rem/1.6 Mukta,sans-serif;margin:1rem auto;max-width:70rem;padding:0 1rem;color:#111;background:#fff}
table{border-collapse:collapse;margin:1rem 0;font-size:.95rem}
th,td{border:1px solid #777;padding:.3rem .5rem;text-align:left;vertical-align:top;overflow-wrap:break-word}
th{background:#eee}
.wide{overflow-x:auto}
.code{white-space:nowrap}
svg{width:100%;max-width:26rem;height:auto}
"""
_POLICY = "default-src 'none'; style-src 'unsafe-inline'; font-src data:"
"""Nothing is fetched, and no script runs."""
_MOST_BARS = 60
_WIDTH, _BAR, _TEXT, _LINE = 340, 250, 14, 18
"""The width of a phone's page: there the words of a plot are as large as those beside it."""
_LABEL = 44
"""Signs of a label's line; a longer one goes on in a second line, and is cut there."""
_CODE = re.compile(r"[0-9A-Z]+(-[0-9A-Z]+)+")
"""Days and numbers that are never broken."""


@dataclass(frozen=True, slots=True)
class Bar:
    """One bar of the plot.

    Args:
        label: what it stands for.
        share: its length, 0 to 1.
        said: the numbers behind it.
    """

    label: str
    share: float
    said: str


def report_page(report: Report, bars: Sequence[Bar], words: Words, day: date) -> str:
    """The page.

    Args:
        report: the table.
        bars: what the plot shows; without any there is no plot.
        words: of the reader's language.
        day: printed on it.
    """
    title = words.say_one_of("register.report", report.name)
    head = "".join(
        f'<th scope="col">{escape(words.say_one_of("register.column", name))}</th>' for name in report.columns
    )
    rows = "".join(
        "<tr>"
        + "".join(_cell(cell_text(cell, words, name)) for name, cell in zip(report.columns, row, strict=True))
        + "</tr>\n"
        for row in report.rows
    )
    table = f'<div class="wide" tabindex="0" role="region" aria-label="{escape(title)}">'
    table += f"<table>\n<thead><tr>{head}</tr></thead>\n<tbody>\n{rows}</tbody></table></div>"
    body = table if report.rows else f"<p>{escape(words.say('register.nothing'))}</p>"
    plot = "".join(_plot(bars[:_MOST_BARS], words.say_one_of("register.plot", report.name))) if bars else ""
    return (
        f'<!DOCTYPE html>\n<html lang="{words.language}">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f'<meta http-equiv="Content-Security-Policy" content="{_POLICY}">\n'
        f"<title>{escape(title)}</title>\n<style>\n{_fonts()}{_STYLE}</style>\n</head>\n<body>\n<main>\n<h1>{escape(title)}</h1>\n"
        f"<p>{day.isoformat()}</p>\n{plot}\n{body}\n</main>\n</body>\n</html>\n"
    )


def _cell(text: str) -> str:
    kind = ' class="code"' if _CODE.fullmatch(text) else ""
    return f"<td{kind}>{escape(text)}</td>"


@cache
def _fonts() -> str:
    """The course's own font inside the page, so that Hindi shows on any machine."""
    files = font_files()
    return "".join(
        f"@font-face{{font-family:Mukta;font-weight:{weight};"
        f"src:url(data:font/woff2;base64,{base64.b64encode(files[name]).decode('ascii')}) format('woff2')}}\n"
        for weight, name in ((400, "mukta-regular.woff2"), (700, "mukta-bold.woff2"))
        if name in files
    )


def _plot(bars: Sequence[Bar], title: str) -> Iterator[str]:
    labels = [_lines(bar.label) for bar in bars]
    height = sum(_LINE * len(lines) + 30 for lines in labels)
    told = "; ".join(f"{bar.label}: {bar.said}" for bar in bars)
    yield f"<h2>{escape(title)}</h2>\n"
    yield f'<svg role="img" aria-label="{escape(title)}. {escape(told)}" viewBox="0 0 {_WIDTH} {height}" '
    yield f'width="{_WIDTH}" height="{height}" xmlns="http://www.w3.org/2000/svg">\n'
    top = 0
    for bar, lines in zip(bars, labels, strict=True):
        for line in lines:
            top += _LINE
            yield f'<text x="0" y="{top - 6}" font-size="{_TEXT}">{escape(line)}</text>\n'
        wide = round(min(1.0, max(0.0, bar.share)) * _BAR, 1)
        yield f'<rect x="0.5" y="{top + 0.5}" width="{_BAR}" height="16" fill="#fff" stroke="#555"/>\n'
        yield f'<rect x="0.5" y="{top + 0.5}" width="{wide}" height="16" fill="#1a4d7a"/>\n'
        yield f'<text x="{_BAR + 8}" y="{top + 14}" font-size="{_TEXT}">{escape(bar.said)}</text>\n'
        top += 30
    yield "</svg>\n"


def _lines(label: str) -> list[str]:
    """A label in one or two lines."""
    found = wrap(label, _LABEL) or [label]
    return found if len(found) < 3 else [found[0], f"{found[1][: _LABEL - 1]}…"]
