"""Reads `chucks.toml`: grip and speed by size of chuck, friction, clamping heads, masses."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from enum import Enum
from functools import cache
from types import MappingProxyType
from typing import Final, Protocol, TypeVar

from chartgen.quantities import Millimetres
from chartgen.reference.entries import Entry, data_text
from chartgen.sources import Sourced

FILE: Final = "chucks.toml"
MATERIALS_WITH_FACTOR: Final = ("aluminium", "brass", "iron")
"""Work other than steel whose friction is printed; iron is grey iron."""
_GRIP_KEYS: Final = (
    "lost_share",
    "most_lost_share",
    "grip_per_key_torque",
    "dry_scroll_share",
    "hand_torque_low",
    "hand_torque_high",
)


class BodyMaterial(Enum):
    """What the body of a chuck is made of; it bounds the speed."""

    STEEL = "steel"
    IRON = "iron"


class WorkSurface(Enum):
    """What the jaws close on."""

    GROUND = "ground"
    ROUGH = "rough"
    UNMACHINED = "unmachined"


class JawFace(Enum):
    """What the face of the jaws is like."""

    SMOOTH = "smooth"
    DIAMOND = "diamond"
    SERRATED = "serrated"


@dataclass(frozen=True, slots=True, kw_only=True)
class ScrollChuck:
    """A hand scroll chuck of one size, by a maker's table.

    `static_grip` [N] is the sum over the jaws at `key_torque` [N·m], `largest_speed` [rev/min].
    The row holds from `size` to `up_to`.
    """

    size: Millimetres[float]
    up_to: Millimetres[float]
    key_torque: Sourced
    static_grip: Sourced
    largest_speed: Mapping[BodyMaterial, Sourced]


@dataclass(frozen=True, slots=True, kw_only=True)
class GripData:
    """What holds for hand chucks of any size.

    Shares of the static grip: `lost_share` is gone at the largest speed of the table at most,
    `most_lost_share` ever; `dry_scroll_share` is what a dry or dirty scroll can lose.
    `grip_per_key_torque` [N per N·m]; `hand_torque_low` to `_high` is a usual pull [N·m].
    """

    lost_share: Sourced
    most_lost_share: Sourced
    grip_per_key_torque: Sourced
    dry_scroll_share: Sourced
    hand_torque_low: Sourced
    hand_torque_high: Sourced


@dataclass(frozen=True, slots=True, kw_only=True)
class HeadFriction:
    """Friction of a smooth clamping head on a steel part, around its axis and along it."""

    tangential: Sourced
    axial: Sourced


@dataclass(frozen=True, slots=True, kw_only=True)
class ClampingHead:
    """A clamping head: its size and the largest cutting force it may be used for [N]."""

    size: Millimetres[float]
    up_to: Millimetres[float]
    largest_force: Sourced


@dataclass(frozen=True, slots=True, kw_only=True)
class ChuckBody:
    """A chuck as an even ring: bore [mm] and mass with jaws [kg]."""

    size: Millimetres[float]
    up_to: Millimetres[float]
    bore: Sourced
    mass: Sourced


@dataclass(frozen=True, slots=True, kw_only=True)
class HoldingData:
    """All that the file holds; rows rise by size.

    A friction of `jaw_friction` or `head_friction` holds for steel; work of a material that
    has a factor takes it times the factor.
    """

    scroll_chucks: tuple[ScrollChuck, ...]
    grip: GripData
    jaw_friction: Mapping[WorkSurface, Mapping[JawFace, Sourced]]
    friction_factor: Mapping[str, Sourced]
    head_friction: Mapping[WorkSurface, HeadFriction]
    head_friction_factor: Mapping[str, Sourced]
    clamping_heads: tuple[ClampingHead, ...]
    chuck_bodies: tuple[ChuckBody, ...]


@cache
def load_holding() -> HoldingData:
    """Return what is shipped about holding.

    Raises
    ------
    ValueError
        If the file cannot be used.
    """
    return read_holding(data_text(FILE), file=FILE)


def read_holding(text: str, *, file: str) -> HoldingData:
    """Return what the text of a file says about holding.

    Raises
    ------
    ValueError
        Naming file and key, if a key is missing, unknown or holds something else, or if the
        sizes of the rows do not rise.
    """
    entry = Entry.parse(text, file=file)
    entry.expect(HoldingData.__dataclass_fields__)
    jaws, heads = entry.table("jaw_friction"), entry.table("head_friction")
    for friction in (jaws, heads):
        friction.expect([surface.value for surface in WorkSurface])
    return HoldingData(
        scroll_chucks=_rows(entry, "scroll_chucks", _scroll_chuck),
        grip=GripData(**_sourced(entry.table("grip"), _GRIP_KEYS)),
        jaw_friction=MappingProxyType(
            {surface: _by_face(jaws.table(surface.value)) for surface in WorkSurface}
        ),
        friction_factor=_factors(entry.table("friction_factor")),
        head_friction=MappingProxyType(
            {
                surface: HeadFriction(
                    **_sourced(heads.table(surface.value), ("tangential", "axial"))
                )
                for surface in WorkSurface
            }
        ),
        head_friction_factor=_factors(entry.table("head_friction_factor")),
        clamping_heads=_rows(entry, "clamping_heads", _clamping_head),
        chuck_bodies=_rows(entry, "chuck_bodies", _chuck_body),
    )


class Sized(Protocol):
    """A row that holds for the sizes from `size` to `up_to` [mm]."""

    @property
    def size(self) -> float:
        """Smallest size [mm]."""
        ...

    @property
    def up_to(self) -> float:
        """Largest size [mm]."""
        ...


Row = TypeVar("Row", bound=Sized)


def _rows(entry: Entry, key: str, read: Callable[[Entry], Row]) -> tuple[Row, ...]:
    rows: list[Row] = []
    for one in entry.rows(key):
        row = read(one)
        if rows and row.size <= rows[-1].up_to:
            raise one.error(f"{row.size:g} mm is not larger than the row before", "size")
        if row.up_to < row.size:
            raise one.error(f"{row.up_to:g} mm is less than the size", "up_to")
        rows.append(row)
    if not rows:
        raise entry.error("has no rows", key)
    return tuple(rows)


def _scroll_chuck(row: Entry) -> ScrollChuck:
    row.expect(("size", "key_torque", "static_grip", "largest_speed"), ("up_to",))
    speeds = row.table("largest_speed")
    speeds.expect([material.value for material in BodyMaterial])
    return ScrollChuck(
        **_sizes(row),
        key_torque=row.sourced("key_torque"),
        static_grip=row.sourced("static_grip"),
        largest_speed=MappingProxyType(
            {material: speeds.sourced(material.value) for material in BodyMaterial}
        ),
    )


def _clamping_head(row: Entry) -> ClampingHead:
    row.expect(("size", "largest_force"))
    return ClampingHead(**_sizes(row), largest_force=row.sourced("largest_force"))


def _chuck_body(row: Entry) -> ChuckBody:
    row.expect(("size", "bore", "mass"))
    return ChuckBody(**_sizes(row), bore=row.sourced("bore"), mass=row.sourced("mass"))


def _sizes(row: Entry) -> dict[str, float]:
    size = row.number("size")
    return {"size": size, "up_to": row.number("up_to") if "up_to" in row else size}


def _by_face(entry: Entry) -> Mapping[JawFace, Sourced]:
    entry.expect([face.value for face in JawFace])
    return MappingProxyType({face: entry.sourced(face.value) for face in JawFace})


def _factors(entry: Entry) -> Mapping[str, Sourced]:
    return MappingProxyType(_sourced(entry, MATERIALS_WITH_FACTOR))


def _sourced(entry: Entry, keys: Sequence[str]) -> dict[str, Sourced]:
    entry.expect(keys)
    return {key: entry.sourced(key) for key in keys}
