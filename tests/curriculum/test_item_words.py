"""Texts of items as they are heard: script marks gone, numbers in place, sentences and what they quote."""

from __future__ import annotations

from generator.curriculum.item_words import questions_in, sentences, words_of


def test_a_drawn_number_is_one_word_and_a_plain_one_is_itself() -> None:
    assert words_of('It is {wall_height} or {{ plain("2.5 m") }} high.') == ["it", "is", "5", "or", "2.5", "m", "high"]
    assert words_of('{{ value("hoop_count") }} hoops, "tied"') == ["5", "hoops", "tied"]


def test_sentences_end_at_their_marks_and_at_the_lines_of_a_script() -> None:
    assert sentences("Dig. Then ram: how?") == ["Dig.", "Then ram:", "how?"]
    assert sentences("गड्ढा खोदें। अब क्या?") == ["गड्ढा खोदें।", "अब क्या?"]
    assert sentences("You dig. /\nIt rains. // [2x]\nWhat now? #") == ["You dig.", "It rains.", "What now?"]
    assert sentences("It is 2.5 deep?") == ["It is 2.5 deep?"]


def test_only_what_is_asked_counts_and_not_what_is_quoted() -> None:
    assert questions_in('He says "do not dig". Which one do you mark "not done"?') == ["Which one do you mark ?"]
