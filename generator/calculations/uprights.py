"""Uprights: how long angles and bars are with their feet, what the frame's steel weighs, and the wire that ties it.

An upright starts in the base, not on it: the foot is what holds it while the wall is still only a cage. Caution: bar
ends stand at the height of eyes and bellies; bend, cap or flag each one on the day it is set, and stay the frame from
outside until its hoops are tied.
"""

from generator.calculations._book import BOOK
from generator.formula import Constant, common_practice, derived, published

STEEL_MASS = Constant(0.00785, "kg/(m*mm**2)", derived("a metre of steel with 1 mm2 of cut face at 7850 kg/m3"))
TYING_WIRE_METRE = Constant(0.0092, "kg/m", derived("wire of 1.22 mm, d x d / 162"))
WIRE_AT_CROSSING = Constant(
    0.3, "m", common_practice("wire of one tie of hoop to upright, one and a half turns and tails")
)
WIRE_AT_MESH_TIE = Constant(0.2, "m", common_practice("wire of one tie of mesh to steel"))
MESH_TIES = Constant(25, "1/m**2", common_practice("mesh is tied every 200 mm both ways"))
WIRE_OF_HEAVY_WORK = Constant(
    0.011,
    "",
    published("four public quantity pages: binding wire 0.9 to 1.3 kg for 100 kg of bars, for concrete frames"),
)

BOOK.given(
    "angle_thickness",
    symbol="t_n",
    unit="mm",
    low=3,
    high=8,
    step=1,
    source=common_practice("equal angles that a village shop sells"),
)
BOOK.given(
    "angle_foot",
    symbol="f_n",
    unit="m",
    low=0.05,
    high=0.3,
    step=0.01,
    source=common_practice("angle that stands in the concrete of the base; it never goes through into the ground"),
)
BOOK.given(
    "bar_foot",
    symbol="f_nb",
    unit="m",
    low=0.1,
    high=0.8,
    step=0.05,
    source=common_practice("bar that is hooked or turned into the base"),
)
BOOK.given(
    "bar_into_roof",
    symbol="r_nb",
    unit="m",
    low=0,
    high=0.5,
    step=0.05,
    source=common_practice("bar that is bent into the roof; nothing for a roof that is set on later or for none"),
)


@BOOK.quantity(symbol="L_na", unit="m", places=2, low=0.4, high=2.8, source=derived("the wall and the foot"))
def angle_length(wall_height: float, angle_foot: float) -> float:
    """Length to cut for one angle: the wall and what stands in the base.

    Args:
        wall_height: height of the wall [m], 0.4 to 2.4.
        angle_foot: angle in the concrete of the base [m], 0.05 to 0.3.

    Returns:
        Length [m], 0.4 to 2.8.

    Raises:
        OutOfRangeError: a given outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(angle_length(wall_height=1.65, angle_foot=0.09), 2)
        '1.74'
    """
    return wall_height + angle_foot


@BOOK.quantity(
    symbol="w_na",
    unit="kg/m",
    places=2,
    low=0.8,
    high=8,
    source=derived("two legs, the corner once; rounded edges left out"),
)
def angle_mass_per_metre(angle_leg: float, angle_thickness: float) -> float:
    """Mass of a metre of equal angle: two legs, their corner counted once.

    Args:
        angle_leg: leg of the angle [mm], 20 to 65.
        angle_thickness: thickness of the leg [mm], 3 to 8.

    Returns:
        Mass [kg/m], 0.8 to 8.

    Raises:
        OutOfRangeError: a given outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(angle_mass_per_metre(angle_leg=30, angle_thickness=3), 2)
        '1.34'
    """
    return (2 * angle_leg - angle_thickness) * angle_thickness * STEEL_MASS


@BOOK.quantity(symbol="T_na", unit="m", places=1, low=0.4, high=240, source=derived("every angle has one length"))
def angle_total_length(angle_count: float, angle_length: float) -> float:
    """All the angles laid end to end; left-over ends are not counted.

    Args:
        angle_count: angles on the ring [-], 4 to 86.
        angle_length: length of one [m], 0.4 to 2.8.

    Returns:
        Length [m], 0.4 to 240.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(angle_total_length(angle_count=15, angle_length=1.74), 1)
        '26.1'
    """
    return angle_count * angle_length


