"""Reads `tool_life.toml`: Taylor's constants by tool and work, and what they hold for."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType
from typing import Final

from chartgen.model.blade import ToolMaterial
from chartgen.model.material import IsoGroup, Material
from chartgen.reference.entries import Entry, data_text
from chartgen.sources import Sourced

FILE: Final = "tool_life.toml"
PLASTIC: Final = "plastic"
_NON_STEEL: Final = frozenset({IsoGroup.K, IsoGroup.N})


@dataclass(frozen=True, slots=True, kw_only=True)
class TaylorConstants:
    """Exponent n, and the speed of one minute's life C [m/min] in steel and elsewhere."""

    exponent: Sourced
    steel: Sourced
    non_steel: Sourced


@dataclass(frozen=True, slots=True, kw_only=True)
class Taylor:
    """Taylor's law for one tool in one work material: C [m/min] with its spread, and n."""

    constant: Sourced
    exponent: Sourced
    spread: Sourced


@dataclass(frozen=True, slots=True, kw_only=True)
class ToolLifeData:
    """All that the file holds; `feed` [mm/rev] and `depth` [mm] are those of the table."""

    feed: Sourced
    depth: Sourced
    spread: Sourced
    constants: Mapping[ToolMaterial, TaylorConstants]


@cache
def load_tool_life() -> ToolLifeData:
    """Return what is shipped about tool life.

    Raises
    ------
    ValueError
        If the file cannot be used.
    """
    return read_tool_life(data_text(FILE), file=FILE)


def read_tool_life(text: str, *, file: str) -> ToolLifeData:
    """Return what the text of a file says about tool life.

    Raises
    ------
    ValueError
        Naming file and key, if a key is missing, unknown or holds something else.
    """
    entry = Entry.parse(text, file=file)
    entry.expect(("feed", "depth", "spread", *(tool.value for tool in ToolMaterial)))
    return ToolLifeData(
        feed=entry.sourced("feed"),
        depth=entry.sourced("depth"),
        spread=entry.sourced("spread"),
        constants=MappingProxyType(
            {tool: _constants(entry.table(tool.value)) for tool in ToolMaterial}
        ),
    )


def taylor_for(*, tool_material: ToolMaterial, material: Material) -> Taylor | None:
    """Return Taylor's law of a tool in a work material, None where no constants were found."""
    data = load_tool_life()
    constants = data.constants[tool_material]
    if material.iso_group is IsoGroup.P:
        constant = constants.steel
    elif material.iso_group in _NON_STEEL and PLASTIC not in material.tags:
        constant = constants.non_steel
    else:
        return None
    return Taylor(constant=constant, exponent=constants.exponent, spread=data.spread)


def _constants(entry: Entry) -> TaylorConstants:
    entry.expect(("exponent", "steel", "non_steel"))
    return TaylorConstants(
        exponent=entry.sourced("exponent"),
        steel=entry.sourced("steel"),
        non_steel=entry.sourced("non_steel"),
    )
