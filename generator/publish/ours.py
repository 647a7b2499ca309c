"""The files made from records: each made again only when something that was read for it changed."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from functools import partial

from generator.pages.page import Page
from generator.publish.complete import File
from generator.publish.files import Made, digest_of
from generator.publish.frame import Frame, Stand, stand_of
from generator.publish.host import LISTED
from generator.publish.last import Last
from generator.site import Plan


class Ours:
    """The pages of records in their frames, and the texts beside them.

    Parameters
    ----------
    plan : Plan
        What makes each of them.
    frames : mapping
        Stand-in to frame.
    before : Last
        The last build. The memory of the records says which page is still the same; a file of
        the last site is taken over where its frame is, too.
    """

    def __init__(self, plan: Plan, frames: Mapping[Stand, Frame], before: Last) -> None:
        self._plan, self._frames, self._before = plan, frames, before
        self.made_of: dict[str, str] = {}
        """Address to what the file is made of."""
        self.changed: set[str] = set()
        """Addresses of files that the last site did not have as they are now."""

    def files(self) -> Iterator[File]:
        """Give every file; one that is known is made only if somebody asks for its bytes."""
        for address, text in self._plan.texts.items():
            yield address, self._text(address, text)
        for address, page in self._plan.pages.items():
            yield address, self._page(address, page)

    def html(self, address: str) -> str:
        """Give a page's own content, "" for a text."""
        page = self._plan.pages.get(address)
        return page().html if page else ""

    def _text(self, address: str, make: Callable[[], str]) -> Made:
        fresh: list[bytes] = []

        def told() -> str:
            fresh.append(make().encode())
            return digest_of(fresh[0])

        digest = self._plan.kb.remember("text", address, told)

        def again() -> bytes:
            return make().encode()

        known = self._known(address, digest, again)
        return known or Made.of(fresh[0] if fresh else again())

    def _page(self, address: str, make: Callable[[], Page]) -> Made:
        fresh: list[Page] = []

        def told() -> tuple[str, bool]:
            fresh.append(make())
            return digest_of(repr(fresh[0]).encode()), bool(fresh[0].contents)

        digest, contents = self._plan.kb.remember("page", address, told)
        frame = self._frames[stand_of(address, contents, LISTED)]
        known = self._known(address, f"{digest} {frame.digest}", partial(_filled, frame, make))
        return known or Made.of(frame.fill(fresh[0] if fresh else make()))

    def _known(self, address: str, made_of: str, again: Callable[[], bytes]) -> Made | None:
        """Give a file of the last site, if it was made of the same."""
        self.made_of[address] = made_of
        if self._before.made.get(address) == made_of and address in self._before.files:
            return Made(self._before.files[address][0], again)
        self.changed.add(address)
        return None


def _filled(frame: Frame, make: Callable[[], Page]) -> bytes:
    return frame.fill(make())
