"""A small book, bank and scenario for these tests: sheds and round pens that no course teaches, with simple numbers."""

from __future__ import annotations

from collections.abc import Mapping
from math import pi
from typing import Any

from pydantic import TypeAdapter

from generator.curriculum.models import NumberQuestion, Question, Scenario
from generator.formula import Book, derived, whole_up
from generator.words import Words

MADE_UP = derived("made up for tests")
BOOK = Book()

BOOK.given("pen_width", symbol="w", unit="m", low=1, high=9, step=0.1, source=MADE_UP)
BOOK.given("pen_height", symbol="h", unit="m", low=0.5, high=3, step=0.1, source=MADE_UP)
BOOK.given("wire_spacing", symbol="s", unit="m", low=0.05, high=0.5, step=0.005, source=MADE_UP)
BOOK.given("stick_feet", symbol="f", unit="foot", low=1, high=30, step=1, source=MADE_UP)


@BOOK.quantity(symbol="c", unit="m", places=2, low=1, high=50, source=MADE_UP)
def pen_round(pen_width: float) -> float:
    return pi * pen_width


@BOOK.quantity(symbol="n", unit="", places=0, low=2, high=100, source=MADE_UP)
def wire_count(pen_height: float, wire_spacing: float) -> float:
    return whole_up(pen_height / wire_spacing) + 1


@BOOK.quantity(symbol="L", unit="m", places=1, low=1, high=3000, source=MADE_UP)
def wire_length(wire_count: float, pen_round: float) -> float:
    return wire_count * pen_round


@BOOK.quantity(symbol="r", unit="", places=0, low=1, high=400, source=MADE_UP)
def roll_count(wire_length: float) -> float:
    return whole_up(wire_length / 20)


@BOOK.quantity(symbol="d", unit="foot", places=2, low=0.5, high=60, source=MADE_UP)
def doubled_stick(stick_feet: float) -> float:
    return stick_feet * 2


@BOOK.misconception(of="pen_round")
def round_is_three_widths(pen_width: float) -> float:
    return 3 * pen_width


@BOOK.misconception(of="pen_round")
def half_width_taken(pen_width: float) -> float:
    return pi * pen_width / 2


@BOOK.misconception(of="wire_count")
def gaps_counted_not_wires(pen_height: float, wire_spacing: float) -> float:
    return whole_up(pen_height / wire_spacing)


@BOOK.misconception(of="wire_spacing")
def spacing_in_inches(wire_spacing: float) -> float:
    return wire_spacing * 2.5


@BOOK.misconception(of="roll_count")
def rolls_not_rounded_up(wire_length: float) -> float:
    return wire_length / 20


@BOOK.misconception(of="roll_count")
def no_rolls_at_all(wire_length: float) -> float:
    return 1 / (wire_length - wire_length)


WORDS = {
    language: Words(
        language,
        {
            "unit.m": "m" if language == "en" else "मीटर",
            "unit.foot": "ft" if language == "en" else "फुट",
            **{f"exercise.verdict.{verdict}": verdict for verdict in
               ("right", "right_from_earlier", "not_yet", "ask_back", "blank")},
            **{f"exercise.ask.{reason}": f"{reason} {{first}} {{second}}" for reason in
               ("not_a_number", "two_readings", "feet", "unknown_unit", "other_kind", "one_only", "not_all",
                "unknown_letter", "unit_missing")},
            **{f"exercise.slip.{slip}": slip for slip in ("not_rounded", "other_rounding")},
            "exercise.rounded": "{exact} becomes {answer}",
            "exercise.step_credit": "steps {have} of {most}",
            **{f"quantity.{name}": f"the {name}" for name in BOOK.quantities},
            "exercise.no_known_mistake": "check each step",
            "exercise.look_again": "look again",
            **{f"misconception.{name}.mistake": f"mistake {name}" for name in BOOK.misconceptions},
            **{f"misconception.{name}.hill": f"hill {name}" for name in BOOK.misconceptions},
        },
    )
    for language in ("en", "hi")
}  # fmt: skip
"""Words of the two languages; the texts themselves don't matter here."""

_QUESTION: TypeAdapter[Any] = TypeAdapter(Question)


def both(text: str) -> dict[str, str]:
    return {"en": text, "hi": f"हि {text}"}


def question(data: Mapping[str, Any]) -> Any:
    return _QUESTION.validate_python({"competency": "pens", **data})


