from __future__ import annotations

from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader

from generator.commands.class_sheets import print_set
from tests.benchmarks.bench_worksheet import course
from tests.benchmarks.bench_worksheets_many import class_set, ours, recorded
from tests.sheets.recorder import replay

pytestmark = pytest.mark.long


@pytest.mark.parametrize("language", ["en", "hi"])
def test_the_baseline_draws_the_same_pages(language: str) -> None:
    """About two pages a learner, the same letters in the same order; a subscript may part words in one of them."""
    record = class_set(language, 6)
    for data, made in zip(ours(record), recorded(record), strict=True):
        one, other = PdfReader(BytesIO(data)), PdfReader(BytesIO(replay(made)))
        assert len(one.pages) == len(other.pages) >= 8
        if language == "en":  # joined Hindi letters can't be read back from a PDF
            for mine, plain in zip(one.pages, other.pages, strict=True):
                assert "".join(mine.extract_text().split()) == "".join(plain.extract_text().split())


def test_two_processes_print_the_same_bytes_as_one(tmp_path: Path) -> None:
    record = class_set("hi", 3)
    for count in (1, 2):
        (tmp_path / str(count)).mkdir()
        print_set(record, course(), tmp_path / str(count), processes=count)
    names = sorted(path.name for path in (tmp_path / "1").iterdir())
    assert names == ["key.pdf", "marking-strips.pdf", "worksheets.pdf"]
    for name in names:
        assert (tmp_path / "1" / name).read_bytes() == (tmp_path / "2" / name).read_bytes()
