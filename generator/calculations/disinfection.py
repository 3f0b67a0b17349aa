"""Disinfection: how much product for a dose, stock solution, dilution, and what takes the chlorine out again.

Cautions. Powder always goes into water, a little at a time; water is never poured onto powder. Outdoors, with the wind
from behind, in gloves and goggles. Never near acid, fuel or another cleaner: poison gas or fire comes of it. Only plain
product, without scent and without stabiliser. Nobody enters the tank: scrub and pour from outside. Chlorine kills fish
in traces: chlorinated water never runs into a stream; let it soak away, hold it, or take the chlorine out. Fresh mortar
makes water so alkaline that chlorine hardly works: soak and drain until the pH paper shows under 8.5, then chlorinate.
"""

from generator.calculations._book import BOOK
from generator.calculations.mortar import PERCENT
from generator.formula import ASK, Constant, OutOfRangeError, common_practice, derived, from_memory, published
from generator.words import Words

MILLIGRAMS_IN_GRAM = Constant(1000, "mg/g", derived("1 g is 1000 mg"))
GRAMS_IN_MILLILITRE = Constant(
    1, "g/mL", derived("a percent of a liquid is taken as 1 g in 100 mL; it is about as water")
)
GRAMS_IN_LITRE = Constant(1000, "g/L", derived("1 L of water is 1000 g"))
THIOSULFATE_PER_CHLORINE = Constant(
    1.9, "", published("Disinfection of Pipelines and Storage Facilities Field Guide, table 7-2: mg for mg at pH 7")
)
HALF_WEAK_PH = Constant(7.5, "", from_memory("the pH at which half of the chlorine is in its strong form, near 25 C"))
SPRING_PH = Constant(7, "", derived("neither acid nor alkaline: the pH that nobody measured"))
PH_READY = Constant(8.5, "", from_memory("chlorinate only under this pH"))
PH_OF_NO_MORTAR = Constant(6.5, "", from_memory("the lowest pH of drinking water; mortar only raises it"))
FRESH_POWDER = Constant(33, "%", published("Indian public-health page: fresh bleaching powder has at least 33 %"))
LITRES_READ_WRONG = Constant(1000, "", derived("a litre taken for a millilitre"))
GRAMS_FOR_A_PERCENT = Constant(10, "", derived("one percent is 10 g in a litre"))

BOOK.given(
    "chlorine_dose",
    symbol="c_dd",
    unit="mg/L",
    low=1,
    high=200,
    step=1,
    source=published("ANSI/AWWA C652-11, 4.3: 10 mg/L left in the full tank, 50 at its bottom, 200 on its faces"),
)
BOOK.given(
    "service_dose",
    symbol="c_ds",
    unit="mg/L",
    low=0.2,
    high=5,
    step=0.1,
    source=published("IS 10500: at least 0.2 mg/L left at the tap, 0.5 where virus is feared; NSW guide doses up to 5"),
)
BOOK.given(
    "available_chlorine",
    symbol="p_da",
    unit="%",
    low=20,
    high=75,
    step=1,
    source=published("Indian public-health page, C652-11 and Tasmanian health page: fresh powder 33, HTH 65, up to 75"),
)
BOOK.given(
    "liquid_chlorine",
    symbol="p_dl",
    unit="%",
    low=5,
    high=15,
    step=0.5,
    source=published("ANSI/AWWA C652-11, 4.2: sodium hypochlorite liquid, 5 to 15 %"),
)
BOOK.given(
    "stock_strength",
    symbol="p_ds",
    unit="%",
    low=0.1,
    high=2,
    step=0.1,
    source=published("one-page chlorine formulas: stock of 0.5 %; stronger stock does not clear"),
)
BOOK.given(
    "wash_strength",
    symbol="p_dw",
    unit="%",
    low=0.02,
    high=0.5,
    step=0.01,
    source=published("ANSI/AWWA C652-11, 4.3: 200 mg/L (0.02 %) on wetted faces; 0.1 % and 0.5 % for tools"),
)
BOOK.given(
    "water_ph",
    symbol="x_dp",
    unit="",
    low=6,
    high=13,
    step=0.1,
    source=derived("read with pH paper; water on fresh mortar shows 11 to 12"),
)
BOOK.given(
    "flush_count",
    symbol="n_df",
    unit="",
    low=1,
    high=6,
    step=1,
    source=common_practice("soaked and drained 2 or 3 times; the pH paper says when it is enough"),
)


