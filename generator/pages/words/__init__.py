"""Every word of the interface, page family by page family."""

from __future__ import annotations

from generator.pages.words import (
    cautions,
    changes,
    diagnosis,
    faults,
    frame,
    in_hand,
    offline,
    reader,
    record_form,
    search,
    standing,
    things,
    upkeep,
    values,
    verdicts,
    withdrawn,
    work,
    wrong,
)

ALL: dict[str, str] = {
    **frame.WORDS, **diagnosis.WORDS, **values.WORDS, **verdicts.WORDS, **work.WORDS,
    **things.WORDS, **reader.WORDS, **faults.WORDS, **cautions.WORDS, **search.WORDS,
    **offline.WORDS, **upkeep.WORDS, **in_hand.WORDS, **withdrawn.WORDS, **standing.WORDS,
    **changes.WORDS, **record_form.WORDS, **wrong.WORDS,
}  # fmt: skip
"""Key to words; keys are unique over all families, which a test holds."""
