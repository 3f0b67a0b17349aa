"""Which quantities a module teaches."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from generator.calculations import BOOK
from generator.curriculum.content import CourseContent
from generator.curriculum.lessons import FormulaBlock, WorkedBlock
from generator.curriculum.models import Module, WorkedQuestion


def taught(content: CourseContent, module: Module) -> tuple[str, ...]:
    """The quantities that a module's lesson shows, its exercises ask for, and its jobs in parts need, in this order.

    Args:
        content: the course.
        module: one of its modules.
    """
    return tuple(dict.fromkeys(_taught(content, module)))


def first_taught(content: CourseContent, modules: Iterable[Module]) -> Iterator[tuple[Module, list[str]]]:
    """Each module with the quantities that no earlier one teaches; modules without any are left out.

    Args:
        content: the course.
        modules: in teaching order.
    """
    shown: set[str] = set()
    for module in modules:
        names = [name for name in taught(content, module) if name in BOOK.quantities and name not in shown]
        shown |= set(names)
        if names:
            yield module, names


def _taught(content: CourseContent, module: Module) -> Iterator[str]:
    for part in content.lessons[module.id, content.course.languages[0]]:
        if isinstance(part, FormulaBlock | WorkedBlock):
            yield part.quantity
    for question in content.questions_of(module.id):
        if isinstance(question, WorkedQuestion):
            yield question.asks
    for key in module.scenarios:
        if not content.scenarios[key].retired:
            yield from (part.asks for part in content.scenarios[key].parts)
