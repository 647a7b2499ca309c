"""A link to a record that does not exist.

Wrong: An id names no record of the kinds that may stand there. Ids are matched letter for
letter: a record's id is the name of its file without the ending.

Why: The reader would be sent to a page that is not there, in the middle of a job.

Mend: Write the id as the record's file is named, or write that record.

Fails, in tests/winding-resistance:

    after: [identify-the-sensor-type]

Passes:

    after: [identify-sensor-type]
"""

from __future__ import annotations

from difflib import get_close_matches

from generator.checks.fault_page import fault
from generator.checks.targets import loose
from generator.problems import Problem
from generator.records.knowledge_base import KnowledgeBase

DANGLING_LINK = fault("dangling-link", __doc__, excusable=False)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each link that names no record."""
    found = []
    for link in loose(kb):
        if link.elsewhere(kb):
            continue
        known = [id_ for kind in link.kinds for id_ in kb.records.get(kind, {})]
        near = get_close_matches(link.id, known, n=1, cutoff=0.6)
        hint = f"did you mean {near[0]}?" if near else f"write {link.kinds[0]}/{link.id}.yml"
        message = f"there is no record {link.id} among the {' or '.join(link.kinds)}"
        found.append(link.problem(kb, DANGLING_LINK, message, hint))
    return found
