"""The job in hand: the words that its script puts on a page."""

from __future__ import annotations

import json

from generator.pages.strings import say

SAID = (
    "begin_head", "begin_lead", "plate", "mileage", "said", "vehicle", "any", "begin", "save",
    "back", "no_plate", "full", "head", "ticked_one", "ticked", "change", "change_head", "aside",
    "another", "others", "awake", "awake_on", "awake_off", "awake_refused", "awake_none", "clear",
    "clear_head", "clear_lead", "clear_yes", "clear_no", "give", "give_lead", "link", "copy",
    "copied", "copy_self", "share", "code", "code_lead", "code_none", "file", "from_folder",
    "take", "take_lead", "take_file", "arrived_head", "arrived_lead", "arrived_again",
    "arrived_yes", "arrived_no", "arrived_bad", "readings", "read_before", "read_after",
)  # fmt: skip
VERDICTS = ("in_limits", "low", "high", "open", "implausible", "cannot_tell")


def script() -> str:
    """Give the words, as a script that a folder can serve too."""
    words = {word: say(f"hand.{word}") for word in SAID}
    words |= {word: say(f"verdict.{word}") for word in VERDICTS}
    return f"window.fettleJobWords={json.dumps(words, ensure_ascii=False)};\n"
