"""Most memory that a whole build from nothing takes, against the 500 MB that a cheap laptop can spare."""

from __future__ import annotations

import tempfile
from dataclasses import dataclass

from tests.benchmarks import Result
from tests.benchmarks.probe import most_memory

SPARE = 500.0
"""MB."""
_PROBE = """
import sys
from generator.commands.main import run
if code := run(sys.argv[1:]):
    sys.exit(code)
"""


@dataclass(frozen=True, slots=True)
class Peak(Result):
    """Memory of the largest process of a build.

    Args:
        name: what was measured.
        ours: most memory [MB].
        baseline: memory that may be used [MB].
        limit: largest ratio that is good.
    """

    def __str__(self) -> str:
        verdict = "good" if self.good else "TOO MUCH"
        return f"{self.name}: {self.ours:.0f} MB of {self.baseline:.0f} MB = {self.ratio:.2f} (limit 1): {verdict}"


def results() -> list[Peak]:
    """One build into an empty folder."""
    with tempfile.TemporaryDirectory() as folder:
        megabytes = most_memory(_PROBE, "build", "--json", "--output", folder)
    return [Peak("a whole build, largest process", megabytes, SPARE, 1.0)]
