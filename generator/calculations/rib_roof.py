"""A thin roof on ribs that cross the tank: bending and steel of the ribs, and of the roof between them."""

from generator.calculations._book import BOOK
from generator.calculations.foot import ARM_SHARE, NEWTON_MILLIMETRES
from generator.calculations.ring_strength import NEWTONS_IN_KILONEWTON, ONE_METRE
from generator.formula import common_practice, derived

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


@BOOK.misconception(of="rib_moment")
def rib_from_radius(roof_load: float, rib_spacing: float, inside_radius: float) -> float:
    """Half the span was taken for the span."""
    return roof_load * rib_spacing * inside_radius**2 / 8


@BOOK.misconception(of="rib_steel_needed")
def rib_cover_forgotten(rib_moment: float, steel_working_stress: float, rib_depth: float) -> float:
    """Cover and bar were forgotten."""
    return rib_moment * NEWTON_MILLIMETRES / (steel_working_stress * ARM_SHARE * rib_depth)


@BOOK.misconception(of="rib_slab_moment")
def rib_bay_taken_once(roof_load: float, rib_spacing: float) -> float:
    """The spacing was not multiplied by itself."""
    return roof_load * rib_spacing * ONE_METRE / 8
