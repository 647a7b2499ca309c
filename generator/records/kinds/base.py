"""What every record has, and the field types they share."""

from __future__ import annotations

import datetime
import re
from collections.abc import Iterator
from functools import cache
from typing import Annotated, Any

from pydantic import (
    AfterValidator,
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    PlainSerializer,
    PrivateAttr,
    StringConstraints,
)
from pydantic_core import PydanticCustomError, PydanticKnownError

from generator.quantities import Written, WrittenError, parse


class Shape(BaseModel):
    """A part of a record: strict, closed, finite and unchangeable."""

    model_config = ConfigDict(
        strict=True, extra="forbid", frozen=True, allow_inf_nan=False, arbitrary_types_allowed=True
    )


def _counted(value: Any) -> Any:
    # To Python, and so to a choice of figures, true is 1.
    if isinstance(value, bool):
        raise PydanticKnownError("literal_error", {"expected": "a figure"})
    return value


# Goes beside a choice of whole numbers.
FIGURE = BeforeValidator(_counted)


class Link:
    """Marks a text field as the id of a record of one kind (or of several)."""

    def __init__(self, *kinds: str) -> None:
        self.kinds = kinds


OWN_KIND = "its own kind"
"""Stands in a mark for the kind of the record that the field is in; a record's own fields only."""


def folder_of(kind: str) -> str:
    """Give where the records of a marked kind lie, in words."""
    return "its own folder" if kind == OWN_KIND else f"{kind}/"


class Measure:
    """Marks a written value's quantity, so that an editor's schema can say it."""

    def __init__(self, quantity: str | None = None) -> None:
        self.quantity = quantity


class Prose:
    """Marks a text field as Markdown prose; every other text is plain."""


def _written(quantity: str | None) -> Any:
    def read(value: Any) -> Any:
        if not isinstance(value, str):
            raise PydanticCustomError(
                "written-form", "a value is written as text with its unit, not {found}",
                {"found": repr(value), "hint": "write it as 860 ohm or 10 ± 1 N·m"},
            )  # fmt: skip
        try:
            return parse(value, quantity)
        except WrittenError as wrong:
            raise PydanticCustomError(
                "written-" + wrong.fault,
                "{text}", {"text": str(wrong), "hint": wrong.hint},
            ) from None  # fmt: skip

    return Annotated[
        Written, BeforeValidator(read), PlainSerializer(_as_written, when_used="json"),
        Measure(quantity),
    ]  # fmt: skip


def _as_written(value: Written) -> str:
    return value.text


def _without_spread(value: Written) -> Written:
    if value.form != "exact":
        raise PydanticCustomError(
            "single-value", "{text} is a range where one value is needed",
            {"text": value.text, "hint": "write one value and its unit, as 20 °C"},
        )  # fmt: skip
    return value


def single(quantity: str) -> Any:
    """Give the field type of a written value that takes no spread."""
    return Annotated[_written(quantity), AfterValidator(_without_spread)]


def _date(value: Any) -> Any:
    """Take a quoted day as well; other ISO 8601 spellings would be read but not understood."""
    if isinstance(value, str) and re.fullmatch(r"\d{4}-\d\d-\d\d", value):
        try:
            return datetime.date.fromisoformat(value)
        except ValueError:
            return value
    return value


