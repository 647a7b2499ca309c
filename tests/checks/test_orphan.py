"""A record that nothing leads to."""

from __future__ import annotations

from generator.checks import orphan
from generator.problems import Severity
from tests.checks.manuals import edited, text_of, written

TERM = """\
title: Lamp
author: technician
owner: technician
means: It glows.
"""


def test_a_circuit_that_no_part_names_any_more_is_found() -> None:
    """The last link gone, the record is a warning at its title."""
    manual = edited(
        "components/crank-sensor-hall", "circuit: crank-circuit-1-6", "circuit: crank-circuit-1-2"
    )
    (found,) = orphan.problems(manual.kb)
    assert (found.severity, found.record) == (Severity.WARNING, "circuits/crank-circuit-1-6")
    assert manual.marked(found) == manual.kb.records["circuits"]["crank-circuit-1-6"].title


def test_a_record_that_links_to_itself_alone_is_an_orphan() -> None:
    """A wheel that reads itself is reached from nowhere."""
    text = text_of("components/crank-sensor-hall")
    text = text.replace("reads: trigger-wheel-36-1", "reads: spare-wheel")
    manual = written("components/spare-wheel", text.replace("title: ", "title: Spare "))
    assert [f.record for f in orphan.problems(manual.kb)] == ["components/spare-wheel"]


def test_what_has_a_list_of_its_own_is_none() -> None:
    """A term is found in the list of terms, with no link to it."""
    assert not orphan.problems(written("terms/lamp", TERM).kb)
