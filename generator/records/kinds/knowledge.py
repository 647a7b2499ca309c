"""Symptoms, codes, hazards, terms, sources, people, stock and settings."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from generator.records.kinds import facts
from generator.records.kinds.base import (
    FIGURE,
    CodeId,
    ComponentId,
    Date,
    Id,
    LongText,
    PersonId,
    Record,
    Shape,
    Share,
    SourceOrPractice,
    SymptomId,
    TestId,
    Text,
    VehicleId,
    Weight,
)
from generator.records.kinds.instruments import Meter, Screen
from generator.records.kinds.work import State


class Cause(Shape):
    """One thing that can lie behind a complaint."""

    name: Text = Field(description="The fault, in a few words.")
    component: ComponentId | None = Field(default=None, description="The part, if it is one here.")
    refer: Text | None = Field(
        default=None, description="Where to look when this manual does not cover it."
    )
    weight: Weight = Field(description="How often it is this, against the others (judgement).")
    reason: Text = Field(description="Why it has that weight.")
    tests: list[TestId] = Field(default_factory=list, description="Tests that show or exclude it.")
    shows: dict[TestId, Share] = Field(
        default_factory=dict,
        description="Share of such faults a test shows, where it is not the test's usual one.",
    )
    when: dict[facts.Circumstance, Share] = Field(
        default_factory=dict,
        description="Share of such faults that show then: hot, wet; unsaid, as often as not.",
    )
    codes: dict[CodeId, Share] = Field(
        default_factory=dict,
        description="Share of such faults that store a code, where its parts do not say it.",
    )
    vehicles: list[VehicleId] = Field(
        default_factory=list, description="Only on these vehicles; empty means all."
    )

    @model_validator(mode="after")
    def _shown_by_its_tests(self) -> Cause:
        strangers = sorted(set(self.shows) - set(self.tests))
        if strangers:
            raise PydanticCustomError(
                "shows-stranger", "{name} is under shows but not under tests",
                {"name": strangers[0], "at": ("shows", strangers[0]),
                 "hint": "list it under tests, or take it out"},
            )  # fmt: skip
        return self


class Confusion(Shape):
    """A complaint that sounds alike."""

    symptom: SymptomId | None = Field(default=None, description="Its record, if there is one.")
    what: Text = Field(description="What it is confused with.")
    tell: Text = Field(description="How to tell the two apart.")


class Symptom(Record):
    """A complaint in the owner's words."""

    said: list[Text] = Field(min_length=1, description="What owners say.")
    group: Text = Field(description="Heading an owner would look under.")
    applies_to: list[VehicleId] = Field(min_length=1, description="Vehicles it is written for.")
    when: LongText = Field(description="When it shows: hot, cold, wet, under load.")
    driving: Literal["stop", "take_care", "may_drive"] = Field(
        description="Whether the vehicle may be driven."
    )
    driving_advice: Text = Field(description="What to tell the owner about driving it.")
    confused_with: list[Confusion] = Field(default_factory=list, description="Sound-alikes.")
    opening: list[TestId] = Field(
        default_factory=list,
        description="First looks in place of the manual's, where those would be dangerous here.",
    )
    live_data: TestId | None = Field(
        default=None, description="The live-data look that belongs to this complaint."
    )
    causes: list[Cause] = Field(min_length=2, description="What can lie behind it.")
    codes: list[CodeId] = Field(default_factory=list, description="Codes that often come along.")

    @model_validator(mode="after")
    def _codes_of_its_causes(self) -> Symptom:
        for index, cause in enumerate(self.causes):
            strangers = sorted(set(cause.codes) - set(self.codes))
            if strangers:
                raise PydanticCustomError(
                    "code-stranger", "{name} is under a cause but not under the complaint's codes",
                    {"name": strangers[0], "at": ("causes", index, "codes", strangers[0]),
                     "hint": "list it under codes, or take it out"},
                )  # fmt: skip
        return self


class FaultCode(Record):
    """A fault code, in our own words."""

    code: Annotated[str, Field(pattern=r"^[PCBU][0-3][0-9A-F]{3}$")] = Field(
        description="The five characters, as P0335."
    )
    means: LongText = Field(description="What the control unit saw.")
    set_when: Text = Field(description="When it is stored.")
    does_not_mean: Text = Field(description="What it does not prove.")
    applies_to: list[VehicleId] = Field(min_length=1, description="Vehicles that can store it.")
    components: list[ComponentId] = Field(min_length=1, description="Parts it points towards.")
    symptoms: list[SymptomId] = Field(default_factory=list, description="Complaints it goes with.")
    tests: list[TestId] = Field(min_length=1, description="What to test, first one first.")
    source: SourceOrPractice = Field(description="Where the meaning comes from.")


class When(Shape):
    """The facts and the state that a hazard rule asks for; lists mean "any of these"."""

    action: list[facts.Action] = Field(default_factory=list, description="Acts.")
    place: list[facts.Place] = Field(default_factory=list, description="Where the person is.")
    energy: list[facts.Energy] = Field(
        default_factory=list, description="Energy of what is acted on."
    )
    near: list[facts.Energy] = Field(
        default_factory=list, description="Energy acted on or within reach."
    )
    opens: list[facts.Opens] = Field(default_factory=list, description="What is opened.")
    tool_class: list[Text] = Field(default_factory=list, description="Classes of tool in hand.")
    supply_class: list[Text] = Field(default_factory=list, description="Classes of substance.")
    state: dict[str, list[str]] = Field(
        default_factory=dict, description="State words, each with the values that count."
    )
    vehicle: list[Literal["petrol", "diesel", "hybrid"]] = Field(
        default_factory=list, description="Kinds of vehicle."
    )
    measures: list[facts.Measures] = Field(default_factory=list, description="What is read.")
    condition: list[facts.Condition] = Field(
        default_factory=list, description="What is out of the ordinary."
    )
    apart: list[facts.Energy] = Field(
        default_factory=list, description="Energy of what is unplugged, removed or loose by then."
    )
    undone: list[Literal["unplugged", "removed", "loose", "leads", "guards_off"]] = Field(
        default_factory=list, description="Ways in which anything is undone by then."
    )


