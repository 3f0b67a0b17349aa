"""The whole course: good content comes out complete and filled; what is wrong comes out all at once."""

import pickle
from pathlib import Path

import pytest

from generator.curriculum import load
from generator.curriculum.models import NumberQuestion
from tests.curriculum.made_up import FILES, MACHINE, loaded, said, write

BANK = "quizzes/banks/fence.yaml"
LESSON_HI = "course/modules/01-fence/lesson.hi.md"


def test_the_good_course_has_no_problem_and_everything_by_its_id(tmp_path: Path) -> None:
    result = loaded(tmp_path)
    assert result.problems == ()
    content = result.content
    assert content is not None
    assert content.course.languages == ("en", "hi")
    assert list(content.modules) == ["fence"]
    assert list(content.questions) == ["posts", "gate", "order", "pairs"]
    assert (list(content.places), list(content.scenarios)) == (["lower-pen"], ["whole-pen"])
    assert (list(content.practicals), list(content.schemes)) == (["set-a-post"], ["fencer"])
    assert set(content.lessons) == {("fence", "en"), ("fence", "hi")}
    assert content.words["hi"].say("page.goats", count=2) == "2 बकरियाँ"
    assert set(content.sources) == set(FILES)
    assert content.sources[BANK] == FILES[BANK].encode()


def test_numbers_are_filled_into_texts_and_slots_are_left_for_the_question(tmp_path: Path) -> None:
    content = loaded(tmp_path, (BANK, "{en: Which way?", "{en: 'Which way round {{ value(\"side\") }}?'")).content
    assert content is not None
    assert content.modules["fence"].summary == {"en": "A fence of 18\u00a0m.", "hi": "बाड़ 18\u00a0मी॰ की।"}
    assert content.practicals["set-a-post"].task["hi"] == "हर 0.5\u00a0मी॰ पर लगाएँ।"
    assert content.questions["gate"].text["en"] == "Which way round 4.5\u00a0m?"
    assert content.banks["fence"].questions[1] == content.questions["gate"]
    question = content.questions["posts"]
    assert isinstance(question, NumberQuestion)
    assert question.text["en"] == "The side is {side}, a gap {gap}. How many posts?"


def test_values_of_a_place_are_everything_that_can_be_worked_out_there(tmp_path: Path) -> None:
    content = loaded(tmp_path).content
    assert content is not None
    assert content.values("lower-pen") == {
        "side": 4.5,
        "gap": 0.5,
        "rain": 20,
        "fence_length": 18.0,
        "post_count": 36.0,
        "puddle": 0.09,
    }


def test_retired_questions_are_kept_and_not_asked(tmp_path: Path) -> None:
    content = loaded(tmp_path, (BANK, "kind: choice", "kind: choice\n  retired: true")).content
    assert content is not None
    assert "gate" in content.questions
    assert [question.id for question in content.questions_of("fence")] == ["posts", "order", "pairs"]
    assert content.questions_of("none") == ()


def test_content_can_be_sent_to_another_process(tmp_path: Path) -> None:
    content = loaded(tmp_path).content
    assert content is not None
    again = pickle.loads(pickle.dumps(content))  # noqa: S301 (our own bytes)
    assert again.lessons == content.lessons
    assert again.questions == content.questions


def test_another_room_can_put_a_problem_at_its_place_in_the_file(tmp_path: Path) -> None:
    content = loaded(tmp_path).content
    assert content is not None
    problem = content.problem("question", "posts", ("misconceptions", 0), "inseparable", "too near", "ask otherwise")
    assert str(problem) == "quizzes/banks/fence.yaml:12:20: too near (fix: ask otherwise)"


