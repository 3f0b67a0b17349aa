"""Made-up masons of known mastery sent through a scheme's whole rule: who gets the certificate, and who should have.

A scheme decides well if hardly anybody who can't build gets through, and hardly anybody who can is sent back. Real
masons don't carry their true mastery on the forehead; made-up ones do. What they are assumed to do stands in `Habits`
and is an assumption of this course, not a measurement.
"""

from __future__ import annotations

import hashlib
import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from generator.assessment.blueprint import recheck_of, scheme_questions
from generator.assessment.mastery import wilson
from generator.assessment.paper_draw import LEAST_SECRET, chosen
from generator.assessment.paper_draw import Exam as Drawing
from generator.assessment.recheck import Recheck, outcome
from generator.curriculum import CourseContent
from generator.curriculum.models import (
    ChoiceQuestion,
    MatchQuestion,
    NumberChoiceQuestion,
    NumberQuestion,
    OrderQuestion,
    Question,
    Scheme,
    SpokenChoiceQuestion,
    SpotQuestion,
    WorkedQuestion,
)
from generator.problems import RefusedError

Floats = NDArray[np.float64]
Bools = NDArray[np.bool_]
_HAIR = 1e-9

WEAK, STRONG = 0.55, 0.90
"""Mastery of someone who must not be certified, and of someone who should be: policy of this course."""
MOST_WEAK, MOST_REFUSED = 0.01, 0.05
"""Largest share of the weak that may get through, and of the strong that may be sent back."""
PEOPLE = 20_000
PAPERS = 8
"""Parallel papers that are drawn from a scheme's blueprint; each mason gets one of them at each try."""
PANEL = "panel"
"""What the sample panel is called among the critical skills."""


@dataclass(frozen=True, slots=True)
class Habits:
    """What people do by chance.

    Args:
        slip: chance that someone who knows answers or works wrong.
        number_guess: chance to hit a number without knowing.
        shared_mistake: share of the missing knowledge that is one wrong idea about a whole competency.
        seen_wrongly: chance that an observer takes a step for done that was not.
        overlooked: chance that an observer misses a step that was done.
        reading_by_luck: chance that a reading of a panel is good although its builder can't do it.
    """

    slip: float = 0.05
    number_guess: float = 0.02
    shared_mistake: float = 0.5
    seen_wrongly: float = 0.05
    overlooked: float = 0.02
    reading_by_luck: float = 0.5


HABITS = Habits()


@dataclass(frozen=True, slots=True)
class Asked:
    """One question of a paper.

    Args:
        competency: what it asks for.
        guess: the chance to guess it; None for a number.
        ideas: misconceptions that answer it wrongly: whoever has one of them answers by it, and does not guess.
    """

    competency: str
    guess: float | None = None
    ideas: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Watched:
    """One practical: its id, its competency, and for each step its id and whether it is critical."""

    name: str
    competency: str
    steps: tuple[tuple[str, bool], ...]


@dataclass(frozen=True, slots=True)
class Exam:
    """A scheme's whole rule.

    Args:
        paper: the questions.
        written: least share of them.
        practicals: the watched work.
        practical: least share of each one's steps.
        critical: competencies that can't be made up for.
        others: parallel papers, with the same competencies in the same places.
        observers: who all have to see a critical step.
        again: times running that a critical step is shown at its one recheck; 0 for no recheck.
        oral: the recheck of the written part near the cut; None for none.
        near: points beside the cut, on both sides, within which the oral recheck decides on the written part.
        talk: the short talk on every critical competency that the paper asks, in the place of its own questions.
        panel: readings of the sample panel; 0 for none.
        sittings: tries in all.
    """

    paper: tuple[Asked, ...]
    written: float
    practicals: tuple[Watched, ...]
    practical: float
    critical: tuple[str, ...]
    others: tuple[tuple[Asked, ...], ...] = ()
    observers: int = 1
    again: int = 0
    oral: Recheck | None = None
    near: int = 0
    talk: Recheck | None = None
    panel: int = 0
    sittings: int = 1

    @property
    def cut(self) -> int:
        """Least points of the paper."""
        return least(self.written, len(self.paper))

    @property
    def papers(self) -> tuple[tuple[Asked, ...], ...]:
        """All parallel papers."""
        return (self.paper, *self.others)

    @property
    def asked(self) -> frozenset[str]:
        """The competencies that the paper asks for."""
        return frozenset(item.competency for item in self.paper)

    @property
    def skills(self) -> tuple[str, ...]:
        """Every critical skill: competencies on the paper, critical steps as `practical/step`, the sample panel."""
        steps = (f"{part.name}/{step}" for part in self.practicals for step, critical in part.steps if critical)
        return (*(name for name in self.critical if name in self.asked), *steps, *((PANEL,) if self.panel else ()))


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


