"""Rows of the second corpus: edits to a small manual, and where each is to be found out.

How a row is written is told in ``README.md`` beside this file.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

HERE = Path(__file__).parent
MANUAL = HERE / "manual"
RECORDS = "kb_source"

MARK = "⟦"
"""Stands in a row right before the place of a finding."""

_HEAD = re.compile(r"\[([a-z0-9-]+)\] (\S.*)")
_ORDER = re.compile(
    r"(?:also (?P<also>[a-z0-9-]+) )?"
    r"(?:(?P<verb>in|add|delete|whole|forget) (?P<name>\S.*)"
    r"|copy (?P<copied>.+) to (?P<copy>.+)"
    r"|make (?P<made>\S+) (?P<recipe>\S.*))"
)


class BadRow(ValueError):
    """A row that cannot be understood, or does not fit the manual."""


@dataclass
class Order:
    """One order of a row, with its lines as they are written: context, taken out, put in."""

    verb: str
    name: str
    source: str = ""
    also: str = ""
    lines: list[tuple[str, str]] = field(default_factory=list)


@dataclass
class Row:
    """One edit: the fault it makes, in a few words, and what is done."""

    group: str
    code: str
    what: str
    orders: list[Order] = field(default_factory=list)

    @property
    def name(self) -> str:
        """Its name among the tests."""
        return f"{self.group}: {self.code}, {self.what}"

    @property
    def also(self) -> set[str]:
        """The codes of what follows from its own fault."""
        return {order.also for order in self.orders if order.also}

    @property
    def forgotten(self) -> str:
        """The rule of a shape whose code is taken away, or nothing."""
        return next((order.name for order in self.orders if order.verb == "forget"), "")


def rows() -> list[Row]:
    """Give every row, file by file."""
    return [
        row
        for path in sorted((HERE / "edits").glob("*.txt"))
        for row in parsed(path.stem, path.read_text(encoding="utf-8"))
    ]


def parsed(group: str, text: str) -> Iterator[Row]:
    """Read the rows of one file."""
    row: Row | None = None
    for number, line in enumerate(text.split("\n"), 1):
        if not line.strip() or line.startswith("#"):
            continue
        head, order = _HEAD.fullmatch(line), _ORDER.fullmatch(line)
        if head:
            if row is not None:
                yield row
            row = Row(group, head[1], head[2])
        elif row is None:
            raise BadRow(f"{group}:{number}: a row begins with its [code]")
        elif order:
            row.orders.append(_order(order))
        elif line[0] in " -+" and row.orders:
            row.orders[-1].lines.append((line[0], line[1:]))
        else:
            raise BadRow(f"{group}:{number}: this is neither an order nor a line of one: {line}")
    if row is not None:
        yield row


def _order(match: re.Match[str]) -> Order:
    if match["copy"]:
        return Order("copy", match["copy"], match["copied"])
    if match["made"]:
        return Order("make", match["made"], match["recipe"])
    return Order(match["verb"], match["name"], also=match["also"] or "")


@dataclass
class Line:
    """A line of a file, and the marks on it: column and code."""

    text: str
    marks: list[tuple[int, str]] = field(default_factory=list)


@dataclass
class Copy:
    """A copy of the manual in a folder, the edits of one row made in it.

    Parameters
    ----------
    folder : Path
        The folder of the copy; its records lie below.
    """

    folder: Path
    texts: dict[str, list[Line]] = field(default_factory=dict)
    whole: list[tuple[str, str]] = field(default_factory=list)

    def carry_out(self, row: Row) -> list[tuple[str, str, int, int]]:
        """Make a row's edits.

        Returns
        -------
        list of tuple
            Code, path, line and column of each finding that the row expects.

        Raises
        ------
        BadRow
            If an edit does not fit the manual, or the row's own code has not just one place.
        """
        for order in row.orders:
            self._one(order, row.code)
        for name, lines in self.texts.items():
            path = self._path(name)
            path.parent.mkdir(exist_ok=True)
            path.write_text("\n".join(line.text for line in lines), encoding="utf-8")
        expected = [(code, f"{RECORDS}/{name}", 1, 1) for name, code in self.whole] + [
            (code, f"{RECORDS}/{name}", number, column)
            for name, lines in self.texts.items()
            for number, line in enumerate(lines, 1)
            for column, code in line.marks
        ]
        own = [order for order in row.orders if not order.also and _places(order)]
        if len(own) != 1 or _places(own[0]) != 1:
            raise BadRow(f"{row.name}: its own code wants one place")
        return sorted(expected)

    def _path(self, name: str) -> Path:
        return self.folder / RECORDS / name

    def _text(self, name: str) -> list[Line]:
        if name not in self.texts:
            if not self._path(name).is_file():
                raise BadRow(f"there is no {name} in the manual")
            text = self._path(name).read_text(encoding="utf-8")
            self.texts[name] = [Line(line) for line in text.split("\n")]
        return self.texts[name]

    def _one(self, order: Order, code: str) -> None:
        code, name, path = order.also or code, order.name, self._path(order.name)
        if order.verb == "in":
            self._change(order, code)
        elif order.verb == "add":
            self.texts[name] = [_marked(text, code) for _, text in order.lines] + [Line("")]
        elif order.verb == "copy":
            self.texts[name] = [Line(line.text) for line in self._text(order.source)]
        elif order.verb == "delete":
            path.unlink()
            self.texts.pop(name, None)
        elif order.verb == "whole":
            self.whole.append((name, code))
        elif order.source == "folder":
            path.mkdir()
        elif order.source.startswith("link to "):
            path.symlink_to(order.source.removeprefix("link to "))
        elif size := re.fullmatch(r"of (\d+) bytes", order.source):
            path.write_bytes(b"#" * int(size[1]))
        elif order.verb == "make":
            raise BadRow(f"nobody knows how to make {name} {order.source}")

    def _change(self, order: Order, code: str) -> None:
        """Put new lines in the place of the old ones, which must stand there once."""
        if order.also and any(sign != " " for sign, _ in order.lines):
            raise BadRow(f"`also` tells of {order.name} and changes nothing")
        text = self._text(order.name)
        old = [line.replace(MARK, "") for sign, line in order.lines if sign != "+"]
        starts = [
            at for at in range(len(text) - len(old) + 1)
            if [line.text for line in text[at : at + len(old)]] == old
        ]  # fmt: skip
        if len(starts) != 1:
            found = "\n".join(old)
            raise BadRow(f"this stands {len(starts)} times in {order.name}, not once:\n{found}")
        left = iter(text[starts[0] : starts[0] + len(old)])
        new = []
        for sign, written in order.lines:
            marked = _marked(written, code)
            if sign == "+":
                new.append(marked)
                continue
            kept = next(left)
            if sign == " ":
                kept.marks += marked.marks
                new.append(kept)
        text[starts[0] : starts[0] + len(old)] = new


def _marked(written: str, code: str) -> Line:
    """Read a line, its marks taken out and noted."""
    pieces = written.split(MARK)
    ends = [sum(map(len, pieces[: n + 1])) for n in range(len(pieces) - 1)]
    return Line("".join(pieces), [(end + 1, code) for end in ends])


def _places(order: Order) -> int:
    """Give how many places an order marks."""
    marks = sum(line.count(MARK) for sign, line in order.lines if sign != "-")
    return marks + (order.verb == "whole")
