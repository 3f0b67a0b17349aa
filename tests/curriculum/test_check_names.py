"""Every name that one file uses of another has to be there; what belongs together names each other."""

from pathlib import Path

from tests.curriculum.made_up import FILES, said

BANK = "quizzes/banks/fence.yaml"
COURSE = "course/course.yaml"
MODULE = "course/modules/01-fence/module.yaml"
PLACE = "course/places/lower-pen.yaml"
SCENARIO = "quizzes/scenarios/whole-pen.yaml"
PRACTICAL = "quizzes/practicals/set-a-post.yaml"
SCHEME = "quizzes/schemes/fencer.yaml"
HANDOUT = "handouts/pen-card.yaml"
COMPETENCIES = "course/competencies.yaml"


def test_unknown_names_have_their_nearest_neighbour(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (COURSE, "[01-fence]", "[01-fense]"),
        (MODULE, "place: lower-pen", "place: lower-pan"),
        (MODULE, "competency: counting", "competency: countin"),
        (MODULE, "figures: [pen-plan]", "figures: [pen-plane]"),
        (MODULE, "practicals: [set-a-post]", "practicals: [set-post]"),
        (MODULE, "scenarios: [whole-pen]", "needs: [fences]"),
        (BANK, "module: fence", "module: fencing"),
        (SCENARIO, "place: lower-pen", "place: upper"),
        (SCHEME, "[set-a-post]", "[post]"),
        (SCHEME, "[counting]", "[cunting]"),
        (HANDOUT, "place: lower-pen", "place: lowerpen"),
    ) == [
        "unknown-module-folder course/course.yaml:8:11: there is no course/modules/01-fense/module.yaml "
        "(fix: did you mean '01-fence'?)",
        "module-not-listed course/modules/01-fence/module.yaml:0:0: the course does not list '01-fence' "
        "(fix: add it to modules in course/course.yaml)",
        "unknown-place course/modules/01-fence/module.yaml:5:8: unknown place 'lower-pan' (fix: did you "
        "mean 'lower-pen'?)",
        "unknown-competency course/modules/01-fence/module.yaml:8:15: unknown competency 'countin' (fix: "
        "did you mean 'counting'?)",
        "unknown-figure course/modules/01-fence/module.yaml:13:11: unknown figure 'pen-plane' (fix: did "
        "you mean 'pen-plan'?)",
        "unknown-practical course/modules/01-fence/module.yaml:14:14: unknown practical 'set-post' (fix: "
        "did you mean 'set-a-post'?)",
        "unknown-module course/modules/01-fence/module.yaml:15:9: unknown module 'fences' (fix: did you mean 'fence'?)",
        "unknown-place handouts/pen-card.yaml:4:8: unknown place 'lowerpen' (fix: did you mean 'lower-pen'?)",
        "unknown-module quizzes/banks/fence.yaml:3:9: unknown module 'fencing' (fix: did you mean 'fence'?)",
        "not-listed quizzes/practicals/set-a-post.yaml:3:9: the module 'fence' does not list the practical "
        "'set-a-post' (fix: add it to practicals in course/modules/01-fence/module.yaml)",
        "not-listed quizzes/scenarios/whole-pen.yaml:3:9: the module 'fence' does not list the scenario "
        "'whole-pen' (fix: add it to scenarios in course/modules/01-fence/module.yaml)",
        "unknown-place quizzes/scenarios/whole-pen.yaml:4:8: unknown place 'upper' (fix: choose one of: lower-pen)",
        "unknown-practical quizzes/schemes/fencer.yaml:12:14: unknown practical 'post' (fix: choose one "
        "of: set-a-post)",
        "unknown-competency quizzes/schemes/fencer.yaml:13:25: unknown competency 'cunting' (fix: did you "
        "mean 'counting'?)",
    ]


