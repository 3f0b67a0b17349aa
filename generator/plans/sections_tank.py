"""The tank itself in sections: counts, why it is as it is, sizes, ground, checks, sources."""

from __future__ import annotations

import re
from collections.abc import Iterable

from generator.calculations import BOOK
from generator.calculations.bands import Band, explain
from generator.formula import Status
from generator.plans.as_data import GROUND
from generator.plans.as_data import counts as counted
from generator.plans.hoops import Hoops
from generator.plans.plan import Offer, Plan
from generator.plans.roofing import RoofKind
from generator.plans.tell import Section, Tell
from generator.words import Words


def counts(plan: Plan, tell: Tell) -> Section:
    """The first page: this tank in counts, its band, and all that must be carried."""
    words, found = tell.words, counted(plan)
    lines = [words.say("plan.wished", litres=tell.sized(plan.wish.litres, 0, "L")), *_need(plan, tell)]
    lines += explain(plan.judgement, words)
    if plan.judgement.band is Band.ENGINEER:
        lines += [words.say("plan.engineer_line"), *offers(plan.smaller, tell)]
    rows = [
        (words.say("plan.count.water"), tell.sized(found["water_litres"], 0, "L")),
        *_bar_counts(plan, tell),
        (words.say("plan.count.bags"), tell.number(found["cement_bags"])),
        (words.say("plan.count.rolls"), tell.number(found["mesh_rolls"])),
        (words.say("plan.count.loads", load=tell.sized(plan.wish.crew.load, 0, "kg")), tell.number(found["loads"])),
        (words.say("plan.count.masons"), tell.number(found["masons_on_plaster_day"])),
        (words.say("plan.count.days"), tell.number(found["days"])),
        (words.say("plan.count.build_water"), tell.sized(found["water_to_build_with_l"], 0, "L")),
        (words.say("plan.count.test_water"), tell.sized(found["water_of_the_test_l"], 0, "L")),
        (words.say("plan.count.tonnes"), words.say("plan.tonnes", tonnes=tell.number(found["tonnes"], 1))),
    ]
    head = (words.say("plan.head.what"), words.say("plan.head.how_many"))
    return Section("counts", words.say("plan.section.counts"), tuple(lines), head, tuple(rows))


def _need(plan: Plan, tell: Tell) -> list[str]:
    need, words = plan.wish.need, tell.words
    if not need:
        return []
    lines = [
        words.say(
            "plan.need", people=tell.number(need["people"]), each=tell.sized(need["litres_each"], 0, "L"),
            daily=tell.sized(need["daily_need"], 0, "L"), days=tell.number(need["dry_days"]),
            spring=tell.sized(need["spring_daily_yield"], 0, "L"),
        )
    ]  # fmt: skip
    if need["daily_shortfall"] <= 0:
        lines.append(words.say("plan.spring_covers"))
    return lines


def _bar_counts(plan: Plan, tell: Tell) -> list[tuple[str, str]]:
    """Angles, uprights, starters and hoops; a part that this tank has not is no row."""
    words, found, hoops = tell.words, counted(plan), plan.wall.hoops
    rows = []
    if found["angles"]:
        rows.append((words.say("plan.count.angles"), tell.number(found["angles"])))
    if found["uprights"]:
        rows.append((words.say("plan.count.uprights"), tell.number(found["uprights"])))
    rows.append((words.say("plan.count.starters"), tell.number(found["starters"])))
    if hoops is not None:
        rows.append((words.say("plan.count.hoops"), _hoop_counts(hoops, tell)))
    return rows


def _hoop_counts(hoops: Hoops, tell: Tell) -> str:
    foot, *rest = hoops.zones
    by_zone = " + ".join(tell.number(count) for count in (foot.gaps + 1, *(zone.gaps for zone in rest)))
    return tell.words.say("plan.hoops_by_zone", count=tell.number(hoops.count), zones=by_zone)


def offers(found: Iterable[Offer], tell: Tell) -> list[str]:
    """Smaller tanks in the place of one."""
    return [
        tell.words.say(
            "plan.offer", tanks=tell.number(offer.tanks), litres=tell.sized(offer.litres, 0, "L"),
            band=tell.words.say_one_of("band.name", offer.band.name.lower()),
        )
        for offer in found
    ]  # fmt: skip


