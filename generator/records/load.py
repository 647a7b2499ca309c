"""Reading a folder of records: the one place below the command line that touches the disk."""

from __future__ import annotations

import os
import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import partial
from operator import itemgetter
from pathlib import Path
from typing import Any, TypeVar

from generator.problems import Code, Problem, Span, code, has_errors, in_order, problem
from generator.records import fingerprint, quick_yaml, shape, strict_yaml
from generator.records.kinds import KINDS, SETTINGS_FILE, Record, Settings
from generator.records.knowledge_base import KnowledgeBase, Origin
from generator.records.on_demand import PlacesIn, Texts
from generator.records.source_text import LARGEST, decode

UNKNOWN_FOLDER = code("unknown-folder", "Nothing in it would reach a reader.")
STRAY_FILE = code("stray-file", "It would be taken for a record by people, and by nothing else.")
UNSAFE_NAME = code(
    "unsafe-name",
    "The name becomes the record's id and its address, and has to work on every computer.",
)
SAME_NAME = code(
    "same-name", "On many computers the two are one file, and one record would be lost."
)
LINK_OUTSIDE = code(
    "link-outside", "What a reader is shown could change without anybody reviewing it."
)
UNREADABLE_FILE = code("unreadable-file", "The manual would be built without it.")
NO_SETTINGS = code("no-settings", "Without them nobody knows whose manual it is.")

T = TypeVar("T")
Parsed = dict[str, Any]
"""Key of a record and digest of its file, to the record."""
_Fit = Callable[[Any, Any, str], tuple[T | None, list[Problem]]]

SUFFIX = fingerprint.SUFFIX
_SAFE = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
_LONGEST_ID = 60
LIST = "index"
"""The name of the page that lists a kind; no record of it may take that address."""

# Names that Windows keeps for devices, whatever their suffix.
DEVICES = frozenset(
    {"con", "prn", "aux", "nul"}
    | {f"{port}{number}" for port in ("com", "lpt") for number in range(10)}
)


@dataclass(frozen=True, slots=True)
class Loaded:
    """What a folder of records holds.

    Parameters
    ----------
    kb : KnowledgeBase or None
        Every record without an error; None where the settings cannot be read.
    problems : list of Problem
        Every finding of reading and fitting, in order.
    sources : mapping
        Text of each file by its name in findings, for excerpts.
    digests : dict
        Record key, or "settings", to a digest of the file.
    parsed : dict
        The records by what their files hold, for a later reading.
    """

    kb: KnowledgeBase | None
    problems: list[Problem]
    sources: Mapping[str, str]
    digests: dict[str, str]
    parsed: Parsed


@dataclass
class _Folder:
    """The folder as it is read, and what was found so far."""

    root: Path
    shown_as: str
    known: Parsed
    parsed: Parsed = field(default_factory=dict)
    found: list[Problem] = field(default_factory=list)
    sources: Texts = field(default_factory=Texts)
    origins: dict[str, Origin] = field(default_factory=dict)
    digests: dict[str, str] = field(default_factory=dict)

    def shown(self, path: Path) -> str:
        """Name a file for findings: always with "/", bytes that are no text made visible."""
        parts = (self.shown_as, *path.relative_to(self.root).parts)
        whole = "/".join(part for part in parts if part)
        return whole.encode("utf-8", "backslashreplace").decode("utf-8")

    def say(self, what: Code, path: Path, message: str, hint: str) -> None:
        """Note a finding about a file as a whole.

        It names the record that the file should have held, so that links to it can be told from
        links to nothing.
        """
        kind = path.parent.name
        of_record = kind in KINDS and path.suffix == SUFFIX and _SAFE.fullmatch(path.stem)
        record = f"{kind}/{path.stem}" if of_record else ""
        self.found.append(problem(what, self.shown(path), Span(), message, hint, record))


def load(folder: Path, shown_as: str = "", known: Parsed | None = None) -> Loaded:
    """Read every record of a folder.

    Parameters
    ----------
    folder : Path
        The folder that holds the settings and a folder for each kind.
    shown_as : str
        What findings call it.
    known : dict, optional
        Records by what their files hold, from an earlier reading.

    Returns
    -------
    Loaded
        The knowledge base and the findings; never an exception for anything a folder can hold.
    """
    at = _Folder(folder, shown_as, known or {})
    settings = _settings(at)
    records: dict[str, dict[str, Record]] = {kind: {} for kind in KINDS}
    for entry in _entries(at, folder):
        if entry.name == SETTINGS_FILE:
            continue
        if entry.is_dir() and entry.name in KINDS:
            if _inside(at, entry):
                records[entry.name] = dict(sorted(_kind(at, entry), key=itemgetter(0)))
        elif entry.is_dir():
            message = f"there is no kind of record called {_name(entry)}"
            at.say(UNKNOWN_FOLDER, entry, message, "use one of " + ", ".join(KINDS))
        else:
            hint = "put a record into the folder of its kind, anything else outside"
            at.say(STRAY_FILE, entry, f"{_name(entry)} belongs to no kind", hint)
    kb = None if settings is None else KnowledgeBase(settings, records, at.origins)
    return Loaded(kb, in_order(at.found), at.sources, at.digests, at.parsed)


