"""Setting out: inside, frame and outside diameter named apart, the ring, the base.

Water stands inside the plaster (inside diameter). Steel is set on the frame ring, the centre line of the upright bars
(frame diameter). The roof and the base must fit the outside of the plaster (outside diameter).
"""

from math import pi

from generator.calculations._book import BOOK
from generator.formula import Constant, common_practice, derived

MILLIMETRES_IN_METRE = Constant(1000, "mm/m", derived("1 m is 1000 mm"))

BOOK.given(
    "inside_diameter",
    symbol="D_i",
    unit="m",
    low=0.6,
    high=8.0,
    step=0.01,
    source=derived("up to 50 m3 of water at a depth of a metre; a larger tank is not built from this course"),
)
BOOK.given(
    "mesh_cover",
    symbol="c_m",
    unit="mm",
    low=2,
    high=10,
    step=1,
    source=common_practice("mortar over mesh, 2 to 5 mm nominal; more is allowed, less rusts"),
)
BOOK.given(
    "inside_mesh_thickness",
    symbol="m_i",
    unit="mm",
    low=1,
    high=15,
    step=1,
    source=common_practice("all mesh layers on the water side, as tied, pressed with the hand"),
)
BOOK.given(
    "outside_mesh_thickness",
    symbol="m_o",
    unit="mm",
    low=1,
    high=15,
    step=1,
    source=common_practice("all mesh layers on the outside, as tied, pressed with the hand"),
)
BOOK.given(
    "bar_diameter",
    symbol="d_b",
    unit="mm",
    low=4,
    high=16,
    step=1,
    source=common_practice("upright bars that a village shop sells"),
)
BOOK.given(
    "base_projection",
    symbol="p_b",
    unit="m",
    low=0.1,
    high=0.6,
    step=0.05,
    source=common_practice("how far the base goes beyond the wall"),
)


@BOOK.quantity(symbol="R_i", unit="m", places=3, low=0.3, high=4.0, source=derived("half of the diameter"))
def inside_radius(inside_diameter: float) -> float:
    """From the centre to the wall's wet face: half-across.

    Args:
        inside_diameter: across the water, wet face to wet face [m], 0.6 to 8.

    Returns:
        Radius [m], 0.3 to 4.

    Raises:
        OutOfRangeError: the diameter is outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(inside_radius(inside_diameter=3.40), 3)
        '1.700'
    """
    return inside_diameter / 2


@BOOK.quantity(
    symbol="D_f", unit="m", places=3, low=0.6, high=8.1, source=derived("the build-up inside the bars, twice")
)
def frame_diameter(
    inside_diameter: float, mesh_cover: float, inside_mesh_thickness: float, bar_diameter: float
) -> float:
    """Across the frame ring, measured between the centre lines of the upright bars.

    Args:
        inside_diameter: across the water [m], 0.6 to 8.
        mesh_cover: mortar over the mesh [mm], 2 to 10.
        inside_mesh_thickness: all mesh on the water side [mm], 1 to 15.
        bar_diameter: upright bars [mm], 4 to 16.

    Returns:
        Frame diameter [m], 0.6 to 8.1.

    Raises:
        OutOfRangeError: a given outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(frame_diameter(inside_diameter=3.40, mesh_cover=5, inside_mesh_thickness=9, bar_diameter=8), 3)
        '3.436'
    """
    return inside_diameter + (2 * (mesh_cover + inside_mesh_thickness) + bar_diameter) / MILLIMETRES_IN_METRE


@BOOK.quantity(symbol="R_f", unit="m", places=3, low=0.3, high=4.05, source=derived("half of the diameter"))
def frame_radius(frame_diameter: float) -> float:
    """From the centre to the frame ring: the length of the radius stick, from the middle of the centre pipe.

    Args:
        frame_diameter: across the frame ring [m], 0.6 to 8.1.

    Returns:
        Radius [m], 0.3 to 4.05.

    Raises:
        OutOfRangeError: the diameter is outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(frame_radius(frame_diameter=3.436), 3)
        '1.718'
    """
    return frame_diameter / 2


