"""Blade, shank, bar and whip: printed examples, and tables derived for the parting blade.

- P. C. Sharma, A Textbook of Production Engineering, example 15.8 [PCS]: a tool shank.
- E. P. Popov, Engineering Mechanics of Solids: a cantilever with its load 5° off the axis.
- A trade journal of 2019 on boring bars: 0.0030 in.
- Machinery's Handbook, speed of a shaft between bearings, 4.77e6 d / L² in inches.
- Cantilever vibration: factor 3.516, printed 3.52 in vibration handbooks.
- Derived, no publication: table of blades under 500 N, bars behind the spindle, unbalance.

The formulas hold in any coherent set of units, so inch examples are kept in pounds and inches
where no unit is owned.
"""

from collections.abc import Callable

import numpy as np
import pytest
from scipy.linalg import eigh  # type: ignore[import-untyped]
from scipy.optimize import brentq  # type: ignore[import-untyped]

from chartgen.physics.blade_bending import (
    bending_deflection,
    bending_stress,
    end_slope,
    forward_bite,
    shear_deflection,
)
from chartgen.physics.blade_buckling import critical_lateral_force
from chartgen.physics.blade_section import rectangular_section
from chartgen.physics.cutting import cutting_power
from chartgen.physics.whip import critical_speed, unbalance_force
from chartgen.physics.workpiece import (
    bar_deflection,
    core_diameter_at_bend_off,
    core_diameter_at_twist_off,
)
from chartgen.quantities import Numeric

Convert = Callable[[Numeric, str, str], float]

E_BLADE, G_BLADE = 207_000.0, 79_300.0
# Thickness x height, overhang, then under 500 N: stiffness in bending alone [N/µm], drop by
# bending and by shear [µm], stress [N/mm²], critical force on the axis and on the top edge [N].
BLADES = [
    (1.0, 12.0, 15.0, 26.0, 19.0, 9.0, 312.0, 4450.0, 2610.0),
    (1.0, 12.0, 25.0, 5.7, 87.0, 16.0, 521.0, 1600.0, 1200.0),
    (1.6, 16.0, 20.0, 42.0, 12.0, 6.0, 146.0, 13_600.0, 7950.0),
    (2.0, 19.0, 25.0, 45.0, 11.0, 5.0, 104.0, 20_100.0, 12_100.0),
    (2.0, 26.0, 30.0, 67.0, 7.0, 4.0, 67.0, 19_300.0, 10_800.0),
    (2.0, 26.0, 50.0, 15.0, 34.0, 7.0, 111.0, 6950.0, 5060.0),
    (3.0, 26.0, 40.0, 43.0, 12.0, 4.0, 59.0, 36_200.0, 23_700.0),
    (3.0, 32.0, 50.0, 41.0, 12.0, 4.0, 49.0, 28_700.0, 19_000.0),
]


def in_three_digits(value: Numeric) -> float:
    return float(f"{value:.3g}")


@pytest.mark.parametrize("row", BLADES, ids=lambda row: f"{row[0]:g}x{row[1]:g}, {row[2]:g}")
def test_table_of_blades_under_500_newtons(row: tuple[float, ...]) -> None:
    thickness, height, overhang, stiffness, bent, sheared, stress, on_axis, on_top = row
    section = rectangular_section(thickness=thickness, height=height)
    drop = bending_deflection(
        force=500.0,
        overhang=overhang,
        elastic_modulus=E_BLADE,
        second_moment=section.second_moment,
    )
    # Two digits are printed, one decimal under ten.
    assert 0.5 / drop == pytest.approx(stiffness, abs=0.5 if stiffness > 10.0 else 0.05)
    assert 1000.0 * drop == pytest.approx(bent, abs=0.5)
    shear = shear_deflection(
        force=500.0, overhang=overhang, shear_modulus=G_BLADE, shear_area=section.shear_area
    )
    assert 1000.0 * shear == pytest.approx(sheared, abs=0.5)
    bending = bending_stress(
        force=500.0, overhang=overhang, section_modulus=section.section_modulus
    )
    assert bending == pytest.approx(stress, abs=0.5)
    for load_height, printed in ((0.0, on_axis), (section.top_distance, on_top)):
        critical = critical_lateral_force(
            overhang=overhang,
            load_height=load_height,
            elastic_modulus=E_BLADE,
            shear_modulus=G_BLADE,
            lateral_second_moment=section.lateral_second_moment,
            torsion_constant=section.torsion_constant,
        )
        assert in_three_digits(critical) == printed


