"""The base: what is dug, stone, steel, concrete, starters, and the floor that keeps the water in.

Under a base lies no topsoil and no loose earth: both settle, and not evenly. Stone is hand-packed and rammed, concrete
lies on it, starters stand in the concrete and tie the wall to it, and a floor of mortar on mesh falls to the washout.
A second person looks at steel and starters before any concrete: afterwards nobody can see them.

Caution: wet cement burns skin and eyes, and the pain comes late: gloves, boots, clean water at hand. Starters that
stand up are capped or bent over until the wall covers them: people fall on them.

References:
    .. [1] Rainwater Reservoirs above Ground Structures for Roof Catchment, GTZ/GATE 1989, 5.1.1: no topsoil under the
       base; rammed stone where it goes deep, also where only a part of the circle is soft.
"""

from math import pi

from generator.calculations._book import BOOK
from generator.calculations.mortar import BAG, CEMENT_LOOSE_DENSITY, PERCENT
from generator.calculations.props import MORTAR_DENSITY
from generator.calculations.setting_out import MILLIMETRES_IN_METRE
from generator.formula import Constant, common_practice, derived, from_memory, published, whole_down, whole_up

CONCRETE_DRY_FACTOR = Constant(
    1.54, "", published("site-engineering pages on concrete: 1.50 to 1.54 dry parts for one of wet concrete")
)
CLOSEST_STARTERS = Constant(
    0.01, "m", derived("step of the starter spacing; keeps a spacing of nothing from asking for starters without end")
)
FALL_TAKEN = Constant(2, "", derived("mean depth of a cone-shaped hollow, measured up from its lowest point"))
FALL_PARTS = Constant(3, "", derived("mean depth of a cone-shaped hollow, measured up from its lowest point"))
CENTIMETRES_READ_WRONG = Constant(100, "mm/m", derived("millimetres taken for centimetres"))
WATER_MASS = Constant(1000, "kg/m**3", derived("a cubic metre of water is 1000 kg"))

BOOK.given(
    "topsoil_depth",
    symbol="t_kt",
    unit="mm",
    low=50,
    high=500,
    step=10,
    source=published("GTZ/GATE 1989, 5.1.1: none under the base; deeper than 100 mm is refilled with rammed stone"),
)
BOOK.given(
    "stone_thickness",
    symbol="t_ks",
    unit="mm",
    low=75,
    high=300,
    step=5,
    source=common_practice("hand-packed stone or gravel, rammed; 150 mm stands in print for tanks to 10 m3"),
)
BOOK.given(
    "stone_ramming",
    symbol="r_k",
    unit="%",
    low=5,
    high=35,
    step=5,
    source=common_practice("how much more loose stone is brought than the rammed bed holds"),
)
BOOK.given(
    "base_mesh_lap",
    symbol="l_k",
    unit="%",
    low=5,
    high=30,
    step=1,
    source=common_practice("mesh that lies double at laps"),
)
BOOK.given(
    "floor_mortar_thickness",
    symbol="t_kf",
    unit="mm",
    low=20,
    high=80,
    step=5,
    source=published("Carpentry for Vocational Schools, GTZ, 25.3: about 50 mm of 1:2; thinner on small tanks"),
)
BOOK.given(
    "floor_fall",
    symbol="f_k",
    unit="%",
    low=0.5,
    high=3,
    step=0.5,
    source=common_practice("1 in 100 to 1 in 50 is usual; less leaves silt, more is slippery underfoot"),
)
BOOK.given(
    "mesh_turn_up",
    symbol="u_k",
    unit="m",
    low=0.15,
    high=0.6,
    step=0.05,
    source=published("Carpentry for Vocational Schools, GTZ, 25.3: 150 mm; two Spanish leaflets: 300 mm or more"),
)
BOOK.given(
    "starter_leg",
    symbol="L_k",
    unit="m",
    low=0.2,
    high=0.6,
    step=0.05,
    source=from_memory("starters are turned about 300 mm into the base; the engineer's drawing says how far"),
)
BOOK.given(
    "concrete_sand_parts",
    symbol="p_ks",
    unit="",
    low=1.5,
    high=3,
    step=0.5,
    source=published("Sri Lanka rainwater forum, 5 m3 tank: 1:2:4 by volume; a Portuguese sheet: 1:3:4"),
)
BOOK.given(
    "concrete_stone_parts",
    symbol="p_kg",
    unit="",
    low=3,
    high=5,
    step=0.5,
    source=published("Sri Lanka rainwater forum, 5 m3 tank: 1:2:4 by volume; a Portuguese sheet: 1:3:4 too"),
)
BOOK.given(
    "concrete_waste",
    symbol="w_k",
    unit="%",
    low=0,
    high=20,
    step=1,
    source=common_practice("concrete that sinks between the stones, is spilt or sets too early"),
)


