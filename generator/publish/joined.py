"""The reader's style sheets and scripts, joined: small files to read, few for a phone to wait for.

Each part stays a file of its own in the theme folder and stands alone; what a page always asks for
together is published as one.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from mkdocs.config.defaults import MkDocsConfig
    from mkdocs.structure.files import Files

READER = "assets/reader.js"
"""What every page runs, at its end; every page stands without it."""

JOINED = {
    "assets/screen.css": (
        "palette.css", "frame.css", "ways.css", "type.css", "written.css", "lists.css",
        "values.css", "steps.css", "signals.css", "order.css", "search.css", "copy.css",
        "check.css", "reader.css", "upkeep.css", "job.css", "note.css", "adapt.css",
    ),
    "assets/paper.css": ("print.css", "sheet.css"),
    READER: (
        "element.js", "units.js", "vehicle.js", "job.js", "steps.js", "search.js", "offline.js",
        "due.js", "paper.js", "note.js",
    ),
    "assets/follow.js": ("order-kernel.js", "order.js"),
    "assets/judge.js": (
        "check-kernel.js", "check-typed.js", "check-lines.js", "check-fields.js", "check-meter.js",
        "check-kept.js", "check.js",
    ),
    "assets/take.js": ("offline-pack.js", "offline-page.js"),
    "assets/record.js": (
        "form-shape.js", "form-check.js", "form-yaml.js", "form-fields.js", "form-page.js",
    ),
}  # fmt: skip
"""Published file to its parts, in the order in which they count."""


def join(files: Files, config: MkDocsConfig) -> None:
    """Put the joined files in the place of their parts.

    Parameters
    ----------
    files : mkdocs Files
        What is to be published; changed.
    config : mkdocs MkDocsConfig
        The settings of the site.
    """
    from mkdocs.structure.files import File

    for whole, names in JOINED.items():
        texts = []
        for name in names:
            part = files.get_file_from_path(f"assets/{name}")
            assert part is not None, f"the theme folder has no {name}"
            texts.append(part.content_string)
            files.remove(part)
        files.append(File.generated(config, whole, content="\n".join(texts)))
