"""What holds for every figure: a reader with any scheme, screen or screen reader can use it."""

from __future__ import annotations

import hashlib
import itertools
import os
import re
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest

from generator.figures.style import DARK, SENTINELS, css_name
from tests.figures.reading import SVG, XLINK_HREF, elements, parsed, texts
from tests.figures.samples import SAMPLES

ROOT = Path(__file__).parents[2]
HOSTILE = "</svg><script>alert(1)</script> & \"x\" 'y' ]]> <!-- $\\frac{1}$ \x00\x1b\ud800 \u202e"
# Sizes as agreed: 12 KB a figure, 16 KB a waveform (a kilobyte is 1024 bytes).
LIMIT_BYTES = {"pickup": 16 * 1024, "hall": 16 * 1024, "hookup_large": 13 * 1024}

every = pytest.mark.parametrize("name", SAMPLES)


@every
def test_root_names_itself_to_a_screen_reader(name: str) -> None:
    """A figure is one image with a title and a description, which come first."""
    root = parsed(SAMPLES[name]("fig-a"))
    assert root.tag == f"{SVG}svg"
    assert root.attrib["role"] == "img"
    assert root.attrib["aria-labelledby"] == "fig-a-title fig-a-desc"
    title, desc = root[0], root[1]
    assert (title.tag, title.attrib["id"]) == (f"{SVG}title", "fig-a-title")
    assert (desc.tag, desc.attrib["id"]) == (f"{SVG}desc", "fig-a-desc")
    assert title.text and desc.text


@every
def test_root_takes_the_room_it_is_given(name: str) -> None:
    """A figure has a viewBox 360 wide, and neither width nor height."""
    root = parsed(SAMPLES[name]("fig-a"))
    assert root.attrib["viewBox"].startswith("0 0 360 ")
    assert not {"width", "height"} & set(root.attrib)


@every
def test_ids_are_prefixed_unique_and_resolve(name: str) -> None:
    """Two figures share a page without touching each other's parts."""
    root = parsed(SAMPLES[name]("fig-a"))
    ids = [each.attrib["id"] for each in root.iter() if "id" in each.attrib]
    assert len(ids) == len(set(ids))
    assert all(each.startswith("fig-a-") for each in ids)
    pointed = set(root.attrib["aria-labelledby"].split())
    for each in root.iter():
        for key, value in each.attrib.items():
            pointed |= set(re.findall(r"url\(#([^)]+)\)", value))
            if key in {"href", XLINK_HREF}:
                pointed.add(value.removeprefix("#"))
    assert pointed == set(ids)


@every
def test_no_style_of_its_own(name: str) -> None:
    """A strict content-security policy has nothing to refuse."""
    markup = SAMPLES[name]("fig-a")
    root = parsed(markup)
    names = {each.tag.removeprefix(SVG) for each in root.iter()}
    assert not names & {"style", "script", "metadata", "image", "foreignObject", "a"}
    keys = {key for each in root.iter() for key in each.attrib}
    assert "style" not in keys
    assert not [key for key in keys if key.startswith("on")]
    assert "http" not in re.sub(r'xmlns(:xlink)?="[^"]*"', "", markup)


@every
def test_colours_are_roles(name: str) -> None:
    """Every paint is a declared variable with a fallback, a pattern or none, in either scheme."""
    markup = SAMPLES[name]("fig-a")
    declared = {css_name(role) for role in DARK}
    paints = {
        each.attrib[key]
        for each in parsed(markup).iter()
        for key in ("fill", "stroke", "stop-color", "color")
        if key in each.attrib
    }
    for paint in paints:
        variable = re.fullmatch(r"var\((--fig-[a-z0-9-]+), #[0-9a-f]{6}\)", paint)
        assert (
            paint == "none"
            or paint.startswith("url(#fig-a-")
            or (variable and variable.group(1) in declared)
        )
    bare = re.sub(r"var\(--fig-[a-z0-9-]+, #[0-9a-f]{6}\)", "", markup)
    assert not re.search(r"#[0-9a-fA-F]{3,8}\b(?!-)", re.sub(r"url\(#[^)]*\)", "", bare))
    assert not [sentinel for sentinel in SENTINELS.values() if sentinel in markup]


