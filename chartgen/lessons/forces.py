"""Exercises of force: the force itself, the power it takes, whether this motor pulls it."""

import numpy as np

from chartgen.lessons.cells import Cells
from chartgen.lessons.choices import Choices, choices
from chartgen.lessons.class_units import COUNT
from chartgen.lessons.exercise import Exercise, Given, Working
from chartgen.lessons.kinds import Kind, Slip
from chartgen.lessons.place import Place
from chartgen.limits.spindle import Duration
from chartgen.physics.cutting import cutting_force as force_of
from chartgen.physics.cutting import cutting_power as power_of
from chartgen.physics.cutting import cutting_torque
from chartgen.physics.kinematics import cutting_speed as surface_speed_of
from chartgen.quantities import N_M, N_MM2, NEWTON, RPM, WATT, FloatArray

YES, NO = "yes", "no"
_FINE, _COARSE, _FINE_UP_TO = 5.0, 10.0, 300.0
_CLEAR = 1.15
"""A motor that just pulls, or just does not, is no question for a pencil."""
_SLACK, _EXCESS = 4.0, 1.9
"""Nor is one that idles; and a stall is to be such that halving the torque hides it."""


def round_force(force: FloatArray) -> FloatArray:
    """Return forces as a question prints them: to 10 N, small ones to 5 N."""
    step = np.where(force < _FINE_UP_TO, _FINE, _COARSE)
    return np.asarray(np.rint(force / step) * step)


def _high_share(cells: Cells, feed: FloatArray) -> FloatArray:
    """Return the high side of the force over the expected one; 1 without force data."""
    force = cells.force(feed)
    share = cells.force_high(feed) / np.where(force > 0.0, force, 1.0)
    return np.asarray(np.where(force > 0.0, np.round(share, 3), 1.0), dtype=np.float64)


def cutting_force_choices(cells: Cells) -> Choices:
    """Return widths and feeds inside windows, with the force per area at that feed."""
    units, grid, feed = cells.units, cells.windows.grid, cells.feeds
    per_area = cells.force(feed) / (grid.width * feed * units.mm)
    return choices(
        {
            "width": np.round(grid.width / units.mm, units.length_decimals),
            "feed": feed,
            "force_per_area": np.rint(per_area / 10.0) * 10.0,
            "high_share": _high_share(cells, feed),
        },
        material=cells.material,
        blade=cells.blade,
        where=cells.is_inside(feed) & grid.has_force,
        printed=3,
    )


def cutting_force(
    place: Place, *, width: float, feed: float, force_per_area: float, high_share: float = 1.0
) -> Exercise:
    """Ask for the cutting force; `high_share` is the high side of its band over the expected."""
    units = place.units
    givens = (
        place.length("width", width),
        place.feed(feed),
        Given(key="force-per-area", value=force_per_area, unit=N_MM2),
    )
    force = float(
        force_of(
            width=width * units.mm,
            feed=feed * units.mm,
            specific_force=force_per_area,
            thickness_exponent=0.0,
        )
    )
    inch = 25.4**2 if units.mm == 1.0 else 1.0 / 25.4**2
    return place.numeric(
        Kind.CUTTING_FORCE,
        givens=givens,
        value=force,
        unit=NEWTON,
        slips=[
            (Slip.HIGH_FOR_EXPECTED, force * high_share),
            (Slip.FACTOR_TEN, 10.0 * force),
            (Slip.INCH_FOR_MILLIMETRE, force * inch),
        ],
        working=(Working(key="cutting-force", values=givens, result=force, unit=NEWTON),),
    )


def cutting_power_choices(cells: Cells) -> Choices:
    """Return forces and true surface speeds of cuts inside their windows."""
    units, grid, feed = cells.units, cells.windows.grid, cells.feeds
    surface = surface_speed_of(spindle_speed=cells.speed, diameter=grid.diameter)
    force = cells.force(feed)
    return choices(
        {
            "force": round_force(force),
            "surface_speed": np.rint(np.asarray(surface) / units.metres),
            "high_share": _high_share(cells, feed),
        },
        material=cells.material,
        blade=cells.blade,
        where=cells.is_inside(feed) & grid.has_force & (force > _COARSE),
        printed=2,
    )


