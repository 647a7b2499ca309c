"""What a manual's folder holds, and where the theme lies: names alone, so that anybody may ask."""

from __future__ import annotations

from pathlib import Path

RECORDS = "kb_source"
SETTINGS = "mkdocs.yml"
DOCS = "docs"
SITE = "site"
PREVIEW = "preview"
"""What drafts look like, beside the site and never in its place."""
CACHE = ".fettlebook"
"""What is kept from one run to the next, beside the manual; it may be deleted at any time."""


def theme_folder() -> Path:
    """Give the folder of the theme: packed into the wheel, or beside the package in a checkout."""
    packed = Path(__file__).parent / "site_overrides"
    return packed if packed.is_dir() else Path(__file__).parent.parent / "site_overrides"
