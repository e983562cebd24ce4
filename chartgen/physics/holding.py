"""How hard work must be held for a cut, and what cut a grip allows.

Forces are the sum over all jaws, gripping from outside; what the chuck gives is in `grip`.
Two notations are in print for the reserves; here the reserve on the cut is always inside
the grip that the cut needs.
"""

import numpy as np

from chartgen.quantities import (
    KilogramMetres,
    Millimetres,
    Newtons,
    Numeric,
    RevsPerMinute,
)

_RADIANS_PER_SECOND = np.pi / 30.0  # of one rev/min
_TILT_ARM = 0.75
"""Arm of the friction that resists tilting, as a share of the diameter held."""
_JAWS = 3.0


def grip_for_cut(
    *,
    cutting_force: Newtons[Numeric],
    friction: Numeric,
    cut_safety: Numeric,
    cut_diameter: Millimetres[Numeric],
    clamping_diameter: Millimetres[Numeric],
) -> Newtons[Numeric]:
    """Return the grip at speed that keeps a cut from turning the work in the jaws.

    Parameters
    ----------
    cutting_force
        Main cutting force [N].
    friction
        Friction coefficient between jaw and work, greater than 0.
    cut_safety
        Reserve on the cutting force, 1 for none.
    cut_diameter
        Diameter where the force acts [mm].
    clamping_diameter
        Diameter in the jaws [mm], greater than 0.

    Returns
    -------
    Grip [N].

    Notes
    -----
    F_spz = S F d / (μ d_sp), the balance of torques. It is greatest at first contact.
    Tilting is a case of its own: see `grip_against_tilt`.

    References
    ----------
    [RN-1391] p. 48, recovered from its worked example.
    """
    return cut_safety * cutting_force * cut_diameter / (friction * clamping_diameter)


def static_grip_for_cut(
    *,
    grip_for_cut: Newtons[Numeric],
    centrifugal_force: Newtons[Numeric],
    grip_safety: Numeric,
) -> Newtons[Numeric]:
    """Return the grip to set at standstill.

    Parameters
    ----------
    grip_for_cut
        Grip that the cut needs while turning, with its reserve [N].
    centrifugal_force
        Centrifugal force of the jaws at the speed of the cut [N].
    grip_safety
        Reserve on the grip, 1 for none.

    Returns
    -------
    Static grip [N], for an outside grip.

    Notes
    -----
    F0 = S_sp (F_spz + F_c).

    References
    ----------
    [RN-1391] p. 48.
    """
    return grip_safety * (grip_for_cut + centrifugal_force)


def permitted_speed(
    *,
    static_grip: Newtons[Numeric],
    grip_for_cut: Newtons[Numeric],
    jaw_moment: KilogramMetres[Numeric],
    grip_safety: Numeric,
) -> RevsPerMinute[Numeric]:
    """Return the fastest speed at which enough grip is left for a cut.

    Parameters
    ----------
    static_grip
        Grip at standstill [N].
    grip_for_cut
        Grip that the cut needs while turning, with its reserve [N].
    jaw_moment
        Mass times radius, summed over the jaws [kg·m], greater than 0.
    grip_safety
        Reserve on the grip, 1 for none.

    Returns
    -------
    Spindle speed [rev/min], 0 where the grip does not even do at standstill. The largest
    speed marked on the chuck holds besides.

    Notes
    -----
    n = 30/π √((F0 / S_sp - F_spz) / Σ(m r)). Where a page writes the bare force of the cut,
    its reserve stands beside it in the root.

    References
    ----------
    Inverse of `static_grip_for_cut`.
    """
    spare = np.maximum(0.0, static_grip / grip_safety - grip_for_cut)
    return np.sqrt(spare / jaw_moment) / _RADIANS_PER_SECOND


def largest_cutting_force(
    *,
    static_grip: Newtons[Numeric],
    centrifugal_force: Newtons[Numeric],
    friction: Numeric,
    grip_safety: Numeric,
    cut_safety: Numeric,
    cut_diameter: Millimetres[Numeric],
    clamping_diameter: Millimetres[Numeric],
) -> Newtons[Numeric]:
    """Return the cutting force beyond which the work may turn in the jaws.

    Parameters
    ----------
    static_grip
        Grip at standstill [N].
    centrifugal_force
        Centrifugal force of the jaws [N].
    friction
        Friction coefficient between jaw and work.
    grip_safety
        Reserve on the grip; 1.5 by the standards.
    cut_safety
        Reserve on the cutting force: 1.5 on a nominal force, 1.2 where the force is already
        the high side of a band of 25 %.
    cut_diameter
        Diameter where the force acts [mm], greater than 0.
    clamping_diameter
        Diameter in the jaws [mm].

    Returns
    -------
    Main cutting force [N], 0 where speed has taken the grip.

    Notes
    -----
    F = μ (F0 / S_sp - F_c) d_sp / (S_z d). Makers ask S_z of 2.0 to 4.8 by the kind of work.

    References
    ----------
    Inverse of `grip_for_cut` and `static_grip_for_cut`; reserves in [RN-1391] p. 46.
    """
    spare = np.maximum(0.0, static_grip / grip_safety - centrifugal_force)
    return friction * spare * clamping_diameter / (cut_safety * cut_diameter)


def grip_against_tilt(
    *,
    side_force: Newtons[Numeric],
    overhang: Millimetres[Numeric],
    clamping_diameter: Millimetres[Numeric],
    friction: Numeric,
    cut_safety: Numeric,
) -> Newtons[Numeric]:
    """Return the grip at speed that keeps a force from tilting overhung work out of the jaws.

    Parameters
    ----------
    side_force
        Force square to the axis: main and radial force together [N].
    overhang
        From the jaws to where it acts [mm].
    clamping_diameter
        Diameter in the jaws [mm], greater than 0.
    friction
        Friction coefficient between jaw and work, greater than 0.
    cut_safety
        Reserve on the force.

    Returns
    -------
    Grip [N].

    Notes
    -----
    F = 4 S P L / (μ D): one jaw of three holds back μ F / 3 on an arm of 0.75 D. For work
    that has no seat against the chuck and no tailstock.

    References
    ----------
    Derived; [CM14] p. 28 gives the balance and the arm, its equations were lost in the copy.
    """
    arm = _TILT_ARM * clamping_diameter
    return cut_safety * side_force * overhang * _JAWS / (friction * arm)


def largest_side_force(
    *,
    grip: Newtons[Numeric],
    overhang: Millimetres[Numeric],
    clamping_diameter: Millimetres[Numeric],
    friction: Numeric,
    cut_safety: Numeric,
) -> Newtons[Numeric]:
    """Return the side force beyond which overhung work may tilt out of the jaws.

    Parameters
    ----------
    grip
        Grip left at speed [N].
    overhang
        From the jaws to where the force acts [mm], greater than 0.
    clamping_diameter
        Diameter in the jaws [mm].
    friction
        Friction coefficient between jaw and work.
    cut_safety
        Reserve on the force, greater than 0.

    Returns
    -------
    Force square to the axis [N].

    Notes
    -----
    P = μ F D / (4 S L). Same limits as `grip_against_tilt`.

    References
    ----------
    Inverse of `grip_against_tilt`.
    """
    arm = _TILT_ARM * clamping_diameter
    return friction * grip * arm / (_JAWS * cut_safety * overhang)
