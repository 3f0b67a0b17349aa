"""Help in steps, from little to much: a hint, the formula, the first line, the whole solution, then fresh numbers."""

from __future__ import annotations

from generator.curriculum.models import Question, WorkedQuestion

HELP = ("hint", "formula", "first_line", "solution", "again")
"""The steps in order; `again` is the same question with fresh numbers or a fresh mix."""


def helps(question: Question, tried: int) -> tuple[str, ...]:
    """The steps that are open; `marker.js` has the twin.

    A hint and the formula are there from the start. The first line and the whole solution open once an answer was
    tried: who has not tried yet learns little from reading on.

    Args:
        question: of the bank.
        tried: answers that were marked so far, with these numbers.

    Example:
        >>> from generator.curriculum.models import NumberQuestion
        >>> bag = {"id": "bags", "kind": "number", "competency": "goods", "asks": "bag_count", "given": {}, "text": {}}
        >>> helps(NumberQuestion.model_validate(bag), 0), helps(NumberQuestion.model_validate(bag), 1)
        (('formula', 'again'), ('formula', 'first_line', 'solution', 'again'))
    """
    hint = question.hint if isinstance(question, WorkedQuestion) else None
    worked = isinstance(question, WorkedQuestion)
    open_now = {
        "hint": hint is not None,
        "formula": worked,
        "first_line": worked and tried >= 1,
        "solution": worked and tried >= 1,
        "again": True,
    }
    return tuple(step for step in HELP if open_now[step])
