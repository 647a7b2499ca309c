"""Between two pages: what one leaves and the next counts on, in words, before the link."""

from __future__ import annotations

import re
from html import unescape
from typing import Any

from generator.records.kinds.work import State, Test
from tests.demo import changed, demonstration
from tests.pages.books import page_of

FROM, TO = "winding-resistance", "insulation-to-ground"


def outcomes(**target: Any) -> str:
    """Give the outcomes of a test, one of its targets changed."""
    kb = changed(demonstration(), "tests", TO, **target) if target else demonstration()
    return outcomes_of(kb)


def outcomes_of(kb: Any, id_: str = FROM) -> str:
    """Give the part of a test's page that says where to go on."""
    html = page_of(kb, f"tests/{id_}").html
    return unescape(html[html.index('id="outcomes"') :])


def way_to(html: str, id_: str) -> str:
    """Give the onward block that links to a test."""
    blocks = re.split(r'<div class="onward">', html)[1:]
    return next(block for block in blocks if f'{id_}.html"' in block)


def test_another_state_is_demanded_before_the_link() -> None:
    """A target that counts on the battery off says so before its link."""
    entry = State.model_validate({"battery": "disconnected"}, strict=False)
    block = way_to(outcomes(entry=entry), TO)
    assert "battery off, unless it is so already" in block
    assert block.index("restore") < block.index("<a href")


def test_nothing_is_demanded_where_nothing_is_wanting() -> None:
    """The near miss: the same link, with a target that takes the vehicle as it is left."""
    assert "restore" not in way_to(outcomes(), TO)


def test_what_is_still_apart_is_demanded_on_every_way_on() -> None:
    """A test that ends with a plug apart names it, before links and before the order alike."""
    kb = demonstration()
    test = kb.get("tests", FROM, Test)
    unplug = next(n for n, step in enumerate(test.steps) if step.action == "unplug")
    html = outcomes_of(changed(kb, "tests", FROM, steps=list(test.steps[: unplug + 1])))
    blocks = [b for b in re.split(r'<div class="onward">', html)[1:] if "<a href" in b]
    assert len(blocks) >= 3
    assert all("plug in again: Crank" in block for block in blocks)


def test_what_a_job_changed_is_named_with_how_it_is_left() -> None:
    """A test that leaves the engine running demands it stopped, for the order as for a link."""
    kb = demonstration()
    test = kb.get("tests", FROM, Test)
    start = test.steps[0].model_copy(
        update={"do": "Start it.", "action": "start_engine", "acts_on": [], "sets": None}
    )
    changed_kb = changed(kb, "tests", FROM, steps=[*test.steps, start])
    html = outcomes_of(changed_kb)
    assert "engine stopped (it is left: engine running)" in html


def test_a_proof_says_what_to_restore_before_it() -> None:
    """The tests that prove a repair are ways on too."""
    kb = demonstration()
    job = kb.records["replacements"]["replace-crank-sensor-inductive"]
    proof = job.verify[0].test  # type: ignore[attr-defined]
    entry = State.model_validate({"support": "lift"}, strict=False)
    html = page_of(changed(kb, "tests", proof, entry=entry), job.key).html
    assert "on the lift" in html[html.index('id="verify"') :]
