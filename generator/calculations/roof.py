"""Flat roofs: load, bending and cracking stress, alone, on a column with a cap, and on ribs.

A thin flat roof bends with the square of its span. Over a column it is bent the other way: the tension is on top, and
the steel there lies on top. A dome or a cone (`shell_roof`) bends hardly at all and pulls at its edge ring instead.

References:
    .. [1] Civil Engineering Handbook, 2nd ed., page 47-50, equations 47.72 to 47.76 (read in print).
"""

from math import pi, sqrt

from generator.calculations._book import BOOK
from generator.calculations.factor_tables import COLUMN_LOADS, FIELD_MOMENTS, HEAD_MOMENTS, HEADS
from generator.calculations.foot import ARM_SHARE, NEWTON_MILLIMETRES
from generator.calculations.ring_strength import MORTAR_TENSION_ALLOWED, NEWTONS_IN_KILONEWTON
from generator.calculations.setting_out import MILLIMETRES_IN_METRE
from generator.formula import Constant, OutOfRangeError, common_practice, derived, interpolate, published, whole_up

MORTAR_WEIGHT = Constant(24, "kN/m**3", common_practice("mortar or concrete with its steel"))
LOOSE_ROOF = Constant(0.2, "", published("Civil Engineering Handbook, 2nd ed., equation 47.75: (3 + 0.2) / 16"))
MORTAR_BENDING_ALLOWED = Constant(
    2.0,
    "MPa",
    common_practice("bending tension of M30 concrete in worked tanks; for mortar no print was found: it may only warn"),
)
PUNCHING_ALLOWED = Constant(
    float(MORTAR_TENSION_ALLOWED) / 1.5, "MPa", derived("shear is largest at mid-depth, 1.5 of its mean: there 1.2 MPa")
)

BOOK.given(
    "roof_thickness",
    symbol="t_ro",
    unit="mm",
    low=30,
    high=100,
    step=5,
    source=common_practice("thin mortar roofs; thicker ones load the wall for nothing"),
)

BOOK.given(
    "roof_live_load",
    symbol="q_ro",
    unit="kN/m**2",
    low=0.75,
    high=5,
    step=0.25,
    source=common_practice("people who clean and mend; with snow an engineer says more"),
)

BOOK.given(
    "roof_cover",
    symbol="c_ro",
    unit="mm",
    low=5,
    high=15,
    step=1,
    source=common_practice("mortar under the roof's steel, where vapour rusts it first"),
)

BOOK.given(
    "roof_bar_diameter",
    symbol="d_ro",
    unit="mm",
    low=4,
    high=12,
    step=1,
    source=common_practice("roof bars that a village shop sells"),
)

BOOK.given(
    "column_head_diameter",
    symbol="D_ro",
    unit="m",
    low=0.15,
    high=1.5,
    step=0.05,
    source=common_practice("from a bare pipe to a wide cap"),
)

BOOK.given(
    "roof_rise_parts",
    symbol="n_ro",
    unit="",
    low=5,
    high=10,
    step=1,
    source=derived("a dome flatter than 51.8 degrees at its edge is pressed all over; rise of a fifth stays under it"),
)

BOOK.given(
    "rib_spacing",
    symbol="s_rr",
    unit="m",
    low=0.4,
    high=1.5,
    step=0.1,
    source=common_practice("ribs that a thin roof can span between"),
)

BOOK.given(
    "rib_depth",
    symbol="h_rr",
    unit="mm",
    low=80,
    high=300,
    step=10,
    source=common_practice("from the top of the roof to the foot of the rib"),
)


@BOOK.quantity(
    symbol="w_ro", unit="kN/m**2", places=2, low=1.4, high=7.5, source=derived("weight of the mortar and of people")
)
def roof_load(roof_thickness: float, roof_live_load: float) -> float:
    """Load of a square metre of roof.

    Args:
        roof_thickness: thickness of the roof [mm], 30 to 100.
        roof_live_load: load of people on the roof [kN/m**2], 0.75 to 5.

    Returns:
        Load [kN/m**2], 1.4 to 7.5.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(roof_load(roof_thickness=45, roof_live_load=1), 2)
        '2.08'
    """
    return MORTAR_WEIGHT * roof_thickness / MILLIMETRES_IN_METRE + roof_live_load


