"""The page that checks a certificate: what the issuer's keys make of it, or what to do where the stick carries none."""

from __future__ import annotations

from dataclasses import dataclass

from generator.site.markup import block, paragraphs
from generator.words import Words

CHECK = "check-certificate"
"""Name of the page."""


@dataclass(frozen=True)
class CertificateCheck:
    """The means to check certificates, made elsewhere: this room holds no signatures.

    Args:
        body: HTML of one language, with the keys and the list in it; one element of the class `ts-check`.
        script: a classic script that defines `Tankschool.check`; the same for every language.
    """

    body: str
    script: str


def check_page(words: Words, check: CertificateCheck | None) -> str:
    """The page as Markdown.

    Args:
        words: of its language.
        check: the means; None says in plain words that this stick has none, and who has.
    """
    parts = [f"# {words.say('page.check.title')} {{#{CHECK}}}", words.say("page.check.about")]
    if check is None:
        parts += [
            block(paragraphs(words.say("page.check.no_keys"), "ts-invented")),
            words.say("page.check.no_keys_ask"),
        ]
    else:
        parts += [words.say("page.check.proves"), block(check.body)]
    return "\n\n".join(part.strip() for part in parts) + "\n"
