"""Machinery's Handbook, 31st edition, p. 1147, table 1b [MH31].

Power constants of wrought steels, sharp tools, printed twice: hp per in³/min and J/mm³.

Left out: p. 1152 drill example and the turning example (answers known from memory only).
"""

from collections.abc import Callable

import pytest

from chartgen.physics.cutting import (
    cutting_power,
    force_from_unit_energy,
    power_from_unit_energy,
)
from chartgen.physics.kinematics import removal_rate
from chartgen.quantities import Numeric

Convert = Callable[[Numeric, str, str], float]

# Steel group: {lowest hardness of the row, HB: (hp per in³/min, J/mm³)}.
TABLE = {
    "plain carbon": {
        80: (0.63, 1.72),
        100: (0.66, 1.80),
        120: (0.69, 1.88),
        140: (0.74, 2.02),
        160: (0.78, 2.13),
        180: (0.82, 2.24),
        200: (0.85, 2.32),
        220: (0.89, 2.43),
        240: (0.92, 2.51),
        260: (0.95, 2.59),
        280: (1.00, 2.73),
        300: (1.03, 2.81),
        320: (1.06, 2.89),
        340: (1.14, 3.11),
    },
    "free machining 1108-1132": {
        100: (0.41, 1.12),
        120: (0.42, 1.15),
        140: (0.44, 1.20),
        160: (0.48, 1.31),
        180: (0.50, 1.36),
    },
    "free machining 1137-1151": {
        180: (0.51, 1.39),
        200: (0.55, 1.50),
        220: (0.57, 1.56),
        240: (0.62, 1.69),
    },
    "alloy 4140": {
        140: (0.62, 1.69),
        160: (0.65, 1.77),
        180: (0.69, 1.88),
        200: (0.72, 1.97),
        220: (0.76, 2.07),
        240: (0.80, 2.18),
        260: (0.84, 2.29),
        280: (0.87, 2.38),
        300: (0.91, 2.48),
        320: (0.96, 2.62),
        340: (1.00, 2.73),
    },
    "alloy 4130": {
        140: (0.56, 1.53),
        160: (0.59, 1.61),
        180: (0.62, 1.69),
        200: (0.65, 1.77),
        220: (0.70, 1.91),
        240: (0.74, 2.02),
        260: (0.77, 2.10),
        280: (0.80, 2.18),
        300: (0.83, 2.27),
        320: (0.89, 2.43),
    },
    "alloy 1330 and 52100": {160: (0.79, 2.16), 180: (0.83, 2.27), 200: (0.87, 2.38)},
}
CELLS = [
    pytest.param(*constants, id=f"{group}, {hardness} HB")
    for group, column in TABLE.items()
    for hardness, constants in column.items()
]
every_cell = pytest.mark.parametrize(("horsepower", "joules"), CELLS)


def test_one_horsepower_per_cubic_inch_a_minute_is_273_joules_per_cubic_mm(
    convert: Convert,
) -> None:
    assert convert(1.0, "hp/(inch**3/min)", "J/mm**3") == pytest.approx(2.73, abs=0.005)


@every_cell
def test_the_two_printed_constants_of_a_cell_give_the_same_power(
    horsepower: float, joules: float, convert: Convert
) -> None:
    # One in³/min takes the printed horsepower. Half a unit of the last digit of J/mm³, and
    # 0.0002 more because the print multiplies by 2.73, not 2.7303: 0.50 lands on the half.
    rate = convert(1.0, "inch**3/min", "mm**3/min")
    watts = power_from_unit_energy(removal_rate=rate, unit_energy=joules)
    assert watts == pytest.approx(convert(horsepower, "hp", "W"), rel=0.0052 / joules)


@every_cell
def test_force_times_speed_is_energy_times_removal(horsepower: float, joules: float) -> None:
    del horsepower
    force = force_from_unit_energy(width=2.0, feed=0.05, unit_energy=joules, size_factor=1.0)
    rate = removal_rate(width=2.0, feed=0.05, cutting_speed=100.0)
    assert cutting_power(force=force, cutting_speed=100.0) == pytest.approx(
        power_from_unit_energy(removal_rate=rate, unit_energy=joules), rel=1e-12
    )
