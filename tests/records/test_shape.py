"""Fitting: every misfit once, at its place, in words a mechanic understands."""

from __future__ import annotations

import copy
import datetime
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from generator.problems import Problem
from generator.records import shape
from generator.records.kinds import KINDS
from generator.records.rules import RULES
from generator.records.strict_yaml import FAULTY, read
from tests.demonstration import SMALL_RECORDS

MANUAL = SMALL_RECORDS

STEP = """\
title: A test
author: lead
owner: lead
applies_to: [corrie-1-2]
minutes: 5
who: lead
entry: {}
leaves: {}
steps:
  - do: Look.
    action: look
    place: away
purpose: It looks.
components: [battery]
method: look
outcomes:
  - finding: as_expected
    label: Good
    verdict: clears
    means: It is good.
    next: [{carry_on: true}]
  - finding: fault_seen
    label: Bad
    verdict: condemns
    means: It is bad.
    next: [{replacement: battery}]
cannot_show: The rest.
"""
SPEC = """\
title: A value
author: lead
owner: lead
applies_to: [corrie-1-2]
component: battery
quantity: voltage
standing: vehicle_value
value: at least 12.4 V
at: {}
method: At the posts.
source: common-practice
"""


def misfits(kind: str, source: str) -> list[Problem]:
    """Give what does not fit in a text that is good YAML."""
    reading = read(source.encode(), "x.yml")
    assert reading.data is not None
    return shape.fit(kind, "x", reading.data, reading.places, "x.yml")[1]


def only(kind: str, source: str) -> Problem:
    """Give the one misfit of a text."""
    (found,) = misfits(kind, source)
    return found


def test_a_record_that_fits_knows_its_name() -> None:
    """A record takes its kind and id from where its file lies."""
    reading = read(STEP.encode(), "x.yml")
    record, found = shape.fit("tests", "look", reading.data, reading.places, "x.yml")
    assert found == []
    assert record is not None and record.key == "tests/look"


def test_a_misfit_names_its_record() -> None:
    """A finding says which record it belongs to."""
    assert only("tests", STEP.replace("minutes: 5", "minutes: -5")).record == "tests/x"


def test_missing_field_says_what_goes_there() -> None:
    """The hint on a missing field is the field's own description."""
    found = only("tests", STEP.replace("minutes: 5\n", ""))
    assert found.code == "missing-key"
    assert "minutes" in found.message
    assert found.hint == "add minutes: how long a practised person takes"


def test_missing_field_of_an_item_points_at_the_item() -> None:
    """What is missing from an item of a list points at the item's first field, and counts it."""
    found = only("tests", STEP.replace("    verdict: condemns\n", ""))
    assert (found.line, found.column) == (22, 5)
    assert "item 2 of `outcomes`" in found.message


def test_misspelt_key_is_one_finding() -> None:
    """A misspelt key is not reported again as missing under its right name."""
    found = only("tests", STEP.replace("minutes:", "minuets:"))
    assert (found.code, found.hint) == ("unknown-key", "did you mean minutes?")


def test_two_keys_cannot_be_meant_for_one_field() -> None:
    """Of two misspellings of one field only one explains why it is missing."""
    found = misfits("tests", STEP.replace("minutes:", "minuets: 5\nmintues:"))
    assert [one.code for one in found] == ["unknown-key", "unknown-key"]


def test_refused_values_give_no_second_finding() -> None:
    """What strict reading refused is neither missing nor of the wrong type."""
    for line in ("minutes: 1e1", "minutes: *x", "minutes:", "minutes: yes"):
        source = STEP.replace("minutes: 5", line)
        reading = read(source.encode(), "x.yml")
        assert len(reading.problems) == 1
        assert shape.fit("tests", "x", reading.data, reading.places, "x.yml")[1] == []


