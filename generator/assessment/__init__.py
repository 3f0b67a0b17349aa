"""Assessment: what an observer saw, and the decision by the pass rule."""

from generator.assessment.decision import Decision, Reason, Requirement, decide, explain, say_reason
from generator.assessment.observations import Observations, Seen, read_observations

__all__ = [
    "Decision",
    "Observations",
    "Reason",
    "Requirement",
    "Seen",
    "decide",
    "explain",
    "read_observations",
    "say_reason",
]
