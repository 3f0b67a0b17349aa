"""`register decisions`: what was decided, and each decision with all that it rests on."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

import click

from generator.assessment import explain
from generator.assessment.uncertainty import Uncertainty, say_uncertainty
from generator.commands.register_common import DECISION, Desk, job
from generator.commands.register_decide import decision_data, subjects
from generator.problems import ExitCode
from generator.registry.listing import DecisionRecord, decision_list, decision_record


@click.group("decisions")
def decisions_jobs() -> None:
    """See what was decided, and what each decision rests on."""


@decisions_jobs.command("list")
@job
def listed(desk: Desk) -> int:
    """Show every decision with its number.

    Example: python3 tankschool.py register decisions list
    """
    with desk.registry() as registry:
        return desk.table(decision_list(registry))


@decisions_jobs.command("show")
@click.argument("decision", type=DECISION)
@job
def show(desk: Desk, decision: int) -> int:
    """Show a DECISION as it was made: scheme and version, who decided, by which cut, from what, and how sure it is.

    Example: python3 tankschool.py register decisions show 3
    """
    with desk.registry() as registry:
        found = decision_record(registry, decision)
    if desk.as_json:
        told = {**found.facts, **decision_data(found.decision), "cut": found.cut, "inputs": found.inputs}
        return desk.done("", **told)
    for line in _lines(desk, found):
        click.echo(line)
    return ExitCode.GOOD


def _lines(desk: Desk, found: DecisionRecord) -> Iterator[str]:
    words, facts = desk.words, found.facts
    yield words.say(
        "register.decision.head", decision=facts["decision"], name=facts["name"] or "–", person=facts["person"],
        scheme=facts["scheme"], version=facts["version"], attempt=facts["attempt"],
    )  # fmt: skip
    yield words.say(
        "register.decision.who", name=facts["decided_by_name"] or "–", person=facts["decided_by"],
        day=facts["decided_at"][:10],
    )  # fmt: skip
    if facts["exception"]:
        yield words.say("register.decision.exception", why=facts["exception"])
    if found.cut is not None:
        yield words.say(
            "register.decision.cut", written=f"{found.cut['written']:g}", practical=f"{found.cut['practical']:g}",
            judges=found.cut["judges"], day=found.cut["recorded_at"][:10],
        )  # fmt: skip
    else:
        yield words.say("register.decision.no_cut")
    for line in explain(found.decision, words, subjects(desk.course, desk.language)):
        yield f"    {line}"
    if found.inputs is None:
        yield words.say("register.decision.no_inputs")
        return
    yield from _inputs(desk, found.inputs)


def _inputs(desk: Desk, inputs: Mapping[str, Any]) -> Iterator[str]:
    words = desk.words
    if inputs["uncertainty"] is not None:
        kept = {name: value for name, value in inputs["uncertainty"].items() if name != "near"}
        yield say_uncertainty(Uncertainty(**kept), words)
    for paper in inputs["papers"]:
        yield words.say("register.decision.paper", paper=paper["paper"], hash=paper["content"][:16])
    for seen in inputs["observations"]:
        yield words.say(
            "register.decision.observed", person=seen["observer"], steps=seen["steps"], attempt=seen["attempt"],
            event=seen["event"],
        )  # fmt: skip
    for again in inputs["rechecks"]:
        for person, word in again["saw"] if "saw" in again else [(again["observer"], again["seen"])]:  # as before
            seen = words.say_one_of("register.choice", word.replace(" ", "_"))
            yield words.say("register.decision.rechecked", step=again["step"], seen=seen, person=person)
    if inputs["oral"] is not None:
        yield words.say("register.decision.oral", right=inputs["oral"]["right"], asked=inputs["oral"]["asked"])
