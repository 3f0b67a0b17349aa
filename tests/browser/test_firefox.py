"""The stick in Firefox as a person has it: not driven, so that its own rules for files hold.

A driven Firefox gets relaxed rules for files and would pass falsely. So a script at the end of a copied page does what
a learner does and then asks for a picture at a server of this test, whose address tells what came out.
"""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import threading
import urllib.parse
from collections.abc import Iterator
from http.server import BaseHTTPRequestHandler, HTTPServer
from pathlib import Path
from queue import Empty, Queue

import pytest

from tests.browser.stick_page import number_items
from tests.site.course_stick import Built, built_once

pytestmark = [pytest.mark.browser, pytest.mark.long]

FIREFOX = shutil.which("firefox-esr") or shutil.which("firefox")
PATIENCE = 90
SETTINGS = """user_pref("datareporting.policy.dataSubmissionEnabled", false);
user_pref("app.update.enabled", false);
user_pref("browser.shell.checkDefaultBrowser", false);
user_pref("browser.aboutwelcome.enabled", false);
user_pref("toolkit.telemetry.enabled", false);
user_pref("network.captive-portal-service.enabled", false);
user_pref("network.connectivity-service.enabled", false);
"""
"""Only what keeps a new profile from asking for things outside; nothing about files."""
TELL = """<script>
function tell(what) { new Image().src = "http://127.0.0.1:%d/told?" + encodeURIComponent(JSON.stringify(what)); }
function later(action) { window.setTimeout(function () {
  try { action(); } catch (error) { tell({step: "error", what: String(error)}); } }, 400); }
window.addEventListener("error", function (event) { tell({step: "error", what: event.message}); });
window.addEventListener("load", function () { later(function () { %s }); });
</script>"""


class Told:
    """A server that only listens: what the page says comes out of a queue."""

    def __init__(self) -> None:
        self.said: Queue[dict[str, object]] = Queue()
        said = self.said

        class Listener(BaseHTTPRequestHandler):
            def do_GET(self) -> None:
                path, _, query = self.path.partition("?")
                if path == "/told":
                    said.put(json.loads(urllib.parse.unquote(query)))
                self.send_response(204)
                self.end_headers()

            def log_message(self, *_: object) -> None:
                """Say nothing."""

        self.server = HTTPServer(("127.0.0.1", 0), Listener)
        self.port = self.server.server_port
        threading.Thread(target=self.server.serve_forever, daemon=True).start()

    def next(self) -> dict[str, object]:
        """What the page says next; a page that says nothing fails the test."""
        try:
            return self.said.get(timeout=PATIENCE)
        except Empty:
            pytest.fail(f"Firefox told nothing for {PATIENCE} seconds")


@pytest.fixture
def told() -> Iterator[Told]:
    found = Told()
    yield found
    found.server.shutdown()
    found.server.server_close()


@pytest.fixture(scope="module")
def built() -> Built:
    return built_once()


def append(path: Path, port: int, script: str) -> None:
    text = path.read_text(encoding="utf-8")
    assert text.count("</body>") == 1
    path.write_text(text.replace("</body>", TELL % (port, script) + "</body>"), encoding="utf-8")


@pytest.fixture
def profile(tmp_path: Path) -> Path:
    folder = tmp_path / "profile"
    folder.mkdir()
    (folder / "user.js").write_text(SETTINGS, encoding="utf-8")
    return folder


def start(profile: Path, page: Path) -> subprocess.Popen[bytes]:
    assert FIREFOX is not None
    settings = {**os.environ, "HOME": str(profile), "MOZ_CRASHREPORTER_DISABLE": "1"}
    command = [FIREFOX, "--headless", "--no-remote", "--profile", str(profile), page.as_uri()]
    return subprocess.Popen(command, env=settings, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)


def stop(process: subprocess.Popen[bytes]) -> None:
    process.terminate()
    try:
        process.wait(timeout=20)
    except subprocess.TimeoutExpired:
        process.kill()
        process.wait()


needs_firefox = pytest.mark.skipif(
    FIREFOX is None, reason="there is no Firefox here, and the set-up of `test` may not install one on this system"
)


