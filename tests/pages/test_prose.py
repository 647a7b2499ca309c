"""Prose: a little formatting comes through, everything else is inert."""

from __future__ import annotations

import pytest

from generator.pages.prose import inline, prose


def test_a_little_formatting_comes_through() -> None:
    """Shows paragraphs, lists and stress."""
    html = prose("Read it *twice*.\n\n- hot\n- cold")
    assert "<em>twice</em>" in html
    assert html.count("<li>") == 2


@pytest.mark.parametrize(
    "text",
    [
        "<script>alert(1)</script>",
        "<img src=x onerror=alert(1)>",
        "[click](javascript:alert(1))",
        "![shot](https://elsewhere.example/x.png)",
        '<a href="https://elsewhere.example">away</a>',
        "<svg onload=alert(1)>",
        "<iframe src=//elsewhere.example></iframe>",
        "<style>body{display:none}</style>",
        '<p style="position:fixed" onclick="x()">text</p>',
        "{{ 7 * 7 }}",
    ],
)
def test_everything_else_is_inert(text: str) -> None:
    """Shows that no script, address, style or template in prose reaches the page alive."""
    html = str(prose(text)).lower()
    for live in ("<script", "<img", "<svg", "<a", "<iframe", "<style", "style=", "onclick", "49"):
        assert live not in html


def test_inline_drops_only_a_lone_paragraph() -> None:
    """Shows that one paragraph loses its frame and two keep theirs."""
    assert inline("One.") == "One."
    assert inline("One.\n\nTwo.").count("<p>") == 2
