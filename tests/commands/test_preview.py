"""`preview`: shows the course as it is edited, keeps the last good site, and is seen by this computer only."""

from __future__ import annotations

import re
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from pathlib import Path

import pytest

from generator.commands.new import starter_files
from generator.commands.preview import Shown, serve, stamps
from generator.problems import MachineError

ROOT = Path(__file__).parents[2]
PATIENCE = 120


@pytest.fixture
def content(tmp_path: Path) -> Path:
    folder = tmp_path / "course"
    for name, data in starter_files().items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)
    (folder / "handouts").mkdir()
    return folder


def get(address: str) -> str:
    with urllib.request.urlopen(address, timeout=10) as answer:  # noqa: S310 (an address of this test)
        text: str = answer.read().decode("utf-8")
    return text


@pytest.fixture
def running(content: Path) -> Iterator[subprocess.Popen[str]]:
    command = [sys.executable, "-u", "-m", "generator.commands", "preview", "--port", "0", "--content", str(content)]
    process = subprocess.Popen(command, cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True)
    yield process
    process.kill()
    process.communicate()


def told(process: subprocess.Popen[str], wanted: str) -> str:
    """The next printed line that fits."""
    assert process.stdout is not None
    end = time.monotonic() + PATIENCE
    lines = []
    while time.monotonic() < end:
        line = process.stdout.readline()
        lines.append(line)
        if re.search(wanted, line):
            return line
        if not line and process.poll() is not None:
            break
    pytest.fail(f"never said '{wanted}': {''.join(lines)[-2000:]}")


def test_an_edit_is_seen_and_a_mistake_keeps_the_last_good_site(content: Path, running: subprocess.Popen[str]) -> None:
    home = re.findall(r"http://\S+/", told(running, "Open http"))[0]
    page = f"{home}site/en/first.html"
    assert "Half across" in get(page)
    assert "preview-version" in get(page)
    lesson = content / "course" / "modules" / "01-first" / "lesson.en.md"
    good = lesson.read_text("utf-8")
    lesson.write_text(good + "\nA new sentence stands here.\n", "utf-8")
    told(running, "Built in")
    assert "A new sentence stands here." in get(page)
    lesson.write_text(good + '\n{{ value("no_such_quantity") }}\n', "utf-8")
    assert "no_such_quantity" in told(running, "no_such_quantity")
    told(running, "last good site stays")
    assert "A new sentence stands here." in get(page)


def test_pages_are_found_with_their_kind_and_search_works_over_a_server() -> None:
    shown = Shown(
        {
            "START-HERE.html": b"<body>hello</body>",
            "site/en/search/search_index.js": b"var __index = {}",
            "site/en/assets/search-worker.js": b'if (location.protocol !== "file:" || !x) y',
            "a.css": b"a",
        },
        7,
    )
    server = serve(shown, 0)
    try:
        home = f"http://127.0.0.1:{server.server_port}/"
        assert "hello<script>" in get(home)
        assert get(f"{home}preview-version") == "7"
        assert get(f"{home}site/en/search/search_index.json") == "{}"
        assert get(f"{home}site/en/assets/search-worker.js?v=1") == "if (!x) y"
        for wrong in ("nothing.html", "../../etc/passwd", "site/en/../../START-HERE.html"):
            with pytest.raises(urllib.error.HTTPError, match="404"):
                get(home + wrong)
        with socket.socket() as other:
            assert server.server_address[0] == "127.0.0.1"
            assert other.connect_ex(("127.0.0.1", server.server_port)) == 0
        with pytest.raises(MachineError, match="--port 0"):
            serve(shown, server.server_port)
    finally:
        server.shutdown()
        server.server_close()


def test_every_change_of_a_file_is_noticed(content: Path) -> None:
    before = stamps(content)
    assert stamps(content) == before
    note = content / "handouts" / "note.txt"
    note.write_text("new", "utf-8")
    assert stamps(content) != before
    note.unlink()
    assert stamps(content) == before
