"""A small panel made before the wall: where it is broken, and where its cover is measured."""

from __future__ import annotations

from collections.abc import Mapping

from generator.figures.ink import Ink
from generator.figures.panels import Names, Panel
from generator.figures.scene import Circle, Element, Group, Scene
from generator.figures.shown import shown
from generator.figures.things import hand
from generator.figures.view import View
from generator.words import Words

NEEDS = (
    "wall_thickness",
    "mesh_cover",
    "inside_mesh_thickness",
    "outside_mesh_thickness",
    "bar_diameter",
    "hoop_diameter",
)

_SIDE = 0.4
"""Side of the panel, metres: usual practice."""
_WIRE = 0.02
PLACES = {"A": -0.15, "B": -0.075, "C": 0.0, "D": 0.075, "E": 0.15}
"""Where the cover is measured along the break, on both faces: metres from its middle, by letter."""
_SHOWN = 0.17
"""Length of the broken edge that the second picture shows, metres."""


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one wall.

    Args:
        values: numbers of the wall, by the names in `NEEDS`.
        words: language of its texts.
    """
    hooped = "hoop_diameter" in values  # a tank of mesh alone has neither hoops nor upright bars

    def own(part: str) -> str:
        if part == "description" and not hooped:
            return words.say("figure.sample-panel.description_of_mesh")
        return words.say_one_of("figure.sample-panel", part)

    names = Names(words, own)
    half = _SIDE / 2
    wall = values["wall_thickness"] / 1000
    cover = values["mesh_cover"] / 1000

    def front(view: View) -> None:
        corner = 0.13
        count = round(_SIDE / _WIRE)
        lines = [-half + _WIRE * (step + 0.5) for step in range(count)]
        mesh: list[Element] = []
        for x in lines:
            if x > half - corner:
                mesh.append(view.line((x, 2 * half - corner - x), (x, half), Ink.WIRE))
                mesh.append(view.line((2 * half - corner - x, x), (half, x), Ink.WIRE))
        plaster = ((-half, -half), (half, -half), (half, half - corner), (half - corner, half), (-half, half))
        view.page.add(
            Group("panel", (view.box(-half, -half, half, half, Ink.BODY), view.shape(*plaster, ink=Ink.WALL_FACE))),
            Group("mesh", tuple(mesh)),
            Group(
                "break",
                tuple(
                    view.line((-half + 0.02 * step, 0.0), (-half + 0.02 * step + 0.012, 0.0), Ink.CROSS)
                    for step in range(count)
                ),
            ),
            hand(view.at(0.33, -0.16), 0.19 * view.scale * view.page.unit, forearm=0.2),
            view.measure((-half, -half), (half, -half), -10),
        )
        for letter, x in PLACES.items():
            view.page.disc(letter, *view.paper(x, 0.045))
            view.page.add(view.line((x, 0.012), (x, -0.012), Ink.GROUND))

    def edge(view: View) -> None:
        unit = view.scale * view.page.unit
        long = _SHOWN / 2
        view.page.add(Group("mortar", view.cut_box(-long, 0.0, long, wall)))
        inner = cover + values["inside_mesh_thickness"] / 1000
        bar = values["bar_diameter"] / 1000 if hooped else 0.0
        hoop = values["hoop_diameter"] / 1000 if hooped else 0.0
        outer = inner + bar + hoop if hooped else wall - cover - values["outside_mesh_thickness"] / 1000
        for low, thick in (
            (cover, values["inside_mesh_thickness"] / 1000),
            (outer, values["outside_mesh_thickness"] / 1000),
        ):
            high = min(low + thick, wall - 0.001)
            steps = 17
            wave = [(-long + 2 * long * step / steps, high if step % 2 else low) for step in range(steps + 1)]
            dots = tuple(Circle(view.at(x, low + high - y), 0.0011 * unit, Ink.STEEL) for x, y in wave[1:-1])
            view.page.add(Group("mesh", (view.path(*wave, ink=Ink.WIRE), *dots)))
        if hooped:
            view.page.add(
                Group("hoop", (view.box(-long, inner + bar, long, inner + bar + hoop, Ink.STEEL_EDGE),)),
                Group("bar", (Circle(view.at(0.02, inner + bar / 2), bar / 2 * unit, Ink.STEEL_EDGE),)),
            )
        for letter, x in zip("AB", (-0.055, 0.055), strict=True):
            view.page.disc(letter, *view.paper(x, wall + 0.009))
            for end in (0.0, cover):
                view.page.add(view.line((x - 0.006, end), (x + 0.006, end), Ink.MEASURE))
            view.page.add(view.line((x, 0.0), (x, cover), Ink.CROSS))

    side = words.with_unit(f"{_SIDE * 1000:.0f}", "mm")
    return names.stacked(
        [
            Panel(
                -half - 0.01,
                -half - 0.055,
                half + 0.2,
                half,
                front,
                heading=names.text("front"),
                above=[names.of("line", (-half + 0.014, 0.0), 120), names.of("mesh", (half - 0.04, half - 0.03), 150)],
                below=[names.of("side", (0.0, -half - 0.018), 200, side)],
                most_high=230,
            ),
            Panel(
                -_SHOWN / 2,
                -0.002,
                _SHOWN / 2,
                wall + 0.017,
                edge,
                heading=names.text("edge"),
                below=[
                    names.of("cover", (-0.055, 0.5 * cover), 130, shown("mesh_cover", values, words)),
                    names.of("wrapped", (0.03, cover), 150),
                ],
            ),
        ],
        note="note",
    )
