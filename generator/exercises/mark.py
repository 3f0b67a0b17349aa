"""A mark: the verdict on one answer, and the words that go with it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from generator.exercises.numbers import Ask
from generator.words import Words

READING = "reading."
"""What the name of a mistake about readings starts with: it distorts no quantity of the calculation module."""


class Slip(StrEnum):
    """What is wrong with the form of an otherwise right number; the words are `exercise.slip.*`."""

    NONE = ""
    NOT_ROUNDED = "not_rounded"
    """The right number, left as it came."""
    OTHER_ROUNDING = "other_rounding"
    """The right number, rounded to another multiple or the other way."""


class Verdict(StrEnum):
    """What is said about an answer; the words are `exercise.verdict.*`."""

    RIGHT = "right"
    RIGHT_FROM_EARLIER = "right_from_earlier"
    NOT_YET = "not_yet"
    ASK_BACK = "ask_back"
    BLANK = "blank"

    @property
    def counts(self) -> bool:
        """Whether it earns the points."""
        return self in (Verdict.RIGHT, Verdict.RIGHT_FROM_EARLIER)


@dataclass(frozen=True, slots=True)
class Mark:
    """The verdict on one answer.

    Args:
        item: id of the question, or of the scenario's part.
        competency: what the question shows.
        verdict: the verdict.
        value: the number that was read, in the unit asked for.
        misconceptions: every misconception that gives this answer.
        why: texts of the question that tell what would happen on the hill.
        ask: for `ASK_BACK`, what is unclear.
        slip: whether only the rounding is wrong.
        step_points: points earned by lines on the way.
        step_most: points that lines on the way can give.
    """

    item: str
    competency: str
    verdict: Verdict
    value: float | None = None
    misconceptions: tuple[str, ...] = ()
    why: tuple[str, ...] = ()
    ask: Ask | None = None
    slip: Slip = Slip.NONE
    step_points: int = 0
    step_most: int = 0

    @property
    def points(self) -> int:
        """1 for a right answer, also from an earlier number, and what its steps earn; a right answer earns them all.

        Whoever reaches the answer by a way of their own has lost nothing; never below 0.
        """
        if self.verdict is Verdict.RIGHT:
            return self.most
        return int(self.verdict.counts) + self.step_points

    @property
    def most(self) -> int:
        """Points that the question can give."""
        return 1 + self.step_most


def messages(mark: Mark, words: Words) -> tuple[str, ...]:
    """The mark in words: the verdict, what is unclear, each mistake that fits and what it would do on the hill."""
    texts = [words.say_one_of("exercise.verdict", mark.verdict)]
    if mark.ask is not None:
        texts.append(words.say_one_of("exercise.ask", mark.ask.reason, first=mark.ask.first, second=mark.ask.second))
    if mark.slip is not Slip.NONE:
        texts.append(words.say_one_of("exercise.slip", mark.slip))
    for name in mark.misconceptions:
        if name.startswith(READING):
            member = name.removeprefix(READING)
            texts.append(words.say_one_of("exercise.reading", f"{member}.mistake"))
            texts.append(words.say_one_of("exercise.reading", f"{member}.hill"))
            continue
        if f"misconception.{name}.mistake" not in words:
            continue  # an old record may name one that the course has given up
        texts.append(words.say_one_of("misconception", f"{name}.mistake"))
        texts.append(words.say_one_of("misconception", f"{name}.hill"))
    texts += mark.why
    if mark.verdict is Verdict.NOT_YET and len(texts) == 1:
        picked = mark.value is None
        texts.append(words.say("exercise.look_again") if picked else words.say("exercise.no_known_mistake"))
    if mark.step_most and mark.verdict is not Verdict.RIGHT:
        texts.append(words.say("exercise.step_credit", have=mark.step_points, most=mark.step_most))
    return tuple(texts)
