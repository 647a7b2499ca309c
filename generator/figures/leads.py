"""A meter's two leads: told apart by their rings and their place as well as by colour."""

from __future__ import annotations

from generator.figures.drawing import Drawing, Point, rounded, through
from generator.figures.style import Role

PROBE = 34.0
"""From the end of the cable to the tip of a probe in an outer row, in units."""


def cable(drawing: Drawing, outline: str, role: Role) -> None:
    """A lead's cable: plain for red, ringed for black, with a rim that shows on any ground."""
    drawing.path(outline, edge=Role.PAPER, width=6.5)
    drawing.path(outline, edge=Role.INK, width=4.6)
    drawing.path(outline, edge=role, width=3.2)
    if role is Role.BLACK_LEAD:
        drawing.path(outline, edge=Role.METAL, width=3.2, dashes="2 7")


def lead_to(drawing: Drawing, route: list[Point], needle: list[Point], role: Role) -> None:
    """A plug in its socket, the cable, and the probe with its needle."""
    cable(drawing, rounded(route, 9), role)
    drawing.circle(*route[0], 6, fill=role, stroke=1.2)
    end = route[-1]
    length = max(abs(needle[0][0] - end[0]), abs(needle[0][1] - end[1]))
    along = ((needle[0][0] - end[0]) / length, (needle[0][1] - end[1]) / length)
    across = (-along[1], along[0])

    def at(ahead: float, aside: float) -> Point:
        return (
            end[0] + ahead * along[0] + aside * across[0],
            end[1] + ahead * along[1] + aside * across[1],
        )

    drawing.line([at(20, 0), *needle], Role.PAPER, 4.5)
    drawing.line([at(20, 0), *needle], Role.INK, 2)
    grip = [at(0, -3.5), at(0, 3.5), at(16, 5), at(23, 1.6), at(23, -1.6), at(16, -5)]
    drawing.path(through(grip, closed=True), fill=role, width=1.2)
    if role is Role.BLACK_LEAD:
        for ahead in (5, 9, 13):
            drawing.line([at(ahead, -3.6), at(ahead, 3.6)], Role.METAL, 1.4)
