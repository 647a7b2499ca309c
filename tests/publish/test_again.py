"""A site built out of the last one is the site that a cold build gives, whatever came between."""

from __future__ import annotations

import os
import random
import shutil
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from generator import layout, manual
from generator.edit import rename
from generator.problems import has_errors
from generator.publish import inputs, last
from generator.publish.build import NotBuilt, build
from generator.publish.files import digest_of
from generator.publish.standing import TICK_S
from tests.cli.asking import replace_in
from tests.demonstration import ROOT, SMALLEST_RECORDS

ABOUT = "# About\n\nThe [test](tests/winding-resistance.html) of the winding.\n"


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    """Give the smallest manual in which every kind occurs, with a theme of its own."""
    made = tmp_path / "manual"
    shutil.copytree(SMALLEST_RECORDS, made / layout.RECORDS)
    shutil.copy(ROOT / layout.SETTINGS, made)
    (made / layout.DOCS).mkdir()
    (made / layout.DOCS / "about.md").write_text(ABOUT)
    theme = Path(shutil.copytree(layout.theme_folder(), tmp_path / "theme"))
    for room in (layout, manual):
        monkeypatch.setattr(room, "theme_folder", lambda: theme)
    inputs.version.cache_clear()
    yield made
    inputs.version.cache_clear()


def contents(site: Path) -> dict[str, str]:
    """Give every file of a site by its digest."""
    return {
        path.relative_to(site).as_posix(): digest_of(path.read_bytes())
        for path in sorted(site.rglob("*"))
        if path.is_file()
    }


def publish(folder: Path) -> str:
    """Do what the command does; say what came of it."""
    inputs.version.cache_clear()
    time.sleep(2 * TICK_S)  # a file saved just now is not trusted, and here it is to be
    site, before = folder / layout.SITE, inputs.of(folder)
    if last.stands(folder, site, before):
        return "nothing has changed"
    read = manual.read(folder, None, folder / layout.CACHE)
    if read.kb is None or has_errors(read.problems):
        return "errors"
    try:
        build(folder / layout.SETTINGS, site, read, before)
    except NotBuilt:
        return "not built"
    return "built"


def cold(folder: Path) -> tuple[str, dict[str, str]]:
    """Give what a build of the same manual gives that knows of no other."""
    copy = folder.with_name("cold")
    shutil.rmtree(copy, ignore_errors=True)
    kept = shutil.ignore_patterns(layout.SITE, layout.CACHE)
    shutil.copytree(folder, copy, ignore=kept)
    said = publish(copy)
    return said, contents(copy / layout.SITE)


def digits(text: str, chance: random.Random) -> str:
    """Change a digit of a text."""
    at = chance.choice([n for n, c in enumerate(text) if c in "123456789"] or [0])
    return text[:at] + chance.choice("123456789") + text[at + 1 :]


class Author:
    """Somebody who changes a manual, and now and then what should be left alone."""

    def __init__(self, folder: Path, chance: random.Random) -> None:
        self.folder, self.chance = folder, chance
        self.spare: dict[Path, bytes] = {}

    def record(self) -> Path:
        """Give a record's file."""
        return self.chance.choice(sorted((self.folder / layout.RECORDS).glob("*/*.yml")))

    def edit(self) -> None:
        """Change a figure or a title."""
        path = self.record()
        text = path.read_text("utf-8")
        other = text.replace("title: ", "title: Other ", 1)
        path.write_text(self.chance.choice([other, digits(text, self.chance)]), "utf-8")

    def add(self) -> None:
        """Write one more record, like another one."""
        path = self.record()
        text = path.read_text("utf-8").replace("title: ", "title: Another ", 1)
        path.with_name(f"more-{self.chance.randrange(9)}.yml").write_text(text, "utf-8")

    def delete(self) -> None:
        """Take a record away, or bring one back."""
        if self.spare and self.chance.random() < 0.5:
            path = self.chance.choice(sorted(self.spare))
            path.write_bytes(self.spare.pop(path))
            return
        path = self.record()
        self.spare[path] = path.read_bytes()
        path.unlink()

    def rename(self) -> None:
        """Give a record another id, references and old address included."""
        path = self.record()
        read = manual.read(self.folder)
        if read.kb is None or path.stem not in read.kb.records[path.parent.name]:
            return
        records = self.folder / layout.RECORDS
        planned = rename.plan(
            read.kb, records, layout.RECORDS, path.parent.name, path.stem, f"{path.stem}-x"
        )
        for change in planned.changes:
            change.file.path.write_bytes(change.after)
        planned.old.rename(planned.new)

    def template(self) -> None:
        """Change the look."""
        with (layout.theme_folder() / "main.html").open("a") as file:
            file.write(f"<!-- {self.chance.random()} -->\n")

    def settings(self) -> None:
        """Change the host's settings, the manual's, or a hand-written page."""
        match self.chance.randrange(3):
            case 0:
                replace_in(self.folder / layout.SETTINGS, "site_name: ", "site_name: A ")
            case 1:
                path = self.folder / layout.RECORDS / "settings.yml"
                replace_in(path, "title: ", "title: New ")
            case 2:
                page = self.folder / layout.DOCS / f"page-{self.chance.randrange(3)}.md"
                page.write_text(f"# Page\n\n{self.chance.random()}\n")

    def vandal(self) -> None:
        """Change the site itself, or what is kept beside the manual."""
        found = sorted(path for path in (self.folder / layout.SITE).rglob("*") if path.is_file())
        found += sorted((self.folder / layout.CACHE).glob("[a-z]*"))
        path = self.chance.choice(found)
        content = path.read_bytes()
        match self.chance.randrange(4):
            case 0:
                path.unlink()
            case 1:  # as long as before, and as old
                times = path.stat()
                path.write_bytes(content[:-1] + b"#")
                os.utime(path, ns=(times.st_atime_ns, times.st_mtime_ns))
            case 2:
                path.with_name("stranger.html").write_bytes(content)
            case 3:
                path.unlink()
                path.symlink_to(self.folder / layout.SETTINGS)

    def acts(self) -> list[Callable[[], None]]:
        """Give all that somebody may do, what is done more often more than once."""
        common = [self.edit, self.edit, self.add, self.delete, self.rename]
        return [*common, self.template, self.settings, self.vandal]


