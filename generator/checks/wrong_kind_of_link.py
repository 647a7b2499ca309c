"""A link to a record of the wrong kind.

Wrong: The id names a record, but one of another kind than this field asks for.

Why: The reader would be sent to a page that cannot answer the question asked here.

Mend: Name a record of the kind that is asked for. Where two kinds use one id, check which of the
two you mean.

Fails, in tests/winding-resistance:

    specs: [crank-sensor-inductive]

Passes:

    specs: [inductive-winding]
"""

from __future__ import annotations

from difflib import get_close_matches

from generator.checks.fault_page import fault
from generator.checks.places import second
from generator.checks.targets import loose
from generator.problems import Problem
from generator.records.knowledge_base import KnowledgeBase

WRONG_KIND = fault("wrong-kind-of-link", __doc__, excusable=False)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each link whose id belongs to another kind."""
    found = []
    for link in loose(kb):
        others = link.elsewhere(kb)
        if not others:
            continue
        wanted = " or ".join(link.kinds)
        known = [id_ for kind in link.kinds for id_ in kb.records.get(kind, {})]
        near = get_close_matches(link.id, known, n=1, cutoff=0.6)
        hint = f"did you mean {near[0]}?" if near else f"name one of the {wanted}"
        message = f"{link.id} is one of the {others[0].kind}; one of the {wanted} is needed here"
        at = second(kb, others[0], ("title",), f"{link.id} is this")
        found.append(link.problem(kb, WRONG_KIND, message, hint, at))
    return found
