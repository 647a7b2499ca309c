"""Two ways to work a page: with a thumb, and with a keyboard alone."""

from __future__ import annotations

from typing import Protocol

from playwright.sync_api import Locator, Page

MOST_STOPS = 400
"""No page of ours has so many places to stop at; past them the goal cannot be reached."""

# Where the keyboard stands: on the goal or not, and whether a reader can see that it stands there.
STANDS = """(goal) => {
  const at = document.activeElement;
  if (at === document.body) return { there: false, lost: "" };
  const box = at.getBoundingClientRect();
  const { outlineStyle, outlineWidth } = getComputedStyle(at);
  const marked = outlineStyle !== "none" && parseFloat(outlineWidth) >= 2;
  const inSight = box.width > 0 && box.height > 0 && box.bottom > 0 && box.top < innerHeight;
  return { there: at === goal, lost: marked && inSight ? "" : at.outerHTML.slice(0, 120) };
}"""


class Hand(Protocol):
    """What the tests ask of a reader's hand."""

    def press(self, goal: Locator) -> None:
        """Go for a link, a button or a field, and use it."""

    def write(self, field: Locator, text: str) -> None:
        """Type into a field."""


class Thumb:
    """Taps, and types on what the screen brings up."""

    def __init__(self, page: Page) -> None:
        self._page = page

    def press(self, goal: Locator) -> None:
        """Tap it."""
        goal.tap()

    def write(self, field: Locator, text: str) -> None:
        """Tap the field and type."""
        field.tap()
        self._page.keyboard.type(text)


class Keys:
    """Goes from place to place with Tab, uses what it stands on with Enter, has no pointer."""

    def __init__(self, page: Page) -> None:
        self._page = page

    def reach(self, goal: Locator) -> None:
        """Press Tab until the goal has the focus; at each stop it must be seen where that is."""
        for _ in range(MOST_STOPS):
            self._page.keyboard.press("Tab")
            stands = goal.evaluate(STANDS)  # found anew: a page may draw it again meanwhile
            assert not stands["lost"], f"nobody sees that the keyboard stands at {stands['lost']}"
            if stands["there"]:
                return
        raise AssertionError(f"Tab does not lead to {goal}")

    def press(self, goal: Locator) -> None:
        """Tab to it and press Enter."""
        self.reach(goal)
        self._page.keyboard.press("Enter")

    def write(self, field: Locator, text: str) -> None:
        """Tab to the field and type."""
        self.reach(field)
        self._page.keyboard.type(text)
