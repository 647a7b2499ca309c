"""The page about a fault: there is one for every code, and its examples do what it says."""

from __future__ import annotations

import datetime
from importlib import import_module

import pytest

from generator import checks, expected
from generator.checks.fault_page import EXCUSABLE, PAGES, FaultPage, parsed
from generator.checks.pages import every_page, guide, page_of
from generator.diagnosis import findings as order_of_tests
from generator.hazards import findings as cautions
from generator.problems import CODES, Problem
from generator.records import strict_yaml
from generator.records.knowledge_base import KnowledgeBase
from tests.checks.manuals import path_of, read, with_fields, written

DAY = datetime.date(2026, 10, 5)
ALL = every_page()
WITH_RECORD = sorted(name for name, page in ALL.items() if page.fails and page.record)
ALONE = sorted(name for name, page in ALL.items() if page.fails and not page.record)
SEEN_ELSEWHERE = ("orphan", "leans-on-unreleased")
"""Faults that one record brings about and another one has."""


def found_in(name: str, page: FaultPage, example: str) -> bool:
    """Say whether a fault is found once an example is put into its record.

    It has to be found in that record, unless it is a fault of what links to or from it.
    """
    text = with_fields(page.record, example)
    if page.record != "settings":
        record, wrong, _origin = read(page.record, text)
        if record is None or wrong:
            return name in {fault.code for fault in wrong}
    return any(
        fault.code == name and (fault.path == path_of(page.record) or name in SEEN_ELSEWHERE)
        for fault in asked(name, written(page.record, text).kb)
    )


def asked(name: str, kb: KnowledgeBase) -> list[Problem]:
    """Ask the one rule that gives a fault, which is quicker than asking them all."""
    if name == "review-overdue":
        return checks.review_overdue.problems(kb, DAY)
    if name == "unused-exception":
        return checks.unused_exception.problems(kb, checks.problems(kb))
    if name in PAGES:
        rule = import_module(f"generator.checks.{name.replace('-', '_')}")
        found: list[Problem] = rule.problems(kb)
        return found
    return [*expected.problems(kb), *cautions.problems(kb), *order_of_tests.problems(kb)]


@pytest.mark.parametrize("name", WITH_RECORD)
def test_the_example_that_fails_has_the_fault(name: str) -> None:
    """Put into the record it is for, the first example gives the fault its page is about."""
    assert found_in(name, ALL[name], ALL[name].fails)


@pytest.mark.parametrize("name", WITH_RECORD)
def test_the_example_that_passes_has_not(name: str) -> None:
    """Put into the same record, the second example does not give that fault."""
    assert not found_in(name, ALL[name], ALL[name].passes)


@pytest.mark.parametrize("name", ALONE)
def test_a_file_that_fails_has_the_fault(name: str) -> None:
    """Read as a file, the first example gives the fault, and the second gives none at all."""
    assert name in {f.code for f in strict_yaml.read(ALL[name].fails.encode(), "x.yml").problems}
    assert not strict_yaml.read(ALL[name].passes.encode(), "x.yml").problems


def test_every_rule_is_the_page_of_one_fault() -> None:
    """Each rule's module is named after its code, and its text is that code's page."""
    for name, page in PAGES.items():
        module = import_module(f"generator.checks.{name.replace('-', '_')}")
        assert parsed(module.__doc__ or "") == page
        assert CODES[name].why == page.why
        assert page.fails, f"{name} has no example"


def test_every_code_has_a_page() -> None:
    """No fault is without a title, a reason and a mend."""
    pages = every_page()
    assert set(pages) == set(CODES)
    for name, page in pages.items():
        assert all((page.title, page.why, page.mend)), name
        assert not page.title.endswith("."), name
        assert bool(page.fails) == bool(page.passes), name


def test_the_guide_speaks_of_faults_there_are() -> None:
    """A page whose fault is gone does not stay behind, and none repeats a rule's own."""
    written = [name for pages in guide().values() for name in pages]
    assert len(set(written)) == len(written)
    assert set(written) <= set(CODES)
    assert not set(written) & set(PAGES)


def test_titles_are_unique() -> None:
    """Nobody takes one fault for another in the list."""
    titles = [page.title for page in ALL.values()]
    assert len(set(titles)) == len(titles)


def test_a_code_without_a_page_still_has_its_reason() -> None:
    """A new fault of another room is explained by what its code says."""
    name = next(iter(sorted(set(CODES) - set(PAGES))))
    assert page_of(name).why == CODES[name].why


def test_only_rules_of_this_room_may_be_silenced() -> None:
    """A caution, a fault of the file and a guard of the release can never be excused."""
    assert set(PAGES) >= EXCUSABLE
    for guarded in ("dangling-link", "approved-by-author", "leans-on-unreleased",
                    "silent-step", "duplicate-key", "unused-exception"):  # fmt: skip
        assert guarded in CODES
        assert guarded not in EXCUSABLE


@pytest.mark.parametrize(
    "text",
    ["", "A title.", "A title.\n\nWrong: x.\n\nWhy: y.",
     "A title.\n\nWrong: x.\n\nWhy: y.\n\nMend: z.\n\nFails, in a/b:\n\n    c: 1"],
)  # fmt: skip
def test_a_page_of_another_shape_is_refused(text: str) -> None:
    """A rule whose text leaves a part out does not load."""
    with pytest.raises(ValueError, match="not the page"):
        parsed(text)
