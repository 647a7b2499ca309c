"""Every built-in rule fires where it is meant to and is silent in a near miss."""

from __future__ import annotations

from typing import Any

import pytest

from generator.hazards import Word, built_in, families, guard, rules_for, word_of
from generator.hazards.effects import SAFEST_FIRST
from generator.hazards.findings import own_rules
from generator.records.kinds.knowledge import Hazard
from tests.hazards.build import job, manual, own_rule, step
from tests.hazards.more_cases import CASES


def called_for(scene: dict[str, Any]) -> set[str]:
    """Give the ids of the full boxes at the last step of a scene."""
    scene = dict(scene)
    vehicle, entry = scene.pop("vehicle", "petrol-car"), scene.pop("entry", {})
    steps = [step(**s) for s in (*scene.pop("before", ()), scene)]
    one = job("scene", *steps, entry=entry, applies_to=[vehicle])
    last = guard(manual(one), one).steps[-1]
    return {line.id for line in last.hazards} | {reminder.id for reminder in last.reminders}


@pytest.mark.parametrize("rule", sorted(CASES))
def test_rule_fires(rule: str) -> None:
    """The step that is meant to carry the caution carries it."""
    assert rule in called_for(CASES[rule][0])


@pytest.mark.parametrize("rule", sorted(CASES))
def test_rule_is_silent_in_a_near_miss(rule: str) -> None:
    """One change to that step and the caution is gone, so it does not stand everywhere."""
    scene, change = CASES[rule]
    assert rule not in called_for({**scene, **change})


def test_every_rule_has_a_case() -> None:
    """No built-in rule is left untried, and no case names a rule that is gone."""
    assert set(CASES) == {rule.id for rule in built_in()}


def test_ids_are_unique_across_families() -> None:
    """Two families never use the same id, or one of the two would be lost."""
    ids = [rule.id for rules in families().values() for rule in rules]
    assert len(ids) == len(set(ids)) >= 85


@pytest.mark.parametrize("rule", built_in(), ids=lambda rule: rule.id)
def test_rule_is_well_formed(rule: Hazard) -> None:
    """Each rule uses known state words, has a basis, and has a reminder where a state lasts."""
    for when in rule.when:
        for name, words in when.state.items():
            assert set(words) <= set(SAFEST_FIRST[name])
    assert rule.basis
    assert (rule.begins == "state") == (rule.reminder is not None)
    assert rule.symbol is None or word_of(rule) is not Word.NOTICE or rule.symbol == "W072"


def test_built_in_rules_pass_the_checks_for_a_shop_s_own() -> None:
    """Classes of tool and substance in the built-in rules are ones that a record can lead to."""
    copies = []
    for rule in built_in():
        fields = {name: getattr(rule, name) for name in type(rule).model_fields}
        copy = Hazard.model_validate(
            {**fields, "when": [w.model_dump() for w in rule.when]}, strict=False
        )
        copy.named("hazards", f"copy-{rule.id}")
        copies.append(copy)
    assert list(own_rules(manual(*copies))) == []


def test_danger_is_rare() -> None:
    """DANGER stands on the few rules where harm is certain, or it would not be heeded."""
    danger = {rule.id for rule in built_in() if word_of(rule) is Word.DANGER}
    assert danger == {"hv-live", "under-jack-only", "exhaust-pit", "tyre-hot-work"}


@pytest.mark.parametrize(
    ("harm", "likelihood", "word"),
    [
        ("death", "will", Word.DANGER),
        ("serious", "will", Word.DANGER),
        ("death", "could", Word.WARNING),
        ("serious", "could", Word.WARNING),
        ("minor", "could", Word.CAUTION),
        ("property", "could", Word.NOTICE),
    ],
)
def test_signal_word_follows_harm_and_likelihood(harm: str, likelihood: str, word: Word) -> None:
    """The word is that of ANSI Z535.6-2006 C4.1 as quoted in the public index (second hand)."""
    assert word_of(own_rule("beam", harm=harm, likelihood=likelihood)) is word


def test_a_shop_adds_a_rule() -> None:
    """A shop's own rule stands beside the built-in ones and fires like them."""
    one = job("scene", step("look", "cabin"))
    kb = manual(one, own_rule("beam"))
    assert "beam" in {line.id for line in guard(kb, one).steps[0].hazards}
    assert len(rules_for(kb)) == len(built_in()) + 1


def test_a_shop_cannot_take_a_built_in_rule_away() -> None:
    """A record with a built-in id is a finding, and the built-in rule goes on firing."""
    one = job("scene", step("crank", "driver_seat"))
    kb = manual(one, own_rule("cranking", when=[{"action": ["tow"]}]))
    assert [p.code for p in own_rules(kb)] == ["builtin-hazard-id"]
    assert "cranking" in {line.id for line in guard(kb, one).steps[0].hazards}


def test_a_rule_that_can_never_fire_is_found() -> None:
    """A state or class that no record uses is a finding, as is DANGER for property."""
    bad = own_rule(
        "beam", likelihood="will",
        when=[{"state": {"engine": ["purring"]}, "tool_class": ["hammer"]}],
    )  # fmt: skip
    assert sorted(p.code for p in own_rules(manual(bad))) == [
        "rule-harm", "rule-word", "rule-word",
    ]  # fmt: skip
