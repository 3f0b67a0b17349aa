"""What someone wants: how much water, where, under which limits, from which shop. Contradictions are refused here."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from generator.calculations import BOOK
from generator.calculations.bands import Condition, RefusedGround, conditions_of_slope
from generator.plans.prices import Prices
from generator.plans.refused import outside
from generator.plans.roofing import RoofKind
from generator.plans.shape import LEAST_LITRES, MOST_LITRES
from generator.plans.shop import USUAL_SHOP, Bar, Shop

CUT_FROM_SLOPE = 2.0
"""Flatter ground is levelled by hand without a cut platform [degrees]."""
STEEPEST = 30.0
MOST_PEOPLE, MOST_DAYS, LEAST_EACH, MOST_EACH, MOST_SPRING = 500, 365, 2.5, 100, 5


class Zone(StrEnum):
    """What a site's map or memory says about it; each makes the plan one band stricter."""

    STRONG_EARTHQUAKE = "strong-earthquake"
    SNOW_OR_FROST = "snow-or-frost"


@dataclass(frozen=True, slots=True)
class Site:
    """Where the tank is to stand.

    Args:
        people_below: people live, work or go to school below, where the water would run.
        slope: of the ground [degrees], 0 to 30.
        zones: of earthquakes, snow or frost.
        ground: what of the refused kinds any part would stand on.
        soil: key of the soil under the base; empty where nobody looked yet.
        wet_soil: water stands at or near the founding level.
        ground_water: how high water in the ground can stand above the underside of the base [m].
    """

    people_below: bool = False
    slope: float = 0.0
    zones: tuple[Zone, ...] = ()
    ground: tuple[RefusedGround, ...] = ()
    soil: str = ""
    wet_soil: bool = False
    ground_water: float = 0.0

    def __post_init__(self) -> None:
        for option, value, most, unit in (
            ("--slope", self.slope, STEEPEST, "degrees"), ("--ground-water", self.ground_water, 2.0, "m"),
        ):  # fmt: skip
            if not 0 <= value <= most:
                raise outside(option, value, 0, most, unit)

    @property
    def cut(self) -> bool:
        """Whether the tank stands on a cut platform."""
        return self.slope > CUT_FROM_SLOPE

    @property
    def conditions(self) -> tuple[Condition, ...]:
        """What makes the plan one band stricter, each once."""
        found = [Condition.PEOPLE_BELOW] if self.people_below else []
        if Zone.STRONG_EARTHQUAKE in self.zones:
            found.append(Condition.STRONG_EARTHQUAKE)
        if Zone.SNOW_OR_FROST in self.zones:
            found.append(Condition.SNOW_OR_FROST)
        return (*found, *conditions_of_slope(self.slope, self.cut))


@dataclass(frozen=True, slots=True)
class Crew:
    """Who is there to build.

    Args:
        masons: who plaster.
        labourers: who dig, mix and carry.
        load: what one person carries up the hill [kg].
        working_days: in a week.
        lost_to_rain: share of outdoor days that rain takes.
    """

    masons: int = 2
    labourers: int = 4
    load: float = 30.0
    working_days: int = 6
    lost_to_rain: float = 0.1

    def __post_init__(self) -> None:
        for option, value, low, high in (
            ("--masons", self.masons, 1, 20),
            ("--labourers", self.labourers, 1, 60),
            ("--load", self.load, 10, 200),
            ("--working-days", self.working_days, 1, 7),
            ("--rain", self.lost_to_rain, 0, 0.8),
        ):
            if not low <= value <= high:
                raise outside(option, value, low, high)


@dataclass(frozen=True, slots=True)
class Wish:
    """A tank that someone wants.

    Args:
        litres: of water to keep, 500 to 100 000.
        site: where.
        crew: who.
        shop: what can be bought.
        roof: kind of roof; none takes the usual one.
        width_limit: room for the finished wall, face to face [m].
        height_limit: highest wall [m].
        wished_hoops: a hoop bar and one spacing [m] to be judged.
        sand_moisture: of the sand in the heap, percent of its dry mass; none leaves the usual bulking.
        inflow: what the inlet brings at most [L/s].
        prices: the user's own list.
        place: givens of a place that stand before the usual ones; `inside_diameter` and `wall_height` fix the shape.
        need: how the litres came about, by quantity, where people were counted.
    """

    litres: float
    site: Site = field(default_factory=Site)
    crew: Crew = field(default_factory=Crew)
    shop: Shop = USUAL_SHOP
    roof: RoofKind | None = None
    width_limit: float | None = None
    height_limit: float | None = None
    wished_hoops: tuple[Bar, float] | None = None
    sand_moisture: float | None = None
    inflow: float = 0.5
    prices: Prices | None = None
    place: Mapping[str, float] = field(default_factory=dict)
    need: Mapping[str, float] = field(default_factory=dict)

    def __post_init__(self) -> None:
        spacing = None if self.wished_hoops is None else self.wished_hoops[1]
        for option, value, low, high, unit in (
            ("--litres", self.litres, LEAST_LITRES, MOST_LITRES, "L"),
            ("--width-limit", self.width_limit, 0.9, 20, "m"),
            ("--height-limit", self.height_limit, 0.5, 5, "m"),
            ("--sand-moisture", self.sand_moisture, 0, 12, "%"),
            ("--inflow", self.inflow, 0.02, 10, "L/s"),
            ("--hoops", spacing, 0.05, 0.3, "m"),
        ):
            if value is not None and not low <= value <= high:
                raise outside(option, value, low, high, unit)


def litres_for_people(
    people: float, dry_days: float, litres_each: float, spring: float = 0.0
) -> tuple[float, dict[str, float]]:
    """Litres to keep for the dry days, the spring's yield taken off; at least one day's water, for the night's flow.

    Args:
        people: who drink.
        dry_days: days without rain.
        litres_each: for one person and day.
        spring: what it still gives in the dry days, measured with a bucket [L/s].

    Returns:
        Litres, and the quantities on the way.

    Raises:
        NoPlanError: a number outside its range.
    """
    for option, value, low, high in (
        ("--people", people, 1, MOST_PEOPLE),
        ("--dry-days", dry_days, 1, MOST_DAYS),
        ("--litres-each", litres_each, LEAST_EACH, MOST_EACH),
        ("--spring", spring, 0, MOST_SPRING),
    ):
        if not low <= value <= high:
            raise outside(option, value, low, high)
    names = ("daily_need", "spring_daily_yield", "daily_shortfall", "storage_needed")
    known = {
        "people": people, "litres_each": litres_each, "dry_days": dry_days, "large_animals": 0, "small_animals": 0,
        "litres_per_large_animal": 20, "litres_per_small_animal": 4,
        "spring_flow": spring,
        "spring_share_kept": SPRING_SHARE if spring > 0 else 0,
    }  # fmt: skip
    found = BOOK.work_out(known, names, check=False)  # a spring slower than a bucket can time is a spring still
    litres = max(found["storage_needed"], found["daily_need"], LEAST_LITRES)
    return litres, {name: found[name] for name in ("people", "litres_each", "dry_days", *names)} | {
        "spring_flow": spring
    }


SPRING_SHARE = 85.0
"""Share of a measured spring that is counted on [percent]: a worse year, or a spring that was measured too early."""
