"""No record that fits its shape makes a rule raise, however little sense it makes."""

from __future__ import annotations

import datetime

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from generator import checks
from generator.checks.targets import LinkAt, links
from tests.checks.manuals import path_of, read, text_of, written
from tests.demo import demonstration

DAY = datetime.date(2030, 1, 1)
LINKS = [link for link in links(demonstration()) if link.record is not None]
RECORDS = sorted({link.key for link in LINKS})
QUIET = settings(suppress_health_check=list(HealthCheck), max_examples=12)
LONG = settings(QUIET, max_examples=600)


def check_all(key: str, text: str) -> None:
    """Read a text as a record and run every rule; each finding has to lie in its file."""
    record, wrong, _origin = read(key, text)
    if record is None or wrong:
        return
    manual = written(key, text)
    for found in checks.problems(manual.kb, DAY):
        assert found.message
        assert found.hint
        if found.path == path_of(key):
            assert found.line <= text.count("\n") + 1
            manual.marked(found)


def relinked(link: LinkAt, data: st.DataObject) -> None:
    """Let a link lead to another record of a kind it may name, and check all."""
    ids = sorted(id_ for kind in link.kinds for id_ in demonstration().records[kind])
    other = data.draw(st.sampled_from(ids))
    span = demonstration().origins[link.key].span(link.path)
    lines = text_of(link.key).split("\n")
    line = lines[span.line - 1]
    lines[span.line - 1] = line[: span.column - 1] + other + line[span.end_column - 1 :]
    check_all(link.key, "\n".join(lines))


def with_lines_gone(key: str, data: st.DataObject) -> None:
    """Drop some lines of a record, and check all."""
    lines = text_of(key).split("\n")
    first = data.draw(st.integers(0, len(lines) - 1))
    count = data.draw(st.integers(1, 12))
    check_all(key, "\n".join(lines[:first] + lines[first + count :]))


@QUIET
@given(st.sampled_from(LINKS), st.data())
def test_a_link_to_any_other_record_is_borne(link: LinkAt, data: st.DataObject) -> None:
    """Wrong parts, wrong values and wrong ways give findings, never an exception."""
    relinked(link, data)


@QUIET
@given(st.sampled_from(RECORDS), st.data())
def test_a_record_with_lines_gone_is_borne(key: str, data: st.DataObject) -> None:
    """What is left out gives findings, never an exception."""
    with_lines_gone(key, data)


@pytest.mark.soak
@LONG
@given(st.sampled_from(LINKS), st.data())
def test_a_link_to_any_other_record_is_borne_for_long(link: LinkAt, data: st.DataObject) -> None:
    """The same, thousands of times."""
    relinked(link, data)


@pytest.mark.soak
@LONG
@given(st.sampled_from(RECORDS), st.data())
def test_a_record_with_lines_gone_is_borne_for_long(key: str, data: st.DataObject) -> None:
    """The same, thousands of times."""
    with_lines_gone(key, data)
