"""The jobs of a build, from clearing the ground to the hand-over: what each waits for, and how long the crew needs.

`build_jobs` makes the list that `calendar` puts on days. Some jobs have one day, whatever the crew: the base, each face
of the wall and the roof are closed without a break, so the crew must fit the job. `people_missing` says where it does
not. Seven hold points stand between the jobs: each takes no day, and nothing after it starts before it is signed.

Caution: nobody works under fresh formwork, alone in the tank, or below a tank that fills for the first time.

References:
    .. [1] Indian labour-output constants, days of 8 hours (a tabulation).
    .. [2] IS 456:2000, 11.3.1 (read at second hand): props of slabs up to 4.5 m stay 7 days, of wider ones 14 days.
    .. [3] Rainwater Reservoirs above Ground Structures for Roof Catchment, GTZ/GATE 1989: first coat without a break.
"""

from __future__ import annotations

from dataclasses import dataclass, fields
from math import isfinite

from generator.calculations.calendar import Job
from generator.calculations.labour import (
    BASE_LABOURER,
    BASE_MASON,
    BASE_WATER_CARRIER,
    DIGGING,
    FITTER,
    FITTER_HELPER,
    HANDS_TO_A_MASON,
    MIXING,
    MIXING_WATER_CARRIER,
)
from generator.formula import Constant, OutOfRangeError, derived, from_memory, published, whole_up

_POLICY = "policy of this course: "
BASE_SET = Constant(3, "day", derived(_POLICY + "no frame on a base before it has set for three days"))
FLOOR_HARDENS = Constant(7, "day", derived(_POLICY + "props stand on a floor that is a week old"))
LEAST_CURING = Constant(
    14, "day", derived(_POLICY + "kept wet for 14 days at the very least, counted from the last coat")
)
LEAST_PROPS = Constant(7, "day", published("IS 456:2000, 11.3.1 (second hand): props of slabs up to 4.5 m, 7 days"))
CURING_CHECK = Constant(7, "day", derived(_POLICY + "the curing is looked at and signed a week after the last coat"))
SOAK = Constant(7, "day", derived(_POLICY + "the full tank soaks for a week before the test"))
TEST = Constant(7, "day", derived(_POLICY + "the leak test is read over a week"))
CHLORINE_STANDS = Constant(1, "day", derived(_POLICY + "chlorinated water stands for a day and is drained"))
FLUSHES = Constant(
    2, "day", derived(_POLICY + "filled and drained at least twice, until the water is no longer bitter")
)
FACE_OF_A_DAY = Constant(4, "m**2/day", from_memory("one face of a mesh wall by one mason in a day: 3 to 5 m2"))
MESH_OF_A_DAY = Constant(8, "m**2/day", from_memory("mesh that one person hangs and ties in a day: measure it"))
STAGE = Constant(0.3, "m/day", published("practice brief on brick dome tanks: filled about 300 mm a day"))

HOLD_POINTS = (
    "hold_ground",
    "hold_base_steel",
    "hold_cage",
    "hold_first_batch",
    "hold_roof",
    "hold_curing",
    "hold_leak_test",
)
"""Jobs without a day of their own: looked at by a second person, and signed."""


@dataclass(frozen=True, slots=True)
class BuildSizes:
    """What is built, and by how many.

    Args:
        excavation: ground to dig out [m**3].
        concrete: concrete of the base [m**3].
        steel: bars of the cage, hoops and uprights [kg]; 0 where the cage is mesh alone.
        mesh: wall face on which mesh is hung, both faces counted [m**2].
        wall_area: the larger face of the wall [m**2].
        floor_area: floor [m**2].
        roof_area: roof; 0 without one [m**2].
        mortar: mortar of wall, floor and roof [m**3].
        water_depth: depth of the full tank [m].
        curing_days: days of unbroken wetting after the last coat, at least 14.
        prop_days: days that the roof's props stay, at least 7.
        roof: whether a roof is poured on the tank.
        masons: masons in the crew.
        labourers: labourers in the crew.
        carrying_days: days of carrying by other people, beside the digging.
    """

    excavation: float
    concrete: float
    steel: float
    mesh: float
    wall_area: float
    floor_area: float
    roof_area: float
    mortar: float
    water_depth: float
    curing_days: int
    prop_days: int
    roof: bool
    masons: int
    labourers: int
    carrying_days: int = 0


