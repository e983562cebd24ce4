"""What a motor can give: torque as a multiple of its rated torque, over speed.

Speeds are given as x = n / n_base, the multiple of the plate speed, so that one curve
serves every belt position. Three durations matter to a parting cut: *continuous*, *one
cut* (minutes, then rest) and *stall* (the most it gives before it stops).
"""

import numpy as np

from chartgen.quantities import NewtonMetres, Numeric, RevsPerMinute, Watts

SECONDS_PER_MINUTE = 60.0


def torque_from_power(
    *, power: Watts[Numeric], speed: RevsPerMinute[Numeric]
) -> NewtonMetres[Numeric]:
    """Return the torque of a shaft that gives a power at a speed.

    Parameters
    ----------
    power
        Shaft power [W].
    speed
        Shaft speed [rev/min], greater than 0.

    Returns
    -------
    Torque [N·m].

    Notes
    -----
    T = 60 P / (2 π n); handbooks round it to 9550 P[kW] / n.

    References
    ----------
    Definition of power.
    """
    return SECONDS_PER_MINUTE * power / (2.0 * np.pi * speed)


def power_from_torque(
    *, torque: NewtonMetres[Numeric], speed: RevsPerMinute[Numeric]
) -> Watts[Numeric]:
    """Return the power of a shaft that turns against a torque.

    Parameters
    ----------
    torque
        Torque [N·m].
    speed
        Shaft speed [rev/min].

    Returns
    -------
    Power [W].

    Notes
    -----
    P = 2 π n T / 60.

    References
    ----------
    Definition of power.
    """
    return torque * 2.0 * np.pi * speed / SECONDS_PER_MINUTE


def inverter_torque_ratio(
    *, speed_ratio: Numeric, hold_ratio: Numeric, breakdown_ratio: Numeric, pull_out_share: Numeric
) -> Numeric:
    """Return the torque of an induction motor on an inverter, as a share of rated torque.

    Parameters
    ----------
    speed_ratio
        Motor speed over base speed, greater than 0.
    hold_ratio
        What the drive and motor hold up to base speed: 1 for ever, its overload for one cut.
    breakdown_ratio
        Breakdown torque over rated torque at base speed.
    pull_out_share
        How much of the breakdown torque may be used; 1 for the stall itself.

    Returns
    -------
    Torque over rated torque.

    Notes
    -----
    Up to base speed min(k, s b). Above it volts no longer rise: min(k / x, s b / x²),
    constant power until the shrinking breakdown torque takes over.

    References
    ----------
    [MMP] (constant power above base speed); breakdown falling as 1/x² is the textbook
    form, with T proportional to volts squared [ALT].
    """
    over = np.maximum(1.0, speed_ratio)
    return np.minimum(hold_ratio / over, pull_out_share * breakdown_ratio / over**2)


def direct_current_torque_ratio(
    *, speed_ratio: Numeric, hold_ratio: Numeric, no_load_ratio: Numeric
) -> Numeric:
    """Return the torque of a brushed DC motor on a controller, as a share of rated torque.

    Parameters
    ----------
    speed_ratio
        Motor speed over base (plate) speed.
    hold_ratio
        Current limit of the case, as a share of rated torque.
    no_load_ratio
        No-load speed at full volts over base speed, greater than 1.

    Returns
    -------
    Torque over rated torque: constant up to the line that full volts allow, then down
    that line to nothing at the no-load speed.

    Notes
    -----
    The line T = T_stall (1 - n / n0) goes through rated torque at base speed, so the share
    at x is (x0 - x) / (x0 - 1).

    References
    ----------
    [MIT-M] motor page (straight line between stall and no-load).
    """
    voltage_line = (no_load_ratio - speed_ratio) / (no_load_ratio - 1.0)
    return np.maximum(0.0, np.minimum(hold_ratio, voltage_line))