@needs_firefox
def test_marking_storage_and_search_of_the_one_file_work_in_plain_firefox(
    built: Built, told: Told, profile: Path, tmp_path: Path
) -> None:
    right, wrong = number_items(built, "hi")[:2]
    page = tmp_path / "course.html"
    shutil.copy(built.folder / "phone" / "tankschool-hi.html", page)
    script = """
      var T = window.Tankschool, again = /again/.test(location.search);
      if (again) {
        tell({step: "kept", right: T.progress.get(RIGHT).right, tried: T.progress.get(WRONG).tried,
          state: T.progress.state(), apart: T.progress.apart(), mock: T.progress.noted("mock") !== null});
        return;
      }
      function type(id, text) {
        var box = document.querySelector('[data-question="' + id + '"]'), unit = box.querySelector("select");
        var fields = box.querySelectorAll("input[type=text]"), field = fields[fields.length - 1];
        field.value = text;
        if (unit) { unit.selectedIndex = 1; }
        box.querySelector(".ts-main").click();
        return (box.querySelector(".ts-verdict") || {}).textContent;
      }
      function mock(first, second) {
        document.querySelector(".ts-mock .ts-main").click();
        tell({step: "marked", right: first, wrong: second, file: location.protocol,
          found: T.search("ढाँ").map(function (one) { return one.id.split(".")[0]; }), slip: T.search("एंगव").length > 0,
          nothing: T.search("क्षक्षक्ष").length, questions: document.querySelectorAll(".ts-mock-question").length});
        window.setTimeout(function () { location.href = location.href.split(/[?#]/)[0] + "?again"; }, 1500);
      }
      location.hash = "frame"; // a part is opened when it is first shown
      later(function () {
        var first = type(RIGHT, KEY), second = type(WRONG, "987654");
        location.hash = "mock-test";
        later(function () { mock(first, second); });
      });
    """
    for name, text in (("RIGHT", right.id), ("WRONG", wrong.id), ("KEY", right.shown_key)):
        script = script.replace(name, json.dumps(text))
    append(page, told.port, script)
    process = start(profile, page)
    try:
        marked = told.next()
        kept = told.next()
    finally:
        stop(process)
    words = built.content.words["hi"]
    assert marked["step"] == "marked", marked
    assert marked["right"] == words.say("exercise.verdict.right")
    assert marked["wrong"] == words.say("exercise.verdict.not_yet")
    assert "frame" in json.dumps(marked["found"])
    assert (marked["slip"], marked["nothing"], marked["file"]) == (True, 0, "file:")
    assert int(str(marked["questions"])) > 5
    assert kept == {"step": "kept", "right": 1, "tried": 1, "state": "kept", "apart": False, "mock": True}


@needs_firefox
def test_plain_firefox_keeps_pages_apart_and_the_site_says_so(
    built: Built, told: Told, profile: Path, tmp_path: Path
) -> None:
    stick = tmp_path / "stick"
    shutil.copytree(built.folder, stick)
    home, lesson = stick / "site" / "en" / "index.html", stick / "site" / "en" / "frame.html"
    append(home, told.port, """
      tell({step: "home", apart: window.Tankschool.progress.apart(),
        notices: document.querySelectorAll(".ts-apart").length});
      window.setTimeout(function () { location.href = "frame.html"; }, 800);""")  # fmt: skip
    append(lesson, told.port, """
      var box = document.querySelector(".md-search__input");
      box.focus(); box.click(); box.value = "angle";
      box.dispatchEvent(new Event("input", {bubbles: true}));
      box.dispatchEvent(new KeyboardEvent("keyup", {bubbles: true}));
      window.setTimeout(function () {
        tell({step: "lesson", apart: window.Tankschool.progress.apart(),
          notices: document.querySelectorAll(".ts-apart").length,
          hits: document.querySelectorAll(".md-search-result__link").length});
      }, 6000);""")  # fmt: skip
    process = start(profile, home)
    try:
        first, second = told.next(), told.next()
    finally:
        stop(process)
    assert first == {"step": "home", "apart": False, "notices": 0}
    assert (second["step"], second["apart"]) == ("lesson", True)
    assert int(str(second["notices"])) >= 1
    assert int(str(second["hits"])) > 0
