"""A small registry of invented people at Tamarisk Ridge, with a clock of its own."""

from __future__ import annotations

import hashlib
from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from typing import Any

from sqlalchemy import text

from generator.assessment import Decision, Reason, Requirement
from generator.exercises import NumberItem, Person, Record, make_set
from generator.registry import (
    Certificate,
    NewPerson,
    NewTank,
    Registry,
    ToSign,
    add_cohort,
    add_holder,
    add_person,
    add_tank,
    archive_set,
    file_application,
    give_role,
    issue,
    join_cohort,
    open_registry,
    record_cut,
    record_decision,
)
from generator.registry.marker import PaperKey, items_marker
from tests.assessment.small_scheme import SCHEME as RULES
from tests.exercises import small as questions
from tests.exercises.small_course import course

START = datetime(2031, 5, 4, 9, 0, tzinfo=UTC)
DAY = date(2031, 5, 4)
SCHEME = "fence-hand"
SCOPE = {"role": "hand", "largest_volume": 12.0, "largest_wall_height": 2.0, "roof": "flat"}


def entropy() -> Callable[[int], bytes]:
    """Bytes that look random, and are the same on every run."""
    drawn = 0

    def give(count: int) -> bytes:
        nonlocal drawn
        drawn += 1
        return hashlib.shake_256(f"salt {drawn}".encode()).digest(count)

    return give


def sign(text: ToSign) -> bytes:
    return f"signed {text.number} {text.name} {text.valid_to}".encode()


def passing(version: int = 2) -> Decision:
    return Decision(SCHEME, version, (Reason(Requirement.WRITTEN, True, "", 9, 7, 10),))


def failing(version: int = 2) -> Decision:
    return Decision(SCHEME, version, (Reason(Requirement.WRITTEN, False, "", 5, 7, 10),))


@dataclass
class Office:
    """An open registry with a coordinator, a second one, a trainer, an observer, and a cohort of three."""

    registry: Registry
    now: datetime = START
    ids: dict[str, int] = field(default_factory=dict)
    cohort: int = 0

    def tick(self, **step: float) -> datetime:
        """The time, a little later than before."""
        self.now += timedelta(**(step or {"seconds": 1}))
        return self.now

    @property
    def boss(self) -> int:
        """The coordinator who does things."""
        return self.ids["Meera"]

    def fill(self) -> Office:
        """Enter everyone."""
        self.ids["Meera"] = add_person(self.registry, NewPerson("Meera", "en", DAY), by=None, now=self.now)
        give_role(self.registry, self.boss, "coordinator", by=None, now=self.tick())
        for name, role in (("Joseph", "coordinator"), ("Tenzin", "trainer"), ("Farida", "observer")):
            key = add_person(self.registry, NewPerson(name, "en", DAY), by=self.boss, now=self.tick())
            give_role(self.registry, key, role, by=self.boss, now=self.tick())
            self.ids[name] = key
        self.cohort = add_cohort(self.registry, "Upper Terrace", starts_on=DAY, by=self.boss, now=self.tick())
        join_cohort(self.registry, self.cohort, self.ids["Tenzin"], "trainer", by=self.boss, now=self.tick())
        for name in ("Asha", "Bir", "Cheptoo"):
            key = add_person(self.registry, NewPerson(name, "hi", DAY), by=self.boss, now=self.tick())
            join_cohort(self.registry, self.cohort, key, "candidate", by=self.boss, now=self.tick())
            self.ids[name] = key
        return self

    def decide(self, name: str, decision: Decision | None = None, status: str = "in-force", **other: object) -> int:
        """Record a decision about a person."""
        given: dict[str, object] = {"scheme_status": status, "by": self.boss, "now": self.tick(), **other}
        return record_decision(self.registry, self.cohort, self.ids[name], decision or passing(), **given)  # type: ignore[arg-type]

    def certify(self, name: str, decision: int | None = None, **other: object) -> Certificate:
        """Issue a certificate, after a decision where none is named."""
        given: dict[str, object] = {
            "sign": sign, "valid_from": self.now.date(), "valid_to": self.now.date() + timedelta(days=1000),
            "by": self.boss, "now": self.tick(), **other,
        }  # fmt: skip
        found = self.decide(name) if decision is None else decision
        if "now" not in other:
            given["now"] = self.tick()
        return issue(self.registry, self.ids[name], found, SCOPE, **given)  # type: ignore[arg-type]

    def cut(self, version: int = 2) -> int:
        """Record a panel's cut."""
        return record_cut(
            self.registry, SCHEME, version, method="made up", written=0.7, practical=0.75, judges=5, by=self.boss,
            now=self.tick(),
        )  # fmt: skip

    def tank(self, volume: float = 7.3, wall_height: float = 1.83) -> str:
        """Enter a tank."""
        new = NewTank("Lower Terrace", {"format": 1, "hoops": 13}, "0.1.0", volume, wall_height, DAY)
        return add_tank(self.registry, new, by=self.boss, now=self.tick())

    def crew(self, tank: str) -> tuple[Certificate, Certificate]:
        """Asha builds, Bir checks."""
        built, checked = self.certify("Asha"), self.certify("Bir")
        add_holder(self.registry, tank, built.number, "built", by=self.boss, now=self.tick())
        add_holder(self.registry, tank, checked.number, "checked", by=self.boss, now=self.tick())
        return built, checked

    def record(self) -> Record:
        """A printed set for the three candidates: five questions and a scenario."""
        return printed_set(("Asha", "Bir", "Cheptoo"))

    def apply(self, name: str = "Cheptoo", tanks: int = 2, **other: object) -> int:
        """File an application by experience."""
        given: dict[str, object] = {
            "witnesses": ["Ravi", "Bina of the mill"], "evidence": "two letters", "by": self.boss, "now": self.tick(),
            **other,
        }  # fmt: skip
        return file_application(self.registry, self.cohort, self.ids[name], RULES, tanks=tanks, **given)  # type: ignore[arg-type]

    def sit_again(self, names: tuple[str, ...], seed: str, held_on: date, exception: str | None = None) -> int:
        """Archive another set under the scheme's rule of trying again."""
        return archive_set(
            self.registry, self.cohort, printed_set(names, seed), held_on=held_on, scheme=SCHEME, version=2,
            by=self.boss, now=self.tick(), retest=RULES.retest, exception=exception,
        )  # fmt: skip

    def sit(self, **other: object) -> int:
        """Archive the papers of that set."""
        given: dict[str, object] = {
            "held_on": DAY, "scheme": SCHEME, "version": 2, "by": self.boss, "now": self.tick(), **other,
        }  # fmt: skip
        return archive_set(self.registry, self.cohort, self.record(), **given)  # type: ignore[arg-type]


