"""Laying down an empty manual of a shop's own: settings, one worked example, and a workflow."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Iterator
from importlib import resources
from importlib.resources.abc import Traversable
from pathlib import Path

from generator import manual
from generator.edit import schema

STARTER = "starter"


class CannotStart(ValueError):
    """There is something where the manual was to be laid down; it stays as it is."""


def files(name: str, place: str, *, alone: bool) -> dict[str, str]:
    """Give every file of a new manual.

    Parameters
    ----------
    name, place : str
        The shop's name and where it is.
    alone : bool
        Whether one person has the shop, so that nobody can check what they wrote.

    Returns
    -------
    dict
        Path from the manual's folder, with "/", to text.
    """
    found = dict(_texts(resources.files("generator.edit") / STARTER))
    settings = f"{manual.RECORDS}/settings.yml"
    text = found[settings].replace("name: Your shop\n", f"name: {_scalar(name)}\n")
    text = text.replace("place: Your town\n", f"place: {_scalar(place)}\n")
    text = text.replace("title: Your shop's manual\n", f"title: {_scalar(f'{name}, manual')}\n")
    if alone:
        text = text.replace("demonstration: true\n", "demonstration: true\none_person_shop: true\n")
    found[settings] = text
    found["mkdocs.yml"] = found["mkdocs.yml"].replace("Your shop", _scalar(name))
    for kind in schema.SCHEMAS:
        path = f"{manual.RECORDS}/{schema.FOLDER}/{schema.file_name(kind)}"
        found[path] = schema.as_text(kind)
    return found


def lay_down(folder: Path, texts: dict[str, str]) -> None:
    """Put the files of a new manual into a folder, all of them or none.

    Parameters
    ----------
    folder : Path
        A folder that is empty or not there yet; one with nothing but a repository's own folder
        counts as empty.
    texts : dict
        What :func:`files` gave.

    Raises
    ------
    CannotStart
        If anything lies there.
    OSError
        If the folder cannot be written.
    """
    if folder.exists() and (not folder.is_dir() or {p.name for p in folder.iterdir()} - {".git"}):
        raise CannotStart(f"{folder} is not empty, and stays as it is; name a new folder")
    folder.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory(prefix=".fettlebook-start-", dir=folder) as beside:
        for path, text in texts.items():
            target = Path(beside, *path.split("/"))
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_text(text, encoding="utf-8", newline="\n")
        for part in sorted(os.listdir(beside)):
            os.rename(Path(beside, part), folder / part)


def _texts(folder: Traversable, above: str = "") -> Iterator[tuple[str, str]]:
    for part in sorted(folder.iterdir(), key=lambda one: one.name):
        # Tools that pack a wheel, and git itself, take names with a dot for their own.
        name = above + ("." + part.name[4:] if part.name.startswith("dot-") else part.name)
        if part.is_dir():
            yield from _texts(part, name + "/")
        else:
            yield name, part.read_text(encoding="utf-8")


def _scalar(text: str) -> str:
    """Give a name as YAML text in quotes, whatever stands in it."""
    return "'" + " ".join(text.split()).replace("'", "''") + "'"
