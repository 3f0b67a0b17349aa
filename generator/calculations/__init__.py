"""The shared calculation module: every number of the course comes from here, one topic a file.

Topics of the graph: `conversions`, `setting_out`, `frame`, `hoops`, `wall`, `volumes`, `mortar`. Beside them stand
ordinary functions that no learner works out by hand: `shell`, `plates`, `section`, `cutting`, `reservoir`, `calendar`.
"""

from generator.calculations import (
    base,
    column_roof,
    conversions,
    foot,
    frame,
    ground,
    hoop_choice,
    hoops,
    mortar,
    props,
    rib_roof,
    ring_strength,
    roof,
    setting_out,
    shell_roof,
    sizing,
    stability,
    storage,
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
    hoop_choice,
    foot,
    trough,
    roof,
    column_roof,
    rib_roof,
    shell_roof,
    props,
    stability,
    storage,
    sizing,
    ground,
    base,
)

__all__ = ["BOOK", "TOPICS"]
