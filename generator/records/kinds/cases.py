"""Solved cases: what a vehicle came with, what was found, and whether it stayed away."""

from __future__ import annotations

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from generator.records.kinds import facts
from generator.records.kinds.base import (
    CodeId,
    Date,
    LongText,
    ProcedureId,
    Record,
    ReplacementId,
    Shape,
    SymptomId,
    TestId,
    Text,
    VehicleId,
)


class Found(Shape):
    """One test that was made, and what it found."""

    test: TestId = Field(description="The test.")
    finding: facts.Finding = Field(description="Which of its findings it was.")
    note: Text | None = Field(default=None, description="The reading, and when it was taken.")


class Case(Record):
    """A job that ended in a proved cause. It names no customer and no registration."""

    complaint: SymptomId = Field(description="The complaint it came with.")
    vehicle: VehicleId = Field(description="The kind of vehicle.")
    codes: list[CodeId] = Field(default_factory=list, description="Codes that were stored.")
    when: list[facts.Circumstance] = Field(
        default_factory=list, description="When it showed, as the owner told it."
    )
    readings: list[Found] = Field(min_length=1, description="What was tested, in order.")
    cause: Text = Field(description="What it was: the name of one of the complaint's causes.")
    proof: TestId = Field(description="The test that proved it; one of the readings.")
    replacement: ReplacementId | None = Field(default=None, description="What fixed it.")
    procedure: ProcedureId | None = Field(default=None, description="What fixed it.")
    other_fix: Text | None = Field(default=None, description="What fixed it, in words.")
    came_back: facts.CameBack = Field(
        description="stayed_away, came_back or too_early; only the first counts."
    )
    closed: Date = Field(description="The day the job card was closed.")
    learnt: LongText | None = Field(default=None, description="What the next one should know.")

    @model_validator(mode="after")
    def _proved_and_fixed(self) -> Case:
        if self.proof not in [reading.test for reading in self.readings]:
            raise PydanticCustomError(
                "proof-without-reading", "{name} is the proof but not among the readings",
                {"name": self.proof, "at": ("proof",),
                 "hint": "add its reading, or name another proof"},
            )  # fmt: skip
        fixes = [self.replacement, self.procedure, self.other_fix]
        if sum(fix is not None for fix in fixes) != 1:
            raise PydanticCustomError(
                "one-fix", "a case says what fixed it exactly once",
                {"hint": "keep one of replacement, procedure, other_fix"},
            )  # fmt: skip
        return self
