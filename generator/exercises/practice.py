"""Practice that adapts: what was shown so far, what to ask next and why, and readiness in plain words.

Mastery of a competency is a beta-binomial estimate: after `x` right of the last `n` answers the share that would be
right lies as Beta(1 + x, 1 + n - x). Nobody is certified by it: it only chooses what to practise. Cards come back after
days that grow with each right answer, as with a box of paper cards. Everything follows from the answers, the day and
a seed, and every choice can be said in one sentence. `practice.js` is the twin.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import asdict, dataclass, field
from importlib.resources import files
from typing import Any, Literal

from generator.curriculum import CourseContent
from generator.curriculum.models import Scheme
from generator.formula import Stream
from generator.words import Words

CUT = 0.7
"""Share right that counts as mastered; the pass rule of a scheme may ask for more."""
SURE = 0.8
"""How sure we want to be of it."""
WINDOW = 20
"""Answers of a competency that count: older ones say little about today."""
FEWEST = 3
"""Answers below which nothing is said about a competency."""
DAYS = (1, 3, 7, 14, 30)
"""Days after which a card of each box comes back: a choice of this course."""
MOST_ANSWERS = 20_000
LATEST_DAY = 1_000_000
MOST_POINTS = 200
"""Points of the largest paper that readiness is worked out for."""

State = Literal["not_started", "few", "not_yet", "nearly", "ready"]


@dataclass(frozen=True, slots=True)
class Answer:
    """One answer that counted: neither blank nor asked for again.

    Args:
        question: its id.
        competency: what it shows.
        day: whole days since any fixed day; the same count for all answers.
        right: whether it was right, also from an earlier number.
    """

    question: str
    competency: str
    day: int
    right: bool


@dataclass(frozen=True, slots=True)
class Card:
    """A question that can be asked.

    Args:
        question: its id.
        competency: what it shows.
        difficulty: 1 to 3.
    """

    question: str
    competency: str
    difficulty: int = 1


@dataclass(frozen=True, slots=True)
class Pool:
    """What practice draws from.

    Args:
        cards: in the course's order.
        needs: for a competency, those that come before it; without an entry it is in reach from the start.
    """

    cards: tuple[Card, ...]
    needs: Mapping[str, tuple[str, ...]] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Mastery:
    """How far a competency was shown.

    Args:
        competency: which.
        right: right answers among the last 20.
        count: answers among the last 20.
        chance: how sure it is that the share of right answers is 0.70 or more.
        state: in one word; the words are `practice.state.*`.
    """

    competency: str
    right: int
    count: int
    chance: float
    state: State


@dataclass(frozen=True, slots=True)
class Next:
    """What to ask next, and why.

    Args:
        question: its id.
        competency: what it shows.
        reason: `due`, `new`, `weakest` or `keep`; the words are `practice.why.*`.
        right: right answers so far of the competency.
        count: answers so far of the competency.
        days: days since this question was last answered; 0 for a new one.
    """

    question: str
    competency: str
    reason: Literal["due", "new", "weakest", "keep"]
    right: int
    count: int
    days: int


def sure_above(right: int, count: int, cut: float = CUT) -> float:
    """The chance that the share of right answers is `cut` or more.

    For whole numbers it is the chance of at most `right` heads in `count + 1` throws of a coin that shows heads with
    `cut`: no special function is needed, and the page adds up the same numbers.

    Args:
        right: right answers, 0 to `count`.
        count: answers, at most some hundreds.
        cut: 0 to 1, ends left out.

    Example:
        >>> round(sure_above(8, 10), 4), round(sure_above(18, 20, 0.8), 4)
        (0.6873, 0.8213)
    """
    throws = count + 1
    term = (1.0 - cut) ** throws
    total = term
    for heads in range(1, right + 1):
        term = term * (throws - heads + 1) / heads * cut / (1.0 - cut)
        total += term
    return total


def mastery(competency: str, answers: Iterable[Answer]) -> Mastery:
    """How far a competency was shown by the last answers."""
    found = [answer.right for answer in answers if answer.competency == competency][-WINDOW:]
    right, count = sum(found), len(found)
    chance = sure_above(right, count)
    return Mastery(competency, right, count, chance, _state(right, count, chance))


def _state(right: int, count: int, chance: float) -> State:
    if count == 0:
        return "not_started"
    if count < FEWEST:
        return "few"
    if chance >= SURE:
        return "ready"
    return "nearly" if right / count >= CUT else "not_yet"


@dataclass(frozen=True, slots=True)
class _Box:
    """Where a card stands: its box from 0, and the day of its last answer."""

    box: int
    day: int


def boxes(answers: Iterable[Answer]) -> dict[str, _Box]:
    """The box of every card that was answered.

    A right answer on a day when the card was due moves it on; an early one changes nothing, so that ten right answers
    in one evening are worth one. A wrong one sends it back to the first box.
    """
    found: dict[str, _Box] = {}
    for answer in answers:
        old = found.get(answer.question)
        if not answer.right or old is None:
            found[answer.question] = _Box(0, answer.day)
        elif answer.day - old.day >= DAYS[old.box]:
            found[answer.question] = _Box(min(old.box + 1, len(DAYS) - 1), answer.day)
    return found


def within_reach(pool: Pool, answers: Sequence[Answer]) -> tuple[str, ...]:
    """Competencies whose needs were shown at least nearly, in the order of the pool."""
    names = tuple(dict.fromkeys(card.competency for card in pool.cards))
    shown = {name for name in names if mastery(name, answers).state in ("nearly", "ready")}
    return tuple(name for name in names if all(need in shown or need not in names for need in pool.needs.get(name, ())))


def next_card(pool: Pool, answers: Sequence[Answer], day: int, seed: str) -> Next | None:
    """The question to ask next.

    First a card that is due, of the weakest competency; then a new one of the weakest competency within reach, as hard
    as the learner is ready for; then, where all of that was asked, the one of it that was not asked for longest. Equal
    ones are drawn by the seed.

    Args:
        pool: what can be asked.
        answers: so far, oldest first.
        day: today, in the days of the answers.
        seed: any text.

    Returns:
        The choice, or None for an empty pool.
    """
    if not pool.cards:
        return None
    reach = within_reach(pool, answers) or tuple(dict.fromkeys(card.competency for card in pool.cards))
    level = {name: mastery(name, answers) for name in reach}
    held = boxes(answers)
    cards = [card for card in pool.cards if card.competency in level]
    stream = Stream(f"{seed}|practice|{len(answers)}|{day}")
    order = {cards[place].question: rank for rank, place in enumerate(stream.shuffle(range(len(cards))))}
    last = answers[-1].question if answers else ""

    def chosen(found: Sequence[Card], reason: Literal["due", "new", "weakest", "keep"]) -> Next:
        card = found[0]
        at = level[card.competency]
        days = day - held[card.question].day if card.question in held else 0
        return Next(card.question, card.competency, reason, at.right, at.count, days)

    def weakness(card: Card) -> float:
        return level[card.competency].chance

    due = [card for card in cards if card.question in held and _due(held[card.question], day)]
    if due:
        return chosen(sorted(due, key=lambda card: (weakness(card), order[card.question])), "due")
    open_names = [name for name in reach if level[name].state != "ready"]
    if open_names:
        weakest = min(open_names, key=lambda name: (level[name].chance, reach.index(name)))
        here = [card for card in cards if card.competency == weakest]
        wanted = wanted_difficulty(level[weakest])
        new = [card for card in here if card.question not in held]
        if new:
            return chosen(sorted(new, key=lambda card: (abs(card.difficulty - wanted), order[card.question])), "new")
        here = [card for card in here if card.question != last] or here
        return chosen(
            sorted(
                here, key=lambda card: (held[card.question].day, abs(card.difficulty - wanted), order[card.question])
            ),
            "weakest",
        )
    cards = [card for card in cards if card.question != last] or cards
    longest = sorted(
        cards, key=lambda card: (held[card.question].day if card.question in held else -1, order[card.question])
    )
    return chosen(longest, "keep")


def _due(box: _Box, day: int) -> bool:
    return day - box.day >= DAYS[box.box]


def wanted_difficulty(level: Mastery) -> int:
    """How hard the next question may be: 1 at the start, 3 for who is nearly there."""
    if level.count < FEWEST or level.right / level.count < 0.5:
        return 1
    return 2 if level.right / level.count < CUT else 3


def why(choice: Next, name: str, words: Words) -> str:
    """The choice in one sentence.

    Args:
        choice: from `next_card`.
        name: of the competency, in the learner's language.
        words: of the learner's language.
    """
    return words.say_one_of(
        "practice.why", choice.reason, name=name, right=choice.right, count=choice.count, days=choice.days
    )


def told(level: Mastery, name: str, words: Words) -> str:
    """How far a competency was shown, in one sentence."""
    return words.say_one_of("practice.state", level.state, name=name, right=level.right, count=level.count)


def pool_of(content: CourseContent, module_ids: Sequence[str] = ()) -> Pool:
    """The questions of a course to practise, in teaching order.

    A competency needs those of the modules that its own module needs; its own is the first that shows it.

    Args:
        content: the course.
        module_ids: modules to practise; none given means all.
    """
    taught = [module for module in content.modules.values() if not module.retired]
    wanted = [module for module in taught if not module_ids or module.id in module_ids]
    shown = {module.id: _competencies(content, module.id) for module in taught}
    needs: dict[str, tuple[str, ...]] = {}
    for module in wanted:
        before = [name for earlier in module.needs for name in shown.get(earlier, ())]
        for name in shown[module.id]:
            needs.setdefault(name, tuple(dict.fromkeys(need for need in before if need != name)))
    cards = [
        Card(question.id, question.competency, question.difficulty)
        for module in wanted
        for question in content.questions_of(module.id)
        if not question.retired
    ]
    return Pool(tuple(cards), {name: found for name, found in needs.items() if found})


def _competencies(content: CourseContent, module_id: str) -> tuple[str, ...]:
    return tuple(
        dict.fromkeys(question.competency for question in content.questions_of(module_id) if not question.retired)
    )


def pool_data(pool: Pool) -> dict[str, Any]:
    """A pool as the page's script takes it."""
    return {"cards": [asdict(card) for card in pool.cards], "needs": {name: list(n) for name, n in pool.needs.items()}}


