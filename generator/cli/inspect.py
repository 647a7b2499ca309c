"""Commands that answer a question: check, expect, cautions."""

from __future__ import annotations

import datetime
import json

import click

from generator.cli.questions import asked_conditions, asked_spec, near
from generator.cli.shared import (
    ERRORS,
    FINDINGS_FORMATS,
    FORMATS,
    Options,
    good_manual,
    print_findings,
    read_manual,
    usage,
)
from generator.expected import CONDITIONS, CannotExpect, Expectation
from generator.expected import expect as expected_value
from generator.hazards import audit, guard
from generator.pages.strings import say
from generator.problems import has_errors
from generator.quantities import base_unit, figure
from generator.quantities.show import places_for
from generator.records.kinds.work import Job


@click.command()
@click.option("--format", "form", type=FINDINGS_FORMATS, default="text", help="How to print.")
@click.option(
    "--as-of", "day", type=click.DateTime(["%Y-%m-%d"]), metavar="DATE",
    help="Warn of records whose review is overdue on this day, as 2027-01-01.",
)
@click.pass_obj
def check(options: Options, form: str, day: datetime.datetime | None) -> None:
    """Check every record and print each finding at its place."""
    read = read_manual(options, day.date() if day else None)
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
@click.option("--built", "built", metavar="DATE", help="The day it was built, as 2016-05-01.")
@click.option("--format", "form", type=FORMATS, default="text", help="How to print.")
@click.pass_obj
def expect(
    options: Options,
    spec_id: str,
    stated: tuple[str, ...],
    vehicle: str | None,
    built: str | None,
    form: str,
) -> None:
    """Print the reading to expect under the conditions of the day, and how it came about."""
    kb = good_manual(options)
    spec = asked_spec(kb, spec_id, vehicle, built)
    try:
        found = expected_value(kb, spec, asked_conditions(stated))
    except CannotExpect as wrong:
        usage(f"{wrong}; {wrong.hint}")
    click.echo(_as_json(found) if form == "json" else _as_text(found))


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
        usage(f"there is no procedure, replacement or test {job_id}{near(bare, known)}")
    if len(found) > 1:
        usage(f"{job_id} is ambiguous; write {found[0].key} or {found[1].key}")
    job = found[0]
    assert isinstance(job, Job)
    guarded = guard(kb, job)
    if form == "json":
        document = {"schema": 1, "procedure": job.key, "steps": audit(guarded)}
        click.echo(json.dumps(document, ensure_ascii=False, indent=2))
        return
    for step in guarded.steps:
        click.echo(f"{step.number} {step.step.do}")
        for box in step.boxes:
            click.echo(f"    {box.word}: {', '.join(line.id for line in box.hazards)}")
