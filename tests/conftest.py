"""What several suites share: the demonstration manual, built once."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import settings

from tests.demonstration import ROOT, copy_manual

# A deadline would measure the machine, not the code.
settings.register_profile("no deadline", deadline=None)
settings.load_profile("no deadline")


def pytest_addoption(parser: pytest.Parser) -> None:
    """Let a contributor look at one built site again and again."""
    parser.addoption(
        "--site-dir",
        type=Path,
        metavar="FOLDER",
        help="test this built site instead of building the demonstration manual",
    )


@pytest.fixture(scope="session")
def manual_dir(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Give a copy of the demonstration manual, far from the checkout."""
    folder = tmp_path_factory.mktemp("manual") / "kittiwake quay"
    copy_manual(folder)
    return folder


@pytest.fixture(scope="session")
def site_dir(request: pytest.FixtureRequest) -> Path:
    """Give the demonstration manual's site, built once by the command a shop uses."""
    given: Path | None = request.config.getoption("--site-dir")
    if given is not None:
        return given.resolve()
    manual: Path = request.getfixturevalue("manual_dir")
    built = subprocess.run(
        [sys.executable, "-m", "generator", "-C", str(manual), "build"],
        cwd=ROOT,
        capture_output=True,
        text=True,
    )
    if built.returncode != 0:
        pytest.fail(f"the demonstration manual does not build:\n{built.stdout}{built.stderr}")
    return manual / "site"
