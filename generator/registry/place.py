"""Where a registry lives: the user's data folder, a file elsewhere, or a PostgreSQL server."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from generator.problems import RefusedError

FILE = "registry.sqlite"
_SERVER = ("postgresql://", "postgres://", "postgresql+psycopg://")


def default_place(environment: Mapping[str, str], home: Path, system: str) -> Path:
    """The file that holds the registry where nothing else is said: never in the checkout, never in `output/`.

    Args:
        environment: the process's variables.
        home: the user's home folder.
        system: as `sys.platform` says it.

    Example:
        >>> default_place({}, Path("/home/asha"), "linux").as_posix()
        '/home/asha/.local/share/tankschool/registry.sqlite'
    """
    if system == "win32":
        folder = Path(environment.get("APPDATA") or home / "AppData" / "Roaming")
    elif system == "darwin":
        folder = home / "Library" / "Application Support"
    else:
        named = Path(environment.get("XDG_DATA_HOME") or "")
        folder = named if named.is_absolute() else home / ".local" / "share"
    return folder / "tankschool" / FILE


def is_server(place: str | Path) -> bool:
    """Whether a place is a PostgreSQL server's address."""
    return isinstance(place, str) and place.startswith(_SERVER)


def database_url(place: str | Path) -> str:
    """The place as the database library writes it.

    Raises:
        RefusedError: a file inside the project's checkout or another copy of it: it would be lost with it, or be
            published with it; or an address of a kind that is not known.
    """
    if isinstance(place, str) and is_server(place):
        return "postgresql+psycopg://" + place.split("://", 1)[1]
    if isinstance(place, str) and "://" in place:
        kind = place.split("://", 1)[0]
        raise RefusedError(f"a registry can't live at '{kind}://': give a file, or postgresql://server/name")
    path = Path(place).absolute()
    for folder in path.parents:
        if (folder / "tankschool.py").is_file() and (folder / "generator").is_dir():
            raise RefusedError(
                f"'{path}' lies in the project's own folder, where a registry of people is lost or given away with it: "
                "choose a folder of your own"
            )
    return f"sqlite:///{path}"


def shown(place: str | Path) -> str:
    """The place as messages name it: never with a password in it."""
    text = str(place)
    if not is_server(text):
        return text
    start, _, rest = text.partition("://")
    user, at, server = rest.rpartition("@")
    return f"{start}://{user.split(':', 1)[0]}{at}{server.split('?', 1)[0]}"
