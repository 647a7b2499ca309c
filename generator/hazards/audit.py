"""The machine-readable account: every step, its state, its rules, its boxes."""

from __future__ import annotations

from typing import Any

from generator.hazards.guarded import Guarded, GuardedStep
from generator.hazards.state import FullState


def audit(guarded: Guarded) -> list[dict[str, Any]]:
    """Give one entry a step, of plain lists, dicts and strings.

    Parameters
    ----------
    guarded : Guarded
        A job with its cautions.

    Returns
    -------
    list of dict
        `step` (number), `anchor`, `record`, `do`, `state` (while it is done: each dimension's
        word, and what is undone), `boxes` (each `word` and `hazards`, ids worst first) and
        `reminders` (ids).
    """
    return [_entry(step) for step in guarded.steps]


def _entry(step: GuardedStep) -> dict[str, Any]:
    return {
        "step": step.number,
        "anchor": step.anchor,
        "record": step.record_key,
        "do": step.step.do,
        "state": state_entry(step.state_during),
        "boxes": [
            {"word": str(box.word), "hazards": [line.id for line in box.hazards]}
            for box in step.boxes
        ],
        "reminders": [reminder.id for reminder in step.reminders],
    }


def state_entry(state: FullState) -> dict[str, Any]:
    """Give a state as plain words, with what is undone beside the dimensions."""
    return {**state.words, "undone": {name: list(ids) for name, ids in state.undone.ways.items()}}
