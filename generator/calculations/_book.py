"""The one book that all topics write in."""

from generator.formula import Book

BOOK = Book()