# ------------------------------------------------------------------------------------------- readiness


@dataclass(frozen=True, slots=True)
class Blueprint:
    """What a paper asks: points for each competency, the share that passes, and what can't be made up for.

    Args:
        points: whole points by competency.
        cut: share of the points that is needed.
        critical: competencies that must be shown by themselves.
    """

    points: Mapping[str, int]
    cut: float
    critical: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Readiness:
    """How ready a learner is for a paper.

    Args:
        state: `not_started`, `not_yet`, `nearly` or `ready`; the words are `practice.ready.*`.
        chance: of reaching the needed points on the written part, by the answers so far.
        expected: share of the points to be expected.
        first: competencies to practise first, weakest first, at most three.
        critical: critical competencies that are not shown yet.
    """

    state: Literal["not_started", "not_yet", "nearly", "ready"]
    chance: float
    expected: float
    first: tuple[str, ...]
    critical: tuple[str, ...]


def blueprint_of(scheme: Scheme, cards: Iterable[Card]) -> Blueprint:
    """A paper of one point for each question of a scheme's modules.

    Args:
        scheme: gives the cut and the critical competencies.
        cards: the questions of its modules.
    """
    points: dict[str, int] = {}
    for card in cards:
        points[card.competency] = points.get(card.competency, 0) + 1
    return Blueprint(points, scheme.rule.written, scheme.critical_competencies)


