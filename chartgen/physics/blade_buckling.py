"""When a thin blade tips over sideways under a force along its height.

The force at the tip bends the blade down; past a critical force it can instead lean and
twist, and pushes itself farther the farther it has gone. A force that acts above the axis
of the section, as on a cutting edge, does that sooner.
"""

import numpy as np

from chartgen.quantities import (
    FloatArray,
    Millimetres,
    Newtons,
    NewtonsPerSquareMm,
    Numeric,
    QuarticMm,
)

# The series below are cut where the next term is under 1e-17 for the largest coefficient.
SERIES_TERMS = 16
# Just under the coefficient of a force applied infinitely far below the axis (5.5618).
LARGEST_COEFFICIENT = 5.56
MOST_STEPS = 60
SAME = 1e-14


def _twist_series(first_power: int) -> np.poly1d:
    """Return the solution of φ'' = -ξ² φ that starts as ξ to the power 0 or 1."""
    coefficients = np.zeros(4 * SERIES_TERMS + 2)
    coefficients[first_power] = 1.0
    for power in range(first_power + 4, len(coefficients), 4):
        coefficients[power] = -coefficients[power - 4] / (power * (power - 1))
    # poly1d takes the highest power first; it is loaded with numpy, its successor is not.
    return np.poly1d(coefficients[::-1])


# Twist along the blade where the tip is free to lean, and where it is held upright but twisted.
LEANING = _twist_series(0)
TWISTING = _twist_series(1)


def load_height_ratio(
    *,
    load_height: Millimetres[Numeric],
    overhang: Millimetres[Numeric],
    elastic_modulus: NewtonsPerSquareMm[Numeric],
    shear_modulus: NewtonsPerSquareMm[Numeric],
    lateral_second_moment: QuarticMm[Numeric],
    torsion_constant: QuarticMm[Numeric],
) -> Numeric:
    """Return how high the force acts, in the measure that the buckling solution depends on.

    Parameters
    ----------
    load_height
        Height of the force above the axis of the section [mm], negative below it.
    overhang
        From the clamp to the tip [mm].
    elastic_modulus, shear_modulus
        Moduli of the blade [N/mm²].
    lateral_second_moment, torsion_constant
        Of the section, for bending sideways and for twisting [mm⁴].

    Returns
    -------
    ε = (a / L) √(E I_across / (G J)).

    Notes
    -----
    For a thin flat blade of steel with the edge on top ε is about 0.41 h / L.

    References
    ----------
    Derived in `buckling_coefficient`.
    """
    stiffer_sideways = elastic_modulus * lateral_second_moment / (shear_modulus * torsion_constant)
    return load_height / overhang * np.sqrt(stiffer_sideways)


def buckling_coefficient(*, load_height_ratio: Numeric) -> Numeric:
    """Return the critical force over √(B C) / L², for a force at any height.

    Parameters
    ----------
    load_height_ratio
        ε = (a / L) √(B / C), from -100 up, with B the stiffness against bending sideways
        and C that against twisting.

    Returns
    -------
    λ = P L² / √(B C): 4.0126 for a force on the axis, about 1 / ε for one far above.

    Notes
    -----
    With ξ from the tip, the twist obeys C φ'' + (P² ξ² / B) φ = 0, with φ = 0 at the clamp
    and C φ' = -P a φ at the tip, where the leaning force twists by its arm. Measured in
    L / √λ the solutions are two power series u = 1 - ξ⁴/12 + …, w = ξ - ξ⁵/20 + …, and the
    clamp asks u(√λ) = ε √λ w(√λ). Written with Bessel functions that is
    J₋₁⸝₄(λ/2) / J₁⸝₄(λ/2) = 2 ε √λ Γ(5/4) / Γ(3/4). The usual straight line 1 - ε is
    unsafe from just above ε = 0 to 0.63, by 15 % at 0.41.

    Elastic, narrow section (it hardly bends down first), warping free, two axes of symmetry.
    In a section thicker at the top the true axis of twist lies above the centroid and the
    stress along the blade changes its twisting stiffness; neither is in this.

    References
    ----------
    Derived from the equation of the twisting blade; tests solve it by another way.
    """
    ratio = np.asarray(load_height_ratio, dtype=np.float64)
    slope_of_leaning, slope_of_twisting = LEANING.deriv(), TWISTING.deriv()
    low, high = np.zeros_like(ratio), np.full_like(ratio, LARGEST_COEFFICIENT)
    guess: FloatArray = np.minimum(4.0, 1.0 / np.maximum(np.abs(ratio), 0.25))
    for _ in range(MOST_STEPS):
        root = np.sqrt(guess)
        twisting = TWISTING(root)
        value = LEANING(root) - ratio * root * twisting
        low, high = np.where(value > 0.0, guess, low), np.where(value > 0.0, high, guess)
        slope = slope_of_leaning(root) - ratio * (twisting + root * slope_of_twisting(root))
        # Newton's step may leave the bracket, or the slope vanish: then the middle is taken.
        with np.errstate(divide="ignore", invalid="ignore"):
            step = guess - value * 2.0 * root / slope
        inside = (step >= low) & (step <= high)
        previous, guess = guess, np.where(inside, step, (low + high) / 2.0)
        if np.all(np.abs(guess - previous) <= SAME * guess):
            break
    return guess[()]


def critical_lateral_force(
    *,
    overhang: Millimetres[Numeric],
    load_height: Millimetres[Numeric],
    elastic_modulus: NewtonsPerSquareMm[Numeric],
    shear_modulus: NewtonsPerSquareMm[Numeric],
    lateral_second_moment: QuarticMm[Numeric],
    torsion_constant: QuarticMm[Numeric],
) -> Newtons[Numeric]:
    """Return the force at which the blade tips over sideways.

    Parameters
    ----------
    overhang
        From the clamp to the tip [mm], greater than 0.
    load_height
        Height of the force above the axis of the section [mm]: for an edge on the top of
        the blade the section's `top_distance`.
    elastic_modulus, shear_modulus
        Moduli of the blade [N/mm²].
    lateral_second_moment, torsion_constant
        Of the section, for bending sideways and for twisting [mm⁴].

    Returns
    -------
    Critical force [N], with no reserve.

    Notes
    -----
    P = λ(ε) √(E I_across G J) / L². Limits as in `buckling_coefficient`: elastic, clamp
    rigid, blade straight. A crooked blade or a side force gives way below it.

    References
    ----------
    Derived in `buckling_coefficient`.
    """
    ratio = load_height_ratio(
        load_height=load_height,
        overhang=overhang,
        elastic_modulus=elastic_modulus,
        shear_modulus=shear_modulus,
        lateral_second_moment=lateral_second_moment,
        torsion_constant=torsion_constant,
    )
    sideways = elastic_modulus * lateral_second_moment
    twisting = shear_modulus * torsion_constant
    coefficient = buckling_coefficient(load_height_ratio=ratio)
    return coefficient * np.sqrt(sideways * twisting) / overhang**2
