"""What a model refuses is said in plain words, with the key's or the value's place and what to write."""

from pathlib import Path

from tests.curriculum.made_up import said

BANK = "quizzes/banks/fence.yaml"
COURSE = "course/course.yaml"
MODULE = "course/modules/01-fence/module.yaml"
PLACE = "course/places/lower-pen.yaml"
SCENARIO = "quizzes/scenarios/whole-pen.yaml"
PRACTICAL = "quizzes/practicals/set-a-post.yaml"
SCHEME = "quizzes/schemes/fencer.yaml"
HANDOUT = "handouts/pen-card.yaml"
COMPETENCIES = "course/competencies.yaml"


def test_slips_in_every_kind_of_file_are_told_at_once(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (COURSE, "title:", "titel:"),
        (MODULE, "minutes: {talk: 5, show: 5, do: 30}", "minutes: {talk: soon, show: 5.5}"),
        (MODULE, "place: lower-pen", "place: Lower Pen"),
        (COMPETENCIES, "critical: true", "critical: yes"),
        (BANK, "kind: choice", "kind: chioce"),
        (PRACTICAL, "format: 1", "format: 2"),
        (SCHEME, "written: 0.6", "written: 60"),
        (PLACE, "side: 4.5", "side: 4,5"),
        (PLACE, "rain: 20", "rain: 020"),
        (PLACE, "invented: true", "invented: false"),
        (SCENARIO, "given: [side, gap, rain]", "given: side"),
        (HANDOUT, "template: pen-card", "template:"),
    ) == [
        "wrong-type course/competencies.yaml:4:13: 'competencies[1].critical' has to be true or false, and "
        "it is the text 'yes' (fix: write true; 'yes' is a text here)",
        "missing-key course/course.yaml:1:1: 'title' is missing (fix: add a line 'title: ...')",
        "unknown-key course/course.yaml:4:1: unknown key 'titel' (fix: did you mean 'title'?)",
        "not-a-name course/modules/01-fence/module.yaml:5:8: 'Lower Pen' is no name: only small letters a "
        "to z, digits and single hyphens (fix: write 'lower-pen')",
        "missing-key course/modules/01-fence/module.yaml:6:1: 'do' is missing in minutes (fix: add a line 'do: ...')",
        "wrong-type course/modules/01-fence/module.yaml:6:17: 'minutes.talk' has to be a whole number, and "
        "it is the text 'soon' (fix: write it without quotes, point or unit)",
        "wrong-type course/modules/01-fence/module.yaml:6:29: 'minutes.show' has to be a whole number, and "
        "it is the number 5.5 (fix: write it without quotes, point or unit)",
        "wrong-value course/places/lower-pen.yaml:5:11: 'invented' has to be true (fix: write true, or "
        "take the file out of this course)",
        "wrong-type course/places/lower-pen.yaml:7:9: 'given.side' has to be a number, and it is the text "
        "'4,5' (fix: write 4.5, with a point)",
        "wrong-type course/places/lower-pen.yaml:9:9: 'given.rain' has to be a number, and it is the text "
        "'020' (fix: write 20, without the leading 0)",
        "empty-value handouts/pen-card.yaml:6:1: 'template' has no value (fix: write a value behind the "
        "colon, or remove the line)",
        "wrong-value quizzes/banks/fence.yaml:18:9: unknown kind 'chioce' (fix: did you mean 'choice'?)",
        "newer-format quizzes/practicals/set-a-post.yaml:1:9: format 2 is newer than this tool reads (fix: "
        "use a newer version of the tool)",
        "wrong-type quizzes/scenarios/whole-pen.yaml:7:8: 'given' has to be a list, and it is the text "
        "'side' (fix: write each item on a line of its own after '- ')",
        "number-out-of-range quizzes/schemes/fencer.yaml:15:12: 'rule.written' may be at most 1, and it is "
        "60 (fix: check the number)",
    ]


def test_slips_inside_questions_name_the_form_that_was_meant(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (BANK, "gap: {one_of: [0.25, 0.5]}", "gap: {from: 1, till: 2}"),
        (BANK, "kind: order", "kynd: order"),
        (BANK, "side: {from: 2, to: 4, step: 0.5}", "side: wide"),
        (BANK, "misconceptions: [one_side_only]", "answer: about right"),
        (BANK, "{right: true, text: {en: Out, hi: बाहर}}", "{right: true, text: Out, wy: x}"),
    ) == [
        "wrong-type quizzes/banks/fence.yaml:10:11: 'questions[1].given.side' has to be a number, and it "
        "is the text 'wide' (fix: write it with a point, without quotes or unit)",
        "missing-key quizzes/banks/fence.yaml:11:5: 'step' is missing in questions[1].given.gap (fix: add "
        "a line 'step: ...')",
        "missing-key quizzes/banks/fence.yaml:11:5: 'to' is missing in questions[1].given.gap (fix: add a "
        "line 'to: ...')",
        "unknown-key quizzes/banks/fence.yaml:11:20: unknown key 'till' in questions[1].given.gap (fix: "
        "choose one of: from, step, to)",
        "wrong-value quizzes/banks/fence.yaml:12:11: 'questions[1].answer' doesn't say how near is near "
        "enough: 'about right' (fix: write 'exact', 'within 2 %' or 'within 5 mm')",
        "wrong-type quizzes/banks/fence.yaml:21:25: 'questions[2].options[1].text' has to be keys and "
        "values, and it is the text 'Out' (fix: write it once for each language: {en: ..., hi: ...})",
        "unknown-key quizzes/banks/fence.yaml:21:30: unknown key 'wy' in questions[2].options[1] (fix: did "
        "you mean 'why'?)",
        "missing-key quizzes/banks/fence.yaml:23:3: 'kind' is missing in questions[3] (fix: add a line 'kind: number')",
    ]