@BOOK.quantity(
    symbol="V_ke",
    unit="m**3",
    places=2,
    low=0.05,
    high=60,
    source=derived("circle of the base, deep enough for the topsoil to go and the stone to lie in firm ground"),
)
def excavation_volume(base_diameter: float, topsoil_depth: float, stone_thickness: float) -> float:
    """Earth dug out under the base: all topsoil, then the bed of the stone in the firm ground below it.

    Where a soft place goes deeper, dig it out and refill it with rammed stone, also if it is only a part of the circle.

    Args:
        base_diameter: across the base [m], 0.8 to 9.4.
        topsoil_depth: topsoil at its deepest place [mm], 50 to 500.
        stone_thickness: bed of rammed stone [mm], 75 to 300.

    Returns:
        Volume in the ground [m**3], 0.05 to 60.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(excavation_volume(base_diameter=4.23, topsoil_depth=110, stone_thickness=160), 2)
        '3.79'
    """
    return pi / 4 * base_diameter**2 * (topsoil_depth + stone_thickness) / MILLIMETRES_IN_METRE


@BOOK.quantity(
    symbol="V_ks",
    unit="m**3",
    places=2,
    low=0.03,
    high=30,
    source=derived("circle of the base x thickness, and what ramming takes"),
)
def stone_volume(base_diameter: float, stone_thickness: float, stone_ramming: float) -> float:
    """Loose stone to bring for the bed under the base.

    Args:
        base_diameter: across the base [m], 0.8 to 9.4.
        stone_thickness: bed of rammed stone [mm], 75 to 300.
        stone_ramming: how much more loose stone is brought [%], 5 to 35.

    Returns:
        Volume [m**3], 0.03 to 30.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(stone_volume(base_diameter=4.23, stone_thickness=160, stone_ramming=20), 2)
        '2.70'
    """
    return pi / 4 * base_diameter**2 * stone_thickness / MILLIMETRES_IN_METRE * (1 + stone_ramming / PERCENT)


@BOOK.quantity(
    symbol="A_kb", unit="m**2", places=1, low=0.4, high=95, source=derived("circle of the base and what lies double")
)
def base_mesh_area(base_diameter: float, base_mesh_lap: float) -> float:
    """Mesh of one layer in the base, laps counted in, offcuts of the round edge not.

    Args:
        base_diameter: across the base [m], 0.8 to 9.4.
        base_mesh_lap: mesh that lies double [%], 5 to 30.

    Returns:
        Area [m**2], 0.4 to 95.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(base_mesh_area(base_diameter=4.23, base_mesh_lap=12), 1)
        '15.7'
    """
    return pi / 4 * base_diameter**2 * (1 + base_mesh_lap / PERCENT)


@BOOK.quantity(
    symbol="h_kf", unit="mm", places=0, low=1, high=125, source=derived("fall x the way from the wall to the middle")
)
def floor_fall_height(inside_radius: float, floor_fall: float) -> float:
    """How much lower the floor is at a washout in the middle than at the wall; at the wall opposite, twice as much.

    Args:
        inside_radius: centre to wet face [m], 0.3 to 4.
        floor_fall: fall of the floor [%], 0.5 to 3.

    Returns:
        Height [mm], 1 to 125.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(floor_fall_height(inside_radius=1.45, floor_fall=2), 0)
        '29'
    """
    return inside_radius * floor_fall / PERCENT * MILLIMETRES_IN_METRE


