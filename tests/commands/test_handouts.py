"""Handouts by the command: listed, one kind alone, all at once, and only a changed one is made again for the stick."""

from pathlib import Path

import pytest
import yaml
from pypdf import PdfReader

from generator import plans, site
from generator.commands.build import standard_sheets
from generator.commands.course import course_at
from generator.commands.main import run
from generator.commands.own_tank import OwnTank
from generator.commands.tool import ProgressLine
from generator.problems import ExitCode
from generator.sheets import handout_pdf
from generator.sheets.styles import PAGE_HEIGHT, PAGE_WIDTH
from tests.commands.course_copy import course_copy, tree
from tests.sheets.layout_checks import faults
from tests.sheets.recorder import recording


def test_one_kind_is_listed_alone(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["sheets", "--list", "--only", "handouts", "--language", "hi"]) == ExitCode.GOOD
    listed = capsys.readouterr().out
    assert "stick  इस टंकी की लकड़ी" in listed
    assert "ready-reckoner" in listed
    assert "close-a-ring" not in listed
    assert run(["sheets", "--list", "--only", "checklists"]) == ExitCode.GOOD
    assert "stick" not in capsys.readouterr().out


def test_all_of_a_kind_are_written_and_a_name_of_another_kind_is_refused(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(["sheets", "--only", "checklists", "--output", str(tmp_path)]) == ExitCode.GOOD
    assert all(name.endswith("-en.pdf") for name in tree(tmp_path))
    assert "sheets/close-a-ring-en.pdf" in tree(tmp_path)
    assert run(["sheets", "stick", "--only", "checklists", "--output", str(tmp_path)]) == ExitCode.USAGE
    assert "no sheet 'stick'" in capsys.readouterr().err


def test_the_stick_gets_every_handout_and_only_a_changed_one_is_made_again(tmp_path: Path) -> None:
    folder = course_copy(tmp_path / "course-copy")
    quiet = ProgressLine(quiet=True)
    course = course_at(folder)
    first = site.Products(tmp_path / "cache")
    prints = standard_sheets(course, "hi", first, quiet)
    assert {one.name for one in prints} >= set(course.handouts)
    path = folder / "handouts" / "curing-log.hi.md"
    path.write_text(path.read_text("utf-8").replace("पलस्तर से पहले लाकर रखें।", "पहले लाकर रखें।"), "utf-8")
    again = site.Products(tmp_path / "cache")
    standard_sheets(course_at(folder), "hi", again, quiet)
    assert again.made == ["sheets-curing-log-hi"]


def words_of(path: Path) -> str:
    return " ".join(" ".join(page.extract_text() for page in PdfReader(path).pages).split())


def test_a_handout_is_filled_for_the_tank_of_a_place_of_ones_own(tmp_path: Path) -> None:
    place = yaml.safe_load((site_root() / "course/places/hill-school.yaml").read_text("utf-8"))
    place |= {"name": "Tank by the fig tree", "id": "fig-tree"}
    place["given"] |= {"inside_diameter": 2.9, "wall_height": 1.5}
    file = tmp_path / "fig-tree.yaml"
    file.write_text(yaml.safe_dump(place), "utf-8")
    asked = ["sheets", "stick", "cutting-list", "--place", str(file), "--output", str(tmp_path)]
    assert run(asked) == ExitCode.GOOD
    assert {"sheets/stick-fig-tree-en.pdf", "sheets/cutting-list-fig-tree-en.pdf"} <= set(tree(tmp_path))
    told = words_of(tmp_path / "sheets/stick-fig-tree-en.pdf")
    given = plans.read_place(str(file), file.read_bytes())
    wish = plans.Wish(plans.litres_of_place(given), place=given, wished_hoops=plans.hoops_of_place(given))
    plan = plans.make_plan(wish)
    assert isinstance(plan, plans.Plan)
    assert "Tank by the fig tree" in told
    assert "invented" not in told
    assert f"{plan.values['hoop_count']:.0f} hoops in a wall of 1.5" in told.replace("\u00a0", " ")
    before = (tmp_path / "sheets/stick-fig-tree-en.pdf").read_bytes()
    assert run(asked) == ExitCode.GOOD
    assert (tmp_path / "sheets/stick-fig-tree-en.pdf").read_bytes() == before


def site_root() -> Path:
    return Path(__file__).parents[2]


def test_every_handout_can_be_made_for_a_tank_of_litres_in_both_languages() -> None:
    course = course_at(site_root())
    own, end = OwnTank(None, 10_000.0, None).course(course, list(course.handouts), "hi")
    assert end == "10000-litres"
    for language in course.course.languages:
        for name in course.handouts:
            with recording() as made:
                handout_pdf(name, language, own)
            assert faults(made, PAGE_WIDTH, PAGE_HEIGHT) == [], (name, language)
            assert "10,000 L" in made.text().replace("\u00a0", " "), (name, language)


def test_what_is_taken_from_another_place_is_told_on_the_sheets_that_show_it_alone() -> None:
    course = course_at(site_root())
    own, _ = OwnTank(None, 8000.0, None).course(course, list(course.handouts), "en")
    bucket, bore = "water in the bucket at its mark 10", "bore of the open outlet 32"
    for name, shown in {"batch-card": {bucket}, "first-filling-card": {bore}, "step-cards": {bucket, bore}}.items():
        for language in ("en", "hi"):
            note = own.own_notes[name, language].replace("\u00a0", " ")
            assert language != "en" or {each for each in (bucket, bore) if each in note} == shown, name
            with recording() as made:
                handout_pdf(name, language, own)
            assert "".join(note.split()) in "".join(made.text().split()), (name, language)
    assert {name for name, _ in own.own_notes} == {"batch-card", "first-filling-card", "step-cards"}
    assert own.places["own-tank"].name["en"].replace("\u00a0", " ") == "8,000 L"


def test_a_small_tank_without_angles_has_its_cutting_list_and_says_no_engineer_has_to_sign(tmp_path: Path) -> None:
    """Above the village's size the same sheet stops whoever wants to cut before an engineer signed."""
    for litres, signed in (("3000", False), ("20000", True)):
        assert run(["sheets", "cutting-list", "--litres", litres, "--output", str(tmp_path)]) == ExitCode.GOOD
        text = words_of(tmp_path / f"sheets/cutting-list-{litres}-litres-en.pdf")
        assert "Hoops: 1" in text
        assert ("STOP: a licensed engineer signs this plan before anything is bought." in text) == signed


def test_a_tank_that_the_course_does_not_plan_is_refused_in_words(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    for litres in ("5", "90000"):
        asked = ["sheets", "stick", "--litres", litres, "--output", str(tmp_path)]
        assert run(asked) == ExitCode.REFUSED
        assert "engineer" in capsys.readouterr().err
    assert tree(tmp_path) == {}
    example = str(site_root() / "docs/examples/workshop.yaml")
    assert run(["sheets", "stick", "--litres", "5000", "--workshop", example]) == ExitCode.USAGE
    assert "each of them is a tank" in capsys.readouterr().err
    assert run(["sheets", "--litres", "5000"]) == ExitCode.USAGE
    assert "by name" in capsys.readouterr().err


def test_the_sheets_of_a_workshop_are_in_its_language_and_for_its_tank(tmp_path: Path) -> None:
    text = (site_root() / "docs/examples/workshop.yaml").read_text("utf-8")
    file = tmp_path / "ours.yaml"
    file.write_text(text.replace("language: en", "language: hi") + "litres: 9000\n", "utf-8")
    assert run(["sheets", "curing-log", "--workshop", str(file), "--output", str(tmp_path)]) == ExitCode.GOOD
    assert "9,000 L" in words_of(tmp_path / "sheets/curing-log-ours-hi.pdf").replace("\u00a0", " ")


def test_a_sheet_of_a_part_that_the_tank_has_not_is_refused_alone_and_left_out_among_all(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A tank of 800 litres has no hoops, so no stick with their marks; all else it has, and without a word of them."""
    arguments = ["sheets", "--litres", "800", "--output", str(tmp_path)]
    assert run([*arguments, "stick", "--language", "hi"]) == ExitCode.REFUSED
    assert "angle_spacing" not in capsys.readouterr().err
    assert not (tmp_path / "sheets").exists()
    assert run([*arguments, "--only", "handouts"]) == ExitCode.GOOD
    made = [path.name for path in (tmp_path / "sheets").iterdir()]
    assert not any(name.startswith(("stick", "frame-card")) for name in made)
    assert "is not made for this tank" in capsys.readouterr().err
    for name in ("cover-gauge", "sample-panel", "site-checklist", "step-cards", "cutting-list", "mesh-layout"):
        assert "hoop" not in words_of(tmp_path / f"sheets/{name}-800-litres-en.pdf").lower(), name
    gauge = words_of(tmp_path / "sheets/cover-gauge-800-litres-en.pdf")
    assert "measure the check line" in gauge
    assert "the two marks" in gauge
    cards = words_of(tmp_path / "sheets/step-cards-800-litres-en.pdf")
    headings = ("1. Ground", "2. Base", "3. Foot of the wall", "4. Mesh", "10. Roof", "12. Water to drink")
    assert all(heading in cards for heading in headings)


def test_a_tank_with_hoops_and_no_angles_has_every_sheet_in_both_languages() -> None:
    course = course_at(site_root())
    names = ["stick", "frame-card", "step-cards", "site-checklist"]
    own, _ = OwnTank(None, 3000.0, None).course(course, names, "en")
    for language, angle, bars in (("en", "angle", "30 upright bars"), ("hi", "एंगल", "खड़े सरिये 30")):
        for name in names:
            with recording() as made:
                handout_pdf(name, language, own)
            assert faults(made, PAGE_WIDTH, PAGE_HEIGHT) == [], (name, language)
            text = made.text().replace("\u00a0", " ")
            if name != "frame-card":  # whose foot names the page of the course, "angles, bars and hoops"
                assert angle not in text.lower(), (name, language)
            if name in ("stick", "step-cards"):
                assert bars in text, (name, language)
