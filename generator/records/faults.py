"""The tricks of YAML that are refused, and what stands in the data in place of one."""

from __future__ import annotations

from enum import Enum

from generator.problems import code

DUPLICATE_KEY = code(
    "duplicate-key",
    "Most readers keep the last of two equal keys and say nothing, so one value would be lost.",
)
ALIAS = code(
    "alias",
    "A value that stands elsewhere cannot be reviewed here, and a few of them can fill a disk.",
)
ANCHOR = code("anchor", "A change to this value would silently change others.")
MERGE_KEY = code(
    "merge-key",
    "Fields that are not written here would be part of the record.",
)
TAG = code("tag", "A tag changes what a value is, out of a reviewer's sight.")
DIRECTIVE = code("directive", "A directive changes how the whole file is read.")
SEVERAL_DOCUMENTS = code(
    "several-documents",
    "A file is one record, named after it; a second one would have no name.",
)
TOO_DEEP = code(
    "too-deep",
    "Nobody can follow so many levels, and programs have been stopped by them.",
)
EMPTY_FILE = code("empty-file", "The manual lists a record that says nothing.")
NOT_A_MAPPING = code(
    "not-a-mapping",
    "Without its fields by name, nothing in the file can be found.",
)
KEY_NOT_TEXT = code("key-not-text", "A field is found by its name, and a name is a word.")
YAML_SYNTAX = code(
    "yaml-syntax",
    "From here on nobody can tell what belongs to what, so the rest of the file is not read.",
)


class Faulty(Enum):
    """Stands in the data where a value was refused, so that nothing else is said about it."""

    FAULTY = "refused"

    def __repr__(self) -> str:
        return "FAULTY"


FAULTY = Faulty.FAULTY