@pytest.mark.parametrize(
    ("kind", "data"),
    [
        ("specs", {"model": {"name": FAULTY}}),
        ("specs", {"model": FAULTY}),
        ("specs", {"value": FAULTY, "at": {"temperature": FAULTY}}),
        ("tests", {"steps": [FAULTY, {"action": FAULTY, "place": FAULTY, "do": FAULTY}]}),
        ("tests", {"steps": FAULTY, "outcomes": [FAULTY, FAULTY], "applies_to": [FAULTY]}),
        ("tests", {"minutes": FAULTY, "method": FAULTY, "author": FAULTY, "title": FAULTY}),
        ("terms", {"reviewed": {"date": FAULTY, "by": FAULTY}}),
    ],
)
def test_no_finding_inside_what_was_refused(kind: str, data: dict[str, Any]) -> None:
    """Nothing is said about a refused value, however deep it lies."""
    found = shape.fit(kind, "x", data, {}, "x.yml")[1]
    assert {one.code for one in found} == {"missing-key"}
    assert not any(re.search(f"`{key}` is missing", one.message) for one in found for key in data)


@pytest.mark.parametrize(
    ("written", "codes"),
    [
        ("winding", []), ("[winding]", []), ("[]", []),
        ("5", ["wrong-type"]), ("Bad id", ["bad-id"]), ("{a: b}", ["wrong-type"]),
        ("[winding, 5, Bad id]", ["bad-id", "wrong-type"]), ("2026-10-05", ["bare-date"]),
    ],
)  # fmt: skip
def test_one_or_several_has_no_noise(written: str, codes: list[str]) -> None:
    """Where one id or a list of ids is taken, only the branch that was meant is spoken of."""
    source = STEP.replace("    place: away\n", f"    place: away\n    spec: {written}\n")
    assert sorted(one.code for one in misfits("tests", source)) == codes


@pytest.mark.parametrize(
    ("marked", "codes"),
    [
        ("model: {name: plain}", []),
        ("model: {name: plain, «colour: red}", ["unknown-key"]),
        ("«model: {name: winding}", ["missing-key"]),
        ("model: {name: «wind, material: copper}", ["unknown-word"]),
        ("«model: {material: copper}", ["missing-key"]),
        ("«model: {}", ["missing-key"]),
        ("model: {name: «5}", ["wrong-type"]),
        ("model: «[plain]", ["wrong-type"]),
        ("model: «plain", ["wrong-type"]),
        ("model: {name: winding, material: «tin}", ["unknown-word"]),
        (
            "model: {name: pickup_volts, slowest: «5, fastest: «20 V}",
            ["value-form", "value-quantity"],
        ),
    ],
)
def test_a_choice_of_models_has_no_noise(marked: str, codes: list[str]) -> None:
    """Of the models only the one that was named is spoken of, at the place marked with «."""
    columns = [len(part.replace("«", "")) + 1 for part in _before_marks(marked)]
    source = SPEC.replace("at: {}\n", marked.replace("«", "") + "\nat: {}\n")
    found = [(one.code, one.line, one.column) for one in misfits("specs", source)]
    assert found == [(code, 9, column) for code, column in zip(codes, columns, strict=True)]


def _before_marks(marked: str) -> list[str]:
    return [marked[:at] for at, character in enumerate(marked) if character == "«"]


def test_unknown_word_hints() -> None:
    """A near word is offered; where none is near, all are listed."""
    near = only("tests", STEP.replace("action: look", "action: Look"))
    assert near.hint == "did you mean look?"
    far = only("tests", STEP.replace("verdict: clears", "verdict: xyz"))
    assert far.hint == "use one of condemns, clears, neither"


def test_bad_id_offers_a_good_one() -> None:
    """A bad id comes with one that would do."""
    found = only("tests", STEP.replace("who: lead", "who: Workshop Lead (day)"))
    assert found.hint.endswith("as workshop-lead-day")


def test_bare_date_shows_how_to_keep_it_as_text() -> None:
    """A date where text is meant is shown in quotes; where a date is meant it is fine."""
    found = only("tests", STEP.replace("title: A test", "title: 2026-10-05"))
    assert (found.code, found.hint) == ("bare-date", 'put it in quotes: "2026-10-05"')
    signed = STEP.replace("owner: lead", "owner: lead\nreviewed: {by: lead, date: 2026-10-05}")
    assert misfits("tests", signed) == []


