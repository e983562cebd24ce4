"""Laws of blade and bar, tried on many: inverses, monotony, arrays against floats."""

from collections.abc import Callable

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from chartgen.physics.blade_bending import (
    bending_deflection,
    bending_stress,
    end_slope,
    force_for_bending_stress,
    force_for_tip_deflection,
    forward_bite,
    shear_deflection,
    tip_deflection,
)
from chartgen.physics.blade_buckling import buckling_coefficient, critical_lateral_force
from chartgen.physics.blade_section import rectangular_section, torsion_factor
from chartgen.physics.whip import critical_speed, unbalance_force
from chartgen.physics.workpiece import (
    bar_deflection,
    bar_stress,
    core_diameter_at_bend_off,
    core_diameter_at_twist_off,
    force_for_bar_deflection,
    force_for_bar_stress,
)
from chartgen.quantities import Numeric

thicknesses = st.floats(0.8, 6.0)
heights = st.floats(8.0, 40.0)
overhangs = st.floats(5.0, 100.0)
forces = st.floats(1.0, 10_000.0)
more = st.floats(1.001, 3.0)
stiffnesses = st.floats(1000.0, 1e6)
moduli = st.floats(60_000.0, 600_000.0)
diameters = st.floats(3.0, 100.0)
bores = st.floats(0.0, 0.95)


def drop(
    *, force: Numeric, overhang: float, thickness: float, height: float, modulus: float, post: float
) -> Numeric:
    section = rectangular_section(thickness=thickness, height=height)
    return tip_deflection(
        force=force,
        overhang=overhang,
        elastic_modulus=modulus,
        shear_modulus=modulus / 2.6,
        second_moment=section.second_moment,
        shear_area=section.shear_area,
        support_stiffness=post,
    )


def allowed(
    *, overhang: float, thickness: float, height: float, modulus: float, post: float
) -> dict[str, Numeric]:
    """Return the force that each limit of a flat blade allows."""
    section = rectangular_section(thickness=thickness, height=height)
    return {
        "stress": force_for_bending_stress(
            stress=600.0, overhang=overhang, section_modulus=section.section_modulus
        ),
        "drop": force_for_tip_deflection(
            deflection=0.1,
            overhang=overhang,
            elastic_modulus=modulus,
            shear_modulus=modulus / 2.6,
            second_moment=section.second_moment,
            shear_area=section.shear_area,
            support_stiffness=post,
        ),
        "tipping over": critical_lateral_force(
            overhang=overhang,
            load_height=section.top_distance,
            elastic_modulus=modulus,
            shear_modulus=modulus / 2.6,
            lateral_second_moment=section.lateral_second_moment,
            torsion_constant=section.torsion_constant,
        ),
    }


@given(x=overhangs, t=thicknesses, h=heights, e=moduli, k=stiffnesses, times=more)
def test_a_longer_overhang_allows_less_by_every_limit(
    x: float, t: float, h: float, e: float, k: float, times: float
) -> None:
    short = allowed(overhang=x, thickness=t, height=h, modulus=e, post=k)
    long = allowed(overhang=times * x, thickness=t, height=h, modulus=e, post=k)
    assert all(long[limit] < short[limit] for limit in short)


@given(x=overhangs, t=thicknesses, h=heights, e=moduli, k=stiffnesses, times=more)
def test_a_thicker_blade_allows_more_by_every_limit(
    x: float, t: float, h: float, e: float, k: float, times: float
) -> None:
    thin = allowed(overhang=x, thickness=t, height=h, modulus=e, post=k)
    thick = allowed(overhang=x, thickness=min(times * t, h), height=h, modulus=e, post=k)
    assert all(thick[limit] >= thin[limit] for limit in thin)


@given(x=overhangs, t=thicknesses, h=heights, e=moduli, k=stiffnesses, times=more)
def test_a_stiffer_blade_or_post_never_allows_less(
    x: float, t: float, h: float, e: float, k: float, times: float
) -> None:
    soft = allowed(overhang=x, thickness=t, height=h, modulus=e, post=k)
    for stiff in (
        allowed(overhang=x, thickness=t, height=h, modulus=times * e, post=k),
        allowed(overhang=x, thickness=t, height=h, modulus=e, post=times * k),
    ):
        assert all(stiff[limit] >= soft[limit] * (1.0 - 1e-12) for limit in soft)


