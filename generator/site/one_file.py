"""The one-file edition: a whole course in one language as one HTML file, from the bodies that the site shows.

A phone hands a browser one file and nothing beside it; some browsers keep what a page saves by file. Everything is in
the file: looks, font, scripts, drawings. Its parts travel packed and each is opened when it is first shown, so that the
file is soon sent and soon ready; whoever has no scripts is told to take the site, which can be read without.
"""

from __future__ import annotations

import base64
import re
from collections.abc import Mapping
from dataclasses import dataclass
from html import escape
from pathlib import Path

from generator.curriculum.recordings import KINDS
from generator.figures import stylesheet
from generator.problems import MachineError
from generator.site.drawings import inside
from generator.site.mkdocs_run import Docs, SiteSettings, theme_scripts
from generator.site.packing import packed, unpacked
from generator.site.shared_svg import share
from generator.words import Words

_ASSETS = Path(__file__).parent / "assets"
_TAG = re.compile(r"<[a-zA-Z][^<>]*>")
_OWN_ID = re.compile(r'(\s(?:id|for|aria-labelledby|aria-describedby)=")([^"]+)(")')
_LINK = re.compile(r'(\s(?:href|data-home)=")([^"]*)(")')
_INSIDE_DRAWING = re.compile(r"url\(#([^)]+)\)")
_SITE_ONLY = re.compile(r"<!--site-only-->.*?<!--/site-only-->", re.DOTALL)
"""What a page of the site carries and the one file has in another place already."""
_QUESTIONS = re.compile(r'^<script type="[a-z/]+" class="ts-data"[^<>]*>[^<]*</script>$', re.MULTILINE)
"""A module's questions stand on a line of their own; what a tool of a page reads stands inside the tool."""
_PACKED = "ts-packed"
_PACKED_BODY = re.compile(rf'<script type="text/plain" class="{_PACKED}">([^<]*)</script>')
_NOT_PACKED = ("unpack.js", "course.js")
_SOUND = re.compile(r'(\ssrc=")(sound/[^"]+)(")')
_PAGE = re.compile(r"([a-z0-9-]+)\.html(?:#(.+))?")
_STOP_WORDS_LIST = re.compile(r"generateStopWordFilter\(\[([^\]]*)\]")
_STOP_WORDS_TEXT = re.compile(r'stopWordFilter=e\.generateStopWordFilter\("([^"]*)"\.split')


@dataclass(frozen=True)
class OneFileParts:
    """What the one-file edition is made of.

    Args:
        settings: as for the site: title, footer, pages in order.
        words: the language's words.
        site: the built site of the language.
        scripts: the page's scripts in order, by name.
    """

    settings: SiteSettings
    words: Words
    site: Docs
    scripts: Mapping[str, bytes]


def stop_words(scripts: Path, language: str) -> list[str]:
    """The words that the site's search leaves out, read from the installed theme so that both searches agree.

    Args:
        scripts: the installed theme's folder of scripts.
        language: language code.

    Raises:
        MachineError: the installed theme keeps them in another way.
    """
    if language == "en":
        worker = next(iter(sorted((scripts / "workers").glob("search.*.min.js"))))
        lists = _STOP_WORDS_LIST.findall(worker.read_text(encoding="utf-8"))
        found = re.findall(r'"([^"]+)"', lists[0]) if len(lists) == 1 else []
    else:
        pack = (scripts / "lunr" / "min" / f"lunr.{language}.min.js").read_text(encoding="utf-8")
        texts = _STOP_WORDS_TEXT.findall(pack)
        found = texts[0].split() if len(texts) == 1 else []
    if not found:
        raise MachineError(f"the installed page theme keeps its list of small words for '{language}' in a new way")
    return sorted(set(found))


def body(site: Docs, name: str) -> str:
    """The body of a built page, with ids and links made fit for one file, and its drawings in it.

    Args:
        site: the built site.
        name: the page's name without ``.html``; its ids get it as prefix.

    Raises:
        MachineError: the page has not exactly one body.
    """
    text = site[f"{name}.html"].decode("utf-8")
    parts = re.findall(r'<article class="md-content__inner md-typeset">(.*?)</article>', text, re.DOTALL)
    if len(parts) != 1:
        raise MachineError(f"the page '{name}' has {len(parts)} bodies and not one: the page theme changed")
    kept = inside(_SITE_ONLY.sub("", parts[0]), site)
    return share(_TAG.sub(lambda tag: _fit(tag[0], name), kept).strip())


def _fit(tag: str, name: str) -> str:
    def own(match: re.Match[str]) -> str:
        return match[1] + " ".join(f"{name}.{one}" for one in match[2].split()) + match[3]

    def link(match: re.Match[str]) -> str:
        address = match[2]
        page = _PAGE.fullmatch(address)
        if address.startswith("#"):
            address = f"#{name}.{address[1:]}"
        elif page:
            address = f"#{page[1]}.{page[2]}" if page[2] else f"#{page[1]}"
        elif address.startswith("../../"):
            address = address.removeprefix("../")  # one folder less deep than the site's pages
        return match[1] + address + match[3]

    tag = _INSIDE_DRAWING.sub(lambda match: f"url(#{name}.{match[1]})", tag)
    return _LINK.sub(link, _OWN_ID.sub(own, tag))


