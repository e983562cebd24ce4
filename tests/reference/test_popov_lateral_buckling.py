"""Lateral-torsional buckling: a textbook problem, Bessel functions, and shooting the equation.

- E. P. Popov, Engineering Mechanics of Solids, problem 11-65: where a bar 5 x 1/2 in yields and
  tips over at the same force. Inputs published, answers derived with either shear modulus.
- Timoshenko's constant 4.013 for a force on the axis of the section.
- Table of the critical force over the height of the load, and of the torsion factor: derived,
  each by a way other than the formula's.

The formulas hold in any coherent set of units, so the problem is kept in pounds and inches.
"""

import numpy as np
import pytest
from scipy.integrate import solve_ivp  # type: ignore[import-untyped]
from scipy.optimize import brentq  # type: ignore[import-untyped]
from scipy.special import gamma, jv  # type: ignore[import-untyped]

from chartgen.physics.blade_bending import force_for_bending_stress
from chartgen.physics.blade_buckling import (
    buckling_coefficient,
    critical_lateral_force,
    load_height_ratio,
)
from chartgen.physics.blade_section import rectangular_section, torsion_factor

HEIGHT_RATIOS = np.array([-0.5, -0.3, -0.1, 0.0, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.7, 1.0, 2.0, 3.0])
E_STEEL = 30e6  # psi
YIELD = 36e3  # psi


def by_bessel_functions(ratio: float) -> float:
    """Return the buckling coefficient from the closed form, by another library's functions."""

    def imbalance(coefficient: float) -> float:
        rise = 2.0 * ratio * np.sqrt(coefficient) * gamma(1.25) / gamma(0.75)
        return float(jv(-0.25, coefficient / 2.0) - rise * jv(0.25, coefficient / 2.0))

    return float(brentq(imbalance, 1e-6, 5.5617, xtol=1e-14, rtol=1e-14))


def by_shooting(ratio: float) -> float:
    """Return the buckling coefficient by integrating the twist from the tip to the clamp."""

    def twist_at_clamp(coefficient: float) -> float:
        shot = solve_ivp(
            lambda x, y: [y[1], -((coefficient * x) ** 2) * y[0]],
            (0.0, 1.0),
            [1.0, -ratio * coefficient],
            method="DOP853",
            rtol=1e-12,
            atol=1e-13,
        )
        return float(shot.y[0, -1])

    return float(brentq(twist_at_clamp, 1e-6, 5.5617, xtol=1e-12))


@pytest.mark.parametrize("ratio", HEIGHT_RATIOS)
def test_the_coefficient_is_that_of_the_bessel_functions(ratio: float) -> None:
    computed = buckling_coefficient(load_height_ratio=ratio)
    assert computed == pytest.approx(by_bessel_functions(ratio), rel=1e-11)


@pytest.mark.parametrize("ratio", HEIGHT_RATIOS)
def test_the_coefficient_is_that_of_the_equation_shot_from_the_tip(ratio: float) -> None:
    computed = buckling_coefficient(load_height_ratio=ratio)
    assert computed == pytest.approx(by_shooting(ratio), rel=1e-9)


def test_a_force_on_the_axis_has_twice_the_first_zero_of_a_bessel_function() -> None:
    zero = brentq(lambda x: jv(-0.25, x), 1.0, 3.0, xtol=1e-14)
    constant = buckling_coefficient(load_height_ratio=0.0)
    assert constant == pytest.approx(2.0 * zero, rel=1e-12)
    # Timoshenko prints 4.013; to four decimals it is 4.0126.
    assert constant == pytest.approx(4.013, abs=0.0005)
    assert constant == pytest.approx(4.0126, abs=0.00005)


@pytest.mark.parametrize(
    ("ratio", "share"),
    [
        (-0.3, 1.190),
        (-0.1, 1.087),
        (0.0, 1.0),
        (0.05, 0.945),
        (0.1, 0.883),
        (0.2, 0.748),
        (0.3, 0.623),
        (0.4, 0.521),
        (0.5, 0.442),
        (0.7, 0.334),
        (1.0, 0.241),
    ],
)
def test_share_of_the_axis_load_that_a_higher_load_may_reach(ratio: float, share: float) -> None:
    on_axis = buckling_coefficient(load_height_ratio=0.0)
    higher = buckling_coefficient(load_height_ratio=ratio)
    # At 0.4, 0.5 and -0.3 the exact share (0.5205, 0.4415, 1.1895) lies on the edge of the
    # last digit.
    assert higher / on_axis == pytest.approx(share, abs=0.0006)


