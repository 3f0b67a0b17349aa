"""Flat roofs that lie on the wall alone: load, bending, cracking stress, and the steel below.

A thin flat roof bends with the square of its span; wide ones take a column (`column_roof`) or ribs (`rib_roof`). A dome
or a cone (`shell_roof`) bends hardly at all and pulls at its edge ring instead.

References:
    .. [1] Civil Engineering Handbook, 2nd ed., page 47-50, equations 47.72 to 47.76 (read in print).
"""

from generator.calculations._book import BOOK
from generator.calculations.foot import ARM_SHARE, NEWTON_MILLIMETRES
from generator.calculations.ring_strength import NEWTONS_IN_KILONEWTON, YIELD_SHARE
from generator.calculations.setting_out import MILLIMETRES_IN_METRE
from generator.formula import Constant, common_practice, derived, published

MORTAR_WEIGHT = Constant(24, "kN/m**3", common_practice("mortar or concrete with its steel"))
LOOSE_ROOF = Constant(0.2, "", published("Civil Engineering Handbook, 2nd ed., equation 47.75: (3 + 0.2) / 16"))
MORTAR_BENDING_ALLOWED = Constant(
    2.0,
    "MPa",
    common_practice("bending tension of M30 concrete in worked tanks; for mortar no print was found: it may only warn"),
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


@BOOK.misconception(of="roof_steel_depth")
def roof_cover_forgotten(roof_thickness: float) -> float:
    """Cover and bar were forgotten."""
    return roof_thickness


@BOOK.misconception(of="flat_roof_stress")
def six_forgotten_in_the_roof(flat_roof_moment: float, roof_thickness: float) -> float:
    """The 6 of a slab's face was forgotten."""
    return flat_roof_moment * NEWTONS_IN_KILONEWTON / roof_thickness**2


@BOOK.misconception(of="flat_roof_steel_needed")
def roof_steel_allowed_to_its_breaking(flat_roof_moment: float, roof_steel_depth: float) -> float:
    """The stress at which steel gives way was taken for the stress it may bear every day."""
    return flat_roof_moment * NEWTON_MILLIMETRES / (YIELD_SHARE * ARM_SHARE * roof_steel_depth)