@BOOK.quantity(
    symbol="V_kf",
    unit="m**3",
    places=3,
    low=0.004,
    high=9,
    source=derived("floor x thickness at the washout, and two thirds of the fall on average"),
)
def floor_mortar_volume(floor_area: float, floor_mortar_thickness: float, floor_fall_height: float) -> float:
    """Mortar of the floor, which is thinnest at the washout in the middle and makes the fall itself.

    Args:
        floor_area: area of the floor [m**2], 0.25 to 51.
        floor_mortar_thickness: floor mortar at its thinnest [mm], 20 to 80.
        floor_fall_height: how much lower the washout lies than the wall [mm], 1 to 125.

    Returns:
        Volume [m**3], 0.004 to 9.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(floor_mortar_volume(floor_area=6.6, floor_mortar_thickness=35, floor_fall_height=30), 3)
        '0.363'
    """
    return floor_area * (floor_mortar_thickness + FALL_TAKEN * floor_fall_height / FALL_PARTS) / MILLIMETRES_IN_METRE


@BOOK.quantity(
    symbol="A_kf",
    unit="m**2",
    places=1,
    low=0.5,
    high=90,
    source=derived("floor, the strip that turns up the wall, and what lies double"),
)
def floor_mesh_area(floor_area: float, inside_diameter: float, mesh_turn_up: float, base_mesh_lap: float) -> float:
    """Mesh of one layer in the floor, turned up the wall all round, laps counted in.

    Args:
        floor_area: area of the floor [m**2], 0.25 to 51.
        inside_diameter: across the water [m], 0.6 to 8.
        mesh_turn_up: how far the floor mesh goes up the wall [m], 0.15 to 0.6.
        base_mesh_lap: mesh that lies double [%], 5 to 30.

    Returns:
        Area [m**2], 0.5 to 90.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(floor_mesh_area(floor_area=6.6, inside_diameter=2.9, mesh_turn_up=0.35, base_mesh_lap=12), 1)
        '11.0'
    """
    return (floor_area + pi * inside_diameter * mesh_turn_up) * (1 + base_mesh_lap / PERCENT)


@BOOK.quantity(
    symbol="n_ks",
    unit="",
    places=0,
    low=6,
    high=2600,
    source=derived("once round / spacing, rounded up: a ring closes"),
)
def starter_count(ring_length: float, starter_spacing: float) -> float:
    """Starter bars round the ring. A ring closes: there are as many bars as gaps.

    A spacing of nothing means that thicker starters are needed; then this count is no plan.

    Args:
        ring_length: once round the frame ring [m], 1.9 to 25.5.
        starter_spacing: widest distance between starters [m], 0 to 0.3.

    Returns:
        Number of starters [-], 6 to 2600.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> starter_count(ring_length=9.3, starter_spacing=0.28)
        34.0
    """
    return whole_up(ring_length / max(starter_spacing, CLOSEST_STARTERS))


@BOOK.quantity(
    symbol="L_ks",
    unit="m",
    places=2,
    low=0.4,
    high=1.6,
    source=derived("the leg in the base, and a lap up the wall; the leg itself is recalled"),
)
def starter_length(starter_leg: float, lap_diameters: float, starter_diameter: float) -> float:
    """Length to cut for one starter: the leg in the base and a whole lap up the wall.

    Args:
        starter_leg: leg that is turned into the base [m], 0.2 to 0.6.
        lap_diameters: lap as a number of bar diameters [-], 50 to 80.
        starter_diameter: thickness of the starter bars [mm], 4 to 12.

    Returns:
        Length [m], 0.4 to 1.6.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(starter_length(starter_leg=0.35, lap_diameters=55, starter_diameter=8), 2)
        '0.79'
    """
    return starter_leg + lap_diameters * starter_diameter / MILLIMETRES_IN_METRE


@BOOK.quantity(symbol="L_kt", unit="m", places=1, low=2, high=4200, source=derived("all starters end to end"))
def starter_total_length(starter_count: float, starter_length: float) -> float:
    """Steel of all starters.

    Args:
        starter_count: starters round the ring [-], 6 to 2600.
        starter_length: length of one starter [m], 0.4 to 1.6.

    Returns:
        Length [m], 2 to 4200.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(starter_total_length(starter_count=34, starter_length=0.79), 1)
        '26.9'
    """
    return starter_count * starter_length


