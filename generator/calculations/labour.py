"""Work of people: digging, mixing, base, steel, mesh; person-days, days with a crew, and the day of the hand-over.

A person-day is the work of one person in one day. Print counts days of eight hours, on easy ground, near the road, by
people who do nothing else: on a hill it is the least. Divide by the crew for days; divide only what can be shared.
Waiting is no work, but it takes days: the base sets, the wall is kept wet, the tank soaks and is tested.

Caution: tired people get hurt. No digging deeper than the knee without sloped or propped sides, nobody alone in a pit,
gloves for wet cement and cut mesh, water and shade for all.

References:
    .. [1] Indian labour-output constants, days of 8 hours (a tabulation; IS 7272 part 1 itself was not opened).
"""

from generator.calculations._book import BOOK
from generator.calculations.mortar import PERCENT
from generator.formula import Constant, common_practice, derived, from_memory, published, whole_down, whole_up

_TABLE = "Indian labour-output constants (tabulation), days of 8 hours: "
DIGGING = Constant(0.62, "day/m**3", published(_TABLE + "digging over an area, up to 1.5 m deep, labourer 0.62 per m3"))
DIGGING_FOREMAN = Constant(0.06, "day/m**3", published(_TABLE + "the same digging, foreman 0.06 per m3"))
MIXING = Constant(0.75, "day/m**3", published(_TABLE + "mortar mixed by hand, any ratio, labourer 0.75 per m3"))
MIXING_WATER_CARRIER = Constant(
    0.07, "day/m**3", published(_TABLE + "mortar mixed by hand, any ratio, water-carrier 0.07 per m3")
)
BASE_MASON = Constant(0.17, "day/m**3", published(_TABLE + "reinforced footing concrete, mason 0.17 per m3"))
BASE_LABOURER = Constant(2.0, "day/m**3", published(_TABLE + "reinforced footing concrete, labourer 2.00 per m3"))
BASE_WATER_CARRIER = Constant(
    0.9, "day/m**3", published(_TABLE + "reinforced footing concrete, water-carrier 0.90 per m3")
)
FITTER = Constant(
    0.01, "day/kg", published("Indian labour-output constants (second hand): 100 kg of bars, fitter 1 day")
)
FITTER_HELPER = Constant(
    0.01, "day/kg", published("Indian labour-output constants (second hand): 100 kg of bars, labourer 1 day")
)
HANDS_TO_A_MASON = Constant(
    1.5, "", published("tabulated Indian labour constants: plaster, 14 labourers and 1 water-carrier to 10 masons")
)
PRINTED_HOURS = Constant(8, "hour", published(_TABLE + "a day is 8 hours"))
BASE_SETS = Constant(3, "day", derived("policy of this course: no frame on a base before it has set for three days"))
POUR_AND_COATS = Constant(
    3, "day", derived("policy of this course: the base in one day, a face of the wall a day, the second the next day")
)
ONE_DAY = Constant(1, "day", derived("whole days: the crew comes for the day"))

BOOK.given(
    "crew_labourers",
    symbol="n_lb",
    unit="",
    low=1,
    high=20,
    step=1,
    source=common_practice("more than twenty stand in each other's way round one tank"),
)
BOOK.given(
    "crew_masons",
    symbol="n_lm",
    unit="",
    low=1,
    high=10,
    step=1,
    source=common_practice("masons round one wall; a plastering day of a large tank needs up to ten"),
)
BOOK.given(
    "hours_per_day",
    symbol="h_lh",
    unit="hour",
    low=4,
    high=9,
    step=0.5,
    source=common_practice("hours of work without rests; print counts 8"),
)
BOOK.given(
    "mesh_day_area",
    symbol="A_ld",
    unit="m**2/day",
    low=2,
    high=25,
    step=0.5,
    source=from_memory("mesh that one person hangs and ties in a day differs widely: measure it on the first tank"),
)


