"""Jobs as HowTo data: the published vocabulary, the page's own steps, and nothing that breaks out.

The vocabulary in how_to.csv is release 12.0 of https://schema.org, every property of HowTo,
HowToStep, HowToTool and HowToSupply, taken from its files schemaorg-current-https-types.csv and
-properties.csv.
"""

from __future__ import annotations

import csv
import json
import re
from collections.abc import Iterator
from html import unescape
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import pytest

from generator.pages.how_to import duration
from generator.pages.page import Page
from tests.demo import changed, demonstration
from tests.pages.books import made, page_of
from tests.pages.test_stop import little

VOCABULARY = {
    row["property"]: (set(row["of"].split()), set(row["values"].split()))
    for row in csv.DictReader((Path(__file__).parent / "how_to.csv").read_text().splitlines())
}
"""Property: the types it belongs to, inherited ones too, and what it may hold."""

DURATION = re.compile(r"P(?=.)(\d+D)?(T(?=.)(\d+H)?(\d+M)?(\d+(\.\d+)?S)?)?")
"""Days, hours, minutes and seconds of ISO 8601."""

NEEDED = {"HowTo": {"name", "description", "step"}, "HowToStep": {"text", "position", "url"},
          "HowToTool": {"name"}, "HowToSupply": {"name"}}  # fmt: skip


def faults_of(node: dict[str, Any]) -> Iterator[str]:
    """Give what the vocabulary does not know, or what is missing, in a node and those below it."""
    kind, keys = node["@type"], {key for key in node if not key.startswith("@")}
    yield from (f"{kind} without {key}" for key in NEEDED[kind] - keys)
    for key in keys:
        of, holds = VOCABULARY.get(key, (set(), set()))
        if kind not in of:
            yield f"{kind} has no {key}"
        for value in node[key] if isinstance(node[key], list) else [node[key]]:
            if not any(fits(value, word) for word in holds):
                yield f"{kind}: {key} does not hold {value!r}"
            if isinstance(value, dict):
                yield from faults_of(value)


def fits(value: object, kind: str) -> bool:
    """Say whether a value is of one of the vocabulary's types."""
    match kind:
        case "Text" | "URL":
            return isinstance(value, str) and value.strip() != ""
        case "Integer":
            return isinstance(value, int)
        case "Duration":
            return isinstance(value, str) and DURATION.fullmatch(value) is not None
    return isinstance(value, dict) and value["@type"] == kind


class Blocks(HTMLParser):
    """Notes the data blocks of a page, every script beside them, and the anchors."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.found: list[str] = []
        self.scripts = 0
        self.anchors: set[str] = set()
        self.inside = False
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Look at one element."""
        given = dict(attrs)
        if given.get("id"):
            self.anchors.add(given["id"] or "")
        if tag == "script":
            self.scripts += 1
            self.inside = given == {"type": "application/ld+json"}
            self.found += [""] if self.inside else []

    def handle_endtag(self, tag: str) -> None:
        """Leave a block."""
        self.inside = self.inside and tag != "script"

    def handle_data(self, data: str) -> None:
        """Keep what a block holds."""
        if self.inside:
            self.found[-1] += data


def data_of(page: Page) -> tuple[dict[str, Any], Blocks]:
    """Give the one HowTo of a page, sound by the vocabulary, and what else stands there."""
    blocks = Blocks(page.html)
    assert (len(blocks.found), blocks.scripts) == (1, 1), page.url
    found = json.loads(blocks.found[0])
    assert found["@context"] == "https://schema.org"
    assert list(faults_of(found)) == [], page.url
    return found, blocks


def commands(page: Page) -> list[str]:
    """Give the commands that a page shows, in order."""
    shown = re.findall(r'<p class="command">.*?</span> <span>(.*?)</span></p>', page.html)
    return [unescape(text) for text in shown]


