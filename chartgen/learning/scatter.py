"""Values read directly: mean, slope through nothing, and Student's t, from their own scatter."""

import math
from collections.abc import Sequence
from typing import NamedTuple

import numpy as np


class Direct(NamedTuple):
    """A value with the half width of its interval at the level asked for."""

    value: float
    half_width: float


def student_probability(t: float, freedom: int) -> float:
    """Return the probability that |T| is at most `t`, for whole degrees of freedom.

    The finite series of Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.3
    and 26.7.4, quoted from memory; the tests hold it against an independent library.
    """
    angle = math.atan(t / math.sqrt(freedom))
    sine, cosine = math.sin(angle), math.cos(angle)
    odd = freedom % 2 == 1
    term = cosine if odd else 1.0
    total = term if freedom > 1 else 0.0
    for step in range(3 if odd else 2, freedom - 1, 2):
        term *= cosine**2 * (step - 1) / step
        total += term
    return 2.0 / math.pi * (angle + sine * total) if odd else sine * total


def student_quantile(level: float, freedom: int) -> float:
    """Return t with |T| at most t in a share `level` of cases, by halving."""
    low, high = 0.0, 1.0
    while student_probability(high, freedom) < level:
        high *= 2.0
    for _ in range(100):
        middle = (low + high) / 2.0
        if student_probability(middle, freedom) < level:
            low = middle
        else:
            high = middle
    return high


def mean_of(values: Sequence[float], *, level: float, scale_error: float) -> Direct:
    """Return the mean of at least two values; `scale_error` is shared by all, as a share."""
    mean = float(np.mean(values))
    spread = float(np.std(values, ddof=1)) / math.sqrt(len(values))
    chance = student_quantile(level, len(values) - 1) * spread
    return Direct(mean, math.hypot(chance, scale_error * mean))


def stiffness_of(
    pulls: Sequence[float], movements: Sequence[float], *, level: float, scale_error: float
) -> Direct:
    """Return pull over movement by the slope through nothing of at least two readings.

    The gauge is set to nothing without a pull, so the line goes through there, and what
    scatters is the movement.
    """
    pull, movement = np.asarray(pulls), np.asarray(movements)
    squares = float(pull @ pull)
    give = float(pull @ movement) / squares
    rest = movement - give * pull
    freedom = len(pulls) - 1
    error = math.sqrt(float(rest @ rest) / freedom / squares)
    chance = student_quantile(level, freedom) * error / give
    return Direct(1.0 / give, math.hypot(chance, scale_error) / give)


def odd_one(values: Sequence[float], *, scale_error: float, false_alarm: float) -> int | None:
    """Return the index of the value that the others speak against most, if one does so clearly.

    Each is held against mean and scatter of the others; four are needed, or nothing can be
    told. Values closer than an instrument shows are taken to scatter by its error.
    """
    if len(values) < len(("one", "and", "three", "others")):
        return None
    worst, its_excess = None, 1.0
    for index, value in enumerate(values):
        others = np.delete(np.asarray(values), index)
        least = scale_error * abs(float(others.mean())) / 2.0
        spread = max(float(others.std(ddof=1)), least) * math.sqrt(1.0 + 1.0 / others.size)
        limit = student_quantile(1.0 - false_alarm / len(values), others.size - 1)
        excess = abs(value - float(others.mean())) / spread / limit
        if excess > its_excess:
            worst, its_excess = index, excess
    return worst
