"""The method page says of every model what its entry in the registry says."""

from __future__ import annotations

import re
from functools import cache

import pytest

from generator.expected import MODELS
from tests.demonstration import ROOT


@cache
def sections() -> dict[str, str]:
    """Give the text of each model's section, on one line."""
    text = (ROOT / "docs" / "method.md").read_text(encoding="utf-8")
    parts = re.split(r"^### .*\(`(\w+)`\)$", text, flags=re.M)
    return {
        name: " ".join(part.split("\n## ")[0].split())
        for name, part in zip(parts[1::2], parts[2::2], strict=True)
    }


def test_the_page_has_the_models_and_no_others() -> None:
    """Shows that a new model brings its section, and a model taken out takes it along."""
    assert set(sections()) == set(MODELS)


@pytest.mark.parametrize("name", sorted(MODELS))
def test_a_section_says_what_the_model_does(name: str) -> None:
    """Shows formula, range, source and what is left out, word for word."""
    about, text = MODELS[name].about, sections()[name]
    for said in (
        f"- Formula: {about.formula}", f"- Holds for: {about.holds}",
        f"- Source: {about.source}", f"- Does not cover: {about.omits}",
    ):  # fmt: skip
        assert " ".join(said.split()) in text
