"""The page of changes, from a history made for it: what each version did to the reader."""

from __future__ import annotations

import os
import shutil
import subprocess
from pathlib import Path

import pytest

from generator import layout, manual
from generator.edit import changes, versions
from tests.cli.asking import ask, replace_in
from tests.demonstration import ROOT, SMALLEST_RECORDS


def git(folder: Path, *words: str) -> None:
    """Run git as somebody, on a day of the test's own."""
    who = {"NAME": "t", "EMAIL": "t@example.org", "DATE": "2026-11-02T10:00:00+0000"}
    env = {f"GIT_{role}_{key}": text for key, text in who.items()
           for role in ("AUTHOR", "COMMITTER")}  # fmt: skip
    subprocess.run(["git", "-C", str(folder), *words], check=True, env={**os.environ, **env})


def commit(folder: Path, words: str) -> None:
    """Commit all that lies there."""
    git(folder, "add", "-A")
    git(folder, "commit", "-qm", words)


@pytest.fixture(scope="module")
def history(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Give a repository with a base, a value, a caution, a slip, and a page nobody need know of."""
    folder = tmp_path_factory.mktemp("history") / "manual"
    shutil.copytree(SMALLEST_RECORDS, folder / layout.RECORDS)
    shutil.copy(ROOT / layout.SETTINGS, folder)
    (folder / layout.DOCS).mkdir()
    (folder / ".gitignore").write_text(f"{layout.CACHE}/\n")
    git(folder.parent, "init", "-q", str(folder))
    commit(folder, "Base")
    records = folder / layout.RECORDS
    replace_in(records / "specs/battery-at-rest.yml", "at least 12.4 V", "at least 12.5 V")
    commit(folder, "Ask more of the <battery> at *rest*")
    rule = records / "hazards/wet-floor.yml"
    rule.write_text(rule.read_text("utf-8").replace("avoid:\n", "avoid:\n  - Mop it first.\n", 1))
    commit(folder, "Mop first")
    replace_in(records / "terms/open-circuit.yml", "means:", "meens:")
    commit(folder, "A slip")
    replace_in(records / "terms/open-circuit.yml", "meens:", "means:")
    commit(folder, "Mend it")
    (folder / layout.DOCS / "about.md").write_text("# About\n")
    commit(folder, "A hand-written page")
    return folder


def page(folder: Path) -> str:
    """Give the page of changes."""
    kb = manual.read(folder).kb
    assert kb is not None
    found = changes.changes(folder, 20)
    return changes.as_markdown(kb, found, cut_short=versions.is_shallow(folder))


def test_each_version_is_told_newest_first_and_safety_is_marked(history: Path) -> None:
    """The value with both figures, the caution by name; the base and the page are no entries."""
    text = page(history)
    heads = [line for line in text.splitlines() if line.startswith("## ")]
    assert heads == [
        "## 2026-11-02 Mend it", "## 2026-11-02 A slip", "## 2026-11-02 Mop first",
        r"## 2026-11-02 Ask more of the &lt;battery> at \*rest\*",
    ]  # fmt: skip
    _, mended, slip, mop, value = text.split("\n## ")
    for broken in (mended, slip):
        assert "could not be compared" in broken
        assert "(terms.html#terms-open-circuit): changed" in broken
    assert "**Safety: read this" in mop and "**caution re-worded**, avoid" in mop
    assert "Mop it first." in mop and "safety.html#hazards-wet-floor" in mop
    assert "Safety" not in value and "components/battery.html#value-battery-at-rest" in value
    assert "value changed (at least 12.40 V → at least 12.50 V (low +0.8 %))" in value
    assert text.rstrip().endswith("Older changes are in the history of the records.")


def test_a_pair_of_versions_is_compared_once(
    history: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The second run reads what the first left, and gives the same bytes."""
    before = page(history)

    def never(*_: object) -> None:
        raise AssertionError("compared again")

    monkeypatch.setattr(changes, "_compared", never)
    assert page(history) == before


def test_a_shallow_clone_says_that_it_is_one(history: Path, tmp_path: Path) -> None:
    """The page ends where the clone does, and both page and command say why."""
    git(tmp_path, "clone", "-q", "--depth", "3", f"file://{history}", str(tmp_path / "clone"))
    done = ask("changes", "--write", manual=tmp_path / "clone")
    assert done.status == 0 and "shallow clone" in done.err
    text = (tmp_path / "clone" / layout.DOCS / "changes.md").read_text("utf-8")
    assert text.count("\n## ") == 1 and "## 2026-11-02 Mend it" in text
    assert "older changes are missing" in text


def test_without_git_it_says_so(tmp_path: Path) -> None:
    """No page is written that would look like a manual in which nothing ever changed."""
    shutil.copytree(SMALLEST_RECORDS, tmp_path / "manual" / layout.RECORDS)
    shutil.copy(ROOT / layout.SETTINGS, tmp_path / "manual")
    done = ask("changes", manual=tmp_path / "manual")
    assert done.status == 2 and "no git repository" in done.err and not done.out


def test_what_a_committer_wrote_is_text_on_the_page(history: Path) -> None:
    """No tag of a message comes alive, in the heading or in the list of contents."""
    assert ask("changes", "--write", manual=history).status == 0
    assert ask("build", manual=history).status == 0
    html = (history / layout.SITE / "changes.html").read_text("utf-8")
    assert "<battery" not in html
    assert html.count("&lt;battery&gt; at *rest*") == 3  # two lists of contents and the heading


def test_a_page_written_by_hand_stays(history: Path) -> None:
    """A page of that name that somebody else wrote is refused; the page itself is written anew."""
    page = history / layout.DOCS / "changes.md"
    page.unlink(missing_ok=True)
    for _ in range(2):
        assert ask("changes", "--write", manual=history).status == 0
    page.write_text("# Our own log\n", encoding="utf-8")
    done = ask("changes", "--write", manual=history)
    assert done.status == 2 and "somebody else" in done.err
    assert page.read_text("utf-8") == "# Our own log\n"
