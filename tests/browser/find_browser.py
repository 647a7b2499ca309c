"""A Chromium to test with: one that is there, or one that is fetched. Never none.

``python -m tests.browser.find_browser`` prints its path.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from functools import cache
from pathlib import Path

# The first is the same Chromium without a window: a page costs it half the time.
SHELL = "chromium-headless-shell"
NAMES = (SHELL, "chromium", "chromium-browser", "google-chrome", "chrome")


class NoBrowser(RuntimeError):
    """There is no Chromium and none could be had; the tests that need one fail."""


@cache
def find_browser() -> str:
    """Give the path of a Chromium that runs, fetching one where there is none.

    Raises
    ------
    NoBrowser
        If none is there and none could be installed; the message says what to do.
    """
    found = next(_present(), "")
    if Path(found).name != SHELL and _may_use_apt():
        _say("installing Debian's Chromium without a window:")
        _call("apt-get", "update", "-qq")
        _call("apt-get", "install", "-y", "-qq", "--no-install-recommends", SHELL)
        found = next(_present(), "")
    if not found and _may_use_apt():  # a release from before there was one
        _call("apt-get", "install", "-y", "-qq", "--no-install-recommends", "chromium")
        found = next(_present(), "")
    if not found:
        _say("no Chromium here; fetching the one that Playwright offers:")
        _call(sys.executable, "-m", "playwright", "install", "chromium")
        found = next(_present(), "")
    if not found:
        raise NoBrowser(
            "the browser tests need Chromium or Chrome, and none was found or could be installed. "
            f"Put one of {', '.join(NAMES)} on the PATH; on Debian and Ubuntu: "
            "sudo apt-get install chromium"
        )
    return found


def _present() -> Iterator[str]:
    """Give each browser that is there and runs: a name on the PATH may be an empty wrapper."""
    for name in NAMES:
        path = shutil.which(name)
        if path and _runs(path):
            yield path
    path = _playwrights_own()
    if _runs(path):
        yield path


def _playwrights_own() -> str:
    # Imported late: the rest works, and can complain, without it.
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        return playwright.chromium.executable_path


def _runs(path: str) -> bool:
    try:
        # Chrome on Windows opens a window for --version; there, being a file has to do.
        if os.name == "nt":
            return os.path.isfile(path)
        return subprocess.run([path, "--version"], capture_output=True, timeout=30).returncode == 0
    except (OSError, subprocess.TimeoutExpired):
        return False


def _may_use_apt() -> bool:
    return hasattr(os, "geteuid") and os.geteuid() == 0 and shutil.which("apt-get") is not None


def _call(*command: str) -> None:
    """Run an installer; what it could not do shows when we look again."""
    environment = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    subprocess.run(command, env=environment, stdin=subprocess.DEVNULL, stdout=sys.stderr)


def _say(line: str) -> None:
    print(line, file=sys.stderr, flush=True)


if __name__ == "__main__":
    try:
        print(find_browser())
    except NoBrowser as fault:
        sys.exit(f"fettlebook: {fault}")
