"""The whole manual as one JSON document, and back: the data is the shop's.

The document says what the records say, value for value as written; comments, the order of keys
and hand-written pages are not in it.
"""

from __future__ import annotations

import json
from pathlib import PurePosixPath
from typing import Any

from generator import manual
from generator.records.kinds import KINDS, Record, Settings
from generator.records.knowledge_base import KnowledgeBase, Origin
from generator.records.load import SUFFIX
from generator.records.scalars import shorten
from generator.shapes import schema
from generator.shapes.outline import SETTINGS

FORMAT = 1
"""Goes up when a key of the document is renamed, moved or taken away."""

Document = dict[str, Any]


class NotAnExport(ValueError):
    """The document is not one that :func:`document` gives."""


def document(kb: KnowledgeBase) -> Document:
    """Give the manual as plain data.

    Parameters
    ----------
    kb : KnowledgeBase
        The manual.

    Returns
    -------
    dict
        `export` (the document's own format), `settings`, and `records`: kind to id to fields. It
        holds what :func:`document_schema` says.
    """
    return {
        "export": FORMAT,
        "settings": _data(kb.settings),
        "records": {
            kind: {id_: _data(record) for id_, record in kb.records.get(kind, {}).items()}
            for kind in KINDS
        },
    }


def _data(shape: Record | Settings) -> Any:
    return shape.model_dump(mode="json", exclude_unset=True)


def as_text(kb: KnowledgeBase) -> str:
    """Give the document as a file holds it."""
    return json.dumps(document(kb), ensure_ascii=False, indent=1) + "\n"


def document_schema() -> Document:
    """Give the JSON Schema of the document; it needs no other."""
    kinds = {kind: schema.schema_of(kind) for kind in schema.SCHEMAS}
    inner: Document = {}
    for kind, of in kinds.items():
        of.pop("$schema")
        # Shapes that several kinds share have one name, and one text.
        inner.update(of.pop("$defs", {}))
        inner[f"kind-{kind}"] = of
    records = {
        kind: {"type": "object", "additionalProperties": {"$ref": f"#/$defs/kind-{kind}"}}
        for kind in KINDS
    }
    return {
        "$schema": schema.DIALECT,
        "title": "A workshop manual, all of it",
        "type": "object",
        "required": ["export", "settings", "records"],
        "additionalProperties": False,
        "properties": {
            "export": {"const": FORMAT},
            "settings": {"$ref": f"#/$defs/kind-{SETTINGS}"},
            "records": {
                "type": "object", "required": list(KINDS), "additionalProperties": False,
                "properties": records,
            },
        },
        "$defs": inner,
    }  # fmt: skip


def rebuilt(found: Document) -> KnowledgeBase:
    """Give the manual that a document holds.

    Parameters
    ----------
    found : dict
        What :func:`document` gave, by way of JSON.

    Returns
    -------
    KnowledgeBase
        The same records; places in files are not kept, since there are none.

    Raises
    ------
    NotAnExport
        If it is not such a document.
    """
    try:
        if found["export"] != FORMAT:
            raise NotAnExport(f"its format is {shorten(str(found['export']))}, not {FORMAT}")
        settings = Settings.model_validate_json(json.dumps(found["settings"]))
        records: dict[str, dict[str, Record]] = {}
        for kind, by_id in found["records"].items():
            records[kind] = {}
            for id_, data in sorted(by_id.items()):
                record = KINDS[kind].model_validate_json(json.dumps(data))
                record.named(kind, id_)
                records[kind][id_] = record
    except (KeyError, TypeError, AttributeError, ValueError) as wrong:
        raise NotAnExport(f"it is not a manual as export writes it: {wrong}") from wrong
    origins = {
        f"{kind}/{id_}": Origin(str(PurePosixPath(manual.RECORDS, kind, id_ + SUFFIX)))
        for kind, by_id in records.items()
        for id_ in by_id
    }
    origins[SETTINGS] = Origin(f"{manual.RECORDS}/{SETTINGS}{SUFFIX}")
    return KnowledgeBase(settings, records, origins)
