"""`python3 tankschool.py COMMAND` ends up here."""

from __future__ import annotations

import sys

from generator.commands.main import run

if __name__ == "__main__":
    sys.exit(run(sys.argv[1:]))
