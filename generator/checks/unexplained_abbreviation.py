"""An abbreviation that no term explains.

Wrong: Two to five capital letters stand in the words, and neither a term nor a part has them as
its abbreviation, as another name or in its title.

Why: An apprentice would have to guess, and the shop across the road uses the same letters for
something else.

Mend: Add the abbreviation to a term, or write the words out.

Fails, in symptoms/rough-idle-or-pulls-badly:

    driving_advice: It may be driven; the MAF sensor is looked at first.

Passes:

    driving_advice: It may be driven; the air-mass sensor is looked at first.
"""

from __future__ import annotations

import re

from generator.checks.fault_page import fault
from generator.checks.places import words_of
from generator.problems import Problem, Severity
from generator.records.kinds.knowledge import Term
from generator.records.kinds.things import Component
from generator.records.knowledge_base import KnowledgeBase

UNEXPLAINED = fault("unexplained-abbreviation", __doc__, Severity.WARNING)

NOT_SHOWN_TO_LEARNERS = ("sources", "people", "vehicles")
"""Kinds whose capitals are names: of publishers, qualifications and engines."""

# Part numbers, engine codes and pin names go on with a digit or a hyphen.
_CAPITALS = re.compile(r"(?<![\w-])[A-Z]{2,5}(?![\w-])")


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a warning for each abbreviation of a record that nothing explains, once."""
    explained = _explained(kb)
    found: dict[tuple[str, str], Problem] = {}
    for record in kb:
        if record.kind in NOT_SHOWN_TO_LEARNERS:
            continue
        for path, text in words_of(record):
            for letters in _CAPITALS.findall(text):
                if letters not in explained and (record.key, letters) not in found:
                    found[record.key, letters] = kb.problem(
                        UNEXPLAINED, record, path, f"no term explains {letters}",
                        f"write a term with abbreviation: {letters}, or the words themselves",
                    )  # fmt: skip
    return list(found.values())


def _explained(kb: KnowledgeBase) -> set[str]:
    texts = [
        text
        for term in kb.all("terms", Term)
        for text in (term.abbreviation or "", term.title, *term.also)
    ]
    texts += [part.abbreviation or "" for part in kb.all("components", Component)]
    return {letters for text in texts for letters in _CAPITALS.findall(text)}
