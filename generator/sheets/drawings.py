"""The drawings of questions: with the question's own numbers, and a letter in the place of what is asked."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from generator.calculations import BOOK
from generator.curriculum import CourseContent
from generator.exercises import ChoiceItem, NumberItem, QuestionItem, ScenarioItem, SpokenItem, SpotItem
from generator.figures import FIGURES, Scene, draw, draw_asking
from generator.formula import OutOfRangeError
from generator.problems import RefusedError
from generator.sheets.figure_flow import Figure
from generator.sheets.flow import Piece
from generator.words import Words

HIGHEST = 230.0
"""Points that a drawing beside a question may have, so that question and answer stay on one page."""
_MOST_SEEDS = 20_000


class Drawings:
    """Makes the drawings of a set, each only once.

    Args:
        content: the course that the set was made from.
    """

    def __init__(self, content: CourseContent) -> None:
        self._content = content
        self._scenes: dict[tuple[object, ...], Scene] = {}

    def of(self, item: QuestionItem, module: str, words: Words) -> Piece | None:
        """The drawing of a question; None where it has none.

        Args:
            item: with its numbers in place.
            module: whose place is drawn.
            words: of the learner's language.

        Raises:
            RefusedError: the drawing no longer has the places that the record names.
            MachineError: a text of the drawing can't be shaped.
        """
        question = self._content.questions.get(item.id)
        key = item.figure if isinstance(item, SpotItem) else question.figure if question is not None else None
        if key is None:
            return None
        place = self._content.modules[module].place
        if isinstance(item, SpotItem):
            return Figure(self._spot(item, place, words), HIGHEST)
        asked = item.answer if isinstance(item, SpokenItem) else item
        givens = asked.givens if isinstance(asked, NumberItem | ChoiceItem) else {}
        hidden = [asked.asks] if isinstance(asked, NumberItem | ChoiceItem) and asked.asks else []
        return Figure(self._asking(key, place, givens, hidden, words), HIGHEST)

    def scenario(self, item: ScenarioItem, words: Words) -> Piece | None:
        """The drawing of a scenario at its place, with letters for what its parts ask; None where it has none."""
        found = self._content.scenarios.get(item.id)
        if found is None or found.figure is None:
            return None
        return Figure(self._asking(found.figure, found.place, {}, [part.asks for part in item.parts], words), HIGHEST)

    def _spot(self, item: SpotItem, place: str, words: Words) -> Scene:
        known = item.figure, place, words.language, tuple((area.letter, area.name) for area in item.areas)
        if known not in self._scenes:
            seed = seed_of(item)
            self._scenes[known] = draw(item.figure, self._content.values(place), words, seed)
        return self._scenes[known]

    def _asking(self, key: str, place: str, givens: Mapping[str, float], asked: Sequence[str], words: Words) -> Scene:
        known = key, place, words.language, tuple(sorted(givens.items())), tuple(asked)
        if known not in self._scenes:
            values = self._values(key, place, givens)
            try:
                self._scenes[known] = draw_asking(key, values, words, asked)
            except ValueError:  # the drawing shows none, or not all, of what is asked
                self._scenes[known] = self._hiding_some(key, values, asked, words)
        return self._scenes[known]

    def _hiding_some(self, key: str, values: Mapping[str, float], asked: Sequence[str], words: Words) -> Scene:
        shown = []
        for name in dict.fromkeys(asked):
            try:
                draw_asking(key, values, words, [name])
            except ValueError:
                continue
            shown.append(name)
        return draw_asking(key, values, words, shown) if shown else draw(key, values, words)

    def _values(self, key: str, place: str, givens: Mapping[str, float]) -> Mapping[str, float]:
        """The place's numbers with the question's own before them; the place's alone where both don't go together."""
        here = self._content.values(place)
        if not givens:
            return here
        own = {**self._content.places[place].given, **givens}
        try:
            worked = BOOK.work_out(own, [name for name in FIGURES[key].needs if name in BOOK.quantities], check=True)
        except OutOfRangeError:
            return here
        return {**here, **worked}


def seed_of(item: SpotItem) -> int:
    """The seed with which the drawing shows each thing at the letter that the record names.

    Raises:
        RefusedError: no seed does, because the drawing was changed since.
    """
    spot = FIGURES[item.figure].spot if item.figure in FIGURES else None
    if spot is None:
        return 0
    wanted = {area.letter: area.name for area in item.areas}
    for seed in range(_MOST_SEEDS):
        if spot.letters(seed) == wanted:
            return seed
    raise RefusedError(f"the drawing '{item.figure}' no longer has the places of '{item.id}': make the set anew")
