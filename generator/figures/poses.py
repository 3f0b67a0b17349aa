"""People who bend, lift, kneel and pull: given where hips and shoulders are, knees and elbows follow."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from generator.figures.ink import Ink
from generator.figures.people import PERSON_HEIGHT, fist, limb
from generator.figures.scene import Circle, Element, Group, Point, Polyline, on_circle
from generator.figures.view import View

_THIGH, _UPPER_ARM = 0.245, 0.19
"""Length of thigh and shin, of upper arm and forearm, in heights."""
_SOLE = ((-0.04, 0.0), (0.10, 0.0), (0.08, 0.03), (0.02, 0.05), (-0.04, 0.05))

STANDING = ((-0.01, 0.515), (0.0, 0.80))
"""Hip and shoulder of someone upright: ahead of the feet and above them, in heights."""
LIFTING = ((-0.16, 0.26), (0.06, 0.54))
"""Knees bent, back straight."""
STOOPING = ((-0.08, 0.50), (0.21, 0.57))
"""Legs straight, back bent."""
CARRYING = ((-0.02, 0.50), (0.02, 0.79))


def posed(
    view: View,
    foot: Point,
    side: float,
    pose: tuple[Point, Point],
    hands: Sequence[Point] = (),
    *,
    height: float = PERSON_HEIGHT,
    gloves: bool = False,
    goggles: bool = False,
    step: float = 0.06,
) -> Group:
    """A person in a pose.

    Args:
        view: the picture; all places are its metres.
        foot: on the ground, between the feet.
        side: 1 looks right, -1 looks left.
        pose: hip and shoulder, ahead of the feet and above them, in heights.
        hands: where the hands are, one or two.
        height: when upright, metres.
        gloves: whether the hands are in gloves.
        goggles: whether the eyes are covered.
        step: how far each foot stands from the middle, in heights.
    """
    real = height * view.scale * view.page.unit

    def at(ahead: float, up: float) -> Point:
        return view.at(foot[0] + side * ahead * height, foot[1] + up * height)

    hip, shoulder = pose
    tall = math.dist(hip, shoulder)
    along = ((shoulder[0] - hip[0]) / tall, (shoulder[1] - hip[1]) / tall)
    ahead = (along[1], -along[0])

    def on_body(up: float, off: float) -> Point:
        """A place from the hip along the back, and ahead of it, in heights."""
        return at(hip[0] + along[0] * up + ahead[0] * off, hip[1] + along[1] * up + ahead[1] * off)

    parts: list[Element] = []
    arms = [_arm(at(*shoulder), view.at(*hand), side, real, gloves=gloves) for hand in hands]
    if len(arms) > 1:
        parts += arms[0]
    for shift in (-step, step):
        ankle = (shift, 0.04)
        parts.append(limb((at(*hip), at(*_knee(hip, ankle)), at(*ankle)), 0.075 * real))
        parts.append(Polyline(tuple(at(shift + x, y) for x, y in _SOLE), Ink.THING, closed=True))
    shirt = ((tall + 0.05, -0.03), (tall + 0.05, 0.04), (tall, 0.09), (0.08, 0.095), (-0.08, 0.10))
    back = ((-0.08, -0.10), (0.08, -0.09), (tall, -0.085))
    parts.append(Polyline(tuple(on_body(*point) for point in (*shirt, *back)), Ink.CLOTH, closed=True))
    head = on_body(tall + 0.125, 0.02)
    lean = math.degrees(math.atan2(side * along[0], along[1]))
    parts.append(Circle(head, 0.072 * real, Ink.THING))
    hair = [on_circle(head, 0.072 * real, 90 - lean - side * 70 + side * turn * 32) for turn in range(6)]
    parts.append(Polyline(tuple(hair), Ink.STEEL, closed=True))
    if goggles:
        eyes = on_circle(head, 0.05 * real, 90 - lean - side * 88)
        parts.append(Circle(eyes, 0.028 * real, Ink.SHEET))
        parts.append(Circle(eyes, 0.012 * real, Ink.STEEL))
    for arm in arms[-1:]:
        parts += arm
    return Group("person", tuple(parts))


def gloved_fist(grip: Point, elbow: Point, size: float = 0.085) -> Group:
    """A hand in a glove that holds something, and its forearm; the places are those of the scene."""
    arm, *glove = fist(grip, elbow, size).elements
    worn = tuple(replace(part, ink=Ink.CLOTH) if isinstance(part, Polyline) else part for part in glove)
    return Group("gloved hand", (arm, *worn))


def _knee(hip: Point, ankle: Point) -> Point:
    """Where the knee is: ahead of the line from hip to ankle, as far as the leg is too long for it."""
    reach = math.dist(hip, ankle)
    out = math.sqrt(max(0.0, _THIGH**2 - reach**2 / 4))
    middle = ((hip[0] + ankle[0]) / 2, (hip[1] + ankle[1]) / 2)
    across = ((hip[1] - ankle[1]) / reach, (ankle[0] - hip[0]) / reach)
    return middle[0] + across[0] * out, middle[1] + across[1] * out


def _arm(shoulder: Point, hand: Point, side: float, height: float, *, gloves: bool) -> list[Element]:
    """Upper arm, forearm and hand; the elbow hangs. A hand that is too far away is brought within reach."""
    half = _UPPER_ARM * height
    reach = math.dist(shoulder, hand)
    if reach > 2 * half:
        share = 2 * half / reach
        hand = (shoulder[0] + (hand[0] - shoulder[0]) * share, shoulder[1] + (hand[1] - shoulder[1]) * share)
        reach = 2 * half
    out = math.sqrt(max(0.0, half**2 - reach**2 / 4))
    across = ((hand[1] - shoulder[1]) / reach, (shoulder[0] - hand[0]) / reach) if reach else (0.0, -1.0)
    down = -1.0 if across[1] > 0 or (across[1] == 0 and across[0] * side > 0) else 1.0
    elbow = (
        (shoulder[0] + hand[0]) / 2 + down * across[0] * out,
        (shoulder[1] + hand[1]) / 2 + down * across[1] * out,
    )
    arm: list[Element] = [limb((shoulder, elbow, hand), 0.055 * height)]
    if gloves:
        wrist = (hand[0] + (elbow[0] - hand[0]) * 0.35, hand[1] + (elbow[1] - hand[1]) * 0.35)
        arm.append(limb((wrist, hand), 0.075 * height, Ink.STEEL))
    arm.append(Circle(hand, (0.04 if gloves else 0.033) * height, Ink.STEEL if gloves else Ink.THING))
    return arm
