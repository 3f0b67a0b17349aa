"""What only handouts may ask for, and what is said about a slip in it; a new sheet needs two texts and no Python."""

from __future__ import annotations

import dataclasses
from pathlib import Path

import pytest

from generator.curriculum import (
    CardBlock,
    CourseContent,
    FigureBlock,
    LinesBlock,
    LogBlock,
    Prose,
    RulerBlock,
    TableBlock,
    at_tank,
    load,
)
from generator.curriculum.calls import IN_TEXTS, MOST_ROWS, SHEET_BLOCKS, Call, Fault, calls
from generator.plans import Plan, Wish, drawing_values, make_plan
from generator.sheets import handout_pdf
from tests.commands.course_copy import course_copy

SHEET = """\
format: 1
id: goat-watch
place: hill-school
numbers: plan
title: {en: Goat watch, hi: बकरी की निगरानी}
template: goat-watch
logs:
  goats:
  - title: {en: No., hi: नं.}
    counts: true
  - title: {en: Which goat, hi: कौन बकरी}
    width: 3
"""
TEXT = """\
Water for them: {{ value("tank_litres") }}.

{{ table("hold_points") }}

{{ log("goats", rows=4) }}

{{ lines(2) }}

{{ ruler("ring") }}

{{ card }}

### One

{{ figure("manhole") }}

{{ card }}

### Two

{{ fault("thin-cover") }}
"""


def with_sheet(folder: Path, sheet: str = SHEET, english: str = TEXT, hindi: str = TEXT) -> Path:
    """A copy of the course with one more sheet."""
    course_copy(folder)
    for name, text in (("yaml", sheet), ("en.md", english), ("hi.md", hindi)):
        (folder / "handouts" / f"goat-watch.{name}").write_text(text, "utf-8")
    return folder


def problems(folder: Path, sheet: str = SHEET, english: str = TEXT, hindi: str | None = None) -> list[str]:
    found = load(with_sheet(folder, sheet, english, english if hindi is None else hindi)).problems
    return [str(problem) for problem in found if "goat-watch" in problem.file]


def good(folder: Path) -> CourseContent:
    found = load(with_sheet(folder))
    assert found.content is not None, found.problems
    return found.content


def test_a_new_sheet_needs_no_python(tmp_path: Path) -> None:
    content = good(tmp_path)
    blocks = content.handout_texts["goat-watch", "en"]
    assert TableBlock("hold_points", "hill-school") in blocks
    assert LogBlock("goats", 4) in blocks
    assert LinesBlock(2) in blocks
    assert RulerBlock("ring", "hill-school") in blocks
    assert blocks.count(CardBlock()) == 2
    for language in ("en", "hi"):
        assert handout_pdf("goat-watch", language, content).startswith(b"%PDF")


def test_its_numbers_are_those_of_the_plan(tmp_path: Path) -> None:
    content = good(tmp_path)
    plan = content.plan("hill-school")
    assert isinstance(plan, Plan)
    assert content.numbers("goat-watch", "hill-school") == drawing_values(plan)
    assert content.numbers("frame-card", "hill-school") == content.values("hill-school")
    assert content.numbers("goat-watch", "hill-school")["hoop_count"] == plan.wall.hoops.count  # type: ignore[union-attr]


