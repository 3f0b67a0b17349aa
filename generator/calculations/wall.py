"""What a wall is built up of, how thick that makes it, and how much mortar covers the steel.

From the water outwards: cover, inside mesh, upright bar, hoop, outside mesh, cover. At a hoop lap a second hoop lies on
the first. At an angle iron its leg stands where the bar stands elsewhere. Keep laps away from angles: the two together
would need a thicker wall than this.
"""

from generator.calculations._book import BOOK
from generator.formula import Constant, common_practice, derived, whole_up

THICKNESS_STEP = Constant(5, "mm", common_practice("gauge strips for plaster are made in steps of 5 mm"))

BOOK.given(
    "mesh_cover", symbol="c", unit="mm", low=2, high=10, step=1,
    source=common_practice("2 to 5 mm of mortar over mesh; more only where the plan says so"),
)  # fmt: skip
BOOK.given(
    "inside_mesh_thickness", symbol="m_i", unit="mm", low=2, high=15, step=1,
    source=derived("measured on the tied layers, pressed flat, laps included"),
)  # fmt: skip
BOOK.given(
    "outside_mesh_thickness", symbol="m_o", unit="mm", low=2, high=15, step=1,
    source=derived("measured on the tied layers, pressed flat, laps included"),
)  # fmt: skip
BOOK.given(
    "angle_leg", symbol="a", unit="mm", low=20, high=50, step=5,
    source=common_practice("sizes of angle iron that the shops of a hill town sell for this work"),
)  # fmt: skip


@BOOK.quantity(
    symbol="B", unit="mm", places=0, low=18, high=74, source=derived("sum of the layers, from the water outwards")
)
def wall_build_up(
    mesh_cover: float,
    inside_mesh_thickness: float,
    bar_diameter: float,
    hoop_diameter: float,
    outside_mesh_thickness: float,
) -> float:
    """Thickness that the layers need where a hoop crosses an upright bar.

    Args:
        mesh_cover: mortar over the mesh, each side [mm], 2 to 10.
        inside_mesh_thickness: all inside layers of mesh, tied [mm], 2 to 15.
        bar_diameter: upright bar [mm], 6 to 12.
        hoop_diameter: hoop bar [mm], 4 to 12.
        outside_mesh_thickness: all outside layers of mesh, tied [mm], 2 to 15.

    Returns:
        All layers and cover on both sides [mm], 18 to 74.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> value = wall_build_up(
        ...     mesh_cover=5,
        ...     inside_mesh_thickness=9,
        ...     bar_diameter=8,
        ...     hoop_diameter=8,
        ...     outside_mesh_thickness=9,
        ... )
        >>> show(value, 0)
        '44'
    """
    return mesh_cover + inside_mesh_thickness + bar_diameter + hoop_diameter + outside_mesh_thickness + mesh_cover


@BOOK.quantity(symbol="B_lap", unit="mm", places=0, low=22, high=86, source=derived("a second hoop lies on the first"))
def wall_build_up_at_lap(wall_build_up: float, hoop_diameter: float) -> float:
    """Thickness that the layers need where a hoop lap crosses an upright bar.

    Args:
        wall_build_up: layers where a hoop crosses a bar [mm], 18 to 74.
        hoop_diameter: hoop bar [mm], 4 to 12.

    Returns:
        The layers with a second hoop [mm], 22 to 86.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(wall_build_up_at_lap(wall_build_up=44, hoop_diameter=8), 0)
        '52'
    """
    return wall_build_up + hoop_diameter


@BOOK.quantity(
    symbol="B_a", unit="mm", places=0, low=26, high=112, source=derived("the angle's leg stands where the bar stands")
)
def wall_build_up_at_angle(wall_build_up: float, bar_diameter: float, angle_leg: float) -> float:
    """Thickness that the layers need where a hoop crosses an angle iron.

    Args:
        wall_build_up: layers where a hoop crosses a bar [mm], 18 to 74.
        bar_diameter: upright bar [mm], 6 to 12.
        angle_leg: leg of the angle iron, across the wall [mm], 20 to 50.

    Returns:
        The layers with the angle for the bar [mm], 26 to 112.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(wall_build_up_at_angle(wall_build_up=44, bar_diameter=8, angle_leg=25), 0)
        '61'
    """
    return wall_build_up - bar_diameter + angle_leg


