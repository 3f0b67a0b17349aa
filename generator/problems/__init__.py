"""Problems: what is wrong with a file, where, and what to do; and how files that people write are read."""

from generator.problems.problem import ExitCode, MachineError, Problem, ProblemsError, RefusedError

__all__ = ["ExitCode", "MachineError", "Problem", "ProblemsError", "RefusedError"]
