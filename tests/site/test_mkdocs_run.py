"""Plain Markdown in, pages that open from a stick out."""

import re
from pathlib import Path

import pytest

from generator.problems import MachineError
from generator.site.mkdocs_run import SiteSettings, run_mkdocs, search_index, search_worker, theme_scripts

SETTINGS = SiteSettings("hi", "टंकी", "नीचे की पंक्ति", (("घर", "index.md"), ("ढाँचा", "frame.md")), (("en", "English"),))
PAGES = {
    "index.md": "# घर {#home}\n\nमसाला\n\n[ढाँचा](frame.md)\n".encode(),
    "frame.md": "# ढाँचा {#frame}\n\n## जाली {#mesh}\n\nझूलती जाली\n".encode(),
}


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> dict[str, bytes]:
    work = tmp_path_factory.mktemp("work")
    runs = {"hi": (SETTINGS, {**PAGES, "assets/search-worker.js": search_worker(theme_scripts(), "hi")})}
    first = run_mkdocs(runs, work / "a")["hi"]
    second = run_mkdocs(runs, work / "other folder" / "b")["hi"]
    assert first == second, "two runs in different folders must give the same bytes"
    assert not any((work / "a").iterdir())
    return first


def test_nothing_that_needs_a_server_is_left(site: dict[str, bytes]) -> None:
    assert not [path for path in site if re.search(r"sitemap|404|\.map$|/lunr/|/workers/|search_index\.json", path)]


def test_the_index_is_a_script_and_has_every_heading(site: dict[str, bytes]) -> None:
    assert site["search/search_index.js"].startswith(b"var __index = ")
    found = {doc["location"] for doc in search_index(site)["docs"]}
    assert found == {"index.html", "frame.html", "frame.html#mesh"}


def test_pages_name_their_language_link_the_other_and_ask_for_nothing_outside(site: dict[str, bytes]) -> None:
    page = site["frame.html"].decode("utf-8")
    assert '<html lang="hi"' in page
    assert 'href="../en/frame.html" hreflang="en" lang="en">English' in page
    assert 'role="dialog" aria-label="' in page
    assert 'rel="alternate"' not in page
    assert not re.search(r'(?:src|href)="(?:https?:)?//', page)


def test_a_page_that_links_to_nothing_stops_the_build_with_its_words(tmp_path: Path) -> None:
    broken = {**PAGES, "frame.md": b"# Frame\n\n[nowhere](nowhere.md)\n"}
    with pytest.raises(MachineError, match=r"'hi'.*nowhere\.md"):
        run_mkdocs({"hi": (SETTINGS, broken)}, tmp_path)


def test_a_theme_that_starts_its_search_in_another_way_stops_the_build(tmp_path: Path) -> None:
    scripts = tmp_path / "templates" / "assets" / "javascripts"
    (scripts / "workers").mkdir(parents=True)
    (tmp_path / "templates" / "base.html").write_text("{{ config.extra.polyfills }}", encoding="utf-8")
    with pytest.raises(MachineError, match="search would be dead"):
        search_worker(scripts, "en")
    (scripts / "workers" / "search.1.min.js").write_text("importScripts(1);importScripts(2)", encoding="utf-8")
    (scripts / "bundle.1.min.js").write_text("new Worker(x);__index", encoding="utf-8")
    with pytest.raises(MachineError, match="in a new way"):
        search_worker(scripts, "en")