@BOOK.quantity(
    symbol="V_kd",
    unit="m**3",
    places=3,
    low=0.04,
    high=42,
    source=common_practice("dry-volume factor 1.54, a convention; loss is added apart from it"),
)
def concrete_dry_volume(base_concrete_volume: float, concrete_waste: float) -> float:
    """Loose dry parts for the base, cement, sand and stone together, and what is lost on the way.

    Args:
        base_concrete_volume: concrete in the base [m**3], 0.03 to 21.
        concrete_waste: concrete that is lost [%], 0 to 20.

    Returns:
        Volume [m**3], 0.04 to 42.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(concrete_dry_volume(base_concrete_volume=0.86, concrete_waste=5), 3)
        '1.391'
    """
    return base_concrete_volume * (1 + concrete_waste / PERCENT) * CONCRETE_DRY_FACTOR


@BOOK.quantity(symbol="V_kc", unit="m**3", places=3, low=0.004, high=8, source=derived("one part of all the parts"))
def concrete_cement_volume(
    concrete_dry_volume: float, concrete_sand_parts: float, concrete_stone_parts: float
) -> float:
    """Loose cement for the base: one part of all the parts. 1 : 2 : 4 has seven.

    Args:
        concrete_dry_volume: cement, sand and stone together [m**3], 0.04 to 42.
        concrete_sand_parts: parts of sand for one of cement [-], 1.5 to 3.
        concrete_stone_parts: parts of stone for one of cement [-], 3 to 5.

    Returns:
        Volume [m**3], 0.004 to 8.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(concrete_cement_volume(concrete_dry_volume=1.4, concrete_sand_parts=2, concrete_stone_parts=4), 3)
        '0.200'
    """
    return concrete_dry_volume / (1 + concrete_sand_parts + concrete_stone_parts)


@BOOK.quantity(
    symbol="M_kc", unit="kg", places=0, low=5, high=12000, source=derived("volume times the density of loose cement")
)
def concrete_cement_mass(concrete_cement_volume: float) -> float:
    """Cement of the base by weight.

    Args:
        concrete_cement_volume: loose cement for the base [m**3], 0.004 to 8.

    Returns:
        Mass [kg], 5 to 12000.

    Raises:
        OutOfRangeError: the volume is outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(concrete_cement_mass(concrete_cement_volume=0.2), 0)
        '288'
    """
    return concrete_cement_volume * CEMENT_LOOSE_DENSITY


@BOOK.quantity(symbol="n_kc", unit="bag", places=0, low=1, high=240, source=derived("whole bags, rounded up"))
def concrete_cement_bags(concrete_cement_mass: float) -> float:
    """Bags of cement to buy for the base: whole bags, rounded up. A bag of 50 kg is a lift for two.

    Args:
        concrete_cement_mass: cement of the base by weight [kg], 5 to 12000.

    Returns:
        Number of bags [bag], 1 to 240.

    Raises:
        OutOfRangeError: the mass is outside its range.

    Example:
        >>> concrete_cement_bags(concrete_cement_mass=288)
        6.0
    """
    return whole_up(concrete_cement_mass / BAG)


@BOOK.quantity(
    symbol="V_km",
    unit="m**3",
    places=2,
    low=0.007,
    high=27,
    source=derived("parts of sand to one of cement, and the room that damp sand takes"),
)
def concrete_sand_volume(concrete_cement_volume: float, concrete_sand_parts: float, sand_bulking: float) -> float:
    """Sand for the base, measured damp, as it lies in the heap.

    Args:
        concrete_cement_volume: loose cement for the base [m**3], 0.004 to 8.
        concrete_sand_parts: parts of sand for one of cement [-], 1.5 to 3.
        sand_bulking: how much more room damp sand takes [%], 0 to 45.

    Returns:
        Volume [m**3], 0.007 to 27.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(concrete_sand_volume(concrete_cement_volume=0.2, concrete_sand_parts=2, sand_bulking=25), 2)
        '0.50'
    """
    return concrete_cement_volume * concrete_sand_parts * (1 + sand_bulking / PERCENT)


