"""A workshop's file and its pack: every fault at once, hours that add up, the build calendar, sheets that fit."""

from __future__ import annotations

from datetime import timedelta
from io import BytesIO
from itertools import pairwise
from pathlib import Path

import pytest
from pypdf import PdfReader

from generator.calculations.build_jobs import HOLD_POINTS
from generator.curriculum import CourseContent
from generator.exercises import Person, make_set
from generator.problems import ProblemsError
from generator.sheets import Pack
from generator.sheets.styles import PAGE_HEIGHT, PAGE_WIDTH
from generator.sheets.workshop import wet_days
from generator.sheets.workshop_days import Block, capacity, minutes_of, programme
from generator.sheets.workshop_file import Workshop, read_workshop
from tests.sheets.layout_checks import faults
from tests.sheets.recorder import Recording, recording

EXAMPLES = Path(__file__).parents[2] / "docs" / "examples"
EXAMPLE = EXAMPLES / "workshop.yaml"
ALL_EXAMPLES = sorted(path.name for path in EXAMPLES.glob("workshop*.yaml"))


def read(content: CourseContent, language: str = "en", group: int = 12) -> tuple[Workshop, bytes]:
    text = EXAMPLE.read_text("utf-8").replace("language: en", f"language: {language}")
    data = text.replace("group: 12", f"group: {group}").encode("utf-8")
    return read_workshop("workshop.yaml", data, content), data


def pack_of(content: CourseContent, language: str) -> tuple[dict[str, bytes], Recording, Workshop]:
    workshop, data = read(content, language)
    people = [Person("Asha Devi"), Person("सीता कुमारी")]
    records = {
        name: make_set(content, name, people, "s", language, tool="test", questions=workshop.file.questions)
        for name in workshop.file.modules
    }
    pack = Pack(workshop, content, records, data)
    with recording() as made:
        pack._pdf("pack", [part for own in pack._parts().values() for part in own])
    return pack.files(), made, workshop


@pytest.fixture(scope="module")
def packs(content: CourseContent) -> dict[str, tuple[dict[str, bytes], Recording, Workshop]]:
    return {language: pack_of(content, language) for language in ("en", "hi")}


@pytest.mark.parametrize("language", ["en", "hi"])
def test_nothing_overflows(packs: dict[str, tuple[dict[str, bytes], Recording, Workshop]], language: str) -> None:
    assert faults(packs[language][1], PAGE_WIDTH, PAGE_HEIGHT) == []


@pytest.mark.parametrize("language", ["en", "hi"])
def test_the_same_file_gives_the_same_bytes(
    packs: dict[str, tuple[dict[str, bytes], Recording, Workshop]], content: CourseContent, language: str
) -> None:
    assert pack_of(content, language)[0] == packs[language][0]


def test_the_pack_has_bookmarks_and_all_single_sheets(
    packs: dict[str, tuple[dict[str, bytes], Recording, Workshop]],
) -> None:
    files = packs["en"][0]
    assert {"pack.pdf", "programme.pdf", "session-frame.pdf", "tools.pdf", "safety.pdf", "register.pdf",
            "spoken-exam.pdf", "worksheets-frame.pdf", "key-frame.pdf", "handout-frame-card.pdf",
            "handout-batch-card.pdf"} <= set(files)  # fmt: skip
    whole = PdfReader(BytesIO(files["pack.pdf"]))
    pages = sum(len(PdfReader(BytesIO(data)).pages) for name, data in files.items() if name != "pack.pdf")
    assert len(whole.pages) == pages
    tops = [entry.title for entry in whole.outline if not isinstance(entry, list)]
    assert len(tops) == len(set(tops)) == len(files) - 1 + 4, "two learners in each of four files"


