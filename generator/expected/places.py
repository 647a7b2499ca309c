"""Where in a spec a figure stands that a model refused."""

from __future__ import annotations

from collections.abc import Iterator
from math import isclose

from generator.quantities import Written
from generator.records.kinds.base import Shape
from generator.records.kinds.things import Spec

Path = tuple[str | int, ...]

SCALES = (1.0, 100.0, 1e-3, 3600.0, 86_400.0)
"""A model may have taken the figure as a share, in millimetres, in hours or in days."""


def field_of(spec: Spec, figure: float, otherwise: Path) -> Path:
    """Give the field that holds a figure, or `otherwise` where none does.

    Notes
    -----
    The first field whose low, nominal or high value it is: the finding then stands at the line
    that has to be mended.
    """
    for scale in SCALES:
        for path, value in _written(spec):
            sides = (value.low, value.nominal, value.high)
            if any(side is not None and isclose(side, figure * scale) for side in sides):
                return path
    return otherwise if spec.value is None else ("value",)


def _written(shape: Shape, path: Path = ()) -> Iterator[tuple[Path, Written]]:
    for name in type(shape).model_fields:
        yield from _inside(getattr(shape, name), (*path, name))


def _inside(value: object, path: Path) -> Iterator[tuple[Path, Written]]:
    if isinstance(value, Written):
        yield path, value
    elif isinstance(value, Shape):
        yield from _written(value, path)
    elif isinstance(value, list):
        for index, item in enumerate(value):
            yield from _inside(item, (*path, index))
