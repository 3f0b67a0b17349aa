"""The sheet maker: its sets are those of `sheets --for`, its files are what `mark` reads, its marks are Python's."""

from __future__ import annotations

import json
from collections.abc import Callable, Sequence
from importlib.resources import files
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page, expect
from pypdf import PdfReader

from generator import VERSION
from generator.exercises import (
    NumberItem,
    Person,
    Record,
    SpotItem,
    from_json,
    make_set,
    mark_set,
    marker_script,
    read_answers,
    read_class_list,
    to_json,
)
from generator.exercises.set_data import printed_set_script, set_data
from generator.figures import hot_areas
from generator.formula import Stream
from generator.problems import Column, Problem, ProblemsError, read_csv
from tests.browser.stick_page import LANGUAGES, address, say, strict_page
from tests.browser.test_marker_twin import same
from tests.exercises import small
from tests.exercises.small_course import course as small_course
from tests.exercises.test_printed_set import right_answers
from tests.site.course_stick import Built, built_once

pytestmark = pytest.mark.browser

CLASSES: dict[str, tuple[Person, ...]] = {
    "plain": (Person("Asha"), Person("Bir"), Person("Chandra Devi")),
    "scripts": (Person("सीता राम", "hi"), Person("Ñandú Ωmega"), Person("李雷", "hi"), Person("𐐀𐐨 x"), Person("=1+1")),
    "hostile": (
        Person("<script>alert(1)</script>"),
        Person("__proto__"),
        Person('"; drop'),
        Person("constructor", "hi"),
    ),
}


def run(page: Page, expression: str, data: object) -> Any:
    """What an expression over `data` gives in the page; JSON text travels far quicker than nested values."""
    return json.loads(
        page.evaluate(
            "text => { const data = JSON.parse(text), S = Tankschool.printedSet; return JSON.stringify("
            + expression
            + "); }",
            json.dumps(data),
        )
    )


MADE = """(() => { const maker = S.maker(set, data.people, data.wish); while (maker.step(7)) {}
return S.toJson(maker.record()); })()"""


def opened(page: Page, folder: Path, scripts: Sequence[str], data: object) -> Page:
    html = "".join(f"<script>{script}</script>\n" for script in [*scripts, f"const set = {json.dumps(data)};"])
    file = folder / "set.html"
    file.write_text(f'<!doctype html><meta charset="utf-8"><title>set</title>\n{html}', encoding="utf-8")
    page.goto(file.as_uri())
    return page


def formula_script() -> str:
    return files("generator.formula").joinpath("formula.js").read_text(encoding="utf-8")


@pytest.fixture
def pens(kept_page: Page, tmp_path: Path) -> Page:
    """A page with every kind of question, on the small book."""
    course = small_course((*small.QUESTIONS, small.DEALT))
    course.modules = {"pens": SimpleNamespace(id="pens", retired=False)}
    scripts = [
        formula_script(),
        small.BOOK.javascript(sorted(small.BOOK.quantities)),
        marker_script(),
        printed_set_script(),
    ]
    return opened(kept_page, tmp_path, scripts, set_data(course, "en", "test 1", small.BOOK))


@pytest.mark.parametrize("questions", [0, 1, 4])
@pytest.mark.parametrize("language", ["en", "hi"])
@pytest.mark.parametrize("name", list(CLASSES))
def test_every_kind_of_item_comes_out_to_the_byte_as_in_python(
    pens: Page, name: str, language: str, questions: int
) -> None:
    people = CLASSES[name]
    record = make_set(
        small_course((*small.QUESTIONS, small.DEALT)), "pens", people, f"spring {name}", language, tool="test 1",
        questions=questions, book=small.BOOK,
    )  # fmt: skip
    wish = {
        "module": "pens",
        "competencies": [],
        "questions": questions,
        "language": language,
        "seed": f"spring {name}",
    }
    data = {"people": [{"name": one.name, "language": one.language} for one in people], "wish": wish}
    text = run(pens, MADE, data)
    assert json.loads(text) == json.loads(to_json(record))
    assert text.encode("utf-8") == to_json(record)
    assert run(pens, "S.setId(data)", text) == record.set_id


