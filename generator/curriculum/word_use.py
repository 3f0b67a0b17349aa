"""Which words the tool itself says: found in its source, so that none is missing and none is left over.

A word is said by ``words.say("page.home.title")``, one of a family by ``words.say_one_of("unit", unit)``. In templates
and browser scripts the same names are called, or ``say("unit." + unit)``. The first argument is always typed out, so
that reading the source is enough.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from generator.curriculum.files import Reading
from generator.curriculum.word_files import loc_of
from generator.problems import Problem, place_of
from generator.problems.plain_errors import did_you_mean
from generator.words import FOR_ONE, Words

_SAYS = ("say", "say_one_of")
_SCRIPT_CALL = re.compile(r"(?<!function )\b(say|say_one_of)\(\s*(?:\"([^\"]*)\"|'([^']*)'|)(\s*\+)?")
_SCRIPT_COMMENT = re.compile(r"/\*.*?\*/|^[ \t]*//[^\n]*", re.DOTALL | re.MULTILINE)
_SCRIPT_ENDINGS = (".js", ".html", ".md", ".jinja")


@dataclass
class Use:
    """The words that a tree of source files says.

    Args:
        keys: each key said, and the first place of it: file, line, column.
        families: each family of which a member is said, likewise.
        problems: calls whose first argument is not typed out.
    """

    keys: dict[str, tuple[str, int, int]] = field(default_factory=dict)
    families: dict[str, tuple[str, int, int]] = field(default_factory=dict)
    problems: list[Problem] = field(default_factory=list)


def used_words(code: Path) -> Use:
    """All the words said in the Python files, templates and browser scripts below a folder.

    Args:
        code: the `generator` package's folder.
    """
    use = Use()
    for path in sorted(code.rglob("*")):
        inside = path.relative_to(code)
        if inside.parts[0] == "words" or not path.is_file():
            continue  # the room that defines how a word is said
        name = f"{code.name}/{inside.as_posix()}"
        if path.suffix == ".py":
            _python(use, name, path.read_text(encoding="utf-8"))
        elif path.suffix in _SCRIPT_ENDINGS:
            _script(use, name, path.read_text(encoding="utf-8"))
    return use


def _python(use: Use, name: str, source: str) -> None:
    if ".say" not in source:
        return
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.func.attr in _SAYS:
            first = node.args[0] if node.args else None
            said = [first.body, first.orelse] if isinstance(first, ast.IfExp) else [first]
            for each in said:
                key = each.value if isinstance(each, ast.Constant) and isinstance(each.value, str) else None
                _note(use, node.func.attr, key, (name, node.lineno, node.col_offset + 1))


def _script(use: Use, name: str, source: str) -> None:
    source = _SCRIPT_COMMENT.sub(lambda match: re.sub(r"[^\n]", " ", match[0]), source)
    for match in _SCRIPT_CALL.finditer(source):
        call, key = match[1], match[2] if match[2] is not None else match[3]
        if key is not None and match[4]:  # "family." + member
            call, key = ("say_one_of", key[:-1]) if key.endswith(".") else (call, None)
        _note(use, call, key, (name, *place_of(source[: match.start()])))


def _note(use: Use, call: str, key: str | None, place: tuple[str, int, int]) -> None:
    if key is None:
        what = f"the first argument of '{call}' is worked out, so nobody can see which word is said"
        use.problems.append(
            Problem(*place, "word-not-typed", what, 'type the key, or use say_one_of("family", member)')
        )
    else:
        (use.keys if call == "say" else use.families).setdefault(key, place)


def use_problems(
    reading: Reading, words: Mapping[str, Words], use: Use, wanted: Mapping[str, Sequence[str]]
) -> Iterator[Problem]:
    """Words that are said and missing, and words that nobody says.

    Args:
        reading: the words files.
        words: words by language.
        use: what the source says.
        wanted: by family, what the calculation module and the drawings need: other members are left over.
    """
    yield from use.problems
    for language, spoken in words.items():
        file = reading.words[language]
        for key, place in use.keys.items():
            if key not in spoken:
                what = f"the word '{key}' is said and missing in {file.name}"
                yield Problem(
                    *place,
                    "missing-word",
                    what,
                    did_you_mean(key, spoken.texts) if _near(key, spoken) else f"add it to {file.name}",
                )
        for family, place in use.families.items():
            if family not in wanted and not any(True for _ in spoken.family(family)):
                what = f"the family of words '{family}' is said and missing in {file.name}"
                yield Problem(*place, "missing-word", what, f"add it to {file.name}")
        for key in spoken.texts:
            if not _is_used(key, use, wanted):
                loc = loc_of(file, key)
                yield file.problem(loc, "unused-word", f"nobody says the word '{key}'", "remove it, or say it")


def _near(key: str, spoken: Words) -> bool:
    return did_you_mean(key, spoken.texts).startswith("did you mean")


def _is_used(key: str, use: Use, wanted: Mapping[str, Sequence[str]]) -> bool:
    if key in use.keys:
        return True
    if any(key.startswith(f"{said}.") for said in use.families if said not in wanted):
        return True
    family, _, member = key.partition(".")
    family = "unit" if family == FOR_ONE else family
    return member in wanted.get(family, ())