@BOOK.quantity(symbol="L_r", unit="m", places=3, low=1.9, high=25.5, source=derived("girth of a circle"))
def ring_length(frame_diameter: float) -> float:
    """Once round the frame ring.

    Args:
        frame_diameter: across the frame ring [m], 0.6 to 8.1.

    Returns:
        Length along the ring [m], 1.9 to 25.5.

    Raises:
        OutOfRangeError: the diameter is outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(ring_length(frame_diameter=3.436), 3)
        '10.795'
    """
    return pi * frame_diameter


@BOOK.quantity(symbol="D_o", unit="m", places=3, low=0.6, high=8.2, source=derived("a wall on each side"))
def outside_diameter(inside_diameter: float, wall_thickness: float) -> float:
    """Across the finished tank, outer face to outer face.

    Args:
        inside_diameter: across the water [m], 0.6 to 8.
        wall_thickness: finished wall [mm], 30 to 75.

    Returns:
        Outside diameter [m], 0.6 to 8.2.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(outside_diameter(inside_diameter=3.40, wall_thickness=65), 3)
        '3.530'
    """
    return inside_diameter + 2 * wall_thickness / MILLIMETRES_IN_METRE


@BOOK.quantity(symbol="D_b", unit="m", places=2, low=0.8, high=9.4, source=derived("the projection on each side"))
def base_diameter(outside_diameter: float, base_projection: float) -> float:
    """Across the base, which stands out beyond the wall all round.

    Args:
        outside_diameter: across the finished tank [m], 0.6 to 8.2.
        base_projection: how far the base goes beyond the wall [m], 0.1 to 0.6.

    Returns:
        Diameter of the base [m], 0.8 to 9.4.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(base_diameter(outside_diameter=3.53, base_projection=0.35), 2)
        '4.23'
    """
    return outside_diameter + 2 * base_projection


@BOOK.misconception(of="inside_radius")
def diameter_taken_for_radius(inside_diameter: float) -> float:
    """The whole way across stands where half of it belongs."""
    return inside_diameter


@BOOK.misconception(of="frame_radius")
def frame_diameter_taken_for_radius(frame_diameter: float) -> float:
    """The radius stick was cut as long as the whole way across."""
    return frame_diameter


@BOOK.misconception(of="frame_diameter")
def inside_taken_for_frame_diameter(inside_diameter: float) -> float:
    """The steel was set on the circle where the water should stand."""
    return inside_diameter


@BOOK.misconception(of="frame_diameter")
def frame_widened_on_one_side_only(
    inside_diameter: float, mesh_cover: float, inside_mesh_thickness: float, bar_diameter: float
) -> float:
    """Mesh and cover were added once, and not on both sides of the circle."""
    return inside_diameter + (mesh_cover + inside_mesh_thickness + bar_diameter / 2) / MILLIMETRES_IN_METRE


@BOOK.misconception(of="ring_length")
def ring_as_three_diameters(frame_diameter: float) -> float:
    """Three times across was taken for once round."""
    return 3 * frame_diameter


@BOOK.misconception(of="ring_length")
def radius_taken_for_diameter_in_ring(frame_diameter: float) -> float:
    """Half-across stands where the whole way across belongs."""
    return pi * frame_diameter / 2


@BOOK.misconception(of="base_diameter")
def base_widened_on_one_side_only(outside_diameter: float, base_projection: float) -> float:
    """The base was made wider on one side of the circle only."""
    return outside_diameter + base_projection


@BOOK.misconception(of="outside_diameter")
def wall_added_on_one_side_only(inside_diameter: float, wall_thickness: float) -> float:
    """The wall was added once, and not on both sides of the circle."""
    return inside_diameter + wall_thickness / MILLIMETRES_IN_METRE
