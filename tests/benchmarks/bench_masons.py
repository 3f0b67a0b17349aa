"""How the shipped schemes decide on made-up masons: the curve of certified against known, and the three gates.

The figure that `bench` holds to a limit is the time of one exam of 20,000 masons, against drawing the bare random
numbers that it needs. The curve and the gates are told and never asserted: a scheme whose bank can't reach them is no
fault of the program. What each help and each length of paper does stands below the ratio.
"""

from __future__ import annotations

import time

import numpy as np

from generator import curriculum
from generator.assessment import simulate as sim
from generator.commands.tool import ROOT
from generator.curriculum import CourseContent
from tests.benchmarks import Result, compare

LIMIT = 4.0
MASTERIES = [share / 20 for share in range(8, 21)]


def course() -> CourseContent:
    loaded = curriculum.load(ROOT)
    assert loaded.content is not None
    return loaded.content


def exam(content: CourseContent, scheme: str, length: int | None = None) -> sim.Exam:
    """A shipped scheme's rule on a paper of its own bank."""
    critical = [competency.id for competency in content.competencies.values() if competency.critical]
    return sim.exam_of(
        content.schemes[scheme],
        content.banks.values(),
        content.scenarios.values(),
        content.practicals,
        critical,
        length,
    )


def bare(whole: sim.Exam, people: int) -> int:
    """The random numbers of one sitting, and one comparison each."""
    draw = np.random.Generator(np.random.PCG64(1))
    steps = sum(len(part.steps) for part in whole.practicals)
    competencies = len({item.competency for item in whole.paper})
    found = sum(int((draw.random((people, len(whole.paper))) < 0.7).sum()) for _ in range(2))
    for _ in range(competencies + 3 * steps):
        found += int((draw.random(people) < 0.7).sum())
    return found


def results(runs: int = 5) -> list[Result]:
    """One sitting of the first shipped scheme."""
    content = course()
    whole = exam(content, next(iter(content.schemes)))

    def ours() -> sim.Share:
        return sim.certified_share(whole, sim.Mason(0.7))

    name = f"{sim.PEOPLE:,} made-up masons through an exam, against drawing their random numbers"
    return [compare(name, ours, lambda: bare(whole, sim.PEOPLE), LIMIT, runs, time.process_time)]


def lines() -> list[str]:
    """What `bench` tells below the ratio: every shipped scheme."""
    content = course()
    return [line for scheme in content.schemes for line in told(scheme, content)]


def told(scheme: str, content: CourseContent) -> list[str]:
    """The curves and the gates of one scheme, in lines."""
    rows = [f"{scheme}: certified against known, % (95 % interval)"]
    helped = sim.with_helps(exam(content, scheme))
    both = zip(sim.curve(helped[0][1], MASTERIES), sim.curve(helped[-1][1], MASTERIES), strict=True)
    for plain, whole in both:
        cells = (f"{100 * one.share:6.2f} ({100 * one.low:.2f}-{100 * one.high:.2f})" for one in (plain, whole))
        rows.append(f"  {100 * plain.mason.mastery:4.0f}  {'   all added '.join(cells)}")
    for length in (20, 30, len(helped[0][1].paper), 40, 60):
        rows.append(f"  questions {length}: weak through, a critical skill missing through, strong back; at .70")
        for name, one in sim.with_helps(exam(content, scheme, length)):
            found = sim.gates(one)
            gates = (found.weak, found.lacking, found.strong)
            shares = ", ".join(f"{100 * gate.wrong:.2f}{'' if gate.met else ' (!)'}" for gate in gates)
            middle = f"{100 * found.middle.share:.1f}, every critical skill {100 * found.middle_sure.share:.1f}"
            rows.append(f"    {name:11}{shares}; {middle}{'  ALL MET' if found.met else ''}")
    return rows


if __name__ == "__main__":
    for result in results():
        print(result)  # noqa: T201 (this is what the benchmark is for)
    print("\n".join(lines()))  # noqa: T201