def test_a_chosen_competency_asks_the_same_there(pens: Page) -> None:
    skills = sorted({question.competency for question in small.QUESTIONS})
    for name in skills:
        record = make_set(
            small_course((*small.QUESTIONS, small.DEALT)),
            "pens",
            CLASSES["plain"],
            "s",
            "en",
            tool="test 1",
            competencies=[name],
            book=small.BOOK,
        )
        wish = {"module": "pens", "competencies": [name], "questions": 0, "language": "en", "seed": "s"}
        people = [{"name": one.name, "language": one.language} for one in CLASSES["plain"]]
        text = run(pens, MADE, {"people": people, "wish": wish})
        assert text.encode("utf-8") == to_json(record)
        assert from_json("record.json", text.encode("utf-8")) == record


# ------------------------------------------------------------------------------------------- what is pasted

SIGNS = [
    *'abz ,;\t\n\n"',
    "name",
    "language",
    "hi",
    "en",
    "\r\n",
    "é",
    "ß",
    "İ",
    "ﬀ",
    "७",
    "²",
    "𝟙",
    "\ufeff",
    "\x00",
    "\u2028",
    "�",
    "😀",
    "॥",
]
SIGNS += [
    "name,language\n",
    "Asha",
    "asha ",
    "7",
    "=1",
    "x" * 91,
    '""',
    '"a, b"',
    "\u00a0",
    "\u0085",
    "NAME;LANGUAGE\n",
]


def told(found: Callable[[], object]) -> list[list[object]]:
    try:
        found()
    except ProblemsError as error:
        return [[one.line, one.column, one.code] for one in error.problems]
    return []


def placed(problems: Sequence[Problem]) -> list[list[object]]:
    return [[one.line, one.column, one.code] for one in problems]


def test_six_thousand_pasted_class_lists_are_read_alike(pens: Page) -> None:
    stream = Stream("pasted lists")
    texts = ["".join(SIGNS[stream.below(len(SIGNS))] for _ in range(stream.below(14))) for _ in range(3000)]
    texts += [
        "name,language\n" + "".join(SIGNS[stream.below(len(SIGNS))] for _ in range(stream.below(14)))
        for _ in range(3000)
    ]
    texts += ["name\n" + "\n".join(f"Person {n}" for n in range(2000)), "name\n" + "7\n" * 300, "x\n" + "y\n" * 99]
    texts += [
        ",".join("abc" for _ in range(200)),
        "name\n" + "a,b\n" * 80,
        "name\n\n\n",
        "",
        "%PDF-1.4",
        "name,name\nA,B",
    ]
    ours: list[object] = []
    for text in texts:
        people: list[object] | None = None
        try:
            found = read_class_list("x", text.encode("utf-8"), ["en", "hi"])
            people = [{"name": one.name, "language": one.language} for one in found]
            problems: list[list[object]] = []
        except ProblemsError as error:
            problems = placed(error.problems)
        ours.append([people, problems])
    theirs = run(
        pens,
        """data.map(text => { const found = S.readClassList(text, ["en", "hi"]);
        return [found.people || null, (found.problems || []).map(one => [one.line, one.column, one.code])]; })""",
        texts,
    )
    assert [row for row in zip(texts, ours, theirs, strict=True) if row[1] != row[2]][:3] == []
    assert sum(row[0] is not None for row in ours) > 100  # type: ignore[index]
    codes = {problem[2] for row in ours for problem in row[1]}  # type: ignore[index]
    assert codes >= {
        "duplicate-name",
        "name-is-number",
        "name-too-long",
        "unknown-language",
        "open-quote",
        "lost-letter",
    }
    assert codes >= {"too-many-cells", "unknown-column", "missing-column", "text-behind-quote", "too-many-problems"}


