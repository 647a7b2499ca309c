"""A refitting that is told as the reverse of taking apart."""

from __future__ import annotations

import pytest

from generator.checks import refit_in_reverse
from tests.checks.manuals import Edited, edited

JOB = "procedures/set-gap-1-6"
STEP = "Fit the air duct."


def with_step(text: str, job: str = JOB) -> Edited:
    """Give the manual with a step that says something else."""
    return edited(job, STEP, text)


@pytest.mark.parametrize(
    "text",
    [
        "Refit in reverse.",
        "Refit in reverse order.",
        "Refit the rest in the reverse order of removal.",
        "Refitting is the reverse of removal.",
        "Assemble in the reverse sequence.",
        "Put it together in the opposite order.",
        "Finish by reversing the steps.",
    ],
)
def test_each_way_to_say_it_is_found(text: str) -> None:
    """The sentence is marked, and what a reverse order does not tell is named."""
    manual = with_step(text)
    (found,) = refit_in_reverse.problems(manual.kb)
    assert manual.marked(found) == text
    assert "Sensor bolt torque" in found.message


@pytest.mark.parametrize(
    "text",
    ["Put it in reverse gear and look at the lamp.", "The polarity is in reverse gear wiring.",
     "Turn the reverse-flow valve.", "Reverse the vehicle out of the bay."],
)  # fmt: skip
def test_other_reverses_are_none(text: str) -> None:
    """A gear and a driving direction send nobody back through the steps."""
    assert not refit_in_reverse.problems(with_step(text).kb)


def test_where_nothing_is_lost_it_may_be_said() -> None:
    """A charger comes off as it went on: no torque, no new part, nothing to learn."""
    job = "procedures/charge-battery"
    manual = edited(job, "Write down how long it charged.", "Pack up in reverse order.")
    assert not refit_in_reverse.problems(manual.kb)
