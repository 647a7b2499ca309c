"""Overdue reviews, by the reader's own clock."""

from __future__ import annotations

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import Watch
from tests.browser.static_server import StaticServer


@pytest.mark.parametrize(
    ("now", "said", "marked"),
    [
        ("2027-09-21T23:30:00", "Nothing is overdue today.", 0),
        ("2027-09-22T00:30:00", "Overdue today: 37 records.", 3),
    ],
)
def test_the_browser_tells_what_is_overdue_today(
    phone_page: Watch, site_server: StaticServer, now: str, said: str, marked: int
) -> None:
    """On the last day nothing is; an hour into the next, the groups of that day are marked."""
    page = phone_page("light")
    page.clock.set_fixed_time(now)
    page.goto(site_server.url("state-of-the-manual.html"))
    expect(page.locator(".overdue-said")).to_have_text(said)
    expect(page.locator(".due-group .overdue:visible")).to_have_count(marked)
    page.goto(site_server.url("tests/winding-resistance.html"))
    late = page.locator(".foot .overdue")
    expect(late).to_be_visible() if marked else expect(late).to_be_hidden()