@given(x=overhangs, t=thicknesses, h=heights, e=moduli, k=stiffnesses)
def test_the_force_a_blade_limit_allows_reaches_that_limit(
    x: float, t: float, h: float, e: float, k: float
) -> None:
    limit = allowed(overhang=x, thickness=t, height=h, modulus=e, post=k)
    reached = drop(force=limit["drop"], overhang=x, thickness=t, height=h, modulus=e, post=k)
    assert reached == pytest.approx(0.1, rel=1e-12)
    section = rectangular_section(thickness=t, height=h)
    stress = bending_stress(
        force=limit["stress"], overhang=x, section_modulus=section.section_modulus
    )
    assert stress == pytest.approx(600.0, rel=1e-12)


@given(force=forces, x=overhangs, t=thicknesses, h=heights, e=moduli, k=stiffnesses)
def test_the_drop_of_the_tip_is_the_sum_of_its_three_parts(
    force: float, x: float, t: float, h: float, e: float, k: float
) -> None:
    section = rectangular_section(thickness=t, height=h)
    bent = bending_deflection(
        force=force, overhang=x, elastic_modulus=e, second_moment=section.second_moment
    )
    sheared = shear_deflection(
        force=force, overhang=x, shear_modulus=e / 2.6, shear_area=section.shear_area
    )
    total = drop(force=force, overhang=x, thickness=t, height=h, modulus=e, post=k)
    assert total == pytest.approx(bent + sheared + force / k, rel=1e-12)
    rigid = drop(force=force, overhang=x, thickness=t, height=h, modulus=e, post=np.inf)
    assert rigid == pytest.approx(bent + sheared, rel=1e-12)


@given(ratio=st.floats(-1.0, 20.0), higher=st.floats(0.001, 2.0))
def test_a_higher_force_tips_the_blade_sooner(ratio: float, higher: float) -> None:
    low = buckling_coefficient(load_height_ratio=ratio)
    high = buckling_coefficient(load_height_ratio=ratio + higher)
    assert 0.0 < high < low < 5.562


def test_the_buckling_coefficient_is_found_over_its_whole_range() -> None:
    ratios = np.linspace(-100.0, 1000.0, 40_001)
    coefficients = np.asarray(buckling_coefficient(load_height_ratio=ratios))
    assert np.all(np.diff(coefficients) < 0.0)
    assert 5.55 < coefficients[0] < 5.56
    assert coefficients[-1] == pytest.approx(1.0 / 1000.0, rel=1e-6)


@given(d=diameters, bore=bores, x=overhangs, e=moduli)
def test_the_force_a_bar_limit_allows_reaches_that_limit(
    d: float, bore: float, x: float, e: float
) -> None:
    b = bore * d
    force = force_for_bar_deflection(
        deflection=0.05, distance=x, elastic_modulus=e, outer_diameter=d, inner_diameter=b
    )
    deflection = bar_deflection(
        force=force, distance=x, elastic_modulus=e, outer_diameter=d, inner_diameter=b
    )
    assert deflection == pytest.approx(0.05, rel=1e-12)
    force = force_for_bar_stress(stress=200.0, distance=x, outer_diameter=d, inner_diameter=b)
    stress = bar_stress(force=force, distance=x, outer_diameter=d, inner_diameter=b)
    assert stress == pytest.approx(200.0, rel=1e-12)


@given(d=diameters, bore=st.floats(0.05, 0.9), x=overhangs)
def test_a_bore_weakens_a_bar_but_lets_its_tail_turn_faster(
    d: float, bore: float, x: float
) -> None:
    solid, bored = (
        force_for_bar_stress(stress=200.0, distance=x, outer_diameter=d, inner_diameter=b)
        for b in (0.0, bore * d)
    )
    assert bored < solid
    solid_speed, bored_speed = (
        critical_speed(
            length=x,
            outer_diameter=d,
            inner_diameter=b,
            elastic_modulus=206_000.0,
            density=7.85,
        )
        for b in (0.0, bore * d)
    )
    assert bored_speed > solid_speed


