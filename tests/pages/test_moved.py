"""The page at a renamed record's old address."""

from __future__ import annotations

from dataclasses import replace

from generator.pages import moved
from generator.records.kinds.knowledge import Moved
from tests.demo import demonstration


def with_moved(*entries: tuple[str, str, str]) -> dict[str, str]:
    """Give the documents of the demonstration with records renamed."""
    kb = demonstration()
    listed = [Moved(kind=kind, old=old, new=new) for kind, old, new in entries]
    settings = kb.settings.model_copy(update={"moved": listed})
    planned = moved.planned(replace(kb, settings=settings))
    return {address: make() for address, make in planned.items()}


def test_the_old_address_leads_on_without_a_script() -> None:
    """The page forwards by itself, and carries a plain link for whoever forbids that."""
    (page,) = with_moved(("tests", "coil", "winding-resistance")).values()
    assert 'http-equiv="refresh" content="0; url=winding-resistance.html"' in page
    assert '<a href="winding-resistance.html">' in page
    assert "<script" not in page


def test_its_address_is_the_old_one() -> None:
    """It lies where old links point."""
    assert list(with_moved(("tests", "coil", "winding-resistance"))) == ["tests/coil.html"]


def test_what_never_had_a_page_gets_none() -> None:
    """A value's old id was no address."""
    assert with_moved(("specs", "coil", "inductive-winding")) == {}
