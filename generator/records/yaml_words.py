"""A parser's complaint in plain words."""

from __future__ import annotations

from typing import Any

from generator.problems import Span
from generator.records.scalars import shorten

# Each: words of the parser's complaint or of its context, what is wrong, the mend. First fit wins.
_WORDS: tuple[tuple[str, str, str], ...] = (
    (
        "mapping values are not allowed",
        "a second colon stands in this line, or the line is indented by mistake",
        "put the text in quotes, or line the key up with its neighbours",
    ),
    (
        "sequence entries are not allowed",
        "a list cannot begin on the line of its key",
        "put the first - on the next line, indented",
    ),
    (
        "found unexpected end of stream",
        "the quotes that open here are never closed",
        "close the quotes",
    ),
    (
        "found unexpected document separator",
        "a line of three dashes or dots stands inside the quotes that open here",
        "close the quotes",
    ),
    (
        "unknown escape character",
        "a backslash in double quotes is followed by a character that has no meaning there",
        "use single quotes, or write the backslash twice",
    ),
    (
        "escape sequence",
        "a backslash in double quotes is followed by the wrong count of digits",
        "use single quotes, or write the backslash twice",
    ),
    (
        "while parsing a flow sequence",
        "the list that opens here with [ is not closed, or lacks a comma",
        "close it with ], and put commas between the items",
    ),
    (
        "while parsing a flow mapping",
        "the group of fields that opens here with { is not closed, or lacks a comma",
        "close it with }, and put commas between the fields",
    ),
    (
        "while parsing a flow node",
        "a comma or a bracket stands where a value should",
        "write the value, or delete the extra comma",
    ),
    (
        "could not find expected ':'",
        "this line has no colon after its key, or belongs to the text above and is not indented",
        "write key: value, or indent the line under the text it belongs to",
    ),
    (
        "expected <block end>, but found '-'",
        "a list item stands among the fields of a group of fields",
        "line the - up with its list, or give the list a key",
    ),
    (
        "expected <block end>, but found '<scalar>'",
        "text follows after the closing quotes",
        "put the whole text inside the quotes; write '' for ' inside single quotes",
    ),
    (
        "while parsing a block mapping",
        "this line does not line up with the fields above it",
        "indent it as far as its neighbours",
    ),
    (
        "while parsing a block collection",
        "this line does not line up with the list above it",
        "begin it with - or indent it under the item it belongs to",
    ),
    (
        "found character '%'",
        "a plain text cannot begin with %",
        "put the text in quotes",
    ),
    (
        "cannot start any token",
        "a plain text cannot begin with @ or `",
        "put the text in quotes",
    ),
    (
        "expected chomping or indentation",
        "text stands on the line of | or >",
        "put the text on the next line, indented",
    ),
    (
        "block scalar",
        "the block of text that begins here is not indented as it should be",
        "indent every line of it by two spaces more than its key",
    ),
    (
        "while scanning an anchor",
        "a plain text cannot begin with &",
        "put the text in quotes",
    ),
    (
        "while scanning an alias",
        "a plain text cannot begin with *",
        "put the text in quotes",
    ),
    (
        "tag",
        "a plain text cannot begin with !",
        "put the text in quotes",
    ),
    (
        "directive",
        "a line cannot begin with %",
        "delete the line",
    ),
    (
        "incompatible YAML document",
        "the file asks for another version of YAML",
        "delete the line that begins with %",
    ),
    (
        "expected the node content",
        "a comma or a bracket stands where a value should",
        "put the text in quotes, or delete the bracket",
    ),
    (
        "expected '<document start>'",
        "the record ends before this line, which does not line up with it",
        "indent it as far as the first line",
    ),
)  # fmt: skip
_AT_OPENING = ("while parsing a flow sequence", "while parsing a flow mapping", "end of stream",
               "document separator")  # fmt: skip


def explain(error: Any, lines: list[str]) -> tuple[Span, str, str]:
    """Say what a parser's complaint means.

    Parameters
    ----------
    error : yaml.YAMLError
        The complaint of PyYAML's pure parser.
    lines : list of str
        The lines of the file.

    Returns
    -------
    tuple of Span, str, str
        The place, what is wrong and the mend.
    """
    problem = str(getattr(error, "problem", None) or error)
    context = str(getattr(error, "context", None) or "")
    mark = getattr(error, "problem_mark", None)
    opened = getattr(error, "context_mark", None)
    said = f"{problem} | {context}"
    message, hint = "this is not YAML", "compare the line with one of another record"
    for words, means, mend in _WORDS:
        if words in said:
            message, hint = means, mend
            if opened is not None and any(part in said for part in _AT_OPENING):
                mark = opened
            break
    else:
        message = f"this is not YAML ({shorten(problem)})"
    return _place(mark, lines), message, hint


def no_number(mark: Any, lines: list[str]) -> tuple[Span, str, str]:
    """Say that a character or a version is given by a number that cannot be one."""
    message = "the number after the backslash or the % stands for nothing"
    return _place(mark, lines), message, "write the character itself"


def _place(mark: Any, lines: list[str]) -> Span:
    if mark is None:
        return Span()
    line, column = mark.line + 1, mark.column + 1
    if line > len(lines) or (line == len(lines) and not lines[-1] and line > 1):
        line = max(1, len(lines) - (not lines[-1]))
        column = len(lines[line - 1]) + 1
    return Span(line, column, line, column + 1)
