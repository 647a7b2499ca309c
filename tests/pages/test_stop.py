"""Reserved work stops the page: who may do it, what stays undone, and not one command more."""

from __future__ import annotations

import re
from html import unescape

import pytest

from generator.pages.page import Page
from generator.records.kinds.knowledge import Person
from generator.records.kinds.work import Job
from tests.demo import changed, demonstration, with_record
from tests.hazards.build import job, manual, part, step
from tests.hazards.build import made as record
from tests.pages.books import made, page_of, whole

RESERVED: tuple[tuple[str, str, dict[str, str], str], ...] = (
    ("pyrotechnic", "unplug", {}, "trained on restraint systems"),
    ("high-voltage", "unplug", {"high_voltage": "live"}, "authorised high-voltage technician"),
    ("refrigerant", "remove", {}, "certified for refrigerants"),
    ("fuel-gas", "remove", {}, "approved gas-fuel fitter"),
)
"""A part, what is done to it, what the job begins with, and who alone may do it."""


def little(energy: str, act: str, entry: dict[str, str]) -> Page:
    """Give the page of a job that runs into reserved work at its third step."""
    parts = ("sensor",) if act == "unplug" else ("fan-guard",)
    story = job(
        "story",
        step("key_off", "driver_seat", do="Take the key out first."),
        step("unplug", "engine_bay", do="Unplug the little sensor.", acts_on=["sensor"]),
        step(act, "engine_bay", do="Take the reserved part.", acts_on=[energy], note="With care."),
        step("look", "engine_bay", do="Look for what comes later.", acts_on=list(parts)),
        step("plug", "engine_bay", do="Plug the little sensor in.", acts_on=["sensor"]),
        entry=entry, applies_to=["hybrid-car"], job_card=["Write down what you measured."],
    )  # fmt: skip
    role = record(Person, "people", "mechanic", may=["Work."])
    return page_of(manual(story, role), "procedures/story")


def step_of(html: str, number: str) -> str:
    """Give the HTML of a step, up to the next one or the end of the list."""
    start = html.index(f'id="step-{number}"')
    return re.split(r'<li class="step|</ol>\n<template', html[start:])[0]


@pytest.mark.parametrize(("energy", "act", "entry", "who"), RESERVED, ids=lambda v: str(v)[:20])
def test_the_page_says_who_and_gives_no_further_command(
    energy: str, act: str, entry: dict[str, str], who: str
) -> None:
    """Steps before are there; the reserved one is named as undone; those after are nowhere."""
    html = little(energy, act, entry).html
    commands = re.findall(r'<p class="command">.*?</span> <span>(.*?)</span></p>', html)
    assert commands[:2] == ["Take the key out first.", "Unplug the little sensor."]
    assert commands[2:] == [commands[2]] and commands[2].startswith("Stop.")
    stopped = unescape(step_of(html, "3"))
    assert who in stopped.split("<dl", 1)[1]
    assert re.search(r"Leave undone</dt><dd>“Take the reserved part\.”", stopped)
    for text in ("With care", "what comes later", "Plug the little sensor", "Write down"):
        assert text not in html, text
    assert html.count("Take the reserved part") == 1


def test_the_box_stands_before_the_stop_and_the_head_announces_it() -> None:
    """The reserved step keeps its box first, and the head of the page says where it ends."""
    html = little(*RESERVED[0][:3]).html
    stopped = step_of(html, "3")
    assert stopped.index('class="signal signal-warning"') < stopped.index('class="command"')
    head = html[: html.index('id="steps"')]
    assert 'href="#step-3"' in head and "stops at step 3" in head


def test_the_vehicle_is_handed_over_as_it_stands() -> None:
    """What earlier steps left undone is named where the page stops."""
    assert "unplugged: sensor" in step_of(little(*RESERVED[0][:3]).html, "3")


def test_the_list_of_contents_names_only_what_is_there() -> None:
    """No entry leads to a part of the page that the stop leaves out."""
    page = little(*RESERVED[0][:3])
    assert all(f'id="{heading.anchor}"' in page.html for heading in page.contents)
    assert "job-card" not in [heading.anchor for heading in page.contents]


@pytest.mark.parametrize(
    "key", ["tests/winding-resistance", "replacements/replace-crank-sensor-hall"]
)
def test_figures_values_and_outcomes_of_reserved_work_are_left_out(key: str) -> None:
    """Where leads go, what to expect, what to fit and where to go on are instructions too."""
    kind, _, id_ = key.partition("/")
    kb = with_record(demonstration(), part("airbag", "pyrotechnic"))
    one = kb.records[kind][id_]
    assert isinstance(one, Job)
    whole = page_of(kb, key)
    steps = [step("unplug", "cabin", do="Unplug it.", acts_on=["airbag"]), *one.steps]
    stopped = page_of(changed(kb, kind, id_, steps=steps), key)
    for anchor in ("hookup", "values", "outcomes", "parts", "access", "verify", "leaves"):
        assert f'<section id="{anchor}">' not in stopped.html
    assert re.search(r'<section id="(outcomes|verify)">', whole.html)
    assert [heading for heading in whole.contents if heading not in stopped.contents]


def test_a_job_without_reserved_work_goes_to_its_end() -> None:
    """No page of the demonstration manual stops, because none of its work is reserved."""
    pages = {page.url: page.html for page in made().pages}
    for key, guarded in whole().guarded.items():
        html = pages[f"{key}.html"]
        assert html.count('<p class="command">') == len(guarded.steps)
        assert 'class="step stop"' not in html