def test_missing_translations_and_unknown_languages(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (COURSE, "hi: बकरी का बाड़ा", "hin: x"),
        (MODULE, "hi: बाड़}", "hi: ''}"),
        (BANK, "    hi: भुजा {side}, दूरी {gap}। कितने खंभे?\n", ""),
        (PLACE, "{en: Lower pen, hi: निचला बाड़ा}", "{en: 12, hi: true}"),
    ) == [
        "unknown-language course/course.yaml:4:24: unknown language 'hin' of the text 'title' (fix: did "
        "you mean 'hi'?)",
        "missing-translation course/modules/01-fence/module.yaml:3:1: the text 'title' is missing in "
        "language 'hi' (fix: add a line 'hi: ...' below it)",
        "wrong-type course/places/lower-pen.yaml:3:12: 'name.en' has to be a text, and it is the number 12 "
        '(fix: put it in quotes: "12")',
        "wrong-type course/places/lower-pen.yaml:3:20: 'name.hi' has to be a text, and it is true (fix: "
        'put it in quotes: "true")',
        "missing-translation quizzes/banks/fence.yaml:13:3: the text 'questions[1].text' is missing in "
        "language 'hi' (fix: add a line 'hi: ...' below it)",
    ]


def test_texts_without_quotes_that_start_with_a_brace(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (SCENARIO, "{en: How long?, hi: कितना लंबा?}", "{en: {side}, hi: 'ठीक {side}'}"),
    ) == [
        "wrong-type quizzes/scenarios/whole-pen.yaml:9:69: 'parts[1].text.en' has to be a text, and it is "
        "keys and values (fix: put the whole text in quotes; without them { starts keys and values)",
    ]


def test_traps_of_old_yaml_stay_what_was_typed(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (MODULE, "talk: 5,", "talk: 12:30,"),
        (PLACE, "gap: 0.5", "gap: 0_5"),
        (PLACE, "side: 4.5", "side: 4.5 m"),
        (SCHEME, "largest_volume: 1", "largest_volume: 0"),
        (COURSE, "id: goat-pen", "id: no"),
    ) == [
        "wrong-type course/modules/01-fence/module.yaml:6:17: 'minutes.talk' has to be a whole number, and "
        "it is the text '12:30' (fix: write it without quotes, point or unit)",
        "wrong-type course/places/lower-pen.yaml:7:9: 'given.side' has to be a number, and it is the text "
        "'4.5 m' (fix: write 4.5, without quotes or unit)",
        "wrong-type course/places/lower-pen.yaml:8:8: 'given.gap' has to be a number, and it is the text "
        "'0_5' (fix: write it with a point, without quotes or unit)",
        "number-out-of-range quizzes/schemes/fencer.yaml:8:19: 'scope.largest_volume' has to be more than "
        "0, and it is 0 (fix: check the number)",
    ]


def test_old_or_wrong_format_and_names_too_long(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (COURSE, "format: 1", "format: one"),
        (HANDOUT, "id: pen-card", "id: a-very-long-name-a-very-long-name-a-very-long-name-x"),
        (SCHEME, "status: provisional", "status: provisonal"),
        (SCHEME, "version: 1", "version: true"),
        (BANK, "- {right: true, text: {en: Out, hi: बाहर}}", "- {right: maybe, text: {en: Out, hi: बाहर}}"),
        (PRACTICAL, "title: {en: Set a post, hi: खंभा लगाएँ}", "title: [a]"),
    ) == [
        "wrong-value course/course.yaml:1:9: 'format' has to be 1 (fix: write 'format: 1')",
        "too-long handouts/pen-card.yaml:2:5: 'id' may have at most 40 signs (fix: shorten it)",
        "wrong-type quizzes/banks/fence.yaml:21:13: 'questions[2].options[1].right' has to be true or "
        "false, and it is the text 'maybe' (fix: write true or false)",
        "wrong-type quizzes/practicals/set-a-post.yaml:5:8: 'title' has to be keys and values, and it is a "
        "list (fix: write it once for each language: {en: ..., hi: ...})",
        "wrong-type quizzes/schemes/fencer.yaml:3:10: 'version' has to be a whole number, and it is true "
        "(fix: write it without quotes, point or unit)",
        "wrong-value quizzes/schemes/fencer.yaml:4:9: 'status' can't be 'provisonal' (fix: did you mean "
        "'provisional'?)",
    ]


def test_a_file_that_is_a_list_or_holds_too_few(tmp_path: Path) -> None:
    assert said(
        tmp_path,
        (
            SCENARIO,
            "- {id: water, competency: counting, asks: puddle, text: {en: How wet?, hi: कितना गीला?}}\n",
            "",
        ),
        (MODULE, "figures: [pen-plan]", "figures: {pen-plan: 1}"),
        (
            MODULE,
            "outcomes:\n- competency: counting\n  text: {en: Count the posts., hi: खंभे गिनें।}\n",
            "outcomes: []\n",
        ),
        add={"course/places/list.yaml": "- a\n- b\n"},
    ) == [
        "too-few course/modules/01-fence/module.yaml:7:11: 'outcomes' needs at least 1, and has 0 (fix: add more)",
        "wrong-type course/modules/01-fence/module.yaml:11:10: 'figures' has to be a list, and it is keys "
        "and values (fix: write each item on a line of its own after '- ')",
        "wrong-type course/places/list.yaml:1:1: the file has to be keys and values, and it is a list "
        "(fix: write 'key: value' lines below it)",
        "too-few quizzes/scenarios/whole-pen.yaml:9:1: 'parts' needs at least 3, and has 2 (fix: add more)",
    ]
