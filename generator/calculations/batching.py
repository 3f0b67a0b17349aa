"""One batch at the mixing place: is the sand fit, how much of everything goes in, and how much mortar comes out.

How much comes out is held to what the grains, the water and the air really fill; the dry-volume factor of the trade is
only a stand-in for that. Water that already sits in damp sand counts as mixing water. Cement goes in by the whole or
half bag, sand by a struck-off box, nothing by the shovel.

Wet mortar burns skin and eyes: waterproof gloves, no kneeling in it, clean water at hand to rinse.

References:
    .. [1] Volumes of grains, water and air add up: site pages on mix design with a worked sheet (M25).
    .. [2] Rainwater Reservoirs above Ground Structures for Roof Catchment, GTZ/GATE 1989, chapter 3: sand, mixing.
"""

from generator.calculations._book import BOOK
from generator.calculations.mortar import BAG, CEMENT_LOOSE_DENSITY, PERCENT, WATER_DENSITY
from generator.calculations.setting_out import MILLIMETRES_IN_METRE
from generator.calculations.volumes import LITRES_IN_CUBIC_METRE
from generator.formula import Constant, common_practice, derived, published, whole_down, whole_up

CEMENT_GRAIN_DENSITY = Constant(3150, "kg/m**3", published("mix-design sheets: cement grains weigh 3.15 times water"))
SAND_GRAIN_DENSITY = Constant(
    2650, "kg/m**3", published("mix-design pages: sand grains weigh 2.60 to 2.65 times water")
)
ONE_BAG = Constant(1, "bag", derived("one bag"))
BAG_READ_AS_LITRES = Constant(50, "L/bag", derived("kilograms of a bag taken for litres"))
PLANK = Constant(0.025, "m", common_practice("planks of a gauge box"))
HEAP_SLOPE = Constant(0.25, "", derived("a heap a quarter as high as the box is wide"))
SHOVEL_HEAP = Constant(1.3, "", common_practice("a shovel of damp sand carries about a third more than one of cement"))
MILLIMETRES_IN_CENTIMETRE = Constant(10, "mm/cm", derived("1 cm is 10 mm"))
MILLIMETRE_AS_PERCENT = Constant(1, "%/mm", derived("a millimetre taken for a hundredth"))

BOOK.given(
    "damp_height",
    symbol="h_od",
    unit="mm",
    low=200,
    high=215,
    step=1,
    source=published("civil laboratory pages on IS 2386-3: a jar filled to about 200 mm with damp sand"),
)
BOOK.given(
    "flooded_height",
    symbol="h_of",
    unit="mm",
    low=150,
    high=200,
    step=1,
    source=published("civil laboratory pages on IS 2386-3: 160 mm from 200 mm; sand that doesn't sink is dry"),
)
BOOK.given(
    "silt_height",
    symbol="h_os",
    unit="mm",
    low=0,
    high=15,
    step=1,
    source=published("GTZ/GATE 1989, chapter 3: layer on the sand after one hour"),
)
BOOK.given(
    "sand_height",
    symbol="h_oj",
    unit="mm",
    low=60,
    high=150,
    step=5,
    source=published("GTZ/GATE 1989, chapter 3: 100 mm of sand in the jar"),
)
BOOK.given(
    "sand_density",
    symbol="g_os",
    unit="kg/m**3",
    low=1450,
    high=1750,
    step=10,
    source=derived("holds the 1550 to 1700 kg/m3 that site pages print for loose dry sand; weigh a box of your own"),
)
BOOK.given(
    "sand_moisture",
    symbol="m_ow",
    unit="%",
    low=2,
    high=10,
    step=0.5,
    source=published("laboratory pages: damp sand holds 4 to 10 %; drier sand drinks mixing water, so wet it first"),
)
BOOK.given(
    "sand_absorption",
    symbol="m_oa",
    unit="%",
    low=0.5,
    high=2,
    step=0.1,
    source=published("mix-design sheet: 1.5 %; water inside the grains does not wet the cement"),
)
BOOK.given(
    "air_content",
    symbol="a_o",
    unit="%",
    low=1,
    high=5,
    step=0.5,
    source=published("mix-design sheets: 2 % of air stays in the mix"),
)
BOOK.given(
    "batch_bags",
    symbol="n_ob",
    unit="bag",
    low=0.5,
    high=2,
    step=0.5,
    source=common_practice("what is mixed by hand at one go; cement goes by the bag, for its loose weight varies"),
)
BOOK.given(
    "box_length",
    symbol="L_ox",
    unit="m",
    low=0.2,
    high=0.45,
    step=0.005,
    source=published("site pages: gauge boxes of 0.25 to 0.40 m, inside; larger ones can't be lifted full"),
)
BOOK.given(
    "box_width",
    symbol="w_ox",
    unit="m",
    low=0.2,
    high=0.45,
    step=0.005,
    source=published("site pages: gauge boxes of 0.25 to 0.40 m, inside; narrow is better than wide"),
)
BOOK.given(
    "box_depth",
    symbol="h_ox",
    unit="m",
    low=0.2,
    high=0.45,
    step=0.005,
    source=published("site pages: gauge boxes of 0.25 to 0.40 m, inside; deep is better than shallow"),
)
BOOK.given(
    "admixture_dose",
    symbol="p_o",
    unit="%",
    low=0.1,
    high=2,
    step=0.1,
    source=common_practice("the maker's sheet decides; only what is approved for drinking water, without chloride"),
)
BOOK.given(
    "coat_thickness",
    symbol="t_oc",
    unit="mm",
    low=6,
    high=40,
    step=1,
    source=common_practice("one coat, from a skim over the mesh to half of a thick wall"),
)


