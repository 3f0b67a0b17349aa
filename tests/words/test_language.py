"""Words of one language: slots, plurals, numbers and units."""

import pytest

from generator.words import MissingWordError, Words, grouped, plural_form

EN = Words(
    "en",
    {
        "page.home": "Welcome to {place}",
        "page.goats": {"one": "{count} goat", "other": "{count} goats"},
        "unit.m": "m",
        "unit.m**2": "m²",
    },
)
HI = Words("hi", {"page.goats": {"one": "{count} बकरी", "other": "{count} बकरियाँ"}, "unit.m": "मी॰"})


def test_slots_are_filled_and_other_values_do_no_harm() -> None:
    assert EN.say("page.home", place="the ridge", count=3) == "Welcome to the ridge"


def test_a_filled_value_is_never_filled_again() -> None:
    assert EN.say("page.home", place="{count}", count=3) == "Welcome to {count}"


@pytest.mark.parametrize(
    ("count", "english", "hindi"),
    [(0, "0 goats", "0 बकरी"), (1, "1 goat", "1 बकरी"), (1.5, "1.5 goats", "1.5 बकरियाँ"), (2, "2 goats", "2 बकरियाँ")],
)
def test_the_count_chooses_the_plural_form(count: float, english: str, hindi: str) -> None:
    assert (EN.say("page.goats", count=count), HI.say("page.goats", count=count)) == (english, hindi)


def test_what_is_missing_is_an_error_and_never_an_empty_text() -> None:
    with pytest.raises(MissingWordError, match=r"en: no word 'page.nothing'"):
        EN.say("page.nothing")
    with pytest.raises(MissingWordError, match=r"'page.home' needs a value for place"):
        EN.say("page.home")
    with pytest.raises(MissingWordError, match=r"'page.goats' has plural forms and needs a count"):
        EN.say("page.goats", count="2")


def test_one_of_a_family_and_a_whole_family() -> None:
    assert EN.say_one_of("unit", "m**2") == "m²"
    assert [key for key, _ in EN.family("page")] == ["page.home", "page.goats"]
    assert list(EN.family("pag")) == []
    assert "unit.m" in EN


@pytest.mark.parametrize(
    ("digits", "english", "hindi"),
    [
        ("0", "0", "0"),
        ("999", "999", "999"),
        ("1000", "1,000", "1,000"),
        ("150000", "150,000", "1,50,000"),
        ("12345678", "12,345,678", "1,23,45,678"),
    ],
)
def test_thousands_are_grouped_as_the_language_does(digits: str, english: str, hindi: str) -> None:
    assert (grouped(digits, "en"), grouped(digits, "hi")) == (english, hindi)


def test_numbers_keep_their_decimals_and_get_a_true_minus() -> None:
    assert EN.number("-1234.50") == "−1,234.50"
    assert HI.number("0.125") == "0.125"


def test_a_number_never_parts_from_its_unit() -> None:
    assert HI.with_unit("1.40", "m") == "1.40\u00a0मी॰"
    assert EN.with_unit("1500", "") == "1,500"


def test_a_fraction_of_zeros_is_not_said() -> None:
    assert EN.with_unit("12.0", "m") == "12\u00a0m"
    assert EN.with_unit("1500.00", "") == "1,500"
    assert [EN.with_unit(shown, "m") for shown in ("10", "12.50", "0.0", "-3.0")] == [
        "10\u00a0m", "12.50\u00a0m", "0\u00a0m", "−3\u00a0m"
    ]  # fmt: skip


def test_a_unit_after_one_has_its_own_word_where_the_language_has_one() -> None:
    units = {"unit.hour": "hours", "unit_for_one.hour": "hour", "unit.kg": "kg"}
    english, hindi = Words("en", units), Words("hi", units | {"unit.hour": "घंटे", "unit_for_one.hour": "घंटा"})
    assert [english.with_unit(shown, "hour") for shown in ("0", "1", "1.0", "1.5", "2")] == [
        "0\u00a0hours", "1\u00a0hour", "1\u00a0hour", "1.5\u00a0hours", "2\u00a0hours"
    ]  # fmt: skip
    assert [hindi.with_unit(shown, "hour") for shown in ("0.5", "1.0", "2")] == [
        "0.5\u00a0घंटा", "1\u00a0घंटा", "2\u00a0घंटे"
    ]  # fmt: skip
    assert english.with_unit("1", "kg") == "1\u00a0kg"
    assert english.with_unit("?", "hour") == "?\u00a0hours"  # the sign for what is asked


def test_plural_rules_of_both_languages() -> None:
    assert [plural_form("en", count) for count in (0, 1, 2)] == ["other", "one", "other"]
    assert [plural_form("hi", count) for count in (0, 0.5, 1, 2)] == ["one", "one", "one", "other"]
