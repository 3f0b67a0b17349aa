"""Finishing: the neat cement skin on the water side, and the white wash on the outside.

Inside a drinking tank only cement or lime: no paint, no bitumen, no salt in the wash. The skin is rubbed in as a cream
while the coat is green; dry cement thrown on a wet face peels. Lime and cement burn the eyes: goggles and gloves.

References:
    .. [1] Project specification, clause on neat finish (1 kg/m2); water and sanitation pages on repairing tanks (wash).
"""

from math import pi

from generator.calculations._book import BOOK
from generator.calculations.mortar import BAG
from generator.formula import Constant, derived, from_memory, published, whole_down, whole_up

NEAT_RATE = Constant(
    1, "kg/m**2", published("project specification: neat cement finish, 1 kg/m2, rubbed in while green")
)
LIME_PARTS = Constant(
    10, "", published("water and sanitation wiki, repairing tanks: outside wash of 1 cement : 10 lime")
)

BOOK.given(
    "wash_coats",
    symbol="n_zc",
    unit="",
    low=1,
    high=3,
    step=1,
    source=derived("one coat lets the grey through; a fourth flakes"),
)
BOOK.given(
    "wash_rate",
    symbol="m_zr",
    unit="kg/m**2",
    low=0.15,
    high=0.25,
    step=0.01,
    source=from_memory("two coats on rough plaster take 0.3 to 0.5 kg/m2; brush a square metre and weigh"),
)


@BOOK.quantity(
    symbol="A_zw", unit="m**2", places=1, low=1, high=116, source=derived("outer face and the top of a flat roof")
)
def wash_area(plaster_area_outside: float, outside_diameter: float) -> float:
    """What is washed white: the outer face and the top of the roof. A light face stays cooler and cracks less.

    Args:
        plaster_area_outside: outer face of the wall [m**2], 0.8 to 62.
        outside_diameter: outer face to outer face [m], 0.6 to 8.2.

    Returns:
        Area [m**2], 1 to 116.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(wash_area(plaster_area_outside=14, outside_diameter=3.2), 1)
        '22.0'
    """
    return plaster_area_outside + pi / 4 * outside_diameter**2


@BOOK.quantity(
    symbol="M_zl",
    unit="kg",
    places=1,
    low=0.1,
    high=90,
    source=from_memory("area x coats x dry powder of a coat; that rate is recalled, so it only plans a purchase"),
)
def limewash_mass(wash_area: float, wash_coats: float, wash_rate: float) -> float:
    """Dry powder for the wash, lime and cement together.

    Args:
        wash_area: what is washed [m**2], 1 to 116.
        wash_coats: number of coats [-], 1 to 3.
        wash_rate: dry powder for one coat [kg/m**2], 0.15 to 0.25.

    Returns:
        Powder [kg], 0.1 to 90.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(limewash_mass(wash_area=22, wash_coats=2, wash_rate=0.2), 1)
        '8.8'
    """
    return wash_area * wash_coats * wash_rate


@BOOK.quantity(
    symbol="M_zc", unit="kg", places=2, low=0.01, high=8.2, source=derived("one part of eleven, taken by weight")
)
def wash_cement_mass(limewash_mass: float) -> float:
    """Cement in the wash: one part to ten of lime. Print does not say by weight or by volume; here it is by weight.

    Args:
        limewash_mass: lime and cement together [kg], 0.1 to 90.

    Returns:
        Cement [kg], 0.01 to 8.2.

    Raises:
        OutOfRangeError: the mass is outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(wash_cement_mass(limewash_mass=8.8), 2)
        '0.80'
    """
    return limewash_mass / (1 + LIME_PARTS)


@BOOK.quantity(
    symbol="A_zn",
    unit="m**2",
    places=1,
    low=1,
    high=112,
    source=derived("inner face and floor: all that water touches"),
)
def neat_area(plaster_area_inside: float, floor_area: float) -> float:
    """What gets the neat cement skin: the inner face and the floor.

    Args:
        plaster_area_inside: inner face of the wall [m**2], 0.7 to 61.
        floor_area: area of the floor [m**2], 0.25 to 51.

    Returns:
        Area [m**2], 1 to 112.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(neat_area(plaster_area_inside=13, floor_area=7), 1)
        '20.0'
    """
    return plaster_area_inside + floor_area


@BOOK.quantity(
    symbol="M_zn",
    unit="kg",
    places=1,
    low=0.9,
    high=112,
    source=published("project specification: neat cement finish, 1 kg/m2"),
)
def neat_cement_mass(neat_area: float) -> float:
    """Cement for the skin on the water side, rubbed in as a cream while the coat is green.

    Args:
        neat_area: inner face and floor [m**2], 1 to 112.

    Returns:
        Cement [kg], 0.9 to 112.

    Raises:
        OutOfRangeError: the area is outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(neat_cement_mass(neat_area=20), 1)
        '20.0'
    """
    return neat_area * NEAT_RATE


@BOOK.quantity(symbol="n_zb", unit="bag", places=0, low=1, high=3, source=derived("whole bags, rounded up"))
def neat_cement_bags(neat_cement_mass: float) -> float:
    """Bags of cement to set aside for the skin: whole bags, rounded up.

    Args:
        neat_cement_mass: cement for the skin [kg], 0.9 to 112.

    Returns:
        Number of bags [bag], 1 to 3.

    Raises:
        OutOfRangeError: the mass is outside its range.

    Example:
        >>> neat_cement_bags(neat_cement_mass=61)
        2.0
    """
    return whole_up(neat_cement_mass / BAG)


@BOOK.misconception(of="wash_area")
def roof_left_grey(plaster_area_outside: float) -> float:
    """The roof, which gets most of the sun, was left out."""
    return plaster_area_outside


@BOOK.misconception(of="limewash_mass")
def one_coat_counted(wash_area: float, wash_rate: float) -> float:
    """Powder of one coat was bought for all coats."""
    return wash_area * wash_rate


@BOOK.misconception(of="wash_cement_mass")
def wash_read_as_one_in_ten(limewash_mass: float) -> float:
    """1 : 10 was read as one part in ten."""
    return limewash_mass / LIME_PARTS


@BOOK.misconception(of="neat_area")
def floor_left_without_skin(plaster_area_inside: float) -> float:
    """The floor was forgotten."""
    return plaster_area_inside


@BOOK.misconception(of="neat_cement_mass")
def skin_on_both_faces(neat_area: float, plaster_area_outside: float) -> float:
    """The dry face was given a skin too."""
    return (neat_area + plaster_area_outside) * NEAT_RATE


@BOOK.misconception(of="neat_cement_bags")
def skin_bag_left_out(neat_cement_mass: float) -> float:
    """The part of a bag that was left over was forgotten."""
    return whole_down(neat_cement_mass / BAG)
