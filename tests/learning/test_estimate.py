"""The bounded least squares with priors, against an independent solver."""

import numpy as np
import pytest
from scipy.optimize import lsq_linear  # type: ignore[import-untyped]

from chartgen.learning.equations import Equation
from chartgen.learning.estimate import estimate, whitened
from chartgen.learning.unknowns import Unknown, share_spread, span_spread

SEEDS = range(25)


def a_system(seed: int) -> tuple[dict[str, Unknown], list[Equation]]:
    chance = np.random.default_rng(seed)
    unknowns = {
        name: Unknown(
            name=name,
            assumed=float(chance.uniform(0.5, 2.0)),
            spread=float(chance.uniform(0.02, 0.4)),
            least=0.45 if name == "a" else 0.0,
            most=2.05 if name in {"a", "b"} else float("inf"),
        )
        for name in "abcd"
    }
    equations = [
        Equation(
            weights={n: float(chance.integers(-1, 2)) for n in "abcd"},
            says=float(chance.normal(0.0, 0.8)),
            spread=float(chance.uniform(0.02, 0.2)),
        )
        for _ in range(int(chance.integers(1, 9)))
    ]
    return unknowns, equations


@pytest.mark.parametrize("seed", SEEDS)
def test_the_solution_is_that_of_an_independent_bounded_solver(seed: int) -> None:
    unknowns, equations = a_system(seed)
    rows, says = whitened(unknowns, equations)
    prior = np.array([one.spread for one in unknowns.values()])
    with np.errstate(divide="ignore"):
        least = np.log([u.least / u.assumed for u in unknowns.values()]) / prior
    most = np.log([u.most / u.assumed for u in unknowns.values()]) / prior
    theirs = lsq_linear(
        np.vstack([rows, np.eye(4)]),
        np.concatenate([says, np.zeros(4)]),
        bounds=(least, most),
        method="bvls",
        tol=1e-14,
    )
    assert estimate(unknowns, equations).off / prior == pytest.approx(theirs.x, abs=1e-7)


@pytest.mark.parametrize("seed", SEEDS)
def test_the_spread_is_that_of_the_normal_equations(seed: int) -> None:
    unknowns, equations = a_system(seed)
    noise = np.array([e.spread for e in equations])
    design = np.array([[e.weights[n] for n in "abcd"] for e in equations]) / noise[:, None]
    prior = np.diag([1.0 / one.spread**2 for one in unknowns.values()])
    covariance = np.linalg.inv(design.T @ design + prior)
    found = estimate(unknowns, equations)
    assert found.spread == pytest.approx(np.sqrt(np.diag(covariance)), rel=1e-9)
    assert np.all(found.narrowing <= 1.0)


@pytest.mark.parametrize("seed", SEEDS)
def test_a_misfit_is_what_leaving_the_reading_out_would_show(seed: int) -> None:
    unknowns, equations = a_system(seed)
    unknowns = {n: Unknown(name=n, assumed=1.0, spread=u.spread) for n, u in unknowns.items()}
    found = estimate(unknowns, equations)
    for index, left_out in enumerate(equations):
        rest = [e for e in equations if e is not left_out]
        without = estimate(unknowns, rest)
        weights = np.array([left_out.weights[n] for n in "abcd"])
        rows, _ = whitened(unknowns, rest)
        scale = np.diag([u.spread for u in unknowns.values()])
        covariance = scale @ np.linalg.inv(rows.T @ rows + np.eye(4)) @ scale
        expected = left_out.says - weights @ without.off
        spread = np.sqrt(left_out.spread**2 + weights @ covariance @ weights)
        assert found.misfit[index] == pytest.approx(expected / spread, rel=1e-6, abs=1e-9)


def test_two_unknowns_that_come_only_as_a_product_keep_their_priors_share() -> None:
    """Textbook identity: the conditional mean of a part of a sum is its share of the variance."""
    unknowns = {n: Unknown(name=n, assumed=1.0, spread=s) for n, s in (("a", 0.3), ("b", 0.1))}
    found = estimate(unknowns, [Equation(weights={"a": 1.0, "b": 1.0}, says=0.2, spread=1e-4)])
    assert found.off == pytest.approx([0.18, 0.02], abs=1e-6)
    assert found.spread == pytest.approx([0.3 * np.sqrt(0.1)] * 2, rel=1e-4)


def test_a_span_is_four_spreads_and_a_share_two() -> None:
    assert span_spread(1.0, np.exp(0.4)) == pytest.approx(0.1)
    assert share_spread(np.expm1(0.2)) == pytest.approx(0.1)
