"""`register`: people, cohorts, marks, decisions, certificates and tanks; a guided menu when run bare.

Each group of jobs lives in a file of its own and is imported only when it is called.
"""

from __future__ import annotations

import os
import sys
from difflib import get_close_matches
from importlib import import_module
from pathlib import Path

import click

from generator.commands.tool import content_option, language_option

HOMES = {
    "people": "people", "cohorts": "cohorts", "template": "marks", "sittings": "marks", "marks": "marks",
    "observations": "observations", "application": "application", "cut": "decide", "decide": "decide",
    "decisions": "decisions", "appeal": "appeal",
    "issue": "issue", "reprint": "issue", "status": "issue", "certificates": "issue", "list": "issue",
    "complaint": "complaint", "tank": "tank", "report": "report", "audit": "keep", "backup": "keep",
    "restore": "keep", "clock": "keep", "keys": "keys",
}  # fmt: skip
"""In which file each group or job lives: `register_<home>.py`."""


class Jobs(click.Group):
    """The jobs by name."""

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: D102 (click's own interface)
        return list(HOMES)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:  # noqa: D102 (click's)
        return command_of(cmd_name) if cmd_name in HOMES else None

    def resolve_command(  # noqa: D102 (click's own interface)
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        if args and args[0] not in HOMES:
            near = get_close_matches(args[0], HOMES, n=1)
            hint = f" Did you mean '{near[0]}'?" if near else f" There are: {', '.join(HOMES)}."
            raise click.UsageError(f"'register' has no job '{args[0]}'.{hint}")
        return super().resolve_command(ctx, args)


def command_of(name: str) -> click.Command:
    """A group or a job."""
    found = getattr(import_module(f"generator.commands.register_{HOMES[name]}"), f"{name}_jobs")
    assert isinstance(found, click.Command)  # noqa: S101 (a fault of this program, found by its first test)
    return found


@click.group(cls=Jobs, invoke_without_command=True)
@click.option("--registry", envvar="TANKSCHOOL_REGISTRY", metavar="PLACE",
              help="For the menu: file of the registry, or a server's address.")  # fmt: skip
@language_option
@content_option
@click.pass_context
def register(ctx: click.Context, registry: str | None, language: str, content: Path) -> int | None:
    """Keep people, cohorts, marks, decisions, certificates and tanks. Run bare, it asks what to do.

    Every job of the menu is also a command for scripts: 'register people add --help'.

    Example: python3 tankschool.py register --language hi
    """
    if ctx.invoked_subcommand is not None:
        own = {"registry": registry, "language": language, "content": content}
        typed = click.core.ParameterSource.COMMANDLINE
        ctx.obj = {name: value for name, value in own.items() if ctx.get_parameter_source(name) is typed}
        return None
    from generator.commands.register_menu import menu
    from generator.registry.place import default_place

    place = registry or str(default_place(os.environ, Path.home(), sys.platform))
    return menu(place, language, content)
