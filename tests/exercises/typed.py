"""Signs that people and cats type, for texts drawn at random."""

SIGNS_TYPED = [
    *"0123456789012345678901234567890123456789०१५९,,,...''\"\"//- +=½²³ \u00a0\n\u093c\u200b॰।é😀<&{}",
    *("m", "mm", "ft", "feet", "in", "kg", "L", "m2", "मी", "इंच", "फुट", "बोरी", " 1/2", "1,500", "hoops"),
]
