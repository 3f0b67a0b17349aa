"""The page that checks a certificate in the browser: its body, with the keys and the list in it, and its script."""

from __future__ import annotations

import json
from dataclasses import dataclass
from html import escape
from importlib.resources import files
from typing import Any

from generator.credentials import fingerprint
from generator.credentials.certificate import ROLES, ROOFS
from generator.credentials.keys import PublicKey, PublicKeys
from generator.credentials.letters import RANGES
from generator.credentials.verify import MAX_AGE
from generator.words import Words

BOX = "ts-check"
"""Id of the element that holds the page."""


@dataclass(frozen=True, slots=True)
class CheckPage:
    """What a site puts into a page.

    Args:
        title: of the page.
        body: HTML, without a script that runs; may stand in Markdown as one raw block.
        script: a classic script that defines `Tankschool.check`; the same for every language and issuer.
        start: a line of script that brings the body to life; comes after both.
    """

    title: str
    body: str
    script: str
    start: str


def check_page(keys: PublicKeys, list_text: str, words: Words, max_age: int = MAX_AGE) -> CheckPage:
    """The page for one issuer in one language.

    Args:
        keys: the issuer's public keys, as `read_public_keys` has accepted them.
        list_text: text of the signed list of withdrawn numbers; empty for none.
        words: of the language.
        max_age: days after which the list is called old.
    """
    data = json.dumps(page_data(keys, list_text, words, max_age), ensure_ascii=False, sort_keys=True)
    data = data.replace("&", "\\u0026").replace("<", "\\u003c").replace(">", "\\u003e")
    newest = keys.newest
    body = f"""<div id="{BOX}" class="{BOX}">
<p>{_text(words.say("certificate.page.how"))}</p>
<p>{_text(words.say("certificate.page.offline"))}</p>
<p><strong>{_text(words.say("certificate.label.issuer"))}</strong> {_text(keys.issuer)}</p>
<p><strong>{_text(words.say("certificate.label.key"))}</strong> <span class="{BOX}-words">{_words(newest, words)}</span><br>
<span class="{BOX}-digits">{fingerprint.in_digits(newest.public)}</span></p>
<p>{_text(words.say("certificate.compare_key"))}</p>
<p><label for="{BOX}-text">{_text(words.say("certificate.page.field"))}</label></p>
<textarea id="{BOX}-text" rows="6" style="width:100%;box-sizing:border-box" autocomplete="off" autocapitalize="none" spellcheck="false"></textarea>
<p><button type="button" class="ts-button" disabled style="min-height:44px;min-width:44px">{_text(words.say("certificate.page.button"))}</button></p>
<div role="status" aria-live="polite"></div>
<noscript><p>{_text(words.say("certificate.page.no_script"))}</p></noscript>
<script type="application/json">{data}</script>
</div>"""  # noqa: E501 (lines of HTML)
    script = files("generator.credentials").joinpath("check.js").read_text(encoding="utf-8")
    start = f'Tankschool.check.start(document.getElementById("{BOX}"));'
    return CheckPage(words.say("certificate.page.title"), body, script, start)


def page_data(keys: PublicKeys, list_text: str, words: Words, max_age: int = MAX_AGE) -> dict[str, Any]:
    """What the script needs to know."""
    return {
        "issuer": keys.issuer,
        "keys": [
            {
                "kid": key.kid.hex(),
                "public": key.public.hex(),
                "digest": fingerprint.digest(key.public).hex(),
                "retired": key.retired.isoformat() if key.retired else None,
                "stolen": key.stolen.isoformat() if key.stolen else None,
            }
            for key in keys.keys
        ],
        "list": list_text.strip(),
        "max_age": max_age,
        "roles": [str(role) for role in ROLES],
        "roofs": [str(roof) for roof in ROOFS],
        "ranges": {script: [list(each) for each in found] for script, found in RANGES.items()},
        "metre": words.say_one_of("unit", "m"),
        "cubic_metre": words.say_one_of("unit", "m**3"),
        "words": dict(words.family("certificate")),
    }


def _words(key: PublicKey, words: Words) -> str:
    return _text(fingerprint.in_words(key.public, words.language))


def _text(text: str) -> str:
    return escape(text, quote=True)
