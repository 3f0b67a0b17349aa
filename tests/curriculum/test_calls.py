"""Calls in texts: one form, plain names in quotes, and nothing that could run."""

import pytest

from generator.curriculum.calls import BLOCKS, IN_TEXTS, Call, Fault, calls, without_calls

ALL = (*IN_TEXTS, *BLOCKS)


def test_calls_come_in_order_with_their_places() -> None:
    text = '{{value("a")}} x {{ figure(\'b\', place="c") }}'
    assert list(calls(text, ALL)) == [Call("value", "a", None, 0, 14), Call("figure", "b", "c", 17, len(text))]


def test_a_worked_example_may_name_how_many_steps_it_shows() -> None:
    text = '{{ worked("a", steps=2) }}'
    assert list(calls(text, ALL)) == [Call("worked", "a", None, 0, len(text), 2)]


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("{{ worked('a', steps=0) }}", "bad-call"),
        ("{{ worked('a', rows=2) }}", "bad-call"),
        ("{{ formula('a', steps=2) }}", "bad-call"),
        ("{{ value }}", "bad-call"),
        ("{{ }}", "bad-call"),
        ("{{ value(x) }}", "bad-call"),
        ("{{ value('a' + 'b') }}", "bad-call"),
        ("{{ value(f'{1}') }}", "open-braces"),
        ("{{ value('a', 'b') }}", "bad-call"),
        ("{{ value() }}", "bad-call"),
        ("{{ value('a', place=1) }}", "bad-call"),
        ("{{ value('a', **{}) }}", "open-braces"),
        ("{{ value('a'", "open-braces"),
        ("value('a') }}", "open-braces"),
        ("{{ value('a')\n}}", "open-braces"),
        ("{{ caution('a', place='b') }}", "bad-call"),
        ("{{ 1 + 1 }}", "bad-call"),
        ("{{ value('a' }}", "bad-call"),
        ("{{ value('a\x00') }}", "bad-call"),
        ("{{ __import__('os') }}", "unknown-call"),
        ("{{ 'a'.upper() }}", "bad-call"),
    ],
)
def test_anything_else_in_double_braces_is_a_fault(text: str, code: str) -> None:
    found = list(calls(text, ALL))
    assert isinstance(found[0], Fault)
    assert found[0].code == code
    assert all(isinstance(fault, Fault) for fault in found)


def test_calls_become_spaces_so_that_places_stay() -> None:
    assert without_calls('a {{ value("b") }} c') == "a" + " " * 18 + "c"
