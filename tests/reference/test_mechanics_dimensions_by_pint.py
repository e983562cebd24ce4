"""The formulas of blade and bar against pint, unit by unit.

As in the other test of dimensions: the oracle states each law in its coherent form and lets
pint convert.
"""

from typing import Any

import numpy as np
import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from chartgen.physics.blade_bending import bending_stress, end_slope, tip_deflection
from chartgen.physics.blade_buckling import critical_lateral_force
from chartgen.physics.whip import critical_speed, unbalance_force
from chartgen.physics.workpiece import (
    bar_deflection,
    bar_stress,
    core_diameter_at_bend_off,
    core_diameter_at_twist_off,
)

REGISTRY: "pint.UnitRegistry[Any]" = pint.UnitRegistry()
PI = REGISTRY.pi

forces = st.floats(1.0, 10_000.0)
lengths = st.floats(2.0, 500.0)
moduli = st.floats(50_000.0, 600_000.0)
strengths = st.floats(50.0, 2000.0)
moments = st.floats(10.0, 1e5)


def held(value: float, unit: str) -> Any:  # noqa: ANN401  pint's quantity is generic in its number
    """Return `value` as a quantity of `unit`."""
    return REGISTRY.Quantity(value, unit)


def agree(computed: object, oracle: Any, unit: str) -> bool:  # noqa: ANN401  as above
    """Return whether the formula's number is the oracle's, in the unit its annotation names."""
    return bool(computed == pytest.approx(oracle.to(unit).magnitude, rel=1e-9))


@given(force=forces, x=lengths, w=moments)
def test_bending_stress(force: float, x: float, w: float) -> None:
    oracle = held(force, "N") * held(x, "mm") / held(w, "mm**3")
    assert agree(bending_stress(force=force, overhang=x, section_modulus=w), oracle, "MPa")


@given(force=forces, x=lengths, e=moduli, i=moments, area=lengths, k=st.floats(1e3, 1e6))
def test_tip_deflection(force: float, x: float, e: float, i: float, area: float, k: float) -> None:
    load, arm, modulus = held(force, "N"), held(x, "mm"), held(e / 1000.0, "GPa")
    oracle = (
        load * arm**3 / (3.0 * modulus * held(i, "mm**4"))
        + load * arm / (modulus / 2.6 * held(area, "mm**2"))
        + load / held(k / 1000.0, "N/um")
    )
    computed = tip_deflection(
        force=force,
        overhang=x,
        elastic_modulus=e,
        shear_modulus=e / 2.6,
        second_moment=i,
        shear_area=area,
        support_stiffness=k,
    )
    assert agree(computed, oracle, "mm")


@given(force=forces, x=lengths, e=moduli, i=moments)
def test_end_slope(force: float, x: float, e: float, i: float) -> None:
    oracle = held(force, "N") * held(x, "mm") ** 2 / (2.0 * held(e, "MPa") * held(i, "mm**4"))
    computed = end_slope(force=force, overhang=x, elastic_modulus=e, second_moment=i)
    assert agree(computed, oracle, "rad")


@given(x=lengths, e=moduli, across=moments, twist=moments)
def test_critical_lateral_force(x: float, e: float, across: float, twist: float) -> None:
    sideways = held(e / 1000.0, "GPa") * held(across, "mm**4")
    twisting = held(e / 2600.0, "GPa") * held(twist, "mm**4")
    oracle = 4.012599343578901 * (sideways * twisting) ** 0.5 / held(x, "mm") ** 2
    computed = critical_lateral_force(
        overhang=x,
        load_height=0.0,
        elastic_modulus=e,
        shear_modulus=e / 2.6,
        lateral_second_moment=across,
        torsion_constant=twist,
    )
    assert agree(computed, oracle, "N")


@given(force=forces, x=lengths, e=moduli, d=lengths, bore=st.floats(0.0, 0.9))
def test_bar_deflection_and_stress(force: float, x: float, e: float, d: float, bore: float) -> None:
    outer, inner = held(d, "mm"), held(bore * d, "mm")
    second_moment = PI / 64.0 * (outer**4 - inner**4)
    load, arm = held(force, "N"), held(x, "mm")
    deflection = bar_deflection(
        force=force, distance=x, elastic_modulus=e, outer_diameter=d, inner_diameter=bore * d
    )
    oracle = load * arm**3 / (3.0 * held(e / 1000.0, "GPa") * second_moment)
    assert agree(deflection, oracle, "mm")
    stress = bar_stress(force=force, distance=x, outer_diameter=d, inner_diameter=bore * d)
    assert agree(stress, load * arm * outer / 2.0 / second_moment, "MPa")


@given(force=forces, r=strengths, arm=st.floats(0.5, 10.0))
def test_core_diameters(force: float, r: float, arm: float) -> None:
    load, strength = held(force, "N"), held(r, "MPa")
    twisted = (40.0 * 3.0**0.5 / (3.0 * PI) * load / strength) ** 0.5
    bent = (32.0 * load * held(arm, "mm") / (PI * strength)) ** (1.0 / 3.0)
    assert agree(core_diameter_at_twist_off(force=force, tensile_strength=r), twisted, "mm")
    computed = core_diameter_at_bend_off(force=force, arm=arm, tensile_strength=r)
    assert agree(computed, bent, "mm")


@given(x=lengths, d=lengths, bore=st.floats(0.0, 0.9), e=moduli, rho=st.floats(1.0, 20.0))
def test_critical_speed(x: float, d: float, bore: float, e: float, rho: float) -> None:
    outer, inner = held(d, "mm"), held(bore * d, "mm")
    second_moment = PI / 64.0 * (outer**4 - inner**4)
    per_length = held(1000.0 * rho, "kg/m**3") * PI / 4.0 * (outer**2 - inner**2)
    stiffness = held(e / 1000.0, "GPa") * second_moment
    oracle = 1.8751040687119611**2 * (stiffness / per_length / held(x, "mm") ** 4) ** 0.5
    computed = critical_speed(
        length=x, outer_diameter=d, inner_diameter=bore * d, elastic_modulus=e, density=rho
    )
    assert agree(computed, oracle * held(1.0, "rad"), "turn/min")


@given(m=st.floats(0.01, 50.0), off=st.floats(0.01, 50.0), n=st.floats(10.0, 5000.0))
def test_unbalance_force(m: float, off: float, n: float) -> None:
    turning = held(2.0 * np.pi * n, "1/min")
    oracle = held(m, "kg") * held(off, "mm") * turning**2
    assert agree(unbalance_force(mass=m, eccentricity=off, spindle_speed=n), oracle, "N")
