"""How a spec's value follows the conditions of the day: one shape for each model a record names.

The calculations lie in ``physics``; what each one needs and gives is in ``expected``.
"""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from generator.records.kinds.models.battery import (
    BatteryRestModel,
    ChargingModel,
    CrankingModel,
    DischargeModel,
    LoadBankModel,
    StandingDrainModel,
)
from generator.records.kinds.models.dividers import (
    CurveModel,
    CurveRow,
    DividerModel,
    PotentiometerModel,
    TransducerModel,
)
from generator.records.kinds.models.other import (
    BusMeanModel,
    BusTerminationModel,
    HeaterModel,
    TorqueModel,
    WrenchModel,
)
from generator.records.kinds.models.pressure import (
    CompressionModel,
    FuelPressureModel,
    KeyOnPressureModel,
    LeakDownModel,
    OxygenCellModel,
    StationPressureModel,
)
from generator.records.kinds.models.sensors import (
    CurrentSensorModel,
    LoadedPickupModel,
    LowLevelModel,
    PickupModel,
    PullUpModel,
    SquareMeanModel,
    ToothRateModel,
)
from generator.records.kinds.models.thermal import (
    ColdSoakModel,
    PlatinumModel,
    Point,
    ThermistorBetaModel,
    ThermistorPointsModel,
    ThermistorTableModel,
)
from generator.records.kinds.models.windings import (
    CoilCurrentModel,
    CoilDwellModel,
    CoilFlybackModel,
    CoilRiseModel,
    InjectorDutyModel,
    PlainModel,
    WindingModel,
)
from generator.records.kinds.models.wiring import (
    Cable,
    CableDropModel,
    CableResistanceModel,
    DropBudgetModel,
    Piece,
)

__all__ = [
    "BatteryRestModel",
    "BusMeanModel",
    "BusTerminationModel",
    "Cable",
    "CableDropModel",
    "CableResistanceModel",
    "ChargingModel",
    "CoilCurrentModel",
    "CoilDwellModel",
    "CoilFlybackModel",
    "CoilRiseModel",
    "ColdSoakModel",
    "CompressionModel",
    "CrankingModel",
    "CurrentSensorModel",
    "CurveModel",
    "CurveRow",
    "DischargeModel",
    "DividerModel",
    "DropBudgetModel",
    "FuelPressureModel",
    "HeaterModel",
    "InjectorDutyModel",
    "KeyOnPressureModel",
    "LeakDownModel",
    "LoadBankModel",
    "LoadedPickupModel",
    "LowLevelModel",
    "Model",
    "OxygenCellModel",
    "PickupModel",
    "Piece",
    "PlainModel",
    "PlatinumModel",
    "Point",
    "PotentiometerModel",
    "PullUpModel",
    "SquareMeanModel",
    "StandingDrainModel",
    "StationPressureModel",
    "ThermistorBetaModel",
    "ThermistorPointsModel",
    "ThermistorTableModel",
    "ToothRateModel",
    "TorqueModel",
    "TransducerModel",
    "WindingModel",
    "WrenchModel",
]

Model = Annotated[
    PlainModel
    | WindingModel | CoilCurrentModel | CoilDwellModel | CoilFlybackModel | CoilRiseModel
    | InjectorDutyModel
    | PickupModel | LoadedPickupModel | ToothRateModel | PullUpModel | LowLevelModel
    | SquareMeanModel | CurrentSensorModel
    | ThermistorPointsModel | ThermistorBetaModel | ThermistorTableModel | PlatinumModel
    | ColdSoakModel
    | DividerModel | PotentiometerModel | TransducerModel | CurveModel
    | CableResistanceModel | CableDropModel | DropBudgetModel
    | BatteryRestModel | LoadBankModel | CrankingModel | ChargingModel | StandingDrainModel
    | DischargeModel
    | StationPressureModel | KeyOnPressureModel | CompressionModel | LeakDownModel
    | FuelPressureModel | OxygenCellModel
    | BusTerminationModel | BusMeanModel | HeaterModel | TorqueModel | WrenchModel,
    Field(discriminator="name"),
]  # fmt: skip