def _with_sounds(text: str, site: Docs) -> str:
    """A body with its recordings inside: nothing lies beside the one file."""

    def inside(match: re.Match[str]) -> str:
        kind, data = KINDS[match[2].rpartition(".")[2]], base64.b64encode(site[match[2]]).decode("ascii")
        return f"{match[1]}data:{kind};base64,{data}{match[3]}"

    return _SOUND.sub(inside, text)


def one_file(parts: OneFileParts) -> bytes:
    """One HTML file with the whole course.

    Args:
        parts: what it is made of.

    Raises:
        MachineError: the installed page theme is one that this does not know.
    """
    settings, words = parts.settings, parts.words
    names = [path.removesuffix(".md") for _, path in settings.navigation]
    articles = [
        f'<article id="{name}" class="md-typeset" hidden>'
        f"{_packed_body(_with_sounds(body(parts.site, name), parts.site))}</article>"
        for name in names
    ]
    contents = "".join(
        f'<li><a href="#{name}">{escape(title)}</a></li>'
        for name, (title, _) in zip(names, settings.navigation, strict=True)
    )
    style = "".join(
        [
            _font_face(parts.site["assets/fonts/mukta-regular.woff2"], ""),
            _font_face(parts.site["assets/fonts/mukta-bold.woff2"], "font-weight:700;"),
            stylesheet(),
            *((_ASSETS / name).read_text(encoding="utf-8") for name in ("common.css", "one-file.css", "looks.css")),
        ]
    )
    looks = (_ASSETS / "looks.js").read_text(encoding="utf-8")  # in the head, so that nothing is drawn twice
    stops = " ".join(stop_words(theme_scripts(), settings.language))
    last = {
        "stop-words.js": f'Tankschool.course.stopWords = "{stops}".split(" ");\n'.encode(),
        "one-file.js": (_ASSETS / "one-file.js").read_bytes(),
    }
    texts = _packed_scripts({**parts.scripts, **last})
    script = "".join(f"<script>\n{_inside_script(text)}</script>\n" for text in texts)
    mark = (_ASSETS / "mark.svg").read_text(encoding="utf-8").strip()
    icon = base64.b64encode(mark.encode("utf-8")).decode("ascii")
    mark = mark.replace("<svg ", '<svg aria-hidden="true" ', 1)
    find = escape(words.say("page.one_file_search"))
    return (
        f'<!doctype html>\n<html lang="{settings.language}"><head><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width,initial-scale=1">'
        f"<title>{escape(settings.title)}</title>"
        f'<link rel="icon" href="data:image/svg+xml;base64,{icon}">\n<style>\n{style}</style>\n'
        f"<script>\n{_inside_script(looks)}</script></head>\n<body>"
        f'<a class="skip" href="#main">{escape(words.say("page.skip"))}</a>\n'
        f'<header class="band"><div class="top"><a href="#{names[0]}">{mark}'
        f"<span>{escape(settings.title)}</span></a>"
        f'<form class="find" role="search"><div hidden><label for="find">{find}</label>'
        '<input type="text" id="find" autocomplete="off"></div></form></div></header>\n'
        f'<nav class="contents" aria-label="{escape(words.say("page.contents"))}"><ul>{contents}</ul></nav>\n'
        f'<main id="main" tabindex="-1"><noscript><p>{escape(words.say("page.one_file_script_off"))}</p></noscript>'
        '<div class="found" id="found"></div>\n'
        + "\n".join(articles)
        + f"\n</main>\n<footer><p>{escape(settings.footer)}</p></footer>\n{script}</body></html>\n"
    ).encode("utf-8")


def _packed_body(text: str) -> str:
    """A body packed, but for its questions: other parts ask for those without showing it."""
    blocks = _QUESTIONS.findall(text)
    return f'<script type="text/plain" class="{_PACKED}">{packed(_QUESTIONS.sub("", text))}</script>{"".join(blocks)}'


def opened(edition: bytes) -> str:
    """The one file with every part as its script shows it.

    Args:
        edition: what `one_file` gave.
    """
    return _PACKED_BODY.sub(lambda block: unpacked(block[1]), edition.decode("utf-8"))


def _packed_scripts(scripts: Mapping[str, bytes]) -> list[str]:
    """The scripts in their order: what opens packed text, then as few packed texts as may be.

    The course's own script stays as it is: what is long in it is packed already.
    """
    texts, held = [], ""
    for name, data in scripts.items():
        text = data.decode("utf-8")
        if name not in _NOT_PACKED:
            held += text
            continue
        texts += [f'Tankschool.run("{packed(held)}");\n', text] if held else [text]
        held = ""
    return [*texts, f'Tankschool.run("{packed(held)}");\n'] if held else texts


def _font_face(data: bytes, weight: str) -> str:
    text = base64.b64encode(data).decode("ascii")
    return f"@font-face{{font-family:Mukta;{weight}src:url(data:font/woff2;base64,{text})}}\n"


def _inside_script(text: str) -> str:
    """A script's text where a closing tag inside a string would end it too early."""
    return re.sub(r"</(script)", r"<\\/\1", text, flags=re.IGNORECASE).replace("<!--", "<\\!--")
