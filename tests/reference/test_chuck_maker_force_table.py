"""Chuck maker's technical guide, standard RN-1391, p. 43, table 2 [TG-2].

Specific cutting force against feed at a setting angle of 45°, so that the chip is
feed x sin 45° thick. The pairs beside the rows are derived: a straight line through the
row's logarithms, by least squares. Three rows of the table lost their labels and are absent.
"""

from dataclasses import dataclass

import numpy as np
import pytest

from chartgen.physics.cutting import specific_cutting_force

THICKNESS = np.array([0.16, 0.25, 0.4, 0.63, 1.0, 1.6]) * np.sin(np.pi / 4.0)  # mm

# The table prints two digits after the point in steps of 0.05 kN/mm², so a cell of 0.9 to
# 2.3 kN/mm² carries 1 to 3 % of rounding; the straight line adds less than that.
CELL_TOLERANCE = 0.02


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """A row as printed [kN/mm²], with the fitted pair."""

    material: str
    printed: tuple[float, ...]
    specific_force: float
    exponent: float


ROWS = (
    Row(
        material="St 42",
        printed=(2.60, 2.40, 2.20, 2.05, 1.90, 1.80),
        specific_force=1811,
        exponent=0.16,
    ),
    Row(
        material="St 50-2",
        printed=(3.50, 3.10, 2.75, 2.45, 2.15, 1.95),
        specific_force=1991,
        exponent=0.26,
    ),
    Row(
        material="St 60-2",
        printed=(3.05, 2.80, 2.60, 2.40, 2.20, 2.05),
        specific_force=2085,
        exponent=0.17,
    ),
    Row(
        material="St 70-2",
        printed=(4.35, 3.80, 3.30, 2.90, 2.50, 2.20),
        specific_force=2272,
        exponent=0.30,
    ),
    Row(
        material="42CrMo4",
        printed=(4.35, 3.90, 3.45, 3.10, 2.75, 2.45),
        specific_force=2526,
        exponent=0.25,
    ),
    Row(
        material="16MnCr5",
        printed=(3.75, 3.30, 2.95, 2.60, 2.30, 2.05),
        specific_force=2109,
        exponent=0.26,
    ),
    Row(
        material="Mn and CrNi steels",
        printed=(3.70, 3.40, 3.10, 2.80, 2.55, 2.35),
        specific_force=2394,
        exponent=0.20,
    ),
    Row(
        material="Mn austenitic",
        printed=(5.40, 4.90, 4.40, 4.00, 3.60, 3.30),
        specific_force=3364,
        exponent=0.22,
    ),
    Row(
        material="GE240",
        printed=(2.30, 2.10, 1.95, 1.80, 1.70, 1.60),
        specific_force=1610,
        exponent=0.16,
    ),
    Row(
        material="GE260",
        printed=(2.55, 2.35, 2.20, 2.05, 1.90, 1.80),
        specific_force=1817,
        exponent=0.15,
    ),
    Row(
        material="grey iron under 200 HB",
        printed=(1.50, 1.35, 1.20, 1.10, 1.00, 0.90),
        specific_force=922,
        exponent=0.22,
    ),
    Row(
        material="grey iron 200-250 HB",
        printed=(2.05, 1.80, 1.60, 1.45, 1.30, 1.15),
        specific_force=1186,
        exponent=0.25,
    ),
)

every_row = pytest.mark.parametrize("row", ROWS, ids=[row.material for row in ROWS])


@every_row
def test_every_printed_cell_is_met_by_the_power_law(row: Row) -> None:
    computed = specific_cutting_force(
        feed=THICKNESS, specific_force=row.specific_force, thickness_exponent=row.exponent
    )
    assert computed == pytest.approx(1000.0 * np.array(row.printed), rel=CELL_TOLERANCE)


@every_row
def test_the_straight_line_through_the_row_gives_the_pair(row: Row) -> None:
    slope, height = np.polyfit(np.log(THICKNESS), np.log(1000.0 * np.array(row.printed)), 1)
    assert np.exp(height) == pytest.approx(row.specific_force, abs=0.5)
    assert -slope == pytest.approx(row.exponent, abs=0.005)
