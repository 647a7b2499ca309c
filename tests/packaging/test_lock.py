"""The lock: whole, exact, with hashes, from no private place, and in step with pyproject.toml."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name
from packaging.version import Version

ROOT = Path(__file__).resolve().parents[2]
LOCK = (ROOT / "requirements.lock").read_text(encoding="utf-8")
SETTINGS = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
PROJECT, GROUPS = SETTINGS["project"], SETTINGS["dependency-groups"]
DECLARED = [*PROJECT["dependencies"], *PROJECT["optional-dependencies"]["test"]]

PINNED = re.compile(r"^([a-z0-9-]+)==([^\s;]+)(?: ; [^\\]+?)? \\$")
HASH = re.compile(r"^    --hash=sha256:[0-9a-f]{64}( \\)?$")


def pinned() -> dict[str, list[Version]]:
    """Give each package of the lock with its versions, of which another Python may need another."""
    found: dict[str, list[Version]] = {}
    for line in LOCK.splitlines():
        if match := PINNED.match(line):
            found.setdefault(match[1], []).append(Version(match[2]))
    return found


def test_each_line_is_an_exact_version_or_a_hash() -> None:
    """No range, no address, no index, no file of somebody's disk: nothing but pins and hashes."""
    odd = [
        line
        for line in LOCK.splitlines()
        if not (PINNED.match(line) or HASH.match(line) or line.lstrip().startswith("#"))
    ]
    assert odd == []
    assert "://" not in LOCK
    assert len(pinned()) > 40


def test_each_pin_has_a_hash() -> None:
    """What is installed is what was tested, byte for byte."""
    lines = [line for line in LOCK.splitlines() if not line.lstrip().startswith("#")]
    bare = [
        line
        for line, following in zip(lines, [*lines[1:], ""], strict=True)
        if PINNED.match(line) and not HASH.match(following)
    ]
    assert bare == []


def test_what_the_bench_installs_is_locked_as_well() -> None:
    """Each line of its lock is an exact version or a hash, and it holds what its group names."""
    lock = (ROOT / "requirements-bench.lock").read_text(encoding="utf-8")
    lines = [line for line in lock.splitlines() if not line.lstrip().startswith("#")]
    pins = {match[1] for line in lines if (match := PINNED.match(line))}
    assert all(PINNED.match(line) or HASH.match(line) for line in lines)
    assert pins == {Requirement(line).name for line in GROUPS["bench"]}


@pytest.mark.parametrize("declared", DECLARED)
def test_the_lock_holds_what_the_project_declares(declared: str) -> None:
    """Each dependency is locked at a version that pyproject.toml allows; if not: make lock."""
    wanted = Requirement(declared)
    versions = pinned().get(canonicalize_name(wanted.name), [])
    assert versions
    assert all(version in wanted.specifier for version in versions)
