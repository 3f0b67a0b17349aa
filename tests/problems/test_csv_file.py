"""Tables out of a spreadsheet: any of three separators, and every fault with its line and column."""

import pytest

from generator.problems import Column, ProblemsError, read_csv

COLUMNS = [Column("learner"), Column("question"), Column("answer", filled=False), Column("note", required=False)]


def rows(text: str) -> list[tuple[int, str, str, str]]:
    return [(r.line, r["learner"], r["question"], r["answer"]) for r in read_csv("answers.csv", text.encode(), COLUMNS)]


def said(text: str) -> list[str]:
    with pytest.raises(ProblemsError) as refusal:
        rows(text)
    return [f"{problem.code} {str(problem).removeprefix('answers.csv:')}" for problem in refusal.value.problems]


@pytest.mark.parametrize("sign", [",", ";", "\t"])
def test_the_first_line_decides_the_separator(sign: str) -> None:
    text = "Learner, question,ANSWER\n1,hoops,12\n\n2, hoops ,\n".replace(",", sign)
    assert rows(text) == [(2, "1", "hoops", "12"), (4, "2", "hoops", "")]


def test_decimal_commas_survive_in_a_table_with_semicolons() -> None:
    assert rows("learner;question;answer\n1;q;1,5\n") == [(2, "1", "q", "1,5")]


def test_quoted_cells_hold_separators_quotes_and_line_ends() -> None:
    text = 'learner,question,answer\n"Asha, the ""tall""" , q,"one\ntwo"\nb,q,3'
    assert rows(text) == [(2, 'Asha, the "tall"', "q", "one\ntwo"), (4, "b", "q", "3")]


def test_empty_cells_behind_the_last_column_do_no_harm() -> None:
    assert rows("learner,question,answer,,\n1,q,2,,\n,,,,\n") == [(2, "1", "q", "2")]


def test_absent_column_is_an_empty_text_and_problems_know_the_cell() -> None:
    row = read_csv("answers.csv", b"question,learner,answer\nq,  Asha,4\n", COLUMNS)[0]
    assert row["note"] == ""
    assert str(row.problem("learner", "unknown-learner", "no learner 'Asha'", "check the name")) == (
        "answers.csv:2:5: no learner 'Asha' (fix: check the name)"
    )


def test_wrong_columns_are_told_at_once() -> None:
    assert said("learner,qestion,answer,answer,weight\n1,q,2,2,2\n") == [
        "missing-column 1:1: the column 'question' is missing "
        "(fix: write 'question' into the first line, above its cells)",
        "unknown-column 1:9: unknown column 'qestion' (fix: did you mean 'question'?)",
        "duplicate-column 1:24: the column 'answer' stands twice (fix: keep one of them)",
        "unknown-column 1:31: unknown column 'weight' "
        "(fix: remove it; the columns are learner, question, answer, note)",
    ]


def test_wrong_rows_are_told_at_once() -> None:
    assert said("learner,question,answer\n1,q,2,3\n,q,2\n2\n") == [
        "too-many-cells 2:7: the row has 4 cells and the first line 3 "
        '(fix: put a cell that holds the separator in quotes: "a, b")',
        "empty-cell 3:1: 'learner' is empty (fix: fill it, or remove the row)",
        "empty-cell 4:0: 'question' is empty (fix: fill it, or remove the row)",
    ]


@pytest.mark.parametrize(
    ("text", "problem"),
    [
        ("", "empty-file 0:0: the table is empty (fix: start it with the line 'learner,question,answer')"),
        ("\n , ,\n", "empty-file 0:0: the table is empty (fix: start it with the line 'learner,question,answer')"),
        ("learner,question,answer\n", "no-rows 1:1: the table has column names and no rows (fix: add a line for each)"),
        (
            'learner,question,answer\n1,"q,2\n3,q,4\n',
            'open-quote 2:3: a quote is opened and never closed (fix: close it with ", or remove it)',
        ),
        (
            'learner,question,answer\n1,"q"x,2\n',
            'text-behind-quote 2:6: something stands behind the closing quote of a cell '
            '(fix: write a quote inside a cell twice: "")',
        ),
    ],
)  # fmt: skip
def test_a_table_that_cannot_be_read_says_why(text: str, problem: str) -> None:
    assert said(text) == [problem]


def test_a_wrong_file_gives_fifty_problems_and_a_last_word() -> None:
    problems = said("learner,question,answer\n" + "1,q,2,3\n" * 500)
    assert len(problems) == 51
    assert problems[0] == (
        "too-many-problems 0:0: there are more than 50 problems; the rest is not listed "
        "(fix: check that it is the right file)"
    )


def test_name_only_list_with_a_comma_in_a_name_is_a_problem_not_two_people() -> None:
    with pytest.raises(ProblemsError, match="2 cells and the first line 1"):
        read_csv("class.csv", b"name\nAsha, Devi\n", [Column("name"), Column("language", required=False)])
