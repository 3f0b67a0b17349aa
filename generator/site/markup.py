"""Pieces of pages as raw HTML blocks: a drawing, a caution, a formula, a worked example.

Each block starts at the left margin and holds no empty line, so that Markdown passes it on untouched.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from html import escape

from generator.calculations import BOOK
from generator.figures import draw, svg
from generator.formula import Quantity, Step, mathml, show, show_full
from generator.formula.mathml import symbol_markup
from generator.formula.plain import SUBSCRIPTED, Word, in_words
from generator.site.packing import LEAST, as_json, packed
from generator.words import Words

MOST_STEPS = 6
"""Steps of a worked example on a page: who reads slowly and on a phone loses the end of a longer one."""


def block(markup: str) -> str:
    """A raw HTML block for Markdown: one line, with an empty line before and after."""
    return "\n\n" + " ".join(line.strip() for line in markup.splitlines() if line.strip()) + "\n\n"


def data_script(data: object) -> str:
    """A value that travels in the page for its scripts to read: as JSON, never run; packed where it is long."""
    text = as_json(data)
    if len(text.encode("utf-8")) >= LEAST:
        return f'<script type="text/plain" class="ts-data" data-packed="">{packed(text)}</script>'
    safe = text.replace("&", "\\u0026").replace("<", "\\u003c").replace(">", "\\u003e")
    return f'<script type="application/json" class="ts-data">{safe}</script>'


def paragraphs(text: str, kind: str = "") -> str:
    """Plain text as paragraphs, one for each line."""
    start = f'<p class="{kind}">' if kind else "<p>"
    return "".join(f"{start}{escape(line.strip(), quote=False)}</p>" for line in text.splitlines() if line.strip())


def formula_words(words: Words) -> Word:
    """The few words inside formulas, such as "round up", in a page's language."""
    return lambda word: words.say_one_of("in_formula", word.replace(" ", "_"))


def shown_value(name: str, value: float, words: Words) -> str:
    """A given as it was given, a quantity at its places; both with the unit."""
    entry = BOOK.entry(name)
    text = show(value, entry.places) if isinstance(entry, Quantity) else show_full(value)
    return words.with_unit(text, entry.unit)


def figure(key: str, values: Mapping[str, float], words: Words, prefix: str, note: str = "") -> str:
    """A drawing to scale with its caption.

    Args:
        key: name of the figure.
        values: the numbers of the place.
        words: the page's language.
        prefix: for the ids inside, so that one page may hold the same drawing twice.
        note: a line below the drawing's own title.
    """
    scene = draw(key, values, words)
    caption = escape(scene.title, quote=False) + (f"<br>{escape(note, quote=False)}" if note else "")
    return f'<figure class="ts-figure">{svg(scene, prefix)}<figcaption>{caption}</figcaption></figure>'


def caution(text: str, words: Words) -> str:
    """A danger, where the work can hurt someone."""
    return (
        f'<div class="ts-caution" role="note"><strong>{escape(words.say("page.caution"), quote=False)}</strong>'
        f"{paragraphs(text)}</div>"
    )


def formula(name: str, words: Words) -> str:
    """A formula with what its signs mean, where it comes from, and how sure that is."""
    quantity = BOOK.quantities[name]
    meanings = []
    for known in (name, *quantity.needs):
        entry = BOOK.entry(known)
        unit = f" ({words.say_one_of('unit', entry.unit)})" if entry.unit else ""
        said = words.say_one_of("quantity", known)
        meanings.append(f"<dt>{_symbol(entry.symbol)}</dt><dd>{escape(said + unit, quote=False)}</dd>")
    status = words.say_one_of("status", quantity.source.status.value)
    # a source is told as it is printed, so a voice has to be told that it is English
    text = f'<span lang="en">{escape(quantity.source.text, quote=False)}</span>'
    source = escape(words.say("page.source", text="{text}", status=status), quote=False).replace("{text}", text)
    return (
        f'<div class="ts-formula">{mathml(BOOK, name, word=formula_words(words))}<dl>{"".join(meanings)}</dl>'
        f'<p class="ts-source">{source}</p></div>'
    )


def steps(lines: Sequence[Step], words: Words) -> str:
    """A worked solution: for each step what it is, the formula, the numbers in place, the result."""
    word = formula_words(words)
    items = []
    for step in lines:
        if step.name in BOOK.quantities:
            what = words.say_one_of("quantity", step.name)
            general = mathml(BOOK, step.name, word=word)
        else:  # a name inside a formula
            what = word(step.symbol)
            line = escape(f"{what} = {in_words(step.formula, word)}", quote=False)
            general = SUBSCRIPTED.sub(r"\1<sub>\2</sub>", line)
        items.append(
            f'<li><span class="ts-what">{escape(what, quote=False)}</span>'
            f'<span class="ts-line">{general}</span>'
            f'<span class="ts-line">= {escape(in_words(step.substituted, word), quote=False)}</span>'
            f'<span class="ts-line">= {escape(words.with_unit(step.shown, step.unit), quote=False)}</span></li>'
        )
    return f'<ol class="ts-steps">{"".join(items)}</ol>'


def short_steps(lines: Sequence[Step], words: Words) -> str:
    """A worked solution in few words, for a list of answers: what each step is, the numbers, the result."""
    word = formula_words(words)
    items = []
    for step in lines:
        what = words.say_one_of("quantity", step.name) if step.name in BOOK.quantities else word(step.symbol)
        way = f"{what} = {in_words(step.substituted, word)} = {words.with_unit(step.shown, step.unit)}"
        items.append(f"<li>{escape(way, quote=False)}</li>")
    return f"<ol>{''.join(items)}</ol>"


def _symbol(symbol: str) -> str:
    return f'<math alttext="{escape(symbol)}">{symbol_markup(symbol)}</math>'


def worked(name: str, values: Mapping[str, float], words: Words, most: int = 0) -> str:
    """A worked example with the numbers of a place: its end, where the whole of it would be long.

    Args:
        name: a quantity.
        values: of the place.
        words: the page's language.
        most: steps; 0 for as many as are usual.
    """
    given, lines = BOOK.short_trace(name, values, most or MOST_STEPS)
    facts = "".join(
        f"<dt>{escape(words.say_one_of('quantity', need), quote=False)}</dt>"
        f"<dd>{escape(shown_value(need, value, words), quote=False)}</dd>"
        for need, value in given.items()
    )
    title = words.say("page.worked_example", what=words.say_one_of("quantity", name))
    return (
        f'<div class="ts-worked"><p><strong>{escape(title, quote=False)}</strong></p>'
        f'<dl class="ts-facts">{facts}</dl>{steps(lines, words)}</div>'
    )
