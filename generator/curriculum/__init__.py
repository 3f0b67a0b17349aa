"""Curriculum: what authors wrote, read into frozen models, checked across all files, with every number in place."""

from generator.curriculum.content import CourseContent, Loaded, Machine, check, load
from generator.curriculum.lessons import (
    Block,
    CautionBlock,
    ExerciseBlock,
    FigureBlock,
    FormulaBlock,
    Prose,
    Text,
    WorkedBlock,
)
from generator.curriculum.schemas import schemas

__all__ = [
    "Block",
    "CautionBlock",
    "CourseContent",
    "ExerciseBlock",
    "FigureBlock",
    "FormulaBlock",
    "Loaded",
    "Machine",
    "Prose",
    "Text",
    "WorkedBlock",
    "check",
    "load",
    "schemas",
]