def test_a_sheet_rests_on_its_own_files_and_those_that_all_share(tmp_path: Path) -> None:
    content = good(tmp_path)
    files = set(content.sources_of_handout("goat-watch"))
    assert {"handouts/goat-watch.yaml", "handouts/goat-watch.en.md", "course/places/hill-school.yaml"} <= files
    assert not [name for name in files if "batch-card" in name or name.startswith("quizzes/")]
    assert not [name for name in content.sources_of("frame") if name.startswith("handouts/")]


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ('{{ table("cuting") }}', "unknown section 'cuting' (fix: did you mean 'cutting'?)"),
        ('{{ table("cutting", place="nowhere") }}', "unknown place 'nowhere'"),
        ('{{ log("gots", rows=3) }}', "unknown log 'gots' (fix: did you mean 'goats'?)"),
        ('{{ log("goats") }}', "'log' takes one name in quotes and its rows"),
        ('{{ log("goats", rows=0) }}', f'write {{{{ log("...", rows=20) }}}}, at most {MOST_ROWS}'),
        ('{{ log("goats", rows="3") }}', f'write {{{{ log("...", rows=20) }}}}, at most {MOST_ROWS}'),
        ('{{ log("goats", rows="curing_dys") }}', "unknown quantity or given 'curing_dys' (fix: did you mean"),
        ('{{ log("goats", rows="tank_litres") }}', "'tank_litres' asks for"),
        ("{{ lines(500) }}", f"write {{{{ lines(6) }}}}, at most {MOST_ROWS}"),
        ('{{ lines("6") }}', "write {{ lines(6) }}"),
        ('{{ ruler("hops") }}', "unknown ruler 'hops' (fix: did you mean 'hoops'?)"),
        ('{{ fault("thin-cove") }}', "unknown fault 'thin-cove' (fix: did you mean 'thin-cover'?)"),
        ('{{ card("one") }}', "write {{ card }}"),
        ('{{ caution("wet-cemen") }}', "unknown caution 'wet-cemen' (fix: did you mean 'wet-cement'?)"),
        ('a {{ table("cutting") }}', "'table' stands among words"),
        (
            'Tie them. {{ only("hoop_cont") }}',
            "unknown quantity or given 'hoop_cont' (fix: did you mean 'hoop_count'?)",
        ),
        ('Tie them. {{ without("hoop_cont") }}', "did you mean 'hoop_count'?"),
        ('Tie them. {{ only("hoop_count", place="hill-school") }}', "'only' takes no 'place'"),
        ('{{ value("hoop_cont") }} of none. {{ without("hoop_count") }}', "did you mean 'hoop_count'?"),
        ('{{ figure("manhol") }} {{ without("hoop_count") }}', "unknown figure 'manhol'"),
    ],
)
def test_a_slip_is_told_with_its_place(tmp_path: Path, line: str, told: str) -> None:
    found = problems(tmp_path, english=f"Goats.\n\n{line}\n")
    column = 1 + line.index("{{")
    assert [text for text in found if text.startswith(f"handouts/goat-watch.en.md:3:{column}: ") and told in text], (
        found
    )


MARKED = """\
## 1. Ring

- Tie it.
  Angles. {{ only("angle_count") }}
  {{ value("bar_count") }} bars. {{ only("bar_count") }} {{ without("angle_count") }}
  Bare mesh. {{ without("bar_count") }}
  {{ only("hoop_count") }} Hoops.

{{ figure("manhole") }} {{ without("hoop_count") }}

## 2. Hoops {{ only("hoop_count") }}

### Laps

{{ lines(1) }}

## 3. Mesh

{{ card }} {{ without("hoop_count") }}

## 4. Small

{{ card }}

## 5. Large
"""


