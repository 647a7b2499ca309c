"""The policy of the built pages: one for all, before anything it governs, and nothing it bars."""

from __future__ import annotations

import re
from html.parser import HTMLParser
from pathlib import Path

import pytest
from mkdocs.config import load_config

from generator.mkdocs_plugin import FettlebookPlugin
from generator.pages.policy import POLICY

# Content Security Policy Level 3 (W3C), 6: the directives, written here once more by hand.
WANTED = {
    "default-src": {"'none'"}, "script-src": {"'self'"}, "style-src": {"'self'"},
    "img-src": {"'self'", "data:"}, "connect-src": {"'self'"}, "worker-src": {"'self'"},
    "manifest-src": {"'self'"}, "form-action": {"'none'"}, "base-uri": {"'none'"},
}  # fmt: skip


# HTML, 4.12.1.1: a script element of this type is a data block, which is never run.
DATA = "application/ld+json"


class Reader(HTMLParser):
    """Notes what a policy has to do with."""

    def __init__(self) -> None:
        super().__init__()
        self.policies: list[str] = []
        self.barred: list[str] = []
        self.governed_before = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Look at one element."""
        given = {name: value or "" for name, value in attrs}
        if given.get("http-equiv", "").lower() == "content-security-policy":
            self.policies.append(given["content"])
        elif tag in ("link", "script", "style", "img", "body") and not self.policies:
            self.governed_before = True
        code = tag == "script" and "src" not in given and given.get("type") != DATA
        if tag == "style" or code or tag == "base":
            self.barred.append(f"<{tag}>")
        for name, value in given.items():
            if name == "style" or name.startswith("on"):
                self.barred.append(f"{name} on <{tag}>")
            if name in ("src", "href", "action") and value.strip().lower().startswith("javascript"):
                self.barred.append(f"{name} on <{tag}> is a script")

    handle_startendtag = handle_starttag


def faults_of(page: str) -> list[str]:
    """Give what is wrong with a page's policy, or what it would bar."""
    reader = Reader()
    reader.feed(page)
    found = [f"{bar} is barred" for bar in reader.barred]
    if reader.policies != [POLICY]:
        found.append(f"policies: {reader.policies}")
    if reader.governed_before:
        found.append("something stands before the policy that it should govern")
    return found


def test_the_policy_is_as_strict_as_was_asked() -> None:
    """Nothing inline, nothing evaluated, nothing from elsewhere."""
    parts = [directive.split() for directive in POLICY.split(";")]
    assert {name: set(values) for name, *values in parts} == WANTED
    assert "unsafe" not in POLICY


def test_every_page_has_the_policy_and_nothing_that_it_bars(site_dir: Path) -> None:
    """Pages of records, hand-written ones, moved ones and the one for unknown addresses."""
    pages = sorted(site_dir.rglob("*.html"))
    assert len(pages) > 200
    found = {
        page.relative_to(site_dir).as_posix(): faults_of(page.read_text("utf-8")) for page in pages
    }
    assert {address: faults for address, faults in found.items() if faults} == {}


POLICED = f'<head><meta http-equiv="Content-Security-Policy" content="{POLICY}">'


@pytest.mark.parametrize(
    ("page", "said"),
    [
        ("<head>", "policies: []"),
        (POLICED + POLICED, "policies: "),
        ("<head><link rel=icon href=x>" + POLICED.removeprefix("<head>"), "before the policy"),
        (POLICED.replace("'none'", "*"), "policies: "),
        (POLICED + "<script>1</script>", "<script> is barred"),
        (POLICED + "<script type=module>1</script>", "<script> is barred"),
        (POLICED + "<svg><style>x{}</style></svg>", "<style> is barred"),
        (POLICED + "<svg><path style='fill:red'/></svg>", "style on <path>"),
        (POLICED + "<body onload=x>", "onload on <body>"),
        (POLICED + "<a href='javascript:x'>x</a>", "is a script"),
        (POLICED + "<base href='/'>", "<base> is barred"),
    ],
)
def test_each_breach_is_seen(page: str, said: str) -> None:
    """The look over the pages knows every way to break the policy; a sound page has none."""
    assert any(said in fault for fault in faults_of(page)), faults_of(page)
    sound = f"<script src=x.js></script><script type={DATA}>1</script><p class=style>x"
    assert faults_of(POLICED + sound) == []


@pytest.mark.parametrize(("command", "wanted"), [("build", POLICY), ("serve", "")])
def test_a_preview_has_no_policy(command: str, wanted: str, manual_dir: Path) -> None:
    """The host's own script, which refreshes a served page, stands in the page itself."""
    config = load_config(str(manual_dir / "mkdocs.yml"))
    plugin = config.plugins["fettlebook"]
    assert isinstance(plugin, FettlebookPlugin)
    plugin.on_startup(command=command, dirty=False)
    plugin.on_config(config)
    assert config.extra["fettlebook"]["policy"] == wanted


def test_none_of_the_themes_scripts_or_styles_is_published(site_dir: Path) -> None:
    """Every script and style sheet of the site is ours, and a page says which it wants."""
    theirs = [
        path.name for path in site_dir.rglob("*")
        if re.search(r"\.(min\.(js|css)|map)$", path.name)
    ]  # fmt: skip
    assert theirs == []
