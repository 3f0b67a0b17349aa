"""Which round tanks hold a wanted volume, the best first, and whether two or three smaller ones would be better.

Every shape is rounded up to what a mason sets out (5 cm), so that it never holds less than is wanted. Bands decide
before cost: a deep or wide tank pulls its hoops apart and can kill when it bursts. The sizes alone are judged here;
people below, earthquake, frost and steep ground make a site stricter (`bands.judge`).
"""

from __future__ import annotations

from dataclasses import dataclass
from math import isfinite, pi, sqrt

from generator.calculations.bands import ENGINEER_DEPTH, ENGINEER_VOLUME, Band, judge
from generator.calculations.sizing import BUILDING_STEP
from generator.formula import ASK, Constant, OutOfRangeError, common_practice, derived, whole_down, whole_up

LEAST_VOLUME = Constant(0.5, "m**3", derived("the smallest volume of this course"))
LEAST_TANK_DEPTH = Constant(0.4, "m", derived("less water is warm and dirty before it is drawn; policy of this course"))
NARROWEST, WIDEST = (Constant(size, "m", derived("inside diameters of this course")) for size in (0.6, 8.0))
LOWEST_WALL, HIGHEST_WALL = (Constant(size, "m", derived("walls of this course")) for size in (0.4, 2.4))
WIDEST_COLUMN = Constant(0.4, "m", derived("columns of this course"))
LEAST_DROP, LARGEST_DROP = (Constant(size, "m", derived("overflows of this course")) for size in (0.05, 0.5))
USUAL_DROP = Constant(0.15, "m", common_practice("overflow of a small tank below the top of its wall"))
ALIKE = Constant(0.05, "", derived("surfaces this share apart cost the same: prices are never known as well as that"))
_HAIR = 1e-9


@dataclass(frozen=True, slots=True)
class Shape:
    """One round tank.

    Args:
        diameter: inside, across the water [m].
        water_depth: up to the overflow [m].
        wall_height: [m].
        volume: water when it is full, beside the column [m3].
        surface: wall, floor and a flat roof, on the inside [m2].
        band: of these sizes alone; the site may be stricter.
    """

    diameter: float
    water_depth: float
    wall_height: float
    volume: float
    surface: float
    band: Band

    @property
    def depth_times_radius(self) -> float:
        """What pulls the hoops [m2]."""
        return self.water_depth * self.diameter / 2


@dataclass(frozen=True, slots=True)
class Split:
    """Equal smaller tanks in the place of one.

    Args:
        count: number of tanks, 2 or 3.
        each: one of them.
    """

    count: int
    each: Shape

    @property
    def volume(self) -> float:
        """Water of all of them, full [m3]."""
        return self.count * self.each.volume


def shapes(
    volume: float,
    width_limit: float | None = None,
    height_limit: float | None = None,
    column_width: float = 0.0,
    overflow_drop: float = USUAL_DROP,
    *,
    flat_roof: bool = False,
) -> tuple[Shape, ...]:
    """Tanks that hold a volume, the best first.

    For each depth in steps of 5 cm the narrowest diameter in steps of 5 cm; a tank that another one beats in both is
    left out. The lower band comes first. Within a band the smaller surface of wall, floor and roof comes first, but
    surfaces are counted in classes of a twentieth above the least: within a class the smaller depth x radius comes
    first, because it asks for less steel. The band is that of the rounded tank: 12 m3 become a little more, and that is
    an engineer's tank; ask for 11.5, or for two.

    Args:
        volume: water that is wanted [m3], 0.5 to 50.
        width_limit: widest inside diameter that the place allows [m], 0.6 to 8; None for no limit.
        height_limit: highest wall that the place allows [m], 0.4 to 2.4; None for no limit.
        column_width: round column in the middle [m], 0 to 0.4; 0 for none.
        overflow_drop: overflow below the top of the wall [m], 0.05 to 0.5.
        flat_roof: whether the roof is flat, so that its span counts where there is no column.

    Raises:
        OutOfRangeError: an option outside its range, or no tank of this course that fits; the message says who to ask.

    Example:
        >>> best = shapes(7.5, height_limit=1.6)[0]
        >>> best.diameter, best.water_depth, best.wall_height, best.band.name
        (2.85, 1.2, 1.35, 'VILLAGE')
    """
    _refuse("volume", volume, LEAST_VOLUME, ENGINEER_VOLUME, "m3", "build two or three smaller tanks, or ")
    _refuse_options(width_limit, height_limit, column_width, overflow_drop)
    widest = WIDEST if width_limit is None else width_limit
    highest = HIGHEST_WALL if height_limit is None else height_limit
    found: list[Shape] = []
    for steps in range(int(whole_up(LEAST_TANK_DEPTH / BUILDING_STEP)), int(ENGINEER_DEPTH / BUILDING_STEP + 0.5) + 1):
        shape = _narrowest(volume, _metres(steps), column_width, overflow_drop, flat_roof=flat_roof)
        fits = shape.diameter <= widest + _HAIR and shape.wall_height <= highest + _HAIR
        beaten = bool(found) and found[-1].diameter <= shape.diameter + _HAIR
        if fits and not beaten and shape.band < Band.NO_BUILD_SHEET:
            found.append(shape)
    if not found:
        raise OutOfRangeError(
            f"no tank of {volume:g} m3, rounded up to 5 cm, has a wall of at most {highest:g} m (height_limit), is at "
            f"most {widest:g} m across inside (width_limit) and stays within an engineer's band; give it more room, "
            f"build two or three smaller tanks, or {ASK}"
        )
    least = min(shape.surface for shape in found)

    def worth(shape: Shape) -> tuple[float, ...]:
        return (shape.band, whole_down((shape.surface / least - 1) / ALIKE), shape.depth_times_radius, shape.surface)

    return tuple(sorted(found, key=worth))


