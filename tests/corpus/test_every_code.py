"""Every code there is has a row in one of the two corpora, and no row names a code that is gone."""

from __future__ import annotations

import json
import subprocess
import sys

from tests.corpus.edited import rows
from tests.corpus.test_corpus import ROWS
from tests.demonstration import ROOT

# In a process of its own: other tests declare codes of theirs.
DECLARED = """
import importlib, json, pkgutil, generator
from generator.problems import CODES
for room in pkgutil.walk_packages(generator.__path__, "generator."):
    if not room.name.endswith("__main__"):
        importlib.import_module(room.name)
print(json.dumps(sorted(CODES)))
"""


def declared() -> set[str]:
    """Give every code that a room of the generator declares."""
    told = subprocess.run(
        [sys.executable, "-c", DECLARED], cwd=ROOT, capture_output=True, check=True, text=True
    )
    return set(json.loads(told.stdout))


def test_every_code_has_a_row_and_every_row_a_code() -> None:
    """A new fault without a row fails by its name here, and so does a row for one that is gone."""
    codes, edits = declared(), rows()
    tried = {finding.split()[0] for row in ROWS for finding in row.findings}
    tried |= {row.code for row in edits}
    named = tried.union(*(row.also for row in edits))
    assert {"without a row": sorted(codes - tried), "gone": sorted(named - codes)} == {
        "without a row": [], "gone": [],
    }  # fmt: skip
    assert len(codes) > 130
