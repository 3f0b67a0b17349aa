"""Made-up masons of known mastery sent through a scheme's whole rule: who gets the certificate, and who should have.

A scheme decides well if hardly anybody who can't build gets through, and hardly anybody who can is sent back. Real
masons don't carry their true mastery on the forehead; made-up ones do. What they are assumed to do stands in `Habits`
and is an assumption of this course, not a measurement.
"""

from __future__ import annotations

import hashlib
import math
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from generator.assessment.mastery import wilson
from generator.assessment.recheck import Recheck, outcome
from generator.curriculum.models import (
    Bank,
    ChoiceQuestion,
    MatchQuestion,
    NumberChoiceQuestion,
    NumberQuestion,
    OrderQuestion,
    Practical,
    Question,
    Scenario,
    Scheme,
    SpokenChoiceQuestion,
    SpotQuestion,
)

Floats = NDArray[np.float64]
Bools = NDArray[np.bool_]
_HAIR = 1e-9

WEAK, STRONG = 0.55, 0.90
"""Mastery of someone who must not be certified, and of someone who should be: policy of this course."""
MOST_WEAK, MOST_REFUSED = 0.01, 0.05
"""Largest share of the weak that may get through, and of the strong that may be sent back."""
PEOPLE = 20_000
ORAL = Recheck(0.85, 0.60, 0.10, 0.10, 30)
"""The oral recheck of the written part near the cut."""
ORAL_SKILL = Recheck(0.85, 0.40, 0.025, 0.025, 20)
"""The short oral of one critical competency; the shares are those of Welch's published rule base."""
GUESSED_THROUGH = 0.01
"""Chance above which a critical competency can be guessed through, so that the paper alone shows nothing."""
TRIES = 3


@dataclass(frozen=True, slots=True)
class Habits:
    """What people do by chance.

    Args:
        slip: chance that someone who knows answers or works wrong.
        number_guess: chance to hit a number without knowing.
        shared_mistake: share of the missing knowledge that is one wrong idea about a whole competency.
        seen_wrongly: chance that an observer takes a step for done that was not.
        overlooked: chance that an observer misses a step that was done.
    """

    slip: float = 0.05
    number_guess: float = 0.02
    shared_mistake: float = 0.5
    seen_wrongly: float = 0.05
    overlooked: float = 0.02


HABITS = Habits()


@dataclass(frozen=True, slots=True)
class Asked:
    """One question of a paper: what it asks for, and the chance to guess it; None for a number."""

    competency: str
    guess: float | None = None


@dataclass(frozen=True, slots=True)
class Watched:
    """One practical: its id, its competency, and for each step its id and whether it is critical."""

    name: str
    competency: str
    steps: tuple[tuple[str, bool], ...]


@dataclass(frozen=True, slots=True)
class Exam:
    """A scheme's whole rule, with what a coordinator may add to it.

    Args:
        paper: the questions.
        written: least share of them.
        practicals: the watched work.
        practical: least share of each one's steps.
        critical: competencies that can't be made up for.
        tries: times that a critical step may be shown, at once and on record.
        tries_others: times that any other step may be shown.
        observers: who all have to see a critical step.
        oral: the recheck of the written part near the cut; None for none.
        near: points beside the cut, on both sides, within which the oral recheck decides on the written part.
        oral_skill: the short oral of a critical competency: it decides where the paper can be guessed through, and
            gives a second chance where it can't; None for none.
    """

    paper: tuple[Asked, ...]
    written: float
    practicals: tuple[Watched, ...]
    practical: float
    critical: tuple[str, ...]
    tries: int = 1
    tries_others: int = 1
    observers: int = 1
    oral: Recheck | None = None
    near: int = 0
    oral_skill: Recheck | None = None

    @property
    def cut(self) -> int:
        """Least points of the paper."""
        return least(self.written, len(self.paper))

    @property
    def skills(self) -> tuple[str, ...]:
        """Every critical skill: competencies that the paper asks for, and critical steps as `practical/step`."""
        asked = {item.competency for item in self.paper}
        steps = (f"{part.name}/{step}" for part in self.practicals for step, critical in part.steps if critical)
        return (*(name for name in self.critical if name in asked), *steps)

    def guessed_through(self, name: str) -> float:
        """Chance that someone who knows nothing of a competency guesses its questions through."""
        guesses = [item.guess or HABITS.number_guess for item in self.paper if item.competency == name]
        chances = np.ones(1)
        for guess in guesses:
            chances = np.convolve(chances, [1 - guess, guess])
        return float(chances[least(self.written, len(guesses)) :].sum()) if guesses else 0.0


def least(share: float, most: int) -> int:
    """Least points for a share, as the pass rule counts: rounded up, at least 1."""
    return max(1, math.ceil(share * most - _HAIR))


