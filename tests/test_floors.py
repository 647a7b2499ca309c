"""Imports go strictly downwards: each room knows the floors below it and nothing else.

The floors are those of DEVELOPERS.md. A module of the package that is not in the table is an
error too, so that a new room gets its floor on the day it is made.
"""

from __future__ import annotations

import ast
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

PACKAGE = "generator"
SOURCE = Path(__file__).resolve().parent.parent / PACKAGE

FLOORS = {
    "layout": 0, "problems": 0, "physics": 0,
    "quantities": 1, "memory": 1,
    "records": 2, "figures": 2,
    "expected": 3, "hazards": 3, "diagnosis": 3, "shapes": 3,
    "checks": 4,
    "pages": 5,
    "site": 6,
    "manual": 7,
    "publish": 8, "edit": 8,
    "mkdocs_plugin": 9, "cli": 9,
}  # fmt: skip
# The front door: they hold the version and start the command line.
FREE = frozenset({"__init__", "__main__"})

# The only places that may know the host.
HOSTS = {"mkdocs", "material"}
MAY_KNOW_THE_HOST = frozenset({"mkdocs_plugin", "cli", "publish"})

# Models are plain floats in, plain floats out.
PHYSICS_MAY_USE = frozenset({*sys.stdlib_module_names, "numpy"})


@dataclass(frozen=True, slots=True)
class Import:
    """One import: where it stands, and the dotted name it brings in."""

    path: str
    line: int
    room: str
    target: str

    def __str__(self) -> str:
        return f"{self.path}:{self.line}: {self.room} imports {self.target}"


def room_of(parts: tuple[str, ...]) -> str:
    """Give the room of a module by its path below the package."""
    return parts[0].removesuffix(".py")


def imports(source: Path) -> Iterator[Import]:
    """Give every import of a package, those inside functions and conditions included."""
    for path in sorted(source.rglob("*.py")):
        parts = path.relative_to(source).parts
        package = (PACKAGE, *parts[:-1])
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            for target in targets(node, package):
                line = getattr(node, "lineno", 0)
                yield Import("/".join((PACKAGE, *parts)), line, room_of(parts), target)


def targets(node: ast.AST, package: tuple[str, ...]) -> Iterator[str]:
    """Give the dotted names that a statement imports.

    ``from generator import pages`` brings in ``generator.pages``; the name after ``import`` counts,
    whether it is a module or something in one.
    """
    if isinstance(node, ast.Import):
        yield from (name.name for name in node.names)
    elif isinstance(node, ast.ImportFrom):
        base = ".".join(package[: len(package) - node.level + 1]) if node.level else ""
        origin = ".".join(part for part in (base, node.module or "") if part)
        yield from (f"{origin}.{name.name}" for name in node.names)
    elif isinstance(node, ast.Call) and node.args:
        called = node.func
        name = called.attr if isinstance(called, ast.Attribute) else getattr(called, "id", "")
        first = node.args[0]
        if name in ("import_module", "__import__") and isinstance(first, ast.Constant):
            yield str(first.value)


def faults(source: Path) -> list[str]:
    """Give every import that breaks a rule, with the rule."""
    return [f"{found}: {wrong}" for found in imports(source) if (wrong := fault(found))]


def fault(found: Import) -> str:
    """Say which rule an import breaks, or nothing."""
    if found.room in FREE:
        return ""
    if found.room not in FLOORS:
        return f"{found.room} has no floor"
    top, *below = found.target.split(".")
    if top in HOSTS and found.room not in MAY_KNOW_THE_HOST:
        return "only the plugin, the command line and publish may know the host"
    if top != PACKAGE:
        foreign = found.room == "physics" and top not in PHYSICS_MAY_USE
        return "physics may use the standard library and numpy alone" if foreign else ""
    if not below or below[0] == found.room or below[0] not in FLOORS:
        # `from generator import __version__` brings in no room; a module without a floor is
        # reported where it imports, and by test_every_module_has_a_floor.
        return ""
    here, there = FLOORS[found.room], FLOORS[below[0]]
    if there < here:
        return ""
    return f"floor {here} imports {'sideways' if there == here else 'up'}, from floor {there}"


def test_imports_go_strictly_downwards() -> None:
    """No room imports one above it or beside it."""
    assert list(imports(SOURCE))
    assert faults(SOURCE) == []


def test_every_module_has_a_floor() -> None:
    """Every file and folder of the package stands in the table, or is the front door."""
    rooms = {room_of(path.relative_to(SOURCE).parts) for path in SOURCE.rglob("*.py")}
    assert rooms - FREE <= FLOORS.keys()


@pytest.mark.parametrize(
    ("module", "code", "said"),
    [
        ("records/load.py", "from generator.pages import routes", "up, from floor 5"),
        ("records/load.py", "from generator import pages", "up, from floor 5"),
        ("records/load.py", "import generator.pages.routes", "up, from floor 5"),
        ("records/load.py", "from ..pages import routes", "up, from floor 5"),
        ("records/load.py", "from .. import pages", "up, from floor 5"),
        ("records/load.py", "def f():\n    from generator.site import make", "up, from floor 6"),
        ("records/load.py", "if TYPE_CHECKING:\n    import generator.cli", "up, from floor 9"),
        ("records/load.py", "import_module('generator.cli')", "up, from floor 9"),
        ("records/kinds/base.py", "from ...figures import svg", "sideways, from floor 2"),
        ("problems.py", "from generator.physics import coils", "sideways, from floor 0"),
        ("physics/coils.py", "from generator import problems", "sideways, from floor 0"),
        ("cli/main.py", "import generator.mkdocs_plugin", "sideways, from floor 9"),
        ("mkdocs_plugin.py", "from generator.cli import main", "sideways, from floor 9"),
        ("physics/coils.py", "import pint", "standard library and numpy"),
        ("pages/page.py", "from mkdocs.plugins import BasePlugin", "may know the host"),
        ("pages/page.py", "import mkdocs", "may know the host"),
        ("attic.py", "import json", "attic has no floor"),
    ],
)
def test_the_walk_sees_a_planted_fault(tmp_path: Path, module: str, code: str, said: str) -> None:
    """Each way to break a rule, planted in a package of its own, is found."""
    (tmp_path / module).parent.mkdir(parents=True, exist_ok=True)
    (tmp_path / module).write_text(code, encoding="utf-8")
    found = faults(tmp_path)
    assert len(found) == 1
    assert said in found[0]


@pytest.mark.parametrize(
    ("module", "code"),
    [
        ("pages/page.py", "from generator.records import load"),
        ("pages/page.py", "from generator.pages.strings import say"),
        ("pages/page.py", "from . import routes"),
        ("physics/coils.py", "import numpy as np, math"),
        ("cli/main.py", "from generator import __version__"),
        ("cli/publish.py", "def f():\n    import mkdocs.commands.serve"),
        ("__main__.py", "from generator.cli import main"),
    ],
)
def test_the_walk_lets_a_sound_import_pass(tmp_path: Path, module: str, code: str) -> None:
    """Looking down, within a room, and at what a room may use is no fault."""
    (tmp_path / module).parent.mkdir(parents=True, exist_ok=True)
    (tmp_path / module).write_text(code, encoding="utf-8")
    assert faults(tmp_path) == []
