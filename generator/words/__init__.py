"""Words: languages, numbers, units and plurals; every text that an interface shows."""

from generator.words.language import MissingWordError, Words, grouped, plural_form

__all__ = ["MissingWordError", "Words", "grouped", "plural_form"]
