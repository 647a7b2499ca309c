"""No built-in rule is carried by another: without it, its own case no longer fires."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from generator.hazards import built_in, match
from tests.hazards import test_rules
from tests.hazards.more_cases import CASES


@pytest.fixture
def remove(monkeypatch: pytest.MonkeyPatch) -> Callable[[str], None]:
    """Give a way to take one built-in rule away for the length of a test."""

    def without(id_: str) -> None:
        left = tuple(rule for rule in built_in() if rule.id != id_)
        assert len(left) == len(built_in()) - 1
        monkeypatch.setattr(match, "built_in", lambda: left)
        monkeypatch.setattr(match, "_READY", {})  # the rules that were made ready before

    return without


@pytest.mark.parametrize("rule", [rule.id for rule in built_in()])
def test_the_case_of_a_rule_fails_without_it(rule: str, remove: Callable[[str], None]) -> None:
    """The rule's own case fails once the rule is gone, and the step loses no other caution."""
    scene, _ = CASES[rule]
    whole = test_rules.called_for(scene)
    remove(rule)
    with pytest.raises(AssertionError):
        test_rules.test_rule_fires(rule)
    assert test_rules.called_for(scene) == whole - {rule}
