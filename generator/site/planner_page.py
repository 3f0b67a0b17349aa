"""The tank planner's page: what can be typed, what is worked out, and where the limits are; its script does the rest.

Everything shown comes from the calculation module's own functions, translated for the page. What needs a search or a
solver (hoops by height zone, cutting list, mesh layout, calendar, bill) stays with the command `plan`, and the page
says so.
"""

from __future__ import annotations

from html import escape

from generator.calculations import BOOK
from generator.calculations.bands import (
    ENGINEER_DEPTH,
    ENGINEER_PULL,
    ENGINEER_SPAN,
    ENGINEER_VOLUME,
    VILLAGE_DEPTH,
    VILLAGE_PULL,
    VILLAGE_SPAN,
    VILLAGE_VOLUME,
)
from generator.calculations.ring_strength import MORTAR_TENSION_ALLOWED
from generator.formula import Quantity, show_full
from generator.plans import Plan, Wish, given_values, make_plan, shape_ladder
from generator.site.markup import block, caution, data_script, paragraphs
from generator.words import Words

PLANNER = "tank-planner"
"""Name of the page."""
START_LITRES = 6000.0
"""The tank that stands there first."""

INPUTS = {
    "tank": ("inside_diameter", "wall_height", "overflow_drop"),
    "steel": ("hoop_diameter", "hoop_spacing", "bar_diameter", "bar_spacing_limit", "angle_leg", "angle_spacing_limit",
              "starter_diameter", "steel_working_stress", "lap_diameters", "stock_length"),
    "wall": ("mesh_cover", "inside_mesh_thickness", "outside_mesh_thickness", "base_projection",
             "base_concrete_thickness"),
    "mortar": ("sand_parts", "dry_volume_factor", "mortar_waste", "sand_bulking", "water_cement_ratio"),
}  # fmt: skip
"""What can be typed, by group; the first group is always open."""
OUTPUTS = {
    "counts": ("tank_litres", "angle_count", "bar_count", "hoop_count", "cement_bags", "sand_volume_damp",
               "mixing_water", "hoop_stock_bars"),
    "sizes": ("frame_diameter", "frame_radius", "ring_length", "outside_diameter", "base_diameter", "wall_thickness",
              "water_depth", "angle_spacing", "angle_chord", "bars_between", "bar_spacing", "hoop_spacing_closing",
              "hoop_length", "hoop_laps", "lap_length", "starter_spacing"),
    "amounts": ("wall_mortar_volume", "cement_mass", "base_concrete_volume", "hoop_mass"),
}  # fmt: skip
_BANDS = {
    "volume": (VILLAGE_VOLUME, ENGINEER_VOLUME),
    "depth": (VILLAGE_DEPTH, ENGINEER_DEPTH),
    "depth_times_radius": (VILLAGE_PULL, ENGINEER_PULL),
    "flat_span": (VILLAGE_SPAN, ENGINEER_SPAN),
}
"""Measures in the order in which `bands.judge` names them."""
HIDDEN = ("level_height", "ring_tension_free", "ring_tension_held", "hoop_stress", "hoop_stress_free", "mortar_tension",
          "inside_radius", "tank_volume", "hoop_steel_given", "starter_steel_needed")  # fmt: skip
"""What the checks read at each level."""


def planner_page(words: Words, home: str) -> str:
    """The page as Markdown.

    Args:
        words: of the page's language.
        home: address of the page that leads here.
    """
    parts = [
        f"# {words.say('page.planner.title')} {{#{PLANNER}}}",
        words.say("page.planner.about"),
        block(caution(words.say("page.planner.caution"), words)),
        block(f"<noscript>{paragraphs(words.say('page.planner.script_off'), 'ts-invented')}</noscript>"),
        block(
            f'<div class="ts-planner" data-home="{escape(home)}">{data_script(planner_data(words))}'
            '<div class="ts-body" data-search-exclude=""></div></div>'
        ),
        f"## {words.say('page.planner.only_plan')} {{#only-plan}}",
        words.say("page.planner.only_plan_text"),
    ]
    return "\n\n".join(part.strip() for part in parts) + "\n"


def planner_data(words: Words) -> dict[str, object]:
    """What the page's script reads: inputs with their ranges, outputs, limits, and the shapes that litres lead to."""
    inputs = [name for group in INPUTS.values() for name in group]
    outputs = [name for group in OUTPUTS.values() for name in group]
    told = [*inputs, *outputs, *HIDDEN]
    checked = sorted({*told, *BOOK.ancestors(name for name in told if name in BOOK.quantities)})
    start = start_values()
    return {
        "planner": {
            "order": {"groups": list(INPUTS), "outputs": list(OUTPUTS), "bands": list(_BANDS)},
            "groups": {group: list(names) for group, names in INPUTS.items()},
            "outputs": {group: list(names) for group, names in OUTPUTS.items()},
            "watched": list(HIDDEN),
            "start": {name: start[name] for name in inputs},
            "places": {name: _places(name) for name in told},
            "ranges": {name: [BOOK.entry(name).low, BOOK.entry(name).high] for name in checked},
            "units": {name: BOOK.entry(name).unit for name in checked},
            "labels": {name: words.say_one_of("quantity", name) for name in checked},
            "ladder": [list(step) for step in shape_ladder()],
            "bands": {name: [float(village), float(most)] for name, (village, most) in _BANDS.items()},
            "mortar_allowed": float(MORTAR_TENSION_ALLOWED),
            "band_words": {
                key: text for key, text in words.family("band") if isinstance(text, str)
            },
        }
    }  # fmt: skip


def planner_names() -> frozenset[str]:
    """The quantities that the planner asks for."""
    shown = {name for group in OUTPUTS.values() for name in group}
    watched = {name for name in HIDDEN if name in BOOK.quantities}
    return frozenset(shown | watched)


def start_values() -> dict[str, float]:
    """Givens of the tank that stands there first: what `plan` makes of it, with its lowest zone's hoops all the way."""
    plan = make_plan(Wish(START_LITRES))
    if not isinstance(plan, Plan):
        raise AssertionError("the tank that the planner starts with can be planned")
    return given_values(plan)


def _places(name: str) -> int:
    entry = BOOK.entry(name)
    if isinstance(entry, Quantity):
        return entry.places
    return len(show_full(BOOK.givens[name].step).partition(".")[2])
