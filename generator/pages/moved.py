"""The old addresses of renamed records: a page each that leads on, with nothing else on it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import partial

from generator.pages import routes
from generator.pages.page import environment
from generator.pages.policy import POLICY
from generator.records.kinds.knowledge import Moved
from generator.records.knowledge_base import KnowledgeBase


def planned(kb: KnowledgeBase) -> Mapping[str, Callable[[], str]]:
    """Plan a page for each renamed record that had a page of its own.

    The pages are whole by themselves: they need no frame, no style and no script.
    """
    return {
        routes.page_of(moved.kind, moved.old): partial(_page, kb, moved)
        for moved in kb.settings.moved
        if moved.kind in routes.PAGED and moved.new in kb.records.get(moved.kind, {})
    }


def _page(kb: KnowledgeBase, moved: Moved) -> str:
    record = kb.records[moved.kind][moved.new]
    href = routes.relative(routes.page_of(moved.kind, moved.old), routes.address(record))
    return environment().get_template("moved.html").render(
        to=record, href=href, manual=kb.settings.title, policy=POLICY
    )
