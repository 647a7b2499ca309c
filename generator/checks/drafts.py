"""A released record that leans on a draft or a withdrawn one.

What is not released must not reach the bay by a side door.
"""

from __future__ import annotations

from generator.problems import Problem, code
from generator.records.kinds.base import links_of
from generator.records.knowledge_base import KnowledgeBase

LEANS_ON_UNRELEASED = code(
    "leans-on-unreleased",
    "A released page would pass on what nobody has released, or what was withdrawn for a reason.",
)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each link from an approved record to one that is not."""
    found: list[Problem] = []
    for record in kb:
        if record.status != "approved":
            continue
        for path, kinds, id_ in links_of(record):
            for kind in kinds:
                target = kb.records.get(kind, {}).get(id_)
                if target is not None and target.status != "approved":
                    found.append(
                        kb.problem(
                            LEANS_ON_UNRELEASED, record, path,
                            f"{id_} is {target.status}, but this record is released",
                            "release that record, or link to another",
                        )
                    )  # fmt: skip
    return found
