"""Exercises: kinds of question, variants, worked solutions, marking, printed sets; `marker.js` is the page's twin."""

from generator.exercises.answers import Answers, read_answers
from generator.exercises.check import check, separability_table
from generator.exercises.class_list import Person, read_class_list, same_name
from generator.exercises.draw import NoVariantError
from generator.exercises.fill import aids_said, fill, worked
from generator.exercises.help import HELP, helps
from generator.exercises.items import (
    Area,
    ChoiceItem,
    Item,
    MatchItem,
    NumberItem,
    OrderItem,
    QuestionItem,
    ScenarioItem,
    SpokenItem,
    SpotItem,
)
from generator.exercises.letters import LETTERS, mark_typed
from generator.exercises.make import FigureAreas, make_item, make_scenario
from generator.exercises.mark import Mark, Slip, Verdict, messages
from generator.exercises.marking import mark_choice, mark_match, mark_number, mark_order, mark_spot
from generator.exercises.numbers import Ask, AskReason, Blank, Parsed, parse_number
from generator.exercises.page_data import marker_script, page_data, question_data
from generator.exercises.printed_set import LearnerMarks, SetMarks, make_set, mark_set
from generator.exercises.record import Learner, Record, from_json, to_json
from generator.exercises.scenario import mark_scenario, mark_steps
from generator.exercises.tolerance import Tolerance
from generator.exercises.variants import Separability, Variant, Variants, separability, variant, variants

__all__ = [
    "HELP",
    "LETTERS",
    "Answers",
    "Area",
    "Ask",
    "AskReason",
    "Blank",
    "ChoiceItem",
    "FigureAreas",
    "Item",
    "Learner",
    "LearnerMarks",
    "Mark",
    "MatchItem",
    "NoVariantError",
    "NumberItem",
    "OrderItem",
    "Parsed",
    "Person",
    "QuestionItem",
    "Record",
    "ScenarioItem",
    "Separability",
    "SetMarks",
    "Slip",
    "SpokenItem",
    "SpotItem",
    "Tolerance",
    "Variant",
    "Variants",
    "Verdict",
    "aids_said",
    "check",
    "fill",
    "from_json",
    "helps",
    "make_item",
    "make_scenario",
    "make_set",
    "mark_choice",
    "mark_match",
    "mark_number",
    "mark_order",
    "mark_scenario",
    "mark_set",
    "mark_spot",
    "mark_steps",
    "mark_typed",
    "marker_script",
    "messages",
    "page_data",
    "parse_number",
    "question_data",
    "read_answers",
    "read_class_list",
    "same_name",
    "separability",
    "separability_table",
    "to_json",
    "variant",
    "variants",
    "worked",
]