def _settings(at: _Folder) -> Settings | None:
    path = at.root / SETTINGS_FILE
    if not path.exists() and not path.is_symlink():
        hint = f"write {SETTINGS_FILE} with format: 1 and a title"
        at.say(NO_SETTINGS, path, f"there is no {SETTINGS_FILE}", hint)
        return None
    if not _inside(at, path):
        return None
    return _fitted(at, path, fingerprint.SETTINGS_KEY, shape.fit_settings)


def _kind(at: _Folder, folder: Path) -> Iterator[tuple[str, Record]]:
    """Give the records of one kind by id."""
    kind = folder.name
    entries = _entries(at, folder)
    names = {entry.name for entry in entries}
    for entry in entries:
        name = entry.name
        if entry.is_dir() or entry.suffix != SUFFIX:
            hint = f"records lie in {kind}/, end in {SUFFIX} and have no folders of their own"
            at.say(STRAY_FILE, entry, f"{_name(entry)} is not a record file", hint)
            continue
        if name != name.lower() and name.lower() in names:
            message = f"{_name(entry)} differs from {_name(Path(name.lower()))} only in capitals"
            at.say(SAME_NAME, entry, message, "rename it")
            continue
        if not _safe(at, entry) or not _inside(at, entry):
            continue
        fit = partial(shape.fit, kind, entry.stem)
        record = _fitted(at, entry, f"{kind}/{entry.stem}", fit)
        if record is not None:
            yield record.id, record


def _fitted(at: _Folder, path: Path, key: str, fit: _Fit[T]) -> T | None:
    """Give what a file holds, if nothing at all is wrong with it, and note where it stands."""
    source = _read(at, path)
    if source is None:
        return None
    shown = at.shown(path)
    at.sources[shown] = source
    digest = at.digests[key] = fingerprint.digest_of(source)
    name = f"{key} {digest}"
    ready: T | None = at.known.get(name)
    if ready is None:
        ready = _quickly(source, shown, fit)
    if ready is not None:
        at.parsed[name] = ready
        at.origins[key] = Origin(shown, PlacesIn(source, shown))
        return ready
    reading = strict_yaml.read(source, shown)
    found = [replace(fault, record=key) for fault in reading.problems]
    made = None
    if reading.data is not None:
        made, misfits = fit(reading.data, reading.places, shown)
        found.extend(misfits)
    at.found.extend(strict_yaml.bounded(in_order(found), shown))
    if has_errors(found):
        return None
    at.origins[key] = Origin(shown, reading.places)
    return made


def _quickly(source: bytes, shown: str, fit: _Fit[T]) -> T | None:
    """Give what a plain file holds, if nothing is wrong with it."""
    text = decode(source, shown)
    if text.problems or text.clean is None:
        return None
    data = quick_yaml.read(text.clean)
    if data is None:
        return None
    made, misfits = fit(data, {}, shown)
    return None if misfits else made


def _read(at: _Folder, path: Path) -> bytes | None:
    if not path.is_file():
        at.say(UNREADABLE_FILE, path, f"{_name(path)} is not a plain file", "write a plain file")
        return None
    try:
        with path.open("rb") as file:
            return file.read(LARGEST + 1)  # one more than allowed tells that it is too large
    except OSError as wrong:
        message = f"{_name(path)} cannot be read: {wrong.strerror}"
        at.say(UNREADABLE_FILE, path, message, "make it readable")
        return None


def _entries(at: _Folder, folder: Path) -> list[Path]:
    """Give what a folder holds, in order, hidden files left out."""
    try:
        names = sorted(os.listdir(folder))
    except OSError as wrong:
        message = f"{_name(folder)} cannot be read: {wrong.strerror}"
        at.say(UNREADABLE_FILE, folder, message, "make it readable")
        return []
    return [folder / name for name in names if not name.startswith(".")]


def _safe(at: _Folder, entry: Path) -> bool:
    stem = entry.stem
    if _SAFE.fullmatch(stem) and len(stem) <= _LONGEST_ID and stem not in DEVICES | {LIST}:
        return True
    if stem == LIST:
        message, hint = f"{stem} is the name of the page that lists a kind", f"as {stem}-record"
    elif stem in DEVICES:
        message, hint = f"{stem} is the name of a device on some computers", f"as {stem}-record"
    elif len(stem) > _LONGEST_ID:
        message = f"the name has {len(stem)} characters; {_LONGEST_ID} is the most"
        hint = "to something shorter"
    else:
        better = re.sub(r"[^a-z0-9]+", "-", stem.lower()).strip("-") or "crank-sensor"
        message = f"{_name(entry)} cannot be an id"
        hint = f"with small letters, digits and single hyphens, as {better}{SUFFIX}"
    at.say(UNSAFE_NAME, entry, message, f"rename it {hint}")
    return False


def _inside(at: _Folder, entry: Path) -> bool:
    """Say whether a file lies in the folder even after its links are followed.

    The folder it lies in was asked about before.
    """
    if entry.parent != at.root and not entry.is_symlink():
        return True
    try:
        real = entry.resolve(strict=True)
        root = at.root.resolve(strict=True)
    except (OSError, RuntimeError):
        at.say(LINK_OUTSIDE, entry, f"{_name(entry)} links to nothing", "put the file itself here")
        return False
    if real.is_relative_to(root):
        return True
    message = f"{_name(entry)} links to a place outside the records"
    at.say(LINK_OUTSIDE, entry, message, "put the file itself here")
    return False


def _name(path: Path) -> str:
    """Name a file in a message."""
    return path.name.encode("utf-8", "backslashreplace").decode("utf-8")
