"""A value that is hardly true of any vehicle.

Wrong: The value lies beyond what its quantity is ever read as on a vehicle, or beyond what a part
of its model can have: a winding of five megohms, a pull-up to two hundred volts.

Why: A digit or a unit is wrong, and every reading on every vehicle would look like a fault.

Mend: Check figure and unit against the source. If it is true all the same, say why in a reasoned
exception.

Fails, in specs/inductive-winding:

    value: 5 Mohm ± 10 %

Passes:

    value: 860 ohm ± 10 %
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from generator.checks.fault_page import fault
from generator.problems import Problem
from generator.quantities import Written
from generator.records.kinds.base import Shape
from generator.records.kinds.things import Spec
from generator.records.knowledge_base import KnowledgeBase, Path

IMPLAUSIBLE_VALUE = fault("implausible-value", __doc__)

Range = tuple[float, float]

QUANTITIES: Mapping[str, Range] = {
    # All in the base unit of the quantity; wide on purpose (practice): what lies outside is a
    # slip of the pen, not a rare vehicle.
    "voltage": (-1000.0, 60_000.0),  # an ignition secondary at its most
    "current": (-3000.0, 3000.0),  # a large starter locked
    "frequency": (0.01, 1e7),  # a data bus at its fastest
    "rotational speed": (1.0, 350_000.0),  # a small turbocharger
    "temperature": (-60.0, 1300.0),  # a frosty night to a glow plug
    "length": (0.0, 30.0),
    "area": (0.01, 1000.0),
    "torque": (0.1, 3000.0),  # a small screw to a lorry's hub nut
    "force": (-1e6, 1e6),
    "pressure": (-1.1e5, 4e8),  # an intake to a common rail
    "time": (1e-7, 366 * 86_400.0),
    "ratio": (-1000.0, 1000.0),
    "charge": (0.5, 2000.0),
    "inductance": (1e-7, 1000.0),
    "power": (0.0, 1e6),
    "volume": (0.0, 2000.0),
    "mass": (0.0, 60_000.0),
    "road speed": (0.0, 450.0),
    "angle": (-7200.0, 7200.0),
}

CONDITIONS: Mapping[str, Range] = {
    # The condition's name, in the base unit: what its quantity alone does not tell.
    "altitude": (0.0, 6500.0),  # the sea to the highest motor roads, in m
}

MODELS: Mapping[tuple[str, str], Range] = {
    # Model and field, in the base unit (practice).
    ("winding", "value"): (0.05, 50_000.0),  # an injector to an ignition secondary, in ohm
    ("pickup_volts", "value"): (0.01, 150.0),  # slow cranking to full speed, in volts
    ("pull_up", "pull_up"): (1.0, 50.0),  # logic levels to a lorry's supply, in volts
    ("pull_up", "resistor"): (50.0, 1e6),  # in ohm
    ("pull_up", "meter"): (1e4, 1e11),  # a moving coil to an electrometer, in ohm
    ("square_mean", "high"): (0.5, 500.0),  # in volts
    ("square_mean", "low"): (-50.0, 100.0),  # in volts
    ("square_mean", "duty"): (0.0, 100.0),  # in per cent
}


def problems(kb: KnowledgeBase) -> list[Problem]:
    """Give a finding for each value, reference or model figure beyond what is plausible."""
    return [
        kb.problem(
            IMPLAUSIBLE_VALUE, spec, path,
            f"{value.text} is hardly true of any vehicle; "
            f"{_shown(low, value)} to {_shown(high, value)} {value.unit.symbol} is plausible here",
            "check the figure and its unit against the source",
        )
        for spec in kb.all("specs", Spec)
        for path, value, (low, high) in implausible(spec)
    ]  # fmt: skip


def implausible(spec: Spec) -> Iterator[tuple[Path, Written, Range]]:
    """Give each written value of a spec that is not plausible, its place and what would be."""
    for path, value, (low, high) in _held_against(spec):
        ends = [end for end in (value.low, value.high) if end is not None]
        if any(not low <= end <= high for end in ends):
            yield path, value, (low, high)


def _held_against(spec: Spec) -> Iterator[tuple[Path, Written, Range]]:
    """Give each written value of a spec with the range it is plausible in."""
    for path, value in _written(spec):
        if isinstance(value, Written):
            named = (spec.model.name, str(path[-1]))
            own = CONDITIONS.get(named[1]) if path[0] == "at" else MODELS.get(named)
            plausible = own or QUANTITIES.get(value.quantity)
            if plausible is not None:
                yield path, value, plausible


def _written(spec: Spec) -> Iterator[tuple[Path, object]]:
    yield ("value",), spec.value
    for part in ("model", "at"):
        shape: Shape = getattr(spec, part)
        for name in type(shape).model_fields:
            yield (part, name), getattr(shape, name)


def _shown(end: float, value: Written) -> str:
    return f"{value.in_unit(end):g}"
