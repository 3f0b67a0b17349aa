"""The foot of the wall: it bends and pushes outward where the base holds it, and what ties it there.

Water pushes the wall out, the base holds its foot. Three things tie it: starter bars near the water face against the
bending, ring bars round the edge of the base against the outward push, and mesh that runs from the floor up the wall.
A lean base without starters and ring bars takes neither.

References:
    .. [1] Theory of Plates and Shells, section 117 (read at second hand); solved in `shell`.
"""

from math import pi

from generator.calculations._book import BOOK
from generator.calculations.factor_tables import FOOT_MOMENTS, FOOT_PUSHES, FOOT_SHAPES
from generator.calculations.ring_strength import (
    LEAST_STEEL,
    NEWTONS_IN_KILONEWTON,
    ONE_METRE,
    THIN_HOOP,
    WATER_WEIGHT,
    YIELD_SHARE,
)
from generator.formula import Constant, common_practice, derived, interpolate, whole_down

NEWTON_MILLIMETRES = Constant(1_000_000, "N*mm/(kN*m)", derived("1 kN.m is 1 000 000 N.mm"))
ARM_SHARE = Constant(
    0.9, "", derived("lever arm / depth of a lightly steeled section at working stress; see the tests")
)
WIDEST_STARTERS = Constant(0.3, "m", common_practice("starters stand at least as close as this"))
STARTER_STEP = Constant(0.01, "m", derived("what a mason sets out between starters"))

BOOK.given(
    "starter_diameter",
    symbol="d_ft",
    unit="mm",
    low=4,
    high=12,
    step=1,
    source=common_practice("starter bars that a village shop sells"),
)


@BOOK.quantity(
    symbol="C_ft",
    unit="",
    places=4,
    low=0,
    high=0.167,
    source=derived("table from the solution of a thin shell, Poisson's ratio 0.2; at most 0.6 % off"),
)
def foot_moment_share(shape_number: float) -> float:
    """Moment at a fixed foot as a share of water weight x depth cubed.

    Args:
        shape_number: shape number of the wall [-], 0.01 to 270.

    Returns:
        Share [-], 0 to 0.167.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(foot_moment_share(shape_number=18.8), 4)
        '0.0069'
    """
    return interpolate(shape_number, FOOT_SHAPES, FOOT_MOMENTS)


@BOOK.quantity(
    symbol="C_fp",
    unit="",
    places=4,
    low=0,
    high=0.5,
    source=derived("table from the solution of a thin shell, Poisson's ratio 0.2; at most 0.2 % off"),
)
def foot_push_share(shape_number: float) -> float:
    """Outward push at a fixed foot as a share of water weight x depth squared.

    Args:
        shape_number: shape number of the wall [-], 0.01 to 270.

    Returns:
        Share [-], 0 to 0.5.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(foot_push_share(shape_number=18.8), 4)
        '0.1174'
    """
    return interpolate(shape_number, FOOT_SHAPES, FOOT_PUSHES)


@BOOK.quantity(
    symbol="M_ft", unit="kN*m/m", places=2, low=0, high=3, source=derived("share x water weight x depth cubed")
)
def foot_moment(foot_moment_share: float, water_depth: float) -> float:
    """Moment at the foot of the wall, tension on the water face: what the starter bars must hold.

    Args:
        foot_moment_share: share of the bending at the foot [-], 0 to 0.167.
        water_depth: depth of the water [m], 0.1 to 2.2.

    Returns:
        Moment of a metre of girth [kN*m/m], 0 to 3.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(foot_moment(foot_moment_share=0.0069, water_depth=1.7), 2)
        '0.33'
    """
    return foot_moment_share * WATER_WEIGHT * water_depth**3


@BOOK.quantity(
    symbol="Q_ft", unit="kN/m", places=1, low=0, high=12, source=derived("share x water weight x depth squared")
)
def foot_push(foot_push_share: float, water_depth: float) -> float:
    """Outward push of the foot against the base.

    Args:
        foot_push_share: share of the push at the foot [-], 0 to 0.5.
        water_depth: depth of the water [m], 0.1 to 2.2.

    Returns:
        Push of a metre of girth [kN/m], 0 to 12.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(foot_push(foot_push_share=0.117, water_depth=1.7), 1)
        '3.3'
    """
    return foot_push_share * WATER_WEIGHT * water_depth**2


@BOOK.quantity(
    symbol="x_fs",
    unit="mm",
    places=1,
    low=5,
    high=70,
    source=derived("wall less cover, mesh and half the starter: starters stand near the water face"),
)
def starter_depth(wall_thickness: float, bar_cover_inside: float, starter_diameter: float) -> float:
    """From the dry face to the middle of the starter bars, which stand near the water face.

    Args:
        wall_thickness: thickness of the finished wall [mm], 30 to 75.
        bar_cover_inside: cover over the bars on the water side [mm], 5 to 25.
        starter_diameter: thickness of the starter bars [mm], 4 to 12.

    Returns:
        Depth [mm], 5 to 70.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(starter_depth(wall_thickness=48, bar_cover_inside=9, starter_diameter=8), 1)
        '35.0'
    """
    return wall_thickness - bar_cover_inside - starter_diameter / 2


