"""The list of commands, and what every failure looks like to the person who typed one.

A command's own file is imported only when that command is called, so that a short command starts at once.
"""

from __future__ import annotations

import sys
from difflib import get_close_matches
from importlib import import_module

import click

from generator.commands.tool import say_problems
from generator.problems import ExitCode, MachineError, ProblemsError, RefusedError

COMMANDS = (
    "build", "test", "check", "new", "preview", "plan", "sheets", "stick",
    "paper", "mark", "analyse", "register", "verify", "bench",
)  # fmt: skip
"""In the order that a newcomer needs them."""


class Commands(click.Group):
    """The commands by name; each lives in the file of its name."""

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: D102 (click's own interface)
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:  # noqa: D102 (click's)
        if cmd_name not in COMMANDS:
            return None
        command = getattr(import_module(f"generator.commands.{cmd_name}"), cmd_name)
        assert isinstance(command, click.Command)  # noqa: S101 (a fault of this program, found by its first test)
        return command

    def resolve_command(  # noqa: D102 (click's own interface)
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        if args and self.get_command(ctx, args[0]) is None:
            near = get_close_matches(args[0], COMMANDS, n=1)
            hint = f" Did you mean '{near[0]}'?" if near else f" There are: {', '.join(COMMANDS)}."
            raise click.UsageError(f"There is no command '{args[0]}'.{hint}")
        return super().resolve_command(ctx, args)


@click.group(cls=Commands, context_settings={"help_option_names": ["-h", "--help"]})
def main() -> None:
    """Teach people to build ferrocement water tanks, from one course and one calculation module.

    Example: python3 tankschool.py build
    """


def run(arguments: list[str]) -> int:
    """Run one command and return its exit code; no failure of input or machine ends in a traceback.

    Args:
        arguments: the words after the program's name.
    """
    try:
        result = main.main(arguments, prog_name="tankschool.py", standalone_mode=False)
    except click.exceptions.Abort:
        click.echo("Stopped.", err=True)
        return ExitCode.USAGE
    except click.ClickException as error:
        error.show()
        return ExitCode.USAGE
    except ProblemsError as error:
        say_problems(error.problems)
        return ExitCode.PROBLEMS
    except RefusedError as error:
        click.echo(f"Refused: {error}", err=True)
        return ExitCode.REFUSED
    except MachineError as error:
        click.echo(f"The machine could not do it: {error}", err=True)
        return ExitCode.MACHINE
    except BrokenPipeError:
        sys.stderr.close()  # whoever read our output has seen enough
        return ExitCode.GOOD
    except OSError as error:
        where = f" ({error.filename})" if error.filename else ""
        click.echo(f"The machine could not do it: {error.strerror or error}{where}", err=True)
        return ExitCode.MACHINE
    return result if isinstance(result, int) else ExitCode.GOOD
