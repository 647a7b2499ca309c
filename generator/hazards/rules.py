"""The rules: the built-in set, which ships with the generator, and a shop's own beside it.

A rule is data: a `Hazard` record. Nothing can take a built-in rule away; a shop's record of the
same id is a finding and is not used.
"""

from __future__ import annotations

from enum import StrEnum
from functools import cache
from importlib import resources
from typing import Any

import yaml

from generator.records.kinds.knowledge import Hazard

BUILT_IN_ROLE = "built-in"
"""Stands where a record names the role that wrote it: these rules come with the generator."""


class Word(StrEnum):
    """Signal words, worst first."""

    DANGER = "DANGER"
    WARNING = "WARNING"
    CAUTION = "CAUTION"
    NOTICE = "NOTICE"

    @property
    def rank(self) -> int:
        """0 for the worst."""
        return list(Word).index(self)


def word_of(rule: Hazard) -> Word:
    """Give the signal word that harm and likelihood call for.

    Notes
    -----
    Worst credible harm of death or serious injury: DANGER where it will happen, WARNING where it
    could; lesser injury: CAUTION at any probability; property alone: NOTICE. Modelled on the
    choice described for ANSI Z535.6-2006, C4.1 (read second hand).
    """
    if rule.harm == "property":
        return Word.NOTICE
    if rule.harm == "minor":
        return Word.CAUTION
    return Word.DANGER if rule.likelihood == "will" else Word.WARNING


@cache
def built_in() -> tuple[Hazard, ...]:
    """Give the built-in rules, family by family, in the order they are written."""
    return tuple(rule for rules in families().values() for rule in rules)


@cache
def families() -> dict[str, tuple[Hazard, ...]]:
    """Give the built-in rules by family: the name of the file they are written in."""
    folder = resources.files("generator.hazards") / "rules"
    files = sorted((f for f in folder.iterdir() if f.name.endswith(".yml")), key=lambda f: f.name)
    return {
        file.name.removesuffix(".yml"): tuple(
            _rule(written)
            for written in yaml.load(file.read_text(encoding="utf-8"), Loader=_LOADER)
        )
        for file in files
    }


@cache
def built_in_ids() -> frozenset[str]:
    """Give the ids that a shop's own rule may not take."""
    return frozenset(rule.id for rule in built_in())


_LOADER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


def _rule(written: dict[str, Any]) -> Hazard:
    fields = {"author": BUILT_IN_ROLE, "owner": BUILT_IN_ROLE, **written}
    id_ = str(fields.pop("id"))
    # lax, because YAML gives words where the shape holds enumerations
    rule = Hazard.model_validate(fields, strict=False)
    rule.named("hazards", id_)
    return rule
