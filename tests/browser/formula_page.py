"""A page from a file with formulas and many numbers, and a way to get many numbers back."""

from __future__ import annotations

import base64
import json
from collections.abc import Iterator, Mapping, Sequence
from importlib.resources import files
from pathlib import Path
from typing import NamedTuple

import numpy as np
from playwright.sync_api import Page

from generator.formula import Array, Book

PATIENCE = 300_000
"""Milliseconds; a busy machine takes its time over millions of values."""
PART = 4_000_000
"""Most values that come over at once, 32 MB: a browser cancels a file that is too large for it."""


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
/* Puts columns of numbers behind the page's link, as a file: ten times as fast as an answer in text. */
function layOut(columns) {
  var link = document.getElementById("take");
  if (link.href) { URL.revokeObjectURL(link.href); }
  link.href = URL.createObjectURL(new Blob(columns));
}
/* Works out `want` for rows `from` up to `to` of the named columns; a refused row holds NaN.
 * Right values become columns themselves. */
function table(names, want, wrong, count, from, to) {
  var f = Tankschool.formula, columns = names.map(function (name) { return COLUMNS[name]; });
  var results = want.map(function () { return new Float64Array(to - from).fill(NaN); }), row, i, seeds, values;
  for (row = from; row < to; row += 1) {
    seeds = {};
    for (i = 0; i < names.length; i += 1) { seeds[names[i]] = columns[i][row]; }
    try { values = f.evaluate(seeds, want, wrong); } catch (error) { continue; }
    for (i = 0; i < want.length; i += 1) { results[i][row - from] = values[want[i]]; }
  }
  if (!wrong.length) {
    want.forEach(function (name, i) {
      if (!COLUMNS[name]) { COLUMNS[name] = new Float64Array(count); }
      COLUMNS[name].set(results[i], from);
    });
  }
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
    link = '<a id="take" download="columns">Take the columns</a>'
    page.write_text(f'<!doctype html><meta charset="utf-8"><title>formulas</title>{link}{scripts}', encoding="utf-8")
    return page


def packed(numbers: Array) -> str:
    """Numbers as text, to the last bit."""
    return base64.b64encode(np.ascontiguousarray(numbers, dtype="<f8").tobytes()).decode("ascii")


class _Slice(NamedTuple):
    """Some rows of a job."""

    job: int
    start: int
    stop: int


def _parts(jobs: Sequence[Job]) -> Iterator[list[_Slice]]:
    """The rows of all jobs in order, in parts of at most `PART` values."""
    part: list[_Slice] = []
    room = PART
    for number, job in enumerate(jobs):
        start = 0
        while start < job.count:
            rows = min(job.count - start, room // len(job.want))
            if rows == 0:
                yield part
                part, room = [], PART
                continue
            part.append(_Slice(number, start, start + rows))
            room -= rows * len(job.want)
            start += rows
    yield part


def tables(page: Page, jobs: Sequence[Job]) -> Iterator[list[Array]]:
    """What the page works out for each job, one column for each wanted quantity; a refused row holds NaN.

    It comes over in parts. Each is taken with a true click, because a browser stops a page that hands over one file
    after the other by itself.

    Args:
        page: opened on what `write_page` wrote.
        jobs: what to work out, each wanting at least one value.
    """
    columns: list[Array] = []
    for part in _parts(jobs):
        numbers, at = _taken(page, jobs, part), 0
        for number, start, stop in part:
            job = jobs[number]
            if start == 0:
                columns = [np.empty(job.count) for _ in job.want]
            for column in columns:
                column[start:stop] = numbers[at : at + stop - start]
                at += stop - start
            if stop == job.count:
                yield columns


def _taken(page: Page, jobs: Sequence[Job], part: Sequence[_Slice]) -> Array:
    told = [
        [list(jobs[one.job].names), list(jobs[one.job].want), list(jobs[one.job].wrong), jobs[one.job].count,
         one.start, one.stop]
        for one in part
    ]  # fmt: skip
    page.evaluate(
        "jobs => layOut([].concat.apply([], jobs.map(function (job) { return table.apply(null, job); })))", told
    )
    with page.expect_download(timeout=PATIENCE) as taken:
        page.click("#take")
    numbers = np.fromfile(taken.value.path(), dtype="<f8")
    taken.value.delete()
    expected = sum(len(jobs[one.job].want) * (one.stop - one.start) for one in part)
    assert len(numbers) == expected, f"{len(numbers)} numbers came over and not {expected}"
    return numbers
