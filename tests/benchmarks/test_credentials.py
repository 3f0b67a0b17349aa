from __future__ import annotations

from tests.benchmarks.bench_credentials import course, sample_one, signed_one, texts, verify_all
from tests.sheets.recorder import recording


def test_both_sides_draw_the_same_paper_and_only_one_is_signed() -> None:
    words = course()[0].words["hi"]
    with recording() as signed:
        assert signed_one(5) != signed_one(6)
    with recording() as sample:
        sample_one(5)
    assert (signed.pages, sample.pages) == (4, 2)
    assert words.say("sheet.unsigned_sample") in sample.text()
    assert words.say("sheet.unsigned_sample") not in signed.text()
    assert "House 5" in " ".join(sample.text().split())


def test_what_is_verified_is_genuine_and_each_is_another() -> None:
    assert len(set(texts(50))) == 50
    assert verify_all(50) == 50