def test_names_below_questions_and_parts(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (BANK, "- id: gate\n  competency: counting", "- id: gate\n  competency: gates\n  figure: pen"),
        (
            SCENARIO,
            "parts:\n- {id: length, competency: counting",
            "figure: plan\nparts:\n- {id: length, competency: lengths",
        ),
        (PRACTICAL, "competency: counting", "competency: posts"),
        (PRACTICAL, "module: fence", "module: fencing"),
    ) == [
        "wrong-module course/modules/01-fence/module.yaml:14:14: the practical 'set-a-post' belongs to the "
        "module 'fencing' (fix: remove it here, or change its module)",
        "unknown-competency quizzes/banks/fence.yaml:17:15: unknown competency 'gates' (fix: choose one of: counting)",
        "unknown-figure quizzes/banks/fence.yaml:18:11: unknown figure 'pen' (fix: choose one of: "
        "pen-plan, puddle-plan)",
        "unknown-module quizzes/practicals/set-a-post.yaml:3:9: unknown module 'fencing' (fix: did you mean 'fence'?)",
        "unknown-competency quizzes/practicals/set-a-post.yaml:4:13: unknown competency 'posts' (fix: "
        "choose one of: counting)",
        "unknown-figure quizzes/scenarios/whole-pen.yaml:8:9: unknown figure 'plan' (fix: did you mean 'pen-plan'?)",
        "unknown-competency quizzes/scenarios/whole-pen.yaml:10:28: unknown competency 'lengths' (fix: "
        "choose one of: counting)",
    ]


def test_decisions_of_a_scenario_need_no_numbers_and_stand_in_its_own_bank(tmp_path: Path) -> None:
    other_bank = FILES[BANK].replace("module: fence", "module: gate").replace("id: fence", "id: gate")
    other_bank = other_bank[: other_bank.index("questions:")] + (
        "questions:\n- id: hinge\n  competency: counting\n  kind: choice\n  text: {en: Which?, hi: कौन?}\n  options:\n"
        "  - {right: true, text: {en: A, hi: क}, why: {en: Good, hi: ठीक}}\n"
        "  - {text: {en: B, hi: ख}, why: {en: Bad, hi: गलत}}\n"
    )
    assert said(
        tmp_path,
        (SCENARIO, "parts:\n", "decisions: [posts, hinge, hinges]\nparts:\n"),
        (COURSE, "[01-fence]", "[01-fence, 02-gate]"),
        add={
            "quizzes/banks/gate.yaml": other_bank,
            "course/modules/02-gate/module.yaml": FILES[MODULE]
            .replace("id: fence", "id: gate")
            .replace("id: thorns", "id: hinges")
            .replace("[whole-pen]", "[]")
            .replace("[set-a-post]", "[]"),
            "course/modules/02-gate/lesson.en.md": "A gate.\n",
            "course/modules/02-gate/lesson.hi.md": "फाटक।\n",
        },
    ) == [
        "no-decision quizzes/scenarios/whole-pen.yaml:8:13: 'posts' can't be a decision: it is not a choice between "
        "words, an order or pairs (fix: name a question of such a kind)",
        "wrong-module quizzes/scenarios/whole-pen.yaml:8:20: 'hinge' stands in the bank of the module 'gate' "
        "(fix: name a question of 'fence')",
        "unknown-question quizzes/scenarios/whole-pen.yaml:8:27: unknown question 'hinges' "
        "(fix: did you mean 'hinge'?)",
    ]