@BOOK.quantity(
    symbol="V_kg", unit="m**3", places=2, low=0.015, high=28, source=derived("parts of stone to one of cement")
)
def concrete_stone_volume(concrete_cement_volume: float, concrete_stone_parts: float) -> float:
    """Broken stone or gravel for the concrete of the base; wet stone takes no more room than dry.

    Args:
        concrete_cement_volume: loose cement for the base [m**3], 0.004 to 8.
        concrete_stone_parts: parts of stone for one of cement [-], 3 to 5.

    Returns:
        Volume [m**3], 0.015 to 28.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(concrete_stone_volume(concrete_cement_volume=0.2, concrete_stone_parts=4), 2)
        '0.80'
    """
    return concrete_cement_volume * concrete_stone_parts


@BOOK.quantity(
    symbol="M_kb",
    unit="kg",
    places=0,
    low=70,
    high=51000,
    source=derived("volume x mass of a cubic metre with its steel"),
)
def base_mass(base_concrete_volume: float) -> float:
    """Mass of the concrete base with its steel.

    Args:
        base_concrete_volume: concrete in the base [m**3], 0.03 to 21.

    Returns:
        Mass [kg], 70 to 51000.

    Raises:
        OutOfRangeError: the volume is outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(base_mass(base_concrete_volume=0.86), 0)
        '2064'
    """
    return base_concrete_volume * MORTAR_DENSITY


@BOOK.misconception(of="excavation_volume")
def topsoil_left_under_the_base(base_diameter: float, stone_thickness: float) -> float:
    """Only the bed of the stone was dug; the topsoil stayed."""
    return pi / 4 * base_diameter**2 * stone_thickness / MILLIMETRES_IN_METRE


@BOOK.misconception(of="excavation_volume")
def stone_forgotten_in_the_pit(base_diameter: float, topsoil_depth: float) -> float:
    """Only the topsoil was dug; the stone has no bed."""
    return pi / 4 * base_diameter**2 * topsoil_depth / MILLIMETRES_IN_METRE


@BOOK.misconception(of="excavation_volume")
def pit_as_wide_as_the_tank(outside_diameter: float, topsoil_depth: float, stone_thickness: float) -> float:
    """The pit was dug as wide as the tank; the base stands out beyond it."""
    return pi / 4 * outside_diameter**2 * (topsoil_depth + stone_thickness) / MILLIMETRES_IN_METRE


@BOOK.misconception(of="stone_volume")
def ramming_forgotten(base_diameter: float, stone_thickness: float) -> float:
    """Loose stone was thought to fill as much as rammed stone."""
    return pi / 4 * base_diameter**2 * stone_thickness / MILLIMETRES_IN_METRE


@BOOK.misconception(of="base_mesh_area")
def base_mesh_laps_forgotten(base_diameter: float) -> float:
    """Nothing was added for mesh that lies double."""
    return pi / 4 * base_diameter**2


@BOOK.misconception(of="base_mesh_area")
def base_mesh_ends_inside_the_wall(inside_radius: float, base_mesh_lap: float) -> float:
    """The circle inside the wall was taken for the base, so the mesh ends under the water and not under the wall."""
    return pi * inside_radius**2 * (1 + base_mesh_lap / PERCENT)


@BOOK.misconception(of="floor_fall_height")
def fall_over_the_whole_width(inside_diameter: float, floor_fall: float) -> float:
    """The fall was followed from wall to wall, past the washout in the middle."""
    return inside_diameter * floor_fall / PERCENT * MILLIMETRES_IN_METRE


@BOOK.misconception(of="floor_fall_height")
def fall_the_same_for_every_floor(floor_fall: float) -> float:
    """The fall of one metre was taken for the fall of the whole floor."""
    return floor_fall / PERCENT * MILLIMETRES_IN_METRE


@BOOK.misconception(of="floor_mortar_volume")
def fall_forgotten_in_the_floor(floor_area: float, floor_mortar_thickness: float) -> float:
    """The floor was counted flat; the fall is made of mortar too."""
    return floor_area * floor_mortar_thickness / MILLIMETRES_IN_METRE


@BOOK.misconception(of="floor_mortar_volume")
def floor_thickness_in_centimetres(floor_area: float, floor_mortar_thickness: float, floor_fall_height: float) -> float:
    """Millimetres of the floor were reckoned as centimetres."""
    return floor_area * (floor_mortar_thickness + FALL_TAKEN * floor_fall_height / FALL_PARTS) / CENTIMETRES_READ_WRONG


