"""A chuck of any size from the rows of the tables: a row, a straight line, or a refusal."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Generic

from chartgen.errors import RequestError
from chartgen.quantities import Millimetres
from chartgen.reference.chucks import BodyMaterial, ChuckBody, Row, ScrollChuck
from chartgen.sources import Mark, Sourced


def scroll_chuck_of_size(size: Millimetres[float], *, chucks: Sequence[ScrollChuck]) -> ScrollChuck:
    """Return the row of a size, or a straight line between the rows around it.

    Raises
    ------
    RequestError
        If the size lies outside the rows: neither grip nor speed follows from size alone.
    """
    here = _place(size, chucks, "Measure the grip and read the speed off the chuck.")
    low, high = here.low, here.high
    if low is high:
        return replace(low, size=size)
    return ScrollChuck(
        size=size,
        up_to=size,
        key_torque=here.between(low.key_torque, high.key_torque),
        static_grip=here.between(low.static_grip, high.static_grip),
        largest_speed=MappingProxyType(
            {
                material: here.between(low.largest_speed[material], high.largest_speed[material])
                for material in BodyMaterial
            }
        ),
    )


def chuck_body_of_size(size: Millimetres[float], *, bodies: Sequence[ChuckBody]) -> ChuckBody:
    """Return the body of a size, or a straight line between the rows around it.

    Raises
    ------
    RequestError
        If the size lies outside the rows.
    """
    here = _place(size, bodies, "Weigh the chuck.")
    low, high = here.low, here.high
    if low is high:
        return replace(low, size=size)
    return ChuckBody(
        size=size,
        up_to=size,
        bore=here.between(low.bore, high.bore),
        mass=here.between(low.mass, high.mass),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Place(Generic[Row]):
    """Where a size lies: the rows around it, one row twice where it holds by itself."""

    size: float
    low: Row
    high: Row

    def between(self, start: Sourced, end: Sourced) -> Sourced:
        """Return the number on the straight line, no more trusted than either end of it."""
        first, last = self.low.up_to, self.high.size
        share = (self.size - first) / (last - first)
        is_memory = Mark.MEMORY in {start.mark, end.mark}
        return Sourced(
            value=start.value + share * (end.value - start.value),
            mark=Mark.MEMORY if is_memory else Mark.DERIVED,
            source=start.source,
            place=start.place,
            note=f"between the sizes {first:g} and {last:g} mm",
        )


def _place(size: float, rows: Sequence[Row], mend: str) -> _Place[Row]:
    if not rows[0].size <= size <= rows[-1].up_to:
        raise RequestError(
            f"There are data for chucks of {rows[0].size:g} to {rows[-1].up_to:g} mm, "
            f"none for {size:g} mm. {mend}"
        )
    low = next(row for row in reversed(rows) if row.size <= size)
    if size <= low.up_to:
        return _Place(size=size, low=low, high=low)
    return _Place(size=size, low=low, high=next(row for row in rows if row.size > size))