Text = Annotated[str, StringConstraints(min_length=1, max_length=400, strip_whitespace=True)]
LongText = Annotated[
    str, StringConstraints(min_length=1, max_length=4000, strip_whitespace=True), Prose()
]
Id = Annotated[str, StringConstraints(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$", max_length=60)]
Date = Annotated[datetime.date, BeforeValidator(_date)]
Minutes = Annotated[float, Field(gt=0, le=600)]
Share = Annotated[float, Field(gt=0, le=1)]
Weight = Annotated[float, Field(gt=0, le=100)]

AnyValue = _written(None)
Temperature = _written("temperature")
Speed = _written("rotational speed")
Voltage = _written("voltage")
Resistance = _written("resistance")
Current = _written("current")
Length = _written("length")
Pressure = _written("pressure")
Torque = _written("torque")
Ratio = _written("ratio")
Duration = _written("time")
Charge = _written("charge")
Inductance = _written("inductance")

VehicleId = Annotated[Id, Link("vehicles")]
ComponentId = Annotated[Id, Link("components")]
CircuitId = Annotated[Id, Link("circuits")]
SpecId = Annotated[Id, Link("specs")]
SymptomId = Annotated[Id, Link("symptoms")]
CodeId = Annotated[Id, Link("codes")]
TestId = Annotated[Id, Link("tests")]
ReplacementId = Annotated[Id, Link("replacements")]
ProcedureId = Annotated[Id, Link("procedures")]
ToolId = Annotated[Id, Link("tools")]
SupplyId = Annotated[Id, Link("supplies")]
SourceId = Annotated[Id, Link("sources")]
PersonId = Annotated[Id, Link("people")]

COMMON_PRACTICE = "common-practice"
"""The one source that needs no record: the trade does it so, and nobody can name a document."""

SourceOrPractice = Annotated[Id, Link("sources")]

OwnKindId = Annotated[Id, Link(OWN_KIND)]


class Signed(Shape):
    """Who looked at the record, and when."""

    by: PersonId = Field(description="The role that did it.")
    date: Date = Field(description="The day, as 2026-10-05.")


class Withdrawal(Shape):
    """Why a record may not be worked from any more."""

    reason: Text = Field(description="What was wrong with it, in a sentence a reader follows.")
    by: PersonId = Field(description="The role that withdrew it.")
    date: Date = Field(description="The day, as 2026-10-05.")


class ReasonedException(Shape):
    """One check that a record may break, for a reason that somebody answers for."""

    check: Id = Field(description="The check's code, as findings name it.")
    reason: Text = Field(description="Why it does not hold here, in a sentence a reader follows.")
    approved_by: PersonId = Field(description="The role that allows it; not the record's author.")
    date: Date = Field(description="The day it was allowed, as 2026-10-05.")


class Record(Shape):
    """What every record has, whatever its kind."""

    title: Text = Field(description="The name a mechanic would call it by.")
    status: str = Field(
        default="approved",
        pattern="^(draft|approved|withdrawn)$",
        description=(
            "draft, approved or withdrawn; only approved records are published, and of a withdrawn "
            "page the reason alone."
        ),
    )
    author: PersonId = Field(description="The role that wrote it.")
    owner: PersonId = Field(description="The role that keeps this record true.")
    reviewed: Signed | None = Field(default=None, description="Who last checked it, and when.")
    approved: Signed | None = Field(
        default=None, description="Who released it; not the role that wrote it."
    )
    withdrawn: Withdrawal | None = Field(
        default=None, description="Why, by whom and when, where the status is withdrawn."
    )
    replaced_by: OwnKindId | None = Field(
        default=None, description="The record of the same kind to use instead of a withdrawn one."
    )
    exceptions: list[ReasonedException] = Field(
        default_factory=list,
        description="Checks that may find fault here, each with its reason; never a caution.",
    )

    _id: str = PrivateAttr(default="")
    _kind: str = PrivateAttr(default="")

    # Read straight from where pydantic keeps them: its own way there takes ten times as long, and
    # nothing else is asked for as often.

    @property
    def id(self) -> str:
        """The record's name: that of its file."""
        return str((self.__pydantic_private__ or {}).get("_id", ""))

    @property
    def kind(self) -> str:
        """The folder it lies in."""
        return str((self.__pydantic_private__ or {}).get("_kind", ""))

    @property
    def key(self) -> str:
        """ "kind/id", unique in a manual."""
        return f"{self.kind}/{self.id}"

    def named(self, kind: str, id_: str) -> None:
        """Take kind and id from the place of the file; only the loader calls this."""
        self._kind = kind
        self._id = id_


def links_of(
    shape: Shape, path: tuple[str | int, ...] = (), *, keys: bool = False
) -> Iterator[tuple[tuple[str | int, ...], tuple[str, ...], str]]:
    """Walk every link of a record; with `keys`, those that head a table too.

    A table's keys say more of what is listed beside it, so they lead nowhere of their own.

    Yields
    ------
    tuple
        The path of the field, the kinds it may name, and the id it names.
    """
    for name, kinds in _fields(type(shape)):
        if kinds == (OWN_KIND,) and isinstance(shape, Record):
            kinds = (shape.kind,)
        yield from _links_in(getattr(shape, name), kinds, (*path, name), keys)


@cache
def _fields(shape: type[Shape]) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """Give each field of a shape with the kinds it may name; every walk asks for the same."""
    return tuple(
        (name, kinds)
        for name, field in shape.model_fields.items()
        for kinds in [_link_kinds(field.annotation, tuple(field.metadata))]
        if kinds or any(map(_fields, shapes_in(field.annotation)))
    )


def shapes_in(annotation: Any) -> set[type[Shape]]:
    """Give the shapes that a field may hold, itself or inside lists and tables."""
    if isinstance(annotation, type) and issubclass(annotation, Shape):
        return {annotation}
    inner = getattr(annotation, "__args__", ())
    return {shape for one in inner for shape in shapes_in(one)}


def _links_in(
    value: Any, kinds: tuple[str, ...], path: tuple[str | int, ...], keys: bool
) -> Iterator[tuple[tuple[str | int, ...], tuple[str, ...], str]]:
    if isinstance(value, Shape):
        yield from links_of(value, path, keys=keys)
    elif isinstance(value, (list, tuple)):
        for index, item in enumerate(value):
            yield from _links_in(item, kinds, (*path, index), keys)
    elif isinstance(value, dict):
        if keys and kinds:
            yield from (((*path, key), kinds, key) for key in value)
    elif kinds and isinstance(value, str):
        yield path, kinds, value


def _link_kinds(annotation: Any, metadata: tuple[Any, ...]) -> tuple[str, ...]:
    """Find the link mark in an annotation, through lists and optionals."""
    for mark in metadata:
        if isinstance(mark, Link):
            return mark.kinds
    for inner in getattr(annotation, "__args__", ()):
        found = _link_kinds(inner, tuple(getattr(inner, "__metadata__", ())))
        if found:
            return found
    return ()
