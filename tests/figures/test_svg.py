"""A plotting library's figure, cleaned."""

from __future__ import annotations

from typing import TYPE_CHECKING

import matplotlib as mpl
import pytest

from generator.figures.document import HALO, Words
from generator.figures.style import SENTINELS, Role
from generator.figures.svg import plotted
from tests.demonstration import ROOT
from tests.figures.reading import XLINK_HREF, elements, parsed, strokes, texts
from tests.figures.samples import winding

if TYPE_CHECKING:
    from matplotlib.figure import Figure

WORDS = Words(title="t", desc="d")
INK = SENTINELS[Role.INK]


def with_markers(figure: Figure) -> None:
    """Plot three ringed points in clipped axes: markers, links and clipping."""
    axes = figure.add_axes((0.1, 0.1, 0.8, 0.8))
    axes.set_axis_off()
    axes.plot([0, 1, 2], [0, 1, 0], color=SENTINELS[Role.TRACE], marker="o")


def test_markers_keep_valid_links() -> None:
    """Each use of a marker links to a path of this figure, by the link a page script expects."""
    root = parsed(plotted("fig-m", "kind", WORDS, 120, with_markers))
    paths = {each.attrib["id"] for each in elements(root, "path") if "id" in each.attrib}
    uses = elements(root, "use")
    assert len(uses) == 3
    assert {each.attrib[XLINK_HREF].removeprefix("#") for each in uses} == paths
    assert all(each.startswith("fig-m-") for each in paths)


def test_clipping_keeps_its_path() -> None:
    """A clipped artist's clip path is there under its new name."""
    root = parsed(plotted("fig-m", "kind", WORDS, 120, with_markers))
    (clip,) = elements(root, "clipPath")
    clipped = [each.attrib["clip-path"] for each in root.iter() if "clip-path" in each.attrib]
    assert clipped
    assert set(clipped) == {f"url(#{clip.attrib['id']})"}


def test_unknown_colour_is_refused() -> None:
    """A colour that stands for no role would not follow the scheme: it stops the figure."""

    def draw(figure: Figure) -> None:
        figure.text(0.5, 0.5, "x", color="#123456")

    with pytest.raises(ValueError, match="#123456"):
        plotted("f", "kind", WORDS, 100, draw)


def test_formulae_are_words() -> None:
    """A dollar sign in a label is a dollar sign."""

    def draw(figure: Figure) -> None:
        figure.text(0.5, 0.5, r"$x_1$", color=INK)

    assert [t.text for t in texts(parsed(plotted("f", "kind", WORDS, 100, draw)))] == ["$x_1$"]


def test_halo_rims_letters_with_paper() -> None:
    """A text that stands on lines is marked, and the theme rims what is marked with paper."""

    def draw(figure: Figure) -> None:
        figure.text(0.5, 0.5, "x", color=INK, gid=HALO)

    markup = plotted("f", "kind", WORDS, 100, draw)
    (group,) = elements(parsed(markup), "g")
    assert group.attrib["class"] == HALO
    theme = (ROOT / "site_overrides/assets/values.css").read_text("utf-8")
    assert f".fig .{HALO} {{\n  paint-order: stroke;\n  stroke: var(--fig-paper);" in theme


def test_turned_text_stays_turned() -> None:
    """Only the turn by nought degrees is dropped."""

    def draw(figure: Figure) -> None:
        figure.text(0.5, 0.5, "up", color=INK, rotation=90)
        figure.text(0.5, 0.5, "level", color=INK)

    up, level = elements(parsed(plotted("f", "kind", WORDS, 100, draw)), "text")
    assert "rotate(-90" in up.attrib["transform"]
    assert "transform" not in level.attrib


def test_curves_keep_their_commands() -> None:
    """A line after a curve keeps its letter: without it, it would be another curve."""
    from matplotlib.patches import PathPatch
    from matplotlib.path import Path

    codes = [Path.MOVETO, Path.CURVE3, Path.CURVE3, Path.LINETO]
    path = Path([(0, 0), (0.5, 1), (1, 0), (1, 1)], codes)

    def draw(figure: Figure) -> None:
        figure.add_artist(PathPatch(path, facecolor="none", edgecolor=INK))

    (outline,) = [
        each.attrib["d"]
        for each in elements(parsed(plotted("f", "kind", WORDS, 100, draw)), "path")
        if "Q" in each.attrib["d"]
    ]
    assert strokes(outline) == [[(0, 100), (360, 100), (360, 0)]]


def test_readers_settings_do_not_matter_and_survive() -> None:
    """Settings of whoever runs the build change no byte, and are as they were afterwards."""
    before = winding("fig-a")
    with mpl.rc_context({"font.size": 30, "svg.fonttype": "path", "savefig.bbox": "tight",
                         "path.simplify": False, "lines.linewidth": 9}):  # fmt: skip
        assert winding("fig-a") == before
        assert mpl.rcParams["font.size"] == 30
        assert mpl.rcParams["svg.fonttype"] == "path"


def test_a_fault_leaves_no_trace() -> None:
    """After a figure that fails, the next has its usual bytes."""
    before = winding("fig-a")

    def draw(figure: Figure) -> None:
        with_markers(figure)
        raise RuntimeError("half way")

    with pytest.raises(RuntimeError, match="half way"):
        plotted("f", "kind", WORDS, 100, draw)
    assert winding("fig-a") == before
