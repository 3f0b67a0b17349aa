"""Ring tension level by level, and the steel that it asks for; `hoop_choice` turns it into hoops.

Hoops alone bear the ring tension; mortar is checked so that it does not crack. A wall whose foot can slide bears
water weight x depth x radius. A wall that is held at its foot bears less there and a little more further up: a real
joint lies between a hinged and a fixed foot, so the larger of the two is taken at each level. Near the foot that demand
falls to nothing, but a joint may give way a little: the steel of the most loaded level goes down to the foot
(`ring_levels.zone_tension`).

References:
    .. [1] Open textbook-companion file, reinforced concrete book no. 3683, example 13.1: steel 100 MPa, mortar 1.2 MPa.
    .. [2] Public sheet "Design of circular water tank (flexible joint)", 400 kL: hoop steel 115 MPa.
    .. [3] Circular Concrete Tanks Without Prestressing, Portland Cement Association, 1993, Table A-1.
"""

from generator.calculations._book import BOOK
from generator.calculations.factor_tables import LEVEL_PLACES, LEVELS, RING, RING_PLACES, SHAPE_PLACES, SHAPES
from generator.calculations.setting_out import MILLIMETRES_IN_METRE
from generator.formula import Constant, common_practice, derived, interpolate, published, whole_down

WATER_WEIGHT = Constant(9.81, "kN/m**3", derived("1000 kg of water in a cubic metre, gravity 9.81"))
BAG_WEIGHT = Constant(0.4905, "kN/bag", derived("a bag of 50 kg, gravity 9.81: two bags weigh about a kilonewton"))
BAG_TAKEN_FOR_A_KILONEWTON = Constant(1, "bag*m/kN", derived("a misreading: one bag for each kilonewton on a metre"))
NEWTONS_IN_KILONEWTON = Constant(1000, "N/kN", derived("1 kN is 1000 N"))
PLAIN_STEEL_STRESS = Constant(
    115, "MPa", published("sheet of a 400 kL tank with a flexible joint: hoop steel 115 MPa; other examples take 100")
)
RIBBED_STEEL_STRESS = Constant(
    130, "MPa", derived("low in the 115 to 190 MPa of published tanks, so that a lap of 50 diameters holds; policy")
)
MORTAR_TENSION_ALLOWED = Constant(
    1.2, "MPa", published("reinforced concrete book no. 3683, example 13.1: direct tension of M20 concrete")
)
WIDEST_HOOPS = Constant(0.2, "m", common_practice("widest distance from hoop to hoop"))
TAPE_STEP = Constant(0.005, "m", derived("what a mason can set by tape"))
LEAST_STEEL = Constant(1, "mm**2/m", derived("keeps a level without water from asking for hoops endlessly far apart"))
LEAST_DEPTH = Constant(0.1, "m", derived("the shallowest water of this course; shallower is refused"))
YIELD_SHARE = Constant(217.5, "MPa", derived("0.87 of the 250 MPa of mild steel, as for a house: wrong for water"))
THIN_HOOP = Constant(6, "mm", derived("the bar that a mason knows"))
WATER_WEIGHT_READ_WRONG = Constant(9.81, "", derived("a tonne taken for a kilonewton"))
ONE_METRE = Constant(1, "m", derived("a depth left out"))
SHAPE_COUNT = Constant(len(SHAPES), "", derived("columns of the ring table"))
LAST_ROW = Constant(len(LEVELS) - 2, "", derived("last level of the ring table that has one below it"))

BOOK.given(
    "level_height",
    symbol="y_st",
    unit="m",
    low=0,
    high=2.4,
    step=0.05,
    source=derived("from the floor to the top of the highest wall"),
)

BOOK.given(
    "steel_working_stress",
    symbol="f_st",
    unit="MPa",
    low=80,
    high=130,
    step=5,
    source=derived("115 plain and 130 ribbed are the most that this course allows; less is safer"),
)


@BOOK.quantity(
    symbol="z_st",
    unit="m",
    places=2,
    low=0,
    high=2.2,
    source=derived("the water's depth less the height; nothing above the water"),
)
def level_depth(water_depth: float, level_height: float) -> float:
    """Depth of a level below the water; nothing if it stands above the water.

    Args:
        water_depth: depth of the water [m], 0.1 to 2.2.
        level_height: height of the level above the floor [m], 0 to 2.4.

    Returns:
        Depth [m], 0 to 2.2.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(level_depth(water_depth=1.7, level_height=0.5), 2)
        '1.20'
    """
    return max(0, water_depth - level_height)


