"""A folder that the files of a site are put into."""

from __future__ import annotations

from pathlib import Path

from generator.publish.files import Made
from generator.publish.standing import Mark, Standing, mark_of


class Folder:
    """Puts files into a folder; a file is made anew or has a second name, never written over.

    Parameters
    ----------
    root : Path
        The folder.
    standing : Standing, optional
        The last site: a file that is the same there is not written again.
    """

    def __init__(self, root: Path, standing: Standing | None = None) -> None:
        self.root = root
        self._standing = standing or Standing(root, {})
        self._lies: dict[str, str] = {}
        self._folders: set[Path] = set()
        self.marks: dict[str, Mark] = {}

    def files(self) -> dict[str, bytes]:
        """Give what lies there, by address."""
        return {
            path.relative_to(self.root).as_posix(): path.read_bytes()
            for path in sorted(self.root.rglob("*"))
            if path.is_file()
        }

    def take(self, address: str, made: Made) -> Made:
        """Put a file in its place, if it does not lie there yet; give it as it lies there."""
        path = self.root / address
        if self._lies.get(address) != made.digest:
            if path.parent not in self._folders:
                path.parent.mkdir(parents=True, exist_ok=True)
                self._folders.add(path.parent)
            # What lies there may be the very file of an older site, known by two names.
            path.unlink(missing_ok=True)
            mark = self._standing.give(address, made.digest, path)
            if not mark:
                path.write_bytes(made.read())
            self.marks[address] = mark or mark_of(path)
            self._lies[address] = made.digest
        return Made(made.digest, path.read_bytes)

    def drop(self, address: str) -> None:
        """Take a file away again."""
        (self.root / address).unlink(missing_ok=True)
        self._lies.pop(address, None)
