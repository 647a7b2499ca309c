"""Every word of the interface, in one catalogue.

Templates and page code ask for a key; nothing a reader sees is spelled anywhere else, except
what the records themselves say.
"""

from __future__ import annotations

from generator.pages.words import ALL


def say(key: str, **values: object) -> str:
    """Give the words of a key, its blanks filled.

    Raises
    ------
    KeyError
        If the catalogue lacks the key: no page is made with a hole in it.
    """
    return ALL[key].format(**values) if values else ALL[key]


def joined(items: list[str]) -> str:
    """Give a list in words: "a", "a and b", "a, b and c"."""
    if len(items) < 2:
        return "".join(items)
    return say("list.and", first=", ".join(items[:-1]), last=items[-1])