@BOOK.quantity(
    symbol="b_ob",
    unit="%",
    places=1,
    low=0,
    high=45,
    source=published("civil laboratory pages on IS 2386-3: (damp - flooded) / flooded"),
)
def measured_bulking(damp_height: float, flooded_height: float) -> float:
    """How much more room the damp sand takes, from a jar: what it sank, over its flooded height.

    Args:
        damp_height: height of the damp sand in the jar [mm], 200 to 215.
        flooded_height: height after water was poured in and stirred [mm], 150 to 200.

    Returns:
        Bulking [%], 0 to 45.

    Raises:
        OutOfRangeError: a height outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(measured_bulking(damp_height=200, flooded_height=160), 1)
        '25.0'
    """
    return PERCENT * (damp_height - flooded_height) / flooded_height


@BOOK.quantity(
    symbol="s_oj",
    unit="%",
    places=1,
    low=0,
    high=25,
    source=published("GTZ/GATE 1989, chapter 3: silt layer against the depth of the sand, at most 6 %"),
)
def silt_share(silt_height: float, sand_height: float) -> float:
    """Silt and clay that settle on the sand in a jar, against the depth of the sand. Over 6 %: wash the sand.

    Args:
        silt_height: layer of silt after an hour [mm], 0 to 15.
        sand_height: clean sand below it [mm], 60 to 150.

    Returns:
        Share [%], 0 to 25.

    Raises:
        OutOfRangeError: a height outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(silt_share(silt_height=5, sand_height=80), 1)
        '6.3'
    """
    return PERCENT * silt_height / sand_height


@BOOK.quantity(
    symbol="r_os", unit="", places=2, low=1.5, high=3.7, source=derived("parts by volume x density over density")
)
def sand_mass_ratio(sand_parts: float, sand_density: float) -> float:
    """Sand over cement by weight, for parts by volume.

    Args:
        sand_parts: parts of sand for one part of cement [-], 1.5 to 3.
        sand_density: loose dry sand [kg/m**3], 1450 to 1750.

    Returns:
        Ratio by weight [-], 1.5 to 3.7.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(sand_mass_ratio(sand_parts=2, sand_density=1600), 2)
        '2.22'
    """
    return sand_parts * sand_density / CEMENT_LOOSE_DENSITY


