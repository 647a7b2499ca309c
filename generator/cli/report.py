"""``report``: what the manual covers, what it lacks and what is due."""

from __future__ import annotations

import datetime
import json
from typing import Any

import click

from generator.cli.shared import FORMATS, Options, good_manual
from generator.pages.book import Book
from generator.pages.coverage import PART_NEEDS, Cover, Coverage, coverage
from generator.pages.strings import say
from generator.pages.upkeep import blocks_of
from generator.records.knowledge_base import KnowledgeBase

SCHEMA = 1
"""Goes up when a key is renamed, moved or taken away; a key that is added does not count."""


@click.command()
@click.option(
    "--as-of",
    "day",
    type=click.DateTime(["%Y-%m-%d"]),
    metavar="DATE",
    help="Name the reviews that are overdue on this day, as 2027-01-01; the clock is never read.",
)
@click.option("--format", "form", type=FORMATS, default="text", help="How to print.")
@click.pass_obj
def report(options: Options, day: datetime.datetime | None, form: str) -> None:
    """Print what the manual covers, what it lacks and what is due, weakest first."""
    kb = good_manual(options)
    book = Book.of(kb.released())
    found, as_of = coverage(book.kb), day.date() if day else None
    if form == "json":
        click.echo(json.dumps(_as_data(kb, found, as_of), ensure_ascii=False, indent=2))
    else:
        click.echo("\n".join([*_head(book, found), *_lists(found), *_due(kb, found, as_of)]))


def _head(book: Book, found: Coverage) -> list[str]:
    lines = []
    for block in blocks_of(book, found):
        lines.append(block.heading)
        lines += [f"  {strip.count:>12}  {strip.label}" for strip in block.strips]
    return lines


def _lists(found: Coverage) -> list[str]:
    lines = ["", say("upkeep.weakest")]
    for (led_to, lacks), parts in found.lacking().items():
        words = ", ".join(say(f"upkeep.lack.{need}") for need in lacks)
        lines.append(f"  {words} ({say('upkeep.led_to' if led_to else 'upkeep.not_led_to')})")
        lines += [f"    {part.key}" for part in parts]
    lines += ["", say("upkeep.by_vehicle_lead")]
    for one in found.vehicles:
        lines.append(f"  {one.vehicle.key}")
        lines += [f"    {part.key}" for part, cover in one.parts if cover is Cover.NONE]
    lines += ["", say("upkeep.by_code")]
    lines += [f"  {code.code.key}: {', '.join(code.without)}" for code in found.codes
              if code.without]  # fmt: skip
    lines += ["", say("upkeep.unverified")]
    for value in found.unverified:
        why = ", ".join(say(f"upkeep.doubt.{reason}") for reason in value.reasons)
        lines.append(f"  {value.spec.key}: {why}")
    return lines


def _due(kb: KnowledgeBase, found: Coverage, as_of: datetime.date | None) -> list[str]:
    lines = ["", say("upkeep.reviews")]
    for one in found.reviews:
        if one.due is None:
            lines.append(f"  {one.record.key}: {one.record.owner}: {say('upkeep.reviews_never')}")
        elif as_of is not None and one.overdue(as_of):
            due = say("upkeep.due", date=one.due)
            lines.append(f"  {one.record.key}: {one.record.owner}: {due}")
    if as_of is not None:
        count = sum(one.overdue(as_of) for one in found.reviews)
        lines.append(f"  {say('upkeep.overdue_on', date=as_of, count=count)}")
    lines += ["", say("upkeep.exceptions")]
    lines += [f"  {record.key}: {one.check}: {one.reason}" for record, one in found.exceptions]
    lines += ["", say("upkeep.statuses")]
    return lines + [f"  {count:>5}  {status}" for status, count in _statuses(kb).items()]


def _statuses(kb: KnowledgeBase) -> dict[str, int]:
    known = [record.status for record in kb]
    return {status: known.count(status) for status in ("approved", "draft", "withdrawn")}


def _as_data(kb: KnowledgeBase, found: Coverage, as_of: datetime.date | None) -> dict[str, Any]:
    return {
        "schema": SCHEMA,
        "as_of": str(as_of) if as_of else None,
        "records": _statuses(kb),
        "parts": [
            {
                "part": one.part.key, "led_to": one.led_to,
                **{need: need in one.has for need in PART_NEEDS},
            }
            for one in found.parts
        ],
        "vehicles": [
            {
                "vehicle": one.vehicle.key,
                **{
                    str(cover): [part.key for part, is_ in one.parts if is_ is cover]
                    for cover in Cover
                },
            }
            for one in found.vehicles
        ],
        "codes": [{"code": one.code.key, "without_test_on": one.without} for one in found.codes],
        "values": {
            "all": found.values,
            "unverified": {one.spec.key: one.reasons for one in found.unverified},
        },
        "reviews": [
            {
                "record": one.record.key, "owner": one.record.owner,
                "due": str(one.due) if one.due else None,
                "overdue": one.overdue(as_of) if as_of else None,
            }
            for one in found.reviews
        ],
        "exceptions": [
            {"record": record.key, "check": one.check, "reason": one.reason,
             "approved_by": one.approved_by, "date": str(one.date)}
            for record, one in found.exceptions
        ],
    }  # fmt: skip
