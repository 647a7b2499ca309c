"""Steps, tests, replacements and procedures: what a person does at the vehicle."""

from __future__ import annotations

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from generator.records.kinds import facts
from generator.records.kinds.base import (
    AnyValue,
    ComponentId,
    LongText,
    Minutes,
    PersonId,
    ProcedureId,
    Record,
    ReplacementId,
    Shape,
    SpecId,
    SupplyId,
    TestId,
    Text,
    ToolId,
    VehicleId,
)


class State(Shape):
    """The state of the vehicle, as far as a record speaks of it; None means "not said"."""

    engine: facts.Engine | None = Field(default=None, description="stopped, cranking, running.")
    engine_heat: facts.EngineHeat | None = Field(default=None, description="cold, warm or hot.")
    ignition: facts.Ignition | None = Field(default=None, description="key_off, key_on or ready.")
    battery: facts.Battery | None = Field(
        default=None, description="Negative terminal connected or disconnected."
    )
    high_voltage: facts.HighVoltage | None = Field(
        default=None, description="not_fitted, live, isolated or proved_dead."
    )
    support: facts.Support | None = Field(
        default=None, description="What carries the vehicle: ground, jack_only, stands or lift."
    )
    fuel_pressure: facts.Pressure | None = Field(default=None, description="held or relieved.")
    coolant_pressure: facts.Pressure | None = Field(default=None, description="held or relieved.")
    brake_pressure: facts.Pressure | None = Field(default=None, description="held or relieved.")
    refrigerant: facts.Pressure | None = Field(default=None, description="held or relieved.")
    air_suspension: facts.Pressure | None = Field(default=None, description="held or relieved.")
    stored_spring: facts.Pressure | None = Field(default=None, description="held or relieved.")
    parking_brake: facts.ParkingBrake | None = Field(default=None, description="set or released.")
    selector: facts.Selector | None = Field(
        default=None, description="neutral_or_park or in_gear."
    )
    ventilation: facts.Ventilation | None = Field(
        default=None, description="open_air, extraction or closed_bay."
    )
    codes: facts.Codes | None = Field(
        default=None, description="unsaved, saved or cleared: the fault codes and freeze frame."
    )


class Step(Shape):
    """One instruction and the facts that its cautions follow from."""

    do: Text = Field(description="One instruction, in the imperative, at most twenty words.")
    action: facts.Action = Field(description="What kind of act it is.")
    place: facts.Place = Field(description="Where the person's body and hands are.")
    acts_on: list[ComponentId] = Field(
        default_factory=list, description="The components it touches; their energies come along."
    )
    near: list[facts.Energy] = Field(
        default_factory=list, description="Energies within reach that it does not touch."
    )
    opens: list[facts.Opens] = Field(
        default_factory=list, description="What it opens, so that something can come out."
    )
    tools: list[ToolId] = Field(default_factory=list, description="Tools in the hand.")
    supplies: list[SupplyId] = Field(default_factory=list, description="What is used up.")
    sets: State | None = Field(
        default=None, description="What else it changes in the vehicle's state."
    )
    measures: facts.Measures | None = Field(
        default=None, description="What it reads, where no spec of the step says so."
    )
    condition: list[facts.Condition] = Field(
        default_factory=list, description="What is out of the ordinary about what it acts on."
    )
    call: ProcedureId | None = Field(
        default=None, description="A procedure carried out here, whole, before going on."
    )
    spec: SpecId | list[SpecId] | None = Field(
        default=None, description="The value this step is about: a reading or a torque."
    )
    plain: PersonId | None = Field(
        default=None, description="The role that vouches that nothing here is hazardous."
    )
    note: LongText | None = Field(default=None, description="What helps to do it right.")

    @property
    def specs(self) -> list[str]:
        """The step's values, one or several."""
        if self.spec is None:
            return []
        return [self.spec] if isinstance(self.spec, str) else list(self.spec)


class Lead(Shape):
    """One lead of the meter or oscilloscope."""

    colour: str = Field(pattern="^(red|black|clamp)$", description="red, black or clamp.")
    to: Text = Field(description="What it touches, in words.")
    pin: int | None = Field(default=None, ge=1, le=200, description="Pin number, if it is a pin.")


class Hookup(Shape):
    """How the instrument is set and where its leads go."""

    instrument: ToolId = Field(description="Meter or oscilloscope.")
    setting: Text = Field(description="Function and range, as the dial says it.")
    component: ComponentId = Field(description="The part whose connector is drawn.")
    side: str = Field(
        pattern="^(part|harness)$", description="Which half of the connector is probed."
    )
    plugged: bool = Field(description="true where the connector stays together, back-probed.")
    leads: list[Lead] = Field(min_length=1, max_length=4, description="Each lead.")
    vehicles: list[VehicleId] = Field(
        default_factory=list, description="Only for these vehicles; empty means all."
    )