@BOOK.quantity(
    symbol="V_oa",
    unit="m**3/bag",
    places=4,
    low=0.06,
    high=0.12,
    source=published("site pages on absolute volumes: grains, water and air add up"),
)
def mortar_absolute_volume(sand_mass_ratio: float, water_cement_ratio: float, air_content: float) -> float:
    """Mortar that one bag really makes: what grains and water fill, and the air that stays in.

    Args:
        sand_mass_ratio: sand over cement by weight [-], 1.5 to 3.7.
        water_cement_ratio: water over cement by weight [-], 0.35 to 0.5.
        air_content: air that stays in the mortar [%], 1 to 5.

    Returns:
        Mortar from one bag [m**3/bag], 0.06 to 0.12.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(mortar_absolute_volume(sand_mass_ratio=2.22, water_cement_ratio=0.45, air_content=2), 4)
        '0.0819'
    """
    return (
        BAG
        * (
            1 / CEMENT_GRAIN_DENSITY
            + sand_mass_ratio / SAND_GRAIN_DENSITY
            + water_cement_ratio / (WATER_DENSITY * LITRES_IN_CUBIC_METRE)
        )
        / (1 - air_content / PERCENT)
    )


@BOOK.quantity(
    symbol="f_o", unit="", places=2, low=1, high=1.6, source=derived("loose parts over the mortar that they make")
)
def true_dry_factor(sand_parts: float, mortar_absolute_volume: float) -> float:
    """Loose dry parts for one part of mortar, worked out for this sand and this water.

    Args:
        sand_parts: parts of sand for one part of cement [-], 1.5 to 3.
        mortar_absolute_volume: mortar that one bag really makes [m**3/bag], 0.06 to 0.12.

    Returns:
        Factor [-], 1 to 1.6.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(true_dry_factor(sand_parts=2, mortar_absolute_volume=0.0819), 2)
        '1.27'
    """
    return BAG / CEMENT_LOOSE_DENSITY * (1 + sand_parts) / mortar_absolute_volume


@BOOK.quantity(
    symbol="q_oc", unit="kg/m**3", places=0, low=400, high=850, source=derived("one bag over the mortar that it makes")
)
def cement_per_cubic_metre(mortar_absolute_volume: float) -> float:
    """Cement in a cubic metre of mortar, by what the parts really fill.

    Args:
        mortar_absolute_volume: mortar that one bag really makes [m**3/bag], 0.06 to 0.12.

    Returns:
        Cement [kg/m**3], 400 to 850.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(cement_per_cubic_metre(mortar_absolute_volume=0.08), 0)
        '625'
    """
    return BAG / mortar_absolute_volume


@BOOK.quantity(symbol="V_os", unit="L", places=1, low=25, high=210, source=derived("parts of sand to the bags"))
def batch_sand_dry(batch_bags: float, sand_parts: float) -> float:
    """Sand for one batch, measured dry.

    Args:
        batch_bags: cement in one batch [bag], 0.5 to 2.
        sand_parts: parts of sand for one part of cement [-], 1.5 to 3.

    Returns:
        Sand [L], 25 to 210.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(batch_sand_dry(batch_bags=1, sand_parts=2), 1)
        '69.4'
    """
    return batch_bags * BAG / CEMENT_LOOSE_DENSITY * sand_parts * LITRES_IN_CUBIC_METRE


@BOOK.quantity(
    symbol="V_om",
    unit="L",
    places=1,
    low=25,
    high=305,
    source=published("civil laboratory pages on IS 2386-3: the box grows by the bulking"),
)
def batch_sand_damp(batch_sand_dry: float, sand_bulking: float) -> float:
    """Sand for one batch, measured damp.

    Args:
        batch_sand_dry: sand for one batch, measured dry [L], 25 to 210.
        sand_bulking: how much more room damp sand takes [%], 0 to 45.

    Returns:
        Sand [L], 25 to 305.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(batch_sand_damp(batch_sand_dry=70, sand_bulking=25), 1)
        '87.5'
    """
    return batch_sand_dry * (1 + sand_bulking / PERCENT)


@BOOK.quantity(
    symbol="W_os", unit="L", places=1, low=0, high=35, source=derived("weight of the dry sand x free water in it")
)
def water_in_sand(batch_sand_dry: float, sand_density: float, sand_moisture: float, sand_absorption: float) -> float:
    """Water that comes into a batch with the damp sand, apart from what sits inside the grains.

    Args:
        batch_sand_dry: sand for one batch, measured dry [L], 25 to 210.
        sand_density: loose dry sand [kg/m**3], 1450 to 1750.
        sand_moisture: all water in the sand, of its dry weight [%], 2 to 10.
        sand_absorption: water inside the grains, of their dry weight [%], 0.5 to 2.

    Returns:
        Water [L], 0 to 35.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(water_in_sand(batch_sand_dry=70, sand_density=1600, sand_moisture=5, sand_absorption=1), 1)
        '4.5'
    """
    return (
        batch_sand_dry
        / LITRES_IN_CUBIC_METRE
        * sand_density
        * (sand_moisture - sand_absorption)
        / PERCENT
        / WATER_DENSITY
    )