def test_the_tip_of_a_flat_blade_bites_forward_by_3_f_l_squared_over_e_t_h_squared() -> None:
    section = rectangular_section(thickness=2.0, height=26.0)
    slope = end_slope(
        force=500.0, overhang=50.0, elastic_modulus=E_BLADE, second_moment=section.second_moment
    )
    bite = forward_bite(slope=slope, top_distance=section.top_distance)
    assert bite == pytest.approx(3.0 * 500.0 * 50.0**2 / (E_BLADE * 2.0 * 26.0**2), rel=1e-12)


def test_pcs_15_8_shank_of_a_tool_that_takes_all_a_motor_gives() -> None:
    # 10 kW at 40 m/min, efficiency 0.7, 250 N/mm², height 1.6 widths, overhang 1.25 heights.
    force = 0.7 * 10_000.0 / cutting_power(force=1.0, cutting_speed=40.0)
    assert force == pytest.approx(10_500.0, abs=50.0)

    def excess(width: float) -> float:
        section = rectangular_section(thickness=width, height=1.6 * width)
        stress = bending_stress(
            force=force, overhang=2.0 * width, section_modulus=section.section_modulus
        )
        return float(stress - 250.0)

    width = brentq(excess, 1.0, 100.0)
    assert width == pytest.approx(14.0, abs=0.05)
    assert 1.6 * width == pytest.approx(22.45, abs=0.005)
    assert 2.0 * width == pytest.approx(28.1, abs=0.05)


def test_popov_load_five_degrees_off_the_axis_bends_a_beam_mainly_sideways() -> None:
    # 2000 lb at 100 in, E 29e6 psi, I 315 and 8.13 in⁴; in pounds and inches.
    down, across = (
        bending_deflection(
            force=2000.0 * part, overhang=100.0, elastic_modulus=29e6, second_moment=moment
        )
        for part, moment in ((np.cos(np.radians(5.0)), 315.0), (np.sin(np.radians(5.0)), 8.13))
    )
    assert down == pytest.approx(0.0727, abs=0.00005)
    assert across == pytest.approx(0.246, abs=0.0005)
    assert np.hypot(down, across) == pytest.approx(0.257, abs=0.0005)


def test_trade_journal_boring_bar_of_one_inch_at_four_gives_three_thou(convert: Convert) -> None:
    # 207.8 lbf, E 30e6 psi.
    deflection = bar_deflection(
        force=convert(207.8, "lbf", "N"),
        distance=convert(4.0, "inch", "mm"),
        elastic_modulus=convert(30e6, "psi", "N/mm**2"),
        outer_diameter=convert(1.0, "inch", "mm"),
        inner_diameter=0.0,
    )
    assert convert(deflection, "mm", "inch") == pytest.approx(0.0030, abs=0.00005)


def test_core_twists_off_at_27_times_the_root_of_force_over_strength() -> None:
    diameter = core_diameter_at_twist_off(force=400.0, tensile_strength=400.0)
    assert diameter == pytest.approx(2.7, abs=0.05)
    # The way back: the stresses of that core add up to the shear strength.
    twist = 16.0 * (400.0 * diameter / 2.0) / (np.pi * diameter**3)
    shear = 4.0 / 3.0 * 400.0 / (np.pi * diameter**2 / 4.0)
    assert twist + shear == pytest.approx(400.0 / np.sqrt(3.0), rel=1e-12)


def test_core_bends_off_where_bending_reaches_the_strength() -> None:
    diameter = core_diameter_at_bend_off(force=300.0, arm=1.5, tensile_strength=500.0)
    section = np.pi * diameter**3 / 32.0
    assert 300.0 * 1.5 / section == pytest.approx(500.0, rel=1e-12)


def test_cantilever_factor_is_the_square_of_the_first_root_of_its_equation() -> None:
    root = brentq(lambda x: np.cos(x) * np.cosh(x) + 1.0, 1.0, 3.0, xtol=1e-14)
    # Solid bar of 4 mm has a radius of gyration of 1 mm; 1 N/mm² over 1 g/cm³ is (1000 m/s)²
    # over 1000, or 1e9 (mm/s)².
    speed = critical_speed(
        length=1.0, outer_diameter=4.0, inner_diameter=0.0, elastic_modulus=1.0, density=1.0
    )
    factor = 2.0 * np.pi * speed / 60.0 / np.sqrt(1e9)
    assert factor == pytest.approx(root**2, rel=1e-12)
    # Vibration handbooks print 3.52, textbooks 3.516.
    assert factor == pytest.approx(3.52, abs=0.005)
    assert factor == pytest.approx(3.516, abs=0.0005)