@BOOK.quantity(symbol="M_na", unit="kg", places=1, low=0.3, high=1920, source=derived("length times mass of a metre"))
def angle_mass(angle_total_length: float, angle_mass_per_metre: float) -> float:
    """Mass of all the angles.

    Args:
        angle_total_length: all angles end to end [m], 0.4 to 240.
        angle_mass_per_metre: mass of a metre [kg/m], 0.8 to 8.

    Returns:
        Mass [kg], 0.3 to 1920.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(angle_mass(angle_total_length=26.1, angle_mass_per_metre=1.34), 1)
        '35.0'
    """
    return angle_total_length * angle_mass_per_metre


@BOOK.quantity(
    symbol="L_nb", unit="m", places=2, low=0.5, high=3.7, source=derived("the foot, the wall and the roof's share")
)
def bar_length(wall_height: float, bar_foot: float, bar_into_roof: float) -> float:
    """Length to cut for one upright bar: its foot in the base, the wall, and what is bent into the roof.

    Args:
        wall_height: height of the wall [m], 0.4 to 2.4.
        bar_foot: bar in the base [m], 0.1 to 0.8.
        bar_into_roof: bar in the roof [m], 0 to 0.5.

    Returns:
        Length [m], 0.5 to 3.7.

    Raises:
        OutOfRangeError: a given outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(bar_length(wall_height=1.65, bar_foot=0.35, bar_into_roof=0.25), 2)
        '2.25'
    """
    return bar_foot + wall_height + bar_into_roof


@BOOK.quantity(symbol="T_nb", unit="m", places=1, low=0, high=1300, source=derived("every bar has one length"))
def bar_total_length(bar_count: float, bar_length: float) -> float:
    """All the upright bars laid end to end; left-over ends are not counted.

    Args:
        bar_count: upright bars [-], 0 to 350.
        bar_length: length of one [m], 0.5 to 3.7.

    Returns:
        Length [m], 0 to 1300.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(bar_total_length(bar_count=30, bar_length=2.25), 1)
        '67.5'
    """
    return bar_count * bar_length


@BOOK.quantity(symbol="M_nb", unit="kg", places=1, low=0, high=2080, source=derived("length times mass of a metre"))
def bar_mass(bar_total_length: float, bar_mass_per_metre: float) -> float:
    """Mass of all the upright bars.

    Args:
        bar_total_length: all bars end to end [m], 0 to 1300.
        bar_mass_per_metre: mass of a metre [kg/m], 0.09 to 1.6.

    Returns:
        Mass [kg], 0 to 2080.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(bar_mass(bar_total_length=67.5, bar_mass_per_metre=0.395), 1)
        '26.7'
    """
    return bar_total_length * bar_mass_per_metre


@BOOK.quantity(symbol="M_n", unit="kg", places=1, low=0.6, high=7000, source=derived("angles, bars and hoops together"))
def steel_mass(angle_mass: float, bar_mass: float, hoop_mass: float) -> float:
    """Mass of the wall's steel without mesh and tying wire: what has to be carried up, and what is paid by the kilo.

    Args:
        angle_mass: all angles [kg], 0.3 to 1920.
        bar_mass: all upright bars [kg], 0 to 2080.
        hoop_mass: all hoops [kg], 0.3 to 3000.

    Returns:
        Mass [kg], 0.6 to 7000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(steel_mass(angle_mass=35.0, bar_mass=26.7, hoop_mass=57.7), 1)
        '119.4'
    """
    return angle_mass + bar_mass + hoop_mass


@BOOK.quantity(
    symbol="N_n", unit="", places=0, low=3, high=22000, source=derived("every upright crosses every hoop once")
)
def tie_count(angle_count: float, bar_count: float, hoop_count: float) -> float:
    """Places where a hoop crosses an angle or a bar.

    Every crossing is tied at foot, top, laps and pipes; elsewhere at least every second one. Wire for all is counted.

    Args:
        angle_count: angles on the ring [-], 4 to 86.
        bar_count: upright bars [-], 0 to 350.
        hoop_count: hoops in the wall [-], 3 to 49.

    Returns:
        Number of crossings [-], 3 to 22000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> tie_count(angle_count=15, bar_count=30, hoop_count=13)
        585
    """
    return (angle_count + bar_count) * hoop_count