@BOOK.quantity(
    symbol="T_st",
    unit="kN/m",
    places=1,
    low=0,
    high=87,
    source=published("every worked tank that was read: weight of water x depth x radius"),
)
def ring_tension_free(level_depth: float, inside_radius: float) -> float:
    """Ring tension at a level if the foot could slide: the largest that water can ask for.

    In a wall that is held at its foot the tension is smaller at the foot, and up to 12 % larger a little further up.

    Args:
        level_depth: depth of the level below the water [m], 0 to 2.2.
        inside_radius: inside radius: centre to the wall's wet face [m], 0.3 to 4.0.

    Returns:
        Ring tension of a metre of height [kN/m], 0 to 87.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(ring_tension_free(level_depth=1.2, inside_radius=1.6), 1)
        '18.8'
    """
    return WATER_WEIGHT * level_depth * inside_radius


@BOOK.quantity(
    symbol="n_st",
    unit="bag",
    places=0,
    low=0,
    high=178,
    source=derived("the pull of a metre, in bags of 50 kg that hang"),
)
def pull_as_bags(ring_tension_free: float) -> float:
    """How many bags of cement would have to hang on a metre of height to pull the ring as hard.

    Args:
        ring_tension_free: ring tension of a metre of height [kN/m], 0 to 87.

    Returns:
        Bags of 50 kg, not rounded [bag], 0 to 178.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(pull_as_bags(ring_tension_free=20), 0)
        '41'
    """
    return ring_tension_free * ONE_METRE / BAG_WEIGHT


@BOOK.misconception(of="pull_as_bags")
def bag_taken_for_a_kilonewton(ring_tension_free: float) -> float:
    """A kilonewton was taken for the weight of one bag."""
    return ring_tension_free * BAG_TAKEN_FOR_A_KILONEWTON


@BOOK.quantity(
    symbol="B_st",
    unit="m**2",
    places=2,
    low=0.03,
    high=8.8,
    source=derived("what the pull grows with: depth times radius"),
)
def depth_times_radius(water_depth: float, inside_radius: float) -> float:
    """The measure by which this course says who may build a tank: the pull on its hoops grows with it.

    Args:
        water_depth: depth of the water when the tank is full [m], 0.1 to 2.2.
        inside_radius: inside radius: centre to the wall's wet face [m], 0.3 to 4.0.

    Returns:
        Depth times radius [m**2], 0.03 to 8.8.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(depth_times_radius(water_depth=1.2, inside_radius=1.6), 2)
        '1.92'
    """
    return water_depth * inside_radius


@BOOK.quantity(
    symbol="K_st",
    unit="",
    places=2,
    low=0.01,
    high=270,
    source=published("the shape number of the printed tank tables: H x H / (D x t)"),
)
def shape_number(water_depth: float, inside_diameter: float, wall_thickness: float) -> float:
    """Shape number of the wall: high and thin gives a large number, low and thick a small one.

    Args:
        water_depth: depth of the water [m], 0.1 to 2.2.
        inside_diameter: inside diameter [m], 0.6 to 8.0.
        wall_thickness: thickness of the finished wall [mm], 30 to 75.

    Returns:
        Shape number [-], 0.01 to 270.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(shape_number(water_depth=1.7, inside_diameter=3.2, wall_thickness=48), 2)
        '18.82'
    """
    return water_depth**2 / (inside_diameter * wall_thickness / MILLIMETRES_IN_METRE)


@BOOK.quantity(
    symbol="C_st",
    unit="",
    places=3,
    low=0,
    high=1,
    source=derived("table from the solution of a thin shell, Poisson's ratio 0.2; within 0.011"),
)
def ring_share(shape_number: float, water_depth: float, level_depth: float) -> float:
    """Share of the foot's free ring tension that a level bears, the larger of a hinged and a fixed foot.

    Args:
        shape_number: shape number of the wall [-], 0.01 to 270.
        water_depth: depth of the water [m], 0.1 to 2.2.
        level_depth: depth of the level below the water [m], 0 to 2.2.

    Returns:
        Share [-], 0 to 1.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(ring_share(shape_number=18.8, water_depth=1.7, level_depth=1.2), 3)
        '0.771'
    """
    level_place = interpolate(level_depth / max(water_depth, LEAST_DEPTH), LEVELS, LEVEL_PLACES)
    level_above = min(whole_down(level_place), LAST_ROW)
    shape_place = interpolate(shape_number, SHAPES, SHAPE_PLACES)
    share_above = interpolate(level_above * SHAPE_COUNT + shape_place, RING_PLACES, RING)
    share_below = interpolate((level_above + 1) * SHAPE_COUNT + shape_place, RING_PLACES, RING)
    return share_above + (share_below - share_above) * (level_place - level_above)


