"""What the steps over finished files remember from one build to the next."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from typing import Any

from generator.publish.files import Made, digest_of


def _nothing_held(digest: str) -> bytes | None:
    return None


class Notes:
    """Remembers what was made from what.

    Parameters
    ----------
    before : mapping, optional
        The notes of the last build, as :attr:`after` gave them.
    held : callable, optional
        Gives the bytes of a file of the last site by their digest, None where there is none.

    Notes
    -----
    A note is found by its name and by all that it was made from, so it can never be out of date;
    what nobody asked for in a build is forgotten after it.
    """

    def __init__(
        self,
        before: Mapping[str, Any] | None = None,
        held: Callable[[str], bytes | None] = _nothing_held,
    ) -> None:
        self._before = before or {}
        self._held = held
        self.after: dict[str, Any] = {}

    def value(self, name: str, of: Iterable[str], make: Callable[[], Any]) -> Any:
        """Give what is made from files, or what was made from the very same ones last time.

        Parameters
        ----------
        name : str
            What is made, and how: change it when the code that makes it changes its ways.
        of : iterable of str
            Digests and other texts: all that it is made from.
        make : callable
            Makes it; texts, numbers, lists and mappings by text alone, as JSON knows them.
        """
        key = digest_of("\0".join((name, *of)).encode())
        if key not in self.after:
            self.after[key] = self._before[key] if key in self._before else make()
        return self.after[key]

    def file(self, name: str, of: Iterable[str], make: Callable[[], bytes]) -> Made:
        """Give a file that is made from others; the parameters are those of :meth:`value`."""
        made: list[bytes] = []

        def digest() -> str:
            made.append(make())
            return digest_of(made[0])

        found = self.value(f"file {name}", of, digest)
        if made:
            return Made(found, lambda: made[0])
        return Made(found, lambda: self._held(found) or make())