@BOOK.quantity(
    symbol="t_ld",
    unit="day",
    places=1,
    low=0,
    high=40,
    source=published(_TABLE + "digging over an area, up to 1.5 m deep, labourer 0.62 per m3"),
)
def digging_days(excavation_volume: float) -> float:
    """Person-days of digging in ordinary soil; rock takes several times as long.

    Args:
        excavation_volume: ground to dig out, measured in the ground [m**3], 0.05 to 60.

    Returns:
        Person-days of labourers [day], 0 to 40.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(digging_days(excavation_volume=5), 1)
        '3.1'
    """
    return excavation_volume * DIGGING


@BOOK.quantity(symbol="V_lx", unit="m**3", places=2, low=0.02, high=5.6, source=derived("what is built, and the loss"))
def mortar_to_mix(wall_mortar_volume: float, mortar_waste: float) -> float:
    """Mortar that must be mixed for the wall: what stays in it, and what falls or sets too early.

    Args:
        wall_mortar_volume: mortar in the finished wall [m**3], 0.02 to 4.6.
        mortar_waste: mortar that is lost [%], 0 to 20.

    Returns:
        Volume [m**3], 0.02 to 5.6.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(mortar_to_mix(wall_mortar_volume=0.9, mortar_waste=10), 2)
        '0.99'
    """
    return wall_mortar_volume * (1 + mortar_waste / PERCENT)


@BOOK.quantity(
    symbol="t_lx",
    unit="day",
    places=1,
    low=0.01,
    high=5,
    source=published(_TABLE + "mortar mixed by hand, labourer 0.75 and water-carrier 0.07 per m3"),
)
def mixing_days(mortar_to_mix: float) -> float:
    """Person-days of mixing mortar by hand, the water-carrier counted.

    Caution: wet cement burns skin; gloves, boots, and water to wash at hand.

    Args:
        mortar_to_mix: mortar for the wall, with its loss [m**3], 0.02 to 5.6.

    Returns:
        Person-days of labourers [day], 0.01 to 5.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(mixing_days(mortar_to_mix=2), 1)
        '1.6'
    """
    return mortar_to_mix * (MIXING + MIXING_WATER_CARRIER)


@BOOK.quantity(
    symbol="t_lc",
    unit="day",
    places=1,
    low=0.05,
    high=62,
    source=published(_TABLE + "reinforced footing concrete, labourer 2.00 and water-carrier 0.90 per m3"),
)
def base_labour_days(base_concrete_volume: float) -> float:
    """Person-days of labourers for the base concrete; print reckons with a machine that mixes, by hand it is more.

    Args:
        base_concrete_volume: concrete in the base [m**3], 0.03 to 21.

    Returns:
        Person-days of labourers [day], 0.05 to 62.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(base_labour_days(base_concrete_volume=1.2), 1)
        '3.5'
    """
    return base_concrete_volume * (BASE_LABOURER + BASE_WATER_CARRIER)


@BOOK.quantity(
    symbol="t_lk",
    unit="day",
    places=1,
    low=0,
    high=4,
    source=published(_TABLE + "reinforced footing concrete, mason 0.17 per m3"),
)
def base_mason_days(base_concrete_volume: float) -> float:
    """Person-days of masons for the base concrete.

    Args:
        base_concrete_volume: concrete in the base [m**3], 0.03 to 21.

    Returns:
        Person-days of masons [day], 0 to 4.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(base_mason_days(base_concrete_volume=3), 1)
        '0.5'
    """
    return base_concrete_volume * BASE_MASON


@BOOK.quantity(
    symbol="n_lp", unit="", places=0, low=1, high=124, source=derived("the base is poured in one day, without a joint")
)
def base_pour_people(base_labour_days: float, hours_per_day: float) -> float:
    """Labourers who must be there on the day of the base: it is poured in one day. Too few: borrow neighbours.

    Args:
        base_labour_days: person-days of labourers for the base concrete [day], 0.05 to 62.
        hours_per_day: hours worked in a day [hour], 4 to 9.

    Returns:
        Number of people [-], 1 to 124.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> base_pour_people(base_labour_days=3.5, hours_per_day=7)
        4.0
    """
    return whole_up(base_labour_days * PRINTED_HOURS / hours_per_day / ONE_DAY)


