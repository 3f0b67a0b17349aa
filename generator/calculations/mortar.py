"""Mortar: from the volume in the wall to bags of cement, sand and water.

The way by a dry-volume factor is a convention of the trade, not physics: the factor in print runs from 1.27 to 1.33 for
mortar, and what a sand really needs runs wider. Measure a trial batch and correct the factor. Waste is kept apart from
it, and bulking of damp sand is kept apart from both.
"""

from generator.calculations._book import BOOK
from generator.calculations.conversions import WHOLE
from generator.formula import Constant, common_practice, derived, published, whole_down, whole_up

CEMENT_BULK_DENSITY = Constant(
    1440,
    "kg/m**3",
    published("plaster specification note, and many handbooks at second hand: loose cement, to turn volumes into mass"),
)
BAG_MASS = Constant(50, "kg/bag", published("site-engineering pages: a bag of cement is 50 kg; read it on your bag"))
WATER_DENSITY = Constant(1, "kg/L", derived("a litre of water is a kilogram"))

BOOK.given(
    "sand_parts", symbol="s", unit="", low=1.5, high=3, step=0.5,
    source=published("Indian training manual, Appendix II on ferrocement tanks: 1:2 to 1:3 by volume"),
)  # fmt: skip
BOOK.given(
    "dry_volume_factor", symbol="f", unit="", low=1.15, high=1.55, step=0.01,
    source=common_practice("a convention: site pages print 1.27, 1.30 and 1.33 for mortar; measure your own sand"),
)  # fmt: skip
BOOK.given(
    "mortar_waste", symbol="w", unit="%", low=0, high=20, step=1,
    source=common_practice("what falls, sticks and sets too early; 3 to 10 % where work is clean"),
)  # fmt: skip
BOOK.given(
    "sand_bulking", symbol="b", unit="%", low=0, high=40, step=1,
    source=published("laboratory pages on IS 2386 part 3: 20 to 40 % at 5 to 8 % moisture, none when dry or flooded"),
)  # fmt: skip
BOOK.given(
    "water_cement_ratio", symbol="r_w", unit="", low=0.35, high=0.5, step=0.01,
    source=published("Indian training manual, Appendix II on ferrocement tanks: 0.40, and 0.45 allowed in the field"),
)  # fmt: skip


@BOOK.quantity(
    symbol="V_d", unit="m**3", places=3, low=0.03, high=7.1,
    source=common_practice("dry-volume factor, a convention; waste is added apart from it"),
)  # fmt: skip
def mortar_dry_volume(wall_mortar_volume: float, mortar_waste: float, dry_volume_factor: float) -> float:
    """Loose, dry cement and sand together that give the mortar, waste included.

    Args:
        wall_mortar_volume: mortar in place [m**3], 0.03 to 3.8.
        mortar_waste: mortar that is lost [%], 0 to 20.
        dry_volume_factor: dry boxes for one box of mortar [-], 1.15 to 1.55.

    Returns:
        Cement and sand as measured in boxes [m**3], 0.03 to 7.1.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(mortar_dry_volume(wall_mortar_volume=0.92, mortar_waste=10, dry_volume_factor=1.3), 3)
        '1.316'
    """
    return wall_mortar_volume * (1 + mortar_waste / WHOLE) * dry_volume_factor


@BOOK.quantity(
    symbol="V_k", unit="m**3", places=3, low=0.007, high=2.9, source=derived("one part of all parts: cement and sand")
)
def cement_volume(mortar_dry_volume: float, sand_parts: float) -> float:
    """Loose volume of the cement.

    Args:
        mortar_dry_volume: dry cement and sand together [m**3], 0.03 to 7.1.
        sand_parts: parts of sand to one of cement, by loose volume [-], 1.5 to 3.

    Returns:
        One part [m**3], 0.007 to 2.9.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(cement_volume(mortar_dry_volume=1.316, sand_parts=2.5), 3)
        '0.376'
    """
    return mortar_dry_volume / (1 + sand_parts)


@BOOK.quantity(
    symbol="M_k", unit="kg", places=1, low=10, high=4200, source=derived("volume times the density of loose cement")
)
def cement_mass(cement_volume: float) -> float:
    """Mass of the cement.

    Args:
        cement_volume: loose cement [m**3], 0.007 to 2.9.

    Returns:
        All the cement [kg], 10 to 4200.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(cement_mass(cement_volume=0.376), 1)
        '541.4'
    """
    return cement_volume * CEMENT_BULK_DENSITY


