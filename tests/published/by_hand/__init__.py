"""Short sums by hand, one topic a file: every number question of the banks is solved with them, apart from the book."""

from tests.published.by_hand import (
    checking,
    curing_and_filling,
    days_of_decisions,
    frame_and_mesh,
    ground_and_base,
    measuring,
    money_and_people,
    mortar_and_plaster,
    roof,
    strength_and_troughs,
    water,
)
from tests.published.by_hand._script import SUMS, solve

TOPICS = (
    checking,
    curing_and_filling,
    days_of_decisions,
    frame_and_mesh,
    ground_and_base,
    measuring,
    money_and_people,
    mortar_and_plaster,
    roof,
    strength_and_troughs,
    water,
)

__all__ = ["SUMS", "TOPICS", "solve"]
