"""A process that does registry work in children of its own, and has them killed at a point that was told before.

It is started once, so that its libraries are read once; each job then runs in a fork. Jobs come as lines of JSON on
standard input, results go as lines of JSON to standard output.

A point is anything after which a kill could leave a trace: a statement to the database, the start of a commit, a wait
for the disk, a file that takes the place of another, a piece of an archive.
"""

from __future__ import annotations

import json
import os
import pathlib
import resource
import select
import signal
import sys
import time
import zipfile
from collections.abc import Callable
from datetime import timedelta
from pathlib import Path
from typing import Any

from sqlalchemy import event

from generator.problems import MachineError
from generator.registry import (
    NewPerson,
    archive_papers,
    backup,
    import_answers,
    import_class_list,
    issue,
    papers_of,
    read_papers,
    record_decision,
)
from generator.registry.papers import NewSitting, about_set
from generator.registry.store import Registry
from tests.registry.small import DAY, SCOPE, START, open_quickly, passing, printed_set, sign, small_marker, typed_right

BOSS, COHORT = 1, 1


def main() -> None:
    """Do one job a line, until there are no more."""
    for line in sys.stdin:
        job = json.loads(line)
        print(json.dumps(run(job)), flush=True)  # noqa: T201 (this is how the test hears of it)


def run(job: dict[str, Any]) -> dict[str, Any]:
    """Fork, let the child work, kill it if told so; returns what it said and how it ended.

    With `here` the work is done in this process, so that later children find its statements put together.
    """
    if job.get("here"):
        with open_quickly(job["place"]) as registry:
            one_round(registry, job["round"], Path(job["kept"]), lambda *words: None)
        return {"said": [], "killed": False, "code": 0}
    reader, writer = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(reader)
        status = 1
        try:
            work(job, lambda *words: os.write(writer, (json.dumps(words) + "\n").encode()))
            status = 0
        except MachineError as error:
            os.write(writer, (json.dumps(["machine", str(error)]) + "\n").encode())
            status = 4
        finally:
            os._exit(status)
    os.close(writer)
    deadline = time.monotonic() + (job["seconds"] if job.get("seconds") is not None else 60)
    said = b""
    while True:
        left = deadline - time.monotonic()
        ready = select.select([reader], [], [], max(left, 0))[0]
        if not ready:
            os.kill(child, signal.SIGKILL)
            deadline += 60
            continue
        piece = os.read(reader, 65536)
        if not piece:
            break
        said += piece
    os.close(reader)
    _, status = os.waitpid(child, 0)
    lines = [json.loads(line) for line in said.decode().splitlines()]
    return {"said": lines, "killed": os.WIFSIGNALED(status), "code": os.waitstatus_to_exitcode(status)}


def work(job: dict[str, Any], say: Callable[..., object]) -> None:
    """One round: a person, a paper, its answers, a decision, a certificate, a backup; each is told when it is kept."""
    if job.get("largest_file"):
        resource.setrlimit(resource.RLIMIT_FSIZE, (job["largest_file"], job["largest_file"]))
    points = Points(job.get("kill_at"))
    with open_quickly(job["place"]) as registry:
        points.watch(registry)
        if job.get("pages") is not None:
            limit_pages(registry, job["pages"])
        one_round(registry, job["round"], Path(job["kept"]), say)
    say("points", points.passed)


def one_round(registry: Registry, number: int, kept: Path, say: Callable[..., object]) -> None:
    """The work of one round; everything in it can be done again after a kill."""
    now = START + timedelta(days=1, minutes=number)
    name = f"Herder {number}"
    done = import_class_list(
        registry, COHORT, "class.csv", f"name\n{name}\nTwin of {name}\n".encode(), languages=["en"], by=BOSS, now=now
    )
    say("listed", done.new, done.same)
    with registry.engine.connect() as connection:
        person = connection.exec_driver_sql("select id from people where name = ?", (name,)).scalar_one()
    record = printed_set((name,))
    about = NewSitting(COHORT, f"set {number}", DAY, "fence-hand", 2, about_set(record))
    sitting = archive_papers(registry, about, papers_of(record, {name: person}), by=BOSS, now=now)
    say("archived", sitting)
    found = import_answers(registry, sitting, "a.csv", typed_right(record), by=BOSS, now=now, marker=small_marker)
    say("answers", found.new, found.same)
    if not consents(registry, person):
        agreed(registry, person, name, now)
    paper = read_papers(registry, sitting)[0].id
    decision = record_decision(
        registry, COHORT, person, passing(), scheme_status="in-force", papers_read=[paper], by=BOSS, now=now
    )
    say("decided", decision)
    with registry.engine.connect() as connection:
        held = connection.exec_driver_sql("select number from certificates where person = ?", (person,)).scalar()
    if held is None:
        made = issue(
            registry, person, decision, SCOPE, sign=sign, valid_from=now.date(),
            valid_to=now.date() + timedelta(days=900), by=BOSS, now=now,
        )  # fmt: skip
        held = made.number
    say("issued", held)
    say("kept", backup(registry, kept, now=now).head.seq)


def consents(registry: Registry, person: int) -> bool:
    """Whether the person has agreed to be in the registry."""
    with registry.engine.connect() as connection:
        return connection.exec_driver_sql("select consent_on from people where id = ?", (person,)).scalar() is not None


def agreed(registry: Registry, person: int, name: str, now: Any) -> None:
    """Note that the person agreed."""
    from generator.registry import change_person

    change_person(registry, person, NewPerson(name, "en", DAY), by=BOSS, now=now)


class Points:
    """Counts the points that are passed, and ends this process at one of them as a power cut would.

    Args:
        kill_at: the point, counted from 1; None to go on to the end.
    """

    def __init__(self, kill_at: int | None) -> None:
        self.passed = 0
        self.kill_at = kill_at

    def __call__(self, *_: object, **__: object) -> None:
        """Pass a point."""
        self.passed += 1
        if self.passed == self.kill_at:
            os.kill(os.getpid(), signal.SIGKILL)

    def watch(self, registry: Registry) -> None:
        """Count from now on."""
        event.listen(registry.engine, "before_cursor_execute", self)
        event.listen(registry.engine, "commit", self)
        for owner, name in (
            (os, "fsync"),
            (pathlib.Path, "replace"),
            (zipfile.ZipFile, "writestr"),
            (zipfile.ZipFile, "write"),
        ):
            setattr(owner, name, self._before(getattr(owner, name)))

    def _before(self, function: Callable[..., Any]) -> Callable[..., Any]:
        def counted(*arguments: Any, **named: Any) -> Any:
            self()
            return function(*arguments, **named)

        return counted


def limit_pages(registry: Registry, more: int) -> None:
    """Let the database grow by so many pages and no more: a disk that is nearly full."""

    @event.listens_for(registry.engine, "connect")
    def _limit(connection: Any, _record: object) -> None:
        pages = connection.execute("pragma page_count").fetchone()[0]
        connection.execute(f"pragma max_page_count = {pages + more}")

    registry.engine.dispose()


if __name__ == "__main__":
    main()
