"""A page from a file with formulas and many numbers, and a way to get many numbers back."""

from __future__ import annotations

import base64
import json
from collections.abc import Mapping, Sequence
from importlib.resources import files
from pathlib import Path
from typing import NamedTuple

import numpy as np
from playwright.sync_api import Page

from generator.formula import Array, Book

PATIENCE = 300_000
"""Milliseconds; a busy machine takes its time over millions of values."""


class Job(NamedTuple):
    """What to work out: the columns that are the seeds, the wanted names, misconceptions, and how many rows."""

    names: Sequence[str]
    want: Sequence[str]
    wrong: Sequence[str]
    count: int


HELPERS = """
function floats(text) {
  var letters = atob(text), bytes = new Uint8Array(letters.length), i;
  for (i = 0; i < letters.length; i += 1) { bytes[i] = letters.charCodeAt(i); }
  return new Float64Array(bytes.buffer);
}
/* Hands columns of numbers over as a file: ten times as fast as an answer in text. */
function handOver(columns) {
  var link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob(columns));
  link.download = "columns";
  link.click();
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


def tables(page: Page, jobs: Sequence[Job]) -> list[list[Array]]:
    """What the page works out for each job, one column for each wanted quantity; a refused row holds NaN.

    All of it comes over at once, because a browser stops a page that hands over one file after the other.

    Args:
        page: opened on what `write_page` wrote.
        jobs: what to work out.
    """
    told = [[list(job.names), list(job.want), list(job.wrong), job.count] for job in jobs]
    with page.expect_download(timeout=PATIENCE) as handed_over:
        page.evaluate(
            """jobs => handOver([].concat.apply([], jobs.map(function (job) {
              return table(job[0], job[1], job[2], job[3]);
            })))""",
            told,
        )
    numbers = np.fromfile(handed_over.value.path(), dtype="<f8")
    parts = np.split(numbers, np.cumsum([len(job.want) * job.count for job in jobs])[:-1])
    return [list(part.reshape(len(job.want), job.count)) for part, job in zip(parts, jobs, strict=True)]
