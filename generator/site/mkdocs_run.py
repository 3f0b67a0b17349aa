"""Plain Markdown in, the pages of a site out: one MkDocs run per language, all at the same time.

MkDocs only renders. What a page opened from a file needs on top is done here on its output: the search index as a
script, and no files that only a web server could use. The theme's search worker travels as text in one script of ours,
because browsers refuse to start a worker from a file; nothing of the theme is copied into this project.
"""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
import tempfile
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, TypeAlias

import yaml

from generator.problems import MachineError
from generator.site.drawings import beside
from generator.site.packing import as_json, packed, unpacked
from generator.site.progress import Progress, silent
from generator.site.slim_page import slim_math, slim_space
from generator.site.slim_svg import slim

Docs: TypeAlias = Mapping[str, bytes]
"""Files by their path with forward slashes, relative to the folder that they are for."""

SHARED_SETTINGS = Path(__file__).parents[2] / "mkdocs.yml"
OWN_THEME = Path(__file__).parent / "theme"

_DROPPED_NAMES = ("sitemap.xml", "sitemap.xml.gz", "404.html", "search/search_index.json")
_DROPPED_FOLDERS = ("assets/javascripts/lunr/", "assets/javascripts/workers/")

_PACKED_INDEX = re.compile(r'unpack\("([^"]*)"\)')

_ONE_SLIP = r"""(function () { var search = lunr.Index.prototype.search;
  lunr.Index.prototype.search = function (query) { var hits = search.call(this, query);
    return hits.length ? hits : search.call(this, query.replace(/(\S{4,})\*(?=\s|$)/g, "$1~1")); }; })();"""

_WORKER_FROM_TEXT = """(function () { var text = %s, Native = window.Worker;
  window.Worker = function (url) {
    if (location.protocol !== "file:" || !/workers\\/search\\./.test(url)) { return new Native(url); }
    return new Native(URL.createObjectURL(new Blob([text], {type: "text/javascript"}))); }; })();
"""


@dataclass(frozen=True)
class SiteSettings:
    """What differs between the languages' runs.

    Args:
        language: language code.
        title: the course's name, shown in the head of every page.
        footer: one line at the foot of every page.
        navigation: (title, Markdown path) of every page, in order.
        others: (code, own name) of the languages to link to, this one left out.
    """

    language: str
    title: str
    footer: str
    navigation: tuple[tuple[str, str], ...]
    others: tuple[tuple[str, str], ...] = ()

    def configuration(self, docs_dir: Path, site_dir: Path) -> bytes:
        """The language's MkDocs configuration: inherits the shared one."""
        # The Hindi full stop also parts words.
        separator = r"[\s\-।]+" if self.language == "hi" else r"[\s\-]+"
        settings = {
            "INHERIT": str(SHARED_SETTINGS),
            "site_name": self.title,
            "copyright": self.footer,
            "docs_dir": str(docs_dir),
            "site_dir": str(site_dir),
            "theme": {"language": self.language, "custom_dir": str(OWN_THEME)},
            "plugins": [{"search": {"lang": self.language, "separator": separator}}],
            "extra": {
                "alternate": [{"name": name, "lang": code, "link": f"../{code}/"} for code, name in self.others],
            },
            "nav": [{title: path} for title, path in self.navigation],
        }
        return yaml.safe_dump(settings, allow_unicode=True, sort_keys=True).encode("utf-8")


def theme_scripts() -> Path:
    """Folder of the installed theme's scripts."""
    import material

    return Path(material.__file__).parent / "templates" / "assets" / "javascripts"


def _only(folder: Path, pattern: str) -> str:
    names = sorted(folder.glob(pattern))
    if len(names) != 1:
        raise MachineError(
            f"the installed page theme has {len(names)} files '{pattern}' and not one: search would be dead"
        )
    return names[0].read_text(encoding="utf-8")


