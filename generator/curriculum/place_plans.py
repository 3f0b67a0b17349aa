"""The whole plan of a place's tank, for handouts that show its cutting list, its mesh or its calendar."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from functools import lru_cache

from generator.formula import OutOfRangeError
from generator.plans import Plan, Refusal, drawing_values, make_plan, sections
from generator.plans.place_file import hoops_of_place, litres_of_place
from generator.plans.refused import NoPlanError, from_calculation
from generator.plans.wish import Wish
from generator.words import MissingWordError, Words


def plan_of(given: Mapping[str, float]) -> Plan | NoPlanError:
    """The plan of the tank that a place fixes, or why there is none.

    Args:
        given: the place's givens.
    """
    return _plan(tuple(sorted(given.items())))


@lru_cache(maxsize=64)
def _plan(given: tuple[tuple[str, float], ...]) -> Plan | NoPlanError:
    place = dict(given)
    try:
        found = make_plan(Wish(litres_of_place(place), place=place, wished_hoops=hoops_of_place(place)))
    except OutOfRangeError as error:
        return from_calculation(error)
    return found.reason if isinstance(found, Refusal) else found


def section_keys(plan: Plan, words: Words) -> tuple[str, ...]:
    """The sections that a plan has; none where the course's words can't tell it."""
    try:
        return tuple(section.key for section in sections(plan, words))
    except MissingWordError:
        return ()


class PlanValues(Mapping[str, Mapping[str, float]]):
    """The numbers of each place's plan, worked out when somebody asks; empty for a place that can't be planned.

    Args:
        names: ids of all places.
        given_of: the givens of a place, or None where its file is wrong.
    """

    def __init__(self, names: tuple[str, ...], given_of: Callable[[str], Mapping[str, float] | None]) -> None:
        self._names = names
        self._given_of = given_of
        self._kept: dict[str, Mapping[str, float]] = {}

    def __getitem__(self, name: str) -> Mapping[str, float]:
        """Numbers by their names."""
        if name not in self._names:
            raise KeyError(name)
        if name not in self._kept:
            plan = self.plan(name)
            self._kept[name] = {} if plan is None else drawing_values(plan)
        return self._kept[name]

    def plan(self, name: str) -> Plan | None:
        """The plan itself; None for a place that can't be planned."""
        given = self._given_of(name) if name in self._names else None
        plan = None if given is None else plan_of(given)
        return plan if isinstance(plan, Plan) else None

    def __contains__(self, name: object) -> bool:
        """Whether there is such a place."""
        return name in self._names

    def __iter__(self) -> Iterator[str]:
        """Ids of the places."""
        return iter(self._names)

    def __len__(self) -> int:
        """How many places."""
        return len(self._names)
