"""The bytes of a record file as clean text, with a finding for each character that must not be.

Characters that must not be are replaced one for one, so that every line and column found later
still fits the file as its author sees it.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from generator.problems import Problem, Span, code, problem

LARGEST = 256 * 1024
"""Bytes of the largest record file; the longest one of a real manual has a twentieth of it."""

FILE_TOO_LARGE = code(
    "file-too-large",
    "Nobody can review a record of this size, and reading it would hold up everybody's build.",
)
NOT_UTF_8 = code(
    "not-utf-8",
    "An ohm or a degree sign would come out as another character, or not at all.",
)
BYTE_ORDER_MARK = code(
    "byte-order-mark",
    "The mark is invisible, and some programs take it for part of the first key.",
)
TAB = code(
    "tab",
    "A tab is as wide as each program likes, so the indentation would not mean what it shows.",
)
CONTROL_CHARACTER = code(
    "control-character",
    "What a reviewer sees would not be what the file says.",
)

# Control characters but the line feed, the line breaks that editors do not show as such, marks
# that reverse the reading direction, invisible ones, lone surrogates and non-characters.
_UNWANTED = re.compile(
    "[\x00-\x08\x0b-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069\u200b\ufeff\ufffd"
    "\ud800-\udfff\ufffe\uffff]+"
)
_BOM = "\ufeff"
_NAMES = {
    "\x00": "a NUL", "\r": "a carriage return", "\x1b": "an escape", "\x7f": "a delete",
    "\x85": "a next-line mark", "\u2028": "a line separator", "\u2029": "a paragraph separator",
    "\u200b": "a zero-width space", "\ufeff": "a byte-order mark",
    "\ufffd": "a replacement character",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class SourceText:
    """A record file as text.

    Parameters
    ----------
    shown : str
        For excerpts: as the author wrote it, lines ended by a line feed.
    clean : str or None
        For the parser: without a byte-order mark, unwanted characters replaced by spaces; None
        where the bytes give no text at all.
    problems : list of Problem
        The characters that must not be.
    layout_known : bool
        False where a tab stands in an indentation, so that nobody can say what belongs where.
    """

    shown: str
    clean: str | None
    problems: list[Problem]
    layout_known: bool = True


def unwanted(text: str) -> str | None:
    """Name the first character of a text that no record may hold, or give None."""
    match = re.search(_UNWANTED.pattern.replace("[", "[\t", 1), text)
    return None if match is None else name_of(match.group()[0])


def name_of(character: str) -> str:
    """Name an invisible character for a message."""
    if character == "\t":
        return "a tab"
    named = _NAMES.get(character)
    number = f"U+{ord(character):04X}"
    return f"{named} ({number})" if named else f"the character {number}"


def decode(source: bytes, path: str) -> SourceText:
    """Give the text of a file and what is wrong with its characters.

    Parameters
    ----------
    source : bytes
        The file.
    path : str
        Its name for findings.

    Returns
    -------
    SourceText
        The text, if there is any, and the findings.
    """
    if len(source) > LARGEST:
        message = f"the file has more than {LARGEST:,} bytes"
        hint = "split it into several records"
        return SourceText("", None, [problem(FILE_TOO_LARGE, path, Span(), message, hint)])
    if source[:2] in (b"\xff\xfe", b"\xfe\xff") or source[:4:2] == b"\0\0" or (
        source[1:4:2] == b"\0\0"
    ):  # fmt: skip
        message = "the file is in UTF-16 or UTF-32, not in UTF-8"
        hint = "save it as UTF-8 (without a byte-order mark)"
        return SourceText("", None, [problem(NOT_UTF_8, path, Span(), message, hint)])
    # Bytes that are no UTF-8 become one lone surrogate each, so they can be found and counted.
    text = source.decode("utf-8", "surrogateescape").replace("\r\n", "\n")
    if "\t" not in text and not _UNWANTED.search(text):
        return SourceText(text, text, [])
    found: list[Problem] = []
    if text.startswith(_BOM):
        text = text[1:]
        message = "the file begins with a byte-order mark"
        hint = "save it as UTF-8 without a byte-order mark"
        found.append(problem(BYTE_ORDER_MARK, path, Span(), message, hint))
    layout_known = True
    for number, line in enumerate(text.split("\n"), 1):
        if "\t" in line:
            indented = "\t" in line[: len(line) - len(line.lstrip(" \t"))]
            layout_known = layout_known and not indented
            found.append(_tab(path, number, line, indented))
        for match in _UNWANTED.finditer(line):
            found.extend(_characters(path, number, match))
    shown = _SURROGATE.sub("\ufffd", text)
    clean = _UNWANTED.sub(lambda match: " " * len(match.group()), text).replace("\t", " ")
    return SourceText(shown, clean, found, layout_known)


_SURROGATE = re.compile("[\ud800-\udfff]")


def _tab(path: str, number: int, line: str, indented: bool) -> Problem:
    column = line.index("\t") + 1
    end = column + len(line[column - 1 :]) - len(line[column - 1 :].lstrip("\t"))
    message = "a tab stands in the indentation" if indented else "a tab stands in this line"
    hint = "indent by two spaces a level" if indented else "write a space"
    return problem(TAB, path, Span(number, column, number, end), message, hint)


def _characters(path: str, number: int, match: re.Match[str]) -> list[Problem]:
    """Give one finding for a run of unwanted characters, or two where bytes are among them."""
    run = match.group()
    span = Span(number, match.start() + 1, number, match.end() + 1)
    stray = [character for character in run if _SURROGATE.match(character)]
    found = []
    if stray:
        shown = " ".join(f"{ord(character) - 0xDC00:02X}" for character in stray[:8])
        message = f"the byte {shown} is no UTF-8" if len(stray) == 1 else (
            f"the bytes {shown}{' …' if len(stray) > 8 else ''} are no UTF-8"
        )  # fmt: skip
        found.append(problem(NOT_UTF_8, path, span, message, "save the file as UTF-8"))
    others = [character for character in run if not _SURROGATE.match(character)]
    if others:
        message = f"{name_of(others[0])} stands here"
        found.append(problem(CONTROL_CHARACTER, path, span, message, "delete it"))
    return found