def why(plan: Plan, tell: Tell) -> Section:
    """Why these hoops: what each zone bears, what it would bear if all stood as far apart as at the top."""
    words, hoops = tell.words, plan.wall.hoops
    if hoops is None:
        return Section("why", words.say("plan.section.why_no_hoops"), (words.say("plan.why_mesh_only"),))
    lines = []
    if plan.judged is not None:
        zone = plan.judged.zones[0]
        lines.append(
            words.say(
                "plan.why_judged", bar=tell.bar(plan.judged.bar), spacing=tell.sized(zone.widest, 3, "m"),
                stress=tell.sized(max(zone.stress, zone.stress_free), 0, "MPa"),
                allowed=tell.sized(plan.judged.allowed, 0, "MPa"), better=tell.bar(hoops.bar),
            )
        )  # fmt: skip
    foot, top = hoops.zones[0], hoops.zones[-1]
    if top.spacing > foot.spacing + 1e-9:
        stress = foot.stress_free * top.spacing / foot.spacing
        lines.append(
            words.say(
                "plan.why_closer", spacing=tell.sized(top.spacing, 3, "m"), stress=tell.sized(stress, 0, "MPa"),
                allowed=tell.sized(hoops.allowed, 0, "MPa"),
            )
        )  # fmt: skip
    lines += [words.say("plan.why_free"), words.say("plan.why_staggered")]
    lines += [
        words.say(
            "plan.other_hoops",
            bar=tell.bar(other.bar),
            spacings=_spacings(other, tell),
        )
        for other in plan.wall.others
    ]
    rows = tuple(
        (
            tell.number(number), f"{tell.number(zone.from_height, 2)} – {tell.sized(zone.to_height, 2, 'm')}",
            tell.number(zone.gaps + (number == 1)), tell.sized(zone.spacing, 3, "m"), tell.sized(zone.stress, 0, "MPa"),
            tell.sized(zone.stress_free, 0, "MPa"), tell.sized(hoops.allowed, 0, "MPa"),
        )
        for number, zone in enumerate(hoops.zones, start=1)
    )  # fmt: skip
    head = (
        words.say("plan.head.zone"), words.say("plan.head.height"), words.say("plan.head.hoops"),
        words.say("plan.head.spacing"), words.say("plan.head.stress"), words.say("plan.head.stress_free"),
        words.say("plan.head.allowed"),
    )  # fmt: skip
    return Section("why", words.say("plan.section.why"), tuple(lines), head, rows)


def _spacings(hoops: Hoops, tell: Tell) -> str:
    """By zone from the foot up; once where all zones are alike."""
    told = [tell.sized(zone.spacing, 3, "m") for zone in hoops.zones]
    return told[0] if len(set(told)) == 1 else " / ".join(told)


_SIZES = ("inside_diameter", "frame_diameter", "ring_length", "outside_diameter", "wall_height", "water_depth",
          "wall_thickness", "bar_cover_inside", "hoop_cover_outside", "hoop_length", "hoop_laps", "lap_length",
          "angle_count", "angle_spacing", "angle_chord", "angle_length", "bars_between", "bar_spacing", "bar_length",
          "base_diameter", "base_concrete_thickness", "starter_length")  # fmt: skip


_OF_A_FRAME = ("frame_diameter", "ring_length", "bar_cover_inside", "hoop_cover_outside", "bar_length")
"""Sizes that have no meaning, or another name, where mesh alone bears."""


def sizes(plan: Plan, tell: Tell) -> Section:
    """Every size that is set out, and the steel it is set out with."""
    words, values, wall, roof = tell.words, plan.values, plan.wall, plan.roof
    skip = () if wall.hoops is not None else _OF_A_FRAME
    rows = [tell.quantity(name, values[name]) for name in _SIZES if name in values and name not in skip]
    note = words.say("plan.three_diameters")
    if wall.hoops is None:
        note = words.say("plan.three_diameters_mesh")
        rows.insert(1, (words.say("plan.size.mesh_ring"), tell.quantity("ring_length", values["ring_length"])[1]))
    if wall.hoops is not None and wall.upright is not None:
        rows += [
            (words.say("plan.size.hoop_bar"), tell.bar(wall.hoops.bar)),
            (words.say("plan.size.upright_bar"), tell.bar(wall.upright)),
        ]
    if wall.angle is not None:
        rows.append((words.say("plan.size.angle"), tell.angle(wall.angle)))
    rows += [
        (words.say("plan.size.starters"), f"{tell.bar(plan.footing.bar)}, {tell.sized(plan.footing.spacing, 2, 'm')}"),
        (words.say("plan.size.base_ring"), f"{tell.number(plan.footing.ring_bars)} × {tell.bar(plan.footing.bar)}"),
        (words.say("plan.size.roof"), words.say_one_of("plan.roof_kind", roof.kind.value)),
        (words.say("plan.size.roof_thickness"), tell.sized(roof.thickness, 0, "mm")),
        (words.say("plan.size.roof_steel"), _roof_steel(plan, tell)),
        (words.say("plan.size.props"), words.say(
            "plan.props", count=tell.number(roof.values["prop_count"]),
            load=tell.sized(roof.values["prop_load"], 1, "kN"),
        )),
        (words.say("plan.size.longest_board"), tell.sized(roof.longest_board, 2, "m")),
    ]  # fmt: skip
    head = (words.say("plan.head.size"), words.say("plan.head.value"))
    return Section("sizes", words.say("plan.section.sizes"), (note,), head, tuple(rows))


