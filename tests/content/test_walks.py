"""The worked cases in docs/walks.md hold against the demonstration manual that they walk through.

Each link, title, limit, outcome and turn of the way is read from the page and looked up in the
records, so that no record can move away from under the page.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

import pytest

from generator.diagnosis import Evidence, order
from generator.diagnosis.order import opening_tests
from generator.expected import expect
from generator.pages.systems import limits_in, range_text
from generator.quantities import Written, parse
from generator.records.kinds.facts import Circumstance, Finding, Verdict
from generator.records.kinds.knowledge import Symptom
from generator.records.kinds.things import Spec, Vehicle
from generator.records.kinds.work import Job, Outcome, Procedure, Replacement, Test
from tests.content.whole import manual
from tests.demonstration import ROOT

PAGE = (ROOT / "docs" / "walks.md").read_text(encoding="utf-8")
LINK = re.compile(r"\[([^\]]+)\]\(([a-z]+)/([a-z0-9-]+)\.html\)")
SECTIONS = re.split(r"^## ", PAGE, flags=re.M)[1:]
HEADINGS = [section.partition("\n")[0] for section in SECTIONS]


@dataclass(frozen=True)
class Row:
    """One line of a walk's table: a test, its value and what it said."""

    made: str
    held_against: str
    limit: str
    found: str
    says: str = ""

    @property
    def test(self) -> str:
        """The test's id, from the row's link."""
        return LINK.findall(self.made)[0][2]


def section(heading: str) -> str:
    """Give the text of one walk."""
    return SECTIONS[HEADINGS.index(heading)]


def tables(text: str) -> list[list[Row]]:
    """Give the tables of a text, each without its head."""
    found = re.findall(r"(?:^\|.*\n?)+", text, flags=re.M)
    return [
        [Row(*(cell.strip() for cell in line.strip("|").split("|"))) for line in lines[2:]]
        for lines in (table.strip().split("\n") for table in found)
    ]


def vehicle_of(heading: str) -> str:
    """Give the vehicle that a walk's heading names."""
    (found,) = [one.id for one in manual().all("vehicles", Vehicle) if one.title in heading]
    return found


def outcome_of(row: Row) -> Outcome:
    """Give the outcome that a row's last cell names."""
    test = manual().get("tests", row.test, Test)
    named = [outcome for outcome in test.outcomes if outcome.label == row.says]
    assert named, f"{row.test} has no outcome {row.says!r}"
    return named[0]


def spec_of(row: Row) -> Spec:
    """Give the value whose title a row names."""
    named = [spec for spec in manual().all("specs", Spec) if spec.title == row.held_against]
    assert len(named) == 1, f"{row.held_against!r} names {len(named)} values"
    return named[0]


def test_it_is_three_walks_on_three_vehicles() -> None:
    """A hot stall on the Corrie 1.6, a no-start on the Haulden, an overheat on the Ellory."""
    assert [vehicle_of(heading) for heading in HEADINGS] == [
        "corrie-1-6", "haulden-2-0", "ellory-1-8",
    ]  # fmt: skip


@pytest.mark.parametrize("heading", HEADINGS)
def test_every_link_names_a_record_by_its_title(heading: str) -> None:
    """A link's words are the title of the record it leads to, written for this vehicle."""
    links = LINK.findall(section(heading))
    assert len(links) >= 12
    for title, kind, id_ in links:
        record = manual().records[kind].get(id_)
        assert record is not None, f"{kind}/{id_}"
        assert record.title == title
        assert vehicle_of(heading) in record.applies_to  # type: ignore[attr-defined]


@pytest.mark.parametrize("heading", HEADINGS)
def test_limits_are_those_of_the_manual(heading: str) -> None:
    """A limit is written as the value's own page gives it, for this vehicle."""
    rows = [row for table in tables(section(heading)) for row in table if row.held_against]
    assert len(rows) >= 4
    for row in rows:
        spec = spec_of(row)
        assert vehicle_of(heading) in spec.applies_to
        one = expect(manual(), spec)
        low, _, high = limits_in(one.unit, one.low, one.nominal, one.high, spec.places)
        assert row.limit == range_text(low, high, one.unit.symbol), spec.id


@pytest.mark.parametrize("heading", HEADINGS)
def test_readings_say_what_the_row_says(heading: str) -> None:
    """A reading lies where its outcome has it: inside, below or above the limit, or its own."""
    for table in tables(section(heading)):
        for row in table:
            if not row.held_against:
                continue
            one, found = expect(manual(), spec_of(row)), parse(row.found)
            low = -float("inf") if one.low is None else one.low
            high = float("inf") if one.high is None else one.high
            outcome = outcome_of(row) if row.says else None
            if outcome is not None and isinstance(outcome.reading, Written):
                own = outcome.reading
                low = -float("inf") if own.low is None else own.low
                high = float("inf") if own.high is None else own.high
            finding = outcome.finding if outcome is not None else Finding.IN_LIMITS
            if finding is Finding.LOW:
                assert found.only < low, row
            elif finding is Finding.HIGH:
                assert found.only > high, row
            else:
                assert low <= found.only <= high, row


@pytest.mark.parametrize("heading", HEADINGS)
def test_the_way_is_the_manual_s_own(heading: str) -> None:
    """The first looks come first; each later test is the order's next, or an outcome sent there.

    The order is asked for once, after the first looks: its places stand as long as nothing shows.
    """
    kb, vehicle, text = manual(), vehicle_of(heading), section(heading)
    (complaint,) = {id_ for _, kind, id_ in LINK.findall(text) if kind == "symptoms"}
    codes = tuple(id_ for _, kind, id_ in LINK.findall(text) if kind == "codes")
    when = (Circumstance.HOT,) if "hot" in heading else ()
    symptom = kb.get("symptoms", complaint, Symptom)
    rows = tables(text)[0]
    opening = [test.id for test in opening_tests(kb, symptom, vehicle)]
    assert [row.test for row in rows[: len(opening)]] == opening
    sent = {
        n: {way.test for way in outcome_of(rows[n - 1]).next} - {None}
        for n in range(len(opening), len(rows))
    }
    if not sent[len(opening)]:
        found = tuple((row.test, outcome_of(row).finding) for row in rows[: len(opening)])
        places = order(kb, symptom, vehicle, Evidence(codes, when, found)).places
        due = [place.test.id for place in places]
    for place, (n, ways) in enumerate(sent.items()):
        assert rows[n].test in ways if ways else rows[n].test == due[place]
    last = outcome_of(rows[-1])
    assert last.verdict is Verdict.CONDEMNS
    work = {(kind, id_) for _, kind, id_ in LINK.findall(text)}
    assert any((f"{w.way}s", getattr(w, w.way)) in work for w in last.next if w.way != "refer")


@pytest.mark.parametrize("heading", HEADINGS)
def test_the_proof_is_the_work_s_own(heading: str) -> None:
    """Each test after the work is one that the work's record asks for, or that showed the fault."""
    text = section(heading)
    (work,) = [
        job for _, kind, id_ in LINK.findall(text) if kind in ("replacements", "procedures")
        for job in [manual().get(kind, id_, Job)]
    ]  # fmt: skip
    assert isinstance(work, (Replacement, Procedure))
    proofs = {proof.test for proof in work.verify}
    made = [row for row in tables(text)[-1] if row.says]
    assert len(made) >= 2
    assert {row.test for row in made} <= proofs | {row.test for row in tables(text)[0]}
    assert {row.test for row in made} & proofs
    assert all(outcome_of(row).verdict is not Verdict.CONDEMNS for row in made)
