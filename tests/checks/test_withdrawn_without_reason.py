"""A withdrawn record and its reason go together."""

from __future__ import annotations

import pytest

from generator.checks import dangling_link, orphan, withdrawn_without_reason
from tests.checks.manuals import patched

REASON = "withdrawn:\n  reason: It was wrong.\n  by: workshop-lead\n  date: 2026-10-05\n"


def test_a_status_without_a_reason_is_found() -> None:
    """The finding points at the word that withdrew it."""
    manual = patched("terms/air-gap", "status: withdrawn")
    assert manual.found(withdrawn_without_reason.problems) == [
        ("withdrawn-without-reason", "terms/air-gap", "withdrawn")
    ]


@pytest.mark.parametrize("status", ["approved", "draft"])
def test_a_reason_without_the_status_is_found(status: str) -> None:
    """A page that goes on to be used would say nothing of it."""
    manual = patched("terms/air-gap", f"status: {status}\n{REASON}replaced_by: duty\n")
    found = manual.found(withdrawn_without_reason.problems)
    assert [text for _, _, text in found] == ["withdrawn", "replaced_by"]


def test_a_reason_with_and_without_a_successor_passes() -> None:
    """Not everything that is withdrawn has one."""
    for more in ("", "replaced_by: duty\n"):
        manual = patched("terms/air-gap", f"status: withdrawn\n{REASON}{more}")
        assert manual.found(withdrawn_without_reason.problems) == []


def test_a_successor_is_a_released_record_of_the_same_kind() -> None:
    """A draft is found here; a test's id under a term is a broken link."""
    manual = patched("terms/air-gap", f"status: withdrawn\n{REASON}replaced_by: duty\n")
    assert manual.found(dangling_link.problems) == []
    draft = patched("terms/duty", "status: draft", manual)
    found = withdrawn_without_reason.problems(draft.kb)
    assert [draft.marked(one) for one in found] == ["duty"]
    other = patched("terms/air-gap", f"status: withdrawn\n{REASON}replaced_by: no-such-term\n")
    assert [text for *_, text in other.found(dangling_link.problems)] == ["no-such-term"]


def test_nothing_need_lead_to_a_withdrawn_record() -> None:
    """Links to it are faults, so that it cannot be one that nothing links to."""
    part = "does: A guard.\nenergies: [none]\nfitted_to: [corrie-1-2]\ntitle: Old guard\n"
    rest = (
        "author: technician\nowner: technician\nlocation: {zone: engine_bay, side: above, "
        "words: On top.}\nstatus: "
    )
    new = patched("components/old-guard", part + rest + "draft\n")
    assert ("orphan", "components/old-guard", "Old guard") in new.found(orphan.problems)
    gone = patched("components/old-guard", part + rest + "withdrawn\n" + REASON)
    assert "components/old-guard" not in {one.record for one in orphan.problems(gone.kb)}