def split(
    volume: float,
    width_limit: float | None = None,
    height_limit: float | None = None,
    column_width: float = 0.0,
    overflow_drop: float = USUAL_DROP,
    *,
    flat_roof: bool = False,
) -> tuple[Split, ...]:
    """Two or three equal tanks in the place of one, where each falls into a lower band than the one would.

    Args:
        volume: water that is wanted in all [m3], at least 0.5; over 150 nothing is offered.
        width_limit: as in `shapes`, for each tank.
        height_limit: as in `shapes`.
        column_width: as in `shapes`, in each tank.
        overflow_drop: as in `shapes`.
        flat_roof: as in `shapes`.

    Returns:
        The lower band first, then fewer tanks; nothing where one tank is as good or where no split helps.

    Raises:
        OutOfRangeError: an option outside its range.

    Example:
        >>> [(way.count, way.each.diameter, way.each.water_depth, way.each.band.name) for way in split(21)]
        [(2, 2.9, 1.6, 'VILLAGE'), (3, 2.5, 1.45, 'VILLAGE')]
        >>> split(6)
        ()
    """
    if not (isfinite(volume) and volume >= LEAST_VOLUME - _HAIR):
        raise OutOfRangeError(f"volume = {volume:g} m3 is not a number of {LEAST_VOLUME:g} or more; {ASK}")
    _refuse_options(width_limit, height_limit, column_width, overflow_drop)

    def best(each: float) -> Shape | None:
        if not LEAST_VOLUME - _HAIR <= each <= ENGINEER_VOLUME + _HAIR:
            return None
        try:
            return shapes(each, width_limit, height_limit, column_width, overflow_drop, flat_roof=flat_roof)[0]
        except OutOfRangeError:
            return None

    one = best(volume)
    alone = one.band if one else Band.NO_BUILD_SHEET
    ways = [Split(count, each) for count in (2, 3) if (each := best(volume / count)) and each.band < alone]
    return tuple(sorted(ways, key=lambda way: (way.each.band, way.count)))


def _metres(steps: float) -> float:
    """Steps of 5 cm as metres, as a person would write them."""
    return round(steps * BUILDING_STEP, 2)


def _narrowest(volume: float, depth: float, column: float, drop: float, *, flat_roof: bool) -> Shape:
    across = sqrt(4 * volume / (pi * depth) + column**2)
    diameter = max(float(NARROWEST), _metres(whole_up(across / BUILDING_STEP)))
    wall = _metres(whole_up((depth + drop) / BUILDING_STEP))
    holds = pi / 4 * (diameter**2 - column**2) * depth
    judged = judge(
        volume=holds,
        water_depth=depth,
        inside_radius=diameter / 2,
        flat_span=diameter if flat_roof and not column else 0.0,
    )
    return Shape(diameter, depth, wall, holds, pi * diameter * wall + pi / 2 * diameter**2, judged.band)


def _refuse(option: str, value: float, low: float, high: float, unit: str, way_out: str = "") -> None:
    if not (isfinite(value) and low - _HAIR <= value <= high + _HAIR):
        raise OutOfRangeError(f"{option} = {value:g} {unit} is outside {low:g} to {high:g} {unit}; {way_out}{ASK}")


def _refuse_options(width: float | None, height: float | None, column: float, drop: float) -> None:
    if width is not None:
        _refuse("width_limit", width, NARROWEST, WIDEST, "m")
    if height is not None:
        _refuse("height_limit", height, LOWEST_WALL, HIGHEST_WALL, "m")
    _refuse("column_width", column, 0, WIDEST_COLUMN, "m")
    _refuse("overflow_drop", drop, LEAST_DROP, LARGEST_DROP, "m")
