"""What a command does not need it does not load: half a second before every answer is felt."""

from __future__ import annotations

import subprocess
import sys

import pytest

from tests.demonstration import ROOT

HEAVY = ("matplotlib", "numpy", "pint", "pydantic", "mkdocs", "material", "markdown", "jinja2")
LOADED = "import sys; print(' '.join({name.partition('.')[0] for name in sys.modules}))"


@pytest.mark.parametrize(
    "code",
    [
        "import sys; sys.argv[1:] = ['--help']\ntry: main()\nexcept SystemExit: pass",
        "import generator.cli.publish",
    ],
    ids=["help", "build with nothing changed"],
)
def test_nothing_heavy_is_loaded(code: str) -> None:
    """Neither the help nor a build that finds its site standing loads a library of the engines."""
    done = subprocess.run(
        [sys.executable, "-c", f"from generator.cli import main\n{code}\n{LOADED}"],
        cwd=ROOT, capture_output=True, text=True, check=True,
    )  # fmt: skip
    loaded = set(done.stdout.splitlines()[-1].split())
    assert "click" in loaded
    assert loaded.isdisjoint(HEAVY), loaded & set(HEAVY)
