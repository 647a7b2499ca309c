"""A folder that the files of a site are put into."""

from __future__ import annotations

from pathlib import Path

from generator.publish.files import Made, digest_of


class Folder:
    """Puts files into a folder; a file is made anew, never written over.

    Parameters
    ----------
    root : Path
        The folder.
    """

    def __init__(self, root: Path) -> None:
        self.root = root
        self._lies: dict[str, str] = {}

    def files(self) -> dict[str, bytes]:
        """Give what lies there, by address."""
        return {
            path.relative_to(self.root).as_posix(): path.read_bytes()
            for path in sorted(self.root.rglob("*"))
            if path.is_file()
        }

    def put(self, address: str, content: bytes) -> Made:
        """Put a file in its place, and give it as made."""
        path = self._path(address)
        path.write_bytes(content)
        digest = self._lies[address] = digest_of(content)
        return Made(digest, path.read_bytes)

    def take(self, address: str, made: Made) -> None:
        """Put a file that is known by its digest in its place, if it does not lie there yet."""
        if self._lies.get(address) != made.digest:
            self.put(address, made.read())

    def drop(self, address: str) -> None:
        """Take a file away again."""
        self._path(address).unlink(missing_ok=True)
        self._lies.pop(address, None)

    def _path(self, address: str) -> Path:
        path = self.root / address
        path.parent.mkdir(parents=True, exist_ok=True)
        # What lies there may be the very file of an older site, known by two names.
        path.unlink(missing_ok=True)
        return path