def readiness(blueprint: Blueprint, answers: Sequence[Answer]) -> Readiness:
    """How ready a learner is; it decides nothing, the paper does.

    The points of a competency are beta-binomial by the learner's answers to it; those of the paper are their sum.

    Args:
        blueprint: of the paper; at most 200 points.
        answers: so far, oldest first.

    Raises:
        ValueError: no points, or more than 200.
    """
    total = sum(blueprint.points.values())
    if not 0 < total <= MOST_POINTS or min(blueprint.points.values()) < 0:
        raise ValueError(f"a paper has 1 to {MOST_POINTS} points, not {total}")
    levels = {name: mastery(name, answers) for name in blueprint.points}
    spread = [1.0]
    expected = 0.0
    for name, points in blueprint.points.items():
        level = levels[name]
        expected += points * (level.right + 1) / (level.count + 2)
        spread = _joined(spread, points_spread(points, level.right, level.count))
    least = blueprint.cut * total - 1e-9
    chance = sum(share for points, share in enumerate(spread) if points >= least)
    missing = tuple(name for name in blueprint.critical if mastery(name, answers).state != "ready")
    weak = [name for name in blueprint.points if levels[name].state != "ready"]
    first = tuple(sorted(weak, key=lambda name: levels[name].chance)[:3])
    state: Literal["not_started", "not_yet", "nearly", "ready"] = "nearly" if chance >= 0.5 else "not_yet"
    if not any(level.count for level in levels.values()):
        state = "not_started"
    elif chance >= SURE and not missing:
        state = "ready"
    return Readiness(state, chance, expected / total, first, missing)


