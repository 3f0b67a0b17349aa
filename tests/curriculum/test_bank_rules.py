"""The rules for whole banks: right options too often the longest, long sentences, questions that come again."""

from __future__ import annotations

from pathlib import Path

from tests.curriculum.item_bank import choice, number, warned

RIGHT_LONG = ("Close the gate at once", "Call it back home", "Look far away")
WRONG_LONG = ("Close the gate", "Call it back to the gate", "Look far away")


def bank(long: int, of: int) -> list[dict]:
    """Choices of which the first ones have a right option that is the longest, each about another animal."""
    animals = ["goat", "cow", "sheep", "mule", "hen", "duck", "dog", "cat", "camel", "horse"]
    return [
        choice(f"gate-{animal}", f"{animal.title()}! What now?", *(RIGHT_LONG if place < long else WRONG_LONG))
        for place, animal in enumerate(animals[:of])
    ]


def test_a_bank_whose_right_options_are_mostly_the_longest_is_told_which(tmp_path: Path) -> None:
    ((code, what),) = warned(tmp_path, *bank(5, 10))
    assert code == "right-is-longest"
    assert "in 5 of 10 choices in 'en'" in what
    assert what.endswith("gate-goat, gate-cow, gate-sheep, gate-mule, gate-hen")


def test_as_many_as_chance_makes_them_are_good_and_a_few_questions_prove_nothing(tmp_path: Path) -> None:
    assert warned(tmp_path / "a", *bank(4, 10)) == []
    assert warned(tmp_path / "b", *bank(7, 7)) == []


def test_a_right_option_that_is_longer_by_a_letter_is_not_seen(tmp_path: Path) -> None:
    alike = ("Close the gate now", "Call the goat now", "Look away quickly")
    told = [
        choice(f"gate-{animal}", f"{animal.title()}! What now?", *alike)
        for animal in ["goat", "cow", "sheep", "mule", "hen", "duck", "dog", "cat"]
    ]
    assert warned(tmp_path, *told) == []


def test_a_bank_of_long_sentences_is_told_its_average(tmp_path: Path) -> None:
    long = (
        "The herder who lives at the far end of the valley asks how many posts you set?",
        "A goat that ran away in the first snow of last winter comes home with two kids, why?",
        "When the last load of stakes is down from the hill and all are tired, who stays there?",
    )
    asked = [choice(f"far-{place}", stem, "One post", "Two posts", "Ten posts") for place, stem in enumerate(long)]
    ((code, what),) = warned(tmp_path, *asked)
    assert code == "long-sentences"
    assert "words on average in 'en'" in what


def test_a_fifth_question_from_the_same_givens_is_told(tmp_path: Path) -> None:
    stems = ("Posts?", "How many stand?", "What is bought?", "Count!", "Again: {side}?")
    asked = [
        number(f"n{place}", f"{{side}} {{gap}} {stem}", misconceptions=["one_side_only", "rain_added"][:1])
        for place, stem in enumerate(stems)
    ]
    told = [what for code, what in warned(tmp_path, *asked) if code == "same-set"]
    assert told == [
        "'post_count' is asked from the same givens by posts, n0, n1, n2 already",
        "'post_count' is asked from the same givens by posts, n0, n1, n2, n3 already",
    ]


def test_nearly_the_same_words_in_two_questions_are_told_in_their_language(tmp_path: Path) -> None:
    options = ("First one", "Second one", "Third one")
    one = choice("rain", "It rained all night on the pen. What do you look at first?", *options, hindi="रात भर क्या?")
    same = choice("wind", "It rained all night on the pen. What do you look at now?", *options, hindi="कल किधर?")
    other = choice("sun", "It was dry all day on the field. Where do you look first?", *options, hindi="दिन में?")
    assert warned(tmp_path, one, same, other) == [("said-before", "the text is nearly that of 'rain' in 'en'")]
