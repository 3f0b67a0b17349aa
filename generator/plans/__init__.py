"""Plans: from what someone wants, and where, to a whole tank: its steel, mortar, checks, people, days and money."""

from generator.plans.as_data import as_data
from generator.plans.as_text import as_text, sections_text
from generator.plans.drawing import drawing_values, given_values
from generator.plans.place_file import hoops_of_place, litres_of_place, name_of_place, read_place
from generator.plans.plan import Offer, Plan, Refusal, make_plan
from generator.plans.prices import Prices, read_prices
from generator.plans.reckoner import Reckoner, make_reckoner, reckoner_sections
from generator.plans.refused import NoPlanError, outside
from generator.plans.roofing import RoofKind
from generator.plans.sections import sections
from generator.plans.sections_build import looked_at
from generator.plans.shape import shape_ladder
from generator.plans.shop import USUAL_SHOP, Angle, Bar, Mesh, Shop, read_shop
from generator.plans.tell import Section
from generator.plans.trough import TroughPlan, trough_data, trough_for, trough_sections
from generator.plans.wish import Crew, Site, Wish, Zone, litres_for_people

__all__ = [
    "USUAL_SHOP",
    "Angle",
    "Bar",
    "Crew",
    "Mesh",
    "NoPlanError",
    "Offer",
    "Plan",
    "Prices",
    "Reckoner",
    "Refusal",
    "RoofKind",
    "Section",
    "Shop",
    "Site",
    "TroughPlan",
    "Wish",
    "Zone",
    "as_data",
    "as_text",
    "drawing_values",
    "given_values",
    "hoops_of_place",
    "litres_for_people",
    "litres_of_place",
    "looked_at",
    "make_plan",
    "make_reckoner",
    "name_of_place",
    "outside",
    "read_place",
    "read_prices",
    "read_shop",
    "reckoner_sections",
    "sections",
    "sections_text",
    "shape_ladder",
    "trough_data",
    "trough_for",
    "trough_sections",
]