@BOOK.quantity(
    symbol="n_k", unit="bag", places=0, low=1, high=84, source=derived("bags of 50 kg; a begun bag is a bag to buy")
)
def cement_bags(cement_mass: float) -> float:
    """Bags of cement to buy.

    Args:
        cement_mass: all the cement [kg], 10 to 4200.

    Returns:
        Whole bags [bag], 1 to 84.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(cement_bags(cement_mass=541.4), 0)
        '11'
    """
    return whole_up(cement_mass / BAG_MASS)


@BOOK.quantity(
    symbol="V_s", unit="m**3", places=3, low=0.018, high=5.4, source=derived("parts of sand to one of cement")
)
def sand_volume_dry(cement_volume: float, sand_parts: float) -> float:
    """Loose volume of the sand, dry.

    Args:
        cement_volume: loose cement [m**3], 0.007 to 2.9.
        sand_parts: parts of sand to one of cement, by loose volume [-], 1.5 to 3.

    Returns:
        Dry sand [m**3], 0.018 to 5.4.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(sand_volume_dry(cement_volume=0.376, sand_parts=2.5), 3)
        '0.940'
    """
    return cement_volume * sand_parts


@BOOK.quantity(
    symbol="V_f", unit="m**3", places=3, low=0.018, high=7.5,
    source=published("laboratory pages on IS 2386 part 3: box for damp sand = box for dry sand x (1 + bulking)"),
)  # fmt: skip
def sand_volume_damp(sand_volume_dry: float, sand_bulking: float) -> float:
    """Loose volume of the same sand when it is damp and swollen.

    Args:
        sand_volume_dry: loose dry sand [m**3], 0.018 to 5.4.
        sand_bulking: swelling of the damp sand, over its flooded height [%], 0 to 40.

    Returns:
        Damp sand [m**3], 0.018 to 7.5.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(sand_volume_damp(sand_volume_dry=0.94, sand_bulking=25), 3)
        '1.175'
    """
    return sand_volume_dry * (1 + sand_bulking / WHOLE)


@BOOK.quantity(symbol="W", unit="L", places=1, low=4, high=2090, source=derived("water by mass of cement"))
def mixing_water(cement_mass: float, water_cement_ratio: float) -> float:
    """Water in the mortar; what damp sand already holds counts as part of it.

    Args:
        cement_mass: all the cement [kg], 10 to 4200.
        water_cement_ratio: mass of water over mass of cement [-], 0.35 to 0.5.

    Returns:
        All the water [L], 4 to 2090.

    Raises:
        OutOfRangeError: a value outside its range, or not a number; the message says the range and who to ask.

    Example:
        >>> from generator.formula import show
        >>> show(mixing_water(cement_mass=541.4, water_cement_ratio=0.4), 1)
        '216.6'
    """
    return cement_mass * water_cement_ratio / WATER_DENSITY


@BOOK.misconception(of="mortar_dry_volume")
def dry_volume_factor_forgotten(wall_mortar_volume: float, mortar_waste: float) -> float:
    """Boxes of dry cement and sand are taken to give as many boxes of mortar."""
    return wall_mortar_volume * (1 + mortar_waste / WHOLE)


@BOOK.misconception(of="mortar_dry_volume")
def waste_forgotten(wall_mortar_volume: float, dry_volume_factor: float) -> float:
    """Nothing is reckoned for what falls and sticks."""
    return wall_mortar_volume * dry_volume_factor


@BOOK.misconception(of="cement_volume")
def ratio_read_as_one_in(mortar_dry_volume: float, sand_parts: float) -> float:
    """1:2.5 is read as one in 2.5; it is one in 3.5."""
    return mortar_dry_volume / sand_parts


@BOOK.misconception(of="cement_bags")
def bags_rounded_down(cement_mass: float) -> float:
    """The begun bag is dropped."""
    return whole_down(cement_mass / BAG_MASS)


@BOOK.misconception(of="sand_bulking")
def bulking_divided_by_damp_height(sand_bulking: float) -> float:
    """The loss of height is divided by the damp height; it belongs over the flooded height."""
    return WHOLE * sand_bulking / (WHOLE + sand_bulking)


@BOOK.misconception(of="sand_volume_damp")
def damp_sand_taken_as_dry(sand_volume_dry: float) -> float:
    """Damp sand is measured in the box for dry sand."""
    return sand_volume_dry


@BOOK.misconception(of="sand_volume_damp")
def bulking_taken_off(sand_volume_dry: float, sand_bulking: float) -> float:
    """The box is made smaller for damp sand; it has to be larger."""
    return sand_volume_dry * (1 - sand_bulking / WHOLE)
