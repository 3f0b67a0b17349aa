"""Problems: what is wrong with a file, where, and what to do; and how files that people write are read."""

from generator.problems.csv_file import Column, Row, each_row, read_csv
from generator.problems.problem import (
    MOST_REPORTED,
    ExitCode,
    MachineError,
    Problem,
    ProblemsError,
    RefusedError,
    few,
    in_order,
)
from generator.problems.text_file import LIMIT, decode, place_of, read_bytes, read_text, seen
from generator.problems.yaml_file import Loc, YamlFile, read_yaml

__all__ = [
    "LIMIT",
    "MOST_REPORTED",
    "Column",
    "ExitCode",
    "Loc",
    "MachineError",
    "Problem",
    "ProblemsError",
    "RefusedError",
    "Row",
    "YamlFile",
    "decode",
    "each_row",
    "few",
    "in_order",
    "place_of",
    "read_bytes",
    "read_csv",
    "read_text",
    "read_yaml",
    "seen",
]
