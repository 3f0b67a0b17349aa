"""One metre of wall or slab as a section: what its steel and mortar carry in tension and in bending.

Standard theory of reinforced sections: plane sections, mortar tension left out, a block of stress in the compressed
mortar. It gives strengths and service stresses of thin sections with several layers of steel; it says nothing of crack
widths, for which no formula could be confirmed.

References:
    .. [1] Block depth factor 0.85, lowered above 28 MPa; strain 0.003: American practice for ferrocement, from memory.
       A failure strain of 0.003 and mortar tension left out are also in a paper in Case Studies in Construction
       Materials, 2018 (read in print).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt

from generator.formula import OutOfRangeError

CRUSHING_STRAIN = 0.003
STEEL_MODULUS = 200_000.0
"""MPa."""
WIDTH = 1000.0
"""mm: all results are for one metre."""


@dataclass(frozen=True, slots=True)
class SteelLayer:
    """One layer of steel.

    Args:
        depth: distance from the compressed face [mm].
        area: steel across the section [mm2 per metre].
        yield_stress: [MPa].
        modulus: [MPa].
    """

    depth: float
    area: float
    yield_stress: float
    modulus: float = STEEL_MODULUS


def tension_strength(layers: Sequence[SteelLayer]) -> float:
    """Tension that the steel of a section carries when it yields; mortar is left out.

    Returns:
        [kN per metre].

    Example:
        >>> round(tension_strength([SteelLayer(12.5, 251.3, 450)]), 1)
        113.1
    """
    return sum(layer.area * layer.yield_stress for layer in layers) / 1000


def block_factor(mortar_strength: float) -> float:
    """Depth of the stress block / depth of the neutral axis: 0.85 to 28 MPa, then less, never under 0.65.

    Example:
        >>> block_factor(28), round(block_factor(35), 3), block_factor(90)
        (0.85, 0.8, 0.65)
    """
    return min(0.85, max(0.65, 0.85 - 0.05 * (mortar_strength - 28) / 7))


def bending_strength(thickness: float, mortar_strength: float, layers: Sequence[SteelLayer]) -> tuple[float, float]:
    """Bending moment at which the compressed face crushes, and the depth of the neutral axis.

    Args:
        thickness: of the section [mm].
        mortar_strength: cylinder strength [MPa].
        layers: steel; each stress is at most its yield stress, of either sign.

    Returns:
        Moment [kN.m per metre] and neutral axis from the compressed face [mm].

    Raises:
        OutOfRangeError: no steel, or a layer outside the section.
    """
    _refuse(thickness, layers)
    block = block_factor(mortar_strength)

    def balance(axis: float) -> float:
        compression = 0.85 * mortar_strength * block * axis * WIDTH
        return compression - sum(layer.area * _stress(layer, axis) for layer in layers)

    low, high = thickness * 1e-6, thickness
    for _ in range(200):
        axis = (low + high) / 2
        low, high = (axis, high) if balance(axis) < 0 else (low, axis)
    compression = 0.85 * mortar_strength * block * axis * WIDTH
    moment = sum(layer.area * _stress(layer, axis) * layer.depth for layer in layers) - compression * block * axis / 2
    return moment / 1e6, axis


def service_bending(
    thickness: float, mortar_strength: float, layers: Sequence[SteelLayer], steel_stress: float
) -> tuple[float, float]:
    """Moment at which the outer steel layer reaches a chosen stress in the cracked section, and the neutral axis.

    Args:
        thickness: of the section [mm].
        mortar_strength: cylinder strength [MPa]; mortar modulus 4700 sqrt(strength) [MPa].
        layers: steel; also above the neutral axis it counts with the full modular ratio.
        steel_stress: in the layer farthest from the compressed face [MPa].

    Returns:
        Moment [kN.m per metre] and neutral axis from the compressed face [mm].

    Raises:
        OutOfRangeError: no steel, or a layer outside the section.
    """
    _refuse(thickness, layers)
    mortar_modulus = 4700 * sqrt(mortar_strength)

    def first_moment(axis: float) -> float:
        steel = sum(layer.modulus / mortar_modulus * layer.area * (layer.depth - axis) for layer in layers)
        return WIDTH * axis**2 / 2 - steel

    low, high = 0.0, thickness
    for _ in range(200):
        axis = (low + high) / 2
        low, high = (axis, high) if first_moment(axis) < 0 else (low, axis)
    inertia = WIDTH * axis**3 / 3
    inertia += sum(layer.modulus / mortar_modulus * layer.area * (layer.depth - axis) ** 2 for layer in layers)
    outer = max(layers, key=lambda layer: layer.depth)
    return steel_stress * inertia / (outer.modulus / mortar_modulus * (outer.depth - axis)) / 1e6, axis


def uncracked_bending_stress(moment: float, thickness: float) -> float:
    """Bending stress at the face of a section that is not cracked: 6 M / (b t^2).

    Args:
        moment: [kN.m per metre].
        thickness: [mm].

    Returns:
        [MPa].

    Example:
        >>> round(uncracked_bending_stress(3.4, 50), 1)
        8.2
    """
    return 6 * moment * 1e6 / (WIDTH * thickness**2)


def uncracked_ring_stress(tension: float, thickness: float, steel: float, modular_ratio: float) -> float:
    """Tension in the mortar of a wall that is not cracked: T / (1000 t + (m - 1) A).

    The step stands in all the worked reinforced-concrete tanks that were read.

    Args:
        tension: ring tension [kN per metre of height].
        thickness: [mm].
        steel: hoop steel [mm2 per metre].
        modular_ratio: steel modulus / mortar modulus [-].

    Returns:
        [MPa].
    """
    return tension * 1000 / (WIDTH * thickness + (modular_ratio - 1) * steel)


def _stress(layer: SteelLayer, axis: float) -> float:
    strain = CRUSHING_STRAIN * (layer.depth - axis) / axis
    return max(-layer.yield_stress, min(layer.yield_stress, layer.modulus * strain))


def _refuse(thickness: float, layers: Sequence[SteelLayer]) -> None:
    if not layers or not all(0 < layer.depth < thickness and layer.area > 0 for layer in layers):
        raise OutOfRangeError("a section needs steel that lies inside it; ask a licensed engineer")
