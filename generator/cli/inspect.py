"""Commands that answer a question: check, expect, cautions."""

from __future__ import annotations

import json
from difflib import get_close_matches

import click

from generator.cli.shared import (
    ERRORS,
    FORMATS,
    Options,
    good_manual,
    print_findings,
    read_manual,
    usage,
)
from generator.expected import CONDITIONS, CannotExpect, Conditions, Expectation
from generator.expected import expect as expected_value
from generator.hazards import GuardedStep, guard
from generator.pages.strings import say
from generator.problems import has_errors
from generator.quantities import Interval, WrittenError, base_unit, figure, parse
from generator.quantities.show import places_for
from generator.records.kinds.things import Spec
from generator.records.kinds.work import Job, State
from generator.records.knowledge_base import KnowledgeBase


@click.command()
@click.option("--format", "form", type=FORMATS, default="text", help="How to print.")
@click.pass_obj
def check(options: Options, form: str) -> None:
    """Check every record and print each finding at its place."""
    read = read_manual(options)
    print_findings(read, form=form)
    if read.kb is None or has_errors(read.problems):
        raise SystemExit(ERRORS)


@click.command()
@click.argument("spec_id", metavar="SPEC")
@click.option(
    "--at", "stated", multiple=True, metavar="NAME=VALUE",
    help="A condition of the day, as temperature=80degC; may be repeated.",
)
@click.option("--vehicle", "vehicle", metavar="ID", help="The vehicle it must hold for.")
@click.option("--format", "form", type=FORMATS, default="text", help="How to print.")
@click.pass_obj
def expect(
    options: Options, spec_id: str, stated: tuple[str, ...], vehicle: str | None, form: str
) -> None:
    """Print the reading to expect under the conditions of the day, and how it came about."""
    kb = good_manual(options)
    spec = _spec(kb, spec_id, vehicle)
    try:
        found = expected_value(kb, spec, _conditions(stated))
    except CannotExpect as wrong:
        usage(f"{wrong}; {wrong.hint}")
    click.echo(_as_json(found) if form == "json" else _as_text(found))


def _spec(kb: KnowledgeBase, spec_id: str, vehicle: str | None) -> Spec:
    spec = kb.find("specs", spec_id, Spec)
    if spec is None:
        usage(f"there is no spec {spec_id}{_near(spec_id, kb.records.get('specs', {}))}")
    if vehicle is not None and vehicle not in kb.records.get("vehicles", {}):
        usage(f"there is no vehicle {vehicle}{_near(vehicle, kb.records.get('vehicles', {}))}")
    if vehicle is not None and vehicle not in spec.applies_to:
        usage(f"{spec_id} does not hold for {vehicle}, but for {', '.join(spec.applies_to)}")
    return spec


def _near(text: str, known: object) -> str:
    near = get_close_matches(text, list(known), n=1, cutoff=0.5)  # type: ignore[call-overload]
    return f"; did you mean {near[0]}?" if near else ""


def _conditions(stated: tuple[str, ...]) -> Conditions:
    """Read NAME=VALUE pairs; a range such as 60 to 80 degC is a condition too."""
    given: dict[str, Interval] = {}
    for text in stated:
        name, equals, value = text.partition("=")
        if not equals:
            usage(f"{text!r} is not NAME=VALUE, as temperature=80degC")
        if name not in CONDITIONS:
            usage(f"there is no condition {name}{_near(name, CONDITIONS)}")
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


def _as_json(found: Expectation) -> str:
    return json.dumps(
        {
            "schema": 1,
            "spec": found.spec.id,
            "quantity": found.unit.quantity,
            "unit": found.unit.symbol,
            "low": found.shown(found.low),
            "nominal": found.shown(found.nominal),
            "high": found.shown(found.high),
            "standing": found.spec.standing,
            "conditions": {
                name: {
                    "low": interval.low,
                    "high": interval.high,
                    "unit": base_unit(CONDITIONS[name].quantity).symbol,
                    "assumed": name in found.assumed,
                }
                for name, interval in found.conditions.items()
            },
            "trail": [
                {
                    "what": line.what, "how": line.how, "figures": list(line.figures),
                    "unit": line.unit, "source": line.source,
                }
                for line in found.trail
            ],
        },
        ensure_ascii=False,
        indent=2,
    )  # fmt: skip


def _as_text(found: Expectation) -> str:
    lines = [found.spec.title]
    for name, interval in found.conditions.items():
        unit = base_unit(CONDITIONS[name].quantity).symbol
        span = f"{interval.low:g}" if interval.single else f"{interval.low:g} to {interval.high:g}"
        said = " (nobody stated it, so its usual range)" if name in found.assumed else ""
        lines.append(f"  {CONDITIONS[name].asks}: {span} {unit}{said}")
    for word, value in (("low", found.low), ("nominal", found.nominal), ("high", found.high)):
        shown = found.shown(value)
        if shown is not None:
            lines.append(f"  {word:8}{figure(shown, places_for(shown, 5))} {found.unit.symbol}")
    if found.spec.standing == "plausibility_band":
        lines.append(f"  {say('value.band')}")
    lines.append("  trail:")
    for line in found.trail:
        figures = ", ".join(figure(value, places_for(value, 5)) for value in line.figures)
        lines.append(f"    {line.what}: {line.how}: {figures} {line.unit} [{line.source}]")
    return "\n".join(lines)


@click.command()
@click.argument("job_id", metavar="PROCEDURE")
@click.option("--format", "form", type=FORMATS, default="text", help="How to print.")
@click.pass_obj
def cautions(options: Options, job_id: str, form: str) -> None:
    """Print the cautions of a procedure, replacement or test, step by step."""
    kb = good_manual(options)
    kinds = ("procedures", "replacements", "tests")
    wanted_kind, _, bare = job_id.rpartition("/")
    found = [
        kb.records[kind][bare]
        for kind in kinds
        if bare in kb.records.get(kind, {}) and wanted_kind in ("", kind)
    ]
    if not found:
        known = [id_ for kind in kinds for id_ in kb.records.get(kind, {})]
        usage(f"there is no procedure, replacement or test {job_id}{_near(bare, known)}")
    if len(found) > 1:
        usage(f"{job_id} is ambiguous; write {found[0].key} or {found[1].key}")
    job = found[0]
    assert isinstance(job, Job)
    guarded = guard(kb, job).steps
    if form == "json":
        steps = [_step_as_data(step) for step in guarded]
        document = {"schema": 1, "procedure": job.key, "steps": steps}
        click.echo(json.dumps(document, ensure_ascii=False, indent=2))
        return
    for step in guarded:
        click.echo(f"{step.number} {step.step.do}")
        for box in step.boxes:
            click.echo(f"    {box.word}: {', '.join(line.id for line in box.hazards)}")


def _step_as_data(step: GuardedStep) -> dict[str, object]:
    return {
        "step": step.number,
        "do": step.step.do,
        "state": {name: str(getattr(step.state_during, name)) for name in State.model_fields},
        "boxes": [
            {"word": str(box.word), "hazards": [line.id for line in box.hazards]}
            for box in step.boxes
        ],
        "reminders": [reminder.id for reminder in step.reminders],
    }