@dataclass(frozen=True, slots=True)
class Mason:
    """A made-up mason.

    Args:
        mastery: share of the asked things that is known, 0 to 1.
        sure: whether all critical skills are known beside.
        lacks: one critical skill that is not known at all; empty for none.
    """

    mastery: float
    sure: bool = False
    lacks: str = ""


def exam_of(
    scheme: Scheme,
    banks: Iterable[Bank],
    scenarios: Iterable[Scenario],
    practicals: Mapping[str, Practical],
    critical: Collection[str] = (),
    length: int | None = None,
) -> Exam:
    """The rule of a scheme on a paper of its modules' questions.

    Args:
        scheme: what the certificate requires.
        banks: all of the course; those of the scheme's modules count.
        scenarios: likewise.
        practicals: of the course, by id.
        critical: competencies that the course calls critical beside those of the scheme.
        length: questions on the paper; all there are if nothing is given. A longer paper asks for numbers again, with
            other numbers; a shorter one takes turns between the competencies.

    Raises:
        ValueError: no questions for the modules, or a longer paper where no question asks for a number.
    """
    found = [q for bank in banks if bank.module in scheme.modules for q in bank.questions if not q.retired]
    whole = [Asked(question.competency, guess_of(question)) for question in found]
    linked = [s for s in scenarios if s.module in scheme.modules and not s.retired]
    whole += [Asked(part.competency) for scenario in linked for part in scenario.parts]
    if not whole:
        raise ValueError(f"no questions for the modules of '{scheme.id}'")
    paper = whole if length is None else _of_length(whole, length)
    watched = tuple(
        Watched(name, practicals[name].competency, tuple((step.id, step.critical) for step in practicals[name].steps))
        for name in scheme.practicals
    )
    touched = {item.competency for item in paper} | {part.competency for part in watched}
    must = sorted({*scheme.critical_competencies, *(name for name in critical if name in touched)})
    return Exam(tuple(paper), scheme.rule.written, watched, scheme.rule.practical, tuple(must))


def guess_of(question: Question) -> float | None:
    """The chance to guess a question: 1 in its options, or in its orders; None for a number."""
    match question:
        case ChoiceQuestion() if question.several:
            return 1 / (float(2 ** len(question.options)) - 1)
        case ChoiceQuestion() | SpokenChoiceQuestion():
            return 1 / len(question.options)
        case SpotQuestion():
            return 1 / len(question.areas)
        case NumberChoiceQuestion():
            return 1 / (1 + len(question.misconceptions))
        case OrderQuestion():
            return 1 / math.factorial(len(question.steps))
        case MatchQuestion():
            return 1 / math.factorial(len(question.pairs))
        case NumberQuestion():
            return None
        case _:
            return None


def _of_length(whole: Sequence[Asked], length: int) -> list[Asked]:
    """So many questions, taking turns between the competencies; numbers are asked again once all were asked."""
    queues: dict[str, list[Asked]] = {}
    for item in whole:
        queues.setdefault(item.competency, []).append(item)
    again = [item for item in whole if item.guess is None]
    found: list[Asked] = []
    while len(found) < length and any(queues.values()):
        found += [queue.pop(0) for queue in queues.values() if queue]
    turn: dict[str, list[Asked]] = {}
    for item in again:
        turn.setdefault(item.competency, []).append(item)
    while len(found) < length:
        if not turn:
            raise ValueError("no question asks for a number, so a longer paper would ask the same again")
        found += [items[0] for items in turn.values()]
    return found[:length]


@dataclass(frozen=True, slots=True, eq=False)
class Sitting:
    """What made-up masons did: right answers, steps seen, and what an oral recheck would find.

    Args:
        right: a row for each mason and a column for each question.
        seen: for each practical a row for each mason and a column for each step.
        oral: whether the oral recheck of the whole paper would end well.
        oral_skills: the same for each critical competency.
    """

    right: Bools
    seen: tuple[Bools, ...]
    oral: Bools
    oral_skills: Mapping[str, Bools]


