"""Jobs as HowTo data: the published vocabulary, the page's own steps, and nothing that breaks out.

The names of properties are those of https://schema.org/HowTo, /HowToStep, /HowToTool and
/HowToSupply, written down here by hand with the types that each may have.
"""

from __future__ import annotations

import json
import re
from html import unescape
from html.parser import HTMLParser
from typing import Any

import jsonschema
import pytest

from generator.pages.how_to import duration
from generator.pages.page import Page
from tests.demo import changed, demonstration
from tests.pages.books import made, page_of
from tests.pages.test_stop import little

TEXT = {"type": "string", "minLength": 1}
THING = {
    "additionalType": TEXT, "alternateName": TEXT, "description": TEXT, "identifier": TEXT,
    "image": TEXT, "name": TEXT, "sameAs": TEXT, "subjectOf": TEXT, "url": TEXT,
}  # fmt: skip
LISTED = {"item": TEXT, "nextItem": TEXT, "position": {"type": "integer"}, "previousItem": TEXT}


def of_type(name: str, required: list[str], **own: Any) -> dict[str, Any]:
    """Give the shape of a schema.org type: its own properties and those of a Thing, no others."""
    return {
        "type": "object",
        "required": ["@type", *required],
        "properties": {"@type": {"const": name}, **THING, **own},
        "additionalProperties": False,
    }


TOOL = of_type("HowToTool", ["name"], requiredQuantity=TEXT, **LISTED)
SUPPLY = of_type("HowToSupply", ["name"], requiredQuantity=TEXT, estimatedCost=TEXT, **LISTED)
STEP = of_type("HowToStep", ["text", "position", "url"], text=TEXT, **LISTED)
HOW_TO = of_type(
    "HowTo",
    ["@context", "name", "description", "step"],
    **{"@context": {"const": "https://schema.org"}},
    step={"type": "array", "items": STEP, "minItems": 1},
    tool={"type": "array", "items": TOOL, "minItems": 1},
    supply={"type": "array", "items": SUPPLY, "minItems": 1},
    # A duration in days, hours, minutes and seconds of ISO 8601.
    totalTime={"pattern": r"^P(?=.)(\d+D)?(T(?=.)(\d+H)?(\d+M)?(\d+(\.\d+)?S)?)?$"},
    estimatedCost=TEXT, performTime=TEXT, prepTime=TEXT, inLanguage=TEXT, dateModified=TEXT,
    **{"yield": TEXT},
)  # fmt: skip


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
    jsonschema.validate(found, HOW_TO)
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
