"""Props under a wet roof: how many, how much each one bears, what its foot does to the floor, and what comes out again.

Safety: nobody stands inside while a roof is loaded, props are braced both ways, and they come out only after the days
that the roof needs. Everything that goes in under a roof must fit out through the manhole.
"""

from math import atan2, ceil, cos, floor, hypot, pi, sin

from generator.calculations._book import BOOK
from generator.calculations.ring_strength import ONE_METRE
from generator.calculations.roof import MORTAR_WEIGHT
from generator.calculations.setting_out import MILLIMETRES_IN_METRE
from generator.formula import Constant, OutOfRangeError, common_practice, derived, whole_down, whole_up

FORM_LOAD = Constant(0.3, "kN/m**2", common_practice("boards and joists"))
CREW_LOAD = Constant(1.5, "kN/m**2", common_practice("people and heaps of mortar while pouring"))
WATER_DENSITY = Constant(1000, "kg/m**3", derived("a cubic metre of water is a tonne"))
MORTAR_DENSITY = Constant(2400, "kg/m**3", common_practice("wet mortar or concrete with its steel"))

BOOK.given(
    "prop_spacing",
    symbol="s_rp",
    unit="m",
    low=0.5,
    high=1.2,
    step=0.05,
    source=common_practice("at most 1 m both ways is printed; closer for thick roofs"),
)

BOOK.given(
    "sole_plate_side",
    symbol="b_rp",
    unit="m",
    low=0.1,
    high=0.6,
    step=0.05,
    source=common_practice("boards under the props' feet"),
)


@BOOK.quantity(
    symbol="P_rp",
    unit="kN",
    places=2,
    low=0.6,
    high=6.2,
    source=derived("wet roof, formwork 0.3 and people 1.5 kN/m2 over the square that a prop serves"),
)
def prop_load(roof_thickness: float, prop_spacing: float) -> float:
    """Load on one prop while the roof is poured.

    Args:
        roof_thickness: thickness of the roof [mm], 30 to 100.
        prop_spacing: distance between props, both ways [m], 0.5 to 1.2.

    Returns:
        Load [kN], 0.6 to 6.2.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(prop_load(roof_thickness=45, prop_spacing=0.8), 2)
        '1.84'
    """
    return (MORTAR_WEIGHT * roof_thickness / MILLIMETRES_IN_METRE + FORM_LOAD + CREW_LOAD) * prop_spacing**2


@BOOK.quantity(
    symbol="n_rp",
    unit="",
    places=0,
    low=1,
    high=204,
    source=derived("floor / the square that a prop serves, rounded up"),
)
def prop_count(floor_area: float, prop_spacing: float) -> float:
    """Props under the roof, about; a real grid may need a few more at the wall.

    Args:
        floor_area: area of the floor [m**2], 0.25 to 51.
        prop_spacing: distance between props, both ways [m], 0.5 to 1.2.

    Returns:
        Number [-], 1 to 204.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> prop_count(floor_area=8.04, prop_spacing=0.8)
        13.0
    """
    return whole_up(floor_area / prop_spacing**2)


@BOOK.quantity(symbol="f_rp", unit="kN/m**2", places=1, low=1.6, high=620, source=derived("load / area of the board"))
def sole_pressure(prop_load: float, sole_plate_side: float) -> float:
    """Pressure of a prop's foot on the finished floor.

    Args:
        prop_load: load on one prop [kN], 0.6 to 6.2.
        sole_plate_side: side of the board under a prop [m], 0.1 to 0.6.

    Returns:
        Pressure [kN/m**2], 1.6 to 620.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(sole_pressure(prop_load=1.84, sole_plate_side=0.3), 1)
        '20.4'
    """
    return prop_load / sole_plate_side**2


@BOOK.quantity(symbol="M_rp", unit="kg", places=1, low=17, high=12300, source=derived("floor x thickness x 2400 kg/m3"))
def roof_wet_mass(floor_area: float, roof_thickness: float) -> float:
    """Mass of the wet roof that the props carry.

    Args:
        floor_area: area of the floor [m**2], 0.25 to 51.
        roof_thickness: thickness of the roof [mm], 30 to 100.

    Returns:
        Mass [kg], 17 to 12300.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(roof_wet_mass(floor_area=8.04, roof_thickness=45), 1)
        '868.3'
    """
    return floor_area * roof_thickness / MILLIMETRES_IN_METRE * MORTAR_DENSITY


