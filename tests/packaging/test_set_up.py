"""Setting up: the right Python is chosen, and a bare one is told what to install."""

from __future__ import annotations

import os
import shlex
import subprocess
import sys
from pathlib import Path

import pytest

from tests.demonstration import ROOT

CHOOSER = ROOT / "tests" / "python.sh"
# The chooser's own needs; everything else it sees is planted.
SHELL = "/bin/sh"


def plant(folder: Path, name: str, body: str) -> None:
    """Put a command on the path-to-be."""
    path = folder / name
    path.write_text(f"#!{SHELL}\n{body}\n", encoding="utf-8")
    path.chmod(0o755)


def real(before: str = "pass") -> str:
    """Give a command that is this Python, after some code of its own ran first."""
    # Two things are asked of it: code (-c), and a script with its arguments.
    code = f"{before}; import sys; exec(sys.argv.pop(1))"
    script = f"{before}; import runpy, sys; del sys.argv[0]; runpy.run_path(sys.argv[0], "
    script += "run_name='__main__')"
    python = shlex.quote(sys.executable)
    return (
        f'if [ "$1" = -c ]; then shift; exec {python} -c {shlex.quote(code)} "$@"; fi\n'
        f'exec {python} -c {shlex.quote(script)} "$@"'
    )


# As on a Debian without its venv package; None in sys.modules is what a missing module looks like.
BARE = "import importlib.util as u, sys; f = u.find_spec; "
BARE += "u.find_spec = lambda n, p=None: None if n == 'ensurepip' else f(n, p); "
BARE += "sys.modules['ensurepip'] = None"
OLD = "import sys; sys.version_info = (3, 9, 2, 'final', 0)"
NOT_REALLY_THERE = "echo 'no such version' >&2; exit 127"


def choose(folder: Path, wanted: str, *arguments: str) -> subprocess.CompletedProcess[str]:
    """Run the chooser with the planted commands alone on the path."""
    return subprocess.run(
        [SHELL, str(CHOOSER), wanted, *arguments],
        env={"PATH": str(folder), "HOME": str(folder)},
        cwd=ROOT,
        capture_output=True,
        text=True,
    )


PRINT_NAME = ("-c", "import os; print(os.environ.get('CHOSEN'))")


def test_the_newest_that_runs_is_taken(tmp_path: Path) -> None:
    """A name that only pretends to be a Python, and an older Python, are passed over."""
    plant(tmp_path, "python3.14", NOT_REALLY_THERE)
    plant(tmp_path, "python3.12", "export CHOSEN=3.12\n" + real())
    plant(tmp_path, "python3.11", "export CHOSEN=3.11\n" + real())
    plant(tmp_path, "python3", real(OLD))
    done = choose(tmp_path, "", *PRINT_NAME)
    assert (done.returncode, done.stdout) == (0, "3.12\n")


def test_a_python_that_can_make_an_environment_goes_first(tmp_path: Path) -> None:
    """A newer Python without ensurepip does not stand in the way of an older one with it."""
    plant(tmp_path, "python3.13", "export CHOSEN=bare\n" + real(BARE))
    plant(tmp_path, "python3.11", "export CHOSEN=whole\n" + real())
    assert choose(tmp_path, "", *PRINT_NAME).stdout == "whole\n"


def test_a_named_python_is_taken_even_where_its_path_has_a_space(tmp_path: Path) -> None:
    """PYTHON= overrides the choice."""
    folder = tmp_path / "my pythons"
    folder.mkdir()
    plant(folder, "mine", "export CHOSEN=mine\n" + real())
    plant(tmp_path, "python3.14", "export CHOSEN=3.14\n" + real())
    assert choose(tmp_path, str(folder / "mine"), *PRINT_NAME).stdout == "mine\n"


@pytest.mark.parametrize("wanted", ["", "python3"])
def test_an_old_python_is_refused_by_name(tmp_path: Path, wanted: str) -> None:
    """Python 3.9 gets a clear word, not a syntax error from somewhere inside."""
    plant(tmp_path, "python3", real(OLD))
    done = choose(tmp_path, wanted, *PRINT_NAME)
    assert done.returncode == 2
    assert done.stdout == ""
    assert "no Python 3.11 or newer" in done.stderr
    assert "python3 is 3.9" in done.stderr


def test_no_python_at_all_is_said(tmp_path: Path) -> None:
    """Where there is none, the word is what to do, not what failed."""
    done = choose(tmp_path, "", *PRINT_NAME)
    assert done.returncode == 2
    assert "PYTHON=/path/to/python3.12" in done.stderr


def test_a_python_without_ensurepip_gets_the_line_that_installs_it(tmp_path: Path) -> None:
    """On a bare Debian, the exact package of this very Python is named, and nothing is made."""
    checkout = tmp_path / "a checkout"
    (checkout / "tests").mkdir(parents=True)
    for name in ("__init__.py", "run.py", "environment.py", "python.sh"):
        (checkout / "tests" / name).write_bytes((ROOT / "tests" / name).read_bytes())
    for name in ("pyproject.toml", "requirements.lock"):
        (checkout / name).write_bytes((ROOT / name).read_bytes())
    commands = tmp_path / "commands"
    commands.mkdir()
    plant(commands, "python3", real(BARE))
    plant(commands, "id", "echo 1000")
    done = subprocess.run(
        [SHELL, "tests/python.sh", "", "tests/run.py", "site"],
        env={"PATH": str(commands)},
        cwd=checkout,
        capture_output=True,
        text=True,
    )
    as_root = "" if os.geteuid() == 0 else "sudo "
    version = f"{sys.version_info.major}.{sys.version_info.minor}"
    assert done.returncode == 2
    assert f"Debian and Ubuntu:  {as_root}apt-get install python{version}-venv\n" in done.stderr
    assert "Traceback" not in done.stderr
    assert not (checkout / ".venv").exists()
