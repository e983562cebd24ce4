"""How hard the jaws hold: what the key gives and what speed takes away.

Forces are the sum over all jaws, gripping from outside; what a cut needs is in `holding`.
Collets and clamping heads: their segments are light, so that speed takes little (practice);
their friction and largest forces are data, and no table of holding torque was found.
"""

import numpy as np

from chartgen.quantities import (
    Fraction,
    KilogramMetres,
    NewtonMetres,
    Newtons,
    Numeric,
    RevsPerMinute,
)

_RADIANS_PER_SECOND = np.pi / 30.0  # of one rev/min


def centrifugal_force(
    *, jaw_moment: KilogramMetres[Numeric], spindle_speed: RevsPerMinute[Numeric]
) -> Newtons[Numeric]:
    """Return the force that speed takes from an outside grip.

    Parameters
    ----------
    jaw_moment
        Mass times radius of its centre, summed over the jaws [kg·m].
    spindle_speed
        Spindle speed [rev/min].

    Returns
    -------
    Centrifugal force of all jaws [N].

    Notes
    -----
    F = Σ(m r) (π n / 30)². The chuck body is taken as stiff.

    References
    ----------
    [RN-1391] pp. 45 to 48, the practice of VDI 3106.
    """
    return jaw_moment * (_RADIANS_PER_SECOND * spindle_speed) ** 2


def jaw_moment_from_loss(
    *,
    static_grip: Newtons[Numeric],
    lost_share: Fraction[Numeric],
    spindle_speed: RevsPerMinute[Numeric],
) -> KilogramMetres[Numeric]:
    """Return the jaw moment of a chuck that loses a stated share of its grip at a speed.

    Parameters
    ----------
    static_grip
        Grip at standstill, by the table of the chuck [N].
    lost_share
        Share of it that is gone at that speed, from 0 to 1.
    spindle_speed
        The speed, usually the largest one of the table [rev/min], greater than 0.

    Returns
    -------
    Mass times radius, summed over the jaws [kg·m].

    Notes
    -----
    Σ(m r) = s F0 / (π n / 30)². As the loss at the largest speed is *at most* the stated
    share, this is the largest moment the jaws can have: on the safe side at every speed. The
    speed of a cast-iron body may be held down by the body, which makes it safer still.

    References
    ----------
    Inverse of `centrifugal_force`; the share of one half is from [CHUCK-2757180].
    """
    return lost_share * static_grip / (_RADIANS_PER_SECOND * spindle_speed) ** 2


def grip_from_key_torque(
    *, key_torque: NewtonMetres[Numeric], grip_per_torque: Numeric
) -> Newtons[Numeric]:
    """Return the grip at standstill that a torque on the chuck key gives.

    Parameters
    ----------
    key_torque
        Torque on the key [N·m].
    grip_per_torque
        Grip for each newton metre of it [N per N·m].

    Returns
    -------
    Static grip [N].

    Notes
    -----
    F0 = q T. Makers' tables give q from 230 to 340 for a greased scroll; a dry or dirty one
    can lose half (memory). Not valid beyond the key torque of the table.

    References
    ----------
    Derived from [CHUCK-2757180] p. 43.
    """
    return grip_per_torque * key_torque


def grip_at_speed(
    *, static_grip: Newtons[Numeric], centrifugal_force: Newtons[Numeric]
) -> Newtons[Numeric]:
    """Return what is left of an outside grip while the chuck turns.

    Parameters
    ----------
    static_grip
        Grip at standstill [N].
    centrifugal_force
        Centrifugal force of the jaws [N].

    Returns
    -------
    Grip [N], 0 where speed has taken all of it.

    Notes
    -----
    F = max(0, F0 - F_c). A grip from inside gains F_c instead.

    References
    ----------
    [RN-1391] pp. 45 to 48.
    """
    return np.maximum(0.0, static_grip - centrifugal_force)
