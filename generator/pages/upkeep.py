"""The page about the manual itself: its coverage as a picture and in words, and what is due."""

from __future__ import annotations

import datetime
from collections.abc import Iterable
from dataclasses import dataclass
from functools import partial
from itertools import groupby

from generator.figures import Block, CoverageWords, Mark, Strip, coverage_strips
from generator.pages import routes
from generator.pages.book import Book, LinkTo
from generator.pages.coverage import PART_NEEDS, Cover, Coverage, Review, coverage
from generator.pages.page import Heading, Page, Planned, render
from generator.pages.prose import drawn
from generator.pages.strings import joined, say
from generator.records.kinds import Record
from generator.records.kinds.things import Spec


@dataclass(frozen=True, slots=True)
class Group:
    """Links under one line of words."""

    words: str
    links: tuple[LinkTo, ...]
    aside: str = ""


@dataclass(frozen=True, slots=True)
class DueGroup:
    """Records of one owner whose review is due by the same day."""

    owner: LinkTo
    due: datetime.date | None
    links: tuple[LinkTo, ...]


def planned(book: Book) -> Planned:
    """Plan the page."""
    return {routes.UPKEEP: partial(_page, book)}


def _page(book: Book) -> Page:
    found = coverage(book.kb)
    blocks = blocks_of(book, found)
    parts = ["picture", "weakest", "by_vehicle", "by_code", "unverified", "reviews",
             "exceptions"]  # fmt: skip
    return render(
        book, routes.UPKEEP, say("upkeep.heading"), "upkeep.html",
        {
            "blocks": blocks, "picture": drawn(coverage_strips("state", _words(blocks), blocks)),
            "lacking": _lacking(book, found), "by_vehicle": _by_vehicle(book, found),
            "by_code": _by_code(book, found), "unverified": _unverified(book, found),
            "due": _due(book, found), "exceptions": len(found.exceptions),
        },
        contents=(
            *(Heading(say(f"upkeep.{part}"), part.replace("_", "-")) for part in parts),
            Heading(say("standing.rule"), "confidence"),
        ),
        description=say("upkeep.lead"),
    )  # fmt: skip


def blocks_of(book: Book, found: Coverage) -> tuple[Block, ...]:
    """Give every question and its answer: what the picture draws and the text says."""
    needs = [
        _strip(
            say(f"upkeep.need.{need}"),
            [Mark.FULL if need in one.has else Mark.NONE for one in found.parts],
        )
        for need in PART_NEEDS
    ]
    vehicles = [
        _strip(
            say("upkeep.vehicle", vehicle=one.vehicle.title),
            [Mark(cover) for _, cover in one.parts],
        )
        for one in found.vehicles
    ]
    codes = [_strip(say("upkeep.codes"), [Mark(one.cover) for one in found.codes])]
    bad = len(found.unverified)
    values = [_strip(say("upkeep.values"), [Mark.NONE] * bad + [Mark.FULL] * (found.values - bad))]
    named = (("parts", needs), ("vehicles", vehicles), ("codes", codes), ("values", values))
    return tuple(Block(say(f"upkeep.block.{name}"), tuple(strips)) for name, strips in named)


def _strip(label: str, marks: list[Mark]) -> Strip:
    count = say("upkeep.of", have=marks.count(Mark.FULL), all=len(marks))
    return Strip(label, count, tuple(marks))


def _words(blocks: Iterable[Block]) -> CoverageWords:
    counts = " ".join(
        say(
            "upkeep.count", label=strip.label, have=strip.marks.count(Mark.FULL),
            all=len(strip.marks),
        )
        for block in blocks
        for strip in block.strips
    )  # fmt: skip
    return CoverageWords(
        title=say("upkeep.picture"), desc=say("upkeep.picture_desc", counts=counts),
        full=say("upkeep.mark.full"), part=say("upkeep.mark.part"), none=say("upkeep.mark.none"),
    )  # fmt: skip


def _lacking(book: Book, found: Coverage) -> list[Group]:
    return [
        Group(
            ", ".join(say(f"upkeep.lack.{need}") for need in lacks).capitalize(),
            tuple(book.link(part) for part in parts),
            say("upkeep.led_to" if led_to else "upkeep.not_led_to"),
        )
        for (led_to, lacks), parts in found.lacking().items()
    ]


def _by_vehicle(book: Book, found: Coverage) -> list[Group]:
    groups = []
    for one in found.vehicles:
        by_cover = {c: [part for part, cover in one.parts if cover is c] for c in Cover}
        words = [
            say(f"upkeep.{key}", count=len(by_cover[cover]))
            for key, cover in (("own", Cover.FULL), ("band", Cover.PART), ("no_value", Cover.NONE))
            if by_cover[cover]
        ]
        links = tuple(book.link(part) for part in by_cover[Cover.NONE])
        groups.append(Group(one.vehicle.title, links, ", ".join(words)))
    return groups


def _by_code(book: Book, found: Coverage) -> list[LinkTo]:
    return [
        LinkTo(
            f"{one.code.code} {one.code.title}", routes.address(one.code), "codes",
            say("upkeep.by_code_on", vehicles=book.vehicles(list(one.without))),
        )
        for one in found.codes
        if one.without
    ]  # fmt: skip


def _unverified(book: Book, found: Coverage) -> list[Group]:
    groups: dict[tuple[str, ...], list[LinkTo]] = {}
    for one in found.unverified:
        groups.setdefault(one.reasons, []).append(link_to(book, one.spec))
    return [
        Group(joined([say(f"upkeep.doubt.{why}") for why in reasons]).capitalize(), tuple(links))
        for reasons, links in groups.items()
    ]


def _due(book: Book, found: Coverage) -> list[DueGroup]:
    def of(one: Review) -> tuple[datetime.date, str]:
        return one.due or datetime.date.min, one.record.owner

    return [
        DueGroup(
            book.role(owner), None if day == datetime.date.min else day,
            tuple(link_to(book, one.record) for one in group),
        )
        for (day, owner), group in groupby(sorted(found.reviews, key=of), key=of)
    ]  # fmt: skip


def link_to(book: Book, record: Record) -> LinkTo:
    """Give the link to a record; a value is shown with its part."""
    if not isinstance(record, Spec):
        return book.link(record)
    part = book.kb.records["components"][record.component]
    return LinkTo(record.title, f"{routes.address(part)}#{routes.spec(record.id)}", "specs")
