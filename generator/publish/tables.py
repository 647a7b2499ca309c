"""Tables of hand-written pages: each cell carries its column's heading, for a narrow screen."""

from __future__ import annotations

import html
import re

TABLE = re.compile(r"<table>.*?</table>", re.DOTALL)
HEADING = re.compile(r"<th\b[^>]*>(.*?)</th>", re.DOTALL)
ROW = re.compile(r"<tr>.*?</tr>", re.DOTALL)
CELL = re.compile(r"<td\b([^>]*)>")
TAG = re.compile(r"<[^>]+>")


def labelled(text: str) -> str:
    """Give a page's HTML in which every cell of a plain table names its column.

    A phone shows such a table as a list, row by row, and writes the name before each cell.

    Parameters
    ----------
    text : str
        HTML that Markdown made; its tables have a heading and no cell that spans others.
    """
    return TABLE.sub(lambda table: _table(table[0]), text)


def _table(table: str) -> str:
    plain = (html.unescape(TAG.sub("", name)).strip() for name in HEADING.findall(table))
    names = [html.escape(name) for name in plain]
    return ROW.sub(lambda row: _row(row[0], names), table)


def _row(row: str, names: list[str]) -> str:
    left = iter(names)
    return CELL.sub(lambda cell: f'<td{cell[1]} data-column="{next(left, "")}">', row)
