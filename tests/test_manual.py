"""What is kept from one run to the next never shows: with it or without it, the manual is one."""

from __future__ import annotations

import random
import shutil
from pathlib import Path

import pytest

from generator import manual, site
from generator.problems import Problem, has_errors
from tests.demonstration import ROOT

CACHE = manual.CACHE
SMALLEST = ROOT / "tests" / "corpus" / "manual"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Give a copy of the smallest manual there is, in which every kind of record occurs."""
    return Path(shutil.copytree(SMALLEST, tmp_path / "manual"))


def whole(folder: Path, cache: Path | None) -> tuple[object, ...]:
    """Give all that a reader and an author get to see: findings, pages, files."""
    read = manual.read(folder, None, cache)
    if read.kb is None or has_errors(read.problems):
        return (read.problems,)
    made = site.make(read.kb, read.problems)
    read.keep()
    return read.problems, made.pages, made.files


def edit(folder: Path, chance: random.Random, spare: dict[Path, bytes]) -> None:
    """Change the records somehow, as an author would or as an accident might."""
    paths = sorted((folder / manual.RECORDS).rglob("*.yml"))
    path = chance.choice(paths)
    text = path.read_text("utf-8")
    match chance.randrange(6):
        case 0:  # a figure
            digits = [at for at, c in enumerate(text) if c in "123456789"]
            if digits:
                at = chance.choice(digits)
                path.write_text(text[:at] + chance.choice("123456789") + text[at + 1 :], "utf-8")
        case 1:  # a word of a title
            path.write_text(text.replace("title: ", "title: Other ", 1), "utf-8")
        case 2:  # a line goes
            lines = text.splitlines(keepends=True)
            del lines[chance.randrange(len(lines))]
            path.write_text("".join(lines), "utf-8")
        case 3:  # a record goes
            if path.name != "settings.yml":
                spare[path] = path.read_bytes()
                path.unlink()
        case 4:  # one comes back
            if spare:
                back = chance.choice(sorted(spare))
                back.write_bytes(spare.pop(back))
        case 5:  # a record more
            path.with_name(f"copy-{chance.randrange(9)}.yml").write_bytes(path.read_bytes())


@pytest.mark.parametrize("seed", range(4))
def test_after_any_edits_it_is_what_a_cold_run_gives(folder: Path, seed: int) -> None:
    """Random edits, accidents and repairs in a row: each run with the cache equals one without."""
    chance = random.Random(seed)
    spare: dict[Path, bytes] = {}
    good = {p: p.read_bytes() for p in (folder / manual.RECORDS).rglob("*.yml")}
    assert whole(folder, folder / CACHE) == whole(folder, None)
    for turn in range(8):
        edit(folder, chance, spare)
        assert whole(folder, folder / CACHE) == whole(folder, None), turn
        if chance.random() < 0.5:  # put right, so that pages are made again and not findings alone
            for path in set((folder / manual.RECORDS).rglob("*.yml")) - good.keys():
                path.unlink()
            for path, content in good.items():
                path.write_bytes(content)
            spare.clear()
            assert whole(folder, folder / CACHE) == whole(folder, None), turn


@pytest.mark.parametrize(
    ("file", "old", "new"),
    [
        ("specs/inductive-winding.yml", "860 ohm", "870 ohm"),
        ("components/undertray.yml", "energies: [sharp]", "energies: [hot_surface]"),
        ("components/undertray.yml", "title: ", "title: Lower "),
        ("terms/open-circuit.yml", "title: ", "title: Wide "),
        ("tools/multimeter.yml", "title: ", "title: Good "),
        ("symptoms/cranks-no-start.yml", "weight: ", "weight: 1"),
        ("procedures/repair-wiring.yml", "title: ", "title: Better "),
        ("hazards/wet-floor.yml", "hazard: ", "hazard: Very "),
        ("people/technician.yml", "title: ", "title: Senior "),
        ("settings.yml", "title: ", "title: Another "),
    ],
)
def test_an_edit_that_many_pages_lean_on_reaches_them(
    folder: Path, file: str, old: str, new: str
) -> None:
    """A value, a part's energies, a term, a rule: no page is left as it was before."""
    before = whole(folder, folder / CACHE)
    path = folder / manual.RECORDS / file
    text = path.read_text("utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), "utf-8")
    after = whole(folder, folder / CACHE)
    assert after == whole(folder, None)
    assert after != before


@pytest.mark.parametrize("seed", range(50))
def test_a_damaged_cache_is_as_good_as_none(
    tmp_path_factory: pytest.TempPathFactory, seed: int
) -> None:
    """Cut, spoilt, swapped, emptied, made a folder or another user's: it is noticed every time."""
    folder, clean = _kept(tmp_path_factory)
    cache = folder.with_name(f"cache-{seed}")
    shutil.copytree(folder / CACHE, cache)
    chance = random.Random(seed)
    files = sorted(path for path in cache.rglob("*") if path.is_file() and path.name[0] != ".")
    path = files[seed % len(files)]
    content = path.read_bytes()
    match seed // len(files) % 6:
        case 0:
            path.write_bytes(content[: chance.randrange(len(content))])
        case 1:
            at = chance.randrange(len(content))
            path.write_bytes(content[:at] + bytes([content[at] ^ 1 << chance.randrange(8)])
                             + content[at + 1 :])  # fmt: skip
        case 2:
            path.write_bytes(files[(seed + 1) % len(files)].read_bytes())
        case 3:
            path.write_bytes(b"" if chance.random() < 0.5 else chance.randbytes(400))
        case 4:
            path.unlink()
            path.mkdir()
        case 5:
            path.write_bytes(content + chance.randbytes(1 + seed))
    assert manual.read(folder, None, cache).problems == clean


_KEPT: dict[str, tuple[Path, list[Problem]]] = {}


def _kept(factory: pytest.TempPathFactory) -> tuple[Path, list[Problem]]:
    """Give a manual with a finding and a full cache, made once."""
    if not _KEPT:
        folder = factory.mktemp("kept") / "manual"
        shutil.copytree(SMALLEST, folder)
        (folder / manual.RECORDS / "tools/hand-tools.yml").write_bytes(
            (folder / manual.RECORDS / "tools/hand-tools.yml").read_bytes() + b"\nodd: 1\n"
        )
        (folder / manual.RECORDS / "tools/hand-tools.yml").rename(folder / "spoilt.yml")
        clean = manual.read(folder, None, folder / CACHE).problems
        assert clean
        _KEPT["one"] = folder, clean
    return _KEPT["one"]


def test_what_a_killed_run_left_in_the_cache_goes(folder: Path) -> None:
    """A half-written file is gone after the next run, and so nothing piles up."""
    manual.read(folder, None, folder / CACHE)
    for name in (".records.half", ".results.half"):
        (folder / CACHE / name).write_bytes(b"half")
    manual.read(folder, None, folder / CACHE)
    assert not list((folder / CACHE).glob(".*.half"))