class Next(Shape):
    """Where an outcome leads: exactly one way."""

    test: TestId | None = Field(default=None, description="Go on with this test.")
    replacement: ReplacementId | None = Field(default=None, description="Replace the part.")
    procedure: ProcedureId | None = Field(default=None, description="Carry out this procedure.")
    carry_on: bool | None = Field(
        default=None, description="true: the next test in the complaint's order."
    )
    repeat: bool | None = Field(default=None, description="true: mend that, then test again.")
    refer: Text | None = Field(
        default=None, description="Leave this manual: who or what helps now."
    )
    done: Text | None = Field(default=None, description="The job is finished: what to record.")
    vehicles: list[VehicleId] = Field(
        default_factory=list, description="Only for these vehicles; empty means all."
    )

    @model_validator(mode="after")
    def _one_way(self) -> Next:
        ways = [name for name in WAYS if getattr(self, name)]
        if len(ways) != 1:
            raise PydanticCustomError(
                "next-ways", "an outcome leads exactly one way, not {n}",
                {"n": len(ways), "hint": "keep one of " + ", ".join(WAYS)},
            )  # fmt: skip
        return self

    @property
    def way(self) -> str:
        """Which of the ways it is."""
        return next(name for name in WAYS if getattr(self, name))


LEADS_TO = {"test": "tests", "replacement": "replacements", "procedure": "procedures"}
"""The ways on that name a record, and the kind they name."""

WAYS = ("test", "replacement", "procedure", "carry_on", "repeat", "refer", "done")


class Outcome(Shape):
    """One thing a test can find, what it means and where it leads."""

    finding: facts.Finding = Field(description="Which of the known findings this is.")
    label: Text = Field(description="What the mechanic sees or reads, in words.")
    reading: AnyValue | None = Field(
        default=None, description="Where on the number line, if it is not the spec's own limits."
    )
    verdict: facts.Verdict = Field(description="condemns, clears or neither.")
    about: list[ComponentId] = Field(
        default_factory=list, description="The parts it speaks of; empty means the test's own."
    )
    means: LongText = Field(description="What it says, and what it does not prove.")
    next: list[Next] = Field(min_length=1, description="Where to go, by vehicle where it differs.")


class Job(Record):
    """What tests, replacements and procedures have in common."""

    applies_to: list[VehicleId] = Field(min_length=1, description="The vehicles it holds for.")
    minutes: Minutes = Field(description="How long a practised person takes.")
    who: PersonId = Field(description="The least qualified role that may do it.")
    tools: list[ToolId] = Field(default_factory=list, description="Tools to lay out.")
    supplies: list[SupplyId] = Field(default_factory=list, description="What is used up.")
    entry: State = Field(description="The state the vehicle must be in at the start.")
    leaves: State = Field(description="The state it is left in.")
    leaves_apart: list[ComponentId] = Field(
        default_factory=list,
        description="Parts left unplugged, removed, loose or with leads in them, on purpose.",
    )
    steps: list[Step] = Field(min_length=1, description="One act a step, in order.")


class Test(Job):
    """A way to prove or clear something."""

    __test__ = False  # keep test collectors from taking the name at its word

    purpose: LongText = Field(description="What it finds out, and why now.")
    components: list[ComponentId] = Field(min_length=1, description="The parts it can judge.")
    method: str = Field(
        pattern="^(look|ask|scan_tool|meter|oscilloscope|gauge)$",
        description="look, ask, scan_tool, meter, oscilloscope or gauge.",
    )
    after: list[TestId] = Field(
        default_factory=list, description="Tests that must come before, for safety or for sense."
    )
    specs: list[SpecId] = Field(
        default_factory=list, description="The values the reading is held against."
    )
    hookups: list[Hookup] = Field(default_factory=list, description="Where the leads go.")
    outcomes: list[Outcome] = Field(min_length=2, description="Everything it can find.")
    cannot_show: LongText = Field(description="What this test cannot tell.")
    sensitivity: float = Field(
        default=0.9, gt=0, le=1, description="Share of present faults it shows (judgement)."
    )
    specificity: float = Field(
        default=0.95, gt=0, le=1, description="Share of good parts it clears (judgement)."
    )


class Part(Shape):
    """A part that is fitted."""

    name: Text = Field(description="What it is.")
    single_use: bool = Field(description="true where the old one must not go back.")
    note: Text | None = Field(default=None, description="Quality, supersession, what to match.")


class Access(Shape):
    """How to get at it."""

    side: str = Field(pattern="^(above|below|wheel_arch)$", description="From where.")
    comes_off: list[Text] = Field(default_factory=list, description="What must come off first.")
    reach: Text = Field(description="The tool that reaches, and how.")


class Proof(Shape):
    """A test that shows the repair worked."""

    test: TestId = Field(description="The test to repeat.")
    expect: Text = Field(description="What it must show now.")


class Replacement(Job):
    """Taking a condemned part out and a new one in, ending in proof."""

    component: ComponentId = Field(description="The part that is replaced.")
    before: LongText = Field(description="What must be proved before a part is bought.")
    parts: list[Part] = Field(min_length=1, description="What is fitted.")
    access: Access = Field(description="From where, and what comes off.")
    verify: list[Proof] = Field(min_length=1, description="The tests that prove the repair.")
    job_card: list[Text] = Field(min_length=1, description="What to write on the job card.")
    if_not_cured: LongText = Field(description="What to suspect when the fault stays.")


class Procedure(Job):
    """Work that others call: a relearn, a wiring repair, a clearing of codes."""

    purpose: LongText = Field(description="What it is for, and when.")
    components: list[ComponentId] = Field(default_factory=list, description="What it is done to.")
    verify: list[Proof] = Field(default_factory=list, description="The tests that prove it.")
    job_card: list[Text] = Field(default_factory=list, description="What to write down.")
