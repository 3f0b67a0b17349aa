"""The seven hold points of a build, its leak tests, and the hashes of its photos."""

from __future__ import annotations

import math
import re
from datetime import datetime

from sqlalchemy import Connection, select

from generator.calculations.leak_judgement import allowed_fall
from generator.problems import RefusedError
from generator.registry.people import has_role, known_person
from generator.registry.store import Registry, writing
from generator.registry.tables import HOLD_POINTS, VERDICTS, hold_points, leak_tests, photos, tank_people
from generator.registry.tanks import known_tank

_DAY, _HAIR = 24, 1e-9
_SHA256 = re.compile("[0-9a-f]{64}")


def sign_hold_point(
    registry: Registry, tank: str, point: str, verdict: str, *, note: str = "", by: int, now: datetime
) -> None:
    """Sign one of the seven hold points; a point that was not good can be signed again.

    Args:
        registry: where.
        tank: its number.
        point: which of `HOLD_POINTS`.
        verdict: `good`, `not_good`, or `does_not_apply` with a note that says why.
        note: what was seen.
        by: who checked this tank, or a coordinator; never someone who built it.
        now: the time.

    Raises:
        RefusedError: no such tank, point or verdict; an earlier point is not good yet; it is good already; the wrong
            signer; the leak test is not tight.
    """
    with writing(registry, now) as entry:
        connection = entry.connection
        known_tank(connection, tank)
        known_person(connection, by)
        if point not in HOLD_POINTS or verdict not in VERDICTS:
            raise RefusedError(f"a hold point is {', '.join(HOLD_POINTS)}; its verdict {', '.join(VERDICTS)}")
        if verdict != "good" and not note.strip():
            raise RefusedError(f"a hold point that is '{verdict}' needs a note that says why")
        _may_sign(connection, tank, by)
        state = _hold_points_of(connection, tank)
        if state.get(point, "not_good") != "not_good":
            raise RefusedError(f"the hold point '{point}' of {tank} is signed already")
        for earlier in HOLD_POINTS[: HOLD_POINTS.index(point)]:
            if state.get(earlier, "not_good") == "not_good":
                raise RefusedError(f"'{earlier}' comes before '{point}' and is not good yet: work stops there")
        if point == "leak_test" and verdict != "not_good":
            _tight(connection, tank, verdict)
        values = {
            "tank": tank, "point": point, "verdict": verdict, "note": note.strip(), "signed_at": entry.at,
            "signed_by": by,
        }  # fmt: skip
        entry.add(hold_points, values, "tank.hold_point", by)


def _may_sign(connection: Connection, tank: str, by: int) -> None:
    part = connection.execute(
        select(tank_people.c.part).where(tank_people.c.tank == tank, tank_people.c.person == by)
    ).scalar()
    if part == "built":
        raise RefusedError(f"person {by} built {tank} and can't sign its hold points: whoever checks it has to")
    if part is None and not has_role(connection, by, "coordinator"):
        raise RefusedError(f"person {by} neither checks {tank} nor coordinates: whoever checks it has to sign")


def _tight(connection: Connection, tank: str, verdict: str) -> None:
    newest = connection.execute(
        select(leak_tests.c.tight).where(leak_tests.c.tank == tank).order_by(leak_tests.c.id.desc()).limit(1)
    ).scalar()
    if verdict == "does_not_apply" or not newest:
        raise RefusedError(f"{tank} has no leak test that it passed: test it, then sign")


def _hold_points_of(connection: Connection, tank: str) -> dict[str, str]:
    """The newest verdict of each point that was signed."""
    chosen = select(hold_points.c.point, hold_points.c.verdict).where(hold_points.c.tank == tank)
    return dict(connection.execute(chosen.order_by(hold_points.c.id)).all())


def record_leak_test(
    registry: Registry, tank: str, *, hours: float, drop_mm: float, tight: bool, note: str = "", by: int, now: datetime
) -> int:
    """Record a leak test; the verdict is `calculations`' or the checker's, and stored as given.

    Args:
        registry: where.
        tank: its number.
        hours: how long the water stood [h].
        drop_mm: how far it fell, rain and evaporation taken out [mm].
        tight: the verdict.
        note: what was seen: damp spots, weather.
        by: who may sign the tank's hold points.
        now: the time.

    Raises:
        RefusedError: no such tank; numbers that are none; called tight over less than a day, or though the water fell
            more than the course allows; the wrong tester.
    """
    with writing(registry, now) as entry:
        row = known_tank(entry.connection, tank)
        known_person(entry.connection, by)
        _may_sign(entry.connection, tank, by)
        if not (math.isfinite(hours) and hours > 0 and math.isfinite(drop_mm)):
            raise RefusedError(f"a leak test has hours above 0 and a drop in mm, not {hours} and {drop_mm}")
        if tight:
            _may_be_tight(row.wall_height, hours, drop_mm)
        values = {
            "tank": tank, "hours": float(hours), "drop_mm": float(drop_mm), "tight": tight, "note": note.strip(),
            "tested_at": entry.at, "tested_by": by,
        }  # fmt: skip
        return int(entry.add(leak_tests, values, "tank.leak_test", by))


def _may_be_tight(wall_height: float, hours: float, drop_mm: float) -> None:
    if hours < _DAY:
        raise RefusedError(
            f"{hours:g} hours are too short to call a tank tight: the fall of a day has to be read. Record the test "
            "as not tight, or read again later"
        )
    fell, allowed = drop_mm * _DAY / hours, allowed_fall(wall_height)
    if fell > allowed + _HAIR:
        raise RefusedError(
            f"the water fell {fell:.1f} mm a day, and the course calls a tank tight up to {allowed:.1f} mm a day: "
            "record the test as not tight"
        )


def add_photo(
    registry: Registry, tank: str, sha256: str, caption: str, *, point: str | None = None, by: int, now: datetime
) -> None:
    """Note the hash of a photo, so that the photo kept elsewhere can be shown to be the same; twice is once.

    Raises:
        RefusedError: no such tank or hold point; a hash that is none; `by` may not sign the tank's hold points.
    """
    with writing(registry, now) as entry:
        connection = entry.connection
        known_tank(connection, tank)
        _may_sign(connection, tank, by)
        if not _SHA256.fullmatch(sha256) or (point is not None and point not in HOLD_POINTS):
            raise RefusedError(
                "a photo is noted by its SHA-256 (64 digits and letters a to f), and a hold point or none"
            )
        chosen = select(photos.c.id).where(photos.c.tank == tank, photos.c.sha256 == sha256)
        if not connection.execute(chosen).first():
            values = {"tank": tank, "point": point, "sha256": sha256, "caption": caption.strip()}
            entry.add(photos, values, "tank.photo", by)