@BOOK.quantity(
    symbol="t", unit="mm", places=0, low=30, high=75,
    source=derived("the thickest place decides, rounded up to 5 mm; 30 to 75 mm are only the limits of hand work"),
)  # fmt: skip
def wall_thickness(wall_build_up_at_lap: float, wall_build_up_at_angle: float) -> float:
    """Thickness of the whole wall, so that cover is kept at the thickest place.

    Args:
        wall_build_up_at_lap: layers at a hoop lap [mm], 22 to 86.
        wall_build_up_at_angle: layers at an angle iron [mm], 26 to 112.

    Returns:
        Plaster to plaster [mm], 30 to 75.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(wall_thickness(wall_build_up_at_lap=52, wall_build_up_at_angle=61), 0)
        '65'
    """
    return THICKNESS_STEP * whole_up(max(wall_build_up_at_lap, wall_build_up_at_angle) / THICKNESS_STEP)


@BOOK.quantity(
    symbol="c_i", unit="mm", places=0, low=5, high=25,
    source=derived("cover and inside mesh lie between the water and the bar; less than 5 mm is refused"),
)  # fmt: skip
def bar_cover_inside(mesh_cover: float, inside_mesh_thickness: float) -> float:
    """Mortar between the water and the upright bars.

    Aim at 8 mm or more; no reading may be under 5 mm.

    Args:
        mesh_cover: mortar over the mesh, each side [mm], 2 to 10.
        inside_mesh_thickness: all inside layers of mesh, tied [mm], 2 to 15.

    Returns:
        Over the bar, inside [mm], 5 to 25.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(bar_cover_inside(mesh_cover=5, inside_mesh_thickness=9), 0)
        '14'
    """
    return mesh_cover + inside_mesh_thickness


@BOOK.quantity(
    symbol="c_o", unit="mm", places=0, low=5, high=30,
    source=derived("what is left of the wall outside the thickest steel; less than 5 mm is refused"),
)  # fmt: skip
def bar_cover_outside(
    wall_thickness: float,
    bar_cover_inside: float,
    bar_diameter: float,
    hoop_diameter: float,
    angle_leg: float,
) -> float:
    """Mortar between the outermost hoop and the outer face, where there is least: at a lap or at an angle.

    Aim at 8 mm or more; no reading may be under 5 mm.

    Args:
        wall_thickness: plaster to plaster [mm], 30 to 75.
        bar_cover_inside: mortar from the water to the bar [mm], 5 to 25.
        bar_diameter: upright bar [mm], 6 to 12.
        hoop_diameter: hoop bar [mm], 4 to 12.
        angle_leg: leg of the angle iron, across the wall [mm], 20 to 50.

    Returns:
        Over the outermost hoop [mm], 5 to 30.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> value = bar_cover_outside(
        ...     wall_thickness=65,
        ...     bar_cover_inside=14,
        ...     bar_diameter=8,
        ...     hoop_diameter=8,
        ...     angle_leg=25,
        ... )
        >>> show(value, 0)
        '18'
    """
    return wall_thickness - bar_cover_inside - hoop_diameter - max(bar_diameter + hoop_diameter, angle_leg)


@BOOK.misconception(of="wall_build_up")
def cover_on_one_side_only(wall_build_up: float, mesh_cover: float) -> float:
    """Cover is counted once; a wall has two faces."""
    return wall_build_up - mesh_cover


@BOOK.misconception(of="wall_build_up")
def outside_mesh_forgotten(wall_build_up: float, outside_mesh_thickness: float) -> float:
    """Only the inside mesh is counted."""
    return wall_build_up - outside_mesh_thickness


@BOOK.misconception(of="wall_build_up_at_lap")
def second_hoop_forgotten(wall_build_up: float) -> float:
    """The wall is made for one hoop, also where two lie on each other."""
    return wall_build_up


@BOOK.misconception(of="wall_thickness")
def angle_forgotten_in_wall(wall_build_up_at_lap: float) -> float:
    """The wall is made for the bars; the angles stick further out."""
    return THICKNESS_STEP * whole_up(wall_build_up_at_lap / THICKNESS_STEP)


@BOOK.misconception(of="bar_cover_inside")
def mesh_cover_taken_for_bar_cover(mesh_cover: float) -> float:
    """Cover over the mesh is taken for cover over the bar behind it."""
    return mesh_cover
