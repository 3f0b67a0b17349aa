"""A registry in an office of invented people: on SQLite, and on a private PostgreSQL server."""

from __future__ import annotations

import itertools
import os
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from generator.registry import Registry
from tests.registry.everything import fill_all
from tests.registry.server import new_database, server
from tests.registry.small import Office, open_at

_COUNT = itertools.count(1)


@pytest.fixture(scope="session")
def servers() -> Iterator[str]:
    """The start of addresses on a running server."""
    with server_or_skip() as start:
        yield start


class server_or_skip:  # noqa: N801 (reads as a word of the test)
    """Enters the server; without one it skips, and under CI fails."""

    def __enter__(self) -> str:
        self._own = server()
        try:
            return self._own.__enter__()
        except LookupError as error:
            if os.environ.get("CI") == "true":
                raise
            pytest.skip(str(error))

    def __exit__(self, *error: object) -> None:
        self._own.__exit__(None, None, None)


@pytest.fixture(scope="session")
def filled_file(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Office]:
    """A registry file with the office's people, to copy from."""
    place = tmp_path_factory.mktemp("filled") / "registry.sqlite"
    with open_at(place) as registry:
        office = Office(registry).fill()
    return place, office


@pytest.fixture(scope="session")
def filled_database(servers: str) -> tuple[str, Office]:
    """The same as a database."""
    name = f"filled_{os.getpid()}"
    with open_at(new_database(servers, name)) as registry:
        office = Office(registry).fill()
    return name, office


@pytest.fixture(scope="session")
def full_file(filled_file: tuple[Path, Office], tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Office]:
    """A registry file with something in every table."""
    place = tmp_path_factory.mktemp("full") / "registry.sqlite"
    shutil.copyfile(filled_file[0], place)
    with open_at(place) as registry:
        return place, fill_all(same_office(registry, filled_file[1]))


@pytest.fixture(scope="session")
def full_database(filled_database: tuple[str, Office], servers: str) -> tuple[str, Office]:
    """The same as a database."""
    name = f"full_{os.getpid()}"
    with open_at(new_database(servers, name, filled_database[0])) as registry:
        return name, fill_all(same_office(registry, filled_database[1]))


@pytest.fixture
def full_office(full_file: tuple[Path, Office], tmp_path: Path) -> Iterator[Office]:
    """An office with something in every table, in a file."""
    own = tmp_path / "registry.sqlite"
    shutil.copyfile(full_file[0], own)
    with open_at(own) as registry:
        yield same_office(registry, full_file[1])


@pytest.fixture
def full_shared_office(full_database: tuple[str, Office], servers: str) -> Iterator[Office]:
    """The same on a server."""
    name, made = full_database
    with open_at(new_database(servers, f"{name}_{next(_COUNT)}", name)) as registry:
        yield same_office(registry, made)


def same_office(registry: Registry, made: Office) -> Office:
    """An office on a copy of another one's registry."""
    return Office(registry, made.now, dict(made.ids), made.cohort)


@pytest.fixture
def office(filled_file: tuple[Path, Office], tmp_path: Path) -> Iterator[Office]:
    """An office with its registry in a file."""
    place, made = filled_file
    own = tmp_path / "registry.sqlite"
    shutil.copyfile(place, own)
    with open_at(own) as registry:
        yield same_office(registry, made)


@pytest.fixture
def shared_office(filled_database: tuple[str, Office], servers: str) -> Iterator[Office]:
    """An office with its registry on a server."""
    name, made = filled_database
    address = new_database(servers, f"{name}_{next(_COUNT)}", name)
    with open_at(address) as registry:
        yield same_office(registry, made)


@pytest.fixture(params=["office", "shared_office"], ids=["file", "server"])
def any_office(request: pytest.FixtureRequest) -> Office:
    """Both, one after the other."""
    found = request.getfixturevalue(request.param)
    assert isinstance(found, Office)
    return found
