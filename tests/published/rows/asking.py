"""How a row asks a record."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

from generator.expected import expect
from generator.quantities import Interval
from generator.records.kinds.things import Component, Spec
from tests.expected.samples import spec_of
from tests.hazards.build import made, manual
from tests.published.checks import Check, Mark

SPICE = "ngspice 39, "


def wheel(id_: str, positions: int, missing: int) -> Component:
    """Give a toothed wheel."""
    part: Component = made(
        Component, "components", id_, fitted_to=["petrol-car"], does="Is read.",
        energies=["rotating"], wheel={"positions": positions, "missing": missing},
        location={"zone": "flywheel_end", "words": "on the flywheel", "side": "below"},
    )  # fmt: skip
    return part


WHEELS = (
    wheel("wheel-60-2", 60, 2), wheel("wheel-36-1", 36, 1), wheel("wheel-36", 36, 0),
    wheel("wheel-8", 8, 0), wheel("wheel-4", 4, 0),
)  # fmt: skip


@dataclass(frozen=True)
class Asked:
    """A question to a record: the spec, the side asked for and the conditions in base units."""

    spec: Spec
    side: str
    at: dict[str, float] = field(default_factory=dict)
    others: tuple[Spec, ...] = ()


def answer(asked: Asked) -> float:
    """Give one side of what the engine expects, or one end of the first line of its working."""
    kb = manual(*WHEELS, *asked.others, asked.spec)
    found = expect(kb, asked.spec, {n: Interval.of(x) for n, x in asked.at.items()})
    if asked.side.startswith("check "):
        return found.trail[0].figures[0 if asked.side == "check low" else -1]
    side: float = getattr(found, asked.side)
    return side


def row(
    model: dict[str, Any] | str, side: str, at: dict[str, float],
    expected: float | Callable[[], float], tolerance: float, mark: Mark, source: str,
    value: str | None = None, written_at: dict[str, str] | None = None,
    others: tuple[Spec, ...] = (),
) -> Check:  # fmt: skip
    """Give a check of one model: its parameters, conditions, and the value from outside."""
    spec = spec_of(model, value, at=written_at or {})
    return Check({"asked": Asked(spec, side, at, others)}, expected, tolerance, mark, source)
