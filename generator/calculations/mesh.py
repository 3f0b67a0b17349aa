"""Mesh in the wall: how long a strip is, how many strips and rolls, how heavy, how much wire it puts in the mortar.

Strips run round the tank, one above the other, and lap at their ends and along their edges. Laps never stand above each
other. Hexagonal netting is wrapped round and never hung upright: its strong way must take the pull. The floor's mesh is
turned up behind the wall's mesh, so that wall and floor hang together. Caution: cut ends of mesh spring back at hands
and eyes; wear gloves and glasses, and hold both ends of a roll before its wire is cut.
"""

from math import pi

from generator.calculations._book import BOOK
from generator.calculations.hoops import BAR_MASS_DIVISOR
from generator.calculations.mortar import PERCENT
from generator.calculations.setting_out import MILLIMETRES_IN_METRE
from generator.formula import Constant, common_practice, derived, whole_down, whole_up

KNOWN_WIRE = Constant(1, "mm", derived("a mesh wire whose weight many know; the wrong idea scales from it"))

BOOK.given(
    "mesh_layers_inside",
    symbol="n_mi",
    unit="",
    low=1,
    high=4,
    step=1,
    source=common_practice("layers of mesh on the water side of the bars"),
)
BOOK.given(
    "mesh_layers_outside",
    symbol="n_mo",
    unit="",
    low=1,
    high=4,
    step=1,
    source=common_practice("layers of mesh outside the hoops"),
)
BOOK.given(
    "mesh_lap",
    symbol="l_m",
    unit="m",
    low=0.1,
    high=0.4,
    step=0.01,
    source=common_practice(
        "weld mesh 200 mm or three openings; netting not under 100 mm; 25 to 50 mm of lath is too little"
    ),
)
BOOK.given(
    "mesh_roll_width",
    symbol="w_m",
    unit="m",
    low=0.6,
    high=2.5,
    step=0.05,
    source=common_practice("widths that mesh is sold in; ask the shop"),
)
BOOK.given(
    "mesh_roll_length",
    symbol="r_m",
    unit="m",
    low=10,
    high=50,
    step=0.5,
    source=common_practice("lengths that mesh is sold in; ask the shop"),
)
BOOK.given(
    "mesh_wire_diameter",
    symbol="d_m",
    unit="mm",
    low=0.5,
    high=4,
    step=0.01,
    source=common_practice("mesh wire of walls; order it in mm, since a gauge number has several meanings"),
)
BOOK.given(
    "mesh_wire_spacing",
    symbol="s_m",
    unit="mm",
    low=6,
    high=150,
    step=0.5,
    source=common_practice("openings that square mesh is sold with, wire centre to wire centre"),
)


@BOOK.quantity(symbol="L_m", unit="m", places=2, low=2, high=25.9, source=derived("once round and one lap"))
def mesh_turns_length(ring_length: float, mesh_lap: float) -> float:
    """Length to cut for one strip of one piece: once round the frame and the lap.

    Args:
        ring_length: once round the frame ring [m], 1.9 to 25.5.
        mesh_lap: how far mesh lies over mesh [m], 0.1 to 0.4.

    Returns:
        Length [m], 2 to 25.9.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(mesh_turns_length(ring_length=10.795, mesh_lap=0.22), 2)
        '11.02'
    """
    return ring_length + mesh_lap


@BOOK.quantity(
    symbol="p_m", unit="", places=0, low=1, high=3, source=derived("each piece gives the roll's length less one lap")
)
def mesh_pieces(ring_length: float, mesh_roll_length: float, mesh_lap: float) -> float:
    """Pieces in one strip: one, unless the roll is shorter than the way round and its lap.

    Args:
        ring_length: once round the frame ring [m], 1.9 to 25.5.
        mesh_roll_length: mesh on one roll [m], 10 to 50.
        mesh_lap: how far mesh lies over mesh [m], 0.1 to 0.4.

    Returns:
        Number of pieces, and of laps [-], 1 to 3.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> mesh_pieces(ring_length=16.3, mesh_roll_length=15, mesh_lap=0.22)
        2.0
    """
    return whole_up(ring_length / (mesh_roll_length - mesh_lap))


@BOOK.quantity(symbol="L_mp", unit="m", places=2, low=2, high=26.7, source=derived("every piece brings its own lap"))
def mesh_strip_length(ring_length: float, mesh_pieces: float, mesh_lap: float) -> float:
    """Mesh in one strip round the tank with all its laps.

    Args:
        ring_length: once round the frame ring [m], 1.9 to 25.5.
        mesh_pieces: pieces in one strip [-], 1 to 3.
        mesh_lap: how far mesh lies over mesh [m], 0.1 to 0.4.

    Returns:
        Length [m], 2 to 26.7.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(mesh_strip_length(ring_length=16.3, mesh_pieces=2, mesh_lap=0.22), 2)
        '16.74'
    """
    return ring_length + mesh_pieces * mesh_lap


