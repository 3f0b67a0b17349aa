"""What stands inside the texts of the YAML files: slots, calls, typed numbers, signs."""

from pathlib import Path

from tests.curriculum.made_up import said

BANK = "quizzes/banks/fence.yaml"
MODULE = "course/modules/01-fence/module.yaml"
PLACE = "course/places/lower-pen.yaml"
SCENARIO = "quizzes/scenarios/whole-pen.yaml"
PRACTICAL = "quizzes/practicals/set-a-post.yaml"
COMPETENCIES = "course/competencies.yaml"


def test_faults_inside_texts_are_told_at_their_own_place(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (BANK, "The side is {side}, a gap {gap}.", "The side is {sid}, a gap of 0.5 m."),
        (SCENARIO, "gap {gap}, rain", "gap, rain"),
        (PRACTICAL, "en: Digs", "en: 'Digs {deep} {{ value(\"gpa\") }}'"),
        (COMPETENCIES, "Counts posts", "'Counts {{ value(\"gap\") }}'"),
        (PLACE, "hi: एक बाड़ा।", "hi: 'एक बाड़ा | कुल 5।'"),
    ) == [
        "no-place course/competencies.yaml:5:22: this text belongs to no place, so it has no numbers (fix: "
        'name one: {{ value("gap", place="...") }})',
        "pipe-for-danda course/places/lower-pen.yaml:4:34: a | stands where the danda । belongs (fix: write ।)",
        "danda-after-digit course/places/lower-pen.yaml:4:41: '5।' can be read as another digit 1 (fix: "
        "end the sentence with a word, such as the unit or नग)",
        "missing-slot quizzes/banks/fence.yaml:14:9: the text in language 'en' does not name {gap} (fix: "
        "add {gap} where the learner needs it)",
        "missing-slot quizzes/banks/fence.yaml:14:9: the text in language 'en' does not name {side} (fix: "
        "add {side} where the learner needs it)",
        "unknown-slot quizzes/banks/fence.yaml:14:21: unknown slot '{sid}' (fix: did you mean 'side'?)",
        "typed-number quizzes/banks/fence.yaml:14:37: '0.5 m' is typed by hand (fix: ask for it: {{ "
        'value("...") }}; or, if no quantity gives it, {{ plain("0.5 m") }})',
        "unknown-slot quizzes/practicals/set-a-post.yaml:8:46: unknown slot '{deep}' (fix: write the "
        'number with {{ value("...") }}, or no braces)',
        "unknown-quantity quizzes/practicals/set-a-post.yaml:8:53: unknown quantity or given 'gpa' (fix: "
        "did you mean 'gap'?)",
        "missing-slot quizzes/scenarios/whole-pen.yaml:6:12: the text in language 'en' does not name {gap} "
        "(fix: add {gap} where the learner needs it)",
    ]


def test_a_value_needs_no_translation_of_its_place(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (
            MODULE,
            'A fence of {{ value("fence_length") }}.',
            'A fence of {{ value("fence_length", place="upper") }} {{ figure("pen-plan") }}',
        ),
    ) == [
        "unknown-place course/modules/01-fence/module.yaml:4:27: unknown place 'upper' (fix: choose one of: lower-pen)",
        "unknown-call course/modules/01-fence/module.yaml:4:70: 'figure' can't be asked for here (fix: "
        "only lessons and handouts hold it; here write value(...) or words)",
    ]


def test_a_slot_in_the_text_of_every_language(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (BANK, "दूरी {gap}। कितने", "दूरी। कितने"),
    ) == [
        "missing-slot quizzes/banks/fence.yaml:15:9: the text in language 'hi' does not name {gap} (fix: "
        "add {gap} where the learner needs it)",
    ]


def test_typed_numbers_in_options_steps_pairs_and_cautions(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (BANK, "{en: Out, hi: बाहर}", "{en: 3 m out, hi: बाहर}"),
        (BANK, "{en: Dig, hi: खोदें}", "{en: Dig, hi: '30 सेमी खोदें'}"),
        (BANK, "right: {en: z, hi: ब}", "right: {en: 2 bags, hi: 2 बोरी}"),
        (MODULE, "Wear gloves.", "'Stay {{ plain(\"2 m\") }} or 3 m away.'"),
    ) == [
        "typed-number course/modules/01-fence/module.yaml:12:42: '3 m' is typed by hand (fix: ask for it: "
        '{{ value("...") }}; or, if no quantity gives it, {{ plain("3 m") }})',
        "typed-number quizzes/banks/fence.yaml:21:30: '3 m' is typed by hand (fix: ask for it: {{ "
        'value("...") }}; or, if no quantity gives it, {{ plain("3 m") }})',
        "typed-number quizzes/banks/fence.yaml:28:20: '30 सेमी' is typed by hand (fix: ask for it: {{ "
        'value("...") }}; or, if no quantity gives it, {{ plain("30 सेमी") }})',
        "typed-number quizzes/banks/fence.yaml:39:40: '2 bags' is typed by hand (fix: ask for it: {{ "
        'value("...") }}; or, if no quantity gives it, {{ plain("2 bags") }})',
        "typed-number quizzes/banks/fence.yaml:39:52: '2 बोरी' is typed by hand (fix: ask for it: {{ "
        'value("...") }}; or, if no quantity gives it, {{ plain("2 बोरी") }})',
    ]
