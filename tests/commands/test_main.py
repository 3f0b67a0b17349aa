"""The commands as a person types them: help, mistakes, and how every kind of failure ends."""

from collections.abc import Callable
from importlib import import_module

import click
import pytest

from generator.commands import main as entry
from generator.problems import ExitCode, MachineError, Problem, ProblemsError, RefusedError


@pytest.mark.parametrize("name", entry.COMMANDS)
def test_every_command_has_help_with_an_example(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert entry.run([name, "--help"]) == ExitCode.GOOD
    shown = capsys.readouterr().out
    assert f"Example: python3 tankschool.py {name}" in " ".join(shown.split())


def test_the_list_of_commands_shows_a_line_for_each(capsys: pytest.CaptureFixture[str]) -> None:
    assert entry.run(["--help"]) == ExitCode.GOOD
    shown = capsys.readouterr().out
    assert all(f"\n  {name} " in shown for name in entry.COMMANDS)


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (["biuld"], "Did you mean 'build'?"),
        (["zzz"], "There are: build"),
        (["check", "--contents", "x"], "--content"),
        (["check", "--content", "no-such-folder"], "does not exist"),
    ],
)
def test_a_mistyped_command_says_what_there_is(
    arguments: list[str], message: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert entry.run(arguments) == ExitCode.USAGE
    assert message in capsys.readouterr().err


@pytest.mark.parametrize(
    ("error", "code", "message"),
    [
        (
            ProblemsError([Problem("a.yaml", 2, 3, "x", "it is wrong", "mend it")]),
            1,
            "a.yaml:2:3: it is wrong (fix: mend",
        ),
        (RefusedError("the wall is too high"), 3, "Refused: the wall is too high"),
        (MachineError("no shaping"), 4, "could not do it: no shaping"),
        (OSError(28, "No space left on device", "output"), 4, "No space left on device (output)"),
        (click.exceptions.Abort(), 2, "Stopped"),
    ],
)
def test_every_failure_ends_with_its_code_and_a_sentence(
    error: Exception,
    code: int,
    message: str,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    def failing() -> None:
        raise error

    command: Callable[..., click.Command] = click.command("check")
    monkeypatch.setattr(import_module("generator.commands.check"), "check", command(failing))
    assert entry.run(["check"]) == code
    assert message in capsys.readouterr().err
