"""The bench's table and picture for docs/."""

from __future__ import annotations

import os
import platform
import sys
from collections.abc import Iterator
from pathlib import Path

from tests.bench.measure import Cost
from tests.bench.targets import (
    AT_SIZE,
    GROWTH_FROM,
    MOST_FIGURE_MS,
    MOST_GROWTH,
    MOST_MIB,
    MOST_REFRESH_S,
    REFRESHED,
    TARGETS,
    Costs,
    exponents,
)

HEAD = """\
# How long it takes

`make bench` grows the small manual of the tests to several sizes, builds each into {place}, and in
the same run builds pages of {page_bytes} bytes of Markdown, as many as our site has, with what one
would pick instead. Times are of one machine ({machine}) with other work on it, so ratios are taken
of processor time; none of the seconds below is a promise.

![Processor time against the number of records](bench.svg)

"""


def text(
    costs: Costs, pages: dict[int, int], place: str, page_bytes: int, figure_ms: float
) -> str:
    """Give the page.

    Parameters
    ----------
    costs : mapping
        What was measured, to number of records, to cost.
    pages : dict
        Number of records to number of pages.
    place : str
        What sort of file system the sites were built into.
    page_bytes : int
        Size of the others' pages.
    figure_ms : float
        What a figure takes of one processor.
    """
    machine = f"{os.cpu_count()} processors, Python {platform.python_version()}, {sys.platform}"
    head = HEAD.format(place=place, page_bytes=page_bytes, machine=machine)
    parts = (*_seconds(costs, pages), *_ratios(costs, figure_ms), *_growth(costs))
    return head + "\n".join(parts) + "\n"


def _seconds(costs: Costs, pages: dict[int, int]) -> Iterator[str]:
    sizes = sorted(pages)
    yield "## Measured\n"
    yield "Seconds by the clock / of the processor / MiB of the largest process.\n"
    yield _row("", *(f"{size:,} records, {pages[size]:,} pages" for size in sizes))
    yield _row(*["---"] * (len(sizes) + 1))
    for what, by_size in costs.items():
        yield _row(what, *(_cost(by_size.get(size)) for size in sizes))
    yield ""


def _cost(cost: Cost | None) -> str:
    if cost is None:
        return ""
    if not cost.peak_mib:
        return f"{cost.wall_s:.2f} s"
    return f"{cost.wall_s:.2f} / {cost.cpu_s:.2f} / {cost.peak_mib:.0f}"


def _ratios(costs: Costs, figure_ms: float) -> Iterator[str]:
    yield "## Against what was aimed at\n"
    yield _row("what", "against", "records", "ratio", "aim", "")
    yield _row(*["---"] * 6)
    for target in TARGETS:
        for size in sorted(costs.get(target.what, {})):
            ratio = target.ratio(costs, size)
            # The sizes are the nearest that whole copies give.
            if ratio is not None and size >= 0.9 * target.least_size:
                yield _row(
                    target.what, target.of, f"{size:,}", f"{ratio:.2f}", f"{target.most:g}",
                    _verdict(ratio <= target.most),
                )  # fmt: skip
    for size, cost in costs.get("build, cold", {}).items():
        if 0.9 * AT_SIZE <= size <= 1.1 * AT_SIZE:
            met = _verdict(cost.peak_mib <= MOST_MIB)
            yield _row("memory of a cold build, MiB", "", f"{size:,}", f"{cost.peak_mib:.0f}",
                       f"{MOST_MIB:g}", met)  # fmt: skip
    for what, most_s in MOST_REFRESH_S.items():
        for size, cost in costs.get(what, {}).items():
            if 0.9 * REFRESHED <= size <= 1.1 * REFRESHED:
                yield _row(f"{what}, s", "", f"{size:,}", f"{cost.wall_s:.1f}", f"{most_s:g}",
                           _verdict(cost.wall_s <= most_s))  # fmt: skip
    yield _row("one figure, ms of one processor", "", "", f"{figure_ms:.1f}",
               f"{MOST_FIGURE_MS:g}", _verdict(figure_ms <= MOST_FIGURE_MS))  # fmt: skip
    yield ""


def _growth(costs: Costs) -> Iterator[str]:
    yield "## Growth\n"
    yield f"Exponent of processor time over records: 1 is in proportion; the aim is {MOST_GROWTH:g}"
    yield f"from {GROWTH_FROM:,} records on.\n"
    yield _row("what", "between", "exponent", "")
    yield _row(*["---"] * 4)
    for what, by_size in costs.items():
        for (one, other), exponent in exponents(by_size).items():
            counts = one >= 0.9 * GROWTH_FROM and what.startswith(("check", "build"))
            met = _verdict(exponent <= MOST_GROWTH) if counts else ""
            yield _row(what, f"{one:,} and {other:,}", f"{exponent:.2f}", met)


def _verdict(met: bool) -> str:
    return "met" if met else "not met"


def _row(*cells: str) -> str:
    return f"| {' | '.join(cells)} |"


OURS, OTHERS = "#5b2a86", "#5f6b6b"
LEAST_APART = 0.045
"""Of the picture's height, between one line of words and the next."""


def picture(costs: Costs, to: Path) -> None:
    """Draw processor time against records, both in powers of ten: ours solid, the others dashed."""
    import matplotlib

    matplotlib.use("svg")
    matplotlib.rcParams.update({"svg.hashsalt": "bench", "svg.fonttype": "none", "font.size": 9})
    from matplotlib import pyplot

    figure, axes = pyplot.subplots(figsize=(8, 6), layout="constrained")
    ends: list[tuple[float, float, str, str]] = []
    for what, by_size in costs.items():
        sizes = [size for size in sorted(by_size) if by_size[size].cpu_s]
        if len(sizes) < 2:
            continue
        ours = what.startswith(("check", "build"))
        colour = OURS if ours else OTHERS
        axes.plot(sizes, [by_size[n].cpu_s for n in sizes], "o-" if ours else "s--",
                  color=colour, markersize=3, linewidth=1.2)  # fmt: skip
        ends.append((by_size[sizes[-1]].cpu_s, sizes[-1], what, colour))
    axes.set(xscale="log", yscale="log", xlabel="records", ylabel="processor time, s")
    axes.grid(True, alpha=0.3)
    height = 0.0
    for seconds, size, what, colour in sorted(ends):
        at = axes.transAxes.inverted().transform(axes.transData.transform((size, seconds)))[1]
        height = max(at, height + LEAST_APART)
        axes.annotate(what, (size, seconds), (1.02, height), textcoords="axes fraction",
                      color=colour, va="center", annotation_clip=False,
                      arrowprops={"arrowstyle": "-", "color": colour, "lw": 0.5,
                                  "relpos": (0, 0.5)})  # fmt: skip
    figure.savefig(to, format="svg", metadata={"Date": None, "Creator": None})
