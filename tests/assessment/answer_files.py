"""Files that `analyse` is given, made small: results of `mark`, tables, judges."""

from __future__ import annotations

import json
from typing import Any


def answer(question: int, item: str, verdict: str, *mistakes: str) -> dict[str, Any]:
    return {"question": str(question), "item": item, "competency": "pens", "verdict": verdict,
            "points": int(verdict == "right"), "misconceptions": list(mistakes), "reasons": []}  # fmt: skip


def results(*learners: tuple[str, list[dict[str, Any]]], **more: object) -> bytes:
    """What `mark --json` prints for these learners."""
    rows = [{"number": i, "name": name, "points": 0, "most": 9, "answers": answers, "decision": None}
            for i, (name, answers) in enumerate(learners, start=1)]  # fmt: skip
    return json.dumps({"format": 1, "same_formulas": True, "certificates": [], "learners": rows} | more).encode()


TABLE = b"""\
learner,form,q1,q2,q3
Asha,written,1,0,1
Bimla,spoken,0,,1
Chandan,written,1,1,-
"""
LETTERS = b"""\
learner;gate;rope
key;B;A
Asha;B;a
Bimla;C;
Chandan;b;A
"""
JUDGES = b"""\
round,judge,q1,q2,q3
1,Old mason,60,70,50
1,Tile layer,50,60,40
1,Spring keeper,70,80,60
1,Well digger,60,65,55
1,Goat herder,55,70,50
2,Old mason,60,70,50
2,Tile layer,55,65,45
2,Spring keeper,65,75,55
2,Well digger,60,65,55
2,Goat herder,55,70,50
"""
RATINGS = "learner,rating,points\n" + "".join(
    f"P{i},{rating},{points}\n"
    for i, (rating, points) in enumerate([(1, 5), (2, 8), (2, 9), (3, 11), (3, 12), (4, 15), (4, 14), (5, 18), (5, 17)])
)
GROUPS = "learner,group,points\n" + "".join(
    f"A{points},able,{points}\nN{points},not yet,{points - 5}\n" for points in range(10, 20)
)
OBSERVERS = "observer,learner,practical,step,seen\n" + "".join(
    f"{observer},{learner},close-a-fence,{step},{said}\n"
    for learner in "ABCDEF"
    for step in ("gloves", "tidy")
    for observer, said in (("One", "done"), ("Two", "done" if learner != "A" else "not done"))
)
