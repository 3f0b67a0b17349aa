"""Units that a learner may type after a number, in both languages, and how they turn into each other."""

from __future__ import annotations

import re
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Unit:
    """One unit that can be typed.

    Args:
        name: as quantities declare it: `m`, `mm`, `m**3`.
        kind: units of one kind turn into each other: `length`, `volume`.
        factor: size in the kind's first unit.
        spellings: what is typed for it, in any language, as `spelling` leaves them.
    """

    name: str
    kind: str
    factor: float
    spellings: tuple[str, ...]


UNITS: tuple[Unit, ...] = (
    Unit("m", "length", 1, ("m", "metre", "metres", "meter", "meters", "mtr", "mtrs", "मी", "मीटर", "एम")),
    Unit("cm", "length", 0.01, ("cm", "cms", "centimetre", "centimetres", "centimeter", "centimeters", "सेमी", "सेंमी",
                                "सेंटी", "सेंटीमीटर", "सेन्टीमीटर", "सीएम")),
    Unit("mm", "length", 0.001, ("mm", "mms", "millimetre", "millimetres", "millimeter", "millimeters", "मिमी",
                                 "मिलीमीटर", "एमएम")),
    Unit("inch", "length", 0.0254, ("in", "inch", "inches", '"', "''", "इंच", "इन्च")),
    Unit("foot", "length", 0.3048, ("ft", "foot", "feet", "'", "फुट", "फीट", "फिट")),
    Unit("sut", "length", 0.003175, ("sut", "soot", "suta", "सूत")),
    Unit("m**2", "area", 1, ("m2", "sqm", "squaremetre", "squaremetres", "squaremeter", "squaremeters", "sqmetre",
                             "sqmetres", "वर्गमी", "वर्गमीटर")),
    Unit("cm**2", "area", 0.0001, ("cm2", "sqcm", "वर्गसेमी")),
    Unit("mm**2", "area", 0.000001, ("mm2", "sqmm", "वर्गमिमी")),
    Unit("foot**2", "area", 0.09290304, ("ft2", "sqft", "squarefoot", "squarefeet", "वर्गफुट")),
    Unit("m**3", "volume", 1, ("m3", "cum", "cubicmetre", "cubicmetres", "cubicmeter", "cubicmeters", "cumetre", "घनमी",
                               "घनमीटर", "क्यूबिकमीटर")),
    Unit("L", "volume", 0.001, ("l", "lt", "ltr", "ltrs", "litre", "litres", "liter", "liters", "ली", "लीटर", "लिटर")),
    Unit("mL", "volume", 0.000001, ("ml", "millilitre", "millilitres", "milliliter", "milliliters", "मिली",
                                    "मिलीलीटर")),
    Unit("foot**3", "volume", 0.028316846592, ("ft3", "cft", "cuft", "cubicfoot", "cubicfeet", "घनफुट", "सीएफटी")),
    Unit("kg", "mass", 1, ("kg", "kgs", "kilo", "kilos", "kilogram", "kilograms", "किग्रा", "किलो", "किलोग्राम",
                           "केजी")),
    Unit("g", "mass", 0.001, ("g", "gm", "gms", "gram", "grams", "ग्रा", "ग्राम")),
    Unit("t", "mass", 1000, ("t", "tonne", "tonnes", "टन")),
    Unit("kg/m", "mass of a length", 1, ("kg/m", "kgperm", "kgpermetre", "किग्रा/मी", "किलो/मी", "किलो/मीटर")),
    Unit("kg/m**3", "density", 1, ("kg/m3", "kgpercubicmetre", "किग्रा/घनमी")),
    Unit("mm**2/m", "area of a length", 1, ("mm2/m", "वर्गमिमी/मी")),
    Unit("day", "time", 1, ("day", "days", "दिन")),
    Unit("week", "time", 7, ("week", "weeks", "हफ्ता", "हफ्ते", "सप्ताह")),
    Unit("hour", "time", 1 / 24, ("h", "hr", "hrs", "hour", "hours", "घंटा", "घंटे", "घन्टा", "घन्टे", "घण्टा", "घण्टे")),
    Unit("minute", "time", 1 / 1440, ("min", "mins", "minute", "minutes", "मिनट", "मिनिट")),
    Unit("s", "time", 1 / 86_400, ("s", "sec", "secs", "second", "seconds", "सेकंड", "सेकेंड", "सेकण्ड", "सेकेण्ड",
                                   "सेकन्ड")),
    Unit("L/day", "flow", 1, ("l/day", "l/d", "lperday", "laday", "litres/day", "liters/day", "litre/day", "liter/day",
                              "litresperday", "litersperday", "litresaday", "litersaday", "lpd", "ली/दिन", "लीटर/दिन",
                              "l/दिन", "लीटरप्रतिदिन", "लीटररोज")),
    Unit("L/hour", "flow", 24, ("l/h", "l/hr", "l/hour", "lperhour", "litres/hour", "liters/hour", "litresperhour",
                                "litersperhour", "litresanhour", "litersanhour", "lph", "ली/घंटा", "लीटर/घंटा", "l/घंटा",
                                "लीटरप्रतिघंटा")),
    Unit("L/minute", "flow", 1440, ("l/min", "l/minute", "lperminute", "litres/minute", "liters/minute",
                                    "litresperminute", "litersperminute", "litresaminute", "litersaminute", "lpm",
                                    "ली/मिनट", "लीटर/मिनट", "l/मिनट", "लीटरप्रतिमिनट")),
    Unit("L/s", "flow", 86_400, ("l/s", "l/sec", "l/second", "lpersecond", "litres/second", "liters/second",
                                 "litrespersecond", "literspersecond", "litresasecond", "litersasecond", "lps",
                                 "ली/सेकंड", "लीटर/सेकंड", "l/सेकंड", "लीटरप्रतिसेकंड")),
    Unit("m**3/day", "flow", 1000, ("m3/day", "m3/d", "m3perday", "cubicmetres/day", "cubicmeters/day", "घनमी/दिन",
                                    "घनमीटर/दिन", "m3/दिन")),
    Unit("mm/day", "depth in a time", 1, ("mm/day", "mm/d", "mmperday", "mmaday", "millimetres/day", "millimeters/day",
                                          "millimetresaday", "millimetersaday", "मिमी/दिन", "मिलीमीटर/दिन", "mm/दिन",
                                          "मिमीप्रतिदिन", "मिलीमीटरप्रतिदिन", "मिलीमीटररोज")),
    Unit("%", "percent", 1, ("%", "percent", "प्रतिशत", "फीसदी")),
    Unit("bag", "count", 1, ("bag", "bags", "बोरी", "बोरियां", "बोरियाँ", "कट्टा", "कट्टे", "बैग")),
    Unit("", "count", 1, ("hoop", "hoops", "ring", "rings", "bar", "bars", "rod", "rods", "angle", "angles", "gap",
                          "gaps", "space", "spaces", "piece", "pieces", "pc", "pcs", "no", "nos", "रिंग", "छल्ला", "छल्ले",
                          "सरिया", "सरिये", "एंगल", "खाली जगह", "गैप", "नग", "अदद")),
)  # fmt: skip

BY_NAME: dict[str, Unit] = {unit.name: unit for unit in UNITS}
_DROPPED = re.compile(r"[ .\u0970^*]")


def spelling(text: str) -> str:
    """A typed unit without what people put in or leave out: spaces, full stops, `**` and `^`.

    Example:
        >>> spelling("मि॰मी॰"), spelling("m**3"), spelling("sq. m")
        ('मिमी', 'm3', 'sqm')
    """
    return _DROPPED.sub("", text)


BY_SPELLING: dict[str, Unit] = {spelling(text): unit for unit in UNITS for text in unit.spellings}


def converted(value: float, typed: str, asked: str) -> float | None:
    """A number in one unit as a number in another; None where they are of different kinds.

    Example:
        >>> converted(225, "mm", "m"), converted(1, "kg", "m")
        (0.225, None)
    """
    if typed == asked:
        return value
    source, goal = BY_NAME.get(typed), BY_NAME.get(asked)
    if source is None or goal is None or source.kind != goal.kind:
        return None
    return value * source.factor / goal.factor
