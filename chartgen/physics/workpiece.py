"""The bar in front of the jaws: how far the cut bends it, and when its core parts.

It is a round beam held in the jaws; a bored bar is counted with its bore all the way there.
"""

import numpy as np

from chartgen.quantities import (
    Millimetres,
    Newtons,
    NewtonsPerSquareMm,
    Numeric,
)

CENTRE_DEFLECTION_SHARE = 0.0294
"""Largest deflection under a load anywhere between jaws and centre, over that of the same load
at the end of the same bar without a centre: (1 - b)³ b² (3 + b) / 12 at its largest, b from the
centre, over 1/3. Beam theory."""
CENTRE_STRESS_SHARE = 0.1925
"""The same for the moment at the jaws: b (1 - b²) / 2 at its largest. Beam theory."""


def bar_deflection(
    *,
    force: Newtons[Numeric],
    distance: Millimetres[Numeric],
    elastic_modulus: NewtonsPerSquareMm[Numeric],
    outer_diameter: Millimetres[Numeric],
    inner_diameter: Millimetres[Numeric],
) -> Millimetres[Numeric]:
    """Return how far the bar gives way at the cut.

    Parameters
    ----------
    force
        Force square to the bar [N].
    distance
        From the jaws to the cut [mm].
    elastic_modulus
        Modulus of elasticity of the work [N/mm²].
    outer_diameter
        Diameter between jaws and cut [mm].
    inner_diameter
        Bore [mm], 0 for a solid bar.

    Returns
    -------
    Deflection at the cut [mm].

    Notes
    -----
    δ = 64 F L³ / (3 π E (d⁴ - b⁴)). The jaws are rigid here, so this is the least it can be.
    Bending only: shear, 0.54 (d / L)² of it in solid steel, is more than bending below
    L = 0.7 d, where both are small. In the slot itself the thinner core adds its own give.

    References
    ----------
    Beam theory.
    """
    stiffness = 3.0 * np.pi * elastic_modulus * (outer_diameter**4 - inner_diameter**4)
    return 64.0 * force * distance**3 / stiffness


def bar_stress(
    *,
    force: Newtons[Numeric],
    distance: Millimetres[Numeric],
    outer_diameter: Millimetres[Numeric],
    inner_diameter: Millimetres[Numeric],
) -> NewtonsPerSquareMm[Numeric]:
    """Return the bending stress of the bar at the jaws.

    Parameters
    ----------
    force
        Force square to the bar [N].
    distance
        From the jaws to the cut [mm].
    outer_diameter
        Diameter at the jaws [mm].
    inner_diameter
        Bore [mm], 0 for a solid bar.

    Returns
    -------
    Stress at the skin of the bar [N/mm²].

    Notes
    -----
    σ = 32 F L d / (π (d⁴ - b⁴)). Nominal: the bite of the jaws is not in it, nor twisting.

    References
    ----------
    Beam theory.
    """
    resistance = np.pi * (outer_diameter**4 - inner_diameter**4)
    return 32.0 * force * distance * outer_diameter / resistance


def force_for_bar_deflection(
    *,
    deflection: Millimetres[Numeric],
    distance: Millimetres[Numeric],
    elastic_modulus: NewtonsPerSquareMm[Numeric],
    outer_diameter: Millimetres[Numeric],
    inner_diameter: Millimetres[Numeric],
) -> Newtons[Numeric]:
    """Return the force that bends the bar by a given amount at the cut.

    Parameters
    ----------
    deflection
        Deflection that may not be exceeded [mm].
    distance, elastic_modulus, outer_diameter, inner_diameter
        As in `bar_deflection` [mm, N/mm²]; the distance greater than 0.

    Returns
    -------
    Force square to the bar [N].

    Notes
    -----
    The inverse of `bar_deflection`, which is in proportion to the force.

    References
    ----------
    Beam theory.
    """
    per_newton = bar_deflection(
        force=1.0,
        distance=distance,
        elastic_modulus=elastic_modulus,
        outer_diameter=outer_diameter,
        inner_diameter=inner_diameter,
    )
    return deflection / per_newton


def force_for_bar_stress(
    *,
    stress: NewtonsPerSquareMm[Numeric],
    distance: Millimetres[Numeric],
    outer_diameter: Millimetres[Numeric],
    inner_diameter: Millimetres[Numeric],
) -> Newtons[Numeric]:
    """Return the force that brings the stress at the jaws up to a given one.

    Parameters
    ----------
    stress
        Stress that may not be exceeded [N/mm²].
    distance, outer_diameter, inner_diameter
        As in `bar_stress` [mm]; the distance greater than 0.

    Returns
    -------
    Force square to the bar [N].

    Notes
    -----
    The inverse of `bar_stress`, which is in proportion to the force.

    References
    ----------
    Beam theory.
    """
    per_newton = bar_stress(
        force=1.0,
        distance=distance,
        outer_diameter=outer_diameter,
        inner_diameter=inner_diameter,
    )
    return stress / per_newton


def core_diameter_at_twist_off(
    *, force: Newtons[Numeric], tensile_strength: NewtonsPerSquareMm[Numeric]
) -> Millimetres[Numeric]:
    """Return the core of a solid cut that the cutting force can twist off.

    Parameters
    ----------
    force
        Cutting force while the core is that thin [N].
    tensile_strength
        Tensile strength of the work [N/mm²].

    Returns
    -------
    Diameter of the core, and of the pip it leaves [mm].

    Notes
    -----
    d = 2.71 √(F / R). At the skin of the core the force, acting at its radius, twists with
    16 (F d / 2) / (π d³) and shears with 4/3 of F / (π d² / 4); both add where the skin faces
    the edge: 40 F / (3 π d²). It parts when that reaches R / √3, the shear strength by
    distortion energy (0.6 R gives 2.66). Elastic up to breaking, so on the early side: by
    torsion alone it would hold down to 2.1 √(F / R), plastic all through to 1.8 √(F / R).
    A tool off centre or the weight of the part makes it part sooner.

    References
    ----------
    Derived: torsion and shear of a round bar.
    """
    diameter: Numeric = np.sqrt(40.0 * np.sqrt(3.0) / (3.0 * np.pi) * force / tensile_strength)
    return diameter


def core_diameter_at_bend_off(
    *,
    force: Newtons[Numeric],
    arm: Millimetres[Numeric],
    tensile_strength: NewtonsPerSquareMm[Numeric],
) -> Millimetres[Numeric]:
    """Return the core of a solid cut that the cutting force can bend off.

    Parameters
    ----------
    force
        Force square to the bar while the core is that thin [N].
    arm
        From where the force acts to the wall of the slot it bends the core at [mm]: half
        the width of the slot for the cutting force.
    tensile_strength
        Tensile strength of the work [N/mm²].

    Returns
    -------
    Diameter of the core [mm]; the larger of this and the one that twists off is the pip.

    Notes
    -----
    d = (32 F a / (π R))^(1/3): bending alone reaches the tensile strength at the skin.

    References
    ----------
    Derived: bending of a round bar.
    """
    diameter: Numeric = np.cbrt(32.0 * force * arm / (np.pi * tensile_strength))
    return diameter
