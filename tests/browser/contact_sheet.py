"""Pictures of every page of a built stick: `python -m tests.browser.contact_sheet STICK DIR [--readme]`, then look.

DIR gets a PNG of each page of each language at 360 and 1280 px, cut off where no one looks any more. With `--readme` it
gets only `page.png`, the picture of a lesson that the README shows.
"""

from __future__ import annotations

import shutil
import sys
from pathlib import Path

from playwright.sync_api import Page, sync_playwright

from generator.commands.test import BROWSERS

WIDTHS = (360, 1280)
LONGEST = 6000
"""Pixels of height: longer pictures can't be looked at."""
README_PAGE = "site/en/frame.html"
README_SIZE = (1000, 1000)
SETTLED = "document.fonts.ready.then(() => null)"


def every_page(page: Page, stick: Path, folder: Path) -> None:
    """One PNG for each page and width."""
    for width in WIDTHS:
        page.set_viewport_size({"width": width, "height": 900})
        for path in sorted((stick / "site").glob("*/*.html")):
            page.goto(path.as_uri())
            page.evaluate(SETTLED)
            height = min(LONGEST, page.evaluate("document.documentElement.scrollHeight"))
            name = f"{path.parent.name}-{path.stem}-{width}.png"
            page.screenshot(path=folder / name, full_page=True, clip={"x": 0, "y": 0, "width": width, "height": height})


def readme_page(page: Page, stick: Path, folder: Path) -> None:
    """A lesson with a drawing and an exercise below it."""
    page.set_viewport_size({"width": README_SIZE[0], "height": README_SIZE[1]})
    page.goto((stick / README_PAGE).as_uri())
    page.evaluate(SETTLED)
    page.evaluate("""() => { const place = one => one.getBoundingClientRect();
      const figures = [...document.querySelectorAll("article > .ts-figure")];
      const all = [...document.querySelectorAll("article > .ts-card")];
      const cards = all.filter(one => !one.querySelector(".ts-figure"));
      const pairs = figures.flatMap(figure => cards.map(card => [place(card).bottom - place(figure).top, figure, card]))
        .filter(pair => place(pair[2]).top > place(pair[1]).bottom).sort((a, b) => a[0] - b[0]);
      document.documentElement.style.scrollBehavior = "auto";
      scrollTo(0, scrollY + place(pairs[0][2]).bottom - innerHeight + 30); }""")
    page.wait_for_timeout(500)
    page.screenshot(path=folder / "page.png")


def write(stick: Path, folder: Path, *, readme: bool = False) -> None:
    """The pictures of a built stick."""
    folder.mkdir(parents=True, exist_ok=True)
    program = next(filter(None, map(shutil.which, BROWSERS)), None)
    with sync_playwright() as play:
        browser = play.chromium.launch(executable_path=program, args=["--no-sandbox", "--disable-gpu"])
        (readme_page if readme else every_page)(browser.new_page(), stick, folder)
        browser.close()


if __name__ == "__main__":
    names = [one for one in sys.argv[1:] if one != "--readme"]
    write(Path(names[0]), Path(names[1]), readme="--readme" in sys.argv)