@pytest.mark.parametrize("language", ["en", "hi"])
def test_session_plans_name_every_misconception_of_the_bank_and_the_safety_briefing_every_caution(
    packs: dict[str, tuple[dict[str, bytes], Recording, Workshop]], content: CourseContent, language: str
) -> None:
    _, made, workshop = packs[language]
    words = content.words[language]
    text = "".join(made.text().split())
    for name in workshop.file.modules:
        module = content.modules[name]
        for each in module.cautions:
            assert "".join(each.text[language].split()) in text
        for tool in module.tools:
            assert "".join(tool[language].split()) in text
        for question in content.questions_of(name):
            for mistake in getattr(question, "misconceptions", ()):
                told = words.say_one_of("misconception", f"{mistake}.mistake")
                assert "".join(told.split()) in text, mistake


def test_hours_follow_each_other_and_hold_every_minute_of_the_modules(content: CourseContent) -> None:
    workshop, _ = read(content)
    first, last = minutes_of(workshop.file.hours.start), minutes_of(workshop.file.hours.end)
    taught: dict[tuple[str, str], int] = {}
    for day in workshop.days:
        assert day[0].start == first
        assert day[-1].end == last
        for one, other in pairwise(day):
            assert one.end == other.start
        for session in day:
            assert session.end > session.start
            if session.module:
                key = session.module, session.kind
                taught[key] = taught.get(key, 0) + session.end - session.start
    for name in workshop.file.modules:
        minutes = content.modules[name].minutes
        assert [taught[name, kind] for kind in ("talk", "show", "do")] == [minutes.talk, minutes.show, minutes.do]


def test_a_day_too_short_is_refused_by_the_minute() -> None:
    room = capacity(2, "10:00", "16:00")
    days = programme([Block("m", "do", room)], 2, "10:00", "16:00")
    assert not any(session.kind == "build" for day in days for session in day)
    with pytest.raises(ValueError, match=r"too short by 1 minute$"):
        programme([Block("m", "do", room + 1)], 2, "10:00", "16:00")
    with pytest.raises(ValueError, match=r"too short by 2 minutes$"):
        programme([Block("m", "do", room + 2)], 2, "10:00", "16:00")


def test_the_wet_days_last_at_least_a_fortnight_after_the_last_coat(content: CourseContent) -> None:
    workshop, _ = read(content)
    start, end = wet_days(workshop.plan.work.slots)
    by_name = {slot.name: slot for slot in workshop.plan.work.slots}
    assert start == by_name["first_coat"].end + 1
    assert end - by_name["roof_pour"].end >= 14
    assert by_name["finishing_wash"].start > end


def test_a_big_group_gets_a_longer_register_and_more_tools(content: CourseContent) -> None:
    assert read(content, group=40)[0].threes == 14
    assert read(content, group=3)[0].threes == 1


def test_every_fault_of_a_file_is_told_at_once_with_its_place(content: CourseContent) -> None:
    data = b"""format: 1
name: Days
place: nowhere
dates: [2031-11-17, 2031-11-17, 2031-02-30, 7]
hours: {start: "25:00"}
group: 0
language: xx
modules: [frame, frmae, frame]
litres: 90000
handouts: [nothing]
gruop: 3
"""
    with pytest.raises(ProblemsError) as caught:
        read_workshop("w.yaml", data, content)
    found = {(problem.line, problem.code) for problem in caught.value.problems}
    assert found >= {
        (3, "unknown-place"), (4, "dates-not-in-order"), (4, "not-a-date"), (4, "wrong-type"),
        (6, "number-out-of-range"), (7, "unknown-language"), (8, "unknown-module"), (8, "listed-twice"),
        (10, "unknown-handout"), (11, "unknown-key"),
    }  # fmt: skip
    assert any(problem.line == 5 for problem in caught.value.problems)
    assert all(problem.column for problem in caught.value.problems)


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        ("questions: 6", "questions: 6\nlitres: 90000", "no-such-tank"),
        ("dates: [2031-11-17, 2031-11-18, 2031-11-19]", "dates: [2031-11-17]", "too-little-time"),
        ('end: "16:00"', 'end: "09:00"', "day-too-short"),
        ('end: "16:00"', 'end: "9:30"', "wrong-value"),
        ("name: Frame days at Lower Terrace", 'name: ""', "too-short"),
        ("name: Frame days at Lower Terrace", "name: தமிழ் நாள்", "name-not-printable"),
        ("name: Frame days at Lower Terrace", 'name: "a\\u0007b"', "name-not-printable"),
    ],
)
def test_what_can_not_be_done_is_refused(content: CourseContent, old: str, new: str, code: str) -> None:
    text = EXAMPLE.read_text("utf-8")
    assert old in text
    with pytest.raises(ProblemsError) as caught:
        read_workshop("w.yaml", text.replace(old, new).encode("utf-8"), content)
    assert [problem.code for problem in caught.value.problems] == [code]
    assert caught.value.problems[0].line


