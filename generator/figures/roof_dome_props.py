"""A dome on curved joists and braced props, with its rise and the bars of its edge ring; everybody is outside."""

from __future__ import annotations

from collections.abc import Mapping

from generator.figures import roof_props
from generator.figures.scene import Scene
from generator.words import Words

NEEDS = (*roof_props.NEEDS, "roof_rise")


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one tank.

    Args:
        values: numbers of the tank, by the names in `NEEDS`.
        words: language of its texts.
    """
    title, description = words.say("figure.roof-dome-props.title"), words.say("figure.roof-dome-props.description")
    return roof_props.RoofProps(values, words, dome=True).scene(title, description)