@BOOK.quantity(
    symbol="M_ro",
    unit="kN*m/m",
    places=2,
    low=0.01,
    high=24,
    source=published("Civil Engineering Handbook, 2nd ed., equation 47.75, Poisson's ratio 0.2"),
)
def flat_roof_moment(roof_load: float, inside_radius: float) -> float:
    """Bending in the middle of a flat round roof that lies on the wall, tension below.

    Args:
        roof_load: load on a square metre of roof [kN/m**2], 1.4 to 7.5.
        inside_radius: inside radius: centre to the wall's wet face [m], 0.3 to 4.0.

    Returns:
        Moment of a metre of width [kN*m/m], 0.01 to 24.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(flat_roof_moment(roof_load=2.08, inside_radius=1.2), 2)
        '0.60'
    """
    return LOOSE_ROOF * roof_load * inside_radius**2


@BOOK.quantity(
    symbol="f_ro", unit="MPa", places=2, low=0, high=160, source=derived("6 M / t^2 of a slab without cracks")
)
def flat_roof_stress(flat_roof_moment: float, roof_thickness: float) -> float:
    """Tension below the middle of a flat roof without cracks.

    Args:
        flat_roof_moment: bending in the middle of the flat roof [kN*m/m], 0.01 to 24.
        roof_thickness: thickness of the roof [mm], 30 to 100.

    Returns:
        Tension [MPa], 0 to 160.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(flat_roof_stress(flat_roof_moment=0.6, roof_thickness=45), 2)
        '1.78'
    """
    return 6 * flat_roof_moment * NEWTONS_IN_KILONEWTON / roof_thickness**2


@BOOK.quantity(symbol="x_ro", unit="mm", places=1, low=9, high=93, source=derived("roof less cover and half a bar"))
def roof_steel_depth(roof_thickness: float, roof_cover: float, roof_bar_diameter: float) -> float:
    """From the pressed face of the roof to the middle of its bars.

    Args:
        roof_thickness: thickness of the roof [mm], 30 to 100.
        roof_cover: cover of the roof steel [mm], 5 to 15.
        roof_bar_diameter: thickness of the roof bars [mm], 4 to 12.

    Returns:
        Depth [mm], 9 to 93.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(roof_steel_depth(roof_thickness=45, roof_cover=10, roof_bar_diameter=6), 1)
        '32.0'
    """
    return roof_thickness - roof_cover - roof_bar_diameter / 2


@BOOK.quantity(
    symbol="A_ro",
    unit="mm**2/m",
    places=1,
    low=0,
    high=38000,
    source=derived("moment / (working stress x 0.9 x depth)"),
)
def flat_roof_steel_needed(flat_roof_moment: float, steel_working_stress: float, roof_steel_depth: float) -> float:
    """Steel that a flat roof needs below, in each of two directions.

    Args:
        flat_roof_moment: bending in the middle of the flat roof [kN*m/m], 0.01 to 24.
        steel_working_stress: working stress allowed in the steel [MPa], 80 to 130.
        roof_steel_depth: depth of the roof steel [mm], 9 to 93.

    Returns:
        Steel [mm**2/m], 0 to 38000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(flat_roof_steel_needed(flat_roof_moment=0.6, steel_working_stress=115, roof_steel_depth=32), 1)
        '181.2'
    """
    return flat_roof_moment * NEWTON_MILLIMETRES / (steel_working_stress * ARM_SHARE * roof_steel_depth)


@BOOK.quantity(
    symbol="u_ro",
    unit="",
    places=3,
    low=0.02,
    high=0.35,
    source=derived("the range of the solved slab: a cap of a fiftieth to a third of the span"),
)
def column_head_share(column_head_diameter: float, inside_diameter: float) -> float:
    """Width of the column's cap as a share of the span.

    Args:
        column_head_diameter: width of the column's cap [m], 0.15 to 1.5.
        inside_diameter: inside diameter [m], 0.6 to 8.0.

    Returns:
        Share [-], 0.02 to 0.35.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(column_head_share(column_head_diameter=0.5, inside_diameter=3.2), 3)
        '0.156'
    """
    return column_head_diameter / inside_diameter