def points_spread(points: int, right: int, count: int) -> list[float]:
    """The chance of each number of points, 0 to `points`, after `right` of `count` answers: beta-binomial.

    Example:
        >>> [round(chance, 4) for chance in points_spread(2, 1, 1)]
        [0.1667, 0.3333, 0.5]
    """
    a, b = float(right + 1), float(count - right + 1)
    chance = 1.0
    for throw in range(points):
        chance = chance * (b + throw) / (a + b + throw)
    spread = [chance]
    for got in range(points):
        chance = chance * (points - got) / (got + 1) * (a + got) / (b + points - got - 1)
        spread.append(chance)
    return spread


def _joined(one: Sequence[float], other: Sequence[float]) -> list[float]:
    made = [0.0] * (len(one) + len(other) - 1)
    for i, first in enumerate(one):
        for j, second in enumerate(other):
            made[i + j] += first * second
    return made


def readiness_told(found: Readiness, names: Mapping[str, str], words: Words) -> tuple[str, ...]:
    """Readiness in plain sentences: the state, what to practise first, what must not be missing.

    Args:
        found: from `readiness`.
        names: of the competencies, in the learner's language.
        words: of the learner's language.
    """
    lines = [words.say_one_of("practice.ready", found.state)]
    if found.first:
        first = ", ".join(names.get(name, name) for name in found.first)
        lines.append(words.say("practice.first", names=first))
    if found.critical:
        missing = ", ".join(names.get(name, name) for name in found.critical)
        lines.append(words.say("practice.critical", names=missing))
    return tuple(lines)


# --------------------------------------------------------------------------------------- from outside


def read_answers_so_far(data: object) -> tuple[tuple[Answer, ...], int]:
    """Answers as a progress file holds them; what is damaged is left out. Never raises, whatever the data.

    Args:
        data: parsed JSON: a list of `{question, competency, day, right}`.

    Returns:
        The good answers in their order, and how many entries were left out.
    """
    if not isinstance(data, list):
        return (), 0 if data is None else 1
    good = [answer for answer in map(_answer, data[-MOST_ANSWERS:]) if answer is not None]
    return tuple(good), len(data) - len(good)


def _answer(entry: object) -> Answer | None:
    if not isinstance(entry, dict):
        return None
    question, competency, day, right = (entry.get(key) for key in ("question", "competency", "day", "right"))
    if not isinstance(question, str) or not isinstance(competency, str) or not isinstance(right, bool):
        return None
    if isinstance(day, bool) or not isinstance(day, int | float):
        return None
    if not 0 <= day <= LATEST_DAY or day != int(day):
        return None
    return Answer(question, competency, int(day), right)


def practice_script() -> str:
    """The script that chooses in the page; it follows formula.js."""
    code = files("generator.exercises").joinpath("practice.js").read_text(encoding="utf-8")
    rules: dict[str, Any] = {
        "cut": CUT,
        "sure": SURE,
        "window": WINDOW,
        "fewest": FEWEST,
        "days": DAYS,
        "most_answers": MOST_ANSWERS,
        "latest_day": LATEST_DAY,
        "most_points": MOST_POINTS,
    }
    return f"{code}Tankschool.practice.load({json.dumps(rules, sort_keys=True)});\n"