WIRES: NumberQuestion = question(
    {
        "id": "wires-of-a-pen",
        "kind": "number",
        "asks": "wire_count",
        "given": {
            "pen_height": {"from": 1.0, "to": 2.0, "step": 0.1},
            "wire_spacing": {"one_of": [0.1, 0.125, 0.2, 0.25]},
        },
        "misconceptions": ["gaps_counted_not_wires", "spacing_in_inches"],
        "text": both("A pen {pen_height} high, a wire every {wire_spacing}. How many wires?"),
    }
)
ROUND: NumberQuestion = question(
    {
        "id": "round-a-pen",
        "kind": "number",
        "asks": "pen_round",
        "given": {"pen_width": {"from": 2, "to": 5, "step": 0.25}},
        "answer": "within 1 %",
        "misconceptions": ["round_is_three_widths", "half_width_taken"],
        "text": both("A pen {pen_width} across. How far is it round?"),
    }
)
LENGTH: NumberQuestion = question(
    {
        "id": "wire-to-buy",
        "kind": "number",
        "asks": "wire_length",
        "given": {
            "pen_width": {"from": 2, "to": 5, "step": 0.1},
            "pen_height": {"from": 1, "to": 2, "step": 0.1},
            "wire_spacing": 0.2,
        },
        "misconceptions": ["round_is_three_widths", "gaps_counted_not_wires"],
        "text": both("{pen_width} across, {pen_height} high, a wire every {wire_spacing}: how much wire?"),
    }
)
ROLLS: NumberQuestion = question(
    {
        "id": "rolls-to-buy",
        "kind": "number",
        "asks": "roll_count",
        "given": {
            "pen_width": {"from": 2, "to": 5, "step": 0.05},
            "pen_height": {"from": 1, "to": 2, "step": 0.05},
            "wire_spacing": {"from": 0.1, "to": 0.25, "step": 0.005},
        },
        "misconceptions": ["rolls_not_rounded_up", "half_width_taken"],
        "text": both("{pen_width} across, {pen_height} high, a wire every {wire_spacing}: how many rolls?"),
    }
)
STICK: NumberQuestion = question(
    {
        "id": "stick-in-feet",
        "kind": "number",
        "asks": "doubled_stick",
        "given": {"stick_feet": {"from": 3, "to": 9, "step": 0.5}},
        "text": both("Twice {stick_feet}?"),
    }
)
NUMBERS = (WIRES, ROUND, LENGTH, ROLLS, STICK)
CHOICE = question(
    {
        "id": "which-wire",
        "kind": "choice",
        "text": both("Which wire?"),
        "options": [
            {"text": both("thick"), "right": True},
            {"text": both("thin"), "why": both("It snaps.")},
            {"text": both("none"), "why": both("The goats leave.")},
        ],
    }
)
SEVERAL = question(
    {
        "id": "which-wires",
        "kind": "choice",
        "several": True,
        "text": both("Which wires?"),
        "options": [
            {"text": both("thick"), "right": True},
            {"text": both("thin"), "why": both("It snaps.")},
            {"text": both("galvanised"), "right": True},
        ],
    }
)
ORDER = question(
    {
        "id": "fence-steps",
        "kind": "order",
        "text": both("What comes first?"),
        "steps": [both("peg"), both("post"), both("wire"), both("gate")],
        "why": both("A post without a peg stands wrong."),
    }
)
MATCH = question(
    {
        "id": "tool-and-work",
        "kind": "match",
        "text": both("Which tool?"),
        "pairs": [
            {"left": both("spade"), "right": both("hole")},
            {"left": both("pliers"), "right": both("wire")},
            {"left": both("level"), "right": both("post")},
        ],
        "why": both("A level digs no hole."),
    }
)
CUT: NumberQuestion = question(
    {
        "id": "wire-cut-to-length",
        "kind": "number",
        "asks": "pen_round",
        "given": {"pen_width": {"from": 2, "to": 5, "step": 0.1}},
        "rounding": {"rule": "up", "to": 0.25},
        "aids": ["tape", "calculator"],
        "units": ["m", "cm"],
        "misconceptions": ["half_width_taken"],
        "text": both("{pen_width} across. The wire is cut to the next quarter metre up. How long, with its unit?"),
    }
)
IN_STEPS: NumberQuestion = question(
    {
        "id": "wire-in-steps",
        "kind": "number",
        "asks": "wire_length",
        "answer": "within 1 %",
        "given": {
            "pen_width": {"from": 2, "to": 5, "step": 0.1},
            "pen_height": {"from": 1, "to": 2, "step": 0.1},
            "wire_spacing": {"one_of": [0.1, 0.2, 0.25]},
        },
        "credit": ["wire_count", "pen_round"],
        "misconceptions": ["half_width_taken"],
        "text": both("{pen_width} across, {pen_height} high, a wire every {wire_spacing}: wires, round, and all?"),
    }
)
PICK = question(
    {
        "id": "pick-the-wires",
        "kind": "choice",
        "asks": "wire_count",
        "given": {"pen_height": {"from": 1.0, "to": 2.0, "step": 0.1}, "wire_spacing": {"one_of": [0.125, 0.2]}},
        "misconceptions": ["gaps_counted_not_wires", "spacing_in_inches"],
        "text": both("A pen {pen_height} high, a wire every {wire_spacing}. How many wires?"),
    }
)
PICK_ROLLS = question(
    {
        "id": "pick-the-rolls",
        "kind": "choice",
        "asks": "roll_count",
        "given": {"wire_length": {"from": 90, "to": 300, "step": 0.5}},
        "misconceptions": ["rolls_not_rounded_up"],
        "text": both("{wire_length} of wire. How many rolls?"),
    }
)
SPOT = question(
    {
        "id": "broken-pen",
        "kind": "spot",
        "figure": "pen-plan",
        "text": both("Where do the goats get out?"),
        "areas": [
            {"name": "gate", "text": both("the gate"), "why": both("The gate holds.")},
            {"name": "corner", "text": both("the corner"), "right": True},
            {"name": "top-wire", "text": both("the top wire")},
        ],
    }
)
DEALT = question(
    {
        "id": "broken-hoop",
        "kind": "spot",
        "figure": "fault-bent-hoop",
        "text": both("Which ring is bent?"),
        "areas": [
            {"name": "oval-hoop", "text": both("the bent one"), "right": True, "why": both("It pulls unevenly.")},
            {"name": "round-1", "text": both("a round one"), "why": both("It holds.")},
        ],
    }
)
"""Its drawing letters its own places, and each learner's anew."""
SPOKEN_LETTER = question(
    {
        "id": "said-wire",
        "kind": "spoken",
        "text": both("A goat leans on the fence. /\nWhich wire holds? // #\n[2x] Take your time."),
        "options": [{"text": both("thick"), "right": True}, {"text": both("thin"), "why": both("It snaps.")}],
    }
)
SPOKEN_NUMBER = question(
    {
        "id": "said-round",
        "kind": "spoken",
        "asks": "pen_round",
        "answer": "within 2 %",
        "given": {"pen_width": {"from": 2, "to": 6, "step": 0.5}},
        "misconceptions": ["half_width_taken"],
        "hint": both("A bit more than three times."),
        "text": both("The pen is {pen_width} across. //\n# How far is it round? [2x]"),
    }
)
NEW_KINDS = (CUT, IN_STEPS, PICK, PICK_ROLLS, SPOT, SPOKEN_LETTER, SPOKEN_NUMBER)
QUESTIONS = (*NUMBERS, CHOICE, SEVERAL, ORDER, MATCH)
ALL = (*QUESTIONS, *NEW_KINDS)

PLACE = {"pen_width": 3.2, "pen_height": 1.4, "wire_spacing": 0.2}
SCENARIO = Scenario.model_validate(
    {
        "format": 1,
        "id": "a-new-pen",
        "module": "pens",
        "place": "meadow",
        "title": both("A new pen"),
        "text": both("{pen_width} across, {pen_height} high, a wire every {wire_spacing}."),
        "given": ["pen_width", "pen_height", "wire_spacing"],
        "parts": [
            {"id": "round", "competency": "pens", "asks": "pen_round", "answer": "within 1 %",
             "misconceptions": ["round_is_three_widths", "half_width_taken"], "text": both("How far round?")},
            {"id": "wires", "competency": "pens", "asks": "wire_count",
             "misconceptions": ["gaps_counted_not_wires"], "text": both("How many wires?")},
            {"id": "length", "competency": "pens", "asks": "wire_length", "answer": "within 1 %",
             "misconceptions": ["half_width_taken"], "text": both("How much wire?")},
            {"id": "rolls", "competency": "pens", "asks": "roll_count", "misconceptions": ["rolls_not_rounded_up"],
             "text": both("How many rolls?")},
        ],
    }
)  # fmt: skip
