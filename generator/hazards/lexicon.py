"""The words of the second net, made ready: verbs with their forms, nouns as tokens."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from importlib import resources
from typing import Any

import yaml

from generator.hazards.match import Asked
from generator.records.kinds.facts import Action
from generator.records.kinds.knowledge import When

Words = tuple[str, ...]


@dataclass(frozen=True)
class Wording:
    """How one hazard shows in words.

    Parameters
    ----------
    verbs : frozenset of str
        The kinds of verb that bring it out of its nouns.
    at : frozenset of str
        Those that do so at the noun too: a bolt undone at the fuel filter opens the filter.
    nouns : mapping
        First word to the phrases that begin with it, longest first.
    but : frozenset of str
        Verbs that do not, though their kind does.
    acts : frozenset of str
        Verbs that imply it by themselves.
    phrases, across : pattern or None
        Words that imply it by themselves, within one clause or across several.
    declared : tuple of (actions, Asked)
        The facts that declare it; no actions means any.
    """

    verbs: frozenset[str]
    at: frozenset[str]
    nouns: Mapping[str, tuple[Words, ...]]
    but: frozenset[str]
    acts: frozenset[str]
    phrases: re.Pattern[str] | None
    across: re.Pattern[str] | None
    declared: tuple[tuple[frozenset[Action], Asked], ...]


@dataclass(frozen=True)
class Language:
    """What verbs do and which words steer a sentence.

    Parameters
    ----------
    plain : mapping
        Each verb in its plain form to its kinds.
    participles : mapping
        Each form in -ing or -ed to the plain form.
    words : mapping
        The word lists, by name.
    positive, negative : tuple of tuple of str
        Phrases that steer a sentence, as words, longest first.
    masks : mapping
        First word to the harmless wholes that begin with it.
    same : mapping
        A word to the one that stands for it.
    """

    plain: Mapping[str, frozenset[str]]
    participles: Mapping[str, str]
    words: Mapping[str, frozenset[str]]
    positive: tuple[Words, ...]
    negative: tuple[Words, ...]
    masks: Mapping[str, tuple[Words, ...]]
    same: Mapping[str, str]


HAZARDS = ("energies.yml", "motion.yml", "work.yml")
PHRASES = ("positive", "negative", "masks")


@cache
def language() -> Language:
    """Give the words of the language, read once."""
    written = _read("language.yml")
    same = {str(word): str(other) for word, other in written.pop("same").items()}
    kinds: dict[str, set[str]] = {}
    for kind, verbs in written.pop("verbs").items():
        for verb in verbs:
            kinds.setdefault(same.get(verb, verb), set()).add(kind)
    positive, negative, masks = (_phrases(written.pop(name), same) for name in PHRASES)
    return Language(
        {verb: frozenset(of) for verb, of in kinds.items()},
        {form: verb for verb in kinds for form in participles(verb) if form not in kinds},
        {name: frozenset(map(str, words)) for name, words in written.items()},
        positive,
        negative,
        _by_first(masks),
        same,
    )


@cache
def wordings() -> dict[str, Wording]:
    """Give every hazard's wording, read once."""
    same = language().same
    return {
        name: _wording(entry, same)
        for file in HAZARDS
        for name, entry in _read(file).items()
    }  # fmt: skip


def participles(verb: str) -> tuple[str, ...]:
    """Give the forms of a verb that end in -ing and -ed, by the rules of English spelling."""
    stem = verb[:-1] if verb.endswith("e") and not verb.endswith("ee") else verb
    if re.fullmatch(r"[^aeiou]*[aeiou][bdgklmnprt]", verb):
        stem = verb + verb[-1]
    return (stem + "ing", verb + "ing", stem + "ed")


def _wording(entry: Mapping[str, Any], same: Mapping[str, str]) -> Wording:
    whens = [When.model_validate(when, strict=False) for when in entry["declared"]]
    nouns = _phrases([*entry.get("nouns", ()), *entry.get("parts", ())], same)
    return Wording(
        frozenset(entry.get("verbs", ())),
        frozenset(entry.get("at", ())),
        _by_first(nouns),
        frozenset(entry.get("but", ())),
        frozenset(entry.get("acts", ())),
        _pattern(entry.get("phrases", ())),
        _pattern(entry.get("across", ())),
        tuple((frozenset(when.action), Asked.of(when)) for when in whens),
    )


def _by_first(phrases: Iterable[Words]) -> dict[str, tuple[Words, ...]]:
    """Sort phrases by their first word, keeping their order."""
    found: dict[str, tuple[Words, ...]] = {}
    for phrase in phrases:
        found[phrase[0]] = (*found.get(phrase[0], ()), phrase)
    return found


def _pattern(texts: Sequence[str]) -> re.Pattern[str] | None:
    """Make one pattern that matches any of some phrases, as whole words only."""
    return re.compile(rf"(?<![\w'])(?:{'|'.join(texts)})(?![\w'])") if texts else None


def _phrases(texts: Iterable[str], same: Mapping[str, str]) -> tuple[Words, ...]:
    split = {tuple(same.get(w, w) for w in text.split()) for text in texts}
    return tuple(sorted(split, key=lambda words: (-len(words), words)))


def _read(name: str) -> Any:
    file = resources.files("generator.hazards") / "wording" / name
    loader = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
    return yaml.load(file.read_text(encoding="utf-8"), loader)