@BOOK.quantity(symbol="m_dc", unit="g", places=1, low=0.1, high=10000, source=derived("litres x milligrams in a litre"))
def tank_chlorine(tank_litres: float, chlorine_dose: float) -> float:
    """Chlorine itself that the full tank needs. The product is heavier, see the next quantity.

    Args:
        tank_litres: water in the full tank [L], 100 to 50000.
        chlorine_dose: chlorine in a litre of water [mg/L], 1 to 200.

    Returns:
        Chlorine [g], 0.1 to 10000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(tank_chlorine(tank_litres=7300, chlorine_dose=12), 1)
        '87.6'
    """
    return tank_litres * chlorine_dose / MILLIGRAMS_IN_GRAM


@BOOK.quantity(
    symbol="m_da", unit="g", places=1, low=0.1, high=50000, source=derived("chlorine / its share of the product")
)
def chlorine_product_mass(tank_chlorine: float, available_chlorine: float) -> float:
    """Powder for the dose. Old, damp or sun-warmed bleaching powder is weak: have it tested or take 25 %.

    Care: powder into water, a little at a time, never water onto powder; outdoors, gloves and goggles on, far from acid
    and fuel. Nobody enters the tank.

    Args:
        tank_chlorine: chlorine that the full tank needs [g], 0.1 to 10000.
        available_chlorine: chlorine in the product [%], 20 to 75.

    Returns:
        Product [g], 0.1 to 50000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(chlorine_product_mass(tank_chlorine=87.6, available_chlorine=27), 1)
        '324.4'
    """
    return tank_chlorine * PERCENT / available_chlorine


@BOOK.quantity(
    symbol="V_dl",
    unit="mL",
    places=0,
    low=0.5,
    high=200000,
    source=derived("chlorine / its share of the liquid; a percent taken as 1 g in 100 mL"),
)
def chlorine_liquid_volume(tank_chlorine: float, liquid_chlorine: float) -> float:
    """Liquid for the dose. It weakens in weeks of heat; keep it dark and read its date.

    Care: goggles and gloves, outdoors; it spits when it is poured. Never near acid or another cleaner.

    Args:
        tank_chlorine: chlorine that the full tank needs [g], 0.1 to 10000.
        liquid_chlorine: chlorine in the liquid [%], 5 to 15.

    Returns:
        Liquid [mL], 0.5 to 200000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(chlorine_liquid_volume(tank_chlorine=87.6, liquid_chlorine=11.5), 0)
        '762'
    """
    return tank_chlorine * PERCENT / (liquid_chlorine * GRAMS_IN_MILLILITRE)


@BOOK.quantity(
    symbol="m_ds", unit="g", places=1, low=0, high=1250, source=derived("litres x dose / share of the product")
)
def service_dose_mass(tank_litres: float, service_dose: float, available_chlorine: float) -> float:
    """Powder for one dosing of the tank in use. Wait half an hour, then measure: 0.2 to 0.5 mg/L should be left.

    Care: as for the first dose. Pour the clear liquor only, through the manhole, standing outside.

    Args:
        tank_litres: water in the full tank [L], 100 to 50000.
        service_dose: chlorine in a litre of water [mg/L], 0.2 to 5.
        available_chlorine: chlorine in the product [%], 20 to 75.

    Returns:
        Product [g], 0 to 1250.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(service_dose_mass(tank_litres=7300, service_dose=1.5, available_chlorine=27), 1)
        '40.6'
    """
    return tank_litres * service_dose / MILLIGRAMS_IN_GRAM * PERCENT / available_chlorine


@BOOK.quantity(
    symbol="m_dt",
    unit="g",
    places=0,
    low=0.1,
    high=19000,
    source=published("Disinfection of Pipelines and Storage Facilities Field Guide, table 7-2: 1.9 mg for 1 mg"),
)
def thiosulfate_mass(tank_chlorine: float) -> float:
    """Sodium thiosulfate that takes all the chlorine out before the water is let go; test with a strip afterwards.

    It is the most that can be needed: chlorine is used up while it works.

    Args:
        tank_chlorine: chlorine that was put in [g], 0.1 to 10000.

    Returns:
        Sodium thiosulfate [g], 0.1 to 19000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(thiosulfate_mass(tank_chlorine=87.6), 0)
        '166'
    """
    return tank_chlorine * THIOSULFATE_PER_CHLORINE


