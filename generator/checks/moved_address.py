"""A renamed record's old address that leads nowhere, or is in use again.

Wrong: An entry under `moved` in the settings names a new id that no record has, or an old id that
a record has again, or a kind that there is not.

Why: Whoever follows an old link, from a job card or from another page, would come to nothing or
to another job.

Mend: Correct the entry, or take it out. The command `rename` writes and mends these entries.

Fails, in settings:

    moved:
      - kind: tests
        old: coil-resistance
        new: winding-resistence

Passes:

    moved:
      - kind: tests
        old: coil-resistance
        new: winding-resistance
"""

from __future__ import annotations

from difflib import get_close_matches

from generator.checks.fault_page import fault
from generator.problems import Problem, problem
from generator.records.kinds import KINDS
from generator.records.kinds.knowledge import Moved
from generator.records.knowledge_base import KnowledgeBase

MOVED_ADDRESS = fault("moved-address", __doc__, excusable=False)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each entry whose old address would not lead to its record."""
    origin = kb.origins["settings"]
    found = []
    for index, moved in enumerate(kb.settings.moved):
        fault_at = _fault(kb, moved)
        if fault_at is not None:
            name, message, hint = fault_at
            span = origin.span(("moved", index, name))
            found.append(problem(MOVED_ADDRESS, origin.path, span, message, hint))
    return found


def _fault(kb: KnowledgeBase, moved: Moved) -> tuple[str, str, str] | None:
    if moved.kind not in KINDS:
        near = get_close_matches(moved.kind, KINDS, n=1)
        hint = f"did you mean {near[0]}?" if near else "use one of " + ", ".join(KINDS)
        return "kind", f"there is no kind of record called {moved.kind}", hint
    known = kb.records.get(moved.kind, {})
    if moved.old in known:
        return (
            "old",
            f"{moved.kind}/{moved.old} is a record again, so its address cannot lead elsewhere",
            "take the entry out",
        )
    if moved.new not in known and f"{moved.kind}/{moved.new}" not in kb.broken:
        near = get_close_matches(moved.new, known, n=1)
        hint = f"did you mean {near[0]}?" if near else "write the id it has now"
        return "new", f"there is no record {moved.new} among the {moved.kind}", hint
    return None