@BOOK.quantity(symbol="M_ls", unit="kg", places=0, low=0.3, high=4400, source=derived("hoops and upright bars"))
def cage_steel_mass(hoop_mass: float, bar_count: float, wall_height: float, bar_mass_per_metre: float) -> float:
    """Weight of the bars in the cage: hoops and upright bars. Angles are set up, not tied, and stand apart.

    Args:
        hoop_mass: weight of all the hoops [kg], 0.3 to 3000.
        bar_count: number of upright bars [-], 0 to 350.
        wall_height: height of the wall [m], 0.4 to 2.4.
        bar_mass_per_metre: weight of a metre of upright bar [kg/m], 0.09 to 1.6.

    Returns:
        Mass [kg], 0.3 to 4400.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(cage_steel_mass(hoop_mass=40, bar_count=30, wall_height=1.5, bar_mass_per_metre=0.4), 0)
        '58'
    """
    return hoop_mass + bar_count * wall_height * bar_mass_per_metre


@BOOK.quantity(
    symbol="t_lf",
    unit="day",
    places=1,
    low=0,
    high=44,
    source=published("Indian labour-output constants (second hand): 100 kg of bars, fitter 1 and labourer 1"),
)
def steel_fitter_days(cage_steel_mass: float) -> float:
    """Person-days of the one who cuts, bends and ties the bars; a helper takes as many.

    Args:
        cage_steel_mass: weight of the bars in the cage [kg], 0.3 to 4400.

    Returns:
        Person-days of fitters [day], 0 to 44.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(steel_fitter_days(cage_steel_mass=150), 1)
        '1.5'
    """
    return cage_steel_mass * FITTER


@BOOK.quantity(
    symbol="t_ls",
    unit="day",
    places=1,
    low=0,
    high=88,
    source=published("Indian labour-output constants (second hand): 100 kg of bars take a fitter and a labourer a day"),
)
def steel_fixing_days(cage_steel_mass: float) -> float:
    """Person-days of cutting, bending and tying the bars: fitter and helper.

    Args:
        cage_steel_mass: weight of the bars in the cage [kg], 0.3 to 4400.

    Returns:
        Person-days [day], 0 to 88.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(steel_fixing_days(cage_steel_mass=150), 1)
        '3.0'
    """
    return cage_steel_mass * (FITTER + FITTER_HELPER)


@BOOK.quantity(
    symbol="t_lm",
    unit="day",
    places=1,
    low=0,
    high=63,
    source=from_memory("faces over the mesh that one person ties a day; that figure is yours to measure"),
)
def mesh_tying_days(plaster_area_outside: float, plaster_area_inside: float, mesh_day_area: float) -> float:
    """Person-days of hanging and tying mesh on both faces of the wall.

    Caution: cut wire springs; gloves and eye cover, ends bent in.

    Args:
        plaster_area_outside: outer face of the wall [m**2], 0.8 to 62.
        plaster_area_inside: inner face of the wall [m**2], 0.7 to 61.
        mesh_day_area: wall face on which one person hangs and ties mesh in a day [m**2/day], 2 to 25.

    Returns:
        Person-days [day], 0 to 63.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(mesh_tying_days(plaster_area_outside=14.1, plaster_area_inside=13.6, mesh_day_area=8), 1)
        '3.5'
    """
    return (plaster_area_outside + plaster_area_inside) / mesh_day_area