def exam_of(content: CourseContent, scheme: Scheme, papers: int = PAPERS) -> Exam:
    """The whole rule of a scheme, on papers drawn from its blueprint as real ones are.

    Args:
        content: the course.
        scheme: what the certificate requires.
        papers: parallel papers to draw, at least 1.

    Raises:
        RefusedError: a scheme without a blueprint, or that its bank can't fill.
    """
    if not scheme.blueprint:
        raise RefusedError(f"the scheme '{scheme.id}' has no blueprint: say first what a paper asks")
    bank, drawing = scheme_questions(content, scheme), Drawing(scheme, "made-up masons", bytes(LEAST_SECRET))
    drawn = [tuple(map(_asked, chosen(drawing, f"paper {turn}", bank))) for turn in range(papers)]
    watched = tuple(
        Watched(one.id, one.competency, tuple((step.id, step.critical) for step in one.steps))
        for one in (content.practicals[name] for name in scheme.practicals)
    )
    touched = {item.competency for item in drawn[0]} | {part.competency for part in watched}
    must = {name for name in touched if content.competencies[name].critical} | set(scheme.critical_competencies)
    return Exam(
        drawn[0],
        scheme.rule.written,
        watched,
        scheme.rule.practical,
        tuple(sorted(must)),
        tuple(drawn[1:]),
        scheme.rule.observers,
        scheme.rule.again,
        None if scheme.oral is None else recheck_of(scheme.oral),
        0 if scheme.oral is None else scheme.oral.near,
        None if scheme.talk is None else recheck_of(scheme.talk),
        0 if scheme.panel is None else scheme.panel.readings,
        1 if scheme.retest is None else scheme.retest.most,
    )


def _asked(question: Question) -> Asked:
    ideas = question.misconceptions if isinstance(question, WorkedQuestion) else ()
    return Asked(question.competency, guess_of(question), ideas)


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


@dataclass(frozen=True, slots=True, eq=False)
class Crowd:
    """Masons of one kind, with what each of them knows; it stays the same over all tries.

    Args:
        people: how many.
        known: for each competency the share that each knows.
        ideas: for each competency which of its misconceptions each has; -1 for none.
        steps: for each practical a row for each mason and a column for each step: whether it is known.
        panel: whether they can build a panel.
    """

    people: int
    known: Mapping[str, Floats]
    ideas: Mapping[str, NDArray[np.intp]]
    steps: tuple[Bools, ...]
    panel: Bools


@dataclass(frozen=True, slots=True, eq=False)
class Sitting:
    """What made-up masons did at one try: right answers, steps seen, and what spoken questions would find.

    Args:
        right: a row for each mason and a column for each question.
        seen: for each practical a row for each mason and a column for each step.
        oral: whether the oral recheck of the whole paper would end well.
        talks: the same for the talk on each critical competency.
        panel: whether the sample panel is good.
    """

    right: Bools
    seen: tuple[Bools, ...]
    oral: Bools
    talks: Mapping[str, Bools] = field(default_factory=dict)
    panel: Bools | None = None


def crowd(exam: Exam, mason: Mason, people: int, seed: str, habits: Habits = HABITS) -> Crowd:
    """Masons of one kind.

    Half of what someone does not know (`shared_mistake`) is a wrong idea about a whole competency: one of the
    misconceptions that its questions name. The rest is missing here and there. On average just the mastery is known.

    Args:
        exam: paper, practicals and rule.
        mason: the kind.
        people: how many.
        seed: any text; the same seed gives the same people.
        habits: what they do by chance.
    """
    draw = _stream(seed)
    names = sorted(exam.asked | set(exam.critical))
    of = _ideas(exam)
    known = {name: _known(exam, mason, name, people, draw, habits) for name in names}
    ideas = {
        name: np.where(
            (known[name] > 0) | (mason.lacks == name) | (not of[name]),
            -1,
            draw.integers(max(1, len(of[name])), size=people),
        )
        for name in names
    }
    steps = tuple(_knows_steps(part, mason, people, draw) for part in exam.practicals)
    panel = np.full(people, mason.lacks != PANEL) & (mason.sure | (draw.random(people) < mason.mastery))
    return Crowd(people, known, ideas, steps, panel)


