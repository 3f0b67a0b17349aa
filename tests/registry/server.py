"""A private PostgreSQL server for these tests, run as a user of its own; where there is none, a reason to skip."""

from __future__ import annotations

import os
import shutil
import signal
import socket
import subprocess
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

MISSING = "no PostgreSQL server program (postgres, initdb) on this machine: the tests of a shared registry are left out"


def programs() -> Path | None:
    """The folder of `postgres` and `initdb`, on the path or where Debian puts them."""
    found = shutil.which("initdb")
    if found is None:
        places = sorted(Path("/usr/lib/postgresql").glob("*/bin/initdb"))
        found = str(places[-1]) if places else None
    return Path(found).resolve().parent if found else None


def install() -> None:
    """Install the server through the system, where CI asks for it and root may."""
    if os.environ.get("CI") == "true" and shutil.which("apt-get") and os.geteuid() == 0:
        for command in (["update", "-qq"], ["install", "-y", "-qq", "--no-install-recommends", "postgresql"]):
            subprocess.run(["apt-get", *command], check=False, stdout=subprocess.DEVNULL)


@contextmanager
def server() -> Iterator[str]:
    """A running server on a free port of this machine; gives the start of its addresses.

    Raises:
        LookupError: there is no server program.
    """
    if programs() is None:
        install()
    folder = programs()
    if folder is None:
        raise LookupError(MISSING)
    user = _other_user() if os.geteuid() == 0 else None
    with tempfile.TemporaryDirectory(prefix="pg-", dir="/tmp", ignore_cleanup_errors=True) as scratch:
        Path(scratch).chmod(0o755)
        data = Path(scratch) / "data"
        data.mkdir()
        if user is not None:
            os.chown(data, user.pw_uid, user.pw_gid)
        be: dict[str, object] = {"user": user.pw_uid, "group": user.pw_gid, "extra_groups": []} if user else {}
        common: dict[str, object] = {"cwd": data, "stdout": subprocess.DEVNULL, "stderr": subprocess.DEVNULL, **be}
        ways = ["-A", "trust", "-U", "tamarisk", "-E", "UTF8", "--locale=C", "-N"]
        make = [str(folder / "initdb"), "-D", str(data), *ways]
        subprocess.run(make, check=True, **common)  # type: ignore[call-overload]
        with socket.socket() as probe:
            probe.bind(("127.0.0.1", 0))
            port = probe.getsockname()[1]
        run = [str(folder / "postgres"), "-D", str(data), "-p", str(port), "-h", "127.0.0.1", "-k", "", "-F"]
        run += [
            "-c",
            "lock_timeout=60s",
        ]  # what a failed test left locked fails the next, which else waits
        process = subprocess.Popen(run, **common)  # type: ignore[call-overload]
        try:
            _wait(port, process)
            yield f"postgresql://tamarisk@127.0.0.1:{port}"
        finally:
            process.send_signal(signal.SIGQUIT)  # at once: nothing on it is worth keeping
            process.wait(30)


def _other_user() -> Any:
    """The server refuses to run as root: its own user, or nobody."""
    import pwd  # not on every system, and then there is no such server either

    for name in ("postgres", "nobody"):
        try:
            return pwd.getpwnam(name)
        except KeyError:
            continue
    raise LookupError(MISSING)


def _wait(port: int, process: subprocess.Popen[bytes]) -> None:
    import psycopg

    for _ in range(300):
        if process.poll() is not None:
            raise LookupError("the PostgreSQL server did not start")
        try:
            psycopg.connect(f"postgresql://tamarisk@127.0.0.1:{port}/postgres", connect_timeout=2).close()
        except psycopg.OperationalError:
            time.sleep(0.1)
        else:
            return
    raise LookupError("the PostgreSQL server did not answer")


def new_database(start: str, name: str, template: str = "template0") -> str:
    """The address of a new database on a server."""
    import psycopg

    with psycopg.connect(f"{start}/postgres", autocommit=True) as connection:
        connection.execute(f'create database "{name}" template "{template}"')  # type: ignore[call-overload]
    return f"{start}/{name}"
