"""One manual built on ten different days, in ten places: one site, to the byte."""

from __future__ import annotations

import os
import random
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.demonstration import ROOT, copy_manual
from tests.publish.tree import digest_of_tree

ZONES = ("UTC", "Pacific/Kiritimati", "America/St_Johns", "Asia/Kathmandu", "Antarctica/Troll")
TONGUES = ("C", "C.UTF-8", "POSIX")


def in_another_order(folder: Path, chance: random.Random) -> None:
    """Write the files of a folder anew in a random order, on random days."""
    files = [(path, path.read_bytes()) for path in folder.rglob("*") if path.is_file()]
    chance.shuffle(files)
    shutil.rmtree(folder)
    for path, content in files:
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)
        day = chance.randrange(10**9, 2 * 10**9)
        os.utime(path, (day, day))


@pytest.mark.soak
def test_ten_builds_give_one_digest(tmp_path: Path) -> None:
    """Other hash seeds, time zones, locales, folders, file orders and days; a cache as well."""
    chance = random.Random(3)
    digests = []
    for number in range(10):
        folder = tmp_path / ("a" * (1 + number) + " b")
        copy_manual(folder)
        in_another_order(folder / "kb_source", chance)
        in_another_order(folder / "docs", chance)
        more = {
            "PYTHONHASHSEED": str(number), "PYTHONPATH": str(ROOT),
            "TZ": ZONES[number % len(ZONES)], "LC_ALL": TONGUES[number % len(TONGUES)],
        }  # fmt: skip
        command = [sys.executable, "-m", "generator", "-q", "-C", str(folder), "build"]
        for _ in range(1 + number % 2):  # every second one again, over its own cache
            subprocess.run(command, env={**os.environ, **more}, check=True, capture_output=True)
            digests.append(digest_of_tree(folder / "site"))
            os.utime(folder / "mkdocs.yml")
    assert len(digests) == 15 and len(set(digests)) == 1, digests
