"""Three hundred power cuts: whatever was told as kept is there once, whatever was not is there once or not at all."""

from __future__ import annotations

import random
import time
from collections import Counter
from typing import Any

import pytest
from sqlalchemy import text

from generator.registry import audit, read_backup
from generator.registry.store import Registry
from tests.faults.conftest import Victim
from tests.registry.small import open_quickly

pytestmark = pytest.mark.long

KILLS = 300
PARTS = 6
"""The kills go to this many tests, each with a registry of its own, so that several processes can share them."""


@pytest.mark.parametrize("part", range(PARTS))
def test_nothing_is_lost_or_doubled(victim: Victim, part: int) -> None:
    draw = random.Random(f"kills {part}")  # noqa: S311 (not a secret)
    victim(0, here=True)
    begun = time.monotonic()
    whole = victim(1)
    lasts = time.monotonic() - begun
    assert not whole["killed"], whole
    points = whole["said"][-1][1]
    assert points > 60
    look(victim, 1, whole["said"])
    took: Counter[str] = Counter()
    number = 1
    while took["killed"] < KILLS // PARTS:
        number += 1
        assert number < KILLS, "the kills come too late"
        kill: dict[str, Any] = (
            {"kill_at": draw.randint(1, points)} if number % 2 else {"seconds": lasts * draw.uniform(0.05, 0.95)}
        )
        found = victim(number, **kill)
        took["killed" if found["killed"] else "too late"] += 1
        took[found["said"][-1][0] if found["said"] else "nothing"] += 1
        look(victim, number, found["said"])
        if number % 10 == 0:  # the whole work again, as a person would after a power cut
            again = victim(number)
            assert again["code"] == 0, again
            found = look(victim, number, again["said"])
            assert found == {"people": 2, "answers": 13, "decisions": 1, "certificates": 1}
    assert len(took) >= 6, took  # they hit the import, the decision, the certificate and the backup


def look(victim: Victim, number: int, said: list[list[Any]]) -> dict[str, int]:
    """Hold the registry against what was told; returns how much there is of a round."""
    told = {words[0]: words[1:] for words in said}
    made = read_backup(victim.kept) if victim.kept.exists() else None
    with open_quickly(victim.place) as registry:
        assert audit(registry, heads=[made.head] if made else []) == ()
        found = counts(registry, number)
        with registry.engine.connect() as connection:
            numbers = connection.execute(text("select number, serial from certificates order by serial")).all()
    for name, word, whole in (
        ("people", "listed", 2), ("answers", "answers", 13), ("decisions", "decided", 1), ("certificates", "issued", 1),
    ):  # fmt: skip
        assert found[name] == whole if word in told else found[name] in (0, whole), (name, found, told)
    assert [serial for _, serial in numbers] == list(range(1, len(numbers) + 1))
    if "issued" in told:
        assert told["issued"][0] in {own for own, _ in numbers}
    if "kept" in told:
        assert made
        assert made.head.seq == told["kept"][0]
    return found


def counts(registry: Registry, number: int) -> dict[str, int]:
    """How much there is of one round."""
    ways = {
        "people": "select count(*) from people where name in (:name, :twin)",
        "answers": "select count(*) from answers join papers on papers.id = answers.paper "
        "join people on people.id = papers.person where people.name = :name",
        "decisions": "select count(*) from decisions join people on people.id = decisions.person where name = :name",
        "certificates": "select count(*) from certificates join people on people.id = certificates.person "
        "where name = :name",
    }
    values = {"name": f"Herder {number}", "twin": f"Twin of Herder {number}"}
    with registry.engine.connect() as connection:
        return {
            name: connection.execute(text(way), values if name == "people" else {"name": values["name"]}).scalar_one()
            for name, way in ways.items()
        }
