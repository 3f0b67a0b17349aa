"""Water works of the tank: emptying, overflow, the pipe to the tap, the vent, and how long a filling takes.

A hole loses water by the square root of the depth above it: the flow dies away while the tank empties, so the last part
takes longest. An overflow without pressure behind it carries far less than an inlet of the same bore under pressure.

Cautions: lead overflow and washout into a lined channel or a soak pit, never on the foot of the tank or a path. Keep
children away from an open manhole, a filling tank and the end of a washout. A screen on the overflow must be cleaned:
its open area, not the pipe, decides what runs through.
"""

from math import pi, sqrt

from generator.calculations._book import BOOK
from generator.calculations.mortar import PERCENT
from generator.calculations.setting_out import MILLIMETRES_IN_METRE
from generator.calculations.volumes import LITRES_IN_CUBIC_METRE
from generator.formula import Constant, OutOfRangeError, common_practice, derived, from_memory, published, whole_down

GRAVITY = Constant(9.81, "m/s**2", derived("gravity, as in the weight of water of 9.81 kN/m3"))
SHARP_EDGE = Constant(0.6, "", published("fluid formula sheet: sharp-edged opening, about 0.6"))
WEIR = Constant(1.7, "m**0.5/s", published("plant engineering note: weir, 1.6 to 1.8 in metres; the middle of it"))
V_NOTCH = Constant(1.38, "m**0.5/s", from_memory("notch of 90 degrees, sharp edge, 0.05 to 0.38 m of water over it"))
HAZEN_WILLIAMS = Constant(10.67, "", published("Hazen-Williams formula pages, metres and m3/s"))
FLOW_POWER = Constant(1.852, "", published("Hazen-Williams formula pages"))
BORE_POWER = Constant(4.87, "", published("Hazen-Williams formula pages"))
LITRES_A_SECOND = Constant(1000, "L/s", derived("1000 L/s is 1 m3/s; leaves a flow in m3/s without its unit"))
BARE_MILLIMETRES = Constant(1000, "mm", derived("1000 mm is 1 m; leaves a bore in metres without its unit"))
SECONDS_IN_MINUTE = Constant(60, "s/minute", derived("1 min is 60 s"))
SECONDS_IN_HOUR = Constant(3600, "s/hour", derived("1 h is 3600 s"))
CENTIMETRE = Constant(0.01, "m", derived("as far as such a height can be known; rounded down to be safe"))
NO_DEPTH = Constant(0, "m", derived("no water stands below the floor"))
TEN_READ_FOR_INCH = Constant(10 / 25.4, "", derived("an inch is 25.4 mm; a centimetre is 10 mm"))
USUAL_WASHOUT = Constant(50, "mm", common_practice("the washout that most tanks have"))
ONE_LITRE_A_SECOND = Constant(1, "L/s", derived("the flow that the wrong idea scales from"))
MINUTES_READ_WRONG = Constant(60, "", derived("seconds taken for minutes"))

SOLD_BORES = (25, 32, 40, 50, 65, 80, 100, 125, 150, 200)
"""Nominal bores of steel water pipe [mm], common practice. Plastic pipe is named by its outside: measure the bore."""

