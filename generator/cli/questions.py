"""What a question on the command line asks about: a spec, a vehicle, the conditions of the day."""

from __future__ import annotations

import datetime
from collections.abc import Iterable
from difflib import get_close_matches

from generator.cli.shared import usage
from generator.expected import CONDITIONS, CannotExpect, Conditions, choose
from generator.quantities import Interval, WrittenError, parse
from generator.records.kinds.things import Spec
from generator.records.knowledge_base import KnowledgeBase


def asked_spec(
    kb: KnowledgeBase, spec_id: str, vehicle: str | None, built: str | None = None
) -> Spec:
    """Give the spec asked for, or the one that stands in for it on a vehicle."""
    spec = kb.find("specs", spec_id, Spec)
    if spec is None:
        usage(f"there is no spec {spec_id}{near(spec_id, kb.records.get('specs', {}))}")
    if vehicle is None:
        if built is not None:
            usage("--built needs --vehicle")
        return spec
    if vehicle not in kb.records.get("vehicles", {}):
        usage(f"there is no vehicle {vehicle}{near(vehicle, kb.records.get('vehicles', {}))}")
    try:
        return choose(kb, spec, vehicle, _date(built))
    except CannotExpect as wrong:
        usage(f"{wrong}; {wrong.hint}")


def _date(text: str | None) -> datetime.date | None:
    if text is None:
        return None
    try:
        return datetime.date.fromisoformat(text)
    except ValueError:
        usage(f"{text} is not a day; write it as 2016-05-01")


def asked_conditions(stated: tuple[str, ...]) -> Conditions:
    """Read NAME=VALUE pairs; a range such as 60 to 80 degC is a condition too."""
    given: dict[str, Interval] = {}
    for text in stated:
        name, equals, value = text.partition("=")
        if not equals:
            usage(f"{text!r} is not NAME=VALUE, as temperature=80degC")
        if name not in CONDITIONS:
            usage(f"there is no condition {name}{near(name, CONDITIONS)}")
        if name in given:
            usage(f"{name} is stated twice")
        try:
            read = parse(value, CONDITIONS[name].quantity)
        except WrittenError as wrong:
            usage(f"{name}: {wrong}; {wrong.hint}")
        if read.low is None or read.high is None:
            usage(f"{name}: state one figure or a range, not {value}")
        given[name] = Interval(read.low, read.high)
    return given


def near(text: str, known: Iterable[str]) -> str:
    """Give the nearest known name as a question, or nothing."""
    found = get_close_matches(text, list(known), n=1, cutoff=0.5)
    return f"; did you mean {found[0]}?" if found else ""
