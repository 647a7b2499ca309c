"""Laying down an empty manual of a shop's own: settings, one worked example, and a workflow."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from importlib import resources
from importlib.resources.abc import Traversable
from pathlib import Path

from generator import manual
from generator.shapes import schema

STARTER = "starter"
BESIDE = ".fettlebook-start"
"""Where files are made, in the new folder; it stays behind only where a run was killed."""


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
        counts as empty, and so does one in which a run was killed that laid down the same files.
    texts : dict
        What :func:`files` gave.

    Raises
    ------
    CannotStart
        If anything else lies there.
    OSError
        If the folder cannot be written.
    """
    if _is_taken(folder, texts):
        raise CannotStart(f"{folder} is not empty, and stays as it is; name a new folder")
    beside = folder / BESIDE
    if beside.is_dir():
        shutil.rmtree(beside)
    beside.mkdir(parents=True)
    try:
        for path, text in texts.items():
            target = Path(beside, *path.split("/"))
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_text(text, encoding="utf-8", newline="\n")
        for part in sorted(os.listdir(beside)):
            if not os.path.lexists(folder / part):
                os.rename(beside / part, folder / part)
    finally:
        shutil.rmtree(beside)


def _is_taken(folder: Path, texts: dict[str, str]) -> bool:
    """Say whether a folder holds what is not ours to build on."""
    if not folder.exists():
        return False
    if not folder.is_dir():
        return True
    there = set(os.listdir(folder)) - {".git"}
    if BESIDE not in there:
        return bool(there)
    laid = [path for part in there - {BESIDE} for path in _files(folder / part)]
    return any(
        path.is_symlink() or _read(path) != texts.get(path.relative_to(folder).as_posix())
        for path in laid
    )


def _files(path: Path) -> Iterator[Path]:
    yield from (p for p in path.rglob("*") if not p.is_dir()) if path.is_dir() else (path,)


def _read(path: Path) -> str | None:
    try:
        return path.read_bytes().decode()
    except (OSError, UnicodeDecodeError):
        return None


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