# Each formula as a function of one argument, the others fixed: a float argument tried
# against an array of the same numbers.
OF_ONE_ARGUMENT: dict[str, Callable[[Numeric], Numeric]] = {
    "torsion_factor": lambda x: torsion_factor(aspect=x + 1.0),
    "rectangular_section": lambda x: rectangular_section(thickness=x, height=26.0).torsion_constant,
    "bending_stress": lambda x: bending_stress(force=500.0, overhang=x, section_modulus=200.0),
    "force_for_bending_stress": lambda x: force_for_bending_stress(
        stress=500.0, overhang=x, section_modulus=200.0
    ),
    "bending_deflection": lambda x: bending_deflection(
        force=500.0, overhang=x, elastic_modulus=207_000.0, second_moment=2900.0
    ),
    "shear_deflection": lambda x: shear_deflection(
        force=500.0, overhang=x, shear_modulus=79_300.0, shear_area=43.0
    ),
    "tip_deflection": lambda x: drop(
        force=x, overhang=30.0, thickness=2.0, height=26.0, modulus=207_000.0, post=20_000.0
    ),
    "force_for_tip_deflection": lambda x: force_for_tip_deflection(
        deflection=x,
        overhang=30.0,
        elastic_modulus=207_000.0,
        shear_modulus=79_300.0,
        second_moment=2900.0,
        shear_area=43.0,
    ),
    "end_slope": lambda x: end_slope(
        force=500.0, overhang=x, elastic_modulus=207_000.0, second_moment=2900.0
    ),
    "forward_bite": lambda x: forward_bite(slope=0.001, top_distance=x),
    "buckling_coefficient": lambda x: buckling_coefficient(load_height_ratio=x),
    "critical_lateral_force": lambda x: critical_lateral_force(
        overhang=10.0 * x,
        load_height=13.0,
        elastic_modulus=207_000.0,
        shear_modulus=79_300.0,
        lateral_second_moment=17.0,
        torsion_constant=66.0,
    ),
    "bar_deflection": lambda x: bar_deflection(
        force=300.0,
        distance=7.0,
        elastic_modulus=207_000.0,
        outer_diameter=6.0,
        inner_diameter=x,
    ),
    "bar_stress": lambda x: bar_stress(
        force=300.0, distance=7.0, outer_diameter=6.0, inner_diameter=x
    ),
    "force_for_bar_deflection": lambda x: force_for_bar_deflection(
        deflection=0.05,
        distance=x,
        elastic_modulus=207_000.0,
        outer_diameter=25.0,
        inner_diameter=0.0,
    ),
    "force_for_bar_stress": lambda x: force_for_bar_stress(
        stress=200.0, distance=x, outer_diameter=25.0, inner_diameter=0.0
    ),
    "core_diameter_at_twist_off": lambda x: core_diameter_at_twist_off(
        force=x, tensile_strength=400.0
    ),
    "core_diameter_at_bend_off": lambda x: core_diameter_at_bend_off(
        force=300.0, arm=x, tensile_strength=400.0
    ),
    "critical_speed": lambda x: critical_speed(
        length=100.0 * x,
        outer_diameter=12.0,
        inner_diameter=0.0,
        elastic_modulus=206_000.0,
        density=7.85,
    ),
    "unbalance_force": lambda x: unbalance_force(mass=x, eccentricity=10.0, spindle_speed=1000.0),
}


@pytest.mark.parametrize("formula", OF_ONE_ARGUMENT.values(), ids=OF_ONE_ARGUMENT.keys())
@given(numbers=st.lists(st.floats(0.01, 5.0), min_size=1, max_size=6))
def test_an_array_gives_what_its_numbers_give_one_by_one(
    formula: Callable[[Numeric], Numeric], numbers: list[float]
) -> None:
    at_once = formula(np.array(numbers))
    assert isinstance(at_once, np.ndarray)
    assert at_once.shape == (len(numbers),)
    # Powers of arrays and of floats may differ in the last bit, Newton's steps in a few.
    assert at_once == pytest.approx(np.array([formula(x) for x in numbers]), rel=1e-12)
