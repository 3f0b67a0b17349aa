"""`plan`: one way in, every option with its range, text and data, exit codes, nothing printed outside its limits."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from generator.commands.main import run

SMALL_COURSE = True
Run = Callable[..., tuple[int, str, str]]


@pytest.fixture
def plan(capsys: pytest.CaptureFixture[str]) -> Run:
    def call(*arguments: str) -> tuple[int, str, str]:
        code = run(["plan", *arguments])
        said = capsys.readouterr()
        return code, said.out, said.err

    return call


def test_litres_give_a_plan_of_all_sections(plan: Run) -> None:
    code, out, _ = plan("--litres", "6000")
    assert code == 0
    for heading in ("This tank in counts", "What was checked", "Cutting list", "Seven hold points", "Take care"):
        assert heading in out


def test_people_dry_days_and_a_spring_give_the_litres(plan: Run) -> None:
    code, out, _ = plan("--people", "30", "--dry-days", "45", "--litres-each", "12", "--spring", "0.003", "--json")
    asked = json.loads(out)["asked"]
    assert code == 0
    assert asked["need"]["daily_need_l_per_day"] == 360
    assert asked["litres"] == pytest.approx(45 * (360 - 0.003 * 86_400 * 0.85))


def test_a_spring_that_gives_enough_needs_only_a_days_water(plan: Run) -> None:
    code, out, _ = plan("--people", "40", "--dry-days", "60", "--litres-each", "15", "--spring", "0.02")
    assert code == 0
    assert "keeps one day's water" in " ".join(out.split())


def test_hindi_is_spoken_when_asked(plan: Run) -> None:
    code, out, _ = plan("--litres", "6000", "--language", "hi")
    assert code == 0
    assert "यह टंकी गिनती में" in out


def test_a_refusal_ends_with_three_and_an_offer(plan: Run) -> None:
    code, out, _ = plan("--litres", "60000")
    assert code == 3
    assert "Instead: 2 tanks of 30,000" in out
    code, out, _ = plan("--litres", "60000", "--json")
    assert code == 3
    assert json.loads(out)["result"] == "refused"


def test_a_village_tank_prints_no_build_sheet_where_the_site_forbids_it(plan: Run) -> None:
    code, out, _ = plan("--litres", "9000", "--downhill-people", "--slope", "20")
    assert code == 3
    assert "Cutting list" not in out
    assert "Hoops" not in out


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        ((), "Say one of"),
        (("--litres", "9000", "--people", "4"), "Say one of"),
        (("--people", "4"), "--dry-days"),
        (("--litres", "9000", "--spring", "0.1"), "--spring"),
        (("--trough", "--people", "4", "--dry-days", "3", "--litres-each", "10"), "--trough"),
        (("--litres", "9000", "--hoops", "8 every 12"), "8@0.12"),
        (("--litres", "9000", "--language", "fr"), "'fr'"),
        (("--litres", "much"), "much"),
        (("--litres", "9000", "--soil", "butter"), "butter"),
    ],
)
def test_what_contradicts_itself_is_a_question_of_usage(plan: Run, arguments: tuple[str, ...], said: str) -> None:
    code, out, err = plan(*arguments)
    assert code == 2
    assert said in err
    assert out == ""


@pytest.mark.parametrize(
    "arguments",
    [
        ("--litres", "300"), ("--litres", "nan"), ("--litres", "inf"), ("--litres", "-9000"),
        ("--litres", "9000", "--slope", "45"), ("--litres", "9000", "--width-limit", "0.2"),
        ("--litres", "9000", "--height-limit", "9"), ("--litres", "9000", "--stock-length", "2"),
        ("--litres", "9000", "--sand-moisture", "40"), ("--litres", "9000", "--inflow", "99"),
        ("--litres", "9000", "--masons", "0"), ("--litres", "9000", "--labourers", "900"),
        ("--litres", "9000", "--load", "900"), ("--litres", "9000", "--rain", "1"),
        ("--litres", "9000", "--working-days", "8"), ("--litres", "9000", "--ground-water", "5"),
        ("--litres", "9000", "--hoops", "60@0.12"), ("--litres", "9000", "--hoops", "8@2"),
        ("--people", "4", "--dry-days", "999", "--litres-each", "10"), ("--trough", "--litres", "9"),
    ],
)  # fmt: skip
def test_an_option_outside_its_range_names_itself_the_range_and_who_to_ask(
    plan: Run, arguments: tuple[str, ...]
) -> None:
    code, out, err = plan(*arguments)
    assert code == 3
    option = arguments[-2] if arguments[0] != "--people" else "--dry-days"
    assert option in err
    assert "is outside" in err
    assert "engineer" in err
    assert out == ""


def test_a_place_is_planned_as_it_is(plan: Run) -> None:
    code, out, _ = plan("--place", "course/places/hill-school.yaml", "--json")
    assert code == 0
    assert json.loads(out)["tank"]["inside_diameter_m"] == 3.4
    code, _, err = plan("--place", "course/places/hill-school.yaml", "--width-limit", "3")
    assert code == 2
    assert "--place fixes the sizes" in err


def test_own_files_are_read_and_their_faults_are_told(plan: Run, tmp_path: Path) -> None:
    shop = tmp_path / "shop.yaml"
    shop.write_text("format: 1\nbars:\n- {diameter: 6}\nmeshes: []\n", encoding="utf-8")
    code, out, _ = plan("--litres", "6000", "--have", str(shop))
    assert code == 3
    assert "no mesh" in out
    shop.write_text("format: 1\nbars:\n- {diameter: six}\n", encoding="utf-8")
    code, _, err = plan("--litres", "6000", "--have", str(shop))
    assert code == 1
    assert f"{shop}:3:" in err
    code, _, err = plan("--litres", "6000", "--prices", str(tmp_path / "none.yaml"))
    assert code == 1
    assert "can't be read" in err


def test_a_trough_is_planned_in_text_and_data(plan: Run) -> None:
    code, out, _ = plan("--trough", "--litres", "250")
    assert code == 0
    assert "Trough for 250" in out
    code, out, _ = plan("--trough", "--litres", "250", "--json")
    assert code == 0
    assert json.loads(out)["trough"]["length_m"] > 1


def test_help_has_an_example(plan: Run) -> None:
    code, out, _ = plan("--help")
    assert code == 0
    assert "Example: python3 tankschool.py plan" in " ".join(out.split())


def test_the_booklet_is_written_whole_or_not_at_all(plan: Run, tmp_path: Path) -> None:
    path = tmp_path / "new" / "booklet.pdf"
    code, out, _ = plan("--litres", "6000", "--pdf", str(path))
    assert code == 0
    assert str(path) in out
    assert path.read_bytes().startswith(b"%PDF")
    code, out, _ = plan("--litres", "60000", "--pdf", str(tmp_path / "refused.pdf"))
    assert code == 3
    assert "No plan" in out
    assert not (tmp_path / "refused.pdf").exists()
    (tmp_path / "file").write_text("in the way")
    code, _, err = plan("--litres", "6000", "--pdf", str(tmp_path / "file" / "booklet.pdf"))
    assert code == 4
    assert "could not do it" in err
