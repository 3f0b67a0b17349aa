"""A mark: the verdict on one answer, and the words that go with it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from generator.exercises.numbers import Ask
from generator.words import Words


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
    """

    item: str
    competency: str
    verdict: Verdict
    value: float | None = None
    misconceptions: tuple[str, ...] = ()
    why: tuple[str, ...] = ()
    ask: Ask | None = None

    @property
    def points(self) -> int:
        """1 for a right answer, also from an earlier number; never below 0."""
        return int(self.verdict.counts)

    @property
    def most(self) -> int:
        """Points that the question can give."""
        return 1


def messages(mark: Mark, words: Words) -> tuple[str, ...]:
    """The mark in words: the verdict, what is unclear, each mistake that fits and what it would do on the hill."""
    texts = [words.say_one_of("exercise.verdict", mark.verdict)]
    if mark.ask is not None:
        texts.append(words.say_one_of("exercise.ask", mark.ask.reason, first=mark.ask.first, second=mark.ask.second))
    for name in mark.misconceptions:
        if f"misconception.{name}.mistake" not in words:
            continue  # an old record may name one that the course has given up
        texts.append(words.say_one_of("misconception", f"{name}.mistake"))
        texts.append(words.say_one_of("misconception", f"{name}.hill"))
    texts += mark.why
    if mark.verdict is Verdict.NOT_YET and len(texts) == 1:
        texts.append(words.say("exercise.no_known_mistake"))
    return tuple(texts)
