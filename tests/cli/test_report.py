"""report: what the manual covers and what is due, asked as a person would."""

from __future__ import annotations

from tests.cli.asking import ask


def test_text_begins_with_the_figures() -> None:
    """Without a day no review is called overdue."""
    done = ask("report")
    assert done.status == 0
    assert "  10 of 15  A test judges it" in done.out
    assert done.out.index("components/starter") < done.out.index("components/undertray")
    assert "due by" not in done.out


def test_a_day_names_what_is_overdue_with_its_owner() -> None:
    """The same records as `stale` names, counted, and told apart in JSON as well."""
    late = ask("report", "--as-of", "2027-12-01", "--format", "json").data
    overdue = [one for one in late["reviews"] if one["overdue"]]
    stale = ask("stale", "--as-of", "2027-12-01").out.splitlines()
    assert len(overdue) == len(stale) - 1 == 37
    assert {"record": "tests/battery-rest", "owner": "diagnostic-technician", "due": "2027-09-21",
            "overdue": True} in overdue  # fmt: skip
    assert late["values"]["all"] == len(late["values"]["unverified"]) == 34
    assert late["records"] == {"approved": 176, "draft": 0, "withdrawn": 0}