@BOOK.quantity(
    symbol="m_dk", unit="g/L", places=1, low=1, high=100, source=derived("wanted share / share of the powder")
)
def stock_powder(stock_strength: float, available_chlorine: float) -> float:
    """Powder for each litre of stock solution. Let it settle and pour off the clear liquor.

    Care: fill the bucket with water first, then powder, a little at a time; never water onto powder.

    Args:
        stock_strength: chlorine wanted in the stock [%], 0.1 to 2.
        available_chlorine: chlorine in the powder [%], 20 to 75.

    Returns:
        Powder in a litre [g/L], 1 to 100.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(stock_powder(stock_strength=0.7, available_chlorine=27), 1)
        '25.9'
    """
    return stock_strength / available_chlorine * GRAMS_IN_LITRE


@BOOK.quantity(
    symbol="n_dp", unit="", places=0, low=9, high=749, source=derived("how many times weaker, less the liquid itself")
)
def dilution_parts(liquid_chlorine: float, wash_strength: float) -> float:
    """Parts of water for one part of liquid.

    Care: liquid into water; goggles and gloves.

    Args:
        liquid_chlorine: chlorine in the liquid [%], 5 to 15.
        wash_strength: chlorine wanted in the wash [%], 0.02 to 0.5.

    Returns:
        Parts of water [-], 9 to 749.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(dilution_parts(liquid_chlorine=11.5, wash_strength=0.05), 0)
        '229'
    """
    return liquid_chlorine / wash_strength - 1


@BOOK.quantity(symbol="V_df", unit="L", places=0, low=100, high=300000, source=derived("a full tank for each flushing"))
def flush_water(tank_litres: float, flush_count: float) -> float:
    """Water that flushing the fresh mortar takes, when every soaking is a full tank. It may be used for curing.

    Care: the drained water is caustic: not into a stream, not for washing or drinking.

    Args:
        tank_litres: water in the full tank [L], 100 to 50000.
        flush_count: times that the tank is soaked and drained [-], 1 to 6.

    Returns:
        Water [L], 100 to 300000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(flush_water(tank_litres=7300, flush_count=3), 0)
        '21900'
    """
    return tank_litres * flush_count


@BOOK.quantity(
    symbol="p_dx",
    unit="%",
    places=1,
    low=0,
    high=100,
    source=from_memory("balance of strong and weak chlorine; half and half at a recalled pH of 7.5"),
)
def strong_chlorine_share(water_ph: float) -> float:
    """Share of the chlorine that is in its strong form. At the pH of fresh mortar next to nothing is.

    Args:
        water_ph: pH of the water in the tank [-], 6 to 13.

    Returns:
        Share [%], 0 to 100.

    Raises:
        OutOfRangeError: the pH is outside its range: read again with fresh paper.

    Example:
        >>> from generator.formula import show
        >>> show(strong_chlorine_share(water_ph=8.1), 1)
        '20.1'
    """
    return PERCENT / (1 + 10 ** (water_ph - HALF_WEAK_PH))


@BOOK.misconception(of="tank_chlorine")
def grams_in_a_litre_for_milligrams(tank_litres: float, chlorine_dose: float) -> float:
    """Milligrams in a litre were taken for grams in a litre."""
    return tank_litres * chlorine_dose


@BOOK.misconception(of="chlorine_product_mass")
def product_taken_as_pure_chlorine(tank_chlorine: float) -> float:
    """The percent on the packet was forgotten."""
    return tank_chlorine


@BOOK.misconception(of="chlorine_product_mass")
def old_powder_taken_as_fresh(tank_chlorine: float) -> float:
    """Powder that has lain was taken to have the 33 % of fresh powder."""
    return tank_chlorine * PERCENT / FRESH_POWDER


@BOOK.misconception(of="chlorine_product_mass")
def dose_of_a_millilitre(chlorine_product_mass: float) -> float:
    """A dose for 1000 L was given to every 1000 mL."""
    return chlorine_product_mass * LITRES_READ_WRONG