def prop_grid(inside_diameter: float, spacing: float, clear: float = 0.1) -> tuple[tuple[float, float], ...]:
    """Places of the props on a square grid round the middle of the floor.

    Args:
        inside_diameter: [m].
        spacing: both ways [m].
        clear: least distance from the wall to a prop's middle [m].

    Returns:
        Places (east, north) [m] from the middle, row by row.

    Raises:
        OutOfRangeError: a size that is not above 0.

    Example:
        >>> len(prop_grid(2.0, 0.8))
        5
    """
    if not (inside_diameter > 0 and spacing > 0 and 0 <= clear < inside_diameter / 2):
        raise OutOfRangeError("a grid of props needs a floor and a spacing above 0; ask a licensed engineer")
    reach = inside_diameter / 2 - clear
    steps = floor(reach / spacing + 1e-9)
    lines = [step * spacing for step in range(-steps, steps + 1)]
    return tuple((east, north) for north in lines for east in lines if hypot(east, north) <= reach + 1e-9)


def bare_pole_pressure(prop_load: float, pole: float) -> float:
    """Pressure under a round pole without a board [kN/m2].

    Args:
        prop_load: [kN].
        pole: thickness of the pole [m], above 0.

    Example:
        >>> round(bare_pole_pressure(3.0, 0.08), -1)
        600.0
    """
    return prop_load / (pi * pole**2 / 4)


def longest_board_out(
    clear_height: float, reach: float, manhole: float, roof_thickness: float, board_thickness: float
) -> float:
    """Longest stiff board that can be taken out through a manhole in a flat roof, end first on a slant.

    The board lies from the floor up through the hole. It must pass the hole's two edges, and its whole length must
    have found room below the roof, so a flat slant is better, and the roof's own thickness limits how flat it can be.

    Args:
        clear_height: floor to the roof's underside [m].
        reach: from the hole to the far wall, on the floor [m].
        manhole: clear width of the hole [m].
        roof_thickness: [mm].
        board_thickness: [mm].

    Returns:
        Length [m].

    Raises:
        OutOfRangeError: a size that is not above 0, or a board too thick for the hole.

    Example:
        >>> round(longest_board_out(1.8, 1.6, 0.6, 50, 38), 2)
        2.41
    """
    if not min(clear_height, reach, manhole, roof_thickness, board_thickness) > 0 or board_thickness >= manhole * 1000:
        raise OutOfRangeError("no such board passes this manhole; ask a licensed engineer")
    flattest = pi / 2
    for step in range(1, ceil(pi / 2 * 1000)):
        slant = step / 1000
        if manhole * sin(slant) - roof_thickness / 1000 * cos(slant) >= board_thickness / 1000:
            flattest = slant
            break
    slant = max(flattest, atan2(clear_height, reach))
    return clear_height / sin(slant)


@BOOK.misconception(of="prop_load")
def prop_load_by_spacing_once(roof_thickness: float, prop_spacing: float) -> float:
    """The spacing was multiplied once, as if a prop served a strip of a metre."""
    return (MORTAR_WEIGHT * roof_thickness / MILLIMETRES_IN_METRE + FORM_LOAD + CREW_LOAD) * prop_spacing * ONE_METRE


@BOOK.misconception(of="prop_load")
def crew_forgotten_on_the_props(roof_thickness: float, prop_spacing: float) -> float:
    """Only the wet mortar was counted."""
    return MORTAR_WEIGHT * roof_thickness / MILLIMETRES_IN_METRE * prop_spacing**2


@BOOK.misconception(of="prop_count")
def props_by_spacing_once(floor_area: float, prop_spacing: float) -> float:
    """The floor was divided by the spacing and not by its square."""
    return whole_up(floor_area / (prop_spacing * ONE_METRE))


@BOOK.misconception(of="prop_count")
def props_rounded_down(floor_area: float, prop_spacing: float) -> float:
    """The part of a prop that was left over was forgotten."""
    return whole_down(floor_area / prop_spacing**2)


@BOOK.misconception(of="sole_pressure")
def sole_by_side_once(prop_load: float, sole_plate_side: float) -> float:
    """The load was divided by the side and not by the area."""
    return prop_load / (sole_plate_side * ONE_METRE)


@BOOK.misconception(of="sole_pressure")
def sole_shared_by_its_edge(prop_load: float, sole_plate_side: float) -> float:
    """The load was shared along the four edges of the board and not over its face."""
    return prop_load / (4 * sole_plate_side * ONE_METRE)


@BOOK.misconception(of="roof_wet_mass")
def wet_roof_weighed_as_water(floor_area: float, roof_thickness: float) -> float:
    """Wet mortar was thought as heavy as water."""
    return floor_area * roof_thickness / MILLIMETRES_IN_METRE * WATER_DENSITY