def example(content: CourseContent, name: str, language: str = "en") -> tuple[Workshop, bytes]:
    data = (EXAMPLES / name).read_text("utf-8").replace("language: en", f"language: {language}").encode("utf-8")
    return read_workshop(name, data, content), data


def sheet_text(workshop: Workshop, content: CourseContent, name: str) -> str:
    """What stands on one sheet of the pack, without spaces."""
    pack = Pack(workshop, content, {}, b"")
    with recording() as made:
        pack._pdf(name, pack._parts()[name])
    return "".join(made.text().split())


def test_there_is_an_example_of_a_taster_of_five_days_and_of_a_course_for_examiners() -> None:
    assert {"workshop-taster.yaml", "workshop-plaster.yaml", "workshop-examiners.yaml", "workshop.yaml"} <= set(
        ALL_EXAMPLES
    )


@pytest.mark.parametrize("language", ["en", "hi"])
@pytest.mark.parametrize("name", ALL_EXAMPLES)
def test_every_example_is_read_without_a_problem_and_fits_its_sheets(
    content: CourseContent, name: str, language: str
) -> None:
    workshop, data = example(content, name, language)
    pack = Pack(workshop, content, {}, data)
    with recording() as made:
        pack._pdf("pack", [part for own in pack._parts().values() for part in own])
    assert faults(made, PAGE_WIDTH, PAGE_HEIGHT) == []


@pytest.mark.parametrize("name", ALL_EXAMPLES)
def test_the_modules_of_an_example_come_with_those_that_they_need_or_after_them(
    content: CourseContent, name: str
) -> None:
    listed = example(content, name)[0].file.modules
    for place, module in enumerate(listed):
        later = set(content.modules[module].needs) & set(listed[place:])
        assert not later, f"{module} needs {later} first"


def test_five_days_end_with_the_floor_and_every_later_stop_has_one_visit(content: CourseContent) -> None:
    workshop, _ = example(content, "workshop-plaster.yaml")
    slots = {slot.name: slot for slot in workshop.plan.work.slots}
    days = [(day - workshop.begins).days + 1 for day in workshop.dates]
    assert slots["frame_and_hoops"].start == days[0]
    assert slots["floor_and_cove"].end == days[-1]
    for name in ("hold_cage", "hold_first_batch", "first_coat", "second_face"):
        assert days[0] <= slots[name].start <= days[-1], name
    pack = Pack(workshop, content, {}, b"")
    due = [
        name
        for number, day in enumerate(workshop.visits, start=1)
        for name in pack._due(number, (day - workshop.begins).days + 1)
    ]
    assert sorted(due) == sorted(name for name in HOLD_POINTS if slots[name].start > days[-1])
    assert due == ["hold_roof", "hold_curing", "hold_leak_test"]