def printed_set(names: tuple[str, ...], seed: str = "spring") -> Record:
    people = [Person(name) for name in names]
    return make_set(course(), "pens", people, seed, "en", tool="test 1", book=questions.BOOK)


def small_marker(content: str, about: str) -> PaperKey:
    return items_marker(content, about, questions.BOOK)


def typed_right(record: Record, numbers: tuple[int, ...] = (1, 2, 3)) -> bytes:
    """A table in which everyone has every number right, and every letter wrong or right as it falls."""
    lines = ["learner,question,answer"]
    for learner in record.learners:
        if learner.number in numbers:
            for label, item, _ in learner.labelled():
                lines.append(f"{learner.number},{label},{item.key if isinstance(item, NumberItem) else 'A'}")
    return ("\n".join(lines) + "\n").encode()


def open_at(place: Path | str) -> Registry:
    return open_registry(place, now=START, entropy=entropy())


_STATEMENTS: dict[Any, Any] = {}


def open_quickly(place: Path | str) -> Registry:
    """The same, with statements that this process has put together before: for tests that open hundreds of times."""
    registry = open_at(place)
    return replace(registry, engine=registry.engine.execution_options(compiled_cache=_STATEMENTS))


def rewrite(registry: Registry, *statements: str) -> None:
    """What someone does who has the file, the skill and no right: any statements, past triggers and foreign keys."""
    if registry.is_server:
        with registry.engine.begin() as connection:
            connection.execute(text("set session_replication_role = replica"))
            for statement in statements:
                connection.execute(text(statement))
            connection.execute(text("set session_replication_role = origin"))
        return
    own = registry.engine.raw_connection()
    raw: Any = own.driver_connection
    triggers = raw.execute("select name, sql from sqlite_master where type = 'trigger'").fetchall()
    raw.execute("pragma foreign_keys = off")
    raw.execute("pragma ignore_check_constraints = on")
    for name, _ in triggers:
        raw.execute(f"drop trigger {name}")
    for statement in statements:
        raw.execute(statement)
    for _, made in triggers:
        raw.execute(made)
    raw.execute("pragma foreign_keys = on")
    raw.execute("pragma ignore_check_constraints = off")
    own.close()


def scalar(registry: Registry, statement: str, **values: object) -> Any:
    """The one value that a statement gives."""
    with registry.engine.connect() as connection:
        return connection.execute(text(statement), values).scalar()
