"""A comparison in words: for a terminal, a program, and a pull request."""

from __future__ import annotations

import json
from itertools import groupby

from generator.edit.compare.effects import SAFETY, Comparison, Effect

SCHEMA = 1
"""Goes up when a key is renamed, moved or taken away; a key that is added does not count."""

MARK = "<!-- fettlebook comparison -->"
"""Heads the comment, so that the next run finds it and writes over it."""

NOTHING = "Nothing changes for the reader."


def as_text(found: Comparison) -> str:
    """Give the comparison for a terminal."""
    if not found.effects:
        return NOTHING
    lines = []
    for sort, effects in groupby(found.effects, key=lambda effect: effect.sort):
        lines.append(str(sort).upper() if sort in SAFETY else str(sort).capitalize())
        for effect in effects:
            lines.append(f"  {effect.record}: {effect.what}")
            lines += [f"    - {effect.before}"] if effect.before else []
            lines += [f"    + {effect.after}"] if effect.after else []
    return "\n".join([*lines, "", _count(found)])


def as_json(found: Comparison) -> str:
    """Give the comparison for a program."""
    effects = [
        {
            "sort": str(effect.sort), "record": effect.record, "title": effect.title,
            "what": effect.what, "before": effect.before, "after": effect.after,
        }
        for effect in found.effects
    ]  # fmt: skip
    whole = {"schema": SCHEMA, "loses_a_caution": found.loses_a_caution, "effects": effects}
    return json.dumps(whole, ensure_ascii=False, indent=2)


def as_markdown(found: Comparison) -> str:
    """Give the comparison as a comment for a pull request; a lost caution is on top."""
    lines = [MARK, "## What changes for the reader", ""]
    if not found.effects:
        return "\n".join([*lines, NOTHING, ""])
    if found.loses_a_caution:
        lines += ["**A reader is warned less than before.** Look at the first rows.", ""]
    for sort, effects in groupby(found.effects, key=lambda effect: effect.sort):
        lines += [f"### {str(sort).capitalize()}", "", "| Where | What | Before | After |",
                  "|---|---|---|---|"]  # fmt: skip
        lines += [_row(effect) for effect in effects]
        lines.append("")
    return "\n".join([*lines, _count(found), ""])


def _row(effect: Effect) -> str:
    cells = (f"{effect.title} ({effect.record})", effect.what, effect.before, effect.after)
    return f"| {' | '.join(_cell(cell) for cell in cells)} |"


def _cell(text: str) -> str:
    """Give a text that is text and nothing else inside a table of Markdown."""
    for character in "\\`*_{}[]<>#|~!&@":
        text = text.replace(character, f"\\{character}" if character not in "<>&@" else {
            "<": "&lt;", ">": "&gt;", "&": "&amp;", "@": "@\u200b"}[character])
    return " ".join(text.split())


def _count(found: Comparison) -> str:
    many = len(found.effects)
    return f"{many} effect{'' if many == 1 else 's'} for the reader"
