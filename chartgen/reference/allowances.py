"""Reads `allowances.toml`: what the engine assumes, why, and within what bounds."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from chartgen.quantities import (
    FRACTION,
    M_S,
    MIN,
    MM,
    MM_REV,
    N_M,
    N_MM2,
    NEWTON,
    TURNS_MIN,
    UM,
    WATT,
    Unit,
)
from chartgen.sources import Mark

_UNITS = {
    unit.name: unit for unit in (MM, UM, MM_REV, M_S, MIN, TURNS_MIN, WATT, NEWTON, N_MM2, N_M)
}


@dataclass(frozen=True, slots=True, kw_only=True)
class AllowanceEntry:
    """One allowance: default, unit, bounds for an override, reason, source and mark."""

    name: str
    value: float
    unit: Unit
    least: float
    most: float
    reason: str
    source: str
    mark: Mark


@cache
def load_allowances() -> Mapping[str, AllowanceEntry]:
    """Return the allowances by name, in the order of the file.

    Raises
    ------
    ValueError
        If an entry's default lies outside its own bounds or its mark is unknown.
    KeyError
        If an entry has no unit the engine knows.
    """
    text = Path(__file__).with_name("allowances.toml").read_text("utf-8")
    entries = {}
    for name, raw in tomllib.loads(text).items():
        unit = _UNITS[raw["unit"]] if raw["unit"] else FRACTION
        entry = AllowanceEntry(
            name=name,
            value=raw["value"],
            unit=unit,
            least=raw["least"],
            most=raw["most"],
            reason=raw["reason"],
            source=raw["source"],
            mark=Mark.of(raw["mark"]),
        )
        if not entry.least <= entry.value <= entry.most:
            raise ValueError(f"allowances.toml: {name}: {entry.value:g} is outside its own bounds")
        entries[name] = entry
    return entries
