"""Circles of a round tank: inside, frame, outside and base.

Three diameters are always named apart. The inside diameter is from plaster to plaster, where water stands. The frame
diameter is from centre to centre of the upright bars, where steel is set. The outside diameter is from outer face to
outer face.
"""

from math import pi

from generator.calculations._book import BOOK
from generator.calculations.conversions import MM_PER_M
from generator.formula import common_practice, derived

BOOK.given(
    "inside_diameter", symbol="D_i", unit="m", low=1.0, high=6.5, step=0.01,
    source=derived("up to 50 m3 at a water depth that this course allows; a larger tank is not built from this course"),
)  # fmt: skip
BOOK.given(
    "base_projection", symbol="p", unit="m", low=0.1, high=0.6, step=0.05,
    source=common_practice("a base goes beyond the wall so that the wall's foot never stands on the edge"),
)  # fmt: skip


@BOOK.quantity(symbol="R_i", unit="m", places=3, low=0.5, high=3.25, source=derived("half of a diameter"))
def inside_radius(inside_diameter: float) -> float:
    """Centre of the tank to the wet face of its wall.

    Args:
        inside_diameter: wet face to wet face [m], 1 to 6.5.

    Returns:
        Half the inside diameter [m], 0.5 to 3.25.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(inside_radius(inside_diameter=3.4), 3)
        '1.700'
    """
    return inside_diameter / 2


@BOOK.quantity(
    symbol="D_f", unit="m", places=3, low=1.0, high=6.7,
    source=derived("geometry: cover, inside mesh and half a bar lie between the wet face and the bar's centre, twice"),
)  # fmt: skip
def frame_diameter(
    inside_diameter: float, mesh_cover: float, inside_mesh_thickness: float, bar_diameter: float
) -> float:
    """Diameter of the ring that the upright bars stand on, from bar centre to bar centre.

    From the water outwards a wall is: cover, inside mesh, upright bar, hoop, outside mesh, cover.

    Args:
        inside_diameter: wet face to wet face [m], 1 to 6.5.
        mesh_cover: mortar over the mesh, each side [mm], 2 to 10.
        inside_mesh_thickness: all inside layers of mesh, tied [mm], 2 to 15.
        bar_diameter: upright bar [mm], 6 to 12.

    Returns:
        The frame ring, bar centre to bar centre [m], 1 to 6.7.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(frame_diameter(inside_diameter=3.4, mesh_cover=5, inside_mesh_thickness=9, bar_diameter=8), 3)
        '3.436'
    """
    return inside_diameter + (2 * (mesh_cover + inside_mesh_thickness) + bar_diameter) / MM_PER_M


@BOOK.quantity(symbol="R_f", unit="m", places=3, low=0.5, high=3.35, source=derived("half of a diameter"))
def frame_radius(frame_diameter: float) -> float:
    """Length of the stick from the centre of the tank to the centre of an upright bar.

    The centre is the middle of the centre pipe, not its face.

    Args:
        frame_diameter: bar centre to bar centre [m], 1 to 6.7.

    Returns:
        Half the frame diameter [m], 0.5 to 3.35.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(frame_radius(frame_diameter=3.436), 3)
        '1.718'
    """
    return frame_diameter / 2


@BOOK.quantity(symbol="L_r", unit="m", places=2, low=3.1, high=21.1, source=derived("geometry: round a circle"))
def ring_length(frame_diameter: float) -> float:
    """Way round the frame ring, along the ring.

    Args:
        frame_diameter: bar centre to bar centre [m], 1 to 6.7.

    Returns:
        Once round [m], 3.1 to 21.1.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(ring_length(frame_diameter=3.436), 2)
        '10.79'
    """
    return pi * frame_diameter


@BOOK.quantity(symbol="D_o", unit="m", places=3, low=1.0, high=6.7, source=derived("geometry: a wall on each side"))
def outside_diameter(inside_diameter: float, wall_thickness: float) -> float:
    """Diameter of the finished tank, from outer face to outer face.

    Args:
        inside_diameter: wet face to wet face [m], 1 to 6.5.
        wall_thickness: plaster to plaster [mm], 30 to 75.

    Returns:
        Outer face to outer face [m], 1 to 6.7.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(outside_diameter(inside_diameter=3.4, wall_thickness=60), 3)
        '3.520'
    """
    return inside_diameter + 2 * wall_thickness / MM_PER_M


@BOOK.quantity(symbol="D_b", unit="m", places=3, low=1.2, high=7.9, source=derived("geometry: projection on each side"))
def base_diameter(outside_diameter: float, base_projection: float) -> float:
    """Diameter of the concrete circle under the tank.

    Args:
        outside_diameter: outer face to outer face [m], 1 to 6.7.
        base_projection: base beyond the wall's outer face [m], 0.1 to 0.6.

    Returns:
        Edge to edge of the base [m], 1.2 to 7.9.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(base_diameter(outside_diameter=3.52, base_projection=0.35), 3)
        '4.220'
    """
    return outside_diameter + 2 * base_projection


@BOOK.misconception(of="inside_radius")
def diameter_taken_for_radius(inside_diameter: float) -> float:
    """The whole way across stands where half of it belongs."""
    return inside_diameter


@BOOK.misconception(of="frame_radius")
def frame_diameter_taken_for_radius(frame_diameter: float) -> float:
    """The stick is cut as long as the whole way across."""
    return frame_diameter


@BOOK.misconception(of="frame_diameter")
def inside_diameter_for_frame_ring(inside_diameter: float) -> float:
    """Steel is set where water should stand."""
    return inside_diameter


@BOOK.misconception(of="frame_diameter")
def frame_ring_widened_on_one_side(
    inside_diameter: float, mesh_cover: float, inside_mesh_thickness: float, bar_diameter: float
) -> float:
    """Cover, mesh and half a bar are added once; a ring has two sides."""
    return inside_diameter + (mesh_cover + inside_mesh_thickness + bar_diameter / 2) / MM_PER_M


@BOOK.misconception(of="ring_length")
def round_is_three_diameters(frame_diameter: float) -> float:
    """Round is taken as three times across, without the piece that is missing."""
    return 3 * frame_diameter


@BOOK.misconception(of="ring_length")
def ring_from_inside_diameter(inside_diameter: float) -> float:
    """The ring is worked out from the inside diameter."""
    return pi * inside_diameter


@BOOK.misconception(of="outside_diameter")
def wall_added_on_one_side(inside_diameter: float, wall_thickness: float) -> float:
    """One wall is added; a line across the tank goes through two."""
    return inside_diameter + wall_thickness / MM_PER_M


@BOOK.misconception(of="base_diameter")
def base_projection_on_one_side(outside_diameter: float, base_projection: float) -> float:
    """The projection is added once; the base goes out on both sides."""
    return outside_diameter + base_projection
