"""Who gets which numbers: by hashing, so that nothing depends on who else is asked.

The numbers an exercise may have are put in an order that the course's seed, the lathe and the
kind decide, and each student takes the place that his own number counts to. So no two students
share numbers by construction, as long as there are more places than students.
"""

import hashlib
from typing import Final

import numpy as np
from numpy.typing import NDArray

from chartgen.quantities import FloatArray, IntArray

Marks = NDArray[np.uint64]
_FIRST: Final = np.uint64(0x9E3779B97F4A7C15)
_SECOND: Final = np.uint64(0xBF58476D1CE4E5B9)
_THIRD: Final = np.uint64(0x94D049BB133111EB)
# Givens have at most six decimals, so that equal ones are equal whole numbers.
_SCALE: Final = 1e6
_LARGEST: Final = 1e9


def hash_key(*parts: object) -> np.uint64:
    """Return a key of some parts, by SHA-256."""
    text = "\x1f".join(map(str, parts)).encode()
    return np.uint64(int.from_bytes(hashlib.sha256(text).digest()[:8], "big"))


def mixed(values: Marks) -> Marks:
    """Return 64 bits mixed so that each bit of the result depends on all: one to one."""
    with np.errstate(over="ignore"):
        values = values + _FIRST
        values = (values ^ (values >> np.uint64(30))) * _SECOND
        values = (values ^ (values >> np.uint64(27))) * _THIRD
        return values ^ (values >> np.uint64(31))


def fingerprints(rows: FloatArray) -> Marks:
    """Return a mark of each row of numbers: rows that print alike have the same."""
    found = np.zeros(rows.shape[0], dtype=np.uint64)
    for column in rows.T:
        whole = np.rint(np.minimum(column, _LARGEST) * _SCALE).astype(np.int64)
        found = mixed(found ^ whole.astype(np.uint64))
    return found


def in_order(marks: Marks, groups: IntArray, key: np.uint64) -> IntArray:
    """Return the order in which rows are handed out: shuffled, every group in its turn."""
    hashed = mixed(marks ^ key)
    turn = np.zeros(marks.size, dtype=np.int_)
    for group in np.unique(groups):
        places = np.flatnonzero(groups == group)
        turn[places[np.argsort(hashed[places], kind="stable")]] = np.arange(places.size)
    return np.lexsort((hashed, turn))