def search_worker(scripts: Path, language: str) -> bytes:
    """Text of ``assets/search-worker.js``: lets the theme's search run in a page that was opened from a file.

    Args:
        scripts: the installed theme's folder of scripts.
        language: language code; every language but English brings its stop words along.

    Raises:
        MachineError: the installed theme loads its search in another way than this repair knows.
    """
    worker = _only(scripts / "workers", "search.*.min.js")
    bundle = _only(scripts, "bundle.*.min.js")
    base = (scripts.parents[1] / "base.html").read_text(encoding="utf-8")
    if (
        worker.count("importScripts(") != 1
        or "new Worker(" not in bundle
        or "__index" not in bundle
        or "config.extra.polyfills" not in base
    ):
        raise MachineError("the installed page theme starts its search in a new way: search would be dead on a stick")
    parts = [worker.split("//# sourceMappingURL")[0], "self.importScripts = function () {};"]
    if language != "en":
        # 'hi' asks for a word splitter of 677 kB and then never uses it: a stand-in gives the same hits.
        packs = scripts / "lunr" / "min"
        parts += [
            (packs / "lunr.stemmer.support.min.js").read_text(encoding="utf-8"),
            "lunr.wordcut = {init: function () {}, cut: String};",
            (packs / f"lunr.{language}.min.js").read_text(encoding="utf-8"),
        ]
    parts.append(_ONE_SLIP)
    return (_WORKER_FROM_TEXT % json.dumps("\n;".join(parts))).encode("ascii")


def for_a_stick(site: Docs) -> dict[str, bytes]:
    """A built site without what only a web server could use, with slim drawings and its search index as a script."""
    kept: dict[str, bytes] = {}
    for path, data in site.items():
        if path in _DROPPED_NAMES or path.startswith(_DROPPED_FOLDERS) or path.endswith(".map"):
            continue
        kept[path] = beside(_slim_page(data.decode("utf-8")), kept).encode("utf-8") if path.endswith(".html") else data
    index = as_json(json.loads(site["search/search_index.json"]))
    script = f'var __index = JSON.parse(Tankschool.unpack("{packed(index)}"));\n'
    kept["search/search_index.js"] = script.encode("ascii")
    return kept


def search_index(site: Docs) -> Any:
    """What the search of a site for a stick knows."""
    found = _PACKED_INDEX.search(site["search/search_index.js"].decode("ascii"))
    if found is None:
        raise MachineError("the site has no packed search index")
    return json.loads(unpacked(found[1]))


def _slim_page(page: str) -> str:
    return slim(slim_math(slim_space(page)))


def run_mkdocs(
    runs: Mapping[str, tuple[SiteSettings, Docs]], work_dir: Path, progress: Progress = silent
) -> dict[str, dict[str, bytes]]:
    """Render the pages of several languages, each in a process of its own, at the same time.

    Args:
        runs: language code -> its settings and its Markdown pages and other files.
        work_dir: folder for what is only needed on the way; it is left empty.
        progress: told ``("site", language)`` when a language is done.

    Returns:
        Language code -> the site's files.

    Raises:
        MachineError: MkDocs said no; carries what it said.
    """
    work_dir.mkdir(parents=True, exist_ok=True)
    environment = {
        **os.environ,
        "PYTHONUTF8": "1",
        "PYTHONHASHSEED": "0",
        "SOURCE_DATE_EPOCH": "946684800",
        "NO_MKDOCS_2_WARNING": "1",
    }
    with tempfile.TemporaryDirectory(dir=work_dir) as temporary:
        # An absolute, resolved path: MkDocs compares paths as text.
        base = Path(temporary).resolve()
        processes: dict[str, subprocess.Popen[bytes]] = {}
        try:
            for language, (settings, docs) in sorted(runs.items()):
                folder = base / language
                write_files(folder / "docs", docs)
                configuration = folder / "mkdocs.yml"
                configuration.write_bytes(settings.configuration(folder / "docs", folder / "site"))
                command = [sys.executable, "-m", "mkdocs", "build", "--strict", "--config-file", str(configuration)]
                processes[language] = subprocess.Popen(
                    command, env=environment, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, cwd=folder
                )
            sites: dict[str, dict[str, bytes]] = {}
            for language, process in processes.items():
                said, _ = process.communicate()
                if process.returncode:
                    lines = said.decode("utf-8", "replace").replace(str(base), "").splitlines()
                    text = "; ".join(line.strip() for line in lines if line and not line.startswith("INFO"))
                    raise MachineError(f"the pages in '{language}' could not be made: {text}")
                sites[language] = for_a_stick(read_files(base / language / "site"))
                progress("site", language)
            return sites
        finally:
            for process in processes.values():
                if process.poll() is None:
                    process.kill()
                    process.communicate()


def write_files(folder: Path, files: Docs) -> None:
    """Write files below a folder, which is made."""
    for path, data in sorted(files.items()):
        target = folder / path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(data)


def read_files(folder: Path) -> dict[str, bytes]:
    """All the files below a folder, by their path with forward slashes, sorted."""
    paths = sorted(path for path in folder.rglob("*") if path.is_file())
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in paths}
