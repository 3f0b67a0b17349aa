"""The shared calculation module: every number of the course comes from here, one topic a file.

Topics of the graph: `conversions`, `setting_out`, `frame`, `hoops`, `wall`, `volumes`, `mortar`. Beside them stand
ordinary functions that no learner works out by hand: `shell`, `plates`, `section`, `cutting`, `reservoir`, `calendar`.
"""

from generator.calculations import (
    conversions,
    foot,
    frame,
    hoops,
    mortar,
    props,
    ring_strength,
    roof,
    setting_out,
    shell_roof,
    stability,
    trough,
    volumes,
    wall,
)
from generator.calculations._book import BOOK

TOPICS = (
    conversions,
    setting_out,
    wall,
    frame,
    hoops,
    volumes,
    mortar,
    ring_strength,
    foot,
    trough,
    roof,
    shell_roof,
    props,
    stability,
)

__all__ = ["BOOK", "TOPICS"]
