"""How long an edge lasts, by Taylor's law: v T^n = C, with v in m/min and T in minutes.

The law owns its units: C is the speed at which the edge lasts one minute, at the feed and the
depth of its table. With a small n a little in C is a great deal in T: a life is a wide band.
"""

import numpy as np

from chartgen.quantities import MetresPerMinute, Minutes, Numeric


def tool_life(
    *,
    cutting_speed: MetresPerMinute[Numeric],
    constant: MetresPerMinute[Numeric],
    exponent: Numeric,
) -> Minutes[Numeric]:
    """Return how long an edge cuts at a speed.

    Parameters
    ----------
    cutting_speed
        Surface speed [m/min], greater than 0.
    constant
        Speed of one minute's life, C [m/min].
    exponent
        Taylor's exponent n, greater than 0.

    Returns
    -------
    Time in the cut [min].

    Notes
    -----
    T = (C / v)^(1 / n). Only where wear ends the edge: at low speed a built-up edge or a
    chipped corner ends it first, so a long life from this law is no promise.

    References
    ----------
    [GROO5] ch. 22; [HSMD] exercise 4.
    """
    return (constant / cutting_speed) ** (1.0 / exponent)


def cutting_speed_for_life(
    *,
    life: Minutes[Numeric],
    constant: MetresPerMinute[Numeric],
    exponent: Numeric,
) -> MetresPerMinute[Numeric]:
    """Return the speed at which an edge lasts so long.

    Parameters
    ----------
    life
        Time in the cut [min], greater than 0.
    constant
        Speed of one minute's life, C [m/min].
    exponent
        Taylor's exponent n.

    Returns
    -------
    Surface speed [m/min].

    Notes
    -----
    v = C / T^n. Same limits as `tool_life`.

    References
    ----------
    Inverse of `tool_life`.
    """
    return constant / life**exponent


def taylor_exponent(
    *,
    fast: MetresPerMinute[Numeric],
    life_when_fast: Minutes[Numeric],
    slow: MetresPerMinute[Numeric],
    life_when_slow: Minutes[Numeric],
) -> Numeric:
    """Return Taylor's exponent from two lives.

    Parameters
    ----------
    fast
        The faster surface speed [m/min].
    life_when_fast
        Life at it [min].
    slow
        The slower surface speed [m/min].
    life_when_slow
        Life at it [min], longer than the other.

    Returns
    -------
    Exponent n.

    Notes
    -----
    n = ln(v1 / v2) / ln(T2 / T1).

    References
    ----------
    [HSMD] exercise 4; [GROOS] problem 23.5.
    """
    return np.log(fast / slow) / np.log(life_when_slow / life_when_fast)


def taylor_constant(
    *,
    cutting_speed: MetresPerMinute[Numeric],
    life: Minutes[Numeric],
    exponent: Numeric,
) -> MetresPerMinute[Numeric]:
    """Return the speed of one minute's life from one life and the exponent.

    Parameters
    ----------
    cutting_speed
        Surface speed [m/min].
    life
        Life at it [min].
    exponent
        Taylor's exponent n.

    Returns
    -------
    Constant C [m/min].

    Notes
    -----
    C = v T^n.

    References
    ----------
    [GROO5] ch. 22.
    """
    return cutting_speed * life**exponent
