"""A job as schema.org's HowTo, for programs that read pages: the same steps, cautions and tools.

https://schema.org/HowTo names the properties. The block is data, which no browser runs.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from generator.hazards import GuardedStep, HazardLine, Word
from generator.pages import routes
from generator.pages.book import LinkTo
from generator.pages.jobs import JobView
from generator.pages.strings import say


def how_to(view: JobView, description: str) -> dict[str, Any]:
    """Give a job as a HowTo; its template escapes it.

    A step that is reserved stands with its cautions and the word to stop, never with its command.

    Parameters
    ----------
    view : JobView
        What the page shows.
    description : str
        The page's one plain sentence.
    """
    page = routes.address(view.job)
    texts = [(step.guarded, step.guarded.step.do) for step in view.steps]
    if view.stop is not None:
        texts.append((view.stop.step.guarded, say("stop.command")))
    found: dict[str, Any] = {
        "@context": "https://schema.org",
        "@type": "HowTo",
        "name": view.job.title,
        "description": description,
        "totalTime": duration(view.job.minutes),
        "tool": _needed(page, "HowToTool", view.tools),
        "supply": _needed(page, "HowToSupply", view.supplies),
        "step": [
            {
                "@type": "HowToStep",
                "position": position,
                "url": f"#{routes.step(guarded.number)}",
                "text": " ".join((*_cautions(guarded), command)),
            }
            for position, (guarded, command) in enumerate(texts, start=1)
        ],
    }
    return {name: value for name, value in found.items() if value not in ([], "")}


def duration(minutes: float) -> str:
    """Give minutes as an ISO 8601 duration, to the second; "" for none."""
    seconds = round(60 * minutes)
    hours, seconds = divmod(seconds, 3600)
    parts = ((hours, "H"), (seconds // 60, "M"), (seconds % 60, "S"))
    told = "".join(f"{number}{unit}" for number, unit in parts if number)
    return f"PT{told}" if told else ""


def _needed(page: str, kind: str, links: Iterable[LinkTo]) -> list[dict[str, str]]:
    return [
        {"@type": kind, "name": link.title, "url": routes.relative(page, link.target)}
        for link in links
    ]


def _cautions(guarded: GuardedStep) -> Iterator[str]:
    """Give what stands above the command on the page, in its order."""
    for box in guarded.boxes:
        for line in box.hazards:
            yield f"{_word(line.word)}: {' '.join(_said(line))}"
    for reminder in guarded.reminders:
        yield f"{say('signal.still')} {_word(reminder.word)}: {reminder.text}"


def _word(word: Word) -> str:
    return say(f"signal.{str(word).lower()}")


def _said(line: HazardLine) -> Iterator[str]:
    yield from (line.hazard, line.consequence, *line.avoid)
    if line.reserved_for:
        yield say("signal.reserved", who=line.reserved_for.rstrip("."))
    if line.defer:
        yield say("signal.defer", what=line.defer.rstrip("."))
