from __future__ import annotations

from io import BytesIO

import pytest
from pypdf import PdfReader

from tests.benchmarks.bench_worksheet import class_set, ours, recorded
from tests.sheets.recorder import replay


@pytest.mark.parametrize("language", ["en", "hi"])
def test_the_baseline_draws_the_same_pages(language: str) -> None:
    """As many pages, the same words in the same order; ours in fewer bytes, because a drawing is written once."""
    record = class_set(language)
    data, again = ours(record), replay(recorded(record))
    one, other = PdfReader(BytesIO(data)), PdfReader(BytesIO(again))
    assert len(one.pages) == len(other.pages) > 50
    assert len(data) < len(again) < 4 * len(data)
    if language == "en":  # joined Hindi letters can't be read back from a PDF
        for mine, plain in zip(one.pages[:3], other.pages[:3], strict=True):
            assert mine.extract_text().split() == plain.extract_text().split()
