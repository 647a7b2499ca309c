"""Damage to what is kept between builds, and a manual whose builds must not be led astray by it."""

from __future__ import annotations

import os
import pickle
import random
import shutil
from collections import Counter
from collections.abc import Callable
from pathlib import Path

from tests.cli.asking import ask, replace_in
from tests.publish.kills import two_manuals
from tests.publish.tree import digest_of_tree

KEPT = ("records", "results", "site")
"""The files of the cache: what was read, what was computed, what was published."""

TITLES = ("title: ", "title: Other ")
"""An edit of a record, and backwards its undoing."""

Damage = Callable[[Path, random.Random], None]


def _cut(path: Path, chance: random.Random) -> None:
    path.write_bytes(path.read_bytes()[: chance.randrange(path.stat().st_size)])


def _flip(path: Path, chance: random.Random) -> None:
    content = bytearray(path.read_bytes())
    content[chance.randrange(len(content))] ^= 1 << chance.randrange(8)
    path.write_bytes(content)


def _lengthen(path: Path, chance: random.Random) -> None:
    path.write_bytes(path.read_bytes() + chance.randbytes(chance.randrange(1, 99)))


def _zeros(path: Path, chance: random.Random) -> None:
    content = bytearray(path.read_bytes())
    start = chance.randrange(len(content))
    content[start : start + 4096] = bytes(len(content[start : start + 4096]))
    path.write_bytes(content)


def _empty(path: Path, _chance: random.Random) -> None:
    path.write_bytes(b"")


def _gone(path: Path, _chance: random.Random) -> None:
    path.unlink()


def _noise(path: Path, chance: random.Random) -> None:
    path.write_bytes(chance.randbytes(chance.choice([1, 100, 100_000])))


def _pickled(path: Path, _chance: random.Random) -> None:
    path.write_bytes(pickle.dumps({"files": {"index.html": "0"}}))


def _folder(path: Path, _chance: random.Random) -> None:
    path.unlink()
    path.mkdir()
    (path / "note.txt").write_text("somebody's own", encoding="utf-8")


def _dangling(path: Path, _chance: random.Random) -> None:
    path.unlink()
    path.symlink_to("nowhere")


def _another(path: Path, chance: random.Random) -> None:
    shutil.copy(path.with_name(chance.choice([one for one in KEPT if one != path.name])), path)


def _of_the_other_manual(path: Path, _chance: random.Random) -> None:
    shutil.copy(path.parents[2] / "other" / path.parent.name / path.name, path)


def _older(path: Path, chance: random.Random) -> None:
    day = chance.randrange(1, 2_000_000_000)
    os.utime(path, (day, day))


DAMAGES: tuple[Damage, ...] = (
    _cut, _flip, _lengthen, _zeros, _empty, _gone, _noise, _pickled, _folder, _dangling, _another,
    _of_the_other_manual, _older,
)  # fmt: skip


def _spoil_the_site(site: Path, chance: random.Random) -> str:
    """Change, lengthen or take away a published file, as a hand or a failing disk may."""
    pages = sorted(path for path in site.rglob("*") if path.is_file())
    path = chance.choice(pages)
    if chance.random() < 0.3:
        path.unlink()
        return "a published file gone"
    content = bytearray(path.read_bytes() or b"x")
    content[chance.randrange(len(content))] ^= 1
    path.unlink()  # never in place: a copy may share it
    path.write_bytes(content)
    return "a published file changed"


def damage(folder: Path, times: int, seed: int) -> Counter[str]:
    """Damage the cache so many times and build after each; give which damages there were.

    After each the site must be to the byte what it is without any cache, for the manual as it was
    or, every second time, as it was edited meanwhile.
    """
    manual, other = two_manuals(folder)
    chance = random.Random(seed)
    assert ask("build", manual=other).status == 0
    name = manual / "kb_source" / "components" / "undertray.yml"
    whole: dict[bool, str] = {}
    for edited in (True, False):
        replace_in(name, *(TITLES if edited else TITLES[::-1]))
        shutil.rmtree(manual / ".fettlebook", ignore_errors=True)
        shutil.rmtree(manual / "site", ignore_errors=True)
        assert ask("build", manual=manual).status == 0
        whole[edited] = digest_of_tree(manual / "site")
    assert whole[True] != whole[False]
    seen: Counter[str] = Counter()
    edited = False
    for number in range(times):
        kept = manual / ".fettlebook" / KEPT[number % len(KEPT)]
        harm = DAMAGES[number % len(DAMAGES)]
        harm(kept, chance)
        seen[f"{kept.name}{harm.__name__}"] += 1
        if number % 5 == 4:
            seen[_spoil_the_site(manual / "site", chance)] += 1
        if number % 2:
            replace_in(name, *(TITLES[::-1] if edited else TITLES))
            edited = not edited
        answer = ask("build", manual=manual)
        told = f"{number}: {kept.name}{harm.__name__}"
        assert answer.status == 0, f"{told}\n{answer.err}"
        assert digest_of_tree(manual / "site") == whole[edited], told
        if kept.is_dir():
            assert (kept / "note.txt").read_text("utf-8") == "somebody's own", told
            shutil.rmtree(kept)
    return seen
