"""What turns as a flywheel: its energy, and how far it carries a cut that is too heavy."""

import numpy as np

from chartgen.quantities import (
    FloatArray,
    GramsPerCubicCm,
    Joules,
    Kilograms,
    KilogramSquareMetres,
    Millimetres,
    NewtonMetres,
    Numeric,
    RevsPerMinute,
    Seconds,
    Turns,
)

_RADIANS_PER_SECOND = np.pi / 30.0  # of one rev/min
_SQUARE_METRES = 1e-6  # of one mm²
_KILOGRAMS_PER_CUBIC_MM = 1e-6  # of one g/cm³


def ring_mass(
    *,
    outer_diameter: Millimetres[Numeric],
    inner_diameter: Millimetres[Numeric],
    length: Millimetres[Numeric],
    density: GramsPerCubicCm[Numeric],
) -> Kilograms[Numeric]:
    """Return the mass of a bar or a tube.

    Parameters
    ----------
    outer_diameter
        Outer diameter [mm].
    inner_diameter
        Bore, 0 for a solid bar [mm].
    length
        Length [mm].
    density
        Density [g/cm³].

    Returns
    -------
    Mass [kg].

    Notes
    -----
    m = ρ L π (D² - d²) / 4.

    References
    ----------
    Definition of density.
    """
    area = np.pi / 4.0 * (outer_diameter**2 - inner_diameter**2)
    return _KILOGRAMS_PER_CUBIC_MM * density * area * length


def ring_inertia(
    *,
    mass: Kilograms[Numeric],
    outer_diameter: Millimetres[Numeric],
    inner_diameter: Millimetres[Numeric],
) -> KilogramSquareMetres[Numeric]:
    """Return the moment of inertia of a ring, a tube or a solid bar about its axis.

    Parameters
    ----------
    mass
        Mass [kg].
    outer_diameter
        Outer diameter [mm].
    inner_diameter
        Bore, 0 for a solid one [mm].

    Returns
    -------
    Moment of inertia [kg·m²].

    Notes
    -----
    J = m (r_o² + r_i²) / 2. A chuck is no even ring: its hollow body makes this a little low.

    References
    ----------
    Textbook mechanics.
    """
    radii_squared = (outer_diameter**2 + inner_diameter**2) / 4.0
    return 0.5 * mass * radii_squared * _SQUARE_METRES


def referred_inertia(
    *, rotor_inertia: KilogramSquareMetres[Numeric], speed_ratio: Numeric
) -> KilogramSquareMetres[Numeric]:
    """Return what the rotor of the motor counts for at the spindle.

    Parameters
    ----------
    rotor_inertia
        Moment of inertia of the rotor and what turns with it [kg·m²].
    speed_ratio
        Motor speed over spindle speed.

    Returns
    -------
    Moment of inertia at the spindle [kg·m²].

    Notes
    -----
    J = J_m i²: in a slow gear the rotor outweighs the chuck. Holds while no belt slips.

    References
    ----------
    Textbook mechanics: equal energy.
    """
    return rotor_inertia * speed_ratio**2


def rotational_energy(
    *, inertia: KilogramSquareMetres[Numeric], spindle_speed: RevsPerMinute[Numeric]
) -> Joules[Numeric]:
    """Return the energy in what turns.

    Parameters
    ----------
    inertia
        All moments of inertia, referred to the spindle [kg·m²].
    spindle_speed
        Spindle speed [rev/min].

    Returns
    -------
    Energy [J].

    Notes
    -----
    E = J ω² / 2.

    References
    ----------
    Textbook mechanics.
    """
    return 0.5 * inertia * (_RADIANS_PER_SECOND * spindle_speed) ** 2


def stopping_time(
    *,
    inertia: KilogramSquareMetres[Numeric],
    spindle_speed: RevsPerMinute[Numeric],
    torque_deficit: NewtonMetres[Numeric],
) -> Seconds[Numeric]:
    """Return how long a constant lack of torque takes to stop the spindle.

    Parameters
    ----------
    inertia
        All moments of inertia, referred to the spindle [kg·m²].
    spindle_speed
        Spindle speed [rev/min].
    torque_deficit
        Torque of the cut less torque of the drive [N·m].

    Returns
    -------
    Time [s], infinite where the drive holds the cut.

    Notes
    -----
    t = J ω / (T_cut - T_drive).

    References
    ----------
    Textbook mechanics.
    """
    lacking = np.asarray(torque_deficit, dtype=np.float64)
    momentum = inertia * _RADIANS_PER_SECOND * np.asarray(spindle_speed, dtype=np.float64)
    return _quotient_where_positive(momentum, lacking)


def turns_to_stop(
    *,
    inertia: KilogramSquareMetres[Numeric],
    spindle_speed: RevsPerMinute[Numeric],
    cut_torque: NewtonMetres[Numeric],
    drive_torque: NewtonMetres[Numeric],
) -> Turns[Numeric]:
    """Return how far the spindle turns while a cut that is too heavy stops it.

    Parameters
    ----------
    inertia
        All moments of inertia, referred to the spindle [kg·m²].
    spindle_speed
        Spindle speed [rev/min].
    cut_torque
        Torque that the cut takes [N·m].
    drive_torque
        Torque that the drive gives until it stops [N·m]; 0 for the turns that the flywheel
        alone carries.

    Returns
    -------
    Turns [rev], infinite where the drive holds the cut.

    Notes
    -----
    θ = J ω² / (2 (T_cut - T_drive)), over 2π. Both torques are taken as constant.

    References
    ----------
    Textbook mechanics: the energy goes into the work of the lacking torque.
    """
    lacking = np.asarray(cut_torque, dtype=np.float64) - drive_torque
    energy = rotational_energy(inertia=inertia, spindle_speed=spindle_speed)
    return _quotient_where_positive(energy, 2.0 * np.pi * lacking)


def stopping_torque(
    *,
    inertia: KilogramSquareMetres[Numeric],
    spindle_speed: RevsPerMinute[Numeric],
    drive_torque: NewtonMetres[Numeric],
    turns: Turns[Numeric],
) -> NewtonMetres[Numeric]:
    """Return the torque of a cut that stops the spindle within a number of turns.

    Parameters
    ----------
    inertia
        All moments of inertia, referred to the spindle [kg·m²].
    spindle_speed
        Spindle speed [rev/min].
    drive_torque
        Torque that the drive gives until it stops [N·m].
    turns
        Turns until it stops [rev], greater than 0.

    Returns
    -------
    Torque [N·m].

    Notes
    -----
    T = T_drive + J ω² / (4 π N).

    References
    ----------
    Inverse of `turns_to_stop`.
    """
    energy = rotational_energy(inertia=inertia, spindle_speed=spindle_speed)
    return drive_torque + energy / (2.0 * np.pi * turns)


def _quotient_where_positive(dividend: Numeric, divisor: FloatArray) -> Numeric:
    """Return the quotient, infinite where the divisor is 0 or less."""
    holds = divisor <= 0.0
    return np.where(holds, np.inf, dividend / np.where(holds, 1.0, divisor))
