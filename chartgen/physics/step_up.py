"""Stepping the spindle up on the way to the centre, and the time that it saves."""

from dataclasses import dataclass

import numpy as np

from chartgen.physics.kinematics import cutting_speed as surface_speed
from chartgen.physics.time import plunge_time, plunge_time_at_constant_cutting_speed
from chartgen.quantities import (
    FloatArray,
    MetresPerMinute,
    Millimetres,
    MillimetresPerRev,
    Minutes,
    Numeric,
    RevsPerMinute,
    frozen_array,
)


def _diameter_where(
    cutting_speed: MetresPerMinute[Numeric], spindle_speed: RevsPerMinute[Numeric]
) -> Millimetres[Numeric]:
    """Return the diameter where a spindle speed gives a surface speed [mm]."""
    return 1000.0 * cutting_speed / (np.pi * spindle_speed)


@dataclass(frozen=True, slots=True, kw_only=True)
class StepUpPlan:
    """The spindle speeds of one cut in turn, and the diameters between which each holds.

    The first step starts at the outer diameter and the last ends at the inner one; each other
    step starts where the one before it ends, which is where the lathe is changed up.
    """

    spindle_speeds: RevsPerMinute[FloatArray]
    start_diameters: Millimetres[FloatArray]
    end_diameters: Millimetres[FloatArray]


def step_up_plan(
    *,
    outer_diameter: Millimetres[float],
    inner_diameter: Millimetres[float],
    start: RevsPerMinute[float],
    speeds: RevsPerMinute[FloatArray],
    top: RevsPerMinute[float],
    floor_speed: MetresPerMinute[float],
    ceiling_speed: MetresPerMinute[float],
) -> StepUpPlan:
    """Return where to change up so that the surface speed stays in a band longest.

    Parameters
    ----------
    outer_diameter
        Where the cut starts [mm], greater than 0.
    inner_diameter
        Where it ends: 0 at the centre, or the bore [mm].
    start
        Spindle speed at the start [rev/min].
    speeds
        Speeds that the lathe can be set to, rising [rev/min]. Those up to the start are passed
        over, so that a lathe of one speed gets a plan of one step.
    top
        Lowest of the caps on spindle speed: machine, chuck, grip [rev/min].
    floor_speed
        Surface speed that no step should fall under [m/min], greater than 0.
    ceiling_speed
        Surface speed above which no step after the first may begin [m/min].

    Returns
    -------
    The plan, with as few changes as the band allows.

    Notes
    -----
    Each speed is kept until the surface speed falls to the floor. Then the fastest one under
    the ceiling is taken; where all faster ones are still above it, the next one is taken as
    soon as it comes under the ceiling, and between the two the cut is below the floor.
    A start below the floor is changed up at the outer diameter if any speed fits there.

    With the surface speed of the start for a ceiling no step takes more power than the start,
    nor more torque, at one feed: what the drive holds at the start it then holds all the way
    in, if its power does not fall with speed.

    References
    ----------
    Derived from the definition of surface speed.
    """
    faster = speeds[(speeds > start) & (speeds <= top)]
    # Where each of them comes under the ceiling, and so may be taken from: falling.
    allowed_from = np.asarray(_diameter_where(ceiling_speed, faster))
    taken, taken_at = [start], [outer_diameter]
    while faster.size:
        wanted = min(float(_diameter_where(floor_speed, taken[-1])), taken_at[-1])
        fitting = int(np.count_nonzero(allowed_from >= wanted))
        step = max(fitting - 1, 0)
        change = min(wanted, float(allowed_from[step]))
        if change <= inner_diameter:
            break
        if change < taken_at[-1]:
            taken.append(float(faster[step]))
            taken_at.append(change)
        else:
            taken[-1] = float(faster[step])
        faster, allowed_from = faster[step + 1 :], allowed_from[step + 1 :]
    return StepUpPlan(
        spindle_speeds=frozen_array(taken),
        start_diameters=frozen_array(taken_at),
        end_diameters=frozen_array([*taken_at[1:], inner_diameter]),
    )


def plan_time(*, plan: StepUpPlan, feed: MillimetresPerRev[Numeric]) -> Minutes[Numeric]:
    """Return the time of a cut that follows a plan, without the time of changing up.

    Parameters
    ----------
    plan
        Speeds and diameters.
    feed
        Feed [mm/rev], greater than 0.

    Returns
    -------
    Time [min], in the shape of the feed.

    Notes
    -----
    The sum of the steps, each at constant spindle speed.

    References
    ----------
    `plunge_time`, [TG-6] 2021-22 p. 1069.
    """
    at_feed_of_1 = plunge_time(
        outer_diameter=plan.start_diameters,
        inner_diameter=plan.end_diameters,
        feed=1.0,
        spindle_speed=plan.spindle_speeds,
    )
    return np.sum(at_feed_of_1) / feed


def shortest_plunge_time(
    *,
    outer_diameter: Millimetres[Numeric],
    inner_diameter: Millimetres[Numeric],
    feed: MillimetresPerRev[Numeric],
    cutting_speed: MetresPerMinute[Numeric],
    top: RevsPerMinute[Numeric],
) -> Minutes[Numeric]:
    """Return the time of a cut whose spindle holds the surface speed until it can no more.

    Parameters
    ----------
    outer_diameter
        Where the cut starts [mm].
    inner_diameter
        Where it ends: 0 at the centre, or the bore [mm].
    feed
        Feed [mm/rev], greater than 0.
    cutting_speed
        Surface speed held [m/min].
    top
        Spindle speed at which it stays from there on [rev/min].

    Returns
    -------
    Time [min]: less than any plan takes that keeps under this surface speed and this top.

    Notes
    -----
    Constant surface speed down to d = 1000 v / (π n_top), constant spindle speed below.

    References
    ----------
    [TG-6] 2021-22 p. 1069 for the two parts.
    """
    reached = np.clip(_diameter_where(cutting_speed, top), inner_diameter, outer_diameter)
    rising = plunge_time_at_constant_cutting_speed(
        outer_diameter=outer_diameter,
        inner_diameter=reached,
        feed=feed,
        cutting_speed=cutting_speed,
    )
    level = plunge_time(
        outer_diameter=reached, inner_diameter=inner_diameter, feed=feed, spindle_speed=top
    )
    return rising + level


def slowest_surface_speeds(*, plan: StepUpPlan) -> MetresPerMinute[FloatArray]:
    """Return the surface speed to which each step of a plan falls.

    Parameters
    ----------
    plan
        Speeds and diameters.

    Returns
    -------
    Surface speeds at the end of the steps [m/min]; the last is 0 at the centre.

    Notes
    -----
    v = π d n / 1000.

    References
    ----------
    Definition of surface speed.
    """
    speeds = surface_speed(spindle_speed=plan.spindle_speeds, diameter=plan.end_diameters)
    return np.asarray(speeds)
