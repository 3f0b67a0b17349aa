"""Curriculum: what authors wrote, read into frozen models, checked across all files, with every number in place."""

from generator.curriculum.content import CourseContent, Loaded, Machine, check, load, warnings
from generator.curriculum.lessons import (
    Block,
    CardBlock,
    CautionBlock,
    ExerciseBlock,
    FaultBlock,
    FigureBlock,
    FormulaBlock,
    LinesBlock,
    LogBlock,
    Prose,
    RulerBlock,
    SheetBlock,
    TableBlock,
    Text,
    WorkedBlock,
)
from generator.curriculum.own_tank import NoSuchSheetError, at_tank
from generator.curriculum.schemas import schemas
from generator.curriculum.taught import first_taught, taught

__all__ = [
    "Block",
    "CardBlock",
    "CautionBlock",
    "CourseContent",
    "ExerciseBlock",
    "FaultBlock",
    "FigureBlock",
    "FormulaBlock",
    "LinesBlock",
    "Loaded",
    "LogBlock",
    "Machine",
    "NoSuchSheetError",
    "Prose",
    "RulerBlock",
    "SheetBlock",
    "TableBlock",
    "Text",
    "WorkedBlock",
    "at_tank",
    "check",
    "first_taught",
    "load",
    "schemas",
    "taught",
    "warnings",
]