def power_parts(
    place: Place, force: float, surface_speed: float
) -> tuple[tuple[Given, ...], float, Working]:
    """Return what a question of power gives, the power, and the line that works it out."""
    givens = (
        Given(key="force", value=force, unit=NEWTON),
        place.surface_speed(surface_speed),
    )
    power = float(power_of(force=force, cutting_speed=surface_speed * place.units.metres))
    line = Working(key="cutting-power", values=givens, result=power, unit=WATT)
    return givens, power, line


def cutting_power(
    place: Place, *, force: float, surface_speed: float, high_share: float = 1.0
) -> Exercise:
    """Ask for the power at the edge."""
    givens, power, line = power_parts(place, force, surface_speed)
    metres = place.units.metres
    return place.numeric(
        Kind.CUTTING_POWER,
        givens=givens,
        value=power,
        unit=WATT,
        slips=[
            (Slip.FACTOR_SIXTY, 60.0 * power),
            (Slip.HIGH_FOR_EXPECTED, power * high_share),
            (Slip.FACTOR_TEN, 10.0 * power),
            # Feet taken for metres, in an inch class.
            (Slip.INCH_FOR_MILLIMETRE, power / metres),
        ],
        working=(line,),
    )


def motor_pulls_choices(cells: Cells) -> Choices:
    """Return cuts that the drive clearly turns, or clearly does not, at their diameter."""
    grid, feed = cells.windows.grid, cells.feeds
    force = cells.force_high(feed)
    short = cells.is_one_cut(feed)
    torque = np.where(short, cells.torque[Duration.ONE_CUT], cells.torque[Duration.CONTINUOUS])
    given, available = round_force(force), np.floor(torque * 10.0) / 10.0
    needed = np.asarray(cutting_torque(force=given, diameter=grid.diameter))
    pulls = (needed * _CLEAR <= available) & (needed * _SLACK >= available)
    stalls = (needed >= available * _CLEAR) & (needed <= available * _EXCESS)
    return choices(
        {
            "force": given,
            "diameter": cells.diameter,
            "spindle_speed": cells.speed,
            "torque": available,
            "position": cells.position.astype(np.float64),
            "expected": cells.force(feed),
        },
        material=cells.material,
        blade=cells.blade,
        # What the motor pulls is asked inside the window; what it does not is the point.
        where=(
            cells.has_window
            & grid.has_force
            & (available > 0.0)
            & ((pulls & cells.is_inside(feed)) | stalls)
        ),
        printed=5,
        answer=stalls.astype(np.int_),
    )


def motor_pulls(
    place: Place,
    *,
    force: float,
    diameter: float,
    spindle_speed: float,
    torque: float,
    position: float,
    expected: float | None = None,
) -> Exercise:
    """Ask whether the drive turns a cut: `force` is the high side, `torque` what it gives there.

    `position` is the place of the drive position in the lathe's list, from 0.
    """
    mm = diameter * place.units.mm
    needed = float(cutting_torque(force=force, diameter=mm))
    pulls = needed <= torque
    acting = Given(key="force", value=force, unit=NEWTON)
    across = place.length("diameter", diameter)
    given = Given(key="torque", value=torque, unit=N_M)
    # Only a slip that turns the answer over can be seen in it.
    wrong = {
        Slip.RADIUS_FOR_DIAMETER: needed / 2.0,
        Slip.DIAMETER_FOR_RADIUS: 2.0 * needed,
        Slip.HIGH_FOR_EXPECTED: needed * (expected or force) / force,
        Slip.TORQUE_AT_CENTRE: 0.0,
        Slip.FACTOR_TEN: 10.0 * needed,
    }
    return place.choice(
        Kind.MOTOR_PULLS,
        givens=(
            acting,
            across,
            Given(key="spindle-speed", value=spindle_speed, unit=RPM),
            given,
            Given(key="position", value=position, unit=COUNT),
        ),
        options=(YES, NO),
        right=YES if pulls else NO,
        slips=[(slip, YES if number <= torque else NO) for slip, number in wrong.items()],
        working=(
            Working(key="torque-needed", values=(acting, across), result=needed, unit=N_M),
            Working(
                key="torque-available",
                values=(Given(key="spindle-speed", value=spindle_speed, unit=RPM),),
                result=torque,
                unit=N_M,
            ),
        ),
    )
