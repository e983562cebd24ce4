"""A converter for inch inputs and inch answers, shared by the tests of publications."""

from collections.abc import Callable
from typing import Any

import pint
import pytest

from chartgen.quantities import Numeric

Convert = Callable[[Numeric, str, str], float]


@pytest.fixture(scope="session")
def convert() -> Convert:
    """Return a function that converts a number from one unit to another through pint."""
    registry: pint.UnitRegistry[Any] = pint.UnitRegistry()

    def convert_through_pint(value: Numeric, unit: str, wanted: str) -> float:
        return float(registry.Quantity(value, unit).to(wanted).magnitude)

    return convert_through_pint
