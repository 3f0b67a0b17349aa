"""Handouts for another tank than the one that their files name: a trainer's own place, or what a workshop builds."""

from __future__ import annotations

import json
import re
from collections.abc import Collection, Mapping
from dataclasses import replace
from functools import partial

from generator.calculations import BOOK
from generator.curriculum.content import CourseContent, shipped
from generator.curriculum.lessons import FigureBlock, SheetNames, SheetText, Surroundings, split_sheet
from generator.curriculum.models import Handout, Place
from generator.curriculum.place_plans import section_keys
from generator.curriculum.texts import Filler
from generator.plans import Plan, drawing_values
from generator.plans.drawing import given_values
from generator.problems import RefusedError
from generator.words import Words


class NoSuchSheetError(RefusedError):
    """A handout shows a part that this tank has not.

    Args:
        handout: its id.
        what: what is missing, for whoever writes handouts.
    """

    def __init__(self, handout: str, what: str) -> None:
        super().__init__(f"the sheet '{handout}' can't be made for this tank: {what}")
        self.handout = handout


OWN_TANK = "own-tank"
"""Id of the place that stands for the tank."""
_BESIDE = ("bucket_litres", "outlet_bore")
"""Givens that handouts show and no plan settles; where the tank's place has none, those of the handouts' own place."""
_NAMED = re.compile(r'"([a-z_]+)"')
"""What the calls of a template name."""


def at_tank(content: CourseContent, plan: Plan, name: Mapping[str, str], handouts: Collection[str]) -> CourseContent:
    """The course, with some of its handouts filled with the numbers of a tank.

    Args:
        content: the course.
        plan: of the tank.
        name: of the tank, by language; it stands under the sheets' titles.
        handouts: ids of those that are wanted; the others stay as they are.

    Raises:
        NoSuchSheetError: a handout asks for a number or a table that the plan of this tank has not.
    """
    values = drawing_values(plan)
    usual = {given: _usual(content, handouts, given) for given in _BESIDE if given not in values}
    values |= {given: value for given, value in usual.items() if value is not None}
    place = Place.model_construct(
        format=1, id=OWN_TANK, name=dict(name), about=dict(name), invented=False, given=given_values(plan)
    )
    filler = Filler(shipped().book, {**content.place_values, OWN_TANK: values}, content.words)
    texts = {
        (one, language): _text(content, content.handouts[one], language, filler, plan)
        for one in handouts
        for language in content.course.languages
    }
    moved = {one: content.handouts[one].model_copy(update={"place": OWN_TANK}) for one in handouts}
    shows = {one: _shown(content, content.handouts[one], texts) & usual.keys() for one in handouts}
    notes = {
        (one, language): _told({given: usual[given] for given in _BESIDE if given in shows[one]}, words)
        for one in handouts
        for language, words in content.words.items()
    }
    told = json.dumps([dict(name), values], sort_keys=True).encode("utf-8")
    return replace(
        content,
        places={**content.places, OWN_TANK: place},
        place_values={**content.place_values, OWN_TANK: values},
        handouts={**content.handouts, **moved},
        handout_texts={**content.handout_texts, **texts},
        sources={**content.sources, f"course/places/{OWN_TANK}": told},
        own_plans={OWN_TANK: plan},
        own_values={OWN_TANK: values},
        own_notes={key: note for key, note in notes.items() if note},
    )


def _told(usual: Mapping[str, float | None], words: Words) -> str:
    """What was taken from elsewhere, so that whoever builds looks at it."""
    things = ", ".join(
        f"{words.say_one_of('quantity', given)} {words.with_unit(f'{value:g}', BOOK.givens[given].unit)}"
        for given, value in usual.items()
        if value is not None
    )
    return words.say("sheet.not_of_this_tank", things=things) if things else ""


def _shown(content: CourseContent, handout: Handout, texts: Mapping[tuple[str, str], SheetText]) -> set[str]:
    """Numbers that a handout's drawings and words ask for by name, in any language."""
    figures, found = shipped().figures, set[str]()
    for language in content.course.languages:
        for block in texts[handout.id, language]:
            if isinstance(block, FigureBlock):
                found |= set(figures[block.figure])
        found |= set(_NAMED.findall(content.reading.texts[f"handouts/{handout.template}.{language}.md"]))
    return found


def _usual(content: CourseContent, handouts: Collection[str], given: str) -> float | None:
    found = (content.places[content.handouts[one].place].given.get(given) for one in handouts)
    return next((value for value in found if value is not None), None)


def _text(content: CourseContent, handout: Handout, language: str, filler: Filler, plan: Plan) -> SheetText:
    machine = shipped()
    module = content.modules[handout.module] if handout.module is not None else None
    cautions = [caution.id for caution in module.cautions] if module is not None else []
    album = content.fault_album
    names = SheetNames(
        tuple(handout.logs),
        machine.rulers,
        tuple(fault.id for fault in album.faults) if album is not None else (),
        partial(_sections, plan, content) if handout.numbers == "plan" else None,
        machine.of_hoops,
    )
    known = Surroundings(OWN_TANK, [*cautions, *machine.cautions], list(content.questions), machine.figures, names)
    source = content.reading.texts[f"handouts/{handout.template}.{language}.md"]
    text, faults = split_sheet(source, language, known, filler)
    if faults:
        raise NoSuchSheetError(handout.id, faults[0].what)
    return text


def _sections(plan: Plan, content: CourseContent, _place: str) -> tuple[str, ...]:
    return section_keys(plan, next(iter(content.words.values())))
