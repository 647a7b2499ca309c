"""Records as people write them: keys in any order, comments, blank lines, every style of text.

Each key's line ends in a mark of its own, and a comment above a key names that mark, so that a
test can tell whether the two stayed together.
"""

from __future__ import annotations

import random
import re
from typing import Any

from generator.shapes.outline import TAG, Choice, Group, Items, Leaf, Node, Words
from tests.edit.samples import in_line, sample

TEXTS = ("plain words", "'single '' quoted'", '"double \\" quoted"', "ohm Ω 電", '"a: b"')


class Hand:
    """Writes one record; the same `pick` gives the same text."""

    def __init__(self, pick: random.Random) -> None:
        self.pick = pick
        self.marks = 0

    def record(self, root: Group) -> str:
        """Give a record of a kind, more or less complete."""
        lines = self._group(root, 0)
        if self.pick.random() < 0.3:
            lines = ["# yaml-language-server: $schema=../.schema/x.json", *lines]
        if self.pick.random() < 0.3:
            lines = ["# a head", "", *lines]
        if self.pick.random() < 0.2:
            lines = ["---", *lines]
        if self.pick.random() < 0.3:
            lines += ["", "# the end"]
        line_end = self.pick.choice(["\n", "\n", "\r\n"])
        # In a block of text the end of the last line would count.
        cut = self.pick.random() < 0.2 and bool(re.search(r"# (k\d+|the end)$", lines[-1]))
        return line_end.join(lines) + ("" if cut else line_end)

    def _some(self, fields: Any) -> list[Any]:
        kept = [field for field in fields if self.pick.random() < 0.6 or field.name == TAG]
        self.pick.shuffle(kept)
        return kept

    def _group(self, group: Group, indent: int, dash: str = "") -> list[str]:
        """Give the lines of a group; the first may stand behind a dash."""
        lines: list[str] = []
        fields = self._some(group.fields) or [group.fields[0]]
        for number, field in enumerate(fields):
            self.marks += 1
            mark = f"# k{self.marks}"
            behind_dash = bool(dash) and number == 0
            margin = " " * (indent - len(dash)) + dash if behind_dash else " " * indent
            if not behind_dash:
                lines += self._above(indent, mark, first=number == 0)
            lines += self._field(field.name, field.node, margin, indent, mark)
            if self.pick.random() < 0.15:
                lines.append(" " * (indent + self.pick.randint(1, 2)) + f"# under {mark[2:]}")
        return lines

    def _above(self, indent: int, mark: str, *, first: bool) -> list[str]:
        lines = [""] * (0 if first else self.pick.choice([0, 0, 1, 2]))
        for _ in range(self.pick.choice([0, 0, 0, 1, 2])):
            lines.append(" " * self.pick.choice([indent, indent, 0]) + f"# above {mark[2:]}")
        return lines

    def _field(self, name: str, node: Node, margin: str, indent: int, mark: str) -> list[str]:
        key = margin + self.pick.choice([name, name, name, f'"{name}"']) + ":"
        inner = self._inner(node, indent)
        if inner is not None:
            return [f"{key}  {mark}", *inner]
        if isinstance(node, Leaf) and node.type is str and self.pick.random() < 0.3:
            return self._long_text(key, indent, mark)
        return [f"{key} {self._in_line(node)}  {mark}"]

    def _inner(self, node: Node, indent: int) -> list[str] | None:
        """Give the lines under a key, or None where the value stands on its line."""
        if isinstance(node, Choice):
            node = self.pick.choice([*node.groups.values()])
        if isinstance(node, Group) and self.pick.random() < 0.7:
            return self._group(node, indent + self.pick.choice([2, 4]))
        if isinstance(node, Items) and isinstance(node.item, Group) and self.pick.random() < 0.8:
            at = indent + self.pick.choice([0, 2])
            items = [self._item(node.item, at) for _ in range(self.pick.randint(1, 2))]
            return [line for item in items for line in item]
        return None

    def _item(self, group: Group, indent: int) -> list[str]:
        lines = [" " * indent + "# an item"] if self.pick.random() < 0.2 else []
        if self.pick.random() < 0.3:
            return [*lines, " " * indent + "-", *self._group(group, indent + 2)]
        dash = self.pick.choice(["- ", "-   "])
        return [*lines, *self._group(group, indent + len(dash), dash)]

    def _long_text(self, key: str, indent: int, mark: str) -> list[str]:
        style = self.pick.choice(["|", ">", "|-", ">-"])
        margin = " " * (indent + self.pick.choice([2, 3]))
        return [f"{key} {style} {mark}", f"{margin}Two lines", "", f"{margin}# not a comment"]

    def _in_line(self, node: Node) -> str:
        if isinstance(node, Leaf) and node.type is str and "pattern" not in node.rules:
            return self.pick.choice(TEXTS)
        data = sample(node, self.pick, 0.5)
        return in_line(self._shuffled(data)) if not isinstance(node, Words) else in_line(data)

    def _shuffled(self, data: Any) -> Any:
        if isinstance(data, dict):
            keys = list(data)
            self.pick.shuffle(keys)
            return {key: self._shuffled(data[key]) for key in keys}
        return [self._shuffled(one) for one in data] if isinstance(data, list) else data