@BOOK.quantity(
    symbol="W_oa", unit="L", places=1, low=0, high=50, source=derived("mixing water less the water in the sand")
)
def water_to_add(batch_bags: float, water_cement_ratio: float, water_in_sand: float) -> float:
    """Water to pour into one batch from the can: the sand has brought the rest.

    Args:
        batch_bags: cement in one batch [bag], 0.5 to 2.
        water_cement_ratio: water over cement by weight [-], 0.35 to 0.5.
        water_in_sand: water that comes with the damp sand [L], 0 to 35.

    Returns:
        Water [L], 0 to 50.

    Raises:
        OutOfRangeError: a value outside its range; sand wetter than the mix may be must drain first.

    Example:
        >>> from generator.formula import show
        >>> show(water_to_add(batch_bags=1, water_cement_ratio=0.45, water_in_sand=4.4), 1)
        '18.1'
    """
    return batch_bags * BAG * water_cement_ratio / WATER_DENSITY - water_in_sand


@BOOK.quantity(symbol="V_ox", unit="L", places=1, low=8, high=92, source=derived("length x width x depth, inside"))
def box_volume(box_length: float, box_width: float, box_depth: float) -> float:
    """What a gauge box holds, struck off level: not heaped, not shaken, not rammed.

    Args:
        box_length: inside length [m], 0.2 to 0.45.
        box_width: inside width [m], 0.2 to 0.45.
        box_depth: inside depth [m], 0.2 to 0.45.

    Returns:
        Volume [L], 8 to 92.

    Raises:
        OutOfRangeError: a given outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(box_volume(box_length=0.35, box_width=0.25, box_depth=0.40), 1)
        '35.0'
    """
    return box_length * box_width * box_depth * LITRES_IN_CUBIC_METRE


@BOOK.quantity(
    symbol="n_ox", unit="", places=1, low=0.5, high=19, source=derived("damp sand of one bag over what the box holds")
)
def boxes_of_sand(batch_sand_damp: float, batch_bags: float, box_volume: float) -> float:
    """Struck-off boxes of damp sand for one bag of cement; for a part of a box, mark a line inside it.

    Args:
        batch_sand_damp: sand for one batch, measured damp [L], 25 to 305.
        batch_bags: cement in one batch [bag], 0.5 to 2.
        box_volume: what the box holds [L], 8 to 92.

    Returns:
        Boxes [-], 0.5 to 19.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(boxes_of_sand(batch_sand_damp=87.5, batch_bags=1, box_volume=35), 1)
        '2.5'
    """
    return batch_sand_damp * ONE_BAG / (batch_bags * box_volume)


@BOOK.quantity(
    symbol="M_oa", unit="kg", places=3, low=0.02, high=2, source=derived("the dose is a share of the cement alone")
)
def admixture_mass(batch_bags: float, admixture_dose: float) -> float:
    """Admixture for one batch: a share of the cement alone, on the maker's word and never by eye.

    Anything that touches drinking water must be approved for it; some waterproofers carry chloride, which rusts steel.

    Args:
        batch_bags: cement in one batch [bag], 0.5 to 2.
        admixture_dose: dose, of the weight of cement [%], 0.1 to 2.

    Returns:
        Admixture [kg], 0.02 to 2.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(admixture_mass(batch_bags=1, admixture_dose=0.6), 3)
        '0.300'
    """
    return batch_bags * BAG * admixture_dose / PERCENT


@BOOK.quantity(symbol="V_ob", unit="m**3", places=3, low=0.03, high=0.24, source=derived("bags x mortar from one bag"))
def batch_volume(batch_bags: float, mortar_absolute_volume: float) -> float:
    """Mortar that comes out of one batch.

    Args:
        batch_bags: cement in one batch [bag], 0.5 to 2.
        mortar_absolute_volume: mortar that one bag really makes [m**3/bag], 0.06 to 0.12.

    Returns:
        Mortar [m**3], 0.03 to 0.24.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(batch_volume(batch_bags=0.5, mortar_absolute_volume=0.082), 3)
        '0.041'
    """
    return batch_bags * mortar_absolute_volume


