"""Readings that can say nothing on this lathe, each with the reason and the way out."""

from collections.abc import Sequence

from chartgen.errors import ChartgenError
from chartgen.model.readings import CutReading, ShopReading


class UnusableReadingError(ValueError):
    """A reading that says nothing on this lathe: why; after a semicolon, what to do instead."""


class RefusedReadingsError(ChartgenError):
    """All readings that say nothing on this lathe, each with its reason."""

    def __init__(self, refused: Sequence[tuple[ShopReading, str]]) -> None:
        self.refused = tuple(refused)
        super().__init__("\n".join(f"{_words(one)}: {why}." for one, why in refused))


def _words(reading: ShopReading) -> str:
    kind = type(reading).__name__.removesuffix("Reading").lower()
    where = f" in {reading.cut.material}" if isinstance(reading, CutReading) else ""
    return f"the {kind} reading of {reading.date}{where}"