def inodes(site: Path) -> dict[str, int]:
    """Give the inode of every file: a file with the same one was not written again."""
    return {name: (site / name).stat().st_ino for name in contents(site)}


def test_an_edit_makes_again_what_it_touches_and_nothing_else(folder: Path) -> None:
    """After one part's title changes, pages that do not name it are the very same files."""
    site = folder / layout.SITE
    assert publish(folder) == "built"
    assert publish(folder) == "nothing has changed"
    before, stood = inodes(site), contents(site)
    replace_in(folder / layout.RECORDS / "components/undertray.yml", "title: ", "title: Lower ")
    assert publish(folder) == "built"
    after, stands = inodes(site), contents(site)
    assert {name for name in after if after[name] == before.get(name)} == {
        name for name in stands if stands[name] == stood.get(name)
    }
    assert stands["components/undertray.html"] != stood["components/undertray.html"]
    assert stands["faults/orphan.html"] == stood["faults/orphan.html"]


def test_a_hand_written_link_is_looked_at_when_its_end_changes(folder: Path) -> None:
    """A page that loses an anchor stops the build, though the page that leads there stands."""
    link = "[cause](symptoms/cranks-no-start.html#codes)"
    (folder / layout.DOCS / "about.md").write_text(f"# About\n\n{link}\n")
    assert publish(folder) == "built"
    path = folder / layout.RECORDS / "symptoms/cranks-no-start.yml"
    lines = path.read_text("utf-8").splitlines(keepends=True)
    assert any(line.startswith("codes: [") for line in lines)
    path.write_text("".join(line for line in lines if not line.startswith("codes: [")), "utf-8")
    assert publish(folder) == cold(folder)[0] == "not built"


def test_settings_that_bring_in_more_are_never_taken_for_all_there_is(folder: Path) -> None:
    """A hook, a tag, another plugin, a link: then nobody says that nothing has changed."""
    settings = folder / layout.SETTINGS
    plain = settings.read_text()
    assert inputs.of(folder) is not None
    for more in (
        plain + "hooks: [hook.py]\n", plain + "INHERIT: other.yml\n",
        plain.replace("site_name: ", "site_name: !ENV NAME #"),
        plain.replace("- fettlebook", "- fettlebook\n  - search"),
        plain.replace("- tables", "- pymdownx.snippets"),
        plain.replace("font: false", "font: false\n  custom_dir: look"),
        plain.replace("docs_dir: docs", "docs_dir: ../docs"),
    ):  # fmt: skip
        assert more != plain
        settings.write_text(more)
        assert inputs.of(folder) is None, more
    settings.write_text(plain)
    (folder / layout.DOCS / "more").symlink_to(folder / layout.RECORDS)
    assert inputs.of(folder) is None


@pytest.mark.parametrize("seed", [0, pytest.param(1, marks=pytest.mark.soak)])
def test_after_any_changes_the_site_is_what_a_cold_build_gives(folder: Path, seed: int) -> None:
    """Edit, add, delete, rename, template, settings, vandals: the published folder is one."""
    chance = random.Random(seed)
    author = Author(folder, chance)
    good = {p: p.read_bytes() for p in (folder / layout.RECORDS).rglob("*.yml")}
    assert publish(folder) == "built"
    stood = contents(folder / layout.SITE)
    for turn in range(7):
        act = chance.choice(author.acts())
        act()
        wanted, whole = cold(folder)
        said = publish(folder)
        if wanted == "built":
            assert (said in ("built", "nothing has changed"), contents(folder / layout.SITE)) == (
                True, whole,
            ), (turn, act)  # fmt: skip
            stood = whole
            continue
        assert said == wanted, (turn, act)
        assert contents(folder / layout.SITE) == stood, "the old site stands"
        for path in set((folder / layout.RECORDS).rglob("*.yml")) - good.keys():
            path.unlink()
        for path, content in good.items():
            path.write_bytes(content)
        author.spare.clear()