@BOOK.quantity(
    symbol="n_ow", unit="", places=0, low=1, high=190, source=derived("mortar with its loss over a batch, rounded up")
)
def batches_needed(wall_mortar_volume: float, mortar_waste: float, batch_volume: float) -> float:
    """Batches for the whole wall, with what is lost on the way: whole batches, rounded up.

    Args:
        wall_mortar_volume: mortar in the finished wall [m**3], 0.02 to 4.6.
        mortar_waste: mortar that is lost [%], 0 to 20.
        batch_volume: mortar that comes out of one batch [m**3], 0.03 to 0.24.

    Returns:
        Number of batches [-], 1 to 190.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> batches_needed(wall_mortar_volume=0.76, mortar_waste=10, batch_volume=0.082)
        11.0
    """
    return whole_up(wall_mortar_volume * (1 + mortar_waste / PERCENT) / batch_volume)


@BOOK.quantity(symbol="A_ob", unit="m**2", places=1, low=0.7, high=40, source=derived("volume over thickness"))
def batch_cover_area(batch_volume: float, coat_thickness: float) -> float:
    """Wall that one batch covers when nothing falls. Steel in the coat is not taken off: it is under 3 %.

    Args:
        batch_volume: mortar that comes out of one batch [m**3], 0.03 to 0.24.
        coat_thickness: thickness of the coat [mm], 6 to 40.

    Returns:
        Area [m**2], 0.7 to 40.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(batch_cover_area(batch_volume=0.08, coat_thickness=16), 1)
        '5.0'
    """
    return batch_volume / coat_thickness * MILLIMETRES_IN_METRE


@BOOK.misconception(of="measured_bulking")
def jar_divided_by_damp_height(damp_height: float, flooded_height: float) -> float:
    """What the sand sank was divided by its damp height."""
    return PERCENT * (damp_height - flooded_height) / damp_height


@BOOK.misconception(of="measured_bulking")
def millimetres_sunk_read_as_percent(damp_height: float, flooded_height: float) -> float:
    """The millimetres that the sand sank were read as hundredths."""
    return (damp_height - flooded_height) * MILLIMETRE_AS_PERCENT


@BOOK.misconception(of="silt_share")
def silt_against_the_whole_jar(silt_height: float, sand_height: float) -> float:
    """Silt was set against all that lies in the jar, silt and sand together."""
    return PERCENT * silt_height / (silt_height + sand_height)


@BOOK.misconception(of="silt_share")
def silt_millimetres_read_as_percent(silt_height: float) -> float:
    """The millimetres of the silt were called percent; that fits only a layer of 100 mm of sand."""
    return silt_height * MILLIMETRE_AS_PERCENT


@BOOK.misconception(of="sand_mass_ratio")
def parts_by_volume_weighed(sand_parts: float) -> float:
    """Parts by volume were weighed out."""
    return sand_parts


@BOOK.misconception(of="mortar_absolute_volume")
def loose_boxes_added_up(sand_parts: float) -> float:
    """Loose boxes were added up, with the holes between the grains."""
    return BAG / CEMENT_LOOSE_DENSITY * (1 + sand_parts)


@BOOK.misconception(of="mortar_absolute_volume")
def water_thought_to_take_no_room(sand_mass_ratio: float, air_content: float) -> float:
    """Water was thought to vanish between the grains."""
    return BAG * (1 / CEMENT_GRAIN_DENSITY + sand_mass_ratio / SAND_GRAIN_DENSITY) / (1 - air_content / PERCENT)


@BOOK.misconception(of="true_dry_factor")
def loss_hidden_in_the_factor(sand_parts: float, mortar_absolute_volume: float, mortar_waste: float) -> float:
    """What falls was put into the factor, and is then added a second time."""
    return BAG / CEMENT_LOOSE_DENSITY * (1 + sand_parts) / mortar_absolute_volume * (1 + mortar_waste / PERCENT)


@BOOK.misconception(of="cement_per_cubic_metre")
def cement_share_of_the_loose_boxes(sand_parts: float) -> float:
    """Cement was shared over the loose boxes, and not over the mortar that they make."""
    return CEMENT_LOOSE_DENSITY / (1 + sand_parts)