BOOK.given(
    "drain_bore",
    symbol="d_jd",
    unit="mm",
    low=25,
    high=150,
    step=1,
    source=common_practice("washouts that a tank of this course gets"),
)
BOOK.given(
    "outlet_bore",
    symbol="d_jo",
    unit="mm",
    low=25,
    high=150,
    step=1,
    source=common_practice("pipes through the wall of a tank of this course"),
)
BOOK.given(
    "discharge_coefficient",
    symbol="C_jd",
    unit="",
    low=0.5,
    high=0.8,
    step=0.01,
    source=published("engineering examination problem: short outlet with a valve, 0.5 to 0.8"),
)
BOOK.given(
    "drain_end_depth",
    symbol="h_je",
    unit="m",
    low=0,
    high=2,
    step=0.01,
    source=derived("what is left above the outlet when the draining stops; 0 is an empty tank"),
)
BOOK.given(
    "vent_bore",
    symbol="d_ja",
    unit="mm",
    low=25,
    high=150,
    step=1,
    source=common_practice("a bent vent pipe with insect mesh, 50 to 75 mm is usual"),
)
BOOK.given(
    "inlet_flow",
    symbol="Q_ji",
    unit="L/s",
    low=0.02,
    high=10,
    step=0.01,
    source=derived("from a slow spring to a pump's main; time a bucket"),
)
BOOK.given(
    "overflow_bore",
    symbol="d_jv",
    unit="mm",
    low=25,
    high=200,
    step=1,
    source=common_practice("water pipe on sale"),
)
BOOK.given(
    "overflow_head",
    symbol="h_jv",
    unit="m",
    low=0.01,
    high=0.3,
    step=0.005,
    source=derived("room between the overflow's lip and the highest water that the roof allows"),
)
BOOK.given(
    "notch_head",
    symbol="h_jn",
    unit="m",
    low=0.05,
    high=0.38,
    step=0.005,
    source=derived("within what the notch formula holds for; read well upstream of the notch"),
)
BOOK.given(
    "tap_flow",
    symbol="Q_jt",
    unit="L/s",
    low=0.05,
    high=0.8,
    step=0.01,
    source=derived("from a dribble to several taps open at once"),
)
BOOK.given(
    "pipe_length",
    symbol="L_jp",
    unit="m",
    low=1,
    high=1000,
    step=1,
    source=derived("a village pipe; a longer one is worked out by an engineer, with its air valves"),
)
BOOK.given(
    "pipe_bore",
    symbol="d_jp",
    unit="mm",
    low=20,
    high=110,
    step=1,
    source=common_practice("water pipe on sale; measure the bore, not the outside"),
)
BOOK.given(
    "pipe_roughness_c",
    symbol="C_jp",
    unit="",
    low=100,
    high=150,
    step=5,
    source=published("Hazen-Williams formula pages: polyethylene 150, PVC 145 to 150, galvanised 100"),
)
BOOK.given(
    "water_head",
    symbol="h_jw",
    unit="m",
    low=1,
    high=60,
    step=0.5,
    source=common_practice("water's surface above the tap; over 60 m the weakest pipe on sale bursts"),
)


@BOOK.quantity(
    symbol="Q_jd",
    unit="L/s",
    places=2,
    low=0,
    high=95,
    source=derived("opening x speed of water that fell through the depth x share that a real opening lets through"),
)
def orifice_flow(discharge_coefficient: float, drain_bore: float, water_depth: float) -> float:
    """Flow out of the full tank through an open washout. A long pipe behind it lets less through.

    Care: this much water digs a hole and can throw a child over. Lead it away before the valve is opened.

    Args:
        discharge_coefficient: share that the opening lets through [-], 0.5 to 0.8.
        drain_bore: bore of the washout [mm], 25 to 150.
        water_depth: water above the middle of the opening, here the full depth [m], 0.1 to 2.2.

    Returns:
        Flow at the start [L/s], 0 to 95.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(orifice_flow(discharge_coefficient=0.65, drain_bore=63, water_depth=1.4), 2)
        '10.62'
    """
    return (
        discharge_coefficient
        * (pi / 4 * (drain_bore / MILLIMETRES_IN_METRE) ** 2)
        * sqrt(2 * GRAVITY * max(water_depth, NO_DEPTH))
        * LITRES_IN_CUBIC_METRE
    )


