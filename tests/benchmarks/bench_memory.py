"""Most memory that a whole build from nothing takes, against the 500 MB that a cheap laptop can spare."""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
from dataclasses import dataclass
from pathlib import Path

from tests.benchmarks import Result

ROOT = Path(__file__).parents[2]
SPARE = 500.0
"""MB."""
_PROBE = """
import resource, sys
from generator.commands.main import run
code = run(sys.argv[1:])
own, child = (resource.getrusage(who).ru_maxrss for who in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN))
print(max(own, child) / (1e6 if sys.platform == "darwin" else 1e3), code)
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
        done = subprocess.run(
            [sys.executable, "-c", _PROBE, "build", "--json", "--output", folder],
            cwd=ROOT,
            env={**os.environ, "PYTHONPATH": str(ROOT)},
            capture_output=True,
            text=True,
            check=True,
        )
    megabytes, code = done.stdout.split()[-2:]
    if code != "0":
        raise RuntimeError(f"the build failed with {code}: {done.stderr}")
    return [Peak("a whole build, largest process", float(megabytes), SPARE, 1.0)]
