"""Mortar and plaster: parts, bags, boxes, water, batches, coats, and the hands that press them."""

from __future__ import annotations

from tests.published.by_hand._script import PRACTICE, SHARES, by_hand, more, up
from tests.published.by_hand.ground_and_base import LOOSE_CEMENT

BULKING = "civil laboratory pages on IS 2386-3: the box grows by the bulking, (damp - flooded) / flooded"


@by_hand("dry-volume factor, given in the question: " + PRACTICE)
def mortar_dry_volume(wall_mortar_volume: float, mortar_waste: float, dry_volume_factor: float) -> float:
    return wall_mortar_volume * more(mortar_waste) * dry_volume_factor


@by_hand("civil site pages: one part of all the parts")
def cement_volume(mortar_dry_volume: float, sand_parts: float) -> float:
    return mortar_dry_volume / (1 + sand_parts)


@by_hand("a bag holds 50 kg, and bags are whole")
def cement_bags(cement_mass: float) -> float:
    return up(cement_mass / 50)


@by_hand(BULKING)
def sand_volume_damp(cement_volume: float, sand_parts: float, sand_bulking: float) -> float:
    return cement_volume * sand_parts * more(sand_bulking)


@by_hand(BULKING)
def measured_bulking(damp_height: float, flooded_height: float) -> float:
    return 100 * (damp_height / flooded_height - 1)


@by_hand(LOOSE_CEMENT + "; " + BULKING)
def batch_sand_damp(batch_bags: float, sand_parts: float, sand_bulking: float) -> float:
    return batch_bags * 50 / 1.44 * sand_parts * more(sand_bulking)


@by_hand(LOOSE_CEMENT + "; " + BULKING)
def boxes_of_sand(sand_parts: float, sand_bulking: float, box_volume: float) -> float:
    return 50 / 1.44 * sand_parts * more(sand_bulking) / box_volume


@by_hand("water by weight of cement, less what the sand brings")
def water_to_add(batch_bags: float, water_cement_ratio: float, water_in_sand: float) -> float:
    return batch_bags * 50 * water_cement_ratio - water_in_sand


@by_hand("moisture beyond what the grains soak up, by weight of dry sand")
def water_in_sand(batch_sand_dry: float, sand_density: float, sand_moisture: float, sand_absorption: float) -> float:
    return batch_sand_dry / 1000 * sand_density * (sand_moisture - sand_absorption) / 100


@by_hand(SHARES)
def batch_volume(batch_bags: float, mortar_absolute_volume: float) -> float:
    return batch_bags * mortar_absolute_volume


@by_hand(SHARES)
def batches_needed(wall_mortar_volume: float, mortar_waste: float, batch_volume: float) -> float:
    return up(wall_mortar_volume * more(mortar_waste) / batch_volume)


@by_hand(SHARES)
def batch_cover_area(batch_volume: float, coat_thickness: float) -> float:
    return batch_volume * 1000 / coat_thickness


@by_hand("one face is the outer one, two are both")
def coat_area(coat_faces: float, plaster_area_outside: float, plaster_area_inside: float) -> float:
    return plaster_area_outside + (plaster_area_inside if coat_faces == 2 else 0.0)


@by_hand(SHARES)
def coat_batches(coat_area: float, coat_thickness: float, mortar_waste: float, batch_volume: float) -> float:
    return up(coat_area * coat_thickness / 1000 * more(mortar_waste) / batch_volume)


@by_hand(PRACTICE)
def masons_needed(coat_area: float, mason_day_area: float, coat_days: float) -> float:
    return up(coat_area / (mason_day_area * coat_days))


@by_hand(PRACTICE)
def mixing_crew(coat_batches: float, batches_in_time: float) -> float:
    return up(coat_batches / batches_in_time)


@by_hand("project specification: neat cement finish, 1 kg/m2, on the faces that water wets")
def neat_cement_mass(plaster_area_inside: float, floor_area: float) -> float:
    return plaster_area_inside + floor_area


@by_hand("GTZ/GATE 1989, chapter 3: silt against the depth of the sand")
def silt_share(silt_height: float, sand_height: float) -> float:
    return 100 * silt_height / sand_height


@by_hand(BULKING)
def sand_delivered_true(sand_delivered: float, sand_bulking: float) -> float:
    return sand_delivered / more(sand_bulking)


@by_hand(SHARES)
def sand_delivered(bed_length: float, bed_width: float, sand_depth: float) -> float:
    return bed_length * bed_width * sand_depth / 1000
