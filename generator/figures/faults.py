"""All drawings with one fault to find, by name."""

from __future__ import annotations

from collections.abc import Mapping

from generator.figures.areas import Spot
from generator.figures.fault_cage import LAPS_IN_LINE, MESH_BELLY, MISSING_STARTER, OPEN_LAP
from generator.figures.fault_cut import THIN_COVER, VOID
from generator.figures.fault_face import DRY_STRIP, LEAKING_JOINT, RUST_RUN, SHADOW_CRACKS
from generator.figures.fault_ground import BENT_HOOP, FILL_UNDER_EDGE

FAULTS: Mapping[str, Spot] = {
    spot.key: spot
    for spot in (
        FILL_UNDER_EDGE,
        MISSING_STARTER,
        BENT_HOOP,
        OPEN_LAP,
        LAPS_IN_LINE,
        MESH_BELLY,
        VOID,
        THIN_COVER,
        DRY_STRIP,
        SHADOW_CRACKS,
        RUST_RUN,
        LEAKING_JOINT,
    )
}
"""In the order of the work: ground, cage, mortar, curing, and what shows later."""