@pytest.mark.parametrize("language", ["en", "hi"])
def test_the_visits_have_a_line_for_every_wet_day_and_what_is_looked_at(content: CourseContent, language: str) -> None:
    workshop, _ = example(content, "workshop-plaster.yaml", language)
    words, sheet = content.words[language], sheet_text(workshop, content, "visits")
    first, last = wet_days(workshop.plan.work.slots)
    for number in range(1, last + 30):
        day = workshop.begins + timedelta(days=number - 1)
        wanted = (first <= number <= last) + (day in workshop.visits) + (day in (workshop.dates[0], workshop.dates[-1]))
        assert sheet.count(day.isoformat()) == wanted, day
    wet = sum(first <= (day - workshop.begins).days + 1 <= last for day in workshop.visits)
    assert 0 < wet < len(workshop.visits)
    for look, count in (("wet_below", wet), ("closed_to_children", len(workshop.visits))):
        assert sheet.count("".join(words.say_one_of("workshop.look", look).split())) == count
    for name in ("hold_roof", "hold_curing", "hold_leak_test"):
        assert sheet.count("".join(words.say_one_of("plan.hold", name).split())) == 1


def test_the_programme_says_when_the_build_begins(content: CourseContent) -> None:
    words = content.words["en"]
    plaster, first = example(content, "workshop-plaster.yaml")[0], example(content, "workshop.yaml")[0]
    told = "".join(words.say("workshop.begins_else", date="2031-11-03").split())
    assert told in sheet_text(plaster, content, "programme")
    assert "".join(words.say("workshop.begins_first").split()) in sheet_text(first, content, "programme")


@pytest.mark.parametrize("name", ["workshop-taster.yaml", "workshop-examiners.yaml"])
def test_where_nothing_is_built_no_calendar_and_no_cutting_list_stand(content: CourseContent, name: str) -> None:
    words = content.words["en"]
    without, built = example(content, name)[0], example(content, "workshop-plaster.yaml")[0]
    for sheet, key in (
        ("programme", "workshop.after"), ("programme", "workshop.does.build"), ("tools", "plan.section.cutting"),
    ):  # fmt: skip
        told = "".join(words.say(key).split())
        assert told in sheet_text(built, content, sheet)
        assert told not in sheet_text(without, content, sheet)
    assert "".join(words.say("workshop.does.practise").split()) in sheet_text(without, content, "programme")
    assert "visits" not in Pack(without, content, {}, b"")._parts()


def test_watched_practicals_come_with_their_checklists(content: CourseContent) -> None:
    workshop, _ = example(content, "workshop-examiners.yaml")
    assert workshop.file.practicals
    for name in workshop.file.practicals:
        text = sheet_text(workshop, content, f"practical-{name}")
        for step in content.practicals[name].steps:
            assert "".join(step.text["en"].split()) in text


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        ("2031-11-24,", "2031-11-20,", "dates-not-in-order"),
        ("2032-01-13]", "2032-06-01]", "visit-after-hand-over"),
        ("2032-01-13]", "2032-02-30]", "not-a-date"),
        ("build_begins: 2031-11-03", "build_begins: 2031-11-22", "build-after-workshop"),
        ("build_begins: 2031-11-03", "build_begins: 2031-13-03", "not-a-date"),
        ("wrap-and-wet]", "wrap-and-wte]", "unknown-practical"),
        ("wrap-and-wet]", "close-a-ring]", "listed-twice"),
    ],
)
def test_visits_and_practicals_that_miss_are_refused(content: CourseContent, old: str, new: str, code: str) -> None:
    text = (EXAMPLES / "workshop-plaster.yaml").read_text("utf-8")
    assert old in text
    with pytest.raises(ProblemsError) as caught:
        read_workshop("w.yaml", text.replace(old, new).encode("utf-8"), content)
    assert [problem.code for problem in caught.value.problems] == [code]
    assert caught.value.problems[0].line


def test_visits_to_a_tank_that_nobody_builds_are_refused(content: CourseContent) -> None:
    text = (EXAMPLES / "workshop-plaster.yaml").read_text("utf-8") + "builds: false\n"
    with pytest.raises(ProblemsError) as caught:
        read_workshop("w.yaml", text.encode("utf-8"), content)
    assert [problem.code for problem in caught.value.problems] == ["nothing-is-built", "nothing-is-built"]
