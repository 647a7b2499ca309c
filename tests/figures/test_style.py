"""Roles and their colours."""

from __future__ import annotations

import pytest

from generator.figures.style import (
    DARK,
    HATCH_SENTINEL,
    LIGHT,
    SENTINELS,
    Role,
    css_name,
    declarations,
    paint,
)

SCHEMES = pytest.mark.parametrize("scheme", [LIGHT, DARK], ids=["light", "dark"])


def luminance(colour: str) -> float:
    """Give relative luminance as WCAG 2.2 defines it."""
    channels = [int(colour[index : index + 2], 16) / 255 for index in (1, 3, 5)]
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    """Give the contrast ratio of two colours as WCAG 2.2 defines it."""
    lighter, darker = sorted((luminance(one), luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def test_the_ruler_itself() -> None:
    """Black on white is 21:1, and #767676 on white just 4.5:1 (WCAG 2.2; the grey from memory)."""
    assert contrast("#000000", "#ffffff") == pytest.approx(21.0)
    assert contrast("#767676", "#ffffff") == pytest.approx(4.54, abs=0.01)


@SCHEMES
@pytest.mark.parametrize(
    "role", [Role.INK, Role.MUTED, Role.TRACE, Role.TRACE2, Role.LIMIT, Role.ACCENT]
)
def test_words_contrast(scheme: dict[Role, str], role: Role) -> None:
    """Words stand at 4.5:1 or more on the paper (WCAG 2.2, 1.4.3)."""
    assert contrast(scheme[role], scheme[Role.PAPER]) >= 4.5


@SCHEMES
def test_words_on_surfaces(scheme: dict[Role, str]) -> None:
    """Ink reads on every surface that carries words or lines, and so does a limit's line."""
    for surface in (Role.METAL, Role.GRID, Role.BAND):
        assert contrast(scheme[Role.INK], scheme[surface]) >= 4.5, surface
    for line in (Role.LIMIT, Role.TRACE, Role.ACCENT):
        assert contrast(scheme[line], scheme[Role.BAND]) >= 3, line


@SCHEMES
def test_red_lead_shows(scheme: dict[Role, str]) -> None:
    """The red lead stands at 3:1 on the paper (WCAG 2.2, 1.4.11); the black has a rim of ink."""
    assert contrast(scheme[Role.RED_LEAD], scheme[Role.PAPER]) >= 3
    assert contrast(scheme[Role.INK], scheme[Role.PAPER]) >= 3


def test_schemes_name_every_role() -> None:
    """Neither scheme forgets a role."""
    assert set(LIGHT) == set(DARK) == set(Role)


def test_sentinels_are_nobodys_colour() -> None:
    """A sentinel stands for one role and is no colour of either scheme."""
    used = [*SENTINELS.values(), HATCH_SENTINEL]
    assert len(set(used)) == len(used)
    assert not set(used) & {*LIGHT.values(), *DARK.values()}


def test_paint_falls_back_to_light() -> None:
    """A page without the theme shows the light colours."""
    assert paint(Role.RED_LEAD) == f"var(--fig-red-lead, {LIGHT[Role.RED_LEAD]})"


def test_declarations_cover_the_paints() -> None:
    """The theme's lines set each variable that a figure reads, once."""
    lines = declarations(DARK).splitlines()
    assert len(lines) == len(Role)
    for role in Role:
        assert f"  {css_name(role)}: {DARK[role]};" in lines
