"""docs/third-party.md names every library the published generator stands on, with its licence."""

from __future__ import annotations

import hashlib
import re
import tomllib
from importlib.metadata import metadata
from pathlib import Path

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

ROOT = Path(__file__).resolve().parents[2]
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
ROW = re.compile(r"^\| \[([^\]]+)\]\([^)]+\) \| ([^|]+) \| ([^|]+) \|$", re.MULTILINE)


def rows() -> dict[str, tuple[str, str]]:
    """Give licence and purpose of each library listed, by name."""
    text = (ROOT / "docs" / "third-party.md").read_text(encoding="utf-8")
    return {canonicalize_name(name): (licence, use) for name, licence, use in ROW.findall(text)}


def declared(*extras: str) -> list[str]:
    """Give the names of what the project declares it needs, with these extras."""
    wanted = PROJECT["dependencies"] if not extras else []
    wanted = wanted + [line for extra in extras for line in PROJECT["optional-dependencies"][extra]]
    return [canonicalize_name(Requirement(line).name) for line in wanted]


def stated_licence(name: str) -> str:
    """Give the licence that a library's own metadata states, in as few words as it does."""
    facts = metadata(name)

    def field(key: str) -> str:
        return (facts.get_all(key) or [""])[0].strip()

    classifiers = [
        line.rsplit(" :: ", 1)[-1]
        for line in facts.get_all("Classifier") or []
        if line.startswith("License ::")
    ]
    # Some put the whole text into the field; a name is short.
    named = field("License") if len(field("License")) < 60 else ""
    return field("License-Expression") or named or ", ".join(classifiers)


@pytest.mark.parametrize("name", declared())
def test_every_library_is_listed_with_the_licence_it_states(name: str) -> None:
    """A dependency that was added, or that changed its licence, does not pass unseen."""
    assert name in rows()
    assert rows()[name][0] == stated_licence(name)


@pytest.mark.parametrize("name", declared("test"))
def test_every_library_of_the_tests_is_listed(name: str) -> None:
    """What checks the project is named too."""
    assert name in rows()


def test_nothing_else_is_listed() -> None:
    """The list holds no library that the project has left."""
    assert set(rows()) == {*declared(), *declared("test")}


def test_what_browsers_are_given_of_others_is_as_published() -> None:
    """The inside of each script of others has the digest that the list states for it."""
    text = (ROOT / "docs" / "third-party.md").read_text(encoding="utf-8")
    listed = dict(re.findall(r"^\| `assets/([^`]+)`.*SHA-256 `([0-9a-f]{64})`", text, re.MULTILINE))
    assets = (ROOT / "site_overrides/assets").glob("*.js")
    scripts = {path.name: path for path in assets if b"Copyright" in path.read_bytes()}
    assert scripts and listed.keys() == scripts.keys()
    for name, path in scripts.items():
        wrapped = path.read_bytes()
        inside = wrapped[wrapped.index(b"=> {\n") + 5 : wrapped.rindex(b"return exports;")]
        assert hashlib.sha256(inside).hexdigest() == listed[name]
        assert b"MIT License" in wrapped[: wrapped.index(inside)]
