"""The state of the vehicle in words: how it stands, what a step counts on, what to restore."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from generator.hazards import FullState, Gap, Guarded, GuardedStep
from generator.pages.book import Book
from generator.pages.strings import say
from generator.records.kinds.work import State

DIMENSIONS = tuple(State.model_fields)
"""Every dimension of the vehicle's state, in the order a record writes them."""

STRIP = ("engine", "ignition", "battery", "support")
"""The four words every step shows; other dimensions appear where they matter."""

ALWAYS = (*STRIP, "high_voltage")
"""What anybody who takes a job up again looks at first; a system not fitted is left out."""

Ways = Mapping[str, Sequence[str]]


def state_words(state: State | FullState, names: Sequence[str] = DIMENSIONS) -> tuple[str, ...]:
    """Give a state in words; a dimension nobody spoke of, or that is not fitted, is left out."""
    words = []
    for name in names:
        value = getattr(state, name)
        if value is not None and str(value) != "not_fitted":
            words.append(say(f"state.{name}.{value}"))
    return tuple(words)


def counts_on(job: Guarded, step: GuardedStep) -> tuple[str, ...]:
    """Give in words how the vehicle stands when a step begins, for a reader who comes back to it.

    Named are the dimensions of :data:`ALWAYS`, those the job asks for at its start, those that
    its steps have changed by then, and all that is undone.
    """
    asked = {name for name in DIMENSIONS if getattr(job.job.entry, name) is not None}
    names = [
        name
        for name in DIMENSIONS
        if name in ALWAYS
        or name in asked
        or step.state_before.word(name) is not job.start.word(name)
    ]
    return state_words(step.state_before, names)


def standing_words(book: Book, job: Guarded, step: GuardedStep) -> tuple[str, ...]:
    """Give what :func:`counts_on` gives, and what is unplugged, off, loose or hooked up."""
    undone = step.state_before.undone.ways
    return (*counts_on(job, step), *_undone(book, undone))


def restore_words(book: Book, left: Guarded, found: Gap) -> tuple[str, ...]:
    """Give what has to be restored before a reader goes on, one line each.

    Parameters
    ----------
    book : Book
        The manual, for the names of parts.
    left : Guarded
        The job the reader comes from.
    found : Gap
        What lies between the state it leaves and the one that the next page counts on.

    Notes
    -----
    What the job has not touched may be so already, and then only has to be seen to; what the job
    has changed is named with how it stands now.
    """
    lines = []
    for name, (is_, needed) in found.words.items():
        words = {"needed": say(f"state.{name}.{needed}"), "found": say(f"state.{name}.{is_}")}
        untouched = left.start.word(name) is left.left.word(name)
        lines.append(say("restore.see_that" if untouched else "restore.now", **words))
    return (*lines, *_undone(book, found.undone, mend=True))


def _undone(book: Book, ways: Ways, *, mend: bool = False) -> tuple[str, ...]:
    guards = set(ways.get("guards_off", ()))
    return tuple(
        say(f"restore.{way}" if mend else f"undone.{way}", part=_name(book, id_))
        for way, ids in ways.items()
        for id_ in ids
        if way != "removed" or id_ not in guards  # one line for a guard that is off
    )


def _name(book: Book, id_: str) -> str:
    part = book.kb.records.get("components", {}).get(id_)
    return part.title if part is not None else say("undone.instrument")
