"""What a build leaves behind for the next one, beside the manual."""

from __future__ import annotations

from dataclasses import dataclass, field, fields
from pathlib import Path
from typing import Any

from generator import layout
from generator.memory import keep
from generator.publish import inputs, lock, swap
from generator.publish.standing import Files, Standing

_FILE = "site"


@dataclass(slots=True)
class Last:
    """The last good build; one without a word on anything where there is none.

    Parameters
    ----------
    site : str
        Where its site lies.
    inputs : str
        Digest of all that it was made from, "" where nobody can say.
    files : dict
        Every file of it.
    made : dict
        Address of a page or text of ours to what it was made of: page and frame.
    hosted : str
        Digest of what the host was given, "" where nobody can say.
    frames : dict
        What the host gave: place of a stand-in, with or without contents, to its HTML.
    of_host : dict
        Address to digest: the host's own pages and files.
    links : dict
        Address and anchor of a page of ours to the link of a hand-written page that leads there.
    notes : dict
        What the steps over files noted.
    """

    site: str = ""
    inputs: str = ""
    files: Files = field(default_factory=dict)
    made: dict[str, str] = field(default_factory=dict)
    hosted: str = ""
    frames: dict[tuple[str, bool], str] = field(default_factory=dict)
    of_host: dict[str, str] = field(default_factory=dict)
    links: dict[tuple[str, str], str] = field(default_factory=dict)
    notes: dict[str, Any] = field(default_factory=dict)

    @classmethod
    def read(cls, folder: Path, site: Path) -> Last:
        """Give what the last build of a site left in a manual's folder."""
        found = keep.load(folder / layout.CACHE / _FILE, inputs.version())
        last = cls(**found) if isinstance(found, dict) else cls()
        return last if last.site == str(site) else cls(str(site))

    def keep(self, folder: Path) -> None:
        """Leave it for the next build."""
        told = {name.name: getattr(self, name.name) for name in fields(self)}
        keep.save(folder / layout.CACHE / _FILE, inputs.version(), told)


def stands(folder: Path, site: Path, now: inputs.Inputs | None) -> bool:
    """Say whether a site is already the one that a build would make.

    What a kill left beside it is put right; it is changed in nothing else.

    Parameters
    ----------
    folder : Path
        The manual's folder.
    site : Path
        Where the site lies.
    now : Inputs or None
        What a build would make it from.
    """
    if now is None:
        return False
    try:
        with lock.held(lock.place(site)):
            swap.mend(site)
            last = Last.read(folder, site)
            return last.inputs == now.whole and Standing(site, last.files).whole()
    except (lock.Busy, OSError):
        return False
