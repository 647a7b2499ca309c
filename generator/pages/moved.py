"""The old addresses of renamed records: a page each that leads on, with nothing else on it."""

from __future__ import annotations

from collections.abc import Mapping

from generator.pages import routes
from generator.pages.page import environment
from generator.pages.policy import POLICY
from generator.records.knowledge_base import KnowledgeBase


def documents(kb: KnowledgeBase) -> Mapping[str, str]:
    """Give address to HTML for each renamed record that had a page of its own.

    The pages are whole by themselves: they need no frame, no style and no script.
    """
    template = environment().get_template("moved.html")
    found = {}
    for moved in kb.settings.moved:
        record = kb.records.get(moved.kind, {}).get(moved.new)
        if moved.kind in routes.PAGED and record is not None:
            old = routes.page_of(moved.kind, moved.old)
            href = routes.relative(old, routes.address(record))
            found[old] = template.render(
                to=record, href=href, manual=kb.settings.title, policy=POLICY
            )  # fmt: skip
    return found
