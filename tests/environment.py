"""The environment in .venv: made once from the lock, made again when what it came from changes."""

from __future__ import annotations

import hashlib
import json
import os
import re
import subprocess
import sys
import tempfile
import tomllib
import venv
from concurrent.futures import ThreadPoolExecutor
from functools import partial
from importlib.util import find_spec
from pathlib import Path
from typing import NoReturn

ROOT = Path(__file__).resolve().parent.parent
FOLDER = ROOT / ".venv"
STAMP = FOLDER / "made-from"
BYTE_CODE = FOLDER / "byte-code"
LOCK = ROOT / "requirements.lock"
BENCH_LOCK = ROOT / "requirements-bench.lock"
PROJECT = ROOT / "pyproject.toml"

# The resolver that writes the lock; only `make lock` needs it.
RESOLVER = "uv==0.13.9"


def stop(*lines: str) -> NoReturn:
    """End with a word on what is missing and how to mend it."""
    for line in lines:
        print(f"fettlebook: {line}", file=sys.stderr)
    raise SystemExit(2)


def say(line: str) -> None:
    """Tell what is going on, at once."""
    print(line, flush=True)


def ready() -> Path:
    """Give the environment's Python, after making the environment if it is not up to date."""
    if not LOCK.is_file():
        stop("requirements.lock is missing; restore it, or make it with:  make lock")
    if not (STAMP.is_file() and STAMP.read_text() == _made_from() and _runs(_python_in(FOLDER))):
        _make()
    return _python_in(FOLDER)


def lock() -> None:
    """Write both locks anew: the newest versions that suit every Python and system.

    One version of each package serves all Pythons where one can ("fewest"), so that the same
    records give the same figures on each.
    """
    _refuse_bare_python()
    with tempfile.TemporaryDirectory() as folder:
        venv.create(folder, with_pip=True, symlinks=os.name != "nt")
        python = str(_python_in(Path(folder)))
        _pip(python, "install", RESOLVER)
        _compile(python, LOCK, PROJECT.name, "--extra", "test")
        _compile(python, BENCH_LOCK, "--group", "bench")
    say("the locks are up to date; read their changes before you commit them")


def rivals() -> None:
    """Install what the bench measures us against."""
    _pip(str(_python_in(FOLDER)), "install", "--no-deps", "--require-hashes", "-r", BENCH_LOCK.name)


def _compile(python: str, lock: Path, *what: str) -> None:
    subprocess.run(
        [
            python, "-m", "uv", "pip", "compile", *what,
            "--universal", "--python-version", "3.11", "--fork-strategy", "fewest",
            "--generate-hashes", "--upgrade", "--quiet",
            "--custom-compile-command", "make lock", "--output-file", lock.name,
        ],
        cwd=ROOT,
        check=True,
    )  # fmt: skip


def _make() -> None:
    _refuse_bare_python()
    version = ".".join(map(str, sys.version_info[:3]))
    say(f"making .venv with Python {version} from requirements.lock (a minute or so) ...")
    # From nothing, so that no package of an older lock stays behind.
    venv.create(FOLDER, clear=True, with_pip=True, symlinks=os.name != "nt")
    python = str(_python_in(FOLDER))
    _install_locked(python)
    _pip(python, "install", "--no-deps", "--no-build-isolation", "-e", ".")
    STAMP.write_text(_made_from())


def _install_locked(python: str) -> None:
    """Install what the lock names, a part in each of two processes: unpacking keeps a core busy."""
    pinned = re.findall(r"^[^\s#].*\n(?:[ \t].*\n)*", LOCK.read_text("utf-8"), re.MULTILINE)
    with tempfile.TemporaryDirectory() as folder, ThreadPoolExecutor() as both:
        parts = [Path(folder) / f"part-{number}.txt" for number in range(2)]
        for number, part in enumerate(parts):
            part.write_text("".join(pinned[number::2]), "utf-8")
        install = partial(_pip, python, "install", "--no-deps", "--require-hashes", "-r")
        list(both.map(install, parts))  # a fault of one is raised as its turn comes


def _pip(python: str, *arguments: str | Path) -> None:
    # Compiled as it is first used: most of what comes never is.
    usual = ("--no-compile", "--quiet", "--disable-pip-version-check")
    command = [python, "-m", "pip", *arguments, *usual]
    if subprocess.run(command, cwd=ROOT).returncode != 0:
        stop("pip could not install what is needed (see above); is there a network?")


def _made_from() -> str:
    """Give a digest of all that the environment depends on, the checkout's place included."""
    project = tomllib.loads(PROJECT.read_text(encoding="utf-8"))
    # The rest of the file sets up linters and tests, which read it afresh each time.
    parts = [project["build-system"], project["project"], project["tool"]["hatch"]]
    parts += [LOCK.read_text(encoding="utf-8"), sys.version, str(FOLDER)]
    return hashlib.sha256(json.dumps(parts).encode()).hexdigest()


def _python_in(folder: Path) -> Path:
    return folder / ("Scripts/python.exe" if os.name == "nt" else "bin/python")


def _runs(python: Path) -> bool:
    try:
        return subprocess.run([python, "-c", ""], capture_output=True).returncode == 0
    except OSError:
        return False


def _refuse_bare_python() -> None:
    """Stop where the system's Python comes without the parts that make an environment."""
    if find_spec("venv") and find_spec("ensurepip"):
        return
    version = f"{sys.version_info.major}.{sys.version_info.minor}"
    as_root = "" if hasattr(os, "geteuid") and os.geteuid() == 0 else "sudo "
    stop(
        f"this Python ({version}, {sys.executable}) lacks ensurepip, which an environment needs.",
        f"On Debian and Ubuntu:  {as_root}apt-get install python{version}-venv",
        "Or name another Python:  make site PYTHON=/path/to/python3.12",
    )