@BOOK.quantity(
    symbol="T_sh",
    unit="kN/m",
    places=1,
    low=0,
    high=87,
    source=derived("share x weight of water x depth of water x radius"),
)
def ring_tension_held(ring_share: float, water_depth: float, inside_radius: float) -> float:
    """Ring tension at a level of a wall that is held at its foot.

    Args:
        ring_share: share of the ring pull at the level [-], 0 to 1.
        water_depth: depth of the water [m], 0.1 to 2.2.
        inside_radius: inside radius: centre to the wall's wet face [m], 0.3 to 4.0.

    Returns:
        Ring tension of a metre of height [kN/m], 0 to 87.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(ring_tension_held(ring_share=0.75, water_depth=1.7, inside_radius=1.6), 1)
        '20.0'
    """
    return ring_share * WATER_WEIGHT * water_depth * inside_radius


@BOOK.quantity(
    symbol="A_sn",
    unit="mm**2/m",
    places=1,
    low=0,
    high=1100,
    source=derived("ring tension / working stress; hoops alone bear it"),
)
def hoop_steel_needed(ring_tension_held: float, steel_working_stress: float) -> float:
    """Hoop steel that a metre of height needs at a level; mortar and mesh are not counted.

    Args:
        ring_tension_held: ring pull at the level [kN/m], 0 to 87.
        steel_working_stress: working stress allowed in the steel [MPa], 80 to 130.

    Returns:
        Steel [mm**2/m], 0 to 1100.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(hoop_steel_needed(ring_tension_held=20, steel_working_stress=115), 1)
        '173.9'
    """
    return ring_tension_held * NEWTONS_IN_KILONEWTON / steel_working_stress


@BOOK.quantity(
    symbol="f_sm",
    unit="MPa",
    places=2,
    low=0,
    high=3,
    source=derived("ring tension / wall; the steel's help is left out, which is safe"),
)
def mortar_tension(ring_tension_held: float, wall_thickness: float) -> float:
    """Tension in the mortar of a wall without cracks. Allowed: 1.2.

    Args:
        ring_tension_held: ring pull at the level [kN/m], 0 to 87.
        wall_thickness: thickness of the finished wall [mm], 30 to 75.

    Returns:
        Tension [MPa], 0 to 3.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(mortar_tension(ring_tension_held=20, wall_thickness=48), 2)
        '0.42'
    """
    return ring_tension_held / wall_thickness


@BOOK.misconception(of="ring_tension_free")
def ring_tension_from_diameter(level_depth: float, inside_diameter: float) -> float:
    """The whole way across was taken where half of it belongs."""
    return WATER_WEIGHT * level_depth * inside_diameter


@BOOK.misconception(of="ring_tension_free")
def ring_tension_same_all_the_way(water_depth: float, inside_radius: float) -> float:
    """The whole depth of the water was taken at every level."""
    return WATER_WEIGHT * water_depth * inside_radius


@BOOK.misconception(of="level_depth")
def pull_thought_largest_at_the_top(water_depth: float, level_height: float) -> float:
    """The level was measured from the floor up, as if the pull grew upwards."""
    return min(water_depth, level_height)


@BOOK.misconception(of="hoop_steel_needed")
def steel_allowed_to_its_breaking(ring_tension_held: float) -> float:
    """The stress at which steel gives way was taken for the stress it may bear every day."""
    return ring_tension_held * NEWTONS_IN_KILONEWTON / YIELD_SHARE


@BOOK.misconception(of="ring_tension_free")
def tonnes_taken_for_kilonewtons(level_depth: float, inside_radius: float) -> float:
    """A cubic metre of water was taken for 1 kN instead of nearly 10."""
    return WATER_WEIGHT * level_depth * inside_radius / WATER_WEIGHT_READ_WRONG


@BOOK.misconception(of="shape_number")
def shape_with_depth_taken_once(water_depth: float, inside_diameter: float, wall_thickness: float) -> float:
    """The depth was not multiplied by itself."""
    return water_depth * ONE_METRE / (inside_diameter * wall_thickness / MILLIMETRES_IN_METRE)


@BOOK.misconception(of="ring_tension_held")
def share_taken_of_the_level(ring_share: float, level_depth: float, inside_radius: float) -> float:
    """The share was taken of the level's own depth and not of the whole depth."""
    return ring_share * WATER_WEIGHT * level_depth * inside_radius


@BOOK.misconception(of="mortar_tension")
def pull_halved_between_two_sides(ring_tension_held: float, wall_thickness: float) -> float:
    """The pull was halved once more, for the two sides of the ring."""
    return ring_tension_held / (2 * wall_thickness)