def test_every_job_and_nothing_else_carries_its_own_steps() -> None:
    """Step by step the data says the command that is shown, and leads to an anchor of the page."""
    jobs = 0
    for page in made().pages:
        if not re.match(r"(tests|replacements|procedures)/(?!index)", page.url):
            assert "ld+json" not in page.html, page.url
            continue
        found, blocks = data_of(page)
        assert found["name"] == page.title
        shown = commands(page)
        assert len(found["step"]) == len(shown), page.url
        for number, (step, command) in enumerate(zip(found["step"], shown, strict=True), start=1):
            assert step["position"] == number
            assert step["text"].endswith(command), page.url
            assert step["url"].startswith("#")
            assert step["url"][1:] in blocks.anchors, page.url
        jobs += 1
    assert jobs > 30


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"duration": "PT8M"}, "HowTo has no duration"),
        ({"totalTime": "8 minutes"}, "HowTo: totalTime does not hold '8 minutes'"),
        ({"name": ""}, "HowTo: name does not hold ''"),
        ({"tool": [{"@type": "HowToTool", "text": "x"}]}, "HowToTool has no text"),
        ({"tool": [{"@type": "HowToSupply", "name": "x"}]}, "HowTo: tool does not hold"),
        ({"step": [{"@type": "HowToStep", "url": "#x", "text": "x"}]}, "HowToStep without pos"),
    ],
)  # fmt: skip
def test_what_the_vocabulary_lacks_is_noticed(change: dict[str, Any], said: str) -> None:
    """A property of no such type, a value of another, a thing that is missing: each is a fault."""
    found, _ = data_of(next(p for p in made().pages if p.url == "tests/winding-resistance.html"))
    assert any(fault.startswith(said) for fault in faults_of({**found, **change}))


def test_a_caution_stands_with_its_command() -> None:
    """Word, hazard, harm and how to stay clear come before the command, in the same text."""
    page = next(p for p in made().pages if p.url == "tests/winding-resistance.html")
    found, _ = data_of(page)
    assert found["totalTime"] == "PT8M"
    assert {"@type": "HowToTool", "name": "Multimeter",
            "url": "../tools-and-supplies.html#tools-multimeter"} in found["tool"]  # fmt: skip
    assert found["supply"][0]["name"] == "Contact cleaner"
    assert found["step"][0]["text"] == "Switch the ignition off and take the key out."
    said = found["step"][1]["text"]
    assert said.startswith("WARNING: An electric fan can start with the engine stopped")
    assert "CAUTION: Exhaust, turbocharger, manifold or brakes are hot." in said
    assert said.endswith("keep leads clear. Unplug the sensor's connector on the gearbox bracket.")
    assert found["step"][2]["text"].startswith("Still true: WARNING: The electric fan can start")


def test_reserved_work_is_not_told() -> None:
    """The data ends where the page does: the word to stop with its cautions, no command of it."""
    found, _ = data_of(little("pyrotechnic", "unplug", {}))
    last = found["step"][-1]["text"]
    assert last.endswith("Stop. What comes here is reserved work, and this page does not "
                         "instruct it.")  # fmt: skip
    assert "Who may do it" in last
    assert "Take the reserved part." not in json.dumps(found)
    assert "Look for what comes later." not in json.dumps(found)


def test_no_text_breaks_out_of_it() -> None:
    """A text that would end the block, open another or be a tag is read back as written."""
    hostile = "</script><script>x</script><!-- <script> ]]> & ' \" \\ \u2028 Ω"
    kind, id_ = "procedures", "clear-and-watch-codes"
    page = page_of(changed(demonstration(), kind, id_, title=hostile), f"{kind}/{id_}")
    found, _ = data_of(page)
    assert found["name"] == hostile
    assert hostile in found["description"]


@pytest.mark.parametrize(
    ("minutes", "said"),
    [(8, "PT8M"), (0.5, "PT30S"), (60, "PT1H"), (95.25, "PT1H35M15S"), (1440, "PT24H"), (0, "")],
)
def test_minutes_become_a_duration(minutes: float, said: str) -> None:
    """ISO 8601: hours, minutes and seconds, none of them where it is nought."""
    assert duration(minutes) == said
