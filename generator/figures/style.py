"""What a line or a surface means, and the colour it takes in either scheme.

A figure names *roles*, never colours. In the SVG each role becomes a CSS variable with its light
value as the fallback, so that one string serves the light scheme, the dark one, the toggle and
print. :func:`declarations` gives the theme the matching style sheet lines.
"""

from __future__ import annotations

from enum import StrEnum


class Role(StrEnum):
    """What a stroke, a fill or a word stands for."""

    INK = "ink"
    MUTED = "muted"
    GRID = "grid"
    TRACE = "trace"
    TRACE2 = "trace2"
    BAND = "band"
    LIMIT = "limit"
    ACCENT = "accent"
    PAPER = "paper"
    RED_LEAD = "red_lead"
    BLACK_LEAD = "black_lead"
    METAL = "metal"


# Chosen for this project. Words (ink, muted, limit, accent, both traces) stand at 4.5:1 or more
# on the paper, and lines that carry meaning at 3:1 or more (WCAG 2.2, 1.4.3 and 1.4.11).
LIGHT: dict[Role, str] = {
    Role.INK: "#1b2530",
    Role.MUTED: "#55616d",
    Role.GRID: "#d3dadf",
    Role.TRACE: "#0b5c7d",
    Role.TRACE2: "#8a4a06",
    Role.BAND: "#cfe3ea",
    Role.LIMIT: "#9c2f14",
    Role.ACCENT: "#6d2c96",
    Role.PAPER: "#fbfcfa",
    Role.RED_LEAD: "#c4231f",
    Role.BLACK_LEAD: "#20262c",
    Role.METAL: "#c2cad0",
}

DARK: dict[Role, str] = {
    Role.INK: "#e6edf1",
    Role.MUTED: "#a4b1bb",
    Role.GRID: "#2d3842",
    Role.TRACE: "#66c7e8",
    Role.TRACE2: "#efb366",
    Role.BAND: "#1c3f4e",
    Role.LIMIT: "#ff9c7d",
    Role.ACCENT: "#d8a8fa",
    Role.PAPER: "#131a20",
    Role.RED_LEAD: "#f2574f",
    Role.BLACK_LEAD: "#04070a",
    Role.METAL: "#55626c",
}

# The plotting library takes colours only. Each role, and the hatching, therefore has a colour of
# its own that nothing else uses, which the cleaner replaces. They are never seen.
SENTINELS: dict[Role, str] = {role: f"#fe01{index:02x}" for index, role in enumerate(Role)}
HATCH_SENTINEL = "#fe01ff"


def css_name(role: Role) -> str:
    """Give a role's CSS variable, such as ``--fig-red-lead``."""
    return f"--fig-{role.value.replace('_', '-')}"


def paint(role: Role) -> str:
    """Give a role's paint for an SVG attribute: its variable, with the light value to fall to."""
    return f"var({css_name(role)}, {LIGHT[role]})"


def declarations(scheme: dict[Role, str]) -> str:
    """Give a scheme's variables as CSS declarations, to stand inside a rule of the theme.

    Parameters
    ----------
    scheme : dict
        :data:`LIGHT` or :data:`DARK`.

    Returns
    -------
    str
        One declaration a line.
    """
    return "".join(f"  {css_name(role)}: {value};\n" for role, value in scheme.items())
