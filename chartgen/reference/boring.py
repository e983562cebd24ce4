"""Reads `boring.toml`: how far boring bars stand out, and the side forces of a cut."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType
from typing import Final

from chartgen.model.tooling import BarMaterial
from chartgen.reference.entries import Entry, data_text
from chartgen.sources import Sourced

FILE: Final = "boring.toml"


@dataclass(frozen=True, slots=True, kw_only=True)
class SideForce:
    """Radial and feed force over the main cutting force."""

    radial: Sourced
    feed: Sourced


@dataclass(frozen=True, slots=True, kw_only=True)
class BoringData:
    """All that the file holds.

    `overhang` is the most a bar sticks out over its diameter, `modulus` that of its shank
    [N/mm²], `clamping` the least length in the holder over the diameter.
    """

    overhang: Mapping[BarMaterial, Sourced]
    modulus: Mapping[BarMaterial, Sourced]
    clamping: Sourced
    turning: SideForce
    boring: SideForce


@cache
def load_boring() -> BoringData:
    """Return what is shipped about boring bars.

    Raises
    ------
    ValueError
        If the file cannot be used.
    """
    return read_boring(data_text(FILE), file=FILE)


def read_boring(text: str, *, file: str) -> BoringData:
    """Return what the text of a file says about boring bars.

    Raises
    ------
    ValueError
        Naming file and key, if a key is missing, unknown or holds something else.
    """
    entry = Entry.parse(text, file=file)
    entry.expect(("overhang", "modulus", "clamping", "side_force"))
    clamping, forces = entry.table("clamping"), entry.table("side_force")
    clamping.expect(("diameters",))
    forces.expect(("turning", "boring"))
    return BoringData(
        overhang=_by_shank(entry.table("overhang")),
        modulus=_by_shank(entry.table("modulus")),
        clamping=clamping.sourced("diameters"),
        turning=_side_force(forces.table("turning")),
        boring=_side_force(forces.table("boring")),
    )


def _by_shank(entry: Entry) -> Mapping[BarMaterial, Sourced]:
    entry.expect([shank.value for shank in BarMaterial])
    return MappingProxyType({shank: entry.sourced(shank.value) for shank in BarMaterial})


def _side_force(entry: Entry) -> SideForce:
    entry.expect(("radial", "feed"))
    return SideForce(radial=entry.sourced("radial"), feed=entry.sourced("feed"))