@BOOK.quantity(
    symbol="t_jd",
    unit="minute",
    places=0,
    low=0,
    high=2500,
    source=derived("opening's flow summed up while the depth sinks, floor the same at every depth"),
)
def drain_time(
    floor_area: float, water_depth: float, drain_end_depth: float, discharge_coefficient: float, drain_bore: float
) -> float:
    """Time to let the full tank down to a depth. Emptying takes twice as long as the first flow makes one think.

    Nothing means: the depth to stop at is not below the water.

    Args:
        floor_area: area of the floor [m**2], 0.25 to 51.
        water_depth: depth of the water at the start [m], 0.1 to 2.2.
        drain_end_depth: depth at the end [m], 0 to 2.
        discharge_coefficient: share that the opening lets through [-], 0.5 to 0.8.
        drain_bore: bore of the washout [mm], 25 to 150.

    Returns:
        Time [minute], 0 to 2500.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(drain_time(4.2, 1.4, 0, discharge_coefficient=0.65, drain_bore=63), 0)
        '18'
    """
    return (
        2
        * floor_area
        * (sqrt(max(water_depth, drain_end_depth)) - sqrt(drain_end_depth))
        / (discharge_coefficient * (pi / 4 * (drain_bore / MILLIMETRES_IN_METRE) ** 2) * sqrt(2 * GRAVITY))
        / SECONDS_IN_MINUTE
    )


@BOOK.quantity(
    symbol="v_ja",
    unit="m/s",
    places=1,
    low=0,
    high=195,
    source=derived("air must come in as fast as water goes out; flow / area of the vent"),
)
def vent_air_speed(orifice_flow: float, vent_bore: float) -> float:
    """Speed of the air in the vent while the full tank drains: a whistling vent pulls the roof down.

    Open the manhole before the washout is opened wide. Mesh on the vent takes part of its area away.

    Args:
        orifice_flow: flow out of the full tank [L/s], 0 to 95.
        vent_bore: bore of the vent [mm], 25 to 150.

    Returns:
        Speed [m/s], 0 to 195.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(vent_air_speed(orifice_flow=10.6, vent_bore=65), 1)
        '3.2'
    """
    return orifice_flow / LITRES_IN_CUBIC_METRE / (pi / 4 * (vent_bore / MILLIMETRES_IN_METRE) ** 2)


@BOOK.quantity(
    symbol="h_js",
    unit="m",
    places=2,
    low=0,
    high=90,
    source=derived("depth at which the opening lets out what comes in"),
)
def steady_depth(inlet_flow: float, discharge_coefficient: float, outlet_bore: float) -> float:
    """Depth above an open outlet at which as much runs out as comes in: water rises to there and stands.

    Args:
        inlet_flow: water that comes in [L/s], 0.02 to 10.
        discharge_coefficient: share that the opening lets through [-], 0.5 to 0.8.
        outlet_bore: bore of the open outlet [mm], 25 to 150.

    Returns:
        Depth above the middle of the outlet [m], 0 to 90.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(steady_depth(inlet_flow=1.7, discharge_coefficient=0.62, outlet_bore=32), 2)
        '0.59'
    """
    return (
        inlet_flow
        / LITRES_IN_CUBIC_METRE
        / (discharge_coefficient * (pi / 4 * (outlet_bore / MILLIMETRES_IN_METRE) ** 2))
    ) ** 2 / (2 * GRAVITY)


@BOOK.quantity(
    symbol="Q_jv",
    unit="L/s",
    places=2,
    low=0,
    high=60,
    source=derived("lesser of a weir as long as the lip, 1.7 out of a printed 1.6 to 1.8, and a sharp-edged opening"),
)
def overflow_capacity(overflow_bore: float, overflow_head: float) -> float:
    """What an upright overflow pipe with an open lip carries, without pressure behind it.

    A level pipe through the wall and a screened one carry less: take one size more and try it with the tank full.

    Args:
        overflow_bore: bore of the overflow [mm], 25 to 200.
        overflow_head: water over the lip [m], 0.01 to 0.3.

    Returns:
        Flow [L/s], 0 to 60.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(overflow_capacity(overflow_bore=63, overflow_head=0.03), 2)
        '1.43'
    """
    return (
        min(
            WEIR * pi * (overflow_bore / MILLIMETRES_IN_METRE) * overflow_head * sqrt(overflow_head),
            SHARP_EDGE * (pi / 4 * (overflow_bore / MILLIMETRES_IN_METRE) ** 2) * sqrt(2 * GRAVITY * overflow_head),
        )
        * LITRES_IN_CUBIC_METRE
    )