@BOOK.quantity(
    symbol="t_lo",
    unit="day",
    places=1,
    low=0,
    high=42,
    source=from_memory("faces over what one mason covers a day; recalled, so it plans and never decides"),
)
def plaster_mason_days(plaster_area_outside: float, plaster_area_inside: float, mason_day_area: float) -> float:
    """Person-days of masons for the two faces of the wall, each face once.

    Args:
        plaster_area_outside: outer face of the wall [m**2], 0.8 to 62.
        plaster_area_inside: inner face of the wall [m**2], 0.7 to 61.
        mason_day_area: what one mason covers in a day [m**2/day], 3 to 5.

    Returns:
        Person-days of masons [day], 0 to 42.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(plaster_mason_days(plaster_area_outside=14.1, plaster_area_inside=13.6, mason_day_area=4), 1)
        '6.9'
    """
    return (plaster_area_outside + plaster_area_inside) / mason_day_area


@BOOK.quantity(
    symbol="t_lh",
    unit="day",
    places=1,
    low=0,
    high=63,
    source=published("tabulated Indian labour constants: plaster, 14 labourers and 1 water-carrier to 10 masons"),
)
def plaster_labour_days(plaster_mason_days: float) -> float:
    """Person-days of those who mix and carry for the plastering masons. Mixing is in it: never add it again.

    Args:
        plaster_mason_days: person-days of masons for both faces [day], 0 to 42.

    Returns:
        Person-days of labourers [day], 0 to 63.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(plaster_labour_days(plaster_mason_days=6.9), 1)
        '10.4'
    """
    return plaster_mason_days * HANDS_TO_A_MASON


@BOOK.quantity(symbol="f_lh", unit="", places=2, low=0.8, high=2, source=derived("printed hours over our own hours"))
def short_day_factor(hours_per_day: float) -> float:
    """Days here for one printed day of eight hours.

    Args:
        hours_per_day: hours worked in a day [hour], 4 to 9.

    Returns:
        Factor [-], 0.8 to 2.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(short_day_factor(hours_per_day=6), 2)
        '1.33'
    """
    return PRINTED_HOURS / hours_per_day


@BOOK.quantity(
    symbol="d_ld", unit="day", places=0, low=0, high=80, source=derived("person-days shared by labourers, whole days")
)
def digging_duration(digging_days: float, short_day_factor: float, crew_labourers: float) -> float:
    """Days of digging with the crew, whole days.

    Args:
        digging_days: person-days of digging [day], 0 to 40.
        short_day_factor: days here for one printed day [-], 0.8 to 2.
        crew_labourers: labourers in the crew [-], 1 to 20.

    Returns:
        Whole days [day], 0 to 80.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> digging_duration(digging_days=3.1, short_day_factor=1.2, crew_labourers=4)
        1.0
    """
    return whole_up(digging_days * short_day_factor / crew_labourers / ONE_DAY) * ONE_DAY


@BOOK.quantity(
    symbol="d_lk",
    unit="day",
    places=0,
    low=1,
    high=160,
    source=from_memory("person-days shared by all hands; those of the mesh are yours to measure"),
)
def cage_duration(
    steel_fixing_days: float,
    mesh_tying_days: float,
    short_day_factor: float,
    crew_masons: float,
    crew_labourers: float,
) -> float:
    """Days for the cage, bars and mesh, with all hands of the crew, whole days.

    Args:
        steel_fixing_days: person-days of fixing bars [day], 0 to 88.
        mesh_tying_days: person-days of hanging and tying mesh [day], 0 to 63.
        short_day_factor: days here for one printed day [-], 0.8 to 2.
        crew_masons: masons in the crew [-], 1 to 10.
        crew_labourers: labourers in the crew [-], 1 to 20.

    Returns:
        Whole days [day], 1 to 160.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> cage_duration(
        ...     steel_fixing_days=3, mesh_tying_days=7.2, short_day_factor=1, crew_masons=2, crew_labourers=3
        ... )
        3.0
    """
    return (
        whole_up((steel_fixing_days + mesh_tying_days) * short_day_factor / (crew_masons + crew_labourers) / ONE_DAY)
        * ONE_DAY
    )


