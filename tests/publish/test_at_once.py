"""Two builds of one site at once: one of them gives way, and the site is whole."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest

from generator.publish import lock
from tests.cli.asking import Answer, ask, ask_apart
from tests.publish.kills import two_manuals
from tests.publish.tree import digest_of_tree


@pytest.mark.soak
def test_the_second_gives_way_while_the_first_is_under_way(tmp_path: Path) -> None:
    """It says so in a line, and neither the site nor what is being made beside it is touched."""
    one, other = two_manuals(tmp_path)
    site = tmp_path / "site"
    assert ask("build", "--site-dir", str(site), manual=one).status == 0
    before = digest_of_tree(site)
    half_made = tmp_path / ".site.new" / "index.html"
    half_made.parent.mkdir()
    half_made.write_text("half a page", encoding="utf-8")
    with lock.held(lock.place(site)):
        answer = ask("build", "--site-dir", str(site), manual=other)
    assert answer.status not in (0, 1)
    assert "another build" in answer.err and "Traceback" not in answer.err
    assert digest_of_tree(site) == before
    assert half_made.read_text(encoding="utf-8") == "half a page"
    assert ask("build", "--site-dir", str(site), manual=other).status == 0
    assert digest_of_tree(site) != before
    assert sorted(path.name for path in tmp_path.iterdir()) == ["one", "other", "site"]


@pytest.mark.soak
def test_a_race_leaves_one_of_the_two_sites(tmp_path: Path) -> None:
    """Begun together in processes of their own: at least one goes through, and nothing is mixed."""
    manuals = two_manuals(tmp_path)
    whole = []
    for manual in manuals:
        assert ask_apart("build", manual=manual).status == 0
        whole.append(digest_of_tree(manual / "site"))
    site = tmp_path / "site"

    def build(manual: Path) -> Answer:
        return ask_apart("build", "--site-dir", str(site), manual=manual)

    with ThreadPoolExecutor(2) as both:
        answers = list(both.map(build, manuals))
    assert {0} <= {answer.status for answer in answers}, answers
    won = {whole[n] for n, answer in enumerate(answers) if answer.status == 0}
    assert digest_of_tree(site) in won
    for answer in answers:
        assert answer.status == 0 or "another build" in answer.err
