"""A flat roof with a column and its cap in the middle: who bears what, bending, and punching.

Over a column a roof is bent the other way: the tension is on top, and the steel there lies on top.

References:
    .. [1] Civil Engineering Handbook, 2nd ed., page 47-50, equations 47.72 to 47.76 (read in print); see `plates`.
"""

from math import pi

from generator.calculations._book import BOOK
from generator.calculations.factor_tables import COLUMN_LOADS, FIELD_MOMENTS, HEAD_MOMENTS, HEADS
from generator.calculations.ring_strength import MORTAR_TENSION_ALLOWED, NEWTONS_IN_KILONEWTON
from generator.calculations.setting_out import MILLIMETRES_IN_METRE
from generator.formula import Constant, common_practice, derived, interpolate

PUNCHING_ALLOWED = Constant(
    float(MORTAR_TENSION_ALLOWED) / 1.5, "MPa", derived("shear is largest at mid-depth, 1.5 of its mean: there 1.2 MPa")
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


@BOOK.misconception(of="column_head_moment")
def column_steel_below_only(column_field_moment: float) -> float:
    """The bending between column and wall was taken for the bending over the column."""
    return column_field_moment


@BOOK.misconception(of="column_load")
def roof_shared_half_and_half(roof_load: float, inside_radius: float) -> float:
    """Half of the roof was given to the column, half to the wall."""
    return roof_load * pi * inside_radius**2 / 2


@BOOK.misconception(of="punching_stress")
def whole_load_punches_a_bare_column(column_load: float, roof_thickness: float, column_head_diameter: float) -> float:
    """The load was shared by the cap's girth and the whole thickness."""
    return column_load / (pi * column_head_diameter * roof_thickness)


@BOOK.misconception(of="column_head_share")
def cap_shared_by_the_radius(column_head_diameter: float, inside_radius: float) -> float:
    """The cap was divided by half the span."""
    return column_head_diameter / inside_radius


@BOOK.misconception(of="column_field_moment")
def column_left_out_of_the_roof(flat_roof_moment: float) -> float:
    """The roof was worked out as if it had no column."""
    return flat_roof_moment


@BOOK.misconception(of="column_roof_stress")
def roof_checked_away_from_the_column(column_field_moment: float, roof_thickness: float) -> float:
    """The stress between column and wall was taken for the one over the column."""
    return 6 * column_field_moment * NEWTONS_IN_KILONEWTON / roof_thickness**2
