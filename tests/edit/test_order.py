"""Ordering: keys in their place, and not a word of anything else changed."""

from __future__ import annotations

import random
import re
from collections import Counter
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.edit.files import every
from generator.edit.order import ordered
from generator.edit.source import Source, Unreadable, meaning, read
from generator.records.kinds import KINDS
from generator.shapes.outline import (
    SETTINGS,
    TAG,
    Choice,
    Either,
    Group,
    Items,
    Node,
    Table,
    outline,
)
from tests.demonstration import SMALL_RECORDS
from tests.edit.handwriting import Hand

RECORDS = SMALL_RECORDS
KEY = re.compile(r"( *(?:- +)*)([\"\w]+):( |$)")


def fmt(text: str, kind: str = "tests") -> str:
    """Order the keys of a record."""
    return ordered(read(text.encode(), "x.yml"), outline(kind))


def misplaced(node: Node, data: Any, path: str = "") -> list[str]:
    """Give each group whose keys are not in canonical order, by a walk of its own."""
    if isinstance(node, Choice) and isinstance(data, dict):
        node = node.groups[data[TAG]]
    found = []
    if isinstance(node, Group) and isinstance(data, dict):
        place = {field.name: number for number, field in enumerate(node.fields)}
        keys = [place[key] for key in data]
        found = [path or "the record"] if keys != sorted(keys) else []
        for field in node.fields:
            if field.name in data:
                found += misplaced(field.node, data[field.name], f"{path}/{field.name}")
    elif isinstance(node, Items) and isinstance(data, list):
        found = [one for item in data for one in misplaced(node.item, item, f"{path}/-")]
    else:
        assert (
            not isinstance(node, (Either, Table))
            or not isinstance(data, dict)
            or not any(isinstance(value, dict) for value in data.values())
        )
    return found


def without_order(text: str) -> Counter[str]:
    """Give the lines of a text without their margins and dashes; fields in braces in any order."""
    return Counter("".join(sorted(re.sub(r"^[ -]+", "", line))) for line in text.splitlines())


def strays(text: str) -> list[str]:
    """Give each comment that does not stand above the key it was written for."""
    lines = text.splitlines()
    found = []
    for number, line in enumerate(lines):
        said = re.fullmatch(r" *# above (k\d+)\r?", line)
        if said:
            below = (one for one in lines[number:] if one.strip() and one.lstrip()[0] != "#")
            if not next(below).rstrip().endswith(f"# {said.group(1)}"):
                found.append(line)
    return found


@settings(max_examples=300)
@given(st.sampled_from([*KINDS, SETTINGS]), st.integers(0, 2**32))
def test_a_record_in_any_hand(kind: str, seed: int) -> None:
    """Meaning, comments, blank lines, quotes and digits stay; keys get their order; once is enough.

    The handwriting is made without this package's help, and each comment is known by the key it
    was written for.
    """
    text = Hand(random.Random(seed)).record(outline(kind))
    source = read(text.encode(), "x.yml")
    made = ordered(source, outline(kind))
    again = read(made.encode(), "x.yml")
    assert meaning(again.data) == meaning(source.data)
    assert misplaced(outline(kind), again.data) == []
    assert without_order(made) == without_order(text)
    assert strays(text) == strays(made) == []
    assert ordered(again, outline(kind)) == made


AUTHORS_OWN = {"shows:", "when:", "codes:", "state:"}
"""Keys whose names below are the author's, in the author's order."""


def shuffled(lines: list[str], pick: random.Random) -> list[str]:
    """Shuffle the fields of each indented group, told by the indentation alone."""
    match = next((found for line in lines if (found := KEY.match(line))), None)
    if match is None:
        return lines
    column = match.end(1)
    starts = [n for n, line in enumerate(lines) if (m := KEY.match(line)) and m.end(1) == column]
    if lines[0][:column].strip() == "" and starts[0] == 0:
        fields = [lines[a:b] for a, b in zip(starts, [*starts[1:], len(lines)], strict=True)]
        inner = [
            one if one[0].strip() in AUTHORS_OWN else [one[0], *by_item(one[1:], pick)]
            for one in fields
        ]
        pick.shuffle(inner)
        return [line for one in inner for line in one]
    return lines


