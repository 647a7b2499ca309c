"""The wheel works alone: it publishes a manual that lies elsewhere, without the source checkout."""

from __future__ import annotations

import os
import re
import shlex
import subprocess
import sys
import sysconfig
import venv
import zipfile
from pathlib import Path

import pytest

from tests.demonstration import ROOT, copy_manual
from tests.walkthrough import blocks, commands, printed_as_shown, release, write


def run(*command: str | Path, cwd: Path, **more: str) -> str:
    """Run a command away from the checkout; give what it printed, or fail with all it said."""
    environment = {name: value for name, value in os.environ.items() if name != "PYTHONPATH"}
    done = subprocess.run(
        [str(word) for word in command],
        cwd=cwd,
        env={**environment, **more},
        capture_output=True,
        text=True,
    )
    assert done.returncode == 0, f"{command}\n{done.stdout}{done.stderr}"
    return done.stdout


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Build the wheel, with what is installed and no network."""
    folder = tmp_path_factory.mktemp("dist")
    run(
        sys.executable, "-m", "build", "--no-isolation", "--wheel", "--outdir", folder, ROOT,
        cwd=folder,
    )  # fmt: skip
    (made,) = folder.glob("fettlebook-*.whl")
    return made


@pytest.fixture(scope="module")
def python(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Give the Python of an environment with the wheel alone, its libraries borrowed from ours."""
    folder = tmp_path_factory.mktemp("shop") / "an environment"
    venv.create(folder, symlinks=os.name != "nt")
    python = folder / ("Scripts/python.exe" if os.name == "nt" else "bin/python")
    run(
        sys.executable, "-m", "pip", "--python", python, "install", "--no-deps", "--no-index",
        "--quiet", "--disable-pip-version-check", wheel,
        cwd=folder,
    )  # fmt: skip
    (site_packages,) = (path.parent for path in folder.rglob("site-packages/generator"))
    # A path file is not read through another, so our own editable install stays out.
    (site_packages / "borrowed.pth").write_text(sysconfig.get_path("purelib"), encoding="utf-8")
    return python


def test_the_wheel_holds_the_package_and_its_theme(wheel: Path) -> None:
    """Every file of the package and of the theme is in the wheel, and no test or record is."""
    names = set(zipfile.ZipFile(wheel).namelist())
    wanted = {
        f"generator/{path.relative_to(ROOT / top).as_posix()}"
        if top == "generator"
        else f"generator/site_overrides/{path.relative_to(ROOT / top).as_posix()}"
        for top in ("generator", "site_overrides")
        for path in (ROOT / top).rglob("*")
        if path.is_file() and "__pycache__" not in path.parts
    }
    assert {name for name in names if ".dist-info/" not in name} == wanted


def test_the_checkout_is_not_used(python: Path, tmp_path: Path) -> None:
    """The environment runs the package it has from the wheel."""
    place = run(python, "-c", "import generator; print(generator.__file__)", cwd=tmp_path)
    assert Path(place.strip()).is_relative_to(python.parent.parent)
    assert ROOT not in Path(place.strip()).parents


@pytest.mark.parametrize("command", ["python -m generator", "mkdocs"])
def test_it_publishes_a_manual_that_lies_elsewhere(
    python: Path, tmp_path: Path, command: str
) -> None:
    """Each other way to build gives a whole site of a manual in a folder of its own."""
    manual = tmp_path / "the shop's manual"
    copy_manual(manual)
    commands: dict[str, list[str | Path]] = {
        "python -m generator": [python, "-m", "generator", "-C", manual, "build"],
        "mkdocs": [python, "-m", "mkdocs", "build", "--strict", "-f", manual / "mkdocs.yml"],
    }
    run(*commands[command], cwd=tmp_path)
    assert (manual / "site" / "index.html").is_file()
    pages = list((manual / "site").rglob("*.html"))
    assert len(pages) > 20


@pytest.mark.soak
def test_a_manual_of_ones_own_by_the_page_word_for_word(python: Path, tmp_path: Path) -> None:
    """From an empty folder, each command of the page prints what it shows; the new test is out."""
    manual = tmp_path / "our shop's manual"
    manual.mkdir()
    record = complaint = manual
    for block in blocks((ROOT / "docs" / "starting.md").read_text("utf-8")):
        if block.language == "console":
            for command, shown in commands(block):
                program, *words = shlex.split(command)
                assert program == "fettlebook"
                printed = run(python.with_name(program), *words, cwd=manual, COLUMNS="100")
                assert printed_as_shown(shown, printed), f"{command} printed\n{printed}"
        elif "fill it in" in block.before:
            assert write(manual, block) == set()
            record = manual / block.file
        elif "The line `status: draft` makes way for" in block.before:
            release(record, block)
        else:
            assert "change the tests of the first cause" in block.before
            complaint = manual / block.file
            text = complaint.read_text("utf-8")
            changed = re.sub(r"^ +tests: .*\n", block.text, text, count=1, flags=re.MULTILINE)
            complaint.write_text(changed, "utf-8")
    page = manual / "site" / "tests" / f"{record.stem}.html"
    assert "Pull the stalk, and listen for the pump." in page.read_text("utf-8")
    shown = (manual / "site" / "symptoms" / f"{complaint.stem}.html").read_text("utf-8")
    assert page.name in shown
