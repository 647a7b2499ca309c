"""Air that a fuel needs, and the oxygen left in its burnt gas at equilibrium."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from generator.physics.curves import TabulatedCurve
from generator.physics.domain import Number, plain, within

_INFINITE = float("inf")
# CODATA 2018, exact: gas constant in J/(mol·K).
GAS_J_MOL_K = 8.31446261815324
# SI Brochure, 9th edition, 2.3.1: 0 °C in kelvin.
ICE_POINT_K = 273.15
# ISO 2533: volume share of oxygen in dry air, rounded as gas analysis does.
AIR_OXYGEN = 0.2095
# ISO 2533: molar mass of dry air, g/mol.
AIR_G_MOL = 28.9644
# IUPAC standard atomic weights, abridged, g/mol.
CARBON_G_MOL, HYDROGEN_G_MOL, OXYGEN_G_MOL = 12.011, 1.008, 15.999
# Greatest air/fuel mass ratio of any fuel: hydrogen's, 34.3.
RATIO_MAX = 35.0


@dataclass(frozen=True)
class Fuel:
    """A fuel by the atoms of its (mean) molecule, in any proportion.

    Attributes
    ----------
    carbon, hydrogen, oxygen : float
        Atoms, not negative.

    Raises
    ------
    OutsideRange
        For a composition that does not burn.
    """

    carbon: float
    hydrogen: float
    oxygen: float = 0.0

    def __post_init__(self) -> None:
        within("atoms", [self.carbon, self.hydrogen, self.oxygen], 0.0, 1e4, "")
        within("oxygen needed", self.oxygen_needed, 1e-9, _INFINITE, "mol")

    @property
    def oxygen_needed(self) -> float:
        """Oxygen (O2) to burn it wholly, mol per mol."""
        return self.carbon + self.hydrogen / 4.0 - self.oxygen / 2.0

    @property
    def g_per_mol(self) -> float:
        """Molar mass, g/mol."""
        atoms = (self.carbon, self.hydrogen, self.oxygen)
        weights = (CARBON_G_MOL, HYDROGEN_G_MOL, OXYGEN_G_MOL)
        return sum(n * weight for n, weight in zip(atoms, weights, strict=True))


# Pure substances: their formulae. Petrol as a mean molecule: practice, H/C of 1.87.
ISO_OCTANE = Fuel(8.0, 18.0)
ETHANOL = Fuel(2.0, 6.0, 1.0)
METHANE = Fuel(1.0, 4.0)
PETROL = Fuel(1.0, 1.87)


def stoichiometric_ratio(fuel: Fuel) -> float:
    """Give the mass of dry air that burns one mass of fuel wholly.

    Parameters
    ----------
    fuel : Fuel

    Returns
    -------
    float
        Air over fuel by mass.

    Notes
    -----
    A = (x + y/4 − z/2)·(28.9644/0.2095)/M for CxHyOz. The customary 14.7 of petrol is a
    convention: petrols run from about 14.0 (with a tenth of ethanol) to 14.7.

    References
    ----------
    J. B. Heywood, Internal Combustion Engine Fundamentals (1988), 3.4 (from memory).
    """
    return fuel.oxygen_needed * AIR_G_MOL / AIR_OXYGEN / fuel.g_per_mol


def stoichiometric_ratio_by_mass(carbon: float, hydrogen: float, oxygen: float = 0.0) -> float:
    """Give the mass of dry air that burns one mass of a fuel known by its mass fractions.

    Parameters
    ----------
    carbon, hydrogen, oxygen : float
        Mass fractions, 0 to 1, together 0.95 to 1.

    Returns
    -------
    float
        Air over fuel by mass.

    Raises
    ------
    OutsideRange
        For fractions that cannot be.

    Notes
    -----
    As :func:`stoichiometric_ratio`, per unit of mass; whatever is missing to 1 does not burn.
    """
    fractions = (carbon, hydrogen, oxygen)
    within("mass fraction", fractions, 0.0, 1.0, "")
    within("sum of mass fractions", sum(fractions), 0.95, 1.0 + 1e-9, "")
    atoms = Fuel(carbon / CARBON_G_MOL, hydrogen / HYDROGEN_G_MOL, oxygen / OXYGEN_G_MOL)
    return atoms.oxygen_needed * AIR_G_MOL / AIR_OXYGEN


def blend_ratio(mass_fractions: Sequence[float], ratios: Sequence[float]) -> float:
    """Give the stoichiometric ratio of a blend.

    Parameters
    ----------
    mass_fractions : sequence of float
        Share of each part in the blend's mass; together 1.
    ratios : sequence of float
        Stoichiometric ratio of each part.

    Returns
    -------
    float
        Air over fuel by mass.

    Raises
    ------
    OutsideRange
        For fractions that do not make 1 or ratios that cannot be.
    ValueError
        For lists of unequal length.

    Notes
    -----
    A = Σ w·A_i, exact by mass. Pump labels (E10) are by volume: convert with
    :func:`mass_fraction_of_volume` first.
    """
    within("mass fraction", mass_fractions, 0.0, 1.0, "")
    within("sum of mass fractions", sum(mass_fractions), 1.0 - 1e-6, 1.0 + 1e-6, "")
    within("ratio", ratios, 0.0, RATIO_MAX, "")
    pairs = zip(mass_fractions, ratios, strict=True)
    return float(sum(share * ratio for share, ratio in pairs))


def mass_fraction_of_volume(volume_fraction: Number, kg_m3: float, other_kg_m3: float) -> Number:
    """Give the mass fraction of one part of a two-part blend from its volume fraction.

    Parameters
    ----------
    volume_fraction : float or ndarray
        Share of the part in the volumes before mixing, 0 to 1.
    kg_m3, other_kg_m3 : float
        Density of the part and of the rest, kg/m³ (ethanol 789, petrol 720 to 775 at 15–20 °C).

    Returns
    -------
    float or ndarray
        Mass fraction, 0 to 1.

    Raises
    ------
    OutsideRange
        For a value that cannot be.
    """
    within("volume fraction", volume_fraction, 0.0, 1.0, "")
    within("density", [kg_m3, other_kg_m3], 1.0, 3000.0, "kg/m³")
    share = np.asarray(volume_fraction, dtype=float)
    return plain(share * kg_m3 / (share * kg_m3 + (1.0 - share) * other_kg_m3))


def _reaction(name: str, *kj_mol: float) -> TabulatedCurve:
    kelvins = (600.0, 700.0, 800.0, 900.0, 1000.0, 1100.0, 1200.0)
    units = {"x_name": "temperature", "x_unit": "K", "y_unit": "kJ/mol"}
    return TabulatedCurve(kelvins, kj_mol, "linear", name, **units)


# NIST-JANAF Thermochemical Tables, 4th edition, standard Gibbs energy of reaction at 100 kPa,
# kJ/mol (from memory; an independent thermochemical library agrees within 0.05).
_WATER = _reaction(
    "H2 + ½ O2 = H2O", -214.007, -208.812, -203.496, -198.083, -192.590, -187.033, -181.425
)
_CARBON = _reaction(
    "CO + ½ O2 = CO2", -230.696, -221.880, -213.089, -204.332, -195.611, -186.926, -178.279
)
# JANAF standard pressure, Pa.
_STANDARD_PA = 100_000.0
# Where the equilibrium below holds: colder or richer, methane and soot join in.
GAS_MIN_C, GAS_MAX_C = 500.0, 900.0
LAMBDA_MIN, LAMBDA_MAX = 0.9, 3.0
_HALVINGS = 200


def burnt_oxygen_fraction(
    air_ratio: float, gas_c: float, fuel: Fuel = PETROL, total_pa: float = 101_325.0
) -> float:
    """Give the share of oxygen in burnt gas that has come to equilibrium.

    Parameters
    ----------
    air_ratio : float
        Air supplied over stoichiometric air (λ), 0.9 to 3.
    gas_c : float
        Temperature at which the gas comes to equilibrium, as on a hot catalytic electrode,
        500 to 900 °C.
    fuel : Fuel, optional
        Composition; it matters by some 10 mV of cell voltage between petrol and ethanol.
    total_pa : float, optional
        Pressure of the gas, Pa, 50 to 200 kPa.

    Returns
    -------
    float
        Mole fraction of O2, down to 1e-23.

    Raises
    ------
    OutsideRange
        Beyond the ranges above.

    Notes
    -----
    CO2, CO, H2O, H2, O2 and inert air in the equilibria of CO and of H2 with oxygen; the balance
    of oxygen rises with its partial pressure, so bisection on its logarithm finds the one root.
    Real exhaust is not at equilibrium in the pipe; the electrode brings it near.

    References
    ----------
    J. B. Heywood, Internal Combustion Engine Fundamentals (1988), 3.7 (from memory).
    """
    within("air ratio", air_ratio, LAMBDA_MIN, LAMBDA_MAX, "")
    within("gas temperature", gas_c, GAS_MIN_C, GAS_MAX_C, "°C")
    within("pressure", total_pa, 50e3, 200e3, "Pa")
    kelvin = gas_c + ICE_POINT_K
    k_water, k_carbon = (
        np.exp(-1000.0 * curve.at(kelvin) / (GAS_J_MOL_K * kelvin)) for curve in (_WATER, _CARBON)
    )
    supplied = air_ratio * fuel.oxygen_needed
    inert = supplied * (1.0 - AIR_OXYGEN) / AIR_OXYGEN
    products = fuel.carbon + fuel.hydrogen / 2.0 + inert

    def excess(log_fraction: float) -> float:
        fraction = float(np.exp(log_fraction))
        root = np.sqrt(fraction * total_pa / _STANDARD_PA)
        burnt_water = fuel.hydrogen / 2.0 * k_water * root / (1.0 + k_water * root)
        burnt_carbon = fuel.carbon * k_carbon * root / (1.0 + k_carbon * root)
        free = products * fraction / (1.0 - fraction)
        bound = fuel.carbon + burnt_carbon + burnt_water - fuel.oxygen
        return float(2.0 * free + bound - 2.0 * supplied)

    low, high = float(np.log(1e-40)), float(np.log(AIR_OXYGEN))
    for _ in range(_HALVINGS):
        middle = (low + high) / 2.0
        low, high = (middle, high) if excess(middle) < 0.0 else (low, middle)
    return float(np.exp((low + high) / 2.0))
