"""The air of the day, and what is measured against it; the oxygen cell."""

from __future__ import annotations

from generator.expected.models.use import (
    About,
    ModelUse,
    Three,
    as_written,
    ends,
    figures,
    model_of,
    over,
    rows,
    scaled,
    usual,
    written,
)
from generator.expected.result import BadSpec, Conditions, Limits, TrailLine
from generator.physics import atmosphere, engine_pressures, oxygen, stoichiometry
from generator.quantities import Interval
from generator.records.kinds.models import (
    CompressionModel,
    FuelPressureModel,
    KeyOnPressureModel,
    LeakDownModel,
    OxygenCellModel,
)
from generator.records.kinds.things import Spec
from generator.records.knowledge_base import KnowledgeBase

ALTITUDE_ROWS_M = (0.0, 300.0, 600.0, 900.0, 1200.0, 1500.0, 2000.0)
"""Heights of most roads (practice)."""

MANIFOLD_ROWS_PA = (30e3, 40e3, 60e3, 80e3, 100e3)
"""From a warm idle to full load or standstill (practice)."""

AIR_RATIO_ROWS = (95.0, 97.0, 99.0, 101.0, 103.0, 110.0)
"""Mixtures on both sides of the jump, percent."""

FUELS = {
    "petrol": stoichiometry.PETROL,
    "iso-octane": stoichiometry.ISO_OCTANE,
    "ethanol": stoichiometry.ETHANOL,
    "methane": stoichiometry.METHANE,
}
AIR = {"air_pressure": "altitude"}
"""The day's pressure at the place may be stated instead of the height."""

# Percent of the air needed between which the cell leaps, and just outside.
JUMP = (99.49, 99.5, 100.5, 100.51)
RICH_OF_THE_JUMP = JUMP[0]

_WEATHER = ("sea_level_pressure",)


def air_pa(given: Conditions) -> Three:
    """Give the air pressure at the place: as measured, or from its height and the weather."""
    if "air_pressure" in given:
        return ends(given["air_pressure"])
    weather = given.get("sea_level_pressure")
    sea = atmosphere.WEATHER_USUAL_PA if weather is None else ends(weather)
    return over(
        lambda m, pa: float(atmosphere.station_pressure_pa(m, pa)), ends(given["altitude"]), sea
    )


def _air_line(given: Conditions) -> TrailLine:
    found = air_pa(given)
    if "air_pressure" in given:
        return TrailLine("Air pressure at the place", "as stated", found, "Pa", "the reader")
    what = "as the report gives it" if "sea_level_pressure" in given else "980 to 1040 hPa"
    return TrailLine(
        f"Air pressure at the place; sea-level pressure {what}",
        "p = p0·(1 + β·(h(p_sea) + H) / T0)^(−g/(β·R))", found, "Pa", "ISO 2533",
    )  # fmt: skip


def _station(_kb: KnowledgeBase, _spec: Spec, given: Conditions) -> Limits:
    return Limits(*air_pa(given), (_air_line(given),))


