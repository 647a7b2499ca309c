"""A fault code whose file is named after another one."""

from __future__ import annotations

from generator.checks import code_and_file_differ
from tests.checks.manuals import edited, text_of, written


def test_a_code_in_another_ones_file_is_found() -> None:
    """The code is marked, and the hint is the name the file should have."""
    manual = edited("codes/p0335", "code: P0335", "code: P0340")
    (found,) = code_and_file_differ.problems(manual.kb)
    assert manual.marked(found) == "P0340"
    assert found.hint.startswith("rename the file to p0340.yml")


def test_a_file_named_after_its_code_is_right() -> None:
    """Letters among the digits are written small too."""
    text = text_of("codes/p0335").replace("code: P0335", "code: P0A1F")
    assert not code_and_file_differ.problems(written("codes/p0a1f", text).kb)
    assert code_and_file_differ.problems(written("codes/p0a1e", text).kb)
