"""The page `docs/made-up-masons.md` and its drawing: what every shipped scheme makes of made-up masons.

    python -m tests.benchmarks.masons_curve

writes both anew. Run it after a scheme, a bank or a practical has changed; a test says when the page is stale.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache

from generator import curriculum
from generator.assessment import simulate as sim
from generator.commands.tool import ROOT
from generator.curriculum import CourseContent

PAGE = ROOT / "docs" / "made-up-masons.md"
DRAWING = ROOT / "docs" / "pictures" / "made-up-masons.svg"
COMMAND = "python -m tests.benchmarks.masons_curve"
MASTERIES = tuple(share / 20 for share in range(8, 21))
PEOPLE = sim.PEOPLE
_WIDE, _HIGH, _LEFT, _TOP, _PANEL = 640, 210, 52, 44, 290
_DASH = {False: "", True: ' stroke-dasharray="7 4"'}


@dataclass(frozen=True, slots=True)
class Told:
    """What is told of one scheme.

    Args:
        scheme: its id.
        version: of the scheme.
        questions: on a paper.
        cut: least points.
        curve: certified against known.
        sure: the same for those who know every critical skill.
        gates: the three demands.
    """

    scheme: str
    version: int
    questions: int
    cut: int
    curve: tuple[sim.Share, ...]
    sure: tuple[sim.Share, ...]
    gates: sim.Gates


@cache
def course() -> CourseContent:
    """The shipped course."""
    loaded = curriculum.load(ROOT)
    assert loaded.content is not None, loaded.problems[:5]
    return loaded.content


@cache
def told(scheme: str) -> Told:
    """One shipped scheme; always the same people."""
    content = course()
    rule = content.schemes[scheme]
    exam = sim.exam_of(content, rule)
    curves = (sim.curve(exam, MASTERIES, sure=sure, people=PEOPLE // 5) for sure in (False, True))
    return Told(scheme, rule.version, len(exam.paper), exam.cut, *curves, sim.gates(exam, PEOPLE))


def page(found: Sequence[Told]) -> str:
    """The page as Markdown."""
    return "\n".join(_lines(found)) + "\n"


def _lines(found: Sequence[Told]) -> Iterator[str]:
    habits = sim.HABITS
    yield "# Made-up masons"
    yield ""
    yield f"This page is written by `{COMMAND}`; a test fails when it no longer fits the schemes."
    yield ""
    yield (
        "Real masons don't carry their true mastery on the forehead; made-up ones do. These went through the whole "
        "rule of each scheme: papers drawn from its blueprint, practicals with observers who err, talks on critical "
        "skills, the oral recheck near the cut, the sample panel, and every try that the scheme gives. Nobody learns "
        "between two tries."
    )
    yield ""
    yield (
        f"Assumed, and not measured: a slip in {100 * habits.slip:g} of 100; luck with a question by its options, with "
        f"a number or aloud in {100 * habits.number_guess:g} of 100; half of what is not known is one wrong idea about "
        f"a whole competency; an observer takes a missed step for done in {100 * habits.seen_wrongly:g} of 100, and "
        f"misses a done one in {100 * habits.overlooked:g}; a reading of a poor panel is good by luck in "
        f"{100 * habits.reading_by_luck:g} of 100. So this page shows how a rule would work on such people, and never "
        "how good a real mason is."
    )
    yield ""
    yield "![Certified against what is known, for each scheme](pictures/made-up-masons.svg)"
    yield ""
    yield (
        "Full line: gaps anywhere. Dashed line: every critical skill known, and gaps elsewhere; the number then speaks "
        "of what is not critical alone, so such a person knows more of the whole than it says."
    )
    yield ""
    yield "## Who goes the wrong way"
    yield ""
    yield (
        f"Weak: knows {100 * sim.WEAK:g} of 100 things asked. Lacking: knows {100 * sim.STRONG:g} of 100 and every "
        f"critical skill but one (the one that gets through most often is named). Strong: knows {100 * sim.STRONG:g} "
        f"of 100 and every critical skill. Good is: fewer than {100 * sim.MOST_WEAK:g} in 100 of the weak and of the "
        f"lacking certified, fewer than {100 * sim.MOST_REFUSED:g} in 100 of the strong sent back. In brackets: 95 % "
        "interval."
    )
    yield ""
    yield "| scheme | questions, cut | weak certified | lacking certified | strong sent back | good |"
    yield "|---|---|---|---|---|---|"
    for one in found:
        gates = one.gates
        cells = " | ".join(_gate(gate) for gate in (gates.weak, gates.lacking, gates.strong))
        skill = f" `{gates.lacking.skill}`"
        weak, lacking, strong = cells.split(" | ")
        good = "yes" if gates.met else "NO"
        name = f"{one.scheme} {one.version}"
        yield f"| {name} | {one.questions}, {one.cut} | {weak} | {lacking}{skill} | {strong} | {good} |"
    yield ""
    yield "## What 70 of 100 gets"
    yield ""
    yield (
        "Someone who knows 70 of 100 things is neither weak nor strong, and no cut can be right for such a person. "
        "With gaps anywhere, critical skills included, few get through. With every critical skill known, "
        "most get through within all tries: what is then missing is not what leaks, cracks or hurts."
    )
    yield ""
    yield "| scheme | gaps anywhere, % | every critical skill known, % | the same at the first try, % |"
    yield "|---|---|---|---|"
    for one in found:
        gaps, sure = one.gates.middle, one.gates.middle_sure
        yield f"| {one.scheme} | {_share(gaps)} | {_share(sure)} | {100 * sure.first / sure.people:.1f} |"
    yield ""
    yield "## The curves"
    yield ""
    yield "Certified after all tries, % (95 % interval)."
    for title, curves in (("gaps anywhere", [one.curve for one in found]), ("sure", [one.sure for one in found])):
        yield ""
        yield "Gaps anywhere:" if title != "sure" else "Every critical skill known, gaps elsewhere:"
        yield ""
        yield f"| known, % | {' | '.join(one.scheme for one in found)} |"
        yield f"|---|{'---|' * len(found)}"
        for place, mastery in enumerate(MASTERIES):
            yield f"| {100 * mastery:.0f} | {' | '.join(_share(curve[place]) for curve in curves)} |"


def _gate(gate: sim.Gate) -> str:
    return f"{100 * gate.wrong:.2f} ({100 * gate.low:.2f}-{100 * gate.high:.2f})"


def _share(share: sim.Share) -> str:
    return f"{100 * share.share:.1f} ({100 * share.low:.1f}-{100 * share.high:.1f})"


def drawing(found: Sequence[Told]) -> str:
    """The curves with their intervals, one panel for each scheme, as SVG."""
    rows = -(-len(found) // 2)
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {_WIDE} {rows * _HIGH + 40}" font-family="sans-serif" '
        'font-size="12" role="img">',
        "<title>Certified against what is known, by scheme</title>",
        f'<rect width="{_WIDE}" height="{rows * _HIGH + 40}" fill="#ffffff"/>',
    ]
    for place, one in enumerate(found):
        lines += _panel(one, (place % 2) * (_WIDE // 2), (place // 2) * _HIGH)
    foot = rows * _HIGH + 26
    lines.append(f'<line x1="52" y1="{foot - 4}" x2="92" y2="{foot - 4}" stroke="#111111" stroke-width="2"/>')
    lines.append(f'<text x="98" y="{foot}">gaps anywhere</text>')
    dash = _DASH[True]
    lines.append(f'<line x1="222" y1="{foot - 4}" x2="262" y2="{foot - 4}" stroke="#111111" stroke-width="2"{dash}/>')
    lines.append(f'<text x="268" y="{foot}">every critical skill known</text>')
    return "\n".join([*lines, "</svg>"]) + "\n"


def _panel(one: Told, left: int, top: int) -> Iterator[str]:
    low, high = MASTERIES[0], MASTERIES[-1]
    wide, tall = _PANEL - _LEFT - 8, _HIGH - _TOP - 40

    def at(known: float, share: float) -> tuple[float, float]:
        x = left + _LEFT + wide * (known - low) / (high - low)
        return round(x, 1), round(top + _TOP + tall * (1 - share), 1)

    yield f'<text x="{left + _LEFT}" y="{top + 28}" font-weight="bold">{one.scheme}</text>'
    for share in (0.0, 0.5, 1.0):
        x, y = at(low, share)
        yield f'<line x1="{x}" y1="{y}" x2="{at(high, share)[0]}" y2="{y}" stroke="#bbbbbb"/>'
        yield f'<text x="{x - 6}" y="{y + 4}" text-anchor="end">{100 * share:.0f} %</text>'
    for known in (0.4, 0.55, 0.7, 0.9):
        x, y = at(known, 0.0)
        yield f'<line x1="{x}" y1="{y}" x2="{x}" y2="{y + 4}" stroke="#111111"/>'
        yield f'<text x="{x}" y="{y + 18}" text-anchor="middle">{100 * known:.0f}</text>'
    yield f'<text x="{at(high, 0.0)[0]}" y="{at(low, 0.0)[1] + 32}" text-anchor="end">known, of 100</text>'
    for shares, sure in ((one.curve, False), (one.sure, True)):
        for each in shares:
            (x, bottom), (_, head) = at(each.mason.mastery, each.low), at(each.mason.mastery, each.high)
            yield f'<line x1="{x}" y1="{bottom}" x2="{x}" y2="{head}" stroke="#888888" stroke-width="6"/>'
        points = " ".join(f"{x},{y}" for x, y in (at(each.mason.mastery, each.share) for each in shares))
        yield f'<polyline points="{points}" fill="none" stroke="#111111" stroke-width="1.5"{_DASH[sure]}/>'


def files() -> dict[str, str]:
    """The files by their place in the project, with the text that they should have."""
    found = [told(scheme) for scheme in course().schemes]
    texts = {PAGE: page(found), DRAWING: drawing(found)}
    return {str(path.relative_to(ROOT)): text for path, text in texts.items()}


if __name__ == "__main__":
    for name, text in files().items():
        (ROOT / name).write_text(text, "utf-8")
