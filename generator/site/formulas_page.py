"""The formula sheet: each quantity that the modules teach, with symbol, formula, unit, source, and how sure it is."""

from __future__ import annotations

from html import escape

from generator.calculations import BOOK
from generator.curriculum import CourseContent, first_taught
from generator.curriculum.models import Module
from generator.formula import Quantity, mathml
from generator.formula.mathml import symbol_markup
from generator.site.markup import block, formula_words
from generator.words import Words

FORMULAS = "formula-sheet"
"""Name of the page."""


def formulas_page(content: CourseContent, modules: list[Module], language: str) -> str:
    """The page as Markdown; a quantity that several modules teach stands with the first.

    Args:
        content: the course.
        modules: those that are taught, in order.
        language: language code.
    """
    words = content.words[language]
    parts = [f"# {words.say('page.formulas.title')} {{#{FORMULAS}}}", words.say("page.formulas.about")]
    for module, names in first_taught(content, modules):
        parts.append(f"## {module.title[language]} {{#formulas-{module.id}}}")
        parts += [block(f'<div class="ts-sheet">{_entry(BOOK.quantities[name], words)}</div>') for name in names]
    return "\n\n".join(part.strip() for part in parts) + "\n"


def _entry(quantity: Quantity, words: Words) -> str:
    unit = words.say_one_of("unit", quantity.unit) if quantity.unit else words.say("page.formulas.no_unit")
    status = quantity.source.status
    sure = words.say_one_of("status", status.value)
    warns = "" if status.decides else f" {words.say('page.formulas.only_warns')}"
    facts = (
        (words.say("page.formulas.unit"), unit, ""),
        (words.say("page.formulas.source"), quantity.source.text, ' lang="en"'),
        (words.say("page.formulas.status"), sure + warns, ""),
    )
    rows = "".join(
        f"<dt>{escape(label, quote=False)}</dt><dd{spoken}>{escape(text, quote=False)}</dd>"
        for label, text, spoken in facts
    )
    meanings = "".join(_meaning(name, words) for name in quantity.needs)
    name = escape(words.say_one_of("quantity", quantity.name), quote=False)
    symbol = f'<math alttext="{escape(quantity.symbol)}">{symbol_markup(quantity.symbol)}</math>'
    return (
        f'<h3 id="formula-{quantity.name.replace("_", "-")}">{name}'
        f' <span class="ts-sheet-symbol">{symbol}</span></h3>'
        f'<div class="ts-formula">{mathml(BOOK, quantity.name, word=formula_words(words))}'
        f'<dl class="ts-meanings">{meanings}</dl><dl class="ts-sheet-facts">{rows}</dl></div>'
    )


def _meaning(name: str, words: Words) -> str:
    entry = BOOK.entry(name)
    unit = f" ({words.say_one_of('unit', entry.unit)})" if entry.unit else ""
    symbol = f'<math alttext="{escape(entry.symbol)}">{symbol_markup(entry.symbol)}</math>'
    return f"<dt>{symbol}</dt><dd>{escape(words.say_one_of('quantity', name) + unit, quote=False)}</dd>"
