"""Readings of a built panel as exercises: the least or widest one, the mean, how many fail, and the verdict.

The readings are drawn by a seed from a spread that the learner does not see, or typed from the learner's own panel.
The least cover decides and the mean does not: a wall with a good mean rusts at its one thin place. A verdict here is on
these places only; the trainer looks at the wall. `readings.js` is the twin.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from importlib.resources import files
from statistics import median
from typing import Literal

from generator.calculations.cover import AIMED_BAR_COVER, LEAST_BAR_COVER
from generator.calculations.cover_readings import (
    DEEPEST_READING,
    LEAST_MESH_COVER,
    MOST_MESH_COVER,
    Steel,
    read_cover,
)
from generator.exercises.items import ChoiceItem, NumberItem
from generator.exercises.numbers import Ask, AskReason, Parsed, parse_number
from generator.formula import Constant, Stream, derived, show, show_full
from generator.words import Words

Kind = Literal["cover", "spacing"]

SPACING_TOLERANCE = Constant(
    10, "mm", derived("policy of this course: a gap of the cage may be this much off the plan")
)
PLANNED_GAPS = (110.0, 130.0, 140.0, 160.0)
"""Gaps between hoops that drawn panels were planned with [mm]; invented, as a tape reads them."""
FEWEST, MOST = 3, 60
DRAWN = 10
"""Readings of a drawn panel: as many as a trainer takes on one face."""
LARGEST = {"cover": float(DEEPEST_READING), "spacing": 1000.0}
_BETWEEN = re.compile(r"[ \t]*(?:[\n\r;]|,[ \t]|[ \t])[ \t\n\r\f\v;]*")
_HAIR = 1e-9
_TRIES = 500


@dataclass(frozen=True, slots=True)
class Panel:
    """Readings of one face.

    Args:
        kind: `cover`, from the face to the steel, or `spacing`, the gaps between hoops.
        steel: what lies under the mortar; for spacing without meaning.
        planned: gap of the plan [mm]; for cover 0.
        readings: [mm], in the order in which they were taken.
    """

    kind: Kind
    steel: Steel
    planned: float
    readings: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class ReadingFault:
    """Why typed readings make no panel; the words are `exercise.reading.fault.*`.

    Args:
        reason: `too_few`, `too_many`, or `not_a_reading`.
        place: number of the reading from 1; 0 for the whole list.
        text: what stands there.
    """

    reason: Literal["too_few", "too_many", "not_a_reading"]
    place: int = 0
    text: str = ""


def draw_panel(kind: Kind, seed: str, steel: Steel = "bar") -> Panel:
    """A panel that someone might have built; half of them pass.

    Args:
        kind: of the readings.
        seed: any text.
        steel: under the mortar.
    """
    stream = Stream(f"{seed}|readings|{kind}|{steel}")
    passing = stream.below(2) == 1
    panel = _one_panel(stream, kind, steel)
    for _ in range(_TRIES):
        if _clear(panel) and (_verdict(panel) not in ("too_thin", "too_wide", "too_narrow")) is passing:
            break
        panel = _one_panel(stream, kind, steel)
    return panel


def _one_panel(stream: Stream, kind: Kind, steel: Steel) -> Panel:
    """Readings spread evenly about a hidden middle, most of them near it."""
    if kind == "spacing":
        planned = PLANNED_GAPS[stream.below(len(PLANNED_GAPS))]
        middle, spread = int(planned) - 3 + stream.below(7), 2 + stream.below(9)
    else:
        planned = 0.0
        middle, spread = (7 + stream.below(8), 2 + stream.below(6)) if steel == "bar" else (2 + stream.below(4), 2)
    readings = []
    for _ in range(DRAWN):
        off = stream.below(spread + 1) + stream.below(spread + 1) - spread
        readings.append(float(max(middle + off, 0)))
    return Panel(kind, steel, planned, tuple(readings))


def _clear(panel: Panel) -> bool:
    """Whether the mistakes that the questions look for lead to other numbers than the right way."""
    found = sorted(panel.readings)
    mean = sum(found) / len(found)
    others = (median(found), (found[0] + found[-1]) / 2)
    thin, at_limit = _failing(panel, at_limit=False), _failing(panel, at_limit=True)
    return all(abs(other - mean) > 0.2 for other in others) and (panel.kind == "spacing" or thin != at_limit)


def typed_panel(kind: Kind, text: str, steel: Steel = "bar", planned: float = 0.0) -> Panel | ReadingFault:
    """Read the learner's own readings. Never raises, whatever the text.

    Args:
        kind: of the readings.
        text: readings with a space, a semicolon or a new line between them; a comma counts only with a space behind
            it, because `8,5` may be one reading or two.
        steel: under the mortar.
        planned: gap of the plan [mm]; for spacing.

    Returns:
        The panel, or what is wrong with the list.
    """
    pieces = [piece for piece in _BETWEEN.split(text) if piece.strip(" \t,;")] if len(text) <= 40 * MOST else []
    if len(pieces) > MOST or len(text) > 40 * MOST:
        return ReadingFault("too_many")
    if len(pieces) < FEWEST:
        return ReadingFault("too_few")
    readings = []
    for place, piece in enumerate(pieces, start=1):
        read = _reading(piece)
        if not isinstance(read, Parsed) or not 0 <= read.value <= LARGEST[kind]:
            return ReadingFault("not_a_reading", place, piece)
        readings.append(read.value)
    return Panel(kind, steel, planned, tuple(readings))


def fault_said(fault: ReadingFault, words: Words) -> str:
    """A fault of a typed list in words."""
    return words.say_one_of("exercise.reading.fault", fault.reason, place=fault.place, text=fault.text)


def _reading(piece: str) -> Parsed | Ask | None:
    if "," in piece.strip(","):
        return Ask(AskReason.TWO_READINGS)
    read = parse_number(piece, "mm")
    return read if isinstance(read, Parsed | Ask) else None


def _limits(panel: Panel) -> tuple[float, float]:
    """Readings below the first or above the second fail."""
    if panel.kind == "spacing":
        return panel.planned - SPACING_TOLERANCE, panel.planned + SPACING_TOLERANCE
    return float(LEAST_BAR_COVER if panel.steel == "bar" else LEAST_MESH_COVER), float("inf")


def _failing(panel: Panel, *, at_limit: bool) -> int:
    low, high = _limits(panel)
    slack = _HAIR if at_limit else -_HAIR
    return sum(reading < low + slack or reading > high - slack for reading in panel.readings)


def _verdict(panel: Panel) -> str:
    if panel.kind == "cover":
        return read_cover(panel.readings, panel.steel).verdict.value
    low, high = _limits(panel)
    if max(panel.readings) > high + _HAIR:
        return "too_wide"
    return "too_narrow" if min(panel.readings) < low - _HAIR else "as_planned"


_VERDICTS: Mapping[str, tuple[str, ...]] = {
    "bar": ("too_thin", "below_aim", "no_thin_reading"),
    "mesh": ("too_thin", "no_thin_reading", "thick_over_mesh"),
    "spacing": ("too_wide", "too_narrow", "as_planned"),
}
_BAD = ("too_thin", "too_wide", "too_narrow")


def reading_items(panel: Panel, id_: str, competency: str, words: Words) -> tuple[NumberItem | ChoiceItem, ...]:
    """The four questions about a panel, to be marked as any others.

    Args:
        panel: drawn or typed.
        id_: what the questions' ids start with.
        competency: what they show.
        words: of the learner's language.
    """
    found = sorted(panel.readings)
    mean = sum(found) / len(found)
    least, most = found[0], found[-1]
    spacing = panel.kind == "spacing"
    failing, low = _failing(panel, at_limit=False), _limits(panel)[0]
    counted = {"reading.limit_counted_as_failing": float(_failing(panel, at_limit=True))}
    if not spacing:
        counted["reading.aim_taken_for_limit"] = float(sum(each < AIMED_BAR_COVER - _HAIR for each in found))
        counted["reading.good_ones_counted"] = float(len(found) - failing)
    else:
        counted["reading.only_wide_ones_counted"] = float(sum(r > _limits(panel)[1] + _HAIR for r in found))
        counted["reading.good_ones_counted"] = float(len(found) - failing)
    shown = {
        "planned": show_full(panel.planned),
        "limit": show_full(low),
        "tolerance": show_full(float(SPACING_TOLERANCE)),
    }

    def number(
        name: str, text: str, key: float, tolerance: float, wrong: Mapping[str, float], unit: str = "mm"
    ) -> NumberItem:
        places = 0 if unit == "" else 1
        apart = {mistake: value for mistake, value in wrong.items() if abs(value - key) > 2 * tolerance + _HAIR}
        return NumberItem(
            id=f"{id_}.{name}", competency=competency, text=text, asks=name, unit=unit, places=places, low=0.0,
            high=LARGEST[panel.kind], givens={}, key=key, shown_key=show(key, places), rounded=key,
            absolute=tolerance, relative=0.0, wrong=apart,
        )  # fmt: skip

    edge_text = words.say("exercise.reading.widest") if spacing else words.say("exercise.reading.least")
    edge, other = (most, least) if spacing else (least, most)
    count_text = (
        words.say("exercise.reading.off_plan", planned=shown["planned"], tolerance=shown["tolerance"])
        if spacing
        else words.say("exercise.reading.too_thin", limit=shown["limit"])
    )
    return (
        number("edge", edge_text, edge, 0.05, {"reading.other_end_taken": other, "reading.mean_for_edge": mean}),
        number(
            "mean",
            words.say("exercise.reading.mean"),
            mean,
            0.05,
            {"reading.middle_taken_for_mean": float(median(found)), "reading.ends_halved": (least + most) / 2},
        ),
        number("failing", count_text, float(failing), 0.0, counted, ""),
        _verdict_item(panel, id_, competency, words),
    )


def _verdict_item(panel: Panel, id_: str, competency: str, words: Words) -> ChoiceItem:
    options = _VERDICTS["spacing" if panel.kind == "spacing" else panel.steel]
    right = _verdict(panel)
    mistakes = []
    for option in options:
        if option == right:
            mistakes.append("")
        elif right in _BAD:
            mistakes.append("reading.wrong_side_seen" if option in _BAD else "reading.mean_decides")
        else:
            mistakes.append("reading.good_wall_refused" if option in _BAD else "reading.limit_and_aim_mixed")
    return ChoiceItem(
        id=f"{id_}.verdict",
        competency=competency,
        text=words.say("exercise.reading.verdict_asked"),
        several=False,
        options=tuple(words.say_one_of("exercise.reading.verdict", option) for option in options),
        right=(options.index(right),),
        why=("",) * len(options),
        order=tuple(range(len(options))),
        mistakes=tuple(mistakes),
    )


def reading_lines(readings: Sequence[float]) -> str:
    r"""The readings as they stand on a sheet, five in a row.

    Example:
        >>> reading_lines([8, 9.5, 7, 8, 6, 11])
        '8  9.5  7  8  6\n11'
    """
    shown = [show_full(reading) for reading in readings]
    return "\n".join("  ".join(shown[i : i + 5]) for i in range(0, len(shown), 5))


def readings_script() -> str:
    """The script that draws and asks in the page; it follows marker.js."""
    code = files("generator.exercises").joinpath("readings.js").read_text(encoding="utf-8")
    limits = {
        "bar": float(LEAST_BAR_COVER),
        "mesh": float(LEAST_MESH_COVER),
        "aim": float(AIMED_BAR_COVER),
        "most_mesh": float(MOST_MESH_COVER),
        "tolerance": float(SPACING_TOLERANCE),
        "planned": PLANNED_GAPS,
        "fewest": FEWEST,
        "most": MOST,
        "drawn": DRAWN,
        "largest": LARGEST,
        "tries": _TRIES,
        "verdicts": _VERDICTS,
        "bad": _BAD,
    }
    return f"{code}Tankschool.readings.load({json.dumps(limits, sort_keys=True)});\n"