def sit(exam: Exam, mason: Mason, people: int, seed: str, habits: Habits = HABITS) -> Sitting:
    """Send masons of one kind through an exam.

    Half of what someone does not know (`shared_mistake`) is a wrong idea that spoils a whole competency; such a person
    answers by the wrong idea and does not guess. The rest is missing here and there, and guessed. On average just the
    mastery is known.

    Args:
        exam: paper, practicals and rule.
        mason: the kind.
        people: how many.
        seed: any text; the same seed gives the same people.
        habits: what they do by chance.
    """
    draw = np.random.Generator(np.random.PCG64(int.from_bytes(hashlib.sha256(seed.encode()).digest(), "big")))
    names = sorted({item.competency for item in exam.paper} | set(exam.critical))
    known = {name: _known(exam, mason, name, people, draw, habits) for name in names}
    guesses = np.array([habits.number_guess if item.guess is None else item.guess for item in exam.paper])
    share = np.stack([known[item.competency] for item in exam.paper], axis=1)
    knows = draw.random(share.shape) < share
    lacking = np.array([item.competency == mason.lacks for item in exam.paper])  # guessed like any other gap
    guessing = np.where((share > 0) | lacking, guesses, 0.0)
    right = draw.random(share.shape) < np.where(knows, 1 - habits.slip, guessing)
    seen = tuple(_seen(exam, part, mason, people, draw, habits) for part in exam.practicals)
    oral, skills = np.zeros(people, dtype=bool), {}
    if exam.oral is not None:
        oral = _oral(exam.oral, share.mean(axis=1), draw, habits)
    if exam.oral_skill is not None:
        skills = {name: _oral(exam.oral_skill, known[name], draw, habits) for name in exam.critical}
    return Sitting(right, seen, oral, skills)


def _known(exam: Exam, mason: Mason, name: str, people: int, draw: np.random.Generator, habits: Habits) -> Floats:
    """For each mason the share of a competency that is known: 0 for those with a wrong idea about all of it."""
    if mason.lacks == name:
        return np.zeros(people)
    if mason.sure and name in exam.critical:
        return np.ones(people)
    wrong_idea = habits.shared_mistake * (1 - mason.mastery)
    rest = mason.mastery / (1 - wrong_idea) if wrong_idea < 1 else 0.0
    return np.where(draw.random(people) < wrong_idea, 0.0, rest)


def _seen(exam: Exam, part: Watched, mason: Mason, people: int, draw: np.random.Generator, habits: Habits) -> Bools:
    columns = []
    for step, critical in part.steps:
        if mason.lacks == f"{part.name}/{step}":
            knows = np.zeros(people, dtype=bool)
        elif critical and mason.sure:
            knows = np.ones(people, dtype=bool)
        else:
            knows = draw.random(people) < mason.mastery
        shown = np.zeros(people, dtype=bool)
        for _ in range(exam.tries if critical else exam.tries_others):
            done = knows & (draw.random(people) >= habits.slip)
            agreed = np.ones(people, dtype=bool)
            for _observer in range(exam.observers if critical else 1):
                agreed &= draw.random(people) < np.where(done, 1 - habits.overlooked, habits.seen_wrongly)
            shown |= agreed
        columns.append(shown)
    return np.stack(columns, axis=1)


def _oral(recheck: Recheck, known: Floats, draw: np.random.Generator, habits: Habits) -> Bools:
    """Spoken questions leave as little to guess as numbers."""
    chances = known * (1 - habits.slip) + (1 - known) * habits.number_guess
    values, places = np.unique(np.round(chances, 4), return_inverse=True)
    shown: Bools = draw.random(len(known)) < outcome(recheck, values).shown[places]
    return shown


def certified(exam: Exam, sitting: Sitting) -> Bools:
    """Who gets the certificate: the pass rule of `decide`, for all at once, and the oral recheck.

    Near the cut the oral recheck decides on the written part, up or down. A critical competency that the paper did not
    show can be shown orally where the exam says so; its practical part can't.
    """
    points = sitting.right.sum(axis=1)
    met: Bools = points >= exam.cut
    if exam.oral is not None and exam.near:
        met = np.where((points >= exam.cut - exam.near) & (points < exam.cut + exam.near), sitting.oral, met)
    done = [part.sum(axis=1) for part in sitting.seen]
    for part, seen, count in zip(exam.practicals, sitting.seen, done, strict=True):
        met = met & (count >= least(exam.practical, len(part.steps)))
        met &= seen[:, [i for i, (_, critical) in enumerate(part.steps) if critical]].all(axis=1)
    for name in exam.critical:
        met = met & _skill(exam, sitting, name)
    return met


def _skill(exam: Exam, sitting: Sitting, name: str) -> Bools:
    people = len(sitting.right)
    asked = [i for i, item in enumerate(exam.paper) if item.competency == name]
    parts = [(part, seen) for part, seen in zip(exam.practicals, sitting.seen, strict=True) if part.competency == name]
    if not asked and not parts:
        return np.zeros(people, dtype=bool)
    shown = np.ones(people, dtype=bool)
    if asked:
        shown = sitting.right[:, asked].sum(axis=1) >= least(exam.written, len(asked))
        if exam.oral_skill is not None:
            spoken = sitting.oral_skills[name]
            shown = spoken if exam.guessed_through(name) > GUESSED_THROUGH else shown | spoken
    if parts:
        count = sum((seen.sum(axis=1) for _, seen in parts), np.zeros(people, dtype=np.intp))
        shown = shown & (count >= least(exam.practical, sum(len(part.steps) for part, _ in parts)))
    return shown


