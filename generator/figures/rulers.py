"""What is marked on a stick or a nail for one tank: where each mark is, in metres from the end, and what it says.

The sheets print these marks in true size, on strips of paper that are taped together.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from generator.formula import show
from generator.words import Words

_MM = 1000.0


@dataclass(frozen=True, slots=True)
class Mark:
    """One mark.

    Args:
        at: distance from the end of the stick [m].
        text: what stands beside it.
    """

    at: float
    text: str


@dataclass(frozen=True, slots=True)
class RulerKind:
    """A stick that is made anew for every tank.

    Args:
        needs: names of the givens and quantities that its marks come from.
        marks: makes the marks from these numbers and a language, the lowest first.
    """

    needs: tuple[str, ...]
    marks: Callable[[Mapping[str, float], Words], tuple[Mark, ...]]


def hoop_heights(values: Mapping[str, float]) -> tuple[float, ...]:
    """Height of every hoop above the floor [m], the one at the foot first.

    Args:
        values: of a tank; with `zone_count` and its kin, the hoops stand closer in the lower zones.
    """
    heights = [0.0]
    if values.get("zone_count"):
        for number in range(1, round(values["zone_count"]) + 1):
            start = heights[-1]
            gaps, spacing = round(values[f"zone_{number}_gaps"]), values[f"zone_{number}_spacing"]
            heights += [start + step * spacing for step in range(1, gaps + 1)]
    else:
        gaps = round(values["hoop_count"]) - 1
        heights += [step * values["wall_height"] / gaps for step in range(1, gaps + 1)]
    return tuple(heights)


def _hoops(values: Mapping[str, float], words: Words) -> tuple[Mark, ...]:
    """For the stick that stands upright on the floor beside the frame."""
    return tuple(
        Mark(height, words.say("ruler.hoop", number=number, height=_metres(height, words)))
        for number, height in enumerate(hoop_heights(values), start=1)
    )


def _ring(values: Mapping[str, float], words: Words) -> tuple[Mark, ...]:
    """For the stick from angle to angle: bars between them, the next angle by straight tape and round the ring."""
    return tuple(_ring_marks(values, words))


def _ring_marks(values: Mapping[str, float], words: Words) -> Iterator[Mark]:
    yield Mark(0.0, words.say("ruler.angle"))
    bars = round(values["bars_between"])
    for number in range(1, bars + 1):
        at = number * values["angle_spacing"] / (bars + 1)
        yield Mark(at, words.say("ruler.bar", number=number, distance=_metres(at, words)))
    chord, arc = values["angle_chord"], values["angle_spacing"]
    yield Mark(chord, words.say("ruler.angle_chord", distance=_metres(chord, words)))
    yield Mark(arc, words.say("ruler.angle_arc", distance=_metres(arc, words)))


def _cover(values: Mapping[str, float], words: Words) -> tuple[Mark, ...]:
    """For the nail that is pushed into wet mortar, from its point up."""
    bars = values.get("bar_count", 1.0) > 0  # a tank of mesh alone has none, and no mark for them
    names = ("mesh_cover", *(("bar_cover_inside",) if bars else ()), "wall_thickness")
    depths = {name: values[name] for name in names}
    marks = (Mark(depth / _MM, words.say_one_of("ruler.depth", name, depth=words.with_unit(show(depth, 0), "mm")))
             for name, depth in depths.items())  # fmt: skip
    return (Mark(0.0, words.say("ruler.nail_point")), *sorted(marks, key=lambda mark: mark.at))


def _metres(length: float, words: Words) -> str:
    return words.with_unit(show(length, 3), "m")


RULERS: Mapping[str, RulerKind] = {
    "hoops": RulerKind(("hoop_count", "wall_height"), _hoops),
    "ring": RulerKind(("angle_spacing", "angle_chord", "bars_between"), _ring),
    "cover": RulerKind(("mesh_cover", "bar_cover_inside", "wall_thickness"), _cover),
}
"""Sticks by the name that content uses."""
