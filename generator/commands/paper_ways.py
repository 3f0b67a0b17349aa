"""How each candidate sits: minutes and forms, by what the registry knows of them and by what the command says."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from pathlib import Path

import click

from generator import registry
from generator.curriculum.models import Scheme
from generator.exercises import Learner, Person, same_name
from generator.words import Words

FORMS = {"print": "print.pdf", "screen": "screen.html", "spoken": "spoken.pdf"}
"""Each form of a paper and how its file is called."""
BY_REGISTRY, BY_COMMAND = "registry", "command"
_MORE = re.compile(r"(.+)=([0-9]{1,3})")
_FORM = re.compile(r"(.+)=([a-z]+)")

KnownNeeds = Mapping[str, registry.Needs]


@dataclass(frozen=True, slots=True)
class Way:
    """How one candidate sits.

    Args:
        minutes: that they have; 0 for no limit.
        forms: of their paper.
        source: `registry` or `command` where it is another way than that of all; else empty.
        note: what else the registry says that helps them, for whoever prepares the room.
    """

    minutes: int
    forms: tuple[str, ...]
    source: str = ""
    note: str = ""

    @property
    def data(self) -> dict[str, object]:
        """As the archive keeps it with the sitting."""
        return {"minutes": self.minutes, "forms": list(self.forms), "by": self.source}

    def said(self, learner: Learner, words: Words) -> Iterator[str]:
        """The lines for whoever gives out the papers; none for the way of all."""
        if self.source:
            form = ", ".join(words.say_one_of("register.choice", form) for form in self.forms)
            yield words.say(
                "paper.own_way" if self.source == BY_REGISTRY else "paper.own_way_said",
                name=learner.name, minutes=self.minutes, form=form,
                language=words.say_one_of("language", learner.language),
            )  # fmt: skip
        if self.note:
            yield words.say("paper.own_note", name=learner.name, note=self.note)


def needs_at(place: str, cohort: str) -> KnownNeeds:
    """What a registry knows of a cohort's candidates; nothing where there is no such registry or cohort yet."""
    if "://" not in place and not Path(place).exists():
        return {}
    with registry.open_registry(place, now=datetime.now(UTC)) as opened:
        group = registry.cohort_called(opened, cohort)
        return {} if group is None else registry.needs_of(opened, group)


def in_own_language(people: Sequence[Person], known: KnownNeeds, languages: Collection[str]) -> tuple[Person, ...]:
    """The class list, with the language of whoever has one in the registry and none on the list."""
    found = []
    for person in people:
        needs = known.get(same_name(person.name))
        own = needs.language if needs is not None and needs.language in languages else None
        found.append(replace(person, language=own) if person.language is None and own is not None else person)
    return tuple(found)


def ways_of(
    scheme: Scheme,
    people: Sequence[Person],
    known: KnownNeeds,
    forms: Sequence[str],
    more_time: Sequence[str],
    form_for: Sequence[str],
) -> dict[int, Way]:
    """How each candidate sits, by number.

    Args:
        scheme: says how long all have.
        people: the class list.
        known: what the registry knows of them.
        forms: those of all.
        more_time: `Asha Devi=30`, which goes before what is known.
        form_for: `Asha Devi=spoken`, likewise.

    Raises:
        click.UsageError: an option that names nobody, no minutes or no form.
    """
    numbers = {same_name(person.name): number for number, person in enumerate(people, start=1)}
    more: dict[int, int] = {}
    own_form: dict[int, str] = {}
    for text in more_time:
        number, typed = _for_whom(numbers, _MORE, text, "--more-time", "minutes, 'Asha Devi=30'")
        if not scheme.minutes:
            raise click.UsageError(f"The scheme '{scheme.id}' has no limit of time, so nobody needs more.")
        more[number] = int(typed)
    for text in form_for:
        number, form = _for_whom(numbers, _FORM, text, "--form-for", f"one of {', '.join(FORMS)}, 'Asha Devi=spoken'")
        if form not in FORMS:
            raise click.UsageError(f"--form-for '{text}': the forms are {', '.join(FORMS)}.")
        own_form[number] = form
    found = {}
    for number, person in enumerate(people, start=1):
        needs = known.get(same_name(person.name))
        own = registry.Accommodation() if needs is None else needs.help
        minutes = more.get(number, own.more_time) if scheme.minutes else 0
        form = own_form.get(number, own.form)
        by_command = number in more or number in own_form
        by_registry = bool(minutes or form)
        source = BY_COMMAND if by_command else BY_REGISTRY if by_registry else ""
        chosen = (form,) if form else tuple(forms)
        found[number] = Way(scheme.minutes + minutes, chosen, source, own.note)
    return found


def _for_whom(
    numbers: Mapping[str, int], shape: re.Pattern[str], text: str, option: str, wanted: str
) -> tuple[int, str]:
    match = shape.fullmatch(text)
    number = numbers.get(same_name(match[1])) if match else None
    if match is None or number is None:
        raise click.UsageError(f"{option} '{text}': write a name of the class list and {wanted}.")
    return number, match[2]
