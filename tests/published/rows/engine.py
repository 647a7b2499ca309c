"""The air, pressures, the oxygen cell and fasteners."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from ambiance import Atmosphere

from tests.published.rows.asking import row

AMBIANCE = "ambiance 1.3.1, ISO 2533, asked at the geometric height"
PSYCHRO = "PsychroLib 2.5.0, GetStandardAtmPressure, printed figure (other constants: 1e-5)"
LETTER = "printed letter on compression at altitude: 120 psi at sea level is about 100 at 5000 ft"
TESTER = (
    "fluids 1.3.1, differential_pressure_meter_solver, long radius nozzle in 20 mm: the tester's "
    "nozzle and the leak in series, solved for the pressure between; share and gauge printed"
)
BULLETIN = "printed bulletin on referenced regulators: 12 inHg of vacuum takes 6 psi off the rail"
CANTERA = "cantera 3.2.0, gri30, equilibrium at 101 325 Pa in air of 0.2095 oxygen, printed figure"
PROOF = "ISO 898-1, printed proof load of class 8.8, times 0.35·d·1.1"
MANUAL = "printed manual of a torque wrench: 50 ft·lb, 16 in and 2 in, set 44.44"
EXAMPLE = "printed worked example: 80 N·m, 40 cm and 5 cm, set 71.1; square across 80"
ANGLES = "printed table of a setting for 100 ft·lb, 18 in and 3 in: straight 85.71, at 45° 89.46"

EARTH_M = 6356766.0  # ISO 2533: nominal radius of the earth, m
PSI_PA, INHG_PA, LBF_FT_NM = 6894.757, 3386.389, 1.355818  # NIST SP 811 (2008), B.8
SEA = {"sea_level_pressure": 101_325.0}


def standard_pa(height_m: float) -> float:
    """Ask the library at a geopotential height: it takes a geometric one."""
    return float(Atmosphere(EARTH_M * height_m / (EARTH_M - height_m)).pressure[0])


def _standard(height_m: float, less_pa: float = 0.0) -> Callable[[], float]:
    return lambda: standard_pa(height_m) - less_pa


def _at(height_m: float) -> dict[str, float]:
    return {"altitude": height_m, **SEA}


KEY_ON = {"name": "key_on_pressure", "tolerance": "2 kPa"}
COMPRESSION = {"name": "compression", "stated_at": "101.325 kPa"}
RAIL = {"name": "fuel_pressure", "referenced": True}


def _in_proportion(pressure_pa: float, height_m: float) -> Callable[[], float]:
    return lambda: pressure_pa * standard_pa(height_m) / 101_325


def _leak(supply_pa: str, percent: float) -> dict[str, str]:
    return {"name": "leak_down", "supply": supply_pa, "loss": f"{percent} %"}


def _manifold(pa: float) -> dict[str, float]:
    return {"manifold_pressure": pa, "air_pressure": 101_325.0}


def _cell(fuel: str, side: str, percent: float, temp_c: float, volts: float) -> Any:
    at = {"air_ratio": percent, "temperature": temp_c}
    return row({"name": "oxygen_cell", "fuel": fuel}, side, at, volts, 0.002, "L", CANTERA)


def _thread(diameter: str, pitch: str) -> dict[str, str]:
    return {"name": "torque", "diameter": diameter, "pitch": pitch, "strength": "8.8"}


def _span(diameter_mm: int, pitch: str, proof_n: float) -> Any:
    # Half of the last printed digit of the proof load, through the same factor.
    factor = 0.35 * diameter_mm * 1e-3 * 1.1
    return row(_thread(f"{diameter_mm} mm", pitch), "check high", {}, factor * proof_n,
               factor * 75.0, "P", f"{PROOF}, M{diameter_mm}", "20 N·m")  # fmt: skip


def _wrench(wrench: str, extension: str, angle: float = 0.0) -> dict[str, Any]:
    return {"name": "wrench_setting", "wrench": wrench, "extension": extension, "angle": angle}


ROWS = [
    *(row("station_pressure", "nominal", _at(m), _standard(m), 0.5, "L", AMBIANCE)
      for m in (500.0, 1200.0, 2000.0)),
    row("station_pressure", "nominal", _at(1800.0), 81489.138, 2.0, "L", PSYCHRO),
    row(KEY_ON, "low", _at(1000.0), _standard(1000.0, 2000.0), 0.5, "L", AMBIANCE + ", less 2 kPa"),
    row(KEY_ON, "nominal", _at(2500.0), 74682.426, 2.0, "L", PSYCHRO),
    row(KEY_ON, "high", _at(300.0), 97772.561 + 2000.0, 2.0, "L", PSYCHRO + ", and 2 kPa"),
    row(COMPRESSION, "nominal", _at(1500.0), _in_proportion(12e5, 1500.0), 20.0, "L",
        AMBIANCE + ", in proportion", "12 bar"),
    row(COMPRESSION, "nominal", _at(750.0), _in_proportion(175 * PSI_PA, 750.0), 20.0, "L",
        AMBIANCE + ", in proportion", "175 psi"),
    row(COMPRESSION, "nominal", _at(1524.0), 100 * PSI_PA, 1.0 * PSI_PA, "P", LETTER, "120 psi"),
    row(_leak("600 kPa", 16.2316), "nominal", {}, 502_610.5, 1.0, "L", TESTER + ": 1 and 1.1 mm"),
    row(_leak("80 psi", 27.2360), "nominal", {}, 401_351.9, 1.0, "L", TESTER + ": 1.02, 1.25 mm"),
    row(_leak("690 kPa", 15.8706), "nominal", {}, 580_493.1, 1.0, "L", TESTER + ": 1.5 and 1.7 mm"),
    row({"name": "leak_down", "supply": "80 psi", "loss": "at most 25 %"}, "low", {}, 60 * PSI_PA,
        0.1, "M", "from memory: 60 of 80 psi is a leakage of 25 % (aircraft practice)"),
    row(RAIL, "nominal", _manifold(101_325.0 - 12 * INHG_PA), 34 * PSI_PA, 0.12 * PSI_PA, "P",
        BULLETIN, "40 psi"),
    row(RAIL, "nominal", _manifold(101_325.0 + 10 * PSI_PA), 50 * PSI_PA, 1.0, "P",
        BULLETIN + "; boost adds as much, 1 to 1", "40 psi"),
    row(RAIL, "nominal", _manifold(101_325.0), 40 * PSI_PA, 0.1, "P",
        BULLETIN + "; hose off, the regulator's own figure", "40 psi"),
    _cell("iso-octane", "low", 97.0, 600.0, 0.902279),
    _cell("iso-octane", "high", 101.0, 600.0, 0.088171),
    _cell("iso-octane", "high", 95.0, 700.0, 0.875001),
    _cell("iso-octane", "low", 105.0, 750.0, 0.068646),
    _cell("methane", "low", 98.0, 650.0, 0.853161),
    _cell("methane", "high", 110.0, 700.0, 0.052183),
    _cell("ethanol", "low", 96.0, 750.0, 0.829497),
    _span(6, "1 mm", 11_600.0),
    _span(8, "1.25 mm", 21_200.0),
    _span(12, "1.75 mm", 48_900.0),
    row(_thread("8 mm", "1.25 mm"), "nominal", {}, 18 * LBF_FT_NM, 1e-5, "P",
        "NIST SP 811 (2008), appendix B.8, pound-force foot: the thread never changes a torque",
        "18 lbf·ft"),
    row(_wrench("16 in", "2 in"), "nominal", {}, 44.44 * LBF_FT_NM, 0.005 * LBF_FT_NM, "P", MANUAL,
        "50 lbf·ft"),
    row(_wrench("400 mm", "50 mm"), "nominal", {}, 71.1, 0.05, "P", EXAMPLE, "80 N·m"),
    row(_wrench("400 mm", "50 mm", 90.0), "nominal", {}, 80.0, 1e-9, "P", EXAMPLE, "80 N·m"),
    # The page names no wrench: its straight row, 85.71, makes it 18 in.
    row(_wrench("18 in", "3 in", 45.0), "nominal", {}, 89.46 * LBF_FT_NM, 0.02, "P", ANGLES,
        "100 lbf·ft"),
]  # fmt: skip
