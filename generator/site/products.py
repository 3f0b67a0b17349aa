"""What is already made is not made again: products kept by the hash of all that went into them.

A product is a set of files made by one function from known inputs: the site of one language, a one-file edition, a
font, a module's sheets. Its key is a hash of its inputs' bytes and never of a file's time, so a checkout, a copy or a
touched file changes nothing.
"""

from __future__ import annotations

import hashlib
import io
import os
import zipfile
from collections.abc import Callable, Iterable, Mapping
from functools import cache
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path

from generator.problems import MachineError

Files = Mapping[str, bytes]

_GENERATOR = Path(__file__).parents[1]
_SOURCES = (".py", ".js", ".css", ".html", ".svg")
_ZIP_DATE = (1980, 1, 1, 0, 0, 0)


def key_of(*inputs: bytes | str | Files) -> str:
    """The hash of a product's inputs; order counts, and no two different lists of inputs share a key by joining.

    Args:
        inputs: texts, bytes, or sets of files.

    Example:
        >>> key_of("a", "bc") == key_of("ab", "c")
        False
    """
    total = hashlib.sha256()
    for item in inputs:
        if isinstance(item, Mapping):
            part = key_of(*(piece for path in sorted(item) for piece in (path, item[path])))
        else:
            part = hashlib.sha256(item.encode("utf-8") if isinstance(item, str) else item).hexdigest()
        total.update(part.encode("ascii"))
    return total.hexdigest()


@cache
def machine_key(*rooms: str) -> str:
    """The hash of this program's own sources: a changed program makes everything anew.

    Args:
        rooms: names of rooms; none means all of them.
    """
    folders = [_GENERATOR / room for room in rooms] or [_GENERATOR]
    paths = sorted(path for folder in folders for path in folder.rglob("*") if path.suffix in _SOURCES)
    return key_of({path.relative_to(_GENERATOR).as_posix(): path.read_bytes() for path in paths})


def versions_key(packages: Iterable[str]) -> str:
    """The installed versions of packages, as one input of a key."""
    found = []
    for package in packages:
        try:
            found.append(f"{package} {version(package)}")
        except PackageNotFoundError as error:
            raise MachineError(f"the package '{package}' is not installed") from error
    return "; ".join(found)


class Products:
    """The kept products, one file each, in ``output/cache``.

    Args:
        folder: where they are kept; it may be deleted at any time.
    """

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self.made: list[str] = []
        """Names of the products that this run had to make, in order."""

    def kept(self, name: str, key: str) -> dict[str, bytes] | None:
        """A product made earlier from the same inputs, or None; a damaged one counts as none.

        Args:
            name: of the product: ``site-en``.
            key: hash of its inputs, from `key_of`.
        """
        try:
            with zipfile.ZipFile(self._path(name)) as stored:
                if stored.comment != key.encode("ascii"):
                    return None
                return {item.filename: stored.read(item) for item in stored.infolist()}
        except (OSError, zipfile.BadZipFile, ValueError):
            return None

    def keep(self, name: str, key: str, files: Files) -> None:
        """Keep a product that was just made, in the place of the one of this name."""
        out = io.BytesIO()
        with zipfile.ZipFile(out, "w", zipfile.ZIP_STORED) as stored:
            for path, data in files.items():
                stored.writestr(zipfile.ZipInfo(path, _ZIP_DATE), data)
            stored.comment = key.encode("ascii")
        try:
            self._folder.mkdir(parents=True, exist_ok=True)
            fresh = self._path(name).with_suffix(".new")
            fresh.write_bytes(out.getvalue())
            os.replace(fresh, self._path(name))  # noqa: PTH105 (replaces on every system, also an existing file)
        except OSError as error:
            raise MachineError(f"'{self._folder}' could not be written: {error.strerror or error}") from error
        self.made.append(name)

    def get(self, name: str, key: str, make: Callable[[], Files]) -> dict[str, bytes]:
        """A product: the kept one where its inputs are the same, a new one otherwise.

        Args:
            name: of the product.
            key: hash of its inputs, from `key_of`.
            make: makes it.
        """
        found = self.kept(name, key)
        if found is None:
            found = dict(make())
            self.keep(name, key, found)
        return found

    @property
    def work_folder(self) -> Path:
        """Where what is only needed on the way may stand."""
        return self._folder / "work"

    def _path(self, name: str) -> Path:
        return self._folder / f"{name}.zip"