def build_jobs(sizes: BuildSizes) -> tuple[Job, ...]:
    """Make the jobs of a build.

    Args:
        sizes: what is built, and by how many.

    Returns:
        Jobs in the order of a build without trouble; their names are keys of words and never change.

    Raises:
        OutOfRangeError: nobody to work, less wetting or propping than this course allows, or no sizes.

    Example:
        >>> tank = BuildSizes(1.9, 0.9, 42, 27, 14, 6.2, 0, 1.1, 1.3, 20, 7, roof=False, masons=3, labourers=5)
        >>> [job.name for job in build_jobs(tank)][:4]
        ['clear_ground', 'bring_materials', 'set_out_and_dig', 'hold_ground']
    """
    _refuse(sizes)
    hands = sizes.masons + sizes.labourers
    steel = _days(sizes.steel * (FITTER + FITTER_HELPER) / 2 / hands)
    frame: list[Job] = []
    frame_stands = {"base_concrete": int(BASE_SET)}
    if sizes.steel:
        frame = [
            Job("bend_hoops", steel, {"base_concrete": 0}, outdoors=False),
            Job("frame_and_hoops", steel, {"base_concrete": int(BASE_SET), "bend_hoops": 0}),
        ]
        frame_stands = {"frame_and_hoops": 0}
    jobs = [
        Job("clear_ground", 1, {}),
        Job("bring_materials", sizes.carrying_days, {}),
        Job("set_out_and_dig", _days(sizes.excavation * DIGGING / sizes.labourers), {"clear_ground": 0}),
        Job("hold_ground", 0, {"set_out_and_dig": 0}),
        Job("base_stone", 1, {"hold_ground": 0, "bring_materials": 0}),
        Job("base_steel", 1, {"base_stone": 0}),
        Job("hold_base_steel", 0, {"base_steel": 0}),
        Job("base_concrete", 1, {"hold_base_steel": 0}),
        *frame,
        Job("mesh_and_fittings", _days(sizes.mesh / MESH_OF_A_DAY / hands), frame_stands),
        Job("hold_cage", 0, {"mesh_and_fittings": 0}),
        Job("hold_first_batch", 0, {"hold_cage": 0}),
        Job("first_coat", 1, {"hold_first_batch": 0}),
        Job("second_face", 1, {"first_coat": 0}),
        Job("floor_and_cove", _days(sizes.floor_area / FACE_OF_A_DAY / sizes.masons), {"second_face": 0}),
    ]
    last, clear = "floor_and_cove", {"floor_and_cove": 0}
    if sizes.roof:
        last = "roof_pour"
        forms = _days(sizes.roof_area / MESH_OF_A_DAY / hands)
        jobs += [
            Job("roof_forms", forms, {"floor_and_cove": int(FLOOR_HARDENS)}),
            Job("roof_steel_and_mesh", forms, {"roof_forms": 0}),
            Job("hold_roof", 0, {"roof_steel_and_mesh": 0}),
            Job("roof_pour", 1, {"hold_roof": 0}),
            Job("remove_props", 1, {"roof_pour": sizes.prop_days}),
        ]
        clear = {"remove_props": 0}
    jobs += [
        Job("hold_curing", 0, {last: int(CURING_CHECK)}),
        Job("wet_curing", 0, {last: sizes.curing_days, "hold_curing": 0}),
        Job("finishing_wash", 1, {"wet_curing": 0, **clear}),
        Job("staged_filling", _days(sizes.water_depth / STAGE), {"finishing_wash": 0}, outdoors=False),
        Job("soak", 0, {"staged_filling": int(SOAK)}),
        Job("leak_test", 0, {"soak": int(TEST)}),
        Job("hold_leak_test", 0, {"leak_test": 0}),
        Job("flush", int(FLUSHES), {"hold_leak_test": 0}, outdoors=False),
        Job("disinfection", 1, {"flush": 0}, outdoors=False),
        Job("hand_over", 1, {"disinfection": int(CHLORINE_STANDS)}, outdoors=False),
    ]
    return tuple(jobs)


