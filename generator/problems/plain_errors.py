"""What the models refuse, said in plain words: which key, where, and what to write instead."""

from __future__ import annotations

import re
from collections.abc import Mapping
from difflib import get_close_matches
from typing import Any, TypeVar, get_args, get_origin

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from generator.problems.problem import Problem, ProblemsError, few
from generator.problems.yaml_file import Loc, YamlFile, read_yaml

Model = TypeVar("Model", bound=BaseModel)
FORMAT = 1
"""The format of content files that this tool reads."""

_WRONG_TYPES = {
    "string_type": ("a text", "put it in quotes"),
    "int_type": ("a whole number", "write it without quotes, point or unit"),
    "int_from_float": ("a whole number", "write it without quotes, point or unit"),
    "float_type": ("a number", "write it with a point, without quotes or unit"),
    "bool_type": ("true or false", "write true or false"),
    "tuple_type": ("a list", "write each item on a line of its own after '- '"),
    "mapping_type": ("keys and values", "write 'key: value' lines below it"),
    "dict_type": ("keys and values", "write 'key: value' lines below it"),
    "model_type": ("keys and values", "write 'key: value' lines below it"),
    "model_attributes_type": ("keys and values", "write 'key: value' lines below it"),
}
_LIMITS = {
    "greater_than": "has to be more than {gt:g}",
    "greater_than_equal": "has to be at least {ge:g}",
    "less_than": "has to be less than {lt:g}",
    "less_than_equal": "may be at most {le:g}",
}


def did_you_mean(word: str, known: Mapping[str, object] | tuple[str, ...] | list[str]) -> str:
    """The fix for a name that nobody knows: the nearest known one, or the choice.

    Example:
        >>> did_you_mean("titel", ["title", "id"]), did_you_mean("xyz", ["title", "id"])
        ("did you mean 'title'?", 'choose one of: id, title')
    """
    near = get_close_matches(word, known, n=1)
    if near:
        return f"did you mean '{near[0]}'?"
    names = sorted(known)
    if not names:
        return "remove it; there are none yet"
    return f"choose one of: {', '.join(names[:12])}{', ...' if len(names) > 12 else ''}"


def read_model(name: str, data: bytes, model: type[Model]) -> Model:
    """What a YAML file that a person wrote says, as a model.

    Args:
        name: of the file, for its problems.
        data: its bytes.
        model: what it has to fit.

    Raises:
        ProblemsError: everything that is wrong with it.
    """
    file = read_yaml(name, data)
    try:
        return model.model_validate(file.value)
    except ValidationError as error:
        raise ProblemsError(problems_of(file, model, error)) from None


def problems_of(file: YamlFile, model: type[BaseModel], error: ValidationError) -> list[Problem]:
    """All that a model refused, as problems.

    A list whose items are wrong also counts as too short, because the wrong items are left out: that is not told.

    Args:
        file: the file that was read.
        model: the model that its value was held against.
        error: what the model raised.
    """
    items = error.errors(include_url=False)
    told = (
        as_problem(file, model, item)
        for item in items
        if item["type"] != "too_short"
        or not any(
            len(other["loc"]) > len(item["loc"]) and other["loc"][: len(item["loc"])] == item["loc"] for other in items
        )
    )
    return few(file.name, told)


