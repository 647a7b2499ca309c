"""A mapping that tells a memory what is read from it."""

from __future__ import annotations

from collections.abc import ItemsView, Iterator, KeysView, Mapping, ValuesView
from typing import Any, TypeVar

from generator.memory.trace import Memory, every, names, one

T = TypeVar("T")


def watched(
    records: Mapping[str, Mapping[str, T]], memory: Memory
) -> dict[str, Mapping[str, T]]:
    """Give records, kind to id to record, so that a memory is told of every read."""
    return {kind: Watched(kind, dict(by_id), memory) for kind, by_id in records.items()}


class Watched(Mapping[str, T]):
    """The records of one kind by id, read under the eyes of a memory.

    Parameters
    ----------
    kind : str
        The kind.
    by_id : dict
        The records.
    memory : Memory
        Is told of every read; one of a record that is not there counts as well.
    """

    def __init__(self, kind: str, by_id: dict[str, T], memory: Memory) -> None:
        self._kind = kind
        self._by_id = by_id
        self._memory = memory
        self._keys = {id_: one(kind, id_) for id_ in by_id}

    def __getitem__(self, id_: str) -> T:
        self._memory.read(self._keys.get(id_) or one(self._kind, id_))
        return self._by_id[id_]

    def get(self, id_: str, default: Any = None) -> Any:
        """Give the record, or the default where there is none."""
        self._memory.read(self._keys.get(id_) or one(self._kind, id_))
        return self._by_id.get(id_, default)

    def __contains__(self, id_: object) -> bool:
        self._memory.read(one(self._kind, str(id_)))
        return id_ in self._by_id

    def __iter__(self) -> Iterator[str]:
        self._memory.read(names(self._kind))
        return iter(self._by_id)

    def __len__(self) -> int:
        self._memory.read(names(self._kind))
        return len(self._by_id)

    def keys(self) -> KeysView[str]:
        """Give the ids."""
        self._memory.read(names(self._kind))
        return self._by_id.keys()

    def values(self) -> ValuesView[T]:
        """Give the records."""
        self._memory.read(every(self._kind))
        return self._by_id.values()

    def items(self) -> ItemsView[str, T]:
        """Give ids and records."""
        self._memory.read(every(self._kind))
        return self._by_id.items()
