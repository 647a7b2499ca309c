"""Every built page is valid HTML, as the Nu HTML checker reads it."""

from __future__ import annotations

from pathlib import Path

from tests.site.nu_checker import findings

PAGE = "<!doctype html><html lang=en><meta charset=utf-8><title>x</title><body>{}</body></html>"
SPOILT = {
    "good": ("<p>good</p>", None),
    "twice": ("<p id=a></p><p id=a></p>", "Duplicate ID"),
    "nested": ("<p><div></div></p>", "No “p” element in scope"),
    "completed": ("<input type=checkbox autocomplete=off>", "autocomplete"),
}
"""Name of a page: its body, and what the checker has to say of it."""


def test_no_page_has_an_error_or_a_warning(site_dir: Path) -> None:
    """Whatever the checker says of a page fails; it says nothing."""
    assert findings([site_dir]) == []


def test_a_spoilt_page_is_noticed(tmp_path: Path) -> None:
    """The checker sees what it should, and a good page passes."""
    for name, (body, _said) in SPOILT.items():
        (tmp_path / f"{name}.html").write_text(PAGE.format(body), "utf-8")
    found = findings([tmp_path])
    for name, (_body, said) in SPOILT.items():
        here = [text for text in found if f"{name}.html" in text]
        assert here == [] if said is None else any(said in text for text in here), name
