"""A flat roof on boards, joists and braced props, each on its own board; everybody is outside."""

from __future__ import annotations

from collections.abc import Mapping

from generator.figures import roof_props
from generator.figures.scene import Scene
from generator.words import Words

NEEDS = roof_props.NEEDS


def draw(values: Mapping[str, float], words: Words) -> Scene:
    """The drawing for one tank.

    Args:
        values: numbers of the tank, by the names in `NEEDS`.
        words: language of its texts.
    """
    title, description = words.say("figure.roof-flat-props.title"), words.say("figure.roof-flat-props.description")
    return roof_props.RoofProps(values, words, dome=False).scene(title, description)
