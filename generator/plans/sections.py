"""A plan told in sections: headings, sentences and tables in the reader's language, for text, print and page alike."""

from __future__ import annotations

from collections.abc import Callable

from generator.calculations.bands import explain
from generator.plans.plan import Plan, Refusal
from generator.plans.sections_build import batch, calendar_of, cutting, fittings, hold_points, mesh, money
from generator.plans.sections_tank import checks, counts, ground, offers, sizes, sources, why
from generator.plans.tell import Section, Tell
from generator.words import Words

PARTS: tuple[Callable[[Plan, Tell], Section | None], ...] = (
    counts, why, sizes, ground, checks, cutting, mesh, batch, calendar_of, money, fittings, hold_points,
)  # fmt: skip
CAUTIONS = (
    "ground", "cut_bank", "lifting", "cut_steel", "wet_cement", "dust", "props", "height", "confined", "drowning",
    "filling", "chlorine", "drinking", "law",
)  # fmt: skip
"""Where the work can hurt someone, in the order of the work."""


def sections(result: Plan | Refusal, words: Words) -> tuple[Section, ...]:
    """Everything a builder must know, in the order in which it is needed.

    Args:
        result: of `make_plan`.
        words: of the reader's language.
    """
    tell = Tell(words)
    if isinstance(result, Refusal):
        return (_refusal(result, tell),)
    found = [part(result, tell) for part in PARTS]
    return (*(section for section in found if section is not None), _cautions(tell), sources(result, tell))


def _refusal(result: Refusal, tell: Tell) -> Section:
    words = tell.words
    lines = [result.reason.text(words)]
    if result.judgement is not None:
        lines += explain(result.judgement, words)
    lines += [
        words.say("plan.failed", check=words.say_one_of("plan.check", check.name), ratio=tell.number(check.ratio, 2))
        for check in result.failed
    ]
    lines += offers(result.offers, tell) or [words.say("plan.no_offer")]
    return Section("refused", words.say("plan.section.refused"), tuple(lines))


def _cautions(tell: Tell) -> Section:
    lines = tuple(tell.words.say_one_of("plan.caution", name) for name in CAUTIONS)
    return Section("cautions", tell.words.say("plan.section.cautions"), lines)
