"""A page from a file with formulas and many numbers, and a way to get many numbers back."""

from __future__ import annotations

import base64
import json
from collections.abc import Mapping
from importlib.resources import files
from pathlib import Path

import numpy as np

from generator.formula import Array, Book

HELPERS = """
function floats(text) {
  var letters = atob(text), bytes = new Uint8Array(letters.length), i;
  for (i = 0; i < letters.length; i += 1) { bytes[i] = letters.charCodeAt(i); }
  return new Float64Array(bytes.buffer);
}
function packed(floats) {
  var bytes = new Uint8Array(floats.buffer), text = "", i;
  for (i = 0; i < bytes.length; i += 8192) { text += String.fromCharCode.apply(null, bytes.subarray(i, i + 8192)); }
  return btoa(text);
}
/* Works out `want` for each row of the named columns; a refused row holds NaN.
 * Right values become columns themselves. */
function table(names, want, wrong, count) {
  var f = Tankschool.formula, columns = names.map(function (name) { return COLUMNS[name]; });
  var results = want.map(function () { return new Float64Array(count).fill(NaN); }), row, i, seeds, values;
  for (row = 0; row < count; row += 1) {
    seeds = {};
    for (i = 0; i < names.length; i += 1) { seeds[names[i]] = columns[i][row]; }
    try { values = f.evaluate(seeds, want, wrong); } catch (error) { continue; }
    for (i = 0; i < want.length; i += 1) { results[i][row] = values[want[i]]; }
  }
  if (!wrong.length) { want.forEach(function (name, i) { COLUMNS[name] = results[i]; }); }
  return results;
}
"""


def write_page(folder: Path, book: Book, columns: Mapping[str, Array]) -> Path:
    """The page's file, with the whole book and the columns of numbers in scripts beside it.

    Args:
        folder: where to write.
        book: its quantities and misconceptions come along.
        columns: name -> numbers, as `COLUMNS` in the page.
    """
    formula = files("generator.formula").joinpath("formula.js").read_text(encoding="utf-8")
    (folder / "formula.js").write_text(formula, encoding="utf-8")
    (folder / "book.js").write_text(book.javascript(book.quantities), encoding="utf-8")
    texts = {name: packed(numbers) for name, numbers in columns.items()}
    lines = [f"COLUMNS[{json.dumps(name)}] = floats({json.dumps(text)});" for name, text in texts.items()]
    (folder / "columns.js").write_text("\n".join([HELPERS, "var COLUMNS = {};", *lines]), encoding="utf-8")
    scripts = "".join(f'<script src="{name}.js"></script>' for name in ("formula", "book", "columns"))
    page = folder / "formulas.html"
    page.write_text(f'<!doctype html><meta charset="utf-8"><title>formulas</title>{scripts}', encoding="utf-8")
    return page


def packed(numbers: Array) -> str:
    """Numbers as text, to the last bit."""
    return base64.b64encode(np.ascontiguousarray(numbers, dtype="<f8").tobytes()).decode("ascii")


def unpacked(text: str) -> Array:
    """Numbers that the page packed."""
    return np.frombuffer(base64.b64decode(text), dtype="<f8")
