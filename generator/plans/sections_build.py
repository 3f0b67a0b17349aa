"""The building in sections: cutting list, mesh, batch card, calendar, bill, fittings, hold points."""

from __future__ import annotations

from decimal import Decimal

from generator.calculations.build_jobs import HOLD_POINTS
from generator.plans.as_data import BATCH, WATER_WORKS
from generator.plans.money import OURS
from generator.plans.plan import Plan
from generator.plans.tell import Section, Tell
from generator.words import Words

_NO_GAP = 0.05
"""Per cent that are shown as 0.0: the cutting list is as short as can be."""


def cutting(plan: Plan, tell: Tell) -> Section:
    """Which pieces come from which bars."""
    words, rows = tell.words, []
    lines = [words.say("plan.cutting_note") if plan.wall.hoops is None else words.say("plan.cutting_note_hoops")]
    for each in plan.bars:
        bar = words.say("plan.bar_of", bar=tell.bar(each.bar), length=tell.sized(each.bar.length, 1, "m"))
        waste, gap = tell.number(100 * each.cuts.waste), 100 * each.cuts.gap
        shown, bought = tell.number(each.cuts.bars), each.cuts.bars
        if gap < _NO_GAP:
            lines.append(words.say("plan.cutting_fewest", bar=bar, count=bought, shown=shown, waste=waste))
        else:
            above = tell.number(gap, 1)
            lines.append(words.say("plan.cutting_bars", bar=bar, count=bought, shown=shown, waste=waste, gap=above))
        for cut in each.cuts.cuts:
            pieces = ", ".join(
                _piece(tell, count, piece.name, piece.length)
                for count, piece in zip(cut.pieces, each.pieces, strict=True)
                if count
            )
            rows.append((bar, tell.number(cut.bars), pieces, tell.sized(cut.left_over, 2, "m")))
    if plan.angles is not None:
        angle = plan.angles
        for cut in angle.cuts.cuts:
            piece_text = _piece(tell, cut.pieces[0], "angle", angle.length)
            left = tell.sized(cut.left_over, 2, "m")
            rows.append((tell.angle(angle.angle), tell.number(cut.bars), piece_text, left))
    head = (
        words.say("plan.head.bar"), words.say("plan.head.bars"), words.say("plan.head.pieces"),
        words.say("plan.head.left_over"),
    )  # fmt: skip
    return Section("cutting", words.say("plan.section.cutting"), tuple(lines), head, tuple(rows))


def _piece(tell: Tell, count: int, name: str, length: float) -> str:
    return f"{tell.number(count)} × {tell.words.say_one_of('plan.piece', name)} {tell.sized(length, 2, 'm')}"


def mesh(plan: Plan, tell: Tell) -> Section:
    """How the mesh is cut and hung."""
    words, rows = tell.words, []
    for face, each in (("inside", plan.mesh.inside), ("outside", plan.mesh.outside)):
        for strip in each.layout.strips:
            laps = ", ".join(tell.number(lap, 2) for lap in strip.laps)
            rows.append((
                words.say_one_of("plan.face", face), tell.number(strip.layer + 1), tell.number(strip.row + 1),
                tell.sized(strip.width, 2, "m"), f"{tell.number(len(strip.laps))} × {tell.sized(strip.piece, 2, 'm')}",
                laps,
            ))  # fmt: skip
    lines = [words.say("plan.mesh_note")]
    lines += [
        words.say("plan.mesh_flat", part=words.say_one_of("plan.flat", part), area=tell.sized(area, 1, "m**2"),
                  mesh=tell.mesh(sheet))
        for part, (sheet, area) in plan.mesh.flat.items()
    ]  # fmt: skip
    lines += [
        words.say("plan.mesh_rolls", count=count, shown=tell.number(count), mesh=tell.mesh(sheet),
                  width=tell.sized(sheet.width, 2, "m"), length=tell.sized(sheet.length, 0, "m"))
        for sheet, count in plan.mesh.rolls
    ]  # fmt: skip
    if not (plan.mesh.inside.layout.staggered and plan.mesh.outside.layout.staggered):
        lines.append(words.say("plan.mesh_not_staggered"))
    head = (
        words.say("plan.head.face"), words.say("plan.head.layer"), words.say("plan.head.row"),
        words.say("plan.head.width"), words.say("plan.head.pieces"), words.say("plan.head.laps_at"),
    )  # fmt: skip
    return Section("mesh", words.say("plan.section.mesh"), tuple(lines), head, tuple(rows))


def batch(plan: Plan, tell: Tell) -> Section:
    """The batch card, and all that is bought."""
    words, made = tell.words, plan.materials
    rows = [tell.quantity(name, plan.values[name]) for name in BATCH]
    rows += [
        (words.say("plan.material.mortar_bags"), tell.number(made.mortar_bags)),
        (words.say("plan.material.concrete_bags"), tell.number(made.concrete_bags)),
        (words.say("plan.material.finish_bags"), tell.number(made.finish_bags)),
        (words.say("plan.material.sand"), tell.sized(made.sand, 1, "m**3")),
        (words.say("plan.material.stone"), tell.sized(made.stone, 1, "m**3")),
        (
            words.say("plan.material.bars") if plan.angles is None else words.say("plan.material.steel"),
            tell.sized(made.steel, 0, "kg"),
        ),
        (words.say("plan.material.mesh"), tell.sized(made.mesh, 0, "kg")),
        (words.say("plan.material.wire"), tell.sized(made.wire, 0, "kg")),
        (words.say("plan.material.lime"), tell.sized(made.lime, 0, "kg")),
        (words.say("plan.material.mixing_water"), tell.sized(made.mixing_water, 0, "L")),
        (words.say("plan.material.curing_water"), tell.sized(made.curing_water, 0, "L")),
    ]
    lines = (words.say("plan.batch_note"), words.say("plan.batch_bulking"), words.say("plan.batch_lean"))
    head = (words.say("plan.head.what"), words.say("plan.head.how_many"))
    return Section("batch", words.say("plan.section.batch"), lines, head, tuple(rows))


