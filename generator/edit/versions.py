"""Versions of a manual in git: found, listed, and laid out without touching the working tree."""

from __future__ import annotations

import io
import subprocess
import tarfile
from dataclasses import dataclass
from pathlib import Path

from generator import layout


class NoGit(RuntimeError):
    """There is no git, or the manual lies in no repository of it."""


class NoVersion(ValueError):
    """A revision is none, or holds no manual."""


@dataclass(frozen=True, slots=True)
class Commit:
    """A version that changed records.

    Parameters
    ----------
    id : str
        Its full name.
    day : str
        The day it was committed, as its committer wrote it.
    subject : str
        First line of its message.
    """

    id: str
    day: str
    subject: str


def git(folder: Path, *arguments: str) -> bytes | None:
    """Run git in a folder and give what it printed, None where it refused.

    Raises
    ------
    NoGit
        If there is no git to run.
    """
    try:
        done = subprocess.run(
            ["git", "-C", str(folder), *arguments], capture_output=True, check=False
        )  # fmt: skip
    except OSError as fault:
        raise NoGit("git is not to be found") from fault
    return done.stdout if done.returncode == 0 else None


def _line(found: bytes | None) -> str:
    return (found or b"").decode("utf-8", "replace").strip()


def lay_out(folder: Path, revision: str, into: Path) -> None:
    """Lay out the records of a revision; the working tree and its index stay untouched.

    Raises
    ------
    NoGit, NoVersion
        If there is no such thing.
    """
    if revision.startswith("-"):
        raise NoVersion(f"{revision} is neither a revision of git nor a folder with a manual")
    commit = _line(git(folder, "rev-parse", "--verify", "--quiet", f"{revision}^{{commit}}"))
    if not commit:
        raise NoVersion(f"{revision} is neither a revision of git nor a folder with a manual")
    prefix = _line(git(folder, "rev-parse", "--show-prefix"))
    archive = git(folder, "archive", "--format=tar", f"{commit}:{prefix}", "--", layout.RECORDS)
    if archive is None:
        raise NoVersion(
            f"{revision} holds no {layout.RECORDS}; a shallow clone may lack it: git fetch it"
        )
    with tarfile.open(fileobj=io.BytesIO(archive)) as tar:
        tar.extractall(into, filter="data")


def commits(folder: Path, limit: int) -> list[Commit]:
    """Give the newest versions that changed records, newest first.

    Raises
    ------
    NoGit
        If the manual lies in no repository.
    """
    if _line(git(folder, "rev-parse", "--is-inside-work-tree")) != "true":
        raise NoGit("the manual lies in no git repository")
    listed = git(
        folder, "log", f"-n{limit}", "--first-parent", "--format=%H%x00%cs%x00%s", "--",
        layout.RECORDS,
    )  # fmt: skip
    lines = (listed or b"").decode("utf-8", "replace").splitlines()
    return [Commit(*line.split("\0", 2)) for line in lines]


def is_shallow(folder: Path) -> bool:
    """Say whether the repository holds only the newest part of its history."""
    return _line(git(folder, "rev-parse", "--is-shallow-repository")) == "true"


def parent(folder: Path, commit: str) -> str | None:
    """Give the version before another, None where there is none or it is not here."""
    return _line(git(folder, "rev-parse", "--verify", "--quiet", f"{commit}^")) or None


def tree(folder: Path, commit: str) -> str:
    """Give the name that git has for the records of a version, "" where it holds none."""
    prefix = _line(git(folder, "rev-parse", "--show-prefix"))
    place = f"{commit}:{prefix}{layout.RECORDS}"
    return _line(git(folder, "rev-parse", "--verify", "--quiet", place))


def touched(folder: Path, before: str, after: str) -> list[tuple[str, str]]:
    """Give what was done to each record file between two versions, and its "kind/id"."""
    said = {"A": "added", "M": "changed", "D": "removed"}
    found = _line(git(
        folder, "diff", "--name-status", "--no-renames", "--relative", before, after, "--",
        layout.RECORDS,
    ))  # fmt: skip
    pairs = [line.split("\t", 1) for line in found.splitlines()]
    return [
        (said[how], path.removeprefix(f"{layout.RECORDS}/").removesuffix(".yml"))
        for how, path in pairs
        if how in said and path.endswith(".yml") and "/." not in path
    ]
