"""What a page is for, and which of its parts are for some vehicles only."""

from __future__ import annotations

import json
import re

from generator.pages import choice
from generator.records.kinds.things import Component, Vehicle
from generator.records.kinds.work import Test
from tests.pages.books import made, whole


def pages() -> dict[str, str]:
    """Give every page of the demonstration by its address."""
    return {page.url: page.html for page in made().pages}


def test_a_page_says_which_vehicles_it_is_for() -> None:
    """A test's, a part's and a vehicle's own page name their vehicles; the home page names none."""
    found = pages()
    kb = whole().kb
    named = {record.key: record.applies_to for record in kb.all("tests", Test)}
    named |= {record.key: record.fitted_to for record in kb.all("components", Component)}
    for key, ids in named.items():
        assert re.findall(r'data-vehicles="([^"]*)"', found[f"{key}.html"]) == [" ".join(ids)]
    for vehicle in whole().kb.all("vehicles", Vehicle):
        assert f'data-vehicles="{vehicle.id}"' in found[f"vehicles/{vehicle.id}.html"]
    assert "data-vehicles" not in found["index.html"]


def test_a_part_is_marked_only_where_it_is_for_fewer_than_its_page() -> None:
    """On a page for one vehicle nothing of that vehicle is marked; on one for two its order is."""
    kb = whole().kb
    one, two = kb.get("tests", "winding-resistance", Test), kb.get("tests", "battery-rest", Test)
    assert choice.marker(whole(), one)(["corrie-1-2"]) == ""
    assert choice.marker(whole(), two)(["corrie-1-2", "corrie-1-6"]) == ""
    assert choice.marker(whole(), two)(["corrie-1-2"]) == ' data-for="corrie-1-2"'
    assert choice.marker(whole(), None)([]) == ""
    complaint = pages()["symptoms/cuts-out-hot.html"]
    assert re.search(r'id="on-corrie-1-6" data-for="corrie-1-6"', complaint)


def test_every_mark_names_vehicles_of_the_manual() -> None:
    """No mark names a vehicle that nobody can choose: its part could never come first."""
    known = {vehicle.id for vehicle in whole().kb.all("vehicles", Vehicle)}
    marked = 0
    for html in pages().values():
        for ids in re.findall(r'data-for="([^"]*)"', html):
            assert set(ids.split()) <= known
            marked += 1
    assert marked > 20


def test_the_vehicles_come_with_how_to_tell_them() -> None:
    """The script that all pages share holds each vehicle and the record's own words."""
    text = choice.script(whole())
    found = json.loads(text.removeprefix("window.fettleVehicles=").removesuffix(";\n"))
    kb = whole().kb
    assert [each["id"] for each in found["vehicles"]] == [v.id for v in kb.all("vehicles", Vehicle)]
    for each in found["vehicles"]:
        assert each["tell"] == kb.get("vehicles", each["id"], Vehicle).tell_apart
    assert set(found["words"]) == set(choice.SAID)
