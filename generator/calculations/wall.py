"""The wall as it is built up, face to face: its thickness comes from what must find room in it, never from a range.

From the water outward: cover, mesh, upright bar (or angle), hoop, mesh, cover. At a lap one more hoop or mesh lies in
the wall; at an angle the angle's leg stands where the bar was.
"""

from generator.calculations._book import BOOK
from generator.formula import Constant, common_practice, derived, whole_up

TROWEL_STEP = Constant(5, "mm", common_practice("walls are set out to the next 5 mm"))

BOOK.given(
    "hoop_diameter",
    symbol="d_h",
    unit="mm",
    low=3,
    high=16,
    step=1,
    source=common_practice("hoop wire and bars that a village shop sells"),
)
BOOK.given(
    "angle_leg",
    symbol="a",
    unit="mm",
    low=20,
    high=65,
    step=5,
    source=common_practice("equal angles that a village shop sells"),
)


@BOOK.quantity(symbol="t_b", unit="mm", places=0, low=13, high=82, source=derived("sum of the parts, face to face"))
def wall_build_up(
    mesh_cover: float,
    inside_mesh_thickness: float,
    bar_diameter: float,
    hoop_diameter: float,
    outside_mesh_thickness: float,
) -> float:
    """Thickness that the parts need between angles and away from laps.

    Args:
        mesh_cover: mortar over the mesh on each face [mm], 2 to 10.
        inside_mesh_thickness: all mesh on the water side [mm], 1 to 15.
        bar_diameter: upright bars [mm], 4 to 16.
        hoop_diameter: hoops [mm], 3 to 16.
        outside_mesh_thickness: all mesh on the outside [mm], 1 to 15.

    Returns:
        Thickness [mm], 13 to 82.

    Raises:
        OutOfRangeError: a given outside its range.

    Example:
        >>> wall_build_up(5, 5, 8, hoop_diameter=8, outside_mesh_thickness=4)
        35
    """
    return 2 * mesh_cover + inside_mesh_thickness + bar_diameter + hoop_diameter + outside_mesh_thickness


@BOOK.quantity(
    symbol="t_lap", unit="mm", places=0, low=16, high=98, source=derived("one hoop or mesh more, laps staggered")
)
def wall_build_up_at_lap(
    wall_build_up: float, hoop_diameter: float, inside_mesh_thickness: float, outside_mesh_thickness: float
) -> float:
    """Thickness where a hoop or a mesh is lapped; laps are staggered, so that only one lies in any place.

    Args:
        wall_build_up: thickness away from laps [mm], 13 to 82.
        hoop_diameter: hoops [mm], 3 to 16.
        inside_mesh_thickness: all mesh on the water side [mm], 1 to 15.
        outside_mesh_thickness: all mesh on the outside [mm], 1 to 15.

    Returns:
        Thickness [mm], 16 to 98.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> wall_build_up_at_lap(wall_build_up=35, hoop_diameter=8, inside_mesh_thickness=5, outside_mesh_thickness=4)
        43
    """
    return wall_build_up + max(hoop_diameter, inside_mesh_thickness, outside_mesh_thickness)


@BOOK.quantity(
    symbol="t_a", unit="mm", places=0, low=29, high=131, source=derived("the angle's leg in the bar's place")
)
def wall_build_up_at_angle(wall_build_up: float, bar_diameter: float, angle_leg: float) -> float:
    """Thickness at an angle: its leg stands across the wall where the bar was.

    Args:
        wall_build_up: thickness away from angles [mm], 13 to 82.
        bar_diameter: upright bars [mm], 4 to 16.
        angle_leg: leg of the angle [mm], 20 to 65.

    Returns:
        Thickness [mm], 29 to 131.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> wall_build_up_at_angle(wall_build_up=35, bar_diameter=8, angle_leg=25)
        52
    """
    return wall_build_up - bar_diameter + angle_leg


