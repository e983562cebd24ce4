"""Weighted least squares with a prior on every unknown, and bounds; which reading does not fit.

Unknowns that readings hold only together keep what was assumed of each, and its doubt: that is
what the priors are for. Every unknown is counted in its own prior spread, so that the normal
matrix is the identity plus what the readings add.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import product

import numpy as np

from chartgen.learning.equations import Equation
from chartgen.learning.unknowns import Unknown
from chartgen.quantities import BoolArray, FloatArray

_SLIP = 1e-9
_LEAST_REST = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Estimate:
    """Logarithms of the factors by which each unknown is off what was assumed, and their doubt.

    `narrowing` is the spread left over the one assumed. `misfit` is how many spreads each
    reading is off what all the others, and the priors, lead to expect of it.
    """

    names: tuple[str, ...]
    off: FloatArray
    spread: FloatArray
    narrowing: FloatArray
    misfit: FloatArray
    at_bound: BoolArray

    def at(self, name: str) -> int:
        """Return the place of an unknown in the arrays."""
        return self.names.index(name)


def estimate(unknowns: Mapping[str, Unknown], equations: Sequence[Equation]) -> Estimate:
    """Return what some readings say of the unknowns, within their bounds."""
    names = tuple(unknowns)
    prior = np.array([unknowns[name].spread for name in names])
    rows, says = whitened(unknowns, equations)
    normal = rows.T @ rows + np.eye(len(names))
    inverse = np.linalg.inv(normal)
    free = inverse @ (rows.T @ says)
    with np.errstate(divide="ignore"):
        least = np.log([unknowns[n].least / unknowns[n].assumed for n in names]) / prior
        most = np.log([unknowns[n].most / unknowns[n].assumed for n in names]) / prior
    bounded = within_bounds(normal, rows.T @ says, least, most)
    leverage = np.einsum("ij,jk,ik->i", rows, inverse, rows)
    narrowing = np.sqrt(np.diag(inverse))
    return Estimate(
        names=names,
        off=bounded * prior,
        spread=narrowing * prior,
        narrowing=narrowing,
        misfit=(says - rows @ free) / np.sqrt(np.maximum(1.0 - leverage, _LEAST_REST)),
        at_bound=(bounded <= least) | (bounded >= most),
    )


def whitened(
    unknowns: Mapping[str, Unknown], equations: Sequence[Equation]
) -> tuple[FloatArray, FloatArray]:
    """Return the system with unknowns in prior spreads and each line in its own spread."""
    rows = np.array(
        [
            [e.weights.get(name, 0.0) * one.spread / e.spread for name, one in unknowns.items()]
            for e in equations
        ]
    ).reshape(-1, len(unknowns))
    return rows, np.array([e.says / e.spread for e in equations])


def within_bounds(
    normal: FloatArray, pull: FloatArray, least: FloatArray, most: FloatArray
) -> FloatArray:
    """Return x with least <= x <= most that makes x N x / 2 - p x smallest.

    At the smallest place some unknowns lie on a bound and the others where nothing pulls them.
    Few have bounds, so each choice of those on one is tried; ill-matched scales do no harm.
    """
    best, lowest = np.clip(np.zeros_like(pull), least, most), np.inf
    places = [
        [None, *(bound for bound in ends if np.isfinite(bound))]
        for ends in zip(least.tolist(), most.tolist(), strict=True)
    ]
    for choice in product(*places):
        fixed = np.array([bound is not None for bound in choice])
        x = np.array([0.0 if bound is None else bound for bound in choice])
        free = ~fixed
        if free.any():
            rest = pull[free] - normal[np.ix_(free, fixed)] @ x[fixed]
            x[free] = np.linalg.solve(normal[np.ix_(free, free)], rest)
        if np.any((x < least - _SLIP) | (x > most + _SLIP)):
            continue
        height = float(x @ normal @ x / 2.0 - pull @ x)
        if height < lowest:
            best, lowest = np.clip(x, least, most), height
        if not fixed.any():
            break
    return best
