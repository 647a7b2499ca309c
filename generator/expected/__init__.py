"""Expected values: a spec and the conditions of the day to limits and the way they came about."""

from generator.expected.engine import CannotExpect, expect, table
from generator.expected.findings import problems
from generator.expected.result import CONDITIONS, Condition, Conditions, Expectation, TrailLine

__all__ = [
    "CONDITIONS",
    "CannotExpect",
    "Condition",
    "Conditions",
    "Expectation",
    "TrailLine",
    "expect",
    "problems",
    "table",
]