def as_problem(file: YamlFile, model: type[BaseModel], error: ErrorDetails) -> Problem:
    """One fault found by a model, as a problem with its place.

    Args:
        file: the file that was read.
        model: the model that its value was held against.
        error: one of the model's complaints.
    """
    loc, models = _place(file.value, model, error["loc"])
    kind, given, context = error["type"], error["input"], error.get("ctx", {})
    key = str(loc[-1]) if loc else "file"
    name = _shown(loc)
    if kind == "missing":
        return file.problem(loc, "missing-key", f"'{key}' is missing{_below(loc)}", f"add a line '{key}: ...'")
    if kind == "extra_forbidden":
        fields = [field.alias or name for each in models for name, field in each.model_fields.items()]
        return file.problem(loc, "unknown-key", f"unknown key '{key}'{_below(loc)}", did_you_mean(key, fields))
    if kind == "missing_translation":
        what = f"the text '{name}' is missing in language '{context['key']}'"
        return file.problem(loc, "missing-translation", what, f"add a line '{context['key']}: ...' below it")
    if kind == "unknown_language":
        what = f"unknown language '{context['key']}' of the text '{name}'"
        return file.problem(
            (*loc, context["key"]), "unknown-language", what, did_you_mean(context["key"], context["languages"])
        )
    if kind in ("union_tag_invalid", "union_tag_not_found"):
        tags = [tag.strip("'") for tag in context.get("expected_tags", "").split(", ")]
        kinds = [tag for tag in tags if " " not in tag] or ["number"]  # a tag of two words is another form of a kind
        if kind == "union_tag_not_found":
            return file.problem(
                loc, "missing-key", f"'kind' is missing{_below((*loc, 'kind'))}", "add a line 'kind: number'"
            )
        return file.value_problem(
            (*loc, "kind"), "wrong-value", f"unknown kind '{context['tag']}'", did_you_mean(str(context["tag"]), kinds)
        )
    if given is None:
        fix = "write a value behind the colon, or remove the line"
        return file.problem(loc, "empty-value", f"'{name}' has no value", fix)
    return file.value_problem(loc, *_wrong_value(kind, name, key, given, context))


def _wrong_value(kind: str, name: str, key: str, given: Any, context: Mapping[str, Any]) -> tuple[str, str, str]:
    """Code, what and fix for a value that doesn't fit its key."""
    if kind in _WRONG_TYPES:
        wanted, fix = _WRONG_TYPES[kind]
        subject = "the file" if name == "file" else f"'{name}'"
        if isinstance(given, str) and kind in ("int_type", "float_type"):
            fix = _number_typed(given) or fix
        if isinstance(given, str) and kind == "bool_type" and given.lower() in ("yes", "no", "on", "off"):
            fix = f"write {'true' if given.lower() in ('yes', 'on') else 'false'}; '{given}' is a text here"
        if kind in ("mapping_type", "dict_type") and key != "given":
            fix = "write it once for each language: {en: ..., hi: ...}"
        if kind == "string_type" and isinstance(given, dict):
            fix = "put the whole text in quotes; without them { starts keys and values"
        elif kind == "string_type" and isinstance(given, int | float):
            fix = f'put it in quotes: "{str(given).lower() if isinstance(given, bool) else f"{given:g}"}"'
        return "wrong-type", f"{subject} has to be {wanted}, and it is {_kind_of(given)}", fix
    if kind == "literal_error" and key == "format":
        if isinstance(given, int) and not isinstance(given, bool) and given > FORMAT:
            return "newer-format", f"format {given} is newer than this tool reads", "use a newer version of the tool"
        return "wrong-value", f"'format' has to be {FORMAT}", f"write 'format: {FORMAT}'"
    if kind == "literal_error":
        choice = [word.strip("'") for word in re.split(r", | or ", str(context["expected"]))]
        if choice == ["True"]:
            return "wrong-value", f"'{name}' has to be true", "write true, or take the file out of this course"
        return "wrong-value", f"'{name}' can't be '{given}'", did_you_mean(str(given), choice)
    if kind == "string_pattern_mismatch" and key == "answer":
        fix = "write 'exact', 'within 2 %' or 'within 5 mm'"
        return "wrong-value", f"'{name}' doesn't say how near is near enough: '{given}'", fix
    if kind == "string_pattern_mismatch" and ":" in str(context.get("pattern")):
        return "wrong-value", f"'{name}' is no time of day: '{given}'", 'write hours and minutes in quotes: "09:30"'
    if kind == "string_too_short":
        return "too-short", f"'{name}' is empty", "write something there"
    if kind == "string_pattern_mismatch":
        slug = "-".join(re.findall(r"[a-z0-9]+", str(given).lower()))
        what = f"'{given}' is no name: only small letters a to z, digits and single hyphens"
        return "not-a-name", what, f"write '{slug}'" if slug else "write a name in Latin letters"
    if kind == "string_too_long":
        return "too-long", f"'{name}' may have at most {context['max_length']} signs", "shorten it"
    if kind == "too_short":
        return (
            "too-few",
            f"'{name}' needs at least {context['min_length']}, and has {context['actual_length']}",
            "add more",
        )
    if kind == "too_long":
        return (
            "too-many",
            f"'{name}' may have at most {context['max_length']}, and has {context['actual_length']}",
            "remove some",
        )
    if kind in _LIMITS:
        return (
            "number-out-of-range",
            f"'{name}' {_LIMITS[kind].format(**context)}, and it is {given:g}",
            "check the number",
        )
    return (
        "wrong-value",
        f"'{name}' can't be read: {kind.replace('_', ' ')}",
        "compare with another file of the same kind",
    )


