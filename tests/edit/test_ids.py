"""Ids and kinds: what is safe everywhere, and a word on what is not."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.edit import ids
from generator.records.kinds import KINDS
from generator.records.load import load


@pytest.mark.parametrize("text", ["a", "0", "coolant-sensor", "p0335", "a" * 60, "con-record"])
def test_a_safe_id_passes(text: str) -> None:
    """Small letters, digits and single hyphens, up to sixty characters."""
    assert ids.fit_id("tests", text) == text


UNSAFE = {
    "": "cannot be an id",
    "Coolant": "as coolant",
    "COOLANT": "as coolant",
    "a_b": "as a-b",
    "a b": "as a-b",
    "a--b": "as a-b",
    "-a": "as a",
    "a-": "as a",
    "a.b": "as a-b",
    "a.yml": "as a",
    "tests/a": "as tests-a",
    "../a": "as a",
    "/etc/passwd": "as etc-passwd",
    ".hidden": "as hidden",
    "a\\b": "as a-b",
    "a\x00b": "as a-b",
    "a\n": "as a",
    "ａ": "as a",
    "é": "as e",
    "e\u0301": "as e",
    "ß": "cannot be an id",
    "ı": "cannot be an id",
    "電": "cannot be an id",
    "\u202ea": "as a",
    "a\u200b": "as a",
    "a" * 61: "60 characters",
    "a?b=c": "as a-b-c",
    "a#b": "as a-b",
    "%61": "as 61",
    "con": "device",
    "nul": "device",
    "com1": "device",
    "lpt9": "device",
    "index": "page that lists",
}


@pytest.mark.parametrize("text", UNSAFE)
def test_an_unsafe_id_is_refused(text: str) -> None:
    """What breaks as a file name or as an address is refused in one printable line."""
    with pytest.raises(ids.Unfit, match=UNSAFE[text]) as refused:
        ids.fit_id("tests", text)
    assert str(refused.value).isprintable()


def test_the_word_index_is_free_where_no_page_has_it() -> None:
    """Kinds that share a page have no page of that name."""
    assert ids.fit_id("terms", "index") == "index"


@pytest.mark.parametrize("text", UNSAFE)
def test_what_is_suggested_is_an_id(text: str) -> None:
    """A form that is offered passes itself."""
    better = ids.safe_form(text)
    if better and "device" not in UNSAFE[text] and "page" not in UNSAFE[text]:
        assert ids.fit_id("tests", better) == better


def test_the_loader_refuses_the_same_names(tmp_path: Path) -> None:
    """Whatever `new` refuses as a file name, `check` finds fault with, and the other way round."""
    names = [name for name in UNSAFE if name and not set(name) & {"/", "\x00"} and name[0] != "."]
    names.remove("index")  # safe as a file name; it is the address that is taken
    (tmp_path / "tests").mkdir()
    for name in [*names, "sound"]:
        (tmp_path / "tests" / f"{name}.yml").write_text("title: a\n", encoding="utf-8")
    problems = load(tmp_path).problems
    refused = {one.path for one in problems if one.code in ("unsafe-name", "same-name")}
    assert len(refused) == len(names)
    assert not [path for path in refused if "sound" in path]


@pytest.mark.parametrize(
    ("text", "hint"),
    [("test", "did you mean tests?"), ("Tests", "did you mean tests?"),
     ("component", "did you mean components?"), ("spec", "did you mean specs?"),
     ("xyzzy", "use one of vehicles, components"), ("", "use one of"),
     ("settings", "use one of"), ("\x1b[2J", "use one of")],
)  # fmt: skip
def test_an_unknown_kind_gets_a_hint(text: str, hint: str) -> None:
    """A kind that does not exist is refused with the nearest one, or with all there are."""
    with pytest.raises(ids.Unfit) as refused:
        ids.kind_named(text)
    assert hint in str(refused.value)
    assert str(refused.value).isprintable()


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_is_known(kind: str) -> None:
    """The folder's name is the kind's."""
    assert ids.kind_named(kind) == kind
