"""The account of Lighthouse's runs, and the lock that says which Lighthouse it is."""

from __future__ import annotations

import gzip
import json
from pathlib import Path
from urllib.request import Request, urlopen

import pytest

from tests.browser.static_server import StaticServer
from tests.demonstration import ROOT
from tests.lighthouse.measure import CATEGORIES, HERE, account, losses, scores

FULL = dict.fromkeys(CATEGORIES, 100.0)


def report(**audit: float | None) -> dict[str, object]:
    """Give a report in which one audit of the speed has a score and a weight."""
    rest = {name: {"score": 1, "auditRefs": []} for name in CATEGORIES}
    speed = {"score": 0.97, "auditRefs": [{"id": "paint", "weight": 10}, {"id": "x", "weight": 0}]}
    audits = {"paint": {"score": 0.9, "displayValue": "1.7 s", **audit}, "x": {"score": 0}}
    return {"categories": {**rest, "performance": speed}, "audits": audits}


def test_the_median_counts() -> None:
    """Two slow runs of five are told and pass, three do not, whatever the category."""
    slow = {**FULL, "performance": 98.0}
    lines, passed = account({"a.html": [FULL, slow, FULL, slow, FULL]})
    assert passed and "100 (98 to 100)" in lines[1]
    assert not account({"a.html": [FULL, slow, FULL, slow, slow]})[1]
    for name in CATEGORIES:
        runs = {"a.html": [FULL], "b.html": [{**FULL, name: 99.0}]}
        assert not account(runs)[1]


def test_a_score_and_its_losses_are_read_off_the_report() -> None:
    """An audit below one is named with what it found; one without a weight or a score is not."""
    assert scores(report()) == {**FULL, "performance": 97.0}
    assert losses(report()) == ["performance: paint 0.90 1.7 s"]
    assert losses(report(score=None)) == []


def test_every_package_is_locked_by_its_hash_and_the_version_is_told() -> None:
    """npm can bring nothing but what the lock names, and docs/third-party.md names the version."""
    wanted = json.loads((HERE / "package.json").read_text("utf-8"))["devDependencies"]
    packages = json.loads((HERE / "package-lock.json").read_text("utf-8"))["packages"]
    assert packages.pop("")["devDependencies"] == wanted
    assert packages["node_modules/lighthouse"]["version"] == wanted["lighthouse"]
    assert all(each["integrity"].startswith("sha512-") for each in packages.values())
    listed = (ROOT / "docs" / "third-party.md").read_text("utf-8")
    assert f"com/GoogleChrome/lighthouse) {wanted['lighthouse']} (" in listed


@pytest.mark.parametrize("accepted", ["gzip, br", "identity"])
def test_pages_are_served_packed_to_who_takes_that(accepted: str, tmp_path: Path) -> None:
    """As a web host does: text is packed, a picture is not, and the content stays what it is."""
    text = b"<!doctype html>" + b"x" * 2000
    (tmp_path / "index.html").write_bytes(text)
    (tmp_path / "a.png").write_bytes(text)
    server = StaticServer(tmp_path, packed=True)
    server.start()
    got = {}
    for name in ("index.html", "a.png"):
        asked = Request(server.url(name), headers={"Accept-Encoding": accepted})
        with urlopen(asked, timeout=10) as answer:
            got[name] = (answer.headers["Content-Encoding"], answer.read())
    server.stop()
    assert got["a.png"] == (None, text)
    how, body = got["index.html"]
    assert how == ("gzip" if "gzip" in accepted else None)
    assert (gzip.decompress(body) if how else body) == text