@BOOK.quantity(
    symbol="N_m",
    unit="",
    places=0,
    low=1,
    high=10,
    source=derived("each strip above the first gives its width less a lap"),
)
def mesh_rows(wall_height: float, mesh_roll_width: float, mesh_lap: float) -> float:
    """Strips stacked in the height of one layer, each lapped over the one below.

    Args:
        wall_height: height of the wall [m], 0.4 to 2.4.
        mesh_roll_width: width of the roll [m], 0.6 to 2.5.
        mesh_lap: how far mesh lies over mesh [m], 0.1 to 0.4.

    Returns:
        Number of strips [-], 1 to 10.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> mesh_rows(wall_height=1.65, mesh_roll_width=0.8, mesh_lap=0.22)
        3.0
    """
    return max(1, whole_up((wall_height - mesh_lap) / (mesh_roll_width - mesh_lap)))


@BOOK.quantity(symbol="A_m", unit="m**2", places=1, low=0.7, high=62, source=derived("way round times height"))
def mesh_wall_area(ring_length: float, wall_height: float) -> float:
    """Wall that one layer of mesh covers, laps not counted.

    Args:
        ring_length: once round the frame ring [m], 1.9 to 25.5.
        wall_height: height of the wall [m], 0.4 to 2.4.

    Returns:
        Area [m**2], 0.7 to 62.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(mesh_wall_area(ring_length=10.795, wall_height=1.65), 1)
        '17.8'
    """
    return ring_length * wall_height


@BOOK.quantity(
    symbol="A_ml",
    unit="m**2",
    places=1,
    low=0.7,
    high=161,
    source=derived("strip length times height, laps of both counted in"),
)
def mesh_layer_area(mesh_strip_length: float, wall_height: float, mesh_rows: float, mesh_lap: float) -> float:
    """Mesh in one layer of the wall with the laps at the ends and along the edges.

    Args:
        mesh_strip_length: mesh in one strip with its laps [m], 2 to 26.7.
        wall_height: height of the wall [m], 0.4 to 2.4.
        mesh_rows: strips in the height [-], 1 to 10.
        mesh_lap: how far mesh lies over mesh [m], 0.1 to 0.4.

    Returns:
        Area [m**2], 0.7 to 161.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(mesh_layer_area(mesh_strip_length=11.02, wall_height=1.65, mesh_rows=3, mesh_lap=0.22), 1)
        '23.0'
    """
    return mesh_strip_length * (wall_height + (mesh_rows - 1) * mesh_lap)


@BOOK.quantity(symbol="A_mt", unit="m**2", places=1, low=1.4, high=1290, source=derived("layers of both faces"))
def mesh_area(mesh_layer_area: float, mesh_layers_inside: float, mesh_layers_outside: float) -> float:
    """Mesh in all layers of the wall, laps counted in; floor and roof not.

    Args:
        mesh_layer_area: mesh in one layer with laps [m**2], 0.7 to 161.
        mesh_layers_inside: layers on the water side [-], 1 to 4.
        mesh_layers_outside: layers on the outside [-], 1 to 4.

    Returns:
        Area [m**2], 1.4 to 1290.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(mesh_area(mesh_layer_area=23.03, mesh_layers_inside=2, mesh_layers_outside=1), 1)
        '69.1'
    """
    return mesh_layer_area * (mesh_layers_inside + mesh_layers_outside)


@BOOK.quantity(
    symbol="R_m",
    unit="",
    places=0,
    low=1,
    high=250,
    source=derived("whole pieces from one roll; its end makes no piece"),
)
def mesh_rolls(
    mesh_rows: float,
    mesh_layers_inside: float,
    mesh_layers_outside: float,
    mesh_pieces: float,
    mesh_strip_length: float,
    mesh_roll_length: float,
) -> float:
    """Rolls to buy for the wall: every strip is cut whole, and the end that is left of a roll is no strip.

    Args:
        mesh_rows: strips in the height [-], 1 to 10.
        mesh_layers_inside: layers on the water side [-], 1 to 4.
        mesh_layers_outside: layers on the outside [-], 1 to 4.
        mesh_pieces: pieces in one strip [-], 1 to 3.
        mesh_strip_length: mesh in one strip with its laps [m], 2 to 26.7.
        mesh_roll_length: mesh on one roll [m], 10 to 50.

    Returns:
        Number of rolls [-], 1 to 250.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> mesh_rolls(3, 2, 1, mesh_pieces=1, mesh_strip_length=11.02, mesh_roll_length=30)
        5.0
    """
    from_one_roll = whole_down(mesh_roll_length / (mesh_strip_length / mesh_pieces))
    return whole_up(mesh_rows * (mesh_layers_inside + mesh_layers_outside) * mesh_pieces / from_one_roll)


