"""How the shipped schemes decide on made-up masons: the curve of certified against known, and the three gates.

The figure that `bench` holds to a limit is the time of one try of 20,000 masons, against drawing the bare random
numbers that it needs. Curve and gates stand below the ratio; `tests/assessment/test_shipped_schemes.py` holds them.
"""

from __future__ import annotations

import time

import numpy as np

from generator.assessment import simulate as sim
from tests.benchmarks import Result, compare
from tests.benchmarks.masons_curve import Told, course, told

LIMIT = 4.0


def exam(scheme: str) -> sim.Exam:
    """A shipped scheme's whole rule."""
    content = course()
    return sim.exam_of(content, content.schemes[scheme])


def bare(whole: sim.Exam, people: int) -> int:
    """The random numbers of one crowd and one try, and one comparison each."""
    draw = np.random.Generator(np.random.PCG64(1))
    steps = sum(len(part.steps) for part in whole.practicals)
    count = len(whole.paper) + 2 * steps + 2 * len(whole.asked | set(whole.critical)) + len(whole.critical) + 3
    return sum(int((draw.random(people) < 0.7).sum()) for _ in range(count))


def results(runs: int = 5) -> list[Result]:
    """One try of the first shipped scheme."""
    whole = exam(next(iter(course().schemes)))

    def ours() -> int:
        return int(sim.certified(whole, sim.sit(whole, sim.Mason(0.7), sim.PEOPLE, "bench")).sum())

    name = f"{sim.PEOPLE:,} made-up masons through an exam, against drawing their random numbers"
    return [compare(name, ours, lambda: bare(whole, sim.PEOPLE), LIMIT, runs, time.process_time)]


def lines() -> list[str]:
    """What `bench` tells below the ratio: every shipped scheme."""
    return [line for scheme in course().schemes for line in said(told(scheme))]


def said(found: Told) -> list[str]:
    """The curve and the gates of one scheme, in lines, and what each part of its rule does."""
    rows = [f"{found.scheme}: certified against known, % (95 % interval); at the first try"]
    for one in found.curve:
        interval = f"{100 * one.low:.2f}-{100 * one.high:.2f}"
        first = 100 * one.first / one.people
        rows.append(f"  {100 * one.mason.mastery:4.0f}  {100 * one.share:6.2f} ({interval})  {first:6.2f}")
    rows.append("  weak through, a critical skill missing through, strong back; at .70 through")
    for name, one in sim.with_helps(exam(found.scheme)):
        gates = found.gates if name == "retest" else sim.gates(one, people=2000)
        three = (gates.weak, gates.lacking, gates.strong)
        shares = ", ".join(f"{100 * gate.wrong:.2f}{'' if gate.met else ' (!)'}" for gate in three)
        middle = f"{100 * gates.middle.share:.1f}, every critical skill {100 * gates.middle_sure.share:.1f}"
        rows.append(f"    {name:11}{shares}; {middle}{'  ALL MET' if gates.met else ''}")
    return rows


if __name__ == "__main__":
    for result in results():
        print(result)  # noqa: T201 (this is what the benchmark is for)
    print("\n".join(lines()))  # noqa: T201
