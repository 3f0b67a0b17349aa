"""A made-up course about fencing a square goat pen: one of everything, as small as it can be."""

from __future__ import annotations

from pathlib import Path

from generator.curriculum import Loaded, Machine, load
from generator.formula import Book, derived, whole_up

BOOK = Book()
_MADE_UP = derived("made up for a test")
BOOK.given("side", symbol="s", unit="m", low=1, high=9, step=0.1, source=_MADE_UP)
BOOK.given("gap", symbol="g", unit="m", low=0.1, high=1, step=0.05, source=_MADE_UP)
BOOK.given("rain", symbol="R", unit="mm", low=1, high=99, step=1, source=_MADE_UP)


@BOOK.quantity(symbol="L", unit="m", places=2, low=4, high=32, source=_MADE_UP)
def fence_length(side: float) -> float:
    return 4 * side


@BOOK.quantity(symbol="n", unit="", places=0, low=1, high=400, source=_MADE_UP)
def post_count(fence_length: float, gap: float) -> float:
    return whole_up(fence_length / gap)


@BOOK.quantity(symbol="p", unit="m", places=1, low=0, high=9, source=_MADE_UP)
def puddle(rain: float, side: float) -> float:
    depth = rain / 1000
    return depth * side


@BOOK.misconception(of="post_count")
def one_side_only(side: float, gap: float) -> float:
    return whole_up(side / gap)


@BOOK.misconception(of="fence_length")
def rain_added(fence_length: float, rain: float) -> float:
    return fence_length + rain


@BOOK.misconception(of="puddle")
def puddle_doubled(puddle: float) -> float:
    return 2 * puddle


MACHINE = Machine(BOOK, {"pen-plan": ("side", "fence_length"), "puddle-plan": ("puddle",)})