def test_files_that_are_missing_stray_or_not_text_are_told_together(tmp_path: Path) -> None:
    write(
        tmp_path,
        add={
            "quizzes/banks/more.yml": "a: 1",
            "course/modules/notes.md": "x",
            "course/words/fr.yaml": "format: 1\na: b\n",
            "handouts/other.en.md": "x",
            "course/README.md": "notes for authors are no content",
            "course/.hidden.yaml": "x",
        },
        drop=(LESSON_HI, "course/words/hi.yaml"),
    )
    (tmp_path / "course/places/lower-pen.yaml").write_bytes(b"\xff\xfef\x00")
    (tmp_path / "quizzes/schemes/fencer.yaml").write_bytes(b"x" * 1_000_001)
    assert [f"{problem.code} {problem}" for problem in load(tmp_path, MACHINE).problems] == [
        "missing-translation course/modules/01-fence/lesson.hi.md:0:0: the text in language 'hi' is missing "
        "(fix: write it)",
        "stray-file course/modules/notes.md:0:0: this file has no place in the course "
        "(fix: name it module.yaml or lesson.en.md, with the language's code, and put it into the module's folder)",
        "not-utf-8 course/places/lower-pen.yaml:1:1: the file is UTF-16 text, which is not read here "
        "(fix: save it again as UTF-8; a spreadsheet program calls this 'CSV UTF-8')",
        "unknown-language course/words/fr.yaml:0:0: unknown language 'fr' (fix: choose one of: en, hi)",
        "file-missing course/words/hi.yaml:0:0: the words of language 'hi' are missing "
        "(fix: write course/words/hi.yaml)",
        "stray-file handouts/other.en.md:0:0: this file has no place in the course "
        "(fix: check its name; the languages are en, hi)",
        "stray-file quizzes/banks/more.yml:0:0: this file has no place in the course "
        "(fix: name it with the ending .yaml)",
        "file-too-large quizzes/schemes/fencer.yaml:0:0: the file has 1.0 MB, and at most 1.0 MB are read "
        "(fix: check that it is the right file, or split it)",
    ]


def test_a_folder_without_a_course_says_so(tmp_path: Path) -> None:
    assert [str(problem) for problem in load(tmp_path, MACHINE).problems] == [
        "course/course.yaml:0:0: the course file is missing (fix: write it, or check the folder)"
    ]


def test_a_course_file_that_cannot_be_read_is_one_problem(tmp_path: Path) -> None:
    assert said(tmp_path, ("course/course.yaml", "format: 1", "format: [1")) == [
        "not-yaml course/course.yaml:1:9: a bracket is opened and never closed "
        "(fix: close it, or put the text in quotes)"
    ]


@pytest.mark.parametrize("path", sorted(FILES))
@pytest.mark.parametrize("junk", [b"", b"\x00\x01", b"- [", b"[]", b"null", b"{a: b}", "एक".encode("utf-16"), b"\xe9"])
def test_junk_in_any_file_gives_problems_and_no_traceback(tmp_path: Path, path: str, junk: bytes) -> None:
    write(tmp_path)
    (tmp_path / path).write_bytes(junk)
    result = load(tmp_path, MACHINE)
    assert result.content is None
    # A lesson of other words is text as good as any; what it lacks is told in one of its languages.
    assert any(Path(problem.file).parent == Path(path).parent for problem in result.problems)
    assert path.endswith(".md") or any(problem.file == path for problem in result.problems)


@pytest.mark.parametrize(
    ("path", "junk"),
    [
        (BANK, "format: 1\nid: fence\nmodule: fence\nquestions:\n" + "- {id: posts}\n" * 2000),
        (BANK, "a: 1\n" * 2000),
        ("course/words/en.yaml", "\n".join(f"word{i}: 1" for i in range(2000))),
        ("course/places/lower-pen.yaml", "\n".join(f"side{i}: 1" for i in range(2000))),
        (LESSON_HI, "3 m\n" * 2000),
        (LESSON_HI, '{{ value("a") }}\n' * 2000),
    ],
)
def test_a_file_full_of_faults_lists_at_most_a_hundred_and_says_that_there_are_more(
    tmp_path: Path, path: str, junk: str
) -> None:
    problems = [problem for problem in loaded(tmp_path, add={path: junk}).problems if problem.file == path]
    assert "too-many-problems" in {problem.code for problem in problems}
    assert len(problems) <= 102