@BOOK.quantity(
    symbol="r_jv", unit="", places=2, low=0, high=3000, source=derived("what the overflow carries / what comes in")
)
def overflow_ratio(overflow_capacity: float, inlet_flow: float) -> float:
    """How many times the inlet's flow the overflow carries away. Under 1 the tank runs over its rim.

    Args:
        overflow_capacity: what the overflow carries [L/s], 0 to 60.
        inlet_flow: water that comes in [L/s], 0.02 to 10.

    Returns:
        Ratio, at least 1 in a sound tank [-], 0 to 3000.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(overflow_ratio(overflow_capacity=1.44, inlet_flow=0.9), 2)
        '1.60'
    """
    return overflow_capacity / inlet_flow


@BOOK.quantity(
    symbol="Q_jn",
    unit="L/s",
    places=2,
    low=0.5,
    high=130,
    source=from_memory("1.38 x height x height x root of the height, notch of 90 degrees; the 1.38 is recalled"),
)
def v_notch_flow(notch_head: float) -> float:
    """Flow of a spring over a notch of 90 degrees in a plate. Check it with a bucket and a watch.

    Args:
        notch_head: water above the point of the notch, a good way upstream [m], 0.05 to 0.38.

    Returns:
        Flow [L/s], 0.5 to 130.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(v_notch_flow(notch_head=0.115), 2)
        '6.19'
    """
    return V_NOTCH * notch_head**2 * sqrt(notch_head) * LITRES_IN_CUBIC_METRE


@BOOK.quantity(
    symbol="t_jf", unit="hour", places=1, low=0, high=700, source=derived("water in the full tank / what comes in")
)
def filling_time(tank_litres: float, inlet_flow: float) -> float:
    """Time in which the inlet fills the empty tank. A new tank is filled in stages, with days between: see `leak_test`.

    Args:
        tank_litres: water in the full tank [L], 100 to 50000.
        inlet_flow: water that comes in [L/s], 0.02 to 10.

    Returns:
        Time [hour], 0 to 700.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(filling_time(tank_litres=7300, inlet_flow=0.35), 1)
        '5.8'
    """
    return tank_litres / inlet_flow / SECONDS_IN_HOUR


@BOOK.quantity(symbol="v_jp", unit="m/s", places=2, low=0, high=3, source=derived("flow / area of the pipe's inside"))
def pipe_speed(tap_flow: float, pipe_bore: float) -> float:
    """Speed of the water in the pipe. Hazen-Williams is at its best near 1 to 3 m/s and a little low below.

    Args:
        tap_flow: water drawn at the tap [L/s], 0.05 to 0.8.
        pipe_bore: inside of the pipe [mm], 20 to 110.

    Returns:
        Speed [m/s], 0 to 3.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(pipe_speed(tap_flow=0.33, pipe_bore=27), 2)
        '0.58'
    """
    return tap_flow / LITRES_IN_CUBIC_METRE / (pi / 4 * (pipe_bore / MILLIMETRES_IN_METRE) ** 2)


@BOOK.quantity(
    symbol="h_jf",
    unit="m",
    places=2,
    low=0,
    high=800,
    source=published("Hazen-Williams formula pages: 10.67 L Q^1.852 / (C^1.852 d^4.87), metres and m3/s"),
)
def pipe_friction_head(pipe_length: float, tap_flow: float, pipe_roughness_c: float, pipe_bore: float) -> float:
    """Height that the water loses by rubbing along the pipe. Bends and valves come on top.

    Args:
        pipe_length: length of the pipe [m], 1 to 1000.
        tap_flow: water drawn at the tap [L/s], 0.05 to 0.8.
        pipe_roughness_c: smoothness number of the pipe [-], 100 to 150.
        pipe_bore: inside of the pipe [mm], 20 to 110.

    Returns:
        Height lost [m], 0 to 800.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(pipe_friction_head(pipe_length=85, tap_flow=0.33, pipe_roughness_c=145, pipe_bore=27), 2)
        '1.40'
    """
    return (  # type: ignore[no-any-return]
        HAZEN_WILLIAMS
        * pipe_length
        * (tap_flow / LITRES_A_SECOND / pipe_roughness_c) ** FLOW_POWER
        / (pipe_bore / BARE_MILLIMETRES) ** BORE_POWER
    )


