"""Expected values: a spec and the conditions of the day to limits and the way they came about."""

from generator.expected.choose import choose, family
from generator.expected.engine import CannotExpect, expect, needs, table
from generator.expected.findings import problems
from generator.expected.judging import Verdict, judge
from generator.expected.models import MODELS
from generator.expected.readings import Reading, read
from generator.expected.remarks import Remark
from generator.expected.result import CONDITIONS, Condition, Conditions, Expectation, TrailLine

__all__ = [
    "CONDITIONS",
    "MODELS",
    "CannotExpect",
    "Condition",
    "Conditions",
    "Expectation",
    "Reading",
    "Remark",
    "TrailLine",
    "Verdict",
    "choose",
    "expect",
    "family",
    "judge",
    "needs",
    "problems",
    "read",
    "table",
]
