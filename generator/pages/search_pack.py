"""The search index as one small script: words and lists packed, a reader's few bytes counted."""

from __future__ import annotations

import json
import re
import unicodedata
from collections.abc import Iterable, Sequence
from typing import Any

FORMAT = 1
"""Goes up when the packing changes; the script in the page refuses what it does not know."""

DIGITS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"
"""Five bits a character, the sixth says that more follow: plain in JSON, small after gzip."""

_MARKS = re.compile("[\u0300-\u036f'\u2019]")
_INITIALS = re.compile(r"\b([a-z])[./](?=[a-z]\b)", re.ASCII)
_WORD = re.compile(r"[a-z0-9]+(?:\.[0-9]+)*")


def words(text: str) -> list[str]:
    """Give the words of a text, as the script in the page splits what is typed.

    Lower case, no accents or apostrophes; 1.6 and P0335 stay whole, and so do initials: a/c is ac.
    """
    plain = _MARKS.sub("", unicodedata.normalize("NFKD", text)).lower()
    return _WORD.findall(_INITIALS.sub(r"\1", plain))


def script(document: dict[str, Any], texts: Sequence[Iterable[str]]) -> str:
    """Give the index as a script that a page can load from anywhere, a folder included.

    Parameters
    ----------
    document : dict
        What the script in the page reads; `format`, `words` and `lists` are added.
    texts : sequence of iterables of str
        For each entry, in order, the words of its text.

    Returns
    -------
    str
        An assignment of one string that holds JSON. A browser parses that faster than the same
        thing written as a program.
    """
    found: dict[str, list[int]] = {}
    for number, text in enumerate(texts):
        for word in set(text):
            found.setdefault(word, []).append(number)
    known = sorted(found)
    packed = {
        **document,
        "format": FORMAT,
        "words": front_coded(known),
        "lists": " ".join(deltas(found[word]) for word in known),
    }
    plain = json.dumps(packed, ensure_ascii=False, separators=(",", ":"))
    quoted = plain.replace("\\", "\\\\").replace("'", "\\'")
    return f"window.fettleIndex='{quoted}';\n"


def front_coded(ordered: Sequence[str]) -> str:
    """Give sorted words, each as the length it shares with the one before and what follows."""
    before, parts = "", []
    for word in ordered:
        shared = 0
        while shared < min(len(word), len(before), len(DIGITS) - 1):
            if word[shared] != before[shared]:
                break
            shared += 1
        parts.append(DIGITS[shared] + word[shared:])
        before = word
    return " ".join(parts)


def deltas(ordered: Sequence[int]) -> str:
    """Give rising numbers as the steps between them, five bits a character, lowest first."""
    before, parts = -1, []
    for number in ordered:
        step = number - before - 1
        while step >= 32:
            parts.append(DIGITS[32 + step % 32])
            step //= 32
        parts.append(DIGITS[step])
        before = number
    return "".join(parts)
