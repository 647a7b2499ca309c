"""A disk that is full, and one that may only be read: the old site stands, the next build is whole.

The disk is a small one in memory, mounted for these processes alone (unshare and mount, of
util-linux), so nothing else on the machine can be filled.
"""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from tests.demonstration import ROOT
from tests.publish.kills import two_manuals
from tests.publish.tree import digest_of_tree

# python, the disk, the two manuals, where to put what was seen, and the trouble.
STORY = """
build() { "$1" -m generator -q -C "$2" build --site-dir "$3/site"; }
mount -t tmpfs -o size=64m none "$2"
build "$1" "$3" "$2"
cp -r "$2/site" "$5/old"
case "$6" in
  full) mount -o "remount,size=$(( $(du -sk "$2" | cut -f1) + 120 ))k" "$2" ;;
  read-only) mount -o remount,ro "$2" ;;
esac
if build "$1" "$4" "$2" 2> "$5/said"; then echo "the second build went through" >&2; exit 1; fi
cp -r "$2/site" "$5/after"
ls -A "$2" > "$5/beside"
mount -o remount,rw,size=64m "$2"
build "$1" "$4" "$2"
cp -r "$2/site" "$5/new"
ls -A "$2" > "$5/beside-in-the-end"
"""


@pytest.mark.soak
@pytest.mark.parametrize(
    ("trouble", "said"), [("full", "No space left"), ("read-only", "Read-only file system")]
)
def test_the_old_site_stands_and_the_next_build_is_whole(
    trouble: str, said: str, tmp_path: Path
) -> None:
    """The fault is told in a line, the site is the old one to the byte, nothing is left over."""
    manuals = two_manuals(tmp_path)
    disk, seen = tmp_path / "disk", tmp_path / "seen"
    disk.mkdir()
    seen.mkdir()
    words = [sys.executable, disk, *manuals, seen, trouble]
    ran = subprocess.run(
        ["unshare", "--map-root-user", "--mount", "sh", "-eu", "-c", STORY, "sh", *map(str, words)],
        cwd=ROOT, capture_output=True, text=True, timeout=120,
    )  # fmt: skip
    assert ran.returncode == 0, ran.stderr
    told = (seen / "said").read_text("utf-8")
    assert said in told and "Traceback" not in told
    assert digest_of_tree(seen / "after") == digest_of_tree(seen / "old")
    assert digest_of_tree(seen / "new") != digest_of_tree(seen / "old")
    assert (seen / "beside").read_text().split() in (["site"], [".site.lock", "site"])
    assert (seen / "beside-in-the-end").read_text().split() == ["site"]
