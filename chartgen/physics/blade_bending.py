"""The blade as a beam: how far the cutting force bends it down and what that does to the cut.

The blade is clamped at one end and carries the cutting force at the other. Everything is
linear in the force, so each limit has its inverse. The second moment and its companions
come from `blade_section`.
"""

import numpy as np

from chartgen.quantities import (
    CubicMm,
    Millimetres,
    Newtons,
    NewtonsPerMm,
    NewtonsPerSquareMm,
    Numeric,
    QuarticMm,
    SquareMm,
)


def bending_stress(
    *,
    force: Newtons[Numeric],
    overhang: Millimetres[Numeric],
    section_modulus: CubicMm[Numeric],
) -> NewtonsPerSquareMm[Numeric]:
    """Return the stress at the edge of the blade where it leaves its clamp.

    Parameters
    ----------
    force
        Cutting force on the tip [N].
    overhang
        From the clamp to the tip [mm].
    section_modulus
        Second moment over the distance to the farther edge [mm³].

    Returns
    -------
    Bending stress [N/mm²].

    Notes
    -----
    σ = F L / W; for a flat blade 6 F L / (t h²). Nominal: a seat or a corner that raises the
    stress is not in it, nor is the feed force. Below L = h a short beam is stressed
    differently near the clamp, and the plain formula is only a guide.

    References
    ----------
    Beam theory; [PCS] example 15.8 sizes a shank by it.
    """
    return force * overhang / section_modulus


def force_for_bending_stress(
    *,
    stress: NewtonsPerSquareMm[Numeric],
    overhang: Millimetres[Numeric],
    section_modulus: CubicMm[Numeric],
) -> Newtons[Numeric]:
    """Return the force that brings the bending stress up to a given one.

    Parameters
    ----------
    stress
        Stress that may not be exceeded [N/mm²].
    overhang
        From the clamp to the tip [mm], greater than 0.
    section_modulus
        Second moment over the distance to the farther edge [mm³].

    Returns
    -------
    Cutting force [N].

    Notes
    -----
    The inverse of `bending_stress`: F = σ W / L.

    References
    ----------
    Beam theory.
    """
    return stress * section_modulus / overhang


def bending_deflection(
    *,
    force: Newtons[Numeric],
    overhang: Millimetres[Numeric],
    elastic_modulus: NewtonsPerSquareMm[Numeric],
    second_moment: QuarticMm[Numeric],
) -> Millimetres[Numeric]:
    """Return how far bending alone lowers the tip.

    Parameters
    ----------
    force
        Force on the tip, square to the blade [N].
    overhang
        From the clamp to the tip [mm].
    elastic_modulus, second_moment
        Of the blade, and of its section about the axis it bends around [N/mm², mm⁴].

    Returns
    -------
    Deflection in the direction of the force [mm].

    Notes
    -----
    F L³ / (3 E I); for a flat blade 4 F L³ / (E t h³). With the second moment across the
    blade it is the sideways deflection under a sideways force. Elastic, clamp rigid.

    References
    ----------
    Beam theory.
    """
    return force * overhang**3 / (3.0 * elastic_modulus * second_moment)


def shear_deflection(
    *,
    force: Newtons[Numeric],
    overhang: Millimetres[Numeric],
    shear_modulus: NewtonsPerSquareMm[Numeric],
    shear_area: SquareMm[Numeric],
) -> Millimetres[Numeric]:
    """Return how far shear lowers the tip beyond bending.

    Parameters
    ----------
    force
        Force on the tip [N].
    overhang
        From the clamp to the tip [mm].
    shear_modulus, shear_area
        Of the blade and its section, t h / 1.2 for a flat one [N/mm², mm²].

    Returns
    -------
    Deflection in the direction of the force [mm].

    Notes
    -----
    F L / (G A_s), 1.2 F L / (G t h) for a flat blade. Not small: against bending it is
    0.3 (E / G) (h / L)², about half of it in a blade that projects 1.25 times its height.

    References
    ----------
    Beam theory with shear by energy.
    """
    return force * overhang / (shear_modulus * shear_area)


