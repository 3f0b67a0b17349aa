"""Why there is no plan: a key of the words, so that every language can say it, and its numbers."""

from __future__ import annotations

from collections.abc import Mapping

from generator.formula import OutOfRangeError, OutsideRangeError
from generator.words import Words


class NoPlanError(OutOfRangeError):
    """A plan that is not made.

    Args:
        key: member of the words `plan.refused`.
        numbers: what stands in their slots, shown as a person reads it.
    """

    def __init__(self, key: str, **numbers: str) -> None:
        slots = ", ".join(f"{name} {value}" for name, value in numbers.items())
        super().__init__(f"no plan: {key}{f' ({slots})' if slots else ''}; ask a licensed engineer")
        self.key = key
        self.numbers: Mapping[str, str] = numbers

    def text(self, words: Words) -> str:
        """The reason in the reader's language.

        Args:
            words: of that language.
        """
        return words.say_one_of("plan.refused", self.key, **self.numbers)


class _OutsideRangeOfCourseError(NoPlanError):
    """A number of the plan outside what the calculation module stands for, called by its trade name."""

    def __init__(self, error: OutsideRangeError) -> None:
        super().__init__("outside_course", value=f"{error.value:.6g}", low=f"{error.low:g}", high=f"{error.high:g}")
        self._quantity = error.name
        self._unit = error.unit

    def text(self, words: Words) -> str:
        unit = f" {words.say_one_of('unit', self._unit)}" if self._unit else ""
        name = words.say_one_of("quantity", self._quantity)
        return words.say_one_of("plan.refused", self.key, name=name, unit=unit, **self.numbers)


def from_calculation(error: OutOfRangeError) -> NoPlanError:
    """The refusal of the calculation module as a plan that is not made.

    Args:
        error: what it raised.

    Example:
        >>> from_calculation(OutsideRangeError("hoop_spacing", 0.3, 0.05, 0.2, "m")).key
        'outside_course'
    """
    if isinstance(error, NoPlanError):
        return error
    if isinstance(error, OutsideRangeError):
        return _OutsideRangeOfCourseError(error)
    return NoPlanError("outside_module", detail=str(error))


def outside(option: str, value: float, low: float, high: float, unit: str = "") -> NoPlanError:
    """An option outside its range.

    Args:
        option: as it is typed, such as `--litres`.
        value: what was asked for.
        low: least that is taken.
        high: most that is taken.
        unit: of all three.
    """
    return NoPlanError(
        "outside", option=option, value=f"{value:g}", low=f"{low:g}", high=f"{high:g}", unit=f" {unit}" if unit else ""
    )
