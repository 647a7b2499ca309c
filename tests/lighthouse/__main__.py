"""``python -m tests.lighthouse``: what Lighthouse gives four pages of the manual on a phone.

The small manual is built and served on this machine, packed as any web host does. Each page is
looked at several times, in turn with the others, and the median counts. Speed is worked out for a
phone of the middle class and a slow network from what this machine did, so a busy one gives less.
"""

from __future__ import annotations

import argparse
import subprocess
import sys
import tempfile
from collections import defaultdict
from pathlib import Path

from tests.browser.static_server import StaticServer
from tests.demonstration import ROOT, copy_manual
from tests.environment import say
from tests.lighthouse.measure import (
    Scores,
    account,
    audited,
    conditions,
    install,
    losses,
    scores,
    tell,
)

PAGES = (
    "index.html",
    "symptoms/cuts-out-hot.html",
    "tests/winding-resistance.html",
    "replacements/replace-crank-sensor-inductive.html",
)
RUNS = 5


def main() -> int:
    """Look at the pages, print the medians and what cost points; fail below 100."""
    parser = argparse.ArgumentParser(prog="make lighthouse", description=__doc__)
    parser.add_argument("--site", type=Path, metavar="FOLDER", help="a built site to look at")
    asked = parser.parse_args()
    install()
    with tempfile.TemporaryDirectory() as name:
        site = asked.site or built(Path(name) / "manual")
        server = StaticServer(site, packed=True)
        server.start()
        runs: dict[str, list[Scores]] = defaultdict(list)
        lost: dict[str, list[str]] = {}
        for number in range(1, RUNS + 1):
            for page in PAGES:
                report = audited(server.url(page))
                runs[page].append(scores(report))
                lost[page] = losses(report)
            say(f"run {number} of {RUNS}: {conditions()}")
        server.stop()
    lines, passed = account(runs)
    causes = [f"{page}: {cause}" for page, each in lost.items() for cause in each]
    tell(["", f"median of {RUNS}, the least and the most beside it", *lines])
    tell(["", "what cost points in the last run", *(causes or ["nothing"])])
    return 0 if passed else 1


def built(folder: Path) -> Path:
    """Build the small manual; give its site."""
    copy_manual(folder)
    command = [sys.executable, "-m", "generator", "-C", str(folder), "build"]
    subprocess.run(command, cwd=ROOT, check=True, stdout=subprocess.DEVNULL)
    return folder / "site"


if __name__ == "__main__":
    sys.exit(main())
