"""All that a site is made from, as one digest; and whether that is all there is.

A settings file may bring in code, other files and the environment. Then nobody can say what the
host's part of a site comes from, and it is made anew every time.
"""

from __future__ import annotations

import hashlib
import os
import time
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache
from itertools import chain
from pathlib import Path
from typing import Any

import yaml

from generator import layout
from generator.memory.version import of_folders, of_generator
from generator.publish.standing import TICK_S, mark_of

HOST_KEYS = frozenset({
    "site_name", "site_url", "site_description", "site_author", "copyright", "docs_dir", "site_dir",
    "use_directory_urls", "theme", "plugins", "extra", "extra_css", "extra_javascript",
    "markdown_extensions", "validation", "nav", "strict", "exclude_docs",
})  # fmt: skip
THEME_KEYS = frozenset({"name", "language", "font", "features", "palette", "icon", "favicon"})
PLUGINS = ["fettlebook"]
EXTENSIONS = frozenset({
    "abbr", "admonition", "attr_list", "def_list", "fenced_code", "footnotes", "md_in_html", "meta",
    "nl2br", "sane_lists", "smarty", "tables", "toc",
})  # fmt: skip
"""What is known to read nothing but the settings and the hand-written pages."""

DATE = "SOURCE_DATE_EPOCH"


class Untold(ValueError):
    """Something else than plain files and plain settings has a say."""


@cache
def version() -> str:
    """Give the version of the generator, the theme and all that is installed."""
    return f"{of_generator()} {of_folders([layout.theme_folder()])}"


@dataclass(frozen=True, slots=True)
class Inputs:
    """What a site is made from, at one moment.

    Parameters
    ----------
    host : str
        Digest of what the host is given: settings, hand-written pages, date, versions.
    whole : str
        Digest of that and the records. Two equal ones are two equal sites.
    marks : str
        Digest of what the system notes of each file, "" where one was written just now, so that
        another change might not show.
    """

    host: str
    whole: str
    marks: str


def of(folder: Path) -> Inputs | None:
    """Give what a site is made from, None where nobody can say.

    Parameters
    ----------
    folder : Path
        The manual's folder.
    """
    return _look(folder, _Tree(contents=True))


def marks(folder: Path) -> str:
    """Give the marks alone, "" where nobody can say."""
    found = _look(folder, _Tree(contents=False))
    return found.marks if found else ""


def _look(folder: Path, tree: _Tree) -> Inputs | None:
    try:
        content = (folder / layout.SETTINGS).read_bytes()
        date = os.environ.get(DATE, "")
        docs = chain((tree.file(folder / layout.SETTINGS),), tree.folder(folder / _docs(content)))
        host = _digest(chain((version().encode(), date.encode()), docs))
        whole = _digest(chain((host.encode(),), tree.folder(folder / layout.RECORDS)))
    except (Untold, OSError):
        return None
    return Inputs(host, whole, tree.marks())


def _docs(settings: bytes) -> str:
    """Give the folder of hand-written pages, if the settings are plain."""
    try:
        found = yaml.load(settings, Loader=getattr(yaml, "CSafeLoader", yaml.SafeLoader))
    except (yaml.YAMLError, ValueError) as fault:
        raise Untold("settings that only the host can read") from fault
    if not isinstance(found, dict) or not found.keys() <= HOST_KEYS:
        raise Untold("settings that bring in more")
    theme = found.get("theme")
    theme = theme if isinstance(theme, dict) else {"name": theme}
    extensions = {_name(one) for one in found.get("markdown_extensions") or []}
    docs = found.get("docs_dir", layout.DOCS)
    if not (
        theme.keys() <= THEME_KEYS and theme.get("name") == "material"
        and found.get("plugins") == PLUGINS and extensions <= EXTENSIONS
        and isinstance(docs, str) and Path(docs).name == docs and not docs.startswith(".")
    ):  # fmt: skip
        raise Untold("a theme, a plugin or a folder from elsewhere")
    return docs


def _name(extension: Any) -> str:
    return str(next(iter(extension), "") if isinstance(extension, dict) else extension)


class _Tree:
    """Reads files, and notes what the system notes of them."""

    def __init__(self, *, contents: bool) -> None:
        self._contents = contents
        self._began = time.time_ns()
        self._newest = 0
        self._marks: list[bytes] = []

    def file(self, path: Path) -> bytes:
        """Give the bytes of a plain file, nothing where marks alone are wanted."""
        mark = mark_of(path)
        if not mark:
            raise Untold(str(path))
        self._newest = max(self._newest, mark[-1])
        self._marks.append(repr(mark).encode())
        return path.read_bytes() if self._contents else b""

    def folder(self, folder: Path) -> Iterator[bytes]:
        """Give every name and every file of a folder."""
        for name in sorted(os.listdir(folder)):
            path = folder / name
            if path.is_dir() and not path.is_symlink():
                yield b"(" + os.fsencode(name)
                yield from self.folder(path)
                yield b")"
            else:
                yield b"=" + os.fsencode(name)
                yield self.file(path)

    def marks(self) -> str:
        """Give the digest of the marks."""
        certain = self._newest < self._began - TICK_S * 1e9
        return _digest(self._marks) if certain else ""


def _digest(parts: Iterable[bytes]) -> str:
    digest = hashlib.blake2b(digest_size=20)
    for part in parts:
        digest.update(len(part).to_bytes(8, "little"))
        digest.update(part)
    return digest.hexdigest()