def people_missing(sizes: BuildSizes) -> dict[str, tuple[int, int]]:
    """Masons and labourers to borrow for the jobs that must close in one day. An empty answer is not a promise.

    What a mason covers in a day is recalled: the answer warns; it never says that a crew is enough.

    Args:
        sizes: what is built, and by how many.

    Returns:
        Job -> (masons, labourers) that are missing; jobs with enough people are left out.

    Raises:
        OutOfRangeError: as `build_jobs`.

    Example:
        >>> tank = BuildSizes(1.9, 0.9, 42, 27, 14, 6.2, 0, 1.1, 1.3, 20, 7, roof=False, masons=3, labourers=5)
        >>> people_missing(tank)
        {'first_coat': (1, 1), 'second_face': (1, 1)}
    """
    _refuse(sizes)
    needed = {
        "base_concrete": (
            _days(sizes.concrete * BASE_MASON),
            _days(sizes.concrete * (BASE_LABOURER + BASE_WATER_CARRIER)),
        ),
        "first_coat": _coat_people(sizes, sizes.wall_area),
        "second_face": _coat_people(sizes, sizes.wall_area),
    }
    if sizes.roof:
        needed["roof_pour"] = _coat_people(sizes, sizes.roof_area)
    missing = {
        job: (max(0, masons - sizes.masons), max(0, labourers - sizes.labourers))
        for job, (masons, labourers) in needed.items()
    }
    return {job: people for job, people in missing.items() if any(people)}


def _coat_people(sizes: BuildSizes, area: float) -> tuple[int, int]:
    """Masons, and the labourers who serve them or mix the area's part of the mortar, whichever are more."""
    masons = _days(area / FACE_OF_A_DAY)
    mortared = 2 * sizes.wall_area + sizes.floor_area + sizes.roof_area
    mixing = sizes.mortar * (area / mortared if mortared else 0) * (MIXING + MIXING_WATER_CARRIER)
    return masons, _days(max(masons * HANDS_TO_A_MASON, mixing))


def _days(work: float) -> int:
    """Whole days, at least one: the crew comes for the day."""
    return max(1, int(whole_up(work)))


def _refuse(sizes: BuildSizes) -> None:
    for field in fields(sizes):
        value = getattr(sizes, field.name)
        if not (isfinite(value) and value >= 0):
            raise OutOfRangeError(f"{field.name} of {value} can't be: measure again")
    if sizes.masons < 1 or sizes.labourers < 1:
        raise OutOfRangeError("a tank needs at least one mason and one labourer; nobody works on it alone")
    if sizes.water_depth <= 0:
        raise OutOfRangeError("a tank without water needs no calendar: give the depth of the full tank")
    if sizes.curing_days < LEAST_CURING:
        raise OutOfRangeError(
            f"{sizes.curing_days} days of wetting are too few: at least {LEAST_CURING:g}, counted from the last coat"
        )
    if sizes.roof and (sizes.prop_days < LEAST_PROPS or sizes.roof_area <= 0):
        raise OutOfRangeError(
            f"a roof of {sizes.roof_area:g} m2 with props for {sizes.prop_days} days can't be: give its area, and "
            f"leave the props for at least {LEAST_PROPS:g} days; over a span of 4.5 m, or in the cold, "
            "ask a licensed engineer"
        )
