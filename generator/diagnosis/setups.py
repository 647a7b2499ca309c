"""Set-up that two tests share, read off their steps: the lift, the battery, what is apart."""

from __future__ import annotations

from collections.abc import Mapping

from generator.records.kinds.facts import Action
from generator.records.kinds.work import Step, Test

# What set-up and its undoing take together: the shop's judgement, common practice. They only
# decide which of two tests comes first, and never more than half of a test's own minutes.
LIFT_MINUTES = 6.0
BATTERY_MINUTES = 3.0
COVER_MINUTES = 3.0
CONNECTOR_MINUTES = 1.0

PAIRS: Mapping[Action, tuple[Action, float]] = {
    Action.RAISE_ON_LIFT: (Action.LOWER_TO_GROUND, LIFT_MINUTES),
    Action.DISCONNECT_BATTERY: (Action.CONNECT_BATTERY, BATTERY_MINUTES),
    Action.REMOVE: (Action.FIT, COVER_MINUTES),
    Action.UNPLUG: (Action.PLUG, CONNECTOR_MINUTES),
}
"""An act that sets something up, the act that undoes it, and the minutes of both."""

OF_A_PART = (Action.REMOVE, Action.UNPLUG)

QUIET = frozenset({
    *PAIRS, *(undo for undo, _ in PAIRS.values()), Action.KEY_OFF, Action.WAIT, Action.LOOK,
    Action.RECORD, Action.READ, Action.ASK, Action.CLEAN, Action.CONNECT_LEADS,
    Action.DISCONNECT_LEADS, Action.LOOSEN, Action.TIGHTEN,
})  # fmt: skip
"""Acts that do not care what is set up; any other might need the vehicle whole."""


def leaves(test: Test) -> dict[str, float]:
    """Give the set-ups that may stay as they are after a test, with their minutes.

    They are those that it undoes after its last act that might need the vehicle otherwise.
    """
    return _outer(list(reversed(test.steps)), test, undoing=True)


def takes(test: Test) -> dict[str, float]:
    """Give the set-ups that a test can find done already, with their minutes."""
    return _outer(test.steps, test, undoing=False)


def _outer(steps: list[Step], test: Test, *, undoing: bool) -> dict[str, float]:
    both = _named(test.steps, undoing=False).keys() & _named(test.steps, undoing=True).keys()
    before_use: list[Step] = []
    for step in steps:
        if step.action not in QUIET or step.call is not None:
            break
        before_use.append(step)
    found = _named(before_use, undoing=undoing)
    return {name: minutes for name, minutes in found.items() if name in both}


def _named(steps: list[Step], *, undoing: bool) -> dict[str, float]:
    found: dict[str, float] = {}
    for step in steps:
        for setting_up, (undo, minutes) in PAIRS.items():
            if step.action is (undo if undoing else setting_up):
                # A connector's two halves are one act: its first part names it.
                part = step.acts_on[0] if setting_up in OF_A_PART and step.acts_on else ""
                found[f"{setting_up.value} {part}".strip()] = minutes
    return found