def test_settings_of_a_newer_format() -> None:
    """A format that this program does not know is refused with a clear word."""
    data = {"format": 2}
    found = {one.code: one for one in shape.fit_settings(data, {}, "settings.yml")[1]}
    assert "format 1" in found["unknown-format"].hint
    assert found["unknown-format"].record == "settings"


def test_ten_faults_give_ten_findings() -> None:
    """Ten faults in one file are ten findings in one run."""
    path = Path(__file__).parents[1] / "corpus" / "many" / "ten-in-one-file.yml"
    reading = read(path.read_bytes(), "x.yml")
    fitted = shape.fit("tests", "x", reading.data, reading.places, "x.yml")[1]
    assert len(reading.problems) + len(fitted) == 10


def test_every_rule_of_a_shape_has_its_code() -> None:
    """A rule that a shape makes of its own has a code and a reason, and no code lacks its rule."""
    folder = Path(shape.__file__).parent / "kinds"
    sources = "".join(path.read_text(encoding="utf-8") for path in folder.rglob("*.py"))
    raised = set(re.findall(r'PydanticCustomError\(\s*"([\w-]+)"[^+\w]', sources))
    written = {f"written-{fault}" for fault in ("form", "unit", "quantity", "limits", "impossible")}
    assert (raised - {"written-"}) | written == set(RULES)


def samples() -> dict[str, Any]:
    """Give one record of each kind of the demonstration manual, as data."""
    made = {}
    for kind in KINDS:
        paths = sorted((MANUAL / kind).glob("*.yml"), key=lambda path: path.stat().st_size)
        reading = read(paths[-1].read_bytes(), "x.yml") if paths else None
        if reading is not None and reading.data is not None:
            made[kind] = reading
    return made


SAMPLES = samples()
ODD = st.sampled_from(
    [5, -1, 0.5, 1e300, True, "", " ", "x", "x" * 5000, "Bad Id", "20 V", "9**9**9", [], [5], ["x"],
     {}, {"a": 1}, {"name": "plain"}, [[]], [{}], datetime.date(2026, 10, 5), FAULTY]
).map(copy.deepcopy)  # fmt: skip


def ways(data: Any, path: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    """Walk every field of data."""
    items = data.items() if isinstance(data, dict) else enumerate(data)
    for key, value in items:
        yield (*path, key)
        if isinstance(value, (dict, list)):
            yield from ways(value, (*path, key))


@settings(max_examples=300, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.data())
def test_any_data_is_put_into_our_own_words(draw: st.DataObject) -> None:
    """Whatever stands in a field, there are findings of ours: no library phrases, no crash."""
    kind = draw.draw(st.sampled_from(list(SAMPLES)))
    data = copy.deepcopy(SAMPLES[kind].data)
    for _ in range(draw.draw(st.integers(1, 3))):
        way = draw.draw(st.sampled_from(list(ways(data))))
        inner = data
        for step in way[:-1]:
            inner = inner[step]
        change = draw.draw(st.sampled_from(["replace", "delete", "add"]))
        if change == "replace":
            inner[way[-1]] = draw.draw(ODD)
        elif change == "delete":
            del inner[way[-1]]
        elif isinstance(inner, dict):
            inner[draw.draw(st.sampled_from(["title", "zzz", "name", "plain", "acton"]))] = (
                draw.draw(ODD)
            )
        if not data:
            break
    record, found = shape.fit(kind, "x", data, SAMPLES[kind].places, "x.yml")
    assert (record is None) or not found
    for one in found:
        said = re.sub("`[^`]*`", "", one.message + one.hint)
        assert not re.search(
            r"[Ii]nput (should|tag|is)|[Vv]alid |pydantic|should be|constrained-|NoneType", said
        ), one
        assert len(said) < 900