@BOOK.misconception(of="batch_sand_dry")
def bag_taken_for_fifty_litres(batch_bags: float, sand_parts: float) -> float:
    """A bag of 50 kg was taken for 50 litres; it fills about 35."""
    return batch_bags * BAG_READ_AS_LITRES * sand_parts


@BOOK.misconception(of="batch_sand_damp")
def bulking_forgotten_in_the_batch(batch_sand_dry: float) -> float:
    """Damp sand was boxed like dry sand."""
    return batch_sand_dry


@BOOK.misconception(of="batch_sand_damp")
def shovels_counted(batch_sand_damp: float) -> float:
    """Shovels were counted: one of damp sand carries more than one of cement."""
    return batch_sand_damp * SHOVEL_HEAP


@BOOK.misconception(of="water_in_sand")
def water_inside_the_grains_counted(batch_sand_dry: float, sand_density: float, sand_moisture: float) -> float:
    """Water inside the grains was counted as mixing water."""
    return batch_sand_dry / LITRES_IN_CUBIC_METRE * sand_density * sand_moisture / PERCENT / WATER_DENSITY


@BOOK.misconception(of="water_to_add")
def water_of_the_sand_forgotten(batch_bags: float, water_cement_ratio: float) -> float:
    """All the mixing water was poured, though damp sand had brought a part of it."""
    return batch_bags * BAG * water_cement_ratio / WATER_DENSITY


@BOOK.misconception(of="water_to_add")
def water_by_volume_of_cement(batch_bags: float, water_cement_ratio: float, water_in_sand: float) -> float:
    """Water was set against the volume of the cement, and not against its weight."""
    return batch_bags * BAG / CEMENT_LOOSE_DENSITY * LITRES_IN_CUBIC_METRE * water_cement_ratio - water_in_sand


@BOOK.misconception(of="box_volume")
def box_heaped(box_length: float, box_width: float, box_depth: float) -> float:
    """The box was heaped and not struck off."""
    return box_length * box_width * (box_depth + box_width * HEAP_SLOPE / 3) * LITRES_IN_CUBIC_METRE


@BOOK.misconception(of="box_volume")
def box_measured_outside(box_length: float, box_width: float, box_depth: float) -> float:
    """The box was measured over its planks."""
    return (box_length + 2 * PLANK) * (box_width + 2 * PLANK) * (box_depth + PLANK) * LITRES_IN_CUBIC_METRE


@BOOK.misconception(of="boxes_of_sand")
def any_box_thought_to_hold_a_bag(sand_parts: float) -> float:
    """Any box was thought to be one part, whatever it holds."""
    return sand_parts


@BOOK.misconception(of="admixture_mass")
def admixture_by_the_sand(batch_sand_dry: float, sand_density: float, admixture_dose: float) -> float:
    """The dose was taken from the sand."""
    return batch_sand_dry / LITRES_IN_CUBIC_METRE * sand_density * admixture_dose / PERCENT


@BOOK.misconception(of="batch_volume")
def batch_taken_for_its_boxes(batch_bags: float, sand_parts: float) -> float:
    """A batch was thought to be as large as the boxes that went in."""
    return batch_bags * BAG / CEMENT_LOOSE_DENSITY * (1 + sand_parts)


@BOOK.misconception(of="batches_needed")
def batches_rounded_down(wall_mortar_volume: float, mortar_waste: float, batch_volume: float) -> float:
    """The last part of a batch was left out."""
    return whole_down(wall_mortar_volume * (1 + mortar_waste / PERCENT) / batch_volume)


@BOOK.misconception(of="batches_needed")
def loss_of_the_wall_forgotten(wall_mortar_volume: float, batch_volume: float) -> float:
    """Only what stays in the wall was counted in batches."""
    return whole_up(wall_mortar_volume / batch_volume)


@BOOK.misconception(of="batch_cover_area")
def coat_in_centimetres(batch_volume: float, coat_thickness: float) -> float:
    """Millimetres of the coat were read as centimetres."""
    return batch_volume / coat_thickness * MILLIMETRES_IN_METRE / MILLIMETRES_IN_CENTIMETRE