@BOOK.misconception(of="floor_mesh_area")
def floor_mesh_not_turned_up(floor_area: float, base_mesh_lap: float) -> float:
    """The mesh was cut to the floor and ends at the foot of the wall."""
    return floor_area * (1 + base_mesh_lap / PERCENT)


@BOOK.misconception(of="floor_mesh_area")
def floor_mesh_laps_forgotten(floor_area: float, inside_diameter: float, mesh_turn_up: float) -> float:
    """Nothing was added for mesh that lies double."""
    return floor_area + pi * inside_diameter * mesh_turn_up


@BOOK.misconception(of="starter_count")
def last_gap_of_the_ring_left_wide(ring_length: float, starter_spacing: float) -> float:
    """The part of a gap that was left where the ring closes got no starter."""
    return whole_down(ring_length / max(starter_spacing, CLOSEST_STARTERS))


@BOOK.misconception(of="starter_count")
def one_starter_more_as_in_a_row(ring_length: float, starter_spacing: float) -> float:
    """One starter more than gaps was counted, as in a straight row."""
    return whole_up(ring_length / max(starter_spacing, CLOSEST_STARTERS)) + 1


@BOOK.misconception(of="starter_length")
def starter_leg_forgotten(lap_diameters: float, starter_diameter: float) -> float:
    """The bar was cut for the wall alone; nothing of it holds in the base."""
    return lap_diameters * starter_diameter / MILLIMETRES_IN_METRE


@BOOK.misconception(of="starter_length")
def starter_leg_at_both_ends(starter_leg: float, lap_diameters: float, starter_diameter: float) -> float:
    """A leg was counted at both ends; the upper end runs straight up the wall."""
    return 2 * starter_leg + lap_diameters * starter_diameter / MILLIMETRES_IN_METRE


@BOOK.misconception(of="starter_total_length")
def starters_counted_up_the_wall_only(starter_count: float, starter_length: float, starter_leg: float) -> float:
    """The legs in the base were left out of the steel list."""
    return starter_count * (starter_length - starter_leg)


@BOOK.misconception(of="concrete_dry_volume")
def concrete_boxes_thought_to_add_up(base_concrete_volume: float, concrete_waste: float) -> float:
    """Dry boxes were thought to make as much concrete as they fill; sand goes between the stones."""
    return base_concrete_volume * (1 + concrete_waste / PERCENT)


@BOOK.misconception(of="concrete_dry_volume")
def concrete_loss_forgotten(base_concrete_volume: float) -> float:
    """Nothing was added for concrete that sinks between the stones or is spilt."""
    return base_concrete_volume * CONCRETE_DRY_FACTOR


@BOOK.misconception(of="concrete_cement_volume")
def cement_part_not_counted(
    concrete_dry_volume: float, concrete_sand_parts: float, concrete_stone_parts: float
) -> float:
    """1 : 2 : 4 was read as one in six: the cement's own part was left out."""
    return concrete_dry_volume / (concrete_sand_parts + concrete_stone_parts)


@BOOK.misconception(of="concrete_cement_volume")
def stone_part_not_counted(concrete_dry_volume: float, concrete_sand_parts: float) -> float:
    """The stone was left out of the parts, as if it were mortar."""
    return concrete_dry_volume / (1 + concrete_sand_parts)


@BOOK.misconception(of="concrete_cement_bags")
def concrete_bags_rounded_down(concrete_cement_mass: float) -> float:
    """The part of a bag that was left over was forgotten."""
    return whole_down(concrete_cement_mass / BAG)


@BOOK.misconception(of="concrete_sand_volume")
def damp_concrete_sand_taken_as_dry(concrete_cement_volume: float, concrete_sand_parts: float) -> float:
    """Damp sand was measured as if it were dry."""
    return concrete_cement_volume * concrete_sand_parts


@BOOK.misconception(of="concrete_stone_volume")
def stone_given_as_much_as_sand(concrete_cement_volume: float, concrete_sand_parts: float) -> float:
    """The second number of the mix was taken for the stone."""
    return concrete_cement_volume * concrete_sand_parts


@BOOK.misconception(of="base_mass")
def base_weighed_as_water(base_concrete_volume: float) -> float:
    """A cubic metre of concrete was taken for a thousand kilos, as if it were water."""
    return base_concrete_volume * WATER_MASS
