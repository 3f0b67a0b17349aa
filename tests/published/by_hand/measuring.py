"""Measuring and setting out: feet and inches, scale, square corners, hose level, sticks, gauge boxes and buckets."""

from __future__ import annotations

from math import hypot, pi

from tests.published.by_hand._script import GEOMETRY, SHARES, by_hand

INCH = "the inch of 25.4 mm, international since 1959; twelve to a foot"
HOSE = "still water in one hose stands at one level"


@by_hand(INCH)
def metres_from_feet(length_in_feet: float) -> float:
    return length_in_feet * 12 * 25.4 / 1000


@by_hand(INCH)
def metres_from_inches(length_in_inches: float) -> float:
    return length_in_inches * 25.4 / 1000


@by_hand(INCH)
def metres_from_feet_and_inches(whole_feet: float, extra_inches: float) -> float:
    return (whole_feet * 12 + extra_inches) * 25.4 / 1000


@by_hand(INCH)
def inches_of_length(site_length: float) -> float:
    return site_length * 1000 / 25.4


@by_hand(SHARES)
def paper_length(site_length: float, scale_parts: float) -> float:
    return site_length * 1000 / scale_parts


@by_hand(SHARES)
def length_from_paper(paper_reading: float, scale_parts: float) -> float:
    return paper_reading * scale_parts / 1000


@by_hand("rule of Pythagoras")
def corner_diagonal(corner_side: float, corner_other_side: float) -> float:
    return hypot(corner_side, corner_other_side)


@by_hand(HOSE)
def ground_drop(upper_hose_reading: float, lower_hose_reading: float) -> float:
    return lower_hose_reading - upper_hose_reading


@by_hand(HOSE)
def peg_mark(mark_height: float, ground_drop: float) -> float:
    return mark_height + ground_drop


@by_hand(SHARES)
def level_depth(water_depth: float, level_height: float) -> float:
    return max(0.0, water_depth - level_height)


@by_hand(SHARES)
def stick_from_pipe(frame_diameter: float, centre_pipe_width: float) -> float:
    return (frame_diameter - centre_pipe_width / 1000) / 2


@by_hand("civil site pages: a box of 35 x 25 x 40 cm holds 35 L")
def box_volume(box_length: float, box_width: float, box_depth: float) -> float:
    return box_length * 10 * box_width * 10 * box_depth * 10


@by_hand("mean width of a bucket: " + GEOMETRY + ", one part in a hundred under the cone")
def bucket_volume(bucket_top_width: float, bucket_bottom_width: float, bucket_depth: float) -> float:
    middle = (bucket_top_width + bucket_bottom_width) / 2
    return pi / 4 * middle**2 * bucket_depth * 1000


@by_hand(SHARES)
def outside_diameter(inside_diameter: float, wall_thickness: float) -> float:
    return inside_diameter + 2 * wall_thickness / 1000


@by_hand(GEOMETRY)
def plaster_area_outside(outside_diameter: float, wall_height: float) -> float:
    return pi * outside_diameter * wall_height


@by_hand(GEOMETRY)
def plaster_area_inside(inside_diameter: float, wall_height: float) -> float:
    return pi * inside_diameter * wall_height