def _roof_steel(plan: Plan, tell: Tell) -> str:
    roof, words = plan.roof, tell.words
    if roof.kind in (RoofKind.DOME, RoofKind.CONE):
        return words.say("plan.roof_ring", count=tell.number(roof.ring_bars), bar=tell.bar(roof.bar),
                         rise=tell.sized(roof.values["roof_rise"], 2, "m"))  # fmt: skip
    if roof.kind is RoofKind.RIBS:
        return words.say("plan.roof_ribs", count=tell.number(roof.ring_bars), bar=tell.bar(roof.bar),
                         depth=tell.sized(roof.rib_depth, 0, "mm"),
                         spacing=tell.sized(roof.spacing, 2, "m"))  # fmt: skip
    if roof.kind is RoofKind.COLUMN:
        return words.say("plan.roof_column", bar=tell.bar(roof.bar), spacing=tell.sized(roof.spacing, 3, "m"),
                         cap=tell.sized(roof.cap_width, 2, "m"), pad=tell.sized(roof.pad_side, 2, "m"))  # fmt: skip
    return words.say("plan.roof_grid", bar=tell.bar(roof.bar), spacing=tell.sized(roof.spacing, 3, "m"))


def ground(plan: Plan, tell: Tell) -> Section:
    """Ground and base."""
    words, values = tell.words, plan.values
    cut = ("platform_width", "cut_height", "cut_volume", "spoil_volume", "drain_ditch_length")
    rows = [tell.quantity(name, values[name]) for name in GROUND if plan.wish.site.cut or name not in cut]
    lines = [words.say("plan.ground_all_cut") if plan.wish.site.cut else words.say("plan.ground_level")]
    lines.append(words.say("plan.ground_pressure_is_not_all"))
    if not plan.wish.site.soil:
        lines.append(words.say("plan.ground_unknown"))
    head = (words.say("plan.head.size"), words.say("plan.head.value"))
    return Section("ground", words.say("plan.section.ground"), tuple(lines), head, tuple(rows))


def checks(plan: Plan, tell: Tell) -> Section:
    """Every check with what is asked for, what is there and the ratio."""
    words, rows = tell.words, []
    for check in plan.checks:
        name = words.say_one_of("plan.check", check.name)
        if check.zone:
            name = words.say("plan.check_in_zone", check=name, zone=tell.number(check.zone))
        places = 2 if check.unit in ("MPa", "kN/m", "") and max(check.demand, check.capacity) < 10 else 0
        if check.decides:
            verdict = words.say("plan.verdict.good")
        elif check.good:
            verdict = words.say("plan.verdict.quiet")
        else:
            verdict = words.say("plan.verdict.warning")
        rows.append((
            name, tell.sized(check.demand, places, check.unit), tell.sized(check.capacity, places, check.unit),
            tell.number(check.ratio, 2), verdict, words.say_one_of("status", check.status.value),
        ))  # fmt: skip
    head = (
        words.say("plan.head.check"), words.say("plan.head.demand"), words.say("plan.head.capacity"),
        words.say("plan.head.ratio"), words.say("plan.head.verdict"), words.say("plan.head.status"),
    )  # fmt: skip
    return Section("checks", words.say("plan.section.checks"), (words.say("plan.checks_note"),), head, tuple(rows))


def sources(plan: Plan, tell: Tell) -> Section:
    """Where the limits come from, each once."""
    words = tell.words
    found = dict.fromkeys((check.source, check.status) for check in plan.checks)
    found |= dict.fromkeys((BOOK.entry(name).source.text, BOOK.entry(name).source.status) for name in _SOURCED)
    order = list(Status)
    rows = tuple(
        (words.say_one_of("status", status.value), _said(text, words))
        for text, status in sorted(found, key=lambda entry: (order.index(entry[1]), entry[0]))
    )
    head = (words.say("plan.head.status"), words.say("plan.head.source"))
    return Section("sources", words.say("plan.section.sources"), (words.say("plan.sources_note"),), head, rows)


def _said(source: str, words: Words) -> str:
    """A source in the reader's language; its key is the first four words of the source's own text."""
    key = "_".join(re.findall("[a-z0-9]+", source.lower())[:4])
    return words.say_one_of("plan.source_said", key) if f"plan.source_said.{key}" in words else source


_SOURCED = ("ring_tension_free", "ring_share", "curing_days", "prop_days", "true_dry_factor", "digging_days")
