"""The safety page: every rule with its basis, its limits said, and help from the place first."""

from __future__ import annotations

from datetime import date
from html import unescape
from unittest.mock import patch

from generator.hazards import built_in
from generator.pages import safety
from generator.records.kinds.base import Signed
from tests.pages.books import whole

UNREVIEWED = "not yet been reviewed by a competent person"


def page() -> str:
    """Give the safety page of the demonstration manual."""
    return unescape(safety.page(whole()).html)


def test_every_rule_is_there_with_its_basis() -> None:
    """Each built-in rule has its entry, its hazard and what it rests on."""
    html = page()
    for rule in built_in():
        entry = html.split(f'id="hazards-{rule.id}"')[1].split("</article>")[0]
        assert rule.hazard in entry and f"Basis: {rule.basis}" in entry
        assert all(line in entry for line in rule.avoid)


def test_the_page_says_that_the_rules_are_unreviewed_until_they_are() -> None:
    """The sentence stands as long as one built-in rule lacks a review, and then goes."""
    assert UNREVIEWED in page()
    signed = Signed(by="workshop-lead", date=date(2026, 9, 1))
    reviewed = tuple(rule.model_copy(update={"reviewed": signed}) for rule in built_in())
    with patch.object(safety, "built_in", lambda: reviewed):
        assert UNREVIEWED not in page()


def test_help_of_the_place_wins() -> None:
    """The first-aid text defers to the local services, whatever a shop writes there."""
    part = page().split('id="emergency"')[1].split("</section>")[0]
    assert "local emergency service" in part and "wins over this page" in part
