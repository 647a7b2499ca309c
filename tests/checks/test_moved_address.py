"""A renamed record's old address that leads nowhere."""

from __future__ import annotations

import pytest

from generator.checks import moved_address
from tests.checks.manuals import text_of, with_settings

GOOD = "\nmoved:\n  - kind: tests\n    old: coil-resistance\n    new: winding-resistance\n"


@pytest.mark.parametrize(
    ("old", "new", "marked"),
    [
        ("kind: tests", "kind: test", "test"),
        ("old: coil-resistance", "old: battery-rest", "battery-rest"),
        ("new: winding-resistance", "new: winding-resistence", "winding-resistence"),
    ],
)
def test_each_part_of_an_entry_can_be_wrong(old: str, new: str, marked: str) -> None:
    """An unknown kind, an id in use again and a record that is not there are found in place."""
    manual = with_settings(text_of("settings") + GOOD.replace(old, new))
    (found,) = moved_address.problems(manual.kb)
    assert manual.marked(found) == marked


def test_a_right_entry_is_none() -> None:
    """An old id that is free and a new one that is there."""
    assert not moved_address.problems(with_settings(text_of("settings") + GOOD).kb)
