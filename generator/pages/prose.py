"""The little formatting that prose may use: Markdown in, clean HTML out."""

from __future__ import annotations

from functools import cache, lru_cache

from markupsafe import Markup

ALLOWED_TAGS = {"p", "em", "strong", "code", "ul", "ol", "li", "br"}
"""All that prose needs. Links are made by the generator, headings by the page."""


@cache
def _converter():  # type: ignore[no-untyped-def]  # imported late: only pages need it
    import markdown

    return markdown.Markdown(extensions=["sane_lists"], output_format="html")


@lru_cache(maxsize=4096)
def prose(text: str) -> Markup:
    """Give a prose field as HTML that holds nothing but plain formatting."""
    import nh3

    converter = _converter()
    html = converter.reset().convert(text)
    return Markup(nh3.clean(html, tags=ALLOWED_TAGS, attributes={}, link_rel=None))  # noqa: S704


def inline(text: str) -> Markup:
    """Give one paragraph of prose without the paragraph around it."""
    html = str(prose(text))
    if html.startswith("<p>") and html.endswith("</p>") and html.count("<p>") == 1:
        html = html[3:-4]
    return Markup(html)  # noqa: S704


def drawn(svg: str) -> Markup:
    """Give a figure of ours as HTML; `figures` escapes every word that goes into it."""
    return Markup(svg)  # noqa: S704
