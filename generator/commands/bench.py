"""`bench`: runs the benchmarks and prints each as a ratio against a stated baseline of the same run."""

from __future__ import annotations

import importlib
import sys
from typing import Any

import click

from generator.commands.tool import ROOT, json_option, say_json
from generator.problems import ExitCode, MachineError


@click.command()
@click.argument("names", nargs=-1)
@json_option
def bench(names: tuple[str, ...], as_json: bool) -> int:
    """Run the benchmarks: each prints a ratio, its baseline and the ratio it should keep to; some tell more below it.

    Example: python3 tankschool.py bench        (or: bench variants)
    """
    folder = ROOT / "tests" / "benchmarks"
    found = sorted(path.stem.removeprefix("bench_") for path in folder.glob("bench_*.py"))
    if not found:
        raise MachineError(f"no benchmarks in '{folder}': they come with the project's source, not with a copied stick")
    unknown = [name for name in names if name not in found]
    if unknown:
        raise click.UsageError(f"No benchmark '{unknown[0]}'. There are: {', '.join(found)}.")
    sys.path.insert(0, str(ROOT))
    rows = []
    for name in names or found:
        module = importlib.import_module(f"tests.benchmarks.bench_{name}")
        for result in module.results():
            rows.append(result)
            if not as_json:
                click.echo(str(result))
        if not as_json and hasattr(module, "lines"):
            click.echo("\n".join(module.lines()))
    if as_json:
        say_json({"format": 1, "results": [_as_data(result) for result in rows]})
    return ExitCode.GOOD if all(result.good for result in rows) else ExitCode.PROBLEMS


def _as_data(result: Any) -> dict[str, object]:
    return {name: getattr(result, name) for name in ("name", "ours", "baseline", "ratio", "limit", "good")}
