"""Every page of the demonstration manual as it stands today: sound, and valid HTML."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from generator import layout
from tests.browser.conftest import Watch
from tests.browser.static_server import StaticServer
from tests.browser.test_every_page import faults_of
from tests.browser.test_policy import addresses
from tests.demonstration import DEMONSTRATION, ROOT, copy_manual
from tests.site.nu_checker import findings

pytestmark = pytest.mark.soak


@pytest.fixture(scope="module")
def whole(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Give its site."""
    folder = tmp_path_factory.mktemp("whole") / "manual"
    copy_manual(folder, DEMONSTRATION)
    command = [sys.executable, "-m", "generator", "-q", "-C", str(folder), "build"]
    subprocess.run(command, cwd=ROOT, check=True)
    return folder / layout.SITE


def test_every_page_is_valid(whole: Path) -> None:
    """The Nu HTML checker has nothing to say."""
    assert len(addresses(whole)) > 500
    assert findings([whole]) == []


def test_every_page_is_sound(whole: Path, phone_page: Watch) -> None:
    """Nor has axe, the policy is kept, and nothing runs over the edge of 320 px."""
    server = StaticServer(whole)
    server.start()
    found, _ = faults_of(phone_page, server, addresses(whole), "light")
    server.stop()
    assert found == []
