"""serve: a saved record refreshes the page; a bad one leaves the last good pages up."""

from __future__ import annotations

import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from tests.cli.asking import replace_in
from tests.demonstration import ROOT, SMALLEST_RECORDS, copy_manual

PATIENCE_S = 60.0
PAGE = "tests/winding-resistance.html"


def free_port() -> int:
    """Give a port nobody listens on."""
    with socket.socket() as one:
        one.bind(("127.0.0.1", 0))
        return int(one.getsockname()[1])


@pytest.fixture(params=["fettlebook", "mkdocs"])
def served(
    request: pytest.FixtureRequest, tmp_path: Path
) -> Iterator[tuple[Path, str]]:
    """Serve the smallest manual, by our command or by the host's; give folder and address."""
    folder = tmp_path / "manual"
    copy_manual(folder, SMALLEST_RECORDS)
    address = f"127.0.0.1:{free_port()}"
    command = {
        "fettlebook": ["-m", "generator", "-C", str(folder), "serve", "--address", address],
        "mkdocs": ["-m", "mkdocs", "serve", "-a", address, "-f", str(folder / "mkdocs.yml")],
    }[request.param]
    log = (tmp_path / "log").open("w")
    process = subprocess.Popen([sys.executable, *command], cwd=ROOT, stdout=log, stderr=log)
    try:
        yield folder, f"http://{address}/{PAGE}"
    finally:
        process.terminate()
        process.wait(20)
        log.close()


def page(address: str) -> str:
    """Give a page's text, "" while nobody answers."""
    try:
        with urllib.request.urlopen(address, timeout=5) as answer:
            return str(answer.read().decode())
    except (urllib.error.URLError, ConnectionError, TimeoutError):
        return ""


def wait_for(address: str, holds: Callable[[str], bool]) -> str:
    """Give the page once something holds of it; fail when patience ends."""
    end = time.monotonic() + PATIENCE_S
    text = ""
    while time.monotonic() < end:
        text = page(address)
        if text and holds(text):
            return text
        time.sleep(0.3)
    pytest.fail(f"the page never came to hold: {text[:2000]}")


def test_saving_refreshes_and_a_fault_keeps_the_last_good_page(served: tuple[Path, str]) -> None:
    """Shows the whole round: served, edited, spoilt with the finding on top, and mended."""
    folder, address = served
    spec = folder / "kb_source" / "specs" / "inductive-winding.yml"
    wait_for(address, lambda text: "860 ohm" in text)
    replace_in(spec, "860 ohm", "870 ohm")
    wait_for(address, lambda text: "870 ohm" in text and "860 ohm" not in text)
    replace_in(spec, "870 ohm", "870 ohms")
    text = wait_for(address, lambda text: "inductive-winding.yml" in text)
    assert "870 ohm" in text, "the last good page is still there"
    replace_in(spec, "870 ohms", "880 ohm")
    text = wait_for(address, lambda text: "880 ohm" in text)
    assert "inductive-winding.yml" not in text, "the findings are gone with the fault"
