"""Field types of a written value that takes no spread."""

from __future__ import annotations

from generator.records.kinds.base import single

OneCharge = single("charge")
OneCurrent = single("current")
OneDuration = single("time")
OneInductance = single("inductance")
OneLength = single("length")
OnePressure = single("pressure")
OneRatio = single("ratio")
OneResistance = single("resistance")
OneSpeed = single("rotational speed")
OneTemperature = single("temperature")
OneVoltage = single("voltage")
OneArea = single("area")
