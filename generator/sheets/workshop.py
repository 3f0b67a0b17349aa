"""A workshop's pack: programme, session plans, tools, safety, register, spoken examination, worksheets, handouts.

The pack is one document with bookmarks; each of its sheets also comes alone.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import date, timedelta

from generator.assessment.blueprint import recheck_of
from generator.assessment.recheck import Recheck
from generator.calculations.build_jobs import HOLD_POINTS
from generator.calculations.calendar import Slot
from generator.curriculum import CourseContent
from generator.curriculum.models import Module
from generator.exercises import ChoiceItem, NumberItem, QuestionItem, Record, SpokenItem, make_item
from generator.figures import draw
from generator.plans import looked_at, sections
from generator.plans.sections import CAUTIONS
from generator.sheets.board import board_pieces
from generator.sheets.drawings import Drawings
from generator.sheets.flow import Box, Column, Grid, Piece, Row, Space, Text
from generator.sheets.handout import caution, handout_part
from generator.sheets.key import key_part
from generator.sheets.oral import asked_question, limits_table
from generator.sheets.page import About, Part, content_hash, sheet_pdf
from generator.sheets.practical import practical_part
from generator.sheets.section_flow import section_pieces
from generator.sheets.signs import Blank, Boxes
from generator.sheets.styles import BODY, CELL, HEADING, NOTE, SUBHEADING, TIGHT, TITLE
from generator.sheets.worksheet import learner_part
from generator.sheets.workshop_days import clock_of
from generator.sheets.workshop_file import Workshop
from generator.words import Words

_HEAD = NOTE.but(bold=True, after=0.0)
_SIGN = 24.0
_TICK = 18.0
_DAYS_A_TABLE = 6
_EVERY_VISIT = ("closed_to_children", "nothing_bulges")
"""What is looked at on every visit, whatever the day."""
_WET_VISIT = ("wet_below", "sacks_tight", "water_at_hand", "names_ahead")
"""What is looked at on a wet day."""
_UNBROKEN = frozenset({"base_concrete", "first_coat", "roof_pour"})
"""Jobs that stop for no meal: where fresh work meets old, it leaks or cracks."""
_RECHECK = 12
"""Questions that the sheet of a spoken examination has ready, beside those that are read aloud."""


class Pack:
    """The sheets of one workshop.

    Args:
        workshop: whose file is good.
        content: the course.
        records: the worksheets' records by module.
        data: bytes of the workshop's file.
    """

    def __init__(self, workshop: Workshop, content: CourseContent, records: Mapping[str, Record], data: bytes) -> None:
        self._workshop, self._content, self._records = workshop, content, records
        self._words = content.words[workshop.language]
        sources = {"workshop": data, **{f"course {name}": record_hash(r) for name, r in records.items()}}
        self._hash = content_hash(sources)

    def files(self) -> dict[str, bytes]:
        """Every PDF by its name, the whole pack first."""
        parts = self._parts()
        whole = [part for own in parts.values() for part in own]
        found = {"pack.pdf": self._pdf(self._words.say("workshop.pack"), whole)}
        return found | {f"{name}.pdf": self._pdf(own[0].name, own) for name, own in parts.items()}

    def _pdf(self, name: str, parts: Sequence[Part]) -> bytes:
        about = About(
            f"{name} · {self._workshop.file.name}", self._workshop.language, self._content.course.version, self._hash
        )
        return sheet_pdf(about, parts)

    def _parts(self) -> dict[str, list[Part]]:
        words, file = self._words, self._workshop.file
        modules = [self._content.modules[name] for name in file.modules]
        parts = {"programme": [self._part(words.say("workshop.programme"), self._programme())]}
        for module in modules:
            title = f"{words.say('workshop.session')} · {module.title[words.language]}"
            parts[f"session-{module.id}"] = [self._session_part(title, module)]
        parts["tools"] = [self._part(words.say("workshop.tools"), self._tools(modules))]
        parts["safety"] = [self._part(words.say("workshop.safety"), self._safety(modules))]
        parts["register"] = [self._part(words.say("workshop.register"), self._register())]
        parts["spoken-exam"] = [self._part(words.say("workshop.exam"), self._exam(modules))]
        for name, record in self._records.items():
            drawings, set_id = Drawings(self._content), record.set_id
            parts[f"worksheets-{name}"] = [
                _named(learner_part(learner, record, self._content, set_id, drawings)) for learner in record.learners
            ]
            parts[f"key-{name}"] = [
                _named(key_part(learner, record, self._content, set_id)) for learner in record.learners
            ]
        own = [handout.id for handout in self._content.handouts.values() if handout.module in file.modules]
        for name in dict.fromkeys([*own, *file.handouts]):
            parts[f"handout-{name}"] = [handout_part(name, words.language, self._content)]
        for name in file.practicals:
            parts[f"practical-{name}"] = [practical_part(name, words.language, self._content)]
        if self._workshop.visits:
            parts["visits"] = [self._part(words.say("workshop.visits"), self._visits())]
        return parts

    def _part(self, title: str, pieces: Iterator[Piece]) -> Part:
        words, name = self._words, self._workshop.file.name
        opening: list[Piece] = [Text(title, TITLE), Text(self._where(), TIGHT.but(after=6.0))]
        told = words.say("workshop.read_this")
        return Part(title, "", title, f"{name} · {title}", words, [*opening, *pieces], told)

    def _where(self) -> str:
        place = self._content.places[self._workshop.file.place].name[self._words.language]
        first, last = self._workshop.dates[0].isoformat(), self._workshop.dates[-1].isoformat()
        days = first if first == last else f"{first} – {last}"
        return f"{self._workshop.file.name} · {place} · {days}"

    # ------------------------------------------------------------------------------------------- programme

    def _programme(self) -> Iterator[Piece]:
        words = self._words
        yield Text(words.say("workshop.hours_note"), BODY)
        for number, (day, sessions) in enumerate(zip(self._workshop.dates, self._workshop.days, strict=True), start=1):
            heading = Text(words.say("workshop.day", number=number, date=day.isoformat()), HEADING)
            heading.outline = heading.plain()
            yield heading
            rows = []
            for session in sessions:
                practises = session.kind == "build" and not self._workshop.file.builds
                told = words.say_one_of("workshop.does", "practise" if practises else session.kind)
                if session.module:
                    told = f"{self._content.modules[session.module].title[words.language]}: {told}"
                clock = f"{clock_of(session.start)} – {clock_of(session.end)}"
                rows.append([Text(clock, CELL), Text(told, CELL)])
            yield Grid(
                rows, (1.0, 3.6), [Text(words.say("workshop.when"), _HEAD), Text(words.say("workshop.what"), _HEAD)]
            )
            if self._workshop.file.builds:
                yield self._on_the_tank(day)
        if self._workshop.file.practicals:
            titles = [self._content.practicals[name].title[words.language] for name in self._workshop.file.practicals]
            yield Text(words.say("workshop.watched", names="; ".join(titles)), BODY)
        if not self._workshop.file.builds:
            return
        yield Text(words.say("workshop.after"), HEADING)
        begins = self._workshop.begins
        told = words.say("workshop.begins_first")
        if begins != self._workshop.dates[0]:
            told = words.say("workshop.begins_else", date=begins.isoformat())
        yield Text(f"{told} {words.say('workshop.after_note')}", BODY)
        rows = []
        for slot in self._workshop.plan.work.slots:
            rows.append([Text(self._span(slot.start, slot.end), CELL), Text(words.say_one_of("job", slot.name), CELL)])
            if slot.name == "first_coat":
                start, end = wet_days(self._workshop.plan.work.slots)
                rows.append([Text(self._span(start, end), CELL), Text(words.say("workshop.wet"), CELL.but(bold=True))])
        yield Grid(rows, (1.3, 3.0), [Text(words.say("workshop.when"), _HEAD), Text(words.say("workshop.what"), _HEAD)])

    def _on_the_tank(self, day: date) -> Piece:
        """What the build calendar has for a day."""
        words, slots, number = self._words, self._workshop.plan.work.slots, self._build_day(day)
        jobs = [words.say_one_of("job", s.name) for s in slots if s.start <= number <= max(s.start, s.end)]
        start, end = wet_days(slots)
        if start <= number <= end:
            jobs.append(words.say("workshop.wet"))
        told = words.say("workshop.on_the_tank", jobs="; ".join(jobs) if jobs else words.say("workshop.no_job"))
        if any(slot.name in _UNBROKEN and slot.start <= number <= max(slot.start, slot.end) for slot in slots):
            told = f"{told} {words.say('workshop.unbroken')}"
        return Text(told, BODY)

    def _build_day(self, day: date) -> int:
        """Day of the build, from 1; less before it begins."""
        return (day - self._workshop.begins).days + 1

    def _span(self, start: int, end: int) -> str:
        first = self._workshop.begins + timedelta(days=start - 1)
        last = self._workshop.begins + timedelta(days=end - 1)
        return first.isoformat() if end <= start else f"{first.isoformat()} – {last.isoformat()}"

    # -------------------------------------------------------------------------------------------- sessions

    def _session_part(self, title: str, module: Module) -> Part:
        part = self._part(title, self._session(module))
        values = self._content.values(module.place)
        scenes = [draw(key, values, self._words) for key in module.figures]
        return replace(part, pieces=[*part.pieces, *board_pieces(part, scenes, self._words)]) if scenes else part

    def _session(self, module: Module) -> Iterator[Piece]:
        words, language = self._words, self._words.language
        yield Text(words.say("workshop.aim"), HEADING)
        yield Text(module.summary[language], BODY)
        yield from (Text(f"- {outcome.text[language]}", TIGHT) for outcome in module.outcomes)
        yield Text(words.say("workshop.method"), HEADING)
        minutes = module.minutes
        yield Text(words.say("workshop.talk", minutes=minutes.talk), BODY)
        yield Text(words.say("workshop.show", minutes=minutes.show), BODY)
        yield Text(words.say("workshop.do", minutes=minutes.do, groups=self._workshop.threes), BODY)
        if module.trainer_notes:
            yield Text(words.say("workshop.notes"), HEADING)
            yield from (Text(f"- {note[language]}", TIGHT) for note in module.trainer_notes)
        items = self._questions(module)
        if items:
            yield Text(words.say("workshop.questions"), HEADING)
            yield Text(words.say("workshop.how_to_ask"), BODY.but(keep=True))
            for item, right in items:
                said = Text(f"- {item.text}", TIGHT)
                answer = Text(f"{words.say('workshop.listen_for')} {right}", NOTE.but(indent=12.0, after=5.0))
                yield Column([said, answer], after=2.0)
        rows = [
            [
                Text(words.say_one_of("misconception", f"{name}.mistake"), CELL),
                Text(words.say_one_of("misconception", f"{name}.hill"), CELL),
            ]
            for name in self._misconceptions(module)
        ]
        if rows:
            yield Text(words.say("workshop.wrong_answers"), HEADING)
            yield Text(words.say("workshop.wrong_note"), BODY.but(keep=True))
            yield Grid(rows, (1, 1), [Text(words.say("sheet.mistake"), _HEAD), Text(words.say("sheet.hill"), _HEAD)])

    def _questions(self, module: Module) -> list[tuple[QuestionItem, str]]:
        """One question of each competency that can be asked aloud, with what is right; spoken ones first."""
        found: dict[str, tuple[QuestionItem, str]] = {}
        bank = self._content.questions_of(module.id)
        for question in sorted(bank, key=lambda one: one.kind != "spoken"):
            if question.kind in ("spoken", "choice", "number") and question.competency not in found:
                item = make_item(question, self._workshop.file.name, self._words)
                found[question.competency] = item, right_said(item, self._words)
        return list(found.values())

    def _misconceptions(self, module: Module) -> list[str]:
        """Of the module's questions and scenarios, each once, in the bank's order."""
        names: list[str] = []
        for question in self._content.questions_of(module.id):
            names += getattr(question, "misconceptions", ())
        for scenario in self._content.scenarios.values():
            if scenario.module == module.id and not scenario.retired:
                names += [name for part in scenario.parts for name in part.misconceptions]
        return list(dict.fromkeys(names))

    # ------------------------------------------------------------------------------- tools, safety, register

    def _tools(self, modules: Sequence[Module]) -> Iterator[Piece]:
        words, group = self._words, self._workshop.file.group
        yield Text(words.say("workshop.tools_note", groups=self._workshop.threes, people=group), BODY)
        tools = dict.fromkeys(tool[words.language] for module in modules for tool in module.tools)
        for_all = words.say("workshop.first_aid")
        tools = dict.fromkeys(tool for tool in tools if not for_all.startswith(tool))
        each = words.say("workshop.each_person")
        rows = [self._ticked(tool, str(group if each in tool else self._workshop.threes)) for tool in tools]
        rows += [
            self._ticked(words.say("workshop.gloves"), str(group)),
            self._ticked(words.say("workshop.glasses"), "3"),
            self._ticked(words.say("workshop.water_and_soap"), "1"),
            self._ticked(for_all, "1"),
        ]
        heads = [words.say("workshop.tool"), words.say("workshop.how_many"), words.say("workshop.there")]
        yield Grid(rows, (4.6, 1.2, 1.0), [Text(head, _HEAD) for head in heads])
        wanted = ("counts", "batch", "cutting", "mesh") if self._workshop.file.builds else ()
        for section in sections(self._workshop.plan, words):
            if section.key in wanted:
                yield Text(section.heading, HEADING)
                yield from section_pieces(section)

    def _ticked(self, tool: str, count: str) -> list[Piece]:
        return [Text(tool, CELL), Text(count, CELL.but(bold=True)), Row([(_TICK, Boxes(1, _TICK)), (None, Column([]))])]

    def _safety(self, modules: Sequence[Module]) -> Iterator[Piece]:
        words = self._words
        yield Text(words.say("workshop.safety_note"), BODY)
        for module in modules:
            if module.cautions:
                yield Text(module.title[words.language], HEADING)
                yield from (caution(each.text[words.language], words) for each in module.cautions)
        yield Text(words.say("workshop.on_site"), HEADING)
        yield from (caution(words.say_one_of("plan.caution", name), words) for name in CAUTIONS)
        yield from self._signed(words.say("workshop.signed"))

    def _signed(self, who: str) -> Iterator[Piece]:
        label = Text(who, TIGHT)
        yield Row([(label.natural_width() + 1, label), (None, Blank(26.0))], middle=True, before=8.0)

    def _register(self) -> Iterator[Piece]:
        words, dates = self._words, self._workshop.dates
        yield Text(words.say("workshop.consent"), SUBHEADING)
        yield Box(Column([Text(line, TIGHT) for line in self._consent()]), after=8.0)
        heads = [
            words.say("workshop.number"), words.say("workshop.name"), words.say("workshop.learns"),
            words.say("workshop.photos"), words.say("workshop.thumb"),
        ]  # fmt: skip
        yield self._table(heads, (0.6, 3.2, 1.4, 1.4, 2.6))
        for start in range(0, len(dates), _DAYS_A_TABLE):
            some = dates[start : start + _DAYS_A_TABLE]
            heading = Text(words.say("workshop.attendance"), HEADING)
            heading.begins_page = True
            yield heading
            yield Text(words.say("workshop.attendance_note"), NOTE.but(keep=True))
            heads = [words.say("workshop.number"), words.say("workshop.name"), *(day.isoformat()[5:] for day in some)]
            yield self._table(heads, (0.6, 3.2, *(1.0 for _ in some)))

    def _consent(self) -> list[str]:
        words = self._words
        return [
            words.say("workshop.consent_what"), words.say("workshop.consent_photos"),
            words.say("workshop.consent_free"), words.say("workshop.consent_age"),
        ]  # fmt: skip

    def _table(self, heads: Sequence[str], widths: Sequence[float]) -> Piece:
        rows: list[list[Piece]] = [
            [Text(str(number), CELL.but(bold=True)), *(Space(_SIGN) for _ in heads[1:])]
            for number in range(1, self._workshop.file.group + 1)
        ]
        return Grid(rows, widths, [Text(head, _HEAD) for head in heads])

    # ---------------------------------------------------------------------------------------------- visits

    def _visits(self) -> Iterator[Piece]:
        """Names for the wet days, then what is looked at on each visit."""
        words, slots = self._words, self._workshop.plan.work.slots
        yield Text(words.say("workshop.visits_note"), BODY)
        heading = Text(words.say("workshop.roster"), HEADING)
        heading.outline = heading.plain()
        yield heading
        yield Text(words.say("workshop.roster_note"), BODY)
        first, last = wet_days(slots)
        days = [self._workshop.begins + timedelta(days=number - 1) for number in range(first, last + 1)]
        rows: list[list[Piece]] = [
            [
                Text(str(number), CELL.but(bold=True)), Text(day.isoformat(), CELL), Space(_SIGN), Space(_SIGN),
                Row([(_TICK, Boxes(1, _TICK)), (None, Column([]))]),
            ]
            for number, day in enumerate(days, start=1)
        ]  # fmt: skip
        heads = [
            words.say("workshop.number"), words.say("workshop.when"), words.say("workshop.first_name"),
            words.say("workshop.second_name"), words.say("workshop.wetted"),
        ]  # fmt: skip
        yield Grid(rows, (0.6, 1.4, 2.8, 2.8, 1.0), [Text(head, _HEAD) for head in heads])
        for number, day in enumerate(self._workshop.visits, start=1):
            visit = Column(list(self._visit(number, day, first, last)), before=16.0)
            visit.outline = words.say("workshop.visit", number=number, date=day.isoformat(), day=self._build_day(day))
            yield visit

    def _visit(self, number: int, day: date, first: int, last: int) -> Iterator[Piece]:
        words, on = self._words, self._build_day(day)
        yield Text(words.say("workshop.visit", number=number, date=day.isoformat(), day=on), HEADING)
        yield self._on_the_tank(day)
        looks = list(_EVERY_VISIT)
        if first <= on <= last:
            looks += _WET_VISIT
        rows: list[list[Piece]] = [
            [Text(words.say_one_of("workshop.look", look), CELL), *self._yes_or_no(), Space(_SIGN)] for look in looks
        ]
        for name in self._due(number, on):
            told = f"{words.say_one_of('job', name)}: {looked_at(self._workshop.plan, name, words)}"
            rows.append([Text(told, CELL.but(bold=True)), *self._yes_or_no(), Space(_SIGN)])
        heads = [
            words.say("workshop.look_at"), words.say("workshop.good"), words.say("workshop.not_good"),
            words.say("workshop.seen"),
        ]  # fmt: skip
        yield Grid(rows, (4.4, 0.8, 0.8, 2.6), [Text(head, _HEAD) for head in heads])
        yield Text(words.say("workshop.if_not_good"), BODY.but(before=6.0))
        yield from self._signed(words.say("workshop.visited"))

    def _yes_or_no(self) -> list[Piece]:
        return [Row([(_TICK, Boxes(1, _TICK)), (None, Column([]))]) for _ in range(2)]

    def _due(self, number: int, on: int) -> list[str]:
        """Hold points since the visit before this one, or since the workshop ended, up to this day."""
        before = self._workshop.visits[number - 2] if number > 1 else self._workshop.dates[-1]
        since = self._build_day(before)
        return [s.name for s in self._workshop.plan.work.slots if s.name in HOLD_POINTS and since < s.start <= on]

    # ----------------------------------------------------------------------------------- spoken examination

    def _exam(self, modules: Sequence[Module]) -> Iterator[Piece]:
        words = self._words
        yield Text(words.say("sheet.key_only_for_trainers"), NOTE)
        yield Text(words.say("paper.reader_rules"), BODY)
        yield Text(words.say("sheet.script"), NOTE.but(after=6.0))
        for text in (words.say("sheet.learner"), words.say("paper.reader")):
            label = Text(text, TIGHT)
            yield Row([(label.natural_width() + 1, label), (None, Blank(26.0))], middle=True)
        spoken, others = self._exam_items(modules)
        for number, item in enumerate(spoken, start=1):
            yield asked_question(number, item.model_copy(update={"text": "\n".join(item.script)}), words)
        heading = Text(words.say("workshop.recheck"), HEADING)
        heading.outline = heading.plain()
        yield heading
        yield Text(words.say("workshop.recheck_note"), BODY)
        yield from self._limits({module.id for module in modules})
        asked = [asked_question(place, item, words) for place, item in enumerate(others, start=len(spoken) + 1)]
        yield from asked[:-1]
        yield Column([*asked[-1:], *self._signed(words.say("sheet.signed_observer"))])  # no page for a signature alone

    def _limits(self, modules: set[str]) -> Iterator[Piece]:
        """When something asked aloud is over: schemes with the same rule share a table."""
        words = self._words
        rules: dict[tuple[str, Recheck], list[str]] = {}
        for scheme in self._content.schemes.values():
            for kind, rule in (("oral", scheme.oral), ("talk", scheme.talk)):
                if rule is not None and modules & set(scheme.modules):
                    rules.setdefault((kind, recheck_of(rule)), []).append(scheme.title[words.language])
        for (kind, limits), about in rules.items():
            yield Text(f"{words.say_one_of('paper', f'{kind}.title')} · {', '.join(about)}", SUBHEADING)
            yield limits_table(limits, words)
            yield Text(words.say_one_of("paper", f"{kind}.after", count=limits.most), NOTE)

    def _exam_items(self, modules: Sequence[Module]) -> tuple[list[SpokenItem], list[QuestionItem]]:
        spoken: list[SpokenItem] = []
        others: list[QuestionItem] = []
        for module in modules:
            for question in self._content.questions_of(module.id):
                if question.kind in ("spoken", "choice", "number") and not (
                    question.figure and question.kind != "spoken"
                ):
                    item = make_item(question, f"{self._workshop.file.name}|exam", self._words)
                    if isinstance(item, SpokenItem):
                        spoken.append(item)
                    else:
                        others.append(item)
        step = max(1, -(-len(others) // _RECHECK))
        return spoken, others[::step]


def _named(part: Part) -> Part:
    """With a bookmark that says of which sheet it is."""
    return replace(part, title=f"{part.name} · {part.title}")


def record_hash(record: Record) -> bytes:
    """What tells two sets of worksheets apart."""
    return json.dumps([record.set_id, record.seed]).encode("utf-8")


def right_said(item: QuestionItem, words: Words) -> str:
    """The right answer in words."""
    asked = item.answer if isinstance(item, SpokenItem) else item
    if isinstance(asked, NumberItem):
        return words.with_unit(asked.shown_key, asked.unit)
    if isinstance(asked, ChoiceItem):
        return "; ".join(asked.options[i] for i in asked.right)
    return ""


def wet_days(slots: Sequence[Slot]) -> tuple[int, int]:
    """First and last day on which mortar must be kept wet: from the day after the first coat.

    Example:
        >>> wet_days([Slot("first_coat", 9, 9, True), Slot("wet_curing", 31, 30, True)])
        (10, 30)
    """
    by_name = {slot.name: slot for slot in slots}
    return by_name["first_coat"].end + 1, by_name["wet_curing"].end
