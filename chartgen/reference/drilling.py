"""Reads `drilling.toml`: speeds, feeds and factors of twist drills, and how sure they are."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType
from typing import Final, NamedTuple

import numpy as np

from chartgen.model.tooling import DrillPoint
from chartgen.reference.entries import Entry, data_text
from chartgen.sources import Mark, Sourced

FILE: Final = "drilling.toml"
_CHISEL_KEYS: Final = ("torque", "lips", "web")


class DrillSpeed(NamedTuple):
    """Surface speeds [m/min] of a drill of high-speed steel in one material."""

    start: Sourced
    ceiling: Sourced


class DrillFeed(NamedTuple):
    """Feeds [mm/rev] of a drill of one diameter."""

    start: Sourced
    largest: Sourced


class DeepHole(NamedTuple):
    """Factors on speed and feed in a hole of some depth."""

    speed: Sourced
    feed: Sourced


class ChiselFactors(NamedTuple):
    """Factors of the chisel edge: on torque (A), on the lips' thrust (B), of the web (J)."""

    torque: Sourced
    lips: Sourced
    web: Sourced


@dataclass(frozen=True, slots=True, kw_only=True)
class PointData:
    """A way to grind a drill: chisel edge over diameter, and angle of the point [°]."""

    chisel: Sourced
    angle: Sourced


@dataclass(frozen=True, slots=True, kw_only=True)
class GuideFactor:
    """Constant K of the second model for one work material of a Brinell hardness."""

    work: str
    hardness: float
    factor: Sourced
    stands_for: tuple[str, ...]


