"""Words: languages, numbers, units and plurals; every text that an interface shows."""

from generator.words.language import FOR_ONE, MissingWordError, Words, grouped, plural_form

__all__ = ["FOR_ONE", "MissingWordError", "Words", "grouped", "plural_form"]
