"""Mortar: from the volume in the wall to bags, boxes of sand and litres of water.

Cement and sand shrink together when they are mixed: one box and two and a half boxes do not make three and a half. The
factor between dry parts and wet mortar is a convention of the trade (1.27 to 1.33 stand in print), not physics; loss on
the way is added apart and never hidden in it. Damp sand is loose and takes more room: measure the bulking, give more.
"""

from generator.calculations._book import BOOK
from generator.formula import Constant, common_practice, derived, published, whole_down, whole_up

PERCENT = Constant(100, "%", derived("parts of a hundred"))
CEMENT_LOOSE_DENSITY = Constant(
    1440, "kg/m**3", published("plaster specification note (as IS 1661): 1440 kg/m3 for volume ratios")
)
BAG = Constant(50, "kg/bag", common_practice("cement is sold in bags of 50 kg"))
WATER_DENSITY = Constant(1, "kg/L", derived("1 L of water is 1 kg"))

BOOK.given(
    "sand_parts",
    symbol="p",
    unit="",
    low=1.5,
    high=3,
    step=0.5,
    source=published("Indian training manual, appendix II: 1 : 2 to 1 : 3 by volume for ferrocement"),
)
BOOK.given(
    "dry_volume_factor",
    symbol="f",
    unit="",
    low=1.15,
    high=1.55,
    step=0.01,
    source=common_practice(
        "a convention, not physics: 1.27, 1.30 and 1.33 stand in print for mortar; measure your own sand"
    ),
)
BOOK.given(
    "mortar_waste",
    symbol="w",
    unit="%",
    low=0,
    high=20,
    step=1,
    source=common_practice("mortar that falls, stays in the pan or sets too early"),
)
BOOK.given(
    "sand_bulking",
    symbol="b",
    unit="%",
    low=0,
    high=45,
    step=1,
    source=published("civil laboratory pages on IS 2386-3: 20 to 40 % at 5 to 8 % moisture"),
)
BOOK.given(
    "water_cement_ratio",
    symbol="x_w",
    unit="",
    low=0.35,
    high=0.5,
    step=0.01,
    source=published("Indian training manual, appendix II: 0.40, up to 0.45 in the field"),
)


@BOOK.quantity(
    symbol="V_d",
    unit="m**3",
    places=3,
    low=0.02,
    high=8.6,
    source=common_practice("dry-volume factor, a convention; loss is added apart from it"),
)
def mortar_dry_volume(wall_mortar_volume: float, mortar_waste: float, dry_volume_factor: float) -> float:
    """Loose dry parts, cement and sand together, for the wall and what is lost on the way.

    Args:
        wall_mortar_volume: mortar in the finished wall [m**3], 0.02 to 4.6.
        mortar_waste: mortar that is lost [%], 0 to 20.
        dry_volume_factor: dry parts for one part of wet mortar [-], 1.15 to 1.55.

    Returns:
        Volume [m**3], 0.02 to 8.6.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(mortar_dry_volume(wall_mortar_volume=1, mortar_waste=0, dry_volume_factor=1.33), 3)
        '1.330'
    """
    return wall_mortar_volume * (1 + mortar_waste / PERCENT) * dry_volume_factor


@BOOK.quantity(symbol="V_e", unit="m**3", places=3, low=0.005, high=3.5, source=derived("one part of all the parts"))
def cement_volume(mortar_dry_volume: float, sand_parts: float) -> float:
    """Loose cement: one part of all the parts.

    Args:
        mortar_dry_volume: cement and sand together [m**3], 0.02 to 8.6.
        sand_parts: parts of sand for one part of cement [-], 1.5 to 3.

    Returns:
        Volume [m**3], 0.005 to 3.5.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(cement_volume(mortar_dry_volume=1.33, sand_parts=2.5), 3)
        '0.380'
    """
    return mortar_dry_volume / (1 + sand_parts)


@BOOK.quantity(
    symbol="M_c", unit="kg", places=1, low=7, high=5000, source=derived("volume times the density of loose cement")
)
def cement_mass(cement_volume: float) -> float:
    """Cement by weight.

    Args:
        cement_volume: loose cement [m**3], 0.005 to 3.5.

    Returns:
        Mass [kg], 7 to 5000.

    Raises:
        OutOfRangeError: the volume is outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(cement_mass(cement_volume=0.266), 1)
        '383.0'
    """
    return cement_volume * CEMENT_LOOSE_DENSITY