def by_item(lines: list[str], pick: random.Random) -> list[str]:
    """Shuffle what stands under a key: a group, or each group of a list."""
    if not lines or not KEY.match(lines[0]):
        return lines
    margin = re.match(r" *", lines[0])
    assert margin is not None
    dash = margin.group() + "- "
    if not lines[0].startswith(dash):
        return shuffled(lines, pick)
    starts = [n for n, line in enumerate(lines) if line.startswith(dash)]
    made = []
    for start, end in zip(starts, [*starts[1:], len(lines)], strict=True):
        blank = [lines[start].replace("-", " ", 1), *lines[start + 1 : end]]
        item = shuffled(blank, pick)
        made += [dash + item[0][len(dash) :], *item[1:]]
    return made


@pytest.mark.parametrize("seed", range(3))
def test_every_real_record_comes_back(seed: int) -> None:
    """Each record of the demonstration, its keys shuffled at every level, comes back whole."""
    pick = random.Random(seed)
    moved = 0
    for file in every(RECORDS, "kb_source"):
        text = file.path.read_text(encoding="utf-8")
        spoilt = "\n".join(shuffled(text.rstrip("\n").split("\n"), pick)) + "\n"
        moved += spoilt != text
        assert meaning(read(spoilt.encode(), "").data) == meaning(read(text.encode(), "").data)
        assert fmt(spoilt, file.kind) == fmt(text, file.kind), file.shown
    assert moved > 100


def test_the_demonstration_manual_is_in_order() -> None:
    """What this project ships is written as it asks others to write."""
    out = [
        file.shown
        for file in every(RECORDS, "kb_source")
        if fmt(file.path.read_text(encoding="utf-8"), file.kind)
        != file.path.read_text(encoding="utf-8")
    ]
    assert out == []


CASES = {
    "a comment above and one beside travel": (
        "owner: b # who\n# the name\ntitle: a\n",
        "# the name\ntitle: a\nowner: b # who\n",
    ),
    "a head that a blank line follows stays": (
        "# for editors\n\n# of b\nowner: b\ntitle: a\n",
        "# for editors\n\ntitle: a\n# of b\nowner: b\n",
    ),
    "the line for editors stays first": (
        "# yaml-language-server: $schema=x\nowner: b\ntitle: a\n",
        "# yaml-language-server: $schema=x\ntitle: a\nowner: b\n",
    ),
    "blank lines are kept, and none comes to stand at the top": (
        "owner: b\n\n\ntitle: a\nauthor: c\n",
        "title: a\nauthor: c\n\n\nowner: b\n",
    ),
    "a comment at the end stays at the end": (
        "owner: b\ntitle: a\n\n# the end\n",
        "title: a\nowner: b\n\n# the end\n",
    ),
    "an item that was commented out travels with its list": (
        "tools:\n  - a\n  # - b\ntitle: c\n",
        "title: c\ntools:\n  - a\n  # - b\n",
    ),
    "the first key of a list item changes": (
        "steps:\n  # one\n  - place: away # p\n    # kind\n    action: look\n    do: Look.\n",
        "steps:\n  # one\n  - do: Look.\n    # kind\n    action: look\n    place: away # p\n",
    ),
    "a comment of what becomes first behind a dash moves above the dash": (
        "steps:\n  - place: away\n    # what\n    do: Look.\n",
        "steps:\n  # what\n  - do: Look.\n    place: away\n",
    ),
    "a list that is not indented": (
        "steps:\n- place: away\n  do: Look.\ntitle: a\n",
        "title: a\nsteps:\n- do: Look.\n  place: away\n",
    ),
    "a dash on a line of its own": (
        "steps:\n  -\n    # where\n    place: away\n    do: Look.\n",
        "steps:\n  -\n    do: Look.\n    # where\n    place: away\n",
    ),
    "a text of several lines moves whole, with what looks like a comment in it": (
        "purpose: |\n  One.\n\n  # Two.\ntitle: a\n",
        "title: a\npurpose: |\n  One.\n\n  # Two.\n",
    ),
    "figures and quotes stay as written": (
        "minutes: 10.50\nowner: 'b'\ntitle: \"a\"\n",
        "title: \"a\"\nowner: 'b'\nminutes: 10.50\n",
    ),
    "braces on one line": (
        "reviewed: {date: 2026-01-02, by: a}\n",
        "reviewed: {by: a, date: 2026-01-02}\n",
    ),
    "braces over several lines, one inside the other": (
        "hookups: [{plugged: true, leads: [{to: a,\n    colour: red}], setting: x}]\n",
        "hookups: [{setting: x, plugged: true, leads: [{colour: red,\n    to: a}]}]\n",
    ),
    "no line end at the end": ("owner: b\ntitle: a", "title: a\nowner: b\n"),
    "carriage returns": ("owner: b\r\ntitle: a", "title: a\r\nowner: b\r\n"),
    "a file that begins with dashes": ("---\nowner: b\ntitle: a\n", "---\ntitle: a\nowner: b\n"),
    "keys that no shape knows come last, as they were": (
        "zeal: 1\nowner: b\nanger: 2\ntitle: a\n",
        "title: a\nowner: b\nzeal: 1\nanger: 2\n",
    ),
}