class Hazard(Record):
    """One caution: when it is due, and what it says."""

    when: list[When] = Field(min_length=1, description="Any one of these calls for it.")
    harm: Literal["death", "serious", "minor", "property"] = Field(
        description="Worst credible harm."
    )
    likelihood: Literal["will", "could"] = Field(
        description="will, for the most extreme cases only; else could."
    )
    begins: Literal["act", "state"] = Field(
        description="act: a full box each time; state: a full box first, then a reminder."
    )
    hazard: Text = Field(description="What is dangerous.")
    consequence: Text = Field(description="What it does.")
    avoid: list[Text] = Field(min_length=1, description="How to stay clear of it, as commands.")
    reminder: Text | None = Field(default=None, description="One line while the state lasts.")
    symbol: str | None = Field(
        default=None, pattern="^[WMP][0-9]{3}$", description="Registered symbol number."
    )
    reserved_for: Text | None = Field(
        default=None, description="Who alone may do it; the page stops there."
    )
    defer: Text | None = Field(default=None, description="Law or licensed practice that wins.")
    basis: Text = Field(description="The source, or common practice.")


class Source(Record):
    """A document or standard that a value rests on."""

    kind_of: Literal["standard", "book", "data_sheet", "web_page", "demonstration"] = Field(
        description="What sort of document."
    )
    publisher: Text = Field(description="Who issued it.")
    edition: Text | None = Field(default=None, description="Edition or year.")
    read: Literal["in_full", "in_part", "second_hand", "invented"] = Field(
        description="How far we have read it."
    )
    note: LongText | None = Field(default=None, description="Licence, limits, what it is used for.")
    link: str | None = Field(
        default=None, pattern=r"^https://[^\s]+$", description="Public address, if there is one."
    )


class Term(Record):
    """A term of the trade."""

    abbreviation: Text | None = Field(default=None, description="Short form.")
    means: LongText = Field(description="In plain words.")
    also: list[Text] = Field(default_factory=list, description="Other words for it, lay and trade.")


class Person(Record):
    """A role in the shop; never a real person's name."""

    may: list[Text] = Field(min_length=1, description="What this role may do.")
    trained: list[Text] = Field(default_factory=list, description="Qualifications it needs.")


class Tool(Record):
    """A tool or instrument."""

    tool_class: Text = Field(description="General class, as multimeter or torque wrench.")
    needs: Text = Field(description="What it must be able to do.")
    calibrated: bool = Field(description="true where it must be within its calibration date.")
    note: LongText | None = Field(default=None, description="What helps to choose or use it.")
    meter: Meter | None = Field(default=None, description="Its ranges and errors, if it measures.")
    screen: Screen | None = Field(default=None, description="If it is an oscilloscope.")


class Supply(Record):
    """Something that is used up."""

    supply_class: Text = Field(description="General class, as contact cleaner or grease.")
    needs: Text = Field(description="What it must be.")
    disposal: Text = Field(description="Where the waste goes.")


class Shop(Shape):
    """The shop whose manual this is."""

    name: Text = Field(description="Its name.")
    place: Text = Field(description="Where it is.")
    about: LongText = Field(description="A sentence or two.")
    notes_to: str | None = Field(
        default=None, max_length=200, pattern=r"^[^\s@?&,;:<>]+@[^\s@?&,;:<>]+$",
        description="The address to which readers send what was wrong, as workshop@shop.example.",
    )  # fmt: skip


class ReviewEvery(Shape):
    """How often a record is looked at again."""

    months: int = Field(default=24, ge=1, le=120, description="Months between two reviews.")
    months_with_danger: int = Field(
        default=12, ge=1, le=120,
        description="The same for work that carries a DANGER or WARNING box.",
    )  # fmt: skip


class Moved(Shape):
    """A record that has another id now; its old address leads to the new one."""

    kind: Text = Field(description="Folder of the record, as tests.")
    old: Id = Field(description="The id it had.")
    new: Id = Field(description="The id it has.")


class Settings(Shape):
    """The manual's own settings."""

    format: Annotated[Literal[1], FIGURE] = Field(description="Version of the record format.")
    title: Text = Field(description="The manual's name.")
    shop: Shop = Field(description="Whose manual it is.")
    demonstration: bool = Field(
        default=False, description="true where the data is invented; every page says so."
    )
    one_person_shop: bool = Field(
        default=False, description="true where nobody else can check; every page says so."
    )
    opening: list[TestId] = Field(
        min_length=1, description="The first looks, in their fixed order, for every complaint."
    )
    emergency: LongText = Field(description="What to do when someone is hurt.")
    content_licence: Text = Field(description="Under what terms the content may be used.")
    release: Date | None = Field(default=None, description="Day of this edition.")
    approver: PersonId | None = Field(default=None, description="The role that releases it.")
    review_every: ReviewEvery = Field(
        default_factory=ReviewEvery, description="How often records are looked at again."
    )
    standing_state: State = Field(
        default_factory=State, description="The state a vehicle is taken to be in on arrival."
    )
    moved: list[Moved] = Field(
        default_factory=list, description="Records that were renamed; the command rename adds them."
    )
