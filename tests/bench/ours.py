"""What our own commands cost on a manual that has been grown."""

from __future__ import annotations

import http.client
import os
import shutil
import signal
import socket
import subprocess
import time
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

from generator import layout
from tests.bench.measure import Cost, Failed, python, run
from tests.cli.asking import replace_in
from tests.demonstration import ROOT

USED_OFTEN = "specs/inductive-winding.yml", "860 ohm", "870 ohm", "winding-resistance"
LEAF = "tests/record-until-it-shows.yml", "title: ", "title: Well, ", "record-until-it-shows"
"""A record, what an edit of it changes, and a test page that then shows it."""

PATIENCE_S = 900.0


class Manual:
    """A grown manual.

    Parameters
    ----------
    folder : Path
        Its folder; the environment's caches are laid in it, so that no run knows of another.
    """

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.env = {"XDG_CACHE_HOME": str(folder / "own")}

    def ask(self, *words: str) -> Cost:
        """Run one of our commands."""
        command = python("-m", "generator", "-q", "-C", str(self.folder), *words)
        return run(command, self.folder, self.env)

    def forget(self, *names: str) -> None:
        """Take away what is kept: everything, or these files of it."""
        kept = self.folder / layout.CACHE
        for path in [kept / name for name in names] or [kept]:
            shutil.rmtree(path, ignore_errors=True) if path.is_dir() else path.unlink(True)

    def costs(self) -> Iterator[tuple[str, Cost]]:
        """Measure every command, in an order in which each finds what it is to find."""
        self.forget()
        yield "check, cold", self.ask("check")
        yield "check, nothing changed", self.ask("check")
        self.forget()
        yield "build, cold", self.ask("build")
        yield "build, nothing changed", self.ask("build")
        self.edit(USED_OFTEN)
        yield "build, a value that many pages show", self.ask("build")
        self.edit(LEAF)
        yield "build, a leaf", self.ask("build")
        shutil.rmtree(self.folder / layout.SITE)
        self.forget("site")
        yield "build, all but the pages kept", self.ask("build")

    def edit(self, edit: tuple[str, str, str, str]) -> None:
        """Change a record."""
        name, old, new, _page = edit
        replace_in(self.folder / layout.RECORDS / name, old, new)

    def refresh(self, *, by_host: bool = False) -> Cost:
        """Serve the manual, by our own command or by MkDocs's, save a record and wait for its page.

        Memory and processor are unknown.
        """
        with closing(socket.socket()) as one:
            one.bind(("127.0.0.1", 0))
            port = one.getsockname()[1]
        name, old, new, test = USED_OFTEN
        path = self.folder / layout.RECORDS / name
        text = path.read_text("utf-8")
        address = f"127.0.0.1:{port}"
        command = (
            python("-m", "mkdocs", "serve", "-q", "-f", str(self.folder / layout.SETTINGS), "-a")
            if by_host
            else python("-m", "generator", "-q", "-C", str(self.folder), "serve", "--address")
        )
        with (self.folder / "log").open("wb") as log:
            server = subprocess.Popen(
                [*command, address], cwd=ROOT, stdout=log, stderr=log,
                env={**os.environ, **self.env},
            )  # fmt: skip
        try:
            _wait(port, f"/tests/{test}.html", "")
            path.write_text(text.replace(new, "890 ohm").replace(old, "890 ohm"), "utf-8")
            began = time.monotonic()
            _wait(port, f"/tests/{test}.html", "890 ohm")
            return Cost(time.monotonic() - began, 0, 0)
        finally:
            path.write_text(text, "utf-8")
            server.send_signal(signal.SIGTERM)
            server.wait(60)


def _wait(port: int, address: str, text: str) -> None:
    end = time.monotonic() + PATIENCE_S
    while time.monotonic() < end:
        try:
            with closing(http.client.HTTPConnection("127.0.0.1", port, timeout=60)) as server:
                server.request("GET", address)
                answer = server.getresponse()
                if answer.status == 200 and text in answer.read().decode():
                    return
        except (OSError, http.client.HTTPException):
            pass
        time.sleep(0.05)
    raise Failed(f"{address} never came to show {text!r}")
