"""Which words the source says: missing ones and left-over ones are told with their place."""

from pathlib import Path

import generator
from generator.curriculum import check
from generator.curriculum.word_use import used_words
from tests.curriculum.made_up import FILES, MACHINE, loaded

GOOD = """\
def front(words, unit):
    words.say("page.home", place="x")
    return words.say_one_of("unit", unit)
"""


def told(root: Path, **sources: str) -> list[str]:
    """Problems of the made-up course against a made-up tool of these files."""
    content = loaded(root / "content").content
    assert content is not None
    code = root / "tool"
    for name, text in sources.items():
        path = code / name.replace("__", "/").replace("_dot_", ".")
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return [f"{problem.code} {problem}" for problem in check(content, code, MACHINE)]


def test_words_said_in_python_templates_and_scripts_are_found(tmp_path: Path) -> None:
    assert told(tmp_path, site__front_dot_py=GOOD, site__goats_dot_js="t.say('page.goats', {count: 2})") == []
    assert (
        told(tmp_path, site__front_dot_py=GOOD, site__goats_dot_js="", site__a_dot_html='{{ say("page.goats") }}') == []
    )


def test_a_script_may_join_a_family_and_its_member(tmp_path: Path) -> None:
    script = 'say("page." + key, {}); /* say(key) gives a word */\n  // say(other)\nsay("unit." + unit + ".x");'
    assert told(tmp_path, site__a_dot_js=script) == []


def test_missing_and_left_over_words_are_told_for_every_language(tmp_path: Path) -> None:
    source = GOOD.replace("page.home", "page.hom") + '\ndef more(w):\n    w.say_one_of("colour", "red")\n'
    assert told(tmp_path, site__front_dot_py=source) == [
        "unused-word course/words/en.yaml:13:3: nobody says the word 'page.home' (fix: remove it, or say it)",
        "unused-word course/words/en.yaml:14:3: nobody says the word 'page.goats' (fix: remove it, or say it)",
        "unused-word course/words/hi.yaml:13:3: nobody says the word 'page.home' (fix: remove it, or say it)",
        "unused-word course/words/hi.yaml:14:3: nobody says the word 'page.goats' (fix: remove it, or say it)",
        "missing-word tool/site/front.py:2:5: the word 'page.hom' is said and missing in course/words/en.yaml "
        "(fix: did you mean 'page.home'?)",
        "missing-word tool/site/front.py:2:5: the word 'page.hom' is said and missing in course/words/hi.yaml "
        "(fix: did you mean 'page.home'?)",
        "missing-word tool/site/front.py:6:5: the family of words 'colour' is said and missing in course/words/en.yaml "
        "(fix: add it to course/words/en.yaml)",
        "missing-word tool/site/front.py:6:5: the family of words 'colour' is said and missing in course/words/hi.yaml "
        "(fix: add it to course/words/hi.yaml)",
    ]


def test_a_key_that_is_worked_out_is_refused_in_every_language_of_source(tmp_path: Path) -> None:
    python = GOOD + '\ndef bad(w, k):\n    w.say("page." + k)\n    w.say("page.goats" if k else "page.home", count=1)\n'
    script = 'function say(key) {}\nsay("page.home"); say(key);\nsay("page.h" + key);\n'
    wanted = (
        'is worked out, so nobody can see which word is said (fix: type the key, or use say_one_of("family", member))'
    )
    assert told(tmp_path, a_dot_py=python, b_dot_js=script) == [
        f"word-not-typed tool/a.py:6:5: the first argument of 'say' {wanted}",
        f"word-not-typed tool/b.js:2:19: the first argument of 'say' {wanted}",
        f"word-not-typed tool/b.js:3:1: the first argument of 'say' {wanted}",
    ]


def test_members_of_a_family_that_nothing_needs_are_left_over(tmp_path: Path) -> None:
    content = loaded(
        tmp_path / "content",
        add={
            "course/words/en.yaml": FILES["course/words/en.yaml"].replace("rain: rain", "rain: rain, snow: snow"),
            "course/words/hi.yaml": FILES["course/words/hi.yaml"].replace("rain: बारिश", "rain: बारिश, snow: बर्फ"),
        },
    ).content
    assert content is not None
    code = tmp_path / "tool"
    code.mkdir()
    source = GOOD + '    words.say("page.goats", count=1)\n    words.say_one_of("quantity", "rain")\n'
    (code / "a.py").write_text(source, encoding="utf-8")
    assert [problem.what for problem in check(content, code, MACHINE)] == ["nobody says the word 'quantity.snow'"] * 2


def test_a_unit_may_have_another_word_after_one_and_an_unknown_unit_not(tmp_path: Path) -> None:
    forms = "\nunit_for_one: {m: metre, cubit: cubit}\n"
    paths = ("course/words/en.yaml", "course/words/hi.yaml")
    content = loaded(tmp_path / "content", add={path: FILES[path] + forms for path in paths}).content
    assert content is not None
    code = tmp_path / "tool"
    code.mkdir()
    source = GOOD + '    words.say("page.goats", count=1)\n    words.say_one_of("quantity", "rain")\n'
    (code / "a.py").write_text(source, encoding="utf-8")
    told = [problem.what for problem in check(content, code, MACHINE)]
    assert told == ["nobody says the word 'unit_for_one.cubit'"] * 2


def test_this_tool_types_every_word_that_it_says() -> None:
    assert used_words(Path(generator.__file__).parent).problems == []
