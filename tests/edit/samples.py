"""Made-up data of a kind: valid field by field, of every form that its shape allows."""

from __future__ import annotations

import datetime
import random
import re
from typing import Any

from generator.quantities import Written
from generator.shapes.outline import (
    Choice,
    Either,
    Group,
    Items,
    Leaf,
    Node,
    Table,
    Words,
    below,
    symbols,
)

# One text for each pattern; a new pattern needs one here.
TEXTS = {
    "^[a-z0-9]+(-[a-z0-9]+)*$": "some-id",
    "^[PCBU][0-3][0-9A-F]{3}$": "P0335",
    "^[WMP][0-9]{3}$": "W012",
    r"^https://[^\s]+$": "https://example.org/page",
    r"^[^\s@?&,;:<>]+@[^\s@?&,;:<>]+$": "workshop@shop.example",
}


def sample(node: Node, pick: random.Random, fullness: float = 0.0) -> Any:
    """Give data for a node; `fullness` is the share of optional fields that it has."""
    match node:
        case Group():
            return _group(node, pick, fullness)
        case Choice():
            return sample(pick.choice([*node.groups.values()]), pick, fullness)
        case Either():
            return sample(pick.choice(node.forms), pick, fullness)
        case Items():
            count = max(node.least, pick.randint(0, 2) if fullness else 0)
            return [sample(node.item, pick, fullness) for _ in range(min(count, node.most or 9))]
        case Table():
            return {str(sample(node.key, pick)): sample(node.value, pick)} if fullness else {}
        case Words():
            return pick.choice(node.words)
        case Leaf():
            return _leaf(node, pick)


def _group(group: Group, pick: random.Random, fullness: float) -> dict[str, Any]:
    way = pick.choice(group.ways) if group.ways else ""
    made = {}
    for field in group.fields:
        wanted = field.required or field.name == way or pick.random() < fullness
        if wanted and (field.name == way or field.name not in group.ways):
            made[field.name] = sample(field.node, pick, fullness)
    if isinstance(made.get(way), bool):
        made[way] = True
    return made


def _leaf(leaf: Leaf, pick: random.Random) -> Any:
    if leaf.type is Written:
        return _value(leaf, pick)
    if leaf.type is datetime.date:
        return datetime.date(2026, pick.randint(1, 12), pick.randint(1, 28))
    if leaf.type is bool:
        return pick.random() < 0.5
    rules = leaf.rules
    if leaf.type is str:
        return TEXTS[rules["pattern"]] if "pattern" in rules else "Some text."
    low = rules.get("ge", rules.get("gt", 0))
    high = rules.get("le", rules.get("lt", 400))
    return pick.choice([high, round((low + high) / 2)]) if leaf.type is int else (low + high) / 2


def _value(leaf: Leaf, pick: random.Random) -> str:
    unit = pick.choice(symbols(leaf.quantity) if leaf.quantity else ["ohm", "kohm"])
    low = pick.randint(5, 40)
    forms = [f"{low} {unit}"]
    if leaf.spread:
        forms += [f"{low} to {low + 3}.5 {unit}", f"at least {low} {unit}", f"at most {low} {unit}",
                  f"{low} ± 1 {unit}"]  # fmt: skip
    return pick.choice(forms)


def node_at(root: Node, path: tuple[str | int, ...]) -> Node:
    """Give the node of a field; in a list or a table any item will do."""
    node = root
    for segment in path:
        node = _under(node, segment)
    return node


def _under(node: Node, segment: str | int) -> Node:
    if isinstance(node, Group):
        return next(field.node for field in node.fields if field.name == segment)
    if isinstance(node, (Choice, Either)):
        wanted = Items if isinstance(segment, int) else Group
        inner = [one for one in below(node) if isinstance(one, wanted)]
        return _under(inner[0], segment)
    return below(node)[-1]


def in_line(value: Any) -> str:
    """Write data on one line of YAML, as strict reading takes it."""
    if isinstance(value, dict):
        return "{" + ", ".join(f"{key}: {in_line(one)}" for key, one in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(map(in_line, value)) + "]"
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, str):
        plain = re.fullmatch(r"[a-z][a-z0-9 -]*[a-z0-9]", value)
        return value if plain else "'" + value.replace("'", "''") + "'"
    return str(value)