def _key_on(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    off_pa = model_of(spec, KeyOnPressureModel).tolerance.only
    low, nominal, high = atmosphere.key_on_pressure_band_pa(air_pa(given), off_pa)
    trail = (
        _air_line(given),
        TrailLine("Error of the sensor", "either way", (off_pa,), "Pa", spec.source),
        TrailLine("Reading with the engine at rest", "the manifold holds outside air",
                  (low, nominal, high), "Pa", "arithmetic"),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _compression(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    ref_pa = model_of(spec, CompressionModel).stated_at.only

    def gauge(stated_pa: float, station_pa: float) -> float:
        return float(engine_pressures.compression_at_pa(stated_pa, station_pa, ref_pa))

    low, nominal, high = scaled(written(spec), gauge, air_pa(given))
    trail = (
        as_written(spec),
        _air_line(given),
        TrailLine("Gauge at that air pressure", f"p = p_ref·p_air / {ref_pa:g} Pa",
                  figures(low, nominal, high), "Pa", "Boyle's law"),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _leak_down(_kb: KnowledgeBase, spec: Spec, _given: Conditions) -> Limits:
    model = model_of(spec, LeakDownModel)
    supply_pa: float = model.supply.only

    def gauge(percent: float | None) -> float | None:
        if percent is None:
            return None
        if not 0 <= percent <= 100:
            raise BadSpec(f"{model.loss.text} cannot be lost", "write 0 to 100 %",
                          ("model", "loss"))  # fmt: skip
        return supply_pa * (1 - percent / 100)

    low, nominal, high = gauge(model.loss.high), gauge(model.loss.nominal), gauge(model.loss.low)
    trail = (
        TrailLine("First gauge", model.supply.text, (supply_pa,), "Pa", spec.source),
        TrailLine(f"Second gauge, where {model.loss.text} may be lost", "p2 = p1·(1 − s)",
                  figures(low, nominal, high), "Pa", "definition of the tester's share"),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _fuel(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    model, value = model_of(spec, FuelPressureModel), written(spec)
    if not model.referenced:
        return Limits(value.low, value.nominal, value.high, (as_written(spec),))

    def gauge(regulator_pa: float, manifold_pa: float, station_pa: float) -> float:
        return float(engine_pressures.rail_gauge_pa(regulator_pa, manifold_pa, station_pa, True))

    manifold = ends(given["manifold_pressure"])
    low, nominal, high = scaled(value, gauge, manifold, air_pa(given))
    trail = (
        as_written(spec),
        _air_line(given),
        TrailLine("Manifold", "absolute pressure", manifold, "Pa", "the reader"),
        TrailLine("Gauge on the rail", "p = p_reg + p_man − p_air", figures(low, nominal, high),
                  "Pa", "balance of the regulator"),
    )  # fmt: skip
    return Limits(low, nominal, high, trail)


def _oxygen(_kb: KnowledgeBase, spec: Spec, given: Conditions) -> Limits:
    model = model_of(spec, OxygenCellModel)
    ratio, at_c = given["air_ratio"], given["temperature"]
    low, high = oxygen.exhaust_cell_band_v(
        (ratio.low / 100, ratio.high / 100), (at_c.low, at_c.high), FUELS[model.fuel]
    )
    aged_v = 0.0 if model.aged is None else model.aged.only
    # A worn electrode only lowers the rich voltage; the lean one has nothing to lose. So beyond the
    # leap the lean voltage stays the least, as long as the worn rich one does not fall below it.
    worn = low
    if ratio.low < 100:
        leanest_rich = min(ratio.high, RICH_OF_THE_JUMP) / 100
        rich, _ = oxygen.exhaust_cell_band_v(
            (leanest_rich, leanest_rich), (at_c.low, at_c.high), FUELS[model.fuel]
        )
        worn = min(low, max(0.0, rich - aged_v))
    trail = (
        TrailLine("Gas at equilibrium on the electrode", f"λ, fuel {model.fuel}",
                  (ratio.low / 100, ratio.high / 100), "", "JANAF tables (1998)"),
        TrailLine("Voltage of a new cell", "E = (R·T / 4F)·ln(0.2095 / p)", (low, high), "V",
                  "Nernst's equation"),
        TrailLine("A used cell may give less when rich", "least voltage less its ageing",
                  (worn, high), "V", spec.source),
    )  # fmt: skip
    return Limits(worn, None, high, trail)


def _fuel_usual(kb: KnowledgeBase, spec: Spec) -> Conditions:
    if not model_of(spec, FuelPressureModel).referenced:
        return {}
    return usual(
        manifold_pressure=Interval(MANIFOLD_ROWS_PA[0], MANIFOLD_ROWS_PA[-1]), altitude=_ROADS
    )(kb, spec)


def _fuel_rows(kb: KnowledgeBase, spec: Spec) -> list[Conditions]:
    if not model_of(spec, FuelPressureModel).referenced:
        return [{}]
    return list(rows(_fuel_usual, "manifold_pressure", MANIFOLD_ROWS_PA)(kb, spec))


_ROADS = Interval(ALTITUDE_ROWS_M[0], ALTITUDE_ROWS_M[-1])
_BY_HEIGHT = usual(altitude=_ROADS)
_HEIGHTS = rows(_BY_HEIGHT, "altitude", ALTITUDE_ROWS_M)
_EXHAUST = usual(air_ratio=Interval(95.0, 110.0), temperature=Interval(600.0, 800.0))

MODELS: dict[str, ModelUse] = {
    "station_pressure": ModelUse(
        About(
            "Air pressure at a place", "p = p0·(1 + β·(h(p_sea) + H) / T0)^(−g/(β·R))",
            "−500 to 6000 m, sea-level pressures ever recorded", "ISO 2533; ICAO Doc 7488",
            "The day's temperature: a weather service's reduction differs by up to 5 hPa at "
            "1000 m.",
        ),
        _station, gives="pressure", unit="kPa", usual=_BY_HEIGHT, rows=_HEIGHTS, may=_WEATHER,
        instead=AIR,
    ),
    "key_on_pressure": ModelUse(
        About(
            "Manifold sensor, key on, engine at rest", "p_air ± the sensor's error",
            "as for the air pressure at a place", "ISO 2533",
            "The rest of the sensor's range: it is right here, and here alone.",
        ),
        _key_on, gives="pressure", unit="kPa", usual=_BY_HEIGHT, rows=_HEIGHTS, may=_WEATHER,
        instead=AIR,
    ),
    "compression": ModelUse(
        About(
            "Compression on a gauge", "p = p_ref·p_air / p_stated",
            "air of 40 to 110 kPa, throttle open, engine warm, sound battery", "Boyle's law",
            "Cranking speed and valve timing; comparing cylinders needs no correction at all.",
        ),
        _compression, gives="pressure", value=True, usual=_BY_HEIGHT, rows=_HEIGHTS, may=_WEATHER,
        instead=AIR,
    ),
    "leak_down": ModelUse(
        About(
            "Leak-down tester", "p2 = p1·(1 − s)", "losses of 0 to 100 % on one kind of tester",
            "definition of the tester's share",
            "Another tester: its orifice gives another figure for the same cylinder.",
        ),
        _leak_down, gives="pressure", unit="kPa",
    ),
    "fuel_pressure": ModelUse(
        About(
            "Fuel pressure on a gauge",
            "p = p_reg + p_man − p_air where the regulator is piped to the manifold, else p_reg",
            "regulators to 1 MPa", "balance of the regulator",
            "Flow: a weak pump may hold the pressure and starve the engine.",
        ),
        _fuel, gives="pressure", value=True, usual=_fuel_usual, rows=_fuel_rows, may=_WEATHER,
        instead=AIR,
    ),
    "oxygen_cell": ModelUse(
        About(
            "Switching oxygen cell", "E = (R·T / 4F)·ln(0.2095 / p)",
            "λ 0.9 to 3, cells of 500 to 900 °C; near λ = 1 a band over the whole jump",
            "Nernst's equation; JANAF tables (1998)",
            "A single value within 0.005 of λ = 1, wide-band sensors and a cold cell.",
        ),
        _oxygen, gives="voltage", unit="mV", usual=_EXHAUST,
        rows=rows(_EXHAUST, "air_ratio", AIR_RATIO_ROWS), jumps=True,
        breaks=lambda _spec: {"air_ratio": JUMP},
    ),
}  # fmt: skip