@BOOK.quantity(
    symbol="P_ro",
    unit="kN",
    places=1,
    low=0.1,
    high=240,
    source=derived("table from the solution of a thin slab, Poisson's ratio 0.2, loose on the wall; within 0.5 %"),
)
def column_load(column_head_share: float, roof_load: float, inside_radius: float) -> float:
    """Load that the roof puts on its column.

    Args:
        column_head_share: cap of the column, as a share of the span [-], 0.02 to 0.35.
        roof_load: load on a square metre of roof [kN/m**2], 1.4 to 7.5.
        inside_radius: inside radius: centre to the wall's wet face [m], 0.3 to 4.0.

    Returns:
        Load [kN], 0.1 to 240.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(column_load(column_head_share=0.156, roof_load=2.08, inside_radius=1.6), 1)
        '7.8'
    """
    return interpolate(column_head_share, HEADS, COLUMN_LOADS) * roof_load * inside_radius**2


@BOOK.quantity(
    symbol="M_rh",
    unit="kN*m/m",
    places=2,
    low=0,
    high=70,
    source=derived(
        "table from the solution of a thin slab, Poisson's ratio 0.2, loose on the wall; within 1 %, on the safe side"
    ),
)
def column_head_moment(column_head_share: float, roof_load: float, inside_radius: float) -> float:
    """Bending over the column's cap: tension on TOP, so the steel there lies on top.

    Args:
        column_head_share: cap of the column, as a share of the span [-], 0.02 to 0.35.
        roof_load: load on a square metre of roof [kN/m**2], 1.4 to 7.5.
        inside_radius: inside radius: centre to the wall's wet face [m], 0.3 to 4.0.

    Returns:
        Moment of a metre of width [kN*m/m], 0 to 70.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(column_head_moment(column_head_share=0.156, roof_load=2.08, inside_radius=1.6), 2)
        '0.97'
    """
    return interpolate(column_head_share, HEADS, HEAD_MOMENTS) * roof_load * inside_radius**2


@BOOK.quantity(
    symbol="M_rf",
    unit="kN*m/m",
    places=2,
    low=0,
    high=9,
    source=derived("table from the solution of a thin slab, Poisson's ratio 0.2, loose on the wall; within 1 %"),
)
def column_field_moment(column_head_share: float, roof_load: float, inside_radius: float) -> float:
    """Largest bending between column and wall, tension below.

    Args:
        column_head_share: cap of the column, as a share of the span [-], 0.02 to 0.35.
        roof_load: load on a square metre of roof [kN/m**2], 1.4 to 7.5.
        inside_radius: inside radius: centre to the wall's wet face [m], 0.3 to 4.0.

    Returns:
        Moment of a metre of width [kN*m/m], 0 to 9.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(column_field_moment(column_head_share=0.156, roof_load=2.08, inside_radius=1.6), 2)
        '0.27'
    """
    return interpolate(column_head_share, HEADS, FIELD_MOMENTS) * roof_load * inside_radius**2


@BOOK.quantity(
    symbol="f_rh", unit="MPa", places=2, low=0, high=470, source=derived("6 M / t^2 of a slab without cracks")
)
def column_roof_stress(column_head_moment: float, roof_thickness: float) -> float:
    """Tension on top of the roof over the column's cap, without cracks.

    Args:
        column_head_moment: bending over the column [kN*m/m], 0 to 70.
        roof_thickness: thickness of the roof [mm], 30 to 100.

    Returns:
        Tension [MPa], 0 to 470.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(column_roof_stress(column_head_moment=0.97, roof_thickness=45), 2)
        '2.87'
    """
    return 6 * column_head_moment * NEWTONS_IN_KILONEWTON / roof_thickness**2


