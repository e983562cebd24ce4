"""The force on the edge, and what the spindle has to give for it.

A parting blade cuts square: the chip is as wide as the insert (b) and as thick as the
feed (h), both in mm. The power law is empirical and owns its units: h ** mc means the
number of millimetres, so the constants are kept as the tables print them.
"""

from chartgen.quantities import (
    CubicMmPerMinute,
    JoulesPerCubicMm,
    MetresPerMinute,
    Millimetres,
    MillimetresPerRev,
    NewtonMetres,
    Newtons,
    NewtonsPerSquareMm,
    Numeric,
    Watts,
)


def specific_cutting_force(
    *,
    feed: MillimetresPerRev[Numeric],
    specific_force: NewtonsPerSquareMm[Numeric],
    thickness_exponent: Numeric,
) -> NewtonsPerSquareMm[Numeric]:
    """Return the cutting force per unit area of chip at a given thickness.

    Parameters
    ----------
    feed
        Feed, equal to the chip thickness in a square cut [mm/rev], greater than 0.
    specific_force
        Force per unit area of a chip 1 mm thick, kc1.1 [N/mm²].
    thickness_exponent
        Fall of the specific force with thickness, mc, from 0 to 1.

    Returns
    -------
    Specific cutting force kc [N/mm²].

    Notes
    -----
    kc = kc1.1 h^-mc. The published pairs are fitted over about 0.1 to 1 mm; parting
    feeds lie below, so every value there is an extrapolation and wants a band.

    References
    ----------
    [TG-1], [TBM], [HSMD] use this form.
    """
    return specific_force * feed**-thickness_exponent


def cutting_force(
    *,
    width: Millimetres[Numeric],
    feed: MillimetresPerRev[Numeric],
    specific_force: NewtonsPerSquareMm[Numeric],
    thickness_exponent: Numeric,
) -> Newtons[Numeric]:
    """Return the main cutting force of a square cut.

    Parameters
    ----------
    width
        Insert width, or depth of cut in turning with the edge square to the feed [mm].
    feed
        Feed [mm/rev].
    specific_force
        kc1.1 [N/mm²].
    thickness_exponent
        mc, from 0 to 1.

    Returns
    -------
    Cutting force [N].

    Notes
    -----
    F = kc1.1 b h^(1 - mc), with no allowance for a confined chip or a worn edge.
    Same limits as `specific_cutting_force`.

    References
    ----------
    [HSMD] exercise 1 and [TG-1].
    """
    return specific_force * width * feed ** (1.0 - thickness_exponent)


def feed_for_force(
    *,
    force: Newtons[Numeric],
    width: Millimetres[Numeric],
    specific_force: NewtonsPerSquareMm[Numeric],
    thickness_exponent: Numeric,
) -> MillimetresPerRev[Numeric]:
    """Return the feed that brings the cutting force up to a given one.

    Parameters
    ----------
    force
        Force that may not be exceeded [N], 0 or more.
    width
        Insert width [mm].
    specific_force
        kc1.1, with any allowance multiplied in [N/mm²].
    thickness_exponent
        mc, from 0 up to but not including 1.

    Returns
    -------
    Feed [mm/rev].

    Notes
    -----
    The inverse of `cutting_force`: h = (F / (kc1.1 b))^(1 / (1 - mc)).

    References
    ----------
    Inverse of the power law in `cutting_force`.
    """
    return (force / (specific_force * width)) ** (1.0 / (1.0 - thickness_exponent))


def cutting_power(
    *, force: Newtons[Numeric], cutting_speed: MetresPerMinute[Numeric]
) -> Watts[Numeric]:
    """Return the power at the edge.

    Parameters
    ----------
    force
        Cutting force [N].
    cutting_speed
        Surface speed where it acts [m/min].

    Returns
    -------
    Power [W].

    Notes
    -----
    P = F v / 60.

    References
    ----------
    Definition of power; 60 s/min.
    """
    return force * cutting_speed / 60.0


def cutting_torque(
    *, force: Newtons[Numeric], diameter: Millimetres[Numeric]
) -> NewtonMetres[Numeric]:
    """Return the torque on the spindle.

    Parameters
    ----------
    force
        Cutting force [N].
    diameter
        Diameter where it acts [mm].

    Returns
    -------
    Torque [N·m]. In a solid cut it falls in a straight line to nothing at the centre.

    Notes
    -----
    T = F D / 2000.

    References
    ----------
    Definition of torque.
    """
    return force * diameter / 2000.0


def force_from_torque(
    *, torque: NewtonMetres[Numeric], diameter: Millimetres[Numeric]
) -> Newtons[Numeric]:
    """Return the cutting force that a spindle torque can hold at a diameter.

    Parameters
    ----------
    torque
        Spindle torque [N·m].
    diameter
        Diameter where the force acts [mm], greater than 0.

    Returns
    -------
    Cutting force [N].

    Notes
    -----
    F = 2000 T / D.

    References
    ----------
    Definition of torque.
    """
    return 2000.0 * torque / diameter


def force_from_unit_energy(
    *,
    width: Millimetres[Numeric],
    feed: MillimetresPerRev[Numeric],
    unit_energy: JoulesPerCubicMm[Numeric],
    size_factor: Numeric,
) -> Newtons[Numeric]:
    """Return the cutting force by the energy that a volume of chip takes.

    Parameters
    ----------
    width
        Insert width [mm].
    feed
        Feed [mm/rev].
    unit_energy
        Energy per volume of chip at the table's own chip thickness [J/mm³].
    size_factor
        Multiplier for the actual chip thickness: thin chips take more.

    Returns
    -------
    Cutting force [N].

    Notes
    -----
    F = 1000 U C b h, since 1 J/mm³ is 1000 N/mm².

    References
    ----------
    [GROO5] table 20.2 and fig. 20.14; [MH31] p. 1147 table 1b.
    """
    return 1000.0 * unit_energy * size_factor * width * feed


def power_from_unit_energy(
    *,
    removal_rate: CubicMmPerMinute[Numeric],
    unit_energy: JoulesPerCubicMm[Numeric],
) -> Watts[Numeric]:
    """Return the power at the edge by the energy that a volume of chip takes.

    Parameters
    ----------
    removal_rate
        Volume turned into chips [mm³/min].
    unit_energy
        Energy per volume, any size factor multiplied in [J/mm³].

    Returns
    -------
    Power [W].

    Notes
    -----
    P = U Q / 60.

    References
    ----------
    [GROO5] ch. 20.
    """
    return unit_energy * removal_rate / 60.0
