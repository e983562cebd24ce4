"""A drill's torque and thrust by two empirical forms in print, beside the one in `drilling`.

Both own their units: D is the number of millimetres, f of millimetres a turn. Each brings
its constant for the work material.
"""

from chartgen.quantities import (
    Millimetres,
    MillimetresPerRev,
    NewtonMetres,
    Newtons,
    Numeric,
    RevsPerMinute,
    Watts,
)


def handbook_thrust(
    *,
    work_factor: Numeric,
    feed: MillimetresPerRev[Numeric],
    diameter: Millimetres[Numeric],
    lip_factor: Numeric,
    web_factor: Numeric,
    wear_factor: Numeric,
) -> Newtons[Numeric]:
    """Return the thrust of a drill in the handbook's form.

    Parameters
    ----------
    work_factor
        Factor of the work material, Kd; the same number in the inch and the metric form.
    feed
        Feed [mm/rev].
    diameter
        Diameter of the drill [mm].
    lip_factor
        Factor of the chisel edge on the lips' thrust, B.
    web_factor
        Factor of the web's own thrust, J; 0 where a pilot hole is as wide as the web.
    wear_factor
        Factor of wear, W, 1 for a sharp drill.

    Returns
    -------
    Thrust [N].

    Notes
    -----
    T = 0.05 Kd f^0.8 D^0.8 B W + 0.007 Kd D² J W. The printed tables of the powers agree with
    the powers themselves but for one misprint (D 8.8 mm).

    References
    ----------
    [MH31] pp. 1152 to 1153.
    """
    lips = 0.05 * feed**0.8 * diameter**0.8 * lip_factor
    web = 0.007 * diameter**2 * web_factor
    return work_factor * wear_factor * (lips + web)


def handbook_torque(
    *,
    work_factor: Numeric,
    feed: MillimetresPerRev[Numeric],
    diameter: Millimetres[Numeric],
    chisel_factor: Numeric,
    wear_factor: Numeric,
) -> NewtonMetres[Numeric]:
    """Return the torque of a drill in the handbook's form.

    Parameters
    ----------
    work_factor
        Factor of the work material, Kd.
    feed
        Feed [mm/rev].
    diameter
        Diameter of the drill [mm].
    chisel_factor
        Factor of the chisel edge on the torque, A.
    wear_factor
        Factor of wear, W, 1 for a sharp drill.

    Returns
    -------
    Torque [N·m].

    Notes
    -----
    M = 0.000025 Kd f^0.8 D^1.8 A W.

    References
    ----------
    [MH31] pp. 1152 to 1153.
    """
    size = feed**0.8 * diameter**1.8
    return 0.000025 * work_factor * size * chisel_factor * wear_factor


def guide_thrust(
    *,
    material_factor: Numeric,
    feed: MillimetresPerRev[Numeric],
    diameter: Millimetres[Numeric],
) -> Newtons[Numeric]:
    """Return the thrust of a drill in the form of a tool maker's guide.

    Parameters
    ----------
    material_factor
        Factor of the work material, K, 1 for grey iron of 177 HB.
    feed
        Feed [mm/rev].
    diameter
        Diameter of the drill [mm].

    Returns
    -------
    Thrust [N], in the solid.

    Notes
    -----
    T = 570 K D f^0.85. A textbook prints the same law in kilograms-force.

    References
    ----------
    [TG-7]; [PCS] example 15.4.
    """
    return 570.0 * material_factor * diameter * feed**0.85


def guide_torque(
    *,
    material_factor: Numeric,
    feed: MillimetresPerRev[Numeric],
    diameter: Millimetres[Numeric],
) -> NewtonMetres[Numeric]:
    """Return the torque of a drill in the form of a tool maker's guide.

    Parameters
    ----------
    material_factor
        Factor of the work material, K, 1 for grey iron of 177 HB.
    feed
        Feed [mm/rev].
    diameter
        Diameter of the drill [mm].

    Returns
    -------
    Torque [N·m], in the solid.

    Notes
    -----
    M = K D² (0.630 + 16.84 f) / 100.

    References
    ----------
    [TG-7].
    """
    return material_factor * diameter**2 * (0.630 + 16.84 * feed) / 100.0


def guide_power(
    *,
    material_factor: Numeric,
    feed: MillimetresPerRev[Numeric],
    diameter: Millimetres[Numeric],
    spindle_speed: RevsPerMinute[Numeric],
) -> Watts[Numeric]:
    """Return the power of a drill in the form of a tool maker's guide.

    Parameters
    ----------
    material_factor
        Factor of the work material, K, 1 for grey iron of 177 HB.
    feed
        Feed [mm/rev].
    diameter
        Diameter of the drill [mm].
    spindle_speed
        Spindle speed [rev/min].

    Returns
    -------
    Power at the drill [W].

    Notes
    -----
    P = K D² n (0.647 + 17.29 f) / 1000. It is 2 % below what the guide's torque means; a
    textbook's constants lie 8 % above it.

    References
    ----------
    [TG-7]; [PCS] example 15.4.
    """
    size = material_factor * diameter**2 * spindle_speed
    return size * (0.647 + 17.29 * feed) / 1000.0