def sit(exam: Exam, mason: Mason, people: int, seed: str, habits: Habits = HABITS) -> Sitting:
    """Send masons of one kind through an exam once; the same seed gives the same people and answers."""
    return sat(exam, crowd(exam, mason, people, seed, habits), f"{seed}|1", habits)


def sat(exam: Exam, those: Crowd, seed: str, habits: Habits = HABITS) -> Sitting:
    """One try of a crowd. A wrong idea answers the questions that it fits; any other gap is guessed at.

    Args:
        exam: paper, practicals and rule.
        those: who sit.
        seed: of what happens by chance at this try.
        habits: what they do by chance.
    """
    draw, people = _stream(seed), those.people
    paper = draw.integers(len(exam.papers), size=people)
    guesses = np.array(
        [[habits.number_guess if one.guess is None else one.guess for one in each] for each in exam.papers]
    )
    of = _ideas(exam)
    share = np.stack([those.known[item.competency] for item in exam.paper], axis=1)
    guessing = guesses[paper]
    for place, item in enumerate(exam.paper):
        names = of[item.competency]
        if not names:
            continue
        # one column more than there are misconceptions: the last one, which -1 means, is to have none
        tempted = np.array([[*(name in each[place].ideas for name in names), False] for each in exam.papers])
        guessing[:, place][tempted[paper, those.ideas[item.competency]]] = 0.0
    right = draw.random(share.shape) < share * (1 - habits.slip) + (1 - share) * guessing
    seen = tuple(
        _seen(exam, part, knows, draw, habits) for part, knows in zip(exam.practicals, those.steps, strict=True)
    )
    oral, talks = np.zeros(people, dtype=bool), {}
    if exam.oral is not None:
        oral = _spoken(exam.oral, share.mean(axis=1), draw, habits)
    if exam.talk is not None:
        talks = {n: _spoken(exam.talk, those.known[n], draw, habits) for n in exam.critical if n in exam.asked}
    chance = np.where(those.panel, 1 - habits.slip, habits.reading_by_luck**exam.panel)
    return Sitting(right, seen, oral, talks, draw.random(people) < chance)


def _stream(seed: str) -> np.random.Generator:
    return np.random.Generator(np.random.PCG64(int.from_bytes(hashlib.sha256(seed.encode()).digest(), "big")))


def _ideas(exam: Exam) -> dict[str, tuple[str, ...]]:
    """The misconceptions that the papers name, by competency."""
    found: dict[str, set[str]] = {name: set() for name in exam.asked | set(exam.critical)}
    for item in (item for paper in exam.papers for item in paper):
        found[item.competency].update(item.ideas)
    return {name: tuple(sorted(ideas)) for name, ideas in found.items()}


def _known(exam: Exam, mason: Mason, name: str, people: int, draw: np.random.Generator, habits: Habits) -> Floats:
    """For each mason the share of a competency that is known: 0 for those with a wrong idea about all of it."""
    if mason.lacks == name:
        return np.zeros(people)
    if mason.sure and name in exam.critical:
        return np.ones(people)
    wrong_idea = habits.shared_mistake * (1 - mason.mastery)
    rest = mason.mastery / (1 - wrong_idea) if wrong_idea < 1 else 0.0
    return np.where(draw.random(people) < wrong_idea, 0.0, rest)


def _knows_steps(part: Watched, mason: Mason, people: int, draw: np.random.Generator) -> Bools:
    known = draw.random((people, len(part.steps))) < mason.mastery
    for place, (step, critical) in enumerate(part.steps):
        if mason.lacks == f"{part.name}/{step}":
            known[:, place] = False
        elif critical and mason.sure:
            known[:, place] = True
    return known


def _seen(exam: Exam, part: Watched, knows: Bools, draw: np.random.Generator, habits: Habits) -> Bools:
    chances = [[chance_seen(exam, habits, critical=c, knows=k) for _, c in part.steps] for k in (False, True)]
    seen: Bools = draw.random(knows.shape) < np.where(knows, chances[1], chances[0])
    return seen


def chance_seen(exam: Exam, habits: Habits, *, critical: bool, knows: bool) -> float:
    """Chance that a step counts as done: all who have to see it say so, at once or at the one recheck.

    Args:
        exam: how many watch, and what the recheck asks.
        habits: slips, and errors of observers.
        critical: others are watched by one, and have no recheck.
        knows: whether it can be done at all.

    Example:
        >>> exam = Exam((), 0.75, (), 0.8, (), observers=2, again=2)
        >>> chance_seen(exam, HABITS, critical=True, knows=False)
        0.00250623
    """
    observers = exam.observers if critical else 1
    done = (1 - habits.slip) if knows else 0.0
    once = float(done * (1 - habits.overlooked) ** observers + (1 - done) * habits.seen_wrongly**observers)
    return once + (1 - once) * once**exam.again if critical and exam.again else once


