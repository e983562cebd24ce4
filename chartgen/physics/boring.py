"""A boring bar: a round beam that sticks out of the tool post, with the cut at its end."""

import numpy as np

from chartgen.physics.workpiece import bar_deflection, force_for_bar_deflection
from chartgen.quantities import Millimetres, Newtons, NewtonsPerSquareMm, Numeric


def boring_bar_deflection(
    *,
    force: Newtons[Numeric],
    overhang: Millimetres[Numeric],
    elastic_modulus: NewtonsPerSquareMm[Numeric],
    diameter: Millimetres[Numeric],
) -> Millimetres[Numeric]:
    """Return how far a cut bends a boring bar at its edge.

    Parameters
    ----------
    force
        Force square to the bar [N].
    overhang
        From the tool post to the edge [mm].
    elastic_modulus
        Modulus of elasticity of the shank [N/mm²].
    diameter
        Diameter of the solid round shank [mm].

    Returns
    -------
    Deflection at the edge [mm].

    Notes
    -----
    δ = F L³ / (3 E I), I = π D⁴ / 64. The tool post is rigid here, so this is the least it
    can be; a flat on the shank takes more off its stiffness than off its size.

    References
    ----------
    [CTE].
    """
    return bar_deflection(
        force=force,
        distance=overhang,
        elastic_modulus=elastic_modulus,
        outer_diameter=diameter,
        inner_diameter=0.0,
    )


def force_for_boring_bar_deflection(
    *,
    deflection: Millimetres[Numeric],
    overhang: Millimetres[Numeric],
    elastic_modulus: NewtonsPerSquareMm[Numeric],
    diameter: Millimetres[Numeric],
) -> Newtons[Numeric]:
    """Return the force that bends a boring bar by so much.

    Parameters
    ----------
    deflection
        Deflection at the edge [mm].
    overhang
        From the tool post to the edge [mm], greater than 0.
    elastic_modulus
        Modulus of elasticity of the shank [N/mm²].
    diameter
        Diameter of the solid round shank [mm].

    Returns
    -------
    Force square to the bar [N].

    Notes
    -----
    F = 3 E I δ / L³. Same limits as `boring_bar_deflection`.

    References
    ----------
    Inverse of `boring_bar_deflection`.
    """
    return force_for_bar_deflection(
        deflection=deflection,
        distance=overhang,
        elastic_modulus=elastic_modulus,
        outer_diameter=diameter,
        inner_diameter=0.0,
    )


def overhang_ratio(*, overhang: Millimetres[Numeric], diameter: Millimetres[Numeric]) -> Numeric:
    """Return how far a boring bar sticks out, in diameters of its shank.

    Parameters
    ----------
    overhang
        From the tool post to the edge [mm].
    diameter
        Diameter of the shank [mm], greater than 0.

    Returns
    -------
    L / D.

    Notes
    -----
    Guides print a largest ratio by the material of the shank: beyond it bars chatter.

    References
    ----------
    [BBD], [FBR].
    """
    return overhang / diameter


def resultant_force(*, force: Newtons[Numeric], radial_share: Numeric) -> Newtons[Numeric]:
    """Return the force square to a boring bar or to the work, of main and radial force.

    Parameters
    ----------
    force
        Main cutting force [N].
    radial_share
        Radial force over main cutting force.

    Returns
    -------
    Force [N].

    Notes
    -----
    R = F √(1 + r²): the two act square to each other and both square to the axis.

    References
    ----------
    Geometry; [EIS] prints shares.
    """
    return force * np.hypot(1.0, radial_share)