def test_other_tables_are_read_alike(pens: Page) -> None:
    stream = Stream("pasted tables")
    signs = [
        *'ab12 ,;\t\n\n"',
        "learner,question,answer\n",
        "learner;answer;question\n",
        "1,2,3\n",
        "x",
        "1;2;3\n",
        '"1,5"',
    ]
    columns = [Column("learner"), Column("question"), Column("answer", filled=False)]
    shape = [{"name": one.name, "required": one.required, "filled": one.filled} for one in columns]
    texts = ["".join(signs[stream.below(len(signs))] for _ in range(stream.below(12))) for _ in range(4000)]
    ours: list[object] = []
    for text in texts:
        try:
            ours.append([[one.line, dict(one.cells)] for one in read_csv("x", text.encode(), columns)])
        except ProblemsError as error:
            ours.append(placed(error.problems))
    theirs = run(
        pens,
        """data[0].map(text => { const found = S.readTable(text, data[1]);
        return found.rows ? found.rows.map(row => [row.line, row.cells])
          : found.problems.map(one => [one.line, one.column, one.code]); })""",
        [texts, shape],
    )
    assert [row for row in zip(texts, ours, theirs, strict=True) if row[1] != row[2]][:3] == []


def test_megabytes_are_refused_or_read_without_delay(pens: Page) -> None:
    heavy = ["x" * 3_000_000, "name\n" + '"' * 900_000, "name" + "," * 900_000, "name\n" + " " * 900_000 + "a",
             "\n" * 900_000, "name\n" + "=cmd|' /C calc'!A0\n" * 30_000]  # fmt: skip
    took = pens.evaluate(
        """texts => { const start = performance.now();
        texts.forEach(text => Tankschool.printedSet.readClassList(text, ["en"]));
        return performance.now() - start; }""",
        heavy,
    )
    assert took < 20_000  # milliseconds for all six: a page that hangs would take minutes


# --------------------------------------------------------------------------------------------------- marking


def test_the_record_is_read_and_marked_as_python_reads_and_marks_it(pens: Page) -> None:
    course = small_course()
    record = make_set(course, "pens", CLASSES["plain"], "m", "en", tool="test 1", book=small.BOOK)
    text = to_json(record).decode("utf-8")
    right = right_answers(record)
    stream = Stream("typed answers")
    typed = {place: ("", answer, "7", "A", "1C 2A 3B", answer[:1])[stream.below(6)] for place, answer in right.items()}
    rows = ["learner,question,answer"]
    rows += [f'{number},{label},"{answer.replace(chr(34), chr(34) * 2)}"' for (number, label), answer in typed.items()]
    table = "\n".join(rows)
    for book, formulas in ((small.BOOK, record.formulas), (None, "0" * 64)):
        kept = record.model_copy(update={"formulas": formulas})
        ours = mark_set(kept, read_answers("x", table.encode("utf-8"), kept), small.BOOK)
        assert ours.same_formulas is (book is not None)
        theirs = run(
            pens,
            """(() => { const record = S.readRecord(data[0]).record; record.formulas = data[2];
            const found = S.markSet(set, record, S.readAnswers(data[1], record).answers);
            return [found.same_formulas, found.learners.map(one => [one.points, one.most, one.marks.map(row =>
              [row.label, row.mark.verdict, row.mark.misconceptions, row.mark.points])])]; })()""",
            [text, table, formulas],
        )
        assert theirs == [
            ours.same_formulas,
            [
                [
                    one.points,
                    one.most,
                    [[label, str(m.verdict), list(m.misconceptions), m.points] for label, m in one.marks],
                ]
                for one in ours.learners
            ],
        ]


def test_answers_to_nobody_and_to_nothing_are_told_at_their_places(pens: Page) -> None:
    record = make_set(small_course(), "pens", CLASSES["plain"], "m", "en", tool="test 1", book=small.BOOK)
    tables = [
        "learner,question,answer\nAsha,1,5\nasha ,1,6\nNobody,1,5\n2,99,5\n३,१,5\n",
        "learner;question;answer\n1;a-new-pen/round;5\n1;wires;7\n1;;8\n;2;3\n",
        "learner,question\n1,1\n", "", "learner,question,answer\n",
    ]  # fmt: skip
    ours = [told(lambda text=text: read_answers("x", text.encode("utf-8"), record)) for text in tables]  # type: ignore[misc]
    theirs = run(
        pens,
        """data[0].map(text => (S.readAnswers(text, S.readRecord(data[1]).record).problems || [])
        .map(one => [one.line, one.column, one.code]))""",
        [tables, to_json(record).decode("utf-8")],
    )
    assert theirs == ours
    assert any(problem[2] == "two-answers" for problem in ours[0])


