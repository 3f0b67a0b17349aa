"""Drawn numbers that Python and the page must both give, read from a file that neither of them wrote.

The file was made from SHA-256 alone: `words` = the hash of seed and counter, cut in eights; `below` = pairs of a count
and the number drawn for it, one after the other; `shuffle` = the numbers from 0 in their drawn order.
"""

import json
from pathlib import Path
from typing import Any

VECTORS: list[dict[str, Any]] = json.loads(Path(__file__).with_name("seed-vectors.json").read_text(encoding="utf-8"))[
    "vectors"
]
