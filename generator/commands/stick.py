"""`stick`: copies the built stick to a drive, reads every file back, and puts the tool beside it where wished."""

from __future__ import annotations

import contextlib
import hashlib
import os
import platform
import shutil
import subprocess
import sys
from collections.abc import Callable, Mapping
from pathlib import Path

import click

from generator.commands.tool import ROOT, ProgressLine, json_option, output_option, say_json
from generator.problems import ExitCode, MachineError, RefusedError
from generator.site.mkdocs_run import read_files
from generator.site.swap import swap_in

FOLDER = "tankschool"
"""Folder on the drive: only it is ever replaced."""
TOOL = "tool"
SUMS = "SHA256SUMS.txt"
CLUSTER = 32_768
"""Bytes. The smallest piece that a cheap drive gives to a file."""
SOURCES = (
    "course",
    "quizzes",
    "handouts",
    "generator",
    "docs",
    "tankschool.py",
    "pyproject.toml",
    "constraints.txt",
    "mkdocs.yml",
    "README.md",
    "DEVELOPERS.md",
    "LICENSE",
)
"""What the tool is made of; a built thing, a test or a registry never travels."""
LEFT_OUT = ("__pycache__", ".pyc")

Download = Callable[[Path], None]


@click.command()
@click.argument("drive", type=click.Path(exists=True, file_okay=False, path_type=Path))
@output_option
@click.option("--with-tool", is_flag=True, help="Add the tool and all its libraries, for laptops without the internet.")
@json_option
def stick(drive: Path, output: Path, with_tool: bool, as_json: bool) -> int:
    """Copy the built stick to DRIVE, into a folder 'tankschool', and verify every file.

    The folder is replaced whole or not at all. With --with-tool the libraries are fetched now (it needs the internet
    once) and fit computers of this kind only: same system, same version of Python.

    Example: python3 tankschool.py stick /media/usb        (on Windows: stick E:/)
    """
    progress = ProgressLine(quiet=as_json)
    progress("Reading the built stick ...")
    files = built_files(output / "stick")
    if with_tool:
        progress("Fetching the libraries ...")
        files |= tool_files(output, wheels)
    copy_to(drive, files, progress)
    progress.done()
    size = sum(map(len, files.values()))
    if as_json:
        say_json({"format": 1, "folder": str(drive / FOLDER), "files": len(files), "bytes": size, "verified": True})
        return ExitCode.GOOD
    click.echo(f"{len(files)} files, {size / 1_000_000:.1f} MB in {drive / FOLDER}, every one read back and verified.")
    click.echo(f"Open {drive / FOLDER / 'START-HERE.html'}. Eject the drive before you pull it out.")
    return ExitCode.GOOD


def built_files(folder: Path) -> dict[str, bytes]:
    """The built stick by path, held against its own list of sums.

    Args:
        folder: `output/stick`.

    Raises:
        RefusedError: nothing is built there, or a file is not as it was built.
    """
    if not (folder / SUMS).is_file():
        raise RefusedError(f"no stick is built in '{folder}': run 'build' first")
    files = read_files(folder)
    lines = (line.partition("  ") for line in files[SUMS].decode("ascii").splitlines())
    listed = {name: total for total, _, name in lines}
    changed = sorted(name for name in {*listed, *files} - {SUMS} if listed.get(name) != _sum(files.get(name, b"")))
    if changed:
        raise RefusedError(f"'{changed[0]}' is not as it was built (of {len(changed)} such files): run 'build' again")
    return files


