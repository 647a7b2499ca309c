"""Steps and their cautions, old and new."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher

from generator.edit.compare.effects import Effect, Sort
from generator.hazards import Guarded, GuardedStep, rules_for
from generator.hazards.rules import Word
from generator.records.kinds.work import Job
from generator.records.knowledge_base import KnowledgeBase

ALIKE = 0.55
"""From this likeness of their words on, two steps in one place count as one, re-worded."""


@dataclass(frozen=True, slots=True)
class Caution:
    """How a step warns of one hazard: its word, and whether by a full box or in one line."""

    word: Word
    full: bool

    def weaker_than(self, other: Caution) -> bool:
        """Say whether it warns less."""
        return self.word.rank > other.word.rank or (other.full and not self.full)

    @property
    def text(self) -> str:
        """It, in words."""
        return f"{self.word}, {'box' if self.full else 'reminder'}"


Found = tuple[Effect, str]
"""An effect, and the record that the step is written in."""


def of_step(step: GuardedStep) -> dict[str, Caution]:
    """Give the cautions of a step by rule."""
    found = {one.id: Caution(one.word, full=False) for one in step.reminders}
    return found | {line.id: Caution(line.word, full=True) for line in step.hazards}


def pairs(
    before: Sequence[GuardedStep], after: Sequence[GuardedStep], names: Mapping[str, str]
) -> Iterator[tuple[GuardedStep | None, GuardedStep | None]]:
    """Pair the steps of two versions; a step without a partner was taken out or is new."""
    old = [(names.get(step.record_key, step.record_key), step.step.do) for step in before]
    new = [(step.record_key, step.step.do) for step in after]
    for tag, a1, a2, b1, b2 in SequenceMatcher(None, old, new, autojunk=False).get_opcodes():
        if tag == "equal":
            yield from zip(before[a1:a2], after[b1:b2], strict=True)
            continue
        ones, others = list(before[a1:a2]), list(after[b1:b2])
        while ones and others and _alike(ones[0].step.do, others[0].step.do):
            yield ones.pop(0), others.pop(0)
        yield from ((one, None) for one in ones)
        yield from ((None, other) for other in others)


def _alike(one: str, other: str) -> bool:
    return SequenceMatcher(None, one, other).ratio() >= ALIKE


def job_effects(
    before: Guarded, after: Guarded, titles: Mapping[str, str], names: Mapping[str, str]
) -> Iterator[Found]:
    """Give what is otherwise about a job's steps, states and cautions.

    Parameters
    ----------
    before, after : Guarded
        The job in both versions.
    titles : mapping
        Rule id to its title, of both versions.
    names : mapping
        Old record keys to new ones.
    """
    job = after.job
    for old, new in pairs(before.steps, after.steps, names):
        if old is None and new is not None:
            yield _step(job, new, "new step", "", new.step.do)
        elif new is None and old is not None:
            yield _step(job, old, "step taken out", old.step.do, "")
            yield from _gone_with(job, old, titles)
        elif old is not None and new is not None:
            if old.step.do != new.step.do:
                yield _step(job, new, "re-worded", old.step.do, new.step.do)
            if old.step.note != new.step.note:
                yield _step(job, new, "note", old.step.note or "", new.step.note or "")
            yield from _cautions(job, old, new, titles)
            yield from _states(job, old, new)


def _step(job: Job, step: GuardedStep, what: str, before: str, after: str) -> Found:
    effect = Effect(
        Sort.STEP, job.key, job.title, f"step {step.number}, {what}", before, after
    )  # fmt: skip
    return effect, step.record_key


def _gone_with(job: Job, step: GuardedStep, titles: Mapping[str, str]) -> Iterator[Found]:
    """Say which boxes went with a step: the act is gone, and so is its warning."""
    named = ", ".join(titles.get(line.id, line.id) for line in step.hazards)
    if named:
        yield _step(job, step, "its boxes went with it", named, "")


def _cautions(
    job: Job, old: GuardedStep, new: GuardedStep, titles: Mapping[str, str]
) -> Iterator[Found]:
    was, now = of_step(old), of_step(new)
    for rule in sorted(was.keys() | now.keys()):
        a, b = was.get(rule), now.get(rule)
        if a == b:
            continue
        if b is None:
            sort = Sort.CAUTION_LOST
        elif a is None:
            sort = Sort.CAUTION_GAINED
        else:
            sort = Sort.CAUTION_WEAKER if b.weaker_than(a) else Sort.CAUTION_GAINED
        what = f"step {new.number} ({new.step.do}): {titles.get(rule, rule)}"
        effect = Effect(
            sort, job.key, job.title, what, a.text if a else "", b.text if b else ""
        )  # fmt: skip
        yield effect, new.record_key


def _states(job: Job, old: GuardedStep, new: GuardedStep) -> Iterator[Found]:
    was, now = old.state_during.words, new.state_during.words
    for name in now:
        if was.get(name) != now[name]:
            effect = Effect(
                Sort.STATE, job.key, job.title, f"step {new.number}, {name.replace('_', ' ')}",
                str(was.get(name, "")), str(now[name]),
            )  # fmt: skip
            yield effect, new.record_key


def rule_effects(before: KnowledgeBase, after: KnowledgeBase) -> Iterator[Effect]:
    """Give the rules that say or weigh something otherwise."""
    was = {rule.id: rule for rule in rules_for(before)}
    for rule in rules_for(after):
        old = was.get(rule.id)
        if old is None:
            continue
        for field in ("hazard", "consequence", "avoid", "reminder", "reserved_for", "defer"):
            a, b = _text(getattr(old, field)), _text(getattr(rule, field))
            if a != b:
                yield Effect(
                    Sort.CAUTION_WORDS, rule.key, rule.title, field.replace("_", " "), a, b
                )  # fmt: skip


def _text(value: object) -> str:
    return " ".join(map(str, value)) if isinstance(value, list) else str(value or "")
