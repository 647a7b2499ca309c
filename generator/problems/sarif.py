"""Findings as a SARIF 2.1.0 log, which forges and editors read.

References
----------
OASIS, "Static Analysis Results Interchange Format (SARIF) Version 2.1.0", with errata 01. Its
regions count characters from 1 and end before their last column, as our stretches do (3.30).
"""

from __future__ import annotations

import hashlib
import json
from collections import Counter
from collections.abc import Mapping, Sequence
from typing import Any
from urllib.parse import quote

from generator import __version__
from generator.problems.finding import CODES, Elsewhere, Problem

SCHEMA = (
    "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
)
VERSION = "2.1.0"

FOLDER = "MANUAL"
"""Stands for the manual's folder, which a log must not name: it differs from desk to desk."""

FINGERPRINT = "fettlebook/v1"
"""Name of the fingerprint; its number rises when what goes into it changes."""


def as_sarif(
    problems: Sequence[Problem], pages: Mapping[str, tuple[str, str]] | None = None
) -> str:
    """Give the findings as a SARIF log with one run.

    Parameters
    ----------
    problems : sequence of Problem
        The findings, in their order.
    pages : mapping, optional
        Code to the title and the text of the page about its fault.

    Returns
    -------
    str
        JSON; the rules are those that the findings name.
    """
    names = sorted({found.code for found in problems})
    index = {name: number for number, name in enumerate(names)}
    seen: Counter[str] = Counter()
    run = {
        "tool": {
            "driver": {
                "name": "fettlebook",
                "semanticVersion": __version__,
                "rules": [_rule(name, problems, pages or {}) for name in names],
            }
        },
        "columnKind": "unicodeCodePoints",
        "originalUriBaseIds": {FOLDER: {"description": {"text": "The manual's folder."}}},
        "results": [_result(found, index[found.code], seen) for found in problems],
    }
    log = {"$schema": SCHEMA, "version": VERSION, "runs": [run]}
    return json.dumps(log, ensure_ascii=False, indent=2)


def _rule(
    name: str, problems: Sequence[Problem], pages: Mapping[str, tuple[str, str]]
) -> dict[str, Any]:
    first = next(found for found in problems if found.code == name)
    known = CODES.get(name)
    title, text = pages.get(name, (name.replace("-", " "), first.why))
    return {
        "id": name,
        "shortDescription": _text(title),
        "fullDescription": _text(first.why),
        "help": _text(text),
        "defaultConfiguration": {"level": (known.severity if known else first.severity).value},
    }


def _result(found: Problem, index: int, seen: Counter[str]) -> dict[str, Any]:
    result: dict[str, Any] = {
        "ruleId": found.code,
        "ruleIndex": index,
        "level": found.severity.value,
        "message": _text(f"{found.message}\n{found.why}\nHint: {found.hint}"),
        "locations": [_location(found)],
        "partialFingerprints": {FINGERPRINT: _fingerprint(found, seen)},
    }
    if found.record:
        result["locations"][0]["logicalLocations"] = [{"fullyQualifiedName": found.record}]
    if found.second is not None:
        second = {**_location(found.second), "message": _text(found.second.says)}
        result["relatedLocations"] = [second]
    return result


def _location(at: Problem | Elsewhere) -> dict[str, Any]:
    region = {"startLine": at.line}
    if (at.line, at.column, at.end_line, at.end_column) != (1, 1, 1, 1):  # else: the whole file
        region |= {
            "startColumn": at.column, "endLine": at.end_line, "endColumn": at.end_column,
        }  # fmt: skip
    artifact = {"uri": quote(at.path), "uriBaseId": FOLDER}
    return {"physicalLocation": {"artifactLocation": artifact, "region": region}}


def _text(words: str) -> dict[str, str]:
    """Give a message string; braces are doubled, for single ones hold a place (3.11.5)."""
    return {"text": words.replace("{", "{{").replace("}", "}}")}


def _fingerprint(found: Problem, seen: Counter[str]) -> str:
    """Give a digest that stays the same when lines move, and differs from finding to finding."""
    what = "\n".join((found.code, found.path, found.record, found.message))
    seen[what] += 1
    return hashlib.sha256(f"{what}\n{seen[what]}".encode()).hexdigest()[:32]
