"""The lowest of several ceilings, or the highest of several floors, and which one it is."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from chartgen.limits.reasons import CODES, REASONS, Reason
from chartgen.quantities import FloatArray


@dataclass(frozen=True, slots=True)
class Envelope:
    """A limiting value at each point, and the code (index into REASONS) of what set it."""

    value: FloatArray
    code: NDArray[np.int8]


def lowest(limits: Sequence[tuple[Reason, FloatArray]]) -> Envelope:
    """Return the lowest ceiling at each point; the first listed wins a tie.

    Raises
    ------
    ValueError
        If a ceiling is NaN: a limit that does not apply must be inf.
    """
    return _envelope(limits, lower=True)


def highest(limits: Sequence[tuple[Reason, FloatArray]]) -> Envelope:
    """Return the highest floor at each point; the first listed wins a tie.

    Raises
    ------
    ValueError
        If a floor is NaN: a floor that does not apply must be 0.
    """
    return _envelope(limits, lower=False)


def reason_of(code: int) -> Reason:
    """Return the reason behind a code."""
    return REASONS[code]


def _envelope(limits: Sequence[tuple[Reason, FloatArray]], *, lower: bool) -> Envelope:
    first, value = limits[0]
    _refuse_nan(first, value)
    code = np.full(np.shape(value), CODES[first], dtype=np.int8)
    for reason, other in limits[1:]:
        _refuse_nan(reason, other)
        wins = other < value if lower else other > value
        value = np.minimum(value, other) if lower else np.maximum(value, other)
        code = np.where(wins, np.int8(CODES[reason]), code)
    return Envelope(value, code)


def _refuse_nan(reason: Reason, value: FloatArray) -> None:
    if np.isnan(value).any():
        raise ValueError(f"limit {reason.name} is NaN; a limit that does not apply is inf or 0")
