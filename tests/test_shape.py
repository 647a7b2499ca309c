"""The shape of the house: short files, no developer's machine, tests that say what they prove."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
FOLDERS = ("docs", "generator", "kb_source", "site_overrides", "tests")

# A room fits in a reader's head; past this it wants splitting by meaning.
LONGEST = 320
CODE = (".py", ".js", ".css")
TEXT = (*CODE, ".md", ".html", ".jinja", ".yml", ".toml", ".sh")

# Places on somebody's own disk.
MACHINE_PATHS = re.compile(r"(?<![\w.])/(?:home|root|tmp|Users)/")

WAYS_OUT = frozenset({"skip", "skipif", "skipTest", "xfail", "importorskip"})


def files(*endings: str) -> Iterator[Path]:
    """Give the project's own files; a minified file is somebody else's."""
    found = [path for folder in FOLDERS for path in (ROOT / folder).rglob("*")]
    found += ROOT.glob("*")
    for path in sorted(found):
        if path.is_file() and path.name.endswith(endings) and ".min." not in path.name:
            yield path


def test_no_file_is_too_long() -> None:
    """Every source file can be read at a sitting."""
    lengths = {
        path.relative_to(ROOT).as_posix(): len(path.read_text(encoding="utf-8").splitlines())
        for path in files(*CODE)
    }
    assert lengths
    assert {path: length for path, length in lengths.items() if length > LONGEST} == {}


def test_no_file_names_a_place_on_a_developers_machine() -> None:
    """What works on one disk alone does not get in."""
    found = [
        f"{path.relative_to(ROOT).as_posix()}:{number}"
        for path in files(*TEXT)
        if "tests" not in path.relative_to(ROOT).parts
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1)
        if MACHINE_PATHS.search(line)
    ]
    assert found == []


@pytest.mark.parametrize(
    ("line", "is_one"),
    [
        ("/home/ada/manual", True),
        ("see (/tmp/x)", True),
        ("kb/home/start.html", False),
        ("../root/x", False),
    ],
)
def test_the_pattern_tells_a_machines_path_from_an_address(line: str, is_one: bool) -> None:
    """A path from the root of a disk is caught; one inside the project is not."""
    assert bool(MACHINE_PATHS.search(line)) is is_one


def test_every_test_says_what_it_proves() -> None:
    """Each test function has a docstring."""
    nodes = [
        (path, node)
        for path in files(".py")
        if path.name.startswith("test_")
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.FunctionDef) and node.name.startswith("test_")
    ]
    assert nodes
    silent = [
        f"{path.relative_to(ROOT).as_posix()}:{node.lineno} {node.name}"
        for path, node in nodes
        if not ast.get_docstring(node)
    ]
    assert silent == []


def ways_out(source: str) -> list[int]:
    """Give the lines on which a test could leave without a verdict."""
    return [
        node.lineno
        for node in ast.walk(ast.parse(source))
        if (isinstance(node, ast.Attribute) and node.attr in WAYS_OUT)
        or (isinstance(node, ast.Name) and node.id in WAYS_OUT)
    ]


def test_no_test_has_a_way_out() -> None:
    """A test passes or fails: none is skipped or expected to fail."""
    found = [
        f"{path.relative_to(ROOT).as_posix()}:{line}"
        for path in files(".py")
        if "tests" in path.relative_to(ROOT).parts
        for line in ways_out(path.read_text(encoding="utf-8"))
    ]
    assert found == []


@pytest.mark.parametrize(
    "source",
    [
        "pytest.skip('no browser')",
        "@pytest.mark.skipif(True, reason='')\ndef test_x(): ...",
        "@pytest.mark.xfail\ndef test_x(): ...",
        "from pytest import skip\nskip('x')",
        "scipy = pytest.importorskip('scipy')",
    ],
)
def test_each_way_out_is_seen(source: str) -> None:
    """The look for skipped tests knows every way to skip one."""
    assert ways_out(source)
