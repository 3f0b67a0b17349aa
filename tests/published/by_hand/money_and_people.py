"""Money, loads, days and people: buying, carrying, wages, the calendar, a class and its turns."""

from __future__ import annotations

from tests.published.by_hand._script import PRACTICE, SHARES, by_hand, down, up

PLASTER = "tabulated Indian labour constants: plaster, 14 labourers and 1 water-carrier to 10 masons"
SAND = "1600 kg/m3 of damp sand, said in the question: " + PRACTICE


@by_hand(SHARES)
def cement_age(printed_week: float, week_today: float) -> float:
    return (52 - printed_week + week_today) * 7


@by_hand(SHARES)
def cement_loads(cement_bags: float, load_mass: float) -> float:
    if load_mass >= 50:
        return up(cement_bags / down(load_mass / 50))
    return cement_bags * up(50 / load_mass)


@by_hand("a bag holds 50 kg")
def bought_cement_mass(cement_bags: float) -> float:
    return cement_bags * 50


@by_hand(SAND)
def sand_mass(sand_volume_damp: float) -> float:
    return sand_volume_damp * 1600


@by_hand(SHARES)
def material_mass(bought_cement_mass: float, sand_mass: float, carried_water: float, carry_mass: float) -> float:
    return bought_cement_mass + sand_mass + carried_water + carry_mass


@by_hand(SHARES)
def load_count(material_mass: float, load_mass: float) -> float:
    return up(material_mass / load_mass)


@by_hand(SHARES)
def pickup_trips(material_mass: float, pickup_load: float) -> float:
    return up(material_mass / pickup_load)


@by_hand(SHARES)
def carrying_days(load_count: float, carriers: float, trips_per_day: float) -> float:
    return up(load_count / (carriers * trips_per_day))


@by_hand(SHARES)
def site_ready_day(digging_duration: float, carrying_days: float) -> float:
    return max(digging_duration, carrying_days)


@by_hand(SHARES)
def cost_of_cement(cement_mass: float, bag_price: float) -> float:
    return up(cement_mass / 50) * bag_price


@by_hand(SHARES)
def cost_of_carrying(load_count: float, load_price: float) -> float:
    return load_count * load_price


@by_hand(SHARES)
def cost_of_wages(
    mason_days: float, mason_wage: float, labourer_days: float, labourer_wage: float, hours_per_day: float
) -> float:
    return (mason_days * mason_wage + labourer_days * labourer_wage) * 8 / hours_per_day


@by_hand("given work counts with its worth: " + SHARES)
def cost_of_tank(cost_of_cement: float, cost_of_wages: float, cost_of_carrying: float, other_cost: float) -> float:
    return cost_of_cement + cost_of_wages + cost_of_carrying + other_cost


@by_hand(SHARES)
def cost_per_year(cost_of_tank: float, tank_life: float, yearly_upkeep: float) -> float:
    return cost_of_tank / tank_life + yearly_upkeep


@by_hand(SHARES)
def cost_per_cubic_metre_year(cost_per_year: float, tank_volume: float) -> float:
    return cost_per_year / tank_volume


@by_hand(SHARES)
def cost_per_litre(cost_of_tank: float, tank_litres: float) -> float:
    return cost_of_tank / tank_litres


@by_hand(PRACTICE)
def mesh_tying_days(plaster_area_outside: float, plaster_area_inside: float, mesh_day_area: float) -> float:
    return (plaster_area_outside + plaster_area_inside) / mesh_day_area


@by_hand(PRACTICE)
def plaster_mason_days(plaster_area_outside: float, plaster_area_inside: float, mason_day_area: float) -> float:
    return (plaster_area_outside + plaster_area_inside) / mason_day_area


@by_hand(PLASTER)
def plaster_labour_days(plaster_mason_days: float) -> float:
    return plaster_mason_days * (14 + 1) / 10


@by_hand("bar fixing, fitter 1 and labourer 1, tabulated; " + SHARES)
def labour_total(
    digging_days: float,
    base_mason_days: float,
    base_labour_days: float,
    steel_fitter_days: float,
    mesh_tying_days: float,
    plaster_mason_days: float,
    plaster_labour_days: float,
) -> float:
    plaster = plaster_mason_days + plaster_labour_days
    return digging_days + base_mason_days + base_labour_days + 2 * steel_fitter_days + mesh_tying_days + plaster


@by_hand("the base a day and three to set, each face a day: policy of this course, said in the question")
def days_to_hand_over(site_ready_day: float, cage_duration: float, curing_days: float, proving_days: float) -> float:
    return site_ready_day + 1 + 3 + 2 + cage_duration + curing_days + proving_days


@by_hand(SHARES)
def learners_at_place(learners: float, work_places: float) -> float:
    return up(learners / work_places)


@by_hand(SHARES)
def turn_minutes(hand_minutes: float, learners_at_place: float) -> float:
    return hand_minutes / learners_at_place


@by_hand(SHARES)
def talk_share(talk_minutes: float, show_minutes: float, hand_minutes: float) -> float:
    return 100 * talk_minutes / (talk_minutes + show_minutes + hand_minutes)


@by_hand(SHARES)
def watching_time(learners: float, watched_at_once: float, watch_minutes: float, change_minutes: float) -> float:
    return up(learners / watched_at_once) * (watch_minutes + change_minutes)
