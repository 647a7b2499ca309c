"""What the foot of a page says it rests on."""

from __future__ import annotations

import datetime

from generator.pages.standing import Standing, standing
from generator.records.kinds import Record
from generator.records.kinds.base import Signed
from generator.records.knowledge_base import KnowledgeBase
from tests.demo import changed, demonstration
from tests.pages.books import book_of, page_of

OTHER = Signed(by="workshop-lead", date=datetime.date(2026, 9, 21))


def of(kb: KnowledgeBase, key: str) -> Standing:
    """Give what a record's page rests on."""
    kind, _, id_ = key.partition("/")
    record: Record = kb.records[kind][id_]
    return standing(book_of(kb), record)


def documented() -> KnowledgeBase:
    """Give the small manual as if somebody had read the data sheet it was made up from."""
    return changed(demonstration(), "sources", "corrie-data-sheet", read="in_full")


def test_invented_figures_earn_no_confidence() -> None:
    """The sensor's own values are the demonstration's; the page counts none of them."""
    found = of(demonstration(), "components/crank-sensor-inductive")
    assert (found.verified, found.confidence) == (0, "low")
    assert found.values == 8  # six of its own, two bands, each a file that names the part
    assert [link.title for link in found.sources] and found.practice


def test_read_documents_and_a_second_pair_of_eyes_earn_it() -> None:
    """All but common practice is verified then: fair with it, good without it."""
    kb = changed(documented(), "components", "crank-sensor-hall", reviewed=OTHER)
    hall = of(kb, "components/crank-sensor-hall")
    assert hall.verified == hall.values > 0 and not hall.practice
    assert hall.confidence == "good"
    alone = Signed(by=kb.records["components"]["crank-sensor-hall"].author, date=OTHER.date)
    assert of(changed(kb, "components", "crank-sensor-hall", reviewed=alone),
              "components/crank-sensor-hall").confidence == "fair"  # fmt: skip
    assert of(changed(kb, "components", "crank-sensor-hall", reviewed=None),
              "components/crank-sensor-hall").confidence == "low"  # fmt: skip


def test_a_page_without_a_document_is_never_good() -> None:
    """A part that gives no value rests on whoever wrote and reviewed it."""
    kb = changed(documented(), "components", "undertray", reviewed=OTHER)
    found = of(kb, "components/undertray")
    assert (found.values, found.sources, found.confidence) == (0, (), "fair")


def test_the_foot_says_it_all() -> None:
    """Confidence with its count and its rule, documents, owner, and the day for the browser."""
    html = page_of(demonstration(), "tests/winding-resistance").html
    foot = html[html.index('<footer class="foot"') :]
    assert "Confidence: low. 0 of 2 values verified." in foot
    assert 'href="../state-of-the-manual.html#confidence"' in foot
    assert 'href="../sources.html#sources-corrie-data-sheet"' in foot
    assert "Kept by Diagnostic technician" in foot and 'data-due="2027-09-21"' in foot
    assert '<b class="overdue" hidden>' in foot
