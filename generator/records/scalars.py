"""What a plain word of YAML means: text, number, truth or date, and nothing by surprise.

The several versions of YAML, and their readers, disagree on `010`, `1:30`, `on` and `1e3`. None
of these is guessed at: each is refused by name. In quotes everything is text.
"""

from __future__ import annotations

import datetime
import re
from dataclasses import dataclass

from generator.problems import Code, code

LEADING_ZERO = code(
    "leading-zero",
    "Some readers take 010 for ten and others for eight, so the page could show either.",
)
NUMBER_BASE = code(
    "number-base",
    "A mechanic reads figures in tens; a reading in another base would be mistaken for one.",
)
SEXAGESIMAL = code(
    "sexagesimal",
    "Some readers take 1:30 for the number ninety, so the page could show either.",
)
TRUTH_WORD = code(
    "truth-word",
    "Some readers take yes, no, on and off for true and false, and others for words.",
)
EXPONENT = code(
    "exponent",
    "Some readers take 1e3 for a thousand and others for a word, so the page could show either.",
)
NOT_A_NUMBER = code(
    "not-a-number",
    "No reading can be held against it.",
)
LOOSE_NUMBER = code(
    "loose-number",
    "Readers disagree on whether this is a number, so the page could show either.",
)
LONG_NUMBER = code(
    "long-number",
    "A computer keeps fifteen digits of a number, so the page would not show what was written.",
)
NO_SUCH_DATE = code(
    "no-such-date",
    "A review that is due on a day that does not come is never due.",
)
EMPTY_VALUE = code(
    "empty-value",
    "A reader cannot tell whether it was forgotten or does not apply.",
)

Value = str | int | float | bool | datetime.date


@dataclass(frozen=True, slots=True)
class Refused:
    """A plain word that is not guessed at: the fault, what is wrong, and the mend."""

    code: Code
    message: str
    hint: str


_INTEGER = re.compile(r"-?(?:0|[1-9]\d*)")
_DECIMAL = re.compile(r"-?(?:0|[1-9]\d*)\.\d+")
_DATE = re.compile(r"\d{4}-\d\d-\d\d")
_LEADING_ZERO = re.compile(r"[-+]?0[\d_]+(?:\.[\d_]*)?")
_BASE = re.compile(r"[-+]?0(?:[xX][0-9a-fA-F_]+|[oO][0-7_]+|[bB][01_]+)")
_SEXAGESIMAL = re.compile(r"[-+]?\d[\d_]*(?::[0-5]?\d)+(?:\.[\d_]*)?")
_EXPONENT = re.compile(r"[-+]?(?:\d[\d_]*\.?[\d_]*|\.\d[\d_]*)[eE][-+]?\d+")
_LOOSE = re.compile(r"[-+]?(?:\d[\d_]*\.?[\d_]*|\.\d[\d_]*)")
_NOT_A_NUMBER = re.compile(r"[-+]?\.?(?:nan|inf|infinity)", re.IGNORECASE)
_TRUE = frozenset({"yes", "on", "true"})
_FALSE = frozenset({"no", "off", "false"})
_EMPTY = frozenset({"", "~", "null", "Null", "NULL"})
_DIGITS = 15


def plain(text: str) -> Value | Refused:
    """Give the meaning of a plain (unquoted) word.

    Parameters
    ----------
    text : str
        The word, as it stands in the file.

    Returns
    -------
    str, int, float, bool, date or Refused
        Its meaning; Refused where readers disagree on it.
    """
    if text in _EMPTY:
        return Refused(
            EMPTY_VALUE,
            f"{shorten(text)} says that there is no value" if text else "there is no value here",
            "write the value, or leave the key out where it does not apply",
        )
    if text == "true" or text == "false":
        return text == "true"
    lower = text.lower() if len(text) <= 5 else ""
    if lower in _TRUE or lower in _FALSE:
        meant = "true" if lower in _TRUE else "false"
        hint = f'write {meant} for a truth, or "{text}" in quotes for the word'
        return Refused(TRUTH_WORD, f"`{text}` is a word to some and a truth to others", hint)
    if not (text[0] in "-+.0123456789" or text[0] in "niNI"):
        return text
    return _number(text)


def _number(text: str) -> Value | Refused:
    quoted = f'"{shorten(text)}" in quotes if it is a name' if len(text) <= _SHOWN else "quotes"
    shown = f"`{shorten(text)}`"
    if _DATE.fullmatch(text):
        try:
            return datetime.date.fromisoformat(text)
        except ValueError:
            return Refused(NO_SUCH_DATE, f"there is no day {text}", "write it as 2026-10-05")
    if _INTEGER.fullmatch(text) or _DECIMAL.fullmatch(text):
        if text in ("-0", "-0.0"):
            return Refused(LOOSE_NUMBER, f"{shown} is zero with a sign", "write 0")
        digits = len(text.lstrip("-").replace(".", ""))
        if digits > _DIGITS:
            return Refused(
                LONG_NUMBER, f"{shown} has {digits} digits", f"round it, or write {quoted}"
            )
        return float(text) if "." in text else int(text)
    for pattern, fault, what, mend in _STRANGE:
        if pattern.fullmatch(text):
            return Refused(fault, f"{shown} {what}", f"{mend}, or write {quoted}")
    return text


_STRANGE = (
    (_LEADING_ZERO, LEADING_ZERO, "begins with a zero", "drop the zero"),
    (_BASE, NUMBER_BASE, "is a number in another base than ten", "write it in tens"),
    (_SEXAGESIMAL, SEXAGESIMAL, "is a number in sixties to some", "write one number"),
    (_EXPONENT, EXPONENT, "has an exponent", "write the number out"),
    (_NOT_A_NUMBER, NOT_A_NUMBER, "is no number", "write a number"),
    (_LOOSE, LOOSE_NUMBER, "is written in a way that readers disagree on", "write it as 0.5 or 12"),
)
_SHOWN = 40


def shorten(text: str) -> str:
    """Give a text short enough for a message, on one line."""
    line = " ".join(text.split())
    return line if len(line) <= _SHOWN else line[: _SHOWN - 1] + "…"
