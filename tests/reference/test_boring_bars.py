"""A trade-journal article of July 2019 on the deflection of boring bars [CTE].

Its example: 207.8 lbf on a steel bar of 1 in, 4 in out, E 30 million lbf/in²; 0.0030 in.
"""

from collections.abc import Callable

import pytest

from chartgen.physics.boring import boring_bar_deflection, force_for_boring_bar_deflection
from chartgen.quantities import Numeric

Convert = Callable[[Numeric, str, str], float]
INCH = 25.4


def test_a_one_inch_bar_four_inches_out_gives_three_thousandths(convert: Convert) -> None:
    deflection = boring_bar_deflection(
        force=convert(207.8, "lbf", "N"),
        overhang=4.0 * INCH,
        elastic_modulus=convert(30e6, "lbf/inch**2", "N/mm**2"),
        diameter=1.0 * INCH,
    )
    assert deflection / INCH == pytest.approx(0.0030, abs=0.00005)


def test_three_thousandths_ask_for_the_force_of_the_example(convert: Convert) -> None:
    force = force_for_boring_bar_deflection(
        deflection=0.0030 * INCH,
        overhang=4.0 * INCH,
        elastic_modulus=convert(30e6, "lbf/inch**2", "N/mm**2"),
        diameter=1.0 * INCH,
    )
    # Half a unit of 0.0030 is 1.7 %.
    assert convert(force, "N", "lbf") == pytest.approx(207.8, rel=0.017)
