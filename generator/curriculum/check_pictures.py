"""Whether cards, glossary and fault album can be drawn, read in one breath, and heard."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence

from generator.curriculum.files import Found, Reading
from generator.curriculum.models import Card, Module
from generator.curriculum.recordings import name_parts
from generator.curriculum.reference import FaultAlbum, Glossary
from generator.curriculum.texts import Filler
from generator.problems import Loc, Problem
from generator.problems.plain_errors import did_you_mean

MOST_WORDS = 15
"""Words of a sentence on a card: what a late reader holds in mind."""
_FAULT = "fault-"
_CALL = re.compile(r"\{\{[^{}\n]*\}\}")
_SENTENCE_END = re.compile(r"[.!?।]\s+(?=\S)")


def picture_problems(reading: Reading, figures: Mapping[str, Sequence[str]], filler: Filler) -> Iterator[Problem]:
    """Everything wrong with cards, words with pictures, the fault album and the recordings.

    Args:
        reading: the files.
        figures: by key of a drawing, the quantities that it needs.
        filler: knows the numbers of every place.
    """
    for name, module, found in reading.all("module", Module):
        seen: set[str] = set()
        for position, card in enumerate(module.cards):
            loc: Loc = ("cards", position)
            if card.id in seen:
                what = f"the card '{card.id}' stands here twice"
                yield found.file.value_problem(
                    (*loc, "id"), "duplicate-id", what, "choose another; an id is never used twice"
                )
            seen.add(card.id)
            yield from _figure(found, (*loc, "figure"), card.figure, module.place, figures, filler)
            yield from _sentences(found, loc, card)
        yield from _recordings(reading, name, seen)
    glossary = reading.things.get("glossary", {}).get("glossary")
    if glossary is not None and isinstance(glossary.model, Glossary):
        yield from _place(reading, glossary, glossary.model.place)
        for position, term in enumerate(glossary.model.terms):
            if term.figure is not None:
                loc = ("terms", position, "figure")
                yield from _figure(glossary, loc, term.figure, glossary.model.place, figures, filler)
    album = reading.things.get("faults", {}).get("faults")
    if album is not None and isinstance(album.model, FaultAlbum):
        yield from _album(reading, album, album.model, figures, filler)


def _album(
    reading: Reading, found: Found, album: FaultAlbum, figures: Mapping[str, Sequence[str]], filler: Filler
) -> Iterator[Problem]:
    yield from _place(reading, found, album.place)
    drawn: set[str] = set()
    for position, fault in enumerate(album.faults):
        loc: Loc = ("faults", position, "figure")
        yield from _figure(found, loc, fault.figure, album.place, figures, filler)
        if fault.figure in figures and not fault.figure.startswith(_FAULT):
            faults = ", ".join(key for key in figures if key.startswith(_FAULT)) or "there is none"
            what = f"'{fault.figure}' is no drawing with a fault to find"
            yield found.file.value_problem(loc, "no-fault-figure", what, f"choose one of: {faults}")
        if fault.figure in drawn:
            what = f"the drawing '{fault.figure}' is already in the album"
            yield found.file.value_problem(loc, "drawn-twice", what, "remove one of them")
        drawn.add(fault.figure)


def _place(reading: Reading, found: Found, place: str) -> Iterator[Problem]:
    there = list(reading.ids.get("place", {}))
    if "place" not in reading.unreadable and place not in there:
        what = f"unknown place '{place}'"
        yield found.file.value_problem(("place",), "unknown-place", what, did_you_mean(place, there))


def _figure(
    found: Found, loc: Loc, figure: str, place: str, figures: Mapping[str, Sequence[str]], filler: Filler
) -> Iterator[Problem]:
    if figure not in figures:
        what = f"unknown figure '{figure}'"
        yield found.file.value_problem(loc, "unknown-figure", what, did_you_mean(figure, list(figures)))
        return
    here = filler.values.get(place)
    for need in figures[figure] if here else ():
        if here and need not in here:
            what = f"the drawing needs '{need}', which is not known at '{place}'"
            yield found.file.value_problem(loc, "not-at-place", what, filler.needed(need, place))


def _sentences(found: Found, loc: Loc, card: Card) -> Iterator[Problem]:
    """One short sentence a card and language; a caution may have two."""
    for key, text, most in (("text", card.text, 1), ("caution", card.caution, 2)):
        for language, said in (text or {}).items():
            sentences = _SENTENCE_END.split(_with_numbers(said).strip())
            where = (*loc, key, language)
            if len(sentences) > most:
                what = f"{len(sentences)} sentences on one card"
                fix = "say one thing; make a card of the rest" if most == 1 else "say it in two sentences"
                yield found.file.value_problem(where, "many-sentences", what, fix)
            for sentence in sentences:
                count = len(sentence.split())
                if count > MOST_WORDS:
                    what = f"a sentence of {count} words; a card takes at most {MOST_WORDS}"
                    yield found.file.value_problem(where, "long-sentence", what, "make it shorter, or make two cards")


def _with_numbers(text: str) -> str:
    """A call counts as the number and the unit that it becomes."""
    return _CALL.sub("0 m", text)


def _recordings(reading: Reading, name: str, cards: set[str]) -> Iterator[Problem]:
    folder = f"course/modules/{reading.folders[name]}/audio/"
    first: dict[tuple[str, str], str] = {}
    for path in sorted(reading.sounds):
        parts = name_parts(path)
        if not path.startswith(folder) or parts is None:
            continue
        card, language, _ = parts
        if card not in cards:
            what = f"the module has no card '{card}'"
            yield Problem(path, 0, 0, "unknown-card", what, did_you_mean(card, sorted(cards)))
        if reading.languages and language not in reading.languages:
            fix = f"the languages are {', '.join(reading.languages)}"
            yield Problem(path, 0, 0, "unknown-language", f"unknown language '{language}'", fix)
        if (card, language) in first:
            what = f"'{first[card, language]}' is the same card in the same language"
            yield Problem(path, 0, 0, "recorded-twice", what, "keep one of them")
        first.setdefault((card, language), path.removeprefix(folder))
