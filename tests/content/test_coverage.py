"""The demonstration manual covers what it was written for: every part, model and hazard."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

import pytest

from generator.expected.models import MODELS
from generator.hazards import families, guard
from generator.records.kinds.facts import Verdict
from generator.records.kinds.knowledge import Symptom
from generator.records.kinds.things import Component, Spec
from generator.records.kinds.work import Job, Procedure, Replacement, Test
from tests.content.whole import manual

PARTS = {
    "crankshaft position": ["crank-sensor-inductive", "crank-sensor-hall", "crank-sensor-haulden"],
    "camshaft position": ["camshaft-sensor", "camshaft-sensor-haulden"],
    "coolant temperature": ["coolant-temperature-sensor"],
    "intake air temperature": ["intake-air-temperature-sensor"],
    "oil temperature": ["oil-temperature-sensor"],
    "exhaust gas temperature": ["exhaust-gas-temperature-sensor"],
    "manifold pressure": ["manifold-pressure-sensor"],
    "mass air flow": ["mass-air-flow-sensor"],
    "throttle and its position": ["throttle-actuator"],
    "accelerator pedal position": ["accelerator-pedal-sensor"],
    "knock": ["knock-sensor"],
    "oxygen, narrow and wide-band": ["oxygen-sensor-narrow", "oxygen-sensor-wide"],
    "wheel speed, both kinds": ["wheel-speed-inductive", "wheel-speed-active"],
    "vehicle speed": ["vehicle-speed-sensor"],
    "ignition coils": ["ignition-coil-pack", "ignition-coil-single"],
    "injectors, petrol and common-rail": ["petrol-injectors", "diesel-injectors"],
    "fuel pump and regulator": ["fuel-pump", "fuel-pressure-regulator"],
    "rail pressure sensor": ["rail-pressure-sensor"],
    "glow plugs and relay": ["glow-plugs", "glow-relay"],
    "EGR valve": ["egr-valve"],
    "purge valve": ["purge-valve"],
    "particulate filter and its pressure sensor": ["particulate-filter", "filter-pressure-sensor"],
    "boost actuator": ["boost-actuator"],
    "cam phaser": ["cam-phaser", "phaser-valve"],
    "cooling fan and relay": ["cooling-fan", "fan-relay"],
    "thermostat": ["thermostat"],
    "radiator cap": ["radiator-cap"],
    "starter": ["starter"],
    "alternator": ["alternator"],
    "battery": ["battery", "ellory-battery"],
    "body grounds": ["body-grounds"],
    "main relay and fuses": ["main-relay", "ignition-and-injection-fuse", "fuse-box-haulden"],
    "data bus": ["data-bus"],
    "key and immobiliser": ["key-and-immobiliser"],
    "park/neutral and clutch switch": ["park-neutral-switch", "clutch-switch"],
    "brake light switch": ["brake-light-switch"],
    "air-conditioning pressure switch": ["air-conditioning-pressure-switch"],
    "the hybrid's 12 V supply": ["dc-converter", "ellory-main-cable"],
    "the high-voltage side, named": ["high-voltage-cables", "hybrid-battery"],
}
"""What the manual was to cover, and the records that do."""

FUSES = {"ignition-and-injection-fuse"}
"""Judged with the feed that they are part of: a blown one has a cause further on."""


def jobs() -> list[Job]:
    """Give every test, replacement and procedure."""
    kb = manual()
    return [*kb.all("tests", Test), *kb.all("replacements", Replacement),
            *kb.all("procedures", Procedure)]  # fmt: skip


def reached_from(symptom: Symptom) -> Iterator[tuple[str, str]]:
    """Give the kind and id of what a complaint names by itself."""
    for cause in symptom.causes:
        if cause.component is not None:
            yield "components", cause.component
        yield from (("tests", id_) for id_ in cause.tests)
    yield from (("codes", id_) for id_ in symptom.codes)
    if symptom.live_data is not None:
        yield "tests", symptom.live_data


def onward(kind: str, id_: str) -> Iterator[tuple[str, str]]:
    """Give the kind and id of what a record leads to: its way on, its steps and their parts."""
    record = manual().records[kind][id_]
    if isinstance(record, Component) and record.reads is not None:
        yield "components", record.reads
    if isinstance(record, Test):
        yield from (("components", part) for part in record.components)
        for outcome in record.outcomes:
            for way in outcome.next:
                if way.way in ("test", "replacement", "procedure"):
                    yield f"{way.way}s", getattr(way, way.way)
    if isinstance(record, (Replacement, Procedure)):
        yield from (("tests", proof.test) for proof in record.verify)
    if isinstance(record, Job):
        for step in record.steps:
            yield from (("components", part) for part in step.acts_on)
            if step.call is not None:
                yield "procedures", step.call


def reached() -> set[tuple[str, str]]:
    """Give everything that a reader comes to who starts at a complaint or at the first looks."""
    waiting = [("tests", id_) for id_ in manual().settings.opening]
    for symptom in manual().all("symptoms", Symptom):
        waiting += reached_from(symptom)
    found: set[tuple[str, str]] = set()
    while waiting:
        key = waiting.pop()
        if key not in found:
            found.add(key)
            waiting += onward(*key)
    return found


@pytest.mark.parametrize("what", PARTS)
def test_no_part_of_the_list_is_missing(what: str) -> None:
    """Each part has a record, and is judged by a test with an answer."""
    judged = {part for test in manual().all("tests", Test) for part in test.components}
    for id_ in PARTS[what]:
        assert id_ in manual().records["components"], id_
        assert id_ in judged or id_ in FUSES, id_


def test_every_component_is_reached_from_a_complaint() -> None:
    """Whoever starts at what the owner says can come to every part there is."""
    found = {id_ for kind, id_ in reached() if kind == "components"}
    assert sorted(set(manual().records["components"]) - found) == []


def test_every_replacement_is_reached_through_a_test_that_condemns_its_part() -> None:
    """No part is changed on a guess."""
    condemned = {
        (way.replacement, part)
        for test in manual().all("tests", Test)
        for outcome in test.outcomes
        if outcome.verdict is Verdict.CONDEMNS
        for way in outcome.next
        if way.replacement is not None
        for part in (outcome.about or test.components)
    }
    without = [
        work.id
        for work in manual().all("replacements", Replacement)
        if (work.id, work.component) not in condemned
    ]
    assert without == []


def test_every_model_is_used() -> None:
    """Each way in which a value follows its conditions serves a value of some vehicle."""
    used = {spec.model.name for spec in manual().all("specs", Spec)}
    assert sorted(set(MODELS) - used) == []


@cache
def fired() -> dict[str, str | None]:
    """Give the rules that stand above a step somewhere, and who alone may do what they guard."""
    return {
        line.id: line.reserved_for
        for job in jobs()
        for step in guard(manual(), job).steps
        for line in step.hazards
    }


def test_every_hazard_family_fires() -> None:
    """Each family of cautions stands above a step somewhere in the manual."""
    silent = {
        name for name, rules in families().items() if not {r.id for r in rules} & set(fired())
    }
    assert silent == set()


def test_no_test_stops_before_its_reading() -> None:
    """Reserved work ends a procedure; a test that is cut short by it would have no outcome."""
    cut = [
        test.id
        for test in manual().all("tests", Test)
        if any(line.reserved_for for step in guard(manual(), test).steps for line in step.hazards)
    ]
    assert cut == []


def test_reserved_work_stops_and_refers() -> None:
    """Where work is reserved, the box says for whom, and a test leads out of the manual."""
    reserved = {id_: who for id_, who in fired().items() if who is not None}
    for id_, who in (("hv-live", "high-voltage"), ("high-pressure-diesel", "common-rail"),
                     ("refrigerant-law", "refrigerants"), ("srs-module", "restraint")):  # fmt: skip
        assert who in reserved[id_]
    out = [
        way
        for test in manual().all("tests", Test)
        for outcome in test.outcomes
        for way in outcome.next
    ]
    assert any(way.refer is not None and "high voltage" in way.refer for way in out)
    handed_over = {way.procedure for way in out}
    assert {"hand-over-high-pressure-work", "refrigerant-circuit-work"} <= handed_over