def _spoken(recheck: Recheck, known: Floats, draw: np.random.Generator, habits: Habits) -> Bools:
    """Asked without options, a question leaves as little to guess as a number."""
    grains = np.round(1000 * (known * (1 - habits.slip) + (1 - known) * habits.number_guess)).astype(np.intp)
    table = np.zeros(1001)
    for grain in np.flatnonzero(np.bincount(grains, minlength=1001)):
        table[grain] = _shown(recheck, grain / 1000)
    shown: Bools = draw.random(len(known)) < table[grains]
    return shown


@lru_cache(maxsize=4096)
def _shown(recheck: Recheck, chance: float) -> float:
    return float(outcome(recheck, chance).shown)


def certified(exam: Exam, sitting: Sitting) -> Bools:
    """Who gets the certificate at one try: the rule of `decide`, for all at once, with talks, panel and oral recheck.

    Near the cut the oral recheck decides on the written part, up or down. Where the scheme has talks, they decide on
    the critical competencies that the paper asks; what hands have to show must be shown by hand all the same.
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
    if exam.panel and sitting.panel is not None:
        met = met & sitting.panel
    return met


def _skill(exam: Exam, sitting: Sitting, name: str) -> Bools:
    people = len(sitting.right)
    asked = [i for i, item in enumerate(exam.paper) if item.competency == name]
    parts = [(part, seen) for part, seen in zip(exam.practicals, sitting.seen, strict=True) if part.competency == name]
    if not asked and not parts:
        return np.zeros(people, dtype=bool)
    shown = np.ones(people, dtype=bool)
    if asked and exam.talk is not None:
        shown = sitting.talks[name]
    elif asked:
        shown = sitting.right[:, asked].sum(axis=1) >= least(exam.written, len(asked))
    if parts:
        count = sum((seen.sum(axis=1) for _, seen in parts), np.zeros(people, dtype=np.intp))
        shown = shown & (count >= least(exam.practical, sum(len(part.steps) for part, _ in parts)))
    return shown


def tries(exam: Exam, mason: Mason, people: int, seed: str, habits: Habits = HABITS) -> Iterator[Bools]:
    """Who has got the certificate after the first try, after the second, and so on to the last.

    Nobody learns anything between two tries: the worst that a strong mason can do, and the best that a weak one can
    hope for is luck.
    """
    those = crowd(exam, mason, people, seed, habits)
    through = np.zeros(people, dtype=bool)
    for turn in range(exam.sittings):
        through = through | certified(exam, sat(exam, those, f"{seed}|{turn + 1}", habits))
        yield through


@dataclass(frozen=True, slots=True)
class Share:
    """How many of some made-up masons were certified after all tries, with Wilson's 95 % interval.

    Args:
        mason: the kind.
        people: how many.
        certified: of them, after the last try.
        low: lower end of the share's interval.
        high: its upper end.
        first: certified at the first try.
    """

    mason: Mason
    people: int
    certified: int
    low: float
    high: float
    first: int

    @property
    def share(self) -> float:
        """Certified over all."""
        return self.certified / self.people


def certified_share(
    exam: Exam, mason: Mason, people: int = PEOPLE, seed: str = "masons", habits: Habits = HABITS
) -> Share:
    """The share of one kind of mason that an exam certifies, over all tries that the scheme gives."""
    name = f"{seed}|{mason.mastery}|{mason.sure}|{mason.lacks}"
    counts = [int(through.sum()) for through in tries(exam, mason, people, name, habits)]
    low, high = wilson(counts[-1], people)
    return Share(mason, people, counts[-1], float(low), float(high), counts[0])


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
    """The exam built up part by part; the name says what was added last, and the last one is the scheme as it is.

    `plain` (paper and practical, one observer, one try), `observers`, `recheck` (of critical steps), `talk`, `oral`
    (near the cut), `retest` (all tries).
    """
    steps: tuple[tuple[str, dict[str, object]], ...] = (
        ("retest", {}),
        ("oral", {"sittings": 1}),
        ("talk", {"oral": None, "near": 0}),
        ("recheck", {"talk": None}),
        ("observers", {"again": 0}),
        ("plain", {"observers": 1}),
    )
    found, left = [], exam
    for name, less in steps:
        left = replace(left, **less)  # type: ignore[arg-type]
        found.append((name, left))
    return tuple(reversed(found))
