"""The safety page: what the words and signs mean, and every rule behind the boxes."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from generator.hazards import HazardLine, built_in, families, rules_for
from generator.pages import routes
from generator.pages.book import Book, LinkTo
from generator.pages.page import Heading, Page, anchor_of, render
from generator.pages.strings import say
from generator.records.kinds.knowledge import Hazard


@dataclass(frozen=True, slots=True)
class RuleView:
    """A rule as it stands in a box, and who has reviewed it."""

    line: HazardLine
    reviewed: str


def page(book: Book) -> Page:
    """Make the page of every rule."""
    own = set(book.kb.records.get("hazards", {}))
    shops = [rule for rule in rules_for(book.kb) if rule.id in own]
    groups = [(say("safety.shop_rules"), "shop-rules", _views(book, shops))] if shops else []
    for family, rules in families().items():
        name = say(f"safety.family.{family}")
        groups.append((name, anchor_of(name), _views(book, rules)))
    return render(
        book,
        routes.SAFETY,
        say("safety.heading"),
        "safety.html",
        {
            "groups": groups,
            "all_reviewed": all(rule.reviewed for rule in built_in()),
            "audit": LinkTo(say("safety.audit"), routes.AUDIT),
        },
        contents=(
            Heading(say("safety.emergency"), "emergency"), Heading(say("safety.words"), "words"),
            *(Heading(heading, anchor) for heading, anchor, _rules in groups),
        ),
        description=say("safety.lead"),
    )  # fmt: skip


def _views(book: Book, rules: Iterable[Hazard]) -> list[RuleView]:
    return [RuleView(HazardLine.of(rule), _reviewed(book, rule)) for rule in rules]


def _reviewed(book: Book, rule: Hazard) -> str:
    if rule.reviewed is None:
        return say("safety.rule_not_reviewed")
    person = book.kb.records.get("people", {}).get(rule.reviewed.by)
    who = person.title if person is not None else rule.reviewed.by
    return say("safety.rule_reviewed", date=rule.reviewed.date, who=who)
