"""All drawings with one fault to find, by name."""

from __future__ import annotations

from collections.abc import Mapping

from generator.figures.areas import Spot
from generator.figures.fault_cage import LAPS_IN_LINE, MESH_BELLY, MISSING_STARTER, OPEN_LAP
from generator.figures.fault_cut import THIN_COVER, VOID
from generator.figures.fault_face import DRY_STRIP, LEAKING_JOINT, RUST_RUN, SHADOW_CRACKS
from generator.figures.fault_fittings import BARE_PIPE, OPEN_LID, WASHED_FOOT
from generator.figures.fault_ground import BENT_HOOP, FILL_UNDER_EDGE
from generator.figures.fault_site import BAGS_ON_GROUND, BARE_PROP, SILTED_SAND
from generator.figures.fault_wire import SHORT_LAP, TIE_TAIL

FAULTS: Mapping[str, Spot] = {
    spot.key: spot
    for spot in (
        FILL_UNDER_EDGE,
        MISSING_STARTER,
        BENT_HOOP,
        OPEN_LAP,
        LAPS_IN_LINE,
        MESH_BELLY,
        SHORT_LAP,
        TIE_TAIL,
        BARE_PIPE,
        BAGS_ON_GROUND,
        SILTED_SAND,
        VOID,
        THIN_COVER,
        BARE_PROP,
        DRY_STRIP,
        SHADOW_CRACKS,
        RUST_RUN,
        LEAKING_JOINT,
        WASHED_FOOT,
        OPEN_LID,
    )
}
"""In the order of the work: ground, cage, mortar, curing, and what shows later."""
