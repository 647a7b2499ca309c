"""Properties of the air that fuels need and of burnt gas."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.physics.domain import OutsideRange
from generator.physics.stoichiometry import (
    AIR_OXYGEN,
    ETHANOL,
    METHANE,
    PETROL,
    Fuel,
    blend_ratio,
    burnt_oxygen_fraction,
    mass_fraction_of_volume,
    stoichiometric_ratio,
    stoichiometric_ratio_by_mass,
)

ATOMS = st.floats(0.5, 20.0)


@given(ATOMS, ATOMS, st.floats(0.0, 0.5), st.floats(0.1, 10.0))
def test_only_the_proportions_of_a_fuel_matter(carbon, hydrogen, oxygen, scale):
    """Twice the molecule needs twice the air for twice the mass."""
    ratio = stoichiometric_ratio(Fuel(carbon, hydrogen, oxygen))
    scaled = stoichiometric_ratio(Fuel(scale * carbon, scale * hydrogen, scale * oxygen))
    assert scaled == pytest.approx(ratio)


@given(ATOMS, ATOMS, st.floats(0.0, 0.5))
def test_atoms_and_mass_fractions_tell_the_same(carbon, hydrogen, oxygen):
    """A composition by atoms and the same by mass need the same air."""
    fuel = Fuel(carbon, hydrogen, oxygen)
    masses = (12.011 * carbon, 1.008 * hydrogen, 15.999 * oxygen)
    by_mass = stoichiometric_ratio_by_mass(*(mass / sum(masses) for mass in masses))
    assert by_mass == pytest.approx(stoichiometric_ratio(fuel))


@given(st.floats(0.0, 1.0))
def test_a_blend_lies_between_its_parts(share):
    """Petrol and ethanol mixed need an amount of air between the two, falling with ethanol."""
    ratios = [stoichiometric_ratio(ETHANOL), stoichiometric_ratio(PETROL)]
    blend = blend_ratio([share, 1.0 - share], ratios)
    assert ratios[0] - 1e-9 <= blend <= ratios[1] + 1e-9


@given(st.floats(0.0, 1.0))
def test_the_heavier_part_weighs_more_than_its_volume(share):
    """Ethanol is denser than petrol, so its mass fraction is at least its volume fraction."""
    assert mass_fraction_of_volume(share, 789.0, 745.0) >= share - 1e-15
    assert mass_fraction_of_volume(share, 789.0, 789.0) == pytest.approx(share)


@settings(max_examples=40)
@given(st.floats(1.02, 3.0), st.floats(500.0, 900.0), st.sampled_from([PETROL, ETHANOL, METHANE]))
def test_lean_gas_holds_the_air_left_over(air_ratio, gas_c, fuel):
    """Clearly lean, the oxygen is the excess of a complete burning (balance of atoms)."""
    needed = fuel.oxygen_needed
    inert = air_ratio * needed * (1.0 - AIR_OXYGEN) / AIR_OXYGEN
    spare = (air_ratio - 1.0) * needed
    complete = spare / (spare + inert + fuel.carbon + fuel.hydrogen / 2.0)
    assert burnt_oxygen_fraction(air_ratio, gas_c, fuel) == pytest.approx(complete, rel=1e-3)


def test_more_pressure_pushes_dissociation_back():
    """At λ = 1 the free oxygen falls as pressure rises (Le Chatelier)."""
    low, high = (burnt_oxygen_fraction(1.0, 800.0, PETROL, p) for p in (60e3, 150e3))
    assert high < low


def test_floats_stay_floats_and_arrays_stay_arrays():
    """One number in gives one Python float out; an array gives an array."""
    assert type(stoichiometric_ratio(PETROL)) is float
    assert type(burnt_oxygen_fraction(1.1, 600.0)) is float
    assert type(mass_fraction_of_volume(0.1, 789.0, 745.0)) is float
    assert mass_fraction_of_volume(np.array([0.1, 0.2]), 789.0, 745.0).shape == (2,)


@pytest.mark.parametrize(
    ("call", "name"),
    [
        (lambda: Fuel(-1.0, 4.0), "atoms"),
        (lambda: Fuel(1.0, 0.0, 2.0), "oxygen needed"),
        (lambda: stoichiometric_ratio_by_mass(1.2, 0.0), "mass fraction"),
        (lambda: stoichiometric_ratio_by_mass(0.5, 0.1), "sum of mass fractions"),
        (lambda: blend_ratio([0.5, 0.4], [9.0, 14.7]), "sum of mass fractions"),
        (lambda: blend_ratio([0.5, 0.5], [9.0, 50.0]), "ratio"),
        (lambda: mass_fraction_of_volume(1.5, 789.0, 745.0), "volume fraction"),
        (lambda: mass_fraction_of_volume(0.5, 0.0, 745.0), "density"),
        (lambda: burnt_oxygen_fraction(0.5, 600.0), "air ratio"),
        (lambda: burnt_oxygen_fraction(1.0, 1000.0), "gas temperature"),
        (lambda: burnt_oxygen_fraction(1.0, 600.0, PETROL, 1.0), "pressure"),
    ],
)
def test_beyond_the_range_is_an_error(call, name):
    """Each quantity out of range raises, and the error names it."""
    with pytest.raises(OutsideRange) as caught:
        call()
    assert caught.value.name == name
