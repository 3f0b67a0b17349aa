#!/usr/bin/env python3
"""Start here. On the first run this makes a private environment beside the course, then it runs the command.

    python3 tankschool.py build          (on Windows: py tankschool.py build)

It needs Python 3.11 or newer with its venv module, and the internet once. It uses the standard library only, and
changes nothing outside this folder.
"""

import hashlib
import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent
ENVIRONMENT = ROOT / ".environment"
OLDEST = (3, 11)
MACHINE_FAILED = 4


def main(arguments: list[str]) -> int:
    """Make sure that the environment is there, run the command in it, and hand back its exit code."""
    if sys.version_info < OLDEST:
        print(f"Tankschool needs Python {OLDEST[0]}.{OLDEST[1]} or newer; this is {sys.version.split()[0]}.")
        return MACHINE_FAILED
    extras = ("test",) if arguments[:1] == ["test"] else ()
    try:
        python = environment(extras)
    except (OSError, subprocess.CalledProcessError) as error:
        print(f"The private environment could not be made: {error}", file=sys.stderr)
        print("It needs the internet once, about 400 MB of disk, and Python's venv module", file=sys.stderr)
        print("(on Debian and Ubuntu: apt install python3-venv). Then run the same command again.", file=sys.stderr)
        return MACHINE_FAILED
    path = os.pathsep.join(filter(None, [str(ROOT), os.environ.get("PYTHONPATH")]))
    settings = {**os.environ, "PYTHONPATH": path, "PYTHONUTF8": "1", "PYTHONIOENCODING": "utf-8"}
    try:
        return subprocess.run(
            [str(python), "-m", "generator.commands", *arguments], env=settings, check=False
        ).returncode
    except KeyboardInterrupt:
        return 130


def environment(extras: tuple[str, ...]) -> Path:
    """The environment's Python, after making or mending the environment where it is needed."""
    python = ENVIRONMENT / ("Scripts/python.exe" if os.name == "nt" else "bin/python")
    stamp = ENVIRONMENT / "made-from.txt"
    wanted = fingerprint()
    done = stamp.read_text("utf-8").split() if stamp.is_file() and python.is_file() else []
    if done[:1] != [wanted]:
        print("First use here: making a private environment in .environment (some minutes, once) ...", flush=True)
        stamp.unlink(missing_ok=True)
        subprocess.run([sys.executable, "-m", "venv", "--clear", str(ENVIRONMENT)], check=True)
        install(python, requirements())
        done = [wanted]
    missing = [extra for extra in extras if extra not in done]
    for extra in missing:
        print(f"Adding what '{extra}' needs to the private environment (once) ...", flush=True)
        install(python, requirements(extra))
    if missing or not stamp.is_file():
        stamp.write_text(" ".join([*done, *missing]), "utf-8")
    return python


def fingerprint() -> str:
    """Hash of what the environment is made from: a changed list or another Python makes it anew."""
    parts = [sys.version, *requirements(), *requirements("test"), (ROOT / "constraints.txt").read_text("utf-8")]
    return hashlib.sha256("\n".join(parts).encode()).hexdigest()


def requirements(extra: str = "") -> list[str]:
    """The libraries that the project names, with their ranges."""
    import tomllib  # only here: an older Python must still reach the sentence that says it is too old

    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    found: list[str] = project["optional-dependencies"][extra] if extra else project["dependencies"]
    return found


def install(python: Path, libraries: list[str]) -> None:
    """Install libraries at the exact versions of constraints.txt, so that the same input gives the same bytes.

    Where a folder `wheels` came along on a stick, they are taken from it and the internet is left alone.
    """
    options = ["--disable-pip-version-check", "--no-input", "--quiet", "--constraint", str(ROOT / "constraints.txt")]
    if (ROOT / "wheels").is_dir():
        options += ["--no-index", "--find-links", str(ROOT / "wheels")]
    subprocess.run([str(python), "-m", "pip", "install", *options, *libraries], check=True)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
