"""The page for contributors, followed word for word in a copy of the demonstration manual."""

from __future__ import annotations

import re
import unicodedata
from pathlib import Path

import click
import pytest

from generator.cli.main import group
from generator.quantities import QUANTITIES, UNITS, parse
from tests.cli.asking import ask
from tests.demonstration import ROOT, copy_manual
from tests.walkthrough import Block, blocks, commands, printed_as_shown, release, write

PAGE = (ROOT / "docs" / "contributing.md").read_text(encoding="utf-8")
SERVE = "fettlebook serve"


def run(command: str) -> str:
    """Run a command of the page in the manual's folder."""
    done = ask(*command.removeprefix("fettlebook ").split(), manual=Path("."))
    assert done.status == 0, f"{command}\n{done.out}{done.err}"
    return done.out


def follow(manual: Path, block: Block, filled: list[Path]) -> None:
    """Do what the page says beside a block of YAML."""
    if "Fill in" in block.before or "fill it in" in block.before:
        # The fields of a model follow from its name, and stand in the schema alone.
        assert write(manual, block) <= {"material"}
        filled.append(manual / block.file)
    elif "the line `status: draft` makes way for" in block.before:
        for path in filled:
            release(path, block)
    else:
        assert "at the end of `causes`, above the line that begins with `codes`" in block.before
        path = manual / block.file
        lines = path.read_text(encoding="utf-8").splitlines(keepends=True)
        at = next(n for n, line in enumerate(lines) if line.startswith("codes"))
        path.write_text("".join([*lines[:at], block.text, *lines[at:]]), encoding="utf-8")


def test_following_the_page_word_for_word_works(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Each command prints what the page shows, and the new page is in the site in the end."""
    monkeypatch.setenv("COLUMNS", "100")
    manual = tmp_path / "copy"
    copy_manual(manual)
    monkeypatch.chdir(manual)
    run("fettlebook fmt")  # whether the records are in order is another test's business
    filled: list[Path] = []
    ran = []
    for block in blocks(PAGE):
        if block.language == "yaml":
            follow(manual, block, filled)
            continue
        for command, printed in commands(block):
            ran.append(command.split()[1])
            if command == SERVE:
                continue  # it runs until it is stopped; what it shows is what build makes
            out = run(command)
            assert printed_as_shown(printed, out), f"{command} printed\n{out}"
    assert len(filled) == 3
    assert {"new", "check", "explain", "serve", "cautions", "expect", "fmt"} == set(ran)
    run("fettlebook build")
    page = manual / "site" / "tests" / "timing-solenoid-winding.html"
    assert "Winding of the valve timing solenoid" in page.read_text(encoding="utf-8")
    assert (manual / "site" / "components" / "timing-solenoid.html").is_file()
    complaint = (manual / "site" / "symptoms" / "rough-idle-or-pulls-badly.html").read_text("utf-8")
    assert "timing-solenoid-winding.html" in complaint


def rows(heading: str) -> list[list[str]]:
    """Give the cells of the table under a heading."""
    text = PAGE.split(f"## {heading}\n")[1].split("\n## ")[0]
    lines = [line for line in text.splitlines() if line.startswith("| ")]
    return [[cell.strip() for cell in line.strip("|").split("|")] for line in lines]


def test_the_list_of_units_has_not_drifted() -> None:
    """The page lists every unit that a record may use, and every other spelling of it."""
    listed = {row[0]: (row[1], row[2]) for row in rows("How to write a value") if len(row) == 3}
    del listed["Quantity"]
    assert list(listed) == list(QUANTITIES)
    for quantity, (units, others) in listed.items():
        known = [unit for unit in UNITS if unit.quantity == quantity]
        assert units.split(", ") == [unit.symbol for unit in known]
        spellings = {spelling for unit in known for spelling in unit.spellings}
        shown = {spelling for spelling in others.split(", ") if spelling}
        assert shown <= spellings | {unicodedata.normalize("NFKC", one) for one in spellings}
        # One that looks the same as a listed one, or begins with a digit, needs no mention.
        looks = {unicodedata.normalize("NFKC", one) for one in shown | set(units.split(", "))}
        missing = {one for one in spellings if unicodedata.normalize("NFKC", one) not in looks}
        assert not [one for one in missing if not one[0].isdigit()]
        for spelling in [*units.split(", "), *shown]:
            assert parse(f"5 {spelling}", quantity).quantity == quantity


def test_every_example_of_a_value_is_one() -> None:
    """What the page gives as an example can be copied."""
    examples = [one for row in rows("How to write a value") if len(row) == 2
                for one in re.findall(r"`([^`]+)`", row[1])]  # fmt: skip
    assert len(examples) == 6
    for example in examples:
        assert parse(example).text == example


@pytest.mark.parametrize("row", rows("The commands")[1:], ids=lambda row: row[0])
def test_every_command_exists(row: list[str]) -> None:
    """The table of commands names commands that there are, with the words they take."""
    name, *words = row[0].strip("`").removeprefix("fettlebook ").split()
    command = group.get_command(click.Context(group), name)
    assert command is not None
    assert len(words) <= len(command.params)


def test_links_on_the_page_resolve() -> None:
    """Each link within the page leads to a heading."""
    headings = {
        re.sub(r"[^a-z0-9]+", "-", heading.lower()).strip("-")
        for heading in re.findall(r"^#+ (.+)$", PAGE, re.MULTILINE)
    }
    links = re.findall(r"\]\(([^)]+)\)", PAGE)
    assert links
    assert {link for link in links if link.removeprefix("#") not in headings} == set()