Rows = tuple[tuple[float, tuple[Sourced, ...]], ...]
"""Rows by a rising number: what stands in each, in the order of its keys."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DrillingData:
    """All that the file holds.

    `web_share` is the web over the diameter; `first_peck` and `next_peck` are in diameters;
    `band_low` and `band_high` are fractions of torque and thrust.
    """

    speeds: Mapping[str, DrillSpeed]
    feeds: Rows
    feed_bounds: Mapping[str, Rows]
    deep_holes: Rows
    chisel: Rows
    points: Mapping[DrillPoint, PointData]
    web_share: Sourced
    first_peck: Sourced
    next_peck: Sourced
    band_low: Sourced
    band_high: Sourced
    guide_factors: tuple[GuideFactor, ...]


@cache
def load_drilling() -> DrillingData:
    """Return what is shipped about drilling.

    Raises
    ------
    ValueError
        If the file cannot be used.
    """
    return read_drilling(data_text(FILE), file=FILE)


def drilling_speed(material_key: str) -> DrillSpeed:
    """Return start and ceiling of the surface speed [m/min] in one material."""
    return load_drilling().speeds[material_key]


def drilling_feed(*, diameter: float, feed_class: str) -> DrillFeed:
    """Return start and largest feed [mm/rev] of a drill of this diameter [mm].

    `feed_class` is the key of the material's feed class, as "steel".
    """
    data = load_drilling()
    start, largest = _between(data.feeds, diameter, falls_to_nothing=True)
    (bound,) = _between(data.feed_bounds[feed_class], diameter, falls_to_nothing=True)
    return DrillFeed(*(min(feed, bound, key=lambda one: one.value) for feed in (start, largest)))


def deep_hole_factors(ratio: float) -> DeepHole:
    """Return the factors on speed and feed in a hole this many diameters deep.

    Beyond the last row of the table its last factors hold, and nothing is known.
    """
    return DeepHole(*_between(load_drilling().deep_holes, ratio))


def deepest_ratio() -> float:
    """Return the depth over diameter beyond which the table of deep holes says nothing."""
    return load_drilling().deep_holes[-1][0]


def chisel_factors(point: DrillPoint) -> ChiselFactors:
    """Return the factors of the chisel edge of a drill with this point."""
    data = load_drilling()
    return ChiselFactors(*_between(data.chisel, data.points[point].chisel.value))


def guide_factor(material_key: str) -> Sourced | None:
    """Return the constant K of the second model, None where none was found."""
    for row in load_drilling().guide_factors:
        if material_key in row.stands_for:
            return row.factor
    return None


def read_drilling(text: str, *, file: str) -> DrillingData:
    """Return what the text of a file says about drilling.

    Raises
    ------
    ValueError
        Naming file and key, if a key is missing, unknown or holds something else, or if rows
        do not rise.
    """
    entry = Entry.parse(text, file=file)
    entry.expect(
        (
            *("speed", "feed", "feed_bound", "deep_hole", "chisel", "point"),
            *("web", "peck", "force_band", "guide_factor"),
        )
    )
    speeds, bounds, points = (entry.table(key) for key in ("speed", "feed_bound", "point"))
    points.expect([point.value for point in DrillPoint])
    web, peck, band = (entry.table(key) for key in ("web", "peck", "force_band"))
    web.expect(("share",))
    peck.expect(("first", "next"))
    band.expect(("low", "high"))
    return DrillingData(
        speeds=MappingProxyType({key: _speed(speeds.table(key)) for key in speeds.keys}),
        feeds=_rows(entry, "feed", by="diameter", keys=("start", "largest")),
        feed_bounds=MappingProxyType(
            {key: _rows(bounds, key, by="diameter", keys=("largest",)) for key in bounds.keys}
        ),
        deep_holes=_rows(entry, "deep_hole", by="ratio", keys=("speed", "feed")),
        chisel=_chisel(entry.table("chisel")),
        points=MappingProxyType({point: _point(points.table(point.value)) for point in DrillPoint}),
        web_share=web.sourced("share"),
        first_peck=peck.sourced("first"),
        next_peck=peck.sourced("next"),
        band_low=band.sourced("low"),
        band_high=band.sourced("high"),
        guide_factors=tuple(_guide_factor(row) for row in entry.rows("guide_factor")),
    )


def _speed(entry: Entry) -> DrillSpeed:
    entry.expect(("start", "ceiling"))
    speed = DrillSpeed(start=entry.sourced("start"), ceiling=entry.sourced("ceiling"))
    if not 0.0 < speed.start.value <= speed.ceiling.value:
        raise entry.error("must lie above 0 and not above the ceiling", "start")
    return speed


def _point(entry: Entry) -> PointData:
    entry.expect(("chisel", "angle"))
    return PointData(chisel=entry.sourced("chisel"), angle=entry.sourced("angle"))


def _guide_factor(row: Entry) -> GuideFactor:
    row.expect(("work", "hardness", "factor", "stands_for"))
    return GuideFactor(
        work=row.text("work"),
        hardness=row.number("hardness"),
        factor=row.sourced("factor"),
        stands_for=row.texts("stands_for"),
    )


def _rows(entry: Entry, key: str, *, by: str, keys: Sequence[str]) -> Rows:
    rows: list[tuple[float, tuple[Sourced, ...]]] = []
    for row in entry.rows(key):
        row.expect((by, *keys))
        number = row.number(by)
        if number <= (rows[-1][0] if rows else 0.0):
            raise row.error(f"{number:g} is not above the row before, or not above 0", by)
        rows.append((number, tuple(row.sourced(one) for one in keys)))
    if not rows:
        raise entry.error("has no rows", key)
    return tuple(rows)


def _chisel(entry: Entry) -> Rows:
    entry.expect(("source", "mark", "place", "ratio", *_CHISEL_KEYS))
    mark, ratios = entry.mark(), entry.numbers("ratio")
    if ratios != sorted(set(ratios)):
        raise entry.error("must rise", "ratio")
    columns = [entry.numbers(key) for key in _CHISEL_KEYS]
    for key, column in zip(_CHISEL_KEYS, columns, strict=True):
        if len(column) != len(ratios):
            raise entry.error(f"has {len(column)} numbers for {len(ratios)} ratios", key)
    source, place = entry.text("source"), entry.text("place")
    return tuple(
        (ratio, tuple(Sourced(value=v, mark=mark, source=source, place=place) for v in values))
        for ratio, *values in zip(ratios, *columns, strict=True)
    )


def _between(rows: Rows, at: float, *, falls_to_nothing: bool = False) -> tuple[Sourced, ...]:
    """Return what stands at a number, straight between rows.

    A row hit exactly is itself; anything else is derived from the next row above, whose
    printing it follows. Before the first row, what falls to nothing does so in proportion.
    """
    numbers = [number for number, _ in rows]
    above = next((row for number, row in rows if number >= at), rows[-1][1])
    if at in numbers:
        return above
    scale = min(1.0, at / numbers[0]) if falls_to_nothing else 1.0
    return tuple(
        Sourced(
            value=scale * float(np.interp(at, numbers, [row[column].value for _, row in rows])),
            mark=Mark.DERIVED if above[column].mark is Mark.FOUND else above[column].mark,
            source=above[column].source,
            place=above[column].place,
            note="between rows" if at < numbers[-1] else "beyond the last row",
        )
        for column in range(len(above))
    )
