"""The frozen models of what a course looks things up in: its words, and its album of faults."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from generator.curriculum.models import Content, Key, LocalText


class Term(Content):
    """One word of the trade: how a mason says it, what it means, and the drawing that shows it."""

    id: Key
    term: LocalText
    meaning: LocalText
    figure: Key | None = None


class Glossary(Content):
    """`course/glossary.yaml`: the course's words."""

    format: Literal[1]
    place: Key
    """The place whose numbers the drawings use."""
    terms: Annotated[tuple[Term, ...], Field(strict=False, min_length=1)]


class AlbumFault(Content):
    """One fault of the album. Nothing here shows before the learner has looked and opened the answer."""

    id: Key
    figure: Key
    """A drawing with one fault to find."""
    what: LocalText
    why: LocalText
    hill: LocalText
    """What happens on the hill because of it."""
    do: LocalText


class FaultAlbum(Content):
    """`course/faults.yaml`: the drawings of faults, with what to know about each."""

    format: Literal[1]
    place: Key
    """The place whose numbers the drawings use."""
    faults: Annotated[tuple[AlbumFault, ...], Field(strict=False, min_length=1)]