@BOOK.quantity(
    symbol="A_ft", unit="mm**2/m", places=1, low=0, high=5000, source=derived("moment / (working stress x 0.9 x depth)")
)
def starter_steel_needed(foot_moment: float, steel_working_stress: float, starter_depth: float) -> float:
    """Starter steel that a metre of girth needs.

    Args:
        foot_moment: bending at the foot of the wall [kN*m/m], 0 to 3.
        steel_working_stress: working stress allowed in the steel [MPa], 80 to 130.
        starter_depth: depth of the starter bars from the dry face [mm], 5 to 70.

    Returns:
        Steel [mm**2/m], 0 to 5000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(starter_steel_needed(foot_moment=0.33, steel_working_stress=115, starter_depth=35), 1)
        '91.1'
    """
    return foot_moment * NEWTON_MILLIMETRES / (steel_working_stress * ARM_SHARE * starter_depth)


@BOOK.quantity(
    symbol="s_ft",
    unit="m",
    places=2,
    low=0,
    high=0.3,
    source=derived("one starter / steel needed, rounded down to 10 mm, never over 0.30"),
)
def starter_spacing(starter_diameter: float, starter_steel_needed: float) -> float:
    """Widest distance between starter bars, in steps of 10 mm. Nothing means: thicker starters are needed.

    Args:
        starter_diameter: thickness of the starter bars [mm], 4 to 12.
        starter_steel_needed: starter steel that a metre of girth needs [mm**2/m], 0 to 5000.

    Returns:
        Distance [m], 0 to 0.3.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(starter_spacing(starter_diameter=8, starter_steel_needed=91), 2)
        '0.30'
    """
    return min(
        WIDEST_STARTERS,
        whole_down(pi * starter_diameter**2 / 4 / max(starter_steel_needed, LEAST_STEEL) / STARTER_STEP) * STARTER_STEP,
    )


@BOOK.quantity(
    symbol="T_ft", unit="kN", places=1, low=0, high=48, source=derived("outward push x radius, as in any ring")
)
def base_ring_pull(foot_push: float, inside_radius: float) -> float:
    """Pull in the base's edge ring, which holds the foot against the outward push.

    Args:
        foot_push: outward push of the foot [kN/m], 0 to 12.
        inside_radius: inside radius: centre to the wall's wet face [m], 0.3 to 4.0.

    Returns:
        Pull [kN], 0 to 48.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(base_ring_pull(foot_push=3.3, inside_radius=1.6), 1)
        '5.3'
    """
    return foot_push * inside_radius


@BOOK.quantity(
    symbol="A_fr",
    unit="mm**2",
    places=1,
    low=0,
    high=600,
    source=derived("pull / working stress; the concrete is not counted"),
)
def base_ring_steel(base_ring_pull: float, steel_working_stress: float) -> float:
    """Steel that the base needs round its edge, all ring bars together.

    Args:
        base_ring_pull: pull in the edge ring of the base [kN], 0 to 48.
        steel_working_stress: working stress allowed in the steel [MPa], 80 to 130.

    Returns:
        Steel [mm**2], 0 to 600.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(base_ring_steel(base_ring_pull=5.3, steel_working_stress=115), 1)
        '46.1'
    """
    return base_ring_pull * NEWTONS_IN_KILONEWTON / steel_working_stress


@BOOK.misconception(of="foot_moment")
def foot_moment_by_depth_squared(foot_moment_share: float, water_depth: float) -> float:
    """The depth was multiplied by itself once, not twice."""
    return foot_moment_share * WATER_WEIGHT * water_depth**2 * ONE_METRE


@BOOK.misconception(of="foot_push")
def all_the_water_pushes_the_foot(water_depth: float) -> float:
    """The whole push of the water on the wall was given to the foot; the hoops bear most of it."""
    return WATER_WEIGHT * water_depth**2 / 2


@BOOK.misconception(of="starter_depth")
def starters_in_the_middle(wall_thickness: float) -> float:
    """The starters were set in the middle of the wall."""
    return wall_thickness / 2


@BOOK.misconception(of="starter_depth")
def starters_at_the_dry_face(hoop_cover_outside: float, starter_diameter: float) -> float:
    """The starters were set near the dry face."""
    return hoop_cover_outside + starter_diameter / 2


@BOOK.misconception(of="starter_depth")
def whole_wall_taken_as_depth(wall_thickness: float) -> float:
    """Cover and bar were forgotten."""
    return wall_thickness


@BOOK.misconception(of="base_ring_pull")
def base_ring_from_diameter(foot_push: float, inside_diameter: float) -> float:
    """The whole way across was taken where half of it belongs."""
    return foot_push * inside_diameter


@BOOK.misconception(of="starter_spacing")
def starter_area_from_thickness(starter_diameter: float, starter_steel_needed: float) -> float:
    """The steel was thought to grow like the thickness: a bar of 6 mm was known, the others scaled from it."""
    return min(
        WIDEST_STARTERS,
        whole_down(pi * THIN_HOOP * starter_diameter / 4 / max(starter_steel_needed, LEAST_STEEL) / STARTER_STEP)
        * STARTER_STEP,
    )


@BOOK.misconception(of="starter_steel_needed")
def starter_arm_taken_as_depth(foot_moment: float, steel_working_stress: float, starter_depth: float) -> float:
    """The whole depth was taken for the lever arm."""
    return foot_moment * NEWTON_MILLIMETRES / (steel_working_stress * starter_depth)


@BOOK.misconception(of="base_ring_steel")
def base_ring_allowed_to_its_breaking(base_ring_pull: float) -> float:
    """The stress at which steel gives way was taken for the stress it may bear every day."""
    return base_ring_pull * NEWTONS_IN_KILONEWTON / YIELD_SHARE
