"""Every dimensionally exact formula of drilling, boring, turning against pint.

The oracle states each law in its coherent form and lets pint convert. Left out, as they own
their units: the handbook's and the guide's drill, and Taylor's law.
"""

from typing import Any

import numpy as np
import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from chartgen.physics.boring import boring_bar_deflection, force_for_boring_bar_deflection
from chartgen.physics.drilling import (
    drilling_thrust,
    drilling_torque,
    grip_for_drilling,
    lip_force,
)
from chartgen.physics.turning import (
    feed_for_roughness,
    mass,
    ring_volume,
    theoretical_roughness,
)

REGISTRY: "pint.UnitRegistry[Any]" = pint.UnitRegistry()


def held(value: float, unit: str) -> Any:  # noqa: ANN401  pint's quantity is generic in its number
    """Return `value` as a quantity of `unit`."""
    return REGISTRY.Quantity(value, unit)


def agree(computed: object, oracle: Any, unit: str) -> bool:  # noqa: ANN401  as above
    """Return whether the formula's number is the oracle's, in the unit its annotation names."""
    return bool(computed == pytest.approx(oracle.to(unit).magnitude, rel=1e-9))


lengths = st.floats(1.0, 300.0)
feeds = st.floats(0.005, 1.0)
pressures = st.floats(100.0, 6000.0)
shares = st.floats(0.0, 0.95)
forces = st.floats(1.0, 20_000.0)
moduli = st.floats(50_000.0, 650_000.0)


@given(kc=pressures, f=feeds, d=lengths, pilot=shares)
def test_lips_thrust_and_torque_of_a_drill(kc: float, f: float, d: float, pilot: float) -> None:
    inner = held(d * pilot, "mm")
    chips = held(f, "mm") * (held(d, "mm") - inner) / 2.0
    lips = held(kc, "N/mm**2") * chips
    cut = {"specific_force": kc, "feed": f, "diameter": d, "pilot_diameter": d * pilot}
    assert agree(lip_force(**cut), lips, "N")
    assert agree(drilling_thrust(**cut), 0.9 * lips, "N")
    arm = (held(d, "mm") + inner) / 4.0
    assert agree(drilling_torque(**cut), lips * arm, "N*m")


@given(torque=st.floats(0.01, 200.0), thrust=forces, d=lengths, mu=st.floats(0.05, 0.5))
def test_grip_for_drilling(torque: float, thrust: float, d: float, mu: float) -> None:
    turning = held(torque, "N*m") / (held(d, "mm") / 2.0)
    oracle = 1.5 * np.sqrt(turning**2 + held(thrust, "N") ** 2) / mu
    computed = grip_for_drilling(
        torque=torque, thrust=thrust, clamping_diameter=d, friction=mu, cut_safety=1.5
    )
    assert agree(computed, oracle, "N")


@given(force=forces, length=lengths, d=st.floats(3.0, 60.0), e=moduli)
def test_deflection_of_a_boring_bar_and_back(
    force: float, length: float, d: float, e: float
) -> None:
    second_moment = REGISTRY.pi * held(d, "mm") ** 4 / 64.0
    stiffness = 3.0 * held(e, "N/mm**2") * second_moment / held(length, "mm") ** 3
    oracle = held(force, "N") / stiffness
    bar = {"overhang": length, "elastic_modulus": e, "diameter": d}
    deflection = boring_bar_deflection(force=force, **bar)
    assert agree(deflection, oracle, "mm")
    assert force_for_boring_bar_deflection(deflection=deflection, **bar) == pytest.approx(force)


@given(d=lengths, bore=shares, length=lengths, rho=st.floats(0.9, 9.0))
def test_volume_and_mass_of_a_ring(d: float, bore: float, length: float, rho: float) -> None:
    area = REGISTRY.pi / 4.0 * (held(d, "mm") ** 2 - held(d * bore, "mm") ** 2)
    volume = ring_volume(outer_diameter=d, inner_diameter=d * bore, length=length)
    assert agree(volume, area * held(length, "mm"), "mm**3")
    oracle = held(float(volume), "mm**3") * held(rho, "g/cm**3")
    assert agree(mass(volume=volume, density=rho), oracle, "kg")


@given(f=st.floats(0.02, 0.5), r=st.floats(0.6, 3.0))
def test_roughness_and_back(f: float, r: float) -> None:
    oracle = held(f, "mm") ** 2 / (8.0 * held(r, "mm"))
    roughness = theoretical_roughness(feed=f, nose_radius=r)
    assert agree(roughness, oracle, "micrometer")
    assert feed_for_roughness(roughness=roughness, nose_radius=r) == pytest.approx(f)
