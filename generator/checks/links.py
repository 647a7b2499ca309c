"""A link to a record that does not exist.

A reader who follows it would stand at the vehicle with nothing to read. Ids are matched letter
for letter; the finding names the nearest id there is, and the kind it belongs to if the link
names the right id of the wrong kind.
"""

from __future__ import annotations

from difflib import get_close_matches

from generator.problems import Problem, code, problem
from generator.records.kinds.base import COMMON_PRACTICE, links_of
from generator.records.knowledge_base import KnowledgeBase, Path

DANGLING_LINK = code(
    "dangling-link",
    "The reader would be sent to a page that is not there, in the middle of a job.",
)
WRONG_KIND = code(
    "wrong-kind-of-link",
    "The reader would be sent to a page that cannot answer the question asked here.",
)


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each link that names no record."""
    found: list[Problem] = []
    for record in kb:
        for path, kinds, id_ in links_of(record):
            found.extend(_check(kb, record.key, path, kinds, id_))
    for path, kinds, id_ in links_of(kb.settings):
        found.extend(_check(kb, "settings", path, kinds, id_))
    return found


def _check(
    kb: KnowledgeBase, key: str, path: Path, kinds: tuple[str, ...], id_: str
) -> list[Problem]:
    if any(id_ in kb.records.get(kind, {}) or f"{kind}/{id_}" in kb.broken for kind in kinds):
        return []
    if id_ == COMMON_PRACTICE and "sources" in kinds:
        return []
    origin = kb.origins[key]
    wanted = " or ".join(kinds)
    elsewhere = [kind for kind, by_id in kb.records.items() if id_ in by_id]
    if elsewhere:
        message = f"{id_} is one of the {elsewhere[0]}, but one of the {wanted} is needed here"
        hint = f"name one of the {wanted}"
        return [problem(WRONG_KIND, origin.path, origin.span(path), message, hint, key)]
    known = [known_id for kind in kinds for known_id in kb.records.get(kind, {})]
    near = get_close_matches(id_, known, n=1, cutoff=0.6)
    hint = f"did you mean {near[0]}?" if near else f"write the record {kinds[0]}/{id_}.yml"
    message = f"there is no record {id_} among the {wanted}"
    return [problem(DANGLING_LINK, origin.path, origin.span(path), message, hint, key)]