def test_ids_are_never_used_twice(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (BANK, "- id: gate", "- id: posts"),
        (SCENARIO, "id: water", "id: posts"),
        add={"quizzes/schemes/second.yaml": FILES[SCHEME], "course/places/second.yaml": FILES[PLACE]},
    ) == [
        "duplicate-id course/places/second.yaml:2:5: the place id 'lower-pen' is already taken in "
        "course/places/lower-pen.yaml:2 (fix: choose another; an id is never used twice)",
        "duplicate-id quizzes/banks/fence.yaml:16:7: the question id 'posts' is already taken in "
        "quizzes/banks/fence.yaml:5 (fix: choose another; an id is never used twice)",
        "duplicate-id quizzes/scenarios/whole-pen.yaml:11:8: the id 'posts' is already taken in line 10 "
        "(fix: choose another; an id is never used twice)",
        "duplicate-id quizzes/schemes/second.yaml:2:5: the scheme id 'fencer' is already taken in "
        "quizzes/schemes/fencer.yaml:2 (fix: choose another; an id is never used twice)",
    ]


def test_order_of_modules(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (COURSE, "[01-fence]", "[01-fence, 01-fence, 02-gate]"),
        (MODULE, "practicals:", "needs: [gate]\npracticals:"),
        (SCENARIO, "module: fence", "module: gate"),
        (SCHEME, "critical_competencies: [counting]", "critical_competencies: [gates]"),
        add={
            "course/competencies.yaml": FILES[COMPETENCIES] + "- id: gates\n  text: {en: Gates, hi: फाटक}\n",
            "course/modules/02-gate/module.yaml": FILES[MODULE]
            .replace("id: fence", "id: gate")
            .replace("id: thorns", "id: hinges")
            .replace("[whole-pen]", "[]"),
            "course/modules/02-gate/lesson.en.md": "A gate.\n",
            "course/modules/02-gate/lesson.hi.md": "फाटक।\n",
        },
    ) == [
        "listed-twice course/course.yaml:8:21: '01-fence' is listed twice (fix: remove one of them)",
        "module-order course/modules/01-fence/module.yaml:14:9: 'fence' needs 'gate', which the course "
        "does not teach before it (fix: change the order in course/course.yaml)",
        "wrong-module course/modules/01-fence/module.yaml:16:13: the scenario 'whole-pen' belongs to the "
        "module 'gate' (fix: remove it here, or change its module)",
        "wrong-module course/modules/02-gate/module.yaml:14:14: the practical 'set-a-post' belongs to the "
        "module 'fence' (fix: remove it here, or change its module)",
        "not-listed quizzes/scenarios/whole-pen.yaml:3:9: the module 'gate' does not list the scenario "
        "'whole-pen' (fix: add it to scenarios in course/modules/02-gate/module.yaml)",
        "not-critical quizzes/schemes/fencer.yaml:13:25: 'gates' is critical here and not in "
        "course/competencies.yaml (fix: write 'critical: true' there, or remove it here)",
    ]


def test_an_unreadable_file_does_not_make_its_names_unknown(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (COMPETENCIES, "format: 1", "format: [1"),
        (PLACE, "given:", "given: {"),
        (BANK, "questions:", "questions: ["),
    ) == [
        "not-yaml course/competencies.yaml:1:9: a bracket is opened and never closed (fix: close it, or "
        "put the text in quotes)",
        "not-yaml course/places/lower-pen.yaml:6:8: a bracket is opened and never closed (fix: close it, "
        "or put the text in quotes)",
        "not-yaml quizzes/banks/fence.yaml:5:1: a value is missing here, or starts with a sign (fix: put "
        "the whole text in quotes)",
    ]


def test_a_file_with_a_slip_still_lends_its_id(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (PRACTICAL, "task:", "tasks:"),
        (PLACE, "about:", "abuot:"),
    ) == [
        "missing-key course/places/lower-pen.yaml:1:1: 'about' is missing (fix: add a line 'about: ...')",
        "unknown-key course/places/lower-pen.yaml:4:1: unknown key 'abuot' (fix: did you mean 'about'?)",
        "missing-key quizzes/practicals/set-a-post.yaml:1:1: 'task' is missing (fix: add a line 'task: ...')",
        "unknown-key quizzes/practicals/set-a-post.yaml:6:1: unknown key 'tasks' (fix: did you mean 'task'?)",
    ]
