"""The numbers that an exercise may be drawn from, a row each."""

from dataclasses import dataclass

import numpy as np

from chartgen.lessons.draws import Marks, fingerprints, mixed
from chartgen.quantities import FloatArray, IntArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False, repr=False)
class Choices:
    """Rows to draw from: `names` are the arguments of the function that makes the exercise.

    The first `printed` columns stand in the question. `material` and `blade` are places in
    lists, -1 for no blade. Rows of different `group` are handed out in turn.
    """

    names: tuple[str, ...]
    rows: FloatArray
    printed: int
    material: IntArray
    blade: IntArray
    group: IntArray

    @property
    def marks(self) -> Marks:
        """A mark of what each row prints."""
        return fingerprints(self.rows[:, : self.printed])

    def taken(self, places: IntArray) -> "Choices":
        """Return some of the rows."""
        return Choices(
            names=self.names,
            rows=self.rows[places],
            printed=self.printed,
            material=self.material[places],
            blade=self.blade[places],
            group=self.group[places],
        )

    def of_lathe(self, lathe: int, lathes: int) -> "Choices":
        """Return one lathe's share: each set of numbers once, and at one lathe only."""
        marks = self.marks
        # Of rows that print alike in several materials any one is as good as another.
        shuffled = np.argsort(mixed(marks ^ mixed(self.material.astype(np.uint64))), kind="stable")
        shuffled = shuffled[marks[shuffled] % np.uint64(lathes) == np.uint64(lathe)]
        _, first = np.unique(marks[shuffled], return_index=True)
        return self.taken(shuffled[first])


def choices(
    columns: dict[str, FloatArray],
    *,
    material: IntArray,
    blade: IntArray,
    where: np.ndarray[tuple[int, ...], np.dtype[np.bool_]],
    printed: int | None = None,
    answer: IntArray | None = None,
) -> Choices:
    """Return the rows where a condition holds, of columns that broadcast to its shape."""
    shape = where.shape

    def flat(values: FloatArray | IntArray) -> np.ndarray[tuple[int, ...], np.dtype[np.float64]]:
        return np.asarray(np.broadcast_to(values, shape)[where], dtype=np.float64)

    rows = np.stack([flat(column) for column in columns.values()], axis=1)
    of_material = flat(material).astype(np.int_)
    group = of_material * 64
    if answer is not None:
        group = group + flat(answer).astype(np.int_)
    return Choices(
        names=tuple(columns),
        rows=rows,
        printed=len(columns) if printed is None else printed,
        material=of_material,
        blade=flat(blade).astype(np.int_),
        group=group,
    )
