"""Reading a YAML file that a person wrote, strictly: what is typed is what is read, and every value knows its line.

YAML 1.1 turns `no` into false, `012` into 10, `12:30` into 750 and leaves `1e3` a text. Here only `true`, `false`,
`null` and decimal numbers are anything but text. A key that stands twice, an alias, a tag and a second document are
problems, never silently taken.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any, TypeAlias

import yaml

from generator.problems.problem import MOST_REPORTED, Problem, ProblemsError, few
from generator.problems.text_file import LIMIT, decode, place_of

Loc: TypeAlias = tuple[str | int, ...]
"""Path of keys and list positions to a value: ``("questions", 0, "text", "en")``."""

DEEPEST = 40
"""Levels of nesting; content needs about eight."""

_TAG = "tag:yaml.org,2002:"
_RESOLVERS: list[tuple[str, re.Pattern[str], str]] = [
    (f"{_TAG}bool", re.compile(r"true|false"), "tf"),
    (f"{_TAG}null", re.compile(r"null|~|"), "n~\0"),
    (f"{_TAG}int", re.compile(r"[-+]?(0|[1-9][0-9]*)"), "-+0123456789"),
    (
        f"{_TAG}float",
        re.compile(r"[-+]?((0|[1-9][0-9]*)(\.[0-9]*)?|\.[0-9]+)([eE][-+]?[0-9]+)?"),
        "-+.0123456789",
    ),
]


def _strict(base: Any) -> Any:
    """A loader class that knows no implicit type but those above."""
    loader: Any = type("StrictLoader", (base,), {"yaml_implicit_resolvers": {}})
    for tag, pattern, first in _RESOLVERS:
        whole = re.compile(rf"(?:{pattern.pattern})\Z")
        loader.add_implicit_resolver(tag, whole, ["" if sign == "\0" else sign for sign in first])
    return loader


# libyaml is about nine times quicker; where a wheel lacks it, the pure parser reads the same.
_LOADER = _strict(yaml.CSafeLoader if yaml.__with_libyaml__ else yaml.SafeLoader)


@dataclass(frozen=True, slots=True)
class YamlFile:
    """A file's values, and where each of them stands.

    Args:
        name: how problems name the file.
        text: its text.
        value: dicts with text keys, lists, texts, whole and decimal numbers, true, false and None.
        keys: start of each key (of a list's item: start of the item), as an index into the text.
        spans: start and end of each value, as indexes into the text.
    """

    name: str
    text: str = field(repr=False)
    value: Any = field(repr=False)
    keys: dict[Loc, int] = field(repr=False)
    spans: dict[Loc, tuple[int, int]] = field(repr=False)

    def line_and_column(self, loc: Loc) -> tuple[int, int]:
        """Where a key or a list's item starts; for one that is not there, where its nearest parent starts."""
        while loc and loc not in self.keys:
            loc = loc[:-1]
        start = self.keys[loc] if loc else self.spans[()][0]
        return place_of(self.text[:start])

    def value_line_and_column(self, loc: Loc) -> tuple[int, int]:
        """Where a value starts, behind its key."""
        return place_of(self.text[: self.spans[loc][0]]) if loc in self.spans else self.line_and_column(loc)

    def snippet_line_and_column(self, loc: Loc, snippet: str, count: int = 0) -> tuple[int, int]:
        """Where a piece of a text value stands.

        Args:
            loc: the text.
            snippet: the piece as it reads in the value.
            count: how many of the same come before it.

        Returns:
            The piece's place; the value's, where line folding or an escape hides the piece.
        """
        if loc not in self.spans:
            return self.line_and_column(loc)
        start, end = self.spans[loc]
        at = start - 1
        for _ in range(count + 1):
            at = self.text.find(snippet, at + 1, end)
            if at < 0:
                return self.value_line_and_column(loc)
        return place_of(self.text[:at])

    def problem(self, loc: Loc, code: str, what: str, fix: str) -> Problem:
        """A problem at a key or a list's item."""
        return Problem(self.name, *self.line_and_column(loc), code, what, fix)

    def value_problem(self, loc: Loc, code: str, what: str, fix: str) -> Problem:
        """A problem at a value."""
        return Problem(self.name, *self.value_line_and_column(loc), code, what, fix)


def read_yaml(name: str, data: bytes, limit: int = LIMIT) -> YamlFile:
    r"""Read one YAML file.

    Args:
        name: how problems name the file.
        data: its bytes.
        limit: most bytes.

    Raises:
        ProblemsError: what `decode` refuses; text that is not YAML; and, all at once: keys that stand twice or are not
            plain texts, aliases, tags, numbers that no computer number holds, nesting deeper than 40 levels.

    Example:
        >>> read_yaml("made-up.yaml", b"no: 012\nstart: 12:30\nspan: 1e3").value
        {'no': '012', 'start': '12:30', 'span': 1000.0}
    """
    text = decode(name, data, limit)
    loader = _LOADER(text)
    try:
        root = loader.get_single_node()
    except yaml.MarkedYAMLError as error:
        raise ProblemsError([_not_yaml(name, text, error)]) from None
    except RecursionError:
        raise ProblemsError([_too_deep(name, 0, 0)]) from None
    finally:
        loader.dispose()
    if root is None:
        raise ProblemsError([Problem(name, 0, 0, "empty-file", "the file is empty", "write its content, or delete it")])
    walk = _Walk(name, text)
    value = walk.value(root, ())
    problems = few(name, [*walk.problems, *_anchors(name, text)])
    if problems:
        raise ProblemsError(problems)
    return YamlFile(name, text, value, walk.keys, walk.spans)


class _Walk:
    """Turns the composed nodes into values and notes where each stands."""

    def __init__(self, name: str, text: str) -> None:
        self.name = name
        self.text = text
        self.keys: dict[Loc, int] = {}
        self.spans: dict[Loc, tuple[int, int]] = {}
        self.problems: list[Problem] = []
        self._seen: set[int] = set()

    def value(self, node: yaml.Node, loc: Loc) -> Any:
        if id(node) in self._seen:  # an alias: its own problem comes from `_anchors`
            return None
        self._seen.add(id(node))
        self.spans[loc] = (node.start_mark.index, node.end_mark.index)
        if len(loc) >= DEEPEST:
            self.problems.append(_too_deep(self.name, node.start_mark.line + 1, node.start_mark.column + 1))
            return None
        if isinstance(node, yaml.MappingNode) and node.tag == f"{_TAG}map":
            return self._mapping(node, loc)
        if isinstance(node, yaml.SequenceNode) and node.tag == f"{_TAG}seq":
            items = []
            for position, item in enumerate(node.value):
                place = (*loc, position)
                self.keys[place] = item.start_mark.index
                items.append(self.value(item, place))
            return items
        if isinstance(node, yaml.ScalarNode):
            return self._scalar(node)
        self._tag(node)
        return None

    def _mapping(self, node: yaml.MappingNode, loc: Loc) -> dict[str, Any]:
        found: dict[str, Any] = {}
        for key_node, value_node in node.value:
            if not isinstance(key_node, yaml.ScalarNode):
                self._report(key_node, "key-not-text", "a key has to be one word, not a list", "write 'key: value'")
                continue
            key = str(key_node.value)
            place = (*loc, key)
            if key in found and len(self.problems) > MOST_REPORTED:
                continue
            if key in found:
                line, _ = place_of(self.text[: self.keys[place]])
                what = f"the key '{key}' stands twice; the first is on line {line}"
                self._report(key_node, "duplicate-key", what, "keep one of them")
                continue
            self.keys[place] = key_node.start_mark.index
            found[key] = self.value(value_node, place)
        return found

    def _scalar(self, node: yaml.ScalarNode) -> Any:
        kind, text = node.tag.removeprefix(_TAG), str(node.value)
        if kind == "str":
            return text
        if kind == "bool" and text in ("true", "false"):
            return text == "true"
        if kind == "null":
            return None
        try:
            number = (
                int(text) if kind == "int" and len(text) < 18 else float(text) if kind in ("int", "float") else None
            )
        except ValueError:  # a tag claims a number where there is none
            number = None
        if number is None:
            self._tag(node)
        elif not math.isfinite(number) or (kind == "int" and isinstance(number, float)):
            self._report(node, "number-too-large", f"{text[:20]} is too large to count with", "check the number")
            return None
        return number

    def _tag(self, node: yaml.Node) -> None:
        self._report(
            node, "yaml-tag", f"'{node.tag.replace(_TAG, '!!')}' is a tag, which is not read here", "remove it"
        )

    def _report(self, node: yaml.Node, code: str, what: str, fix: str) -> None:
        mark = node.start_mark
        self.problems.append(Problem(self.name, mark.line + 1, mark.column + 1, code, what, fix))


def _too_deep(name: str, line: int, column: int) -> Problem:
    return Problem(
        name, line, column, "too-deep", f"lists and keys are nested deeper than {DEEPEST} levels", "nest them less"
    )


def _anchors(name: str, text: str) -> Iterator[Problem]:
    """Every anchor and alias; few files hold the signs at all, so most are not scanned."""
    if "&" not in text and "*" not in text:
        return
    loader = _LOADER(text)
    try:
        while loader.check_token():
            token = loader.get_token()
            if isinstance(token, yaml.AnchorToken | yaml.AliasToken):
                line, column = token.start_mark.line + 1, token.start_mark.column + 1
                sign = "&" if isinstance(token, yaml.AnchorToken) else "*"
                what = f"'{sign}{token.value}' stands for text from elsewhere, which is not read here"
                yield Problem(
                    name,
                    line,
                    column,
                    "yaml-alias",
                    what,
                    f"write the text out; put a text that starts with {sign} in quotes",
                )
    finally:
        loader.dispose()


_QUOTES = "put the whole text in quotes"
_PLAIN_WORDS: tuple[tuple[str, str, str], ...] = (
    (
        "mapping values are not allowed",
        "a colon and a space stand where no new key can start",
        "put a text with a colon in quotes, or line the key up with its neighbours",
    ),
    (
        "could not find expected ':'",
        "this line has no 'key: value'",
        "add the colon and a space, or indent the line as part of the text above",
    ),
    (
        "did not find expected key",
        "this doesn't fit to the keys around it",
        "line it up with its neighbours; put a text that starts with a sign in quotes",
    ),
    (
        "expected <block end>",
        "this doesn't fit to what is around it",
        "line it up with its neighbours; put a text that starts with a sign in quotes",
    ),
    (
        "did not find expected '-' indicator",
        "a list ends here without its indentation",
        "start the line with '- ', or move it out of the list",
    ),
    (
        "sequence entries are not allowed",
        "a list starts on the line of its key",
        "write the list below its key, each item after '- '",
    ),
    ("found unexpected end of stream", "a quote is opened and never closed", "close the quote"),
    ("did not find expected ',' or", "a bracket is opened and never closed", "close it, or put the text in quotes"),
    ("expected ',' or", "a bracket is opened and never closed", "close it, or put the text in quotes"),
    ("expected node content", "a value is missing here, or starts with a sign", _QUOTES),
    ("found undefined alias", "a text starts with *", _QUOTES),
    ("but found another document", "a second document starts here with '---'", "remove the line"),
    ("found unknown escape character", "a backslash stands in double quotes", "use single quotes"),
    ("exceeded maximum nesting depth", "lists and keys are nested too deep", "nest them less"),
    ("expected chomping or indentation", "something stands behind | or >", "start the text on the next line"),
    (
        "did not find expected comment or line break",
        "something stands behind | or >",
        "start the text on the next line",
    ),
    ("violates indentation", "a tab stands where spaces are needed", "replace tabs by spaces"),
)


def _not_yaml(name: str, text: str, error: yaml.MarkedYAMLError) -> Problem:
    """What the parser says, in plain words and at the place where a person would look."""
    said = error.problem or ""
    mark = error.problem_mark or error.context_mark
    if "unexpected end of stream" in said or "could not find expected" in said or "',' or" in said:
        mark = error.context_mark or mark  # where the quote, bracket or line starts
    line, column = (mark.line, mark.column) if mark else (0, 0)
    source = [*text.split("\n"), ""][line]
    sign = source[column : column + 1]
    what, fix = f"the file is not YAML here: {said}", "compare with the lines around it"
    if "cannot start any token" in said:
        if sign == "\t":
            what, fix = "a tab stands where spaces are needed", "replace tabs by spaces"
        else:
            what, fix = f"a text can't start with {sign}", _QUOTES
    else:
        for start, plain, remedy in _PLAIN_WORDS:
            if start in said:
                what, fix = plain, remedy
                break
    if re.match(r"\s*(- )?[\w-]+:\s+\{[^}]*\}\s*[^\s,}#]", source) and fix is not _QUOTES:
        what, fix = "a text that starts with { is no text without quotes", _QUOTES
    return Problem(name, line + 1, column + 1, "not-yaml", what, fix)