FILES: dict[str, str] = {
    "course/course.yaml": """\
format: 1
id: goat-pen
version: "0.1"
title: {en: Goat pens, hi: बकरी का बाड़ा}
about: {en: How to fence., hi: बाड़ लगाना।}
invented: {en: All invented., hi: सब मनगढ़ंत है।}
languages: [en, hi]
modules: [01-fence]
""",
    "course/competencies.yaml": """\
format: 1
competencies:
- id: counting
  critical: true
  text: {en: Counts posts, hi: खंभे गिनना}
""",
    "course/modules/01-fence/module.yaml": """\
format: 1
id: fence
title: {en: The fence, hi: बाड़}
summary: {en: 'A fence of {{ value("fence_length") }}.', hi: 'बाड़ {{ value("fence_length") }} की।'}
place: lower-pen
minutes: {talk: 5, show: 5, do: 30}
outcomes:
- competency: counting
  text: {en: Count the posts., hi: खंभे गिनें।}
cautions:
- id: thorns
  text: {en: Wear gloves., hi: दस्ताने पहनें।}
figures: [pen-plan]
practicals: [set-a-post]
scenarios: [whole-pen]
""",
    "course/modules/01-fence/lesson.en.md": """\
# The fence

It is {{ value("fence_length") }} long. Stay {{ plain("2 m") }} apart.

{{ caution("thorns") }}

{{ figure("pen-plan") }}

{{ formula("post_count") }}

{{ worked("post_count") }}

{{ exercise("posts") }}

The end.
""",
    "course/modules/01-fence/lesson.hi.md": """\
# बाड़

लंबाई {{ value("fence_length") }} है। {{ plain("2 मीटर") }} दूर रहें।

{{ caution("thorns") }}

{{ figure("pen-plan") }}

{{ formula("post_count") }}

{{ worked("post_count") }}

{{ exercise("posts") }}

बस।
""",
    "course/places/lower-pen.yaml": """\
format: 1
id: lower-pen
name: {en: Lower pen, hi: निचला बाड़ा}
about: {en: A pen., hi: एक बाड़ा।}
invented: true
given:
  side: 4.5
  gap: 0.5
  rain: 20
""",
    "course/words/en.yaml": """\
format: 1
unit: {m: m, mm: mm}
status: {published: published, derived: worked out, common_practice: usual practice, from_memory: from memory}
quantity: {side: side, gap: gap, rain: rain, fence_length: length, post_count: posts, puddle: puddle}
misconception:
  one_side_only: {mistake: One side., hill: Goats walk out.}
  rain_added: {mistake: Rain added., hill: Too much wire.}
  puddle_doubled: {mistake: Doubled., hill: Wet feet.}
figure:
  pen-plan: {title: Plan of the pen, description: A square}
  puddle-plan: {title: Puddle, description: A puddle}
page:
  home: Welcome to {place}
  goats: {one: "{count} goat", other: "{count} goats"}
in_formula: {round_up: round up, depth: depth of the rain}
""",
    "course/words/hi.yaml": """\
format: 1
unit: {m: मी॰, mm: मिमी}
status: {published: छपा, derived: निकाला, common_practice: चलन, from_memory: याद से}
quantity: {side: भुजा, gap: दूरी, rain: बारिश, fence_length: लंबाई, post_count: खंभे, puddle: पानी}
misconception:
  one_side_only: {mistake: एक तरफ।, hill: बकरियाँ निकलीं।}
  rain_added: {mistake: बारिश जोड़ी।, hill: तार ज़्यादा।}
  puddle_doubled: {mistake: दुगुना।, hill: पैर गीले।}
figure:
  pen-plan: {title: बाड़े का नक्शा, description: चौकोर}
  puddle-plan: {title: पानी, description: पानी}
page:
  home: "{place} में स्वागत"
  goats: {one: "{count} बकरी", other: "{count} बकरियाँ"}
in_formula: {round_up: ऊपर का पूरा नंबर, depth: बारिश की गहराई}
""",
    "quizzes/banks/fence.yaml": """\
format: 1
id: fence
module: fence
questions:
- id: posts
  competency: counting
  kind: number
  asks: post_count
  given:
    side: {from: 2, to: 4, step: 0.5}
    gap: {one_of: [0.25, 0.5]}
  misconceptions: [one_side_only]
  text:
    en: The side is {side}, a gap {gap}. How many posts?
    hi: भुजा {side}, दूरी {gap}। कितने खंभे?
- id: gate
  competency: counting
  kind: choice
  text: {en: Which way?, hi: किधर?}
  options:
  - {right: true, text: {en: Out, hi: बाहर}}
  - {text: {en: In, hi: अंदर}}
- id: order
  competency: counting
  kind: order
  text: {en: In order?, hi: क्रम?}
  steps:
  - {en: Dig, hi: खोदें}
  - {en: Set, hi: लगाएँ}
  - {en: Ram, hi: कूटें}
  why: {en: It falls., hi: गिरेगा।}
- id: pairs
  competency: counting
  kind: match
  text: {en: Which?, hi: कौन?}
  pairs:
  - {left: {en: a, hi: क}, right: {en: x, hi: प}}
  - {left: {en: b, hi: ख}, right: {en: y, hi: फ}}
  - {left: {en: c, hi: ग}, right: {en: z, hi: ब}}
  why: {en: It fits., hi: ठीक है।}
""",
    "quizzes/scenarios/whole-pen.yaml": """\
format: 1
id: whole-pen
module: fence
place: lower-pen
title: {en: A whole pen, hi: पूरा बाड़ा}
text: {en: "Side {side}, gap {gap}, rain {rain}.", hi: "भुजा {side}, दूरी {gap}, बारिश {rain}।"}
given: [side, gap, rain]
parts:
- {id: length, competency: counting, asks: fence_length, text: {en: How long?, hi: कितना लंबा?}}
- {id: posts, competency: counting, asks: post_count, text: {en: How many?, hi: कितने?}}
- {id: water, competency: counting, asks: puddle, text: {en: How wet?, hi: कितना गीला?}}
""",
    "quizzes/practicals/set-a-post.yaml": """\
format: 1
id: set-a-post
module: fence
competency: counting
title: {en: Set a post, hi: खंभा लगाएँ}
task: {en: 'Set one every {{ value("gap") }}.', hi: 'हर {{ value("gap") }} पर लगाएँ।'}
steps:
- {id: dig, critical: true, text: {en: Digs, hi: खोदना}}
""",
    "quizzes/schemes/fencer.yaml": """\
format: 1
id: fencer
version: 1
status: provisional
title: {en: Fencer, hi: बाड़ वाला}
scope:
  role: {en: Fencer, hi: बाड़ वाला}
  largest_volume: 1
  largest_wall_height: 1
  roof: {en: None, hi: नहीं}
modules: [fence]
practicals: [set-a-post]
critical_competencies: [counting]
rule:
  written: 0.6
  practical: 0.8
  cut_from: {en: Made up, hi: मनगढ़ंत}
""",
    "handouts/pen-card.yaml": """\
format: 1
id: pen-card
module: fence
place: lower-pen
title: {en: Pen card, hi: बाड़े का कार्ड}
template: pen-card
""",
    "handouts/pen-card.en.md": 'Posts: {{ value("post_count") }}.\n',
    "handouts/pen-card.hi.md": 'खंभे: {{ value("post_count") }}\n',
}


def write(
    root: Path, *edits: tuple[str, str, str], add: dict[str, str] | None = None, drop: tuple[str, ...] = ()
) -> Path:
    """Write the course with edits: (path, text to replace, its replacement)."""
    files = {**FILES, **(add or {})}
    for path, old, new in edits:
        assert old in files[path], f"{path} has no '{old}'"
        files[path] = files[path].replace(old, new)
    for path, text in files.items():
        if path not in drop:
            (root / path).parent.mkdir(parents=True, exist_ok=True)
            (root / path).write_text(text, encoding="utf-8", newline="\n")
    return root


def loaded(
    root: Path, *edits: tuple[str, str, str], add: dict[str, str] | None = None, drop: tuple[str, ...] = ()
) -> Loaded:
    """Load the course with edits."""
    return load(write(root, *edits, add=add, drop=drop), MACHINE)


def said(
    root: Path, *edits: tuple[str, str, str], add: dict[str, str] | None = None, drop: tuple[str, ...] = ()
) -> list[str]:
    """Code and text of every problem of the course with edits."""
    return [f"{problem.code} {problem}" for problem in loaded(root, *edits, add=add, drop=drop).problems]
