"""The roof: flat over a small tank, a dome over a wider one, a cone, ribs or a column where someone asks for them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from generator.calculations import BOOK
from generator.calculations.bands import VILLAGE_SPAN
from generator.calculations.column_foot import column_pad_side
from generator.calculations.props import longest_board_out
from generator.calculations.ring_levels import allowed_steel_stress
from generator.calculations.roof import MORTAR_BENDING_ALLOWED
from generator.formula import whole_down, whole_up
from generator.plans.hoops import bar_area
from generator.plans.refused import NoPlanError
from generator.plans.shape import Shape
from generator.plans.shop import Bar, Shop

LIVE_LOAD = 1.0
"""People who clean and mend [kN/m2]."""
ROOF_COVER = 10.0
RISE_PARTS = 7.0
PROP_SPACING, SOLE_PLATE = 0.8, 0.3
MANHOLE = 0.6
BOARD = 38.0
"""Thickness of a stiff board [mm]."""
COLUMN_WIDTH = 0.15
RIB_SPACING = 0.6
PAD_THICKNESS = 200.0
LEAST_BEARING = 50.0
"""Ground under a column whose kind nobody has named: the lowest printed value, of very soft clay [kN/m2]."""
WIDEST, CLOSEST, STEP = 0.20, 0.10, 0.025
THINNEST_BAR, THICKEST_BAR = 6.0, 12.0
THIN_SHELL, THICK_SHELL, WIDE_SHELL = 40.0, 50.0, 4.2
"""Thickness of a dome or a cone, and the span above which it is the thicker one [mm, mm, m]."""
LEAST_RING_BARS, MOST_RING_BARS = 2, 4


class RoofKind(StrEnum):
    """Kinds of roof that a plan can hold."""

    FLAT = "flat"
    DOME = "dome"
    CONE = "cone"
    RIBS = "ribs"
    COLUMN = "column"


@dataclass(frozen=True, slots=True)
class Roof:
    """A roof that its steel can bear.

    Args:
        kind: of roof.
        thickness: [mm].
        bar: of its steel.
        spacing: from bar to bar, both ways; over a column the top steel lies as close [m].
        ring_bars: bars round the edge of a dome or a cone.
        cap_width: of a column's cap [m].
        pad_side: of the pad under a column [m].
        rib_depth: from the roof's top to a rib's foot [mm].
        longest_board: longest stiff board that comes out through the manhole [m].
        values: what the calculation module says about it, by name.
    """

    kind: RoofKind
    thickness: float
    bar: Bar
    spacing: float = WIDEST
    ring_bars: int = 0
    cap_width: float = 0.0
    pad_side: float = 0.0
    rib_depth: float = 0.0
    longest_board: float = 0.0
    values: Mapping[str, float] = field(default_factory=dict)

    @property
    def flat_span(self) -> bool:
        """Whether it spans from wall to wall without rising and without a column."""
        return self.kind in (RoofKind.FLAT, RoofKind.RIBS)


def usual_roof(inside_diameter: float) -> RoofKind:
    """Flat up to the span of a village's flat roof, a dome over a wider tank.

    Example:
        >>> usual_roof(2.2).value, usual_roof(3.2).value
        ('flat', 'dome')
    """
    return RoofKind.FLAT if inside_diameter <= float(VILLAGE_SPAN) + 1e-9 else RoofKind.DOME


def roof_for(shape: Shape, shop: Shop, kind: RoofKind) -> Roof:
    """The thinnest roof of a kind whose steel bears it, with the mortar uncracked where that can be had.

    Args:
        shape: of the tank.
        shop: its bars.
        kind: of roof.

    Raises:
        NoPlanError: no roof of this kind bears over this span; the message offers another kind.
    """
    bars = _roof_bars(shop)
    if not bars:
        raise NoPlanError("no_bar")
    choices = {
        RoofKind.FLAT: _flat, RoofKind.DOME: _curved, RoofKind.CONE: _curved, RoofKind.RIBS: _ribs,
        RoofKind.COLUMN: _column,
    }[kind](shape, bars, kind)  # fmt: skip
    second_best: Roof | None = None
    for poor, roof in choices:  # from the thinnest roof and bar
        if not poor:
            return roof
        second_best = second_best or roof
    if second_best is None:
        raise NoPlanError("roof_too_wide", width=f"{shape.inside_diameter:.2f}")
    return second_best


def _roof_bars(shop: Shop) -> list[Bar]:
    bars = {bar.diameter: bar for bar in sorted(shop.bars, key=lambda bar: (not bar.ribbed, bar.length))}
    return [bars[size] for size in sorted(bars) if THINNEST_BAR <= size <= THICKEST_BAR]


def _given(shape: Shape, thickness: float, bar: Bar, **more: float) -> dict[str, float]:
    return {
        "inside_diameter": shape.inside_diameter,
        "roof_thickness": thickness,
        "roof_live_load": LIVE_LOAD,
        "roof_cover": ROOF_COVER,
        "roof_bar_diameter": bar.diameter,
        "steel_working_stress": allowed_steel_stress(bar.ribbed),
        "prop_spacing": PROP_SPACING,
        "sole_plate_side": SOLE_PLATE,
        **more,
    }


_PROPS = ("roof_load", "prop_load", "prop_count", "sole_pressure", "roof_wet_mass")


def _spacing(bar: Bar, needed: float) -> float:
    """Widest spacing that gives the steel needed, in steps; 0 where the bars would lie too close."""
    wide = min(WIDEST, float(whole_down(bar_area(bar) / max(needed, 1.0) / STEP)) * STEP)
    return wide if wide >= CLOSEST - 1e-9 else 0.0


def _board(shape: Shape, thickness: float) -> float:
    return longest_board_out(
        shape.wall_height, max(shape.inside_diameter - MANHOLE, MANHOLE), MANHOLE, thickness, BOARD
    )


def _flat(shape: Shape, bars: list[Bar], kind: RoofKind) -> Iterator[tuple[bool, Roof]]:
    names = ("flat_roof_moment", "flat_roof_stress", "roof_steel_depth", "flat_roof_steel_needed", *_PROPS)
    for thickness in (50.0, 60.0, 70.0, 80.0):
        for bar in bars:
            values = BOOK.evaluate(_given(shape, thickness, bar), names)
            spacing = _spacing(bar, values["flat_roof_steel_needed"])
            if spacing:
                cracked = values["flat_roof_stress"] > float(MORTAR_BENDING_ALLOWED)
                yield (
                    cracked,
                    Roof(kind, thickness, bar, spacing, longest_board=_board(shape, thickness), values=values),
                )


def _curved(shape: Shape, bars: list[Bar], kind: RoofKind) -> Iterator[tuple[bool, Roof]]:
    ring = f"{kind.value}_ring_steel"
    names = (f"{kind.value}_area", f"{kind.value}_weight", f"{kind.value}_edge_pull", ring, "roof_rise", *_PROPS)
    thickness = THIN_SHELL if shape.inside_diameter <= WIDE_SHELL else THICK_SHELL
    for bar in bars:
        values = BOOK.evaluate(_given(shape, thickness, bar, roof_rise_parts=RISE_PARTS), names)
        count = int(whole_up(values[ring] / bar_area(bar)))
        if count <= MOST_RING_BARS:
            many = count > LEAST_RING_BARS  # two bars round the edge are easier to wrap in mortar than four
            yield many, Roof(kind, thickness, bar, WIDEST, max(LEAST_RING_BARS, count),
                             longest_board=_board(shape, thickness), values=values)  # fmt: skip


def _ribs(shape: Shape, bars: list[Bar], kind: RoofKind) -> Iterator[tuple[bool, Roof]]:
    names = ("rib_moment", "rib_steel_needed", "rib_slab_moment", "rib_slab_stress", "roof_steel_depth", *_PROPS)
    for depth in (120.0, 150.0, 200.0, 250.0):
        for bar in bars:
            given = _given(shape, 50.0, bar, rib_spacing=RIB_SPACING, rib_depth=depth)
            values = BOOK.evaluate(given, names)
            count = int(whole_up(values["rib_steel_needed"] / bar_area(bar)))
            if count <= 3:
                cracked = values["rib_slab_stress"] > float(MORTAR_BENDING_ALLOWED)
                yield cracked, Roof(kind, 50.0, bar, RIB_SPACING, max(2, count), rib_depth=depth,
                                    longest_board=_board(shape, 50.0), values=values)  # fmt: skip


def _column(shape: Shape, bars: list[Bar], kind: RoofKind) -> Iterator[tuple[bool, Roof]]:
    names = ("column_head_share", "column_load", "column_head_moment", "column_field_moment", "column_roof_stress",
             "punching_stress", "roof_steel_depth", *_PROPS)  # fmt: skip
    cap = min(1.5, float(whole_up(0.25 * shape.inside_diameter / 0.05)) * 0.05)
    for thickness in (60.0, 70.0, 80.0, 100.0):
        for bar in bars:
            given = _given(shape, thickness, bar, column_head_diameter=round(cap, 2))
            values = BOOK.evaluate(given, names)
            worst = {**given, "flat_roof_moment": max(values["column_head_moment"], 0.01)}
            values["column_steel_needed"] = BOOK.evaluate(worst, ["flat_roof_steel_needed"])["flat_roof_steel_needed"]
            spacing = _spacing(bar, values["column_steel_needed"])
            if spacing:
                cracked = values["column_roof_stress"] > float(MORTAR_BENDING_ALLOWED)
                pad = round(column_pad_side(values["column_load"], LEAST_BEARING, shape.water_depth, PAD_THICKNESS), 2)
                yield cracked, Roof(kind, thickness, bar, spacing, cap_width=round(cap, 2), pad_side=pad,
                                    longest_board=_board(shape, thickness), values=values)  # fmt: skip
