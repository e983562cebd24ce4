"""What turning takes off and what it leaves: volume, mass, roughness."""

import numpy as np

from chartgen.quantities import (
    CubicMm,
    GramsPerCubicCm,
    Kilograms,
    Micrometres,
    Millimetres,
    MillimetresPerRev,
    Numeric,
)


def ring_volume(
    *,
    outer_diameter: Millimetres[Numeric],
    inner_diameter: Millimetres[Numeric],
    length: Millimetres[Numeric],
) -> CubicMm[Numeric]:
    """Return the volume between two diameters.

    Parameters
    ----------
    outer_diameter
        Diameter outside [mm].
    inner_diameter
        Diameter inside [mm], 0 for a solid.
    length
        Length along the axis [mm].

    Returns
    -------
    Volume [mm³].

    Notes
    -----
    V = π (D² - d²) L / 4.

    References
    ----------
    Geometry.
    """
    return np.pi / 4.0 * (outer_diameter**2 - inner_diameter**2) * length


def mass(*, volume: CubicMm[Numeric], density: GramsPerCubicCm[Numeric]) -> Kilograms[Numeric]:
    """Return the mass of a volume.

    Parameters
    ----------
    volume
        Volume [mm³].
    density
        Density [g/cm³].

    Returns
    -------
    Mass [kg].

    Notes
    -----
    m = V ρ / 10⁶.

    References
    ----------
    Definition of density.
    """
    return volume * density / 1e6


def theoretical_roughness(
    *, feed: MillimetresPerRev[Numeric], nose_radius: Millimetres[Numeric]
) -> Micrometres[Numeric]:
    """Return how deep the groove of the feed is in a turned surface.

    Parameters
    ----------
    feed
        Feed [mm/rev], less than the nose radius.
    nose_radius
        Radius of the tool's nose [mm], greater than 0.

    Returns
    -------
    Depth of roughness Rz [µm]: the least there can be. Rubbing, a built-up edge and chatter
    make real surfaces rougher, at small feeds many times so.

    Notes
    -----
    Rz = 1000 f² / (8 r).

    References
    ----------
    [HSMD] exercise 3.
    """
    return 1000.0 * feed**2 / (8.0 * nose_radius)


def feed_for_roughness(
    *, roughness: Micrometres[Numeric], nose_radius: Millimetres[Numeric]
) -> MillimetresPerRev[Numeric]:
    """Return the feed that leaves no deeper groove than wanted.

    Parameters
    ----------
    roughness
        Depth of roughness Rz [µm].
    nose_radius
        Radius of the tool's nose [mm].

    Returns
    -------
    Feed [mm/rev].

    Notes
    -----
    f = √(8 Rz r). Same limits as `theoretical_roughness`.

    References
    ----------
    [HSMD] exercise 3.
    """
    return np.sqrt(8.0 * roughness / 1000.0 * nose_radius)
