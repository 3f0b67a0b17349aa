"""Sections held to fibres: the mortar cut into thin strips, forces added up, and the neutral axis searched for."""

from math import sqrt

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from generator.calculations.section import (
    SteelLayer,
    bending_strength,
    block_factor,
    service_bending,
    tension_strength,
    uncracked_bending_stress,
    uncracked_ring_stress,
)

STRIPS = 40_000


@st.composite
def sections(draw: st.DrawFn) -> tuple[float, float, list[SteelLayer]]:
    thickness = draw(st.floats(25, 100))
    layer = st.tuples(st.floats(0.1, 0.9), st.floats(20, 500), st.sampled_from([250.0, 310.0, 415.0, 450.0]))
    found = draw(st.lists(layer, min_size=1, max_size=5))
    layers = [SteelLayer(share * thickness, area, yields) for share, area, yields in found]
    return thickness, draw(st.floats(18, 45)), layers


def strips(thickness: float) -> np.ndarray:
    """Middle of each strip, from the compressed face."""
    return (np.arange(STRIPS) + 0.5) * thickness / STRIPS


@given(section=sections())
def test_bending_at_crushing(section: tuple[float, float, list[SteelLayer]]) -> None:
    """Strain 0.003 at the compressed face; each strip inside the block bears 0.85 of the strength."""
    thickness, strength, layers = section
    middles = strips(thickness)

    def forces(axis: float) -> tuple[float, float]:
        share = np.clip((block_factor(strength) * axis - middles) * STRIPS / thickness + 0.5, 0, 1)
        pushed = 0.85 * strength * 1000 * share * thickness / STRIPS
        force, moment = float(-pushed.sum()), float(-(pushed * middles).sum())
        for layer in layers:
            strain = 0.003 * (layer.depth - axis) / axis
            pull = layer.area * min(layer.yield_stress, max(-layer.yield_stress, 200_000 * strain))
            force, moment = force + pull, moment + pull * layer.depth
        return force, moment

    axis = brentq(lambda at: forces(at)[0], 1e-3, thickness, xtol=1e-10)
    moment, found = bending_strength(thickness, strength, layers)
    assert found == pytest.approx(axis, rel=1e-3)
    assert moment == pytest.approx(forces(axis)[1] / 1e6, rel=1e-3)


@given(section=sections(), stress=st.floats(80, 210))
def test_bending_in_service(section: tuple[float, float, list[SteelLayer]], stress: float) -> None:
    """A cracked section: strains straight, mortar only pushed, the outer steel at its stress."""
    thickness, strength, layers = section
    middles, modulus = strips(thickness), 4700 * sqrt(strength)

    def forces(axis: float, bend: float) -> tuple[float, float]:
        pushed = modulus * bend * np.clip(axis - middles, 0, None) * 1000 * thickness / STRIPS
        force, moment = float(-pushed.sum()), float(-(pushed * middles).sum())
        for layer in layers:
            pull = layer.area * 200_000 * bend * (layer.depth - axis)
            force, moment = force + pull, moment + pull * layer.depth
        return force, moment

    axis = brentq(lambda at: forces(at, 1e-5)[0], 1e-6, thickness, xtol=1e-10)
    outer = max(layer.depth for layer in layers)
    bend = stress / 200_000 / (outer - axis)
    moment, found = service_bending(thickness, strength, layers, stress)
    assert found == pytest.approx(axis, rel=1e-4)
    assert moment == pytest.approx(forces(axis, bend)[1] / 1e6, rel=1e-3)


@given(section=sections())
def test_steel_that_yields_is_all_the_tension_there_is(section: tuple[float, float, list[SteelLayer]]) -> None:
    thickness, strength, layers = section
    assert tension_strength(layers) == pytest.approx(sum(layer.area * layer.yield_stress for layer in layers) / 1000)
    outer = max(layer.depth for layer in layers)
    assert bending_strength(thickness, strength, layers)[0] <= tension_strength(layers) * outer / 1000


@given(moment=st.floats(0.01, 5), thickness=st.floats(25, 100))
def test_the_face_of_a_slab_without_cracks(moment: float, thickness: float) -> None:
    """Strips stressed straight from face to face; together they hold the moment."""
    face = uncracked_bending_stress(moment, thickness)
    arm = strips(thickness) - thickness / 2
    held = float((face * arm / (thickness / 2) * arm).sum() * 1000 * thickness / STRIPS)
    assert held / 1e6 == pytest.approx(moment, rel=1e-6)


@given(tension=st.floats(1, 90), thickness=st.floats(30, 75), steel=st.floats(0, 2000), ratio=st.floats(6, 15))
def test_mortar_and_hoops_stretch_together(tension: float, thickness: float, steel: float, ratio: float) -> None:
    mortar = uncracked_ring_stress(tension, thickness, steel, ratio)
    assert mortar * (1000 * thickness - steel) + ratio * mortar * steel == pytest.approx(tension * 1000)
    assert mortar <= tension / thickness + 1e-12, "leaving the hoops out is on the safe side"
