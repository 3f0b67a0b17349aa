"""For whom `paper` archives its papers: the registry, the cohort, who gives them out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from difflib import get_close_matches
from pathlib import Path

from generator import registry
from generator.exercises import same_name
from generator.problems import RefusedError


@dataclass(frozen=True, slots=True)
class Group:
    """Where papers are archived, and by whom.

    Args:
        place: of the registry.
        cohort: its name.
        named: whether someone named the cohort; else it is called as the exam is, and may be new.
        by: name or number of the coordinator who gives the papers out.
        exception: a reason to let someone sit who has to wait.
    """

    place: str
    cohort: str
    named: bool
    by: str
    exception: str | None


def looked_ahead(to: Group, names: Sequence[str], now: datetime) -> None:
    """Refuse what the archive would refuse, before minutes go into papers; a registry that is not there yet is new.

    Raises:
        RefusedError: no such coordinator; what `group_in` refuses.
    """
    if "://" not in to.place and not Path(to.place).exists():
        return
    with registry.open_registry(to.place, now=now) as opened:
        if not registry.is_empty(opened):
            registry.coordinator_called(opened, to.by)
            group_in(opened, to, names)


def archived_set(to: Group, set_id: str, exam: str, now: datetime) -> None:
    """Refuse sheets beside papers that were never given out: other names, language or day make another exam.

    Raises:
        RefusedError: no papers of this set are archived.
    """
    held: list[str] = []
    if "://" in to.place or Path(to.place).exists():
        with registry.open_registry(to.place, now=now) as opened:
            held = registry.sets_in(opened)
    if set_id not in held:
        known = f" Archived are the sets {', '.join(held[-5:])}." if held else ""
        raise RefusedError(
            f"the exam '{exam}' with these people would be the set {set_id}, and no such papers are archived.{known} "
            "Say --exam, --for, --seats, --attempt and --cohort as they were said for the papers"
        )


def group_in(opened: registry.Registry, to: Group, names: Sequence[str]) -> int | None:
    """The cohort's id; None where it is new.

    A slip in a name would enter somebody anew, without their language, their help and the tries that they had: who is
    not in a cohort that was named, or that has its candidates, has to be entered first.

    Raises:
        RefusedError: there are cohorts, and none of this name; somebody is no candidate of the cohort.
    """
    group = registry.cohort_called(opened, to.cohort)
    known = registry.cohort_names(opened)
    if group is None:
        if not to.named or not known:
            return None
        raise RefusedError(
            f"the registry has no cohort called '{to.cohort}'; it has: {', '.join(known)}. "
            "Write its name so, or enter a new one first with 'register cohorts add'"
        )
    there = {same_name(name): name for name in registry.candidates_called(opened, group)}
    strange = [name for name in names if same_name(name) not in there]
    if there and strange:
        near = get_close_matches(same_name(strange[0]), there, n=1)
        hint = f" (is it {there[near[0]]}?)" if near else ""
        more = f", nor are {len(strange) - 1} more of the list" if len(strange) > 1 else ""
        raise RefusedError(
            f"'{strange[0]}'{hint} is no candidate of the cohort '{to.cohort}'{more}. Correct the class list, or enter "
            f"who is new first: 'register cohorts import {group} FILE'"
        )
    return group
