"""`preview`: the site while it is edited: served on this computer only, built anew at each change."""

from __future__ import annotations

import mimetypes
import tempfile
import threading
import time
from collections.abc import Mapping
from dataclasses import dataclass, field
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from urllib.parse import unquote, urlsplit

import click

from generator import site
from generator.commands.course import course_at
from generator.commands.tool import content_option, say_problems
from generator.problems import ExitCode, MachineError, ProblemsError

FOLDERS = ("course", "quizzes", "handouts")
LOOK_EVERY = 0.5
"""Seconds between two looks at the files."""
VERSION = "/preview-version"
RELOAD = b"""<script>(function () { var first = null; window.setInterval(function () {
  fetch("/preview-version").then(function (found) { return found.text(); }).then(function (now) {
    if (first === null) { first = now; } else if (now !== first) { location.reload(); } }).catch(function () {});
  }, 1000); })();
</script></body>"""
"""Only in the preview: a page looks whether it was built anew, and shows itself again."""


@dataclass
class Shown:
    """What the preview shows now.

    Args:
        files: by path below the address.
        version: how often it was built.
    """

    files: Mapping[str, bytes] = field(default_factory=dict)
    version: int = 0

    def page(self, address: str) -> tuple[bytes, str] | None:
        """Bytes and kind of what an address names; None where there is nothing."""
        path = unquote(urlsplit(address).path)
        if path == VERSION:
            return str(self.version).encode("ascii"), "text/plain"
        name = path.lstrip("/") or "START-HERE.html"
        if name.endswith("search/search_index.json"):
            data = self.files.get(name.removesuffix("json") + "js", b"").removeprefix(b"var __index = ")
            return (data, "application/json") if data else None
        found = self.files.get(name)
        if found is None:
            return None
        if name.endswith("assets/search-worker.js"):  # on a stick only pages from files need the worker from a text
            found = found.replace(b'location.protocol !== "file:" || ', b"")
        if name.endswith(".html"):
            found = found.replace(b"</body>", RELOAD)
        kind = mimetypes.guess_type(name)[0] or "application/octet-stream"
        return found, f"{kind}; charset=utf-8" if kind.startswith("text/") or "javascript" in kind else kind


@click.command()
@content_option
@click.option(
    "--port", type=click.IntRange(0, 65535), default=8000, show_default=True, help="Port; 0 takes a free one."
)
def preview(content: Path, port: int) -> int:
    """Show the site while you edit: it is built anew at each change, and open pages show themselves again.

    Only this computer can see it. Problems are printed, and the last good site stays. Stop with Ctrl-C.

    Example: python3 tankschool.py preview        (an own course: preview --content ../our-course)
    """
    shown = Shown()
    server = serve(shown, port)
    try:
        with tempfile.TemporaryDirectory(prefix="tankschool-preview-") as folder:
            products = site.Products(Path(folder))
            seen = stamps(content)
            _build(content, products, shown)
            click.echo(f"Open http://127.0.0.1:{server.server_port}/ (stop with Ctrl-C)")
            while True:
                time.sleep(LOOK_EVERY)
                now = stamps(content)
                if now != seen:
                    seen = now
                    _build(content, products, shown)
    except KeyboardInterrupt:
        click.echo("Stopped.")
    finally:
        server.shutdown()
        server.server_close()
    return ExitCode.GOOD


def stamps(content: Path) -> dict[str, tuple[int, int]]:
    """Time and size of every file that an author writes."""
    found = {}
    for folder in FOLDERS:
        for path in sorted((content / folder).rglob("*")):
            try:
                state = path.stat()
            except OSError:
                continue  # an editor has just swapped it
            if path.is_file():
                found[str(path)] = (state.st_mtime_ns, state.st_size)
    return found


def _build(content: Path, products: site.Products, shown: Shown) -> None:
    start = time.perf_counter()
    try:
        course = course_at(content)
        parts = site.site_files(course, products, {})
    except ProblemsError as error:
        say_problems(error.problems)
        click.echo("The last good site stays.", err=True)
        return
    files = site.stick_files(parts, b"The preview carries no licence texts; a built stick does.\n")
    shown.files, shown.version = files, shown.version + 1
    click.echo(f"Built in {time.perf_counter() - start:.1f} s.")


def serve(shown: Shown, port: int) -> ThreadingHTTPServer:
    """A server for this computer only, running beside.

    Args:
        shown: what it shows, also when that changes.
        port: 0 takes a free one.

    Raises:
        MachineError: the port is taken.
    """

    class Handler(BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            found = shown.page(self.path)
            self.send_response(200 if found else 404)
            self.send_header("Content-Type", found[1] if found else "text/plain; charset=utf-8")
            self.send_header("Cache-Control", "no-store")
            self.end_headers()
            self.wfile.write(found[0] if found else b"There is no such page.")

        def log_message(self, *_: object) -> None:
            """Say nothing: what matters is printed by the builds."""

    try:
        server = ThreadingHTTPServer(("127.0.0.1", port), Handler)
    except OSError as error:
        raise MachineError(
            f"port {port} can't be used: {error.strerror or error} (choose another: preview --port 0 takes a free one)"
        ) from error
    threading.Thread(target=server.serve_forever, daemon=True).start()
    return server
