"""The rules that shapes make of their own, beyond types: their codes and why each matters.

A shape raises a `PydanticCustomError`; its type is the key here. Its context carries the ``hint``
and, where the fault is in one field of the shape, the way to that field as ``at``.
"""

from __future__ import annotations

from generator.problems import Code, code

RECORD_RULE = code("record-rule", "The record contradicts itself, so a page could mislead.")
"""For a rule that is not in the table below; a test keeps it from being needed."""

RULES: dict[str, Code] = {
    "written-form": code(
        "value-form", "A value that can be read in two ways will be read in the wrong one."
    ),
    "written-unit": code(
        "value-unit", "A figure without a known unit cannot be held against a meter."
    ),
    "written-quantity": code(
        "value-quantity", "The reader would set the meter to the wrong function."
    ),
    "written-limits": code(
        "value-limits", "No reading would pass, and good parts would be thrown out."
    ),
    "written-impossible": code(
        "value-impossible", "No part can show this, so a digit or a unit is wrong."
    ),
    "single-value": code(
        "value-spread", "One figure is worked with here, and nobody could say which of the range."
    ),
    "meter-range": code(
        "meter-range", "Nobody could work out how far a reading on this range may be off."
    ),
    "build-range": code(
        "build-range", "No vehicle was built in it, so the value would hold for none."
    ),
    "cable-size": code("cable-size", "Two sizes give two resistances, and none gives none."),
    "piece-kind": code(
        "piece-kind", "Its share of the loss would be counted twice, or not at all."
    ),
    "shows-stranger": code(
        "shows-stranger", "The share would be worked with nowhere, and nobody would notice."
    ),
    "code-stranger": code(
        "code-stranger", "The code would change the order of tests, but not be shown as a reason."
    ),
    "proof-without-reading": code(
        "proof-without-reading", "Nobody could check what the case was decided on."
    ),
    "one-fix": code(
        "one-fix", "Nobody could tell what cured it, and the next vehicle would get the wrong part."
    ),
    "next-ways": code(
        "next-ways", "The reader would not know which way to go, or would stand still."
    ),
}
"""Type of the error to the code of the fault."""

OF_A_KEY = frozenset({"shows-stranger", "code-stranger"})
"""Rules that find fault with the key of a field and not with its value."""
