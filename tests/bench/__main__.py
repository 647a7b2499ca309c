"""``python -m tests.bench``: what building costs, beside what one would pick instead.

Every size is built into a memory file system where there is one. Absolute times are shown and
never asserted; the ratios are what counts.
"""

from __future__ import annotations

import argparse
import os
import shutil
import sys
import tempfile
import time
from collections import defaultdict
from pathlib import Path

from generator import layout
from tests.bench import report, rivals
from tests.bench.grow import grow
from tests.bench.measure import Cost
from tests.bench.ours import Manual
from tests.demonstration import ROOT, copy_manual
from tests.figures import samples

MEMORY = Path("/dev/shm")
SIZES = (200, 1000, 5000, 10000)
FIGURES = 40
MOST_BY_HOST = 1000
"""Records that MkDocs's own server, which makes every page anew, is measured on."""


def main() -> int:
    """Measure, print as it goes, and write the table and the picture."""
    parser = argparse.ArgumentParser(prog="make bench", description=__doc__)
    parser.add_argument("--sizes", type=int, nargs="+", default=SIZES, metavar="RECORDS")
    parser.add_argument("--out", type=Path, default=ROOT / layout.DOCS, metavar="FOLDER")
    asked = parser.parse_args()
    in_memory = os.access(MEMORY, os.W_OK)
    place = "a memory file system" if in_memory else "the disk, there being no memory file system"
    print(f"building into {place}", flush=True)
    costs: dict[str, dict[int, Cost]] = defaultdict(dict)
    pages: dict[int, int] = {}
    with tempfile.TemporaryDirectory(dir=MEMORY if in_memory else None, prefix="bench-") as name:
        for size in asked.sizes:
            records, found = _measured(Path(name), size, costs)
            pages[records] = found
    asked.out.mkdir(parents=True, exist_ok=True)
    figure_ms = 1000 * figures_s() / FIGURES
    table = report.text(costs, pages, place, rivals.PAGE_BYTES, figure_ms)
    (asked.out / "bench.md").write_text(table, encoding="utf-8")
    report.picture(costs, asked.out / "bench.svg")
    print(f"a figure takes {figure_ms:.1f} ms of one processor")
    print(f"see {asked.out / 'bench.md'}")
    return 0


def _measured(place: Path, size: int, costs: dict[str, dict[int, Cost]]) -> tuple[int, int]:
    """Measure everything at one size; give the records and the pages there are."""
    folder = place / "manual"
    copy_manual(folder)
    shutil.rmtree(folder / layout.RECORDS)
    records = grow(folder / layout.RECORDS, size)
    print(f"{records} records", flush=True)
    manual, site = Manual(folder), folder / layout.SITE

    def note(what: str, cost: Cost) -> None:
        costs[what][records] = cost
        print(f"  {what:38}{cost.wall_s:9.2f} s {cost.cpu_s:9.2f} s of processor "
              f"{cost.peak_mib:6.0f} MiB", flush=True)  # fmt: skip

    for what, cost in manual.costs():
        note(what, cost)
    pages = sum(1 for _ in site.rglob("*.html"))
    note("save to refresh", manual.refresh())
    if size <= MOST_BY_HOST:
        note("save to refresh under MkDocs", manual.refresh(by_host=True))
    note("composing the YAML", rivals.compose(folder / layout.RECORDS))
    note("writing the files", rivals.write(site, place / "copy"))
    note("one page with Material", rivals.material(place / "material", 1))
    note("MkDocs with Material", rivals.material(place / "material", pages))
    note("Hugo", rivals.hugo(place / "hugo", pages))
    for used in ("manual", "material", "hugo"):
        shutil.rmtree(place / used)
    return records, pages


def figures_s() -> float:
    """Give the seconds of processor that some figures take, one kind after another."""
    kinds = (samples.winding, samples.pickup, samples.hall, samples.doubt)
    for draw in kinds:
        draw("first")
    began = time.process_time()
    for number in range(FIGURES):
        kinds[number % len(kinds)](f"figure-{number}")
    return time.process_time() - began


if __name__ == "__main__":
    sys.exit(main())