DAMAGE: dict[str, Callable[[dict[str, Any]], object]] = {
    "newer": lambda data: data.update(format=2),
    "no learners": lambda data: data.pop("learners"),
    "extra": lambda data: data.update(extra=1),
    "order": lambda data: next(i for i in data["learners"][0]["items"] if i["kind"] == "order")["order"].append(9),
    "kind": lambda data: data["learners"][0]["items"][0].update(kind="poem"),
    "text": lambda data: data["learners"][0]["items"][0].update(text=7),
    "key": lambda data: data["learners"][0]["items"][0].update(key="7"),
    "right": lambda data: next(i for i in data["learners"][0]["items"] if i["kind"] == "choice").update(right=[99]),
    "number": lambda data: data["learners"][0].update(number=0),
    "no damage": lambda data: None,
}


@pytest.mark.parametrize("name", list(DAMAGE))
def test_a_damaged_record_is_refused_where_python_refuses_it(pens: Page, name: str) -> None:
    record = make_set(small_course(), "pens", CLASSES["plain"], "m", "en", tool="test 1", book=small.BOOK)
    data = json.loads(to_json(record))
    DAMAGE[name](data)
    text = json.dumps(data)
    ours = told(lambda: from_json("x", text.encode("utf-8")))
    theirs = run(pens, "(S.readRecord(data).problems || []).map(one => one.code)", text)
    assert {problem[2] for problem in ours} == set(theirs)
    assert bool(theirs) is (name != "no damage")


@pytest.mark.parametrize(
    "text", ["", "{", "[]", "7", "null", "<script>", '{"format": 1}', '{"__proto__": {}}', "[" * 5000]
)
def test_no_junk_is_taken_for_a_record(pens: Page, text: str) -> None:
    assert run(pens, "(S.readRecord(data).problems || []).length", text) > 0


# -------------------------------------------------------------------------------------------------- the page

AXE = {"preload": False}


@pytest.fixture(scope="module")
def built() -> Built:
    return built_once()


def make_sheets(page: Page, built: Built, names: str, questions: str = "0", language: str = "en") -> None:
    """Type a class list and a count, and make the sheets."""
    page.locator("[id$=ts-sheets-names]").fill(names)
    page.locator("[id$=ts-sheets-count]").fill(questions)
    page.locator("[id$=ts-sheets-seed]").fill("monsoon")
    page.get_by_role("button", name=say(built, language, "page.sheets.make"), exact=True).click()


