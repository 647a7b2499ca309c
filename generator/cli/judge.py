"""The command that holds a reading against its limits."""

from __future__ import annotations

import json
from dataclasses import replace

import click

from generator.cli.questions import asked_conditions, asked_spec, near
from generator.cli.shared import FORMATS, Options, good_manual, usage
from generator.expected import CannotExpect, Verdict, read
from generator.expected import judge as verdict_on
from generator.expected.engine import unit_of
from generator.expected.judging import as_data
from generator.pages.strings import say
from generator.quantities import WrittenError, figure, show_range
from generator.quantities.show import places_for
from generator.records.kinds.knowledge import Tool
from generator.records.knowledge_base import KnowledgeBase

CERTAIN = 0.999
"""A probability above this is not told from one."""

LEADS = {"nulled": True, "in": False, "record": None}


@click.command(context_settings={"ignore_unknown_options": True})
@click.argument("spec_id", metavar="SPEC")
@click.argument("reading", metavar="READING")
@click.option(
    "--at", "stated", multiple=True, metavar="NAME=VALUE",
    help="A condition of the day, as temperature=80degC; may be repeated.",
)
@click.option("--meter", "meter", metavar="ID", help="The instrument, by its tool record.")
@click.option(
    "--leads", "leads", type=click.Choice(list(LEADS)), default="record",
    help="Whether the leads were taken off the reading; the tool's record says it otherwise.",
)
@click.option("--vehicle", "vehicle", metavar="ID", help="The vehicle it was read on.")
@click.option("--built", "built", metavar="DATE", help="The day it was built, as 2016-05-01.")
@click.option(
    "--risk", "percent", type=click.FloatRange(0.1, 40), default=5.0, metavar="PERCENT",
    help="Greatest accepted probability of a wrong verdict (default: 5).",
)
@click.option("--format", "form", type=FORMATS, default="text", help="How to print.")
@click.pass_obj
def judge(
    options: Options,
    spec_id: str,
    reading: str,
    stated: tuple[str, ...],
    meter: str | None,
    leads: str,
    vehicle: str | None,
    built: str | None,
    percent: float,
    form: str,
) -> None:
    """Say what a reading means: in limits, low, high, open, implausible or cannot tell.

    READING is what the meter shows, as 850, 0.85k, 850 Ω, 14.2V, -12 mV or OL. A bare figure is
    in the unit the page shows; 1,2 is 1.2, but 1,200 may be either and is refused.
    """
    kb = good_manual(options)
    spec = asked_spec(kb, spec_id, vehicle, built)
    tool = None if meter is None else _tool(kb, meter)
    try:
        taken = read(reading, unit_of(spec))
        found = verdict_on(
            kb, spec, taken, asked_conditions(stated), tool,
            nulled=LEADS[leads], risk=percent / 100,
        )  # fmt: skip
    except CannotExpect as wrong:
        usage(f"{wrong}; {wrong.hint}")
    except WrittenError as wrong:
        usage(f"{reading}: {wrong}; {wrong.hint}")
    if form == "json":
        click.echo(json.dumps(as_data(found), ensure_ascii=False, indent=2))
    else:
        click.echo(as_text(found))


def _tool(kb: KnowledgeBase, tool_id: str) -> Tool:
    tool = kb.find("tools", tool_id, Tool)
    if tool is None:
        usage(f"there is no tool {tool_id}{near(tool_id, kb.records.get('tools', {}))}")
    return tool


def as_text(found: Verdict) -> str:
    """Give a verdict in words."""
    whole, sure = found.expectation, replace(
        found.expectation, low=found.sure_low, high=found.sure_high
    )
    unit, places = whole.unit.symbol, whole.spec.places
    lines = [f"{say('verdict.' + found.word)}: {found.reading.text}, {whole.spec.title}"]
    low, high = show_range(whole.shown(whole.low), whole.shown(whole.high), places)
    lines.append(f"  {say('verdict.limits', limits=_limits(low, high), unit=unit)}")
    if (sure.low, sure.high) != (whole.low, whole.high):
        core = _core(sure.shown(sure.low), sure.shown(sure.high), places)
        words = say("verdict.sure", limits=core, unit=unit) if core else say("verdict.no_core")
        lines.append(f"  {words}")
    if found.measured is not None and found.measured.u > 0:
        value = whole.shown(found.measured.value) or 0.0
        width = (whole.shown(found.measured.value + found.measured.u) or 0.0) - value
        digits = places_for(width, 2)
        lines.append(
            "  " + say("verdict.measured", value=figure(value, digits),
                       u=figure(width, digits), unit=unit)
        )  # fmt: skip
    key = "verdict.chance" if found.word == "cannot_tell" else "verdict.probability"
    if found.measured is not None and _has_core(found):
        lines.append(
            "  " + say(key, percent=_percent(found.probability),
                       risk=figure(100 * found.risk, 1))
        )  # fmt: skip
    lines += [f"  {say('verdict.remark.' + r.code, **r.values)}" for r in found.remarks]
    return "\n".join(lines)


def _has_core(found: Verdict) -> bool:
    """Say whether some reading would be in limits; without one no chance of it is worth a word."""
    low, high = found.sure_low, found.sure_high
    return found.word != "cannot_tell" or low is None or high is None or low <= high


def _percent(probability: float) -> str:
    """Give a probability that never claims to be certain."""
    if probability > CERTAIN:
        return say("verdict.more_than", percent=figure(100 * CERTAIN, 1))
    return figure(100 * probability, 1)


def _limits(low: str, high: str) -> str:
    if not low:
        return f"{say('value.at_most')} {high}"
    if not high:
        return f"{say('value.at_least')} {low}"
    return f"{low} to {high}"


def _core(low: float | None, high: float | None, places: int) -> str:
    if low is not None and high is not None and low > high:
        return ""
    return _limits(*show_range(low, high, places))
