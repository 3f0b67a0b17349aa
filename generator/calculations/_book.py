"""The one book of formulas; every topic file writes its givens, quantities and misconceptions into it."""

from generator.formula import Book

BOOK = Book()
