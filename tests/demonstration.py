"""The manuals that tests read: a small one that never changes, and the demonstration's own.

A test that states a value, an order or a sentence states it of the small manual, an early copy of
the demonstration for one engine's complaint. So content can grow without a test having to follow.
"""

from __future__ import annotations

import shutil
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
# The folder of the small manual, and the records in it.
SMALL = ROOT / "tests" / "small_manual"
SMALL_RECORDS = SMALL / "kb_source"
# The records of the smallest manual that has every kind, for tests that build again and again.
SMALLEST_RECORDS = ROOT / "tests" / "corpus" / "manual" / "kb_source"
# The records of the demonstration manual, whatever they say today.
DEMONSTRATION = ROOT / "kb_source"


def copy_manual(folder: Path, records: Path = SMALL_RECORDS) -> None:
    """Copy a manual's own files, and nothing of the generator, into a new folder."""
    folder.mkdir()
    shutil.copy2(ROOT / "mkdocs.yml", folder)
    shutil.copytree(records, folder / "kb_source")
    schemas = folder / "kb_source" / ".schema"
    if not schemas.exists():  # the small manual keeps no second copy of them
        shutil.copytree(DEMONSTRATION / ".schema", schemas)
    # The walks lead through the demonstration's own pages; another manual has none of them.
    left_out = None if records == DEMONSTRATION else shutil.ignore_patterns("walks.md")
    shutil.copytree(ROOT / "docs", folder / "docs", ignore=left_out)