@BOOK.quantity(symbol="n_c", unit="bag", places=0, low=1, high=100, source=derived("whole bags, rounded up"))
def cement_bags(cement_mass: float) -> float:
    """Bags of cement to buy: whole bags, rounded up.

    Args:
        cement_mass: cement by weight [kg], 7 to 5000.

    Returns:
        Number of bags [bag], 1 to 100.

    Raises:
        OutOfRangeError: the mass is outside its range.

    Example:
        >>> cement_bags(cement_mass=383.0)
        8.0
    """
    return whole_up(cement_mass / BAG)


@BOOK.quantity(
    symbol="V_s", unit="m**3", places=2, low=0.01, high=6.5, source=derived("parts of sand to one of cement")
)
def sand_volume_dry(cement_volume: float, sand_parts: float) -> float:
    """Sand, measured dry.

    Args:
        cement_volume: loose cement [m**3], 0.005 to 3.5.
        sand_parts: parts of sand for one part of cement [-], 1.5 to 3.

    Returns:
        Volume [m**3], 0.01 to 6.5.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(sand_volume_dry(cement_volume=0.38, sand_parts=2.5), 2)
        '0.95'
    """
    return cement_volume * sand_parts


@BOOK.quantity(
    symbol="V_m", unit="m**3", places=2, low=0.01, high=9.5, source=published("civil laboratory pages on IS 2386-3")
)
def sand_volume_damp(sand_volume_dry: float, sand_bulking: float) -> float:
    """Sand, measured damp: it is loose and takes more room, so more of it must be given.

    Args:
        sand_volume_dry: sand measured dry [m**3], 0.01 to 6.5.
        sand_bulking: how much more room damp sand takes [%], 0 to 45.

    Returns:
        Volume [m**3], 0.01 to 9.5.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(sand_volume_damp(sand_volume_dry=1.0, sand_bulking=25), 2)
        '1.25'
    """
    return sand_volume_dry * (1 + sand_bulking / PERCENT)


@BOOK.quantity(symbol="W", unit="L", places=0, low=2, high=2500, source=derived("water by the weight of cement"))
def mixing_water(cement_mass: float, water_cement_ratio: float) -> float:
    """Water for mixing, the water in the damp sand counted in.

    Args:
        cement_mass: cement by weight [kg], 7 to 5000.
        water_cement_ratio: water over cement by weight [-], 0.35 to 0.5.

    Returns:
        Water [L], 2 to 2500.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(mixing_water(cement_mass=50, water_cement_ratio=0.4), 0)
        '20'
    """
    return cement_mass * water_cement_ratio / WATER_DENSITY


@BOOK.misconception(of="cement_volume")
def ratio_read_as_one_in(mortar_dry_volume: float, sand_parts: float) -> float:
    """1 : 2.5 was read as one part in two and a half."""
    return mortar_dry_volume / sand_parts


@BOOK.misconception(of="mortar_dry_volume")
def boxes_thought_to_add_up(wall_mortar_volume: float, mortar_waste: float) -> float:
    """Dry boxes were thought to make as much mortar as they fill."""
    return wall_mortar_volume * (1 + mortar_waste / PERCENT)


@BOOK.misconception(of="cement_bags")
def bags_rounded_down(cement_mass: float) -> float:
    """The part of a bag that was left over was forgotten."""
    return whole_down(cement_mass / BAG)


@BOOK.misconception(of="sand_volume_damp")
def damp_sand_taken_as_dry(sand_volume_dry: float) -> float:
    """Damp sand was measured as if it were dry."""
    return sand_volume_dry


@BOOK.misconception(of="sand_volume_damp")
def bulking_taken_off(sand_volume_dry: float, sand_bulking: float) -> float:
    """Less sand was given because it is damp, and not more."""
    return sand_volume_dry * (1 - sand_bulking / PERCENT)


@BOOK.misconception(of="sand_bulking")
def bulking_divided_by_damp_height(sand_bulking: float) -> float:
    """What the sand sank was divided by its damp height, and not by its flooded height."""
    return PERCENT * sand_bulking / (PERCENT + sand_bulking)


@BOOK.misconception(of="mortar_dry_volume")
def loss_forgotten(wall_mortar_volume: float, dry_volume_factor: float) -> float:
    """Nothing was added for mortar that falls or sets too early."""
    return wall_mortar_volume * dry_volume_factor