@BOOK.quantity(
    symbol="v_ro",
    unit="MPa",
    places=2,
    low=0,
    high=60,
    source=derived("load outside the cap / (girth at half a depth from the cap x depth)"),
)
def punching_stress(
    column_load: float, roof_load: float, column_head_diameter: float, roof_steel_depth: float
) -> float:
    """Shear in the roof round the column's cap, which could punch through it. Allowed: 0.8.

    Args:
        column_load: load on the column [kN], 0.1 to 240.
        roof_load: load on a square metre of roof [kN/m**2], 1.4 to 7.5.
        column_head_diameter: width of the column's cap [m], 0.15 to 1.5.
        roof_steel_depth: depth of the roof steel [mm], 9 to 93.

    Returns:
        Shear [MPa], 0 to 60.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(punching_stress(column_load=7.8, roof_load=2.08, column_head_diameter=0.5, roof_steel_depth=32), 2)
        '0.14'
    """
    return (column_load - roof_load * pi * column_head_diameter**2 / 4) / (
        pi * (column_head_diameter + roof_steel_depth / MILLIMETRES_IN_METRE) * roof_steel_depth
    )


@BOOK.quantity(
    symbol="M_rr",
    unit="kN*m",
    places=2,
    low=0.02,
    high=90,
    source=derived("load of a strip as wide as the spacing, on two ends: w s D^2 / 8"),
)
def rib_moment(roof_load: float, rib_spacing: float, inside_diameter: float) -> float:
    """Bending in the longest rib, which crosses the middle from wall to wall.

    Args:
        roof_load: load on a square metre of roof [kN/m**2], 1.4 to 7.5.
        rib_spacing: distance between ribs [m], 0.4 to 1.5.
        inside_diameter: inside diameter [m], 0.6 to 8.0.

    Returns:
        Moment [kN*m], 0.02 to 90.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(rib_moment(roof_load=2.08, rib_spacing=0.6, inside_diameter=3.2), 2)
        '1.60'
    """
    return roof_load * rib_spacing * inside_diameter**2 / 8


@BOOK.quantity(
    symbol="A_rr", unit="mm**2", places=1, low=0, high=24000, source=derived("moment / (working stress x 0.9 x depth)")
)
def rib_steel_needed(
    rib_moment: float, steel_working_stress: float, rib_depth: float, roof_cover: float, roof_bar_diameter: float
) -> float:
    """Steel at the foot of the longest rib.

    Args:
        rib_moment: bending in the longest rib [kN*m], 0.02 to 90.
        steel_working_stress: working stress allowed in the steel [MPa], 80 to 130.
        rib_depth: depth of the ribs, roof included [mm], 80 to 300.
        roof_cover: cover of the roof steel [mm], 5 to 15.
        roof_bar_diameter: thickness of the roof bars [mm], 4 to 12.

    Returns:
        Steel [mm**2], 0 to 24000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(
        ...     rib_steel_needed(
        ...         rib_moment=1.6, steel_working_stress=130,
        ...         rib_depth=150, roof_cover=10, roof_bar_diameter=10,
        ...     ),
        ...     1,
        ... )
        '101.3'
    """
    return (
        rib_moment
        * NEWTON_MILLIMETRES
        / (steel_working_stress * ARM_SHARE * (rib_depth - roof_cover - roof_bar_diameter / 2))
    )


@BOOK.quantity(
    symbol="M_rs",
    unit="kN*m/m",
    places=3,
    low=0.02,
    high=2.2,
    source=derived("load x spacing squared / 8, as if each bay lay loose on its ribs"),
)
def rib_slab_moment(roof_load: float, rib_spacing: float) -> float:
    """Bending of the roof between two ribs.

    Args:
        roof_load: load on a square metre of roof [kN/m**2], 1.4 to 7.5.
        rib_spacing: distance between ribs [m], 0.4 to 1.5.

    Returns:
        Moment of a metre of length [kN*m/m], 0.02 to 2.2.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(rib_slab_moment(roof_load=2.08, rib_spacing=0.6), 3)
        '0.094'
    """
    return roof_load * rib_spacing**2 / 8