def _number_typed(text: str) -> str:
    """What to write where a text stands for a number; empty where the text gives no hint."""
    if re.fullmatch(r"-?0[0-9]+", text):
        return f"write {int(text)}, without the leading 0"
    if re.fullmatch(r"-?[0-9]+,[0-9]+", text):
        return f"write {text.replace(',', '.')}, with a point"
    number = re.fullmatch(r"(-?[0-9]+(?:\.[0-9]+)?)\s*[^\W\d_]*\.?", text)
    return f"write {number[1]}, without quotes or unit" if number else ""


def _kind_of(given: Any) -> str:
    if isinstance(given, str):
        return f"the text '{given[:30]}{'...' if len(given) > 30 else ''}'"
    if isinstance(given, bool):
        return str(given).lower()
    if isinstance(given, int | float):
        return f"the number {given:g}"
    return "a list" if isinstance(given, list) else "keys and values"


def _shown(loc: Loc) -> str:
    """A path as a person reads it: `steps[2].text`; list items are counted from 1."""
    text = ""
    for part in loc:
        text += f"[{part + 1}]" if isinstance(part, int) else f".{part}" if text else part
    return text or "file"


def _below(loc: Loc) -> str:
    return f" in {_shown(loc[:-1])}" if len(loc) > 1 else ""


def _place(value: Any, model: type[BaseModel], path: tuple[str | int, ...]) -> tuple[Loc, list[type[BaseModel]]]:
    """A complaint's path without the names of forms that the file doesn't hold, and the models that meet there.

    The path of the complaint names the chosen form of a union, as in ``("questions", 0, "number", "asks")``. The last
    part stays in any case: a missing key is not in the file either.
    """
    loc: Loc = ()
    here = [model]
    for position, part in enumerate(path):
        last = position == len(path) - 1
        held = isinstance(value, dict) and part in value if isinstance(part, str) else isinstance(value, list)
        fields = [found for each in here if (found := _field(each, part)) is not None]
        if not held and not fields and not last:
            here = [each for each in here if _is_form(each, part)] or here
            continue
        if not held and not fields and last and part in ("number", "steps", "one_of"):
            continue  # the complaint is about the form itself
        loc = (*loc, part)
        if not last or fields:
            here = here if last else [found for field in fields for found in _models_in(field)] or here
        if held:
            value = value[part]
    return loc, here


def _field(model: type[BaseModel], part: str | int) -> Any:
    for name, field in model.model_fields.items():
        if part in (name, field.alias):
            return [field.annotation, *field.metadata]
    return None


def _is_form(model: type[BaseModel], tag: str | int) -> bool:
    kind = model.model_fields.get("kind")
    if kind is not None:
        return str(tag).split(" ")[0] in get_args(kind.annotation)
    return model.__name__.lower() == str(tag).replace("_", "")


def _models_in(annotation: Any) -> list[type[BaseModel]]:
    """All the models that an annotation mentions."""
    if isinstance(annotation, list):
        return [found for each in annotation for found in _models_in(each)]
    if isinstance(annotation, type) and get_origin(annotation) is None:
        return [annotation] if issubclass(annotation, BaseModel) else []
    return [found for each in get_args(annotation) for found in _models_in(each)]