@BOOK.quantity(
    symbol="h_jt", unit="m", places=2, low=0, high=60, source=derived("water's surface above the tap - height lost")
)
def tap_head(water_head: float, pipe_friction_head: float) -> float:
    """Height of water that still pushes at the running tap, whole centimetres down; it runs well from about 1 m.

    Nothing means: that much water does not come; take a wider pipe.

    Args:
        water_head: water's surface above the tap [m], 1 to 60.
        pipe_friction_head: height lost in the pipe [m], 0 to 800.

    Returns:
        Height [m], 0 to 60.

    Raises:
        OutOfRangeError: a value outside its range.

    Example:
        >>> from generator.formula import show
        >>> show(tap_head(water_head=6.5, pipe_friction_head=1.4), 2)
        '5.10'
    """
    return max(whole_down((water_head - pipe_friction_head) / CENTIMETRE) * CENTIMETRE, NO_DEPTH)


@BOOK.misconception(of="drain_time")
def emptied_at_the_first_flow(
    floor_area: float, water_depth: float, drain_end_depth: float, orifice_flow: float
) -> float:
    """The first, strongest flow was taken to last until the end."""
    litres = floor_area * max(water_depth - drain_end_depth, NO_DEPTH) * LITRES_IN_CUBIC_METRE
    return litres / orifice_flow / SECONDS_IN_MINUTE


@BOOK.misconception(of="drain_time")
def drain_bore_twice_as_wide_twice_as_fast(drain_time: float, drain_bore: float) -> float:
    """The flow was thought to grow like the bore: the time of a 50 mm washout was scaled by it."""
    return drain_time * drain_bore / USUAL_WASHOUT


@BOOK.misconception(of="orifice_flow")
def drain_bore_taken_for_half(orifice_flow: float) -> float:
    """The whole bore was put where half of it belongs: four times the opening."""
    return 4 * orifice_flow


@BOOK.misconception(of="orifice_flow")
def whole_opening_counted(drain_bore: float, water_depth: float) -> float:
    """The share that a real opening lets through was forgotten."""
    opening = pi / 4 * (drain_bore / MILLIMETRES_IN_METRE) ** 2
    return opening * sqrt(2 * GRAVITY * max(water_depth, NO_DEPTH)) * LITRES_IN_CUBIC_METRE


@BOOK.misconception(of="steady_depth")
def twice_the_inflow_twice_the_depth(steady_depth: float, inlet_flow: float) -> float:
    """The depth was thought to grow like the inflow: the depth of 1 L/s was scaled by it."""
    return steady_depth * ONE_LITRE_A_SECOND / inlet_flow


@BOOK.misconception(of="overflow_capacity")
def same_bore_thought_enough(inlet_flow: float) -> float:
    """An overflow of the inlet's bore was taken to carry what the inlet brings; the inlet has pressure behind it."""
    return inlet_flow


@BOOK.misconception(of="overflow_capacity")
def overflow_taken_for_a_full_pipe(overflow_bore: float, overflow_head: float) -> float:
    """A full pipe was counted, though water only trickles over the lip."""
    opening = pi / 4 * (overflow_bore / MILLIMETRES_IN_METRE) ** 2
    return SHARP_EDGE * opening * sqrt(2 * GRAVITY * overflow_head) * LITRES_IN_CUBIC_METRE


@BOOK.misconception(of="overflow_ratio")
def overflow_ratio_turned_round(overflow_capacity: float, inlet_flow: float) -> float:
    """The inflow was divided by what the overflow carries."""
    return inlet_flow / overflow_capacity


