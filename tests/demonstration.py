"""The demonstration manual, for tests that publish it far from the checkout."""

from __future__ import annotations

import shutil
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent


def copy_manual(folder: Path) -> None:
    """Copy the manual's own files, and nothing of the generator, into a new folder."""
    folder.mkdir()
    shutil.copy2(ROOT / "mkdocs.yml", folder)
    for part in ("kb_source", "docs"):
        shutil.copytree(ROOT / part, folder / part)