@BOOK.quantity(
    symbol="t_lb", unit="day", places=1, low=0, high=95, source=from_memory("sum; plaster rests on a recalled figure")
)
def mason_days(base_mason_days: float, steel_fitter_days: float, plaster_mason_days: float) -> float:
    """Person-days of those who know a trade: masons at base and wall, and the fitter.

    Args:
        base_mason_days: masons for the base [day], 0 to 4.
        steel_fitter_days: fitters for the bars [day], 0 to 44.
        plaster_mason_days: masons for both faces [day], 0 to 42.

    Returns:
        Person-days [day], 0 to 95.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(mason_days(base_mason_days=0.2, steel_fitter_days=0.6, plaster_mason_days=6.9), 1)
        '7.7'
    """
    return base_mason_days + steel_fitter_days + plaster_mason_days


@BOOK.quantity(
    symbol="t_ll",
    unit="day",
    places=1,
    low=0,
    high=280,
    source=from_memory("sum; mesh and plaster are recalled figures"),
)
def labourer_days(
    digging_days: float,
    base_labour_days: float,
    steel_fitter_days: float,
    mesh_tying_days: float,
    plaster_labour_days: float,
) -> float:
    """Person-days of labourers from the digging to the plaster; roof, curing and carrying come on top.

    Args:
        digging_days: digging [day], 0 to 40.
        base_labour_days: labourers for the base [day], 0.05 to 62.
        steel_fitter_days: fitters for the bars, each with a helper [day], 0 to 44.
        mesh_tying_days: hanging and tying mesh [day], 0 to 63.
        plaster_labour_days: those who mix and carry for the masons [day], 0 to 63.

    Returns:
        Person-days [day], 0 to 280.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> found = labourer_days(
        ...     digging_days=3.1,
        ...     base_labour_days=3.5,
        ...     steel_fitter_days=0.6,
        ...     mesh_tying_days=3.5,
        ...     plaster_labour_days=10.4,
        ... )
        >>> show(found, 1)
        '21.1'
    """
    return digging_days + base_labour_days + steel_fitter_days + mesh_tying_days + plaster_labour_days


@BOOK.quantity(
    symbol="t_lt", unit="day", places=1, low=0, high=380, source=from_memory("sum; a part of it is recalled")
)
def labour_total(mason_days: float, labourer_days: float) -> float:
    """Person-days from the digging to the plaster, all people together.

    Args:
        mason_days: those who know a trade [day], 0 to 95.
        labourer_days: labourers [day], 0 to 280.

    Returns:
        Person-days [day], 0 to 380.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(labour_total(mason_days=7.7, labourer_days=21.1), 1)
        '28.8'
    """
    return mason_days + labourer_days


@BOOK.quantity(
    symbol="d_lh",
    unit="day",
    places=0,
    low=35,
    high=10500,
    source=from_memory("working days and the days that must pass; the cage rests on a figure that is yours to measure"),
)
def days_to_hand_over(site_ready_day: float, cage_duration: float, curing_days: float, proving_days: float) -> float:
    """Days from the first spade to the last reading of the test; rest days, rain and the roof come on top.

    Most of them are waiting: the base sets, the wall is kept wet, the full tank soaks and is watched.

    Args:
        site_ready_day: day on which pit and material are ready [day], 1 to 10100.
        cage_duration: days for bars and mesh [day], 1 to 160.
        curing_days: days of unbroken wetting after the last coat [day], 14 to 28.
        proving_days: days from the first water to the last reading [day], 16 to 78.

    Returns:
        Whole days [day], 35 to 10500.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> days_to_hand_over(site_ready_day=10, cage_duration=3, curing_days=20, proving_days=25)
        64.0
    """
    return site_ready_day + POUR_AND_COATS + BASE_SETS + cage_duration + curing_days + proving_days


@BOOK.misconception(of="mortar_to_mix")
def only_the_wall_mixed(wall_mortar_volume: float) -> float:
    """Only what stays in the wall was mixed."""
    return wall_mortar_volume


@BOOK.misconception(of="mixing_days")
def water_mixes_itself(mortar_to_mix: float) -> float:
    """The one who brings the water was forgotten."""
    return mortar_to_mix * MIXING


