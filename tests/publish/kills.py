"""Builds that are killed at a random moment, and what must be true after each."""

from __future__ import annotations

import os
import random
import shutil
import signal
import subprocess
import sys
import time
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from pathlib import Path

from generator.publish import swap
from tests.cli.asking import replace_in
from tests.demonstration import ROOT, SMALLEST_RECORDS, copy_manual
from tests.publish.tree import digest_of_tree

LONGEST_S = 60.0
AIMS = ("any step", "the swap", "any step", "any time", "clearing")


def two_manuals(folder: Path) -> list[Path]:
    """Lay down two manuals that differ on most pages and in which pages there are."""
    one, other = folder / "one", folder / "other"
    copy_manual(one, SMALLEST_RECORDS)
    shutil.copytree(one, other)
    replace_in(other / "kb_source" / "settings.yml", "title: ", "title: Another ")
    replace_in(other / "kb_source" / "components" / "undertray.yml", "title: ", "title: Lower ")
    (other / "docs" / "more.md").write_text("# More\n\nOne page more.\n", encoding="utf-8")
    return [one, other]


@dataclass
class Killer:
    """Kills builds and looks at what they left.

    Parameters
    ----------
    site : Path
        Where the site lies.
    nest : Popen
        Forks the builds.
    chance : Random
        Says when to kill, and whether folders change places in one step or by two renames; the old
        site may then be found under its waiting name.
    """

    site: Path
    nest: subprocess.Popen[str]
    chance: random.Random
    whole: list[str] = field(default_factory=list)
    lies: set[str] = field(default_factory=set)
    takes_s: float = 0.0
    steps: int = 0
    clearing: int = 0
    seen: Counter[str] = field(default_factory=Counter)

    def begin(self) -> None:
        """Build both manuals uncut: their digests, and how long and how many steps a build is."""
        assert self._line() == "ready"
        for number in (0, 1, 0):
            began = time.monotonic()
            how, self.steps, self.clearing = self._run(number)
            self.takes_s = time.monotonic() - began
            assert how == 0
            self.whole.append(digest_of_tree(self.site))
        assert self.whole.pop() == self.whole[0] != self.whole[1]
        assert 0 < self.clearing < self.steps
        self.lies = {path.name for path in self.site.parent.iterdir()}

    def kill_one(self, number: int, aim: str) -> bool:
        """Kill a build of one manual and run the next to its end; say whether the kill hit."""
        before = digest_of_tree(self.site)
        step = {
            "any step": self.chance.randint(1, self.steps),
            "the swap": self.clearing + self.chance.randint(-6, 1),
            "clearing": self.chance.randint(self.clearing, self.steps),
            "any time": 0,
        }[aim]
        renames = self.chance.random() < 0.5
        child = self._started(number, step, renames=renames)
        if step == 0:
            time.sleep(self.chance.uniform(0, self.takes_s))
            with suppress(ProcessLookupError):
                os.kill(child, signal.SIGKILL)
        hit = self._ended()[0] == -signal.SIGKILL
        self._look(before, number, hit, renames)
        after = self.chance.randrange(2)
        assert self._run(after)[0] == 0
        assert digest_of_tree(self.site) == self.whole[after]
        assert {path.name for path in self.site.parent.iterdir()} == self.lies
        return hit

    def _look(self, before: str, number: int, hit: bool, renames: bool) -> None:
        old, new = before, self.whole[number]
        place = self.site
        if renames and not place.exists():
            place = swap.waiting(self.site)
            self.seen["between two renames"] += 1
        found = digest_of_tree(place)
        assert found in (old, new), "a mixture"
        assert hit or found == new
        litter = {path.name for path in self.site.parent.iterdir()} - self.lies
        self.seen[f"{'new' if found == new != old else 'old'} site"] += hit
        self.seen["a folder left beside it"] += bool(litter - {f".{self.site.name}.lock"})

    def _run(self, number: int) -> list[int]:
        self._started(number, 0)
        return self._ended()

    def _started(self, number: int, step: int, *, renames: bool = False) -> int:
        assert self.nest.stdin is not None
        self.nest.stdin.write(f"{number} {int(renames)} {step}\n")
        self.nest.stdin.flush()
        return int(self._line())

    def _ended(self) -> list[int]:
        return [int(word) for word in self._line().split()]

    def _line(self) -> str:
        assert self.nest.stdout is not None
        return self.nest.stdout.readline().strip()


@contextmanager
def killer(folder: Path, seed: int) -> Iterator[Killer]:
    """Give a killer of builds in a folder, ready to begin."""
    manuals = two_manuals(folder)
    target = folder / "published" / "site"
    command = [sys.executable, "-m", "tests.publish.nest", str(target), *map(str, manuals)]
    nest = subprocess.Popen(
        command, cwd=ROOT, text=True, stdin=subprocess.PIPE, stdout=subprocess.PIPE
    )
    try:
        yield Killer(target, nest, random.Random(seed))
    finally:
        nest.communicate(timeout=LONGEST_S)


def kill(folder: Path, wanted: int, seed: int) -> Counter[str]:
    """Kill so many builds; give what was seen of them."""
    with killer(folder, seed) as found:
        found.begin()
        hits = tries = 0
        while hits < wanted:
            tries += 1
            assert tries < 4 * wanted, "most builds end before they are killed"
            hits += found.kill_one(tries % 2, AIMS[tries % len(AIMS)])
        return found.seen
