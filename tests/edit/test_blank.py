"""Blank records: every blank is found, and filling the blanks is enough."""

from __future__ import annotations

import random
import re
from typing import Any

import pytest

from generator.edit.blank import blank
from generator.records import shape, strict_yaml
from generator.records.kinds import KINDS
from generator.shapes.outline import Group, Items, Node, below, outline
from tests.edit.samples import in_line, node_at, sample

PICK = random.Random(6)


def filled(text: str, root: Group) -> str:
    """Write a fitting value behind each blank; what to write is told by the way to it."""
    reading = strict_yaml.read(text.encode(), "x.yml")
    lines = text.split("\n")
    blanks = {fault.line for fault in reading.problems if fault.code == "empty-value"}
    for path, place in reading.places.items():
        span = place.key or place.value
        if span.line in blanks and lines[span.line - 1].split("  #")[0].rstrip()[-1] in ":-":
            value = in_line(sample(node_at(root, path), PICK))
            kept, hash_, note = lines[span.line - 1].partition("  #")
            if not is_around_another(path, reading.places):
                lines[span.line - 1] = f"{kept} {value}{hash_}{note}"
    return "\n".join(lines)


def is_around_another(path: Any, places: Any) -> bool:
    """Say whether a place is a group or a list that is not blank itself."""
    return any(other[: len(path)] == path and other != path for other in places)


def misfits(text: str, kind: str) -> list[str]:
    """Give what `check` says of a record by itself."""
    reading = strict_yaml.read(text.encode(), "x.yml")
    found = list(reading.problems)
    if reading.data is not None:
        found += shape.fit(kind, "x", reading.data, reading.places, "x.yml")[1]
    return [f"{one.line}: {one.code}: {one.message}" for one in found]


@pytest.mark.parametrize("kind", KINDS)
def test_each_blank_is_found_at_its_place(kind: str) -> None:
    """A record fresh from `new` is all blanks, each found on its own line, and nothing else."""
    text = blank(kind)
    found = misfits(text, kind)
    open_lines = [
        f"{number}"
        for number, line in enumerate(text.split("\n"), 1)
        if re.fullmatch(r" *(- )?[a-z_]+:| *-", line) and is_blank(text.split("\n"), number)
    ]
    assert [one.split(":")[0] for one in found] == open_lines
    assert {one.split(": ")[1] for one in found} == {"empty-value"}


def is_blank(lines: list[str], number: int) -> bool:
    """Say whether nothing but comments stands under a line, as far as it is indented deeper."""
    margin = re.match(r" *(- )?", lines[number - 1])
    assert margin is not None
    dash = lines[number - 1].strip() == "-"
    for line in lines[number:]:
        if line.strip() and not line.lstrip().startswith("#"):
            column = len(line) - len(line.lstrip())
            own = len(margin.group()) - (2 if dash and margin.group(1) else 0)
            return (
                column < own
                or (column == own and not line.lstrip().startswith("-"))
                or (column == own and dash)
            )
    return True


@pytest.mark.parametrize("kind", KINDS)
def test_filling_the_blanks_is_enough(kind: str) -> None:
    """With a fitting value behind each blank, and nothing else done, the record passes."""
    assert misfits(filled(blank(kind), outline(kind)), kind) == []


def left_out(text: str) -> list[tuple[int, int]]:
    """Give the first and the last line of each part that stands behind a #."""
    lines = text.split("\n")
    starts = [n for n, line in enumerate(lines) if re.match(r" *#[a-z_]+:", line)]
    made = []
    for start in starts:
        margin = lines[start][: lines[start].index("#")] + "#  "
        end = start + 1
        while end < len(lines) and lines[end].startswith(margin):
            end += 1
        made.append((start, end))
    return made


@pytest.mark.parametrize("kind", KINDS)
def test_taking_a_hash_away_is_enough(kind: str) -> None:
    """Each part that stands behind a # fits in, once it is uncovered and its blanks are filled."""
    text, root = blank(kind), outline(kind)
    # Where exactly one of several counts, one more or another one alone is a fault by itself.
    some = [group for group in groups(root) if group.ways]
    ways = {way for group in some for way in group.ways}
    ways |= {field.name for group in some if group.is_menu for field in group.fields}
    parts = left_out(text)
    assert parts
    for start, end in parts:
        lines = text.split("\n")
        name = lines[start].strip().strip("#").split(":")[0]
        if name in ways:
            continue
        lines[start:end] = [line.replace("#", "", 1) for line in lines[start:end]]
        assert misfits(filled("\n".join(lines), root), kind) == [], name


def groups(node: Node, seen: frozenset[type] = frozenset()) -> list[Group]:
    """Give every group in a tree."""
    if isinstance(node, Group):
        if node.shape in seen:
            return []
        seen |= {node.shape}
    own = [node] if isinstance(node, Group) else []
    return own + [group for inner in below(node) for group in groups(inner, seen)]


@pytest.mark.parametrize("kind", KINDS)
def test_every_field_is_there_and_described(kind: str) -> None:
    """Each field of the kind stands in the blank record in canonical order, told in words."""
    text = blank(kind)
    fields = outline(kind).fields
    assert "\nstatus: draft\n" in text, "nobody has released it yet"
    assert re.findall(r"^#?([a-z_]+):", text, re.MULTILINE) == [field.name for field in fields]
    flat = " ".join(line.lstrip("# ") for line in text.split("\n"))
    for field in fields:
        assert field.description in flat
        if isinstance(field.node, Items) and isinstance(field.node.item, Group) and field.required:
            assert all(inner.description in flat for inner in field.node.item.fields)


def test_the_first_line_is_for_editors() -> None:
    """An editor finds the schema from where the record lies."""
    first = blank("tests").split("\n")[0]
    assert first == "# yaml-language-server: $schema=../.schema/tests.json"


def test_what_a_field_takes_is_told() -> None:
    """Ids, units, limits and closed lists stand beside the description."""
    text = " ".join(line.lstrip("# ") for line in blank("tests").split("\n"))
    assert "[an id from people/]" in text
    assert "[a list; each is an id from vehicles/]" in text
    assert "[a number over 0, up to 600]" in text
    assert "[part or harness]" in text
    assert "Exactly one of test, replacement, procedure, carry_on, repeat, refer or done." in text
    assert "[a value in µm, mm, m, in or ft]" in blank("specs")


@pytest.mark.parametrize("kind", KINDS)
def test_lines_fit_a_screen(kind: str) -> None:
    """No line is longer than a hundred characters."""
    assert max(map(len, blank(kind).split("\n"))) <= 100
