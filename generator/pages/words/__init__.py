"""Every word of the interface, page family by page family."""

from __future__ import annotations

from generator.pages.words import diagnosis, frame, things, values, work

ALL: dict[str, str] = {
    **frame.WORDS, **diagnosis.WORDS, **values.WORDS, **work.WORDS, **things.WORDS,
}  # fmt: skip
"""Key to words; keys are unique over all families, which a test holds."""
