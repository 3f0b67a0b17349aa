"""Which numbers count as trade numbers typed by hand, in English and in Hindi, and which do not."""

import pytest

from generator.curriculum.trade_numbers import typed_by_hand


@pytest.mark.parametrize(
    "typed",
    [
        "3 m", "3m", "0.5 m", "3\u00a0m", "450 mm", "450-mm", "12 cm", "2 m2", "3 m³",
        "50 kg", "200 L", "200 litres", "1,500 litres", "2 bags", "5 %", "5%", "7 days",
        "2 weeks", "8 inch", "2 ft", "2½ feet", "1 to 2 m", "1-2 m", "1 – 2 m", "20 x 30 mm",
        "three metres", "half a metre", "twenty litres", "30°", "9 cubic metres", "115 MPa",
        "3 मीटर", "3 मी॰", "3 मि.मी.", "3 मिमी", "3 मि॰मी॰", "३ मीटर", "२.५ मीटर",
        "12 एम.एम.", "30 सेमी", "30 सेंटीमीटर", "50 किलो", "50 किग्रा", "200 लीटर", "200 ली॰",
        "2 बोरी", "2 बोरियाँ", "2 कट्टे", "8 इंच", "2 फुट", "2 से 3 मीटर", "3 घन मीटर",
        "दो मीटर", "डेढ़ मीटर", "7 दिन", "2 हफ्ते", "5 प्रतिशत", "10 फीट",
    ],
)  # fmt: skip
def test_a_number_with_a_unit_is_found_whole(typed: str) -> None:
    for text in (typed, f"Cut {typed}, then", f"({typed})", f"**{typed}**", f"रिंग {typed} की", f"{typed}।"):
        assert [fault.snippet for fault in typed_by_hand(text)] == [typed]


@pytest.mark.parametrize(
    "text",
    [
        "two people", "3 people", "Step 3", "1. Measure", "3 more", "10 minutes", "2 hours",
        "Use 3 gaps or more", "3 masons", "Day 2", "one foot on the ladder",
        "stand on two feet", "4 in a row", "3 tin cans", "M8 bolt", "item-3 makes",
        "version 0.1", "3 mms", "2 meetings", "5 girls", "12 tanks", "1:2 by volume",
        "each metre of ring", "3 लोग", "आठ जगह", "तीन दिन का", "2 मिनट", "3 मीनार", "एक बार",
        "डेढ़ चक्कर", "2 बोलें", "चार तरफ", '{{ value("lap_length") }}', '{{ plain("2 m") }}',
        "{side} m",
    ],
)  # fmt: skip
def test_counts_and_words_are_left_alone(text: str) -> None:
    assert list(typed_by_hand(text)) == []


def test_several_numbers_are_found_in_order_with_their_places() -> None:
    faults = list(typed_by_hand('3 m and {{ value("x") }} and 4 kg'))
    assert [(fault.start, fault.snippet) for fault in faults] == [(0, "3 m"), (29, "4 kg")]
    assert faults[1].fix == 'ask for it: {{ value("...") }}; or, if no quantity gives it, {{ plain("4 kg") }}'


def test_a_dot_below_may_be_typed_as_one_sign_or_two() -> None:
    for word in ("डे\u0922\u093c मीटर", "डे\u095d मीटर", "2 ह\u092b\u093c्ते", "2 ह\u095e्ते"):
        assert [fault.snippet for fault in typed_by_hand(word)] == [word]
