"""Rules over the whole manual, one a file; each module's text is the page about its fault.

Rules that need every link whole run only when the links are: a missing record would otherwise
be reported once by its link and again by everything that leans on it.
"""

from __future__ import annotations

from collections.abc import Callable

from generator import expected
from generator.checks import (
    condemned_parts,
    drafts,
    links,
    onward,
    orphans,
    outcomes,
    scope,
    signatures,
)
from generator.hazards import findings as cautions
from generator.problems import Problem, has_errors
from generator.records.knowledge_base import KnowledgeBase

Rule = Callable[[KnowledgeBase], list[Problem]]

FIRST: tuple[Rule, ...] = (links.problems,)

RULES: tuple[Rule, ...] = (
    expected.problems,
    cautions.problems,
    condemned_parts.problems,
    drafts.problems,
    onward.problems,
    orphans.problems,
    outcomes.problems,
    scope.problems,
    signatures.problems,
)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give the findings of every rule."""
    found = [finding for rule in FIRST for finding in rule(kb)]
    if has_errors(found) or kb.broken:
        return found
    for rule in RULES:
        found.extend(rule(kb))
    return found
