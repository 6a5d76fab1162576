"""Problems: what they are, and how they are shown."""

from presscloth.problems.base import Label, Problem, Problems, Severity, subclasses

__all__ = ["Label", "Problem", "Problems", "Severity", "subclasses"]
