"""A small scheme and practical, about pens for goats."""

from __future__ import annotations

from generator.curriculum.models import Practical, Scheme


def both(text: str) -> dict[str, str]:
    return {"en": text, "hi": text}


FENCE = Practical.model_validate(
    {
        "format": 1, "id": "close-a-fence", "module": "pens", "competency": "closing", "title": both("Close a fence"),
        "task": both("Close it."),
        "steps": [
            {"id": "gloves", "critical": True, "text": both("Gloves on")},
            {"id": "pegs", "text": both("Pegs first")},
            {"id": "tight", "critical": True, "text": both("Wire tight")},
            {"id": "tidy", "text": both("Ends bent in")},
        ],
    }
)  # fmt: skip
PRACTICALS = {FENCE.id: FENCE}
SCHEME = Scheme.model_validate(
    {
        "format": 1, "id": "fence-hand", "version": 2, "status": "provisional", "title": both("Fence hand"),
        "scope": {"role": both("hand"), "largest_volume": 1.0, "largest_wall_height": 1.0, "roof": both("none")},
        "modules": ["pens"], "practicals": ["close-a-fence"], "critical_competencies": ["closing"],
        "experience_route": both("Whoever closed fences elsewhere may come."), "retest": {"wait_days": 14, "most": 2},
        "rule": {"written": 0.7, "practical": 0.75, "cut_from": both("made up for tests")},
    }
)  # fmt: skip