def tip_deflection(
    *,
    force: Newtons[Numeric],
    overhang: Millimetres[Numeric],
    elastic_modulus: NewtonsPerSquareMm[Numeric],
    shear_modulus: NewtonsPerSquareMm[Numeric],
    second_moment: QuarticMm[Numeric],
    shear_area: SquareMm[Numeric],
    support_stiffness: NewtonsPerMm[Numeric] = np.inf,
) -> Millimetres[Numeric]:
    """Return how far the tip drops in all: bending, shear, and what it is clamped to.

    Parameters
    ----------
    force
        Cutting force on the tip [N].
    overhang
        From the clamp to the tip [mm].
    elastic_modulus, shear_modulus
        Moduli of the blade [N/mm²].
    second_moment
        Second moment of the section [mm⁴].
    shear_area
        Area over its shear coefficient [mm²].
    support_stiffness
        Force at the tip per drop of the tip that block, post and slides cause [N/mm], as
        measured; without it they are taken as rigid, which they are not.

    Returns
    -------
    Drop of the tip [mm].

    Notes
    -----
    F L³ / (3 E I) + F L / (G A_s) + F / k. Springs in a row add their give.

    References
    ----------
    Beam theory with shear by energy.
    """
    bending = overhang**3 / (3.0 * elastic_modulus * second_moment)
    shear = overhang / (shear_modulus * shear_area)
    return force * (bending + shear + 1.0 / support_stiffness)


def force_for_tip_deflection(
    *,
    deflection: Millimetres[Numeric],
    overhang: Millimetres[Numeric],
    elastic_modulus: NewtonsPerSquareMm[Numeric],
    shear_modulus: NewtonsPerSquareMm[Numeric],
    second_moment: QuarticMm[Numeric],
    shear_area: SquareMm[Numeric],
    support_stiffness: NewtonsPerMm[Numeric] = np.inf,
) -> Newtons[Numeric]:
    """Return the force that lowers the tip by a given amount.

    Parameters
    ----------
    deflection
        Drop that may not be exceeded [mm].
    overhang, elastic_modulus, shear_modulus, second_moment, shear_area, support_stiffness
        As in `tip_deflection` [mm, N/mm², mm⁴, mm², N/mm].

    Returns
    -------
    Cutting force [N].

    Notes
    -----
    The inverse of `tip_deflection`, which is in proportion to the force.

    References
    ----------
    Beam theory with shear by energy.
    """
    per_newton = tip_deflection(
        force=1.0,
        overhang=overhang,
        elastic_modulus=elastic_modulus,
        shear_modulus=shear_modulus,
        second_moment=second_moment,
        shear_area=shear_area,
        support_stiffness=support_stiffness,
    )
    return deflection / per_newton


def end_slope(
    *,
    force: Newtons[Numeric],
    overhang: Millimetres[Numeric],
    elastic_modulus: NewtonsPerSquareMm[Numeric],
    second_moment: QuarticMm[Numeric],
) -> Numeric:
    """Return the angle by which the tip nods.

    Parameters
    ----------
    force
        Cutting force on the tip [N].
    overhang
        From the clamp to the tip [mm].
    elastic_modulus, second_moment
        Of the blade and its section [N/mm², mm⁴].

    Returns
    -------
    Slope at the tip [rad].

    Notes
    -----
    θ = F L² / (2 E I). Shear slides the sections past one another and does not turn them.

    References
    ----------
    Beam theory.
    """
    return force * overhang**2 / (2.0 * elastic_modulus * second_moment)


def forward_bite(*, slope: Numeric, top_distance: Millimetres[Numeric]) -> Millimetres[Numeric]:
    """Return how far a nodding tip moves into the work.

    Parameters
    ----------
    slope
        Slope at the tip [rad], small.
    top_distance
        How far the cutting edge stands above what the tip turns around, the neutral axis [mm].

    Returns
    -------
    Movement towards the centre of the work [mm], which the next chip is thicker by.

    Notes
    -----
    Δx = θ c; for a flat blade with the edge on top 3 F L² / (E t h²). An inverted blade at
    the rear moves away by as much.

    References
    ----------
    Derived: small rotation.
    """
    return slope * top_distance