def _sum(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()


# ----------------------------------------------------------------------------------------------- the copy


def copy_to(drive: Path, files: Mapping[str, bytes], progress: ProgressLine) -> None:
    """Put files into the drive's folder, whole or not at all, each read back from the drive.

    Args:
        drive: its root, or any folder.
        files: by path.
        progress: told how far it is.

    Raises:
        MachineError: the drive is full, read-only or reads back something else; what was there is as it was.
    """
    _room(drive, files)
    try:
        swap_in(drive / FOLDER, lambda fresh: _write(fresh, files, progress))
    except MachineError as error:
        if isinstance(error.__cause__, PermissionError) or "ead-only" in str(error):
            what = f"'{drive}' can't be written: take off its write lock, or choose another drive. Nothing was changed."
            raise MachineError(what) from error
        raise


def _room(drive: Path, files: Mapping[str, bytes]) -> None:
    need = sum(-(-len(data) // CLUSTER) * CLUSTER for data in files.values()) + 2 * CLUSTER
    free = shutil.disk_usage(drive).free
    if need > free:
        raise MachineError(
            f"'{drive}' has {free / 1e6:.0f} MB free and {need / 1e6:.0f} MB are needed "
            "(the old copy stays until the new one is good): make room, or choose another drive. Nothing was changed."
        )


def _write(fresh: Path, files: Mapping[str, bytes], progress: ProgressLine) -> None:
    for number, (name, data) in enumerate(sorted(files.items()), start=1):
        target = fresh / name
        target.parent.mkdir(parents=True, exist_ok=True)
        with target.open("wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
            _forget(file.fileno())
        if number % 50 == 0:
            progress(f"{number} of {len(files)} files written ...")
    for name, data in sorted(files.items()):
        if _sum((fresh / name).read_bytes()) != _sum(data):
            raise MachineError(
                f"'{name}' reads back from the drive other than it was written: the drive is worn out, choose another"
            )


def _forget(handle: int) -> None:
    """Let the system drop its own copy of a file, so that it is read back from the drive itself where it can be."""
    advise = getattr(os, "posix_fadvise", None)
    if advise is not None:
        with contextlib.suppress(OSError):
            advise(handle, 0, 0, os.POSIX_FADV_DONTNEED)


# ----------------------------------------------------------------------------------------------- the tool


def tool_files(output: Path, download: Download) -> dict[str, bytes]:
    """The tool as it travels: its source, its libraries as wheels, and a note how to start.

    Args:
        output: folder for what is only needed on the way.
        download: puts the wheels into a folder.
    """
    found = {f"{TOOL}/START-THE-TOOL.txt": _note()}
    for source in SOURCES:
        path = ROOT / source
        inside = read_files(path) if path.is_dir() else {"": path.read_bytes()} if path.is_file() else {}
        for name, data in inside.items():
            if not any(part in name for part in LEFT_OUT):
                found["/".join(filter(None, (TOOL, source, name)))] = data
    folder = output / "wheels"
    folder.mkdir(parents=True, exist_ok=True)
    download(folder)
    wheels_found = {f"{TOOL}/wheels/{name}": data for name, data in read_files(folder).items()}
    if not wheels_found:
        raise MachineError("no libraries could be fetched: connect to the internet and try again")
    return found | wheels_found


def wheels(folder: Path) -> None:
    """Fetch the libraries at the exact versions of `constraints.txt`.

    Raises:
        MachineError: pip said no; carries its last line.
    """
    import tomllib

    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    command = [
        sys.executable,
        "-m",
        "pip",
        "download",
        "--quiet",
        "--disable-pip-version-check",
        "--no-input",
        "--only-binary",
        ":all:",
        "--constraint",
        str(ROOT / "constraints.txt"),
        "--dest",
        str(folder),
    ]
    done = subprocess.run([*command, *project["dependencies"]], capture_output=True, text=True, check=False)
    if done.returncode:
        said = (done.stderr.strip().splitlines() or ["no reason given"])[-1]
        raise MachineError(f"the libraries could not be fetched (it needs the internet once): {said}")


def _note() -> bytes:
    version = f"{sys.version_info.major}.{sys.version_info.minor}"
    lines = [
        "The tool, for a laptop without the internet",
        "===========================================",
        "",
        f"It fits computers like the one that made this stick: {platform.system()} on {platform.machine()},",
        f"Python {version}. On another kind, run 'stick --with-tool' there once, with the internet.",
        "",
        "1. Copy this whole folder 'tool' to the laptop's own disk (a USB drive is too slow and too plain for it).",
        "2. Open a terminal in the copy.",
        "3. Type: python3 tankschool.py build        (on Windows: py tankschool.py build)",
        "",
        "The first start takes some minutes: it makes a private environment from the folder 'wheels'.",
        "",
    ]
    return ("\r\n".join(lines)).encode("ascii")
