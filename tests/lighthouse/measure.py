"""What Lighthouse says of a page on a phone, and the account of several runs."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
from collections.abc import Mapping, Sequence
from pathlib import Path
from statistics import median
from typing import Any

from tests.browser.conftest import FLAGS
from tests.browser.find_browser import find_browser
from tests.environment import ROOT, say, stop

HERE = Path(__file__).parent
FOLDER = ROOT / ".lighthouse"
COMMAND = Path("node_modules") / "lighthouse" / "cli" / "index.js"
CATEGORIES = ("performance", "accessibility", "best-practices", "seo")
WANTED = 100.0
LONGEST_S = 180.0

Scores = dict[str, float]
"""Category to its score, 0 to 100."""


def install() -> None:
    """Bring the version in the lock, each package with its hash, and run no script of theirs."""
    for name in ("node", "npm"):
        if shutil.which(name) is None:
            stop(f"Lighthouse needs {name}, and there is none on the PATH (Node 18.16 or newer).")
    FOLDER.mkdir(exist_ok=True)
    for name in ("package.json", "package-lock.json"):
        shutil.copy2(HERE / name, FOLDER)
    usual = ("--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=error")
    if subprocess.run(["npm", "ci", *usual], cwd=FOLDER).returncode != 0:
        stop("npm could not install what is needed (see above); is there a network?")


def audited(address: str) -> dict[str, Any]:
    """Look at one page as on a phone of the middle class with a slow network.

    Parameters
    ----------
    address : str
        Where the page is served.

    Returns
    -------
    dict
        The report as Lighthouse writes it.
    """
    ran = subprocess.run(
        [
            "node", str(COMMAND), address, "--quiet", "--output=json", "--output-path=stdout",
            f"--only-categories={','.join(CATEGORIES)}", "--no-enable-error-reporting",
            f"--chrome-flags={' '.join(FLAGS)}",
        ],
        cwd=FOLDER,
        env={**os.environ, "CHROME_PATH": find_browser()},
        capture_output=True,
        text=True,
        timeout=LONGEST_S,
    )  # fmt: skip
    if ran.returncode != 0:
        stop(f"Lighthouse gave up at {address}:", ran.stderr.strip())
    report: dict[str, Any] = json.loads(ran.stdout)
    return report


def scores(report: dict[str, Any]) -> Scores:
    """Give the score of each category, nought where Lighthouse has none."""
    found = report["categories"]
    return {name: round(100 * (found[name]["score"] or 0)) for name in CATEGORIES}


def losses(report: dict[str, Any]) -> list[str]:
    """Give what costs a page points: the audit, what it found, and the first places."""
    audits, found = report["audits"], []
    for name in CATEGORIES:
        for part in report["categories"][name]["auditRefs"]:
            audit = audits[part["id"]]
            if part["weight"] and audit["score"] is not None and audit["score"] < 1:
                shown = audit.get("displayValue", "")
                found.append(f"{name}: {part['id']} {audit['score']:.2f} {shown}".rstrip())
    return found


def account(runs: Mapping[str, Sequence[Scores]]) -> tuple[list[str], bool]:
    """Set the medians of each page's runs in a table.

    Parameters
    ----------
    runs : mapping
        Page to the scores of each run.

    Returns
    -------
    lines : list of str
        The table, with the least and the most where runs differ.
    passed : bool
        Whether every median is 100.
    """
    width = max(map(len, runs))
    lines = [f"{'page':{width}}" + "".join(f"{name:>20}" for name in CATEGORIES)]
    passed = bool(runs)
    for page, each in runs.items():
        line = f"{page:{width}}"
        for name in CATEGORIES:
            values = [one[name] for one in each]
            middle = median(values)
            passed = passed and middle >= WANTED
            span = "" if min(values) == max(values) else f" ({min(values):g} to {max(values):g})"
            line += f"{f'{middle:g}{span}':>20}"
        lines.append(line)
    return lines, passed


def conditions() -> str:
    """Say what else the machine had to do, which the score for speed hangs on."""
    load = os.getloadavg()[0] if hasattr(os, "getloadavg") else float("nan")
    return f"{os.cpu_count()} processors, load {load:.1f}"


def tell(lines: Sequence[str]) -> None:
    """Print lines, at once."""
    say("\n".join(lines))