@BOOK.quantity(
    symbol="W_m",
    unit="kg/m**2",
    places=2,
    low=0.02,
    high=33,
    source=derived("1000 / spacing wires each way in a metre"),
)
def mesh_mass_per_area(mesh_wire_diameter: float, mesh_wire_spacing: float) -> float:
    """Mass of a square metre of square mesh. Hexagonal netting is weighed instead: a metre of it on a scale.

    Args:
        mesh_wire_diameter: thickness of the wire [mm], 0.5 to 4.
        mesh_wire_spacing: wire centre to wire centre [mm], 6 to 150.

    Returns:
        Mass [kg/m**2], 0.02 to 33.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(mesh_mass_per_area(mesh_wire_diameter=1.22, mesh_wire_spacing=19), 2)
        '0.97'
    """
    return mesh_wire_diameter**2 / BAR_MASS_DIVISOR * 2 * MILLIMETRES_IN_METRE / mesh_wire_spacing


@BOOK.quantity(
    symbol="a_m",
    unit="mm**2/m",
    places=1,
    low=1,
    high=2100,
    source=derived("cut face of a wire times wires in a metre"),
)
def mesh_steel_area(mesh_wire_diameter: float, mesh_wire_spacing: float) -> float:
    """Wire that a metre of one layer of square mesh has in each of its two ways.

    Args:
        mesh_wire_diameter: thickness of the wire [mm], 0.5 to 4.
        mesh_wire_spacing: wire centre to wire centre [mm], 6 to 150.

    Returns:
        Steel one way [mm**2/m], 1 to 2100.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(mesh_steel_area(mesh_wire_diameter=1.0, mesh_wire_spacing=12.5), 1)
        '62.8'
    """
    return pi * mesh_wire_diameter**2 / 4 * MILLIMETRES_IN_METRE / mesh_wire_spacing


@BOOK.quantity(
    symbol="V_mf", unit="%", places=2, low=0, high=12, source=derived("wire of both ways / mortar and wire together")
)
def volume_fraction(
    mesh_steel_area: float, mesh_layers_inside: float, mesh_layers_outside: float, wall_thickness: float
) -> float:
    """Share of the wall that is mesh wire, both ways counted; bars, hoops and angles are not.

    More than is allowed here lets no mortar through.

    Args:
        mesh_steel_area: wire of one layer one way [mm**2/m], 1 to 2100.
        mesh_layers_inside: layers on the water side [-], 1 to 4.
        mesh_layers_outside: layers on the outside [-], 1 to 4.
        wall_thickness: thickness of the finished wall [mm], 30 to 75.

    Returns:
        Share [%], 0 to 12.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(volume_fraction(62.83, mesh_layers_inside=2, mesh_layers_outside=2, wall_thickness=40), 2)
        '1.26'
    """
    layers = mesh_layers_inside + mesh_layers_outside
    return PERCENT * layers * 2 * mesh_steel_area / (wall_thickness * MILLIMETRES_IN_METRE)


@BOOK.quantity(
    symbol="S_m",
    unit="1/mm",
    places=3,
    low=0,
    high=1.2,
    source=derived("skin of a round wire / its volume is 4 / thickness"),
)
def specific_surface(volume_fraction: float, mesh_wire_diameter: float) -> float:
    """Skin of all mesh wire in the wall for its volume: where mortar and wire hold each other. Thin wire has more.

    Args:
        volume_fraction: share of the wall that is mesh wire [%], 0 to 12.
        mesh_wire_diameter: thickness of the wire [mm], 0.5 to 4.

    Returns:
        Skin for volume [1/mm], 0 to 1.2.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(specific_surface(volume_fraction=1.257, mesh_wire_diameter=1.0), 3)
        '0.050'
    """
    return 4 * volume_fraction / PERCENT / mesh_wire_diameter


@BOOK.misconception(of="mesh_turns_length")
def mesh_lap_forgotten(ring_length: float) -> float:
    """The strip was cut to once round."""
    return ring_length


@BOOK.misconception(of="mesh_turns_length")
def mesh_cut_to_the_inside(inside_diameter: float, mesh_lap: float) -> float:
    """The strip was cut to the circle where the water stands."""
    return pi * inside_diameter + mesh_lap


