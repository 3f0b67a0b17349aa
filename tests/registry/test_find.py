"""Finding people, cohorts and papers by the names that people know."""

from __future__ import annotations

from datetime import UTC, date, datetime
from pathlib import Path

import pytest

from generator import registry as reg
from generator.problems import RefusedError

NOW = datetime(2031, 5, 4, 9, 0, tzinfo=UTC)


def test_by_name(tmp_path: Path) -> None:
    with reg.open_registry(tmp_path / "r.sqlite", now=NOW) as opened:
        assert reg.is_empty(opened)
        first = reg.add_person(opened, reg.NewPerson("Asha Devi"), by=None, now=NOW)
        assert not reg.is_empty(opened)
        with pytest.raises(RefusedError, match="no coordinator called 'Asha Devi'"):
            reg.coordinator_called(opened, "Asha Devi")
        reg.give_role(opened, first, "coordinator", by=None, now=NOW)
        assert reg.coordinator_called(opened, "asha  DEVI") == first
        other = reg.add_person(opened, reg.NewPerson("Asha Devi"), by=first, now=NOW)
        assert reg.coordinator_called(opened, "Asha Devi") == first
        reg.give_role(opened, other, "coordinator", by=first, now=NOW)
        with pytest.raises(RefusedError, match="2 coordinators"):
            reg.coordinator_called(opened, "Asha Devi")
        assert reg.cohort_called(opened, "Spring") is None
        cohort = reg.add_cohort(opened, "Spring", starts_on=date(2031, 5, 4), by=first, now=NOW)
        assert reg.cohort_called(opened, " Spring ") == cohort
        reg.import_class_list(opened, cohort, "c.csv", b"name\nBir\n", languages=["en"], by=first, now=NOW)
        found = reg.candidates_called(opened, cohort)
        assert list(found) == ["Bir"]
        sitting = reg.NewSitting(cohort, "1a2b3c4d", date(2031, 5, 4))
        paper = reg.NewPaper(found["Bir"], 3, "en", {"format": 1, "items": []}, b"%PDF-invented")
        reg.archive_papers(opened, sitting, [paper], by=first, now=NOW)
        assert reg.find_paper(opened, "1a2b3c4d", 3).pdf == b"%PDF-invented"
        for set_id, number in (("1a2b3c4d", 2), ("00000000", 3)):
            with pytest.raises(RefusedError, match="holds no paper"):
                reg.find_paper(opened, set_id, number)
