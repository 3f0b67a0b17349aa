"""A handout: a text with drawings, formulas, worked examples and boxed cautions, for the pocket or the wall."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import pairwise

from generator.calculations import BOOK
from generator.calculations.bands import Band
from generator.curriculum import (
    CardBlock,
    CautionBlock,
    CourseContent,
    ExerciseBlock,
    FaultBlock,
    FigureBlock,
    FormulaBlock,
    LinesBlock,
    LogBlock,
    Prose,
    RulerBlock,
    SheetBlock,
    TableBlock,
    WorkedBlock,
)
from generator.figures import FIGURES, draw
from generator.figures.rulers import RULERS
from generator.plans import sections
from generator.problems import RefusedError
from generator.sheets.card_flow import Card, two_a_page
from generator.sheets.figure_flow import NARROWEST, Figure, captioned
from generator.sheets.flow import Box, Column, Piece, Row, Text
from generator.sheets.formula_flow import explained
from generator.sheets.log_flow import Lines, ruled
from generator.sheets.markdown_flow import pieces_of
from generator.sheets.page import About, Part, content_hash, sheet_pdf
from generator.sheets.ruler_flow import strip_pages
from generator.sheets.section_flow import section_pieces
from generator.sheets.signs import Caution
from generator.sheets.styles import NOTE, SUBHEADING, TEXT_WIDTH, TIGHT, TITLE
from generator.sheets.text import Run
from generator.sheets.working import worked_pieces
from generator.words import Words


def handout_pdf(handout_id: str, language: str, content: CourseContent) -> bytes:
    """A handout in one language.

    Args:
        handout_id: of `handouts/*.yaml`.
        language: language code.
        content: the course.

    Raises:
        RefusedError: a block or a piece of Markdown that paper can't show.
        MachineError: shaping is missing, or a sign has no glyph.
    """
    title = content.handouts[handout_id].title[language]
    about = About(title, language, content.course.version, content_hash(content.sources_of_handout(handout_id)))
    return sheet_pdf(about, [handout_part(handout_id, language, content)])


def handout_part(handout_id: str, language: str, content: CourseContent) -> Part:
    """The pages of a handout, alone or in a pack; as `handout_pdf`."""
    handout = content.handouts[handout_id]
    words = content.words[language]
    title = handout.title[language]
    told = "" if handout.module else words.say("sheet.accessible_sheet")
    page = content.modules[handout.module].title[language] if handout.module else ""
    place = content.places[handout.place]
    where = f"{place.name[language]}. {words.say('sheet.invented_place')}" if place.invented else place.name[language]
    where = " · ".join(filter(None, (where, content.own_notes.get((handout_id, language), ""))))
    pieces: list[Piece] = [Text(title, TITLE), Text(where, NOTE.but(keep=True))]
    own = content.own_plans.get(handout.place)
    if own is not None and own.judgement.band is Band.ENGINEER:
        pieces.append(Box(Text(words.say("plan.engineer_line"), TIGHT.but(bold=True)), before=3.0, after=7.0))
    cards: list[Card] = []
    blocks = list(content.handout_texts[handout_id, language])
    starts = [number for number, block in enumerate(blocks) if isinstance(block, CardBlock)]
    pieces += _together(blocks[: starts[0]] if starts else blocks, handout_id, content, words)
    for start, end in pairwise([*starts, len(blocks)]):
        cards.append(_card(blocks[start + 1 : end], handout_id, content, words))
    two_a_page(cards, TEXT_WIDTH)
    if cards:
        pieces += cards
    return Part(title, page, title, "" if cards else title, words, pieces, told)


def _together(blocks: list[SheetBlock], handout_id: str, content: CourseContent, words: Words) -> Iterator[Piece]:
    """The pieces of blocks; what is said right before a place to write stays with it."""
    for number, block in enumerate(blocks, start=1):
        made = list(_pieces(block, handout_id, content, words))
        follows = blocks[number] if number < len(blocks) else None
        if made and isinstance(made[-1], Text) and isinstance(follows, LinesBlock | LogBlock):
            made[-1].keep = True
        yield from made


def _card(blocks: list[SheetBlock], handout_id: str, content: CourseContent, words: Words) -> Card:
    drawings: list[Piece] = []
    texts: list[Piece] = []
    for block in blocks:
        if isinstance(block, FigureBlock):
            scene = draw(block.figure, content.numbers(handout_id, block.place), words)
            drawings.append(Figure(scene, highest=1.0))
        else:
            texts += _pieces(block, handout_id, content, words)
    return Card(drawings, texts)


def _pieces(block: SheetBlock, handout_id: str, content: CourseContent, words: Words) -> Iterator[Piece]:
    match block:
        case Prose():
            yield from pieces_of(block.markdown)
        case FigureBlock():
            yield captioned(draw(block.figure, content.numbers(handout_id, block.place), words))
        case CautionBlock():
            yield caution(_danger(block.caution, handout_id, content, words), words)
        case FormulaBlock():
            yield explained(block.quantity, words)
        case WorkedBlock():
            numbers = content.numbers(handout_id, block.place)
            if block.steps:
                _, steps = BOOK.short_trace(block.quantity, numbers, block.steps)
            else:
                steps = BOOK.trace(block.quantity, _givens(block.quantity, numbers))
            yield Box(Column(list(worked_pieces(steps, words))), before=3.0, after=7.0)
        case TableBlock():
            section = next(s for s in sections(content.plan(block.place), words) if s.key == block.section)
            yield from section_pieces(section)
        case LogBlock():
            yield ruled(content.handouts[handout_id].logs[block.log], block.rows, words.language)
        case FaultBlock():
            fault = _fault(block.fault, content, words)
            fault.changes_place = True
            yield fault
        case LinesBlock():
            yield Lines(block.count)
        case RulerBlock():
            yield from strip_pages(RULERS[block.ruler].marks(content.numbers(handout_id, block.place), words), words)
        case CardBlock():
            return  # where a card begins is settled before
        case ExerciseBlock():
            raise RefusedError(f"a handout can't hold the exercise '{block.question}': only worksheets print exercises")


def _fault(name: str, content: CourseContent, words: Words) -> Piece:
    """A fault: the drawing on the left; what it is, why, what comes of it and what to do on the right."""
    album = content.fault_album
    fault = next((each for each in album.faults if each.id == name), None) if album is not None else None
    spot = FIGURES[fault.figure].spot if fault is not None else None
    if album is None or fault is None or spot is None:
        raise RefusedError(f"the course's album of faults has no '{name}' with a drawing of a fault")
    letter = next(letter for letter, thing in spot.letters().items() if thing == spot.fault)
    heading = Text(fault.what[words.language], SUBHEADING.but(before=0.0))
    heading.outline = heading.plain()
    told = [
        heading, Text(words.say("sheet.fault.where", letter=letter), TIGHT.but(bold=True, after=4.0)),
        Text(_labelled(words.say("sheet.fault.why"), fault.why[words.language]), TIGHT.but(after=4.0)),
        Text(_labelled(words.say("sheet.fault.hill"), fault.hill[words.language]), TIGHT.but(after=4.0)),
        Text(_labelled(words.say("sheet.fault.do"), fault.do[words.language]), TIGHT),
    ]  # fmt: skip
    scene = draw(fault.figure, content.values(album.place), words)
    piece = Box(Row([(NARROWEST, Figure(scene)), (None, Column(told))], gap=12.0), before=4.0, after=6.0)
    piece.outline = heading.outline
    return piece


def _labelled(label: str, text: str) -> list[Run]:
    return [Run(f"{label} ", bold=True), Run(text)]


def _danger(name: str, handout_id: str, content: CourseContent, words: Words) -> str:
    """A caution of the handout's module, or else of the plan."""
    module = content.handouts[handout_id].module
    for own in content.modules[module].cautions if module else ():
        if own.id == name:
            return own.text[words.language]
    return words.say_one_of("plan.caution", name.replace("-", "_"))


def caution(text: str, words: Words, *more: str) -> Piece:
    """A danger, or several, in a thick box with the drawn sign and the word for it."""
    told = [Text(each, TIGHT) for each in (text, *more)]
    column = Column([Text(words.say("sheet.caution"), SUBHEADING.but(before=0.0)), *told])
    return Box(Row([(Caution.side, Caution()), (None, column)], gap=9), line=2.0, padding=7.0, before=4.0, after=7.0)


def _givens(quantity: str, values: Mapping[str, float]) -> dict[str, float]:
    return {name: values[name] for name in BOOK.needs(quantity)}
