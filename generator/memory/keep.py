"""What is kept on disk between runs: whole, for one version of the generator, or not at all.

Nothing that is kept is ever missed: a file that is damaged, foreign, older or gone gives None, and
what it held is made again. A kept file may come with a manual from anywhere, so it can name none
but plain classes of ours.
"""

from __future__ import annotations

import hashlib
import io
import os
import pickle
import tempfile
from collections.abc import Callable
from contextlib import suppress
from functools import cache
from pathlib import Path
from typing import Any, Protocol

_MAGIC = b"fettlebook keeps this; it may be deleted at any time\n"
_SIZE = 32
_IGNORE = "# made by fettlebook; it may be deleted at any time\n*\n"

_PLAIN = {
    ("datetime", "date"), ("builtins", "set"), ("builtins", "frozenset"),
    ("markupsafe", "Markup"),
}  # fmt: skip


class Shelf(Protocol):
    """Keeps things by name from one run to the next, each for one version."""

    def load(self, name: str, version: str) -> Any:
        """Give what is kept under a name, or None."""

    def save(self, name: str, version: str, kept: Any) -> object:
        """Keep something under a name."""


class OnDisk:
    """A shelf of files in a folder."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder

    def load(self, name: str, version: str) -> Any:
        """Give what the file of this name keeps, or None."""
        return load(self._folder / name, version)

    def save(self, name: str, version: str, kept: Any) -> object:
        """Keep something in the file of this name."""
        return save(self._folder / name, version, kept)


class InProcess:
    """A shelf that lasts as long as the process."""

    def __init__(self) -> None:
        self._kept: dict[str, tuple[str, Any]] = {}

    def load(self, name: str, version: str) -> Any:
        """Give what is kept under a name, or None."""
        kept = self._kept.get(name)
        return kept[1] if kept and kept[0] == version else None

    def save(self, name: str, version: str, kept: Any) -> object:
        """Keep something under a name."""
        self._kept[name] = version, kept
        return None


class Foreign(pickle.UnpicklingError):
    """A kept file names something that we never write."""


def load(path: Path, version: str) -> Any:
    """Give what a file keeps, or None.

    Parameters
    ----------
    path : Path
        The file.
    version : str
        What has to be the same for it to be of use.
    """
    _tidy(path)
    try:
        content = path.read_bytes()
    except OSError:
        return None
    head = _MAGIC + _digest(version.encode())
    start = len(head) + _SIZE
    if content[: len(head)] != head or content[len(head) : start] != _digest(content[start:]):
        return None
    try:
        return loads(content[start:])
    except Exception:  # noqa: BLE001  # whatever a foreign file does, it is as good as none
        return None


def save(path: Path, version: str, kept: Any) -> bool:
    """Keep something; say whether that worked. A full or read-only disk costs the next run time."""
    content = dumps(kept)
    try:
        _folder(path.parent)
        handle, name = tempfile.mkstemp(prefix=f".{path.name}.", dir=path.parent)
    except OSError:
        return False
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(_MAGIC + _digest(version.encode()) + _digest(content))
            file.write(content)
        os.replace(name, path)
    except OSError:
        return False
    finally:
        with suppress(OSError):
            os.unlink(name)
    return True


def _tidy(path: Path) -> None:
    """Take away what a killed run left half written; whoever writes just now keeps nothing."""
    with suppress(OSError):
        for name in os.listdir(path.parent):
            if name.startswith(f".{path.name}."):
                path.with_name(name).unlink(missing_ok=True)


def _folder(path: Path) -> None:
    """Make the folder, out of the sight of version control."""
    if not path.is_dir():
        path.mkdir(parents=True)
        (path / ".gitignore").write_text(_IGNORE, encoding="utf-8")


def dumps(found: Any, name: Callable[[Any], Any] | None = None) -> bytes:
    """Pack something.

    Parameters
    ----------
    found : object
        Plain data, and instances of classes of ours.
    name : callable, optional
        Gives a name that is packed in the place of an object, None for one to be packed itself.
    """
    if name is None:
        return pickle.dumps(found, protocol=5)
    out = io.BytesIO()
    _Pickler(out, name).dump(found)
    return out.getvalue()


def loads(content: bytes, resolve: Callable[[Any], Any] | None = None) -> Any:
    """Unpack something.

    Raises
    ------
    Foreign
        If it names anything but plain data and classes of ours.
    """
    return _Unpickler(io.BytesIO(content), resolve).load()


class _Pickler(pickle.Pickler):
    def __init__(self, out: io.BytesIO, name: Callable[[Any], Any]) -> None:
        super().__init__(out, protocol=5)
        self._name = name

    def persistent_id(self, found: Any) -> Any:
        return self._name(found)


class _Unpickler(pickle.Unpickler):
    def __init__(self, content: io.BytesIO, resolve: Callable[[Any], Any] | None) -> None:
        super().__init__(content)
        self._resolve = resolve

    def persistent_load(self, name: Any) -> Any:
        if self._resolve is None:
            raise Foreign("a name, where none is expected")
        return self._resolve(name)

    def find_class(self, module: str, name: str) -> Any:
        if (module, name) in _PLAIN or module.startswith("generator."):
            found = super().find_class(module, name)
            if isinstance(found, type):
                return found
        raise Foreign(f"{module}.{name}")


def _digest(content: bytes) -> bytes:
    return hashlib.blake2b(content, digest_size=_SIZE, key=_secret()).digest()


@cache
def _secret() -> bytes:
    """Give a few random bytes that this user alone has, so that nobody else can write a seal.

    A kept file says what the checks found. One that came with somebody's contribution could say
    that they found nothing.
    """
    path = _own_folder() / "secret"
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        with suppress(FileExistsError):
            handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
            with os.fdopen(handle, "wb") as file:
                file.write(os.urandom(_SIZE))
        found = path.read_bytes()
    except OSError:
        found = b""
    # Without a place of one's own nothing is remembered from one run to the next.
    return found if len(found) == _SIZE else os.urandom(_SIZE)


def _own_folder() -> Path:
    """Give this user's folder for what programs keep (XDG Base Directory 0.8; as on Windows)."""
    named = os.environ.get("XDG_CACHE_HOME") or os.environ.get("LOCALAPPDATA")
    base = Path(named) if named else Path("~/.cache").expanduser()
    return base / "fettlebook"