@BOOK.quantity(
    symbol="M_nw",
    unit="kg",
    places=1,
    low=0,
    high=130,
    source=common_practice("by crossing and by area of mesh, wire of 1.22 mm; weigh what your first tank takes"),
)
def tying_wire_mass(tie_count: float, mesh_area: float) -> float:
    """Tying wire for the wall: for every crossing, and for every square metre of every layer of mesh.

    Crews differ by half and more: weigh the roll before and after the first tank, and buy by that.

    Args:
        tie_count: crossings of hoops and uprights [-], 3 to 22000.
        mesh_area: mesh in all layers of the wall [m**2], 1.4 to 1290.

    Returns:
        Mass [kg], 0 to 130.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(tying_wire_mass(tie_count=585, mesh_area=69.1), 1)
        '4.8'
    """
    return (tie_count * WIRE_AT_CROSSING + mesh_area * MESH_TIES * WIRE_AT_MESH_TIE) * TYING_WIRE_METRE


@BOOK.misconception(of="angle_length")
def angle_foot_forgotten(wall_height: float) -> float:
    """The angle was cut to the height of the wall."""
    return wall_height


@BOOK.misconception(of="angle_mass_per_metre")
def angle_weighed_as_flat_bar(angle_leg: float, angle_thickness: float) -> float:
    """One leg was weighed, as of a flat bar."""
    return angle_leg * angle_thickness * STEEL_MASS


@BOOK.misconception(of="angle_mass_per_metre")
def angle_corner_counted_twice(angle_leg: float, angle_thickness: float) -> float:
    """Both legs were counted whole, and their corner twice."""
    return 2 * angle_leg * angle_thickness * STEEL_MASS


@BOOK.misconception(of="angle_mass")
def angles_weighed_as_bars(angle_total_length: float, bar_mass_per_metre: float) -> float:
    """The angles were weighed like the round bars beside them."""
    return angle_total_length * bar_mass_per_metre


@BOOK.misconception(of="bar_length")
def bar_foot_forgotten(wall_height: float, bar_into_roof: float) -> float:
    """The bar was cut to stand on the base."""
    return wall_height + bar_into_roof


@BOOK.misconception(of="bar_total_length")
def bars_of_one_gap_only(bars_between: float, bar_length: float) -> float:
    """The bars between two angles were taken for all bars of the ring."""
    return bars_between * bar_length


@BOOK.misconception(of="bar_mass")
def bars_weighed_as_hoops(bar_total_length: float, hoop_mass_per_metre: float) -> float:
    """The bars were weighed with the hoops' mass of a metre."""
    return bar_total_length * hoop_mass_per_metre


@BOOK.misconception(of="steel_mass")
def hoops_left_out_of_the_steel(angle_mass: float, bar_mass: float) -> float:
    """Only what stands upright was counted."""
    return angle_mass + bar_mass


@BOOK.misconception(of="tie_count")
def ties_on_bars_only(bar_count: float, hoop_count: float) -> float:
    """The crossings at the angles were left out."""
    return bar_count * hoop_count


@BOOK.misconception(of="tie_count")
def ties_added_not_multiplied(angle_count: float, bar_count: float, hoop_count: float) -> float:
    """Uprights and hoops were added, though each crosses all the others."""
    return angle_count + bar_count + hoop_count


@BOOK.misconception(of="tying_wire_mass")
def wire_by_the_tonne_of_steel(steel_mass: float) -> float:
    """Wire was taken by the weight of the bars, as for a concrete house."""
    return steel_mass * WIRE_OF_HEAVY_WORK


@BOOK.misconception(of="tying_wire_mass")
def mesh_ties_forgotten(tie_count: float) -> float:
    """Wire was counted for the crossings only, and the mesh was left untied."""
    return tie_count * WIRE_AT_CROSSING * TYING_WIRE_METRE