@BOOK.misconception(of="mesh_strip_length")
def one_lap_for_all_pieces(mesh_turns_length: float) -> float:
    """One lap was counted, though each piece has its own."""
    return mesh_turns_length


@BOOK.misconception(of="mesh_strip_length")
def laps_of_pieces_forgotten(ring_length: float) -> float:
    """The pieces were cut to meet end to end."""
    return ring_length


@BOOK.misconception(of="mesh_rows")
def rows_without_lap(wall_height: float, mesh_roll_width: float) -> float:
    """The strips were set edge to edge."""
    return whole_up(wall_height / mesh_roll_width)


@BOOK.misconception(of="mesh_rows")
def mesh_hung_upright(ring_length: float, mesh_roll_width: float, mesh_lap: float) -> float:
    """The strips were counted as if they hung from top to foot and not ran round."""
    return whole_up(ring_length / (mesh_roll_width - mesh_lap))


@BOOK.misconception(of="mesh_wall_area")
def mesh_for_one_flat_side(frame_diameter: float, wall_height: float) -> float:
    """The wall was taken as flat, as wide as the tank."""
    return frame_diameter * wall_height


@BOOK.misconception(of="mesh_layer_area")
def laps_left_out_of_the_mesh(mesh_wall_area: float) -> float:
    """The bare wall was bought, without any lap."""
    return mesh_wall_area


@BOOK.misconception(of="mesh_layer_area")
def mesh_edge_laps_forgotten(mesh_strip_length: float, wall_height: float) -> float:
    """Laps were counted at the ends of the strips and left out along their edges."""
    return mesh_strip_length * wall_height


@BOOK.misconception(of="mesh_area")
def one_layer_for_two_faces(mesh_layer_area: float) -> float:
    """One layer was counted for both faces."""
    return mesh_layer_area


@BOOK.misconception(of="mesh_area")
def outside_layers_forgotten(mesh_layer_area: float, mesh_layers_inside: float) -> float:
    """Only the layers on the water side were counted."""
    return mesh_layer_area * mesh_layers_inside


@BOOK.misconception(of="mesh_rolls")
def mesh_shared_by_roll_area(mesh_area: float, mesh_roll_width: float, mesh_roll_length: float) -> float:
    """All the mesh was divided by the area of a roll, as if ends and edges made strips."""
    return whole_up(mesh_area / (mesh_roll_width * mesh_roll_length))


@BOOK.misconception(of="mesh_mass_per_area")
def mesh_weighed_one_way(mesh_wire_diameter: float, mesh_wire_spacing: float) -> float:
    """Only the wires of one way were weighed."""
    return mesh_wire_diameter**2 / BAR_MASS_DIVISOR * MILLIMETRES_IN_METRE / mesh_wire_spacing


@BOOK.misconception(of="mesh_mass_per_area")
def mesh_weighed_by_thickness(mesh_wire_diameter: float, mesh_wire_spacing: float) -> float:
    """Wire twice as thick was thought twice as heavy: a wire of 1 mm was known, the others scaled from it."""
    return KNOWN_WIRE * mesh_wire_diameter / BAR_MASS_DIVISOR * 2 * MILLIMETRES_IN_METRE / mesh_wire_spacing


@BOOK.misconception(of="mesh_steel_area")
def both_ways_pull_together(mesh_steel_area: float) -> float:
    """The wires of both ways were counted for one way."""
    return 2 * mesh_steel_area


@BOOK.misconception(of="mesh_steel_area")
def mesh_wire_taken_as_square(mesh_wire_diameter: float, mesh_wire_spacing: float) -> float:
    """The cut face of the wire was taken for a square."""
    return mesh_wire_diameter**2 * MILLIMETRES_IN_METRE / mesh_wire_spacing


@BOOK.misconception(of="volume_fraction")
def mesh_share_halved(volume_fraction: float) -> float:
    """The wires of one way were counted, where both are meant: it will be halved once more later."""
    return volume_fraction / 2


@BOOK.misconception(of="specific_surface")
def skin_of_half_the_wire(volume_fraction: float, mesh_wire_diameter: float) -> float:
    """The skin was taken as 2 / thickness, which is that of a thin sheet."""
    return 2 * volume_fraction / PERCENT / mesh_wire_diameter


@BOOK.misconception(of="wall_build_up_at_lap")
def laps_all_on_one_line(
    wall_build_up: float, hoop_diameter: float, inside_mesh_thickness: float, outside_mesh_thickness: float
) -> float:
    """Hoops and mesh of both faces were lapped at one place, so that all of it lies in the wall there."""
    return wall_build_up + hoop_diameter + inside_mesh_thickness + outside_mesh_thickness