@BOOK.misconception(of="overflow_ratio")
def overflow_surplus_for_ratio(overflow_capacity: float, inlet_flow: float) -> float:
    """The inflow was taken off what the overflow carries, though it was asked how many times it is held."""
    return overflow_capacity - inlet_flow


@BOOK.misconception(of="v_notch_flow")
def notch_taken_for_a_straight_edge(notch_head: float) -> float:
    """The notch was worked out as a level edge as wide as the water is high."""
    return WEIR * notch_head**2 * sqrt(notch_head) * LITRES_IN_CUBIC_METRE


@BOOK.misconception(of="filling_time")
def litres_a_second_taken_a_minute(filling_time: float) -> float:
    """Litres a second were taken for litres a minute."""
    return filling_time * MINUTES_READ_WRONG


@BOOK.misconception(of="pipe_friction_head")
def inches_of_pipe_taken_as_centimetres(
    pipe_length: float, tap_flow: float, pipe_roughness_c: float, pipe_bore: float
) -> float:
    """The bore in inches was taken for centimetres: a pipe less than half as wide."""
    bore = pipe_bore * TEN_READ_FOR_INCH / BARE_MILLIMETRES
    flow = tap_flow / LITRES_A_SECOND / pipe_roughness_c
    return HAZEN_WILLIAMS * pipe_length * flow**FLOW_POWER / bore**BORE_POWER  # type: ignore[no-any-return]


@BOOK.misconception(of="pipe_speed")
def pipe_bore_taken_for_half(pipe_speed: float) -> float:
    """The whole bore was put where half of it belongs: a quarter of the speed."""
    return pipe_speed / 4


@BOOK.misconception(of="tap_head")
def head_from_the_floor(water_head: float, water_depth: float, pipe_friction_head: float) -> float:
    """The height was measured from the floor of the tank; the water's surface is what pushes."""
    return max(whole_down((water_head - water_depth - pipe_friction_head) / CENTIMETRE) * CENTIMETRE, NO_DEPTH)


@BOOK.misconception(of="tap_head")
def friction_forgotten(water_head: float) -> float:
    """The pipe was taken to cost nothing."""
    return water_head


def overflow_bore_for(inflow: float, head: float, *, inlet_bore: float = 0.0, open_share: float = 100.0) -> float:
    """The smallest sold bore whose open lip carries the inflow, and which is wider than the inlet.

    Args:
        inflow: most water that can come in [L/s], above 0; from a pipe under pressure, measure it with the valve open.
        head: water over the lip that the roof allows [m], 0.01 to 0.3.
        inlet_bore: bore of the inlet [mm]; the overflow is at least the next size. 0 is a spout without a pipe.
        open_share: open part of the screen [%], above 0 to 100; it takes from what runs through a full pipe.

    Returns:
        Bore [mm].

    Raises:
        OutOfRangeError: a number outside its range, or an inflow that no sold pipe carries: then throttle the inlet,
            set two overflows, or ask a licensed engineer.

    Example:
        >>> overflow_bore_for(0.9, 0.05), overflow_bore_for(0.9, 0.05, inlet_bore=50)
        (50, 65)
    """
    low, high = BOOK.givens["overflow_head"].low, BOOK.givens["overflow_head"].high
    if not (inflow > 0 and low <= head <= high and inlet_bore >= 0 and 0 < open_share <= PERCENT):
        raise OutOfRangeError(
            f"inflow {inflow:g} L/s, head {head:g} m, inlet {inlet_bore:g} mm or screen {open_share:g} % is outside "
            "its range; measure again, or ask a licensed engineer"
        )
    for bore in SOLD_BORES:
        through_the_screen = overflow_taken_for_a_full_pipe(bore, head) * open_share / PERCENT
        carried = min(overflow_capacity(bore, head), through_the_screen)
        if bore > inlet_bore and carried >= inflow:
            return bore
    raise OutOfRangeError(
        f"no sold pipe carries {inflow:g} L/s with {head:g} m over its lip; throttle the inlet, set two overflows, "
        "or ask a licensed engineer"
    )