def brushless_torque_ratio(
    *, speed_ratio: Numeric, hold_ratio: Numeric, top_ratio: Numeric, straight_fall: bool
) -> Numeric:
    """Return the torque of a brushless motor and its drive, as a share of rated torque.

    Parameters
    ----------
    speed_ratio
        Motor speed over base speed, greater than 0.
    hold_ratio
        Share of rated torque the drive gives up to base speed.
    top_ratio
        Top speed over base speed, where a straight fall ends; greater than 1 if it falls.
    straight_fall
        True where torque falls in a straight line from base speed to nothing at the top,
        False where the drive weakens the field and holds constant power.

    Returns
    -------
    Torque over rated torque.

    Notes
    -----
    Constant to base speed, then k / x or k (x_top - x) / (x_top - 1).

    References
    ----------
    [EQA-58600], qualitative; the two shapes are a model derived from it.
    """
    over = np.maximum(1.0, speed_ratio)
    if straight_fall:
        span = np.maximum(top_ratio - 1.0, 1e-9)
        return hold_ratio * np.clip((top_ratio - over) / span, 0.0, 1.0)
    return hold_ratio / over


def measured_torque(
    *,
    speed: RevsPerMinute[Numeric],
    measured_speeds: RevsPerMinute[Numeric],
    measured_torques: NewtonMetres[Numeric],
) -> NewtonMetres[Numeric]:
    """Return the torque between the owner's readings.

    Parameters
    ----------
    speed
        Spindle speed [rev/min], inside the span of the readings.
    measured_speeds
        Spindle speeds of the readings, rising [rev/min].
    measured_torques
        Spindle torques of the readings [N·m].

    Returns
    -------
    Spindle torque [N·m], in a straight line between readings.

    Notes
    -----
    Nothing is assumed outside the readings: the described range has to lie inside them.

    References
    ----------
    Linear interpolation; the owner's readings.
    """
    return np.interp(speed, measured_speeds, measured_torques)


def synchronous_speed(*, rated_speed: RevsPerMinute[float]) -> RevsPerMinute[float]:
    """Return the speed at which an induction motor on the line would carry no load at all.

    Parameters
    ----------
    rated_speed
        Speed on the motor's plate [rev/min], for two to eight poles at 50 or 60 Hz.

    Returns
    -------
    Synchronous speed [rev/min], the next one above the plate's.

    Notes
    -----
    120 f / p, with p = 2, 4, 6, 8 poles and f = 50 or 60 Hz. A plate that states one of these
    speeds itself has no slip to go by; it is taken as the speed above.

    References
    ----------
    Definition of synchronous speed; [ALT].
    """
    speeds = sorted({120.0 * hertz / poles for hertz in (50.0, 60.0) for poles in (2, 4, 6, 8)})
    above = [speed for speed in speeds if speed > rated_speed]
    if not above:
        raise ValueError(f"no line motor runs at {rated_speed:g} rpm")
    return above[0]


def torque_ratio_from_droop(
    *,
    droop: RevsPerMinute[Numeric],
    no_load_speed: RevsPerMinute[Numeric],
    rated_speed: RevsPerMinute[Numeric],
) -> Numeric:
    """Return the torque that lets a motor fall behind, as a share of its rated torque.

    Parameters
    ----------
    droop
        How far the motor falls behind when the torque comes on [rev/min].
    no_load_speed
        Motor speed without any load: synchronous speed, or a brushed motor's at full
        volts [rev/min].
    rated_speed
        Motor speed at rated torque [rev/min], below `no_load_speed`.

    Returns
    -------
    Added torque over rated torque.

    Notes
    -----
    Between no load and rated torque both motors follow a straight line, so a droop from any
    point on it tells the added torque: d / (n0 - nN). An induction motor leaves the line
    well above rated torque, a brushed one at its controller's current limit.

    References
    ----------
    [ALT] (torque proportional to slip); [MIT-M] (straight line of a DC motor).
    """
    return droop / (no_load_speed - rated_speed)
