"""What is read from a record's file only when somebody asks: its text, and where each field stands.

A manual without findings is read, checked and published without either.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cached_property

from generator.records import strict_yaml
from generator.records.knowledge_base import Path, Place
from generator.records.source_text import decode


class PlacesIn(Mapping[Path, Place]):
    """The way to each field of a file, and where it stands.

    Parameters
    ----------
    source : bytes
        The file.
    path : str
        Its name for findings.
    """

    def __init__(self, source: bytes, path: str) -> None:
        self._source, self._path = source, path

    @cached_property
    def _places(self) -> dict[Path, Place]:
        return strict_yaml.read(self._source, self._path).places

    def __getitem__(self, path: Path) -> Place:
        return self._places[path]

    def __iter__(self) -> Iterator[Path]:
        return iter(self._places)

    def __len__(self) -> int:
        return len(self._places)


class Texts(Mapping[str, str]):
    """The text of each file by its name for findings."""

    def __init__(self) -> None:
        self._sources: dict[str, bytes] = {}

    def __setitem__(self, path: str, source: bytes) -> None:
        self._sources[path] = source

    def __getitem__(self, path: str) -> str:
        return decode(self._sources[path], path).shown

    def __iter__(self) -> Iterator[str]:
        return iter(self._sources)

    def __len__(self) -> int:
        return len(self._sources)