@pytest.mark.parametrize(
    ("litres", "kept", "blocks", "headings"),
    [
        (9000.0, ["Angles.", "Hoops."], [LinesBlock, CardBlock], ["1. Ring", "2. Hoops", "3. Mesh", "4. Large"]),
        (3000.0, ["30 bars.", "Hoops."], [LinesBlock, CardBlock], ["1. Ring", "2. Hoops", "3. Mesh", "4. Large"]),
        (1000.0, ["Bare mesh."], [FigureBlock, CardBlock, CardBlock], ["1. Ring", "2. Mesh", "3. Small", "4. Large"]),
    ],
)
def test_lines_sections_and_cards_of_parts_that_a_tank_has_not_are_left_out(
    tmp_path: Path, litres: float, kept: list[str], blocks: list[type], headings: list[str]
) -> None:
    """What is left keeps no mark, and its headings are numbered without a gap."""
    found = load(with_sheet(tmp_path, english=MARKED, hindi=MARKED))
    assert found.content is not None, found.problems
    plan = make_plan(Wish(litres))
    assert isinstance(plan, Plan)
    own = at_tank(found.content, plan, {"en": "Ours", "hi": "हमारी"}, ["goat-watch"])
    text = own.handout_texts["goat-watch", "en"]
    prose = "".join(block.markdown for block in text if isinstance(block, Prose)).replace("\u00a0", " ")
    lines = [line.strip() for line in prose.splitlines() if line.startswith("  ")]
    assert lines == kept
    assert [line[3:] for line in prose.splitlines() if line.startswith("## ")] == headings
    assert [type(block) for block in text if not isinstance(block, Prose)] == blocks
    assert "{{" not in prose


def test_a_table_needs_the_numbers_of_a_plan(tmp_path: Path) -> None:
    found = problems(tmp_path, SHEET.replace("numbers: plan\n", ""), '{{ table("mesh") }}\n')
    assert found[0].startswith("handouts/goat-watch.en.md:1:1: this handout has the place's numbers")
    assert "write 'numbers: plan'" in found[0]


def test_a_place_that_cannot_be_planned_is_told_at_its_line(tmp_path: Path) -> None:
    folder = with_sheet(tmp_path)
    path = folder / "course" / "places" / "hill-school.yaml"
    path.write_text(path.read_text("utf-8").replace("inside_diameter: 3.40", "inside_diameter: 9.00"), "utf-8")
    found = [str(problem) for problem in load(folder).problems if "goat-watch" in problem.file]
    assert any(
        text.startswith("handouts/goat-watch.yaml:3:8: the tank of 'hill-school' can't be planned") for text in found
    )


def test_both_languages_ask_for_the_same(tmp_path: Path) -> None:
    found = problems(tmp_path, hindi=TEXT.replace("rows=4", "rows=5").replace("{{ lines(2) }}", ""))
    assert any('{{ log("goats", rows=4) }} stands in handouts/goat-watch.en.md and not here' in text for text in found)
    assert any("{{ lines(2) }} stands in" in text for text in found)
    assert any('{{ log("goats", rows=5) }} stands only in this language' in text for text in found)


@pytest.mark.parametrize(
    "call",
    ['{{ only("hoop_count") }}', '{{ table("mesh") }}', "{{ lines(3) }}", "{{ card }}", '{{ log("a", rows=2) }}'],
)
def test_what_only_paper_has_is_refused_elsewhere(call: str) -> None:
    (found,) = calls(call, IN_TEXTS)
    assert isinstance(found, Fault)


def test_a_log_has_a_row_for_each_day_that_the_tank_of_its_place_needs(tmp_path: Path) -> None:
    text = TEXT.replace("rows=4", 'rows="curing_days"')
    for place in ("hill-school", "lower-terrace-herders"):
        folder = with_sheet(tmp_path / place, SHEET.replace("hill-school", place), text, text)
        content = load(folder).content
        assert content is not None
        days = content.numbers("goat-watch", place)["curing_days"]
        assert LogBlock("goats", round(days)) in content.handout_texts["goat-watch", "hi"]


def test_each_call_is_read() -> None:
    text = '{{ table("mesh", place="a-b") }} {{ log("x", rows=7) }} {{ lines(3) }} {{ card }} {{ ruler("ring") }}'
    found = [call for call in calls(text, SHEET_BLOCKS) if isinstance(call, Call)]
    assert [(*dataclasses.astuple(call)[:3], call.rows) for call in found] == [
        ("table", "mesh", "a-b", 0),
        ("log", "x", None, 7),
        ("lines", "", None, 3),
        ("card", "", None, 0),
        ("ruler", "ring", None, 0),
    ]
