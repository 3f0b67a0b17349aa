"""What every section of a plan is told with: numbers, units and names in the reader's language."""

from __future__ import annotations

from dataclasses import dataclass

from generator.calculations import BOOK
from generator.formula import show
from generator.plans.shop import Angle, Bar, Mesh
from generator.words import FOR_ONE, Words


@dataclass(frozen=True, slots=True)
class Section:
    """One section.

    Args:
        key: stable name.
        heading: what stands over it.
        lines: sentences, in order.
        head: heads of the columns; empty where there is no table.
        rows: cells, as many as there are heads.
    """

    key: str
    heading: str
    lines: tuple[str, ...] = ()
    head: tuple[str, ...] = ()
    rows: tuple[tuple[str, ...], ...] = ()


@dataclass(frozen=True, slots=True)
class Tell:
    """Says numbers and names.

    Args:
        words: of the reader's language.
    """

    words: Words

    def number(self, value: float, places: int = 0) -> str:
        """A rounded number, grouped as the language does."""
        return self.words.number(show(value, places))

    def sized(self, value: float, places: int, unit: str) -> str:
        """A rounded number and its unit."""
        return self.words.with_unit(show(value, places), unit)

    def quantity(self, name: str, value: float) -> tuple[str, str]:
        """Name and value of a quantity or a given, at its own decimals; a whole bag or day without any."""
        entry = BOOK.entry(name)
        found = BOOK.quantities.get(name)
        places = found.places if found is not None else _places(BOOK.givens[name].step)
        if found is None and value == int(value) and f"{FOR_ONE}.{entry.unit}" in self.words:
            places = 0
        return self.words.say_one_of("quantity", name), self.sized(value, places, entry.unit)

    def bar(self, bar: Bar) -> str:
        """A bar as a shop knows it: thickness, plain or ribbed."""
        size = self.sized(bar.diameter, 0, "mm")
        return (
            self.words.say("plan.bar_ribbed", size=size) if bar.ribbed else self.words.say("plan.bar_plain", size=size)
        )

    def angle(self, angle: Angle) -> str:
        """An angle as a shop knows it: leg, leg, thickness."""
        leg = self.number(angle.leg)
        return f"{leg} × {leg} × {self.sized(angle.thickness, 0, 'mm')}"

    def mesh(self, mesh: Mesh) -> str:
        """A mesh as a shop knows it."""
        return self.words.say_one_of(
            "plan.mesh_kind", mesh.kind, wire=self.number(mesh.wire, 1), opening=self.number(mesh.opening)
        )


def _places(step: float) -> int:
    """Decimals that a step on the tape needs."""
    text = f"{step:.6f}".rstrip("0")
    return len(text.partition(".")[2])