def test_the_usual_straight_line_allows_too_much_from_just_above_0_to_063() -> None:
    ratios = np.linspace(0.01, 0.63, 200)
    share = buckling_coefficient(load_height_ratio=ratios) / buckling_coefficient(
        load_height_ratio=0.0
    )
    excess = (1.0 - ratios) / share
    assert np.all(excess > 1.0)
    assert excess.max() == pytest.approx(1.15, abs=0.005)
    assert ratios[excess.argmax()] == pytest.approx(0.41, abs=0.01)


def test_a_force_far_above_twists_the_blade_by_its_arm_alone() -> None:
    # One over the ratio is P = C / (a L).
    assert buckling_coefficient(load_height_ratio=50.0) == pytest.approx(1.0 / 50.0, rel=1e-3)


@pytest.mark.parametrize(
    ("shear_modulus", "twisting", "length", "force"),
    [
        pytest.param(12e6, 2.342e6, 102.4, 733.0, id="shear modulus of handbooks"),
        pytest.param(E_STEEL / 2.6, 2.252e6, 100.4, 747.0, id="by Poisson's ratio 0.3"),
    ],
)
def test_popov_11_65_where_a_flat_bar_yields_and_tips_at_once(
    shear_modulus: float, twisting: float, length: float, force: float
) -> None:
    section = rectangular_section(thickness=0.5, height=5.0)
    assert E_STEEL * section.lateral_second_moment == pytest.approx(1.5625e6, rel=1e-12)
    assert shear_modulus * section.torsion_constant == pytest.approx(twisting, abs=0.0005e6)

    def tips(overhang: float) -> float:
        return float(
            critical_lateral_force(
                overhang=overhang,
                load_height=0.0,
                elastic_modulus=E_STEEL,
                shear_modulus=shear_modulus,
                lateral_second_moment=section.lateral_second_moment,
                torsion_constant=section.torsion_constant,
            )
        )

    def yields(overhang: float) -> float:
        return float(
            force_for_bending_stress(
                stress=YIELD, overhang=overhang, section_modulus=section.section_modulus
            )
        )

    both = brentq(lambda x: tips(x) - yields(x), 10.0, 1000.0)
    assert both == pytest.approx(length, abs=0.05)
    assert tips(both) == pytest.approx(force, abs=0.5)


@pytest.mark.parametrize(
    ("aspect", "factor"),
    [
        (1.0, 0.1406),
        (1.5, 0.1958),
        (2.0, 0.2287),
        (3.0, 0.2633),
        (4.0, 0.2808),
        (5.0, 0.2913),
        (6.0, 0.2983),
        (8.0, 0.3071),
        (10.0, 0.3123),
        (13.0, 0.3172),
        (15.0, 0.3193),
        (20.0, 0.3228),
    ],
)
def test_torsion_factor_of_a_rectangle(aspect: float, factor: float) -> None:
    assert torsion_factor(aspect=aspect) == pytest.approx(factor, abs=0.00005)


@pytest.mark.parametrize("aspect", [1.0, 1.3, 3.0, 13.0, 400.0])
def test_the_torsion_series_is_its_textbook_form_summed_to_the_end(aspect: float) -> None:
    odd = np.arange(1.0, 4001.0, 2.0)
    total = np.sum(np.tanh(odd * np.pi * aspect / 2.0) / odd**5)
    assert torsion_factor(aspect=aspect) == pytest.approx(
        (1.0 - 192.0 / (np.pi**5 * aspect) * total) / 3.0, rel=1e-13
    )


def test_from_three_to_one_the_short_form_of_the_torsion_factor_holds_to_four_digits() -> None:
    aspects = np.linspace(3.0, 60.0, 100)
    short = (1.0 - 0.63 / aspects) / 3.0
    assert torsion_factor(aspect=aspects) == pytest.approx(short, abs=0.00005)


def test_a_steel_blade_cut_on_its_top_edge_has_a_ratio_of_041_times_height_over_length() -> None:
    section = rectangular_section(thickness=1.0, height=200.0)
    ratio = load_height_ratio(
        load_height=section.top_distance,
        overhang=200.0,
        elastic_modulus=207_000.0,
        shear_modulus=79_300.0,
        lateral_second_moment=section.lateral_second_moment,
        torsion_constant=section.torsion_constant,
    )
    assert ratio == pytest.approx(0.41, abs=0.007)
