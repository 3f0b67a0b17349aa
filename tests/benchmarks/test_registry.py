from __future__ import annotations

from pathlib import Path

import pytest

from generator.exercises import Verdict
from generator.registry import competency_report
from generator.registry.audit import findings
from generator.registry.store import reading
from tests.benchmarks.bench_registry import (
    FORMS,
    NOW,
    QUESTIONS,
    bare,
    bare_report,
    compared,
    exam,
    finished_rows,
    fresh,
    key_table,
    many_results,
    marked_right,
    open_registry,
    ours,
    packed_keys,
    table_of,
    typed,
)

pytestmark = pytest.mark.long

PAPERS = 60


@pytest.mark.parametrize("forms", [FORMS, PAPERS])
def test_the_baseline_writes_the_same_rows(tmp_path: Path, forms: int) -> None:
    made = exam(tmp_path, PAPERS, forms)
    with fresh(made, tmp_path) as registry:
        assert ours(made, registry) == PAPERS * QUESTIONS
        rows = finished_rows(registry)
    with fresh(made, tmp_path) as registry:
        bare(registry, rows)
        assert finished_rows(registry) == rows


@pytest.mark.parametrize("forms", [FORMS, PAPERS])
def test_the_table_is_really_marked_and_sealed(tmp_path: Path, forms: int) -> None:
    made = exam(tmp_path, PAPERS, forms)
    with fresh(made, tmp_path) as registry:
        ours(made, registry)
        _, batches, answers = finished_rows(registry)
        with reading(registry) as connection:
            codes = {finding.code for finding in findings(connection)}
    assert codes == {"row-put-in", "personal-put-in"}  # put straight into the tables
    assert len(batches) == PAPERS
    verdicts = {}
    for paper, label, _, _, _, answer, verdict, *_ in answers:
        assert answer == typed(paper, label, forms)
        key = str(10 * ((paper - 1) % forms) + label)
        verdicts[verdict] = verdicts.get(verdict, 0) + 1
        assert (verdict == Verdict.RIGHT) == (answer == key)
    assert set(verdicts) == {"right", "not_yet", "blank"}


@pytest.mark.parametrize("forms", [FORMS, PAPERS])
def test_marking_and_bare_compares_find_the_same_answers_right(forms: int) -> None:
    table, keys = table_of(PAPERS, forms), packed_keys(forms)
    right = compared(table, PAPERS, key_table(keys))
    assert marked_right(table, PAPERS, keys) == right > PAPERS * QUESTIONS // 2


def test_the_report_says_what_its_sql_says(tmp_path: Path) -> None:
    file = tmp_path / "registry.sqlite"
    cohort = many_results(file, 4000)
    with open_registry(file, now=NOW) as registry:
        rows = competency_report(registry, cohort).rows
    plain = bare_report(file, cohort)
    assert [(name, count, right, people) for name, count, right, _, people in rows] == plain
    assert sum(row[1] for row in plain) == 4000