@pytest.mark.parametrize(
    ("language", "path"), [("en", "site/en/sheet-maker.html"), ("hi", "phone/tankschool-hi.html#sheet-maker")]
)
def test_the_course_gives_the_sets_of_the_command_and_a_record_that_it_marks(
    built: Built, browser: Browser, language: str, path: str, tmp_path: Path
) -> None:
    names = 'name;language\nAsha;\n\nसीता राम;hi\n"Bir; of the ridge";en\n'
    people = read_class_list("names.csv", names.encode("utf-8"), built.content.course.languages)
    with strict_page(browser) as page:
        page.goto(address(built, path))
        make_sheets(page, built, names, language=language)
        expect(page.locator(".ts-worksheet:not(.ts-key)")).to_have_count(3)
        with page.expect_download() as download:
            page.get_by_role("button", name=say(built, language, "page.sheets.save_record")).click()
        file = tmp_path / "record.json"
        download.value.save_as(file)
        record = from_json("record.json", file.read_bytes())
        right = make_set(built.content, "frame", people, "monsoon", language, tool=f"tankschool {VERSION}")
        assert any(isinstance(item, SpotItem) for _, item, _ in record.learners[0].labelled())
        assert same(record.model_dump(mode="json"), right.model_dump(mode="json"))
        assert to_json(record) == file.read_bytes()
        assert record.set_id in download.value.suggested_filename
        # what stands on the first sheet and its key is what the record holds
        sheet = page.locator(".ts-worksheet").first
        for label, item, _ in record.learners[0].labelled():
            row = sheet.locator(".ts-q").nth(int(label) - 1)
            expect(row).to_contain_text(item.text.split("\n")[0])
            if isinstance(item, SpotItem):  # each place of the drawing has this learner's letter beside it
                letters = {area.name: area.letter for area in item.areas}
                beside = row.locator(".fig-disc text").all_text_contents()
                assert beside == [letters[name] for name in hot_areas()[item.figure].values()]
            if isinstance(item, NumberItem) and item.unit and not item.units:
                unit = built.content.words[record.learners[0].language].say_one_of("unit", item.unit)
                expect(row.locator(".ts-q-line").last).to_contain_text(unit)
        key = page.locator(".ts-key").first
        first = record.learners[0].items[0]
        assert isinstance(first, NumberItem)
        shown = built.content.words[language].with_unit(first.shown_key, first.unit)
        expect(key.locator(".ts-q strong").first).to_have_text(shown)
        # typed answers are marked as `mark` marks them
        rows = [f'{number},{label},"{text}"' for (number, label), text in typed_right(record).items()]
        rows[0] = rows[0].rpartition(",")[0] + ",0.123"
        table = "learner,question,answer\n" + "\n".join(rows)
        page.locator("[id$=ts-sheets-typed]").fill(table)
        page.get_by_role("button", name=say(built, language, "page.sheets.mark"), exact=True).click()
        marks = mark_set(record, read_answers("a.csv", table.encode("utf-8"), record))
        assert marks.same_formulas
        for place, learner in enumerate(marks.learners):
            cells = page.locator(".ts-marks tbody").first.locator("tr").nth(place)
            expect(cells).to_contain_text(learner.learner.name)
            expect(cells).to_contain_text(
                say(built, language, "page.sheets.of", have=learner.points, most=learner.most)
            )
        assert page.locator(".ts-marks .ts-caution").count() == 0


def typed_right(record: Record) -> dict[tuple[int, str], str]:
    """Right answers to the items that can be written without a letter."""
    return {
        (learner.number, label): f"{item.shown_key} {item.units[0]}" if item.units else item.shown_key
        for learner in record.learners
        for label, item, _ in learner.labelled()
        if isinstance(item, NumberItem) and not item.steps
    }


def test_problems_are_told_by_line_and_nothing_is_made(built: Built, browser: Browser) -> None:
    with strict_page(browser) as page:
        page.goto(address(built, "site/en/sheet-maker.html"))
        make_sheets(page, built, "name,language\nAsha\nAsha,xx\n7\n")
        expect(page.locator(".ts-caution li")).to_have_count(3)
        expect(page.locator(".ts-caution li").first).to_contain_text("Line 3")
        assert page.locator(".ts-worksheet").count() == 0
        for text in ("", "   ", "x" * 1_200_000, "\ufffdname\nA", "names\nA"):
            make_sheets(page, built, text)
            assert page.locator(".ts-worksheet").count() == 0
        for count in ("-1", "1.5", "many", "", "501"):
            make_sheets(page, built, "name\nAsha", count)
            assert page.locator(".ts-worksheet").count() == 0, count


def test_nothing_that_is_pasted_is_run(built: Built, browser: Browser) -> None:
    """A name, an answer and a record full of markup are shown as they are; the strict page would hear anything else."""
    name = "<img src=x onerror=console.log(1)>"
    with strict_page(browser) as page:
        page.goto(address(built, "site/en/sheet-maker.html"))
        make_sheets(page, built, f'name\n{name}\n"=HYPERLINK(""http://x"")"\n', "2")
        expect(page.locator(".ts-worksheet h3").first).to_have_text(name)
        page.locator("[id$=ts-sheets-typed]").fill(
            f"learner,question,answer\n{name},1,<script>console.log(2)</script>\n"
        )
        page.get_by_role("button", name=say(built, "en", "page.sheets.mark"), exact=True).click()
        expect(page.locator(".ts-marks")).to_contain_text(name)
        assert page.locator(".ts-sheets img").count() == 0
        assert page.locator(".ts-sheets .ts-body script").count() == 0


