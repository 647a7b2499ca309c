"""The demonstration site has no dead end, and the walk that says so sees each kind of one."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.site.links import crawl

SOUND = {
    "index.html": """<!doctype html><html><head>
        <link rel="stylesheet" href="assets/look.css"><link rel="canonical" href="https://a.test/">
        <script src="assets/calc.js" defer></script></head><body id="top-of-page">
        <a href="tests/coil.html#what%20to-do">coil</a> <a href="#top-of-page">up</a>
        <a href="#top">top</a> <a href="https://elsewhere.test/">elsewhere</a>
        <a href="tel:112">112</a> <img src="assets/a%20b.svg" srcset="assets/a%20b.svg 2x" alt="">
        <label for="t">t</label><input id="t"><svg><use href="#top-of-page"/></svg>
        <i style="background: url('assets/a b.svg')"></i></body></html>""",
    "tests/coil.html": """<h2 id="what to-do">x</h2><a href="../index.html?q=coil">home</a>""",
    "404.html": """<a href="/tests/coil.html">coil</a><a href="/">home</a>""",
    "assets/look.css": "body{background:url(a%20b.svg)} i{background:url(data:image/png;base64,)}",
    "assets/calc.js": "",
    "assets/a b.svg": "<svg/>",
}


def written(site: Path, files: dict[str, str]) -> Path:
    """Lay files out as a site."""
    for path, text in files.items():
        (site / path).parent.mkdir(parents=True, exist_ok=True)
        (site / path).write_text(text, encoding="utf-8")
    return site


def test_every_reference_of_the_demonstration_site_leads_somewhere(site_dir: Path) -> None:
    """No page, anchor, image, script or style sheet is missing, and nothing comes from outside."""
    found = crawl(site_dir)
    assert found.pages > 20
    assert found.references > 500
    assert not found.faults, "\n" + "\n".join(map(str, found.faults[:40]))


def test_a_sound_site_has_no_fault(tmp_path: Path) -> None:
    """The walk does not cry wolf: each kind of good reference passes."""
    found = crawl(written(tmp_path, SOUND))
    assert found.faults == []
    assert found.pages == 3
    assert found.references == 17  # counted by hand above


@pytest.mark.parametrize(
    ("broken", "said"),
    [
        ('<a href="gone.html">x</a>', "gone.html is not there"),
        ('<a href="Index.html">x</a>', "Index.html is not there"),
        ('<a href="tests/coil.html#gone">x</a>', "no id 'gone'"),
        ('<a href="#gone">x</a>', "no id 'gone'"),
        ('<a href="tests/">x</a>', "is a folder"),
        ('<a href="tests">x</a>', "is a folder"),
        ('<a href=".">x</a>', "is a folder"),
        ('<a href="/tests/coil.html">x</a>', "starts at the root of the host"),
        ('<a href="../index.html">x</a>', "is not there"),
        ('<a href="file:///etc/hosts">x</a>', "unknown scheme"),
        ('<img src="gone.png" alt="">', "gone.png is not there"),
        ('<img src="index.html" srcset="gone.png 2x" alt="">', "gone.png is not there"),
        ('<script src="gone.js"></script>', "gone.js is not there"),
        ('<script src="https://cdn.test/x.js"></script>', "from elsewhere"),
        ('<script src="//cdn.test/x.js"></script>', "from elsewhere"),
        ('<link rel="stylesheet" href="gone.css">', "gone.css is not there"),
        ('<link rel="stylesheet" href="http://cdn.test/x.css">', "from elsewhere"),
        ('<link rel="preconnect" href="https://cdn.test">', "from elsewhere"),
        ("<style>i{background:url(https://cdn.test/x.png)}</style>", "from elsewhere"),
        ('<style>@import "gone.css";</style>', "gone.css is not there"),
        ('<i style="background:url(gone.png)"></i>', "gone.png is not there"),
        ('<svg><use xlink:href="#gone"/></svg>', "no id 'gone'"),
        ('<i id="twice"></i><i id="twice"></i>', "'twice' stands 2 times"),
        ('<i id=""></i>', "an id is empty"),
        ('<label for="gone">x</label>', "the id 'gone'"),
        ('<i aria-labelledby="gone"></i>', "the id 'gone'"),
    ],
)
def test_the_walk_sees_what_is_broken(tmp_path: Path, broken: str, said: str) -> None:
    """Each kind of dead end, planted alone in a sound site, is found at its page and line."""
    files = {**SOUND, "index.html": SOUND["index.html"] + "\n" + broken}
    faults = crawl(written(tmp_path, files)).faults
    assert len(faults) == 1
    assert faults[0].path == "index.html"
    assert said in faults[0].what
    assert faults[0].line == SOUND["index.html"].count("\n") + 2


def test_the_walk_reads_style_sheets(tmp_path: Path) -> None:
    """A picture that a style sheet names is looked for beside the style sheet."""
    files = {**SOUND, "assets/look.css": "i{background:url('../gone.png')}"}
    assert [str(fault) for fault in crawl(written(tmp_path, files)).faults] == [
        "assets/look.css:1: ../gone.png is not there"
    ]


def test_the_not_found_page_counts_from_the_root(tmp_path: Path) -> None:
    """A relative link on the page for unknown addresses would break at every depth but one."""
    files = {**SOUND, "404.html": '<a href="tests/coil.html">coil</a><a href="/gone.html">x</a>'}
    faults = [fault.what for fault in crawl(written(tmp_path, files)).faults]
    assert faults == [
        "/gone.html is not there",
        "tests/coil.html is relative, but this page is shown at any address",
    ]