@BOOK.quantity(
    symbol="f_rr", unit="MPa", places=2, low=0, high=15, source=derived("6 M / t^2 of a slab without cracks")
)
def rib_slab_stress(rib_slab_moment: float, roof_thickness: float) -> float:
    """Tension below the roof between two ribs, without cracks.

    Args:
        rib_slab_moment: bending of the roof between ribs [kN*m/m], 0.02 to 2.2.
        roof_thickness: thickness of the roof [mm], 30 to 100.

    Returns:
        Tension [MPa], 0 to 15.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(rib_slab_stress(rib_slab_moment=0.094, roof_thickness=45), 2)
        '0.28'
    """
    return 6 * rib_slab_moment * NEWTONS_IN_KILONEWTON / roof_thickness**2


def column_foot_pressure(column_load: float, column_width: float, base_thickness: float, water_depth: float) -> float:
    """Ground pressure under a column that stands on the base without a pad, spread at 45 degrees through the base.

    Args:
        column_load: [kN].
        column_width: round column [m].
        base_thickness: [mm].
        water_depth: [m]; its weight is added.

    Returns:
        [kN/m2].

    Raises:
        OutOfRangeError: a size that is not above 0.

    Example:
        >>> round(column_foot_pressure(13, 0.2, 75, 0))
        135
    """
    if not min(column_width, base_thickness) > 0 or min(column_load, water_depth) < 0:
        raise OutOfRangeError("a column needs a width and a base above 0; ask a licensed engineer")
    spread = column_width + 2 * base_thickness / 1000
    return column_load / (pi * spread**2 / 4) + 9.81 * water_depth


def column_pad_side(column_load: float, allowed_pressure: float, water_depth: float, pad_thickness: float) -> float:
    """Side of a square pad under the column that keeps the ground pressure allowed, rounded up to 50 mm.

    Args:
        column_load: [kN].
        allowed_pressure: of the ground [kN/m2].
        water_depth: [m].
        pad_thickness: [mm].

    Returns:
        Side [m].

    Raises:
        OutOfRangeError: the water and the pad alone are as much as the ground may bear.

    Example:
        >>> round(column_pad_side(15, 100, 1.7, 200), 2)
        0.45
    """
    left = allowed_pressure - 9.81 * water_depth - float(MORTAR_WEIGHT) * pad_thickness / 1000
    if left <= 0 or column_load < 0:
        raise OutOfRangeError("the ground is too weak for this column; ask a licensed engineer")
    return float(whole_up(sqrt(column_load / left) / 0.05)) * 0.05


@BOOK.misconception(of="flat_roof_moment")
def flat_roof_from_diameter(roof_load: float, inside_diameter: float) -> float:
    """The whole way across was taken where half of it belongs."""
    return LOOSE_ROOF * roof_load * inside_diameter**2


@BOOK.misconception(of="roof_load")
def people_forgotten_on_the_roof(roof_thickness: float) -> float:
    """Only the roof's own weight was counted."""
    return MORTAR_WEIGHT * roof_thickness / MILLIMETRES_IN_METRE


@BOOK.misconception(of="roof_load")
def thicker_roof_weighs_nothing_more(roof_live_load: float) -> float:
    """The roof's own weight was forgotten."""
    return roof_live_load


@BOOK.misconception(of="column_head_moment")
def column_steel_below_only(column_field_moment: float) -> float:
    """The bending between column and wall was taken for the bending over the column."""
    return column_field_moment


@BOOK.misconception(of="column_load")
def roof_shared_half_and_half(roof_load: float, inside_radius: float) -> float:
    """Half of the roof was given to the column, half to the wall."""
    return roof_load * pi * inside_radius**2 / 2


@BOOK.misconception(of="rib_moment")
def rib_from_radius(roof_load: float, rib_spacing: float, inside_radius: float) -> float:
    """Half the span was taken for the span."""
    return roof_load * rib_spacing * inside_radius**2 / 8


@BOOK.misconception(of="roof_steel_depth")
def roof_cover_forgotten(roof_thickness: float) -> float:
    """Cover and bar were forgotten."""
    return roof_thickness


@BOOK.misconception(of="punching_stress")
def whole_load_punches_a_bare_column(column_load: float, roof_thickness: float, column_head_diameter: float) -> float:
    """The load was shared by the cap's girth and the whole thickness."""
    return column_load / (pi * column_head_diameter * roof_thickness)