def calendar_of(plan: Plan, tell: Tell) -> Section:
    """What is done on which day, and what holds up the rest."""
    words, work = tell.words, plan.work
    rows = tuple(
        (
            tell.number(slot.start)
            if slot.end <= slot.start
            else f"{tell.number(slot.start)} – {tell.number(slot.end)}",
            words.say_one_of("job", slot.name),
            words.say("plan.holds_up") if slot.decides else "",
        )
        for slot in work.slots
    )
    lines = [words.say("plan.calendar_note", days=tell.number(work.days))]
    if work.joint_planned:
        lines.append(
            words.say("plan.joint_planned", needed=tell.number(work.masons_needed),
                      masons=tell.number(plan.wish.crew.masons))
        )  # fmt: skip
    lines += [
        words.say("plan.load_line", material=words.say_one_of("plan.carried", line.name), count=line.loads,
                  loads=tell.number(line.loads),
                  mass=tell.sized(line.mass, 0, "kg"))
        for line in work.loads.lines
    ]  # fmt: skip
    head = (words.say("plan.head.day"), words.say("plan.head.job"), words.say("plan.head.note"))
    return Section("calendar", words.say("plan.section.calendar"), tuple(lines), head, rows)


def money(plan: Plan, tell: Tell) -> Section:
    """The bill on the user's own prices, or what to bring for one."""
    words, made = tell.words, plan.bill
    heading = words.say("plan.section.money")
    if made is None:
        return Section("money", heading, (words.say("plan.no_prices"),))
    rows = [
        (
            _item(plan, line.name, words),
            tell.number(float(line.packages), 0 if line.packages == int(line.packages) else 1),
            "–" if line.price is None else _coins(line.price, tell),
            "–" if line.cost is None else _coins(line.cost, tell),
        )
        for line in made.lines
    ]  # fmt: skip
    if made.missing:
        names = ", ".join(_item(plan, name, words) for name in made.missing)
        lines = [words.say("plan.prices_missing", names=names, so_far=f"{_coins(made.so_far, tell)} {made.currency}")]
    else:
        lines = [words.say("plan.total", total=f"{_coins(made.total or made.so_far, tell)} {made.currency}")]
    lines += [
        words.say(
            "plan.compared",
            name=words.say("plan.this_tank") if row.name == OURS else row.name,
            cost=f"{_coins(row.per_cubic_metre_year, tell)} {made.currency}",
        )
        for row in plan.comparison
        if row.per_cubic_metre_year is not None
    ]
    head = (
        words.say("plan.head.item"), words.say("plan.head.how_many"), words.say("plan.head.price"),
        words.say("plan.head.cost"),
    )  # fmt: skip
    return Section("money", heading, tuple(lines), head, tuple(rows))


def _coins(money: Decimal, tell: Tell) -> str:
    """Money to the hundredth, as people pay it."""
    return tell.words.number(f"{money:.2f}")


def _item(plan: Plan, name: str, words: Words) -> str:
    """A line of the bill: no angles where none are bought."""
    return words.say_one_of("plan.item", "bars" if name == "steel" and plan.angles is None else name)


def looked_at(plan: Plan, hold: str, words: Words) -> str:
    """What is looked at where the work stops.

    Args:
        plan: of the tank.
        hold: the hold point's name.
        words: of the reader's language.
    """
    if hold == "hold_cage" and plan.wall.hoops is None:
        return words.say("plan.hold_mesh_cage")
    return words.say_one_of("plan.hold", hold)


def fittings(plan: Plan, tell: Tell) -> Section:
    """Pipes, first filling, leak test and disinfection."""
    words = tell.words
    rows = [tell.quantity(name, plan.values[name]) for name in WATER_WORKS]
    lines = (words.say("plan.fittings_note"), words.say("plan.filling_note"), words.say("plan.chlorine_note"))
    head = (words.say("plan.head.what"), words.say("plan.head.value"))
    return Section("fittings", words.say("plan.section.fittings"), lines, head, tuple(rows))


def hold_points(plan: Plan, tell: Tell) -> Section:
    """Seven moments at which the work stops, with room for names and dates."""
    words = tell.words
    line = "_" * 14
    rows = tuple(
        (tell.number(number), words.say_one_of("job", name), looked_at(plan, name, words), line, line)
        for number, name in enumerate(HOLD_POINTS, start=1)
    )
    head = (
        words.say("plan.head.number"), words.say("plan.head.hold"), words.say("plan.head.look_at"),
        words.say("plan.head.checked_by"), words.say("plan.head.date"),
    )  # fmt: skip
    return Section("hold_points", words.say("plan.section.hold_points"), (words.say("plan.hold_note"),), head, rows)