@BOOK.misconception(of="chlorine_liquid_volume")
def liquid_taken_as_pure_chlorine(tank_chlorine: float) -> float:
    """The percent on the bottle was forgotten."""
    return tank_chlorine / GRAMS_IN_MILLILITRE


@BOOK.misconception(of="service_dose_mass")
def service_powder_taken_as_pure_chlorine(tank_litres: float, service_dose: float) -> float:
    """The percent on the packet was forgotten."""
    return tank_litres * service_dose / MILLIGRAMS_IN_GRAM


@BOOK.misconception(of="service_dose_mass")
def first_dose_for_every_dose(chlorine_product_mass: float) -> float:
    """The strong dose of the new tank was given to the tank in use."""
    return chlorine_product_mass


@BOOK.misconception(of="thiosulfate_mass")
def thiosulfate_gram_for_gram(tank_chlorine: float) -> float:
    """One gram was taken to undo one gram."""
    return tank_chlorine


@BOOK.misconception(of="stock_powder")
def stock_powder_taken_as_pure(stock_strength: float) -> float:
    """The percent on the packet was forgotten."""
    return stock_strength / PERCENT * GRAMS_IN_LITRE


@BOOK.misconception(of="stock_powder")
def percent_read_as_a_gram(stock_powder: float) -> float:
    """One percent was taken for one gram in a litre."""
    return stock_powder / GRAMS_FOR_A_PERCENT


@BOOK.misconception(of="dilution_parts")
def parts_counted_with_the_liquid(liquid_chlorine: float, wash_strength: float) -> float:
    """The liquid's own part was counted as water."""
    return liquid_chlorine / wash_strength


@BOOK.misconception(of="flush_water")
def one_flushing_thought_enough(tank_litres: float) -> float:
    """The tank was soaked once, without looking at the pH."""
    return tank_litres


@BOOK.misconception(of="strong_chlorine_share")
def chlorinated_before_the_mortar_was_flushed(water_ph: float) -> float:
    """The water's pH at the spring was taken, not its pH after it stood on fresh mortar."""
    return PERCENT / (1 + 10 ** (min(water_ph, SPRING_PH) - HALF_WEAK_PH))


def ready_for_chlorine(ph: float) -> tuple[str, ...]:
    """What to be warned of before chlorine goes in; nothing if the pH paper shows no reason to wait.

    The limit of 8.5 is recalled, so this warns and never says that water is safe to drink: only a measured residual and
    a water test do.

    Args:
        ph: pH of the water in the tank after it stood for a day, 0 to 14.

    Returns:
        Keys of warnings under `proving.chlorine` in the words: `flush_first`, `read_ph_again`.

    Raises:
        OutOfRangeError: no pH: read again with fresh paper.

    Example:
        >>> ready_for_chlorine(11.4), ready_for_chlorine(7.8)
        (('flush_first',), ())
    """
    if not 0 <= ph <= 14:
        raise OutOfRangeError(f"pH = {ph:g} is outside 0 to 14; read again with fresh paper; {ASK}")
    if ph >= PH_READY:
        return ("flush_first",)
    return ("read_ph_again",) if ph < PH_OF_NO_MORTAR else ()


def flushes_done(readings: tuple[float, ...]) -> int:
    """After how many soakings the pH paper first showed a tank that is ready for chlorine; 0 if it has not yet.

    Args:
        readings: pH at the end of each soaking, in order.

    Raises:
        OutOfRangeError: a reading that is no pH.

    Example:
        >>> flushes_done((11.8, 9.6, 8.2)), flushes_done((11.8, 9.6))
        (3, 0)
    """
    ready = [number for number, ph in enumerate(readings, start=1) if "flush_first" not in ready_for_chlorine(ph)]
    return ready[0] if ready else 0


def chlorine_warnings(ph: float, words: Words) -> tuple[str, ...]:
    """The warnings of `ready_for_chlorine` in words.

    Args:
        ph: as in `ready_for_chlorine`.
        words: of the reader's language.

    Raises:
        OutOfRangeError: as `ready_for_chlorine`.
    """
    return tuple(words.say_one_of("proving.chlorine", key) for key in ready_for_chlorine(ph))
