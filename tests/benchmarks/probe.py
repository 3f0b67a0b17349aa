"""Memory of a process of its own, told by the system.

What the system tells of a process that another one starts begins with what the starter held at that moment: a benchmark
that has measured much already would hide what it starts. A small process stands between the two.
"""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]
_BETWEEN = "import subprocess, sys; sys.exit(subprocess.call([sys.executable, '-c', *sys.argv[1:]]))"
_PEAK = """
import resource as _resource, sys as _sys
_all = [_resource.getrusage(_who).ru_maxrss for _who in (_resource.RUSAGE_SELF, _resource.RUSAGE_CHILDREN)]
print(max(_all) / (1e6 if _sys.platform == "darwin" else 1e3))
"""


def most_memory(code: str, *arguments: str) -> float:
    """Most memory that one process took, the one that runs the code or any that it started [MB].

    Args:
        code: Python; finds its arguments in `sys.argv[1:]`.
        arguments: for it.

    Raises:
        RuntimeError: it failed.
    """
    done = subprocess.run(
        [sys.executable, "-c", _BETWEEN, code + _PEAK, *arguments],
        cwd=ROOT,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        capture_output=True,
        text=True,
        check=False,
    )
    if done.returncode:
        raise RuntimeError(f"what was to be measured failed: {done.stderr}")
    return float(done.stdout.split()[-1])