def steel_bar_speed(diameter: float, length: float) -> Numeric:
    """Return the critical speed of a solid bar of steel, E 206 000 N/mm², 7.85 g/cm³."""
    return critical_speed(
        length=length,
        outer_diameter=diameter,
        inner_diameter=0.0,
        elastic_modulus=206_000.0,
        density=7.85,
    )


def test_constant_of_a_solid_bar_of_steel_behind_the_spindle() -> None:
    assert steel_bar_speed(1.0, 1.0) == pytest.approx(43.00e6, abs=0.005e6)


@pytest.mark.parametrize(
    ("diameter", "length", "speed"),
    [(12.0, 500.0, 2060.0), (12.0, 300.0, 5730.0), (25.0, 914.0, 1290.0), (6.0, 200.0, 6450.0)],
)
def test_bars_of_steel_behind_the_spindle(diameter: float, length: float, speed: float) -> None:
    assert steel_bar_speed(diameter, length) == pytest.approx(speed, abs=5.0)


def test_handbook_shaft_between_bearings_turns_281_times_faster(convert: Convert) -> None:
    # Machinery's Handbook prints 4.77e6 d / L² in inches for a steel shaft on two bearings,
    # whose factor is π²; its E and density are not printed, 30e6 psi and 0.283 lb/in³ taken.
    cantilever = critical_speed(
        length=convert(1.0, "inch", "mm"),
        outer_diameter=convert(1.0, "inch", "mm"),
        inner_diameter=0.0,
        elastic_modulus=convert(30e6, "psi", "N/mm**2"),
        density=convert(0.283, "lb/inch**3", "g/cm**3"),
    )
    assert np.pi**2 / 3.516 * cantilever == pytest.approx(4.77e6, abs=0.005e6)


@pytest.mark.parametrize("inner", [0.0, 18.0])
def test_critical_speed_is_the_lowest_frequency_of_a_beam_of_finite_elements(inner: float) -> None:
    # Hermite elements with consistent mass, in N, mm and tonnes.
    outer, length, modulus, density = 25.0, 600.0, 206_000.0, 7.85e-9
    second_moment = np.pi / 64.0 * (outer**4 - inner**4)
    mass_per_length = density * np.pi / 4.0 * (outer**2 - inner**2)
    count = 12
    step = length / count
    bend = np.array(
        [
            [12.0, 6.0 * step, -12.0, 6.0 * step],
            [6.0 * step, 4.0 * step**2, -6.0 * step, 2.0 * step**2],
            [-12.0, -6.0 * step, 12.0, -6.0 * step],
            [6.0 * step, 2.0 * step**2, -6.0 * step, 4.0 * step**2],
        ]
    )
    inertia = np.array(
        [
            [156.0, 22.0 * step, 54.0, -13.0 * step],
            [22.0 * step, 4.0 * step**2, 13.0 * step, -3.0 * step**2],
            [54.0, 13.0 * step, 156.0, -22.0 * step],
            [-13.0 * step, -3.0 * step**2, -22.0 * step, 4.0 * step**2],
        ]
    )
    stiffness, mass = np.zeros((2, 2 * count + 2, 2 * count + 2))
    for first in range(0, 2 * count, 2):
        here = slice(first, first + 4)
        stiffness[here, here] += modulus * second_moment / step**3 * bend
        mass[here, here] += mass_per_length * step / 420.0 * inertia
    lowest = eigh(stiffness[2:, 2:], mass[2:, 2:], eigvals_only=True)[0]
    computed = critical_speed(
        length=length,
        outer_diameter=outer,
        inner_diameter=inner,
        elastic_modulus=modulus,
        density=7.85,
    )
    assert computed == pytest.approx(60.0 * np.sqrt(lowest) / (2.0 * np.pi), rel=1e-5)


@pytest.mark.parametrize(("speed", "force"), [(1000.0, 55.0), (2000.0, 219.0)])
def test_half_a_kilogram_ten_millimetres_off_the_axis(speed: float, force: float) -> None:
    pull = unbalance_force(mass=0.5, eccentricity=10.0, spindle_speed=speed)
    assert pull == pytest.approx(force, abs=0.5)