@pytest.mark.parametrize("name", CASES)
def test_case(name: str) -> None:
    """Each way to write a record has its ordered form, worked out by hand."""
    before, after = CASES[name]
    assert fmt(before) == after
    assert fmt(after) == after


def test_the_name_of_a_model_comes_first() -> None:
    """What tells shapes apart leads, even where the shape inherits fields before it."""
    text = "model:\n  length: 2 m\n  area: 4 mm²\n  name: cable_resistance\n"
    assert fmt(text, "specs") == (
        "model:\n  name: cable_resistance\n  area: 4 mm²\n  length: 2 m\n"
    )


@pytest.mark.parametrize(
    "text",
    [
        "reviewed: {date: 2026-01-02, # a comment\n  by: a}\n",
        "? owner\n: b\n? title\n: a\n",
        "owner: b\n? title\n: a\n",
        "purpose: |+\n  One.\n\n\ntitle: a\n",
        "owner: b\npurpose: |2+\n  One.\n\ntitle: a\n",
        "title: a\nminutes: 1\npurpose: >\n  One.\nowner: |\n  b",
    ],
)
def test_what_cannot_be_moved_safely_is_left_alone(text: str) -> None:
    """Writing that nobody uses, in which moving a line would move its meaning, stays."""
    assert fmt(text) == text


@pytest.mark.parametrize("text", ["title: a\ntitle: b\n", "title: *a\n", "title:\n", "- a\n", ""])
def test_a_faulty_record_is_refused(text: str) -> None:
    """A file that strict reading finds fault with is not touched, and says why."""
    with pytest.raises(Unreadable) as refused:
        fmt(text)
    assert refused.value.problems


def test_a_slip_of_ours_would_be_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    """An order that would change the meaning is never given out."""

    def lose_a_line(self: object, lines: list[str]) -> None:
        del lines[-2]

    monkeypatch.setattr("generator.edit.blocks.Move.apply", lose_a_line)
    with pytest.raises(AssertionError, match="would change"):
        fmt("owner: b\ntitle: a\n")


def test_a_large_record_is_ordered_in_no_time() -> None:
    """Ten thousand groups out of order take one pass, not one each."""
    item = "  - place: away\n    do: Look.\n    action: look\n"
    text = "title: a\nsteps:\n" + item * 3000
    source = read(text.encode(), "x.yml")
    assert isinstance(source, Source)
    made = ordered(source, outline("tests"))
    assert made.count("  - do: Look.\n    action: look\n    place: away\n") == 3000