@BOOK.misconception(of="base_labour_days")
def water_carrier_forgotten(base_concrete_volume: float) -> float:
    """The base was reckoned without those who carry water to it."""
    return base_concrete_volume * BASE_LABOURER


@BOOK.misconception(of="digging_days")
def foreman_digs_alone(excavation_volume: float) -> float:
    """The line of the foreman was read in the table, and not that of the labourer."""
    return excavation_volume * DIGGING_FOREMAN


@BOOK.misconception(of="base_pour_people")
def long_day_promised(base_labour_days: float) -> float:
    """Print's eight hours were counted, though the crew works fewer."""
    return whole_up(base_labour_days / ONE_DAY)


@BOOK.misconception(of="cage_steel_mass")
def only_hoops_weighed(hoop_mass: float) -> float:
    """The upright bars were forgotten."""
    return hoop_mass


@BOOK.misconception(of="steel_fixing_days")
def fitter_without_helper(cage_steel_mass: float) -> float:
    """The helper of the fitter was forgotten."""
    return cage_steel_mass * FITTER


@BOOK.misconception(of="steel_fitter_days")
def kilograms_read_as_quintals(cage_steel_mass: float) -> float:
    """A day was counted for every ten kilograms, and not for every hundred."""
    return cage_steel_mass * FITTER * 10


@BOOK.misconception(of="mesh_tying_days")
def mesh_tied_on_one_face(plaster_area_outside: float, mesh_day_area: float) -> float:
    """Mesh was counted on the outer face only."""
    return plaster_area_outside / mesh_day_area


@BOOK.misconception(of="plaster_mason_days")
def plaster_on_one_face(plaster_area_outside: float, mason_day_area: float) -> float:
    """Only the outer face was counted."""
    return plaster_area_outside / mason_day_area


@BOOK.misconception(of="plaster_labour_days")
def masons_mix_for_themselves(plaster_mason_days: float) -> float:
    """One labourer was thought to serve each mason; one and a half do."""
    return plaster_mason_days


@BOOK.misconception(of="short_day_factor")
def short_day_turned_round(hours_per_day: float) -> float:
    """The hours were divided the other way: short days would make the work quicker."""
    return hours_per_day / PRINTED_HOURS


@BOOK.misconception(of="digging_duration")
def person_days_taken_as_days(digging_days: float) -> float:
    """Person-days were taken for days, as if one person dug alone."""
    return whole_up(digging_days / ONE_DAY) * ONE_DAY


@BOOK.misconception(of="cage_duration")
def cage_days_rounded_down(
    steel_fixing_days: float,
    mesh_tying_days: float,
    short_day_factor: float,
    crew_masons: float,
    crew_labourers: float,
) -> float:
    """The part of a day that was left over was forgotten."""
    return (
        whole_down((steel_fixing_days + mesh_tying_days) * short_day_factor / (crew_masons + crew_labourers) / ONE_DAY)
        * ONE_DAY
    )


@BOOK.misconception(of="labourer_days")
def mixing_counted_twice(labourer_days: float, mixing_days: float) -> float:
    """The mixing was added, though those who serve the masons mix already."""
    return labourer_days + mixing_days


@BOOK.misconception(of="labour_total")
def only_masons_counted(mason_days: float) -> float:
    """The labourers were left out."""
    return mason_days


@BOOK.misconception(of="days_to_hand_over")
def curing_not_counted(site_ready_day: float, cage_duration: float, proving_days: float) -> float:
    """The weeks in which the wall is kept wet were left out, for nobody builds then."""
    return site_ready_day + POUR_AND_COATS + BASE_SETS + cage_duration + proving_days


@BOOK.misconception(of="days_to_hand_over")
def proving_not_counted(site_ready_day: float, cage_duration: float, curing_days: float) -> float:
    """The filling and the test were left out, as if a wet wall were a tested tank."""
    return site_ready_day + POUR_AND_COATS + BASE_SETS + cage_duration + curing_days
