"""Frame and mesh: the build-up of a wall, rings, angles, bars and hoops, mesh in pieces and rows, steel by weight."""

from __future__ import annotations

from math import pi, sin, sqrt

from tests.published.by_hand._script import GEOMETRY, PRACTICE, SHARES, by_hand, down, up

EN_10080 = "EN 10080:2005, Table 6: nominal mass at 7.85 kg/dm3; the site's d x d / 162 within a part in a thousand"
EQUAL = "fewest equal gaps of a closed ring or a row, none over the limit: " + SHARES


@by_hand(SHARES)
def wall_build_up(
    mesh_cover: float,
    inside_mesh_thickness: float,
    bar_diameter: float,
    hoop_diameter: float,
    outside_mesh_thickness: float,
) -> float:
    return sum((mesh_cover, inside_mesh_thickness, bar_diameter, hoop_diameter, outside_mesh_thickness, mesh_cover))


@by_hand(SHARES)
def wall_build_up_at_lap(
    wall_build_up: float, inside_mesh_thickness: float, outside_mesh_thickness: float, hoop_diameter: float
) -> float:
    return wall_build_up + max(inside_mesh_thickness, outside_mesh_thickness, hoop_diameter)


@by_hand(SHARES)
def frame_diameter(
    inside_diameter: float, mesh_cover: float, inside_mesh_thickness: float, bar_diameter: float
) -> float:
    return inside_diameter + 2 * (mesh_cover + inside_mesh_thickness + bar_diameter / 2) / 1000


@by_hand(SHARES)
def frame_radius(frame_diameter: float) -> float:
    return frame_diameter / 2


@by_hand(GEOMETRY)
def ring_length(frame_diameter: float) -> float:
    return pi * frame_diameter


@by_hand(EQUAL)
def angle_count(ring_length: float, angle_spacing_limit: float) -> float:
    return up(ring_length / angle_spacing_limit)


@by_hand(EQUAL)
def angle_spacing(ring_length: float, angle_count: float) -> float:
    return ring_length / angle_count


@by_hand("chord of a circle: " + GEOMETRY)
def angle_chord(frame_diameter: float, angle_count: float) -> float:
    return frame_diameter * sin(pi / angle_count)


@by_hand("7.85 kg/dm3 after EN 10080; the corner counted once")
def angle_mass_per_metre(angle_leg: float, angle_thickness: float) -> float:
    return (angle_leg * angle_thickness + (angle_leg - angle_thickness) * angle_thickness) * 7.85 / 1000


@by_hand(EQUAL)
def bar_spacing(angle_spacing: float, bar_spacing_limit: float) -> float:
    return angle_spacing / up(angle_spacing / bar_spacing_limit)


@by_hand(EQUAL)
def bar_count(angle_count: float, angle_spacing: float, bar_spacing_limit: float) -> float:
    return angle_count * (up(angle_spacing / bar_spacing_limit) - 1)


@by_hand(EQUAL)
def hoop_count(wall_height: float, hoop_spacing: float) -> float:
    return up(wall_height / hoop_spacing) + 1


@by_hand(EQUAL)
def hoop_spacing_closing(wall_height: float, hoop_spacing: float) -> float:
    return wall_height / up(wall_height / hoop_spacing)


@by_hand(PRACTICE)
def lap_length(lap_diameters: float, hoop_diameter: float) -> float:
    return lap_diameters * hoop_diameter / 1000


@by_hand(GEOMETRY)
def hoop_length(hoop_circle_diameter: float, lap_length: float) -> float:
    return pi * hoop_circle_diameter + lap_length


@by_hand(SHARES)
def hoop_total_length(hoop_count: float, hoop_length: float) -> float:
    return hoop_count * hoop_length


@by_hand(GEOMETRY)
def hoop_area(hoop_diameter: float) -> float:
    return pi / 4 * hoop_diameter**2


@by_hand(SHARES)
def hoop_steel_given(hoop_area: float, hoop_spacing: float) -> float:
    return hoop_area / hoop_spacing


@by_hand("equal steel in the wall: " + GEOMETRY)
def other_hoop_spacing(hoop_spacing: float, hoop_diameter: float, other_hoop_diameter: float) -> float:
    return down(hoop_spacing * (other_hoop_diameter / hoop_diameter) ** 2, 0.005)


@by_hand(SHARES)
def tie_count(angle_count: float, bar_count: float, hoop_count: float) -> float:
    return (angle_count + bar_count) * hoop_count


@by_hand("0.3 m of wire a crossing, 0.2 m a mesh tie, 25 ties a square metre: " + PRACTICE)
def tying_wire_mass(tie_count: float, mesh_area: float) -> float:
    return (tie_count * 0.3 + mesh_area * 25 * 0.2) * 1.22**2 / 162


@by_hand(EN_10080)
def bar_mass_per_metre(bar_diameter: float) -> float:
    return bar_diameter**2 / 162


@by_hand(SHARES)
def bought_bar_mass(bar_mass_per_metre: float, bars_bought: float, stock_length: float) -> float:
    return bar_mass_per_metre * bars_bought * stock_length


@by_hand(EN_10080)
def piece_bar_diameter(piece_mass: float, piece_length: float) -> float:
    return sqrt(162 * piece_mass / piece_length)


@by_hand(GEOMETRY)
def mesh_steel_area(mesh_wire_diameter: float, mesh_wire_spacing: float) -> float:
    return pi / 4 * mesh_wire_diameter**2 * 1000 / mesh_wire_spacing


@by_hand(EN_10080)
def mesh_mass_per_area(mesh_wire_diameter: float, mesh_wire_spacing: float) -> float:
    return 2 * 1000 / mesh_wire_spacing * mesh_wire_diameter**2 / 162


@by_hand(EN_10080)
def mesh_roll_mass(mesh_roll_width: float, mesh_roll_length: float, mesh_mass_per_area: float) -> float:
    return mesh_roll_width * mesh_roll_length * mesh_mass_per_area


@by_hand(SHARES)
def mesh_rows(wall_height: float, mesh_roll_width: float, mesh_lap: float) -> float:
    rows, reach = 1, mesh_roll_width
    while reach < wall_height - 1e-9:
        rows, reach = rows + 1, reach + mesh_roll_width - mesh_lap
    return rows


@by_hand(SHARES)
def mesh_strip_length(ring_length: float, mesh_pieces: float, mesh_lap: float) -> float:
    return ring_length + mesh_pieces * mesh_lap


@by_hand(SHARES)
def mesh_turns_length(ring_length: float, mesh_lap: float) -> float:
    return ring_length + mesh_lap


@by_hand(SHARES)
def mesh_layer_area(mesh_strip_length: float, wall_height: float, mesh_rows: float, mesh_lap: float) -> float:
    return mesh_strip_length * (wall_height + (mesh_rows - 1) * mesh_lap)


@by_hand(SHARES)
def mesh_area(mesh_layer_area: float, mesh_layers_inside: float, mesh_layers_outside: float) -> float:
    return mesh_layer_area * (mesh_layers_inside + mesh_layers_outside)


@by_hand(SHARES)
def mesh_rolls(
    mesh_strip_length: float,
    mesh_pieces: float,
    mesh_rows: float,
    mesh_layers_inside: float,
    mesh_layers_outside: float,
    mesh_roll_length: float,
) -> float:
    from_a_roll = down(mesh_roll_length / (mesh_strip_length / mesh_pieces))
    return up(mesh_rows * mesh_pieces * (mesh_layers_inside + mesh_layers_outside) / from_a_roll)