@BOOK.quantity(
    symbol="t",
    unit="mm",
    places=0,
    low=30,
    high=75,
    source=derived("the thickest place, to the next 5 mm; 30 to 75 mm are only the limits of hand work"),
)
def wall_thickness(wall_build_up_at_lap: float, wall_build_up_at_angle: float) -> float:
    """Thickness of the finished wall, the same all round: the thickest place decides.

    Args:
        wall_build_up_at_lap: thickness needed at a lap [mm], 16 to 98.
        wall_build_up_at_angle: thickness needed at an angle [mm], 29 to 131.

    Returns:
        Thickness, to the next 5 mm [mm], 30 to 75.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> wall_thickness(wall_build_up_at_lap=43, wall_build_up_at_angle=52)
        55.0
    """
    return whole_up(max(wall_build_up_at_lap, wall_build_up_at_angle) / TROWEL_STEP) * TROWEL_STEP


@BOOK.quantity(
    symbol="c_i", unit="mm", places=0, low=5, high=25, source=derived("what lies between the bar and the water")
)
def bar_cover_inside(mesh_cover: float, inside_mesh_thickness: float) -> float:
    """Nominal cover over the upright bars on the water side. Mesh cover and bar cover are different numbers.

    Aim at 8 mm or more: no reading anywhere may be under 5 mm.

    Args:
        mesh_cover: mortar over the mesh [mm], 2 to 10.
        inside_mesh_thickness: all mesh on the water side [mm], 1 to 15.

    Returns:
        Cover [mm], 5 to 25.

    Raises:
        OutOfRangeError: a given outside its range.

    Example:
        >>> bar_cover_inside(mesh_cover=5, inside_mesh_thickness=9)
        14
    """
    return mesh_cover + inside_mesh_thickness


@BOOK.quantity(
    symbol="c_o", unit="mm", places=0, low=5, high=25, source=derived("what lies between the hoop and the air")
)
def hoop_cover_outside(mesh_cover: float, outside_mesh_thickness: float) -> float:
    """Nominal cover over the hoops on the outside.

    Aim at 8 mm or more: no reading anywhere may be under 5 mm.

    Args:
        mesh_cover: mortar over the mesh [mm], 2 to 10.
        outside_mesh_thickness: all mesh on the outside [mm], 1 to 15.

    Returns:
        Cover [mm], 5 to 25.

    Raises:
        OutOfRangeError: a given outside its range.

    Example:
        >>> hoop_cover_outside(mesh_cover=5, outside_mesh_thickness=4)
        9
    """
    return mesh_cover + outside_mesh_thickness


@BOOK.misconception(of="wall_build_up")
def cover_on_one_side_only(wall_build_up: float, mesh_cover: float) -> float:
    """Cover was planned on one face; the other face has none."""
    return wall_build_up - mesh_cover


@BOOK.misconception(of="wall_build_up")
def mesh_left_out_of_the_wall(
    wall_build_up: float, inside_mesh_thickness: float, outside_mesh_thickness: float
) -> float:
    """The mesh was thought to take no room."""
    return wall_build_up - inside_mesh_thickness - outside_mesh_thickness


@BOOK.misconception(of="wall_build_up_at_angle")
def angle_forgotten_in_the_wall(wall_build_up: float) -> float:
    """The wall was planned between the angles, and the angle sticks out."""
    return wall_build_up


@BOOK.misconception(of="wall_thickness")
def wall_planned_for_hoops_only(wall_build_up_at_lap: float) -> float:
    """The wall was made thick enough for the hoops, and the angle sticks out."""
    return whole_up(wall_build_up_at_lap / TROWEL_STEP) * TROWEL_STEP


@BOOK.misconception(of="bar_cover_inside")
def mesh_cover_taken_for_bar_cover(mesh_cover: float) -> float:
    """Mortar over the mesh was taken for mortar over the bar behind it."""
    return mesh_cover
