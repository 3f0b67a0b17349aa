"""Problems: their printed form, their order, and how many of one file are listed."""

from collections.abc import Iterator

from generator.problems import MOST_REPORTED, ExitCode, Problem, ProblemsError, few, in_order


def problem(line: int, file: str = "a.csv") -> Problem:
    return Problem(file, line, 1, "made-up", f"line {line} is wrong", "change it")


def test_all_problems_are_carried_sorted_and_once() -> None:
    error = ProblemsError([problem(10), problem(2), problem(10), problem(5, "A.csv")])
    assert str(error) == (
        "A.csv:5:1: line 5 is wrong (fix: change it)\n"
        "a.csv:2:1: line 2 is wrong (fix: change it)\n"
        "a.csv:10:1: line 10 is wrong (fix: change it)"
    )


def test_exit_codes_are_those_that_scripts_rely_on() -> None:
    assert [int(code) for code in ExitCode] == [0, 1, 2, 3, 4]


def test_a_file_of_junk_lists_fifty_problems_and_works_out_no_more() -> None:
    made: list[int] = []

    def endless() -> Iterator[Problem]:
        line = 0
        while True:
            line += 1
            made.append(line)
            yield problem(line)

    found = few("a.csv", endless())
    assert len(found) == len(made) == MOST_REPORTED + 1
    assert found[-2] == problem(MOST_REPORTED)
    assert str(found[-1]) == (
        "a.csv:0:0: there are more than 50 problems; the rest is not listed (fix: check that it is the right file)"
    )


def test_fifty_problems_are_all_listed() -> None:
    assert few("a.csv", map(problem, range(MOST_REPORTED))) == [problem(line) for line in range(MOST_REPORTED)]


def test_a_problem_is_one_short_line_whatever_the_file_says() -> None:
    """A cell of a megabyte, an end of a line, an escape of the terminal, a mark that turns the direction."""
    told = str(Problem("a.csv", 1, 1, "odd", f"'{'x' * 10**6}\n\x1b[2J\u202e' is no name", "say\rit"))
    assert len(told) < 800
    assert told.startswith("a.csv:1:1: 'xxx")
    assert told.endswith("�[2J�' is no name (fix: say�it)")
    assert "\n" not in told


def test_cells_come_as_people_count_them() -> None:
    found = [Problem(f"class.xlsx people!A{row}", 0, 0, "x", "what", "fix") for row in (10, 2, 1)]
    assert [each.file[-2:] for each in in_order(found)] == ["A1", "A2", "10"]
