"""Sheets: everything printed, as bytes of PDF made from data; no path, no clock, black ink on A4."""

from generator.sheets.booklet import booklet_pdf
from generator.sheets.certificate import Signed, certificate_pdf
from generator.sheets.formulas import formulas_pdf
from generator.sheets.handout import handout_pdf
from generator.sheets.key import key_pdf
from generator.sheets.pictures import pictures_pdf
from generator.sheets.practical import practical_pdf
from generator.sheets.reckoner import reckoner_pdf
from generator.sheets.scenario_booklet import scenario_pdf
from generator.sheets.strip import strip_pdf
from generator.sheets.worksheet import worksheet_pdf
from generator.sheets.workshop import Pack

__all__ = [
    "Pack",
    "Signed",
    "booklet_pdf",
    "certificate_pdf",
    "formulas_pdf",
    "handout_pdf",
    "key_pdf",
    "pictures_pdf",
    "practical_pdf",
    "reckoner_pdf",
    "scenario_pdf",
    "strip_pdf",
    "worksheet_pdf",
]
