"""The style sheets and templates keep what the look promises: contrast, one palette, no words."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from generator.figures import style
from generator.publish.joined import JOINED

ROOT = Path(__file__).parents[2]
LOOK = ROOT / "site_overrides"
SHEETS = {path.stem: path.read_text("utf-8") for path in (LOOK / "assets").glob("*.css")}
TEMPLATES = sorted([*(ROOT / "generator/pages/templates").glob("*.html"), *LOOK.rglob("*.html")])

LIGHT = ":root"
DARK = ':root[data-scheme="dark"]'
UNSCRIPTED = ':root:not([data-scheme="light"])'
SCHEMES = {LIGHT: style.LIGHT, DARK: style.DARK, UNSCRIPTED: style.DARK}

# WCAG 2.2: 1.4.6 (7:1, text in sunlight), 1.4.3 (4.5:1), 1.4.11 (3:1, edges that carry meaning).
SUNLIGHT, WORDS, EDGES = 7.0, 4.5, 3.0


def luminance(colour: str) -> float:
    """Give a colour's relative luminance (WCAG 2.2, its glossary)."""
    digits = colour.lstrip("#")
    digits = "".join(c * 2 for c in digits) if len(digits) == 3 else digits
    parts = [int(digits[i : i + 2], 16) / 255 for i in (0, 2, 4)]
    red, green, blue = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Give the contrast ratio of two colours (WCAG 2.2, its glossary)."""
    lighter, darker = sorted((luminance(one), luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def declared(sheet: str, selector: str) -> dict[str, str]:
    """Give the declarations of the rule whose selector list names a selector."""
    rules = re.sub(r"/\*.*?\*/", "", SHEETS[sheet], flags=re.S)
    for found in re.finditer(r"([^{}]+)\{([^{}]*)\}", rules):
        if selector in [part.strip() for part in found[1].split(",")]:
            pairs = (line.split(":", 1) for line in found[2].split(";") if ":" in line)
            return {name.strip(): value.strip() for name, value in pairs}
    raise AssertionError(f"{sheet}.css has no rule for {selector}")


def test_contrast_is_computed_as_published() -> None:
    """Black on white is 21:1, and #767676 on white is the familiar grey just above 4.5:1."""
    assert contrast("#000", "#fff") == pytest.approx(21.0)
    # WebAIM's published example of the lightest grey that passes: 4.54:1.
    assert contrast("#767676", "#ffffff") == pytest.approx(4.54, abs=0.005)


@pytest.mark.parametrize("selector", SCHEMES)
def test_figures_and_pages_share_one_palette(selector: str) -> None:
    """Every --fig-* variable of a scheme is the one the figures were drawn for."""
    found = {k: v for k, v in declared("palette", selector).items() if k.startswith("--fig-")}
    assert found == {style.css_name(role): value for role, value in SCHEMES[selector].items()}


def test_the_dark_scheme_is_the_same_with_and_without_scripts() -> None:
    """A device that wishes for dark gets the same dark before the toggle's script has run."""
    assert declared("palette", DARK) == declared("palette", UNSCRIPTED)


@pytest.mark.parametrize("selector", [LIGHT, DARK])
@pytest.mark.parametrize(
    ("front", "back", "least"),
    [
        *(("ink", back, SUNLIGHT) for back in ("sheet", "well", "ground")),
        *(("soft", back, SUNLIGHT) for back in ("sheet", "well", "ground")),
        *(("accent", back, SUNLIGHT) for back in ("sheet", "well", "ground")),
        ("on-accent", "accent", SUNLIGHT),
        ("edge", "sheet", EDGES),
        ("edge", "well", EDGES),
        ("panel-line", "sheet", EDGES),
    ],
)
def test_text_holds_in_sunlight(selector: str, front: str, back: str, least: float) -> None:
    """Text reaches 7:1 on every ground it stands on, and an edge that carries meaning 3:1."""
    scheme = declared("palette", selector)
    assert contrast(scheme[f"--{front}"], scheme[f"--{back}"]) >= least


@pytest.mark.parametrize("word", ["danger", "warning", "caution", "notice"])
def test_a_panel_word_is_readable_and_its_edge_seen(word: str) -> None:
    """The word holds 4.5:1 on its colour, and the keyline 3:1 against the page."""
    rule = declared("signals", f".word-{word}")
    assert rule == declared("signals", f".signal-{word} > .signal-word")
    assert contrast(rule["color"], rule["background"]) >= WORDS
    for selector in (LIGHT, DARK):
        scheme = declared("palette", selector)
        assert contrast(scheme["--panel-line"], scheme["--sheet"]) >= EDGES


def test_safety_colours_belong_to_the_panels_alone() -> None:
    """No other sheet, scheme or figure uses one of the four; colours elsewhere are variables."""
    safety = {
        declared("signals", f".word-{word}")["background"]
        for word in ("danger", "warning", "caution", "notice")
    }
    assert len(safety) == 4
    for name, text in SHEETS.items():
        if name != "signals":
            assert not safety & set(re.findall(r"#[0-9a-f]{3,8}\b", text)), name
        if name not in ("signals", "palette", "print"):
            assert not re.findall(r"#[0-9a-f]{3,8}\b", text), name
    assert not safety & {*style.LIGHT.values(), *style.DARK.values()}


def test_sheets_need_nothing_from_outside_and_do_not_move() -> None:
    """No import, font, picture, motion or overriding shout; every sheet is linked by the frame."""
    linked = re.findall(r"assets/(\w+\.css)", (LOOK / "main.html").read_text("utf-8"))
    linked += [part for whole in linked for part in JOINED.get(f"assets/{whole}", ())]
    for name, text in SHEETS.items():
        for barred in ("@import", "@font-face", "url(", "transition", "animation", "!important"):
            assert barred not in text, (name, barred)
        assert f"{name}.css" in linked
        assert text.count("\n") < 300, f"{name}.css is long; split it by meaning"


def visible_words(template: str) -> str:
    """Give what remains of a template when its code, comments and tags are taken out."""
    bare = re.sub(r"\{#.*?#\}|\{%.*?%\}|\{\{.*?\}\}", "", template, flags=re.S)
    return re.sub(r"<!--.*?-->|<[^>]*>", "", bare, flags=re.S)


@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: path.name)
def test_no_template_spells_a_word(path: Path) -> None:
    """Every word a reader sees or hears comes from the catalogue or from a record."""
    text = path.read_text("utf-8")
    assert not re.search(r"[^\W_]", visible_words(text))
    bare = re.sub(r"\{#.*?#\}|\{%.*?%\}|\{\{.*?\}\}", "", text, flags=re.S)
    spoken = re.findall(r'\b(?:aria-label|title|alt|placeholder)="([^"]*)"', bare)
    assert not [words for words in spoken if re.search(r"[^\W_]", words)]
    assert 'style="' not in text and "<style" not in text
    code = r'<script(?![^>]* src=|\stype="application/ld\+json">)'
    assert not re.search(code, text), "scripts come from files alone"


def test_a_spelled_word_is_seen() -> None:
    """The walk over the templates sees a bare word, and only that."""
    template = "<p title='x'>{{ say('a') }}{% if b > 1 %} · Hello{% endif %}</p>{# not this #}"
    assert visible_words(template) == " · Hello"