def test_a_saved_record_is_opened_again_and_junk_is_not(built: Built, browser: Browser, tmp_path: Path) -> None:
    record = make_set(built.content, "frame", [Person("Asha")], "s", "en", tool="test", questions=2)
    good, junk = tmp_path / "good.json", tmp_path / "junk.json"
    good.write_bytes(to_json(record))
    junk.write_text('{"format": 1, "learners": [<script>]}')
    with strict_page(browser) as page:
        page.goto(address(built, "site/en/sheet-maker.html"))
        page.locator(".ts-sheets input[type=file]").last.set_input_files(junk)
        expect(page.locator(".ts-caution li")).to_have_count(1)
        page.locator(".ts-sheets input[type=file]").last.set_input_files(good)
        expect(page.locator(".ts-set h2")).to_contain_text(record.set_id)
        expect(page.locator(".ts-worksheet:not(.ts-key) .ts-q")).to_have_count(2)


def test_a_large_class_is_made_without_stopping_the_page_and_printed_in_parts(built: Built, browser: Browser) -> None:
    names = "name\n" + "\n".join(f"Person {number}" for number in range(2000))
    with strict_page(browser) as page:
        page.goto(address(built, "site/en/sheet-maker.html"))
        make_sheets(page, built, names, "2")
        expect(page.locator(".ts-set h2")).to_be_visible(timeout=120_000)
        expect(page.locator(".ts-worksheet:not(.ts-key)")).to_have_count(25)
        page.locator("[id$=ts-sheets-which]").select_option(index=79)
        expect(page.locator(".ts-worksheet h3").first).to_have_text("Person 1975")


def test_print_gives_each_learner_a_page_of_their_own_and_keys_after_them(
    built: Built, browser: Browser, tmp_path: Path
) -> None:
    with strict_page(browser) as page:
        for path in ("site/en/sheet-maker.html", "phone/tankschool-en.html#sheet-maker"):
            page.goto("about:blank")
            page.goto(address(built, path))
            make_sheets(page, built, "name\nAsha\nBir\n", "2")
            expect(page.locator(".ts-worksheet")).to_have_count(4)
            file = tmp_path / "sheets.pdf"
            file.write_bytes(page.pdf(format="A4"))
            texts = [one.extract_text() for one in PdfReader(file).pages]
            starts = [place for name in ("Asha", "Bir") for place, text in enumerate(texts) if name in text]
            assert len(texts) == 4
            assert starts == [0, 2, 1, 3]
            assert all("Your working" in text or "Write its letter" in text for text in texts[:2])
            assert not any(say(built, "en", "page.sheets.names") in text for text in texts)


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("width", [360, 1280])
def test_the_sheet_maker_has_no_known_barrier_and_needs_no_mouse(
    built: Built, browser: Browser, language: str, width: int
) -> None:
    with strict_page(browser, viewport={"width": width, "height": 900}) as page:
        page.goto(address(built, f"site/{language}/sheet-maker.html"))
        page.locator("[id$=ts-sheets-names]").focus()
        page.keyboard.insert_text("name,language\nAsha\n")
        page.locator("[id$=ts-sheets-count]").focus()
        page.keyboard.press("Control+A")
        page.keyboard.insert_text("2")
        button = page.get_by_role("button", name=say(built, language, "page.sheets.make"), exact=True)
        for _ in range(8):
            if button.evaluate("one => one === document.activeElement"):
                break
            page.keyboard.press("Tab")
        page.keyboard.press("Enter")
        expect(page.locator(".ts-set h2")).to_be_focused()
        page.locator("[id$=ts-sheets-typed]").fill("learner,question,answer\nAsha,1,99\n")
        page.get_by_role("button", name=say(built, language, "page.sheets.mark"), exact=True).click()
        page.evaluate("document.querySelectorAll('details').forEach(one => { one.open = true; })")
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        found = Axe().run(page, options=AXE)
        assert found.violations_count == 0, found.generate_report()