@dataclass(frozen=True, slots=True)
class Share:
    """How many of some made-up masons were certified, with Wilson's 95 % interval."""

    mason: Mason
    people: int
    certified: int
    low: float
    high: float

    @property
    def share(self) -> float:
        """Certified over all."""
        return self.certified / self.people


def certified_share(
    exam: Exam, mason: Mason, people: int = PEOPLE, seed: str = "masons", habits: Habits = HABITS
) -> Share:
    """The share of one kind of mason that an exam certifies."""
    name = f"{seed}|{mason.mastery}|{mason.sure}|{mason.lacks}"
    count = int(certified(exam, sit(exam, mason, people, name, habits)).sum())
    low, high = wilson(count, people)
    return Share(mason, people, count, float(low), float(high))


def curve(
    exam: Exam, masteries: Sequence[float], *, sure: bool = False, people: int = PEOPLE, habits: Habits = HABITS
) -> tuple[Share, ...]:
    """Certified against mastery."""
    return tuple(certified_share(exam, Mason(value, sure), people, habits=habits) for value in masteries)


@dataclass(frozen=True, slots=True)
class Gate:
    """One demand on a scheme.

    Args:
        name: `weak`, `lacking` or `strong`.
        wrong: share that goes the wrong way.
        low: lower end of its 95 % interval.
        high: its upper end.
        limit: largest share that is good.
        skill: for `lacking`, the critical skill that gets through most often.
    """

    name: str
    wrong: float
    low: float
    high: float
    limit: float
    skill: str = ""

    @property
    def met(self) -> bool:
        """Whether even the upper end of the interval keeps the limit."""
        return self.high < self.limit


@dataclass(frozen=True, slots=True)
class Gates:
    """The three demands, and what someone in the middle gets: .70 with and without every critical skill."""

    weak: Gate
    lacking: Gate
    strong: Gate
    middle: Share
    middle_sure: Share

    @property
    def met(self) -> bool:
        """Whether all three are met."""
        return self.weak.met and self.lacking.met and self.strong.met


def gates(exam: Exam, people: int = PEOPLE, habits: Habits = HABITS) -> Gates:
    """Hold an exam against the three demands.

    Mastery of .55 or less, and one critical skill missing at a mastery of .90, must be certified in less than 1 of 100;
    mastery of .90 or more with all critical skills refused in less than 5 of 100. The worst case of each is looked at.

    Args:
        exam: to judge.
        people: made-up masons of each kind.
        habits: what they do by chance.
    """
    weak = certified_share(exam, Mason(WEAK), people, habits=habits)
    lacking = [certified_share(exam, Mason(STRONG, True, skill), people, habits=habits) for skill in exam.skills]
    strong = certified_share(exam, Mason(STRONG, sure=True), people, habits=habits)
    worst = max(lacking, key=lambda found: found.share, default=None)
    none = Gate("lacking", 0.0, 0.0, 0.0, MOST_WEAK)
    return Gates(
        Gate("weak", weak.share, weak.low, weak.high, MOST_WEAK),
        none if worst is None else Gate("lacking", worst.share, worst.low, worst.high, MOST_WEAK, worst.mason.lacks),
        Gate("strong", 1 - strong.share, 1 - strong.high, 1 - strong.low, MOST_REFUSED),
        certified_share(exam, Mason(0.70), people, habits=habits),
        certified_share(exam, Mason(0.70, sure=True), people, habits=habits),
    )


def all_steps_shown(share: float, steps: int, tries: int = 1) -> float:
    """Chance that someone shows all of some steps, each with a chance of its own at every try.

    Example:
        >>> all_steps_shown(0.95, 5), all_steps_shown(0.95, 5, tries=2)
        (0.7738, 0.9876)
    """
    return float((1 - (1 - share) ** tries) ** steps)


def with_helps(exam: Exam) -> tuple[tuple[str, Exam], ...]:
    """The same exam with more and more of what a coordinator can add; the name says what was added last.

    `plain` (the pass rule alone), `oral` near the cut, `tries` (every step up to three times, on record), `observers`
    (two who both have to see a critical step), `oral_skill`.
    """
    plain = replace(exam, tries=1, tries_others=1, observers=1, oral=None, near=0, oral_skill=None)
    error = math.sqrt(exam.cut * (len(exam.paper) - exam.cut) / max(1, len(exam.paper) - 1))
    oral = replace(plain, oral=ORAL, near=max(1, round(error)))
    tries = replace(oral, tries=TRIES, tries_others=TRIES)
    pair = replace(tries, observers=2)
    whole = replace(pair, oral_skill=ORAL_SKILL)
    return ("plain", plain), ("oral", oral), ("tries", tries), ("observers", pair), ("oral_skill", whole)
