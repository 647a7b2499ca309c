"""Record files on disk: which there are, and changing one without ever losing a word of it."""

from __future__ import annotations

import os
import shutil
import tempfile
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from generator.records.kinds import KINDS, SETTINGS_FILE
from generator.records.load import SUFFIX
from generator.records.source_text import LARGEST
from generator.shapes.outline import SETTINGS


class NotARecord(ValueError):
    """A path was named that is no record of this manual."""


class ChangedMeanwhile(RuntimeError):
    """Somebody else wrote to the file since it was read; their words stand."""


@dataclass(frozen=True, slots=True)
class RecordFile:
    """A record file.

    Parameters
    ----------
    path : Path
        Where it lies.
    kind : str
        The folder it lies in, or "settings".
    shown : str
        Its name for findings, as the loader gives it.
    """

    path: Path
    kind: str
    shown: str

    def read(self) -> bytes:
        """Give what it holds, up to one byte more than a record may have.

        Raises
        ------
        OSError
            If it cannot be read.
        """
        with self.path.open("rb") as file:
            return file.read(LARGEST + 1)

    def replace(self, before: bytes, after: bytes) -> None:
        """Put new content in the place of the old, whole or not at all.

        Parameters
        ----------
        before : bytes
            What was read, and still has to stand there.
        after : bytes
            What is to stand there.

        Raises
        ------
        ChangedMeanwhile
            If the file holds something else by now.
        OSError
            If the new content cannot be written; the old stands.
        """
        with _beside(self.path, after) as new:
            shutil.copymode(self.path, new)
            if self.read() != before:
                raise ChangedMeanwhile(f"{self.shown} was changed by somebody else meanwhile")
            os.replace(new, self.path)


def create(path: Path, content: bytes) -> None:
    """Make a file, whole or not at all, where there is none.

    Raises
    ------
    FileExistsError
        If something lies there; it stays as it is.
    OSError
        If it cannot be written.
    """
    with _beside(path, content) as new:
        _as_any_new_file(new)
        # A link, since a rename would take the place of a file that came up meanwhile.
        os.link(new, path)


def put(path: Path, content: bytes) -> None:
    """Make a file of ours, whole or not at all, in the place of an older one."""
    with _beside(path, content) as new:
        _as_any_new_file(new)
        os.replace(new, path)


@contextmanager
def _beside(path: Path, content: bytes) -> Iterator[Path]:
    """Give a file beside another that holds what is to stand there, and take it away again."""
    # The dot keeps it from being taken for a record by whoever reads the folder meanwhile.
    start = f".{path.name}.fettlebook-"
    for left_over in os.listdir(path.parent):  # by a run that was killed
        if left_over.startswith(start):
            path.with_name(left_over).unlink(missing_ok=True)
    handle, name = tempfile.mkstemp(prefix=start, dir=path.parent)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        yield Path(name)
    finally:
        Path(name).unlink(missing_ok=True)


def _as_any_new_file(path: Path) -> None:
    """Give a file the permissions that a new file has here; a temporary one is its owner's."""
    mask = os.umask(0)
    os.umask(mask)
    path.chmod(0o666 & ~mask)


@dataclass(frozen=True, slots=True)
class Change:
    """A file, what it holds and what it is to hold."""

    file: RecordFile
    before: bytes
    after: bytes


def every(records: Path, shown_as: str) -> list[RecordFile]:
    """Give every record file of a manual, the settings included.

    Parameters
    ----------
    records : Path
        The folder of records.
    shown_as : str
        What findings call it.
    """
    return sorted(_every(records, shown_as), key=lambda file: file.shown)


def _every(records: Path, shown_as: str) -> Iterator[RecordFile]:
    inside = records.resolve()
    for kind in (SETTINGS, *KINDS):
        names = [SETTINGS_FILE] if kind == SETTINGS else _names(records / kind)
        for name in names:
            parts = (name,) if kind == SETTINGS else (kind, name)
            # A link is followed, so that what is replaced is the file and not the link to it.
            path = records.joinpath(*parts).resolve()
            if path.is_file() and path.is_relative_to(inside):
                yield RecordFile(path, kind, "/".join((shown_as, *parts)))


def _names(folder: Path) -> list[str]:
    names = os.listdir(folder) if folder.is_dir() else []
    return [name for name in names if name.endswith(SUFFIX) and not name.startswith(".")]


def chosen(records: Path, shown_as: str, paths: Iterable[Path]) -> list[RecordFile]:
    """Give the record files that paths name: files, or folders with all that is in them.

    Raises
    ------
    NotARecord
        If a path names none.
    """
    known = every(records, shown_as)
    found: set[RecordFile] = set()
    for path in paths:
        whole = path.resolve()
        named = {file for file in known if file.path == whole or whole in file.path.parents}
        if not named:
            raise NotARecord(f"{path} is no record of the manual in {records.parent}")
        found |= named
    return [file for file in known if file in found]