@every
def test_faces_are_the_pages(name: str) -> None:
    """Type is set in the page's face, or its monospaced one: none is named by the figure."""
    faces = {
        each.attrib["font-family"].split(",")[0]
        for each in parsed(SAMPLES[name]("fig-a")).iter()
        if "font-family" in each.attrib
    }
    assert faces <= {"var(--fig-font", "var(--fig-mono"}


@every
def test_numbers_are_finite_and_short(name: str) -> None:
    """No coordinate is "not a number", and none has more than two decimals."""
    for each in parsed(SAMPLES[name]("fig-a")).iter():
        for key, value in each.attrib.items():
            assert not re.search(r"\b(nan|inf|None|True)\b", value), (each.tag, key, value)
            assert not re.search(r"\d\.\d{3}", value), (each.tag, key, value)


@every
def test_size(name: str) -> None:
    """A figure is small enough to stand in a page."""
    size = len(SAMPLES[name]("fig-a").encode())
    assert size <= LIMIT_BYTES.get(name, 12 * 1024)


@every
def test_type_is_legible_and_inside(name: str) -> None:
    """No type is under 12 units, and every text, set in a wide face, stands within the paper."""
    root = parsed(SAMPLES[name]("fig-a"))
    height = float(root.attrib["viewBox"].split()[3])
    assert texts(root)
    for text in texts(root):
        left, top, right, bottom = text.box
        assert text.size >= 12, text
        assert left >= 1 and right <= 359, text
        assert top >= 1 and bottom <= height - 1, text


@every
def test_texts_keep_clear_of_each_other(name: str) -> None:
    """No two texts overlap, set in a wide face."""
    found = [text for text in texts(parsed(SAMPLES[name]("fig-a"))) if text.text.strip()]
    for one, other in itertools.combinations(found, 2):
        a, b = one.box, other.box
        across = min(a[2], b[2]) - max(a[0], b[0])
        down = min(a[3], b[3]) - max(a[1], b[1])
        assert across <= 0.5 or down <= 0.5, (one.text, other.text)


@every
def test_hostile_words_stay_words(name: str) -> None:
    """Markup, formulae and characters that XML forbids come out as text, nowhere as markup."""
    root = parsed(SAMPLES[name]("fig-a", lambda text: text + HOSTILE))
    assert not elements(root, "script")
    shown = "\ufffd\ufffd\ufffd"
    assert root[0].text and root[0].text.endswith(HOSTILE.replace("\x00\x1b\ud800", shown))
    assert any("<script>" in (text.text or "") for text in texts(root))


@every
def test_words_in_other_scripts(name: str) -> None:
    """A letter that the plotter's face lacks neither fails nor warns: the browser sets it."""
    root = parsed(SAMPLES[name]("fig-a", lambda text: "温度センサー 😀"))
    assert any("温度" in text.text for text in texts(root))


@every
def test_reused_figure_keeps_nothing(name: str) -> None:
    """A figure has the same bytes whatever was drawn before it."""
    before = SAMPLES[name]("fig-a")
    for other in SAMPLES.values():
        other("fig-b")
    assert SAMPLES[name]("fig-a") == before


def test_same_bytes_in_every_process() -> None:
    """Hash seeds do not reach the bytes: a rebuild changes no page."""
    program = (
        "import hashlib; from tests.figures.samples import SAMPLES\n"
        "for name, made in SAMPLES.items():\n"
        "    print(name, hashlib.sha256(made('fig-a').encode()).hexdigest())"
    )
    here = {
        name: hashlib.sha256(made("fig-a").encode()).hexdigest() for name, made in SAMPLES.items()
    }
    for seed in ("1", "4242"):
        done = subprocess.run(
            [sys.executable, "-c", program], cwd=ROOT, text=True, capture_output=True, check=True,
            env={**os.environ, "PYTHONHASHSEED": seed},
        )  # fmt: skip
        assert dict(line.split() for line in done.stdout.splitlines()) == here


def test_import_is_light() -> None:
    """Importing the room loads no plotting library: a check of records never pays for one."""
    program = "import sys, generator.figures; sys.exit('matplotlib' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", program], cwd=ROOT).returncode == 0


def test_threads_share_the_one_figure() -> None:
    """Figures drawn at once in several threads are the figures drawn one by one."""
    wanted = [made("fig-a") for made in SAMPLES.values()] * 3
    with ThreadPoolExecutor(4) as pool:
        drawn = list(pool.map(lambda made: made("fig-a"), list(SAMPLES.values()) * 3))
    assert drawn == wanted
