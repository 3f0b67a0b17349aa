"""`test`: sets up what the tests need, then runs all of them."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import click

from generator.commands.tool import ROOT
from generator.problems import ExitCode, MachineError

BROWSERS = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome", "msedge")
WINDOWS_PLACES = ("Google/Chrome/Application/chrome.exe", "Microsoft/Edge/Application/msedge.exe")
SYSTEM_PACKAGES = {
    "chromium": BROWSERS,
    "firefox-esr": ("firefox-esr", "firefox"),
    "poppler-utils": ("pdftoppm",),
    "postgresql": ("initdb",),
}
"""Debian package -> the programs of which one must be there."""
SERVER_PROGRAMS = "/usr/lib/postgresql"
"""Where Debian puts the database server's programs, off the path."""


@click.command()
@click.argument("paths", nargs=-1)
@click.option("--fast", is_flag=True, help="Leave out the tests that drive a browser.")
@click.option("--long", "all_of_them", is_flag=True, help="Also the tests that take many minutes.")
def test(paths: tuple[str, ...], fast: bool, all_of_them: bool) -> int:
    """Set up what the tests need and run all of them, but for those that take many minutes.

    Every page under the barrier checker, 300 kills of the registry, a second browser, and the heaviest benchmarks run
    with `--long`, or by their path.

    Example: python3 tankschool.py test        (or: test --long, test tests/formula, test --fast)
    """
    browser = None if fast else find_browser()
    steps: list[tuple[str, list[str]]] = []
    if not paths:
        steps += [
            ("style", ["-m", "ruff", "check", "."]),
            ("layout of the code", ["-m", "ruff", "format", "--check", "."]),
            ("types", ["-m", "mypy"]),
            ("imports go one way", ["-c", "from importlinter.cli import lint_imports_command; lint_imports_command()"]),
        ]
    left_out = ["not browser"] if fast else []
    left_out += [] if all_of_them or paths else ["not long"]
    options = ["-m", " and ".join(left_out)] if left_out else []
    workers = ["-n", str(min(os.cpu_count() or 1, 4)), "--dist", "loadfile"]
    steps.append(("tests", ["-m", "pytest", "-q", *workers, *options, *paths]))
    settings = {**os.environ, **({"TANKSCHOOL_BROWSER": browser} if browser else {})}
    failed = []
    for name, arguments in steps:
        click.echo(f"== {name}")
        if subprocess.run([sys.executable, *arguments], cwd=ROOT, env=settings, check=False).returncode:
            failed.append(name)
    click.echo(f"Failed: {', '.join(failed)}" if failed else "All good.")
    return ExitCode.PROBLEMS if failed else ExitCode.GOOD


def find_browser() -> str:
    """A Chromium browser, installed through the system where it may be.

    Raises:
        MachineError: none is there and none could be installed; the message says what to install.
    """
    for package, programs in SYSTEM_PACKAGES.items():
        if not any(map(_is_there, programs)) and may_install():
            click.echo(f"Installing {package} through the system (once) ...")
            for command in (["update", "-qq"], ["install", "-y", "-qq", package]):
                subprocess.run(["apt-get", *command], check=False, stdout=subprocess.DEVNULL)
    found = next(filter(None, map(shutil.which, BROWSERS)), None) or _windows_browser()
    if found is None:
        raise MachineError("the tests of the pages need Chromium, Chrome or Edge: install one, or use --fast")
    return found


def _is_there(program: str) -> bool:
    return shutil.which(program) is not None or any(Path(SERVER_PROGRAMS).glob(f"*/bin/{program}"))


def may_install() -> bool:
    """Whether this process may install system packages: root on a Debian-like system."""
    return sys.platform == "linux" and os.geteuid() == 0 and shutil.which("apt-get") is not None


def _windows_browser() -> str | None:
    for variable in ("PROGRAMFILES", "PROGRAMFILES(X86)", "LOCALAPPDATA"):
        for place in WINDOWS_PLACES:
            path = Path(os.environ.get(variable, "")) / place
            if os.environ.get(variable) and path.is_file():
                return str(path)
    return None
